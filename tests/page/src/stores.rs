//! What lies in the stores and does not go together, in whatever order that came: nothing that was shown as saved is gone, and
//! nothing is there twice.

use anyhow::{Context, Result, ensure};
use serde_json::{Value, json};

use crate::file_store::{SWEPT, store};
use crate::names;
use crate::page::{Page, eventually};
use crate::stage::Stage;

const TITLE: &str = "Title of the notebook";
/// Lets a page write nothing into local storage, as where it is full.
const FULL_SHELF: &str = "const { setItem } = Storage.prototype;
    Storage.prototype.setItem = function (key, text) {
        if (this === localStorage) throw new DOMException('for a test', 'QuotaExceededError');
        setItem.call(this, key, text);
    };";
/// Whether the snapshot of the open notebook holds a text.
const SNAPSHOT_HOLDS: &str = "const id = sessionStorage.getItem('slope-of-light/open');
    return localStorage.getItem(`slope-of-light/notebook/${id}`)?.includes(arguments[0]) ?? false";
/// Of how many notebooks the journal holds entries, and how many of the open one.
const JOURNAL: &str = "const id = sessionStorage.getItem('slope-of-light/open');
    return new Promise((resolve, reject) => {
        const open = indexedDB.open('slope-of-light');
        open.onerror = reject;
        open.onsuccess = () => {
            const keys = open.result.transaction('journal').objectStore('journal').getAllKeys();
            keys.onsuccess = () => {
                open.result.close();
                const names = keys.result.map(([name]) => name);
                resolve([new Set(names).size, names.filter((name) => name === id).length]);
            };
        };
    })";

/// A window that could not reach the journal, and did not know that another one had its turn, wrote a snapshot that is longer than the
/// journal and ends otherwise. What the journal has was shown as saved: it is what opens, and the snapshot is kept apart, once,
/// also where there is no room on the shelf.
///
/// # Errors
/// When it is otherwise.
pub fn a_longer_snapshot_hides_nothing_that_was_saved(stage: &Stage) -> Result<()> {
    const GO_ON_OTHERWISE: &str = "const id = sessionStorage.getItem('slope-of-light/open');
        const key = `slope-of-light/notebook/${id}`;
        const notebook = JSON.parse(JSON.parse(localStorage.getItem(key)));
        const last = notebook.log.pop();
        for (const title of ['Otherwise', 'And on']) notebook.log.push({ ...last, edit: { set_title: title } });
        localStorage.setItem(key, JSON.stringify(JSON.stringify(notebook)));";
    let page = stage.blank_page()?;
    let [notebooks, entries] = saved(&page)?;
    page.browser.run(GO_ON_OTHERWISE, vec![])?;
    page.browser.debug("Page.addScriptToEvaluateOnNewDocument", &json!({ "source": FULL_SHELF }))?;
    page.reload()?;
    page.reads(names::BANNER, "They are kept in the notebook “And on (typed in another window)”")?;
    for _ in 0..2 {
        page.sees(names::TITLE, "Mine")?;
        let holds = journal(&page)?;
        ensure!(holds == [notebooks + 1, entries], "the journal holds {holds:?}");
        page.reload()?;
    }
    page.is_silent()
}

/// A journal that has lost a notebook, as when the browser emptied it, gets it again as soon as it is opened: the snapshot alone
/// is not on the disk at once.
///
/// # Errors
/// When it does not.
pub fn an_emptied_journal_is_filled_again(stage: &Stage) -> Result<()> {
    const EMPTY: &str = "return new Promise((resolve, reject) => {
        const open = indexedDB.open('slope-of-light');
        open.onerror = reject;
        open.onsuccess = () => {
            const transaction = open.result.transaction(['journal', 'writers'], 'readwrite');
            for (const store of ['journal', 'writers']) transaction.objectStore(store).clear();
            transaction.oncomplete = () => { open.result.close(); resolve(null); };
        };
    })";
    let page = stage.blank_page()?;
    let [_, entries] = saved(&page)?;
    page.browser.run(EMPTY, vec![])?;
    page.reload()?;
    page.sees(names::TITLE, "Mine")?;
    eventually("the journal has it again", || journal(&page), |[_, held]| *held == entries)?;
    page.is_saved()?;
    page.is_silent()
}

