//! What came of checks: counts, what was skipped and why, how long tests took; read from what test runners print.

use std::fmt;
use std::ops::AddAssign;
use std::time::Duration;

use crate::shell::Heard;

/// A test that a part of `cargo verify` runs by itself is ignored elsewhere with a reason that begins so.
const OF_ANOTHER_PART: &str = "cargo verify ";
/// What a test prints that could not do its work here, before the reason.
const SKIPPED: &str = "skipped: ";

/// What came of some checks.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Tally {
    /// Checks that passed.
    pub passed: usize,
    /// Checks that failed.
    pub failed: usize,
    /// Checks that could not be made here, each with the reason.
    pub skipped: Vec<String>,
    /// Tests whose time was told.
    pub timed: Vec<Timed>,
}

/// A test and how long it took.
#[derive(Clone, Debug, PartialEq)]
pub struct Timed {
    /// Its name.
    pub name: String,
    /// Its time.
    pub time: Duration,
}

impl Tally {
    /// One check.
    pub fn one(passed: bool) -> Self {
        Self { passed: usize::from(passed), failed: usize::from(!passed), ..Self::default() }
    }

    /// A check that could not be made.
    pub fn skipped(what: &str, why: &str) -> Self {
        println!("skipped: {what}: {why}");
        Self { skipped: vec![format!("{what}: {why}")], ..Self::default() }
    }

    /// The sum of the summary lines that runners printed, and what they said of single tests. A runner that failed
    /// without counting a failure, or that ran no test at all, counts as one failure: nothing passes in silence.
    pub fn heard(heard: &Heard) -> Self {
        let mut sum = Self::default();
        // The test whose output is being read, and how many said there that they were skipped: their runner could only
        // count them as passed.
        let (mut named, mut said_so) = (String::new(), 0);
        for line in heard.lines.iter().map(|line| line.trim()) {
            if let Some((passed, failed)) = counts(line) {
                sum.passed += passed;
                sum.failed += failed;
            } else if let Some(name) = line.strip_prefix("---- ").and_then(|l| l.strip_suffix(" stdout ----"))
            {
                name.clone_into(&mut named);
            } else if let Some(why) = line.strip_prefix(SKIPPED).filter(|_| !named.is_empty()) {
                sum.skipped.push(format!("{named}: {why}"));
                said_so += 1;
                named.clear();
            } else if let Some((name, said)) = of_test(line) {
                sum.note(name, said);
            }
        }
        sum.passed = sum.passed.saturating_sub(said_so);
        if sum.failed == 0 && (!heard.success || sum.passed + sum.skipped.len() == 0) {
            sum.failed = 1;
        }
        sum
    }

    /// Takes what a runner said of one test.
    fn note(&mut self, name: &str, said: &str) {
        if let Some(why) = said.strip_prefix("ignored") {
            let why = why.trim_start_matches(", ");
            if !why.starts_with(OF_ANOTHER_PART) {
                self.skipped.push(format!("{name}: {}", if why.is_empty() { "ignored" } else { why }));
            }
        } else if let Some(why) = said.strip_prefix(SKIPPED) {
            self.skipped.push(format!("{name}: {why}"));
        } else if let Some(time) = time(said) {
            self.timed.push(Timed { name: name.into(), time });
        }
    }

    /// With the names of all tests, and of what was skipped, preceded by where they belong.
    pub fn of(mut self, place: &str) -> Self {
        for name in self.timed.iter_mut().map(|test| &mut test.name).chain(&mut self.skipped) {
            *name = format!("{place}: {name}");
        }
        self
    }

    /// The tests that took longest, the slowest first.
    pub fn slowest(&self, count: usize) -> Vec<&Timed> {
        let mut tests: Vec<&Timed> = self.timed.iter().collect();
        tests.sort_by_key(|test| std::cmp::Reverse(test.time));
        tests.truncate(count);
        tests
    }
}

/// Passed and failed in `test result: ok. 3 passed; 1 failed; …` or `3 passed, 1 failed`.
fn counts(line: &str) -> Option<(usize, usize)> {
    let counts = match line.strip_prefix("test result: ") {
        Some(result) => result.split_once(". ")?.1,
        None => line,
    };
    let mut parts = counts.split([';', ',']).map(str::trim);
    let passed = parts.next()?.strip_suffix(" passed")?.parse().ok()?;
    let failed = parts.next()?.strip_suffix(" failed")?.parse().ok()?;
    Some((passed, failed))
}

/// The name of a test and what is said of it, in `test NAME ... ok <0.012s>`.
fn of_test(line: &str) -> Option<(&str, &str)> {
    line.strip_prefix("test ")?.split_once(" ... ")
}

/// The time in `ok <0.012s>`.
fn time(said: &str) -> Option<Duration> {
    let (_, rest) = said.split_once('<')?;
    let seconds: f64 = rest.split_once("s>")?.0.parse().ok()?;
    Duration::try_from_secs_f64(seconds).ok()
}

impl AddAssign for Tally {
    fn add_assign(&mut self, other: Self) {
        self.passed += other.passed;
        self.failed += other.failed;
        self.skipped.extend(other.skipped);
        self.timed.extend(other.timed);
    }
}

impl fmt::Display for Tally {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} passed, {} failed", self.passed, self.failed)
    }
}

#[cfg(test)]
#[path = "summary_test.rs"]
mod tests;
