//! What is told in passing, and states that go by, in French: the list of notebooks while one is renamed and removed, what is copied
//! and printed, windows that the browser does not open, blocks that are pasted, trials that are stopped, out of date or can't be
//! made, photos and traces that are asked about or not kept here, every kind of splice and of component, ways to hand out, and the
//! one file. None has an English word, is too wide for a phone, or breaks a rule of accessibility.

use std::fs;

use anyhow::Result;
use serde_json::{Value, json};
use slope_of_light::bundle;
use slope_of_light::notebook::{Edit, read, write};

use crate::files::one_file;
use crate::french::PRESS;
use crate::languages::{CHOOSE, OPEN_ALL, Tables, press, speak};
use crate::page::{Page, eventually};
use crate::picture_doubts::DROP;
use crate::stage::Stage;
use crate::{names, pictures, posted, uncertainty};

/// A blank notebook, on a page in French.
fn begin_blank(page: &Page, tables: &Tables) -> Result<()> {
    press(page, "open-notebooks")?;
    page.is_asked()?;
    press(page, "new-blank")?;
    page.sees(names::RESULT, tables.french.says("strip-no-c")?)
}

/// The list of notebooks while one is renamed, and once it was deleted and is to be removed for good.
///
/// # Errors
/// When something is English, too wide or against a rule.
pub fn the_list_of_notebooks_is_french(stage: &Stage) -> Result<()> {
    let tables = Tables::of(stage)?;
    let page = stage.page()?;
    speak(&page, "fr")?;
    begin_blank(&page, &tables)?;
    page.fill(tables.french.says("strip-title")?, "Mardi")?;
    page.sees(names::SAVED, tables.french.says("saving-saved")?)?;
    press(&page, "open-notebooks")?;
    page.is_asked()?;
    let press_of = |id: &str| page.click(&format!("{}\u{a0}: Mardi", tables.french.says(id)?));
    press_of("notebooks-rename")?;
    tables.are_french(&page, "a notebook that is renamed")?;
    press_of("notebooks-delete")?;
    page.reads(names::MESSAGE, "a été supprimé")?;
    page.browser.run(OPEN_ALL, vec![])?;
    press_of("notebooks-forget")?;
    page.reads("#notebooks-dialog", tables.french.says("notebooks-forget-sure")?)?;
    tables.are_french(&page, "a notebook that is deleted")
}

/// What is copied and printed, windows that the browser does not open, plots of nothing, and a block whose headings are left out
/// and whose decimal marks are turned.
///
/// # Errors
/// When something is English, too wide or against a rule.
pub fn what_is_told_in_passing_is_french(stage: &Stage) -> Result<()> {
    /// Pastes a block with headings and decimal points.
    const PASTE: &str = r"
        const clipboardData = new DataTransfer();
        clipboardData.setData('text/plain', 'x / mm\tbase\n4000.5\t2.0\n5000.5\t2.0');
        document.querySelector('tbody[data-row=new] [data-cell=reading]')
            .dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }));";
    let tables = Tables::of(stage)?;
    let page = stage.page()?;
    speak(&page, "fr")?;
    let tells = |pressed: &str, told: &str| {
        page.click(tables.french.says(pressed)?)?;
        page.reads(names::MESSAGE, tables.french.says(told)?)?;
        tables.has_no_english(&page, told)
    };
    let rights = json!({ "permissions": ["clipboardReadWrite", "clipboardSanitizedWrite"] });
    page.browser.debug("Browser.grantPermissions", &rights)?;
    tells("result-copy", "result-copied")?;
    page.browser.run("dispatchEvent(new Event('beforeprint'))", vec![])?;
    tables.has_no_english(&page, "what is printed")?;
    page.browser.run("dispatchEvent(new Event('afterprint'))", vec![])?;
    page.browser.run("window.open = () => null", vec![])?;
    tells("wall", "wall-blocked")?;
    tells("report-open", "report-blocked")?;
    page.browser.run(CHOOSE, vec![json!("plot-name"), json!("trials")])?;
    tells("report-take-plot", "report-no-trials")?;
    tables.are_french_at(&page, "what goes by itself", "#report")?;
    begin_blank(&page, &tables)?;
    page.browser.run(CHOOSE, vec![json!("plot-name"), json!("line")])?;
    tells("report-take-plot", "report-no-plot")?;
    page.turn_to("#readings")?;
    page.browser.run(PASTE, vec![])?;
    page.reads(names::MESSAGE, tables.french.says("pasted-turned")?)?;
    page.reads(names::MESSAGE, "ont été laissés de côté")?;
    tables.are_french_at(&page, "a block that was pasted", "#readings")
}

