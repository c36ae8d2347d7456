//! One notebook in two windows: whoever takes over, and however fast, no edit is lost and none is doubled; over plain
//! HTTP as well, where browsers have no locks.

use anyhow::{Context, Result, ensure};
use fantoccini::wd::WindowHandle;
use serde_json::{Value, json};

use crate::names;
use crate::page::{Page, eventually};
use crate::stage::Stage;

const TITLE_GIVEN: &str = "Bench by the window";
pub(crate) const TAKE_OVER: &str = "Write here instead";
/// How often the turn goes there and back.
const ROUNDS: usize = 3;
/// How often a page is loaded anew right after a key.
const RELOADS: usize = 6;

/// Two windows on one notebook, the first of which writes.
pub(crate) struct Two<'d> {
    pub(crate) page: Page<'d>,
    windows: [WindowHandle; 2],
}

impl<'d> Two<'d> {
    /// Opens them at an address.
    ///
    /// # Errors
    /// When the second does not read along.
    pub(crate) fn open(stage: &'d Stage, address: &str) -> Result<Self> {
        let page = stage.page()?;
        page.go(address)?;
        page.list_notebooks()?;
        page.click("New blank notebook")?;
        page.sees(names::ROWS_USED, &names::rows_used(0, 0))?;
        page.fill("Title of the notebook", TITLE_GIVEN)?;
        // Without a clipboard, which browsers have in secure contexts only.
        for remark in 1..=2 {
            page.click(&names::new_cell("Edge B"))?;
            page.type_text("1")?;
            eventually("the row is begun", || page.count(names::ROWS), |rows| *rows == remark)?;
        }
        page.is_saved()?;
        let first = page.browser.tab()?;
        let second = page.open_from_page(address)?;
        page.is_ready()?;
        page.sees(names::SAVED, "Read only")?;
        Ok(Self { page, windows: [first, second] })
    }

    /// Turns to one of them.
    ///
    /// # Errors
    /// When it is closed.
    pub(crate) fn at(&self, window: usize) -> Result<&Page<'d>> {
        self.page.browser.switch_to(&self.windows[window % 2])?;
        Ok(&self.page)
    }
}

/// A window that is opened, or loaded anew, while another one writes opens the same notebook, to be read along; and one
/// that is loaded anew opens its own notebook though another window has opened another meanwhile.
///
/// # Errors
/// When it opens another notebook, or what was typed just before is gone.
pub fn a_window_opens_the_notebook_it_is_meant_for(stage: &Stage) -> Result<()> {
    let two = Two::open(stage, &stage.address)?;
    for round in 0..ROUNDS {
        two.at(0)?.browser.run(FLOW, vec![json!(true)])?;
        two.at(1)?.reload()?;
        two.page.sees(names::SAVED, "Read only").with_context(|| format!("in round {round}"))?;
        ensure!(
            two.page.value("Title of the notebook")? == TITLE_GIVEN,
            "another notebook came, in round {round}"
        );
        two.at(0)?.browser.run(FLOW, vec![json!(false)])?;
    }
    two.at(1)?.list_notebooks()?;
    two.page.click("New blank notebook")?;
    two.page.sees(names::ROWS_USED, &names::rows_used(0, 0))?;
    two.at(0)?.type_in_cell("Remark", 1, "just before")?;
    two.page.reload()?;
    ensure!(two.page.value("Title of the notebook")? == TITLE_GIVEN, "the notebook of the other window came");
    ensure!(two.page.cell("Remark", 1)? == "just before", "what was typed just before is gone");
    two.page.is_silent()
}

/// Has the window edit one cell again and again, or no more.
const FLOW: &str = "
    clearInterval(window.flow);
    if (!arguments[0]) return;
    const cell = [...document.querySelectorAll('#readings-table input')]
        .find((input) => input.getAttribute('aria-label') === 'Remark, row 2');
    let count = 0;
    window.flow = setInterval(() => {
        cell.value = `flow ${count += 1}`;
        for (const kind of ['input', 'change']) cell.dispatchEvent(new Event(kind, { bubbles: true }));
    }, 20);";

