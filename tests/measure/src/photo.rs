//! How long a picture of 12 megapixels takes until it can be kept and its marks are proposed, in a headless Chromium.

use anyhow::{Context, Result, ensure};
use jpeg_encoder::{ColorType, Encoder};
use page_tests::page::Page;
use serde_json::{Value, json};
use slope_bench::screen::{Camera, Picture, PictureTruth, Shot, demo_series};

use crate::effort::Effort;
use crate::stage::parts;
use crate::timing::Times;

/// Pictures timed, after a first that also starts the worker.
const RUNS: usize = 9;
/// Of the JPEG, of 100.
const QUALITY: u8 = 90;
/// How far a proposed edge may lie off the true one, pixels of the kept picture.
const CLOSE: f64 = 6.0;

/// From the file, a JPEG of 4000 × 3000 pixels, to the picture that is kept and the marks proposed for it, ms.
///
/// # Errors
/// When the page does not do it, or proposes other marks.
pub fn ready(effort: Effort) -> Result<f64> {
    let stage = parts()?;
    let page = stage.page()?;
    let truth = hand_over(&page)?;
    let (mut times, mut shrinks) = (Vec::new(), Vec::new());
    for run in 0..=effort.of(RUNS, 1) {
        let script = "
            const { evidence } = window;
            const [file] = document.querySelector('#measured').files;
            const start = performance.now();
            return evidence.shrinkPicture(file).then(async (kept) => {
              const shrunk = performance.now();
              const { edges } = await evidence.propose(kept.blob, 10, 8);
              const end = performance.now();
              return { took: end - start, shrunk: shrunk - start, width: kept.width, size: kept.blob.size, edges };
            });";
        let answer = page.browser.run(script, vec![])?;
        let number = |name: &str| answer.get(name).and_then(Value::as_f64).context("no time");
        is_right(&answer, &truth)?;
        if run == 0 {
            eprintln!(
                "  with the worker's start {:.0} ms; {:.0} bytes are kept",
                number("took")?,
                number("size")?
            );
        } else {
            times.push(number("took")?);
            shrinks.push(number("shrunk")?);
        }
    }
    let (times, shrinks) = (Times::of(times), Times::of(shrinks));
    eprintln!(
        "  {} times, median {:.0}, least {:.0}; of that until it is shrunk {:.0}, {:.0}",
        times.count(),
        times.median(),
        times.least(),
        shrinks.median(),
        shrinks.least()
    );
    Ok(times.median())
}

/// Puts the picture before the page as a file, with `EvidenceWorkers` to look at it; gives what is true of it.
///
/// # Errors
/// When it can't be drawn, or the page does not take it.
fn hand_over(page: &Page) -> Result<PictureTruth> {
    let (drawn, truth) = picture()?;
    let jpeg = encoded(&drawn)?;
    eprintln!("  a JPEG of {:.1} MB", jpeg.len() as f64 / 1e6);
    let file = page.home.write("screen.jpg", &jpeg)?;
    let input = "
        const input = document.createElement('input');
        Object.assign(input, { type: 'file', id: 'measured' });
        document.body.append(input);
        return input;";
    let input = page.browser.element(input, vec![])?.context("no input for a file")?;
    page.browser.choose_file(&input, &file)?;
    let load = "return import('/evidence.js').then(({ EvidenceWorkers }) => { window.evidence = new EvidenceWorkers(); })";
    page.browser.run(load, vec![])?;
    Ok(truth)
}

/// A picture of 12 megapixels, and what is true of it.
///
/// # Errors
/// When the bench has none.
pub fn picture() -> Result<(Picture, PictureTruth)> {
    let shots = demo_series(12, &[Shot { delay: 20.0, time_base: 5.0 }]);
    let (screen, camera, _) = shots.into_iter().next().context("no picture")?;
    let camera = Camera { width: 4000, height: 3000, blur: 1.5, ..camera };
    Ok((camera.photograph(&screen, 12), camera.truth(&screen)))
}

/// A picture as a camera keeps it.
///
/// # Errors
/// When it is too large for a JPEG.
pub fn encoded(picture: &Picture) -> Result<Vec<u8>> {
    let mut jpeg = Vec::new();
    let (width, height) = (u16::try_from(picture.width)?, u16::try_from(picture.height)?);
    Encoder::new(&mut jpeg, QUALITY).encode(&picture.rgba, width, height, ColorType::Rgba)?;
    Ok(jpeg)
}

fn is_right(answer: &Value, truth: &PictureTruth) -> Result<()> {
    let width = answer.get("width").and_then(Value::as_f64).context("no width")?;
    for (edge, real) in truth.edges.iter().enumerate() {
        let at = |axis: &str| answer.pointer(&format!("/edges/{edge}/at/{axis}")).and_then(Value::as_f64);
        let place =
            at("x").zip(at("y")).with_context(|| format!("no edge is proposed: {}", json!(answer)))?;
        let scale = width / 4000.0;
        let off = (place.0 - real.x * scale).abs();
        ensure!(off < CLOSE, "edge {edge} is proposed {off:.1} pixels off the true one");
    }
    Ok(())
}
