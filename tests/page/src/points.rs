//! The points of the plots as a table: what it tells, and how it is gone through by keys; and the tables of other drawings.

use std::fs;

use anyhow::{Context, Result, ensure};
use fantoccini::key::Key;
use serde_json::json;
use slope_of_light::analysis::analyse;
use slope_of_light::chart::bench_table;
use slope_of_light::drawings::bench_picture;
use slope_of_light::notebook;
use slope_of_light::words::{WordTable, Words as _};

use crate::bench::{self, ROWS};
use crate::names;
use crate::page::{Page, eventually};
use crate::stage::Stage;
use crate::uncertainty;

/// The summary of the table.
const TABLE: &str = "The points as a table";
const POINTS: &str = "#points-table tbody tr";
/// The second of them.
const SECOND: &str = "#points-table tbody tr:nth-child(2)";
/// What the table tells of each point, and what each row tells of itself: distance, delay, residual.
const TOLD: &str = "
    const texts = (rows, cells) => [...document.querySelectorAll(rows)].map((row) =>
        [...row.querySelectorAll(cells)].map((cell) => cell.textContent));
    return [texts('#points-table tbody tr', 'td'), texts('#readings-table > tbody:not([data-row=new])', 'output')]";

/// Open, the table tells the points as the rows tell them, and follows them; folded, it holds nothing. Both plots name it as
/// where more is told.
///
/// # Errors
/// When it is otherwise.
pub fn points_stand_in_a_table(stage: &Stage) -> Result<()> {
    const DETAILS: &str = "return ['line-plot', 'residual-plot'].map((id) =>
        document.getElementById(document.getElementById(id).getAttribute('aria-details'))?.localName)";
    let page = stage.blank_page()?;
    bench::fill(&page)?;
    let details = page.browser.run(DETAILS, vec![])?;
    ensure!(details == json!(["details", "details"]), "the plots name {details}");
    ensure!(page.count(POINTS)? == 0, "the table is filled before it is open");
    page.click(TABLE)?;
    let first = alike(&page, None)?;
    page.type_in_cell("Edge B", 2, "5.34")?;
    alike(&page, Some(&first))?;
    page.click("Strike out row 2")?;
    page.type_text("read from the wrong pulse")?;
    page.press(Key::Enter)?;
    page.sees(names::ROWS_USED, &names::rows_used(ROWS.len() - 1, ROWS.len()))?;
    page.reads(SECOND, "Struck out: read from the wrong pulse")?;
    page.click(TABLE)?;
    eventually("the folded table is empty", || page.count(POINTS), |count| *count == 0)?;
    page.is_silent()
}

/// Waits until the table tells all points as the rows do, and otherwise than `before`; gives what it tells.
fn alike(page: &Page, before: Option<&[Vec<String>]>) -> Result<Vec<Vec<String>>> {
    let told = || Ok(serde_json::from_value::<[Vec<Vec<String>>; 2]>(page.browser.run(TOLD, vec![])?)?);
    let are_right = |[points, rows]: &[Vec<Vec<String>>; 2]| {
        points.len() == ROWS.len()
            && points == rows
            && points.iter().flatten().all(|text| !text.is_empty())
            && before != Some(points.as_slice())
    };
    let [points, _] = eventually("the table tells what the rows tell", told, are_right)?;
    Ok(points)
}

/// Arrow keys, Home and End go from point to point, each of which says all of its row; Tab comes to the one where one was,
/// and Enter leads into its row, from another leaf too.
///
/// # Errors
/// When they do not.
pub fn points_are_walked(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    bench::fill(&page)?;
    page.turn_to("[data-leaf=line]")?;
    page.click(TABLE)?;
    eventually("the points are there", || page.count(POINTS), |count| *count == ROWS.len())?;
    page.press(Key::Tab)?;
    is_at(&page, 1)?;
    let steps = [
        (Key::Down, 2),
        (Key::End, 5),
        (Key::Down, 5),
        (Key::Up, 4),
        (Key::Home, 1),
        (Key::Up, 1),
        (Key::Down, 2),
    ];
    for (key, row) in steps {
        page.press(key)?;
        is_at(&page, row)?;
    }
    let distance = page.text(&format!("{SECOND} td"))?;
    let said = page.focused()?;
    ensure!(
        said.starts_with(&format!("Row 2: distance {distance}")),
        "row 2 at {distance} is called {said:?}"
    );
    page.tab_back()?;
    page.focuses(TABLE)?;
    page.press(Key::Tab)?;
    is_at(&page, 2)?;
    page.press(Key::Enter)?;
    page.focuses(&names::cell("Rail", 2))?;
    ensure!(page.is_in_sight(&names::cell("Rail", 2))?, "the row is out of sight");
    page.is_silent()
}

/// That the point of a row has the focus.
fn is_at(page: &Page, row: usize) -> Result<()> {
    let said = page.focused()?;
    ensure!(said.starts_with(&format!("Row {row}: ")), "not row {row} has the focus, but {said:?}");
    Ok(())
}

/// The drawing of the bench stands in a table as it does natively, and the bins of the trials follow on one another and make
/// up nearly all trials; each is filled while it is open, and named by its drawing.
///
/// # Errors
/// When it is otherwise.
pub fn drawings_stand_in_tables(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    let text = fs::read_to_string(stage.dist.join(names::DEMO)).context("the demo is not packed")?;
    let notebook = notebook::read(&text)?;
    let words = WordTable::english()?;
    let bench = bench_table(&bench_picture(notebook.state(), &analyse(&notebook)));
    let bench: Vec<Vec<String>> =
        bench.rows.iter().map(|row| row.iter().map(|cell| words.text(cell)).collect()).collect();
    ensure!(bench.len() > 1, "the demo has hardly any rails");
    page.turn_to("#bench-plot")?;
    ensure!(cells(&page, "bench-plot")?.is_empty(), "the table is filled before it is open");
    page.click("The drawing as a table")?;
    eventually("the bench stands in a table", || cells(&page, "bench-plot"), |shown| *shown == bench)?;

    page.fill("Number of trials", "30000")?;
    uncertainty::run(&page)?;
    page.browser.run("document.getElementById('trials-plot-table').open = true", vec![])?;
    let bins =
        eventually("the trials stand in a table", || cells(&page, "trials-plot"), |bins| bins.len() > 10)?;
    ensure!(bins.windows(2).all(|pair| pair[0][1] == pair[1][0]), "the bins are not side by side: {bins:?}");
    let shares = bins.iter().map(|bin| Ok([bin[2].parse::<f64>()?, bin[3].parse::<f64>()?]));
    let shares = shares.collect::<Result<Vec<[f64; 2]>>>()?;
    for which in [0, 1] {
        let whole: f64 = shares.iter().map(|share| share[which]).sum();
        ensure!((95.0..100.1).contains(&whole), "the bins make up {whole} %");
    }
    // Of 30 000 trials at most some 1300 fall in a bin: its share has a standard uncertainty of 0.12 %.
    ensure!(shares.iter().all(|[found, expected]| (found - expected).abs() < 1.0), "{shares:?}");
    page.is_silent()
}

/// The cells of the table that tells a drawing, row by row.
fn cells(page: &Page, canvas: &str) -> Result<Vec<Vec<String>>> {
    let script = "const table = document.getElementById(document.getElementById(arguments[0]).getAttribute('aria-details'));
        return [...table.querySelectorAll('tbody tr')].map((row) => [...row.cells].map((cell) => cell.textContent))";
    Ok(serde_json::from_value(page.browser.run(script, vec![json!(canvas)])?)?)
}
