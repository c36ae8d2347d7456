//! One notebook in two windows and in three, edited, taken over and loaded anew in a random order; and a window that hears of its
//! turn only after the next one has it.

use std::collections::BTreeMap;

use anyhow::{Context, Result, ensure};
use fantoccini::wd::WindowHandle;
use serde_json::json;

use crate::names;
use crate::page::{Page, eventually};
use crate::stage::Stage;
use crate::windows::{TAKE_OVER, Two};

/// How many things are done in each random run of two windows.
const STEPS: usize = 40;
/// The same of three, of which two can't be typed in.
const STEPS_OF_THREE: usize = 120;
/// The same in the long run, of two and of three.
const MANY_STEPS: usize = 1_000;
const SEEDS: [u64; 3] = [4, 21, 35];

/// Three windows on one notebook, the first of which writes. The second hears late of a turn that it seizes.
struct Three<'d> {
    two: Two<'d>,
    third: WindowHandle,
}

impl<'d> Three<'d> {
    fn open(stage: &'d Stage) -> Result<Self> {
        let two = Two::open(stage, &stage.address)?;
        two.at(1)?.browser.debug("Page.addScriptToEvaluateOnNewDocument", &json!({ "source": LATE }))?;
        two.page.reload()?;
        two.page.sees(names::SAVED, "Read only")?;
        let third = two.at(0)?.open_from_page(&stage.address)?;
        two.page.is_ready()?;
        two.page.sees(names::SAVED, "Read only")?;
        Ok(Self { two, third })
    }

    /// Turns to one of them.
    fn at(&self, window: usize) -> Result<&Page<'d>> {
        if window < 2 {
            return self.two.at(window);
        }
        self.two.page.browser.switch_to(&self.third)?;
        Ok(&self.two.page)
    }
}

/// Has a window hear late that a lock was given to it, as where the browser's processes are busy.
const LATE: &str = "
    const { request } = LockManager.prototype;
    LockManager.prototype.request = function (name, options, callback) {
        return request.call(this, name, options, !options.steal ? callback : async (lock) => {
            await new Promise((heard) => setTimeout(heard, window.late ?? 200));
            const left = callback(lock);
            window.isHeard = true;
            return left;
        });
    };";

/// A window from which the turn is seized before it has heard that it has it takes nothing from the one that has it then, and waits
/// like any other.
///
/// # Errors
/// When the other window loses its turn, or the first one for good.
pub fn a_turn_that_is_heard_of_late_takes_nothing(stage: &Stage) -> Result<()> {
    let three = Three::open(stage)?;
    three.at(1)?.browser.run("window.late = 4000", vec![])?;
    three.at(1)?.browser.run(PRESS, vec![])?;
    three.at(0)?.sees(names::SAVED, "Read only")?;
    three.at(2)?.click(TAKE_OVER)?;
    three.at(2)?.is_saved()?;
    three.at(2)?.type_in_cell("Remark", 1, "by the third")?;
    three.at(2)?.is_saved()?;
    let second = three.at(1)?;
    let heard = || second.browser.run("return window.isHeard === true", vec![]);
    eventually("the second hears of its turn", heard, |heard| *heard == json!(true))?;
    let third = three.at(2)?;
    third.type_in_cell("Remark", 2, "by the third still")?;
    third.is_saved()?;
    ensure!(third.text(names::BANNER)?.is_empty(), "the banner says {}", third.text(names::BANNER)?);
    let second = three.at(1)?;
    second.sees(names::SAVED, "Read only")?;
    eventually("the second follows", || second.cell("Remark", 2), |text| text == "by the third still")?;
    second.browser.run("window.late = 0", vec![])?;
    second.click(TAKE_OVER)?;
    second.is_saved()?;
    second.is_silent()
}

/// Leaves the remark of the next row if it is being typed in, and types a text into the one after it, which is left only
/// if asked for; says whether it could be typed.
const TYPE: &str = "
    const next = () => document.querySelector('tbody[data-row=new] [data-cell=remark]');
    next().dispatchEvent(new Event('change', { bubbles: true }));
    const box = next();
    if (box.matches(':disabled')) return false;
    box.focus();
    box.value = arguments[0];
    box.dispatchEvent(new InputEvent('input', { bubbles: true }));
    if (arguments[1]) box.dispatchEvent(new Event('change', { bubbles: true }));
    return true;";

