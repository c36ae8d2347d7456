//! `measure NAME…`: rows `name`, tab, value, tab, unit on standard output; what else is worth knowing on standard
//! error. `measure --python` makes the environment of the general libraries and prints where its Python is.
//!
//! A row `ours_vs_peer` is the peer's time over ours, both taken in one run: above 1 where ours is faster.
//! `wasm_vs_native_fit` is the time in a browser over the time natively: above 1 where the browser is slower.
//! `edit_200_rows_vs_floor` is the time of an edit over that of a bare replay of what it changes on the page.
//!
//! Run by `cargo measure`, which says by environment variables where the page is served and what to drive it by.

mod peers;
mod timing;
mod fits;
mod stage;
mod photo;
mod memory;
mod traces;
mod trials;
mod visits;
mod floor;
mod wasm;
mod notices;
mod class;

use std::process::ExitCode;

use anyhow::{Context, Result};

use peers::Peers;

/// A row: its name, its unit, and what gives its value.
type Row = (&'static str, &'static str, fn() -> Result<f64>);

const ROWS: [Row; 17] = [
    ("fit_24_rows_vs_scipy_odr", "ratio", || fits::of_24_rows(&Peers::get()?)),
    ("fit_200_rows_shared_vs_scipy", "ratio", || fits::of_200_rows(&Peers::get()?)),
    ("monte_carlo_vs_numpy", "ratio", || trials::beside_numpy(&Peers::get()?)),
    ("wasm_vs_native_fit", "ratio", wasm::beside_native),
    ("traces_500_vs_pandas_numpy", "ratio", || traces::of_files(&Peers::get()?)),
    ("cross_correlation_500_vs_numpy", "ratio", || traces::by_correlation(&Peers::get()?)),
    ("photo_12mp_ready_ms", "ms", photo::ready),
    ("memory_100_pictures_mb", "MB", memory::of_100_pictures),
    ("open_demo_ms", "ms", visits::open_demo),
    ("edit_200_rows_ms", "ms", visits::edit_200_rows),
    ("edit_200_rows_vs_floor", "ratio", floor::edit_over_floor),
    ("save_edit_ms", "ms", visits::save_edit),
    ("bundle_ms", "ms", visits::bundle),
    ("class_1000_s", "s", class::of_1000),
    ("class_vs_scipy", "ratio", || class::beside_scipy(&Peers::get()?)),
    ("notices_right_first", "share", notices::right_first),
    ("notices_false_alarms", "share", notices::false_alarms),
];

fn main() -> ExitCode {
    let mut code = ExitCode::SUCCESS;
    for name in std::env::args().skip(1) {
        if let Err(error) = print(&name) {
            eprintln!("{name} was not measured: {error:#}");
            code = ExitCode::FAILURE;
        }
    }
    code
}

fn print(name: &str) -> Result<()> {
    if name == "--python" {
        println!("{}", Peers::get()?.python().display());
        return Ok(());
    }
    let (_, unit, value) = ROWS.into_iter().find(|(row, ..)| *row == name).context("there is no such row")?;
    let decimals = if unit == "share" { 4 } else { 2 };
    println!("{name}\t{:.decimals$}\t{unit}", value()?);
    Ok(())
}
