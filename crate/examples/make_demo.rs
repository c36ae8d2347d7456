//! Writes the demo notebooks into a folder, byte for byte the same each time.
//!
//! ```text
//! cargo run -p slope-of-light --example make_demo -- demo
//! ```

use std::error::Error;
use std::fs;
use std::path::PathBuf;

use slope_of_light::synth::demo;

fn main() -> Result<(), Box<dyn Error>> {
    let folder = PathBuf::from(std::env::args().nth(1).ok_or("name the folder to write into")?);
    fs::create_dir_all(&folder)?;
    for (name, text) in demo::files()? {
        fs::write(folder.join(name), text)?;
    }
    Ok(())
}
