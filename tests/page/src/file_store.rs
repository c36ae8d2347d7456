//! Files beside the notebook: those that no notebook refers to any more are removed, no other is, and where the browser
//! keeps none the page says so.

use anyhow::{Context, Result, ensure};
use serde_json::{Value, json};

use slope_of_light::bundle;

use crate::bench::describe_rail;
use crate::looks::is_drawn;
use crate::names;
use crate::page::{Page, eventually};
use crate::pictures::{BOARD, choose, is_proposed, look_and_accept, series};
use crate::stage::Stage;
use crate::traces;

/// Whether the page has swept, or found that it may not.
pub(crate) const SWEPT: &str = "return performance.getEntriesByName('swept').length > 0";
/// Does something (its argument `work`) with the store of files; gives hash and time of each file then.
const STORE: &str = "
    const work = new Function('store', 'old', arguments[0]);
    const open = indexedDB.open('slope-of-light files');
    return new Promise((resolve, reject) => {
        open.onerror = reject;
        open.onsuccess = () => {
            const transaction = open.result.transaction('files', 'readwrite');
            const store = transaction.objectStore('files');
            work(store, Date.now() - 25 * 60 * 60 * 1000);
            const [keys, files] = [store.getAllKeys(), store.getAll()];
            transaction.onabort = reject;
            transaction.oncomplete = () => {
                open.result.close();
                resolve(Object.fromEntries(keys.result.map((key, place) => [key, files.result[place].at ?? null])));
            };
        };
    })";
/// Makes all files old ones.
const AGE: &str = "store.openCursor().onsuccess = ({ target: { result: cursor } }) => {
        if (!cursor) return;
        cursor.update({ ...cursor.value, at: old });
        cursor.continue();
    };";
/// Adds files that no notebook knows: an old one, a young one, and one of which it is not known when it came.
const ADD: &str = "const blob = new Blob(['x']);
    store.put({ blob, name: 'old', at: old }, 'f'.repeat(64));
    store.put({ blob, name: 'young', at: Date.now() }, 'e'.repeat(64));
    store.put({ blob, name: 'unknown' }, 'd'.repeat(64));";

/// Gives a page no database.
pub(crate) const NO_DATABASE: &str =
    "IDBFactory.prototype.open = () => { throw new DOMException('refused', 'SecurityError'); };";

/// Of old files just those are removed that no notebook refers to: one that an undo leads back to stays, as does one of a
/// notebook in the bin, one that was brought in today, and all while another tab is open.
///
/// # Errors
/// When it is otherwise.
pub fn files_of_no_notebook_are_removed(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    let has = |digit: &str, files: &Value| files.get(digit.repeat(64)).is_some();
    let files = || store(&page, "");
    let pictures = series(&page.home, 3)?;
    let (mine, binned) = pictures.split_at(2);
    page.fill("Title of the notebook", "Binned")?;
    choose(&page, binned)?;
    is_proposed(&page, 0)?;
    page.is_saved()?;
    page.list_notebooks()?;
    page.click("New blank notebook")?;
    page.sees(names::ROWS_USED, &names::rows_used(0, 0))?;
    choose(&page, mine)?;
    is_proposed(&page, 0)?;
    page.click("Undo")?;
    eventually("the pictures are gone", || page.count(names::ROWS), |rows| *rows == 0)?;
    page.is_saved()?;
    page.list_notebooks()?;
    page.click("Delete: Binned")?;
    page.click("Close")?;
    let used = files()?.as_object().context("files")?.len();
    ensure!(used == 3, "{used} files are kept of three");
    store(&page, AGE)?;
    store(&page, ADD)?;

    let first = page.browser.tab()?;
    let second = page.browser.open_tab()?;
    page.go(&stage.address)?;
    page.browser.switch_to(&first)?;
    page.reload()?;
    let swept = || page.browser.run(SWEPT, vec![]);
    eventually("the page has looked whether to sweep", swept, |swept| *swept == json!(true))?;
    ensure!(has("f", &files()?), "a file is removed while another tab is open");
    page.browser.switch_to(&second)?;
    page.browser.go("about:blank")?;
    page.browser.switch_to(&first)?;
    page.reload()?;
    let left = eventually("the old file is removed", files, |left| !has("f", left))?;
    ensure!(has("e", &left), "a young file is removed");
    let dated = left.get("d".repeat(64)).is_some_and(Value::is_number);
    ensure!(dated, "a file that came nobody knows when is removed, or not dated");
    ensure!(left.as_object().context("files")?.len() == used + 2, "one that a notebook refers to is removed");
    page.click("Redo")?;
    page.click("Show the photo of row 1")?;
    is_drawn(&page, BOARD)?;
    page.is_silent()
}

/// Where the browser gives no database, pictures and traces can be worked on all the same; the page says how long they
/// last and what keeps them, and what was typed stays.
///
/// # Errors
/// When it is otherwise.
pub fn without_a_database_it_says_so(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    page.browser.debug("Page.addScriptToEvaluateOnNewDocument", &json!({ "source": NO_DATABASE }))?;
    page.reload()?;
    page.sees(names::ROWS_USED, &names::rows_used(0, 0))?;
    page.fill("Title of the notebook", "Private")?;
    describe_rail(&page)?;
    choose(&page, &series(&page.home, 1)?)?;
    is_proposed(&page, 0)?;
    let told = page.reads("#picture-status", "keeps no files")?;
    ensure!(told.contains("Download the bundle"), "what to do is not said: {told:?}");
    page.fill("Time per division", "2")?;
    look_and_accept(&page, &["Edge A", "Edge B"])?;
    page.sees(names::ROWS_USED, &names::rows_used(1, 1))?;

    traces::choose_run(&page, 2)?;
    traces::measure(&page, 2)?;
    page.reads("#trace-refused", "keeps no files")?;
    page.sees(names::ROWS_USED, &names::rows_used(3, 3))?;
    ensure!(page.value("Title of the notebook")? == "Private", "the title is gone");
    ensure!(page.value("Name used in the readings")? == "A", "the rail is gone");
    page.click("Download bundle (.zip)")?;
    let (_, bytes) = page.downloaded()?;
    let kept = bundle::read(&bytes)?.kept.len();
    ensure!(kept == 4, "{kept} files in the bundle, not a picture and three of traces");
    page.is_silent()
}

/// Does something with the store of files; gives hash and time of each file then.
///
/// # Errors
/// When it can't.
pub(crate) fn store(page: &Page, work: &str) -> Result<Value> {
    page.browser.run(STORE, vec![json!(work)])
}
