//! Two partners' notebooks of one hand-out, merged: what one changed is taken, what both changed is chosen, and undo, a
//! reload and the history know of it.

use std::fs;

use anyhow::{Context, Result, ensure};
use fantoccini::key::Key;
use serde_json::json;
use slope_of_light::bundle::{self, Entry};
use slope_of_light::notebook::{
    BenchField, Cell, Edit, Evidence, Notebook, Picture, RailField, StoredFile, write,
};
use slope_of_light::simulated::random;

use crate::access::{load_checker, unbroken};
use crate::class::{choose, row_of, rows};
use crate::hands::drop_files;
use crate::languages::{Tables, speak};
use crate::looks::fits;
use crate::names;
use crate::page::{Page, eventually};
use crate::stage::Stage;

const AT: &str = "2031-05-06T10:00:00Z";
const PRESS: &str = "document.querySelector(arguments[0]).click()";
const PRESS_TWICE: &str =
    "const button = document.querySelector(arguments[0]); button.click(); button.click()";
/// What says why a file was not merged.
const REFUSED: &str = "#merge-refused";
/// Bytes that pass for a photo; none is looked at here.
const PHOTO: &[u8] = b"a photo of a screen";

/// Partners who both wrote a method and an edge of the first row, each otherwise; the other one added a row with a photo and
/// stated the temperature.
struct Partners {
    ours: Notebook,
    theirs: Notebook,
    /// The SHA-256 of the photo.
    photo: String,
    /// How many rows were handed out.
    rows: usize,
}

impl Partners {
    fn new() -> Result<Self> {
        let handed_out = random::bench(3).run(3)?.0.hand_out("a salt")?;
        let row = handed_out.state().rows.first().context("a row")?.id;
        let with = |edits: Vec<Edit>| {
            let mut notebook = handed_out.clone();
            edits.into_iter().try_for_each(|edit| notebook.apply(edit, AT))?;
            anyhow::Ok(notebook)
        };
        let set = |field, text: &str| Edit::SetBench { field, text: text.into() };
        let edge = |text: &str| Edit::SetCell { row, cell: Cell::EdgeA, text: text.into() };
        let photo = bundle::sha256_hex(PHOTO);
        let file = StoredFile {
            sha256: photo.clone(),
            name: "scope_3.jpg".into(),
            bytes: u32::try_from(PHOTO.len())?,
        };
        let new = handed_out.state().new_number();
        let picture = Picture { file, width: 8, height: 8, grid: 0, a: vec![], b: vec![], heights: None };
        let cells = [(Cell::Remark, "by Ben".to_owned())].into_iter().collect();
        Ok(Self {
            ours: with(vec![
                set(BenchField::Method, "Mine."),
                edge("1.11"),
                Edit::AddRow {
                    row: new,
                    after: None,
                    cells: [(Cell::Remark, "by Ada".to_owned())].into_iter().collect(),
                },
            ])?,
            theirs: with(vec![
                set(BenchField::People, "Ben <b>Red</b>"),
                set(BenchField::Method, "Theirs."),
                edge("2.22"),
                Edit::AddRow { row: new, after: None, cells },
                Edit::SetEvidence { row: new, evidence: Some(Evidence::Picture(picture)) },
                set(BenchField::Temperature, "19.5"),
            ])?,
            photo,
            rows: handed_out.state().rows.len(),
        })
    }

    /// The partner's bundle, with the photo.
    fn bundle(&self) -> Result<Vec<u8>> {
        let notebook = Entry { name: "notebook.json".into(), bytes: write(&self.theirs).into_bytes() };
        let photo = Entry { name: format!("pictures/{}.jpg", self.photo), bytes: PHOTO.to_vec() };
        Ok(bundle::pack(&[notebook, photo])?)
    }

    /// A page with our notebook open, and the partner's looked at.
    fn look<'s>(&self, stage: &'s Stage) -> Result<Page<'s>> {
        let page = stage.page()?;
        page.open_file(&page.home.write("ours.json", write(&self.ours).as_bytes())?)?;
        page.reads(names::MESSAGE, "is open")?;
        page.is_saved()?;
        merge(&page, "ben.zip", &self.bundle()?)?;
        page.is_asked()?;
        Ok(page)
    }
}

/// Chooses a file to be merged.
fn merge(page: &Page, name: &str, bytes: &[u8]) -> Result<()> {
    page.turn_to("#report")?;
    let file = page.home.write(name, bytes)?;
    let input = || page.browser.element("return document.querySelector('#merge-file')", vec![]);
    let input = eventually("there is a place for the file", input, Option::is_some)?;
    page.browser.choose_file(&input.context("no input for the file")?, &file)
}

