//! Builds the site into `target/site`.

use std::fs;
use std::path::PathBuf;

use crate::command::run;
use crate::repository::Repository;
use crate::{precache, toolchain};

const PAGE: &str = "public/index.html";
const SHRINK: &str = "data-wasm-opt=\"z\"";

/// Fetches what is missing, then builds the release and its offline worker.
pub fn build(repository: &Repository) -> Result<(), String> {
    toolchain::ensure_wasm_target(repository)?;
    toolchain::ensure_trunk(repository)?;
    toolchain::ensure_wasm_bindgen(repository)?;
    let shrinks = toolchain::ensure_wasm_opt(repository);
    println!("Fetching the libraries named in Cargo.lock.");
    run(repository.command("cargo").arg("fetch"))
        .map_err(|why| format!("{why} The first build needs the network once."))?;
    println!("Building the app: 1 to 3 minutes the first time.");
    let page = page(repository, shrinks)?;
    // Trunk reads NO_COLOR as a yes-or-no word and stops at the usual value 1.
    run(repository
        .command("trunk")
        .arg("build")
        .arg(page)
        .env_remove("NO_COLOR")
        .env("TRUNK_SKIP_VERSION_CHECK", "true"))?;
    let files = precache::write(repository)?;
    println!("The site is in target/site, {files} files kept for use with no signal.");
    Ok(())
}

/// The page that Trunk starts from. Without wasm-opt it's a copy that doesn't ask for it, or
/// Trunk would try to download one; the copy's links work because it lies as deep as the page.
fn page(repository: &Repository, shrinks: bool) -> Result<PathBuf, String> {
    let page = repository.root().join(PAGE);
    if shrinks {
        return Ok(page);
    }
    let text = fs::read_to_string(&page).map_err(|error| format!("{PAGE} can't be read: {error}."))?;
    if !text.contains(SHRINK) {
        return Err(format!("{PAGE} lacks {SHRINK}, which the build replaces."));
    }
    let copy = repository.root().join("target/index.html");
    fs::write(&copy, text.replace(SHRINK, "data-wasm-opt=\"0\""))
        .map_err(|error| format!("target/index.html can't be written: {error}."))?;
    Ok(copy)
}
