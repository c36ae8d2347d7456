//! The cautions: who read them stands in the notebook, invisible beams and local rules come first.

use anyhow::{Context, Result, ensure};
use fantoccini::key::Key;
use serde_json::json;

use crate::access;
use crate::page::{Page, eventually};
use crate::stage::Stage;

/// What says that the cautions were read.
const READ: &str = "I have read this. It is no permission: start when the person in charge says so.";
/// The headings of the cautions, the first one.
const FIRST: &str = "#cautions-list h3";
/// Who read them.
const READERS: &str = "#cautions-readers";

/// The cautions are open in each notebook until somebody has said there, by name, that they were read; an undo takes it
/// back, and a reload keeps it.
///
/// # Errors
/// When it is otherwise.
pub fn cautions_are_read_by_name(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    is_open(&page, true)?;
    page.tab_to("Your name")?;
    page.press(Key::Tab)?;
    page.focuses(READ)?;
    page.press(Key::Enter)?;
    page.focuses("Your name")?;
    page.reads("#cautions-name-problem", "Type your name first")?;
    page.type_text("Ada")?;
    page.press(Key::Enter)?;
    page.focuses("What to watch for")?;
    is_open(&page, false)?;
    let told = page.reads(READERS, "Cautions read: Ada, ")?;
    ensure!(told.trim_end().ends_with(" UTC. This is no permission."), "{told:?}");
    page.is_saved()?;
    page.reload()?;
    page.sees(READERS, &told)?;
    is_open(&page, false).context("after a reload")?;

    page.click("Undo")?;
    is_open(&page, true)?;
    page.click("Redo")?;
    is_open(&page, false).context("after a redo")?;
    page.list_notebooks()?;
    page.click("New blank notebook")?;
    is_open(&page, true)?;
    ensure!(page.text(READERS)?.is_empty(), "another notebook is read, too");
    page.is_silent()
}

/// A stated wavelength that nobody sees brings the words on it forward; local rules and a contact stand above all else,
/// and travel with the notebook.
///
/// # Errors
/// When it is otherwise.
pub fn invisible_beams_and_local_rules_come_first(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    page.sees(FIRST, "The beam")?;
    page.fill("Wavelength in vacuum", "337,1")?;
    page.sees(FIRST, "The beam")?;
    for (wavelength, first) in
        [("337.1", "This beam is invisible"), ("650", "The beam"), ("1064", "This beam is invisible")]
    {
        page.fill("Wavelength in vacuum", wavelength)?;
        page.sees(FIRST, first)?;
    }
    page.reads("#cautions-list ul", "1064 nm, is outside the visible range (400 nm to 700 nm")?;

    page.click("Add local rules and a contact")?;
    page.fill("Rules of this laboratory", "Door 3 stays shut.\nNobody works alone.")?;
    page.fill("Contact", "extension 12")?;
    page.sees("#cautions-local-rules", "Door 3 stays shut.\nNobody works alone.")?;
    page.sees("#cautions-local-contact", "Contact: extension 12")?;
    let above = "return document.getElementById('cautions-local').getBoundingClientRect().bottom
        <= document.querySelector('#cautions .lead').getBoundingClientRect().top";
    ensure!(page.browser.run(above, vec![])? == json!(true), "the local rules stand below the cautions");
    access::load_checker(&page)?;
    for scheme in ["light", "dark"] {
        page.wear(scheme)?;
        access::unbroken(&page)?;
    }
    page.is_saved()?;
    page.reload()?;
    page.reads("#cautions-local-rules", "Nobody works alone")?;
    page.is_silent()
}

fn is_open(page: &Page, open: bool) -> Result<()> {
    let state = || page.browser.run("return document.getElementById('cautions-box').open", vec![]);
    eventually(&format!("whether the cautions are open: {open}"), state, |state| *state == json!(open))?;
    Ok(())
}
