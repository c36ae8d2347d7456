//! The same fit in a browser's wasm, compiled as the page's, and natively.
//!
//! Short rounds of both alternate, so that a machine that is slower for a while is slower for both. Each round is as
//! many fits in one call as last 5 ms natively; the browser's clock counts tenths of a millisecond. Before the
//! rounds the browser has had a second to compile what runs often in its better way. In each round the sums of the
//! slopes must be the same number to the last bit.

use std::time::{Duration, Instant};

use anyhow::{Context, Result, ensure};
use measured::lines::{fit_many, rows_24, rows_200_shared};
use page_tests::driver::Browser;
use serde_json::{Value, json};
use slope_of_light::line::Data;
use tempfile::TempDir;

use crate::effort::Effort;
use crate::stage::{driver, told};
use crate::timing::Times;

/// Rounds timed.
const ROUNDS: usize = 301;
/// How long a round lasts natively.
const ROUND: Duration = Duration::from_millis(5);
/// How long the browser runs the fit before it is timed.
const WARMING: Duration = Duration::from_secs(1);

/// Time of the fit of 24 rows in the browser over its time natively: the median of the rounds. The same of the 200
/// rows with shared errors stands on standard error.
///
/// # Errors
/// When the browser does not start, or does not come to the same slope.
pub fn beside_native(effort: Effort) -> Result<f64> {
    let driver = driver()?;
    let home = TempDir::new()?;
    let browser = driver.browser(&home.path().join("profile"), &home.path().join("downloads"))?;
    let module = told("SLOPE_MEASURED")?;
    browser.go(&module)?;
    let load = "
        const wasm = new URL(arguments[0].replace('.js', '_bg.wasm'));
        return import(arguments[0]).then(async (fit) => {
          await fit.default({ module_or_path: wasm });
          window.fit = fit;
        });";
    browser.run(load, vec![json!(module)])?;
    let ratio = compare(&browser, "rows_24", &rows_24(), effort)?;
    compare(&browser, "rows_200_shared", &rows_200_shared(), effort)?;
    Ok(ratio)
}

fn compare(browser: &Browser, name: &str, data: &Data, effort: Effort) -> Result<f64> {
    let many = as_many_as_last(data, ROUND);
    let begun = Instant::now();
    while begun.elapsed() < WARMING {
        in_browser(browser, name, many)?;
    }
    let (mut natively, mut in_wasm, mut ratios) = (Vec::new(), Vec::new(), Vec::new());
    for _ in 0..effort.of(ROUNDS, 1) {
        let (native, sum) = here(data, many);
        let (wasm, same) = in_browser(browser, name, many)?;
        ensure!(sum.to_bits() == same.to_bits(), "the browser's slopes differ: {same}, natively {sum}");
        natively.push(native / f64::from(many));
        in_wasm.push(wasm / f64::from(many));
        ratios.push(wasm / native);
    }
    let (native, wasm, ratio) = (Times::of(natively), Times::of(in_wasm), Times::of(ratios).median());
    eprintln!(
        "  {name}: wasm median {:.2} µs, least {:.2} µs; native median {:.2} µs, least {:.2} µs; ratio {ratio:.2}, \
         of the least times {:.2}",
        wasm.median(),
        wasm.least(),
        native.median(),
        native.least(),
        wasm.least() / native.least()
    );
    Ok(ratio)
}

fn as_many_as_last(data: &Data, long: Duration) -> u32 {
    let mut many = 1;
    while here(data, many).0 < long.as_secs_f64() * 1e6 && many < u32::MAX / 2 {
        many *= 2;
    }
    many
}

/// Time of many fits natively, µs, and the sum of their slopes.
fn here(data: &Data, many: u32) -> (f64, f64) {
    let start = Instant::now();
    let sum = fit_many(data, many);
    (start.elapsed().as_secs_f64() * 1e6, sum)
}

/// Time of many fits in the browser, µs, and the sum of their slopes.
fn in_browser(browser: &Browser, name: &str, many: u32) -> Result<(f64, f64)> {
    // The sum comes as text: a reader of JSON may be off by its last bit.
    let script = "
        const [name, many] = arguments;
        const bench = window.fit.Bench[name]();
        const start = performance.now();
        const sum = bench.fit_many(many);
        const took = performance.now() - start;
        bench.free();
        return [took * 1000, String(sum)];";
    let answer = browser.run(script, vec![json!(name), json!(many)])?;
    let took = answer.get(0).and_then(Value::as_f64).context("no time")?;
    let sum = answer.get(1).and_then(Value::as_str).context("no sum")?;
    Ok((took, sum.parse()?))
}
