//! Marks on photographs that are in doubt, and what is asked before marks are replaced.

use anyhow::{Context, Result, ensure};
use fantoccini::key::Key;
use serde_json::{Value, json};

use crate::access::{load_checker, unbroken};
use crate::bench::describe_rail;
use crate::names;
use crate::page::eventually;
use crate::pictures::{
    DOUBT, FOCUS, PLACE, REFUSED, SAID, TIME_BASE, check_name, choose, first_is_marked, is_proposed,
    look_and_accept, marked, near, series,
};
use crate::stage::Stage;

/// What is in doubt is said in words, shown on its mark and read out, and looked at before it is accepted: mark after mark,
/// none by the same press as the next. A mark that is moved was looked at. On the first photograph nothing tells A from B;
/// on those after it the marks before do.
///
/// # Errors
/// When it is otherwise.
pub fn doubted_marks_are_looked_at(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    describe_rail(&page)?;
    choose(&page, &series(&page.home, 2)?)?;
    is_proposed(&page, 0)?;
    page.fill("Time per division", TIME_BASE)?;
    page.reads(SAID, "which edge is A’s")?;
    // A grid of other divisions than were stated: its lines go on beyond the marks.
    page.fill("Divisions across the grid", "9")?;
    page.reads(SAID, "lines go on beyond it")?;
    page.reads(DOUBT, "9 marks are in doubt")?;
    load_checker(&page)?;
    for scheme in ["light", "dark"] {
        page.wear(scheme)?;
        unbroken(&page).with_context(|| format!("with marks in doubt, {scheme}"))?;
    }
    // The one that is moved is passed over; the checks are found anew beside it.
    page.browser.run(FOCUS, vec![json!("Upper left corner")])?;
    page.browser.press(&[Key::Shift.into()], [Key::Right.into()])?;
    page.reads(DOUBT, "8 marks are in doubt")?;
    look_and_accept(
        &page,
        &[
            "Upper right corner",
            "Lower right corner",
            "Lower left corner",
            "Grid crossing 1, a check of the lens",
            "Grid crossing 2, a check of the lens",
            "Grid crossing 3, a check of the lens",
            "Edge A",
            "Edge B",
        ],
    )?;
    marked(&page, 1)?;
    page.click("Undo")?;
    page.click("Show the photo of row 1")?;
    is_proposed(&page, 0)?;
    page.fill("Divisions across the grid", "10")?;
    is_proposed(&page, 0)?;
    page.reads(DOUBT, "2 marks are in doubt")?;
    // What is said of the marks is said before they are drawn.
    page.browser.run(names::TWO_FRAMES, vec![])?;
    // The other way round, all is as it was but the sign.
    let place = |name: &str| page.browser.run(PLACE, vec![json!(name)]);
    let (a, b) = (place("Edge A")?, place("Edge B")?);
    page.click("Exchange A and B")?;
    eventually(
        "the edges are exchanged",
        || Ok((place("Edge A")?, place("Edge B")?)),
        |now| *now == (b.clone(), a.clone()),
    )?;
    page.click("Exchange A and B")?;
    look_and_accept(&page, &["Edge A", "Edge B"])?;
    is_proposed(&page, 1)?;
    ensure!(page.text(DOUBT)?.is_empty(), "the second photograph is in doubt: {}", page.text(SAID)?);
    page.click("Accept the marks")?;
    marked(&page, 2)?;
    page.is_silent()
}

/// Checks of the lens that nobody set go with the corners that a person moves, or are left out where no grid is seen; one
/// that was set stays.
///
/// # Errors
/// When it is otherwise.
pub fn checks_go_with_corners(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    describe_rail(&page)?;
    choose(&page, &series(&page.home, 1)?)?;
    is_proposed(&page, 0)?;
    page.fill("Time per division", TIME_BASE)?;
    let place = |name: &str| page.browser.run(PLACE, vec![json!(name)]);
    let checks = || Ok([place(&check_name(1))?, place(&check_name(2))?, place(&check_name(3))?]);
    let [centre, left, right] = checks()?;
    // Set by hand, a pixel to the right.
    page.browser.run(FOCUS, vec![json!(check_name(3))])?;
    page.browser.press(&[], [Key::Right.into()])?;
    let set = eventually("the check has moved", || place(&check_name(3)), |now| *now != right)?;
    // The upper left corner half a division off: no crossing lies there.
    let drag = |keys: Key, steps: usize| -> Result<()> {
        page.browser.run(FOCUS, vec![json!("Upper left corner")])?;
        page.browser.press(&[Key::Alt.into()], std::iter::repeat_n(char::from(keys), steps))
    };
    drag(Key::Right, 4)?;
    eventually("the left check is gone", checks, |now| now[1].is_null() && now[2] == set)?;
    drag(Key::Left, 4)?;
    eventually("it is there again", checks, |now| near(&now[1], &left) && near(&now[0], &centre))?;
    // All corners a division to the right, and with them what is not set. Divisions are narrower on the left.
    let corners = [
        ("Upper left corner", 5),
        ("Upper right corner", 6),
        ("Lower right corner", 6),
        ("Lower left corner", 5),
    ];
    for (corner, tens) in corners {
        page.browser.run(FOCUS, vec![json!(corner)])?;
        page.browser.press(&[Key::Alt.into()], std::iter::repeat_n(char::from(Key::Right), tens))?;
    }
    let moved = |from: &Value, to: &Value| to.as_f64().zip(from.as_f64()).map_or(0.0, |(to, from)| to - from);
    eventually("the checks have gone with the corners", checks, |now| {
        [(&centre, &now[0]), (&left, &now[1])]
            .iter()
            .all(|(from, to)| (40.0..70.0).contains(&moved(from, to)))
            && now[2] == set
    })?;
    page.is_silent()
}

/// Drops what calls itself a picture on a row.
pub(crate) const DROP: &str = "
    const transfer = new DataTransfer();
    transfer.items.add(new File(['no picture'], arguments[1], { type: 'image/jpeg' }));
    document.querySelectorAll('tbody[data-row]')[arguments[0]]
        .dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, bubbles: true, cancelable: true }))";

/// A picture dropped on a row that is marked, or on one of another reading than its name tells, asks first; then it is taken.
///
/// # Errors
/// When it is otherwise.
pub fn a_dropped_picture_asks(stage: &Stage) -> Result<()> {
    let page = first_is_marked(stage, 2)?;
    page.browser.run(DROP, vec![json!(0), json!("500 mm.jpg")])?;
    page.reads(names::MESSAGE, "Row 1 already has a delay from a file")?;
    page.browser.run(DROP, vec![json!(1), json!("3000 mm.jpg")])?;
    page.reads(names::MESSAGE, "The name 3000 mm.jpg gives another reading")?;
    marked(&page, 1)?;
    page.click("Use it")?;
    page.reads(REFUSED, "3000 mm.jpg is not an image")?;
    marked(&page, 1)
}
