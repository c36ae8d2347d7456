//! What a notebook keeps beside the numbers: notes between the rows, what the bench was made of, rails by their names.

use std::fs;

use anyhow::{Context, Result, ensure};
use serde_json::json;

use crate::bench;
use crate::hands::drop_files;
use crate::names;
use crate::page::eventually;
use crate::stage::Stage;

/// The note behind the second row.
const NOTE: &str = "#readings-table > tbody:nth-of-type(2) [role=note]";

/// Chooses the place behind the second row.
const BEHIND_THE_SECOND: &str = "
    const box = document.querySelector('#note-after');
    box.value = [...box.options].find((option) => option.textContent === 'after row 2').value;";

/// A note stands between the rows where it is put, with its date; it outlives a reload, and is removed and put back. So does
/// what is typed of the instruments. What is written while another notebook comes is not written into that one.
///
/// # Errors
/// When it is otherwise.
pub fn what_happened_is_noted(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    bench::fill(&page)?;
    page.click("Add a note")?;
    page.click("Save note")?;
    page.sees("#note-problem", "Write something first.")?;
    page.fill("Text of the note", "A cable was moved.")?;
    // A key that closes the list of a box may close the dialog, too.
    page.browser.run(BEHIND_THE_SECOND, vec![])?;
    page.click("Save note")?;
    let year = page.browser.run("return String(new Date().getFullYear())", vec![])?;
    let shown = page.reads(NOTE, "A cable was moved.")?;
    ensure!(shown.contains(year.as_str().unwrap_or("no year")), "it is not dated: {shown}");

    page.browser.run("document.querySelector('#bench-trigger').closest('details').open = true", vec![])?;
    page.fill("Trigger", "edge A, rising")?;
    page.is_saved()?;
    page.reload()?;
    page.reads(NOTE, "A cable was moved.")?;
    ensure!(
        page.text("#bench-trigger")?.is_empty() && page.count("#bench-trigger")? == 1,
        "it is not folded"
    );
    page.browser.run("document.querySelector('#bench-trigger').closest('details').open = true", vec![])?;
    ensure!(page.value("Trigger")? == "edge A, rising", "what was typed of the trigger is gone");

    page.turn_to("#readings")?;
    page.browser
        .run("document.querySelector(arguments[0]).querySelector('button').click()", vec![json!(NOTE)])?;
    page.click("Remove note")?;
    eventually("the note goes", || page.count(NOTE), |count| *count == 0)?;
    page.browser.run("document.querySelector('#told-action').click()", vec![])?;
    page.reads(NOTE, "A cable was moved.")?;

    page.click("Add a note")?;
    page.fill("Text of the note", "The lamp changed.")?;
    let demo = fs::read_to_string(stage.dist.join(names::DEMO)).context("the demo is not packed")?;
    drop_files(&page, "body", &[("other.json".into(), demo)])?;
    page.reads(names::MESSAGE, "is open")?;
    page.click("Save note")?;
    page.reads("#note-problem", "this note was not saved")?;
    ensure!(page.value("Text of the note")? == "The lamp changed.", "what was typed is gone");
    ensure!(page.count("#readings-table [role=note]")? == 0, "it stands in the other notebook");
    page.is_silent()
}

/// Rows follow a rail that gets another name, and stay in the line.
///
/// # Errors
/// When they don't.
pub fn rows_follow_a_renamed_rail(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    bench::fill(&page)?;
    page.fill("Name used in the readings", "North")?;
    let last = bench::ROWS.len();
    eventually("rows are called as their rail", || page.cell("Rail", last), |rail| rail == "North")?;
    page.sees(names::ROWS_USED, &names::rows_used(last, last))?;
    page.is_silent()
}
