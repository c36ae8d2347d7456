//! Writes the demo notebooks into a folder, byte for byte the same each time.
//!
//! ```text
//! cargo run -p slope-of-light --example make_demo -- demo
//! ```

use std::error::Error;
use std::fs;
use std::path::PathBuf;

use slope_of_light::notebook::write;
use slope_of_light::synth::demo;

fn main() -> Result<(), Box<dyn Error>> {
    let folder = PathBuf::from(std::env::args().nth(1).ok_or("name the folder to write into")?);
    fs::create_dir_all(&folder)?;
    let (notebook, truth) = demo::typed_readings()?;
    fs::write(folder.join("typed-readings.json"), write(&notebook))?;
    let truth = serde_json::json!({
        "seed": demo::SEED,
        "c_m_per_s": truth.c,
        "t0_ns": truth.t0,
        "rail_marks_m": truth.marks,
        "row_distances_m": truth.distances,
    });
    fs::write(
        folder.join("typed-readings.truth.json"),
        format!("{}\n", serde_json::to_string_pretty(&truth)?),
    )?;
    Ok(())
}
