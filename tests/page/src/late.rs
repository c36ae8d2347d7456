//! Sections whose scripts come once the page is open: what is asked of them before, and what happens when they don't come.

use std::fs;

use anyhow::{Context, Result, ensure};
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use serde_json::json;

use slope_bench::record::{Style, both_as_text};

use crate::bench::{describe_rail, fill};
use crate::home::Home;
use crate::host::Host;
use crate::names;
use crate::page::{Page, eventually};
use crate::pictures::{choose, is_proposed, series};
use crate::stage::Stage;
use crate::traces::{recorded, weakening};

/// Runs before the page's own scripts: `ready(work)` does its work at the very moment at which a notebook is open, and
/// `drop(files)` drops files on the page. Both note in `early` that no section had come yet.
const BEFORE: &str = "
    const early = (window.early = []);
    const note = () => early.push(document.body.dataset.complete === undefined && !document.querySelector('#picture-files'));
    const ready = (work) => new MutationObserver((_, observer) => {
      if (document.body?.dataset.ready !== 'true') return;
      observer.disconnect();
      note();
      work();
    }).observe(document, { subtree: true, childList: true, attributes: true, attributeFilter: ['data-ready'] });
    const drop = (...files) => {
      note();
      const dataTransfer = new DataTransfer();
      for (const file of files) dataTransfer.items.add(file);
      document.body.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
    };
    const bytes = (text) => Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));";

/// Has a script run in every document that is opened from now on, before those of the page.
fn before(page: &Page, script: &str) -> Result<()> {
    let source = json!({ "source": format!("(() => {{{BEFORE}\n{script}}})();") });
    page.browser.debug("Page.addScriptToEvaluateOnNewDocument", &source)?;
    Ok(())
}

/// That something was done, so many times, and before any section had come.
fn was_early(page: &Page, times: usize) -> Result<()> {
    let early = page.browser.run("return window.early", vec![])?;
    ensure!(early == json!(vec![true; times]), "it was not early: {early}");
    Ok(())
}

/// A paste whose decimal marks are turned is told, also when it comes before the later sections.
///
/// # Errors
/// When it is not.
pub fn early_paste_is_told(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    page.click("Settings")?;
    page.click("comma: 1,5")?;
    page.click("Close")?;
    describe_rail(&page)?;
    page.is_saved()?;
    // A notebook without rows opens on its bench, and that with all that comes later.
    page.turn_to("#readings")?;
    before(
        &page,
        "ready(() => {
          const clipboardData = new DataTransfer();
          clipboardData.setData('text/plain', 'x / mm\\tbase\\n4000.5\\t2.0\\n5000.5\\t2.0');
          document.querySelector('tbody[data-row=new] [data-cell=reading]')
            .dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }));
        });",
    )?;
    page.reload()?;
    was_early(&page, 1)?;
    let told = page.reads("#told", "headings “x / mm base”")?;
    ensure!(told.contains("other decimal mark"), "that the marks were turned is not told: {told:?}");
    ensure!(page.cell("Ruler reading", 2)? == "5000,5", "the marks were not turned");
    page.is_silent()
}

/// Pictures and traces that are dropped while the page still starts wait, and are then taken; none is opened as a
/// notebook.
///
/// # Errors
/// When it is otherwise.
pub fn early_drop_is_taken(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    describe_rail(&page)?;
    page.is_saved()?;
    let picture = series(&page.home, 1)?;
    let picture = STANDARD.encode(fs::read(picture.first().context("a picture")?)?);
    let traces = both_as_text(&recorded(&weakening(), 1500), &Style::default());
    let traces = STANDARD.encode(traces);
    before(
        &page,
        &format!(
            "document.addEventListener('DOMContentLoaded', () => {{
               drop(new File([bytes('{picture}')], '500 mm.jpg', {{ type: 'image/jpeg' }}));
               drop(new File([bytes('{traces}')], 'A 1500mm.csv', {{ type: 'text/csv' }}));
             }});"
        ),
    )?;
    page.reload()?;
    was_early(&page, 2)?;
    page.reads("#picture-status", "1 photo was added")?;
    page.reads("#trace-status", "1 file with the traces of one position")?;
    ensure!(page.cell("Ruler reading", 1)? == "500 mm", "the picture began no row of its own");
    ensure!(!page.text("#told")?.contains("not opened"), "one was opened as a notebook");
    page.is_silent()
}

