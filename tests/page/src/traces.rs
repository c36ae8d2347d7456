//! Recorded traces: from files to c by every estimator, what walk does to it, layouts corrected by hand, a run that is
//! stopped, and files that give nothing.
//!
//! The traces are made by the simulated bench, whose delays are those of light in vacuum along the rail
//! (c = 299 792 458 m/s exactly: BIPM, The International System of Units, 9th edition, 2019, section 2.3).

use std::path::PathBuf;

use anyhow::{Context, Result, bail, ensure};
use fantoccini::key::Key;
use serde_json::{Value, json};

use slope_bench::chance::Chance;
use slope_bench::record::{Bench, Digitiser, Style, as_text, both_as_text};
use slope_of_light::analysis::analyse;
use slope_of_light::bundle;
use slope_of_light::notebook::{Edit, Estimator, Notebook};
use slope_of_light::trace::Recording;
use slope_of_light::view::view;

use crate::bench::{C, describe_rail};
use crate::downloads::{plot_is_saved, traces_are_saved};
use crate::hands::{middle, spread, turn_wheel};
use crate::looks::is_drawn;
use crate::names;
use crate::page::{Page, eventually, plain};
use crate::stage::Stage;

/// Where the carriage stood, mm.
const MARKS: [u32; 11] = [500, 1000, 1500, 2000, 2500, 3000, 3500, 4000, 4500, 5000, 5500];
/// Delay at distance 0, ns.
const OFFSET: f64 = 5.0;

const FILES: &str = "#trace-files";
const STATUS: &str = "#trace-status";
const REFUSED: &str = "#trace-refused";
const PLOT: &str = "#traces-plot";
/// Whether traces are being read.
const READING: &str = "p:has(+ #traces-figure)";

/// A bench whose light weakens along the rail, so that a fixed level walks.
pub fn weakening() -> Bench {
    Bench { fall_off: 4.0, ..Bench::default() }
}

/// Delay of light in vacuum at a mark, ns.
fn delay(mark: u32) -> f64 {
    f64::from(mark) / 1000.0 / C * 1e9 + OFFSET
}

/// The traces at a mark.
pub fn recorded(bench: &Bench, mark: u32) -> Recording {
    let light = bench.light(f64::from(mark) / 1000.0);
    bench.record(delay(mark), light, &mut Chance::seeded(u64::from(mark)))
}

/// The files of a run: both traces in one file at every other place, in one file each at the rest.
fn run(page: &Page, marks: &[u32]) -> Result<Vec<PathBuf>> {
    let mut files = Vec::new();
    for (place, mark) in marks.iter().enumerate() {
        let recording = recorded(&weakening(), *mark);
        let style = Style::default();
        if place % 2 == 0 {
            let text = both_as_text(&recording, &style);
            files.push(page.home.write(&format!("A {mark}mm.csv"), text.as_bytes())?);
        } else {
            for channel in 0..2 {
                let text = as_text(&recording, channel, &style);
                files.push(page.home.write(&format!("A {mark}mm ch{}.csv", channel + 1), text.as_bytes())?);
            }
        }
    }
    Ok(files)
}

fn choose(page: &Page, files: &[PathBuf]) -> Result<()> {
    let input = page
        .browser
        .element("return document.querySelector(arguments[0])", vec![json!(FILES)])?
        .context("an input for trace files")?;
    let lines: Vec<_> = files.iter().map(|file| file.to_string_lossy().into_owned()).collect();
    page.browser.choose_file(&input, &PathBuf::from(lines.join("\n")))
}

/// Gives the page files that are made in it, by a script that returns a list of them.
fn give(page: &Page, script: &str, arguments: Vec<Value>) -> Result<()> {
    let script = format!(
        "const make = (...arguments) => {{ {script} }};
        const transfer = new DataTransfer();
        for (const file of make(...arguments)) transfer.items.add(file);
        const input = document.querySelector('{FILES}');
        input.files = transfer.files;
        input.dispatchEvent(new Event('change'));"
    );
    page.browser.run(&script, arguments)?;
    Ok(())
}

