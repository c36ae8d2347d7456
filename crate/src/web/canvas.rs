//! A drawing on a canvas of the page.

use plotters::coord::Shift;
use plotters::drawing::{DrawingArea, IntoDrawingArea};
use plotters_canvas::CanvasBackend;
use wasm_bindgen::JsValue;
use web_sys::HtmlCanvasElement;

use super::thrown;
use crate::chart::{ChartError, Theme};
use crate::message;

/// Paints on a canvas whose size is set in device pixels.
///
/// # Errors
/// `{kind: "chart", message}` if the canvas is too small to draw on, or gives nothing to draw with.
pub(super) fn draw(
    canvas: HtmlCanvasElement,
    dark: bool,
    pixels: f64,
    paint: &dyn Fn(&DrawingArea<CanvasBackend, Shift>, &Theme) -> Result<(), ChartError>,
) -> Result<(), JsValue> {
    let theme = if dark { Theme::dark() } else { Theme::light() };
    let backend = CanvasBackend::with_canvas_object(canvas)
        .ok_or_else(|| thrown("chart", message!("chart-surface")))?;
    paint(&backend.into_drawing_area(), &theme.scaled(pixels))
        .map_err(|error| thrown("chart", error.message()))
}
