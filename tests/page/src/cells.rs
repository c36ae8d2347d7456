//! Readings in their cells: typing, pasting, mistakes, undoing, striking out.

use anyhow::{Context, Result, ensure};
use fantoccini::key::Key;
use serde_json::json;

use crate::bench;
use crate::hands::{middle, press_slowly};
use crate::names;
use crate::page::{Page, eventually};
use crate::stage::Stage;

/// A block from a spreadsheet with decimal commas fills the rows of a notebook that uses them.
///
/// # Errors
/// When it does not.
pub fn paste_fills_rows(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    page.click("Settings")?;
    page.click("comma: 1,5")?;
    page.click("Close")?;
    bench::describe_rail(&page)?;
    let lines = ["A\t1000,5\t2,0\t1,00\t2,67", "A\t2000,5\t2,0\t1,00\t4,34", "A\t3000,5\t2,0\t1,00\t6,00"];
    page.paste(&names::new_cell("Rail"), &format!("{}\r\n", lines.join("\r\n")))?;
    page.sees(names::ROWS_USED, &names::rows_used(3, 3))?;
    for (index, line) in lines.iter().enumerate() {
        for (column, text) in
            ["Rail", "Ruler reading", "Time base", "Edge A", "Edge B"].iter().zip(line.split('\t'))
        {
            let shown = page.cell(column, index + 1)?;
            ensure!(shown == text, "{column} of row {} holds {shown:?}, not {text:?}", index + 1);
        }
    }
    // (2.67 − 1.00) div · 2.0 ns/div = 3.34 ns; the mark stands 1000.5 mm from the splitter.
    let delay = output(&page, 1, "Delay")?;
    ensure!(delay.starts_with("3,34"), "the delay of row 1 is shown as {delay:?}");
    let distance = output(&page, 1, "Distance")?;
    ensure!(distance.starts_with("1,000"), "the distance of row 1 is shown as {distance:?}");

    page.paste(&names::cell("Edge A", 2), "1,10\t4,44\n1,20\t6,20")?;
    eventually("row 3 is filled from row 2 on", || page.cell("Edge B", 3), |text| text == "6,20")?;
    ensure!(page.cell("Edge A", 2)? == "1,10", "the first pasted cell");
    ensure!(page.count(names::ROWS)? == 3, "pasting over rows makes no new ones");

    page.paste(&names::new_cell("Ruler reading"), "x / mm\tbase\n4000.5\t2.0\n5000.5\t2.0")?;
    eventually("the marks are turned", || page.cell("Ruler reading", 5), |text| text == "5000,5")?;
    page.reads("#told", "headings “x / mm base”")?;
    page.type_in_cell("Remark", 1, "a word")?;
    eventually("the message goes with what it tells of", || page.count("#told-action"), |count| *count == 0)?;
    page.click("Undo")?;
    page.click("Undo")?;
    eventually("one step back", || page.count(names::ROWS), |count| *count == 3)?;
    page.is_silent()
}

/// A mistake is told at its cell, keeps its text, and does not stop the typing.
///
/// # Errors
/// When it is otherwise.
pub fn mistakes_are_told_at_the_cell(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    bench::fill(&page)?;
    let before = page.result()?;
    for (text, row) in [("2.x7", 1), ("1,234", 2), ("1e400", 3), ("NaN", 4)] {
        let cell = names::cell("Edge B", row);
        page.write_over(&cell, text)?;
        page.press(Key::Tab)?;
        page.type_text("note")?;
        ensure!(page.cell("Remark", row)? == "note", "the keys after a mistake went elsewhere");
        ensure!(page.value(&cell)? == text, "what was typed did not stay");
        eventually(
            &format!("“{text}” is told at its cell"),
            || told_at(&page, &cell),
            |told| told.as_ref().is_some_and(|told| told.starts_with("Edge B:") && told.len() > 20),
        )?;
    }
    // What is refused is not proposed for the next row, either.
    page.type_in_cell("Time base", 5, "quick")?;
    let proposed = || {
        page.browser
            .run("return document.querySelector('#row-new [data-cell=time_base]').placeholder", vec![])
    };
    eventually("a mistake is not proposed", proposed, |text| *text == json!(""))?;
    page.type_in_cell("Time base", 5, bench::TIME_BASE)?;
    eventually("a number is", proposed, |text| *text == json!(bench::TIME_BASE))?;
    let good = told_at(&page, &names::cell("Edge B", 5))?;
    ensure!(good.is_none(), "a cell without a mistake tells {good:?}");
    page.sees(names::ROWS_USED, &names::rows_used(1, 5))?;
    for (row, (_, edge)) in bench::ROWS.iter().enumerate().take(4) {
        page.type_in_cell("Edge B", row + 1, edge)?;
    }
    page.sees(names::ROWS_USED, &names::rows_used(5, 5))?;
    let after = page.result()?;
    ensure!(after == before, "put right, the result is {after:?}, not {before:?}");
    page.is_silent()
}

/// A press on a button below a text that is left by it: what is told of the text waits until the press has ended, and does not
/// take the button from under the pointer.
///
/// # Errors
/// When the press is lost.
pub fn a_press_that_leaves_a_text_is_not_lost(stage: &Stage) -> Result<()> {
    const TYPE: &str = "document.activeElement.value = '2.x7';
        document.activeElement.dispatchEvent(new InputEvent('input', { bubbles: true }))";
    let page = stage.blank_page()?;
    bench::fill(&page)?;
    page.click(&names::cell("Edge B", 1))?;
    page.browser.run(TYPE, vec![])?;
    let place = middle(&page, &format!("{}:nth-of-type(4) .strike", names::ROWS))?;
    press_slowly(&page, place)?;
    page.reads("#strike-title", "Strike out row 4")?;
    page.click("Cancel")?;
    let told = || told_at(&page, &names::cell("Edge B", 1));
    eventually("the mistake is told", told, Option::is_some)?;
    page.is_silent()
}

