//! A data set for each student: made by a teacher, worked on by a student, and held against the key on the leaf Class.

use anyhow::{Context, Result, ensure};
use serde_json::Value;

use slope_of_light::analysis::{C0, analyse};
use slope_of_light::bundle::{self, Entry};
use slope_of_light::notebook::{
    BenchField, Cell, Edit, Evidence, Notebook, Piece, PlannedPosition, StoredFile, read, write,
};
use slope_of_light::simulated::demo;

use crate::class::{choose, row_of, rows};
use crate::languages::Texts;
use crate::names;
use crate::page::{Page, eventually};
use crate::stage::Stage;

/// In which column of the table the verdict stands, after that of who it is.
const KEY: usize = 5;

/// A teacher gets three hand-outs in one zip, which hold nothing of the seed, and their key; a student sees for whom the
/// readings were drawn and hands in; the class tells of each what the key says of it, and of one that is in no key just that.
///
/// # Errors
/// When it is otherwise.
pub fn each_student_has_a_data_set(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    page.click("Hand out to a class")?;
    page.click("Apply the usual choices")?;
    page.fill("Date", "2031-05-06")?;
    page.turn_to("#prepare")?;
    page.click("Make the data sets")?;
    ensure!(!page.has("Download the key")?, "a key of no data sets is there");
    page.fill("Names, one on each line, or how many", "12 students")?;
    page.click("Make the data sets")?;
    page.reads("#prepare", "is not a whole number from 1 to 500")?;
    ensure!(!page.has("Download the key")?, "a key of some data sets is there");
    page.fill("Names, one on each line, or how many", "Ada Blue\nBen/Red\nŽoë Ünal")?;
    page.click("Make the data sets")?;
    page.reads("#sets-state", "3 data sets were made.")?;
    page.click("Download the data sets (zip)")?;
    let sets = bundle::unpack(&page.downloaded()?.1)?.into_vec();
    // They belong to no other names; the key to them is offered once more.
    page.fill("Names, one on each line, or how many", "Ada Blue")?;
    page.reads(names::MESSAGE, "you have not downloaded the key")?;
    page.click("Download the key")?;
    let (file, key) = page.downloaded_as("json")?;
    let told: Value = serde_json::from_slice(&key)?;
    let key_file = file.file_name().and_then(|name| name.to_str()).context("a name")?;
    ensure!(key_file.ends_with("-key.json"), "the key is called {key_file}");
    let names: Vec<&str> = sets.iter().map(|set| set.name.as_str()).collect();
    ensure!(
        names == ["1_Ada Blue.json", "2_Ben-Red.json", "3_Žoë Ünal.json"],
        "the files are called {names:?}"
    );

    let seed = told["key"]["seed"].as_str().context("a seed")?;
    let notebooks = sets
        .iter()
        .enumerate()
        .map(|(place, set)| opened(set, seed, truth(&told, place)?))
        .collect::<Result<Vec<_>>>()?;
    let people: Vec<&str> = notebooks.iter().map(|set| set.state().text(BenchField::People)).collect();
    ensure!(people == ["Ada Blue", "Ben/Red", "Žoë Ünal"], "they are for {people:?}");
    page.is_silent()?;

    let student = stage.page()?;
    student.open_file(&student.home.write("1_Ada Blue.json", &sets[0].bytes)?)?;
    student.turn_to("#readings")?;
    student.reads("#readings", "They were drawn for Ada Blue and for nobody else.")?;
    student.turn_to("#report")?;
    student.fill("Discussion", "It agrees.")?;
    student.is_saved()?;
    student
        .click("Download the file, incomplete")
        .or_else(|_| student.click("Download the file to hand in"))?;
    let (_, handed) = student.downloaded()?;
    student.is_silent()?;
    are_held_against_the_key(&page, &handed, &sets, (key_file, &key), &verdicts(&notebooks, &told)?)
}

/// A data set in which what was drawn is fixed, with the name. Nothing of the seed stands in its file, nor t₀
/// as its key tells it.
fn opened(set: &Entry, seed: &str, t0: f64) -> Result<Notebook> {
    let (text, name) = (std::str::from_utf8(&set.bytes)?, &set.name);
    let parts = (0..=seed.len() - 8).filter_map(|from| seed.get(from..from + 8));
    ensure!(seed.len() == 64 && !parts.into_iter().any(|part| text.contains(part)), "{name} holds the seed");
    ensure!(!text.contains("rehearsal") && !text.contains(&format!("\"{t0:.3}")), "{name} holds the truth");
    let mut notebook = read(text)?;
    let page = notebook.state();
    let fixed = [Piece::Readings, Piece::Positions, Piece::TimeBases, Piece::People, Piece::Rails];
    ensure!(fixed.into_iter().all(|piece| page.handout.fixes(piece)), "not all is fixed in {name}");
    ensure!(page.text(BenchField::Date).is_empty(), "the teacher's date stands in {name}");
    ensure!(!text.contains("Bench 4"), "who measured the demo stands in {name}");
    let row = page.rows.first().context("no row")?.id;
    for cell in [Cell::Reading, Cell::TimeBase, Cell::EdgeA] {
        let edit = Edit::SetCell { row, cell, text: "1".into() };
        ensure!(notebook.apply(edit, "").is_err() && !notebook.can_undo(), "{name} can be edited");
    }
    Ok(notebook)
}

