//! The notebooks of a class, with planted faults: read, recomputed, compared, sorted, taken away.

use std::collections::{BTreeMap, BTreeSet};
use std::path::PathBuf;

use anyhow::{Context, Result, bail, ensure};
use fantoccini::key::Key;
use serde_json::{Value, json};

use slope_of_light::analysis::{Weight, analyse};
use slope_of_light::bundle::{self, Entry};
use slope_of_light::drawings::{ChartForm, charts};
use slope_of_light::notebook::{BenchField, Cell, Edit, Notebook, write};
use slope_of_light::quantity::{DecimalMark, short_form};
use slope_of_light::simulated::random;
use slope_of_light::view::view;
use slope_of_light::words::{WordTable, Words};

use crate::access::{load_checker, unbroken};
use crate::downloads::{plot_is_saved, records_of};
use crate::languages::{no_english_is_left, speak};
use crate::looks::fits;
use crate::page::{Page, eventually};
use crate::stage::Stage;

/// Notebooks without a fault.
const SOUND: u64 = 6;
/// What came of reading.
const STATE: &str = "#class-state";
/// The cells of the table, row by row; what is folded away left out.
const CELLS: &str = "return [...document.querySelectorAll('#class-table > tbody > tr')]
    .map((row) => [...row.children].map((cell) => (cell.querySelector('summary') ?? cell).textContent));";

/// Stops as soon as some are read, which by a command from outside may be too late.
const STOP: &str = "const count = document.getElementById('class-count');
    new MutationObserver((_, observer) => {
        if (!/^[1-9]\\d* of 400/.test(count.textContent)) return;
        observer.disconnect();
        document.getElementById('class-stop').click();
    }).observe(count, { childList: true });";

/// A class of fourteen files: what is in each is told in its row, and nothing of it is kept.
///
/// # Errors
/// When it is otherwise.
pub fn a_class_is_looked_through(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    ensure!(
        scripts_of_a_class(&page)? == 0,
        "scripts of the class were loaded before its leaf was turned up"
    );
    page.is_saved()?;
    let kept = kept(&page)?;
    choose(&page, &class(&page)?)?;
    // Of the two notebooks in one zip, each counts.
    page.reads(STATE, "14 files read.")?;
    page.sees("#class-shown", "14 of 14 in the table")?;
    let rows = rows(&page)?;
    ensure!(rows.len() == 14, "{} rows", rows.len());
    results_are_recomputed(&rows)?;
    faults_are_told(&rows)?;
    bars_stand_in_order(&page)?;
    page.reads("#class-figures-mandel_paule", "τ")?;

    sorts(&page)?;
    page.fill("Search the names", "student 2")?;
    page.sees("#class-shown", "1 of 14 in the table")?;
    page.fill("Search the names", "")?;
    is_taken_away(&page)?;

    ensure!(self::kept(&page)? == kept, "something of the class is kept");
    is_read_and_closed(&page)?;
    ensure!(self::kept(&page)? == kept, "what was read is kept");
    page.click("Open Student 2")?;
    page.click("Open a copy among my notebooks")?;
    page.reads("#told", "is open")?;
    // Still there when one comes back.
    page.choose("Show", "without a result")?;
    page.sees("#class-shown", "3 of 14 in the table")?;
    page.is_silent()
}

/// The table keeps to the rules of accessibility, wide and narrow, in the other language too.
///
/// # Errors
/// When it does not.
pub fn a_class_is_for_everyone(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    speak(&page, "fr")?;
    choose(&page, &class(&page)?)?;
    page.reads(STATE, "14 fichiers lus.")?;
    page.sees("#class-shown", "14 sur 14 dans le tableau")?;
    page.browser.run("for (const each of document.querySelectorAll('details')) each.open = true", vec![])?;
    no_english_is_left(stage, &page, "a class")?;
    load_checker(&page)?;
    for (width, height) in [(1366, 768), (360, 740)] {
        let size = json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": false });
        page.browser.debug("Emulation.setDeviceMetricsOverride", &size)?;
        for place in ["#class-table", "#class-plot"] {
            page.turn_to(place)?;
            fits(&page, width)?;
            unbroken(&page).with_context(|| format!("{width} px wide, at {place}"))?;
        }
    }
    page.click("Ouvrir Student 2")?;
    page.reads("dialog.handed[open] h2", "Student 2")?;
    no_english_is_left(stage, &page, "a notebook that was handed in")?;
    fits(&page, 360)?;
    unbroken(&page).context("while one is read")?;
    page.is_silent()
}

