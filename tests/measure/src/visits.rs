//! How long a person waits for the page, in a headless Chromium. Medians; the least stands on standard error.

use std::thread::sleep;
use std::time::{Duration, Instant};

use anyhow::{Context, Result, bail};
use page_tests::home::Home;
use page_tests::names;
use page_tests::page::Page;
use page_tests::stage::Stage;
use serde_json::Value;
use slope_bench::rails::Stop;
use slope_of_light::notebook::{Cell, Edit, write};
use slope_of_light::simulated::demo;

use crate::effort::Effort;
use crate::stage::stage;
use crate::timing::Times;

/// Edits timed.
const EDITS: usize = 40;

/// Edits before those that are timed: until then the browser compiles what runs often.
const WARMING: usize = 20;

/// Visits timed.
const VISITS: usize = 9;

/// Entries of a long log, and when they were made.
const ENTRIES: usize = 20_000;
const AT: &str = "2031-05-06T10:00:00Z";

/// Navigation to a usable table on the demo, the files in the browser's cache: from the start of the navigation to
/// the moment at which the page marks itself ready.
pub fn open_demo(effort: Effort) -> Result<f64> {
    let stage = stage()?;
    let page = stage.page()?;
    Ok(told("open_demo_ms", &until_ready(&page, effort)?))
}

/// The same on a notebook that this browser keeps, of a log of 20,000 entries: the demo's, and edges read over and over.
pub fn open_20000_edits(effort: Effort) -> Result<f64> {
    const TITLE: &str = "Twenty thousand entries";
    let (mut notebook, _) = demo::typed_readings()?;
    notebook.apply(Edit::SetTitle(TITLE.to_owned()), AT)?;
    let edges = notebook.state().rows.iter().map(|row| (row.id, row.text(Cell::EdgeB).to_owned()));
    let edges: Vec<(u32, String)> = edges.collect();
    let more = ENTRIES - notebook.log().len();
    for (row, text) in edges.into_iter().cycle().take(more) {
        notebook.apply(Edit::SetCell { row, cell: Cell::EdgeB, text }, AT)?;
    }
    let stage = stage()?;
    let home = Home::new()?;
    let file = home.write("twenty-thousand.json", write(&notebook).as_bytes())?;
    let page = stage.page_at(&stage.address, home)?;
    page.open_file(&file)?;
    page.sees(names::TITLE, TITLE)?;
    page.is_saved()?;
    let times = until_ready(&page, effort)?;
    page.sees(names::TITLE, TITLE)?;
    Ok(told("open_20000_edits_ms", &times))
}

/// From the start of a visit to the moment at which the page marks itself ready, visit after visit.
fn until_ready(page: &Page, effort: Effort) -> Result<Times> {
    let mut times = Vec::new();
    for _ in 0..effort.of(VISITS, 1) {
        page.reload()?;
        let ready = wait_for(page, "return performance.getEntriesByName('ready')[0]?.startTime ?? null")?;
        times.push(ready.as_f64().context("the page did not mark itself ready")?);
    }
    Ok(Times::of(times))
}

/// An edit in a notebook of 200 rows: from the input event to the first task after the frame in which both plots
/// were drawn and the page was laid out and painted, the wait for that frame included. The work in it, without the
/// wait, stands on standard error.
pub fn edit_200_rows(effort: Effort) -> Result<f64> {
    let stage = stage()?;
    let page = of_200_rows(&stage)?;
    // A plot that is out of sight is not drawn; one that is drawn is cleared first.
    let prepare = "
        const { prototype } = CanvasRenderingContext2D;
        const { clearRect } = prototype;
        window.drawn = new Set();
        prototype.clearRect = function (...place) {
          window.drawn.add(this.canvas.id);
          return clearRect.apply(this, place);
        };
        document.querySelector('#line').scrollIntoView();";
    page.browser.run(prepare, vec![])?;
    sleep(Duration::from_millis(500));
    let (mut waits, mut works) = (Vec::new(), Vec::new());
    let (warming, edits) = effort.of((WARMING, EDITS), (0, 1));
    for place in 0..warming + edits {
        let script = "
            const cells = document.querySelectorAll('input[id^=cell-][id$=-edge_b]');
            const cell = cells[(arguments[0] * 7) % 200];
            window.times = null;
            window.drawn.clear();
            cell.focus({ preventScroll: true });
            cell.value = (Number(cell.value) + 0.001).toFixed(3);
            let frame = 0;
            requestAnimationFrame(() => { frame = performance.now(); });
            const start = performance.now();
            cell.dispatchEvent(new Event('input', { bubbles: true }));
            cell.dispatchEvent(new Event('change', { bubbles: true }));
            let handled = 0;
            // After what the page does once these events are over.
            queueMicrotask(() => { handled = performance.now(); });
            requestAnimationFrame(() => {
              const { port1, port2 } = new MessageChannel();
              port1.onmessage = () => {
                const end = performance.now();
                const plots = ['line-plot', 'residual-plot'].every((id) => window.drawn.has(id));
                window.times = plots ? [end - start, handled - start + end - frame] : [];
              };
              port2.postMessage(null);
            });";
        page.browser.run(script, vec![Value::from(place)])?;
        let times = wait_for(&page, "return window.times")?;
        let time =
            |which: usize| times.get(which).and_then(Value::as_f64).context("the plots were not drawn");
        let (wait, work) = (time(0)?, time(1)?);
        if place >= warming {
            waits.push(wait);
            works.push(work);
        }
    }
    told("edit_200_rows_ms, the work alone", &Times::of(works));
    Ok(told("edit_200_rows_ms", &Times::of(waits)))
}