/// Describes the rail and chooses a run's files.
///
/// # Errors
/// When the page does not take them.
pub fn offer(page: &Page, positions: usize) -> Result<()> {
    describe_rail(page)?;
    choose_run(page, positions)
}

/// Chooses a run's files.
///
/// # Errors
/// When the page does not take them.
pub fn choose_run(page: &Page, positions: usize) -> Result<()> {
    choose_files(page, positions)?;
    page.reads(STATUS, &format!("{positions} positions. Check that"))?;
    Ok(())
}

/// Chooses a run's files, whatever language is spoken.
///
/// # Errors
/// When there is no place for them.
pub fn choose_files(page: &Page, positions: usize) -> Result<()> {
    choose(page, &run(page, MARKS.get(..positions).context("so many places")?)?)
}

/// Measures what was offered.
///
/// # Errors
/// When the page does not.
pub fn measure(page: &Page, positions: usize) -> Result<()> {
    page.click("Measure all")?;
    page.reads(STATUS, &format!("{positions} positions were measured"))?;
    Ok(())
}

/// A run of trace files gives c by constant fraction; a fixed level moves v as the bench's pulses say; one undo takes
/// the run back; all is there after a reload.
///
/// # Errors
/// When it is otherwise.
pub fn traces_give_c(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    offer(&page, MARKS.len())?;
    measure(&page, MARKS.len())?;
    page.sees(names::ROWS_USED, &names::rows_used(MARKS.len(), MARKS.len()))?;
    ensure!(page.text(REFUSED)?.is_empty(), "of good files it says {:?}", page.text(REFUSED)?);
    page.click("Undo")?;
    page.sees(names::ROWS_USED, &names::rows_used(0, 0))?;
    page.click("Redo")?;
    page.sees(names::ROWS_USED, &names::rows_used(MARKS.len(), MARKS.len()))?;
    let result = page.result()?;
    page.is_saved()?;
    page.reload()?;
    ensure!(page.result()? == result, "after a reload the result is another");
    page.click("Show the traces of row 2")?;
    // Those of another row stand there until these are read.
    page.browser.run(names::TWO_FRAMES, vec![])?;
    page.sees(READING, "")?;
    is_drawn(&page, PLOT)?;
    page.reads("#traces-summary", "Trace B: baseline")?;
    is_drawn(&page, "#walk-plot")?;
    zoomed(&page)?;
    traces_are_saved(&page)?;

    page.click("Download bundle (.zip)")?;
    let (_, bytes) = page.downloaded()?;
    let mut notebook = bundle::read(&bytes)?.notebook;
    let by_fraction = speed(&notebook)?;
    ensure!((by_fraction / C - 1.0).abs() < 0.01, "constant fraction gives {by_fraction} m/s");
    notebook.apply(Edit::SetEstimator(Estimator::FixedLevel), "")?;
    let shift = speed(&notebook)? / by_fraction - 1.0;
    let expected = expected_shift();
    ensure!(expected < -0.02, "the bench hardly walks: {expected}");
    // Within a tenth of it, and what noise leaves of two delays to a few hundredths of a nanosecond.
    ensure!((shift - expected).abs() < 0.1 * expected.abs() + 0.004, "it moves v by {shift}, not {expected}");
    page.click("fixed threshold: both edges at the same voltage; subject to time walk: a smaller pulse crosses later")?;
    let shown = view(&notebook, &analyse(&notebook)).result.short;
    page.sees(names::RESULT, &shown)?;
    for estimator in Estimator::ALL.into_iter().filter(|one| *one != Estimator::FixedLevel) {
        notebook.apply(Edit::SetEstimator(estimator), "")?;
        let c = speed(&notebook)?;
        ensure!((c / C - 1.0).abs() < 0.01, "{estimator:?} gives {c} m/s");
    }
    page.is_silent()
}

