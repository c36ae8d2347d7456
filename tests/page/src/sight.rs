//! What is in sight while one works: the row in hand, what follows from it, and the leaves of the notebook.

use anyhow::{Context, Result, ensure};
use fantoccini::key::Key;
use serde_json::{Value, json};

use crate::bench::{ROWS, TIME_BASE, describe_rail};
use crate::hands::tap;
use crate::names;
use crate::page::{Page, eventually};
use crate::stage::Stage;

/// The windows that are looked at, in CSS pixels: a laptop, a tablet upright, a phone.
const WINDOWS: [(u32, u32); 3] = [(1366, 768), (768, 1024), (360, 740)];

/// How wide the line is drawn at least beside the rows on a laptop, in CSS pixels: a choice of our own.
const WIDE: f64 = 420.0;

/// How much of each thing is in sight, from 0 to 1: the share of its box that lies in the window, and nothing over it.
const SEEN: &str = "
    const share = (node) => {
        if (!node?.checkVisibility()) return 0;
        const { left, top, right, bottom, width, height } = node.getBoundingClientRect();
        const [x, y] = [Math.min(right, innerWidth) - Math.max(left, 0), Math.min(bottom, innerHeight) - Math.max(top, 0)];
        if (x <= 0 || y <= 0) return 0;
        const inside = [.1, .5, .9].map((part) => top + part * height).filter((at) => at >= 0 && at < innerHeight);
        const free = inside.filter((at) => {
            const over = document.elementFromPoint(left + width / 2, at);
            return node.contains(over) || over?.contains(node)
                || (over?.closest('#turn-over') && node.closest('#beside, .strip-facts'));
        });
        return (x * y) / (width * height) * free.length / 3;
    };
    const row = document.activeElement.closest('tbody');
    const seen = Object.fromEntries(arguments[0].map((selector) => [selector, share(document.querySelector(selector))]));
    return { ...seen, row: share(row), above: share(row?.previousElementSibling),
        further: share(row?.previousElementSibling?.previousElementSibling),
        width: document.querySelector('#line-plot').getBoundingClientRect().width };";

const LINE: &str = "#line-plot";
const RESIDUALS: &str = "#residual-plot";
const OUTLINE: &str = "#outline";

/// How far what is in sight has moved since the page was loaded: the sum of its layout shifts, but those that follow an input
/// within half a second (W3C *Layout Instability*, `hadRecentInput`): a row that was begun is one line more. It is told once
/// the page has come to rest: nothing was to be done in it, and neither an element nor a text of it changed, over some frames.
const MOVED: &str = "
    let [moved, changes] = [0, 0];
    const watch = (list) => { for (const { value, hadRecentInput } of list.getEntries()) moved += hadRecentInput ? 0 : value; };
    new PerformanceObserver(watch).observe({ type: 'layout-shift', buffered: true });
    new MutationObserver(() => changes += 1).observe(document.body, { subtree: true, childList: true, characterData: true });
    const frame = () => new Promise((done) => requestAnimationFrame(() => requestIdleCallback(done)));
    return (async () => {
        for (let [calm, before] = [0, 0]; calm < 20; calm = changes === before ? calm + 1 : 0) {
            before = changes;
            await frame();
        }
        return moved;
    })();";

/// Where what has the focus stands, in CSS pixels from the head of the window.
const TOP: &str = "return Math.round(document.activeElement.getBoundingClientRect().top)";

