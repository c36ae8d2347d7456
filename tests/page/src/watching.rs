//! Looking on: the run played back, the second window for a lecture, the page as it is printed, the report to go on writing; and
//! the list of keys.

use std::fs;

use anyhow::{Context, Result, ensure};
use fantoccini::key::Key;
use serde_json::json;
use slope_of_light::bundle;

use crate::downloads::plot_is_saved;
use crate::names;
use crate::page::{Page, eventually};
use crate::sight::resize;
use crate::stage::Stage;
use crate::uncertainty;

const STEP: &str = "Step";
const PLAYED: &str = "dialog.replay output";
const TOLD: &str = "dialog.replay .lead";
/// Moves the slider of the replay, as a drag does.
const MOVE: &str = "const slider = document.querySelector('dialog.replay input'); slider.value = arguments[0]; \
    slider.dispatchEvent(new Event('input'));";
const LAST: &str = "return Number(document.querySelector('dialog.replay input').max)";
/// How many different colours a canvas holds: more than one where something is drawn. They are read of a copy: of one that is
/// read twice the browser's log says that it could be faster.
const COLOURS: &str = "const { width, height } = arguments[0]; \
    if (!width || !height) return 0; \
    const copy = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true }); \
    copy.drawImage(arguments[0], 0, 0); \
    const { data } = copy.getImageData(0, 0, width, height); \
    return new Set(new Uint32Array(data.buffer)).size";

fn is_drawn(page: &Page, selector: &str) -> Result<()> {
    let colours = || {
        let script = format!("return (function () {{ {COLOURS} }})(document.querySelector(arguments[0]))");
        page.browser.run(&script, vec![json!(selector)])
    };
    eventually(&format!("{selector} is drawn"), colours, |colours| colours.as_u64() > Some(3))?;
    Ok(())
}

/// The replay shows c as it was, row by row, up to what it is, says what each step was, and changes nothing; under a closed
/// seal it shows nothing from before the seal.
///
/// # Errors
/// When it is otherwise.
pub fn the_run_is_played_back(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    let result = page.result()?;
    page.click("Replay")?;
    page.sees(PLAYED, "not determined yet")?;
    page.reads(TOLD, "row 1: near")?;
    is_drawn(&page, "dialog.replay canvas")?;
    page.click("Step forward")?;
    page.reads(TOLD, "row 2: near")?;
    let last = page.browser.run(LAST, vec![])?.as_u64().context("no last step")?;
    page.browser.run(MOVE, vec![json!(last / 2 + 6)])?;
    let half = page.text(PLAYED)?;
    ensure!(half != result && half.contains("m/s"), "half way it says {half:?}");
    is_drawn(&page, "dialog.replay canvas + canvas")?;
    page.browser.run(MOVE, vec![json!(last - 1)])?;
    page.click("Play")?;
    page.sees(PLAYED, &result)?;
    eventually("it plays no more after the last step", || page.has("Play"), |has| *has)?;
    ensure!(page.value(STEP)? == last.to_string(), "it ends at another step");
    page.click("Close")?;
    ensure!(page.result()? == result, "looking changed the result");
    let left =
        || page.browser.run("return document.querySelector('dialog.replay output').textContent", vec![]);
    eventually("closed, it tells nothing", left, |left| *left == "")?;

    page.click("Seal the result")?;
    page.click("Seal it now")?;
    let sealed = eventually("the seal is closed", || page.text(names::RESULT), |now| *now != result)?;
    page.turn_to("#line")?;
    page.click("Replay")?;
    ensure!(page.browser.run(LAST, vec![])? == json!(0), "steps from before the seal are shown");
    page.sees(PLAYED, &sealed)?;
    page.is_silent()
}

