//! The house keeps its shape: which room may look into which, and how large a file may grow.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

use std::path::{Path, PathBuf};

/// The rooms of the library in the order of the data's journey. A room may look into those before it.
///
/// `project` reads sizes of materials and is read by everything after it; `design` only names the parts of
/// the answer, so the stages that make them may name it too.
const ROOMS: [&str; 22] = [
    "units",
    "wording",
    "materials",
    "working",
    "unmade",
    "loads",
    "members",
    "fastening",
    "frame",
    "project",
    "geometry",
    "solid",
    "joinery",
    "tickets",
    "ordering",
    "analysis",
    "checks",
    "design",
    "evaluate",
    "study",
    "drawing",
    "report",
];

/// Rooms that may name the types of `design`, which stands after them.
const MAY_NAME_DESIGN: [&str; 5] = ["joinery", "tickets", "ordering", "analysis", "checks"];

const MOST_CODE_LINES: usize = 400;
const MOST_FUNCTION_LINES: usize = 60;

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

fn rust_files(folder: &Path) -> Vec<PathBuf> {
    let mut files = Vec::new();
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            files.extend(rust_files(&path));
        } else if path.extension().is_some_and(|extension| extension == "rs") {
            files.push(path);
        }
    }
    files.sort();
    files
}

/// The code of a file: no comments, no blank lines, no tests.
fn code(path: &Path) -> Vec<String> {
    let text = std::fs::read_to_string(path).unwrap();
    // Tests beside the code stand last; a test module in a file of its own is only named.
    let tests = text.match_indices("#[cfg(test)]").find(|(at, _)| {
        let rest = text[*at..].lines().skip(1);
        let item = rest.skip_while(|line| line.starts_with("#[")).find(|line| !line.trim().is_empty());
        item.is_some_and(|line| line.starts_with("mod") && line.ends_with('{'))
    });
    let text = tests.map_or(text.as_str(), |(at, _)| &text[..at]).to_owned();
    text.lines()
        .filter(|line| !line.trim().is_empty() && !line.trim_start().starts_with("//"))
        .map(str::to_owned)
        .collect()
}

/// The room of a file of the library, or nothing for the app and the programs.
fn room(path: &Path) -> Option<&'static str> {
    let inside = path.strip_prefix(root().join("src")).ok()?;
    let first = inside.iter().next()?.to_str()?.trim_end_matches(".rs");
    ROOMS.into_iter().find(|room| *room == first)
}

fn place(room: &str) -> usize {
    ROOMS.iter().position(|known| *known == room).unwrap_or_else(|| panic!("no room {room}"))
}

#[test]
fn every_room_looks_only_into_those_before_it() {
    for path in rust_files(&root().join("src")) {
        let is_program = ["app", "bin", "build.rs", "lib.rs", "main.rs"]
            .iter()
            .any(|name| path.starts_with(root().join("src").join(name)));
        let Some(own) = room(&path) else {
            assert!(is_program, "{} stands in a room this list does not know", path.display());
            continue;
        };
        for line in code(&path) {
            for (index, _) in line.match_indices("crate::") {
                let rest = &line[index + "crate::".len()..];
                let named: String =
                    rest.chars().take_while(|letter| letter.is_alphanumeric() || *letter == '_').collect();
                let Some(other) = ROOMS.into_iter().find(|room| *room == named) else {
                    assert!(named != "app", "{}: the library looks into the app: {line}", path.display());
                    continue;
                };
                let is_allowed = place(other) <= place(own) || (other == "design" && MAY_NAME_DESIGN.contains(&own));
                assert!(is_allowed, "{}: {own} looks into {other}: {line}", path.display());
            }
        }
    }
}

/// The library knows no browser, no clock and no files; the app's own order is pages, then components,
/// drawings and charts, then the store.
#[test]
fn the_library_is_pure_and_the_app_keeps_its_order() {
    for path in rust_files(&root().join("src")) {
        let text = code(&path).join("\n");
        if room(&path).is_some() {
            for word in ["leptos", "web_sys", "gloo_", "js_sys", "plotters", "std::fs", "std::time", "std::net"] {
                assert!(!text.contains(word), "{}: the library uses {word}", path.display());
            }
        }
        let inside = path.strip_prefix(root().join("src/app")).ok().and_then(|path| path.to_str().map(str::to_owned));
        let Some(inside) = inside else { continue };
        let is_below = inside.starts_with("components") || inside.starts_with("charts");
        assert!(!(is_below && text.contains("app::pages")), "{}: a component looks into a page", path.display());
        let is_store = inside.starts_with("store");
        assert!(!(is_store && text.contains("app::components")), "{}: the store looks into components", path.display());
    }
}

#[test]
fn files_and_functions_stay_small() {
    for path in rust_files(&root().join("src")) {
        let lines = code(&path);
        assert!(lines.len() <= MOST_CODE_LINES, "{}: {} lines of code", path.display(), lines.len());
        let mut start: Option<(usize, usize)> = None;
        for (number, line) in lines.iter().enumerate() {
            let indent = line.len() - line.trim_start().len();
            let words = line.trim_start();
            let opens = words.starts_with("fn ") || words.contains(" fn ") && words.starts_with("pub");
            if opens && !words.ends_with(';') {
                start = Some((number, indent));
            } else if let Some((first, depth)) = start
                && indent == depth
                && words == "}"
            {
                let length = number + 1 - first;
                assert!(
                    length <= MOST_FUNCTION_LINES,
                    "{}: a function of {length} lines: {}",
                    path.display(),
                    lines[first]
                );
                start = None;
            }
        }
    }
}

#[test]
fn the_top_level_is_as_agreed() {
    let allowed = [
        "Cargo.toml",
        "Cargo.lock",
        "README.md",
        "DEVELOPERS.md",
        "CHANGELOG.md",
        "LICENSE",
        "Trunk.toml",
        "src",
        "public",
        "style",
        "tests",
        "target",
    ];
    for entry in std::fs::read_dir(root()).unwrap() {
        let name = entry.unwrap().file_name().into_string().unwrap();
        assert!(name.starts_with('.') || allowed.contains(&name.as_str()), "{name} stands at the top level");
    }
}
