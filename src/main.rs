//! Mounts the app.

fn main() {
    outshot::app::mount();
}