/// Reading is stopped on request; what was read by then is there, and the page goes on.
///
/// # Errors
/// When it is otherwise.
pub fn reading_a_class_is_stopped(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    page.browser.finds_one_core()?;
    let one = bundle_of(&notebook(1, "Student 1")?, |_| ())?;
    let many: Vec<PathBuf> =
        (0..400).map(|place| page.home.write(&format!("{place}.zip"), &one)).collect::<Result<_>>()?;
    page.browser.run(STOP, vec![])?;
    choose(&page, &many)?;
    let told = page.reads(STATE, "Stopped.")?;
    ensure!(told.contains("of 400 files were read."), "it says {told:?}");
    eventually("what was read is shown", || Ok(rows(&page)?.len()), |read| (1..400).contains(read))?;
    page.click("Clear the table")?;
    eventually("the table is empty", || Ok(rows(&page)?.len()), |rows| *rows == 0)?;
    page.is_silent()
}

/// Twelve notebooks of one bench, in each of which one edge at the same mark was read 0.15 divisions too late: that mark is
/// named, and no other, though in most of them the row is not remarked on.
///
/// # Errors
/// When it is otherwise.
pub fn a_mark_that_all_misread_is_named(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    let mut files = Vec::new();
    let (mut rows, mut marks) = (0, Vec::new());
    for seed in 1..=12 {
        let (mut notebook, _) = random::bench(3).run(seed)?;
        let at = notebook.state().rows.len() / 3;
        let row = notebook.state().rows.get(at).context("a row")?;
        let (id, text) = (row.id, format!("{:.3}", row.text(Cell::EdgeB).parse::<f64>()? + 0.15));
        marks.push(row.text(Cell::Reading).parse::<f64>()?);
        notebook.apply(Edit::SetCell { row: id, cell: Cell::EdgeB, text }, "")?;
        let people =
            Edit::SetBench { field: BenchField::People, text: format!("Ben\u{1}\u{1b} {seed}\u{ffff}") };
        notebook.apply(people, "")?;
        rows += notebook.state().rows.len();
        files.push(page.home.write(&format!("{seed}.json"), write(&notebook).as_bytes())?);
    }
    // The second half while the first is read.
    for half in files.chunks(6) {
        choose(&page, half)?;
    }
    let told = page.reads("#class-residuals ol", "of 12 notebooks")?;
    let (least, most) =
        marks.iter().fold((f64::MAX, f64::MIN), |(least, most), mark| (mark.min(least), mark.max(most)));
    let place = format!("rail one at {least}–{most}\u{a0}mm: the delay lies above the line");
    ensure!(
        told.starts_with(&place) && told.matches("rail").count() == 1,
        "it says {told:?}, not {place:?} alone"
    );
    let dots = || {
        page.browser.run("return document.querySelector('#class-residuals .dots').getAttribute('d')", vec![])
    };
    let normalized = dots()?;
    let drawn = normalized.as_str().map(|path| path.matches('M').count());
    ensure!(drawn == Some(rows), "{drawn:?} dots of {rows} rows");
    page.browser.run("document.getElementById('class-strewn-table').open = true", vec![])?;
    let counted = eventually("the residuals stand in a table", || rows_told(&page), |rows| !rows.is_empty())?;
    ensure!(counted.iter().sum::<usize>() == rows, "the table has {counted:?} rows of {rows}");
    let plots = [
        ("class-residuals", "class-residuals.svg", "<title>Residuals of all notebooks, by position</title>"),
        (
            "class-figure",
            "class-results.svg",
            "<title>All results in order, each with its expanded uncertainty</title>",
        ),
    ];
    for (figure, name, title) in plots {
        // By a key, as by a person: a browser takes no second download from a script.
        page.browser.run(&format!("document.querySelector('#{figure} .actions button').focus()"), vec![])?;
        page.press(Key::Enter)?;
        plot_is_saved(&page, name, &[title])?;
    }
    page.choose("Residual in", "nanoseconds")?;
    ensure!(dots()? != normalized, "in nanoseconds the same is drawn");
    page.is_silent()
}

