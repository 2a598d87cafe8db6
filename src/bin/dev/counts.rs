//! Counts of checks, and how they are read from what test runners print.

use std::ops::AddAssign;

/// How many checks passed and failed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Counts {
    /// Checks that held.
    pub passed: u32,
    /// Checks that did not.
    pub failed: u32,
}

impl Counts {
    /// One check that held.
    pub const ONE: Self = Self { passed: 1, failed: 0 };

    /// What a runner's own counts amount to: a run that broke off, or ran nothing, is one failure more.
    pub fn of_run(self, succeeded: bool) -> Self {
        let silent = self.failed == 0 && (!succeeded || self.passed == 0);
        Self { failed: self.failed + u32::from(silent), ..self }
    }
}

impl AddAssign for Counts {
    fn add_assign(&mut self, other: Self) {
        self.passed += other.passed;
        self.failed += other.failed;
    }
}

/// Adds up the closing lines of every Rust test program.
pub fn of_rust_tests(lines: &[String]) -> Counts {
    let mut sum = Counts::default();
    for line in lines {
        let Some((_, results)) = line.split_once("test result: ") else {
            continue;
        };
        for part in results.split([';', '.']) {
            match part.split_whitespace().collect::<Vec<_>>().as_slice() {
                [number, "passed"] => sum.passed += number.parse().unwrap_or(0),
                [number, "failed"] => sum.failed += number.parse().unwrap_or(0),
                _ => {}
            }
        }
    }
    sum
}

/// Reads the closing lines of Node's test runner; a test that was broken off counts as failed.
pub fn of_node_tests(lines: &[String]) -> Counts {
    let mut sum = Counts::default();
    for line in lines {
        match line.split_whitespace().collect::<Vec<_>>().as_slice() {
            ["#" | "ℹ", "pass", number] => sum.passed += number.parse().unwrap_or(0),
            ["#" | "ℹ", "fail" | "cancelled", number] => {
                sum.failed += number.parse().unwrap_or(0);
            }
            _ => {}
        }
    }
    sum
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lines(text: &str) -> Vec<String> {
        text.lines().map(str::to_owned).collect()
    }

    #[test]
    fn rust_counts_are_added_up() {
        let text = "running 3 tests\n\
            test result: ok. 3 passed; 0 failed; 0 ignored; 0 measured; 0 filtered out; finished in 0.00s\n\
            test result: FAILED. 5 passed; 2 failed; 1 ignored; 0 measured; 0 filtered out; finished in 1.25s";
        let sum = of_rust_tests(&lines(text));
        assert_eq!((sum.passed, sum.failed), (8, 2));
    }

    #[test]
    fn node_counts_are_read() {
        let text = "✔ fail 9 (3ms)\nℹ tests 6\nℹ pass 4\nℹ fail 1\nℹ cancelled 1\nℹ skipped 0";
        let sum = of_node_tests(&lines(text));
        assert_eq!((sum.passed, sum.failed), (4, 2));
    }

    #[test]
    fn a_run_that_broke_off_is_a_failure() {
        let (none, some) = (Counts::default(), Counts { passed: 3, failed: 0 });
        assert_eq!(none.of_run(false).failed, 1);
        assert_eq!(none.of_run(true).failed, 1, "nothing ran");
        assert_eq!(some.of_run(false).failed, 1);
        assert_eq!(some.of_run(true), some);
        let failed = Counts { passed: 3, failed: 2 };
        assert_eq!(failed.of_run(false), failed, "not counted twice");
    }
}