/// The true t₀ of a data set, ns.
fn truth(key: &Value, place: usize) -> Result<f64> {
    let told = key["key"]["sets"][place]["truth"]["t0"].as_str().context("no t0 in the key")?;
    Ok(told.strip_suffix("\u{a0}ns").context("no unit")?.parse()?)
}

/// What is to be said of each: whether U covers c, and k times u the true t₀.
fn verdicts(notebooks: &[Notebook], key: &Value) -> Result<Vec<&'static str>> {
    let verdict = |(place, notebook): (usize, &Notebook)| {
        let analysis = analyse(notebook);
        let speed = analysis.speed.map_err(|refusal| anyhow::anyhow!(refusal.id))?;
        let fit = analysis.line.map_err(|refusal| anyhow::anyhow!(refusal.id))?.fit.clone();
        let expanded = speed.expanded().context("an expanded uncertainty")?;
        let c = (speed.c - C0).abs() <= expanded;
        let u = fit.uncertainty.context("an uncertainty")?.intercept;
        let t0 = (fit.intercept - truth(key, place)?).abs() <= expanded / speed.u_c() * u;
        Ok(match (c, t0) {
            (true, true) => "c and t₀ covered",
            (true, false) => "c covered, t₀ not",
            (false, true) => "t₀ covered, c not",
            (false, false) => "neither c nor t₀ covered",
        })
    };
    notebooks.iter().enumerate().map(verdict).collect()
}

fn are_held_against_the_key(
    page: &Page,
    handed: &[u8],
    sets: &[Entry],
    (key_file, key): (&str, &[u8]),
    expected: &[&str],
) -> Result<()> {
    let other = demo::typed_readings()?.0;
    let mut files =
        vec![page.home.write("ada.zip", handed)?, page.home.write("other.json", write(&other).as_bytes())?];
    for set in sets.iter().skip(1) {
        files.push(page.home.write(&set.name, &set.bytes)?);
    }
    choose(page, &files)?;
    page.reads("#class-state", "4 files read.")?;
    page.sees("#class-shown", "4 of 4 in the table")?;
    let unkeyed = rows(page)?.first().context("no row")?.len();
    choose(page, &[page.home.write(key_file, key)?])?;
    page.reads("#class-state", "with its 3 data sets was read")?;
    let keyed = |rows: &Vec<Vec<String>>| rows.len() == 4 && rows.iter().all(|row| row.len() == unkeyed + 1);
    let rows = eventually("the key gives a column", || rows(page), keyed)?;
    let told = ["Ada Blue", "Ben/Red", "Žoë Ünal"].into_iter().zip(expected.iter().copied());
    for (who, verdict) in told.chain([("Bench 4", "not in the key")]) {
        let row = row_of(&rows, who)?;
        ensure!(
            row.get(KEY).is_some_and(|cell| cell == verdict),
            "of {who} it does not say “{verdict}”: {row:?}"
        );
    }
    page.click("Sort by Key")?;
    page.click("Clear the table")?;
    page.is_silent()
}

/// A teacher's hand-outs with traces are bundles, which hold nothing of the seed; a student measures what is in one, all of it comes
/// into the line, and the key says of it what follows from the notebook.
///
/// # Errors
/// When it is otherwise.
pub fn a_data_set_of_traces_is_measured(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    let (sets, (key_file, key)) =
        made(&page, &Texts::of(stage, "en")?, "sets-forms-traces", "Ada Blue\nBen Red")?;
    let told: Value = serde_json::from_slice(&key)?;
    let names: Vec<&str> = sets.iter().map(|set| set.name.as_str()).collect();
    ensure!(names == ["1_Ada Blue.zip", "2_Ben Red.zip"], "the files are called {names:?}");
    for set in &sets {
        hold_no_seed(set, told["key"]["seed"].as_str().context("a seed")?)?;
    }

    let student = stage.page()?;
    student.open_file(&student.home.write(&sets[0].name, &sets[0].bytes)?)?;
    student.turn_to("#readings")?;
    student.reads("#readings", "They were drawn for Ada Blue and for nobody else.")?;
    let given = bundle::read(&sets[0].bytes)?.notebook.state().rows.len();
    ensure!(given > 2, "a data set has {given} rows");
    student.turn_to("#traces")?;
    student.click("Measure again")?;
    student.sees(names::ROWS_USED, &names::rows_used(given, given))?;
    student.turn_to("#report")?;
    student.fill("Discussion", "It agrees.")?;
    student.is_saved()?;
    student
        .click("Download the file, incomplete")
        .or_else(|_| student.click("Download the file to hand in"))?;
    let (_, handed) = student.downloaded()?;
    student.is_silent()?;

    let expected = verdicts(&[bundle::read(&handed)?.notebook], &told)?;
    choose(&page, &[page.home.write("ada.zip", &handed)?])?;
    page.reads("#class-state", "1 file read.")?;
    choose(&page, &[page.home.write(&key_file, &key)?])?;
    let said = |rows: &Vec<Vec<String>>| {
        rows.first().and_then(|row| row.get(KEY)).is_some_and(|cell| expected == [cell.as_str()])
    };
    eventually("the key says what follows from the notebook", || rows(&page), said)?;
    page.click("Clear the table")?;
    page.is_silent()
}

