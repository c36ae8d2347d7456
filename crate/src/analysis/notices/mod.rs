//! What the notebook notices by itself.
//!
//! Each notice has a stable identifier, says what was seen and what to look at, and names the rows concerned. It
//! never changes a number. Thresholds are common practice (no source) unless a source is named.

// What every notice looks at.
mod input;

// What the rows show by themselves.
mod readings;

// What would mend it.
mod repairs;

// What pictures and traces show.
mod delays;

// What the line and the speed show.
mod results;

// What went wrong.
mod causes;

pub use input::NoticeInput;

use super::notice::Notice;

/// All notices: what went wrong first, with the signs of it under it; otherwise the most serious first, in the order of
/// the page.
pub fn notices(input: &NoticeInput) -> Vec<Notice> {
    let mut all = readings::notices(input);
    all.extend(delays::notices(input));
    if let Some(line) = input.line {
        all.extend(results::notices(input, line));
    }
    if let (Some(line), Some(speed)) = (input.line, input.speed) {
        all.extend(results::of_speed(input, line, speed));
    }
    causes::ordered(causes::notices(input), all)
}

#[cfg(test)]
#[path = "mod_test.rs"]
mod tests;
