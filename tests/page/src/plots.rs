//! The plots as they are questioned: looked at closely, and asked whose a mark is.

use anyhow::{Context, Result, ensure};
use fantoccini::key::Key;
use serde_json::{Value, json};

use crate::bench::{self, ROWS};
use crate::hands::{middle, spread, turn_wheel};
use crate::looks::is_drawn;
use crate::names;
use crate::page::{Page, eventually};
use crate::stage::Stage;

/// What is drawn of both plots, and whether each shows a part of its readings alone.
const DRAWN: &str = "return ['line', 'residual'].map((name) => [
    document.getElementById(`${name}-plot`).toDataURL(),
    document.querySelector(`#${name}-figure .plot`).classList.contains('part')])";
/// Where the ring of a plot stands in the window, if it is shown.
const RING: &str = "const ring = document.querySelector(`#${arguments[0]}-figure .ring`);
    if (!ring || ring.hidden) return null;
    const { left, top, width, height } = ring.getBoundingClientRect();
    return [left + width / 2, top + height / 2]";
/// What is told of a mark.
const TOLD: &str = "return document.querySelector('#line-figure .point:not([hidden])')?.textContent ?? ''";

/// The corners of what is told of a mark, a little inside it, at which something else is seen, or nothing.
const CUT: &str = "const panel = document.querySelector('#line-figure .point');
    panel.scrollIntoView({ block: 'nearest' });
    const { left, top, right, bottom } = panel.getBoundingClientRect();
    const corners = [[left + 3, top + 3], [right - 3, top + 3], [left + 3, bottom - 3], [right - 3, bottom - 3]];
    return corners.filter(([x, y]) => !panel.contains(document.elementFromPoint(x, y)))";

type Drawn = [(String, bool); 2];

fn drawn(page: &Page) -> Result<Drawn> {
    Ok(serde_json::from_value(page.browser.run(DRAWN, vec![])?)?)
}

/// Buttons, keys, the wheel and two fingers narrow what is seen, in both plots; one button, one key shows all again, drawn
/// as it was.
///
/// # Errors
/// When they do not.
pub fn a_plot_is_looked_at_closely(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    bench::fill(&page)?;
    eventually("the plots have their buttons", || page.count(".plot-tools"), |count| *count == 2)?;
    for plot in ["#line-plot", "#residual-plot"] {
        is_drawn(&page, plot)?;
    }
    let whole =
        eventually("both plots are drawn whole", || drawn(&page), |all| all.iter().all(|plot| !plot.1))?;
    let is_closer = |all: &Drawn| all.iter().zip(&whole).all(|(now, then)| now.1 && now.0 != then.0);
    let closer = |how: &str| {
        eventually(&format!("both plots are looked at closely {how}"), || drawn(&page), is_closer)
    };
    let all_again =
        |how: &str| eventually(&format!("all is seen again {how}"), || drawn(&page), |all| *all == whole);

    page.browser
        .run("document.querySelector('#line-figure .plot-tools button:last-child').click()", vec![])?;
    let first = closer("by the button")?;
    page.browser.run("document.querySelector('#line-figure .plot-tools button').click()", vec![])?;
    all_again("by the button")?;

    page.browser.run("document.querySelector('#line-figure .plot').focus()", vec![])?;
    page.type_text("+")?;
    eventually("plus does what the button does", || drawn(&page), |all| *all == first)?;
    page.press(Key::Right)?;
    eventually("an arrow moves it", || drawn(&page), |all| is_closer(all) && *all != first)?;
    page.type_text("0")?;
    all_again("by 0")?;

    let at = middle(&page, "#line-plot")?;
    turn_wheel(&page, at)?;
    closer("by the wheel")?;
    page.type_text("0")?;
    all_again("after the wheel")?;

    spread(&page, at)?;
    closer("by two fingers")?;
    page.list_notebooks()?;
    page.click("New blank notebook")?;
    eventually("another notebook is seen whole", || drawn(&page), |all| all.iter().all(|plot| !plot.1))?;
    page.is_silent()
}

