//! The drawings: the line with its readings, the residuals, the bench to scale, the budget's shares, and a
//! histogram of trials.
//!
//! Each drawing is a pure function of a small picture (see [`picture`]) and a [`Theme`]. It is first laid out as
//! a list of plain shapes, in pixels, and then painted on any plotters backend: a canvas in the page, SVG for
//! the bundle; or written as a picture of LaTeX. So only the painting is compiled once for each backend.
//!
//! | symbol | meaning | unit |
//! | --- | --- | --- |
//! | d | distance along the beam from the splitter | m |
//! | Δt | delay of B's edge behind A's edge | ns |
//! | u | standard uncertainty | as its quantity |
//!
//! - [`picture`]: what is drawn, in plain numbers.
//! - [`theme`]: colours and sizes.
//! - `labels`: everything that the drawings say.
//! - `scene`: shapes, and how they are painted.
//! - `text`: how wide a text is, about; wrapping, shortening, finding room.
//! - `scale`: ranges and ticks.
//! - `frame`: axes, grid, legend.
//! - `marks`: the marks of a reading.
//! - `line_chart`, `residuals`, `bench`, `shares`, `histogram`, `traces`: the drawings.
//! - `table`: pictures as tables.
//! - [`mod@latex`]: shapes as a picture of LaTeX.

pub mod picture;
pub mod theme;

mod scene;
mod marks;
mod labels;
mod scale;
mod text;
mod frame;
mod bench;
mod histogram;
mod line_chart;
mod residuals;
mod shares;
mod traces;
mod table;
pub mod latex;

use std::error::Error;
use std::fmt::Write;

use plotters::coord::Shift;
use plotters::drawing::{DrawingArea, DrawingAreaErrorKind, IntoDrawingArea};
use plotters::prelude::{DrawingBackend, SVGBackend};
use serde::Serialize;

pub use picture::{
    Band, BenchPicture, BenchRail, BenchSplice, Carriage, FittedLine, HistogramPicture, LinePicture,
    PlotWindow, PlottedRow, Share, SharesPicture, TraceEdge, TracePicture, TracePulse, TracesPicture,
    Upright,
};
pub use slope_evidence::plot_table::{PlotColumn, PlotTable};
pub use table::{bench_table, traces_table, trials_table, walk_table};
pub use theme::{Colour, Theme};

use crate::words::{Message, Words};
use crate::{errors_as_data, message};
use scene::{Scene, ScenePoint};

/// Pixels of the SVG's inner grid to one CSS pixel: plotters places shapes on whole pixels.
const SVG_GRID: u32 = 4;

/// Least size of a drawing, in heights of the text.
const LEAST_WIDTH: f64 = 14.0;
/// See [`LEAST_WIDTH`].
const LEAST_HEIGHT: f64 = 10.0;

/// Why a drawing could not be made.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ChartError {
    /// There is no room to draw in.
    TooSmall {
        /// Width of the area, px.
        width: u32,
        /// Height of the area, px.
        height: u32,
        /// Least width, px.
        least_width: u32,
        /// Least height, px.
        least_height: u32,
    },
    /// The backend refused.
    Surface(String),
}

errors_as_data!(ChartError);

impl ChartError {
    /// Why, and what to do.
    pub fn message(&self) -> Message {
        match self {
            Self::TooSmall { width, height, least_width, least_height } => message!(
                "chart-too_small",
                width = width.to_string(),
                height = height.to_string(),
                least_width = least_width.to_string(),
                least_height = least_height.to_string()
            ),
            Self::Surface(_) => message!("chart-surface"),
        }
    }
}

impl<E: Error + Send + Sync> From<DrawingAreaErrorKind<E>> for ChartError {
    fn from(error: DrawingAreaErrorKind<E>) -> Self {
        Self::Surface(error.to_string())
    }
}

