//! A small bench for the tests: one rail from the splitter on, and what a screen would show along it.
//!
//! The delays are those of light in vacuum, t = d / c with c = 299 792 458 m/s exactly (BIPM, The International
//! System of Units, 9th edition, 2019, section 2.3), worked out by hand for this bench.

use anyhow::Result;

use crate::names;
use crate::page::Page;

/// Speed of light, m/s.
pub const C: f64 = 299_792_458.0;
/// Time base of every row, ns a division.
pub const TIME_BASE: &str = "2";
/// Division at which the first pulse is read in every row.
pub const EDGE_A: &str = "1.00";
/// Mark of the carriage in mm, and division at which the second pulse is read: 1 + d / (c · 2 ns).
pub const ROWS: [(&str, &str); 5] =
    [("1000", "2.67"), ("2000", "4.34"), ("3000", "6.00"), ("4000", "7.67"), ("5000", "9.34")];

/// Describes the rail: named “A”, in millimetres from 0 to 6000, with 0 at the splitter.
///
/// # Errors
/// When the page does not take it.
pub fn describe_rail(page: &Page) -> Result<()> {
    page.click("Add a rail")?;
    for (name, text) in [("Name used in the readings", "A"), ("First mark", "0"), ("Last mark", "6000")] {
        page.fill(name, text)?;
    }
    page.choose("Unit of the ruler", "millimetres")?;
    page.choose("Known from", "ruler reading at the splitter")?;
    page.fill("Mark at the splitter", "0")?;
    page.fill("Uncertainty of this position", "1 mm")
}

/// The block of the first `rows` readings, as a spreadsheet copies it.
pub fn block(rows: usize) -> String {
    let lines: Vec<String> = ROWS
        .iter()
        .take(rows)
        .map(|(mark, edge)| format!("A\t{mark}\t{TIME_BASE}\t{EDGE_A}\t{edge}"))
        .collect();
    lines.join("\n")
}

/// The rail with all five readings in the rows.
///
/// # Errors
/// When the page does not take them.
pub fn fill(page: &Page) -> Result<()> {
    describe_rail(page)?;
    page.paste(&names::new_cell("Rail"), &block(ROWS.len()))?;
    page.sees(names::ROWS_USED, &names::rows_used(ROWS.len(), ROWS.len()))
}