/// Nothing moves while the page opens and fills itself, nor while rows are typed at the foot of the table.
///
/// # Errors
/// When something does: by 0.05 in opening, or 0.02 in fourteen rows; or when the row in hand does not keep its place.
pub fn nothing_moves(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    for (width, height) in WINDOWS {
        resize(&page, width, height)?;
        page.reload()?;
        let opening = moved(&page)?;
        ensure!(opening < 0.05, "{width} × {height}: by {opening} while it opened");
    }
    let mut rows = 24;
    for (width, height) in WINDOWS {
        resize(&page, width, height)?;
        page.reload()?;
        page.click(&names::new_cell("Edge A"))?;
        let before = moved(&page)?;
        let mut places = vec![];
        for _ in 0..14 {
            page.type_text("0.5")?;
            page.press(Key::Tab)?;
            page.type_text("8.1")?;
            page.press(Key::Enter)?;
            rows += 1;
            eventually("the row is there", || page.count(names::ROWS), |count| *count == rows)?;
            places.push(page.browser.run(TOP, vec![])?.as_i64().context("a place")?);
        }
        let typing = moved(&page)? - before;
        ensure!(typing < 0.02, "{width} × {height}: by {typing} while fourteen rows were typed");
        // Once the rows fill the window, the row in hand keeps its place.
        let settled = &places[4..];
        let apart = settled.iter().max().zip(settled.iter().min()).map(|(lowest, highest)| lowest - highest);
        ensure!(apart <= Some(2), "{width} × {height}: the row in hand moves about: {places:?}");
    }
    page.is_silent()
}

fn moved(page: &Page) -> Result<f64> {
    page.browser.run(MOVED, vec![])?.as_f64().context("no sum")
}

/// A newcomer sees that the notebook is an example, and is offered to open a file and to begin a blank notebook; there the
/// focus is on what leads to the first thing to do, and each step is named when the one before is done.
///
/// # Errors
/// When it is otherwise.
pub fn a_newcomer_finds_the_way(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    page.reads("#tour-offer", "example with invented readings")?;
    ensure!(page.is_in_sight("Open a file")?, "a file can't be opened from here");
    page.click("New blank notebook")?;
    page.sees(names::ROWS_USED, &names::rows_used(0, 0))?;
    ensure!(!page.is_in_sight("Open a file")?, "the offer is still there");
    page.focuses("Go to the cautions")?;
    page.press(Key::Enter)?;
    page.focuses("What to watch for")?;
    page.fill("Your name", "Ada")?;
    page.press(Key::Enter)?;
    page.click("Go to the rails")?;
    page.focuses("Add a rail")?;
    page.press(Key::Enter)?;
    page.click("Go to that rail")?;
    page.focuses("Name used in the readings")?;
    page.list_notebooks()?;
    ensure!(page.is_in_sight("Open a file")?, "nor can it from the list of notebooks");
    page.is_silent()
}

/// With the cursor in a new row, and while that row is typed, the row, its neighbours, the line that grows and the result
/// are in sight: on a laptop and a tablet with the residuals, on a phone the line as a strip at the foot.
///
/// # Errors
/// When something is not.
pub fn the_line_is_in_sight_while_typing(stage: &Stage) -> Result<()> {
    for (width, height) in WINDOWS {
        let page = stage.page()?;
        resize(&page, width, height)?;
        page.click(&names::new_cell("Edge A"))?;
        in_sight(&page, width).with_context(|| format!("{width} × {height}, the cursor in a new row"))?;
        page.type_text("0.5")?;
        page.press(Key::Tab)?;
        page.type_text("8.1")?;
        page.press(Key::Enter)?;
        eventually("the row is there", || page.count(names::ROWS), |count| *count == 25)?;
        in_sight(&page, width).with_context(|| format!("{width} × {height}, after a row"))?;
        page.is_silent()?;
    }
    Ok(())
}

fn in_sight(page: &Page, width: u32) -> Result<()> {
    let whole = |seen: &Value, name: &str| seen[name].as_f64().is_some_and(|share| share > 0.99);
    let mut wanted = vec!["row", LINE, names::RESULT, OUTLINE];
    if width > 700 {
        wanted.extend(["above", "further", RESIDUALS]);
    }
    let look = || page.browser.run(SEEN, vec![json!([LINE, RESIDUALS, names::RESULT, OUTLINE])]);
    let seen = eventually(&format!("{wanted:?} are in sight"), look, |seen| {
        wanted.iter().all(|name| whole(seen, name))
    })?;
    let drawn = seen["width"].as_f64().context("a width")?;
    ensure!(width < 1366 || drawn >= WIDE, "the line is drawn {drawn} px wide");
    Ok(())
}

