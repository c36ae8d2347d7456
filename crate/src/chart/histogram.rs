//! Monte Carlo trials counted in bins, with the curve that the budget expects over them and both intervals.

use super::frame::{self, Frame, FrameContent, Glyph, LegendEntry};
use super::labels;
use super::picture::HistogramPicture;
use super::scale::{Span, drawable};
use super::scene::{Pen, Scene, ScenePoint};
use super::theme::Theme;
use crate::words::{Message, Words};

/// Share of a bin's width left empty between bars.
const APART: f64 = 0.08;

pub(super) fn scene(size: ScenePoint, picture: &HistogramPicture, theme: &Theme, words: &dyn Words) -> Scene {
    let mut scene = Scene::default();
    let bins = picture.densities.len() as f64;
    let whole = Span { low: picture.from, high: picture.from + bins * picture.width };
    let sound = drawable(whole.low) && drawable(whole.high) && picture.width > 0.0;
    let tallest = picture.densities.iter().chain(picture.curve.iter().map(|(_, y)| y)).copied();
    let tallest = tallest.filter(|y| drawable(*y)).fold(0.0, f64::max);
    let entry = |glyph, label: &Message| LegendEntry { glyph, label: words.say(label) };
    let mut legend = vec![entry(Glyph::Mark { series: 1, struck: false }, &labels::TRIALS)];
    if !picture.curve.is_empty() {
        legend.push(entry(Glyph::Line { in_band: false }, &labels::BUDGET_CURVE));
    }
    legend.push(entry(Glyph::Dashes, &labels::ENDS));
    let wanted = FrameContent {
        size,
        x: if sound { whole } else { Span { low: 0.0, high: 1.0 } },
        y: Span { low: 0.0, high: if tallest > 0.0 { tallest * 1.05 } else { 1.0 } },
        x_title: labels::SPEED,
        y_title: labels::DENSITY,
        legend,
        decimal_mark: picture.decimal_mark,
    };
    let frame = Frame::draw(&mut scene, &wanted, theme, words);
    if !sound {
        frame::sentence(&mut scene, &words.say(&labels::NO_TRIALS), &frame.plot, theme);
        return scene;
    }
    for (bin, density) in picture.densities.iter().enumerate().filter(|(_, density)| **density > 0.0) {
        let left = picture.from + (bin as f64 + APART / 2.0) * picture.width;
        let right = picture.from + (bin as f64 + 1.0 - APART / 2.0) * picture.width;
        let corners = [(left, 0.0), (right, 0.0), (right, *density), (left, *density)];
        let corners = corners.map(|(x, y)| frame.at(x, y)).to_vec();
        scene.filled(corners, theme.colour_of(1).with_alpha(0.55));
    }
    let shown = picture.curve.iter().filter(|(x, _)| whole.holds(*x));
    scene.path(shown.map(|(x, y)| frame.at(*x, *y)).collect(), frame::accent(theme));
    let pen: Pen = frame::dashes(theme);
    for end in picture.interval.into_iter().filter(|end| whole.holds(*end)) {
        scene.dashed(frame.at(end, 0.0), frame.at(end, frame.y_span().high), pen);
    }
    scene
}
