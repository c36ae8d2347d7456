//! Photographs of a screen: from files to c by accepting what is proposed, marks that are moved, pictures that are kept,
//! and files that are none.
//!
//! The screens are drawn by the simulated bench, whose delays are those of light in vacuum along the rail
//! (c = 299 792 458 m/s exactly: BIPM, The International System of Units, 9th edition, 2019, section 2.3).

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result, ensure};
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use fantoccini::key::Key;
use jpeg_encoder::{ColorType, Encoder};
use serde_json::{Value, json};

use slope_bench::screen::{Camera, Shot, demo_series};
use slope_of_light::analysis::analyse;
use slope_of_light::bundle;

use crate::access::{load_checker, unbroken};
use crate::bench::{C, describe_rail};
use crate::home::Home;
use crate::looks::is_drawn;
use crate::names;
use crate::page::{Page, eventually};
use crate::stage::Stage;

/// Where the carriage stood, mm.
const MARKS: [u32; 6] = [500, 1200, 1900, 2600, 3300, 4000];
/// Time base of every picture, ns a division.
pub(crate) const TIME_BASE: &str = "2";

/// Counts, from now on, the workers that are there and the decoded pictures that are held.
const WATCH: &str = "window.workers = 0;
    window.Worker = class extends Worker {
        constructor(...how) { super(...how); window.workers += 1; }
        terminate() { window.workers -= 1; super.terminate(); }
    };
    window.held = 0;
    const decode = window.createImageBitmap;
    window.createImageBitmap = (...what) => decode(...what).then((picture) => { window.held += 1; return picture; });
    const close = ImageBitmap.prototype.close;
    ImageBitmap.prototype.close = function () { window.held -= 1; close.call(this); };";

const FILES: &str = "#picture-files";
const ACCEPT: &str = "#picture-accept";
const COUNT: &str = "#picture-count";
const PROBLEM: &str = "#picture-problem";
pub(crate) const REFUSED: &str = "#picture-refused";
pub(crate) const SAID: &str = "#picture-said";
pub(crate) const DOUBT: &str = "#picture-doubt";
/// How far to the right a mark stands, pixels; nothing where there is none.
pub(crate) const PLACE: &str =
    "return Number(document.querySelector(`.spot[aria-label=\"${arguments[0]}\"]`)?.ariaValueNow ?? NaN)";
/// Puts the focus on a mark without moving it.
pub(crate) const FOCUS: &str = "document.querySelector(`.spot[aria-label=\"${arguments[0]}\"]`).focus()";
/// The open picture.
pub const BOARD: &str = ".board-picture";

/// A run of pictures gives c: the first row takes its time base, each after it one press; all is there after a
/// reload, in the bundle, and in another browser that opens the bundle.
///
/// # Errors
/// When it is otherwise.
pub fn pictures_give_c(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    describe_rail(&page)?;
    page.fill("Name used in the readings", "Hall")?;
    choose(&page, &series(&page.home, MARKS.len())?)?;
    is_proposed(&page, 0)?;
    ensure!(page.cell("Rail", 2)? == "Hall", "the rail in the file's name is not taken");
    page.fill("Time per division", TIME_BASE)?;
    look_and_accept(&page, &["Edge A", "Edge B"])?;
    for row in 1..MARKS.len() {
        is_proposed(&page, row)?;
        page.press(Key::Enter)?;
        marked(&page, row + 1)?;
    }
    page.sees(names::ROWS_USED, &names::rows_used(MARKS.len(), MARKS.len()))?;
    let result = page.result()?;
    choose(&page, &[picture(&page.home, 1, "the same.jpg")?])?;
    page.reads(REFUSED, "the same.jpg is already the photo of row 2")?;
    ensure!(page.count(names::ROWS)? == MARKS.len(), "the same picture counts twice");
    page.is_saved()?;
    page.reload()?;
    page.click("Show the photo of row 2")?;
    is_open(&page, 1)?;
    is_drawn(&page, BOARD)?;
    ensure!(page.result()? == result, "after a reload the result is another");
    ensure!(page.text("#picture-said")?.is_empty(), "of a marked picture it says something");

    page.click("Download bundle (.zip)")?;
    let (_, bytes) = page.downloaded()?;
    let contents = bundle::read(&bytes)?;
    let speed = analyse(&contents.notebook).speed.map_err(|refusal| anyhow::anyhow!(refusal.id))?;
    ensure!((speed.c / C - 1.0).abs() < 0.01, "the pictures give {} m/s", speed.c);
    ensure!(contents.kept.len() == MARKS.len(), "{} pictures in the bundle", contents.kept.len());
    page.is_silent()?;

    let other = stage.blank_page()?;
    other.open_file(&other.home.write("run.zip", &bytes)?)?;
    other.reads(names::MESSAGE, "is open")?;
    other.click("Show the photo of row 3")?;
    is_open(&other, 2)?;
    is_drawn(&other, BOARD)?;
    ensure!(other.result()? == result, "opened elsewhere the result is another");

    // The notebook alone, in a browser that never saw the pictures.
    let bare = stage.blank_page()?;
    bare.open_file(&bare.home.write("bare.json", contents.notebook_text.as_bytes())?)?;
    bare.reads(names::MESSAGE, "is open")?;
    bare.click("Show the photo of row 1")?;
    bare.reads("#picture-said", "is not kept in this browser")?;
    ensure!(bare.result()? == result, "without the pictures the result is another");
    Ok(())
}

