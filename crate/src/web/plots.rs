//! The plots of the readings, the part of them that is looked at, and where on them the readings stand.

use js_sys::Function;
use wasm_bindgen::prelude::*;
use web_sys::HtmlCanvasElement;

use super::canvas::draw;
use super::desk::Desk;
use super::words::PageWords;
use super::{thrown, to_js};
use crate::chart::{self, Drawing, LinePicture, PlotPlaces, PlotWindow, Theme};
use crate::drawings::line_picture;

impl Desk {
    /// The readings as they are looked at through a window, the whole where none is given.
    fn looked_at(&self, window: Option<Vec<f64>>) -> LinePicture {
        let window = PlotWindow::of(&window.unwrap_or_default());
        LinePicture { window, ..line_picture(self.notebook.state(), &self.analysis) }
    }
}

/// On a canvas whose size is set in device pixels, with `pixels` of them to a CSS pixel. A window is left, right, bottom
/// and top of the part that is looked at, in shares of the whole.
#[wasm_bindgen]
impl Desk {
    /// Draws the delay against the distance.
    ///
    /// # Errors
    /// `{kind: "chart", message}` if the canvas is too small to draw on.
    pub fn draw_line(
        &self,
        canvas: HtmlCanvasElement,
        #[wasm_bindgen(unchecked_param_type = "Paper")] paper: &str,
        pixels: f64,
        #[wasm_bindgen(unchecked_param_type = "(message: Types.Message) => string")] say: &Function,
        window: Option<Vec<f64>>,
    ) -> Result<(), JsValue> {
        draw(canvas, paper, pixels, Drawing::Line(&self.looked_at(window)), say)
    }

    /// Draws the residuals against the distance.
    ///
    /// # Errors
    /// `{kind: "chart", message}` if the canvas is too small to draw on.
    pub fn draw_residuals(
        &self,
        canvas: HtmlCanvasElement,
        #[wasm_bindgen(unchecked_param_type = "Paper")] paper: &str,
        pixels: f64,
        #[wasm_bindgen(unchecked_param_type = "(message: Types.Message) => string")] say: &Function,
        window: Option<Vec<f64>>,
    ) -> Result<(), JsValue> {
        draw(canvas, paper, pixels, Drawing::Residuals(&self.looked_at(window)), say)
    }

    /// Where the readings stand on a plot of a size in CSS pixels.
    ///
    /// # Errors
    /// `{kind: "chart", message}` if there is no room to draw in.
    #[wasm_bindgen(unchecked_return_type = "Types.PlotPlaces")]
    pub fn places(
        &self,
        #[wasm_bindgen(unchecked_param_type = "'line' | 'residuals'")] plot: &str,
        width: u32,
        height: u32,
        #[wasm_bindgen(unchecked_param_type = "(message: Types.Message) => string")] say: &Function,
        window: Option<Vec<f64>>,
    ) -> Result<JsValue, JsValue> {
        let picture = self.looked_at(window);
        let drawing = if plot == "line" { Drawing::Line(&picture) } else { Drawing::Residuals(&picture) };
        chart::places((width, height), drawing, &Theme::light(), &PageWords(say))
            .map(|places| to_js::<PlotPlaces>(&places))
            .map_err(|error| thrown("chart", error.message()))
    }
}
