//! The native report: a project file in, the whole design out, as text or JSON.
//!
//! `report job FILE|-|demo|demo-metric [--json]`: a lean-to. `report frame FILE|- [--json]`: any plane
//! frame. `report nest FILE|- [--json]`: sticks out of stock. Exit 0 done, 1 the input is refused, 2 misuse.
#![allow(clippy::print_stdout, clippy::print_stderr, reason = "a program that prints")]

use std::io::Read;
use std::process::ExitCode;

use outshot::project::{Project, examples, file};
use outshot::{evaluate, report};

const USAGE: &str = "report job FILE [--json]\n  FILE: a project file, - for standard input, demo or demo-metric\n\
                     report frame FILE [--json]\n  FILE: a plane frame, - for standard input\n\
                     report nest FILE [--json]\n  FILE: sticks and stock, - for standard input";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let (flags, words): (Vec<&str>, Vec<&str>) =
        arguments.iter().map(String::as_str).partition(|argument| argument.starts_with("--"));
    let json = flags.contains(&"--json");
    if flags.iter().any(|flag| *flag != "--json") {
        eprintln!("{USAGE}");
        return ExitCode::from(2);
    }
    let answer = match words[..] {
        ["job", source] => job(source, json),
        ["frame", source] => read(source).and_then(|text| outshot::frame::exchange::report(&text, json)),
        ["nest", source] => read(source).and_then(|text| outshot::ordering::nest::exchange::report(&text, json)),
        _ => {
            eprintln!("{USAGE}");
            return ExitCode::from(2);
        }
    };
    match answer {
        Ok(text) => {
            println!("{text}");
            ExitCode::SUCCESS
        }
        Err(says) => {
            eprintln!("{says}");
            ExitCode::from(1)
        }
    }
}

fn job(source: &str, json: bool) -> Result<String, String> {
    let project = project(source)?;
    let design = evaluate(&project);
    Ok(if json { report::json(&project, &design) } else { report::text(&project, &design) })
}

fn project(source: &str) -> Result<Project, String> {
    match source {
        "demo" => Ok(examples::wool_barn()),
        "demo-metric" => Ok(examples::log_store()),
        _ => file::read(&read(source)?).map_err(|error| error.to_string()),
    }
}

/// The text of a file, or of standard input for `-`.
fn read(source: &str) -> Result<String, String> {
    if source != "-" {
        return std::fs::read_to_string(source).map_err(|error| format!("{source}: {error}."));
    }
    let mut text = String::new();
    std::io::stdin().read_to_string(&mut text).map_err(|error| format!("Standard input: {error}."))?;
    Ok(text)
}
