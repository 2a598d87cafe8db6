//! Running other programs: seen live, listened to, or only asked.

use std::io::{BufRead, BufReader};
use std::path::PathBuf;
use std::process::{Command, Stdio};

fn name(command: &Command) -> String {
    let program = PathBuf::from(command.get_program());
    program.file_stem().map_or_else(|| program.display().to_string(), |stem| stem.to_string_lossy().into_owned())
}

/// Runs a program with its output on the screen.
pub fn run(command: &mut Command) -> Result<(), String> {
    let program = name(command);
    let status =
        command.stdin(Stdio::null()).status().map_err(|error| format!("{program} could not be started: {error}."))?;
    if status.success() { Ok(()) } else { Err(format!("{program} ended with {status}.")) }
}

/// Runs a program with its output on the screen and hands back its lines too.
pub fn listen(command: &mut Command) -> Result<(bool, Vec<String>), String> {
    let program = name(command);
    let failed = |error: std::io::Error| format!("{program} could not be run: {error}.");
    let mut child = command.stdin(Stdio::null()).stdout(Stdio::piped()).spawn().map_err(failed)?;
    let mut lines = Vec::new();
    if let Some(output) = child.stdout.take() {
        for bytes in BufReader::new(output).split(b'\n') {
            let line = String::from_utf8_lossy(&bytes.map_err(failed)?).into_owned();
            println!("{line}");
            lines.push(line);
        }
    }
    let status = child.wait().map_err(failed)?;
    Ok((status.success(), lines))
}

/// Runs a program silently; its output when it succeeded.
pub fn ask(command: &mut Command) -> Option<Vec<u8>> {
    let output = command.stdin(Stdio::null()).stderr(Stdio::null()).output().ok()?;
    output.status.success().then_some(output.stdout)
}

/// Like [`ask`], as text without the white space around it.
pub fn ask_text(command: &mut Command) -> Option<String> {
    ask(command).map(|bytes| String::from_utf8_lossy(&bytes).trim().to_owned())
}

/// The file that a program's name stands for on the computer's search path.
pub fn locate(program: &str) -> Option<PathBuf> {
    let path = std::env::var_os("PATH")?;
    std::env::split_paths(&path)
        .map(|folder| folder.join(program).with_extension(std::env::consts::EXE_EXTENSION))
        .find(|file| file.is_file())
}
