//! Finds the browser for the browser tests, or installs it where that is allowed.

use std::path::PathBuf;
use std::process::Command;

use crate::command::{ask_text, locate, run};

const NAMES: [&str; 5] = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome"];
const PLACES: [&str; 2] = [
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
];
const MISSING: &str = "Install Chromium or Chrome for the browser tests, or name its program in CHROME_PATH.";

/// The browser's program; installed from the system's packages when it is missing and we may.
pub fn ensure() -> Result<PathBuf, String> {
    if let Some(program) = find()? {
        return Ok(program);
    }
    if !may_install() {
        return Err(MISSING.to_owned());
    }
    println!("Installing Chromium from the system's packages (1 to 3 minutes).");
    let apt = || {
        let mut command = Command::new("apt-get");
        command.env("DEBIAN_FRONTEND", "noninteractive");
        command
    };
    run(apt().args(["update", "-q"])).map_err(|why| format!("{why} {MISSING}"))?;
    run(apt().args(["install", "-q", "-y", "chromium"])).map_err(|why| format!("{why} {MISSING}"))?;
    find()?.ok_or_else(|| MISSING.to_owned())
}

fn find() -> Result<Option<PathBuf>, String> {
    if let Some(named) = std::env::var_os("CHROME_PATH").filter(|path| !path.is_empty()) {
        let named = PathBuf::from(named);
        return if named.is_file() {
            Ok(Some(named))
        } else {
            Err(format!("CHROME_PATH names no file: {}.", named.display()))
        };
    }
    let placed = PLACES.into_iter().map(PathBuf::from);
    Ok(NAMES.into_iter().find_map(locate).or_else(|| placed.into_iter().find(|path| path.is_file())))
}

fn may_install() -> bool {
    let root = ask_text(Command::new("id").arg("-u")).is_some_and(|id| id == "0");
    root && locate("apt-get").is_some()
}
