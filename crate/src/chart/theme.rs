//! Colours and sizes of the drawings.
//!
//! The series take their colours from the palette of Okabe and Ito, chosen so that people with any common form
//! of colour vision can tell them apart (M. Okabe, K. Ito, "Color Universal Design", 2008 revision). Each paper
//! uses those of its colours that stand out from it by at least 3 : 1 (WCAG 2.2, 1.4.11); yellow is left out. Shape and
//! label tell the series apart too. Paper, ink and accent are the page's own, to which the tests hold them.

use plotters::style::RGBAColor;
use plotters_backend::BackendColor;

/// A colour with its opacity.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Colour {
    /// Red, 0 to 255.
    pub red: u8,
    /// Green, 0 to 255.
    pub green: u8,
    /// Blue, 0 to 255.
    pub blue: u8,
    /// Opacity, 0 to 1.
    pub alpha: f64,
}

impl Colour {
    /// An opaque colour.
    pub const fn new(red: u8, green: u8, blue: u8) -> Self {
        Self { red, green, blue, alpha: 1.0 }
    }

    /// The same colour with another opacity.
    #[must_use]
    pub const fn with_alpha(self, alpha: f64) -> Self {
        Self { alpha, ..self }
    }

    pub(super) const fn opaque(self) -> RGBAColor {
        self.with_alpha(1.0).plotters()
    }

    pub(super) const fn plotters(self) -> RGBAColor {
        RGBAColor(self.red, self.green, self.blue, self.alpha)
    }

    pub(super) const fn backend(self) -> BackendColor {
        BackendColor { alpha: self.alpha, rgb: (self.red, self.green, self.blue) }
    }
}

// The palette of Okabe and Ito, by its own names.
const BLACK: Colour = Colour::new(0, 0, 0);
const ORANGE: Colour = Colour::new(230, 159, 0);
const SKY_BLUE: Colour = Colour::new(86, 180, 233);
const BLUISH_GREEN: Colour = Colour::new(0, 158, 115);
const BLUE: Colour = Colour::new(0, 114, 178);
const VERMILION: Colour = Colour::new(213, 94, 0);
const REDDISH_PURPLE: Colour = Colour::new(204, 121, 167);

/// What is drawn on where it is printed, or where more contrast is wished for.
const WHITE: Colour = Colour::new(255, 255, 255);

/// How the drawings look. Lengths are in pixels of the surface drawn on.
#[derive(Clone, Debug, PartialEq)]
pub struct Theme {
    /// Text and axes.
    pub ink: Colour,
    /// Text of second rank.
    pub faint: Colour,
    /// Background.
    pub paper: Colour,
    /// Grid lines.
    pub grid: Colour,
    /// The fitted line, its band, the beam.
    pub accent: Colour,
    /// The series, in order; used again from the start where there are more series.
    pub series: [Colour; 4],
    /// Height of the text, px.
    pub font_px: f64,
    /// Width of a thin line, px.
    pub stroke_px: f64,
    /// Radius of a mark, px.
    pub mark_px: f64,
    /// By what a backend's font size must be multiplied to get `font_px`.
    font_request: f64,
}

impl Theme {
    /// Dark ink on the page's light paper, at one device pixel a CSS pixel.
    pub const fn light() -> Self {
        Self {
            ink: Colour::new(44, 40, 34),
            faint: Colour::new(101, 92, 79),
            paper: Colour::new(253, 250, 244),
            grid: Colour::new(232, 225, 213),
            accent: Colour::new(125, 47, 82),
            series: [BLUISH_GREEN, BLACK, VERMILION, BLUE],
            font_px: 13.0,
            stroke_px: 1.0,
            mark_px: 4.5,
            font_request: 1.0,
        }
    }

    /// Light ink on the page's dark paper, at one device pixel a CSS pixel.
    pub const fn dark() -> Self {
        Self {
            ink: Colour::new(235, 228, 216),
            faint: Colour::new(182, 171, 154),
            paper: Colour::new(33, 30, 26),
            grid: Colour::new(58, 52, 44),
            accent: Colour::new(245, 203, 217),
            series: [BLUISH_GREEN, REDDISH_PURPLE, SKY_BLUE, ORANGE],
            ..Self::light()
        }
    }

    /// Dark ink on white paper, for print.
    pub const fn print() -> Self {
        Self { ink: BLACK, paper: WHITE, grid: Colour::new(228, 228, 228), ..Self::light() }
    }

    /// Where more contrast is wished for, on white: nothing is faint.
    pub const fn white() -> Self {
        Self { faint: BLACK, grid: Colour::new(148, 148, 148), ..Self::print() }
    }

    /// Where more contrast is wished for, on black: nothing is faint.
    pub const fn black() -> Self {
        Self { ink: WHITE, faint: WHITE, paper: BLACK, grid: Colour::new(96, 96, 96), ..Self::dark() }
    }

    /// The same look on a surface with `device_pixels` to a CSS pixel.
    #[must_use]
    pub fn scaled(&self, device_pixels: f64) -> Self {
        let ratio = if device_pixels.is_finite() { device_pixels.clamp(0.25, 16.0) } else { 1.0 };
        Self {
            font_px: self.font_px * ratio,
            stroke_px: self.stroke_px * ratio,
            mark_px: self.mark_px * ratio,
            ..self.clone()
        }
    }

    /// The same look with smaller marks.
    pub(super) fn crowded(&self) -> Self {
        Self { mark_px: 0.5 * self.mark_px, ..self.clone() }
    }

    /// The same look on plotters' SVG backend, which divides font sizes by 1.24.
    pub(super) fn for_svg(self) -> Self {
        Self { font_request: 1.24, ..self }
    }

    /// The colour of a series.
    pub(super) fn colour_of(&self, series: usize) -> Colour {
        let [first, ..] = self.series;
        self.series.iter().copied().cycle().nth(series % self.series.len()).unwrap_or(first)
    }

    /// The font size to ask the backend for.
    pub(super) fn requested_font(&self) -> f64 {
        self.font_px * self.font_request
    }
}

#[cfg(test)]
#[path = "theme_test.rs"]
mod tests;
