//! Tells the linker to leave in what the parts of the app are cut out by.

fn main() {
    println!("cargo::rerun-if-changed=src/build.rs");
    let is_set = |name: &str| std::env::var_os(name).is_some();
    let is_wasm = std::env::var("CARGO_CFG_TARGET_FAMILY").is_ok_and(|family| family == "wasm");
    if is_wasm && is_set("CARGO_FEATURE_PARTS") {
        println!("cargo::rustc-link-arg-bin=outshot=--emit-relocs");
    }
}
