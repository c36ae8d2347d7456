//! A drawing on a canvas of the page.

use js_sys::Function;
use plotters::drawing::IntoDrawingArea;
use plotters_canvas::CanvasBackend;
use wasm_bindgen::prelude::*;
use web_sys::HtmlCanvasElement;

use super::thrown;
use super::words::PageWords;
use crate::chart::{self, Drawing, Theme};
use crate::message;

/// Where the page says what it is drawn on: the soft papers, or those with more contrast.
#[wasm_bindgen(typescript_custom_section)]
const PAPER: &str = "/** What a drawing stands on: paper of the page, or where more contrast is wished for, white or black. */
export type Paper = 'light' | 'dark' | 'white' | 'black';";

/// Paints on a canvas whose size is set in device pixels, in the page's words.
///
/// # Errors
/// `{kind: "chart", message}` if the canvas is too small to draw on, or gives nothing to draw with.
pub(super) fn draw(
    canvas: HtmlCanvasElement,
    paper: &str,
    pixels: f64,
    drawing: Drawing<'_>,
    say: &Function,
) -> Result<(), JsValue> {
    let theme = match paper {
        "dark" => Theme::dark(),
        "white" => Theme::white(),
        "black" => Theme::black(),
        _ => Theme::light(),
    };
    let backend = CanvasBackend::with_canvas_object(canvas)
        .ok_or_else(|| thrown("chart", message!("chart-surface")))?;
    chart::draw(&backend.into_drawing_area(), drawing, &theme.scaled(pixels), &PageWords(say))
        .map_err(|error| thrown("chart", error.message()))
}
