//! The budget and its trials: what adds up, what changes nothing, what comes out the same again.

use std::fs;

use anyhow::{Context, Result, ensure};
use fantoccini::key::Key;
use serde_json::Value;

use slope_of_light::analysis::analyse;
use slope_of_light::notebook;
use slope_of_light::view::view;
use slope_of_light::words::{WordTable, Words as _};

use crate::looks::is_drawn;
use crate::names;
use crate::opening::nothing_slipped;
use crate::page::{Page, eventually};
use crate::stage::Stage;

/// Enough trials for a histogram, few enough for a busy machine.
const FEW: &str = "30000";
/// More trials than end by themselves while a test looks on.
pub(crate) const MANY: &str = "10000000";

/// Has every worker begin with a script that is not there.
pub(crate) const ASTRAY: &str =
    "window.Worker = class extends Worker { constructor() { super('no-such-script.js'); } }";

/// The budget of the demo stands in the table as it is natively, and its shares make up the whole.
///
/// # Errors
/// When it is otherwise.
pub fn budget_adds_up(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    let text = fs::read_to_string(stage.dist.join(names::DEMO)).context("the demo is not packed")?;
    let notebook = notebook::read(&text)?;
    let expected = view(&notebook, &analyse(&notebook)).budget;
    ensure!(expected.components.len() > 2, "the demo's budget has hardly any components");
    page.turn_to("#budget-table")?;
    let shown = page.browser.run(
        "return [...document.querySelectorAll('#budget-table > tbody')].map((line) => [
            line.querySelector('th').innerText, line.querySelector('.in-contribution').innerText,
            line.querySelector('.in-share').innerText.trim(), line.querySelector('.bar > span').style.inlineSize])",
        vec![],
    )?;
    let shown: Vec<(String, String, String, String)> = serde_json::from_value(shown)?;
    ensure!(shown.len() == expected.components.len(), "{} components are shown", shown.len());
    let words = WordTable::english()?;
    let mut whole = 0.0;
    for ((name, contribution, share, bar), component) in shown.into_iter().zip(&expected.components) {
        let told = words.text(&component.name);
        ensure!(name == told, "{name:?} stands where {told:?} should");
        ensure!(contribution == component.contribution, "{name} contributes {contribution:?}");
        ensure!(share == component.share_text, "{name} has a share of {share:?}");
        let length: f64 = bar.strip_suffix('%').context("a bar in per cent")?.parse()?;
        let told: f64 = component.bar.strip_suffix('%').context("a length in per cent")?.parse()?;
        ensure!((length - told).abs() < 0.01, "the bar of {name} is {length} % long");
        whole += length;
    }
    ensure!((whole - 100.0).abs() < 0.1, "the shares make up {whole} %");
    let summary = expected.summary.as_ref().context("a summary of the budget")?;
    page.reads("#budget-summary", &words.say(summary))?;
    page.is_silent()
}

/// Asking what would be shows other figures at once, and leaves no trace in the notebook.
///
/// # Errors
/// When it is otherwise.
pub fn asking_changes_nothing(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    page.is_saved()?;
    let before = (page.result()?, log(&page)?);
    let first = page.text("#budget-table > tbody th")?;
    let slider = format!("What if: {first}");
    page.click(&slider)?;
    // The middle of the slider, where the click goes, is × 1.
    page.press(Key::Home)?;
    let without = page.reads("#budget-table output", "× 0")?;
    ensure!(without.contains("instead of"), "without {first} it says {without:?}");
    page.press(Key::End)?;
    let twice = page.reads("#budget-table output", "× 2")?;
    ensure!(
        without.replace("× 0", "") != twice.replace("× 2", ""),
        "nothing and twice as much give the same"
    );
    page.focuses(&slider).context("after the slider was moved")?;
    page.click("Back to × 1")?;
    eventually("the answer is gone", || page.has("Back to × 1"), |has| !has)?;
    page.focuses(&slider).context("after going back to × 1")?;
    page.is_saved()?;
    let after = (page.result()?, log(&page)?);
    ensure!(before == after, "before {before:?}, after {after:?}");
    page.is_silent()
}

