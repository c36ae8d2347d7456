//! Delays of 500 pairs of traces in a headless Chromium, beside pandas and numpy on the same bytes or samples, in one
//! run: ours before the peer and after it. The row is the ratio of the medians, peer to ours; the least times stand on
//! standard error. What either finds must lie near the true delays.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result, ensure};
use measured::traces::{SAMPLES, Traces, recording, true_delay};
use page_tests::driver::Browser;
use page_tests::home::Home;
use serde_json::{Value, json};
use slope_bench::record::{Style, as_text};
use tempfile::TempDir;

use crate::effort::Effort;
use crate::peers::{Delays, Peers};
use crate::stage::{driver, parts, told};
use crate::timing::Times;

/// How much is measured.
#[derive(Clone, Copy)]
struct Work {
    /// Pairs measured.
    pairs: usize,
    /// Pairs of files that differ; the others are these over again.
    different: usize,
    /// Runs before the peer's and as many after, each time after one that is not counted.
    runs: usize,
}

/// For a figure.
const FULL: Work = Work { pairs: 500, different: 10, runs: 3 };
/// Where once is enough.
const LEAST: Work = Work { pairs: 4, different: 2, runs: 1 };
/// How far the median of a way's errors may lie off, ns: a sample. It would show a delay of something else.
const CLOSE: f64 = 0.1;

/// From the bytes of 1,000 files (two columns, 10,000 rows) to 500 delays with uncertainties: ours by the evidence wasm
/// in workers that have the bytes already, with everything that it says of a pair; the peer by one constant fraction, on
/// as many threads, or processes that have the bytes already, whichever is quicker. What the page itself takes, which
/// also has the browser read the files and hash them, stands on standard error.
///
/// # Errors
/// When either fails, or finds other delays.
pub fn of_files(peers: &Peers, effort: Effort) -> Result<f64> {
    let work = effort.of(FULL, LEAST);
    let folder = TempDir::new()?;
    let mut files = Vec::new();
    for pair in 0..work.different {
        let recording = recording(pair);
        for channel in 0..2 {
            let file = folder.path().join(format!("pair-{pair}-{}.csv", ["A", "B"][channel]));
            fs::write(&file, as_text(&recording, channel, &Style::default()))?;
            files.push(file);
        }
    }
    let stage = parts()?;
    let page = stage.page_at(&stage.address, Home::new()?)?;
    hand_over(&page.browser, &files)?;
    let workers = page.browser.run("return Math.min(navigator.hardwareConcurrency, 4)", vec![])?;
    let workers = usize::try_from(workers.as_u64().context("no workers")?)?;
    let (by_page, _) = repeated(work, || by_page(&page.browser, work))?;
    let by_page = Times::of(by_page);
    eprintln!(
        "  ours with reading and hashing, as the page does: median {:.1} ms, least {:.1} ms",
        by_page.median(),
        by_page.least()
    );
    start_workers(&page.browser, work, workers)?;
    let ours = || repeated(work, || in_workers(&page.browser));
    let problem = json!({ "files": files.chunks(2).collect::<Vec<_>>(), "pairs": work.pairs });
    beside(
        work,
        &format!("{workers} workers"),
        ours,
        || peers.delays("traces", workers, &problem),
        |pair| true_delay(pair % work.different),
    )
}

/// The same from samples in memory by cross-correlation, both on one thread: ours in wasm compiled as the evidence
/// worker's, with its least squares and uncertainty; the peer by FFT and a parabola.
///
/// # Errors
/// When either fails, or finds other delays.
pub fn by_correlation(peers: &Peers, effort: Effort) -> Result<f64> {
    let work = effort.of(FULL, LEAST);
    let traces = Traces::drawn(work.pairs);
    let folder = TempDir::new()?;
    let file = folder.path().join("samples.f64");
    fs::write(&file, traces.samples().flat_map(f64::to_le_bytes).collect::<Vec<u8>>())?;
    let driver = driver()?;
    let browser = driver.browser(&folder.path().join("profile"), &folder.path().join("downloads"))?;
    let module = told("SLOPE_MEASURED")?;
    browser.go(&module)?;
    let load = "
        const [address, pairs] = arguments;
        return import(address).then(async (fit) => {
          await fit.default({ module_or_path: new URL(address.replace('.js', '_bg.wasm')) });
          window.traces = fit.Traces.drawn(pairs);
        });";
    browser.run(load, vec![json!(module), json!(work.pairs)])?;
    let natively = traces.delays();
    let ours = || {
        repeated(work, || {
            let found = in_wasm(&browser)?;
            let same = found.1.iter().zip(&natively).all(|(one, other)| one.to_bits() == other.to_bits());
            ensure!(
                same && found.1.len() == work.pairs,
                "the browser's delays differ from those found natively"
            );
            Ok(found)
        })
    };
    let step = recording(0).step;
    let problem = json!({ "file": file, "pairs": work.pairs, "samples": SAMPLES, "step": step });
    beside(work, "one thread", ours, || peers.delays("correlation", 1, &problem), true_delay)
}

