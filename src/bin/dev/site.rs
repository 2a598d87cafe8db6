//! Builds the site into `target/site`.

use std::fs;
use std::path::PathBuf;

use crate::command::run;
use crate::repository::Repository;
use crate::{parts, precache, toolchain};

const PAGE: &str = "public/index.html";
const SHRINK: &str = "data-wasm-opt=\"3\"";
const IN_ONE_PIECE: &str = "data-cargo-features=\"web\"";
const IN_PARTS: &str = "data-cargo-features=\"parts\"";

/// Fetches what is missing, then builds the release and its offline worker.
pub fn build(repository: &Repository) -> Result<(), String> {
    toolchain::ensure_wasm_target(repository)?;
    toolchain::ensure_trunk(repository)?;
    toolchain::ensure_wasm_bindgen(repository)?;
    let shrinks = toolchain::ensure_wasm_opt(repository);
    let cuts = toolchain::ensure_wasm_split(repository);
    println!("Fetching the libraries named in Cargo.lock.");
    run(repository.command("cargo").arg("fetch"))
        .map_err(|why| format!("{why} The first build needs the network once."))?;
    println!("Building the app: 1 to 3 minutes the first time.");
    let page = page(repository, shrinks, cuts)?;
    // Trunk reads NO_COLOR as a yes-or-no word and stops at the usual value 1.
    run(repository
        .command("trunk")
        .arg("build")
        .arg(page)
        .env_remove("NO_COLOR")
        .env("CARGO_TARGET_DIR", repository.target())
        .env("TRUNK_SKIP_VERSION_CHECK", "true"))?;
    if cuts {
        println!("Cutting the app into parts.");
        let parts = parts::cut(repository, shrinks)?;
        println!("The app is in {parts} files of wasm.");
    }
    let files = precache::write(repository)?;
    println!("The site is in target/site, {files} files kept for use with no signal.");
    Ok(())
}

/// The page that Trunk starts from. Parts are shrunk one by one after Trunk, and without wasm-opt Trunk would try to
/// download one: then it's a copy that doesn't ask for it. Its links work because it lies as deep as the page.
fn page(repository: &Repository, shrinks: bool, cuts: bool) -> Result<PathBuf, String> {
    let page = repository.root().join(PAGE);
    if shrinks && !cuts {
        return Ok(page);
    }
    let mut text = fs::read_to_string(&page).map_err(|error| format!("{PAGE} can't be read: {error}."))?;
    for (old, new, wanted) in [(SHRINK, "data-wasm-opt=\"0\"", true), (IN_ONE_PIECE, IN_PARTS, cuts)] {
        if !text.contains(old) {
            return Err(format!("{PAGE} lacks {old}, which the build replaces."));
        }
        if wanted {
            text = text.replace(old, new);
        }
    }
    let copy = repository.root().join("target/index.html");
    fs::write(&copy, text).map_err(|error| format!("target/index.html can't be written: {error}."))?;
    Ok(copy)
}
