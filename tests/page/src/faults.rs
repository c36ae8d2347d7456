//! What goes wrong in the typing, and notebooks of another version: said where one looks, and nothing is lost.

use anyhow::{Context, Result, ensure};
use serde_json::{Value, json};
use slope_of_light::analysis::analyse;
use slope_of_light::notebook::read;

use crate::bench;
use crate::names;
use crate::page::{Page, eventually};
use crate::stage::Stage;

/// What the page says under a field, by the end of the field's id.
fn under(field: &str) -> String {
    format!("[id$=\"{field}-problem\"]")
}

/// Bare numbers where a rail stands are in the unit shown beside them, the ruler's; an uncertainty of more than a
/// twentieth of the rail is noticed; a notebook made when they were metres opens as it was.
///
/// # Errors
/// When it is otherwise.
pub fn a_splice_counts_as_its_ruler(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    bench::fill(&page)?;
    page.choose("Known from", "measured distance of a mark")?;
    page.fill("Its distance from the splitter", "0.5")?;
    page.fill("Uncertainty of this position", "0.3")?;
    for part in ["mark", "distance", "uncertainty"] {
        page.sees(&format!("[id$=\"-splice-{part}-unit\"]"), "mm")?;
    }
    page.reads(".card .stands", "5.0(30) × 10⁻⁴ m")?;
    ensure!(!page.result()?.is_empty(), "there is no result");
    page.fill("Uncertainty of this position", "301")?;
    page.reads(".card .notices", "more than a twentieth of its length")?;
    page.fill("Uncertainty of this position", "0.3")?;
    eventually("the notice goes", || page.count(".card .notices li"), |count| *count == 0)?;

    // One notebook, as it was written while gaps and distances were metres, and as it was after.
    let old = include_str!("../../../crate/src/notebook/samples/format-1.json");
    let now = include_str!("../../../crate/src/notebook/samples/format-2.json");
    page.open_file(&page.home.write("old.json", old.as_bytes())?)?;
    page.sees(names::ROWS_USED, &names::rows_used(23, 24))?;
    let digits = |text: &str| -> Result<String> { Ok(format!("{:?}", analyse(&read(text)?).speed)) };
    ensure!(digits(old)? == digits(now)?, "the old notebook has another speed");
    let shown = page.result()?;
    page.browser.run("document.getElementById('told').replaceChildren()", vec![])?;
    page.open_file(&page.home.write("now.json", now.as_bytes())?)?;
    page.reads(names::MESSAGE, "is open")?;
    page.sees(names::ROWS_USED, &names::rows_used(23, 24))?;
    ensure!(page.result()? == shown, "the old notebook shows {shown:?}");
    page.is_silent()
}

/// An entry out of range is marked where it stands, with what is expected there; the result, or its refusal, says so.
///
/// # Errors
/// When it is otherwise.
pub fn an_entry_out_of_range_is_marked(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    bench::fill(&page)?;
    let sound = page.result()?;
    let refused = [
        ("Air temperature", "bench-temperature", "-300", "from −40 °C to 100 °C"),
        ("Relative humidity", "bench-humidity", "120", "from 0 % to 100 %"),
        ("Wavelength in vacuum", "bench-wavelength", "0", "from 300 nm to 1690 nm"),
        ("Air pressure", "bench-pressure", "0", "from 100 hPa to 1400 hPa"),
    ];
    for (name, id, text, expected) in refused {
        page.fill(name, text)?;
        page.reads(&under(id), expected)?;
        ensure!(is_marked(&page, id)?, "{name} is not marked");
        page.reads("#result-refusal", &format!("“{name}”"))?;
        page.fill(name, "")?;
        page.sees(names::RESULT, &sound)?;
        ensure!(!is_marked(&page, id)?, "{name} stays marked");
    }
    let replaced = [
        ("Small divisions per division", "bench-small_divisions", "0", "above zero"),
        ("Pulse rate", "bench-pulse_rate", "0", "above zero"),
        ("Uncertainty of one edge reading", "bench-edge_half_width", "-1", "zero or more"),
    ];
    for (name, id, text, expected) in replaced {
        page.fill(name, text)?;
        page.reads(&under(id), expected)?;
        ensure!(is_marked(&page, id)?, "{name} is not marked");
        page.reads("#result-notices", "the result leaves it out")?;
        page.fill(name, "")?;
        page.sees(names::RESULT, &sound)?;
    }
    page.fill("Last mark", "-5")?;
    page.reads(&under("-to"), "the smaller reading")?;
    ensure!(is_marked(&page, "rail-1-to")?, "the last mark is not marked");
    // No distance rests on where a ruler ends.
    page.sees(names::RESULT, &sound)?;
    page.is_silent()
}

