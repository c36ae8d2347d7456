//! The history of a notebook as people read it, and its digests.

use anyhow::{Context, Result, ensure};
use fantoccini::key::Key;
use serde_json::json;
use slope_of_light::bundle;
use slope_of_light::notebook::{Cell, Edit, Notebook, write};

use crate::downloads::records_of;
use crate::languages::speak;
use crate::names;
use crate::page::{Page, eventually};
use crate::sight::resize;
use crate::stage::Stage;

/// What stands in the history: of each line its cells.
const LINES: &str = "return Array.from(document.querySelectorAll('dialog.history tbody tr'), (line) => \
    Array.from(line.cells, ({ textContent }) => textContent))";

/// What was typed and typed over, chosen, taken back, struck out stands in the history with what stood there before, also by row;
/// each digest is SHA-256 of the one before it and of the entry.
///
/// # Errors
/// When it is otherwise.
pub fn the_history_is_read(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    let before = page.cell("Ruler reading", 3)?;
    page.put_in_cell("Ruler reading", 3, "1111")?;
    page.put_in_cell("Ruler reading", 3, "2222")?;
    page.click("Undo")?;
    page.browser.run("document.querySelector('#row-2 .strike').click()", vec![])?;
    page.fill("Reason", "the lamp was switched on")?;
    page.browser.run("document.querySelector('#strike-confirm').click()", vec![])?;
    page.click("a mirror (the light travels there and back)")?;
    page.click("Add a rail")?;
    page.is_saved()?;
    page.click("History")?;
    let all = lines(&page, "all entries", |lines| lines.iter().any(|line| line.len() == 5))?;
    let newest = |what: [&str; 3]| {
        let is = |line: &&Vec<String>| line.len() == 5 && what.iter().zip(&line[2..5]).all(|(a, b)| a == b);
        ensure!(all.iter().any(|line| is(&line)), "there is no line {what:?} in {:?}", &all[..6]);
        Ok(())
    };
    newest(["Rail 4", "", "added"])?;
    newest(["Apparatus", "", "a mirror (the light travels there and back)"])?;
    newest(["row 2", "", "struck out: the lamp was switched on"])?;
    newest(["row 3 · Ruler reading", "1111", "2222"])?;
    newest(["row 3 · Ruler reading", &before, "1111"])?;
    let undone = all.iter().find(|line| line.get(2).is_some_and(|told| told.ends_with("undone")));
    let typed = all.iter().find(|line| line.get(4).is_some_and(|to| to == "2222")).context("no entry")?;
    ensure!(undone.is_some_and(|line| line[2] == format!("entry {} undone", typed[0])), "it says {undone:?}");
    page.choose("Show", "row 2")?;
    let of_row = lines(&page, "those of row 2", |lines| lines.len() < all.len())?;
    let told = |line: &Vec<String>| line.len() < 5 || line[2].starts_with("row 2");
    ensure!(of_row.len() > 1 && of_row.iter().all(told), "of row 2 it tells {of_row:?}");
    digests_hold(&page)?;
    page.is_silent()
}

/// A notebook whose entries bear a time that is none, or no time, is read and played back. What a block wrote and what took
/// it back stand under each of its rows, and the title of a copy with the one before.
///
/// # Errors
/// When it is otherwise.
pub fn a_history_from_elsewhere_is_read(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    let begun = |row, text: &str| {
        let cells = [(Cell::Distance, text.to_owned())].into_iter().collect();
        Edit::AddRow { row, after: None, cells }
    };
    let typed = |row, text: &str| Edit::SetCell { row, cell: Cell::Distance, text: text.into() };
    let mut notebook = Notebook::new();
    for (edit, at) in [
        (Edit::SetTitle("From elsewhere".into()), "yesterday"),
        (begun(1, "1"), "yesterday"),
        (begun(2, "2"), ""),
        (Edit::Together(vec![typed(1, "3"), typed(2, "4")]), "yesterday"),
        (Edit::Undo, "yesterday"),
        (Edit::Copied("A copy".into()), ""),
    ] {
        notebook.apply(edit, at)?;
    }
    page.open_file(&page.home.write("elsewhere.json", write(&notebook).as_bytes())?)?;
    page.sees(names::TITLE, "A copy")?;
    page.turn_to("#readings")?;
    page.click("History")?;
    let all = lines(&page, "all entries", |lines| lines.iter().any(|line| line.len() == 5))?;
    ensure!(all.iter().any(|line| line.as_slice() == ["yesterday"]), "it conceals what is no time: {all:?}");
    let copied = all.iter().find(|line| line.get(4).is_some_and(|to| to == "A copy"));
    ensure!(copied.is_some_and(|line| line[3] == "From elsewhere"), "of the copy it says {copied:?}");
    page.choose("Show", "row 2")?;
    let of_row = lines(&page, "those of row 2", |lines| lines.len() < all.len())?;
    let undone = |line: &Vec<String>| line.get(2).is_some_and(|told| told == "entry 4 undone");
    ensure!(of_row.iter().any(undone), "of row 2 it tells {of_row:?}");
    page.click("Close")?;
    page.click("Replay")?;
    page.reads("dialog.replay[open] .lead", " of ")?;
    page.is_silent()
}

