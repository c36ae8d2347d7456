//! The plan: positions typed and moved, what is expected of them, the next reading, a rehearsal.

use anyhow::{Context, Result, ensure};
use fantoccini::key::Key;
use serde_json::json;

use crate::bench;
use crate::names;
use crate::page::{Page, eventually, plain};
use crate::stage::Stage;

const SUMMARY: &str = "#plan-summary";
const POSITIONS: &str = "#plan-table > tbody";
const NEXT: &str = "#plan-next";

/// What is expected follows the positions: two at the ends of the bench promise what the closed form gives, and undo
/// takes them back.
///
/// # Errors
/// When it is otherwise.
pub fn plan_follows_its_positions(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    page.reads("#plan-refusal", "Describe a rail")?;
    bench::describe_rail(&page)?;
    look(&page)?;
    page.reads(SUMMARY, "two or more positions")?;
    for (number, reading) in [(1, "1000"), (2, "5000")] {
        page.click("Plan a position")?;
        page.fill(&at("Ruler reading", number), reading)?;
        page.fill(&at("ns/div", number), "2")?;
    }
    // u_t = 0.1·√(2/3)·2 ns = 0.16330 ns and b·u_d = 3.3365 ns/m · 0.28868 mm = 0.00096 ns; two rows 4 m apart have
    // Σ(d − d̄)² = 8 m², so that u(b)/b = 0.16330 / √8 / 3.3365 = 1.730 % (ISO/TS 28037:2010, clause 6).
    page.reads(SUMMARY, "u(v)/v = 1.7 % from 2 rows")?;
    page.fill(&at("Rows", 1), "4")?;
    page.fill(&at("Rows", 2), "4")?;
    // Four of each: half of it.
    page.reads(SUMMARY, "u(v)/v = 0.87 % from 8 rows")?;
    page.fill(&at("Ruler reading", 2), "5x")?;
    page.reads(&format!("{POSITIONS}:last-of-type"), "Ruler reading: ")?;
    page.fill(&at("Ruler reading", 2), "5000")?;
    page.reads(SUMMARY, "0.87 %")?;
    page.click("Remove planned position 2")?;
    eventually("the position is gone", || page.count(POSITIONS), |count| *count == 1)?;
    page.click("Undo")?;
    page.reads(SUMMARY, "0.87 %")?;
    page.click("Add the planned rows to the readings")?;
    page.sees(names::ROWS_USED, &names::rows_used(0, 8))?;
    ensure!(page.cell("Ruler reading", 8)? == "5000", "the last row was not taken over");
    page.is_silent()
}

/// A handle moves by the keys and by hand, tells what would be expected, and leaves one edit behind.
///
/// # Errors
/// When it is otherwise.
pub fn handles_move_positions(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    bench::describe_rail(&page)?;
    look(&page)?;
    for (number, reading) in [(1, "1000"), (2, "5000")] {
        page.click("Plan a position")?;
        page.fill(&at("Ruler reading", number), reading)?;
    }
    page.reads(SUMMARY, "from 2 rows")?;
    let entries =
        |page: &Page| page.browser.run("return document.getElementById('undo').ariaDisabled", vec![]);
    ensure!(entries(&page)?.is_null(), "there is nothing to undo");
    page.browser
        .run("document.getElementById('handle-' + arguments[0]).focus()", vec![json!(id_of(&page, 1)?)])?;
    page.press(Key::Right)?;
    eventually("one step outwards", || page.value(&at("Ruler reading", 1)), |text| text == "1020")?;
    page.focuses("Planned position 1").context("after the handle was moved")?;
    page.press(Key::End)?;
    eventually("the far end", || page.value(&at("Ruler reading", 1)), |text| text == "6000")?;
    page.click("Undo")?;
    eventually("one edit a move", || page.value(&at("Ruler reading", 1)), |text| text == "1020")?;

    // By hand: seized, moved to the middle of the rail, looked at, let go.
    let told = page.browser.run(DRAG, vec![json!(id_of(&page, 1)?), json!(0.5), json!(false)])?;
    let told = plain(told.as_str().context("what is told while it moves")?);
    ensure!(told.contains("3000 mm on rail A") && told.contains("Expected: u(v)/v"), "it tells {told:?}");
    ensure!(page.value(&at("Ruler reading", 1))? == "1020", "the notebook followed before it was let go");
    page.browser.run(DRAG, vec![json!(id_of(&page, 1)?), json!(0.5), json!(true)])?;
    eventually("the middle", || page.value(&at("Ruler reading", 1)), |text| text == "3000")?;
    page.is_silent()
}

