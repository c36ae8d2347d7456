//! Reads a `notebook.json` from standard input and writes its analysis as JSON on standard output.
//!
//! ```text
//! cargo run -p slope-of-light --example analyse < notebook.json
//! ```
//!
//! Lengths are in metres, times in nanoseconds, speeds in metres per second. What can't be computed is there as
//! `{"Err": {"id", "rows", "message"}}`. Numbers have the fewest digits that read back to the same double.

use std::io::{Read, Write};
use std::process::ExitCode;

use slope_of_light::analysis::analyse;
use slope_of_light::notebook::read;

fn main() -> ExitCode {
    match run() {
        Ok(()) => ExitCode::SUCCESS,
        Err(message) => {
            eprintln!("{message}");
            ExitCode::FAILURE
        }
    }
}

fn run() -> Result<(), String> {
    let mut text = String::new();
    std::io::stdin().read_to_string(&mut text).map_err(|e| format!("standard input can't be read: {e}"))?;
    let notebook = read(&text).map_err(|e| e.to_string())?;
    let json = serde_json::to_string_pretty(&analyse(&notebook)).map_err(|e| e.to_string())?;
    writeln!(std::io::stdout(), "{json}").map_err(|e| format!("standard output can't be written: {e}"))
}
