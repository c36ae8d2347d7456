//! `cargo measure [NAME…]`: figures, a row each: name, tab, value, tab, unit.
//!
//! The sizes are measured here; times by the package `measure`, which is given the names.

use std::fs;
use std::io::Write as _;
use std::path::Path;

use anyhow::{Context, Result};
use flate2::Compression;
use flate2::write::GzEncoder;

use crate::machine::Browser;
use crate::project::{Project, STEM};
use crate::{pack, shell, verify};

const SIZES: [&str; 3] = ["wasm_gzip_bytes", "page_gzip_bytes", "one_file_bytes"];

/// Packs the page, prints its sizes, and runs the measurements.
///
/// # Errors
/// When the page does not build, no browser is to be had, or a measurement fails.
pub fn command(project: &Project, names: &[String]) -> Result<()> {
    pack::pack(project)?;
    let asked = |row: &str| names.is_empty() || names.iter().any(|name| name == row);
    for (name, bytes) in sizes(&project.dist())?.iter().filter(|(name, _)| asked(name)) {
        println!("{name}\t{bytes}\tbyte");
    }
    let others: Vec<&String> = names.iter().filter(|name| !SIZES.contains(&name.as_str())).collect();
    if names.is_empty() || !others.is_empty() {
        let mut suite = verify::page_suite(project, "measure", &Browser::get()?)?;
        shell::run(suite.args(["--release", "--"]).args(others))?;
    }
    Ok(())
}

/// The size of the wasm, of all else the served page loads, and of the one file; the first two compressed, each
/// file by itself, as a host would send them.
fn sizes(dist: &Path) -> Result<[(&'static str, u64); 3]> {
    let wasm = dist.join(format!("{STEM}_bg.wasm"));
    let one_file = dist.join(pack::ONE_FILE);
    let mut page = 0;
    for file in pack::files_below(dist)? {
        let apart = ["demo", "schema"].iter().any(|folder| file.starts_with(dist.join(folder)));
        if file != wasm && file != one_file && !apart {
            page += compressed(&file)?;
        }
    }
    let [first, second, third] = SIZES;
    let one_file =
        fs::metadata(&one_file).with_context(|| format!("could not read {}", one_file.display()))?;
    Ok([(first, compressed(&wasm)?), (second, page), (third, one_file.len())])
}

/// The size of a file after gzip at its best.
fn compressed(path: &Path) -> Result<u64> {
    let bytes = fs::read(path).with_context(|| format!("could not read {}", path.display()))?;
    let mut encoder = GzEncoder::new(Vec::new(), Compression::best());
    encoder.write_all(&bytes)?;
    Ok(u64::try_from(encoder.finish()?.len())?)
}