fn speed(notebook: &Notebook) -> Result<f64> {
    let speed = analyse(notebook).speed.map_err(|refusal| anyhow::anyhow!(refusal.id))?;
    Ok(speed.c)
}

/// By what fraction a level of half the smallest pulse should move v, from the pulses that the bench is made of.
fn expected_shift() -> f64 {
    let bench = weakening();
    let distance = |mark: u32| f64::from(mark) / 1000.0;
    let top =
        |light| (0..4000).map(|at| bench.b.level(f64::from(at) * 0.01 - 20.0, light)).fold(0.0, f64::max);
    let crossing = |level: f64, light: f64| {
        let at =
            (0..200_000).map(|at| f64::from(at) * 1e-4 - 10.0).find(|at| bench.b.level(*at, light) >= level);
        at.unwrap_or(f64::NAN)
    };
    let smallest = top(bench.light(distance(MARKS[MARKS.len() - 1])));
    let level = 0.5 * smallest;
    let late = |light: f64| crossing(level, light) - crossing(0.5 * top(light), light);
    let walk: Vec<(f64, f64)> =
        MARKS.iter().map(|mark| (distance(*mark), late(bench.light(distance(*mark))) - late(1.0))).collect();
    let count = walk.len() as f64;
    let mean = |of: fn(&(f64, f64)) -> f64| walk.iter().map(of).sum::<f64>() / count;
    let (d, w) = (mean(|at| at.0), mean(|at| at.1));
    let slope = walk.iter().map(|at| (at.0 - d) * (at.1 - w)).sum::<f64>()
        / walk.iter().map(|at| (at.0 - d) * (at.0 - d)).sum::<f64>();
    let true_slope = 1e9 / C;
    true_slope / (true_slope + slope) - 1.0
}

/// Buttons, keys, the wheel and two fingers change the time that is shown, and lead back.
fn zoomed(page: &Page) -> Result<()> {
    let shown = || page.text("#traces-summary");
    let whole = shown()?;
    page.click("Zoom in")?;
    let near = eventually("the drawing shows less", shown, |text| *text != whole)?;
    // Behind the last tool the drawing itself is reached backwards; it takes keys.
    page.browser.run("document.querySelector('#traces-figure .plot').focus()", vec![])?;
    page.press(Key::Right)?;
    eventually("the drawing shows what is later", shown, |text| *text != near)?;
    page.click("Whole pulse")?;
    eventually("the drawing shows the whole pulse", shown, |text| *text == whole)?;
    for (how, look) in
        [("the wheel", turn_wheel as fn(&Page, [f64; 2]) -> Result<()>), ("two fingers", spread)]
    {
        look(page, middle(page, "#traces-plot")?)?;
        eventually(&format!("the drawing shows less by {how}"), shown, |text| *text != whole)?;
        page.browser.run("document.querySelector('#traces-figure .plot').focus()", vec![])?;
        page.type_text("0")?;
        eventually(&format!("it shows the whole pulse after {how}"), shown, |text| *text == whole)?;
    }
    Ok(())
}

