//! What teachers and students of a class come into only by doing something, in French: data sets of each kind, as they are made
//! and as one is worked on, the key, comments as they are written, and what two teachers say side by side. None has an English word,
//! is too wide for a phone, or breaks a rule of accessibility.

use std::fs;

use anyhow::{Context, Result};
use slope_of_light::bundle;
use slope_of_light::notebook::write;

use crate::feedback::{self, BOTH, all_stand, comment_at, said, two_teachers_say};
use crate::languages::{OPEN_ALL, Tables, speak};
use crate::page::Page;
use crate::stage::Stage;
use crate::{class, data_sets, names, pictures};

/// Data sets that were made, one for each of two students.
///
/// # Errors
/// When something is English, too wide or against a rule.
pub fn data_sets_are_french(stage: &Stage) -> Result<()> {
    let tables = Tables::of(stage)?;
    let page = stage.page()?;
    speak(&page, "fr")?;
    for id in ["handout-title", "handout-usual"] {
        page.click(tables.french.says(id)?)?;
    }
    page.fill(tables.french.says("sets-names")?, "Zoé\nÉmile")?;
    page.click(tables.french.says("sets-make")?)?;
    page.reads("#sets-state", "2 jeux de données sont prêts.")?;
    tables.are_french_at(&page, "data sets that were made", "#prepare")?;
    page.click(tables.french.says("sets-take")?)?;
    let sets = bundle::unpack(&page.downloaded()?.1)?.into_vec();
    page.click(tables.french.says("sets-take-key")?)?;
    let (key, _) = page.downloaded_as("json")?;
    let handed = sets.iter().map(|set| page.home.write(&set.name, &set.bytes));
    class::choose(&page, &handed.collect::<Result<Vec<_>>>()?)?;
    page.reads("#class-state", "2 fichiers lus.")?;
    class::choose(&page, std::slice::from_ref(&key))?;
    page.reads("#class-state", "2 jeux de données a été lue")?;
    page.browser.run(OPEN_ALL, vec![])?;
    tables.are_french_at(&page, "a class with its key", "#class-table")?;
    let later = fs::read_to_string(&key)?.replacen("\"format\": 1", "\"format\": 99", 1);
    class::choose(&page, &[page.home.write("clé.json", later.as_bytes())?])?;
    page.reads("#class-table", "La clé")?;
    tables.are_french_at(&page, "a key of a later version", "#class-table")
}

/// Data sets of photos and of traces, as they are asked for, made and stopped, and as a student opens one and measures its traces.
///
/// # Errors
/// When something is English, too wide or against a rule.
pub fn data_sets_of_photos_and_traces_are_french(stage: &Stage) -> Result<()> {
    let tables = Tables::of(stage)?;
    let page = stage.page()?;
    speak(&page, "fr")?;
    let (sets, _) = data_sets::made(&page, &tables.french, "sets-forms-photographs", "1")?;
    tables.are_french_at(&page, "data sets of photos", "#prepare")?;
    let who = tables.french.says("sets-names")?;
    let make = tables.french.says("sets-make")?;
    page.fill(who, "12 étudiants")?;
    page.click(make)?;
    page.reads("#prepare", "n’est pas un nombre entier")?;
    tables.are_french_at(&page, "a number of data sets that is none", "#prepare")?;
    page.fill(who, "40")?;
    page.click(make)?;
    page.reads("#sets-state", "Préparation de 40 jeux de données")?;
    tables.has_no_english(&page, "data sets that are being made")?;
    page.click(tables.french.says("stop")?)?;
    page.sees("#sets-state", tables.french.says("sets-stopped")?)?;
    open_set(&page, sets.first().context("a data set")?)?;
    page.turn_to("#pictures")?;
    page.reads("#picture-count", "0 sur")?;
    // While the grid is looked for, no sentence stands there.
    page.reads(pictures::SAID, ".")?;
    tables.are_french_at(&page, "a data set of photos", "#pictures")?;

    let page = stage.page()?;
    speak(&page, "fr")?;
    let (sets, _) = data_sets::made(&page, &tables.french, "sets-forms-traces", "Zoé\nÉmile")?;
    tables.are_french_at(&page, "data sets of traces", "#prepare")?;
    open_set(&page, sets.first().context("a data set")?)?;
    page.turn_to("#readings")?;
    page.reads("#readings", "pour Zoé et pour personne d’autre")?;
    tables.are_french_at(&page, "a data set of traces", "#readings")?;
    page.click(tables.french.says("traces-again")?)?;
    page.reads("#trace-status", "positions ont été mesurées")?;
    page.browser.run(OPEN_ALL, vec![])?;
    tables.are_french_at(&page, "a data set of traces that were measured", "#traces")
}

