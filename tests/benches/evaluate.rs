//! How long the whole answer takes, natively: `cargo bench`.
use outshot::checks::strength;
use outshot::drawing::{elevation, section, svg};
use outshot::project::examples;
use outshot::{evaluate, lay_out};

fn main() {
    divan::main();
}

#[divan::bench]
fn wool_barn(bencher: divan::Bencher) {
    let project = examples::wool_barn();
    bencher.bench(|| evaluate(&project));
}

#[divan::bench]
fn log_store(bencher: divan::Bencher) {
    let project = examples::log_store();
    bencher.bench(|| evaluate(&project));
}

/// The part of it that judges the strength.
#[divan::bench]
fn wool_barn_strength(bencher: divan::Bencher) {
    let project = examples::wool_barn();
    let Some(built) = lay_out(&project).built else { return };
    bencher.bench(|| strength(&project, &built.shape));
}

#[divan::bench]
fn wool_barn_drawings(bencher: divan::Bencher) {
    let project = examples::wool_barn();
    let Some(built) = evaluate(&project).built else { return };
    bencher.bench(|| {
        let section = svg::print(&section(&project, &built), 360.0, "section");
        let elevation = svg::print(&elevation(&project, &built), 360.0, "elevation");
        (section, elevation)
    });
}