/// The open notebook, as its bundle holds it.
fn kept(page: &Page) -> Result<bundle::ReadBack> {
    page.turn_to("#report")?;
    page.click("Download bundle (.zip)")?;
    let (file, bytes) = page.downloaded()?;
    fs::remove_file(file)?;
    Ok(bundle::read(&bytes)?)
}

fn press(page: &Page, selector: &str) -> Result<()> {
    page.browser.run(PRESS, vec![json!(selector)])?;
    Ok(())
}

/// What is shown changes nothing until it is confirmed, which needs a choice for each clash; then both partners' rows stand
/// there, with the photo, under the seal. One undo takes all of it back; a reload keeps it; the history names the partner's
/// notebook; and once merged nothing is new in it.
///
/// # Errors
/// When it is otherwise.
pub fn partners_merge_their_notebooks(stage: &Stage) -> Result<()> {
    let partners = Partners::new()?;
    let page = partners.look(stage)?;
    press(&page, "dialog.merge summary")?;
    for told in
        ["Ben <b>Red</b>", "one new row", "Difference 1 of 3", "Mine.", "Theirs.", "1.11", "2.22", "by Ben"]
    {
        page.reads("dialog.merge", told)?;
    }
    page.reads("dialog.merge", &format!("row {}", partners.rows + 2))?;
    page.click("Cancel")?;
    ensure!(
        kept(&page)?.notebook_text == write(&partners.ours),
        "a merge that was cancelled changed something"
    );
    merge(&page, "ben.zip", &partners.bundle()?)?;
    page.is_asked()?;
    press(&page, "#merge-0-ours")?;
    press(&page, "#merge-1-theirs")?;
    press(&page, "#merge-confirm")?;
    page.reads("dialog.merge [role=status]", "One difference is left without a choice.")?;
    press(&page, "#merge-2-both")?;
    // Pressed twice it is merged once, and nothing else is said of it.
    page.browser.run(PRESS_TWICE, vec![json!("#merge-confirm")])?;
    page.reads(names::MESSAGE, "was merged")?;

    merged(&page, &partners)?;
    press(&page, "#told-action")?;
    eventually("undone", || page.value("Method"), |text| text == "Mine.")?;
    ensure!(kept(&page)?.notebook.state() == partners.ours.state(), "undo left something");
    page.press_with_control('y')?;
    eventually("done again", || page.value("Method"), |text| text == "Theirs.")?;
    page.is_saved()?;
    page.reload()?;
    merged(&page, &partners)?;

    page.turn_to("#readings")?;
    page.click("History")?;
    let entries = partners.theirs.log().len();
    page.reads("dialog.history tbody", &format!("Ben <b>Red</b> · history of {entries} entries, digest "))?;
    page.click("Close")?;
    merge(&page, "ben.zip", &partners.bundle()?)?;
    page.reads(REFUSED, "Everything in it is in this notebook already")?;
    page.is_silent()
}

/// Both partners' work stands in the notebook.
fn merged(page: &Page, partners: &Partners) -> Result<()> {
    let kept = kept(page)?;
    let state = kept.notebook.state();
    ensure!(state.text(BenchField::Method) == "Theirs." && state.text(BenchField::Temperature) == "19.5");
    let rows: Vec<[&str; 2]> =
        state.rows.iter().map(|row| [row.text(Cell::EdgeA), row.text(Cell::Remark)]).collect();
    let new = rows.get(partners.rows..).context("no new rows")?;
    ensure!(rows[0][0] == "1.11", "the rows are {rows:?}");
    ensure!(matches!(new, [[_, "by Ada"], [_, "by Ben"], ["2.22", _]]), "the rows are {rows:?}");
    ensure!(state.seal.as_ref().is_some_and(|seal| !seal.opened), "the seal is open");
    let photo = format!("pictures/{}.jpg", partners.photo);
    ensure!(
        kept.kept.iter().any(|file| file.name == photo && file.bytes == PHOTO),
        "the photo did not come along"
    );
    Ok(())
}

