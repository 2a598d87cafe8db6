//! The pinned tools that turn the Rust code into a site, kept in `target/tools` between runs.

use std::path::Path;
use std::process::Command;

use crate::command::{ask_text, run};
use crate::repository::Repository;

const TRUNK: &str = "0.21.14";
const WASM_BINDGEN: &str = "0.2.130";
const WASM_SPLIT: &str = "0.2.4";
const BINARYEN: &str = "132.0.0";
const WASM_TARGET: &str = "wasm32-unknown-unknown";

/// The compiler's parts for WebAssembly.
pub fn ensure_wasm_target(repository: &Repository) -> Result<(), String> {
    let sysroot = ask_text(repository.command("rustc").args(["--print", "sysroot"]))
        .ok_or("rustc does not answer: install Rust (rustup) first.")?;
    if Path::new(&sysroot).join("lib/rustlib").join(WASM_TARGET).is_dir() {
        return Ok(());
    }
    println!("Adding the compiler's WebAssembly target (under a minute).");
    run(repository.command("rustup").args(["target", "add", WASM_TARGET]))
        .map_err(|why| format!("{why} Rust's {WASM_TARGET} target is missing and could not be added with rustup."))
}

/// Trunk, which puts the site together.
pub fn ensure_trunk(repository: &Repository) -> Result<(), String> {
    if version_is(repository, "trunk", TRUNK) {
        return Ok(());
    }
    println!("Installing Trunk {TRUNK} into target/tools: about 6 minutes on 2 cores, this once only.");
    run(install(repository, "trunk", TRUNK).args(["--locked", "--no-default-features", "--features", "rustls"]))?;
    clear_build(repository);
    Ok(())
}

/// The program that writes the JavaScript side; its version must equal the library's.
pub fn ensure_wasm_bindgen(repository: &Repository) -> Result<(), String> {
    if version_is(repository, "wasm-bindgen", WASM_BINDGEN) {
        return Ok(());
    }
    println!("Installing wasm-bindgen {WASM_BINDGEN} into target/tools: about 2 minutes on 2 cores, this once only.");
    let locked = run(install(repository, "wasm-bindgen-cli", WASM_BINDGEN).arg("--locked"));
    if let Err(why) = locked {
        // A dependency in its lock file may have been withdrawn from the registry.
        println!("{why} Trying again with newer dependencies.");
        run(&mut install(repository, "wasm-bindgen-cli", WASM_BINDGEN))?;
    }
    clear_build(repository);
    Ok(())
}

/// Whether the program that cuts the wasm into parts is there; the site works in one piece too.
pub fn ensure_wasm_split(repository: &Repository) -> bool {
    if wasm_split_is_there(repository) {
        return true;
    }
    println!("Installing wasm-split {WASM_SPLIT} into target/tools: about 2 minutes on 2 cores, this once only.");
    let mut command = install(repository, "wasm_split_cli_support", WASM_SPLIT);
    let installed = run(command.args(["--locked", "--force", "--features", "build-binary"]));
    clear_build(repository);
    let ready = installed.is_ok() && wasm_split_is_there(repository);
    if !ready {
        println!("wasm-split is not to be had (it needs the network once): the app is built in one piece.");
    }
    ready
}

/// It does not tell its version: cargo's own list beside it does.
fn wasm_split_is_there(repository: &Repository) -> bool {
    let list = std::fs::read_to_string(repository.tools().join(".crates.toml")).unwrap_or_default();
    let program = repository.tools().join("bin/wasm-split-cli").with_extension(std::env::consts::EXE_EXTENSION);
    program.is_file() && list.contains(&format!("\"wasm_split_cli_support {WASM_SPLIT} "))
}

/// Whether the program that shrinks the wasm is there; it comes with Node, and the site works without it.
pub fn ensure_wasm_opt(repository: &Repository) -> bool {
    let folder = repository.tools().join("node");
    let major = BINARYEN.split('.').next().unwrap_or(BINARYEN);
    if wasm_opt_answers(repository, major) {
        return true;
    }
    println!("Installing wasm-opt {BINARYEN} into target/tools (half a minute).");
    let installed = run(repository
        .command(npm())
        .args(["install", "--no-audit", "--no-fund", "--no-save", "--prefix"])
        .arg(&folder)
        .arg(format!("binaryen@{BINARYEN}")));
    let ready = installed.is_ok() && wasm_opt_answers(repository, major);
    if !ready {
        println!(
            "wasm-opt is not to be had (it needs Node with npm, and the network once): \
             the app is built without it and its wasm is larger."
        );
    }
    ready
}

/// npm's name as the operating system starts it.
pub fn npm() -> &'static str {
    if cfg!(windows) { "npm.cmd" } else { "npm" }
}

fn wasm_opt_answers(repository: &Repository, major: &str) -> bool {
    let own = repository.tools().join("node/node_modules/binaryen");
    own.is_dir() && version_is(repository, "wasm-opt", major)
}

fn install(repository: &Repository, name: &str, version: &str) -> Command {
    let mut command = repository.command("cargo");
    command
        .args(["install", name, "--version", version, "--root"])
        .arg(repository.tools())
        .env("CARGO_TARGET_DIR", build_folder(repository));
    command
}

fn build_folder(repository: &Repository) -> std::path::PathBuf {
    repository.tools().join("build")
}

fn clear_build(repository: &Repository) {
    // Half a gigabyte that nothing needs again; if it stays, only space is lost.
    std::fs::remove_dir_all(build_folder(repository)).unwrap_or_default();
}

/// Whether `program --version` names this version as one of its words.
pub fn version_is(repository: &Repository, program: &str, version: &str) -> bool {
    ask_text(repository.command(program).arg("--version"))
        .is_some_and(|text| text.split_whitespace().any(|word| word == version))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_library_and_the_program_of_wasm_bindgen_agree() {
        let manifest = include_str!("../../../Cargo.toml");
        let pin = format!("wasm-bindgen = {{ version = \"={WASM_BINDGEN}\"");
        assert!(manifest.contains(&pin), "Cargo.toml lacks: {pin}");
    }

    #[test]
    fn trunk_is_the_version_that_its_settings_ask_for() {
        let settings = include_str!("../../../Trunk.toml");
        assert!(settings.contains(&format!("trunk-version = \"^{TRUNK}\"")));
    }
}