/// Moves a handle by pointer events to a share of its rail, and lets it go there or gives it up.
const DRAG: &str = "
    const [id, share, letGo] = arguments;
    const handle = document.getElementById(`handle-${id}`);
    handle.scrollIntoView({ block: 'center' });
    handle.setPointerCapture = () => {};
    handle.hasPointerCapture = () => true;
    const rail = handle.closest('.track-rail').getBoundingClientRect();
    const own = handle.getBoundingClientRect();
    const before = handle.ariaValueNow;
    const send = (kind, clientX) => handle.dispatchEvent(
        new PointerEvent(kind, { pointerId: 1, button: 0, clientX, bubbles: true }));
    send('pointerdown', own.left + own.width / 2);
    send('pointermove', rail.left + share * rail.width);
    return (async () => {
        while (handle.ariaValueNow === before) await new Promise((resolve) => requestAnimationFrame(resolve));
        const told = document.getElementById('plan-moving').textContent;
        send(letGo ? 'pointerup' : 'pointercancel', 0);
        return told;
    })();";

/// The next reading is taken into the readings with its place, and the proposal goes on from there.
///
/// # Errors
/// When it is otherwise.
pub fn next_reading_is_taken(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    bench::fill(&page)?;
    look(&page)?;
    let first = page.reads(NEXT, "u(v)/v from")?;
    page.click("Add this row")?;
    eventually("a row is begun", || page.count(names::ROWS), |count| *count == 6)?;
    page.focuses(&names::cell("Edge A", 6))?;
    let reading = page.cell("Ruler reading", 6)?;
    ensure!(first.starts_with(&reading), "{first:?} was proposed, {reading:?} taken");
    eventually("another is proposed", || page.text(NEXT), |text| *text != first)?;
    page.is_silent()
}

/// A rehearsal is a notebook of its own with simulated readings; what was so is told when asked; the notebook that it
/// came from is untouched.
///
/// # Errors
/// When it is otherwise.
pub fn rehearsal_is_a_notebook(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    page.fill("Title of the notebook", "Tuesday")?;
    bench::describe_rail(&page)?;
    look(&page)?;
    page.reads(SUMMARY, "two or more positions")?;
    page.click("Rehearse")?;
    page.sees(names::TITLE, "Rehearsal: Tuesday")?;
    page.sees(names::ROWS_USED, &names::rows_used(8, 8))?;
    page.reads("#result-notices", "nothing was measured")?;
    ensure!(page.text("#plan-truth")?.is_empty(), "the truth is told unasked");
    page.click("Show the true values")?;
    page.reads("#plan-truth", "299\u{202f}792\u{202f}458\u{a0}m/s")?;
    page.is_saved()?;
    page.list_notebooks()?;
    page.click("Open: Tuesday")?;
    page.sees(names::ROWS_USED, &names::rows_used(0, 0))?;
    eventually("no truth of another notebook is told", || page.text("#plan-truth"), String::is_empty)?;
    page.is_silent()
}

/// Looks at the plan: it is worked out while it is in sight.
fn look(page: &Page) -> Result<()> {
    page.turn_to("#plan")
}

/// The name of a box of a planned position.
fn at(column: &str, number: usize) -> String {
    format!("{column}, planned position {number}")
}

/// The number by which the notebook knows the position that stands at `number`.
fn id_of(page: &Page, number: usize) -> Result<String> {
    let script = "return document.querySelectorAll('#plan-table > tbody input')[4 * (arguments[0] - 1)].dataset.position";
    let id = page.browser.run(script, vec![json!(number)])?;
    id.as_str().map(str::to_owned).context("a position")
}
