//! Files that can't be opened, and the page as one file.

use std::fs;

use anyhow::{Context, Result, ensure};
use url::Url;

use slope_of_light::analysis::analyse;
use slope_of_light::bundle;
use slope_of_light::notebook::{Cell, Edit, LogEntry, Notebook, read, write};

use crate::bench;
use crate::home::Home;
use crate::languages::speak;
use crate::names;
use crate::page::Page;
use crate::stage::Stage;
use crate::{pictures, traces, uncertainty};

/// A file that is none of ours, or is broken, or comes from a later version, is refused by name and with the
/// reason; the open notebook stays as it is.
///
/// # Errors
/// When it is otherwise.
pub fn bad_files_are_refused(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    page.fill("Title of the notebook", "Mine")?;
    bench::fill(&page)?;
    let result = page.result()?;
    for (name, bytes, reason) in bad_files(stage)? {
        page.open_file(&page.home.write(name, &bytes)?)?;
        let told = page.reads(names::MESSAGE, &format!("{name} was not opened:"))?;
        ensure!(told.contains(reason), "of {name} it says {told:?}");
        ensure!(told.len() > name.len() + 40, "of {name} it gives no reason: {told:?}");
        page.sees(names::TITLE, "Mine")?;
        ensure!(page.result()? == result, "{name} changed the result");
    }
    page.list_notebooks()?;
    ensure!(page.count(names::NOTEBOOKS)? == 2, "a file that was refused stands in the list");
    Ok(())
}

/// Files that are no notebooks of this version, each with words of the reason.
///
/// # Errors
/// When they can't be made.
pub(crate) fn bad_files(stage: &Stage) -> Result<[(&'static str, Vec<u8>, &'static str); 5]> {
    let whole = bundle::write(&demo(stage)?, Vec::new())?;
    let half = whole.get(..whole.len() / 2).context("half of it")?;
    let later = write(&Notebook::new()).replace("\"format\":2", "\"format\":3");
    ensure!(later.contains("\"format\":3"), "the later version's file was not made");
    let cut = br#"{"kind":"slope-of-light notebook","format":1,"log":["#;
    Ok([
        ("foreign.json", br#"{"hello": "world"}"#.to_vec(), "not a notebook"),
        ("picture.zip", b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR".to_vec(), "not a whole notebook"),
        ("half.zip", half.to_vec(), "cut short"),
        ("half.json", cut.to_vec(), "not a whole notebook"),
        ("later.json", later.into_bytes(), "later version"),
    ])
}

/// A one file that was damaged on its way says in each language that it could not start: no table of words is at hand.
///
/// # Errors
/// When it does not.
pub fn a_damaged_one_file_says_so(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    let whole = fs::read_to_string(stage.dist.join("slope-of-light.html"))?;
    let (start, packed) = whole.split_once("SLOPE_PAGE=\"").context("the file holds no script")?;
    let rest = packed.get(5..).context("the script is cut off")?;
    // What begins so is not gzip (RFC 1952, 2.3.1).
    let damaged = format!("{start}SLOPE_PAGE=\"00000{rest}");
    let file = page.home.write("damaged.html", damaged.as_bytes())?;
    page.browser.go(Url::from_file_path(&file).ok().context("a path from the root")?.as_str())?;
    page.reads("#not-started:not([hidden])", "could not start")?;
    page.reads("#not-started", "n’a pas pu démarrer")?;
    Ok(())
}

/// A notebook of ten thousand rows, a file of a megabyte that holds more than any bench gives, opens, and the page answers in it.
///
/// # Errors
/// When it does not.
pub fn ten_thousand_rows_open(stage: &Stage) -> Result<()> {
    let begun = |row: u32| {
        let distance = 0.5 + 0.0005 * f64::from(row);
        let delay = 1e9 * distance / bench::C;
        let cells = [(Cell::Distance, format!("{distance:.4}")), (Cell::Delay, format!("{delay:.3}"))];
        Edit::AddRow { row, after: None, cells: cells.into_iter().collect() }
    };
    let entry = |row| LogEntry { at: String::new(), edit: begun(row) };
    let notebook = Notebook::from_log((1..=10_000).map(entry).collect()).map_err(|(_, why)| why)?;
    let page = stage.page()?;
    page.open_file(&page.home.write("large.json", write(&notebook).as_bytes())?)?;
    page.sees(names::ROWS_USED, "10\u{202f}000 of 10\u{202f}000 rows included")?;
    page.is_saved()?;
    page.put_in_cell("Remark", 1, "door open")?;
    page.is_saved()?;
    ensure!(page.cell("Remark", 1)? == "door open", "what was entered is not there");
    page.is_silent()
}

/// The one file, opened from the disk.
///
/// # Errors
/// When it does not open.
pub(crate) fn one_file(stage: &Stage) -> Result<Page<'_>> {
    let home = Home::new()?;
    let file = home.write("slope-of-light.html", &fs::read(stage.dist.join("slope-of-light.html"))?)?;
    let address = Url::from_file_path(&file).ok().context("a path from the root")?;
    stage.page_at(address.as_str(), home)
}

/// The one file, opened from the disk, shows the demo and works, its workers too.
///
/// # Errors
/// When it does not.
pub fn one_file_from_disk(stage: &Stage) -> Result<()> {
    let page = one_file(stage)?;
    page.sees(names::ROWS_USED, &names::rows_used(23, 24))?;
    let notebook = read(&demo(stage)?)?;
    let speed = analyse(&notebook).speed.map_err(|refusal| anyhow::anyhow!(refusal.id))?;
    let result = page.result()?;
    ensure!(speed.c > 0.0 && result.contains("m/s"), "the demo's result is {result:?}");
    let reading = page.cell("Edge B", 1)?;
    page.type_in_cell("Edge B", 1, "9.9")?;
    let changed = page.result()?;
    ensure!(changed != result, "a changed reading leaves the result at {result:?}");
    page.is_saved()?;
    page.reload()?;
    ensure!(page.result()? == changed, "after a reload the edit is gone");
    page.type_in_cell("Edge B", 1, &reading)?;
    ensure!(page.result()? == result, "the first reading does not give the first result");
    page.fill("Number of trials", "20000")?;
    uncertainty::run(&page).context("trials in the one file")?;

    page.list_notebooks()?;
    page.click("New blank notebook")?;
    page.sees(names::ROWS_USED, &names::rows_used(0, 0))?;
    traces::offer(&page, 2).context("traces in the one file")?;
    page.click("Measure all")?;
    page.sees(names::ROWS_USED, &names::rows_used(2, 2)).context("traces in the one file")?;
    pictures::choose(&page, &pictures::series(&page.home, 1)?)?;
    pictures::is_proposed(&page, 0).context("a picture in the one file")?;
    page.is_silent()
}

/// The one file speaks another language than that whose table names its texts.
///
/// # Errors
/// When it does not.
pub fn the_one_file_speaks_french(stage: &Stage) -> Result<()> {
    let page = one_file(stage)?;
    speak(&page, "fr")?;
    page.reads("#outline", "Banc")?;
    page.reads(names::ROWS_USED, "23 sur 24")?;
    page.is_silent()
}

fn demo(stage: &Stage) -> Result<String> {
    fs::read_to_string(stage.dist.join(names::DEMO)).context("the demo is not packed")
}
