//! Where nothing can be stored the page says so where one looks, works on, and tries again by itself.

use anyhow::{Context, Result, ensure};
use fantoccini::key::Key;
use serde_json::{Value, json};

use slope_of_light::bundle;

use crate::bench;
use crate::names;
use crate::page::{Page, eventually};
use crate::stage::Stage;

/// Gives a page no storage at all: asking for it throws.
pub(crate) const NONE: &str = "for (const name of ['localStorage', 'sessionStorage', 'indexedDB']) {
    Object.defineProperty(window, name, { get() { throw new DOMException('denied', 'SecurityError'); } });
}";

/// Lets the page store nothing, for a reason (its first argument) that says what went wrong, or store again.
pub(crate) const FAIL: &str = "
    const [error] = arguments;
    const real = window.realTransaction ??= IDBDatabase.prototype.transaction;
    IDBDatabase.prototype.transaction = error
        ? function (stores, mode, options) {
            if (mode === 'readwrite') throw new DOMException('for a test', error);
            return real.call(this, stores, mode, options);
        }
        : real;";

/// Holds the stores, once it returns, in a transaction that goes on until it is told to end.
pub(crate) const HOLD: &str = "
    window.held = true;
    const opened = indexedDB.open('slope-of-light');
    return new Promise((begun) => { opened.onsuccess = () => {
        const held = opened.result.transaction(['journal', 'writers'], 'readwrite').objectStore('writers');
        const ask = () => { if (window.held) held.get('nobody').onsuccess = () => { begun(null); ask(); }; };
        ask();
    }; });";
/// Lets the stores go.
pub(crate) const LET_GO: &str = "window.held = false";

/// Site data is switched off in the browser's settings.
///
/// # Errors
/// When the page does not open, does not say that nothing is kept, or does not work.
pub fn works_with_site_data_off(stage: &Stage) -> Result<()> {
    let page = stage.forgetful_browser()?;
    page.go(&stage.address)?;
    works_in_memory(&page)
}

/// The browser throws where it is asked for storage.
///
/// # Errors
/// When the page does not open, does not say that nothing is kept, or does not work.
pub fn works_without_storage(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    page.browser.debug("Page.addScriptToEvaluateOnNewDocument", &json!({ "source": NONE }))?;
    page.reload()?;
    works_in_memory(&page)
}

/// The browser never answers when its database is asked for, as browsers have done.
///
/// # Errors
/// When the page waits for it for ever, or does not say that nothing is kept.
pub fn starts_where_the_database_never_answers(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    let mute = "IDBFactory.prototype.open = () => new EventTarget();";
    page.browser.debug("Page.addScriptToEvaluateOnNewDocument", &json!({ "source": mute }))?;
    page.reload()?;
    page.sees(names::SAVED, "Not saved")?;
    page.fill("Title of the notebook", "Here for now")?;
    page.sees(names::SAVED, "Not saved")?;
    page.is_silent()
}

/// While the database does not answer, it is said that nothing is saved; once it does, that all is.
///
/// # Errors
/// When it is otherwise.
pub fn a_database_that_hangs_is_told(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    page.fill("Title of the notebook", "Before")?;
    page.is_saved()?;
    page.browser.run(HOLD, vec![])?;
    page.fill("Title of the notebook", "Held up")?;
    page.sees(names::SAVED, "Not saved")?;
    page.reads(names::BANNER, "does not answer")?;
    page.browser.run(LET_GO, vec![])?;
    page.is_saved()?;
    page.reload()?;
    page.sees(names::TITLE, "Held up")?;
    page.is_silent()
}

/// A browser without channels between windows: one window works and saves as ever, with locks and without.
///
/// # Errors
/// When the page does not start, or what was typed is gone after a reload.
pub fn starts_without_broadcast_channels(stage: &Stage) -> Result<()> {
    for address in [stage.address.clone(), stage.plain_address()] {
        let page = stage.page()?;
        let none = "delete window.BroadcastChannel;";
        page.browser.debug("Page.addScriptToEvaluateOnNewDocument", &json!({ "source": none }))?;
        page.go(&address)?;
        page.fill("Title of the notebook", "Kept")?;
        page.is_saved()?;
        page.reload()?;
        page.sees(names::TITLE, "Kept")?;
        page.is_saved()?;
        page.is_silent()?;
    }
    Ok(())
}

