//! How a row was worked out, on the demo.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;
use crate::analysis::analyse;
use crate::simulated::demo;

/// Every row in the line tells distance, delay and residual, each with formula and source; the values are those of the
/// table.
#[test]
fn every_figure_of_a_row_says_how_it_came() {
    let (notebook, _) = demo::typed_readings().unwrap();
    let analysis = analyse(&notebook);
    let shown = crate::view::view(&notebook, &analysis);
    assert!(shown.rows.len() > 20);
    for row in shown.rows.iter().filter(|row| row.id != demo::STRUCK) {
        let figures = row_work(notebook.state(), &analysis, row.id);
        let ids: Vec<&str> = figures.iter().map(|figure| figure.id.as_str()).collect();
        assert_eq!(ids, ["row_distance", "row_delay", "row_residual"]);
        assert!(figures.iter().all(|figure| figure.formula.is_some() && figure.source.is_some()));
        assert_eq!(figures[0].value, format!("{}\u{a0}m", row.distance).into());
        assert_eq!(figures[1].value, format!("{}\u{a0}ns", row.delay).into());
        assert_eq!(figures[2].value, row.residual.as_str().into());
    }
    assert!(row_work(notebook.state(), &analysis, 999).is_empty());
}

/// The numbers put in: the first row stands at 20 cm on a ruler whose mark 12.5 cm is at the splitter.
#[test]
fn the_numbers_are_those_of_the_ruler() {
    let (notebook, _) = demo::typed_readings().unwrap();
    let figures = row_work(notebook.state(), &analyse(&notebook), 1);
    let formula = serde_json::to_string(&figures[0].formula).unwrap();
    assert!(formula.contains("12.5 cm"), "{formula}");
}
