//! States that one comes into only by doing something, in French: what is asked of a row and shown of it, a plan with its
//! warnings and its rehearsal, files that are refused, marks in doubt, tables that are taken away, what is noticed and offered, what is
//! asked before a seal is opened and before a computer is left, notes, ends of edges, videos, traces under the choices of their
//! layout, photos of the set-up, keys, replay, history, hand-outs and the wall view. None has an English word, is too wide for a
//! phone, or breaks a rule of accessibility.

use std::path::Path;

use anyhow::{Context, Result, ensure};
use fantoccini::key::Key;
use serde_json::json;
use slope_of_light::notebook::{Edit, Notebook, StoredFile, write};
use slope_of_light::simulated::random;

use crate::class::swap_edges;
use crate::files::bad_files;
use crate::languages::{CHOOSE, OPEN_ALL, Tables, at_each_width, press, speak};
use crate::page::{Page, eventually};
use crate::stage::Stage;
use crate::{bench, names, pictures, traces, video};

/// Presses the first of what a selector names.
pub(crate) const PRESS: &str = "document.querySelector(arguments[0]).click()";

/// Striking a row out, without a reason too, how a row was calculated, and the keys beside a cell on a touch screen.
///
/// # Errors
/// When something is English, too wide or against a rule.
pub fn what_is_asked_of_a_row_is_french(stage: &Stage) -> Result<()> {
    let tables = Tables::of(stage)?;
    let page = stage.page()?;
    speak(&page, "fr")?;
    page.turn_to("#readings")?;
    page.browser.run(PRESS, vec![json!("#readings-table tbody[data-row] .strike")])?;
    press(&page, "strike-confirm")?;
    page.sees("#strike-problem", tables.french.says("strike-needed")?)?;
    tables.are_french(&page, "striking a row out")?;
    page.press(Key::Escape)?;
    page.browser.run(PRESS, vec![json!("#readings-table tbody[data-row] th")])?;
    page.reads("#row-work-title", "1")?;
    tables.are_french(&page, "how a row was calculated")?;
    page.press(Key::Escape)?;
    page.browser.debug("Emulation.setTouchEmulationEnabled", &json!({ "enabled": true }))?;
    page.click(&format!("{}, ligne 1", tables.french.says("readings-columns-edge_a")?))?;
    eventually("the cell has its keys", || page.count("#readings-table .pad"), |count| *count > 0)?;
    tables.are_french_at(&page, "the keys beside a cell", "#readings-table")
}

/// A plan with every warning that one rail can raise, and a rehearsal whose true values are shown.
///
/// # Errors
/// When something is English, too wide or against a rule.
pub fn plan_and_rehearsal_are_french(stage: &Stage) -> Result<()> {
    let tables = Tables::of(stage)?;
    let page = stage.blank_page()?;
    bench::describe_rail(&page)?;
    page.fill("Pulse rate", "100 MHz")?;
    page.turn_to("#plan")?;
    for (number, reading) in [(1, "9000"), (2, "5000"), (3, "5100")] {
        page.click("Plan a position")?;
        page.fill(&format!("Ruler reading, planned position {number}"), reading)?;
        page.fill(&format!("ns/div, planned position {number}"), "0.5")?;
    }
    page.is_saved()?;
    speak(&page, "fr")?;
    page.turn_to("#plan")?;
    let warnings = || page.count("#plan-warnings > li");
    eventually("off the rail, beyond a period, off the screen, few", warnings, |count| *count >= 4)?;
    tables.are_french_at(&page, "a plan with warnings", "#plan-warnings")?;
    page.click(tables.french.says("plan-take")?)?;
    page.reads(names::MESSAGE, tables.french.says("plan-taken")?)?;
    tables.has_no_english(&page, "a plan that was taken")?;

    let page = stage.blank_page()?;
    bench::describe_rail(&page)?;
    page.is_saved()?;
    speak(&page, "fr")?;
    page.turn_to("#plan")?;
    eventually("it can be rehearsed", || page.count("#plan-rehearse:not(:empty)"), |count| *count == 1)?;
    press(&page, "plan-rehearse")?;
    page.reads(names::TITLE, tables.french.says("plan-rehearsal")?)?;
    eventually(
        "it can be told what was so",
        || page.count("#plan-truth-box:not([hidden])"),
        |count| *count == 1,
    )?;
    press(&page, "plan-show-truth")?;
    page.reads("#plan-truth", "m/s")?;
    page.browser.run(OPEN_ALL, vec![])?;
    tables.are_french(&page, "a rehearsal")
}

