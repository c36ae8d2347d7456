//! The seal on the result: hidden until it is opened, and then open for good.

use anyhow::{Result, ensure};

use crate::names;
use crate::page::{Page, Stage};
use crate::uncertainty;

/// A sealed result is another one and says so, also after a reload; opened, it is the true one again.
///
/// # Errors
/// When it is otherwise.
pub fn seal_hides_and_opens(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    let open = page.result()?;
    ensure!(!is_marked(&page)?, "a result without a seal is marked as sealed");
    page.fill("Number of trials", "20000")?;
    let trials = uncertainty::run(&page)?;
    page.click("Seal the result")?;
    page.click("Seal it now")?;
    page.reads("#sealed", "sealed")?;
    page.focuses("Open the seal…")?;
    let sealed = page.result()?;
    ensure!(sealed != open && sealed.contains("m/s"), "open {open:?}, sealed {sealed:?}");
    ensure!(is_marked(&page)?, "the sealed result is not marked in the strip");
    ensure!(!page.text("main")?.contains(&open), "the true result is still on the page");
    ensure!(page.text("#trials-figures")?.is_empty(), "the trials still tell the true result");
    let covered = uncertainty::run(&page)?;
    ensure!(covered.get(1) != trials.get(1), "trials under the seal give the true mean: {covered:?}");
    page.is_saved()?;
    page.reload()?;
    ensure!(page.result()? == sealed && is_marked(&page)?, "after a reload the seal is off");

    page.click("Open the seal…")?;
    page.click("Keep it sealed")?;
    ensure!(page.result()? == sealed, "the seal opened without being asked to");
    page.click("Open the seal…")?;
    page.click("Open permanently")?;
    page.sees(names::RESULT, &open)?;
    ensure!(!is_marked(&page)?, "the opened result is marked as sealed");
    ensure!(!page.has("Seal the result")?, "a second seal is offered");
    page.press_with_control('z')?;
    ensure!(page.result()? == open, "opening the seal was taken back");
    page.is_silent()
}

fn is_marked(page: &Page) -> Result<bool> {
    Ok(!page.text("#strip-sealed")?.is_empty())
}