/// A takeover that is taken back at once stays taken back.
///
/// # Errors
/// When the first takeover comes into its own again, or an edit is lost.
pub fn a_takeover_is_taken_back(stage: &Stage) -> Result<()> {
    let two = Two::open(stage, &stage.address)?;
    for edit in 1..=ROUNDS {
        two.at(0)?.browser.run(THERE_AND_BACK, vec![])?;
        two.page.type_in_cell("Remark", 1, &edit.to_string())?;
        two.page.is_saved()?;
        let lost = two.page.browser.run("return window.isLost", vec![])?;
        ensure!(lost == json!(false), "the takeover that was taken back came into its own again");
        two.at(1)?.sees(names::SAVED, "Read only")?;
        eventually(
            "the other window follows",
            || two.page.cell("Remark", 1),
            |text| *text == edit.to_string(),
        )?;
    }
    two.at(0)?.reload()?;
    ensure!(two.page.cell("Remark", 1)? == ROUNDS.to_string(), "the last edit is gone");
    two.page.is_silent()
}

/// Lets the other window take over, and this one take it back as soon as it can. Then whatever the other had put off until
/// later, and had not called off, is done at once, and from then on it is seen to that this one keeps the turn.
const THERE_AND_BACK: &str = "
    const { other } = window;
    const { setTimeout: set, clearTimeout: clear } = other;
    const later = new Map();
    other.setTimeout = (work, time) => {
        const timer = set.call(other, () => { later.delete(timer); work(); }, time);
        later.set(timer, work);
        return timer;
    };
    other.clearTimeout = (timer) => {
        later.delete(timer);
        clear.call(other, timer);
    };
    const saved = (of) => of.document.querySelector('#saved').textContent;
    const comes = async (is) => { while (!is()) await new Promise((resolve) => setTimeout(resolve)); };
    return (async () => {
        for (const of of [other, window]) {
            await comes(() => saved(of) === 'Read only' && of.document.querySelector('#take-over'));
            of.document.querySelector('#take-over').click();
            await comes(() => saved(of) === 'Saved');
        }
        window.watch?.disconnect();
        window.isLost = false;
        window.watch = new MutationObserver(() => { window.isLost ||= saved(window) === 'Read only'; });
        window.watch.observe(document.querySelector('#saved'), { childList: true });
        Object.assign(other, { setTimeout: set, clearTimeout: clear });
        for (const [timer, work] of later) {
            other.clearTimeout(timer);
            await work();
        }
    })();";

/// Lets this window store nothing, as when the storage is full, or store again.
const FULL: &str = "
    const real = window.real ??= [IDBDatabase.prototype.transaction, Storage.prototype.setItem];
    [IDBDatabase.prototype.transaction, Storage.prototype.setItem] = real;
    if (!arguments[0]) return;
    const refuse = () => { throw new DOMException('no room', 'QuotaExceededError'); };
    IDBDatabase.prototype.transaction = function (stores, mode, options) {
        return mode === 'readwrite' ? refuse() : real[0].call(this, stores, mode, options);
    };
    Storage.prototype.setItem = refuse;";

/// The first window can't store what is typed there; the second takes over and goes on.
fn take_over_from_a_full_window(two: &Two) -> Result<()> {
    two.at(0)?.browser.run(FULL, vec![json!(true)])?;
    two.page.type_in_cell("Remark", 1, "not stored")?;
    two.page.sees(names::SAVED, "Not saved")?;
    two.at(1)?.click(TAKE_OVER)?;
    two.page.is_saved()?;
    two.page.type_in_cell("Remark", 2, "typed after")?;
    two.page.is_saved()?;
    Ok(())
}

/// What a window could not store before another one came to write is kept apart, and shown.
///
/// # Errors
/// When it is lost.
pub fn what_a_window_loses_is_kept_apart(stage: &Stage) -> Result<()> {
    let two = Two::open(stage, &stage.address)?;
    take_over_from_a_full_window(&two)?;

    two.at(0)?.sees(names::SAVED, "Not saved")?;
    ensure!(two.page.cell("Remark", 1)? == "not stored", "what was not stored is gone");
    two.page.browser.run(FULL, vec![json!(false)])?;
    let kept = format!("{TITLE_GIVEN} (typed in another window)");
    two.page.reads(names::BANNER, &kept)?;
    eventually("it follows again", || two.page.cell("Remark", 2), |text| text == "typed after")?;
    two.page.click("Open it")?;
    two.page.sees(names::TITLE, &kept)?;
    ensure!(two.page.cell("Remark", 1)? == "not stored", "what was kept apart is not there");
    two.page.is_saved()?;
    two.page.is_silent()
}