/// The row in hand is ringed in both plots, and stays so as it is edited; a pointer on its mark is told that row and how its
/// delay came, and a press on what is told leads to it.
///
/// # Errors
/// When it is otherwise.
pub fn a_mark_says_whose_it_is(stage: &Stage) -> Result<()> {
    let demo = stage.page()?;
    demo.click(&names::cell("Edge B", 2))?;
    let ring = || demo.browser.run(RING, vec![json!("line")]);
    eventually("a row of a notebook just opened is ringed", ring, Value::is_array)?;
    demo.is_silent()?;

    let page = stage.blank_page()?;
    bench::fill(&page)?;
    eventually("the plots have their buttons", || page.count(".plot-tools"), |count| *count == 2)?;
    let ring = |plot: &str| page.browser.run(RING, vec![json!(plot)]);
    let is_there = |at: &Value| at.is_array();
    page.click(&names::cell("Edge B", 2))?;
    let second = eventually("row 2 is ringed at the line", || ring("line"), is_there)?;
    eventually("row 2 is ringed at the residuals", || ring("residual"), is_there)?;
    page.click(&names::cell("Edge B", ROWS.len()))?;
    eventually("another row is ringed", || ring("line"), |at| is_there(at) && *at != second)?;

    let at = |at: &Value| -> Result<[f64; 2]> {
        serde_json::from_value(at.clone()).context("the ring has no place")
    };
    let [x, y] = at(&second)?;
    let mouse = |kind: &str, [x, y]: [f64; 2]| {
        let event = json!({ "type": kind, "x": x, "y": y, "button": "left", "clickCount": 1 });
        page.browser.debug("Input.dispatchMouseEvent", &event)
    };
    page.browser.debug("Input.dispatchMouseEvent", &json!({ "type": "mouseMoved", "x": x, "y": y }))?;
    let told = || Ok(page.browser.run(TOLD, vec![])?.as_str().unwrap_or_default().to_owned());
    let of_two = eventually("row 2 is told", told, |text| text.starts_with("Row 2: distance "))?;
    ensure!(of_two.contains("times the time base"), "how its delay came is not told: {of_two}");
    page.browser.debug("Input.dispatchMouseEvent", &json!({ "type": "mouseMoved", "x": 2.0, "y": 2.0 }))?;
    eventually("nothing is told any more", told, String::is_empty)?;

    mouse("mousePressed", [x, y])?;
    mouse("mouseReleased", [x, y])?;
    eventually("what is pressed stays told", told, |text| text.starts_with("Row 2: "))?;
    page.press(Key::Escape)?;
    eventually("Escape sends it away", told, String::is_empty)?;
    mouse("mousePressed", [x, y])?;
    mouse("mouseReleased", [x, y])?;
    eventually("it is told again", told, |text| text.starts_with("Row 2: "))?;
    let cut = page.browser.run(CUT, vec![])?;
    ensure!(cut == json!([]), "what is told is covered at {cut}");
    page.browser.run("document.querySelector('#line-figure .point a').click()", vec![])?;
    page.focuses(&names::cell("Rail", 2))?;
    page.is_silent()
}

/// With the focus on a plot the arrow keys go from reading to reading in the order of the distances; each is told and said,
/// and ringed in both plots; the other plot goes on from it, and Enter leads to its row.
///
/// # Errors
/// When it is otherwise.
pub fn readings_are_walked_on_the_plots(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    bench::fill(&page)?;
    eventually("the plots have their buttons", || page.count(".plot-tools"), |count| *count == 2)?;
    let focus = |plot: &str| {
        page.browser.run(&format!("document.querySelector('#{plot}-figure .plot').focus()"), vec![]).map(drop)
    };
    let is_at = |plot: &str, row: usize| -> Result<()> {
        let told = format!("Row {row}: distance ");
        page.reads(&format!("#{plot}-figure .point:not([hidden])"), &told)?;
        page.reads(&format!("#{plot}-figure [role=status]"), &told)?;
        for plot in ["line", "residual"] {
            let ring = || page.browser.run(RING, vec![json!(plot)]);
            eventually(&format!("row {row} is ringed at the {plot}"), ring, Value::is_array)?;
        }
        Ok(())
    };
    focus("line")?;
    for (key, row) in [(Key::Right, 1), (Key::Left, 1), (Key::Right, 2), (Key::Right, 3), (Key::Left, 2)] {
        page.press(key)?;
        is_at("line", row)?;
    }
    focus("residual")?;
    eventually(
        "the line tells nothing any more",
        || page.count("#line-figure .point:not([hidden])"),
        |n| *n == 0,
    )?;
    page.press(Key::Right)?;
    is_at("residual", 3)?;
    page.press(Key::Enter)?;
    page.focuses(&names::cell("Rail", 3))?;
    page.is_silent()
}
