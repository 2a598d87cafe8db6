//! The native report: a project file in, the whole design out, as text or JSON.
//!
//! `report job FILE|-|demo|demo-metric [--json]`. Exit 0 done, 1 the input is refused, 2 misuse.
#![allow(clippy::print_stdout, clippy::print_stderr, reason = "a program that prints")]

use std::io::Read;
use std::process::ExitCode;

use outshot::project::{Project, demo, file};
use outshot::{evaluate, report};

const USAGE: &str = "report job FILE [--json]\n  FILE: a project file, - for standard input, demo or demo-metric";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let (flags, words): (Vec<&str>, Vec<&str>) =
        arguments.iter().map(String::as_str).partition(|argument| argument.starts_with("--"));
    let json = flags.contains(&"--json");
    if flags.iter().any(|flag| *flag != "--json") {
        eprintln!("{USAGE}");
        return ExitCode::from(2);
    }
    match words[..] {
        ["job", source] => match project(source) {
            Ok(project) => {
                let design = evaluate(&project);
                println!("{}", if json { report::json(&project, &design) } else { report::text(&project, &design) });
                ExitCode::SUCCESS
            }
            Err(says) => {
                eprintln!("{says}");
                ExitCode::from(1)
            }
        },
        _ => {
            eprintln!("{USAGE}");
            ExitCode::from(2)
        }
    }
}

fn project(source: &str) -> Result<Project, String> {
    let text = match source {
        "demo" => return Ok(demo::wool_barn()),
        "demo-metric" => return Ok(demo::log_store()),
        "-" => {
            let mut text = String::new();
            std::io::stdin().read_to_string(&mut text).map_err(|error| format!("Standard input: {error}."))?;
            text
        }
        path => std::fs::read_to_string(path).map_err(|error| format!("{path}: {error}."))?,
    };
    file::read(&text).map_err(|error| error.to_string())
}
