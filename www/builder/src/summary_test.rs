//! Lines as `cargo test`, the wasm runner and the page suite print them.

use std::time::Duration;

use super::Tally;
use crate::shell::Heard;

fn heard(lines: &[&str], success: bool) -> Tally {
    Tally::heard(&Heard { lines: lines.iter().map(|line| (*line).to_owned()).collect(), success })
}

fn counts(tally: &Tally) -> (usize, usize, usize) {
    (tally.passed, tally.failed, tally.skipped.len())
}

#[test]
fn summary_lines_are_summed() {
    let lines = [
        "running 3 tests",
        "test result: ok. 3 passed; 0 failed; 1 ignored; 0 measured; 0 filtered out; finished in 0.01s",
        "test result: FAILED. 2 passed; 1 failed; 0 ignored; 0 measured; 0 filtered out; finished in 0.00s",
    ];
    assert_eq!(counts(&heard(&lines, false)), (5, 1, 0));
    assert_eq!(counts(&heard(&["the page", "7 passed, 0 failed"], true)), (7, 0, 0));
    assert_eq!(counts(&heard(&["the word passed, and failed"], true)), (0, 1, 0));
}

#[test]
fn nothing_passes_in_silence() {
    assert_eq!(counts(&heard(&[], true)), (0, 1, 0));
    assert_eq!(counts(&heard(&["test result: ok. 4 passed; 0 failed; 0 ignored"], false)), (4, 1, 0));
}

/// What a test says of itself, what is ignored here and nowhere else run, and what the page suite skips.
#[test]
fn what_is_skipped_is_counted_as_skipped() {
    let lines = [
        "test one ... ok <0.500s>",
        "test two ... ok <0.001s>",
        "test three ... ignored, needs a mouse",
        "test four ... ignored, cargo verify long",
        "successes:",
        "---- two stdout ----",
        "skipped: no python3",
        "test result: ok. 2 passed; 0 failed; 2 ignored; 0 measured; 0 filtered out; finished in 0.01s",
    ];
    let tally = heard(&lines, true).of("native");
    assert_eq!(counts(&tally), (1, 0, 2));
    assert_eq!(tally.skipped, ["native: three: needs a mouse", "native: two: no python3"]);
    let lines = ["test kill ... skipped: no /proc here", "0 passed, 0 failed"];
    assert_eq!(counts(&heard(&lines, true)), (0, 0, 1));
}

#[test]
fn the_slowest_tests_stand_first() {
    let lines =
        ["test quick ... ok <0.012s>", "test slow - should panic ... ok <61.5s>", "1 passed, 0 failed"];
    let tally = heard(&lines, true);
    let slowest = tally.slowest(1);
    let named: Vec<(&str, Duration)> = slowest.iter().map(|test| (test.name.as_str(), test.time)).collect();
    assert_eq!(named, [("slow - should panic", Duration::from_millis(61_500))]);
    assert_eq!(tally.slowest(5).len(), 2);
}
