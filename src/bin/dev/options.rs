//! What may be typed after `cargo start` and `cargo verify`.

use crate::steps;

/// Port of the local address when none is given.
pub const PORT: u16 = 8017;

/// The whole help text.
pub const HELP: &str = "\
cargo start                builds the app and serves it on http://127.0.0.1:8017
  --port N                 serves on port N
  --build-only             builds into target/site and stops
cargo verify               runs every check and closes with the counts
  --only NAME              runs one step; may be given several times
                           (format, lint-native, lint-wasm, tests, app-tests, site, size, licences, browser)";

/// One order of the user.
#[derive(Debug, PartialEq, Eq)]
pub enum Order {
    /// Print the help text.
    Help,
    /// Build, then serve unless only the build is wanted.
    Start {
        /// Port to serve on.
        port: u16,
        /// Stop after the build.
        build_only: bool,
    },
    /// Run the checks.
    Verify {
        /// Names of the steps to run; all when empty.
        only: Vec<String>,
    },
}

/// Reads the words after the program's name.
pub fn read(words: impl Iterator<Item = String>) -> Result<Order, String> {
    let mut words = words;
    let verb = words.next().unwrap_or_default();
    let rest: Vec<String> = words.collect();
    if rest.iter().any(|word| word == "--help" || word == "-h") {
        return Ok(Order::Help);
    }
    match verb.as_str() {
        "start" => read_start(rest),
        "verify" => read_verify(rest),
        "" | "help" | "--help" | "-h" => Ok(Order::Help),
        other => Err(format!("{other}: no such command.\n{HELP}")),
    }
}

fn read_start(rest: Vec<String>) -> Result<Order, String> {
    let (mut port, mut build_only) = (PORT, false);
    let mut rest = rest.into_iter();
    while let Some(word) = rest.next() {
        match word.as_str() {
            "--build-only" => build_only = true,
            "--port" => {
                let text = rest.next().unwrap_or_default();
                port = text
                    .parse()
                    .ok()
                    .filter(|port| *port > 0)
                    .ok_or_else(|| format!("--port needs a number from 1 to 65535, not \"{text}\"."))?;
            }
            other => return Err(format!("{other}: not known to cargo start.\n{HELP}")),
        }
    }
    Ok(Order::Start { port, build_only })
}

fn read_verify(rest: Vec<String>) -> Result<Order, String> {
    let mut only = Vec::new();
    let mut rest = rest.into_iter();
    while let Some(word) = rest.next() {
        if word != "--only" {
            return Err(format!("{word}: not known to cargo verify.\n{HELP}"));
        }
        let name = rest.next().unwrap_or_default();
        if !steps::ALL.iter().any(|step| step.name == name) {
            let names: Vec<&str> = steps::ALL.iter().map(|step| step.name).collect();
            return Err(format!("--only needs the name of a step: {}.", names.join(", ")));
        }
        only.push(name);
    }
    Ok(Order::Verify { only })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parse(line: &str) -> Result<Order, String> {
        read(line.split_whitespace().map(str::to_owned))
    }

    #[test]
    fn orders_are_read() {
        let plain = Order::Start { port: PORT, build_only: false };
        assert_eq!(parse("start"), Ok(plain));
        let full = Order::Start { port: 9000, build_only: true };
        assert_eq!(parse("start --port 9000 --build-only"), Ok(full));
        let only = vec!["size".to_owned(), "browser".to_owned()];
        assert_eq!(parse("verify --only size --only browser"), Ok(Order::Verify { only }));
        assert_eq!(parse("verify --help"), Ok(Order::Help));
    }

    #[test]
    fn unknown_words_are_refused() {
        for line in ["begin", "start --port", "start --port 0", "start --port 70000", "start now"] {
            assert!(parse(line).is_err(), "{line}");
        }
        assert!(parse("verify --only everything").is_err());
        assert!(parse("verify all").is_err());
    }

    #[test]
    fn the_help_names_every_step() {
        for step in steps::ALL {
            assert!(HELP.contains(step.name), "{}", step.name);
        }
    }
}