/// A mark that was moved and is not accepted yet stands where it was put, when another photo was looked at meanwhile.
///
/// # Errors
/// When it is lost.
pub fn marks_wait_to_be_accepted(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    describe_rail(&page)?;
    choose(&page, &series(&page.home, 2)?)?;
    is_proposed(&page, 0)?;
    let place = || {
        page.browser.run("return document.querySelector('.spot.b').getAttribute('aria-valuetext')", vec![])
    };
    page.click("Edge B")?;
    let before = place()?;
    page.press(Key::Right)?;
    let moved = eventually("the mark has moved", place, |now| *now != before)?;
    page.click("Show the photo of row 2")?;
    is_proposed(&page, 1)?;
    page.click("Show the photo of row 1")?;
    is_proposed(&page, 0)?;
    eventually("the mark is where it was put", place, |now| *now == moved)?;
    page.is_silent()
}

/// Marks of the notebook can be moved: a corner moves every row of its series, an edge its own, and undo takes both
/// back. A repeat counts after it was moved.
///
/// # Errors
/// When it is otherwise.
pub fn marks_are_moved(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    describe_rail(&page)?;
    choose(&page, &series(&page.home, 3)?)?;
    is_proposed(&page, 0)?;
    page.fill("Time per division", TIME_BASE)?;
    // A move that nobody accepted yet is taken back on the spot.
    let place = "return document.querySelector('.spot.a').getAttribute('aria-valuetext')";
    page.click("Edge A")?;
    let before = page.browser.run(place, vec![])?;
    page.press(Key::Right)?;
    eventually("the mark has moved", || page.browser.run(place, vec![]), |now| *now != before)?;
    page.press_with_control('z')?;
    eventually("the mark is back", || page.browser.run(place, vec![]), |now| *now == before)?;
    // A finger has no arrow keys.
    page.browser.debug("Emulation.setTouchEmulationEnabled", &json!({ "enabled": true }))?;
    page.click("Right by one pixel")?;
    eventually("the mark was nudged", || page.browser.run(place, vec![]), |now| *now != before)?;
    page.press_with_control('z')?;
    eventually("it is back", || page.browser.run(place, vec![]), |now| *now == before)?;
    page.browser.debug("Emulation.setTouchEmulationEnabled", &json!({ "enabled": false }))?;
    look_and_accept(&page, &["Edge A", "Edge B"])?;
    for row in 1..3 {
        is_proposed(&page, row)?;
        page.press(Key::Enter)?;
        marked(&page, row + 1)?;
    }
    page.click("Show the photo of row 2")?;
    is_open(&page, 1)?;
    let delay = |row: usize| page.text(&format!("{}:nth-of-type({row}) td.output.delay", names::ROWS));
    let before = [delay(1)?, delay(2)?];
    let corner = || page.browser.run(PLACE, vec![json!("Upper right corner")]);
    let stood = corner()?;
    page.click("Upper right corner")?;
    page.browser.press(&[Key::Alt.into()], [Key::Left.into(), Key::Left.into(), Key::Left.into()])?;
    eventually(
        "all rows follow",
        || Ok([delay(1)?, delay(2)?]),
        |now| now[0] != before[0] && now[1] != before[1],
    )?;
    // The check on the side of that corner lies on no crossing any more.
    page.reads(SAID, "checks of the lens moved with the corners")?;
    // The checks have gone with each of the three moves, or with the last alone: that hangs on how fast the keys came.
    for _ in 0..6 {
        if corner()? == stood {
            break;
        }
        page.click("Undo")?;
        page.browser.run(names::TWO_FRAMES, vec![])?;
    }
    eventually("all rows are back", || Ok([delay(1)?, delay(2)?]), |now| *now == before)?;
    page.click("Edge B")?;
    page.browser.press(&[Key::Alt.into()], [Key::Left.into()])?;
    eventually("its row follows", || delay(2), |now| *now != before[1])?;
    ensure!(delay(1)? == before[0], "another row follows an edge too");
    page.click("Undo")?;
    eventually("its row is back", || delay(2), |now| *now == before[1])?;

    load_checker(&page)?;
    for scheme in ["light", "dark"] {
        page.wear(scheme)?;
        unbroken(&page).with_context(|| format!("beside a picture, {scheme}"))?;
    }

    page.click("Mark “Edge B” again")?;
    page.reads("#picture-said", "counts after it was moved")?;
    ensure!(delay(2)? == before[1], "a mark that was not moved counts");
    page.browser.press(&[Key::Alt.into()], [Key::Left.into(), Key::Right.into()])?;
    eventually("it counts", || delay(2), |now| *now != before[1])?;
    page.click("Remove the selected mark")?;
    eventually("it counts no more", || delay(2), |now| *now == before[1])?;
    page.is_silent()
}

