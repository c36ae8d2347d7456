//! Summary lines as `cargo test`, the wasm runner and the page suite print them.

use super::Count;
use crate::shell::Heard;

fn heard(lines: &[&str], success: bool) -> Count {
    Count::heard(&Heard { lines: lines.iter().map(|line| (*line).to_owned()).collect(), success })
}

#[test]
fn summary_lines_are_summed() {
    let lines = [
        "running 3 tests",
        "test result: ok. 3 passed; 0 failed; 1 ignored; 0 measured; 0 filtered out; finished in 0.01s",
        "test result: FAILED. 2 passed; 1 failed; 0 ignored; 0 measured; 0 filtered out; finished in 0.00s",
    ];
    assert_eq!(heard(&lines, false), Count { passed: 5, failed: 1 });
    assert_eq!(heard(&["the page", "7 passed, 0 failed"], true), Count { passed: 7, failed: 0 });
    assert_eq!(heard(&["the word passed, and failed"], true), Count { passed: 0, failed: 1 });
}

#[test]
fn nothing_passes_in_silence() {
    assert_eq!(heard(&[], true), Count { passed: 0, failed: 1 });
    assert_eq!(
        heard(&["test result: ok. 4 passed; 0 failed; 0 ignored"], false),
        Count { passed: 4, failed: 1 }
    );
}