/// A row is seen from its number to the button that strikes it out, and the head of the table stays, at every width at which
/// rows have one line; there is room for the words of a remark while they are typed.
///
/// # Errors
/// When they are not.
pub fn a_row_is_seen_whole(stage: &Stage) -> Result<()> {
    /// What some thirty letters of a remark take, in CSS pixels: a choice of our own.
    const ROOM: f64 = 240.0;
    let page = stage.page()?;
    for width in [768, 1000, 1152, 1180, 1240, 1366, 1920] {
        resize(&page, width, 900)?;
        page.click(&names::cell("Rail", 12))?;
        let cells = ["rail", "reading", "time_base", "edge_a", "edge_b", "residual"];
        let cells = cells.map(|cell| format!("#row-12 td.{cell}"));
        let others = ["#row-12 th", "#row-12 .strike", "#readings-table thead"].map(str::to_owned);
        let all = [&cells[..], &others].concat();
        let look = || page.browser.run(SEEN, vec![json!(all)]);
        let whole = |seen: &Value| all.iter().all(|name| seen[name].as_f64() > Some(0.99));
        eventually("row 12 and the head are in sight", look, whole)
            .with_context(|| format!("{width} px wide"))?;
        page.click(&names::cell("Remark", 12))?;
        let remark = || page.browser.run(SEEN, vec![json!(["#cell-12-remark"])]);
        eventually("its remark is in sight", remark, |seen| seen["#cell-12-remark"].as_f64() > Some(0.99))
            .with_context(|| format!("{width} px wide"))?;
        let room = page.browser.run("return document.activeElement.offsetWidth", vec![])?;
        ensure!(room.as_f64() >= Some(ROOM), "{width} px wide, a remark has {room} px");
    }
    page.is_silent()
}

/// What had the focus and is gone hands it on: to something near, or back.
///
/// # Errors
/// When the focus is lost.
pub fn the_focus_is_kept(stage: &Stage) -> Result<()> {
    const HELD: &str =
        "return document.activeElement !== document.body && document.activeElement.checkVisibility()";
    let page = stage.page()?;
    let is_held = |after: &str| {
        let held = || page.browser.run(HELD, vec![]);
        eventually(&format!("something has the focus after “{after}”"), held, |held| *held == json!(true))
    };
    let press = |name: &str| {
        page.tab_to(name)?;
        page.press(Key::Enter)?;
        eventually(&format!("“{name}” is gone"), || page.has(name), |has| !has)?;
        is_held(name)
    };
    press("Not now")?;
    page.turn_to("#plan")?;
    page.click("Plan a position")?;
    press("Remove planned position 1")?;
    // It stays as long as the focus is on it, and not as long as it may take to come there from afar.
    page.browser.run("document.getElementById('told-action').focus()", vec![])?;
    press("Close this message")?;
    page.list_notebooks()?;
    page.click("Duplicate: Three rails in the laboratory")?;
    eventually("there are two", || page.count(names::NOTEBOOKS), |count| *count == 2)?;
    is_held("Duplicate")?;
    press("Delete: Three rails in the laboratory (copy)")?;
    page.is_silent()
}

/// While a phone shows its number pad, the row in hand, the line as a strip, c and what is at hand in the head are in sight;
/// minus and semicolon, which such a pad lacks, are typed beside the row.
///
/// # Errors
/// When it is otherwise.
pub fn a_phone_has_room_for_its_number_pad(stage: &Stage) -> Result<()> {
    /// What of a phone's height such a pad leaves, in CSS pixels: common practice, no source.
    const LEFT: u32 = 440;
    let page = stage.page()?;
    page.browser.debug("Emulation.setTouchEmulationEnabled", &json!({ "enabled": true }))?;
    resize(&page, 360, 740)?;
    page.click(&names::new_cell("Edge A"))?;
    resize(&page, 360, LEFT)?;
    let all = [LINE, names::RESULT, "#undo", "#open-notebooks", "row"];
    let look = || page.browser.run(SEEN, vec![json!(all)]);
    let whole = |seen: &Value| all.iter().all(|name| seen[name].as_f64() > Some(0.99));
    eventually("row, line, c and tools are in sight", look, whole)?;
    page.type_text("0.5")?;
    page.click("Semicolon")?;
    page.click("Minus")?;
    page.type_text("1")?;
    eventually("a row is begun", || page.has(&names::cell("Edge A", 25)), |has| *has)?;
    eventually("they are typed", || page.cell("Edge A", 25), |text| text == "0.5;−1")?;
    page.is_silent()
}