/// A notebook of something else, one in which a teacher's entry was changed, one of a later version, and a file that is
/// none are refused, each with its reason, and nothing is changed.
///
/// # Errors
/// When one is taken.
pub fn what_is_no_partners_is_refused(stage: &Stage) -> Result<()> {
    let partners = Partners::new()?;
    let page = partners.look(stage)?;
    page.click("Cancel")?;
    let text = write(&partners.theirs);
    let mut log = partners.theirs.log().to_vec();
    log.get_mut(1).context("a teacher's entry")?.at = "2030-05-06T10:00:00Z".into();
    let changed = write(&Notebook::from_log(log).map_err(|(_, why)| why)?);
    let other = write(&random::bench(4).run(3)?.0);
    let claimed = text.replace("\n]}\n", ",\n{\"edit\":\"hand_out\"}\n]}\n");
    for (name, text, why) in [
        ("other.json", other, "histories begin differently"),
        ("changed.json", changed, "the digests do not agree"),
        ("later.json", text.replace("\"format\":2", "\"format\":3"), "later version"),
        ("claimed.json", claimed, "belongs to the hand-out itself"),
        ("cut.json", text[..text.len() / 2].to_owned(), "not a whole notebook file"),
    ] {
        merge(&page, name, text.as_bytes())?;
        let told = page.reads(REFUSED, why)?;
        ensure!(told.contains("was not merged, and nothing was changed"), "it says {told}");
    }
    ensure!(!page.text(names::MESSAGE)?.contains("not merged"), "it is told by what goes away");
    ensure!(page.count("dialog.merge[open]")? == 0, "what is refused is shown");
    ensure!(kept(&page)?.notebook_text == write(&partners.ours), "something was changed");
    page.is_silent()
}

/// A notebook that is dropped where one is merged is merged, and not opened; of several none is. Why one was refused stays
/// there until the next try.
///
/// # Errors
/// When it is opened, or the reason is gone.
pub fn a_dropped_notebook_is_merged(stage: &Stage) -> Result<()> {
    let partners = Partners::new()?;
    let page = partners.look(stage)?;
    page.click("Cancel")?;
    let theirs = write(&partners.theirs);
    let drop = |names: &[&str]| {
        let files: Vec<_> = names.iter().map(|&name| (name.to_owned(), theirs.clone())).collect();
        drop_files(&page, "#merge-place", &files)
    };
    drop(&["ben.json", "again.json"])?;
    page.reads(REFUSED, "one notebook at a time")?;
    page.turn_to("#readings")?;
    page.turn_to("#report")?;
    page.reads(REFUSED, "one notebook at a time")?;
    ensure!(page.count("dialog[open]")? == 0, "of several one is looked at");
    drop(&["ben.json"])?;
    page.reads("dialog.merge[open]", "ben.json")?;
    ensure!(page.count("#merge-refused:not([hidden])")? == 0, "a reason is left of the try before");
    page.click("Cancel")?;
    ensure!(kept(&page)?.notebook_text == write(&partners.ours), "the partner's notebook was opened");
    page.is_silent()
}

/// Where partners differ in very much, some of it is put on the page at once, and all that is left is chosen by one press.
/// Rails have their names there.
///
/// # Errors
/// When all is put on the page, or something is chosen otherwise.
pub fn many_differences_are_chosen_together(stage: &Stage) -> Result<()> {
    let mut begun = random::bench(3).run(3)?.0;
    let rail = begun.state().rails.first().context("a rail")?.id;
    let name = Edit::SetRail { rail, field: RailField::Name, text: "window side".into() };
    begun.apply(name, AT)?;
    for _ in 0..40 {
        let row = begun.state().new_number();
        let cells = [(Cell::Remark, "10".to_owned())].into_iter().collect();
        begun.apply(Edit::AddRow { row, after: None, cells }, AT)?;
    }
    let handed_out = begun.hand_out("")?;
    let rows: Vec<u32> = handed_out.state().rows.iter().map(|row| row.id).collect();
    let with = |text: &str| {
        let mut notebook = handed_out.clone();
        let from = Edit::SetRail { rail, field: RailField::From, text: text.into() };
        notebook.apply(from, AT)?;
        for row in &rows {
            notebook.apply(Edit::SetCell { row: *row, cell: Cell::Remark, text: text.into() }, AT)?;
        }
        anyhow::Ok(notebook)
    };
    let (ours, theirs) = (with("11")?, with("12")?);
    let page = stage.page()?;
    page.open_file(&page.home.write("ours.json", write(&ours).as_bytes())?)?;
    page.reads(names::MESSAGE, "is open")?;
    page.is_saved()?;
    merge(&page, "ben.json", write(&theirs).as_bytes())?;
    page.is_asked()?;
    ensure!(page.count("dialog.merge .radios")? == 30, "not some of the differences are there");
    let drawn = || page.count("dialog.merge .radios");
    press(&page, "#merge-more")?;
    eventually("some more are there", drawn, |drawn| *drawn == 60)?;
    press(&page, "#merge-more")?;
    eventually("the others are there", drawn, |drawn| *drawn == rows.len() + 1)?;
    page.reads(&format!("#merge-{}", rows.len()), "window side · ")?;
    press(&page, "#merge-0-ours")?;
    press(&page, "#merge-all-theirs")?;
    press(&page, "#merge-confirm")?;
    page.reads(names::MESSAGE, "was merged")?;
    let kept = kept(&page)?;
    let state = kept.notebook.state();
    let remarks: Vec<&str> = state.rows.iter().map(|row| row.text(Cell::Remark)).collect();
    let others = remarks.get(1..).context("rows")?;
    ensure!(remarks.first() == Some(&"11") && others.iter().all(|remark| *remark == "12"), "{remarks:?}");
    page.is_silent()
}

