//! A closer look at a photograph of a screen.

use std::thread::sleep;
use std::time::Duration;

use anyhow::{Result, ensure};
use serde_json::{Value, json};

use crate::bench::describe_rail;
use crate::hands::{middle, spread, turn_wheel};
use crate::page::{Page, eventually};
use crate::pictures::{FOCUS, choose, is_proposed, series};
use crate::stage::Stage;

/// What of the photograph is drawn.
const DRAWN: &str = "return document.querySelector('.board-picture').toDataURL()";
/// Where edge A stands on the photograph, in words.
const EDGE: &str = "return document.querySelector('.spot.a').getAttribute('aria-valuetext')";

/// Buttons, keys, the wheel and two fingers zoom, and one button, one key show all again, drawn as it was; two fingers move no
/// mark. Pressed on while it is near, the photograph has the mark where the pointer is.
///
/// # Errors
/// When it is otherwise.
pub fn a_photo_is_looked_at_closely(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    describe_rail(&page)?;
    choose(&page, &series(&page.home, 1)?)?;
    is_proposed(&page, 0)?;
    let drawn = || page.browser.run(DRAWN, vec![]);
    page.browser.run(FOCUS, vec![json!("Edge A")])?;
    let whole = settled(&page)?;
    let closer =
        |how: &str| eventually(&format!("the photo is closer {how}"), drawn, |now| *now != whole).map(drop);
    let all_again =
        |how: &str| eventually(&format!("all is seen again {how}"), drawn, |now| *now == whole).map(drop);

    page.click("Zoom in on the photo")?;
    closer("by the button")?;
    page.click("Zoom out of the photo")?;
    all_again("by the button")?;

    page.browser.run(FOCUS, vec![json!("Edge A")])?;
    page.type_text("+")?;
    closer("by plus")?;
    page.type_text("0")?;
    all_again("by 0")?;

    let stood = page.browser.run(EDGE, vec![])?;
    spread(&page, middle(&page, ".board")?)?;
    closer("by two fingers")?;
    ensure!(page.browser.run(EDGE, vec![])? == stood, "two fingers moved the mark");
    page.click("Whole photo")?;
    all_again("by its button")?;

    turn_wheel(&page, middle(&page, ".board")?)?;
    closer("by the wheel")?;
    let [to_x, to_y] = free(&page)?;
    for kind in ["mousePressed", "mouseReleased"] {
        let press = json!({ "type": kind, "x": to_x, "y": to_y, "button": "left", "clickCount": 1 });
        page.browser.debug("Input.dispatchMouseEvent", &press)?;
    }
    let beside =
        "const { left, top, width, height } = document.querySelector('.spot.a').getBoundingClientRect();
        return Math.hypot(left + width / 2 - arguments[0], top + height / 2 - arguments[1])";
    let apart = || page.browser.run(beside, vec![json!(to_x), json!(to_y)]);
    eventually("the mark stands where the pointer is", apart, |apart| {
        apart.as_f64().is_some_and(|px| px < 1.0)
    })?;
    ensure!(page.browser.run(EDGE, vec![])? != stood, "the mark has not moved");
    page.is_silent()
}

/// A place on the photograph, in the window, where no mark lies.
fn free(page: &Page) -> Result<[f64; 2]> {
    const FREE: &str = "const { left, top, width, height } = document.querySelector('.board').getBoundingClientRect();
        const places = [...Array(80)].map((_, n) => [left + width * (0.2 + 0.07 * (n % 9)), top + height * (0.2 + 0.07 * Math.floor(n / 9))]);
        return places.find(([x, y]) => document.elementFromPoint(x, y)?.matches('.board-picture'))";
    Ok(serde_json::from_value(page.browser.run(FREE, vec![])?)?)
}

/// What is drawn, once it no longer changes.
fn settled(page: &Page) -> Result<Value> {
    let twice = || {
        let first = page.browser.run(DRAWN, vec![])?;
        sleep(Duration::from_millis(200));
        Ok([first, page.browser.run(DRAWN, vec![])?])
    };
    eventually("the photo is drawn", twice, |[first, second]| first == second).map(|[drawn, _]| drawn)
}