/// Pictures can be looked at when the host can't be had any more, also after nobody has asked for a while; the one that is
/// open is there again when it comes back into sight.
///
/// # Errors
/// When it is otherwise.
pub fn pictures_rest(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    let brought = "return performance.getEntriesByType('resource')
        .filter(({ name, responseEnd }) => /slope_worker_bg|evidence-worker/.test(name) && responseEnd > 0).length";
    let parts = || page.browser.run(brought, vec![]);
    eventually("what workers need is brought", parts, |count| *count == json!(2))?;
    page.browser.debug("Network.enable", &json!({}))?;
    let cut = json!({ "offline": true, "latency": 0, "downloadThroughput": -1, "uploadThroughput": -1 });
    page.browser.debug("Network.emulateNetworkConditions", &cut)?;
    page.browser.run(WATCH, vec![])?;
    describe_rail(&page)?;
    choose(&page, &series(&page.home, 2)?)?;
    is_proposed(&page, 0)?;
    page.fill("Time per division", TIME_BASE)?;
    rests(&page)?;
    look_and_accept(&page, &["Edge A", "Edge B"])?;
    is_proposed(&page, 1)?;
    rests(&page)?;
    // The lens follows with the next frame, once the picture is back.
    let lens_of = |edge: &str| {
        page.click(edge)?;
        page.browser.run("return document.querySelector('.board-lens').toDataURL()", vec![])
    };
    let differ = || Ok(lens_of("Edge A")? != lens_of("Edge B")?);
    eventually("the lens shows either edge", differ, |differ| *differ)?;
    page.is_silent()
}

/// Leaves the open picture and waits until its pixels are let go and its worker has ended, which may be long before one
/// looks: the one that reads names stays.
fn rests(page: &Page) -> Result<()> {
    let counts = || page.browser.run("return [window.workers, window.held]", vec![]);
    page.turn_to("[data-leaf=line]")?;
    eventually("worker and picture rest", counts, |now| *now == json!([1, 0]))?;
    Ok(())
}