/// A layout that can't be told from the file is corrected by hand, for all files; it is kept where a bundle brings the same
/// files again, and goes with the notebook to another browser.
///
/// # Errors
/// When it is otherwise.
pub fn layouts_are_corrected(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    describe_rail(&page)?;
    // Nothing in these files tells that B stands before A, and that the volts are millivolts.
    let style = Style { labels: false, ..Style::default() };
    let mut files = Vec::new();
    for mark in [1000, 3000, 5000] {
        let mut recording = recorded(&Bench::default(), mark);
        recording.channels.reverse();
        files.push(page.home.write(&format!("{mark} mm.txt"), both_as_text(&recording, &style).as_bytes())?);
    }
    choose(&page, &files)?;
    page.reads(STATUS, "3 files with the traces of 3 positions")?;
    // Column 2 holds B: taken for A, it has B's edge drawn too early by as much as it is late.
    let early = edges(&page)?;
    page.choose("What column 2 contains", "trace B")?;
    let swapped = || page.value("What column 3 contains");
    eventually("the two columns change places", swapped, |value| value == "channel_a")?;
    let drawn = || edges(&page);
    let late = eventually("the drawing follows", drawn, |late| (late + early).abs() < 1e-9)?;
    ensure!((late - delay(1000)).abs() < 0.2, "{late} ns are drawn where {} ns were made", delay(1000));
    is_drawn(&page, "#layout-plot")?;
    page.browser.run("document.getElementById('layout-plot-table').open = true", vec![])?;
    page.reads("#layout-plot-table tbody", "trace B")?;
    page.browser.run("document.querySelector('figure:has(#layout-plot) .actions button').focus()", vec![])?;
    page.press(Key::Enter)?;
    plot_is_saved(&page, "-traces.svg", &["<svg", "trace B"])?;
    // Nor in which unit the times are: it is assumed until it is chosen, be it the same.
    ensure!(page.value("Unit of column 1")?.is_empty(), "the unit of the times is taken for stated");
    page.choose("Unit of column 1", "s")?;
    page.choose("Unit of column 2", "mV")?;
    page.choose("Unit of column 3", "mV")?;
    page.click("Measure all")?;
    page.reads(STATUS, "3 positions were measured")?;
    page.sees(names::ROWS_USED, &names::rows_used(3, 3))?;
    let shown = page.text("tbody[data-row] .output.delay output")?;
    let found: f64 = shown.split('(').next().unwrap_or_default().parse().with_context(|| shown.clone())?;
    ensure!((found - delay(1000)).abs() < 0.2, "{shown} is shown where {} ns were made", delay(1000));
    let notices = page.text("#delays-notices")?;
    ensure!(!notices.contains("in which unit"), "a unit that was chosen is still called assumed: {notices}");
    page.click("Show the traces of row 1")?;
    // 0.8 V of the bench, taken for millivolts.
    page.reads("#traces-summary", "top at 7.2")?;
    page.click("Download bundle (.zip)")?;
    let (bundle, _) = page.downloaded()?;
    page.open_file(&bundle)?;
    page.reads(names::MESSAGE, "is open")?;
    page.is_saved()?;
    // What stands there of the notebook before goes.
    page.reload()?;
    page.click("Show the traces of row 1")?;
    page.reads("#traces-summary", "top at 7.2")?;
    // It goes with the notebook, also to a browser that has never seen the files.
    let other = stage.page()?;
    other.open_file(&bundle)?;
    other.reads(names::MESSAGE, "is open")?;
    other.is_saved()?;
    other.click("Show the traces of row 1")?;
    other.reads("#traces-summary", "top at 7.2")?;
    other.click("Measure again")?;
    other.reads(STATUS, "Measured; nothing changed.")?;
    ensure!(other.text("tbody[data-row] .output.delay output")? == shown, "it was measured otherwise");
    other.is_silent()?;
    page.is_silent()
}

/// By how much B's edge is later than A's as it is told under the choices of a layout, ns.
fn edges(page: &Page) -> Result<f64> {
    let told = plain(&page.reads("#layout-summary", "Trace B")?).replace('−', "-");
    let time = |crossing: &str| crossing.split('(').next().unwrap_or_default().trim().parse::<f64>();
    let times: Vec<f64> = told.split("V at ").skip(1).map(time).collect::<Result<_, _>>()?;
    let [a, b] = times.as_slice() else { bail!("not two edges are told: {told}") };
    Ok(b - a)
}