/// The plots of a step that is played back are saved as they stand there.
///
/// # Errors
/// When they are not, or are those of another step.
pub fn a_step_is_saved(stage: &Stage) -> Result<()> {
    /// Opens what saves them, and gives the focus to the first button of one.
    const HELD: &str = "const saving = document.querySelector('dialog.replay details');
        saving.open = true;
        saving.querySelectorAll('[role=group]')[arguments[0]].querySelector('button').focus()";
    let page = stage.page()?;
    page.click("Replay")?;
    for _ in 1..3 {
        page.click("Step forward")?;
    }
    let told = page.reads(TOLD, "row 3: near")?;
    let step = told.split(' ').nth(1).context("no step is told")?.to_owned();
    for (place, name, title) in
        [(0, "line", "<title>Delay against distance"), (1, "residuals", "<title>Residuals")]
    {
        page.browser.run(HELD, vec![json!(place)])?;
        page.press(Key::Enter)?;
        plot_is_saved(&page, &format!("-{name}-{step}.svg"), &[title])?;
    }
    page.is_silent()
}

/// Under a seal the page of the result on the wall tells no digit of the result, and that it is sealed, until the seal is opened.
///
/// # Errors
/// When it is otherwise.
pub fn the_wall_keeps_the_seal(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    let first = page.browser.tab()?;
    let open = page.result()?;
    let digits = open.split('(').next().context("no result")?;
    page.click("Seal the result")?;
    page.click("Seal it now")?;
    eventually("the seal is closed", || page.text(names::RESULT), |now| *now != open)?;
    let wall = page.browser.tab_opened_by(|| page.click("Wall view"))?;
    page.browser.switch_to(&wall)?;
    press_on_wall(&page, "Result")?;
    page.reads(".wall-words", "sealed")?;
    let told = page.browser.run("return document.documentElement.textContent", vec![])?;
    let told = told.as_str().context("the wall has no text")?;
    ensure!(!told.contains(digits), "under the seal the wall tells {digits} in {told:?}");

    page.browser.switch_to(&first)?;
    page.click("Open the seal…")?;
    page.click("Open permanently")?;
    page.sees(names::RESULT, &open)?;
    page.browser.switch_to(&wall)?;
    page.sees(".wall-c output", &open)?;
    page.reads(".wall-words", digits)?;
    page.is_silent()
}

/// The wall view is a window without fields that follows the first: c, the last row, the line, the bench, the result.
///
/// # Errors
/// When it is otherwise.
pub fn the_wall_follows(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    let first = page.browser.tab()?;
    let result = page.result()?;
    let wall = page.browser.tab_opened_by(|| page.click("Wall view"))?;
    page.browser.switch_to(&wall)?;
    page.sees(".wall-c output", &result)?;
    page.reads(".wall-row", "Row 24: d = 6.600(15) m")?;
    is_drawn(&page, "canvas")?;
    is_drawn(&page, "canvas + canvas")?;
    ensure!(page.count("input, textarea, select")? == 0, "the wall view has fields");

    page.browser.switch_to(&first)?;
    page.type_in_cell("Edge B", 24, "5.90")?;
    let changed = page.result()?;
    ensure!(changed != result, "a changed reading leaves the result at {result:?}");
    page.browser.switch_to(&wall)?;
    page.sees(".wall-c output", &changed)?;
    press_on_wall(&page, "Bench")?;
    is_drawn(&page, "section:not([hidden]) canvas")?;
    let contrast = || page.browser.run("return document.documentElement.dataset.contrast", vec![]);
    page.browser.switch_to(&first)?;
    page.browser.run("document.querySelector('#settings-dialog input[value=more]').click()", vec![])?;
    page.browser.switch_to(&wall)?;
    eventually("the wall view has the contrast chosen", contrast, |chosen| *chosen == json!("more"))?;
    press_on_wall(&page, "Result")?;
    page.reads(".wall-words", "The speed of light in vacuum")?;
    page.is_silent()
}

