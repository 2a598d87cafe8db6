//! Writes the offline worker: the list of the site's files with a hash of each.

use std::fs;
use std::path::Path;

use crate::repository::Repository;

const WORKER: &str = "sw.js";
const TEMPLATE: &str = "public/sw.template.js";
const SWITCH_OFF: &str = "name=\"offline-copy\" content=\"off\"";
const SWITCH_ON: &str = "name=\"offline-copy\" content=\"on\"";

/// Switches the page's offline copy on and writes the worker; the number of files it keeps.
pub fn write(repository: &Repository) -> Result<usize, String> {
    let site = repository.site();
    switch_on(&site.join("index.html"))?;
    let mut files = Vec::new();
    collect(&site, "", &mut files).map_err(|error| format!("target/site: {error}."))?;
    files.sort();
    let template = fs::read_to_string(repository.root().join(TEMPLATE))
        .map_err(|error| format!("{TEMPLATE} can't be read: {error}."))?;
    let worker = fill(&template, &files)?;
    fs::write(site.join(WORKER), worker).map_err(|error| format!("target/site/{WORKER} can't be written: {error}."))?;
    Ok(files.len())
}

fn switch_on(page: &Path) -> Result<(), String> {
    let text = fs::read_to_string(page).map_err(|error| format!("the built page can't be read: {error}."))?;
    if !text.contains(SWITCH_OFF) {
        return Err(format!("the built page lacks <meta {SWITCH_OFF}>."));
    }
    fs::write(page, text.replace(SWITCH_OFF, SWITCH_ON))
        .map_err(|error| format!("the built page can't be written: {error}."))
}

/// Every file below `folder` but the worker: its path from the site's root, and its hash.
fn collect(folder: &Path, prefix: &str, files: &mut Vec<(String, u64)>) -> std::io::Result<()> {
    for entry in fs::read_dir(folder)? {
        let entry = entry?;
        let path = format!("{prefix}{}", entry.file_name().to_string_lossy());
        if entry.file_type()?.is_dir() {
            collect(&entry.path(), &format!("{path}/"), files)?;
        } else if path != WORKER {
            files.push((path, fnv1a(&fs::read(entry.path())?)));
        }
    }
    Ok(())
}

/// The files below a folder but the worker, by their paths from there, in order.
pub fn files(folder: &Path) -> std::io::Result<Vec<String>> {
    let mut files = Vec::new();
    collect(folder, "", &mut files)?;
    files.sort();
    Ok(files.into_iter().map(|(path, _)| path).collect())
}

/// One hash over the files of a folder and their names.
pub fn hash_of_folder(folder: &Path) -> std::io::Result<u64> {
    let mut files = Vec::new();
    collect(folder, "", &mut files)?;
    files.sort();
    let rows: Vec<String> = files.iter().map(|(path, hash)| format!("{path} {hash:016x}")).collect();
    Ok(fnv1a(rows.join("\n").as_bytes()))
}

fn fill(template: &str, files: &[(String, u64)]) -> Result<String, String> {
    let plain = |c: char| c.is_ascii_alphanumeric() || "/._-".contains(c);
    if let Some((path, _)) = files.iter().find(|(path, _)| !path.chars().all(plain)) {
        return Err(format!("{path}: use letters, digits, dot, dash and underscore in names of static files."));
    }
    let rows: Vec<String> = files.iter().map(|(path, hash)| format!("  [\"{path}\", \"{hash:016x}\"]")).collect();
    let list = format!("[\n{},\n]", rows.join(",\n"));
    let version = format!("{:016x}", fnv1a(format!("{template}{list}").as_bytes()));
    Ok(template.replace("{{version}}", &version).replace("{{files}}", &list))
}

/// FNV-1a, 64 bit (Fowler, Noll, Vo). A key that tells contents apart, no protection.
fn fnv1a(bytes: &[u8]) -> u64 {
    bytes.iter().fold(0xcbf2_9ce4_8422_2325, |hash, byte| (hash ^ u64::from(*byte)).wrapping_mul(0x0000_0100_0000_01b3))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hash_gives_the_published_values() {
        // Test vectors of the FNV internet draft (draft-eastlake-fnv, appendix; from memory).
        assert_eq!(fnv1a(b""), 0xcbf2_9ce4_8422_2325);
        assert_eq!(fnv1a(b"a"), 0xaf63_dc4c_8601_ec8c);
        assert_eq!(fnv1a(b"foobar"), 0x8594_4171_f739_67e8);
    }

    #[test]
    fn another_content_is_another_version() {
        let worker = |hash| fill("{{version}} {{files}}", &[("a.js".to_owned(), hash)]);
        assert_eq!(worker(1), worker(1));
        assert_ne!(worker(1), worker(2));
        assert!(worker(1).is_ok_and(|text| text.contains("[\"a.js\", \"0000000000000001\"]")));
    }

    #[test]
    fn a_name_that_would_break_the_list_is_refused() {
        assert!(fill("", &[("a\".js".to_owned(), 1)]).is_err());
    }
}
