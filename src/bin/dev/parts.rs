//! Cuts the app's wasm into the parts that the page fetches when it first needs them.
//!
//! Trunk builds the app in one piece, linked with what the cutting needs (`src/build.rs`). Its wasm and JavaScript in the site
//! are then replaced by a folder that holds the main part, the other parts and what fetches them, all by plain names.

use std::fs;
use std::path::{Path, PathBuf};

use crate::command::{ask_text, run};
use crate::repository::Repository;
use crate::{integrity, precache};

const NAME: &str = "outshot";
/// What the name of the parts' folder begins with.
const FOLDER: &str = "app-";
/// As the splitter names what fetches the parts. Some hosts hide files with that first letter.
const LINKS: &str = "__wasm_split.js";
const FETCHES: &str = "parts.js";
/// What the splitter starts a part with: it needs hosts that give a wasm its own type.
const STARTS: &str = "WebAssembly.instantiateStreaming(src, imports)";
/// What is put behind it: how they start here.
const TEMPLATE: &str = "public/parts.template.js";
/// Parts of no more bytes are fetched together.
const SMALL: u64 = 16_000;
/// The file they lie in.
const TOGETHER: &str = "small.wasm";
/// What compilers for wasm32 take for granted today; wasm-opt does not.
const FEATURES: [&str; 8] = [
    "--enable-bulk-memory",
    "--enable-bulk-memory-opt",
    "--enable-call-indirect-overlong",
    "--enable-multivalue",
    "--enable-mutable-globals",
    "--enable-nontrapping-float-to-int",
    "--enable-reference-types",
    "--enable-sign-ext",
];

/// Puts the parts in the place of the one wasm; the number of wasm files that come of it.
pub fn cut(repository: &Repository, shrinks: bool) -> Result<usize, String> {
    let work = repository.root().join("target/parts");
    if work.exists() {
        fs::remove_dir_all(&work).map_err(|error| format!("target/parts: {error}."))?;
    }
    let (cuts, app) = (work.join("cuts"), work.join("app"));
    for folder in [&cuts, &app] {
        fs::create_dir_all(folder).map_err(|error| format!("{}: {error}.", folder.display()))?;
    }
    let whole = repository.target().join("wasm32-unknown-unknown/release").join(NAME).with_extension("wasm");
    run(repository.command("wasm-split-cli").args(["--target", "web", "--out-name", NAME]).arg(whole).arg(&cuts))?;
    run(repository
        .command("wasm-bindgen")
        .args(["--target", "web", "--no-typescript", "--keep-lld-exports", "--out-name", NAME, "--out-dir"])
        .arg(&app)
        .arg(cuts.join(NAME).with_extension("wasm")))?;
    gather(&cuts, &app)?;
    let parts = wasm_files(&app)?;
    if shrinks {
        shrink(repository, &parts)?;
    }
    let script = app.join(FETCHES);
    let text = put_together(&read(&script)?, &app, &parts)?;
    write(&script, &(text + &read(&repository.root().join(TEMPLATE))?))?;
    let count = wasm_files(&app)?.len();
    put_in_place(repository, &app)?;
    Ok(count)
}

/// Whether a file of the site is fetched before the app starts; the other parts are not.
pub fn is_first(file: &str) -> bool {
    let main = format!("{NAME}_bg.wasm");
    !file.starts_with(FOLDER) || !file.ends_with(".wasm") || file.ends_with(&main)
}

/// Brings the other parts beside the main one, and lets the JavaScript name them as they are called there.
fn gather(cuts: &Path, app: &Path) -> Result<(), String> {
    for part in wasm_files(cuts)? {
        let name = part.file_name().unwrap_or_default();
        if part.file_stem().is_some_and(|stem| stem != NAME) {
            fs::copy(&part, app.join(name)).map_err(|error| format!("{}: {error}.", part.display()))?;
        }
    }
    let links = replaced(&read(&cuts.join(LINKS))?, STARTS, "started(src, imports)")?;
    write(&app.join(FETCHES), &links)?;
    let script = app.join(NAME).with_extension("js");
    let text = replaced(&read(&script)?, &format!("from \"./{LINKS}\""), &format!("from \"./{FETCHES}\""))?;
    write(&script, &text)
}

fn shrink(repository: &Repository, parts: &[PathBuf]) -> Result<(), String> {
    for part in parts {
        // It warns of a section that only tells names.
        let mut command = repository.command("wasm-opt");
        command.arg("-O3").args(FEATURES).arg(part).arg("-o").arg(part);
        ask_text(&mut command).ok_or_else(|| format!("wasm-opt could not shrink {}.", part.display()))?;
    }
    Ok(())
}