/// “Show the picture” of a row goes to that picture, also when it is pressed before the section has come.
///
/// # Errors
/// When it does not.
pub fn early_press_shows_the_picture(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    describe_rail(&page)?;
    choose(&page, &series(&page.home, 2)?)?;
    is_proposed(&page, 0)?;
    page.is_saved()?;
    before(&page, "ready(() => document.querySelectorAll('.jump:not([hidden])')[1].click());")?;
    page.reload()?;
    was_early(&page, 1)?;
    is_proposed(&page, 1)?;
    page.is_silent()
}

/// Where the script of the later sections can't be loaded each says so in its place, and all else works; what was asked of
/// one is done once it was tried again with success, and the others come with it.
///
/// # Errors
/// When it is otherwise.
pub fn a_section_that_fails_is_tried_again(stage: &Stage) -> Result<()> {
    let host = host_alone(stage)?;
    let page = stage.blank_page_at(&host.address())?;
    fill(&page)?;
    let result = page.result()?;
    page.is_saved()?;
    let picture = series(&page.home, 1)?;
    let picture = STANDARD.encode(fs::read(picture.first().context("a picture")?)?);
    let name = late_script(stage)?;
    let script = host.take_away(&name)?;
    page.reload()?;
    page.reads("#delays", "section “Delays” could not be loaded")?;
    ensure!(page.text("#told")?.is_empty(), "it also says {:?}", page.text("#told")?);
    page.reads("#plan", "section “Plan” could not be loaded")?;
    page.type_in_cell("Edge B", 1, "2.8")?;
    ensure!(page.result()? != result, "a reading can't be changed");
    let dropping =
        format!("{BEFORE} drop(new File([bytes('{picture}')], '500 mm.jpg', {{ type: 'image/jpeg' }}));");
    page.browser.run(&dropping, vec![])?;
    page.reads("#delays", "section “Delays” could not be loaded")?;
    ensure!(page.count(names::ROWS)? == 5, "the picture went elsewhere");
    host.add(&name, &script)?;
    page.click("Try again")?;
    page.reads("#delays", "1 photo was added")?;
    eventually("the picture has a row", || page.count(names::ROWS), |rows| *rows == 6)?;
    let delays = page.text("#delays")?;
    ensure!(!delays.contains("Try again"), "there is nothing to be tried again");
    eventually("the others have come with it", || page.text("#plan"), |plan| !plan.contains("Try again"))?;
    // What was not there was complained of by the browser, and nothing else was.
    let other: Vec<_> =
        page.browser.log()?.into_iter().filter(|line| !line.contains("late-sections")).collect();
    ensure!(other.is_empty(), "the browser's log says: {}", other.join(" | "));
    Ok(())
}

/// Nothing is made before the look that came apart from the page's own is there: where that can't be loaded the sections say
/// so, and come with it once it was tried again.
///
/// # Errors
/// When it is otherwise.
pub fn a_section_waits_for_its_look(stage: &Stage) -> Result<()> {
    let host = host_alone(stage)?;
    let look = host.take_away("late.css")?;
    let page = stage.page_at(&host.address(), Home::new()?)?;
    page.reads("#delays", "section “Delays” could not be loaded")?;
    ensure!(page.count(".plot-tools")? == 0, "buttons of the plots came without their look");
    host.add("late.css", &look)?;
    page.click("Try again")?;
    eventually("the plots have their buttons", || page.count(".plot-tools"), |tools| *tools == 2)?;
    let place = "return getComputedStyle(document.querySelector('.plot-tools')).position";
    ensure!(page.browser.run(place, vec![])? == json!("relative"), "the buttons stand without their look");
    let other: Vec<_> = page.browser.log()?.into_iter().filter(|line| !line.contains("late.css")).collect();
    ensure!(other.is_empty(), "the browser's log says: {}", other.join(" | "));
    Ok(())
}

/// A host of the page that is asked for every file: its service worker keeps none.
fn host_alone(stage: &Stage) -> Result<Host> {
    let host = Host::of(&stage.dist)?;
    host.change("service-worker.js", |_| String::new())?;
    Ok(host)
}

/// What the script of the later sections is called where it is packed.
fn late_script(stage: &Stage) -> Result<String> {
    let names = fs::read_dir(&stage.dist)?
        .map(|entry| Ok(entry?.file_name().to_string_lossy().into_owned()))
        .collect::<Result<Vec<String>>>()?;
    names.into_iter().find(|name| name.starts_with("late-sections")).context("no script of later sections")
}