/// On a phone the strip at the foot opens at a tap: the line stands there whole, and goes back into the strip at the next one.
///
/// # Errors
/// When it does not.
pub fn the_strip_opens_at_a_tap(stage: &Stage) -> Result<()> {
    /// A place near the head of the strip, and how wide the line is drawn there, in CSS pixels.
    const STRIP: &str = "const strip = document.getElementById('turn-over');
        const { left, top, width } = strip.getBoundingClientRect();
        return [[left + width / 2, top + 12], document.getElementById('line-plot').getBoundingClientRect().width,
            strip.getAttribute('aria-expanded')]";
    // How wide the line is on a phone: as the strip shows it at most, and whole at least. Choices of our own.
    const SMALL: f64 = 120.0;
    const WHOLE: f64 = 300.0;
    let page = stage.page()?;
    page.browser.debug("Emulation.setTouchEmulationEnabled", &json!({ "enabled": true }))?;
    resize(&page, 360, 740)?;
    let look = || -> Result<([f64; 2], f64, String)> {
        Ok(serde_json::from_value(page.browser.run(STRIP, vec![])?)?)
    };
    let is_strip = |(_, width, open): &([f64; 2], f64, String)| *width < SMALL && open == "false";
    let (place, ..) = eventually("the line stands in the strip", look, is_strip)?;
    tap(&page, place)?;
    let is_open = |(_, width, open): &([f64; 2], f64, String)| *width > WHOLE && open == "true";
    let (place, ..) = eventually("the strip is open", look, is_open)?;
    let line = || page.browser.run(SEEN, vec![json!([LINE])]);
    eventually("the line is in sight whole", line, |seen| seen[LINE].as_f64() > Some(0.99))?;
    tap(&page, place)?;
    eventually("the line stands in the strip again", look, is_strip)?;
    page.is_silent()
}

/// In the readings the arrow keys go from cell to cell while the whole text of one is selected, and move the cursor in a
/// text that is edited; Enter in the row to come begins no second row beside one that holds nothing yet.
///
/// # Errors
/// When they do not.
pub fn cells_are_gone_through_by_arrows(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    page.click(&names::cell("Time base", 2))?;
    page.press(Key::Right)?;
    page.focuses(&names::cell("Time base", 2)).context("the text is edited")?;
    page.press(Key::F2)?;
    page.press(Key::Right)?;
    page.focuses(&names::cell("Edge A", 2))?;
    page.press(Key::Down)?;
    page.press(Key::Home)?;
    page.focuses(&names::cell("Rail", 3))?;
    page.press(Key::End)?;
    page.focuses(&names::cell("Remark", 3))?;
    page.press(Key::Left)?;
    page.focuses(&names::cell("Edge B", 3))?;

    page.click(&names::new_cell("Rail"))?;
    page.press(Key::Enter)?;
    page.focuses(&names::new_cell("Ruler reading")).context("past the rail, which is proposed")?;
    page.press(Key::Enter)?;
    page.focuses(&names::cell("Edge A", 25)).context("where the row still lacks it")?;
    ensure!(page.count(names::ROWS)? == 25, "a row was begun beside one that holds nothing yet");
    page.is_silent()
}