/// A hand-out with photographs has one for each row, on which nothing is marked, and which the student can't exchange. Stopped, the
/// making gives nothing.
///
/// # Errors
/// When it is otherwise.
pub fn a_data_set_of_photographs_is_given(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    let (sets, (_, key)) = made(&page, &Texts::of(stage, "en")?, "sets-forms-photographs", "1")?;
    let told: Value = serde_json::from_slice(&key)?;
    let [set] = sets.as_slice() else { anyhow::bail!("{} files", sets.len()) };
    hold_no_seed(set, told["key"]["seed"].as_str().context("a seed")?)?;
    let mut notebook = bundle::read(&set.bytes)?.notebook;
    let rows = notebook.state().rows.clone();
    let pictures = bundle::unpack(&set.bytes)?.into_vec().into_iter();
    let pictures: Vec<Entry> = pictures.filter(|entry| entry.name.starts_with("pictures/")).collect();
    // ITU-T T.81, B.1.1.3: a JPEG begins with the marker SOI.
    ensure!(pictures.iter().all(|picture| picture.bytes.starts_with(&[0xff, 0xd8])), "not all are JPEGs");
    ensure!(pictures.len() == rows.len(), "{} pictures for {} rows", pictures.len(), rows.len());
    for row in &rows {
        let Some(Evidence::Picture(picture)) = &row.evidence else { anyhow::bail!("no picture: {row:?}") };
        ensure!(picture.a.is_empty() && picture.b.is_empty(), "marks in row {}", row.id);
        let off = Edit::SetEvidence { row: row.id, evidence: None };
        ensure!(notebook.apply(off, "").is_err(), "the picture of row {} can be taken off", row.id);
    }
    let student = stage.page()?;
    student.open_file(&student.home.write(&set.name, &set.bytes)?)?;
    student.turn_to("#pictures")?;
    student.reads("#picture-count", &format!("0 of {}", rows.len()))?;
    student.is_silent()?;

    page.turn_to("#prepare")?;
    page.fill("Names, one on each line, or how many", "40")?;
    page.click("Make the data sets")?;
    page.click("Stop")?;
    page.reads("#sets-state", "Stopped. No data set was made.")?;
    ensure!(!page.has("Download the key")?, "a key of no data sets is there");
    page.is_silent()
}

/// A time base of the plan that can't be read keeps readings from being drawn, which are read at it; traces have none.
///
/// # Errors
/// When it is otherwise.
pub fn traces_need_no_time_base_of_the_plan(stage: &Stage) -> Result<()> {
    let mut bench = demo::typed_readings()?.0;
    let rows = bench.state().rows.clone();
    let named: Vec<_> = rows.iter().filter(|row| !row.text(Cell::Rail).is_empty()).collect();
    for row in [named.first().context("a row")?, named.last().context("a row")?] {
        let position = PlannedPosition {
            id: bench.state().new_number(),
            rail: row.text(Cell::Rail).into(),
            reading: row.text(Cell::Reading).into(),
            time_base: "fast".into(),
            repeats: String::new(),
        };
        bench.apply(Edit::SetPosition(position), "")?;
    }
    let page = stage.page()?;
    page.open_file(&page.home.write("bench.json", write(&bench).as_bytes())?)?;
    page.reads(names::MESSAGE, "is open")?;
    page.click("Hand out to a class")?;
    page.click("Apply the usual choices")?;
    page.turn_to("#prepare")?;
    page.fill("Names, one on each line, or how many", "1")?;
    page.click("Make the data sets")?;
    page.reads("#sets-state", "A planned position can’t be read.")?;
    page.click("Recorded traces, to be measured")?;
    page.click("Make the data sets")?;
    page.reads("#sets-state", "The data set was made.")?;
    page.click("Download the data sets (zip)")?;
    let sets = bundle::unpack(&page.downloaded()?.1)?.into_vec();
    let set = sets.first().context("a data set")?;
    let notebook = bundle::read(&set.bytes)?.notebook;
    let (plan, rows) = (&notebook.state().plan, &notebook.state().rows);
    ensure!(plan.iter().all(|position| position.time_base.is_empty()), "the plan is {plan:?}");
    ensure!(plan.len() == 2 && rows.len() == 2, "{} rows at {} positions", rows.len(), plan.len());
    page.is_silent()
}