fn beside(
    work: Work,
    by: &str,
    ours: impl Fn() -> Result<(Vec<f64>, Vec<f64>)>,
    peer: impl Fn() -> Result<Delays>,
    truth: impl Fn(usize) -> f64,
) -> Result<f64> {
    let (mut times, delays) = ours()?;
    let peer = peer()?;
    times.extend(ours()?.0);
    let times = Times::of(times);
    for (whose, delays) in [("ours", &delays), ("the peer's", &peer.delays)] {
        ensure!(delays.len() == work.pairs, "{whose} delays are {}", delays.len());
        let off =
            Times::of(delays.iter().enumerate().map(|(pair, delay)| (delay - truth(pair)).abs()).collect());
        eprintln!("  {whose} delays lie off by {:.4} ns (median)", off.median());
        ensure!(off.median() < CLOSE, "{whose} delays are not the true ones");
    }
    for (way, took) in &peer.ways {
        eprintln!("  peer, {way}: median {:.1} ms, least {:.1} ms", took.median_ms, took.least_ms);
    }
    let (_, quickest) = peer.quickest().context("the peer measured nothing")?;
    eprintln!(
        "  ours, {by}: median {:.1} ms, least {:.1} ms of {}; ratio of the least times {:.2}",
        times.median(),
        times.least(),
        times.count(),
        quickest.least_ms / times.least()
    );
    Ok(quickest.median_ms / times.median())
}

/// Runs the work once without counting it, and then some times; gives the times and the last delays.
fn repeated(work: Work, run: impl Fn() -> Result<(f64, Vec<f64>)>) -> Result<(Vec<f64>, Vec<f64>)> {
    let mut delays = run()?.1;
    let mut times = Vec::new();
    for _ in 0..work.runs {
        let (took, found) = run()?;
        times.push(took);
        delays = found;
    }
    Ok((times, delays))
}

/// The files as blobs in the page's memory.
fn hand_over(browser: &Browser, files: &[PathBuf]) -> Result<()> {
    let input = "
        const input = document.createElement('input');
        Object.assign(input, { type: 'file', multiple: true, id: 'measured' });
        document.body.append(input);
        return input;";
    let input = browser.element(input, vec![])?.context("no input for files")?;
    let list: Vec<_> = files.iter().map(|file| file.to_string_lossy()).collect();
    browser.choose_file(&input, Path::new(&list.join("\n")))?;
    let read = "
        const { files } = document.querySelector('#measured');
        return Promise.all([...files].map(async (file) => new Blob([await file.arrayBuffer()])))
          .then((blobs) => { window.blobs = blobs; return blobs.length; });";
    let count = browser.run(read, vec![])?;
    ensure!(count.as_u64() == u64::try_from(files.len()).ok(), "the page holds {count} files");
    Ok(())
}