/// What is merged can be looked at by everyone: on a laptop and on a phone, light and dark, in French too.
///
/// # Errors
/// When something is too wide, breaks a rule of accessibility, or is English.
pub fn merging_is_for_everyone(stage: &Stage) -> Result<()> {
    let partners = Partners::new()?;
    let page = partners.look(stage)?;
    press(&page, "dialog.merge summary")?;
    load_checker(&page)?;
    for (width, height) in [(1366, 768), (360, 740)] {
        let size = json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": false });
        page.browser.debug("Emulation.setDeviceMetricsOverride", &size)?;
        for scheme in ["light", "dark"] {
            page.wear(scheme)?;
            let place = || format!("{width} px wide and {scheme}");
            fits(&page, width).with_context(place)?;
            unbroken(&page).with_context(place)?;
        }
    }
    page.click("Cancel")?;
    let tables = Tables::of(stage)?;
    speak(&page, "fr")?;
    merge(&page, "ben.zip", &partners.bundle()?)?;
    page.is_asked()?;
    press(&page, "dialog.merge summary")?;
    press(&page, "#merge-confirm")?;
    tables.are_french(&page, "merging")?;
    page.press(Key::Escape)?;
    merge(&page, "autre.json", write(&random::bench(4).run(3)?.0).as_bytes())?;
    page.reads(REFUSED, tables.french.says("merge-refused-other")?)?;
    tables.are_french_at(&page, "a merge that is refused", REFUSED)
}

/// Of readings that are the same the table says so where the history of one notebook holds a merge with the other, and else asks.
///
/// # Errors
/// When it is otherwise.
pub fn a_merge_explains_the_same_readings(stage: &Stage) -> Result<()> {
    let of = |people: &str| -> Result<Notebook> {
        let (mut notebook, _) = random::bench(21).run(21)?;
        notebook.apply(Edit::SetBench { field: BenchField::People, text: people.into() }, AT)?;
        Ok(notebook)
    };
    let (mut ours, mut partner, other) = (of("Ada Blue")?, of("Ben Red")?, of("Carl Grey")?);
    partner.apply(Edit::SetBench { field: BenchField::Place, text: "Room 4".into() }, AT)?;
    let merge = ours.merge(&partner)?;
    ours.apply(Edit::Together([merge.taken, vec![Edit::Merged(merge.log)]].concat()), AT)?;
    let page = stage.page()?;
    let mut files = Vec::new();
    for (name, notebook) in [("ours", &ours), ("partner", &partner), ("other", &other)] {
        files.push(page.home.write(&format!("{name}.json"), write(notebook).as_bytes())?);
    }
    choose(&page, &files)?;
    page.reads("#class-state", "3 files read.")?;
    page.sees("#class-shown", "3 of 3 in the table")?;
    let rows = rows(&page)?;
    for (who, told) in [
        ("Ada Blue", "as Ben Red: their notebooks were merged, as the history says."),
        ("Ada Blue", "as Carl Grey: worked together?"),
        ("Ben Red", "as Ada Blue: their notebooks were merged, as the history says."),
        ("Carl Grey", "as Ada Blue and Ben Red: worked together?"),
    ] {
        let row = row_of(&rows, who)?.join(" ");
        ensure!(row.contains(told), "of {who} it does not say “{told}”: {row}");
    }
    choose(&page, files.get(..1).context("a file")?)?;
    page.reads("#class-table", "The same notebook as ours.json, which counts once.")?;
    page.reads("#class-summary", "3 results")?;
    page.is_silent()
}