/// How many rows the table of the residuals has at each place.
fn rows_told(page: &Page) -> Result<Vec<usize>> {
    let script = "return [...document.querySelectorAll('#class-strewn-table tbody tr')].map((row) => Number(row.cells[2].textContent))";
    Ok(serde_json::from_value(page.browser.run(script, vec![])?)?)
}

/// Eight notebooks of one bench, two of them with swapped edges in a row: budgets and notices are counted as they stand in each,
/// and a notice leads to its notebooks in the table.
///
/// # Errors
/// When it is otherwise.
pub fn budgets_and_notices_of_a_class_are_counted(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    let words = WordTable::english()?;
    let mut files = Vec::new();
    let mut standing: BTreeMap<&str, usize> = BTreeMap::new();
    let mut shares: BTreeMap<String, Vec<f64>> = BTreeMap::new();
    for seed in 1..=8 {
        let (mut notebook, _) = random::bench(3).run(seed)?;
        if seed % 3 == 0 {
            swap_edges(&mut notebook)?;
        }
        let analysis = analyse(&notebook);
        let ids =
            analysis.notices.iter().filter(|notice| notice.weight != Weight::Know).map(|notice| notice.id);
        for id in ids.collect::<BTreeSet<_>>() {
            *standing.entry(id).or_default() += 1;
        }
        for part in view(&notebook, &analysis).budget.components {
            shares.entry(words.text(&part.name)).or_default().push(part.bar.trim_end_matches('%').parse()?);
        }
        files.push(page.home.write(&format!("{seed}.json"), write(&notebook).as_bytes())?);
    }
    choose(&page, &files)?;
    page.reads(STATE, "8 files read.")?;

    let script = "return [...document.querySelectorAll('#class-notices [data-notice]')]
        .map((item) => [item.dataset.notice, item.querySelector('strong').textContent])";
    let counted: BTreeMap<String, String> =
        standing.iter().map(|(id, n)| ((*id).to_owned(), format!("{n} of 8:"))).collect();
    ensure!(counted.contains_key("edges_swapped"), "the swapped edges have no notice: {counted:?}");
    let shown = || {
        let items: Vec<(String, String)> = serde_json::from_value(page.browser.run(script, vec![])?)?;
        Ok(items.into_iter().collect::<BTreeMap<_, _>>())
    };
    eventually(&format!("{counted:?} stand"), shown, |shown| *shown == counted)?;
    page.browser.run("document.querySelector('[data-notice=edges_swapped] button').click()", vec![])?;
    page.sees("#class-shown", "2 of 8 in the table")?;
    page.choose("Show", "all")?;
    page.sees("#class-shown", "8 of 8 in the table")?;

    let script = "return [...document.querySelectorAll('#class-budget tbody tr')].map((row) => [...row.children].map((cell) => cell.textContent))";
    let lost: Vec<[String; 3]> = serde_json::from_value(page.browser.run(script, vec![])?)?;
    let largest: usize = lost.iter().map(|[_, _, largest]| largest.parse::<usize>()).sum::<Result<_, _>>()?;
    ensure!(largest == 8 && lost.len() > 2, "of 8 budgets {largest} have a largest component: {lost:?}");
    for [name, share, _] in &lost {
        let all = shares.get_mut(name).with_context(|| format!("no budget has {name:?}"))?;
        all.sort_by(f64::total_cmp);
        // Each is in all eight budgets.
        let middle = f64::midpoint(*all.get(3).context("a fourth")?, *all.get(4).context("a fifth")?);
        let told: f64 = share.trim_end_matches("\u{a0}%").parse()?;
        ensure!((told - middle).abs() <= 0.05 + 1e-9, "{name}: {told}, not {middle}");
    }
    page.is_silent()
}

/// In one row what was read of A stands as B, and the other way round.
/// Swaps the edges of the sixth row.
///
/// # Errors
/// When it has no such row.
pub fn swap_edges(notebook: &mut Notebook) -> Result<()> {
    let row = notebook.state().rows.get(5).context("a row")?;
    let (id, a, b) = (row.id, row.text(Cell::EdgeA).to_owned(), row.text(Cell::EdgeB).to_owned());
    notebook.apply(Edit::SetCell { row: id, cell: Cell::EdgeA, text: b }, "")?;
    Ok(notebook.apply(Edit::SetCell { row: id, cell: Cell::EdgeB, text: a }, "")?)
}