/// What plays the run back, its history and the wall view are in sight beside the line, without a scroll: on a laptop while the
/// tour is offered above, too, in a low window, on a tablet and on a phone.
///
/// # Errors
/// When they are not.
pub fn the_run_is_at_hand_beside_the_line(stage: &Stage) -> Result<()> {
    /// Turns up the line and, where one page at a time is shown, what stands beside it.
    const BESIDE: &str = "location.hash = 'line';
        const turn = document.getElementById('turn-over');
        if (turn.checkVisibility() && turn.getAttribute('aria-expanded') === 'false') turn.click()";
    /// Which buttons are not in sight from head to foot.
    const HIDDEN: &str = "return [...document.querySelectorAll('#run-tools button')].filter((button) => {
            const { left, top, bottom, width } = button.getBoundingClientRect();
            return ![top + 1, bottom - 1].every((y) => button.contains(document.elementFromPoint(left + width / 2, y)));
        }).map((button) => button.textContent)";
    let page = stage.page()?;
    for (width, height) in [(1366, 768), (1366, 650), (768, 1024), (360, 740)] {
        resize(&page, width, height)?;
        page.reload()?;
        page.browser.run(BESIDE, vec![])?;
        eventually("each is in sight", || page.browser.run(HIDDEN, vec![]), |hidden| *hidden == json!([]))
            .with_context(|| format!("{width} × {height}"))?;
    }
    page.is_silent()
}

/// Turns up a page of the wall view by its button, where that stands: the driver of WebKit hands over no element that another
/// window made.
fn press_on_wall(page: &Page, name: &str) -> Result<()> {
    const BUTTON: &str = "
        const button = [...document.querySelectorAll('nav button')].find(({ textContent }) => textContent === arguments[0]);
        const { left = 0, top = 0, width = 0, height = 0 } = button?.getBoundingClientRect() ?? {};
        return [left + width / 2, top + height / 2, button?.getAttribute('aria-pressed') === 'true'];";
    // What moves as it is pressed, since its look comes a moment later, is pressed again.
    let pressed = || {
        let button = page.browser.run(BUTTON, vec![json!(name)])?;
        let (x, y, is_up): (f64, f64, bool) = serde_json::from_value(button)?;
        if !is_up {
            page.browser.press_at([x, y])?;
        }
        Ok(is_up)
    };
    eventually(&format!("“{name}” is turned up"), pressed, |is_up| *is_up)?;
    Ok(())
}

/// What the browser prints is the report, and nothing of the page.
///
/// # Errors
/// When it is otherwise.
pub fn printing_prints_the_report(stage: &Stage) -> Result<()> {
    /// What is seen on paper: which children of the body, and the words of the report.
    const SEEN: &str = "const seen = [...document.body.children].filter((node) => node.checkVisibility()).map(({ id }) => id); \
        return [seen, document.getElementById('printed').shadowRoot.textContent]";
    let page = stage.page()?;
    let result = page.result()?;
    page.browser.debug("Emulation.setEmulatedMedia", &json!({ "media": "print" }))?;
    page.browser.run("dispatchEvent(new Event('beforeprint'))", vec![])?;
    let [seen, report]: [serde_json::Value; 2] = serde_json::from_value(page.browser.run(SEEN, vec![])?)?;
    ensure!(seen == json!(["printed"]), "printed is {seen}");
    let report = report.as_str().unwrap_or_default();
    for part in [result.as_str(), "Three rails in the laboratory", "Never look into the beam"] {
        ensure!(report.contains(part), "the print lacks {part:?}");
    }
    page.browser.run("dispatchEvent(new Event('afterprint'))", vec![])?;
    page.browser.debug("Emulation.setEmulatedMedia", &json!({ "media": "" }))?;
    ensure!(page.result()? == result, "the page is not as before");
    page.is_silent()
}

