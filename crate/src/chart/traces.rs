//! Both recorded traces against time, with baselines, tops, the levels crossed, and the edges found.

use crate::quantity::{plain, short_form};

use super::frame::{self, Frame, FrameContent, Glyph, LegendEntry};
use super::labels;
use super::picture::{TraceEdge, TracePicture, TracePulse, TracesPicture};
use super::scale::{Span, drawable};
use super::scene::{Pen, Scene, ScenePoint};
use super::theme::{Colour, Theme};
use crate::message;
use crate::words::{Message, Words};

/// Shares of the height that are marked on either edge.
const SHARES: [f64; 3] = [0.1, 0.5, 0.9];

pub(super) fn scene(size: ScenePoint, picture: &TracesPicture, theme: &Theme, words: &dyn Words) -> Scene {
    let mut scene = Scene::default();
    let [from, to] = picture.span;
    let x = Span::of([from, to]).unwrap_or(Span { low: 0.0, high: 1.0 });
    let seen = |trace: &TracePicture| {
        let bounds = points(trace).filter(|(time, _)| x.holds(*time)).map(|(_, volts)| volts);
        bounds.collect::<Vec<f64>>()
    };
    let levels: Vec<f64> = picture.traces.iter().flat_map(seen).collect();
    let wanted = FrameContent {
        size,
        x,
        y: Span::of(levels.iter().copied()).unwrap_or(Span { low: 0.0, high: 1.0 }).padded(0.06),
        x_title: labels::TIME,
        y_title: labels::VOLTAGE,
        legend: legend(words),
        decimal_mark: picture.decimal_mark,
    };
    let frame = Frame::draw(&mut scene, &wanted, theme, words);
    if levels.is_empty() {
        frame::sentence(&mut scene, &words.say(&labels::NO_SAMPLES), &frame.plot, theme);
        return scene;
    }
    for (series, trace) in picture.traces.iter().enumerate() {
        let colour = theme.colour_of(series);
        if let Some(pulse) = &trace.pulse {
            levels_of(&mut scene, &frame, pulse, colour, theme);
        }
        samples(&mut scene, &frame, trace, Pen { colour, width: 1.25 * theme.stroke_px });
    }
    for (series, trace) in picture.traces.iter().enumerate() {
        if let Some(found) = trace.pulse.and_then(|pulse| pulse.edge) {
            edge(&mut scene, &frame, &found, (series, theme));
        }
    }
    scene
}

fn legend(words: &dyn Words) -> Vec<LegendEntry> {
    let entry = |glyph, label: &Message| LegendEntry { glyph, label: words.say(label) };
    let trace = |series, label| entry(Glyph::Mark { series, struck: false }, label);
    vec![trace(0, &labels::TRACE_A), trace(1, &labels::TRACE_B), entry(Glyph::Dashes, &labels::THRESHOLD)]
}

/// The bounds of each stretch, one after the other: a stretch of one sample has but one.
fn points(trace: &TracePicture) -> impl Iterator<Item = ScenePoint> {
    let two = trace.bounds.iter().enumerate().flat_map(|(index, [least, greatest])| {
        let time = trace.start + index as f64 * trace.step;
        let second = (least != greatest).then_some((time, *greatest));
        std::iter::once((time, *least)).chain(second)
    });
    two.filter(|(time, volts)| drawable(*time) && drawable(*volts))
}

/// The trace as far as it lies in the frame, as one path.
fn samples(scene: &mut Scene, frame: &Frame, trace: &TracePicture, pen: Pen) {
    let span = frame.x_span();
    let shown = points(trace).filter(|(time, _)| span.holds(*time));
    let path: Vec<ScenePoint> = shown.map(|(time, volts)| frame.at(time, volts)).collect();
    if path.len() > 1 {
        scene.path(path, pen);
    }
}

/// Baseline and top as thin lines, shares of the height as ticks about the edge, the level crossed in dashes.
fn levels_of(scene: &mut Scene, frame: &Frame, pulse: &TracePulse, colour: Colour, theme: &Theme) {
    let (x, y) = (frame.x_span(), frame.y_span());
    let thin = Pen { colour: colour.with_alpha(0.45), width: theme.stroke_px };
    for level in [pulse.baseline, pulse.top] {
        if y.holds(level) {
            scene.stroke(frame.at(x.low, level), frame.at(x.high, level), thin);
        }
    }
    let Some(edge) = &pulse.edge else { return };
    if y.holds(edge.level) {
        scene.dashed(frame.at(x.low, edge.level), frame.at(x.high, edge.level), frame::dashes(theme));
    }
    for share in SHARES {
        let level = pulse.baseline + share * (pulse.top - pulse.baseline);
        if y.holds(level) && x.holds(edge.time) {
            let (across, down) = frame.at(edge.time, level);
            let half = theme.font_px;
            scene.stroke((across - half, down), (across + half, down), thin);
        }
    }
}

/// The edge: a band of one standard uncertainty to either side, and a mark where the level is crossed.
fn edge(scene: &mut Scene, frame: &Frame, edge: &TraceEdge, (series, theme): (usize, &Theme)) {
    let x = frame.x_span();
    if !x.holds(edge.time) {
        return;
    }
    let colour = theme.colour_of(series);
    let plot = &frame.plot;
    let u = edge.u.max(0.0);
    let [left, right] = [-u, u].map(|off| frame.at(edge.time + off, 0.0).0);
    if right - left > theme.stroke_px {
        let corners = vec![(left, plot.top), (right, plot.top), (right, plot.bottom), (left, plot.bottom)];
        scene.filled(corners, colour.with_alpha(0.25));
    }
    let (across, _) = frame.at(edge.time, 0.0);
    scene.stroke((across, plot.top), (across, plot.bottom), Pen { colour, width: theme.stroke_px });
    if frame.y_span().holds(edge.level) {
        super::marks::mark(scene, frame.at(edge.time, edge.level), series, false, theme);
    }
}

/// Drawn traces in words, a message each: which time is shown, and of each its levels and its edge.
pub(super) fn words_of(picture: &TracesPicture) -> Vec<Message> {
    let number = |value: f64| plain(value, 3, picture.decimal_mark);
    let [from, to] = picture.span;
    let trace = |(name, trace): (&str, &TracePicture)| {
        let Some(pulse) = &trace.pulse else { return message!("chart-trace-none", trace = name) };
        let (baseline, top) = (number(pulse.baseline), number(pulse.top));
        let Some(edge) = &pulse.edge else {
            return message!("chart-trace-levels", trace = name, baseline = baseline, top = top);
        };
        let time = short_form(edge.time, Some(edge.u).filter(|u| *u > 0.0), "ns", picture.decimal_mark);
        message!(
            "chart-trace-edge",
            trace = name,
            baseline = baseline,
            top = top,
            level = number(edge.level),
            time = time
        )
    };
    let span = message!("chart-traces-span", from = number(from), to = number(to));
    std::iter::once(span).chain(["A", "B"].into_iter().zip(&picture.traces).map(trace)).collect()
}

#[cfg(test)]
#[path = "traces_test.rs"]
mod tests;
