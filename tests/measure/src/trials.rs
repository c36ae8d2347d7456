//! Monte Carlo on the page, in a headless Chromium on all cores, beside numpy on as many threads.
//!
//! The same bench: 24 rows with errors in both variables, every reading redrawn and the line fitted again, a million
//! times. The page's time is from pressing the button to the result being shown: starting the workers, sorting,
//! summarising and drawing are in it. numpy's is the drawing and fitting alone (`peers.py monte_carlo`).

use std::time::{Duration, Instant};

use anyhow::{Context, Result, bail, ensure};
use litemap::LiteMap;
use measured::lines::rows_24;
use page_tests::home::Home;
use serde_json::Value;
use slope_of_light::line::{Data, Noise};
use slope_of_light::notebook::{Cell, Edit, Notebook, TrialPlan, write};

use crate::effort::Effort;
use crate::peers::Peers;
use crate::stage::stage;
use crate::timing::Times;

/// Trials in one run.
const TRIALS: u32 = 1_000_000;
/// Runs timed on the page, after one that is not.
const RUNS: usize = 5;

/// Trials a second on the page over trials a second in numpy.
///
/// # Errors
/// When either fails, or their standard deviations of the slope differ.
pub fn beside_numpy(peers: &Peers, effort: Effort) -> Result<f64> {
    let data = rows_24();
    let page = on_the_page(&data, effort)?;
    let cores = std::thread::available_parallelism()?.get();
    let peer = peers.monte_carlo(&data, TRIALS, cores)?;
    eprintln!(
        "  {TRIALS} trials: the page {:.0} ms (least {:.0}), numpy {:.0} ms (least {:.0}) on {cores} threads",
        page.median(),
        page.least(),
        peer.median_ms,
        peer.least_ms
    );
    Ok(peer.median_ms / page.median())
}

fn on_the_page(data: &Data, effort: Effort) -> Result<Times> {
    let stage = stage()?;
    let home = Home::new()?;
    let file = home.write("trials.json", write(&notebook(data)?).as_bytes())?;
    let page = stage.page_at(&stage.address, home)?;
    page.open_file(&file)?;
    let open = format!("return document.querySelector('#trials-number').value === '{TRIALS}' || null");
    wait(|| page.browser.run(&open, vec![]))?;
    let mut times = Vec::new();
    for run in 0..=effort.of(RUNS, 1) {
        let script = "
            const result = document.querySelector('#trials-result');
            window.took = null;
            result.hidden = true;
            const start = performance.now();
            new MutationObserver((_, watch) => {
              if (result.hidden) return;
              watch.disconnect();
              window.took = performance.now() - start;
            }).observe(result, { attributes: true });
            document.querySelector('#trials-start').click();";
        page.browser.run(script, vec![])?;
        let took = wait(|| page.browser.run("return window.took", vec![]))?;
        let verdict =
            page.browser.run("return document.querySelector('#trials-figures').textContent", vec![])?;
        ensure!(
            verdict.as_str().is_some_and(|text| text.contains("1\u{202f}000\u{202f}000")),
            "it says {verdict}"
        );
        if run > 0 {
            times.push(took.as_f64().context("no time")?);
        }
    }
    Ok(Times::of(times))
}

fn wait(mut answer: impl FnMut() -> Result<Value>) -> Result<Value> {
    let begun = Instant::now();
    while begun.elapsed() < Duration::from_mins(2) {
        let found = answer()?;
        if !found.is_null() {
            return Ok(found);
        }
        std::thread::sleep(Duration::from_millis(20));
    }
    bail!("the trials did not end")
}

/// The rows as a notebook with distances and delays given.
fn notebook(data: &Data) -> Result<Notebook> {
    let Noise::Stated(stated) = &data.noise else { bail!("the rows state no uncertainties") };
    let mut notebook = Notebook::new();
    let rows = data.x.iter().zip(&data.y).zip(stated.ux.iter().zip(&stated.uy));
    for (row, ((x, y), (ux, uy))) in (1..).zip(rows) {
        let cells = [
            (Cell::Distance, x),
            (Cell::DistanceUncertainty, ux),
            (Cell::Delay, y),
            (Cell::DelayUncertainty, uy),
        ];
        let cells: LiteMap<Cell, String> =
            cells.map(|(cell, value)| (cell, value.to_string())).into_iter().collect();
        notebook.apply(Edit::AddRow { row, after: None, cells }, "")?;
    }
    let plan = TrialPlan { seed: String::new(), wanted: TRIALS.to_string() };
    notebook.apply(Edit::SetTrials(plan), "")?;
    Ok(notebook)
}