fn notebook(seed: u64, people: &str) -> Result<Notebook> {
    let (mut notebook, _) = random::bench(seed).run(seed)?;
    let texts = [
        (BenchField::People, people),
        (BenchField::Aim, "c"),
        (BenchField::Method, "Time of flight."),
        (BenchField::Discussion, "It agrees."),
    ];
    for (field, text) in texts {
        notebook.apply(Edit::SetBench { field, text: text.into() }, "")?;
    }
    Ok(notebook)
}

/// The bundle of a notebook, with its entries changed.
fn bundle_of(notebook: &Notebook, change: impl Fn(&mut Vec<Entry>)) -> Result<Vec<u8>> {
    let (analysis, words) = (analyse(notebook), WordTable::english()?);
    let charts = charts(notebook.state(), &analysis, None, ChartForm::Svg, &words);
    let mut entries = bundle::texts(notebook, &analysis, &view(notebook, &analysis), &charts, None, &words)?;
    change(&mut entries);
    Ok(bundle::pack(&entries)?)
}

/// Fourteen files, two of them in a zip.
fn class(page: &Page) -> Result<Vec<PathBuf>> {
    let mut files: Vec<(String, Vec<u8>)> = Vec::new();
    for seed in 1..=SOUND {
        files.push((format!("{seed}.zip"), bundle_of(&notebook(seed, &format!("Student {seed}"))?, |_| ())?));
    }
    files.push(("partner.zip".into(), bundle_of(&notebook(1, "Partner of 1")?, |_| ())?));

    let mut sealed = notebook(7, "Sealed")?;
    sealed.apply(Edit::Seal("5f1c".into()), "")?;
    files.push(("sealed.zip".into(), bundle_of(&sealed, |_| ())?));
    sealed = notebook(8, "Opened")?;
    sealed.apply(Edit::Seal("5f1c".into()), "")?;
    sealed.apply(Edit::OpenSeal, "")?;
    let row = sealed.state().rows.first().context("a row")?.id;
    let text = format!("{}1", sealed.state().rows.first().map_or("", |row| row.text(Cell::EdgeB)));
    sealed.apply(Edit::SetCell { row, cell: Cell::EdgeB, text }, "")?;
    files.push(("opened.zip".into(), bundle_of(&sealed, |_| ())?));

    let whole = notebook(9, "Nicer")?;
    let c = analyse(&whole).speed.map_err(|refusal| anyhow::anyhow!(refusal.id))?.c.to_string();
    let nicer = bundle_of(&whole, |entries| {
        for entry in entries.iter_mut().filter(|entry| entry.name == "line.csv") {
            entry.bytes = String::from_utf8_lossy(&entry.bytes).replace(&c, "299792458").into_bytes();
        }
    })?;
    files.push(("nicer.zip".into(), nicer));

    let broken = bundle_of(&notebook(10, "Broken")?, |_| ())?;
    files.push(("broken.zip".into(), broken.get(..broken.len() / 2).context("half of it")?.to_vec()));
    let later = write(&notebook(11, "Later")?).replace("\"format\":2", "\"format\":99");
    files.push(("later.zip".into(), bundle::write(&later, Vec::new())?));
    let mut silent = notebook(12, "Inner 12")?;
    silent.apply(Edit::SetBench { field: BenchField::Discussion, text: " ".into() }, "")?;
    let inner = [
        Entry { name: "group/12.zip".into(), bytes: bundle_of(&silent, |_| ())? },
        Entry {
            name: "group/13/notebook.json".into(),
            bytes: write(&notebook(13, "Inner 13")?).into_bytes(),
        },
        Entry { name: "group/list.txt".into(), bytes: b"12, 13".to_vec() },
    ];
    files.push(("group.zip".into(), bundle::pack(&inner)?));
    files.iter().map(|(name, bytes)| page.home.write(name, bytes)).collect()
}

pub fn choose(page: &Page, files: &[PathBuf]) -> Result<()> {
    page.turn_to("#class")?;
    let ready = "return document.querySelector('#class-choices')?.childElementCount > 0";
    eventually("the section is there", || page.browser.run(ready, vec![]), |ready| *ready == json!(true))?;
    let input = page.browser.element("return document.querySelector('#class-files')", vec![])?;
    let list: Vec<_> = files.iter().map(|file| file.to_string_lossy()).collect();
    page.browser.choose_file(&input.context("no input for files")?, &PathBuf::from(list.join("\n")))
}