/// The number of an entry opens the replay there, with c as it was then; closed, it leaves the history as it was.
///
/// # Errors
/// When it is otherwise.
pub fn the_run_is_played_back_from_an_entry(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    page.put_in_cell("Ruler reading", 3, "111")?;
    let then = page.result()?;
    page.put_in_cell("Edge B", 10, "9.00")?;
    eventually("c is another", || page.result(), |now| *now != then)?;
    page.click("History")?;
    let all = lines(&page, "all entries", |lines| lines.iter().any(|line| line.len() == 5))?;
    let typed = all.iter().find(|line| line.len() == 5 && line[2] == "row 3 · Ruler reading");
    let name = format!("Replay from entry {}", typed.context("the reading is not told")?[0]);
    page.click(&name)?;
    page.sees("dialog.replay output", &then)?;
    page.reads("dialog.replay .lead", "row 3: near · 111")?;
    page.browser.run("document.querySelector('dialog.replay').close()", vec![])?;
    page.focuses(&name)?;
    page.press(Key::Down)?;
    ensure!(page.focused()? != name, "the arrow keys do not go from entry to entry");
    page.is_silent()
}

/// What has the focus in the history keeps it when the digests have come.
///
/// # Errors
/// When it loses it.
pub fn the_history_keeps_the_focus(stage: &Stage) -> Result<()> {
    /// Opens the history, and gives the focus to its newest entry before any digest is there.
    const OPENED: &str = "document.getElementById('open-history').click();
        document.querySelector('dialog.history tbody button').focus();
        return document.activeElement.getAttribute('aria-label')";
    let page = stage.page()?;
    eventually("the history is there", || page.count("dialog.history"), |count| *count == 1)?;
    let name = page.browser.run(OPENED, vec![])?;
    let name = name.as_str().context("no entry has the focus")?;
    page.reads("dialog.history [role=status]", "Digest of the whole history: ")?;
    ensure!(page.focused()? == name, "the focus is no longer on “{name}”");
    page.is_silent()
}

/// On a phone nothing of the history needs to be scrolled sideways, in either language.
///
/// # Errors
/// When something does.
pub fn the_history_fits_a_phone(stage: &Stage) -> Result<()> {
    /// How many entries are there, and by how much the history and what is scrolled in it are too wide.
    const OPENED: &str = "const history = document.querySelector('dialog.history');
        if (history && !history.open) document.getElementById('open-history').click();
        const beyond = [history, history?.querySelector('.scroll')].map((box) => box && box.scrollWidth - box.clientWidth);
        return [document.querySelectorAll('dialog.history[open] tbody tr').length > 10, ...beyond]";
    let page = stage.page()?;
    resize(&page, 360, 740)?;
    for language in ["en", "fr"] {
        speak(&page, language)?;
        let opened = || page.browser.run(OPENED, vec![]);
        eventually(&format!("the history fits in “{language}”"), opened, |found| {
            *found == json!([true, 0, 0])
        })?;
    }
    page.is_silent()
}

/// Each digest in the file is the one that follows from the notebook's entries.
fn digests_hold(page: &Page) -> Result<()> {
    page.reads("dialog.history [role=status]", "Digest of the whole history: ")?;
    page.click("Download the history (CSV)")?;
    let (_, table) = page.downloaded_as("csv")?;
    let records = records_of(&table)?;
    let last = records.last().context("no line")?;
    let (number, told): (usize, &str) = (last[0].parse()?, &last[5]);
    page.click("Close")?;
    page.turn_to("#report")?;
    page.click("Download bundle (.zip)")?;
    let notebook = bundle::read(&page.downloaded()?.1)?.notebook;
    let mut digest = String::new();
    for entry in &notebook.log()[..number] {
        let text = format!("{digest}\n{}", serde_json::to_string(entry)?);
        digest = bundle::sha256_hex(text.as_bytes());
    }
    ensure!(digest == told, "entry {number} has the digest {told}, not {digest}");
    Ok(())
}

/// The lines in the history, once they are as they should be.
fn lines(page: &Page, what: &str, are_right: impl Fn(&Vec<Vec<String>>) -> bool) -> Result<Vec<Vec<String>>> {
    let read = || Ok(serde_json::from_value(page.browser.run(LINES, vec![json!(null)])?)?);
    eventually(what, read, are_right)
}
