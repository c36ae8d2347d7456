//! A class of 1,000 bundles, read and recomputed and shown by the page in a headless Chromium, beside pandas and scipy on the
//! same files.

use std::path::{Path, PathBuf};
use std::thread::sleep;
use std::time::{Duration, Instant};

use anyhow::{Context, Result, ensure};
use page_tests::home::Home;
use page_tests::page::{Page, eventually};
use serde_json::{Value, json};
use slope_of_light::analysis::analyse;
use slope_of_light::bundle;
use slope_of_light::drawings::{ChartForm, charts};
use slope_of_light::notebook::{BenchField, Edit};
use slope_of_light::simulated::random;
use slope_of_light::view::view;
use slope_of_light::words::WordTable;

use crate::effort::Effort;
use crate::peers::Peers;
use crate::stage::{stage, told};
use crate::timing::Times;

/// Bundles handed in.
const BUNDLES: u64 = 1000;
/// Runs, after none that is not counted: each visit is the first.
const RUNS: usize = 3;
/// How long one may take.
const PATIENCE: Duration = Duration::from_mins(2);
/// How far the mean of the peer may lie from ours, in its standard uncertainties. Its fit leaves out what rows share.
const CLOSE: f64 = 5.0;

/// From choosing the files to a table with a row for each, s; on standard error, how long the page did not answer at
/// most.
///
/// # Errors
/// When the page does not read them all.
pub fn of_1000(effort: Effort) -> Result<f64> {
    let home = Home::new()?;
    let files = files(&home, effort)?;
    Ok(ours(&files, effort)?.median())
}

/// The time of the peer over ours: it unpacks the table of the line's rows from each file, fits the line with errors in
/// both variables, and takes the results together, in as many processes as there are cores.
///
/// # Errors
/// When either fails.
pub fn beside_scipy(peers: &Peers, effort: Effort) -> Result<f64> {
    let home = Home::new()?;
    let files = files(&home, effort)?;
    let ours = ours(&files, effort)?;
    let cores = std::thread::available_parallelism()?.get();
    let peer = peers.class(cores, &json!({ "files": files }))?;
    ensure!(peer.results == files.len(), "the peer has {} results", peer.results);
    ensure!(
        (peer.mean - 299_792_458.0).abs() < CLOSE * peer.u,
        "the peer's mean is {} with u = {}",
        peer.mean,
        peer.u
    );
    eprintln!(
        "  peer: median {:.2} s, least {:.2} s, in {cores} processes",
        peer.took.median_ms / 1e3,
        peer.took.least_ms / 1e3
    );
    Ok(peer.took.median_ms / 1e3 / ours.median())
}

/// Bundles as the page makes them, each of another bench.
fn files(home: &Home, effort: Effort) -> Result<Vec<PathBuf>> {
    let words = WordTable::english()?;
    let file = |seed: u64| {
        let (mut notebook, _) = random::bench(seed).run(seed)?;
        let text = format!("Student {seed}");
        notebook.apply(Edit::SetBench { field: BenchField::People, text }, "")?;
        let analysis = analyse(&notebook);
        let charts = charts(notebook.state(), &analysis, None, ChartForm::Svg, &words);
        let packed =
            bundle::of(&notebook, &analysis, &view(&notebook, &analysis), &charts, None, &words, Vec::new())?;
        home.write(&format!("{seed}.zip"), &packed)
    };
    (1..=effort.of(BUNDLES, 12)).map(file).collect()
}

fn ours(files: &[PathBuf], effort: Effort) -> Result<Times> {
    told("SLOPE_URL")?;
    let runs = (0..effort.of(RUNS, 1)).map(|_| one_run(files)).collect::<Result<Vec<f64>>>()?;
    let times = Times::of(runs);
    eprintln!("  ours: median {:.2} s, least {:.2} s of {}", times.median(), times.least(), times.count());
    Ok(times)
}

/// A first visit that reads them, s.
fn one_run(files: &[PathBuf]) -> Result<f64> {
    let stage = stage()?;
    let page = stage.page()?;
    page.turn_to("#class")?;
    let ready = "return document.querySelector('#class-choices')?.childElementCount > 0";
    eventually("the section is there", || page.browser.run(ready, vec![]), |ready| *ready == json!(true))?;
    let watch = "
        const all = arguments[0];
        const [state, body] = ['#class-state', '#class-table > tbody'].map((place) => document.querySelector(place));
        let last;
        window.longest = 0;
        document.querySelector('#class-files').addEventListener('change', () => {
          last = performance.now();
          window.begun = last;
        }, { capture: true });
        setInterval(() => {
          if (!window.begun || window.ended) return;
          const now = performance.now();
          window.longest = Math.max(window.longest, now - last);
          last = now;
          if (body.childElementCount === all && !document.querySelector('#class-result').hidden) window.ended = now;
        }, 10);";
    page.browser.run(watch, vec![json!(files.len())])?;
    let input = page.browser.element("return document.querySelector('#class-files')", vec![])?;
    let list: Vec<_> = files.iter().map(|file| file.to_string_lossy()).collect();
    page.browser.choose_file(&input.context("no input for files")?, Path::new(&list.join("\n")))?;
    let [took, longest] = ended(&page)?;
    let refused =
        page.browser.run("return document.querySelectorAll('#class-table .unread').length", vec![])?;
    ensure!(refused == json!(0), "{refused} were not read");
    eprintln!("  {:.2} s; the page did not answer for {longest:.0} ms at most", took / 1e3);
    Ok(took / 1e3)
}

fn ended(page: &Page) -> Result<[f64; 2]> {
    let begun = Instant::now();
    loop {
        let found = page.browser.run("return window.ended ? [ended - begun, longest] : null", vec![])?;
        if found != Value::Null {
            return Ok(serde_json::from_value(found)?);
        }
        ensure!(begun.elapsed() < PATIENCE, "not read: {}", page.text("#class-state")?);
        sleep(Duration::from_millis(250));
    }
}
