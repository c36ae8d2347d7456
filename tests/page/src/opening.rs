//! What a visitor sees first: the demo, worked out.

use anyhow::{Context, Result, ensure};
use serde_json::json;
use std::fs;

use slope_of_light::analysis::analyse;
use slope_of_light::notebook;
use slope_of_light::view::view;

use crate::names;
use crate::page::Page;
use crate::stage::Stage;

/// What a page shows when a value was not there or was not a number.
const SLIPS: [&str; 4] = ["undefined", "NaN", "[object", "null"];

/// The page opens on the demo, shows the result that the same notebook has natively, and nothing goes wrong.
///
/// # Errors
/// When it is otherwise.
pub fn opens_on_the_demo(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    page.sees(names::ROWS_USED, &names::rows_used(23, 24))?;
    let text = fs::read_to_string(stage.dist.join(names::DEMO)).context("the demo is not packed")?;
    let notebook = notebook::read(&text)?;
    let expected = view(&notebook, &analyse(&notebook));
    let shown = page.result()?;
    ensure!(
        !shown.is_empty() && shown == expected.result.short,
        "shown {shown:?}, natively {:?}",
        expected.result.short
    );
    let rows = page.count(names::ROWS)?;
    ensure!(rows == 24, "{rows} rows are shown, not 24");
    page.on_each_leaf(|| nothing_slipped(&page))?;
    page.is_silent()
}

/// That no visible text of the leaf that is turned up shows a value that was not there.
///
/// # Errors
/// When one does.
pub fn nothing_slipped(page: &Page) -> Result<()> {
    let text = page.browser.run("return document.body.innerText", vec![])?;
    let text = text.as_str().context("the page has text")?;
    ensure!(text.len() > 500, "the page is nearly empty: {text:?}");
    for slip in SLIPS {
        let line = text.lines().find(|line| line.contains(slip));
        ensure!(line.is_none(), "{slip:?} stands in the page: {}", json!(line));
    }
    Ok(())
}
