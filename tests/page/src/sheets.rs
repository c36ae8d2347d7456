//! The sheets of the report, seen before they are printed.

use anyhow::{Context, Result, ensure};
use serde_json::json;

use crate::names;
use crate::page::{Page, eventually};
use crate::sight::resize;
use crate::stage::Stage;

const SHEETS: &str = ".sheets";
/// What stands on the sheets.
const TEXT: &str = "return document.querySelector('.sheets').shadowRoot.textContent";
/// What of the sheets takes the focus, if anything.
const REACHED: &str = "const inside = document.querySelector('.sheets').shadowRoot.querySelector('body');
    for (const node of inside.querySelectorAll('[tabindex], a, button, input')) {
        node.focus();
        if (document.querySelector('.sheets').shadowRoot.activeElement) return node.outerHTML.slice(0, 80);
    }
    return inside.inert ? null : 'not inert'";
/// How wide the sheets are, in hundredths of their place, and the colour that they stand on.
const LAID: &str = "const sheets = document.querySelector('.sheets');
    return [Math.round(sheets.scrollWidth / sheets.clientWidth * 100), getComputedStyle(sheets).backgroundColor]";
/// The number of each sheet, on which sheet it stands, counted from 0, and whether it stands in sight there.
const NUMBERED: &str = "const sheets = document.querySelector('.sheets');
    const { left, top } = sheets.getBoundingClientRect();
    return [...sheets.shadowRoot.querySelectorAll('.page-number')].map((number) => {
        const { right, bottom } = number.getBoundingClientRect();
        return [number.textContent, Math.floor((right - left + sheets.scrollLeft) / sheets.clientWidth), bottom - top <= sheets.clientHeight + 1];
    })";
/// How far below the head of the right page the sheets begin, in CSS pixels.
const BEGIN: &str = "const beside = document.querySelector('#beside');
    beside.scrollTop = 0;
    return document.querySelector('.sheets').getBoundingClientRect().top - beside.getBoundingClientRect().top";
/// How many pages there are in a file of the browser's that was printed (ISO 32000-2, 7.7.3.3: the type of a page object).
const PRINTED: &str = r"return atob(arguments[0]).match(/\/Type\s*\/Page\b/g).length";
/// Where they begin at the latest on a laptop of 768 CSS pixels, a third of that: a choice of our own.
const SOON: f64 = 256.0;
/// Width and height of A4 (ISO 216), and an inch, mm.
const A4: [f64; 2] = [210.0, 297.0];
const INCH: f64 = 25.4;

/// What stands on the sheets, once they hold a text.
fn hold(page: &Page, text: &str) -> Result<String> {
    let read = || Ok(page.browser.run(TEXT, vec![])?.as_str().unwrap_or_default().to_owned());
    page.turn_to(SHEETS)?;
    eventually(&format!("the sheets say “{text}”"), read, |all| all.contains(text))
}

/// Beside the report its sheets stand as they will be printed, near the head of the page, as many as the browser makes,
/// each with its number as the report's styles have it printed (`crate/src/report/report.css`), white in the dark too; they
/// follow what is typed and the language chosen for the report, and are looked at alone: nothing in them takes the focus.
///
/// # Errors
/// When it is otherwise.
pub fn the_sheets_are_seen_before(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    let away = page.browser.run(TEXT, vec![])?;
    ensure!(away == "", "they are made while another leaf is turned up");
    let result = page.result()?;
    let text = hold(&page, &result)?;
    ensure!(text.contains("Never look into the beam"), "they lack the cautions");
    let reached = page.browser.run(REACHED, vec![])?;
    ensure!(reached.is_null(), "the focus gets to {reached}");

    page.wear("dark")?;
    let [wide, ground]: [serde_json::Value; 2] = serde_json::from_value(page.browser.run(LAID, vec![])?)?;
    ensure!(ground == "rgb(255, 255, 255)", "in the dark they are {ground}");
    let [width, height] = A4.map(|side| side / INCH);
    let paper = json!({ "paperWidth": width, "paperHeight": height, "preferCSSPageSize": true });
    let file = page.browser.debug("Page.printToPDF", &paper)?;
    let printed = page.browser.run(PRINTED, vec![file["data"].clone()])?.as_u64().context("a count")?;
    ensure!(wide == json!(100 * printed), "{printed} pages are printed, {wide} hundredths shown");
    page.reads("#sheets-hint", &format!("{printed} pages of A4"))?;
    let numbers = page.browser.run(NUMBERED, vec![])?;
    let each: Vec<_> =
        (1..=printed).map(|page| json!([format!("{page} / {printed}"), page - 1, true])).collect();
    ensure!(numbers == json!(each), "they are numbered {numbers}");

    page.fill("Discussion", "The far rail decides the slope.")?;
    hold(&page, "The far rail decides the slope.")?;
    page.choose("Language of the report", "français")?;
    hold(&page, "La vitesse de la lumière dans le vide")?;
    resize(&page, 1366, 768)?;
    let begin = page.browser.run(BEGIN, vec![])?;
    ensure!(begin.as_f64() < Some(SOON), "they begin {begin} px down the page");
    page.is_silent()
}

/// A seal covers the sheets at once.
///
/// # Errors
/// When the result is still read there.
pub fn a_seal_covers_the_sheets(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    let open = page.result()?;
    hold(&page, &open)?;
    page.click("Seal the result")?;
    page.click("Seal it now")?;
    let sealed = eventually("the seal is closed", || page.text(names::RESULT), |now| *now != open)?;
    let left = page.browser.run(TEXT, vec![])?;
    ensure!(!left.as_str().unwrap_or_default().contains(&open), "the sheets still tell the true result");
    hold(&page, &sealed)?;
    page.is_silent()
}
