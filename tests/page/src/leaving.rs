//! A computer that others use too: after handing in nothing of the notebook stays there.

use anyhow::{Context, Result, ensure};

use slope_of_light::notebook::{Notebook, write};

use crate::names;
use crate::page::{Page, eventually};
use crate::stage::Stage;

/// All that the browser keeps for the page, as one text.
const KEPT: &str = "return (async () => {
    const all = [localStorage, sessionStorage].map((store) => JSON.stringify({ ...store }));
    for (const { name } of await indexedDB.databases()) {
        const base = await new Promise((resolve, reject) => {
            const asked = indexedDB.open(name);
            asked.onsuccess = () => resolve(asked.result);
            asked.onerror = () => reject(asked.error);
        });
        for (const store of base.objectStoreNames) {
            const asked = base.transaction(store).objectStore(store).getAll();
            all.push(await new Promise((resolve) => { asked.onsuccess = () => resolve(JSON.stringify(asked.result)); }));
        }
        base.close();
    }
    return all.join(' ');
})()";

/// Where the computer is said to be shared, handing in asks whether all shall be removed; then nothing is kept of any
/// notebook, and the next one to come is asked again. A new window shows nothing that another left, nor does the same hand-out there. What another
/// window would bring back is not removed.
///
/// # Errors
/// When it is otherwise.
pub fn a_shared_computer_keeps_nothing(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    let hand_out = write(&Notebook::new().hand_out("")?);
    page.open_file(&page.home.write("handed.json", hand_out.as_bytes())?)?;
    page.sees(names::ROWS_USED, &names::rows_used(0, 0))?;
    page.turn_to("#report")?;
    page.reads("#handin-state", "Everything that was asked for is there.")?;
    page.fill("Names", "Ada Blue")?;
    page.is_saved()?;
    ensure!(keeps(&page, "Ada Blue")?, "nothing is kept to begin with");
    page.click("Settings")?;
    page.click("shared with others")?;
    page.click("Close")?;
    page.click("Download the file to hand in")?;
    page.downloaded()?;
    page.reads("#leave", "cannot be undone")?;
    page.click("Keep everything")?;
    ensure!(keeps(&page, "Ada Blue")?, "what was to be kept was removed");

    let this = page.browser.tab()?;
    let other = page.browser.open_tab()?;
    page.go(&stage.address)?;
    page.is_ready()?;
    let fields =
        "return [...document.querySelectorAll('input, textarea')].map(({ value }) => value).join(' ')";
    let shown = page.browser.run(fields, vec![])?.to_string() + &page.text("body")?;
    ensure!(!shown.contains("Ada Blue"), "a new window shows what another left: {shown}");
    page.open_file(&page.home.write("handed.json", hand_out.as_bytes())?)?;
    page.reads(names::MESSAGE, "If that one is yours, open it under “Notebooks”.")?;
    page.turn_to("#report")?;
    ensure!(page.value("Names")?.is_empty(), "the same hand-out opens what another began from it");
    page.browser.switch_to(&this)?;
    page.click("Remove everything from this computer")?;
    page.click("Remove everything")?;
    page.reads(names::MESSAGE, "another window of this page is open")?;
    ensure!(keeps(&page, "Ada Blue")?, "it was removed while another window was open");
    page.browser.switch_to(&other)?;
    page.browser.close_tab()?;
    page.browser.switch_to(&this)?;

    page.click("Remove everything from this computer")?;
    page.click("Remove everything")?;
    eventually("the page begins anew", || page.has("Take the tour (2 minutes)"), |has| *has)?;
    page.is_ready()?;
    ensure!(!keeps(&page, "Ada Blue")?, "something is left");
    page.list_notebooks()?;
    ensure!(page.count(names::NOTEBOOKS)? == 1, "more than the example is there");
    page.click("Close")?;
    page.click("Settings")?;
    let shared = "return document.getElementById('computer-shared').checked";
    ensure!(page.browser.run(shared, vec![])? == true, "the computer is no longer shared");
    page.click("Close")?;
    page.is_silent()
}

fn keeps(page: &Page, text: &str) -> Result<bool> {
    let kept = page.browser.run(KEPT, vec![])?;
    Ok(kept.as_str().context("what is kept")?.contains(text))
}