/// Presses the button that takes over, if it is there.
const PRESS: &str = "document.querySelector('#take-over')?.click()";

/// The remarks in the journal by notebook, in the order of the log: those of rows begun and of cells written.
const REMARKS: &str = "return new Promise((resolve, reject) => {
    const open = indexedDB.open('slope-of-light');
    open.onerror = reject;
    open.onsuccess = () => {
        const store = open.result.transaction('journal').objectStore('journal');
        const [keys, texts] = [store.getAllKeys(), store.getAll()];
        texts.onsuccess = () => {
            open.result.close();
            const remarks = {};
            keys.result.forEach(([notebook], place) => {
                const { edit } = JSON.parse(texts.result[place]);
                const { add_row, set_cell } = edit;
                const text = add_row?.cells?.remark ?? (set_cell?.cell === 'remark' ? set_cell.text : undefined);
                if (text?.startsWith('edit ')) (remarks[notebook] ??= []).push(text);
            });
            resolve(remarks);
        };
    };
})";

/// Edits, takeovers and reloads in two windows in a random order, and in three: every edit that was typed ends in the notebook, or
/// in one that was kept apart, and never twice in one.
///
/// # Errors
/// When an edit is lost or doubled.
pub fn no_interleaving_loses_an_edit(stage: &Stage) -> Result<()> {
    lose_nothing(stage, STEPS, STEPS_OF_THREE)
}

/// The same, a thousand steps each.
///
/// # Errors
/// When an edit is lost or doubled.
pub fn a_thousand_steps_lose_no_edit(stage: &Stage) -> Result<()> {
    lose_nothing(stage, MANY_STEPS, MANY_STEPS)
}

/// So many steps in two windows, with locks and without, and in three.
fn lose_nothing(stage: &Stage, of_two: usize, of_three: usize) -> Result<()> {
    let [first, second, third] = SEEDS;
    for (address, seed) in [(stage.address.clone(), first), (stage.plain_address(), second)] {
        let two = Two::open(stage, &address)?;
        interleave((2, of_two), |window| two.at(window), seed)
            .with_context(|| format!("{address}, seed {seed}"))?;
    }
    let three = Three::open(stage)?;
    interleave((3, of_three), |window| three.at(window), third)
        .with_context(|| format!("three, seed {third}"))
}

/// Does so many things at random in so many windows, and looks for what was typed.
fn interleave<'p, 'd: 'p>(
    (windows, steps): (u64, usize),
    at: impl Fn(usize) -> Result<&'p Page<'d>>,
    seed: u64,
) -> Result<()> {
    let mut state = seed;
    // Constants of a linear congruential generator: D. E. Knuth, The Art of Computer Programming, vol. 2, 3.3.4 (MMIX).
    let mut below = |n: u64| {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (state >> 33) % n
    };
    let mut typed = Vec::new();
    for step in 0..steps {
        let page = at(usize::try_from(below(windows))?)?;
        match below(8) {
            0..=3 => {
                let text = format!("edit {step:03}");
                let done = page.browser.run(TYPE, vec![json!(text), json!(below(2) == 0)])?;
                if done == json!(true) {
                    typed.push(text);
                }
            }
            4..=6 => {
                page.browser.run(PRESS, vec![])?;
            }
            _ => page.reload()?,
        }
    }
    for window in 0..usize::try_from(windows)? {
        let state = || at(window)?.text(names::SAVED);
        eventually("it comes to rest", state, |state| state == "Saved" || state == "Read only")?;
    }
    let page = at(0)?;
    ensure!(typed.len() > 5, "only {} edits could be typed", typed.len());
    let all: BTreeMap<String, Vec<String>> = serde_json::from_value(page.browser.run(REMARKS, vec![])?)?;
    for text in &typed {
        let times: Vec<usize> =
            all.values().map(|remarks| remarks.iter().filter(|remark| *remark == text).count()).collect();
        ensure!(times.iter().any(|count| *count > 0), "{text} is lost; there is {all:?}");
        ensure!(times.iter().all(|count| *count <= 1), "{text} is doubled: {all:?}");
    }
    page.is_silent()
}
