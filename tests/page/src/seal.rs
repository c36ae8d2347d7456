//! The seal on the result: hidden until it is opened, and then open for good.

use anyhow::{Result, ensure};

use crate::names;
use crate::page::{Page, eventually};
use crate::stage::Stage;
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
    page.turn_to("#trials-plot")?;
    eventually("the trials are drawn", || is_drawn(&page), |drawn| *drawn)?;
    page.click("Seal the result")?;
    page.click("Seal it now")?;
    page.reads("#sealed", "sealed")?;
    page.focuses("Open the seal…")?;
    let sealed = page.result()?;
    ensure!(sealed != open && sealed.contains("m/s"), "open {open:?}, sealed {sealed:?}");
    ensure!(is_marked(&page)?, "the sealed result is not marked in the strip");
    ensure!(!page.text("main")?.contains(&open), "the true result is still on the page");
    let left = page.browser.run(TRIALS_LEFT, vec![])?;
    ensure!(left == "", "out of sight the trials still tell the true result: {left}");
    ensure!(!is_drawn(&page)?, "the canvas still shows the true distribution");
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

/// What the trials said, whether or not it is in sight.
const TRIALS_LEFT: &str = "return ['figures', 'verdict', 'summary', 'result-refusal']
    .map((part) => document.getElementById(`trials-${part}`).textContent).join('')";

/// Whether anything is drawn of what trials gave.
fn is_drawn(page: &Page) -> Result<bool> {
    let script = "const canvas = document.querySelector('#trials-plot');
        const [width, height] = [canvas.width || 1, canvas.height || 1];
        const copy = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true });
        copy.drawImage(canvas, 0, 0);
        const { data } = copy.getImageData(0, 0, width, height);
        return data.some((value) => value !== 0)";
    Ok(page.browser.run(script, vec![])? == true)
}

fn is_marked(page: &Page) -> Result<bool> {
    Ok(!page.text("#strip-sealed")?.is_empty())
}