/// Where the list of the notebooks can't be read, it is made anew of their snapshots, and none of them is lost.
///
/// # Errors
/// When one is no longer to be found.
pub fn a_damaged_list_loses_no_notebook(stage: &Stage) -> Result<()> {
    const KEPT: &str = "return Object.entries(localStorage).some(([key, text]) => \
        key.startsWith('slope-of-light/notebook/') && text.includes('Measured on Monday'))";
    const DAMAGE: &str = "localStorage.setItem('slope-of-light/list', '[{\"id\":');";
    let page = stage.page()?;
    // Without a journal, which holds all of them a second time.
    let mute = "IDBFactory.prototype.open = () => { throw new DOMException('denied', 'SecurityError'); };";
    page.browser.debug("Page.addScriptToEvaluateOnNewDocument", &json!({ "source": mute }))?;
    page.reload()?;
    page.list_notebooks()?;
    page.click("New blank notebook")?;
    page.sees(names::ROWS_USED, &names::rows_used(0, 0))?;
    page.fill("Title of the notebook", "Measured on Monday")?;
    eventually("its snapshot is written", || page.browser.run(KEPT, vec![]), |kept| *kept == json!(true))?;
    page.browser.run(DAMAGE, vec![])?;
    page.reload()?;
    // What is written now must not take the place of what was there.
    page.list_notebooks()?;
    page.click("New blank notebook")?;
    page.sees(names::TITLE, "")?;
    page.sees(names::ROWS_USED, &names::rows_used(0, 0))?;
    page.list_notebooks()?;
    page.click("Open: Measured on Monday")?;
    page.sees(names::TITLE, "Measured on Monday")?;
    page.is_silent()
}

fn works_in_memory(page: &Page) -> Result<()> {
    page.sees(names::SAVED, "Not saved")?;
    page.reads(names::BANNER, "nothing is saved")?;
    page.list_notebooks()?;
    page.reads("#nothing-kept", "until you close the page")?;
    page.click("New blank notebook")?;
    page.sees(names::ROWS_USED, &names::rows_used(0, 0))?;
    page.fill("Title of the notebook", "Here for now")?;
    bench::describe_rail(page)?;
    for (row, (mark, edge)) in bench::ROWS.iter().enumerate() {
        let cells = ["A", mark, bench::TIME_BASE, bench::EDGE_A, edge];
        page.click(&names::new_cell("Rail"))?;
        page.type_text(cells[0])?;
        for (column, text) in ["Ruler reading", "Time base", "Edge A", "Edge B"].iter().zip(&cells[1..]) {
            eventually("the row is begun", || page.has(&names::cell(column, row + 1)), |has| *has)?;
            page.type_in_cell(column, row + 1, text)?;
        }
    }
    page.sees(names::ROWS_USED, &names::rows_used(5, 5))?;
    let result = page.result()?;
    page.sees(names::SAVED, "Not saved")?;

    page.list_notebooks()?;
    page.click("New from the demo")?;
    eventually("the demo is open", || page.text(names::TITLE), |title| title != "Here for now")?;
    page.list_notebooks()?;
    page.click("Open: Here for now")?;
    page.sees(names::TITLE, "Here for now")?;
    page.sees(names::ROWS_USED, &names::rows_used(5, 5))?;
    ensure!(page.result()? == result, "opened again, the result is another one");
    page.list_notebooks()?;
    page.click("Duplicate: Here for now")?;
    page.click("Rename: Here for now (copy)")?;
    page.write_over("New title", "Renamed")?;
    page.press(Key::Enter)?;
    page.click("Delete: Renamed")?;
    eventually("the copy is gone", || page.has("Open: Renamed"), |has| !has)?;
    page.click("Close")?;
    page.click("Download the bundle")?;
    let (_, bytes) = page.downloaded()?;
    ensure!(
        bundle::read(&bytes)?.notebook.state().title == "Here for now",
        "the bundle is of another notebook"
    );
    Ok(())
}