/// A window without locks that was left for another page and came back by "Back", as browsers keep pages for that, still
/// has its turn: another one reads along.
///
/// # Errors
/// When both write.
pub fn a_page_shown_again_has_its_turn(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    let address = stage.plain_address();
    page.go(&address)?;
    page.fill("Title of the notebook", TITLE_GIVEN)?;
    page.is_saved()?;
    page.browser.run("window.isLeft = true; location.href = 'icon.svg'", vec![])?;
    // While it goes from one to the other the page may not answer.
    let place = || Ok(page.browser.run("return location.pathname", vec![]).unwrap_or(Value::Null));
    eventually("another page is shown", place, |path| {
        path.as_str().is_some_and(|p| p.ends_with("icon.svg"))
    })?;
    page.browser.run("history.back()", vec![])?;
    eventually("the notebook is shown again", place, |path| *path == "/")?;
    // A page that was kept begins anew.
    is_loaded_anew(&page)?;
    page.is_ready()?;
    page.is_saved()?;
    page.open_from_page(&address)?;
    page.is_ready()?;
    page.sees(names::SAVED, "Read only")
}

/// Over plain HTTP too, one of two windows writes.
///
/// # Errors
/// When both do, or an edit is lost.
pub fn two_windows_without_locks(stage: &Stage) -> Result<()> {
    let two = Two::open(stage, &stage.plain_address())?;
    ensure!(
        two.page.browser.run("return isSecureContext || 'locks' in navigator", vec![])? == json!(false),
        "locks"
    );
    two.at(0)?.type_in_cell("Remark", 1, "first")?;
    two.page.is_saved()?;
    two.at(1)?;
    eventually("the second follows", || two.page.cell("Remark", 1), |text| text == "first")?;
    two.page.click(TAKE_OVER)?;
    two.page.is_saved()?;
    two.page.type_in_cell("Remark", 2, "second")?;
    two.page.is_saved()?;
    two.at(0)?.sees(names::SAVED, "Read only")?;
    eventually("the first follows", || two.page.cell("Remark", 2), |text| text == "second")?;

    // A reload gives the turn to the window that waits.
    two.at(1)?.reload()?;
    let states = || Ok([two.at(0)?.text(names::SAVED)?, two.at(1)?.text(names::SAVED)?]);
    let one_writes = |states: &[String; 2]| {
        let count = |state: &str| states.iter().filter(|shown| *shown == state).count();
        count("Saved") == 1 && count("Read only") == 1
    };
    eventually("one of them writes", states, one_writes)?;
    for window in [0, 1] {
        two.at(window)?;
        ensure!(
            two.page.cell("Remark", 1)? == "first" && two.page.cell("Remark", 2)? == "second",
            "an edit is gone"
        );
    }
    two.page.is_silent()
}

/// Lets a window say nothing to the others.
const MUTE: &str = "BroadcastChannel.prototype.postMessage = () => {};";

/// Where a window writes without having asked, the journal refuses the other one's edits, which are kept apart.
///
/// # Errors
/// When a row is lost.
pub fn the_journal_takes_edits_of_one_window(stage: &Stage) -> Result<()> {
    let two = Two::open(stage, &stage.plain_address())?;
    two.at(1)?.browser.debug("Page.addScriptToEvaluateOnNewDocument", &json!({ "source": MUTE }))?;
    two.page.reload()?;
    two.page.is_saved()?;
    two.page.type_in_cell("Remark", 1, "by the deaf one")?;
    two.page.is_saved()?;
    // At once: with the first letters that are sent it loses its turn, and the others go nowhere.
    two.at(0)?.put_in_cell("Remark", 2, "by the other")?;
    two.page.reads(names::BANNER, &format!("{TITLE_GIVEN} (typed in another window)"))?;
    two.page.sees(names::SAVED, "Read only")?;
    eventually("it follows", || two.page.cell("Remark", 1), |text| text == "by the deaf one")?;
    two.page.click("Open it")?;
    eventually("what it typed is there", || two.page.cell("Remark", 2), |text| text == "by the other")?;
    two.page.is_silent()
}

/// Lets this window store again, and loads it anew in the same breath.
const FREE_AND_RELOAD: &str = "
    [IDBDatabase.prototype.transaction, Storage.prototype.setItem] = window.real;
    window.isLeft = true;
    location.reload();";

/// What a window has lost, and could not keep apart before it is closed, is kept apart when a window opens.
///
/// # Errors
/// When it is lost.
pub fn a_window_closed_while_it_parts_loses_nothing(stage: &Stage) -> Result<()> {
    for address in [stage.address.clone(), stage.plain_address()] {
        let two = Two::open(stage, &address)?;
        take_over_from_a_full_window(&two)?;
        two.at(0)?.browser.run(FREE_AND_RELOAD, vec![])?;
        is_kept_apart(&two, "not stored", "typed after").with_context(|| address)?;
    }
    Ok(())
}