/// Where a text stands that is shown on some leaf: the ids of what holds it.
const PLACES: &str = "
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const places = [];
    while (walker.nextNode()) {
        const { data, parentElement } = walker.currentNode;
        const hidden = parentElement.closest('[hidden]:not([hidden=until-found])');
        if (data.includes(arguments[0]) && !hidden) places.push(parentElement.closest('[id]').id);
    }
    return places;";

/// Why there is no line stands once, where rows are missing; what waits for the line names that place.
///
/// # Errors
/// When it stands elsewhere too, or nowhere.
pub fn a_refusal_stands_once(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    let places = |text: &str| page.browser.run(PLACES, vec![json!(text)]);
    let is_at = |wanted: Value| move |now: &Value| *now == wanted;
    let why = "five or more are better";
    eventually("the refusal stands at the line", || places(why), is_at(json!(["line-refusal"])))?;
    let waits = "see the section “Line”";
    let waiting = json!(["budget-refusal", "result-refusal"]);
    eventually("what waits names the line", || places(waits), is_at(waiting))?;
    page.is_silent()
}

/// The signs of notices are none of the marks that tell rails apart in the charts: these are drawn as discs, squares, triangles
/// and diamonds, which the block Geometric Shapes of the Unicode Standard (25A0 to 25FF) has as letters.
///
/// # Errors
/// When one is.
pub fn signs_of_notices_are_no_marks_of_rails(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    bench::fill(&page)?;
    let signs = || {
        page.browser
            .run("return [...document.querySelectorAll('.shape')].map((sign) => sign.textContent)", vec![])
    };
    let signs =
        eventually("there are notices", signs, |signs| signs.as_array().is_some_and(|all| !all.is_empty()))?;
    for sign in signs.as_array().into_iter().flatten().filter_map(Value::as_str) {
        ensure!(!sign.is_empty(), "a notice has no sign");
        ensure!(
            !sign.chars().any(|letter| ('\u{25a0}'..='\u{25ff}').contains(&letter)),
            "a notice has the sign {sign}"
        );
    }
    page.is_silent()
}

fn is_marked(page: &Page, id: &str) -> Result<bool> {
    let script = "return document.getElementById(arguments[0]).getAttribute('aria-invalid') === 'true'";
    Ok(page.browser.run(script, vec![json!(id)])? == Value::Bool(true))
}

/// Everything that is kept of notebooks: the journal's keys and texts, and the snapshots.
const KEPT: &str = "
    const open = indexedDB.open('slope-of-light');
    return new Promise((resolve, reject) => {
        open.onerror = reject;
        open.onsuccess = () => {
            const store = open.result.transaction('journal', 'readwrite').objectStore('journal');
            const id = JSON.parse(localStorage.getItem('slope-of-light/setting/open'));
            if (arguments[0]) store.add(arguments[0], [id, arguments[1]]);
            const [keys, texts] = [store.getAllKeys(), store.getAll()];
            store.transaction.onabort = reject;
            store.transaction.oncomplete = () => {
                open.result.close();
                resolve({ journal: keys.result.map((key, place) => [key, texts.result[place]])
                    .filter(([key]) => String(key[0]).startsWith(id)),
                    snapshot: localStorage.getItem(`slope-of-light/notebook/${id}`), id });
            };
        };
    })";

