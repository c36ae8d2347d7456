//! The pictures of the help pages and of the first page of the repository, taken of the real page on its demos.

use std::fs;
use std::path::Path;
use std::thread::sleep;
use std::time::Duration;

use anyhow::{Context, Result};
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use serde_json::{Value, json};

use crate::home::Home;
use crate::languages::speak;
use crate::page::{Page, eventually};
use crate::stage::Stage;

/// How wide the page is when a picture is taken; a section is then as wide as a picture in the help.
const WIDTH: u32 = 800;
/// How tall it is.
const HEIGHT: u32 = 2000;
/// Of the WebP pictures, in per cent: letters stay sharp, and a picture stays below 20 KB.
const QUALITY: u32 = 27;

/// How long a part of the page has stayed where it is when it has settled.
const SETTLING: Duration = Duration::from_millis(400);

/// A picture: its name, the demo it is taken of, and what it shows, from the top of one element to the end of another or to
/// a greatest height.
struct Picture {
    name: &'static str,
    demo: &'static str,
    from: &'static str,
    most: f64,
    /// Whether it shows no word of the page.
    wordless: bool,
}

impl Picture {
    /// The file of its demo, in a language.
    fn demo(&self, language: &str) -> String {
        format!("{}.{language}.{}", self.demo, if self.demo == TYPED { "json" } else { "zip" })
    }

    /// What it is called, in a language; one without words serves all.
    fn file(&self, language: &str) -> String {
        if self.wordless { format!("{}.webp", self.name) } else { format!("{language}-{}.webp", self.name) }
    }
}

/// The typed demo.
const TYPED: &str = "typed-readings";

/// The pictures that the help names.
const PICTURES: [Picture; 6] = [
    Picture { name: "apparatus", demo: TYPED, from: "#bench-figure", most: 320.0, wordless: false },
    Picture {
        name: "readings",
        demo: TYPED,
        from: ".table-box:has(> #readings-table)",
        most: 285.0,
        wordless: false,
    },
    Picture { name: "line", demo: TYPED, from: "#line-figure", most: 560.0, wordless: false },
    Picture { name: "budget", demo: TYPED, from: "#budget-table", most: 300.0, wordless: false },
    Picture {
        name: "photographs",
        demo: "photographs",
        from: "#pictures .board",
        most: 560.0,
        wordless: true,
    },
    Picture { name: "traces", demo: "traces", from: "#traces-plot", most: 420.0, wordless: false },
];

/// Where an element is on the whole page.
const BOX: &str = "
    const node = document.querySelector(arguments[0]);
    if (!node) return null;
    if (node.checkVisibility()) node.scrollIntoView();
    const { left, top, width, height } = node.getBoundingClientRect();
    return { x: left + scrollX, y: top + scrollY, width, height };";

/// Takes all pictures in a language into a folder.
///
/// # Errors
/// When the page does not open, or shows no such part.
pub fn take(stage: &Stage, language: &str, folder: &Path) -> Result<()> {
    fs::create_dir_all(folder)?;
    for picture in &PICTURES {
        let page = stage.page_at(&stage.address, Home::new()?)?;
        speak(&page, language)?;
        let bytes = taken(stage, &page, picture, language)
            .with_context(|| format!("the picture {}", picture.name))?;
        let path = folder.join(picture.file(language));
        fs::write(&path, &bytes).with_context(|| format!("could not write {}", path.display()))?;
        println!("{}: {} bytes", path.display(), bytes.len());
    }
    Ok(())
}

/// Takes the picture of the open notebook, the readings beside the line, into a PNG file.
///
/// # Errors
/// When the page does not open, or the file can't be written.
pub fn take_open_notebook(stage: &Stage, file: &Path) -> Result<()> {
    let page = stage.page_at(&stage.address, Home::new()?)?;
    let size = json!({ "width": 1366, "height": 768, "deviceScaleFactor": 1, "mobile": false });
    page.browser.debug("Emulation.setDeviceMetricsOverride", &size)?;
    page.browser.debug("Emulation.setScrollbarsHidden", &json!({ "hidden": true }))?;
    page.wear("light")?;
    open(&page, &stage.dist.join("demo").join(format!("{TYPED}.en.json")))?;
    page.turn_to("#readings")?;
    page.browser.run("scrollTo(0, 0)", vec![])?;
    sleep(SETTLING);
    let answer = page.browser.debug("Page.captureScreenshot", &json!({ "format": "png" }))?;
    let bytes = STANDARD.decode(answer["data"].as_str().context("no picture came back")?)?;
    fs::write(file, bytes).with_context(|| format!("could not write {}", file.display()))
}

/// Opens a file, and sends away what is told of it, which lies over the page.
fn open(page: &Page, file: &Path) -> Result<()> {
    page.open_file(file)?;
    eventually("it is told", || page.count(".told-box"), |told| *told == 1)?;
    page.browser.run("document.querySelector('.told-box .quiet').click()", vec![])?;
    Ok(())
}

fn taken(stage: &Stage, page: &Page, picture: &Picture, language: &str) -> Result<Vec<u8>> {
    let size = json!({ "width": WIDTH, "height": HEIGHT, "deviceScaleFactor": 1, "mobile": false });
    page.browser.debug("Emulation.setDeviceMetricsOverride", &size)?;
    page.browser.debug("Emulation.setScrollbarsHidden", &json!({ "hidden": true }))?;
    page.wear("light")?;
    open(page, &stage.dist.join("demo").join(picture.demo(language)))?;
    let place = || {
        if page.count(picture.from)? > 0 {
            page.turn_to(picture.from)?;
        }
        page.browser.run(BOX, vec![json!(picture.from)])
    };
    let twice = || {
        let before = place()?;
        sleep(SETTLING);
        Ok((before, place()?))
    };
    let is_large = |place: &Value| place["height"].as_f64().is_some_and(|height| height > 100.0);
    let (shown, _) = eventually("it is shown and stays where it is", twice, |(before, after)| {
        before == after && is_large(after)
    })?;
    let height = shown["height"].as_f64().unwrap_or_default().min(picture.most);
    let clip =
        json!({ "x": shown["x"], "y": shown["y"], "width": shown["width"], "height": height, "scale": 1 });
    let asked = json!({ "format": "webp", "quality": QUALITY, "clip": clip });
    let answer = page.browser.debug("Page.captureScreenshot", &asked)?;
    without_profile(&STANDARD.decode(answer["data"].as_str().context("no picture came back")?)?)
}

/// A `WebP` picture without the colour profile that the browser writes into it (RFC 9649, 2.3 to 2.7): that says sRGB, which is what
/// a picture without one is taken for (from memory, CSS Color Module Level 4).
fn without_profile(picture: &[u8]) -> Result<Vec<u8>> {
    let mut left = picture.get(12..).context("no picture in WebP")?;
    let mut kept = b"WEBP".to_vec();
    while !left.is_empty() {
        let size = left.get(4..8).context("a chunk without its size")?;
        let size = usize::try_from(u32::from_le_bytes(size.try_into()?))?;
        // A chunk of odd length has a byte behind it.
        let (chunk, others) =
            left.split_at_checked(8 + size + size % 2).context("a chunk that is cut short")?;
        let start = kept.len();
        if !chunk.starts_with(b"ICCP") {
            kept.extend_from_slice(chunk);
        }
        if chunk.starts_with(b"VP8X")
            && let Some(flags) = kept.get_mut(start + 8)
        {
            *flags &= !0x20;
        }
        left = others;
    }
    let size = u32::try_from(kept.len())?.to_le_bytes();
    Ok([b"RIFF".as_slice(), &size, &kept].concat())
}