/// On a laptop twelve rows, the head of their table and the row to come need no scrolling; with the demo's rows, what
/// follows stays while they scroll.
///
/// # Errors
/// When they do.
pub fn twelve_rows_need_no_scrolling(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    resize(&page, 1366, 768)?;
    describe_rail(&page)?;
    let rows: Vec<String> = (0..12)
        .map(|row| {
            let (mark, edge) = ROWS[row % ROWS.len()];
            format!("A\t{mark}\t{TIME_BASE}\t1.00\t{edge}")
        })
        .collect();
    page.paste(&names::new_cell("Rail"), &rows.join("\n"))?;
    page.sees(names::ROWS_USED, &names::rows_used(12, 12))?;
    page.browser.run(
        "scrollTo(0, 0); document.querySelector('#row-new input').focus({ preventScroll: true })",
        vec![],
    )?;
    let table = "#readings-table";
    let look = || page.browser.run(SEEN, vec![json!([table, LINE, RESIDUALS])]);
    let whole =
        |seen: &Value| [table, LINE, RESIDUALS, "row"].iter().all(|name| seen[*name].as_f64() > Some(0.99));
    eventually("all rows, line and residuals are in sight unscrolled", look, whole)?;
    page.is_silent()
}

/// What was noticed about the row in hand stands below it, in sight together with both plots and c; on a phone its sign stands
/// beside the row's number, and the keys for that row leave it free.
///
/// # Errors
/// When it does not.
pub fn a_notice_of_the_row_in_hand_is_in_sight(stage: &Stage) -> Result<()> {
    const NOTICE: &str = "#row-24 .told";
    /// Whether the sign of the notice ends above the first of the keys, both in the window.
    const APART: &str = "const [sign, key] = ['.mark', '.pad button'].map((part) => document.querySelector(`#row-24 ${part}`));
        if (!sign?.checkVisibility() || !key?.checkVisibility()) return false;
        const [above, below] = [sign, key].map((part) => part.getBoundingClientRect());
        return above.top >= 0 && above.bottom <= below.top && below.bottom <= innerHeight";
    let page = stage.page()?;
    resize(&page, 1366, 768)?;
    page.put_in_cell("Edge B", 24, "15.00")?;
    page.click(&names::cell("Edge B", 24))?;
    page.reads(NOTICE, "Row 24 lies far off the line of all the others.")?;
    let all = [NOTICE, LINE, RESIDUALS, names::RESULT];
    let look = || page.browser.run(SEEN, vec![json!(all)]);
    let whole = |seen: &Value| all.iter().all(|name| seen[*name].as_f64() > Some(0.99));
    eventually("the notice is in sight with the plots and c", look, whole)?;

    page.browser.debug("Emulation.setTouchEmulationEnabled", &json!({ "enabled": true }))?;
    resize(&page, 360, 740)?;
    page.click(&names::cell("Edge A", 24))?;
    let apart = || page.browser.run(APART, vec![]);
    eventually("its sign and the keys are in sight, apart", apart, |apart| *apart == json!(true))?;
    page.is_silent()
}

/// A bench that is described is one line, with its drawing in sight, until more is asked for; then it stays open while one
/// works there. That of a blank notebook is open.
///
/// # Errors
/// When it is otherwise.
pub fn a_described_bench_folds(stage: &Stage) -> Result<()> {
    /// Whether the bench is open, whether it takes one line, and whether its drawing is in sight.
    const BENCH: &str = "const box = document.getElementById('apparatus-box');
        const line = parseFloat(getComputedStyle(box.querySelector('summary')).lineHeight);
        const { top, bottom, height } = document.getElementById('bench-plot').getBoundingClientRect();
        return [box.open, box.getBoundingClientRect().height < 2 * line, height > 100 && top >= 0 && bottom <= innerHeight]";
    let page = stage.page()?;
    resize(&page, 1366, 768)?;
    page.browser.run("location.hash = 'bench'", vec![])?;
    is_at(&page, "bench")?;
    let bench = || page.browser.run(BENCH, vec![]);
    eventually("the bench is one line, with its drawing", bench, |bench| {
        *bench == json!([false, true, true])
    })?;
    page.reads("#apparatus-line", "3 rails: near, middle")?;
    page.browser.run("document.querySelector('#apparatus-box summary').click()", vec![])?;
    page.fill("Wavelength in vacuum", "650")?;
    page.browser.run("document.querySelector('#bench-pulse_rate').focus()", vec![])?;
    page.is_saved()?;
    eventually("it stays open", bench, |bench| *bench == json!([true, false, true]))?;
    page.reload()?;
    eventually("opened anew, it is one line", bench, |bench| *bench == json!([false, true, true]))?;
    let blank = stage.blank_page()?;
    ensure!(blank.browser.run(BENCH, vec![])?[0] == json!(true), "the bench of a blank notebook is folded");
    page.is_silent()
}