/// A notebook in which a later version of the page did something that this one does not know is left as it is, in the
/// browser's storage too, and named as what it is; another one opens.
///
/// # Errors
/// When it is otherwise.
pub fn a_later_notebook_is_left_untouched(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    page.fill("Title of the notebook", "From tomorrow")?;
    page.is_saved()?;
    page.reload()?;
    page.sees(names::TITLE, "From tomorrow")?;
    let planted = plant_a_later_entry(&page)?;
    page.reload()?;
    let told = page.reads(names::MESSAGE, "From tomorrow")?;
    ensure!(told.contains("a later version of this page") && told.contains("left unchanged"), "{told:?}");
    ensure!(!told.contains("expected"), "it lists what it knows: {told:?}");
    ensure!(page.text(names::TITLE)? != "From tomorrow", "it is open");
    page.browser.run("document.getElementById('told').replaceChildren()", vec![])?;
    page.list_notebooks()?;
    page.click("Open: From tomorrow")?;
    page.reads(names::MESSAGE, "a later version of this page")?;
    page.browser.run(
        "localStorage.setItem('slope-of-light/setting/open', JSON.stringify(arguments[0]))",
        vec![planted["id"].clone()],
    )?;
    let after = page.browser.run(KEPT, vec![])?;
    ensure!(after == planted, "what was kept changed: {planted} became {after}");

    let file = format!("{{\"kind\":\"slope-of-light notebook\",\"format\":2,\"log\":[{LATER}]}}");
    page.browser.run("document.querySelector('dialog[open]')?.close()", vec![])?;
    page.open_file(&page.home.write("later.json", file.as_bytes())?)?;
    let told = page.reads(names::MESSAGE, "later.json was not opened")?;
    ensure!(told.contains("a later version of this page") && !told.contains("expected"), "{told:?}");
    page.is_silent()
}

/// What a later version of the page did, as it would stand in the journal.
const LATER: &str = r#"{"edit":{"fly_to":{"row":1}}}"#;

/// Plants in the journal of the open notebook what a later version of the page did; gives what is kept of it then.
///
/// # Errors
/// When the journal holds nothing of it, or can't be written.
pub(crate) fn plant_a_later_entry(page: &Page) -> Result<Value> {
    let before = page.browser.run(KEPT, vec![])?;
    let entries = before["journal"].as_array().context("the journal")?.len();
    ensure!(entries > 0, "the journal is empty: {before}");
    page.browser.run(KEPT, vec![json!(LATER), json!(entries)])
}

/// A row that is off is named with what c would be without it, and the repair that is offered there is one edit: made at a
/// press, and taken back by “Undo”.
///
/// # Errors
/// When it is otherwise.
pub fn a_repair_is_offered_and_taken_back(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    let sound = page.result()?;
    let read = page.cell("Edge B", 24)?;
    page.type_in_cell("Edge B", 24, "14.1")?;
    let told = page.reads("#readings-notices", "Row 24 lies far off the line of all the others.")?;
    ensure!(told.contains("Without that row, c would be"), "what c would be is not said: {told}");
    let wrong = page.result()?;
    ensure!(
        page.text("#readings-table")?.matches("Struck out").count() == 1,
        "something was struck out by itself"
    );
    page.click("Strike out row 24 for this reason")?;
    page.reads("#readings-table", "Struck out: Row 24 lies far off the line of all the others.")?;
    let without = || page.count("#readings-notices .repair:not([hidden])");
    eventually("the notice goes", without, |count| *count == 0)?;
    ensure!(page.result()? != wrong, "the result does not change");
    page.click("Undo")?;
    page.reads("#readings-notices", "Row 24 lies far off the line of all the others.")?;
    ensure!(page.result()? == wrong, "undoing does not give the result back");
    page.type_in_cell("Edge B", 24, &read)?;
    eventually("the result is what it was", || page.result(), |result| *result == sound)?;
    page.is_silent()
}