/// Trials that run, that are stopped, that are of an earlier version, and for which there is no worker.
///
/// # Errors
/// When something is English, too wide or against a rule.
pub fn trials_are_french(stage: &Stage) -> Result<()> {
    let tables = Tables::of(stage)?;
    let page = stage.page()?;
    speak(&page, "fr")?;
    page.browser.finds_one_core()?;
    page.fill(tables.french.says("trials-wanted")?, uncertainty::MANY)?;
    press(&page, "trials-start")?;
    page.sees(uncertainty::STATE, tables.french.says("trials-running")?)?;
    let progress = || page.text("#trials-progress-text");
    eventually("the progress is told", progress, |text| !text.is_empty())?;
    tables.are_french_at(&page, "trials that run", uncertainty::STATE)?;
    page.click(tables.french.says("stop")?)?;
    page.reads(uncertainty::STATE, "jusqu’ici")?;
    page.fill(&format!("{}, ligne 1", tables.french.says("readings-columns-edge_b")?), "9.9")?;
    page.sees("#trials-stale", tables.french.says("trials-stale")?)?;
    page.browser.run(OPEN_ALL, vec![])?;
    tables.are_french_at(&page, "trials of an earlier version", "#trials-stale")?;
    page.browser.run(uncertainty::ASTRAY, vec![])?;
    press(&page, "trials-start")?;
    page.reads(uncertainty::STATE, "n’a pas pu être fait")?;
    tables.are_french_at(&page, "trials without a worker", uncertainty::STATE)
}

/// Photos that are dropped where another one is or belongs, and photos and traces that are not kept in this browser, as they are
/// removed too.
///
/// # Errors
/// When something is English, too wide or against a rule.
pub fn photos_and_traces_are_asked_about_in_french(stage: &Stage) -> Result<()> {
    let tables = Tables::of(stage)?;
    let page = pictures::first_is_marked(stage, 2)?;
    page.is_saved()?;
    speak(&page, "fr")?;
    page.browser.run(DROP, vec![json!(0), json!("500 mm.jpg")])?;
    page.reads(names::MESSAGE, "La ligne 1 a déjà un retard tiré d’un fichier")?;
    tables.has_no_english(&page, "a photo in place of another one")?;
    page.browser.run(DROP, vec![json!(1), json!("3000 mm.jpg")])?;
    page.reads(names::MESSAGE, "Le nom 3000 mm.jpg donne une autre lecture")?;
    tables.are_french_at(&page, "a photo of another reading", "#readings")?;
    page.click(tables.french.says("pictures-use-it")?)?;
    page.reads(pictures::REFUSED, "3000 mm.jpg")?;
    tables.has_no_english(&page, "a photo that is none")?;

    for (demo, place, told, remove, removed) in [
        (
            "photographs.fr.zip",
            pictures::SAID,
            "n’est pas conservée dans ce navigateur",
            "pictures-take-off",
            "La photo a été retirée",
        ),
        (
            "traces.fr.zip",
            "#traces",
            "les traces ne peuvent pas être montrées",
            "traces-take-off",
            "Les traces ont été retirées",
        ),
    ] {
        let page = stage.page()?;
        speak(&page, "fr")?;
        let alone = bundle::read(&fs::read(stage.dist.join("demo").join(demo))?)?.notebook_text;
        page.open_file(&page.home.write("seul.json", alone.as_bytes())?)?;
        let shown = || page.count("#readings-table button.jump:not([hidden])");
        eventually("the rows say where their delays come from", shown, |count| *count > 0)?;
        page.browser.run(PRESS, vec![json!("#readings-table button.jump:not([hidden])")])?;
        page.reads(place, told)?;
        page.browser.run(OPEN_ALL, vec![])?;
        tables.are_french_at(&page, &format!("{demo} without its files"), place)?;
        page.click(tables.french.says(remove)?)?;
        page.reads(names::MESSAGE, removed)?;
        tables.has_no_english(&page, removed)?;
    }
    Ok(())
}

