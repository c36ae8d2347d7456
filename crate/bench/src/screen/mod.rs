//! A plain screen of our own drawing, and a photograph of it.
//!
//! A [`Screen`] is drawn from the divisions: grid, ticks, two traces whose edges stand at known columns. A [`Camera`]
//! looks at it from a tilt, through a lens that may bend, with blur, vignetting and noise. What is true of the picture
//! is kept apart from it, in [`PictureTruth`].
//!
//! Frames are those of `slope_evidence::photo`: pixels to the right and downwards, the middle of the first pixel at
//! (0.5, 0.5); columns along the time axis, rows downwards.

mod lettering;
mod theme;
mod drawing;
mod camera;
mod demo;

pub use camera::{Camera, Picture, PictureTruth};
pub use demo::{Shot, demo_series, on_a_shelf, random_view};
pub use drawing::{Pulse, Raster, Screen};
pub use theme::{Rgb, ScreenTheme, THEMES};

#[cfg(test)]
#[path = "mod_test.rs"]
mod tests;
