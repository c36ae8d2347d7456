//! `measure [NAME…]`: rows `name`, tab, value, tab, unit on standard output; what else is worth knowing on standard
//! error. A `_vs_` row is a ratio taken in one run, above 1 where ours is faster.
//!
//! Run by `cargo measure`, which says by environment variables where the page is served and what to drive it by.

mod benches;
mod fits;
mod peers;
mod timing;
mod visits;

use anyhow::Result;

use peers::Peers;

/// A row: its name, its unit, and what gives its value.
type Row = (&'static str, &'static str, fn() -> Result<f64>);

const ROWS: [Row; 6] = [
    ("fit_24_rows_vs_scipy_odr", "ratio", || fits::of_24_rows(&Peers::get()?)),
    ("fit_200_rows_shared_vs_scipy", "ratio", || fits::of_200_rows(&Peers::get()?)),
    ("open_demo_ms", "ms", visits::open_demo),
    ("edit_200_rows_ms", "ms", visits::edit_200_rows),
    ("save_edit_ms", "ms", visits::save_edit),
    ("bundle_ms", "ms", visits::bundle),
];

fn main() {
    let names: Vec<String> = std::env::args().skip(1).collect();
    for (name, unit, value) in ROWS {
        if !names.is_empty() && !names.iter().any(|wanted| wanted == name) {
            continue;
        }
        match value() {
            Ok(value) => println!("{name}\t{value:.1}\t{unit}"),
            Err(error) => eprintln!("{name} was not measured: {error:#}"),
        }
    }
}
