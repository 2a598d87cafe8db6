//! The steps of `cargo verify`, in their order.

use std::fs;
use std::io::Write;
use std::path::Path;
use std::process::{Command, Stdio};

use crate::command::{ask_text, listen, run};
use crate::counts::{self, Counts};
use crate::repository::Repository;
use crate::{browser, deny, parts, precache, site, toolchain};

/// What may be fetched before the app starts, and what the whole site may weigh: wasm, JavaScript and CSS together, each
/// compressed with gzip -9.
const FIRST_BYTES: u64 = 350_000;
const BUDGET_BYTES: u64 = 1_460_000;
const DENY_WARNINGS: [&str; 3] = ["--", "-D", "warnings"];

/// One named step.
pub struct Step {
    /// The name after `--only`.
    pub name: &'static str,
    /// What is seen to, in a few words.
    pub purpose: &'static str,
    /// A step that must have passed, if it ran, for this one to make sense.
    pub after: Option<&'static str>,
    /// Does it; an error is one failed check with its reason.
    pub act: fn(&Repository) -> Result<Counts, String>,
}

const fn step(
    name: &'static str,
    purpose: &'static str,
    after: Option<&'static str>,
    act: fn(&Repository) -> Result<Counts, String>,
) -> Step {
    Step { name, purpose, after, act }
}

/// All steps.
pub const ALL: &[Step] = &[
    step("format", "the code is formatted", None, format_check),
    step("lint-native", "no warning in library, programs, tests", None, lint_native),
    step("lint-wasm", "no warning in the browser app", None, lint_wasm),
    step("tests", "library and integration tests", None, rust_tests),
    step("app-tests", "the app's own unit tests, natively", None, app_tests),
    step("site", "the release builds", None, build_site),
    step("size", "the site is small enough for a weak signal", Some("site"), size_budget),
    step("licences", "licences, forbidden crates, sources", None, licences),
    step("browser", "the built site in a browser", Some("site"), browser_tests),
];

fn format_check(repository: &Repository) -> Result<Counts, String> {
    run(repository.command("cargo").args(["fmt", "--check"]))?;
    Ok(Counts::ONE)
}

fn lint_native(repository: &Repository) -> Result<Counts, String> {
    run(repository.command("cargo").args(["clippy", "--locked", "--all-targets"]).args(DENY_WARNINGS))?;
    Ok(Counts::ONE)
}

fn lint_wasm(repository: &Repository) -> Result<Counts, String> {
    toolchain::ensure_wasm_target(repository)?;
    run(repository
        .command("cargo")
        .args(["clippy", "--locked", "--target", "wasm32-unknown-unknown"])
        .args(["--features", "parts", "--lib", "--bin", "outshot"])
        .args(DENY_WARNINGS))?;
    Ok(Counts::ONE)
}

fn rust_tests(repository: &Repository) -> Result<Counts, String> {
    let (succeeded, lines) = listen(repository.command("cargo").args(["test", "--locked", "--no-fail-fast"]))?;
    Ok(counts::of_rust_tests(&lines).of_run(succeeded))
}

/// The library's tests are another step: here only those under `app`, which the feature brings.
fn app_tests(repository: &Repository) -> Result<Counts, String> {
    let args = ["test", "--locked", "--no-fail-fast", "--features", "web", "--lib", "--", "app::"];
    let (succeeded, lines) = listen(repository.command("cargo").args(args))?;
    Ok(counts::of_rust_tests(&lines).of_run(succeeded))
}

fn build_site(repository: &Repository) -> Result<Counts, String> {
    site::build(repository)?;
    Ok(Counts::ONE)
}

fn licences(repository: &Repository) -> Result<Counts, String> {
    deny::check(repository)?;
    Ok(Counts::ONE)
}

fn size_budget(repository: &Repository) -> Result<Counts, String> {
    let files = precache::files(&repository.site())
        .map_err(|_| "target/site is not there: build it first (cargo start --build-only).")?;
    let (mut first, mut total) = (0, 0);
    for name in files.iter().filter(|name| [".wasm", ".js", ".css"].iter().any(|end| name.ends_with(end))) {
        let bytes = compressed_size(repository, &repository.site().join(name))?;
        let is_first = parts::is_first(name);
        println!("{bytes:>9} bytes  {}{name}", if is_first { "" } else { "later: " });
        first += if is_first { bytes } else { 0 };
        total += bytes;
    }
    println!("{first:>9} bytes before the app starts, of {FIRST_BYTES} allowed");
    println!("{total:>9} bytes in all, of {BUDGET_BYTES} allowed");
    if total == 0 {
        return Err("target/site holds no code: build it first (cargo start --build-only).".to_owned());
    }
    let over = first.saturating_sub(FIRST_BYTES).max(total.saturating_sub(BUDGET_BYTES));
    if over > 0 { Err(format!("{over} bytes over the budget.")) } else { Ok(Counts::ONE) }
}

/// By the system's gzip at its highest level, or by Node's zlib where there is none.
fn compressed_size(repository: &Repository, file: &Path) -> Result<u64, String> {
    let content = fs::read(file).map_err(|error| format!("{}: {error}.", file.display()))?;
    let mut gzip = repository.command("gzip");
    gzip.args(["-9", "-c"]);
    let mut node = repository.command("node");
    node.args(["-e", "process.stdin.pipe(require('zlib').createGzip({level:9})).pipe(process.stdout)"]);
    filtered_size(&mut gzip, &content)
        .or_else(|| filtered_size(&mut node, &content))
        .ok_or_else(|| "Neither gzip nor Node is there to weigh the site.".to_owned())
}

fn filtered_size(filter: &mut Command, content: &[u8]) -> Option<u64> {
    let mut child = filter.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::null()).spawn().ok()?;
    let mut input = child.stdin.take()?;
    let output = std::thread::scope(|scope| {
        // Fed from a second thread: both pipes could fill up otherwise.
        scope.spawn(move || input.write_all(content).is_ok());
        child.wait_with_output()
    })
    .ok()?;
    (output.status.success() && !output.stdout.is_empty())
        .then(|| u64::try_from(output.stdout.len()).unwrap_or(u64::MAX))
}

fn browser_tests(repository: &Repository) -> Result<Counts, String> {
    if !repository.site().join("index.html").is_file() {
        return Err("target/site is not there: build it first (cargo start --build-only).".into());
    }
    let version = ask_text(repository.command("node").arg("--version")).unwrap_or_default();
    let major = version.trim_start_matches('v').split('.').next();
    if major.and_then(|text| text.parse::<u32>().ok()).is_none_or(|major| major < 20) {
        return Err("Install Node 20 or newer, with npm, for the browser tests.".to_owned());
    }
    let chrome = browser::ensure()?;
    run(repository
        .command(toolchain::npm())
        .args(["ci", "--no-audit", "--no-fund"])
        .current_dir(repository.browser_tests()))?;
    let (succeeded, lines) = listen(
        repository
            .command("node")
            .args(["--test", "--test-reporter=spec", "--test-concurrency=1"])
            .current_dir(repository.browser_tests())
            .env("CHROME_PATH", chrome)
            .env("NO_COLOR", "1")
            .env_remove("FORCE_COLOR"),
    )?;
    Ok(counts::of_node_tests(&lines).of_run(succeeded))
}