/// Photographs, traces and notebooks that can't be used, each refused with its reason.
///
/// # Errors
/// When something is English, too wide or against a rule.
pub fn refused_files_are_french(stage: &Stage) -> Result<()> {
    let tables = Tables::of(stage)?;
    let page = stage.blank_page()?;
    bench::describe_rail(&page)?;
    page.is_saved()?;
    speak(&page, "fr")?;
    page.turn_to("#delays")?;
    let files = [
        page.home.write("lettre.jpg", b"Chers lecteurs")?,
        page.home.write("mur.png", &pictures::header_of_png(12_000, 9_000))?,
    ];
    pictures::choose(&page, &files)?;
    page.reads(pictures::REFUSED, "mur.png")?;
    tables.are_french_at(&page, "photographs that are refused", pictures::REFUSED)?;
    traces::choose_bad(&page)?;
    page.reads("#trace-status", "8 fichiers")?;
    page.click(tables.french.says("traces-measure-all")?)?;
    page.reads("#trace-refused", "binary.csv")?;
    tables.are_french_at(&page, "traces that are refused", "#trace-refused")?;
    page.open_file(
        &page.home.write("demain.json", br#"{"kind":"slope-of-light notebook","format":99,"log":[]}"#)?,
    )?;
    page.reads(names::MESSAGE, "demain.json")?;
    tables.are_french_at(&page, "a notebook that is refused", "#readings")?;
    for (name, bytes, _) in bad_files(stage)? {
        page.open_file(&page.home.write(name, &bytes)?)?;
        page.reads(names::MESSAGE, name)?;
        tables.has_no_english(&page, name)?;
    }
    Ok(())
}

/// The table of the readings as LaTeX and as a pipe table.
///
/// # Errors
/// When a head or a cell is in English.
pub fn tables_are_taken_away_in_french(stage: &Stage) -> Result<()> {
    let tables = Tables::of(stage)?;
    let page = stage.page()?;
    speak(&page, "fr")?;
    for (format, ending) in [("latex", "tex"), ("markdown", "md")] {
        page.browser.run(CHOOSE, vec![json!("table-format"), json!(format)])?;
        page.click(tables.french.says("report-take-table")?)?;
        let (_, bytes) = page.downloaded_as(ending)?;
        let text = String::from_utf8(bytes)?;
        let cells: Vec<&str> = text
            .split(['&', '|', '\n'])
            .map(|cell| cell.trim().trim_end_matches("\\\\").trim())
            .map(|cell| cell.split_once(" / ").map_or(cell, |(title, _)| title))
            .collect();
        let head = tables.french.says("columns-readings-time_per_division")?;
        ensure!(cells.contains(&head), "no column “{head}” in {text}");
        let english = tables.english_of(cells.into_iter());
        ensure!(english.is_empty(), "as {format} it says {english:?}");
    }
    Ok(())
}

/// What is noticed of two edges that were swapped, with what is offered to mend it, and the question before a seal is opened.
///
/// # Errors
/// When something is English, too wide or against a rule.
pub fn notices_and_questions_are_french(stage: &Stage) -> Result<()> {
    let tables = Tables::of(stage)?;
    let page = stage.page()?;
    let (mut notebook, _) = random::bench(3).run(1)?;
    swap_edges(&mut notebook)?;
    speak(&page, "fr")?;
    page.open_file(&page.home.write("mardi.json", write(&notebook).as_bytes())?)?;
    let offered = || page.count(".notice .repair:not([hidden])");
    eventually("it is offered to mend it", offered, |count| *count > 0)?;
    page.browser.run(OPEN_ALL, vec![])?;
    tables.are_french(&page, "a notice that offers to mend")?;
    press(&page, "put-seal")?;
    press(&page, "open-seal")?;
    page.reads("#seal-dialog[open] h2", tables.french.says("seal-open-title")?)?;
    tables.are_french(&page, "the question before a seal is opened")?;
    page.click(tables.french.says("seal-open-sure")?)?;
    let closed = || page.has(tables.french.says("seal-open")?);
    eventually("the seal is open", closed, |closed| !closed)?;
    tables.are_french_at(&page, "a result whose seal was opened", "#result")
}

/// A photograph whose marks are in doubt: of another number of divisions than were stated.
///
/// # Errors
/// When something is English, too wide or against a rule.
pub fn doubted_photos_are_french(stage: &Stage) -> Result<()> {
    let tables = Tables::of(stage)?;
    let page = stage.blank_page()?;
    bench::describe_rail(&page)?;
    page.is_saved()?;
    speak(&page, "fr")?;
    page.turn_to("#delays")?;
    pictures::choose(&page, &pictures::series(&page.home, 1)?)?;
    pictures::is_proposed(&page, 0)?;
    page.fill(tables.french.says("pictures-columns")?, "9")?;
    page.reads(pictures::SAID, tables.french.says("pictures-doubts-border")?)?;
    page.reads(pictures::DOUBT, "9")?;
    tables.are_french_at(&page, "marks in doubt", pictures::SAID)
}

/// A note that is written and one that stands, the fields for the instruments, baseline and top of the edges that are marked on
/// a photo, and a video that is looked through beside those that can't be shown.
///
/// # Errors
/// When something is English, too wide or against a rule.
pub fn notes_ends_and_videos_are_french(stage: &Stage) -> Result<()> {
    let tables = Tables::of(stage)?;
    let page = stage.page()?;
    speak(&page, "fr")?;
    page.click(tables.french.says("notes-add")?)?;
    page.click(tables.french.says("notes-write")?)?;
    page.sees("#note-problem", tables.french.says("notes-needed")?)?;
    tables.are_french(&page, "a note that is written")?;
    page.fill(tables.french.says("notes-text")?, "Le câble a été déplacé.")?;
    page.click(tables.french.says("notes-write")?)?;
    page.reads("#readings-table [role=note]", "Le câble a été déplacé.")?;
    page.browser.run(OPEN_ALL, vec![])?;
    tables.are_french_at(&page, "a note between the rows", "#readings")?;
    tables.are_french_at(&page, "the instruments", "#bench-trigger")?;

    let page = pictures::first_is_marked(stage, 1)?;
    page.is_saved()?;
    speak(&page, "fr")?;
    page.browser.run(PRESS, vec![json!("#readings-table button.jump")])?;
    page.click(tables.french.says("pictures-ends-title")?)?;
    page.click(tables.french.says("pictures-ends-mark")?)?;
    page.reads("body", tables.french.says("pictures-ends-right")?)?;
    tables.are_french_at(&page, "ends of edges", pictures::SAID)?;
    page.browser.run(&format!("return (async () => {{ {} }})()", video::DROP), vec![])?;
    page.reads("#video-title", "1250 mm.webm")?;
    tables.are_french_at(&page, "a video", "#video-title")
}

/// What a layout makes of trace files, drawn under its choices, and why it makes nothing of them; and the photo of the set-up: a
/// file that is none, one that is taken in and removed, and one that is kept in another browser.
///
/// # Errors
/// When something is English, too wide or against a rule.
pub fn layouts_and_set_up_photos_are_french(stage: &Stage) -> Result<()> {
    /// Has the column of trace B ignored, whatever it is called.
    const WITHOUT_B: &str = "
        const roles = [...document.querySelectorAll('.trace-layout select')];
        const role = roles.find(({ value }) => value === 'channel_b');
        role.value = 'ignored';
        role.dispatchEvent(new Event('change', { bubbles: true }));";
    /// What is said of the photo of the set-up.
    const SAID: &str = ".wide:has(#set-up-photo) > [role=status]";
    let tables = Tables::of(stage)?;
    let page = stage.blank_page()?;
    bench::describe_rail(&page)?;
    page.is_saved()?;
    speak(&page, "fr")?;
    page.turn_to("#delays")?;
    traces::choose_files(&page, 2)?;
    page.reads("#layout-summary", "le front franchit")?;
    page.fill(tables.french.says("traces-layout-first-line")?, "1.5")?;
    page.reads("#trace-first-line-problem", "nombre entier")?;
    tables.are_french_at(&page, "traces under the choices of their layout", "#layout-summary")?;
    page.browser.run(WITHOUT_B, vec![])?;
    page.reads("#layout-refusal", "A 500mm.csv")?;
    tables.are_french_at(&page, "a layout that gives no pair of traces", "#layout-refusal")?;

    page.browser.run(OPEN_ALL, vec![])?;
    choose_set_up_photo(&page, &page.home.write("lettre.jpg", b"Chers lecteurs")?)?;
    page.reads(SAID, "JPEG")?;
    tables.are_french_at(&page, "a photo of the set-up that is refused", "#set-up-photo")?;
    let photos = pictures::series(&page.home, 1)?;
    choose_set_up_photo(&page, photos.first().context("a photo")?)?;
    let shown = || page.count("img.set-up:not([hidden])");
    eventually("the photo of the set-up is shown", shown, |count| *count == 1)?;
    tables.are_french_at(&page, "a photo of the set-up", "#set-up-photo")?;
    page.click(tables.french.says("photo-remove")?)?;
    page.reads(names::MESSAGE, tables.french.says("photo-removed")?)?;
    tables.has_no_english(&page, "a photo of the set-up that was removed")?;
    let mut notebook = Notebook::new();
    let photo = StoredFile { sha256: "0f".repeat(32), name: "banc.jpg".into(), bytes: 9 };
    notebook.apply(Edit::SetPhoto(Some(photo)), "")?;
    page.open_file(&page.home.write("ailleurs.json", write(&notebook).as_bytes())?)?;
    page.reads(SAID, "banc.jpg n’est pas conservé")?;
    tables.are_french_at(&page, "a photo of the set-up that is kept elsewhere", "#set-up-photo")
}

/// Chooses a file as the photo of the set-up.
fn choose_set_up_photo(page: &Page, file: &Path) -> Result<()> {
    page.turn_to("#set-up-photo")?;
    let input = page.browser.element("return document.querySelector('#set-up-photo')", vec![])?;
    page.browser.choose_file(&input.context("no input for a photo of the set-up")?, file)
}

/// A hand-out of which nothing more is asked, in which undo stops, and which was begun before; and what is asked before everything
/// is removed from a shared computer.
///
/// # Errors
/// When something is English, too wide or against a rule.
pub fn handing_in_is_french(stage: &Stage) -> Result<()> {
    let tables = Tables::of(stage)?;
    let page = stage.page()?;
    speak(&page, "fr")?;
    let hand_out = write(&Notebook::new().hand_out("")?);
    let hand_out = page.home.write("document.json", hand_out.as_bytes())?;
    page.open_file(&hand_out)?;
    page.turn_to("#report")?;
    page.reads("#handin-state", tables.french.says("handin-complete")?)?;
    page.press_with_control('z')?;
    page.reads(names::MESSAGE, tables.french.says("edit-undo_stops")?)?;
    page.open_file(&hand_out)?;
    page.reads(names::MESSAGE, "Vous avez déjà commencé")?;
    page.turn_to("#report")?;
    tables.are_french_at(&page, "a hand-out that is complete", "#handin")?;
    page.click(tables.french.says("leave-ask")?)?;
    page.is_asked()?;
    tables.are_french(&page, "before a computer is left")
}

/// In French the list of keys, the replay, a hand-out that is prepared and worked on, and the wall view have no English
/// word; all fits a phone and breaks no rule.
///
/// # Errors
/// When one has.
pub fn what_comes_later_speaks_french(stage: &Stage) -> Result<()> {
    let tables = Tables::of(stage)?;
    let page = stage.page()?;
    speak(&page, "fr")?;
    let press_named = |id: &str| page.click(tables.french.says(id)?);
    page.type_text("?")?;
    page.reads("dialog[open]", "Ctrl + Z")?;
    tables.are_french(&page, "the list of keys")?;
    page.press(Key::Escape)?;
    press_named("replay")?;
    page.reads("dialog[open] .lead", "1")?;
    tables.are_french(&page, "the replay")?;
    page.press(Key::Escape)?;
    press_named("report-history")?;
    page.reads("dialog.history [role=status]", "SHA-256")?;
    tables.are_french(&page, "the history")?;
    for only in ["no-row", "3"] {
        page.browser.run(CHOOSE, vec![json!("history-only"), json!(only)])?;
        tables.is_french(&page, "the history, in part")?;
    }
    page.press(Key::Escape)?;

    press_named("handout-title")?;
    press_named("handout-usual")?;
    press_named("handout-add")?;
    page.fill(tables.french.says("handout-text")?, "Pourquoi t₀ ≠ 0 ?")?;
    press_named("handout-take")?;
    let (_, hand_out) = page.downloaded()?;
    page.reads("#prepare-made", ".")?;
    tables.are_french_at(&page, "a hand-out that was made", "#prepare-made")?;
    page.open_file(&page.home.write("document.zip", &hand_out)?)?;
    page.turn_to("#report")?;
    page.reads("#handin-missing", "t₀")?;
    page.browser.run(OPEN_ALL, vec![])?;
    tables.are_french(&page, "a hand-out that is worked on")?;
    page.browser.go("about:blank")?;
    page.go(&format!("{}#open=AAAA", stage.address))?;
    page.reads(names::MESSAGE, tables.french.says("posted-broken")?)?;
    tables.are_french_at(&page, "a link that is refused", "#readings")?;
    // What was told of it lies over the foot of the page.
    page.browser.go("about:blank")?;
    page.go(&stage.address)?;

    let wall = page.browser.tab_opened_by(|| press_named("wall"))?;
    page.browser.switch_to(&wall)?;
    page.reads(".wall-row", " 24")?;
    tables.has_no_english(&page, "the wall view")?;
    at_each_width(&page, "the wall view", |checked| checked())?;
    for leaf in ["wall-bench", "wall-result"] {
        press_named(leaf)?;
        tables.has_no_english(&page, leaf)?;
        at_each_width(&page, leaf, |checked| checked())?;
    }
    page.reads(".wall-words", "La vitesse de la lumière").map(drop)
}
