//! The exports of each wasm, whose types the glue names in texts that no compiler reads: what is named there must be made,
//! or read, as the Rust type of that name.
//!
//! `Types.X` is made by `to_js::<X>(…)` and read by `from_js::<X>(…)`, `Types.X[]` as `Vec<X>`, and `Types.X | null` as
//! `Option<X>`; what comes in may be `undefined` for none, what goes out is `undefined` where nothing is made.

use crate::sources::Sources;

/// Where exports stand.
const EXPORTS: [&str; 2] = ["crate/src/web/", "crate/worker/src/web/"];

/// How what an export gives is named.
const GIVEN: &str = "unchecked_return_type = \"";

/// How what it takes is named.
const TAKEN: &str = "unchecked_param_type = \"";

/// The types that the page knows.
const TYPES: &str = "Types.";

/// What exports name otherwise than they make or read it.
pub fn misnamed(sources: &Sources) -> Vec<String> {
    let files = sources.0.iter().filter(|(path, _)| EXPORTS.iter().any(|place| path.starts_with(place)));
    files.flat_map(|(path, text)| misnamed_in(path, text)).collect()
}

fn misnamed_in(path: &str, text: &str) -> Vec<String> {
    let lines: Vec<&str> = text.lines().collect();
    let mut faults = Vec::new();
    for (number, line) in lines.iter().enumerate() {
        for (begin, is_given) in [(GIVEN, true), (TAKEN, false)] {
            let Some((_, rest)) = line.split_once(begin) else { continue };
            let named = rest.split('"').next().unwrap_or_default();
            // What is handed in to be called is no value.
            if !named.contains(TYPES) || named.contains("=>") {
                continue;
            }
            let indent = line.len() - line.trim_start().len();
            let body = body(&lines[number..], if is_given { indent } else { indent.saturating_sub(4) });
            if !is_made(named, is_given, &body) {
                faults
                    .push(format!("{path}:{} names {named}, and makes or reads nothing as that", number + 1));
            }
        }
    }
    faults
}

/// The lines of a function up to its last brace, which stands as far in as the function.
fn body(lines: &[&str], indent: usize) -> String {
    let end = format!("{}}}", " ".repeat(indent));
    lines.iter().take_while(|line| **line != end).copied().collect()
}

fn is_made(named: &str, is_given: bool, body: &str) -> bool {
    let none = if is_given { " | null" } else { " | undefined" };
    let (value, may_lack) = match named.strip_suffix(none) {
        Some(value) => (value, true),
        None => (named.strip_suffix(" | undefined").unwrap_or(named), false),
    };
    let (item, is_list) = value.strip_suffix("[]").map_or((value, false), |item| (item, true));
    let (before, name) = item.split_once(TYPES).unwrap_or_default();
    let name: String = name.chars().take_while(|letter| letter.is_alphanumeric()).collect();
    let is_plain = before.is_empty() && item.len() == TYPES.len() + name.len();
    let mut made = body.split("::<").skip(1).filter_map(|rest| Some(rest.split_once(">(")?.0));
    let wrapped =
        |of: bool, wrapper: &str, inner: String| if of { format!("{wrapper}<{inner}>") } else { inner };
    let expected = wrapped(may_lack, "Option", wrapped(is_list, "Vec", name.clone()));
    made.any(|made| if is_plain { made == expected } else { made.contains(&name) })
}

#[cfg(test)]
#[path = "exports_test.rs"]
mod tests;
