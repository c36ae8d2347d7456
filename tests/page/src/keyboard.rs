//! The whole job by keyboard alone, from a blank notebook to a bundle, and the bundle read back.

use anyhow::{Context, Result, ensure};
use fantoccini::key::Key;
use serde_json::{Value, json};

use slope_of_light::analysis::analyse;
use slope_of_light::bundle;
use slope_of_light::view::{Figure, View, view};
use slope_of_light::words::{WordTable, Words as _};

use crate::bench::{C, EDGE_A, ROWS, TIME_BASE};
use crate::names;
use crate::page::{Page, eventually};
use crate::stage::Stage;

/// No pointer, no script: keys take a blank notebook to a bundle that holds what the page shows.
///
/// # Errors
/// When they do not.
pub fn from_blank_notebook_to_bundle(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    open_blank_notebook(&page)?;
    describe_rail(&page)?;
    type_rows(&page)?;
    page.sees(names::ROWS_USED, &names::rows_used(ROWS.len(), ROWS.len()))?;
    let result = page.result()?;
    page.tab_to("Download bundle (.zip)")?;
    page.press(Key::Enter)?;
    let (file, bytes) = page.downloaded()?;
    let (c, native) = read_back(&bytes)?;
    ensure!((c / C - 1.0).abs() < 0.01, "five readings of light in vacuum give {c} m/s");
    ensure!(
        !result.is_empty() && result == native.result.short,
        "shown {result:?}, read back {:?}",
        native.result.short
    );
    let expected = native_figures(&native)?;
    // What is out of sight is drawn a moment later.
    let shows = || {
        eventually("the figures are those of the bundle", || shown_figures(&page), |shown| *shown == expected)
    };
    shows()?;
    page.is_silent()?;

    page.open_file(&file)?;
    page.reads(names::MESSAGE, "is open")?;
    page.sees(names::ROWS_USED, &names::rows_used(ROWS.len(), ROWS.len()))?;
    let again = page.result()?;
    ensure!(again == result, "before {result:?}, opened again {again:?}");
    shows().context("after opening the bundle")?;
    page.list_notebooks()?;
    let notebooks = page.count(names::NOTEBOOKS)?;
    ensure!(
        notebooks == 3,
        "{notebooks} notebooks in the list: the demo, the one typed and the one opened are three"
    );
    Ok(())
}

/// The browser's own control lies unseen over the words that ask for files: Tab gets there, the words show that they have
/// the focus, and Space and Enter press it. The dialog itself is the browser's, and is held back here.
///
/// # Errors
/// When it is otherwise.
pub fn files_are_asked_for_by_keyboard(stage: &Stage) -> Result<()> {
    const HOLD: &str = "
        window.asked = [];
        addEventListener('click', (event) => {
            if (event.target.type !== 'file') return;
            event.preventDefault();
            asked.push(event.target.id);
        }, true);";
    const OUTLINE: &str = "
        const words = document.activeElement.closest('.picker');
        return words !== null && getComputedStyle(words).outlineStyle !== 'none';";
    let page = stage.page()?;
    page.browser.run(HOLD, vec![])?;
    for key in [Key::Enter, Key::Space] {
        page.browser.run("asked.length = 0", vec![])?;
        for name in ["Add photos", "Add trace files", "Add a folder of traces"] {
            page.tab_to(name)?;
            ensure!(page.browser.run(OUTLINE, vec![])? == json!(true), "{name} does not show the focus");
            page.press(key)?;
        }
        let asked = page.browser.run("return asked", vec![])?;
        ensure!(asked.as_array().map(Vec::<Value>::len) == Some(3), "Tab and {key:?} asked {asked}");
    }
    page.is_silent()
}

fn open_blank_notebook(page: &Page) -> Result<()> {
    page.tab_to("Notebooks")?;
    page.press(Key::Enter)?;
    page.is_asked()?;
    page.tab_to("New blank notebook")?;
    page.press(Key::Enter)?;
    page.sees(names::ROWS_USED, &names::rows_used(0, 0))
}