/// Scripts loaded so far that are the class's alone.
fn scripts_of_a_class(page: &Page) -> Result<u64> {
    let script = "return performance.getEntriesByType('resource')
        .filter(({ name }) => /\\/class(-[A-Z0-9a-z]+)?\\.js$/.test(name)).length";
    page.browser.run(script, vec![])?.as_u64().context("no count")
}

pub fn rows(page: &Page) -> Result<Vec<Vec<String>>> {
    Ok(serde_json::from_value(page.browser.run(CELLS, vec![])?)?)
}

/// Everything in the local storage but the settings.
fn kept(page: &Page) -> Result<Value> {
    let script = "return Object.keys(localStorage).filter((key) => !key.includes('/setting/')).sort()
        .map((key) => `${key} ${localStorage[key].length}`)";
    page.browser.run(script, vec![])
}

/// The row of someone, by how it begins.
pub fn row_of<'a>(rows: &'a [Vec<String>], who: &str) -> Result<&'a [String]> {
    let of = |row: &&Vec<String>| row.first().is_some_and(|name| name.starts_with(who));
    rows.iter().find(of).map(Vec::as_slice).with_context(|| format!("no row of {who}: {rows:?}"))
}

fn results_are_recomputed(rows: &[Vec<String>]) -> Result<()> {
    let inner = [(12, "Inner 12".to_owned()), (13, "Inner 13".to_owned()), (9, "Nicer".to_owned())];
    for (seed, who) in (1..=SOUND).map(|seed| (seed, format!("Student {seed}"))).chain(inner) {
        let speed = analyse(&notebook(seed, &who)?).speed.map_err(|refusal| anyhow::anyhow!(refusal.id))?;
        let c = short_form(speed.c, Some(speed.u_c()), "m/s", DecimalMark::Point);
        ensure!(row_of(rows, &who)?.get(1) == Some(&c), "{who} has {:?}, not {c}", row_of(rows, &who)?);
    }
    Ok(())
}

fn faults_are_told(rows: &[Vec<String>]) -> Result<()> {
    let faults = [
        ("Student 1", "as Partner of 1: worked together?"),
        ("Partner of 1", "as Student 1: worked together?"),
        ("Sealed", "sealed"),
        ("Opened", "1 change after the seal was opened"),
        ("Nicer", "differ from those calculated here: speed of light in vacuum"),
        ("Inner 12", "Discussion"),
        ("broken.zip", "cut short"),
        ("later.zip", "format 99"),
    ];
    for (who, told) in faults {
        let row = row_of(rows, who)?;
        ensure!(row.join(" ").contains(told), "of {who} it does not say “{told}”: {row:?}");
    }
    let remarked = rows.iter().filter(|row| row.get(5).is_some_and(|remarks| !remarks.is_empty()));
    ensure!(remarked.count() == 4, "others are remarked on too: {rows:?}");
    Ok(())
}

/// Each result but the sealed one has a bar, further to the right the larger its c, across the band of the mean.
fn bars_stand_in_order(page: &Page) -> Result<()> {
    ensure!(page.text("#class-nothing")?.is_empty(), "what will be there is told although it is there");
    let sizes = "return ['.place', '.bar'].map((which) => document.querySelector(`#class-plot ${which}`).getBoundingClientRect().height)";
    let [place, bar]: [f64; 2] = serde_json::from_value(page.browser.run(sizes, vec![])?)?;
    ensure!(place > 2.0 * bar, "a bar {bar} px high hides its place, which is {place} px high");
    let script = "return [...document.querySelectorAll('#class-plot li')].map((line) => {
        const [place, bar] = ['.place', '.bar'].map((which) => line.querySelector(which).getBoundingClientRect());
        return [place.x + place.width / 2, bar.left, bar.right, line.querySelector('.band').getBoundingClientRect().width];
    })";
    let bars: Vec<[f64; 4]> = serde_json::from_value(page.browser.run(script, vec![])?)?;
    ensure!(bars.len() == 11, "{} bars", bars.len());
    ensure!(bars.is_sorted_by(|one, other| one[0] <= other[0]), "they do not stand in order: {bars:?}");
    for [place, from, to, band] in bars {
        // One beyond the scale stands at its end.
        ensure!(
            from - 1.0 <= place && place <= to + 1.0 && band > 0.0,
            "a bar from {from} to {to} about {place}"
        );
    }
    let marks = page.browser.run("return document.querySelectorAll('#class-scale span').length", vec![])?;
    ensure!(marks.as_u64().is_some_and(|marks| marks >= 2), "the scale has {marks} marks");
    Ok(())
}

