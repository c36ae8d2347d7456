//! Counts of passed and failed checks, and reading them from what the test runners print.

use std::fmt;
use std::ops::AddAssign;

use crate::shell::Heard;

/// How many checks passed and failed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Count {
    /// Checks that passed.
    pub passed: usize,
    /// Checks that failed.
    pub failed: usize,
}

impl Count {
    /// One check.
    pub fn one(passed: bool) -> Self {
        Self { passed: usize::from(passed), failed: usize::from(!passed) }
    }

    /// The sum of the summary lines a runner printed. A runner that failed without counting a failure, or that
    /// ran no test at all, counts as one failure: nothing passes in silence.
    pub fn heard(heard: &Heard) -> Self {
        let mut sum = Self::default();
        for count in heard.lines.iter().filter_map(|line| Self::of_line(line)) {
            sum += count;
        }
        if sum.failed == 0 && (!heard.success || sum.passed == 0) {
            sum.failed = 1;
        }
        sum
    }

    /// The counts in `test result: ok. 3 passed; 1 failed; …` or `3 passed, 1 failed`.
    fn of_line(line: &str) -> Option<Self> {
        let line = line.trim();
        let counts = match line.strip_prefix("test result: ") {
            Some(result) => result.split_once(". ")?.1,
            None => line,
        };
        let mut parts = counts.split([';', ',']).map(str::trim);
        let passed = parts.next()?.strip_suffix(" passed")?.parse().ok()?;
        let failed = parts.next()?.strip_suffix(" failed")?.parse().ok()?;
        Some(Self { passed, failed })
    }
}

impl AddAssign for Count {
    fn add_assign(&mut self, other: Self) {
        self.passed += other.passed;
        self.failed += other.failed;
    }
}

impl fmt::Display for Count {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} passed, {} failed", self.passed, self.failed)
    }
}

#[cfg(test)]
#[path = "summary_test.rs"]
mod tests;