/// Undo takes an edit back and says where, in sight of it; redo does it again.
///
/// # Errors
/// When they do not.
pub fn undo_and_redo(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    bench::fill(&page)?;
    let before = page.result()?;
    page.type_in_cell("Edge B", 5, "9.84")?;
    let changed = page.result()?;
    ensure!(changed != before, "a changed reading leaves the result at {before:?}");
    page.click("Undo")?;
    eventually("undo gives the reading back", || page.cell("Edge B", 5), |text| text == "9.34")?;
    ensure!(page.result()? == before, "undo does not give the result back");
    page.click("Redo")?;
    eventually("redo does it again", || page.cell("Edge B", 5), |text| text == "9.84")?;
    ensure!(page.result()? == changed, "redo does not give the changed result");
    page.turn_to("[data-leaf=report]")?;
    page.press_with_control('z')?;
    eventually("Control and Z undo it", || page.cell("Edge B", 5), |text| text == "9.34")?;
    page.reads(names::MESSAGE, &format!("Undone: {}", names::cell("Edge B", 5)))?;
    ensure!(page.is_in_sight(&names::cell("Edge B", 5))?, "what was undone is out of sight");
    page.press_with_control('y')?;
    page.reads(names::MESSAGE, &format!("Redone: {}", names::cell("Edge B", 5)))?;
    Ok(())
}

/// A row that is struck out stays in sight with its reason, and the line does without it.
///
/// # Errors
/// When it is otherwise.
pub fn struck_rows_stay_in_sight(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    bench::fill(&page)?;
    page.type_in_cell("Edge B", 2, "5.34")?;
    let with_it = page.result()?;
    page.click("Strike out row 2")?;
    page.press(Key::Enter)?;
    page.reads("dialog[open]", "State the reason first.")?;
    page.type_text("read from the wrong pulse")?;
    page.press(Key::Enter)?;
    page.sees(names::ROWS_USED, &names::rows_used(4, 5))?;
    let table = page.text("#readings-table")?;
    ensure!(
        table.contains("Struck out: read from the wrong pulse"),
        "the reason is not in the table: {table}"
    );
    ensure!(page.cell("Edge B", 2)? == "5.34", "the struck row lost what was typed");
    ensure!(page.count(names::ROWS)? == 5, "the struck row is out of sight");
    let without = page.result()?;
    ensure!(without != with_it, "the result does not change: {without:?}");
    page.click("Restore row 2")?;
    page.sees(names::ROWS_USED, &names::rows_used(5, 5))?;
    ensure!(page.result()? == with_it, "restoring does not give the result back");
    ensure!(!page.text("#readings-table")?.contains("wrong pulse"), "a restored row still tells its reason");
    page.is_silent()
}

/// What is told about the text in a cell; nothing while it is good.
fn told_at(page: &Page, cell: &str) -> Result<Option<String>> {
    let script = format!(
        "const box = (function () {{ {} }})(arguments[0]);
         if (box?.getAttribute('aria-invalid') !== 'true') return null;
         return document.getElementById(box.getAttribute('aria-describedby'))?.innerText ?? ''",
        [names::SEEN, names::BY_NAME].concat()
    );
    Ok(page.browser.run(&script, vec![json!(cell)])?.as_str().map(str::to_owned))
}

/// What a row shows that follows from its readings.
fn output(page: &Page, row: usize, name: &str) -> Result<String> {
    let script = "return document.querySelectorAll(arguments[0])[arguments[1]]
        ?.querySelector(`td[data-label=\"${arguments[2]}\"] output`)?.textContent ?? null";
    let value = page.browser.run(script, vec![json!(names::ROWS), json!(row - 1), json!(name)])?;
    value.as_str().map(str::to_owned).with_context(|| format!("row {row} shows no {name}"))
}

/// A press on a row's number tells how it was worked out, formulas and all; by keyboard too.
///
/// # Errors
/// When it does not.
pub fn a_row_says_how_it_came(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    page.click(&names::cell("Rail", 3))?;
    ensure!(!page.has("How row 2 was calculated")?, "the button is not in the row in hand");
    page.click(&names::cell("Rail", 2))?;
    page.tab_back()?;
    page.focuses("How row 2 was calculated").context("before the row's cells")?;
    page.press(Key::Enter)?;
    page.reads("#row-work-title", "row 2")?;
    let distance = page.text("#row-work-figures-row_distance")?;
    ensure!(distance.ends_with("\u{a0}m"), "the distance is {distance:?}");
    let formulas = "return document.querySelectorAll('#row-work math').length";
    let drawn = page.browser.run(formulas, vec![])?;
    ensure!(drawn == 3, "{drawn} formulas are drawn, not those of distance, delay and residual");
    page.press(Key::Escape)?;
    eventually("the dialog is closed", || page.has("Close"), |has| !has)?;
    page.focuses("How row 2 was calculated").context("after the dialog")?;
    // A finger comes without hovering first.
    page.browser.run("document.querySelectorAll('tbody th')[2].click()", vec![])?;
    page.reads("#row-work-title", "row 3")?;
    page.is_silent()
}
