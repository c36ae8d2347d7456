//! What hands do on a drawing, as the driver passes it on: the wheel turned, a finger put on, two moved apart; and files
//! that they drop.

use anyhow::Result;
use serde_json::json;

use crate::names;
use crate::page::Page;

/// The middle of a drawing, in the window, into whose middle it is brought.
///
/// # Errors
/// When there is no such drawing.
pub fn middle(page: &Page, selector: &str) -> Result<[f64; 2]> {
    const MIDDLE: &str = "const drawing = document.querySelector(arguments[0]);
        drawing.scrollIntoView({ block: 'center' });
        const { left, top, width, height } = drawing.getBoundingClientRect();
        return [left + width / 2, top + height / 2]";
    Ok(serde_json::from_value(page.browser.run(MIDDLE, vec![json!(selector)])?)?)
}

/// Turns the wheel by more than a notch, away from the hand, while Ctrl is held.
///
/// # Errors
/// When the browser does not take it.
pub fn turn_wheel(page: &Page, [x, y]: [f64; 2]) -> Result<()> {
    let wheel = json!({ "type": "mouseWheel", "x": x, "y": y, "deltaX": 0, "deltaY": -120, "modifiers": 2 });
    page.browser.debug("Input.dispatchMouseEvent", &wheel)?;
    Ok(())
}

/// Presses the mouse at a place, and lets go as late as the page could have drawn anew.
///
/// # Errors
/// When the browser does not take it.
pub fn press_slowly(page: &Page, [x, y]: [f64; 2]) -> Result<()> {
    for kind in ["mouseMoved", "mousePressed", "mouseReleased"] {
        let mouse = json!({ "type": kind, "x": x, "y": y, "button": "left", "clickCount": 1 });
        page.browser.debug("Input.dispatchMouseEvent", &mouse)?;
        page.browser.run(names::TWO_FRAMES, vec![])?;
    }
    Ok(())
}

/// Puts two fingers on to the left and right of a place, moves them apart, and lifts them.
///
/// # Errors
/// When the browser does not take it.
pub fn spread(page: &Page, [x, y]: [f64; 2]) -> Result<()> {
    for (kind, apart) in [("touchStart", 20.0), ("touchMove", 40.0), ("touchMove", 60.0)] {
        let fingers = json!([{ "x": x - apart, "y": y, "id": 0 }, { "x": x + apart, "y": y, "id": 1 }]);
        page.browser.debug("Input.dispatchTouchEvent", &json!({ "type": kind, "touchPoints": fingers }))?;
    }
    page.browser.debug("Input.dispatchTouchEvent", &json!({ "type": "touchEnd", "touchPoints": [] }))?;
    Ok(())
}

/// Puts a finger on a place, and lifts it.
///
/// # Errors
/// When the browser does not take it.
pub fn tap(page: &Page, [x, y]: [f64; 2]) -> Result<()> {
    for (kind, fingers) in [("touchStart", json!([{ "x": x, "y": y }])), ("touchEnd", json!([]))] {
        page.browser.debug("Input.dispatchTouchEvent", &json!({ "type": kind, "touchPoints": fingers }))?;
    }
    Ok(())
}

/// Drops files on an element, each with its name and its text.
///
/// # Errors
/// When there is no such element.
pub fn drop_files(page: &Page, on: &str, files: &[(String, String)]) -> Result<()> {
    const DROP: &str = "
        const dataTransfer = new DataTransfer();
        for (const [name, text] of arguments[1]) dataTransfer.items.add(new File([text], name));
        const on = document.querySelector(arguments[0]);
        for (const name of ['dragover', 'drop']) {
          on.dispatchEvent(new DragEvent(name, { dataTransfer, bubbles: true, cancelable: true }));
        }";
    page.browser.run(DROP, vec![json!(on), json!(files)])?;
    Ok(())
}