/// A plot is saved as SVG, and as a PNG fine enough for paper, that of the trials once they were made; where there is nothing to
/// draw, that is said.
///
/// # Errors
/// When it is otherwise.
pub fn plots_are_saved(stage: &Stage) -> Result<()> {
    /// The pixels of a plot that is 6.3 inches wide, the text column of A4 with margins of 25 mm, at 200 to the inch.
    const FINE: u32 = 1260;
    let page = stage.page()?;
    page.choose("Plot", "Residuals")?;
    page.click("Download plot")?;
    let (name, svg) = page.downloaded_as("svg")?;
    ensure!(name.to_string_lossy().ends_with("-residuals.svg"), "the plot is called {}", name.display());
    let svg = String::from_utf8(svg)?;
    ensure!(svg.starts_with("<svg") && svg.contains("<title>Residuals"), "it is no plot of residuals");
    fs::remove_file(&name)?;
    page.choose("File type", "PNG")?;
    page.click("Download plot")?;
    let (_, png) = page.downloaded_as("png")?;
    // W3C, Portable Network Graphics, sections 5.2 and 11.2.1: the signature, and the width in the first chunk.
    ensure!(png.starts_with(b"\x89PNG\r\n\x1a\n"), "it is no PNG");
    let width = png.get(16..20).and_then(|bytes| bytes.try_into().ok()).map(u32::from_be_bytes);
    ensure!(width >= Some(FINE), "the PNG is {width:?} pixels wide");

    page.choose("File type", "SVG")?;
    page.choose("Plot", "Results of the trials")?;
    page.click("Download plot")?;
    page.reads(names::MESSAGE, "Run the check")?;
    page.fill("Number of trials", "20000")?;
    uncertainty::run(&page)?;
    page.click("Download plot")?;
    let (name, svg) = page.downloaded_as("svg")?;
    ensure!(name.to_string_lossy().ends_with("-trials.svg"), "the plot is called {}", name.display());
    ensure!(String::from_utf8(svg)?.contains("<title>Results of the trials"), "it is no plot of trials");
    page.is_silent()?;

    let blank = stage.blank_page()?;
    blank.choose("Plot", "Uncertainty")?;
    blank.click("Download plot")?;
    blank.reads(names::MESSAGE, "nothing to draw yet")?;
    for (plot, missing) in [
        ("Both traces of the row", "No traces are shown"),
        ("Difference fixed threshold − constant fraction, against distance", "no time walk to draw"),
    ] {
        blank.choose("Plot", plot)?;
        blank.click("Download plot")?;
        blank.reads(names::MESSAGE, missing)?;
    }
    blank.is_silent()
}

/// `?` opens the list of keys where no field has the focus, and in a field is a letter like others.
///
/// # Errors
/// When it is otherwise.
pub fn keys_are_listed(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    page.click("Title of the notebook")?;
    page.type_text("?")?;
    ensure!(page.value("Title of the notebook")?.contains('?'), "a question mark can't be typed");
    ensure!(page.count("dialog[open]")? == 0, "the list opens while one types");
    page.browser.run("document.activeElement.blur()", vec![])?;
    page.type_text("?")?;
    page.reads("dialog[open]", "The same cell of the next row")?;
    page.click("Close")?;
    page.click("Settings")?;
    page.click("Keys")?;
    page.reads("dialog[open]", "Ctrl + Z")?;
    page.is_silent()
}

/// The report goes on in LaTeX, with its plots in one file, and in Markdown, as a zip with its plots beside it; either in the
/// language chosen for it.
///
/// # Errors
/// When a file lacks something, or is in another language.
pub fn the_report_goes_on_in_latex_and_markdown(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    page.turn_to("[data-leaf=report]")?;
    page.choose("Language of the report", "français")?;
    page.click("Download report in LaTeX")?;
    let (file, latex) = page.downloaded_as("tex")?;
    ensure!(file.to_string_lossy().ends_with("-Report.tex"), "it is called {}", file.display());
    let latex = String::from_utf8(latex)?;
    ensure!(latex.starts_with("\\documentclass[a4paper,10pt]{article}"), "it is no document of LaTeX");
    ensure!(latex.trim_end().ends_with("\\end{document}"), "it is cut off");
    let pictures = latex.matches("\\begin{picture}").count();
    ensure!(pictures == 4, "{pictures} plots, not bench, line, residuals and shares");
    ensure!(
        latex.contains("\\section{Lectures}") && !latex.contains("\\section{Readings}"),
        "it is not in French"
    );

    page.click("Download report in Markdown (.zip)")?;
    let (_, zip) = page.downloaded()?;
    let entries = bundle::unpack(&zip)?;
    let names: Vec<&str> = entries.iter().map(|entry| entry.name.as_str()).collect();
    let text = entries.iter().find(|entry| entry.name == "report.md").context("there is no report.md")?;
    let text = String::from_utf8(text.bytes.clone())?;
    ensure!(text.contains("\n## Lectures\n"), "it is not in French");
    for plot in ["bench.svg", "line.svg", "residuals.svg", "budget.svg"] {
        ensure!(
            names.contains(&plot) && text.contains(&format!("]({plot})")),
            "{plot} is not among {names:?}"
        );
    }
    page.is_silent()
}
