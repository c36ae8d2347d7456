//! `measure NAME…`: rows `name`, tab, value, tab, unit on standard output; what else is worth knowing on standard
//! error. `measure --python` makes the environment of the general libraries and prints where its Python is;
//! `measure --once` takes each row once, at its smallest, and says so as a runner of tests does.
//!
//! A row `ours_vs_peer` is the peer's time over ours, both taken in one run: above 1 where ours is faster.
//! `wasm_vs_native_fit` is the time in a browser over the time natively: above 1 where the browser is slower.
//! `edit_200_rows_vs_floor` is the time of an edit over that of a bare replay of what it changes on the page.
//!
//! Run by `cargo measure`, which says by environment variables where the page is served and what to drive it by.

mod effort;
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
use std::time::Instant;

use anyhow::{Context, Result};
use page_tests::driver::Skipped;

use effort::Effort;
use peers::Peers;

/// What gives the value of a row.
#[derive(Clone, Copy)]
enum Way {
    /// The notebook by itself.
    Alone(fn(Effort) -> Result<f64>),
    /// The notebook beside a general library.
    Beside(fn(&Peers, Effort) -> Result<f64>),
}

use Way::{Alone, Beside};

/// A row: its name, its unit, and what gives its value.
type Row = (&'static str, &'static str, Way);

const ROWS: [Row; 18] = [
    ("fit_24_rows_vs_scipy_odr", "ratio", Beside(fits::of_24_rows)),
    ("fit_200_rows_shared_vs_scipy", "ratio", Beside(fits::of_200_rows)),
    ("monte_carlo_vs_numpy", "ratio", Beside(trials::beside_numpy)),
    ("wasm_vs_native_fit", "ratio", Alone(wasm::beside_native)),
    ("traces_500_vs_pandas_numpy", "ratio", Beside(traces::of_files)),
    ("cross_correlation_500_vs_numpy", "ratio", Beside(traces::by_correlation)),
    ("photo_12mp_ready_ms", "ms", Alone(photo::ready)),
    ("memory_100_pictures_mb", "MB", Alone(memory::of_100_pictures)),
    ("open_demo_ms", "ms", Alone(visits::open_demo)),
    ("open_20000_edits_ms", "ms", Alone(visits::open_20000_edits)),
    ("edit_200_rows_ms", "ms", Alone(visits::edit_200_rows)),
    ("edit_200_rows_vs_floor", "ratio", Alone(floor::edit_over_floor)),
    ("save_edit_ms", "ms", Alone(visits::save_edit)),
    ("bundle_ms", "ms", Alone(visits::bundle)),
    ("class_1000_s", "s", Alone(class::of_1000)),
    ("class_vs_scipy", "ratio", Beside(class::beside_scipy)),
    ("notices_right_first", "share", Alone(notices::right_first)),
    ("notices_false_alarms", "share", Alone(notices::false_alarms)),
];

/// Rows that time a wasm of their own: to compile it takes longer than to take all the others once.
const OF_OWN_WASM: [&str; 2] = ["wasm_vs_native_fit", "cross_correlation_500_vs_numpy"];

fn main() -> ExitCode {
    let names: Vec<String> = std::env::args().skip(1).collect();
    if names == ["--once"] {
        return once();
    }
    let mut code = ExitCode::SUCCESS;
    for name in names {
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
    let (_, unit, way) = ROWS.into_iter().find(|(row, ..)| *row == name).context("there is no such row")?;
    let value = match way {
        Alone(of) => of(Effort::Full),
        Beside(of) => of(&Peers::get()?, Effort::Full),
    }?;
    let decimals = if unit == "share" { 4 } else { 2 };
    println!("{name}\t{value:.decimals$}\t{unit}");
    Ok(())
}

/// Takes each row once: a class or a name that the page has no longer fails here, not on the day when a figure is asked for.
fn once() -> ExitCode {
    let peers = Peers::get();
    let (mut passed, mut failed) = (0, 0);
    for (name, _, way) in ROWS.into_iter().filter(|(name, ..)| !OF_OWN_WASM.contains(name)) {
        let begun = Instant::now();
        let outcome = match (way, &peers) {
            (Alone(of), _) => of(Effort::Once),
            (Beside(of), Ok(peers)) => of(peers, Effort::Once),
            (Beside(_), Err(why)) => {
                println!("test {name} ... skipped: the general libraries can't be had: {why:#}");
                continue;
            }
        };
        let time = begun.elapsed().as_secs_f64();
        match outcome {
            Ok(_) => {
                passed += 1;
                println!("test {name} ... ok <{time:.3}s>");
            }
            Err(why) if why.is::<Skipped>() => println!("test {name} ... skipped: {why}"),
            Err(why) => {
                failed += 1;
                println!("test {name} ... FAILED <{time:.3}s> ({why:#})");
            }
        }
    }
    println!("\n{passed} passed, {failed} failed");
    if failed == 0 { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}