/// What is drawn, with what it shows.
#[derive(Clone, Copy, Debug)]
pub enum Drawing<'a> {
    /// Delay against distance: the readings with their standard uncertainties, the fitted line and its band.
    Line(&'a LinePicture),
    /// The residuals, in units of their standard uncertainty, against distance.
    Residuals(&'a LinePicture),
    /// The bench seen from above, to scale along the beam: splitter, rails, splices, carriage positions.
    Bench(&'a BenchPicture),
    /// Monte Carlo trials in bins, with the curve that the budget expects and the ends of the trials' interval.
    Histogram(&'a HistogramPicture),
    /// Two recorded traces with what was found on them.
    Traces(&'a TracesPicture),
    /// The shares of the budget as bars.
    Shares(&'a SharesPicture),
}

impl Drawing<'_> {
    fn scene(self, size: ScenePoint, theme: &Theme, words: &dyn Words) -> Scene {
        match self {
            Self::Line(picture) => line_chart::scene(size, picture, theme, words),
            Self::Residuals(picture) => residuals::scene(size, picture, theme, words),
            Self::Bench(picture) => bench::scene(size, picture, theme, words),
            Self::Histogram(picture) => histogram::scene(size, picture, theme, words),
            Self::Traces(picture) => traces::scene(size, picture, theme, words),
            Self::Shares(picture) => shares::scene(size, picture, theme, words),
        }
    }
}

/// Draws on an area of any backend.
///
/// # Errors
/// The area is too small, or its backend refuses.
pub fn draw<B: DrawingBackend>(
    area: &DrawingArea<B, Shift>,
    drawing: Drawing<'_>,
    theme: &Theme,
    words: &dyn Words,
) -> Result<(), ChartError> {
    let scene = drawing.scene(room(area.dim_in_pixel(), theme)?, theme, words);
    area.fill(&theme.paper.opaque())?;
    area.draw(&scene)?;
    Ok(())
}

/// Where on a plot things stand, in shares of its width from the left and of its height from the top.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct PlotPlaces {
    /// Left, top, right and bottom of the frame around the readings.
    pub frame: [f64; 4],
    /// The marks of the readings.
    pub marks: Vec<MarkPlace>,
}

/// Where the mark of a reading stands: see [`PlotPlaces`].
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct MarkPlace {
    /// Number of the row, from 1.
    pub number: usize,
    /// Share of the width.
    pub x: f64,
    /// Share of the height.
    pub y: f64,
}

/// Where a drawing of `size` pixels has its readings, for who points at them.
///
/// # Errors
/// There is no room to draw in.
pub fn places(
    size: (u32, u32),
    drawing: Drawing<'_>,
    theme: &Theme,
    words: &dyn Words,
) -> Result<PlotPlaces, ChartError> {
    let (width, height) = room(size, theme)?;
    let Scene { frame, marks, .. } = drawing.scene((width, height), theme, words);
    let [(left, top), (right, bottom)] = frame.unwrap_or_default();
    Ok(PlotPlaces {
        frame: [left / width, top / height, right / width, bottom / height],
        marks: marks
            .into_iter()
            .map(|(number, (x, y))| MarkPlace { number, x: x / width, y: y / height })
            .collect(),
    })
}

/// What a drawing of two traces shows, in words.
pub fn traces_words(picture: &TracesPicture) -> Vec<Message> {
    traces::words_of(picture)
}

/// The height that the drawing of the shares needs, in pixels of `theme`.
pub fn shares_height(picture: &SharesPicture, theme: &Theme) -> u32 {
    scene::pixels(shares::height(picture, theme).max(LEAST_HEIGHT * theme.font_px).ceil())
}

/// The height that the drawing of the bench needs at a width, in pixels of `theme`: more where rails or their
/// names have to stand below one another.
pub fn bench_height(width: u32, picture: &BenchPicture, theme: &Theme, words: &dyn Words) -> u32 {
    scene::pixels(bench::height(f64::from(width), picture, theme, words).ceil())
}

/// A drawing as an SVG document of `width` × `height` CSS pixels, with a title for those who can't see it.
///
/// # Errors
/// There is no room to draw in.
pub fn svg(
    (width, height): (u32, u32),
    title: &str,
    drawing: Drawing<'_>,
    theme: &Theme,
    words: &dyn Words,
) -> Result<String, ChartError> {
    let (inner_width, inner_height) = (width.saturating_mul(SVG_GRID), height.saturating_mul(SVG_GRID));
    let mut drawn = String::new();
    let area = SVGBackend::with_string(&mut drawn, (inner_width, inner_height)).into_drawing_area();
    draw(&area, drawing, &theme.scaled(f64::from(SVG_GRID)).for_svg(), words)?;
    area.present()?;
    drop(area);

    // plotters opens with a bare <svg …> line; ours carries the outer size and the title.
    let body = drawn.split_once('\n').map_or("", |(_, body)| body);
    let mut document = String::with_capacity(body.len() + 256);
    let head = write!(
        document,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}\" height=\"{height}\" \
         viewBox=\"0 0 {inner_width} {inner_height}\" role=\"img\">\n<title>{}</title>\n",
        text::escaped(title)
    );
    head.map_err(|error| ChartError::Surface(error.to_string()))?;
    document.push_str(body);
    Ok(document)
}

/// A drawing of `width` × `height` pixels as a picture of LaTeX, as wide as a text on A4; see [`DRAWN`](mod@latex).
///
/// # Errors
/// There is no room to draw in.
pub fn latex(
    size: (u32, u32),
    drawing: Drawing<'_>,
    theme: &Theme,
    words: &dyn Words,
) -> Result<String, ChartError> {
    let size = room(size, theme)?;
    Ok(latex::picture(&drawing.scene(size, theme, words), size))
}

/// A size, px, if it is enough to draw in.
fn room((width, height): (u32, u32), theme: &Theme) -> Result<ScenePoint, ChartError> {
    let size = (f64::from(width), f64::from(height));
    let least = (LEAST_WIDTH * theme.font_px, LEAST_HEIGHT * theme.font_px);
    if size.0 < least.0 || size.1 < least.1 {
        let (least_width, least_height) = (scene::pixels(least.0), scene::pixels(least.1));
        return Err(ChartError::TooSmall { width, height, least_width, least_height });
    }
    Ok(size)
}

#[cfg(test)]
#[path = "chart_test.rs"]
mod tests;