/// What is no picture, too large, broken, or marked so that no grid fits, is told by name; nothing is lost.
///
/// # Errors
/// When it is otherwise.
pub fn bad_pictures_are_refused(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    describe_rail(&page)?;
    let good = series(&page.home, 1)?;
    choose(&page, &good)?;
    is_proposed(&page, 0)?;
    // The divisions of its grid are read as they are typed.
    page.fill("Divisions across the grid", "9.5")?;
    page.reads("#grid-columns-problem", "not a whole number")?;
    page.fill("Divisions across the grid", "10")?;
    eventually("ten is taken", || page.text("#grid-columns-problem"), String::is_empty)?;
    is_proposed(&page, 0)?;
    let whole = std::fs::read(good.first().context("a picture")?)?;
    let mut broken = whole.get(..700).context("a header")?.to_vec();
    broken.resize(20_000, 0x5a);
    let cut = whole.get(..whole.len() / 2).context("half a picture")?;
    let files: [(&str, &[u8], &str); 4] = [
        ("letter.jpg", b"Dear reader, this is no picture.", "not an image"),
        ("wall.png", &header_of_png(12_000, 9_000), "12000\u{a0}×\u{a0}9000\u{a0}pixels is too large"),
        ("broken.jpg", &broken, "can’t be read to its end"),
        ("cut.jpg", cut, "can’t be read to its end"),
    ];
    for (name, bytes, reason) in files {
        choose(&page, &[page.home.write(name, bytes)?])?;
        let told = page.reads(REFUSED, name)?;
        ensure!(told.contains(reason), "of {name} it says {told:?}");
        ensure!(page.count(names::ROWS)? == 1, "{name} made a row");
    }
    // A bad one beside a good one.
    let mixed = [page.home.write("letter.jpg", b"Dear reader")?, picture(&page.home, 1, "2000 mm.jpg")?];
    choose(&page, &mixed)?;
    page.reads(REFUSED, "letter.jpg")?;
    eventually("the good one has a row", || page.count(names::ROWS), |rows| *rows == 2)?;

    // Corners that cross are not accepted, and told by their names.
    is_proposed(&page, 0)?;
    page.click("Upper left corner")?;
    page.browser.press(&[Key::Alt.into()], std::iter::repeat_n(char::from(Key::Right), 130))?;
    page.reads(PROBLEM, "corner marks")?;
    page.click("Accept the marks")?;
    page.reads(names::MESSAGE, "Not accepted yet")?;
    // Three of them on one line: the upper edge of the picture.
    for corner in ["Upper left corner", "Upper right corner", "Lower right corner"] {
        page.browser.run(FOCUS, vec![json!(corner)])?;
        page.browser.press(&[Key::Alt.into()], std::iter::repeat_n(char::from(Key::Up), 65))?;
    }
    page.reads(PROBLEM, "lie on one line")?;
    page.click("Accept the marks")?;
    page.reads(names::MESSAGE, "lie on one line")?;
    page.sees(COUNT, "0 of 2 photos are marked.")?;
    // What was moved is taken back move by move, and then accepted.
    page.browser.run(FOCUS, vec![json!("Edge A")])?;
    for _ in 0..4 * 130 {
        if page.text(PROBLEM)?.is_empty() {
            break;
        }
        page.press_with_control('z')?;
    }
    look_and_accept(&page, &["Edge A", "Edge B"])?;
    marked(&page, 1)?;
    page.is_saved()
}

pub(crate) fn check_name(number: usize) -> String {
    format!("Grid crossing {number}, a check of the lens")
}

/// Whether two places are within a pixel.
pub(crate) fn near(one: &Value, other: &Value) -> bool {
    one.as_f64().zip(other.as_f64()).is_some_and(|(one, other)| (one - other).abs() < 1.0)
}

/// The header of a picture of so many pixels, and no more (W3C, Portable Network Graphics, third edition, 5.2, 11.2.1).
pub(crate) fn header_of_png(width: u32, height: u32) -> Vec<u8> {
    let mut bytes = b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR".to_vec();
    bytes.extend(width.to_be_bytes());
    bytes.extend(height.to_be_bytes());
    bytes.extend(b"\x08\x02\0\0\0\0\0\0\0");
    bytes
}

/// Pictures of a run, named by their readings.
///
/// # Errors
/// When they can't be drawn or written.
pub fn series(home: &Home, count: usize) -> Result<Vec<PathBuf>> {
    (0..count).map(|place| picture(home, place, &format!("hall {} mm.jpg", MARKS[place]))).collect()
}

fn picture(home: &Home, place: usize, name: &str) -> Result<PathBuf> {
    let time_base = TIME_BASE.parse()?;
    let shot = |mark: u32| Shot { delay: f64::from(mark) * 1e6 / C, time_base };
    let shots = MARKS.map(shot);
    let (screen, camera, _) = demo_series(5, &shots).into_iter().nth(place).context("a shot")?;
    // Half as large, so that it is drawn sooner.
    let picture = Camera { width: 800, height: 600, ..camera }.photograph(&screen, place as u64);
    let mut bytes = Vec::new();
    let (width, height) = (u16::try_from(picture.width)?, u16::try_from(picture.height)?);
    Encoder::new(&mut bytes, 90).encode(&picture.rgba, width, height, ColorType::Rgba)?;
    home.write(name, &bytes)
}

/// Chooses files as pictures.
///
/// # Errors
/// When the page has no place for them.
pub fn choose(page: &Page, files: &[PathBuf]) -> Result<()> {
    let input = page.browser.element("return document.querySelector(arguments[0])", vec![json!(FILES)])?;
    let names: Vec<String> = files.iter().map(|file| file.to_string_lossy().into_owned()).collect();
    page.browser.choose_file(&input.context("no input for pictures")?, Path::new(&names.join("\n")))
}