fn describe_rail(page: &Page) -> Result<()> {
    page.tab_to("Add a rail")?;
    page.press(Key::Enter)?;
    page.focuses("Name used in the readings")?;
    page.type_text("A")?;
    let list = |name: &str, option: &str| page.tab_to(name).and_then(|()| page.type_option(name, option));
    let field = |name: &str, text: &str| page.tab_to(name).and_then(|()| page.type_text(text));
    list("Unit of the ruler", "millimetres")?;
    field("First mark", "0")?;
    field("Last mark", "6000")?;
    list("Known from", "ruler reading at the splitter")?;
    field("Mark at the splitter", "0")?;
    field("Uncertainty of this position", "1 mm")
}

/// How many keys a row of five cells takes at most beside its digits: a choice of our own.
const MOST: usize = 7;

/// How many keys a text takes beside its digits.
fn beside_digits(text: &str) -> usize {
    text.chars().filter(|key| !key.is_ascii_digit() && *key != '.').count()
}

/// Types the rows, each only what no proposal can know: Enter leads to the first cell of that.
fn type_rows(page: &Page) -> Result<()> {
    page.tab_to(&names::new_cell("Rail"))?;
    for (index, (mark, edge_b)) in ROWS.into_iter().enumerate() {
        let row = index + 1;
        // What the rows before propose: rail and time base, then the next step, too.
        let (first, texts) = match index {
            0 => ("Rail", vec!["A", mark, TIME_BASE]),
            1 => ("Ruler reading", vec![mark, ""]),
            _ => ("Edge A", vec![]),
        };
        page.focuses(&names::new_cell(first))?;
        // With the Tab between the edges and the Enter at the end.
        let keys = 2 + texts.iter().map(|text| 1 + beside_digits(text)).sum::<usize>();
        ensure!(keys <= MOST, "row {row} takes {keys} keys beside its digits");
        for text in texts {
            page.type_text(text)?;
            page.press(Key::Tab)?;
        }
        page.type_text(EDGE_A)?;
        page.press(Key::Tab)?;
        page.type_text(edge_b)?;
        page.press(Key::Enter)?;
        for (column, text) in
            [("Rail", "A"), ("Ruler reading", mark), ("Time base", TIME_BASE), ("Edge B", edge_b)]
        {
            let cell = names::cell(column, row);
            let shown =
                eventually(&format!("there is “{cell}”"), || page.value_if_any(&cell), Option::is_some)?;
            ensure!(shown.as_deref() == Some(text), "{cell} holds {shown:?}, not {text:?}");
        }
    }
    Ok(())
}

/// The speed of light in vacuum in a bundle, in m/s, and what the page should show of it.
///
/// # Errors
/// When it is no bundle, or gives no speed.
pub fn read_back(bytes: &[u8]) -> Result<(f64, View)> {
    let notebook = bundle::read(bytes)?.notebook;
    let analysis = analyse(&notebook);
    let shown = view(&notebook, &analysis);
    let speed =
        analysis.speed.map_err(|refusal| anyhow::anyhow!("no speed in the bundle: {}", refusal.id))?;
    Ok((speed.c, shown))
}

/// The figures of the result, each by the id and the value that the page shows.
fn shown_figures(page: &Page) -> Result<Vec<(String, String)>> {
    let list = names::RESULT_FIGURES;
    let script =
        "return [...document.querySelectorAll(arguments[0])].map((value) => [value.id, value.textContent])";
    let found = page.browser.run(script, vec![format!("{list} dd").into()])?;
    let figures: Vec<(String, String)> = serde_json::from_value(found).context("figures")?;
    ensure!(!figures.is_empty(), "the result shows no figures");
    Ok(figures)
}

fn native_figures(native: &View) -> Result<Vec<(String, String)>> {
    let list = names::RESULT_FIGURES.trim_start_matches('#');
    let words = WordTable::english()?;
    let pair = |figure: &Figure| (format!("{list}-{}", figure.id), words.text(&figure.value));
    Ok(native.result.figures.iter().map(pair).collect())
}