/// Numbers of a layout are read by the notebook's decimal mark, and none is rounded.
///
/// # Errors
/// When it is otherwise.
pub fn layout_numbers_are_read_as_typed(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    page.click("Settings")?;
    page.click("comma: 1,5")?;
    page.click("Close")?;
    let style = Style { labels: false, ..Style::default() };
    let text = both_as_text(&recorded(&Bench::default(), 1000), &style);
    choose(&page, &[page.home.write("1000 mm.txt", text.as_bytes())?])?;
    page.fill("First line of samples", "12,5")?;
    page.reads("#trace-first-line-problem", "not a whole number")?;
    page.choose("What column 1 contains", "ignore")?;
    page.fill("Sampling interval / ns", "0.25")?;
    page.reads("#trace-step-problem", "0.25")?;
    page.fill("Sampling interval / ns", "0,25")?;
    let problem = || page.text("#trace-step-problem");
    eventually("a decimal comma is read", problem, String::is_empty)?;
    ensure!(page.value("Sampling interval / ns")? == "0,25", "the step is written as it was typed");
    page.is_silent()
}

/// Files that count their samples and tell no interval are refused, and stay until it is stated.
///
/// # Errors
/// When it is otherwise.
pub fn a_step_is_stated_after_a_refusal(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    describe_rail(&page)?;
    let bench = Bench::default();
    let style = Style { timeless: true, numbered: true, ..Style::default() };
    let mut files = Vec::new();
    for mark in [1000, 3000] {
        let text = both_as_text(&recorded(&bench, mark), &style);
        files.push(page.home.write(&format!("{mark} mm.txt"), text.as_bytes())?);
    }
    choose(&page, &files)?;
    page.reads(STATUS, "2 files with the traces of 2 positions")?;
    page.click("Measure all")?;
    page.reads(REFUSED, "no sampling interval")?;
    page.fill("Sampling interval / ns", &bench.digitiser.step.to_string())?;
    page.click("Measure all")?;
    page.reads(STATUS, "2 positions were measured")?;
    page.sees(names::ROWS_USED, &names::rows_used(2, 2))?;
    page.is_silent()
}

/// A long run goes on beside the page and is stopped: what was measured until then stays.
///
/// # Errors
/// When it is otherwise.
pub fn a_run_is_stopped(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    page.browser.finds_one_core()?;
    let long = Bench { digitiser: Digitiser { samples: 30_000, ..Digitiser::default() }, ..Bench::default() };
    let text = both_as_text(&recorded(&long, 1000), &Style::default());
    let make = "return [...Array(400).keys()].map((n) => new File([arguments[0]], `${n + 1} mm.csv`))";
    give(&page, &make.replace("arguments[0]", "arguments[0], `\\n`"), vec![json!(text)])?;
    page.reads(STATUS, "400 positions")?;
    page.click("Measure all")?;
    let count = || page.text("#trace-count");
    let begun = eventually("the progress is told", count, |text| text.contains("of 400"))?;
    eventually("the progress grows", count, |text| *text != begun)?;
    // The page is alive meanwhile.
    page.fill("Title of the notebook", "Long")?;
    page.sees(names::TITLE, "Long")?;
    // What is added meanwhile is not taken, which is said.
    give(&page, "return [new File(['1'], '7 mm.csv')]", vec![])?;
    page.reads(names::MESSAGE, "1 new file was not added")?;
    page.click("Stop")?;
    page.reads(STATUS, "Stopped.")?;
    let rows = page.count(names::ROWS)?;
    ensure!(rows < 400, "all {rows} were measured");
    page.is_silent()
}

/// A file with both traces of one position.
fn good() -> String {
    both_as_text(&recorded(&Bench::default(), 1000), &Style::default())
}