/// An edit of the demo until it is shown as saved.
pub fn save_edit(effort: Effort) -> Result<f64> {
    let stage = stage()?;
    let page = stage.page()?;
    let mut times = Vec::new();
    for place in 0..effort.of(EDITS, 1) {
        let script = "
            const saved = document.querySelector('#saved');
            const cell = document.querySelectorAll('input[id^=cell-][id$=-edge_b]')[arguments[0] % 20];
            window.worked = null;
            const start = performance.now();
            new MutationObserver((_, watch) => {
              if (saved.textContent !== 'Saved') return;
              watch.disconnect();
              window.worked = performance.now() - start;
            }).observe(saved, { childList: true, characterData: true, subtree: true });
            cell.focus({ preventScroll: true });
            cell.value = (Number(cell.value) + 0.001).toFixed(3);
            cell.dispatchEvent(new Event('input', { bubbles: true }));
            cell.dispatchEvent(new Event('change', { bubbles: true }));";
        page.browser.run(script, vec![Value::from(place)])?;
        times.push(wait_for(&page, "return window.worked")?.as_f64().context("no time")?);
    }
    Ok(told("save_edit_ms", &Times::of(times)))
}

/// The bundle of the demo, from the click to the file being handed to the browser.
pub fn bundle(effort: Effort) -> Result<f64> {
    let stage = stage()?;
    let page = stage.page()?;
    let mut times = Vec::new();
    // The worker that packs it, and the words of tables and report, are there from the second bundle on.
    for place in 0..=effort.of(VISITS, 1) {
        let script = "
            window.worked = null;
            const start = performance.now();
            const { prototype } = HTMLAnchorElement;
            const { click } = prototype;
            prototype.click = function () {
              if (this.download !== '') window.worked = performance.now() - start;
              prototype.click = click;
            };
            document.querySelector('#take-bundle').click();";
        page.browser.run(script, vec![])?;
        let worked = wait_for(&page, "return window.worked")?.as_f64().context("no time")?;
        if place > 0 {
            times.push(worked);
        }
    }
    Ok(told("bundle_ms", &Times::of(times)))
}

/// The page with the bench of the demo, read at 200 stops.
pub fn of_200_rows(stage: &Stage) -> Result<Page<'_>> {
    let mut bench = demo::bench();
    let stop = |at: u32| Stop { rail: 0, aim: 0.06 + 0.009 * f64::from(at), time_base: 1.0 };
    bench.rig.stops = (0..200).map(stop).collect();
    let (notebook, _) = bench.run(demo::SEED)?;
    let home = Home::new()?;
    let file = home.write("two-hundred.json", write(&notebook).as_bytes())?;
    let page = stage.page_at(&stage.address, home)?;
    page.open_file(&file)?;
    let rows = "return document.querySelectorAll('input[id^=cell-][id$=-edge_b]').length >= 200 || null";
    wait_for(&page, rows)?;
    Ok(page)
}

/// Asks the page until it answers with something.
fn wait_for(page: &Page, script: &str) -> Result<Value> {
    let begun = Instant::now();
    loop {
        let answer = page.browser.run(script, vec![])?;
        if !answer.is_null() {
            return Ok(answer);
        }
        if begun.elapsed() > Duration::from_secs(20) {
            bail!("the page did not answer: {script}");
        }
        sleep(Duration::from_millis(10));
    }
}

fn told(name: &str, times: &Times) -> f64 {
    eprintln!("  {name}: {} times, median {:.1}, least {:.1}", times.count(), times.median(), times.least());
    times.median()
}