/// Splices and components of every kind, complete or not, and the problems of those that are not.
///
/// # Errors
/// When something is English, too wide or against a rule.
pub fn every_kind_of_component_is_french(stage: &Stage) -> Result<()> {
    let tables = Tables::of(stage)?;
    let page = stage.page()?;
    speak(&page, "fr")?;
    let mut notebook = read(&fs::read_to_string(stage.dist.join("demo/typed-readings.fr.json"))?)?;
    let rails: Vec<u32> = notebook.state().rails.iter().map(|rail| rail.id).collect();
    for edit in components(&rails) {
        notebook.apply(serde_json::from_value::<Edit>(edit)?, "")?;
    }
    page.open_file(&page.home.write("tout.json", write(&notebook).as_bytes())?)?;
    let problems = || page.count(".problem:not([hidden])");
    eventually("what is not complete is told", problems, |count| *count > 1)?;
    page.browser.run(OPEN_ALL, vec![])?;
    tables.are_french(&page, "splices and components of every kind")
}

/// Edits of the demo of three rails.
fn components(rails: &[u32]) -> Vec<Value> {
    let pairs = json!([{ "here": "1950", "before": "195" }, { "here": "1940", "before": "" }]);
    let mut edits = vec![
        json!({ "set_splice": { "rail": rails.get(1), "splice": { "overlap": { "pairs": pairs } } } }),
        json!({ "set_splice": { "rail": rails.get(2), "splice": { "free": { "mark": "1" } } } }),
        json!({ "set_setting": { "id": 900, "time_per_division": "2.5", "uncertainty": "1e-4" } }),
        json!({ "set_beam": "followed" }),
        json!({ "add_rail": 901 }),
    ];
    let shared = [
        ("distances", "offset", json!({ "rail": rails.first() }), "rectangular", ""),
        ("delays", "scale", json!({ "time_base": "2,5" }), "student", "3"),
        ("delays", "noise", json!({ "rows": [1, 2] }), "normal", ""),
        ("distances", "scale", json!("all"), "arcsine", ""),
        ("delays", "offset", json!("all"), "triangular", ""),
    ];
    edits.extend((902..).zip(shared).map(|(id, (acts_on, effect, rows, shape, freedom))| {
        json!({ "set_shared": { "id": id, "name": "", "acts_on": acts_on, "effect": effect, "rows": rows, "uncertainty": "0,01",
            "shape": shape, "degrees_of_freedom": freedom } })
    }));
    edits
}

/// A hand-out that is too long for a link, or holds photos; and the one file, whose links lead nowhere.
///
/// # Errors
/// When something is English, too wide or against a rule.
pub fn ways_to_hand_out_are_french(stage: &Stage) -> Result<()> {
    /// What is said of the link.
    const LINK: &str = "#post-link-size";
    let tables = Tables::of(stage)?;
    let page = stage.page()?;
    speak(&page, "fr")?;
    begin_blank(&page, &tables)?;
    for id in ["handout-title", "handout-add"] {
        page.click(tables.french.says(id)?)?;
    }
    page.paste(tables.french.says("handout-text")?, &posted::too_long())?;
    page.reads(LINK, "Le lien aurait")?;
    tables.are_french_at(&page, "a link that is too long", LINK)?;
    page.open_file(&stage.dist.join("demo/photographs.fr.zip"))?;
    page.sees(LINK, tables.french.says("handout-link-files")?)?;
    tables.are_french_at(&page, "a hand-out with photos", LINK)?;

    let page = one_file(stage)?;
    speak(&page, "fr")?;
    page.click(tables.french.says("handout-title")?)?;
    page.sees(LINK, tables.french.says("handout-link-no_site")?)?;
    tables.are_french(&page, "the one file")
}