/// The leaves are turned by the outline, by keys from within a cell, and by the address of a leaf or of a row; a turn
/// back finds the cell again, and a page loaded anew stands where it was left.
///
/// # Errors
/// When they are not.
pub fn leaves_are_turned(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    is_at(&page, "readings")?;
    for leaf in names::LEAVES {
        let link = format!("document.querySelector('#outline a[href=\"#{leaf}\"]').click()");
        page.browser.run(&link, vec![])?;
        is_at(&page, leaf)?;
        let shown = page.browser.run(
            "return [...document.querySelectorAll('[data-leaf]')]
            .filter((each) => [...each.children].some((child) => child.checkVisibility())).map((each) => each.dataset.leaf)",
            vec![],
        )?;
        ensure!(shown == json!([leaf]), "{shown} are shown at once");
    }
    page.click(&names::cell("Edge A", 1))?;
    page.browser.press(&[Key::Alt.into()], [Key::PageDown.into()])?;
    is_at(&page, "line")?;
    page.browser.press(&[Key::Alt.into()], [Key::PageUp.into()])?;
    is_at(&page, "readings")?;
    page.focuses(&names::cell("Edge A", 1))?;
    page.browser.run("history.back()", vec![])?;
    is_at(&page, "line")?;
    for (address, leaf) in
        [("#uncertainty", "uncertainty"), ("#row-7", "readings"), ("#plan", "bench"), ("#result", "report")]
    {
        page.browser.run("location.hash = arguments[0]", vec![json!(address)])?;
        is_at(&page, leaf).with_context(|| format!("the address {address}"))?;
    }
    page.reload()?;
    is_at(&page, "report").context("after a reload")?;
    // As far as letters and window of this browser leave something to scroll.
    page.browser.run("scrollTo(0, 120)", vec![])?;
    let far = page.browser.run("return scrollY", vec![])?;
    ensure!(far.as_f64() > Some(0.0), "there is nothing to scroll");
    // Where the browser does not tell that scrolling has ended, it is noted as the page is left.
    let noted =
        || page.browser.run("return 'onscrollend' in window ? history.state?.top ?? null : scrollY", vec![]);
    eventually("how far it is scrolled is noted", noted, |top| *top == far)?;
    page.reload()?;
    // WebKit, which does not tell, now and then goes on to the place of the address: there it is held to what was noted.
    let back =
        || page.browser.run("return 'onscrollend' in window ? scrollY : history.state?.top ?? null", vec![]);
    eventually("it opens where it was left", back, |top| *top == far)?;
    page.is_silent()
}

fn is_at(page: &Page, leaf: &str) -> Result<()> {
    let current =
        || page.browser.run("return document.querySelector('#outline [aria-current]')?.hash", vec![]);
    eventually(&format!("the leaf “{leaf}” is turned up"), current, |hash| {
        *hash == json!(format!("#{leaf}"))
    })?;
    Ok(())
}

/// Gives the page a window of so many CSS pixels; a narrow one is a phone's.
///
/// # Errors
/// When the browser does not take it.
pub fn resize(page: &Page, width: u32, height: u32) -> Result<()> {
    page.browser.resize(width, height)
}

/// Each leaf opens by its address, with all its sections: none of them says that it could not be loaded.
///
/// # Errors
/// When one does not.
pub fn leaves_open_by_their_address(stage: &Stage) -> Result<()> {
    const PLACES: &str = "return [document.body.dataset.at, [...document.querySelectorAll('.late')].filter((box) => box.checkVisibility()).length]";
    for leaf in names::LEAVES {
        let page = stage.page()?;
        page.go(&format!("{}#{leaf}", stage.address))?;
        page.reload()?;
        let places = || page.browser.run(PLACES, vec![]);
        eventually(&format!("{leaf} is whole"), places, |places| *places == json!([leaf, 0]))?;
        page.is_silent()?;
    }
    Ok(())
}
