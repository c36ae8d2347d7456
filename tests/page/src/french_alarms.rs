//! What is said in French where something can't be stored, loaded or read: none of it has an English word, is too wide for a phone,
//! or breaks a rule of accessibility.

use anyhow::Result;
use fantoccini::key::Key;
use serde_json::json;

use crate::home::Home;
use crate::host::Host;
use crate::languages::{Tables, is_in, prefer_french, press, speak};
use crate::stage::Stage;
use crate::{faults, file_store, names, offline, pictures, storage, traces, windows};

/// What is said where nothing can be stored, where the storage is full or fails, while another window writes, and when a
/// newer version of the page waits.
///
/// # Errors
/// When something is English, too wide or against a rule.
pub fn alarms_are_french(stage: &Stage) -> Result<()> {
    let tables = Tables::of(stage)?;
    nothing_is_stored(stage, &tables)?;
    storing_fails(stage, &tables)?;
    another_window_writes(stage, &tables)?;
    a_newer_version_waits(stage, &tables)
}

fn nothing_is_stored(stage: &Stage, tables: &Tables) -> Result<()> {
    let page = stage.page()?;
    page.browser.debug("Page.addScriptToEvaluateOnNewDocument", &json!({ "source": storage::NONE }))?;
    prefer_french(&page)?;
    page.reload()?;
    is_in(&page, "fr")?;
    page.reads(names::BANNER, tables.french.says("saving-no-journal")?)?;
    tables.are_french_at(&page, "no storage", "#readings")?;
    for (opened_by, dialog) in [("open-notebooks", "notebooks-dialog"), ("open-settings", "settings-dialog")]
    {
        press(&page, opened_by)?;
        page.is_asked()?;
        tables.are_french(&page, &format!("{dialog} without storage"))?;
        page.press(Key::Escape)?;
    }
    page.browser.run("document.querySelector('#settings-dialog input[value=en]').click()", vec![])?;
    page.reads(names::MESSAGE, tables.french.says("preferences-language-not-kept")?)?;
    tables.has_no_english(&page, "a language that can't be kept")
}

fn storing_fails(stage: &Stage, tables: &Tables) -> Result<()> {
    let page = stage.page()?;
    speak(&page, "fr")?;
    let title = tables.french.says("strip-title")?;
    for (error, said) in
        [("QuotaExceededError", tables.french.says("saving-full")?), ("UnknownError", "for a test")]
    {
        page.browser.run(storage::FAIL, vec![json!(error)])?;
        page.fill(title, error)?;
        page.reads(names::BANNER, said)?;
        tables.are_french_at(&page, error, "#readings")?;
    }
    Ok(())
}

fn another_window_writes(stage: &Stage, tables: &Tables) -> Result<()> {
    let page = stage.blank_page()?;
    page.fill("Title of the notebook", "Mardi")?;
    page.is_saved()?;
    page.open_from_page(&stage.address)?;
    page.is_ready()?;
    speak(&page, "fr")?;
    page.sees(names::SAVED, tables.french.says("saving-reading")?)?;
    tables.are_french_at(&page, "another window writes", "#readings")
}

fn a_newer_version_waits(stage: &Stage, tables: &Tables) -> Result<()> {
    let host = Host::of(&stage.dist)?;
    let page = stage.page_at(&host.address(), Home::new()?)?;
    offline::is_kept(&page)?;
    offline::renew(&host)?;
    speak(&page, "fr")?;
    page.reads(names::BANNER, tables.french.says("offline-newer")?)?;
    tables.are_french_at(&page, "a newer version waits", "#readings")
}

/// What is said where sections can't be loaded, the database does not answer, a window lost what was typed in it, a notebook is of a
/// later version, and no photos and traces are kept.
///
/// # Errors
/// When something is English, too wide or against a rule.
pub fn losses_are_told_in_french(stage: &Stage) -> Result<()> {
    let tables = Tables::of(stage)?;
    sections_are_not_loaded(stage, &tables)?;
    the_database_does_not_answer(stage, &tables)?;
    a_window_lost_what_was_typed(stage, &tables)?;
    a_notebook_is_of_a_later_version(stage, &tables)?;
    no_files_are_kept(stage, &tables)
}

fn sections_are_not_loaded(stage: &Stage, tables: &Tables) -> Result<()> {
    let page = stage.page()?;
    speak(&page, "fr")?;
    page.browser.debug("Network.enable", &json!({}))?;
    page.browser.debug("Network.setBlockedURLs", &json!({ "urls": ["*/late-sections*.js"] }))?;
    page.reload()?;
    page.reads("#delays", "n’a pas pu être chargée")?;
    tables.are_french(&page, "sections that were not loaded")
}

fn the_database_does_not_answer(stage: &Stage, tables: &Tables) -> Result<()> {
    let page = stage.page()?;
    speak(&page, "fr")?;
    page.browser.run(storage::HOLD, vec![])?;
    page.fill(tables.french.says("strip-title")?, "En attente")?;
    page.reads(names::BANNER, tables.french.says("saving-no-answer")?)?;
    tables.are_french_at(&page, "a database that does not answer", "#readings")?;
    page.browser.run(storage::LET_GO, vec![])?;
    Ok(())
}

fn a_window_lost_what_was_typed(stage: &Stage, tables: &Tables) -> Result<()> {
    let page = windows::a_loss_comes_to_light(stage, prefer_french)?;
    is_in(&page, "fr")?;
    page.reads(names::BANNER, "(saisi dans une autre fenêtre)")?;
    tables.are_french_at(&page, "what a window lost", "#readings")
}

fn a_notebook_is_of_a_later_version(stage: &Stage, tables: &Tables) -> Result<()> {
    let page = stage.blank_page()?;
    page.fill("Title of the notebook", "De demain")?;
    page.is_saved()?;
    page.reload()?;
    page.sees(names::TITLE, "De demain")?;
    faults::plant_a_later_entry(&page)?;
    prefer_french(&page)?;
    page.reload()?;
    is_in(&page, "fr")?;
    page.reads(names::MESSAGE, "De demain")?;
    tables.are_french_at(&page, "a notebook of a later version", "#readings")
}

fn no_files_are_kept(stage: &Stage, tables: &Tables) -> Result<()> {
    /// What is said both of photos and of traces.
    const TOLD: &str = "Ce navigateur ne garde pas les fichiers";
    let page = stage.page()?;
    let source = json!({ "source": file_store::NO_DATABASE });
    page.browser.debug("Page.addScriptToEvaluateOnNewDocument", &source)?;
    prefer_french(&page)?;
    page.reload()?;
    is_in(&page, "fr")?;
    page.turn_to("#delays")?;
    pictures::choose(&page, &pictures::series(&page.home, 1)?)?;
    page.reads("#picture-status", TOLD)?;
    tables.are_french_at(&page, "photos that are not kept", "#picture-status")?;
    traces::choose_files(&page, 2)?;
    page.reads("#trace-status", "2 positions")?;
    page.click(tables.french.says("traces-measure-all")?)?;
    page.reads("#trace-refused", TOLD)?;
    tables.are_french_at(&page, "traces that are not kept", "#trace-refused")
}
