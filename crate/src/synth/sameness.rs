//! Digests by which two builds of the program can be seen to give the same digits.

use super::{demo, random};
use crate::analysis::analyse;
use crate::bundle::sha256_hex;
use crate::notebook::{EditError, Notebook};

/// How many random notebooks are looked at beside the demo.
pub const RANDOM_NOTEBOOKS: u64 = 50;

/// The SHA-256, in hexadecimal, of the analysis of the demo and of each random notebook. Numbers enter with the
/// digits that read back to the same double, so that one differing bit gives another digest.
///
/// # Errors
/// None in practice: see [`super::rig::Rig::run`].
pub fn digests() -> Result<Vec<String>, EditError> {
    let mut all = vec![digest(&demo::typed_readings()?.0)];
    for seed in 0..RANDOM_NOTEBOOKS {
        all.push(digest(&random::rig(seed).run(seed)?.0));
    }
    Ok(all)
}

fn digest(notebook: &Notebook) -> String {
    // The analysis holds strings, numbers, lists and records only, which always have a JSON form.
    let json = serde_json::to_string(&analyse(notebook)).unwrap_or_default();
    sha256_hex(json.as_bytes())
}