/// That the picture at a place of the list is open. It is chosen there at once, and looked for until what is said of it is
/// said.
///
/// # Errors
/// When it is not.
pub fn is_open(page: &Page, place: usize) -> Result<()> {
    let state = "const said = document.querySelector(arguments[0])?.textContent ?? '';
        const isThere = document.querySelector('.board')?.checkVisibility() ?? false;
        return [document.getElementById('picture-choice')?.selectedIndex ?? null, isThere && !said.includes('Looking for')]";
    let opened = || page.browser.run(state, vec![json!(SAID)]);
    eventually(&format!("picture {place} is open"), opened, |now| *now == json!([place, true]))?;
    Ok(())
}

/// That the picture at a place of the list is open, with marks that wait to be accepted.
///
/// # Errors
/// When it is not.
pub fn is_proposed(page: &Page, place: usize) -> Result<()> {
    is_open(page, place)?;
    let state = "const accept = document.querySelector(arguments[0]);
        const list = document.getElementById('picture-choice');
        return [accept?.checkVisibility() && !accept.ariaDisabled, list.selectedIndex,
            /proposed|doubted/.test(document.querySelector('.spot.a')?.className ?? '')]";
    let waits = || page.browser.run(state, vec![json!(ACCEPT)]);
    eventually(&format!("picture {place} has proposed marks"), waits, |now| {
        *now == json!([true, place, true])
    })?;
    Ok(())
}

/// Presses “Accept the marks”, which leads to marks in doubt by their names, one after the other, and accepts at last.
///
/// # Errors
/// When it leads elsewhere.
pub fn look_and_accept(page: &Page, doubted: &[&str]) -> Result<()> {
    let active =
        "return [document.activeElement?.ariaLabel ?? '', document.activeElement?.ariaValueText ?? '',
        document.querySelector('.board-lens').checkVisibility()]";
    page.click("Accept the marks")?;
    for name in doubted {
        let leads = || page.browser.run(active, vec![]);
        eventually(&format!("it leads to {name}"), leads, |now| {
            now[0] == json!(name)
                && now[1].as_str().is_some_and(|text| text.contains("now looked at"))
                && now[2] == json!(true)
        })?;
        page.press(Key::Enter)?;
    }
    Ok(())
}

/// A notebook with a run of so many pictures, the first of which is marked.
///
/// # Errors
/// When it does not come to that.
pub(crate) fn first_is_marked(stage: &Stage, count: usize) -> Result<Page<'_>> {
    let page = stage.blank_page()?;
    describe_rail(&page)?;
    choose(&page, &series(&page.home, count)?)?;
    is_proposed(&page, 0)?;
    page.fill("Time per division", TIME_BASE)?;
    look_and_accept(&page, &["Edge A", "Edge B"])?;
    marked(&page, 1)?;
    Ok(page)
}

pub(crate) fn marked(page: &Page, count: usize) -> Result<()> {
    page.reads(COUNT, &format!("{count} of "))?;
    Ok(())
}

/// Files without a type, as some phones hand them over, are told by their bytes wherever they are dropped: a JPEG is taken,
/// a photo in HEIF format (ISO/IEC 14496-12, 4.3) is refused as what it is.
///
/// # Errors
/// When it is otherwise.
pub fn pictures_are_told_by_their_bytes(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    describe_rail(&page)?;
    let picture = STANDARD.encode(fs::read(picture(&page.home, 0, "500 mm.jpg")?)?);
    let drop = r"
        const dataTransfer = new DataTransfer();
        const jpeg = Uint8Array.from(atob(arguments[0]), (char) => char.charCodeAt(0));
        dataTransfer.items.add(new File([jpeg], '500 mm.jpg'));
        dataTransfer.items.add(new File(['\0\0\0\x18ftypheic\0\0\0\0mif1heic'], '1000000123'));
        document.body.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));";
    page.browser.run(drop, vec![json!(picture)])?;
    page.reads("#picture-status", "1 photo was added")?;
    page.reads(REFUSED, "1000000123 is a photo in HEIF format")?;
    ensure!(page.cell("Ruler reading", 1)? == "500 mm", "the photo began no row of its own");
    ensure!(!page.text(names::MESSAGE)?.contains("not opened"), "one was opened as a notebook");
    page.is_silent()
}
