//! `cargo measure [NAME…]`: figures, a row each: name, tab, value, tab, unit.
//!
//! The sizes are measured here; times by the package `measure`, which is given the names.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use anyhow::{Context, Result, bail};
use flate2::Compression;

use crate::files::{files_below, gzipped};
use crate::machine::Browser;
use crate::project::{Build, CORE, EVIDENCE, Project, WORKER, Wasm};
use crate::{bind, compile, help, pack, serve, shell, verify, words};

/// What is measured, and so what has to be built for it.
#[derive(Clone, Copy, PartialEq)]
enum Subject {
    /// The size of the packed page.
    Size,
    /// The library, natively.
    Library,
    /// The library, natively and in a browser.
    BothLibraries,
    /// The packed page, in a browser.
    Page,
    /// Modules of the page one by one, in a browser.
    Parts,
}

/// The rows, in the order in which they are printed: first those that are measured here.
const ROWS: [(&str, Subject); 23] = [
    ("wasm_gzip_bytes", Subject::Size),
    ("evidence_wasm_gzip_bytes", Subject::Size),
    ("page_gzip_bytes", Subject::Size),
    ("everything_gzip_bytes", Subject::Size),
    ("one_file_bytes", Subject::Size),
    ("fit_24_rows_vs_scipy_odr", Subject::Library),
    ("fit_200_rows_shared_vs_scipy", Subject::Library),
    ("monte_carlo_vs_numpy", Subject::Page),
    ("wasm_vs_native_fit", Subject::BothLibraries),
    ("traces_500_vs_pandas_numpy", Subject::Parts),
    ("cross_correlation_500_vs_numpy", Subject::BothLibraries),
    ("photo_12mp_ready_ms", Subject::Parts),
    ("memory_100_pictures_mb", Subject::Page),
    ("open_demo_ms", Subject::Page),
    ("open_20000_edits_ms", Subject::Page),
    ("edit_200_rows_ms", Subject::Page),
    ("edit_200_rows_vs_floor", Subject::Page),
    ("save_edit_ms", Subject::Page),
    ("bundle_ms", Subject::Page),
    ("class_1000_s", Subject::Page),
    ("class_vs_scipy", Subject::Page),
    ("notices_right_first", Subject::Library),
    ("notices_false_alarms", Subject::Library),
];

/// What is timed in a browser too: fits, and delays of traces.
const MEASURED: Wasm = Wasm { package: "measured", stem: "measured", fast: &[EVIDENCE] };

/// Builds what the rows need, prints the sizes, and runs the measurements.
///
/// # Errors
/// When a name is of no row, something does not build, no browser is to be had, or a measurement fails.
pub fn command(project: &Project, names: &[String]) -> Result<()> {
    let chosen = chosen(names)?;
    let is_chosen = |subject| chosen.iter().any(|(_, each)| *each == subject);
    if [Subject::Size, Subject::Page, Subject::Parts].into_iter().any(is_chosen) {
        pack::pack(project)?;
    }
    if is_chosen(Subject::Size) {
        let sizes = sizes(project)?;
        for (name, bytes) in sizes.iter().filter(|(size, _)| chosen.iter().any(|(name, _)| name == size)) {
            println!("{name}\t{bytes}\tbyte");
        }
    }
    let times = chosen.iter().filter(|(_, subject)| *subject != Subject::Size);
    let times: Vec<&str> = times.map(|(name, _)| *name).collect();
    if times.is_empty() {
        return Ok(());
    }
    let mut suite = shell::cargo(project);
    suite.args(["run", "--quiet", "--release", "-p", "measure", "--"]).args(times);
    verify::on_the_packed_page(&mut suite, project, &Browser::get()?)?;
    if is_chosen(Subject::BothLibraries) {
        let folder = project.bound(&MEASURED, Build::Small);
        bind::bind(&compile::library(project, &MEASURED, Build::Small)?, &folder, MEASURED.stem)?;
        let address = serve::in_background(folder)?;
        suite.env("SLOPE_MEASURED", format!("http://{address}/{}.js", MEASURED.stem));
    }
    if is_chosen(Subject::Parts) {
        let address = serve::in_background(pack::source(project)?)?;
        suite.env("SLOPE_PARTS", format!("http://{address}/"));
    }
    shell::run(&mut suite)
}

/// The rows of these names, or all of them when there are no names.
fn chosen(names: &[String]) -> Result<Vec<(&'static str, Subject)>> {
    if let Some(stranger) = names.iter().find(|name| ROWS.iter().all(|(row, _)| row != name)) {
        let rows = ROWS.map(|(row, _)| row).join(", ");
        bail!("there is no row {stranger:?}; there are {rows}");
    }
    let asked = |row: &str| names.is_empty() || names.iter().any(|name| name == row);
    Ok(ROWS.into_iter().filter(|(row, _)| asked(row)).collect())
}

/// What of the site a visit loads, in bytes.
#[derive(Default)]
struct Visit {
    /// Before the page is ready, each wasm aside.
    page: u64,
    /// In all.
    everything: u64,
}

/// The sizes of each wasm, of all else that is loaded before the page is ready, of everything that a visit may load (in the
/// language that has most; no demo sets), and of the one file, by the names of their rows; all but the last compressed, each file by itself, as a
/// host would send them.
fn sizes(project: &Project) -> Result<[(&'static str, u64); 5]> {
    let dist = project.dist();
    let at_once = pack::page_scripts(&project.bundled("site"))?;
    let one_file = dist.join(pack::ONE_FILE);
    let mut sizes = Visit::default();
    let mut by_language: BTreeMap<String, Visit> = BTreeMap::new();
    for file in files_below(&dist)? {
        let inside = file.strip_prefix(&dist).unwrap_or(&file);
        if file == one_file || ["demo", "schema"].iter().any(|folder| inside.starts_with(folder)) {
            continue;
        }
        let bytes = compressed(&file)?;
        let visit = match words::language_of(inside) {
            Some(language) => by_language.entry(language.to_owned()).or_default(),
            None => &mut sizes,
        };
        visit.everything += bytes;
        let name = inside.to_string_lossy();
        let at_once = at_once.contains(name.as_ref())
            || [".html", ".css", ".svg", ".ftl"].iter().any(|end| name.ends_with(end));
        let late_words = words::late_file(words::language_of(inside).unwrap_or_default());
        let late = [late_words.as_str(), pack::LATE_STYLE].contains(&name.as_ref());
        if at_once && !late && !inside.starts_with(help::FOLDER) {
            visit.page += bytes;
        }
    }
    let most = |of: fn(&Visit) -> u64| by_language.values().map(of).max().unwrap_or_default();
    let (page, everything) =
        (sizes.page + most(|visit| visit.page), sizes.everything + most(|visit| visit.everything));
    let one_file =
        fs::metadata(&one_file).with_context(|| format!("could not read {}", one_file.display()))?;
    Ok([
        ("wasm_gzip_bytes", compressed(&dist.join(CORE.file()))?),
        ("evidence_wasm_gzip_bytes", compressed(&dist.join(WORKER.file()))?),
        ("page_gzip_bytes", page),
        ("everything_gzip_bytes", everything),
        ("one_file_bytes", one_file.len()),
    ])
}

/// The size of a file after gzip at its best.
fn compressed(path: &Path) -> Result<u64> {
    let bytes = fs::read(path).with_context(|| format!("could not read {}", path.display()))?;
    Ok(u64::try_from(gzipped(&bytes, Compression::best())?.len())?)
}

#[cfg(test)]
#[path = "measure_test.rs"]
mod tests;
