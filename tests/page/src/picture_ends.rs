//! Baseline and top of the edges on a photograph.

use anyhow::Result;
use fantoccini::key::Key;
use serde_json::json;

use crate::names;
use crate::page::eventually;
use crate::pictures::{FOCUS, first_is_marked};
use crate::stage::Stage;

/// What a mark says of where it is and how it came there; nothing where there is none.
const STATE: &str =
    "return document.querySelector(`.spot[aria-label=\"${arguments[0]}\"]`)?.ariaValueText ?? ''";

/// How many different labels the marks that are in doubt have.
const LABELS: &str = "const labels = document.querySelectorAll('.spot.doubted > .spot-label');
    return new Set([...labels].map((label) => label.textContent)).size";

const ENDS: [&str; 4] = ["Edge A: baseline", "Edge A: top", "Edge B: baseline", "Edge B: top"];

/// The ends of both edges, each with a label of its own and the chosen one with its name, count once all four were looked at or
/// moved, by keys alone; one that is stated as off the screen is a notice; without them the row is as before.
///
/// # Errors
/// When it is otherwise.
pub fn ends_of_edges_give_their_level(stage: &Stage) -> Result<()> {
    let page = first_is_marked(stage, 1)?;
    let delay = || page.text(&format!("{}:nth-of-type(1) td.output.delay", names::ROWS));
    let before = eventually("the row has a delay", delay, |delay| !delay.is_empty())?;
    page.click("Baseline and top of the edges")?;
    page.click("Mark baseline and top")?;
    let state = |name: &str| page.browser.run(STATE, vec![json!(name)]);
    let says = |name: &str, words: &'static str| {
        let what = format!("{name} is {words}");
        eventually(&what, || state(name), |told| told.as_str().is_some_and(|told| told.contains(words)))
    };
    for name in ENDS {
        says(name, "in doubt")?;
    }
    let [first, second, third, last] = ENDS;
    page.sees(".spot.chosen > .spot-label", first)?;
    let labels = || page.browser.run(LABELS, vec![]);
    eventually("each end has a label of its own", labels, |count| *count == json!(ENDS.len()))?;
    page.browser.run(FOCUS, vec![json!(first)])?;
    page.press(Key::Enter)?;
    says(first, "looked at")?;
    for name in [second, third] {
        page.browser.run(FOCUS, vec![json!(name)])?;
        page.press(Key::Up)?;
        says(name, "moved by hand")?;
    }
    page.browser.run(FOCUS, vec![json!(last)])?;
    page.press(Key::Enter)?;
    for name in ENDS {
        says(name, "accepted")?;
    }
    page.browser.run(FOCUS, vec![json!("Edge B: top")])?;
    page.click("Off the screen")?;
    page.reads("#delays-notices", "is off the screen")?;
    page.click("Remove baseline and top")?;
    eventually("the row is as before", delay, |now| *now == before)?;
    for name in ENDS {
        eventually(&format!("{name} is gone"), || state(name), |told| *told == json!(""))?;
    }
    page.is_silent()
}