/// One out of two zips opens to be read, without a field but for what is to be commented on, and leads back to where it was opened
/// from.
fn is_read_and_closed(page: &Page) -> Result<()> {
    page.click("Open Inner 12")?;
    let inside = "document.querySelector('dialog.handed[open] > .table-box')?.shadowRoot";
    let speed = analyse(&notebook(12, "Inner 12")?).speed.map_err(|refusal| anyhow::anyhow!(refusal.id))?;
    let c = short_form(speed.c, Some(speed.u_c()), "m/s", DecimalMark::Point);
    let script = format!("return {inside}?.textContent ?? ''");
    let told = || page.browser.run(&script, vec![]);
    let is_it =
        |told: &Value| told.as_str().is_some_and(|told| told.contains("Inner 12") && told.contains(&c));
    eventually("the notebook is there to be read", told, is_it)?;
    let fields = page.browser.run(
        &format!("return {inside}.querySelectorAll('input, textarea, select, button:not(.spot)').length"),
        vec![],
    )?;
    ensure!(fields == json!(0), "it has {fields} fields");
    page.click("Back to the class")?;
    let focus = page.browser.run("return document.activeElement.getAttribute('aria-label')", vec![])?;
    ensure!(focus == json!("Open Inner 12"), "the focus is on {focus}");
    let left = "return document.querySelector('dialog.handed > .table-box').shadowRoot.childElementCount";
    eventually("nothing of it is left", || page.browser.run(left, vec![]), |left| *left == json!(0))?;
    Ok(())
}

/// By c, upwards and downwards; what has none comes last either way.
fn sorts(page: &Page) -> Result<()> {
    let order = || -> Result<Vec<String>> {
        Ok(rows(page)?.into_iter().filter_map(|row| row.into_iter().next()).collect())
    };
    page.click("Sort by c")?;
    let rising = order()?;
    let mut expected: Vec<(f64, String)> = Vec::new();
    for seed in 1..=SOUND {
        let who = format!("Student {seed}");
        let speed = analyse(&notebook(seed, &who)?).speed.map_err(|refusal| anyhow::anyhow!(refusal.id))?;
        expected.push((speed.c, who));
    }
    expected.sort_by(|one, other| one.0.total_cmp(&other.0));
    let ours = |order: &[String]| -> Vec<String> {
        let of = |name: &String| expected.iter().find(|(_, who)| name.starts_with(who.as_str()));
        order.iter().filter_map(|name| of(name).map(|(_, who)| who.clone())).collect()
    };
    let by_c: Vec<String> = expected.iter().map(|(_, who)| who.clone()).collect();
    ensure!(ours(&rising) == by_c, "they stand as {rising:?}, not as {by_c:?}");
    page.click("Sort by c")?;
    let falling = order()?;
    ensure!(ours(&falling).iter().rev().eq(&by_c), "downwards they stand as {falling:?}");
    for order in [&rising, &falling] {
        let last = order.iter().rev().take(3);
        ensure!(last.clone().any(|name| name == "broken.zip"), "what was not read stands before: {order:?}");
    }
    Ok(())
}

/// The table as a file holds every digit of each result.
fn is_taken_away(page: &Page) -> Result<()> {
    page.click("Download the table (CSV)")?;
    let (_, bytes) = page.downloaded_as("csv")?;
    let records = records_of(&bytes)?;
    ensure!(records.len() == 15, "{} records", records.len());
    let speed = analyse(&notebook(3, "Student 3")?).speed.map_err(|refusal| anyhow::anyhow!(refusal.id))?;
    let Some(record) = records.iter().find(|record| record.first().is_some_and(|file| file == "3.zip"))
    else {
        bail!("no record of 3.zip: {records:?}");
    };
    let c: f64 = record.get(5).context("no c")?.parse()?;
    ensure!(c.to_bits() == speed.c.to_bits(), "c is {c}, not {}", speed.c);
    Ok(())
}