/// Has so many workers ready, each with the evidence wasm and a share of the pairs' bytes.
fn start_workers(browser: &Browser, work: Work, workers: usize) -> Result<()> {
    let script = "
        const [all, count] = arguments;
        const body = `
          import start, { Reading } from '${location.origin}/slope_worker.js';
          const files = [];
          const delay = (pair) => {
            const reading = new Reading('point');
            for (const file of pair) reading.add('trace.csv', files[file], undefined, '');
            const asked = { level: null, fraction: 0.5, points: 0 };
            const { delay, uncertainty } = reading.measure(asked).outcomes.find(({ estimator }) => estimator === 'constant_fraction')?.delay ?? {};
            reading.free();
            return uncertainty > 0 ? String(delay) : 'NaN';
          };
          onmessage = ({ data: { bytes, pairs } }) => {
            if (pairs) return postMessage(pairs.map(delay));
            files.push(...bytes);
            start({ module_or_path: '${location.origin}/slope_worker_bg.wasm' }).then(() => postMessage(null));
          };`;
        const address = URL.createObjectURL(new Blob([body], { type: 'text/javascript' }));
        const { blobs } = window;
        return Promise.all(blobs.map(async (blob) => new Uint8Array(await blob.arrayBuffer()))).then((bytes) => {
          const share = Math.ceil(all / count);
          const some = (of) => Array.from({ length: Math.min(share, all - of * share) }, (_, place) => of * share + place);
          const pairs = (of) => some(of).map((pair) => [0, 1].map((side) => (2 * pair + side) % bytes.length));
          const lanes = Array.from({ length: count }, (_, of) => {
            const worker = new Worker(address, { type: 'module' });
            const ask = (data) => new Promise((resolve, reject) => {
              worker.onmessage = ({ data: answer }) => resolve(answer);
              worker.onerror = ({ message }) => reject(new Error(message));
              worker.postMessage(data);
            });
            return { begun: ask({ bytes }), work: () => ask({ pairs: pairs(of) }) };
          });
          window.lanes = lanes;
          return Promise.all(lanes.map(({ begun }) => begun)).then(() => true);
        });";
    let begun = browser.run(script, vec![json!(work.pairs), json!(workers)])?;
    ensure!(begun == json!(true), "the workers did not start");
    Ok(())
}

/// Time of all pairs in those workers, ms, and the delays by constant fraction.
fn in_workers(browser: &Browser) -> Result<(f64, Vec<f64>)> {
    let script = "
        const start = performance.now();
        return Promise.all(window.lanes.map(({ work }) => work()))
          .then((delays) => [performance.now() - start, delays.flat()]);";
    found(&browser.run(script, vec![])?)
}

/// Time of all pairs by the page itself, from its files, ms, and the delays by constant fraction.
fn by_page(browser: &Browser, work: Work) -> Result<(f64, Vec<f64>)> {
    let script = "
        const [all] = arguments;
        const { blobs } = window;
        const file = (place, name) => ({ file: new File([blobs[place % blobs.length]], name) });
        const pairs = Array.from({ length: all }, (_, pair) => (
          [file(2 * pair, `${pair}-A.csv`), file(2 * pair + 1, `${pair}-B.csv`)]));
        return import('/evidence.js').then(async ({ EvidenceWorkers }) => {
          const evidence = new EvidenceWorkers();
          const delays = Array(all).fill('NaN');
          const start = performance.now();
          await evidence.batch(pairs, { level: null, fraction: 0.5, points: 0, decimal: 'point' }, ({ index, found }) => {
            const { delay, uncertainty } = found?.measured.outcomes.find(({ estimator }) => estimator === 'constant_fraction')?.delay ?? {};
            if (uncertainty > 0) delays[index] = String(delay);
          });
          return [performance.now() - start, delays];
        });";
    found(&browser.run(script, vec![json!(work.pairs)])?)
}

/// Time of all pairs in the browser's wasm, ms, and the delays by cross-correlation.
fn in_wasm(browser: &Browser) -> Result<(f64, Vec<f64>)> {
    let script = "
        const start = performance.now();
        const delays = window.traces.delays();
        return [performance.now() - start, Array.from(delays, String)];";
    found(&browser.run(script, vec![])?)
}

/// Numbers come as text: a reader of JSON may be off by the last bit.
fn found(answer: &Value) -> Result<(f64, Vec<f64>)> {
    let took = answer.get(0).and_then(Value::as_f64).context("no time")?;
    let texts = answer.get(1).and_then(Value::as_array).context("no delays")?;
    let delays = texts.iter().map(|text| Ok(text.as_str().context("no delay")?.parse()?));
    Ok((took, delays.collect::<Result<_>>()?))
}
