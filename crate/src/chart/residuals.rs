//! Residuals in units of their standard uncertainty, against distance, with lines at zero and at ± 2.

use super::frame::{self, Frame, FrameContent, Glyph, LegendEntry};
use super::labels;
use super::line_chart::{distances, draw_marks, looked_at, series_legend};
use super::picture::{LinePicture, PlottedRow};
use super::scale::{Span, drawable};
use super::scene::{Scene, ScenePoint};
use super::theme::Theme;
use crate::words::Words;

/// Residuals up to this are always in the range, in units of their standard uncertainty.
const LEAST_REACH: f64 = 3.0;

pub(super) fn scene(size: ScenePoint, picture: &LinePicture, theme: &Theme, words: &dyn Words) -> Scene {
    let mut scene = Scene::default();
    let readings: Vec<&PlottedRow> = picture.marks.iter().filter(|mark| drawable(mark.distance)).collect();
    let marks: Vec<&PlottedRow> =
        readings.iter().copied().filter(|mark| mark.residual.is_some_and(drawable)).collect();
    let mut legend = series_legend(picture, &marks, words);
    if !marks.is_empty() {
        legend.push(LegendEntry { glyph: Glyph::Dashes, label: words.say(&labels::TWO) });
    }
    let wanted = FrameContent {
        size,
        x: distances(&readings).part(picture.window.across()),
        y: reach(&marks).part(picture.window.up()),
        x_title: labels::DISTANCE,
        y_title: labels::RESIDUAL,
        legend,
        decimal_mark: picture.decimal_mark,
    };
    let frame = Frame::draw(&mut scene, &wanted, theme, words);
    if marks.is_empty() {
        frame::sentence(&mut scene, &words.say(&labels::NO_RESIDUALS), &frame.plot, theme);
        return scene;
    }
    let Span { low, high } = frame.x_span();
    if frame.y_span().holds(0.0) {
        scene.stroke(frame.at(low, 0.0), frame.at(high, 0.0), frame::accent(theme));
    }
    for level in [-2.0, 2.0].into_iter().filter(|level| frame.y_span().holds(*level)) {
        scene.dashed(frame.at(low, level), frame.at(high, level), frame::dashes(theme));
    }
    let marks = looked_at(marks, &frame, picture.window, residual);
    draw_marks(&mut scene, &frame, &marks, residual, (theme, words));
    scene
}

fn residual(mark: &PlottedRow) -> f64 {
    mark.residual.unwrap_or(0.0)
}

/// As far below zero as above it; as far as the residuals of the rows in the line go.
fn reach(marks: &[&PlottedRow]) -> Span {
    let kept = marks.iter().filter(|mark| !mark.struck).map(|mark| residual(mark).abs());
    let reach = kept.fold(LEAST_REACH, f64::max) * 1.1;
    Span { low: -reach, high: reach }
}
