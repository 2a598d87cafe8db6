//! Runs the steps one after the other, whatever the earlier ones said, and closes with the counts.

use std::time::{Duration, Instant};

use crate::counts::Counts;
use crate::repository::Repository;
use crate::steps::{self, Step};

struct Finding {
    name: &'static str,
    counts: Counts,
    time: Duration,
    reason: Option<String>,
}

/// Runs the steps that are named in `only`, or all; whether everything held.
pub fn run(repository: &Repository, only: &[String]) -> Result<bool, String> {
    let wanted = |step: &&Step| only.is_empty() || only.iter().any(|name| name == step.name);
    let mut results: Vec<Finding> = Vec::new();
    for step in steps::ALL.iter().filter(wanted) {
        let result = take(step, repository, &results);
        results.push(result);
    }
    Ok(close(&results))
}

fn take(step: &Step, repository: &Repository, earlier: &[Finding]) -> Finding {
    println!("\n== {}: {}", step.name, step.purpose);
    let begun = Instant::now();
    let blocked = earlier.iter().find(|result| Some(result.name) == step.after && result.counts.failed > 0);
    let outcome = match blocked {
        Some(result) => Err(format!("not run, because {} failed.", result.name)),
        None => (step.act)(repository),
    };
    let (counts, reason) = match outcome {
        Ok(counts) => (counts, None),
        Err(reason) => (Counts { passed: 0, failed: 1 }, Some(reason)),
    };
    let result = Finding { name: step.name, counts, time: begun.elapsed(), reason };
    println!("{}", line(&result));
    result
}

fn line(result: &Finding) -> String {
    let word = if result.counts.failed == 0 { "ok" } else { "FAILED" };
    let mut text = format!(
        "{:<12} {word:<7} {:>6.1} s  {} passed, {} failed",
        result.name,
        result.time.as_secs_f64(),
        result.counts.passed,
        result.counts.failed,
    );
    if let Some(reason) = &result.reason {
        text = format!("{text}: {reason}");
    }
    text
}

/// The table, then the counts alone on the last line.
fn close(results: &[Finding]) -> bool {
    let mut sum = Counts::default();
    println!("\n== result");
    for result in results {
        println!("  {}", line(result));
        sum += result.counts;
    }
    println!("\n{} passed, {} failed", sum.passed, sum.failed);
    sum.failed == 0 && sum.passed > 0
}