/// The browser is asked, once, not to remove what is stored: when something is changed, and not for opening the page.
///
/// # Errors
/// When it is asked more often, or not at all.
pub fn the_browser_is_asked_to_keep_what_is_stored(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    page.is_saved()?;
    let count = "window.asked = 0;
        StorageManager.prototype.persist = async () => { window.asked += 1; return true; };";
    page.browser.debug("Page.addScriptToEvaluateOnNewDocument", &json!({ "source": count }))?;
    page.reload()?;
    page.is_saved()?;
    for (remark, asked) in [("", 0), ("first", 1), ("second", 1)] {
        if asked > 0 {
            page.type_in_cell("Remark", 1, remark)?;
            page.is_saved()?;
        }
        let times = page.browser.run("return window.asked", vec![])?;
        ensure!(times == json!(asked), "after {remark:?} it was asked {times} times");
    }
    page.is_silent()
}

/// What could not be stored is stored as soon as it can be, without a person doing anything.
///
/// # Errors
/// When it is not, or the page does not say how things stand.
pub fn storing_is_tried_again(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    bench::fill(&page)?;
    page.is_saved()?;
    for (error, remark, said) in
        [("QuotaExceededError", "full", "storage is full"), ("UnknownError", "unknown", "for a test")]
    {
        page.browser.run(FAIL, vec![json!(error)])?;
        // At once: each time that storing fails, the page waits longer before it tries again.
        page.put_in_cell("Remark", 1, remark)?;
        page.sees(names::SAVED, "Not saved")?;
        let told = page.reads(names::BANNER, said)?;
        page.browser.run(FAIL, vec![Value::Null])?;
        page.is_saved()?;
        ensure!(
            told.contains("keeps trying") && told.contains("Download the bundle"),
            "the banner says {told:?}"
        );
        ensure!(page.text(names::BANNER)?.is_empty(), "the banner stays when all is saved");
    }
    page.reload()?;
    ensure!(page.cell("Remark", 1)? == "unknown", "what was stored at last is gone");
    page.is_silent()
}

/// What is said about saving stands in sight of the row in hand, and does not cover it, on a laptop and on a phone.
///
/// # Errors
/// When it is out of sight, or over the row.
pub fn alarms_are_in_sight(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    for (width, height) in [(1366, 768), (360, 740)] {
        let size = json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": width < 500 });
        page.browser.debug("Emulation.setDeviceMetricsOverride", &size)?;
        for row in [1, 3] {
            let cell = names::cell("Remark", row);
            page.browser.run(FAIL, vec![Value::Null])?;
            page.is_saved()?;
            page.click(&cell)?;
            // As high up as it can stand without being covered.
            page.browser.run("document.activeElement.scrollIntoView({ block: 'start' })", vec![])?;
            page.browser.run(FAIL, vec![json!("QuotaExceededError")])?;
            page.type_text("x")?;
            page.sees(names::SAVED, "Not saved")?;
            page.reads(names::BANNER, "storage is full")?;
            eventually("nothing covers the cell in hand", || covered(&page), |covered| !covered)?;
            let out = out_of_sight(&page)?;
            ensure!(out == Value::Null, "at {width} × {height}, row {row}: {out}");
        }
    }
    page.is_silent()
}

/// Whether something lies over the box that has the focus, or it is out of sight.
fn covered(page: &Page) -> Result<bool> {
    let script = "const box = document.activeElement;
        const { left, right, top, bottom } = box.getBoundingClientRect();
        return ![top + 1, bottom - 1].every((y) => document.elementFromPoint((left + right) / 2, y) === box);";
    page.browser.run(script, vec![])?.as_bool().context("yes or no")
}

/// What of the alarm is out of sight, with its place.
fn out_of_sight(page: &Page) -> Result<Value> {
    let script = "for (const selector of ['#saved', '#banner', ...arguments]) {
            for (const node of document.querySelectorAll(`${selector}, ${selector} button`)) {
                const { left, right, top, bottom } = node.getBoundingClientRect();
                const seen = left >= 0 && top >= 0 && right <= innerWidth && bottom <= innerHeight;
                if (!seen) return { what: node.textContent, left, right, top, bottom };
            }
        }
        return null;";
    page.browser.run(script, vec![])
}
