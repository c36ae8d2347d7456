//! Writes the demo sets into a folder, byte for byte the same each time: typed readings, photographs of a screen, and
//! recorded traces; beside each what was really so.
//!
//! ```text
//! cargo run --release -p slope-of-light --example make_demo -- demo
//! ```

mod photographs;

use std::error::Error;
use std::fs;
use std::path::PathBuf;

use slope_of_light::analysis::analyse;
use slope_of_light::bundle::{self, BundleError, Entry};
use slope_of_light::notebook::Notebook;
use slope_of_light::report::pictures::charts;
use slope_of_light::synth::demo;
use slope_of_light::view::view;

fn main() -> Result<(), Box<dyn Error>> {
    let folder = PathBuf::from(std::env::args().nth(1).ok_or("name the folder to write into")?);
    fs::create_dir_all(&folder)?;
    for (name, text) in demo::files()? {
        fs::write(folder.join(name), text)?;
    }
    for (name, bytes) in photographs::files()? {
        fs::write(folder.join(name), bytes)?;
    }
    Ok(())
}

/// The bundle of a notebook with its files.
fn bundled(notebook: &Notebook, files: Vec<Entry>) -> Result<Vec<u8>, BundleError> {
    let analysis = analyse(notebook);
    let charts = charts(notebook.page(), &analysis, None);
    bundle::of(notebook, &analysis, &view(notebook, &analysis), &charts, None, files)
}
