//! Several notebooks: made, renamed, duplicated, deleted and put back; and one notebook in two tabs.

use anyhow::{Context, Result, ensure};
use fantoccini::key::Key;
use serde_json::json;
use slope_of_light::notebook::{Edit, write};
use slope_of_light::simulated::random;

use crate::bench;
use crate::hands::drop_files;
use crate::names;
use crate::page::{Page, eventually};
use crate::stage::Stage;

/// The list does what its buttons say.
///
/// # Errors
/// When it does not.
pub fn list_of_notebooks(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    page.fill("Title of the notebook", "First")?;
    bench::fill(&page)?;
    let result = page.result()?;
    page.list_notebooks()?;
    let demo = other_than(&page, "First")?;
    lists(&page, &[&demo, "First"])?;

    page.click("Rename: First")?;
    page.write_over("New title", "Renamed")?;
    page.press(Key::Enter)?;
    lists(&page, &[&demo, "Renamed"])?;

    page.click("Duplicate: Renamed")?;
    lists(&page, &[&demo, "Renamed", "Renamed (copy)"])?;
    page.click("Open: Renamed (copy)")?;
    page.sees(names::TITLE, "Renamed (copy)")?;
    page.sees(names::ROWS_USED, &names::rows_used(5, 5))?;
    ensure!(page.result()? == result, "the copy has another result");
    page.type_in_cell("Edge B", 3, "7.00")?;
    page.is_saved()?;

    page.list_notebooks()?;
    page.click("Open: Renamed")?;
    page.sees(names::TITLE, "Renamed")?;
    ensure!(page.cell("Edge B", 3)? == "6.00", "an edit of the copy changed the first one");

    page.list_notebooks()?;
    page.click("Delete: Renamed (copy)")?;
    lists(&page, &[&demo, "Renamed"])?;
    page.click("Undo")?;
    lists(&page, &[&demo, "Renamed", "Renamed (copy)"])?;
    page.click("Open: Renamed (copy)")?;
    page.sees(names::TITLE, "Renamed (copy)")?;
    ensure!(page.cell("Edge B", 3)? == "7.00", "the notebook that was put back lost an edit");
    page.is_silent()
}

/// Notebooks that are dropped together are all there, and the last of them is open.
///
/// # Errors
/// When one is not.
pub fn notebooks_dropped_together_are_all_there(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    let mut files = Vec::new();
    for title in ["First", "Second"] {
        let (mut notebook, _) = random::bench(5).run(5)?;
        notebook.apply(Edit::SetTitle(title.into()), "2031-05-06T10:00:00Z")?;
        files.push((format!("{title}.json"), write(&notebook)));
    }
    drop_files(&page, "body", &files)?;
    page.sees(names::TITLE, "Second")?;
    page.list_notebooks()?;
    let all = eventually("they stand beside the demo", || listed(&page), |all| all.len() == 3)?;
    ensure!(["First", "Second"].iter().all(|title| all.iter().any(|one| one == title)), "{all:?}");
    page.is_silent()
}

/// The second tab reads along, until it takes over.
///
/// # Errors
/// When it is otherwise.
pub fn two_tabs(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    bench::fill(&page)?;
    page.is_saved()?;
    let first = page.browser.tab()?;
    let second = page.browser.open_tab()?;
    page.go(&stage.address)?;
    page.sees(names::SAVED, "Read only")?;
    page.sees(names::ROWS_USED, &names::rows_used(5, 5))?;
    let before = page.result()?;
    ensure!(!writes(&page)?, "both tabs write");

    page.browser.switch_to(&first)?;
    ensure!(writes(&page)?, "the first tab lost its right to write");
    page.type_in_cell("Edge B", 5, "9.84")?;
    page.is_saved()?;
    let changed = page.result()?;

    page.browser.switch_to(&second)?;
    eventually("the second tab follows", || page.cell("Edge B", 5), |text| text == "9.84")?;
    let followed = page.result()?;
    ensure!(followed == changed && followed != before, "followed to {followed:?}, not {changed:?}");

    page.click("Write here instead")?;
    page.is_saved()?;
    eventually("the second tab writes", || writes(&page), |writes| *writes)?;
    page.type_in_cell("Edge B", 4, "7.77")?;
    page.is_saved()?;
    page.browser.switch_to(&first)?;
    page.sees(names::SAVED, "Read only")?;
    ensure!(!writes(&page)?, "both tabs write after one took over");
    eventually("the first tab follows", || page.cell("Edge B", 4), |text| text == "7.77")?;
    ensure!(page.cell("Edge B", 5)? == "9.84", "what the first tab wrote is gone");
    page.is_silent()
}

/// Whether the readings can be written in.
fn writes(page: &Page) -> Result<bool> {
    let box_of = page.named(&names::cell("Edge B", 3))?;
    let script = "return !arguments[0].matches(':disabled') && !arguments[0].readOnly";
    let answer = page.browser.run(script, vec![serde_json::to_value(&box_of)?])?;
    answer.as_bool().context("yes or no")
}

/// Waits until the list holds just these titles, in whatever order.
fn lists(page: &Page, titles: &[&str]) -> Result<()> {
    let mut expected: Vec<String> = titles.iter().map(|&title| title.to_owned()).collect();
    expected.sort();
    eventually(&format!("the list holds {expected:?}"), || listed(page), |shown| *shown == expected)?;
    Ok(())
}

/// The titles in the list, sorted.
fn listed(page: &Page) -> Result<Vec<String>> {
    let script = "return [...document.querySelectorAll(arguments[0])]
        .map((line) => line.querySelector('.shelf-title').firstChild.textContent).sort()";
    let titles: Vec<String> =
        serde_json::from_value(page.browser.run(script, vec![json!(names::NOTEBOOKS)])?)?;
    Ok(titles)
}

/// The title of the one notebook beside that of a name.
fn other_than(page: &Page, name: &str) -> Result<String> {
    let all = eventually("two notebooks are listed", || listed(page), |all| all.len() == 2)?;
    all.into_iter().find(|title| title != name).context("another notebook")
}
