//! The two commands of this repository: `cargo start` builds the app and serves it on this
//! computer, `cargo verify` runs everything that must hold before a change is taken in.
//!
//! Plain standard library: it has to compile quickly, before anything else is there.
#![allow(clippy::print_stdout, reason = "a command-line program speaks by printing")]

mod browser;
mod command;
mod counts;
mod deny;
mod integrity;
mod options;
mod parts;
mod precache;
mod repository;
mod serve;
mod site;
mod steps;
mod toolchain;
mod verify;

use std::process::ExitCode;

use options::Order;
use repository::Repository;

fn main() -> ExitCode {
    match obey() {
        Ok(true) => ExitCode::SUCCESS,
        Ok(false) => ExitCode::FAILURE,
        Err(sentence) => {
            println!("{sentence}");
            ExitCode::FAILURE
        }
    }
}

/// Carries out the order; `false` when a check failed.
fn obey() -> Result<bool, String> {
    let order = options::read(std::env::args().skip(1))?;
    let repository = Repository::find()?;
    match order {
        Order::Help => {
            println!("{}", options::HELP);
            Ok(true)
        }
        Order::Start { port, build_only } => start(&repository, port, build_only),
        Order::Verify { only } => verify::run(&repository, &only),
    }
}

fn start(repository: &Repository, port: u16, build_only: bool) -> Result<bool, String> {
    if !build_only {
        // Asked before the long build; the answer is asked again when serving begins.
        drop(serve::listen(port)?);
    }
    site::build(repository)?;
    if !build_only {
        serve::forever(&repository.site(), serve::listen(port)?, port)?;
    }
    Ok(true)
}