/// Lays the small parts one after the other in one file, and lets the JavaScript take them from there: each would be a
/// request of its own.
fn put_together(links: &str, app: &Path, parts: &[PathBuf]) -> Result<String, String> {
    let mut text = links.to_owned();
    let mut together = Vec::new();
    for part in parts {
        let failed = |error| format!("{}: {error}.", part.display());
        let name = part.file_name().unwrap_or_default().to_string_lossy();
        if fs::metadata(part).map_err(failed)?.len() > SMALL {
            continue;
        }
        let from = together.len();
        together.extend(fs::read(part).map_err(failed)?);
        let asks = format!("fetch(new URL(\"./{name}\", import.meta.url))");
        text = replaced(&text, &asks, &format!("within({from}, {})", together.len()))?;
        fs::remove_file(part).map_err(failed)?;
    }
    fs::write(app.join(TOGETHER), together).map_err(|error| format!("{TOGETHER}: {error}."))?;
    Ok(text)
}

/// Moves the folder into the site under a name of its content, and the page to it.
fn put_in_place(repository: &Repository, app: &Path) -> Result<(), String> {
    let site = repository.site();
    let page = site.join("index.html");
    let mut text = read(&page)?;
    let hash = precache::hash_of_folder(app).map_err(|error| format!("target/parts: {error}."))?;
    let folder = format!("{FOLDER}{hash:016x}");
    for (attribute, new) in [("data-js", format!("{NAME}.js")), ("data-wasm", format!("{NAME}_bg.wasm"))] {
        let old = between(&text, &format!("{attribute}=\"./"), "\"")
            .ok_or_else(|| format!("the built page lacks {attribute}."))?
            .to_owned();
        fs::remove_file(site.join(&old)).map_err(|error| format!("target/site/{old}: {error}."))?;
        text = text.replace(&old, &format!("{folder}/{new}"));
        let bytes = fs::read(app.join(&new)).map_err(|error| format!("{new}: {error}."))?;
        text = marked(&text, &format!("{folder}/{new}"), &integrity::of(&bytes));
    }
    let fetches = fs::read(app.join(FETCHES)).map_err(|error| format!("{FETCHES}: {error}."))?;
    let preload = format!(
        "<link rel=\"modulepreload\" href=\"./{folder}/{FETCHES}\" crossorigin=\"anonymous\" integrity=\"{}\"></head>",
        integrity::of(&fetches)
    );
    text = replaced(&text, "</head>", &preload)?;
    fs::rename(app, site.join(&folder)).map_err(|error| format!("target/site/{folder}: {error}."))?;
    write(&page, &text)
}

/// The page with another mark at the links to that file; a page without such links stays as it is.
fn marked(page: &str, file: &str, mark: &str) -> String {
    let mut text = String::new();
    for (at, tag) in page.split("<link ").enumerate() {
        let old = between(tag, "integrity=\"", "\"").filter(|_| tag.contains(&format!("href=\"./{file}\"")));
        let tag = old.map_or_else(|| tag.to_owned(), |old| tag.replacen(old, mark, 1));
        text += if at == 0 { "" } else { "<link " };
        text += &tag;
    }
    text
}

fn between<'a>(text: &'a str, before: &str, after: &str) -> Option<&'a str> {
    let rest = &text[text.find(before)? + before.len()..];
    Some(&rest[..rest.find(after)?])
}

fn replaced(text: &str, old: &str, new: &str) -> Result<String, String> {
    if text.contains(old) { Ok(text.replace(old, new)) } else { Err(format!("The build looked in vain for {old}.")) }
}

fn wasm_files(folder: &Path) -> Result<Vec<PathBuf>, String> {
    let entries = fs::read_dir(folder).map_err(|error| format!("{}: {error}.", folder.display()))?;
    let paths = entries.map(|entry| entry.map(|entry| entry.path()));
    let mut files: Vec<PathBuf> = paths.collect::<Result<_, _>>().map_err(|error: std::io::Error| error.to_string())?;
    files.retain(|path| path.extension().is_some_and(|end| end == "wasm"));
    files.sort();
    Ok(files)
}

fn read(file: &Path) -> Result<String, String> {
    fs::read_to_string(file).map_err(|error| format!("{} can't be read: {error}.", file.display()))
}

fn write(file: &Path, text: &str) -> Result<(), String> {
    fs::write(file, text).map_err(|error| format!("{} can't be written: {error}.", file.display()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_the_links_to_the_file_get_its_mark() {
        let page = "<head><link href=\"./a.js\" integrity=\"x\"><link href=\"./b.js\" integrity=\"x\">";
        let other = "<head><link href=\"./a.js\" integrity=\"x\"><link href=\"./b.js\" integrity=\"new\">";
        assert_eq!(marked(page, "b.js", "new"), other);
        assert_eq!(marked(page, "c.js", "new"), page);
    }

    #[test]
    fn what_the_build_replaces_must_be_there() {
        assert_eq!(replaced("a b a", "a", "c").as_deref(), Ok("c b c"));
        assert!(replaced("b", "a", "c").is_err());
    }
}