/// The photo of the set-up is in each hand-out; where its file is not kept in this browser, that is said, and no hand-out names it.
///
/// # Errors
/// When it is otherwise.
pub fn data_sets_hold_the_photo_of_the_set_up(stage: &Stage) -> Result<()> {
    const PHOTO: &[u8] = b"a photo of a bench";
    let sha256 = bundle::sha256_hex(PHOTO);
    let place = format!("pictures/{sha256}.jpg");
    let photo = StoredFile { sha256, name: "bench.jpg".into(), bytes: u32::try_from(PHOTO.len())? };
    let mut bench = demo::typed_readings()?.0;
    bench.apply(Edit::SetPhoto(Some(photo.clone())), "")?;
    let text = write(&bench).into_bytes();
    let entries = [
        Entry { name: "notebook.json".into(), bytes: text.clone() },
        Entry { name: place.clone(), bytes: PHOTO.to_vec() },
    ];
    for (file, bytes, holds) in [("bench.json", text, false), ("bench.zip", bundle::pack(&entries)?, true)] {
        let page = stage.page()?;
        page.open_file(&page.home.write(file, &bytes)?)?;
        page.reads(names::MESSAGE, "is open")?;
        let (sets, _) = made(&page, &Texts::of(stage, "en")?, "sets-forms-typed", "Ada Blue\nBen Red")?;
        let is_told =
            page.text("#sets-state")?.contains("The photo of the set-up is not kept in this browser");
        ensure!(is_told != holds, "{file}: the missing photo is told: {is_told}");
        let ending = if holds { "zip" } else { "json" };
        let called: Vec<&str> = sets.iter().map(|set| set.name.as_str()).collect();
        ensure!(called == [format!("1_Ada Blue.{ending}"), format!("2_Ben Red.{ending}")], "{called:?}");
        for set in &sets {
            if holds {
                let found = bundle::read(&set.bytes)?;
                ensure!(found.notebook.state().photo.as_ref() == Some(&photo), "{} names no photo", set.name);
                let is_there = found.kept.iter().any(|kept| kept.name == place && kept.bytes == PHOTO);
                ensure!(is_there, "{} holds no photo", set.name);
            } else {
                let notebook = read(std::str::from_utf8(&set.bytes)?)?;
                ensure!(notebook.state().photo.is_none(), "{} names a photo that nobody has", set.name);
            }
        }
        page.is_silent()?;
    }
    Ok(())
}

/// The name and the bytes of a key's file.
pub(crate) type KeyFile = (String, Vec<u8>);

/// Has data sets of a form, by the identifier of its text, made for some names on a page in the language of the texts; gives them,
/// and the file of their key.
///
/// # Errors
/// When the page does not make them.
pub(crate) fn made(page: &Page, texts: &Texts, form: &str, names: &str) -> Result<(Vec<Entry>, KeyFile)> {
    for id in ["handout-title", "handout-usual"] {
        page.click(texts.says(id)?)?;
    }
    page.turn_to("#prepare")?;
    page.click(texts.says(form)?)?;
    page.fill(texts.says("sets-names")?, names)?;
    page.click(texts.says("sets-make")?)?;
    page.click(texts.says("sets-take")?)?;
    let sets = bundle::unpack(&page.downloaded()?.1)?.into_vec();
    page.click(texts.says("sets-take-key")?)?;
    let (file, key) = page.downloaded_as("json")?;
    let key_file = file.file_name().and_then(|name| name.to_str()).context("a name")?;
    Ok((sets, (key_file.to_owned(), key)))
}

/// Nothing of the seed stands in a bundle's files.
fn hold_no_seed(set: &Entry, seed: &str) -> Result<()> {
    ensure!(seed.len() == 64, "the seed is {seed}");
    let parts: Vec<&[u8]> = seed.as_bytes().windows(8).collect();
    for entry in bundle::unpack(&set.bytes)?.into_vec() {
        let holds = entry.bytes.windows(8).any(|bytes| parts.contains(&bytes));
        ensure!(!holds, "{} of {} holds a part of the seed", entry.name, set.name);
    }
    Ok(())
}