/// Files that give nothing, each with words that are said of it.
fn bad() -> Result<[(&'static str, Vec<u8>, &'static str); 7]> {
    let good = good();
    let of = |digitiser, light| {
        let bench = Bench { digitiser, ..Bench::default() };
        both_as_text(&bench.record(8.0, light, &mut Chance::seeded(3)), &Style::default())
    };
    let usual = Digitiser::default();
    let lines: Vec<&str> = good.lines().collect();
    let unequal =
        [lines.get(..700).context("lines")?, lines.get(705..).context("lines")?].concat().join("\n");
    let (before, _) = lines.get(900).and_then(|line| line.rsplit_once(',')).context("a line of numbers")?;
    let no_number = format!("{before},NaN");
    let mut nan = lines.clone();
    *nan.get_mut(900).context("lines")? = &no_number;
    let bytes: Vec<u8> = (0..=255).cycle().take(4000).collect();
    Ok([
        ("no pulse.csv", of(usual, 1e-6).into_bytes(), "no pulse"),
        ("clipped.csv", of(Digitiser { full_scale: 0.4, ..usual }, 1.0).into_bytes(), "clipped: from sample"),
        ("ends.csv", of(Digitiser { samples: 640, ..usual }, 1.0).into_bytes(), "sample"),
        ("late.csv", of(Digitiser { start: 1.0, ..usual }, 1.0).into_bytes(), "sample"),
        ("unequal.csv", unequal.into_bytes(), "line 701"),
        ("nan.csv", nan.join("\n").into_bytes(), "line 901"),
        ("binary.csv", bytes, "binary file"),
    ])
}

/// Chooses a file that is good and all that are bad, whatever language is spoken.
///
/// # Errors
/// When there is no place for them.
pub(crate) fn choose_bad(page: &Page) -> Result<()> {
    let mut files = vec![page.home.write("A 1000mm.csv", good().as_bytes())?];
    for (name, bytes, _) in bad()? {
        files.push(page.home.write(name, &bytes)?);
    }
    choose(page, &files)
}

/// Whatever is wrong with a file is told with its name and the place; the good ones count, and the page stays alive.
///
/// # Errors
/// When it is otherwise.
pub fn bad_traces_are_named(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    describe_rail(&page)?;
    choose_bad(&page)?;
    page.reads(STATUS, "8 files")?;
    page.click("Measure all")?;
    page.reads(STATUS, "measured")?;
    let told = page.text(REFUSED)?;
    ensure!(page.text(STATUS)?.starts_with("1 position was measured"), "all it refuses is {told:?}");
    for (name, _, words) in bad()? {
        let line = told.lines().find(|line| line.contains(name));
        ensure!(line.is_some_and(|line| line.contains(words)), "of {name} it says {line:?} in {told:?}");
    }
    page.sees(names::ROWS_USED, &names::rows_used(1, 1))?;

    // One that says it has a gigabyte is not even read.
    let huge = "const file = new File([arguments[0]], 'huge.csv');
        Object.defineProperty(file, 'size', { value: 2 ** 30 });
        const list = [file, new File([arguments[0]], 'A 2000mm.csv')];
        Object.defineProperty(document.querySelector('#trace-files'), 'files', { value: list, configurable: true });
        return []";
    page.browser.run(
        &format!("(function () {{ {huge} }})(...arguments); document.querySelector('{FILES}').dispatchEvent(new Event('change')); \
                  delete document.querySelector('{FILES}').files"),
        vec![json!(good())],
    )?;
    page.reads(STATUS, "2 files")?;
    page.click("Measure all")?;
    page.reads(STATUS, "positions were measured")?;
    page.reads(REFUSED, "huge.csv: this file is larger than 64 MB")?;
    page.sees(names::ROWS_USED, &names::rows_used(2, 2))?;

    // Ten thousand files are too many, and none is looked at.
    give(&page, "return [...Array(10000).keys()].map((n) => new File(['1'], `${n} mm.csv`))", vec![])?;
    page.reads(REFUSED, "10000 files are more than the limit of 2000")?;
    page.sees(names::ROWS_USED, &names::rows_used(2, 2))?;
    page.fill("Title of the notebook", "Alive")?;
    page.sees(names::TITLE, "Alive")?;
    page.is_saved()?;
    page.is_silent()
}
