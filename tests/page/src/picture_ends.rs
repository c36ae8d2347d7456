//! Baseline and top of the edges on a photograph.

use anyhow::{Result, ensure};
use fantoccini::key::Key;
use serde_json::json;

use crate::bench::describe_rail;
use crate::names;
use crate::page::eventually;
use crate::pictures::{FOCUS, TIME_BASE, choose, is_proposed, look_and_accept, marked, series};
use crate::stage::Stage;

const ENDS: [&str; 4] = ["Baseline of edge A", "Top of edge A", "Baseline of edge B", "Top of edge B"];

/// The ends of both edges count once all four were moved, by keys alone; one that is stated as off the screen is a notice;
/// without them the row is as before.
///
/// # Errors
/// When it is otherwise.
pub fn ends_of_edges_give_their_level(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    describe_rail(&page)?;
    choose(&page, &series(&page.home, 1)?)?;
    is_proposed(&page, 0)?;
    page.fill("Time per division", TIME_BASE)?;
    look_and_accept(&page, &["Edge A", "Edge B"])?;
    marked(&page, 1)?;
    let delay = || page.text(&format!("{}:nth-of-type(1) td.output.delay", names::ROWS));
    let before = delay()?;
    page.click("Baseline and top of the edges")?;
    page.click("Mark baseline and top")?;
    for name in ENDS {
        let there = || {
            page.browser.run(
                "return document.querySelector(`.spot[aria-label=\"${arguments[0]}\"]`) !== null",
                vec![json!(name)],
            )
        };
        eventually(&format!("there is a mark for {name}"), there, |is| *is == json!(true))?;
    }
    for name in ENDS {
        ensure!(delay()? == before, "the ends count before {name} was moved");
        page.browser.run(FOCUS, vec![json!(name)])?;
        page.press(Key::Up)?;
    }
    eventually("the level counts", delay, |now| *now != before)?;
    page.browser.run(FOCUS, vec![json!("Top of edge B")])?;
    page.click("Off the screen")?;
    page.reads("#delays-notices", "is off the screen")?;
    page.click("Remove baseline and top")?;
    eventually("the row is as before", delay, |now| *now == before)?;
    page.is_silent()
}