/// What is typed while another notebook is on its way to the desk is of the one that is still there, to the last letter, and of no
/// other.
///
/// # Errors
/// When it is lost, or stands in the other one.
pub fn what_is_typed_while_another_notebook_opens_stays(stage: &Stage) -> Result<()> {
    /// Types into the title until another notebook is open, which takes a while.
    const TYPE_ON: &str = "const { locks } = navigator;
        const { request } = locks;
        locks.request = async (...asked) => {
            await new Promise((done) => { setTimeout(done, 700); });
            return request.apply(locks, asked);
        };
        window.from = sessionStorage.getItem('slope-of-light/open');
        window.typed = 0;
        const box = document.getElementById('title');
        const typing = setInterval(() => {
            if (sessionStorage.getItem('slope-of-light/open') !== window.from) {
                clearInterval(typing);
                return;
            }
            window.typed += 1;
            box.value = `Typed ${window.typed}`;
            box.dispatchEvent(new InputEvent('input', { bubbles: true }));
        }, 20);";
    let page = stage.blank_page()?;
    page.fill(TITLE, "First")?;
    page.is_saved()?;
    page.list_notebooks()?;
    page.click("New blank notebook")?;
    page.sees(names::TITLE, "")?;
    page.fill(TITLE, "Second")?;
    page.is_saved()?;
    page.list_notebooks()?;
    page.browser.run(TYPE_ON, vec![])?;
    page.click("Open: First")?;
    let is_open = "return sessionStorage.getItem('slope-of-light/open') !== window.from";
    eventually("the other one is open", || page.browser.run(is_open, vec![]), |open| *open == json!(true))?;
    let typed = page
        .browser
        .run("sessionStorage.setItem('slope-of-light/open', window.from); return window.typed", vec![])?;
    page.sees(names::TITLE, "First")?;
    page.is_saved()?;
    page.reload()?;
    page.sees(names::TITLE, &format!("Typed {typed}"))?;
    page.list_notebooks()?;
    page.click("Open: First")?;
    page.sees(names::TITLE, "First")?;
    page.is_silent()
}

/// What a teacher says of a notebook that the journal alone holds, since the shelf is full, is not removed, however old.
///
/// # Errors
/// When it is.
pub fn comments_stay_where_the_journal_alone_has_their_notebook(stage: &Stage) -> Result<()> {
    const SAY: &str = "store.put({ blob: new Blob(['[]']), name: '', at: old },
        `feedback/${sessionStorage.getItem('slope-of-light/open')}`);
        store.put({ blob: new Blob(['[]']), name: '', at: old }, 'feedback/gone');";
    let page = stage.blank_page()?;
    saved(&page)?;
    store(&page, SAY)?;
    page.browser.debug("Page.addScriptToEvaluateOnNewDocument", &json!({ "source": FULL_SHELF }))?;
    page.reload()?;
    page.browser.run("localStorage.clear()", vec![])?;
    page.reload()?;
    eventually("the page has swept", || page.browser.run(SWEPT, vec![]), |swept| *swept == json!(true))?;
    let left = store(&page, "")?;
    let left = left.as_object().context("files")?;
    ensure!(!left.contains_key("feedback/gone"), "it has not swept");
    ensure!(left.len() == 1, "it removed what was said of a notebook that is there");
    page.is_silent()
}

/// Has a notebook called “Mine” saved, and its snapshot written; what the journal holds then.
fn saved(page: &Page) -> Result<[u64; 2]> {
    page.fill(TITLE, "Mine")?;
    page.is_saved()?;
    let holds = || page.browser.run(SNAPSHOT_HOLDS, vec![json!("Mine")]);
    eventually("its snapshot is written", holds, |holds| *holds == json!(true))?;
    journal(page)
}

fn journal(page: &Page) -> Result<[u64; 2]> {
    let held = page.browser.run(JOURNAL, vec![])?;
    let count = |place: usize| held.get(place).and_then(Value::as_u64).context("a count");
    Ok([count(0)?, count(1)?])
}