/// What is typed last before a window is closed that has lost its turn and does not know it is kept apart, also where the
/// other one has written at that place and stored its snapshot.
///
/// # Errors
/// When it is lost.
pub fn a_window_closed_behind_its_turn_loses_nothing(stage: &Stage) -> Result<()> {
    let two = Two::open(stage, &stage.plain_address())?;
    two.at(1)?.browser.debug("Page.addScriptToEvaluateOnNewDocument", &json!({ "source": MUTE }))?;
    two.page.reload()?;
    two.page.is_saved()?;
    two.page.type_in_cell("Remark", 2, "typed after")?;
    two.page.is_saved()?;
    // Which stores the snapshot.
    two.page.reload()?;
    two.page.is_saved()?;
    two.at(0)?.browser.run(TYPE_AND_RELOAD, vec![json!("not stored")])?;
    is_kept_apart(&two, "not stored", "typed after")
}

/// Types a remark into the first row, and loads the page anew in the same breath.
const TYPE_AND_RELOAD: &str = "
    const box = document.querySelector('tbody[data-row] [data-cell=remark]');
    box.focus();
    box.value = arguments[0];
    box.dispatchEvent(new InputEvent('input', { bubbles: true }));
    window.isLeft = true;
    location.reload();";

/// Waits until the page that a script reloads is open again.
fn is_loaded_anew(page: &Page) -> Result<()> {
    let script = "return !window.isLeft && document.body?.dataset.ready === 'true'";
    // Meanwhile it may not answer.
    let anew = || Ok(page.browser.run(script, vec![]).unwrap_or(Value::Null));
    eventually("it is loaded anew", anew, |anew| *anew == json!(true))?;
    Ok(())
}

/// A window that could not store what was typed in it before another one took over, loaded anew once it can store again; `before` is
/// done in it just before.
///
/// # Errors
/// When it does not come to that.
pub(crate) fn a_loss_comes_to_light(
    stage: &Stage,
    before: impl FnOnce(&Page) -> Result<()>,
) -> Result<Page<'_>> {
    let two = Two::open(stage, &stage.address)?;
    take_over_from_a_full_window(&two)?;
    before(two.at(0)?)?;
    two.page.browser.run(FREE_AND_RELOAD, vec![])?;
    is_loaded_anew(&two.page)?;
    Ok(two.page)
}

/// That the first window, which is being loaded anew, shows what the other one wrote in the second row, and offers the
/// notebook in which its own remark on the first row is kept.
fn is_kept_apart(two: &Two, own: &str, others: &str) -> Result<()> {
    let kept = format!("{TITLE_GIVEN} (typed in another window)");
    is_loaded_anew(&two.page)?;
    two.page.reads(names::BANNER, &kept)?;
    eventually("it shows what the other wrote", || two.page.cell("Remark", 2), |text| text == others)?;
    two.page.click("Open it")?;
    two.page.sees(names::TITLE, &kept)?;
    ensure!(two.page.cell("Remark", 1)? == own, "what was kept apart is not there");
    two.page.is_saved()?;
    two.page.is_silent()
}

/// What is typed last before a page is loaded anew is in the notebook, and in that one only.
///
/// # Errors
/// When it is lost.
pub fn the_last_letters_outlive_a_reload(stage: &Stage) -> Result<()> {
    for address in [stage.address.clone(), stage.plain_address()] {
        let page = stage.page()?;
        page.go(&address)?;
        page.list_notebooks()?;
        page.click("New blank notebook")?;
        page.sees(names::ROWS_USED, &names::rows_used(0, 0))?;
        page.click(&names::new_cell("Edge B"))?;
        page.type_text("1")?;
        eventually("the row is begun", || page.count(names::ROWS), |rows| *rows == 1)?;
        for reload in 0..RELOADS {
            let text = format!("reload {reload}");
            page.browser.run(TYPE_AND_RELOAD, vec![json!(text)])?;
            is_loaded_anew(&page)?;
            ensure!(page.cell("Remark", 1)? == text, "the last letters are gone");
            page.is_saved()?;
            ensure!(page.text(names::BANNER)?.is_empty(), "the banner says {}", page.text(names::BANNER)?);
        }
        page.is_silent()?;
    }
    Ok(())
}
