//! The drawings: the line with its readings, the residuals, the bench to scale, the budget's shares, and a
//! histogram of trials.
//!
//! Each drawing is a pure function of a small picture (see [`picture`]) and a [`Theme`]. It is first laid out as
//! a list of plain shapes, in pixels, and then painted on any plotters backend: a canvas in the page, SVG for
//! the bundle. So only the painting is compiled once for each backend.
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

use std::error::Error;
use std::fmt::Write;

use plotters::coord::Shift;
use plotters::drawing::{DrawingArea, DrawingAreaErrorKind, IntoDrawingArea};
use plotters::prelude::{DrawingBackend, SVGBackend};

pub use picture::{
    Band, BenchPicture, BenchRail, BenchSplice, Carriage, FittedLine, HistogramPicture, LinePicture,
    PlottedRow, Share, SharesPicture, TraceEdge, TracePicture, TracePulse, TracesPicture, Upright,
};
pub use theme::{Colour, Theme};

use crate::words::{Message, Words};
use crate::{errors_as_data, message};
use scene::Scene;

/// Pixels of the SVG's inner grid to one CSS pixel: plotters places shapes on whole pixels.
const SVG_GRID: u32 = 4;

/// Least size of a drawing, in heights of the text.
const LEAST_WIDTH: f64 = 14.0;
/// See [`LEAST_WIDTH`].
const LEAST_HEIGHT: f64 = 12.0;

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

/// Draws delay against distance: the readings with their standard uncertainties, the fitted line and its band.
///
/// # Errors
/// The area is too small, or its backend refuses.
pub fn line<B: DrawingBackend>(
    area: &DrawingArea<B, Shift>,
    picture: &LinePicture,
    theme: &Theme,
    words: &dyn Words,
) -> Result<(), ChartError> {
    paint(area, &line_chart::scene(room(area, theme)?, picture, theme, words), theme)
}

/// Draws the residuals, in units of their standard uncertainty, against distance.
///
/// # Errors
/// The area is too small, or its backend refuses.
pub fn residuals<B: DrawingBackend>(
    area: &DrawingArea<B, Shift>,
    picture: &LinePicture,
    theme: &Theme,
    words: &dyn Words,
) -> Result<(), ChartError> {
    paint(area, &residuals::scene(room(area, theme)?, picture, theme, words), theme)
}

/// Draws the bench seen from above, to scale along the beam: splitter, rails, splices, carriage positions.
///
/// # Errors
/// The area is too small, or its backend refuses.
pub fn bench<B: DrawingBackend>(
    area: &DrawingArea<B, Shift>,
    picture: &BenchPicture,
    theme: &Theme,
    words: &dyn Words,
) -> Result<(), ChartError> {
    paint(area, &bench::scene(room(area, theme)?, picture, theme, words), theme)
}

/// Draws Monte Carlo trials in bins, with the curve that the budget expects and the ends of the trials' interval.
///
/// # Errors
/// The area is too small, or its backend refuses.
pub fn histogram<B: DrawingBackend>(
    area: &DrawingArea<B, Shift>,
    picture: &HistogramPicture,
    theme: &Theme,
    words: &dyn Words,
) -> Result<(), ChartError> {
    paint(area, &histogram::scene(room(area, theme)?, picture, theme, words), theme)
}

/// Draws two recorded traces with what was found on them.
///
/// # Errors
/// The area is too small, or its backend refuses.
pub fn traces<B: DrawingBackend>(
    area: &DrawingArea<B, Shift>,
    picture: &TracesPicture,
    theme: &Theme,
    words: &dyn Words,
) -> Result<(), ChartError> {
    paint(area, &traces::scene(room(area, theme)?, picture, theme, words), theme)
}

/// What [`traces()`] draws, in words.
pub fn traces_words(picture: &TracesPicture) -> Vec<Message> {
    traces::words_of(picture)
}

/// Draws the shares of the budget as bars.
///
/// # Errors
/// The area is too small, or its backend refuses.
pub fn shares<B: DrawingBackend>(
    area: &DrawingArea<B, Shift>,
    picture: &SharesPicture,
    theme: &Theme,
    words: &dyn Words,
) -> Result<(), ChartError> {
    paint(area, &shares::scene(room(area, theme)?, picture, theme, words), theme)
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

/// Where an SVG document is drawn.
pub type SvgArea<'a> = DrawingArea<SVGBackend<'a>, Shift>;

/// Makes an SVG document of `width` × `height` CSS pixels, with a title for those who can't see it.
/// `draw` is given the area and the theme scaled to it.
///
/// # Errors
/// What `draw` returns.
pub fn svg(
    width: u32,
    height: u32,
    title: &str,
    theme: &Theme,
    draw: &dyn Fn(&SvgArea<'_>, &Theme) -> Result<(), ChartError>,
) -> Result<String, ChartError> {
    let (inner_width, inner_height) = (width.saturating_mul(SVG_GRID), height.saturating_mul(SVG_GRID));
    let mut drawn = String::new();
    let area = SVGBackend::with_string(&mut drawn, (inner_width, inner_height)).into_drawing_area();
    draw(&area, &theme.scaled(f64::from(SVG_GRID)).for_svg())?;
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

/// The size of an area, px, if it is enough to draw in.
fn room<B: DrawingBackend>(area: &DrawingArea<B, Shift>, theme: &Theme) -> Result<(f64, f64), ChartError> {
    let (width, height) = area.dim_in_pixel();
    let size = (f64::from(width), f64::from(height));
    let least = (LEAST_WIDTH * theme.font_px, LEAST_HEIGHT * theme.font_px);
    if size.0 < least.0 || size.1 < least.1 {
        let (least_width, least_height) = (scene::pixels(least.0), scene::pixels(least.1));
        return Err(ChartError::TooSmall { width, height, least_width, least_height });
    }
    Ok(size)
}

fn paint<B: DrawingBackend>(
    area: &DrawingArea<B, Shift>,
    scene: &Scene,
    theme: &Theme,
) -> Result<(), ChartError> {
    area.fill(&theme.paper.opaque())?;
    area.draw(scene)?;
    Ok(())
}

#[cfg(test)]
#[path = "chart_test.rs"]
mod tests;
