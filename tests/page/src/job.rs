//! The whole job, from a blank notebook to a bundle, as hands do it: by a pointer on a laptop, by touch on a phone. Texts are
//! typed; `keyboard.rs` does all of it by keys.

use anyhow::{Context, Result, ensure};
use serde_json::json;

use crate::bench::{C, EDGE_A, ROWS, TIME_BASE};
use crate::keyboard::read_back;
use crate::names;
use crate::page::{Page, eventually};
use crate::sight::resize;
use crate::stage::Stage;

/// How many rows are typed where it is measured how far one scrolls.
const MANY: usize = 14;

/// How far one scrolls in the whole job at most, in CSS pixels: a choice of our own, a quarter of what one scroll of all
/// sections took.
const FAR: f64 = 3000.0;

/// Sums up how far anything is scrolled. Who looks for something scrolls until it is in sight, and no farther.
const WATCH: &str = "
    const tops = new Map();
    window.scrolled = 0;
    window.steps = [];
    addEventListener('scroll', ({ target }) => {
        const place = target === document ? document.scrollingElement : target;
        // A leaf that is turned up begins at its head: nobody scrolled there.
        if (document.body.dataset.at !== window.leaf) tops.set(place, place.scrollTop);
        window.leaf = document.body.dataset.at;
        window.scrolled += Math.abs(place.scrollTop - (tops.get(place) ?? 0));
        window.steps.push(`${document.activeElement.id || document.activeElement.dataset.cell}: ${tops.get(place) ?? 0} to ${place.scrollTop}`);
        tops.set(place, place.scrollTop);
    }, { capture: true });
    const { scrollIntoView } = Element.prototype;
    Element.prototype.scrollIntoView = function () { scrollIntoView.call(this, { block: 'nearest' }); };";

/// The middle of something, in the window; an error where something else lies over it.
const MIDDLE: &str = "
    const [node] = arguments;
    const { left, top, width, height } = node.getBoundingClientRect();
    const [x, y] = [left + width / 2, top + height / 2];
    const hit = document.elementFromPoint(x, y);
    if (!node.contains(hit) && !hit?.contains(node)) throw new Error(`${hit?.outerHTML.slice(0, 80)} lies over it`);
    return [x, y];";

/// By a pointer, at 1366 × 768, with little scrolling.
///
/// # Errors
/// When the bundle does not hold what was typed, or one scrolls far.
pub fn from_blank_notebook_to_bundle_by_pointer(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    resize(&page, 1366, 768)?;
    page.browser.run(WATCH, vec![])?;
    job(&page, MANY, |name| press(&page, name))?;
    let scrolled = page.browser.run("return window.scrolled", vec![])?.as_f64().context("no sum")?;
    let steps = page.browser.run("return window.steps", vec![])?;
    ensure!(scrolled < FAR, "{scrolled} px were scrolled: {steps}");
    page.is_silent()
}

/// By touch, at 360 × 740: nothing that is touched lies under something else.
///
/// # Errors
/// When the bundle does not hold what was typed.
pub fn from_blank_notebook_to_bundle_by_touch(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    page.browser.debug("Emulation.setTouchEmulationEnabled", &json!({ "enabled": true }))?;
    resize(&page, 360, 740)?;
    job(&page, ROWS.len(), |name| tap(&page, name))?;
    page.is_silent()
}

/// Does the job: `press` presses what has a name. What rows propose is left as it is.
fn job(page: &Page, rows: usize, press: impl Fn(&str) -> Result<()>) -> Result<()> {
    // What moves as it is pressed, since something above it is drawn a moment later, is pressed again.
    let enter = |name: &str| {
        let pressed = || press(name).and_then(|()| page.focused());
        eventually(&format!("“{name}” has the focus"), pressed, |focused| focused == name).map(drop)
    };
    let write = |name: &str, text: &str| enter(name).and_then(|()| page.type_text(text));
    // What a list opens is the system's own: an option is chosen by keys.
    let choose = |name: &str, option: &str| page.choose(name, option);
    press("Add a rail")?;
    page.focuses("Name used in the readings")?;
    page.type_text("A")?;
    choose("Unit of the ruler", "millimetres")?;
    write("First mark", "0")?;
    write("Last mark", "6000")?;
    choose("Known from", "ruler reading at the splitter")?;
    write("Mark at the splitter", "0")?;
    write("Uncertainty of this position", "1 mm")?;
    for (row, (mark, edge_b)) in (1..=rows).zip(ROWS.into_iter().cycle()) {
        let cell = |column: &str| names::cell(column, row);
        let (first, text) = if row == 1 { ("Rail", "A") } else { ("Ruler reading", mark) };
        write(&names::new_cell(first), text)?;
        eventually("the row is begun", || page.has(&cell(first)), |has| *has)?;
        if row == 1 {
            write(&cell("Ruler reading"), mark)?;
            write(&cell("Time base"), TIME_BASE)?;
        }
        write(&cell("Edge A"), EDGE_A)?;
        write(&cell("Edge B"), edge_b)?;
    }
    page.sees(names::ROWS_USED, &names::rows_used(rows, rows))?;
    press("Download bundle (.zip)")?;
    let (_, bytes) = page.downloaded()?;
    let (c, _) = read_back(&bytes)?;
    ensure!((c / C - 1.0).abs() < 0.01, "{rows} readings of light in vacuum give {c} m/s");
    Ok(())
}

/// Presses what has a name with the mouse; on another leaf, once that is turned up.
fn press(page: &Page, name: &str) -> Result<()> {
    page.browser.press_at(middle(page, name)?)
}

/// Touches what has a name; on another leaf, once that is turned up.
fn tap(page: &Page, name: &str) -> Result<()> {
    let [x, y] = middle(page, name)?;
    for (kind, points) in [("touchStart", json!([{ "x": x, "y": y }])), ("touchEnd", json!([]))] {
        page.browser.debug("Input.dispatchTouchEvent", &json!({ "type": kind, "touchPoints": points }))?;
    }
    Ok(())
}

/// The middle of what has a name, in the window.
fn middle(page: &Page, name: &str) -> Result<[f64; 2]> {
    eventually(&format!("something is named “{name}”"), || page.has(name), |has| *has)?;
    let node = serde_json::to_value(page.named(name)?)?;
    page.browser.run(names::TURN, vec![node.clone()])?;
    let middle = page.browser.run(MIDDLE, vec![node]).with_context(|| format!("at “{name}”"))?;
    Ok(serde_json::from_value(middle)?)
}