/// Opens a data set as a student does.
fn open_set(page: &Page, set: &bundle::Entry) -> Result<()> {
    page.open_file(&page.home.write(&set.name, &set.bytes)?)
}

/// What two teachers say of a notebook, as one of them says it anew and as it is removed, and comments on a notebook that is not
/// here, or of a later version.
///
/// # Errors
/// When something is English, too wide or against a rule.
pub fn comments_of_two_teachers_are_french(stage: &Stage) -> Result<()> {
    let tables = Tables::of(stage)?;
    let page = stage.page()?;
    let (notebook, row) = two_teachers_say(&page)?;
    speak(&page, "fr")?;
    all_stand(&page, BOTH, 2)?;
    tables.are_french_at(&page, "what two teachers say", "#feedback")?;
    tables.are_french_at(&page, "comments of two teachers on a row", &format!("#row-{row} .said"))?;
    let better = said(&notebook, row, "Dr Green", "Better than I thought.")?;
    page.open_file(&page.home.write("green-2.json", &better)?)?;
    page.reads(names::MESSAGE, "remplacent ceux que Dr Green")?;
    tables.has_no_english(&page, "comments that replaced others")?;
    page.click(tables.french.says("feedback-remove")?)?;
    page.reads(names::MESSAGE, tables.french.says("feedback-removed")?)?;
    tables.has_no_english(&page, "comments that were removed")?;

    let page = stage.page()?;
    speak(&page, "fr")?;
    page.open_file(&page.home.write("green.json", &better)?)?;
    page.reads(names::MESSAGE, "Ce cahier n’est pas dans ce navigateur")?;
    tables.are_french_at(&page, "comments on a notebook that is not here", "#readings")?;
    let later = String::from_utf8(better)?.replacen("\"format\":1", "\"format\":7", 1);
    page.open_file(&page.home.write("later.json", later.as_bytes())?)?;
    page.reads(names::MESSAGE, "avec une version plus récente")?;
    tables.has_no_english(&page, "comments of a later version")
}

/// A notebook that was handed in, while a teacher comments on it, and the class with these comments.
///
/// # Errors
/// When something is English, too wide or against a rule.
pub fn comments_are_written_in_french(stage: &Stage) -> Result<()> {
    let tables = Tables::of(stage)?;
    let page = stage.page()?;
    speak(&page, "fr")?;
    let (notebook, row, _) = feedback::handed_in()?;
    class::choose(&page, &[page.home.write("remis.json", write(&notebook).as_bytes())?])?;
    page.reads("#class-state", "1 fichier lu.")?;
    page.click("Ouvrir Ada Blue")?;
    page.reads("dialog.handed h2", "Ada Blue")?;
    comment_at(&page, ".spot", "Deux chiffres suffisent.")?;
    page.fill(tables.french.says("class-mark")?, "15/20")?;
    tables.are_french(&page, "a notebook that is commented on")?;
    page.click(tables.french.says("class-reading-close")?)?;
    page.reads("#class-table", "15/20")?;
    page.reads("#class-feedback", "Pas encore téléchargés : 1.")?;
    tables.are_french_at(&page, "a class with comments", "#class-table")?;
    page.click(tables.french.says("class-feedback-take")?)?;
    page.downloaded()?;
    page.reads("#class-feedback", "Tout est téléchargé.")?;
    tables.are_french_at(&page, "comments that were downloaded", "#class-feedback")?;
    class::choose(&page, &[page.home.write("white.json", &said(&notebook, row, "Dr White", "Bien.")?)?])?;
    page.reads("#class-state", "les commentaires de Dr White")?;
    tables.are_french_at(&page, "comments under another name", "#class-feedback")
}