/// What the journal holds, and whether something can be undone.
fn log(page: &Page) -> Result<Value> {
    let count = "
        const open = indexedDB.open('slope-of-light');
        return new Promise((resolve, reject) => {
            open.onerror = reject;
            open.onsuccess = () => {
                const count = open.result.transaction('journal').objectStore('journal').count();
                count.onerror = reject;
                count.onsuccess = () => {
                    open.result.close();
                    resolve([count.result, document.getElementById('undo').getAttribute('aria-disabled')]);
                };
            };
        })";
    page.browser.run(count, vec![])
}

/// Trials run to their end beside the page, give the same digits for the same seed and others for another, and
/// are said to be of the notebook as it was once it changes.
///
/// # Errors
/// When it is otherwise.
pub fn trials_repeat(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    page.fill("Number of trials", FEW)?;
    let first = run(&page)?;
    is_drawn(&page, "#trials-plot")?;
    nothing_slipped(&page)?;
    let again = run(&page)?;
    ensure!(first == again, "first {first:?}, then {again:?}");
    page.click("New seed")?;
    eventually("the old result is marked", || page.text("#trials-stale"), |text| !text.is_empty())?;
    let other = run(&page)?;
    ensure!(first != other, "another seed gives the same digits: {first:?}");
    eventually("the new result is not marked as old", || page.text("#trials-stale"), String::is_empty)?;
    page.is_silent()
}

/// A long run lets the page be used, and ends by hand or because the notebook changes.
///
/// # Errors
/// When it is otherwise.
pub fn trials_can_be_stopped(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    page.browser.finds_one_core()?;
    page.fill("Number of trials", MANY)?;
    page.click("Run the check")?;
    goes_on(&page)?;
    page.click("Stop")?;
    page.reads(STATE, "so far")?;
    ensure!(!figures(&page)?.is_empty(), "what came of the trials so far is not shown");

    page.click("Run the check")?;
    goes_on(&page)?;
    let result = page.result()?;
    page.type_in_cell("Edge B", 1, "9.9")?;
    page.reads(STATE, "the notebook changed")?;
    ensure!(page.result()? != result, "the edit had no effect");
    page.reads("#trials-stale", "earlier version")?;
    page.is_silent()
}

/// Where no worker can be had, the page says so and runs the trials itself, with the same digits.
///
/// # Errors
/// When it is otherwise.
pub fn trials_do_without_workers(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    page.fill("Number of trials", FEW)?;
    let first = run(&page)?;
    page.browser.run(ASTRAY, vec![])?;
    page.click("Run the check")?;
    page.reads(STATE, "could not be run")?;
    page.click("Run it in the page itself (slower)")?;
    page.sees(STATE, "Done.")?;
    let here = figures(&page)?;
    ensure!(first == here, "with workers {first:?}, without {here:?}");
    Ok(())
}

/// What is said of the trials.
pub(crate) const STATE: &str = "#trials-state";

/// Runs the trials to their end and gives the figures.
///
/// # Errors
/// When they do not end well.
pub fn run(page: &Page) -> Result<Vec<String>> {
    page.click("Run the check")?;
    page.sees(STATE, "Done.")?;
    let figures = figures(page)?;
    ensure!(figures.len() >= 2, "the trials gave only {figures:?}");
    ensure!(!page.text("#trials-verdict")?.is_empty(), "the trials give no verdict");
    Ok(figures)
}

fn figures(page: &Page) -> Result<Vec<String>> {
    let script =
        "return [...document.querySelectorAll('#trials-figures dd')].map((value) => value.textContent)";
    Ok(serde_json::from_value(page.browser.run(script, vec![])?)?)
}

/// That the progress grows.
fn goes_on(page: &Page) -> Result<()> {
    page.sees(STATE, "Running…")?;
    let progress = || page.text("#trials-progress-text");
    let begun = eventually("the progress is told", progress, |text| !text.is_empty())?;
    eventually("the progress grows", progress, |text| *text != begun)?;
    Ok(())
}
