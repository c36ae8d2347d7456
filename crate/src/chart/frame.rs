//! What stands around the readings: legend, axes with ticks and titles, grid.

use crate::quantity::DecimalMark;

use super::labels::Title;
use super::marks;
use super::scale::{Axis, Span};
use super::scene::{Anchor, Pen, Scene, ScenePoint};
use super::text::{Area, shortened, width, wrapped};
use super::theme::Theme;
use crate::words::Words;

/// Levels of a tall drawing, about: more would only be clutter.
const MOST_LEVELS: f64 = 7.0;

/// An entry of the legend.
pub(super) struct LegendEntry {
    pub(super) glyph: Glyph,
    pub(super) label: String,
}

/// The little drawing of a legend entry.
#[derive(Clone, Copy)]
pub(super) enum Glyph {
    /// The mark of a series.
    Mark { series: usize, struck: bool },
    /// The fitted line.
    Line { in_band: bool },
    /// A level dashed line.
    Dashes,
    /// An error bar.
    Bar,
    /// An arrow along the bench.
    Arrow,
    /// The dashed stroke through a splice.
    Splice,
}

/// What a frame is made for.
pub(super) struct FrameContent {
    /// Size of the drawing, px.
    pub(super) size: ScenePoint,
    pub(super) x: Span,
    pub(super) y: Span,
    pub(super) x_title: Title,
    pub(super) y_title: Title,
    pub(super) legend: Vec<LegendEntry>,
    pub(super) decimal_mark: DecimalMark,
}

/// The place of the readings, and how values become places.
pub(super) struct Frame {
    pub(super) plot: Area,
    x: Axis,
    y: Axis,
}

impl Frame {
    /// Draws legend, grid, axes and titles.
    pub(super) fn draw(scene: &mut Scene, wanted: &FrameContent, theme: &Theme, words: &dyn Words) -> Self {
        let font = theme.font_px;
        let (across, down) = wanted.size;
        let legend = legend(scene, &wanted.legend, across, theme);
        let title_at = legend + 0.9 * font;
        let (top, bottom) = (title_at + 1.1 * font, down - 3.3 * font);

        let y = Axis::new(wanted.y, ((bottom - top) / (2.2 * font)).min(MOST_LEVELS), wanted.decimal_mark);
        let left = 1.2 * font + widest(&y, font).max(width("−0.00", font));
        let right = across - 1.2 * font;
        let x = level_axis(wanted.x, right - left, wanted.decimal_mark, font);
        let frame = Self { plot: Area { left, top, right, bottom }, x, y };
        scene.frame = Some([(left, top), (right, bottom)]);

        frame.draw_levels(scene, theme);
        bottom_axis(scene, &frame.plot, &frame.x, across, theme);
        bottom_title(scene, &frame.x.title(&wanted.x_title, words), wanted.size, theme);
        let title = frame.y.title(&wanted.y_title, words);
        scene.text(&title, (0.5 * font, title_at), Anchor::Start, theme.ink, theme);
        frame
    }

    pub(super) fn x_span(&self) -> Span {
        self.x.span
    }

    pub(super) fn y_span(&self) -> Span {
        self.y.span
    }

    /// The place of a value pair; a pair beyond the frame is moved to its edge.
    pub(super) fn at(&self, x: f64, y: f64) -> ScenePoint {
        (place(&self.plot, &self.x, x), self.level(y))
    }

    fn level(&self, y: f64) -> f64 {
        let span = self.y.span;
        let share = (span.nearest(y) - span.low) / span.width();
        self.plot.bottom - share * (self.plot.bottom - self.plot.top)
    }

    fn draw_levels(&self, scene: &mut Scene, theme: &Theme) {
        let Area { left, right, .. } = self.plot;
        for tick in &self.y.ticks {
            let y = self.level(tick.value);
            scene.stroke((left, y), (right, y), grid(theme));
            let at = (left - 0.5 * theme.font_px, y);
            scene.text(&tick.label, at, Anchor::End, theme.faint, theme);
        }
        scene.stroke((left, self.plot.top), (left, self.plot.bottom), edge(theme));
    }
}

/// The place of a value along an axis that fills the width of `plot`, px.
pub(super) fn place(plot: &Area, axis: &Axis, value: f64) -> f64 {
    let span = axis.span;
    plot.left + (span.nearest(value) - span.low) / span.width() * (plot.right - plot.left)
}

/// An axis whose labels stand side by side without touching.
pub(super) fn level_axis(span: Span, room: f64, decimal_mark: DecimalMark, font: f64) -> Axis {
    let mut count = (room / (4.5 * font)).max(1.0);
    loop {
        let axis = Axis::new(span, count, decimal_mark);
        let needed = (widest(&axis, font) + font) * axis.ticks.len() as f64;
        if needed <= room || count <= 1.0 {
            return axis;
        }
        count = (0.7 * count).max(1.0);
    }
}

/// Draws an axis along the bottom of `plot`, with its grid lines.
pub(super) fn bottom_axis(scene: &mut Scene, plot: &Area, axis: &Axis, across: f64, theme: &Theme) {
    let font = theme.font_px;
    for tick in &axis.ticks {
        let x = place(plot, axis, tick.value);
        scene.stroke((x, plot.top), (x, plot.bottom), grid(theme));
        scene.stroke((x, plot.bottom), (x, plot.bottom + 0.3 * font), edge(theme));
        // A long label at the end is drawn inwards.
        let middle = x.min(across - width(&tick.label, font) / 2.0);
        let at = (middle, plot.bottom + 1.1 * font);
        scene.text(&tick.label, at, Anchor::Middle, theme.faint, theme);
    }
    scene.stroke((plot.left, plot.bottom), (plot.right, plot.bottom), edge(theme));
}

/// Writes the title of the axis along the bottom.
pub(super) fn bottom_title(scene: &mut Scene, title: &str, (across, down): ScenePoint, theme: &Theme) {
    let at = (across - 0.8 * theme.font_px, down - 0.9 * theme.font_px);
    scene.text(title, at, Anchor::End, theme.ink, theme);
}

/// Draws the legend across the top, in as many lines as it needs, and returns where it ends.
pub(super) fn legend(scene: &mut Scene, entries: &[LegendEntry], across: f64, theme: &Theme) -> f64 {
    let font = theme.font_px;
    let (start, glyph, gap, line) = (0.5 * font, 1.8 * font, 0.8 * font, 1.4 * font);
    let (mut x, mut y) = (start, 1.0 * font);
    for entry in entries {
        let label = shortened(&entry.label, across - 2.0 * start - glyph, font);
        let needed = glyph + width(&label, font);
        if x > start && x + needed > across - start {
            x = start;
            y += line;
        }
        draw_glyph(scene, entry.glyph, (x + 0.7 * font, y), theme);
        scene.text(&label, (x + glyph, y), Anchor::Start, theme.ink, theme);
        x += needed + gap;
    }
    if entries.is_empty() { 0.0 } else { y + 0.7 * font }
}

fn draw_glyph(scene: &mut Scene, glyph: Glyph, (x, y): ScenePoint, theme: &Theme) {
    let half = 0.65 * theme.font_px;
    match glyph {
        Glyph::Mark { series, struck } => marks::mark(scene, (x, y), series, struck, theme),
        Glyph::Line { in_band } => {
            let tall = 0.4 * theme.font_px;
            let sample = Area { left: x - half, top: y - tall, right: x + half, bottom: y + tall };
            if in_band {
                scene.filled(sample.corners(), band(theme));
            }
            scene.stroke((x - half, y), (x + half, y), accent(theme));
        }
        Glyph::Dashes => scene.dashed((x - half, y), (x + half, y), dashes(theme)),
        Glyph::Bar => {
            let ends = [(x, y - half), (x, y + half)].map(|at| BarEnd { at, is_cut: false });
            bar(scene, ends, theme.ink, theme);
        }
        Glyph::Splice => scene.dashed((x, y - half), (x, y + half), dashes(theme)),
        Glyph::Arrow => arrow(scene, (x - half, y), (x + half, y), theme),
    }
}

/// Where the drawing of an error bar ends.
#[derive(Clone, Copy)]
pub(super) struct BarEnd {
    pub(super) at: ScenePoint,
    /// Whether the bar itself goes on, beyond the frame.
    pub(super) is_cut: bool,
}

/// An error bar with a short cross stroke where it ends, as one path: a backend paints one faster than three.
pub(super) fn bar(scene: &mut Scene, [from, to]: [BarEnd; 2], colour: super::Colour, theme: &Theme) {
    let pen = Pen { colour, width: theme.stroke_px };
    let cap = 0.6 * theme.mark_px;
    let upright = (to.at.1 - from.at.1).abs() > (to.at.0 - from.at.0).abs();
    let end = |BarEnd { at: (x, y), is_cut }: BarEnd| {
        let cap = if is_cut { 0.0 } else { cap };
        let (dx, dy) = if upright { (cap, 0.0) } else { (0.0, cap) };
        [(x - dx, y - dy), (x + dx, y + dy), (x, y)]
    };
    let points = end(from).into_iter().chain(end(to).into_iter().rev());
    scene.path(points.collect(), pen);
}

/// An error bar without cross strokes.
pub(super) fn plain_bar(scene: &mut Scene, [from, to]: [BarEnd; 2], colour: super::Colour, theme: &Theme) {
    scene.stroke(from.at, to.at, Pen { colour, width: theme.stroke_px });
}

/// A level arrow.
pub(super) fn arrow(scene: &mut Scene, from: ScenePoint, to: ScenePoint, theme: &Theme) {
    let pen = Pen { colour: theme.faint, width: theme.stroke_px };
    let head = 0.35 * theme.font_px * (to.0 - from.0).signum();
    scene.stroke(from, to, pen);
    scene.filled(vec![to, (to.0 - head, to.1 - 0.6 * head), (to.0 - head, to.1 + 0.6 * head)], theme.faint);
}

/// A sentence in the middle of an empty frame.
pub(super) fn sentence(scene: &mut Scene, text: &str, area: &Area, theme: &Theme) {
    let font = theme.font_px;
    let lines = wrapped(text, area.right - area.left - 2.0 * font, font);
    let (x, mut y) = (f64::midpoint(area.left, area.right), f64::midpoint(area.top, area.bottom));
    y -= 0.7 * font * (lines.len() as f64 - 1.0);
    for line in lines {
        scene.text(&line, (x, y), Anchor::Middle, theme.faint, theme);
        y += 1.4 * font;
    }
}

/// The pen of the fitted line.
pub(super) fn accent(theme: &Theme) -> Pen {
    Pen { colour: theme.accent, width: 1.5 * theme.stroke_px }
}

/// The pen of lines that bound.
pub(super) fn dashes(theme: &Theme) -> Pen {
    Pen { colour: theme.accent, width: theme.stroke_px }
}

/// The colour of the fitted line's band.
pub(super) fn band(theme: &Theme) -> super::Colour {
    theme.accent.with_alpha(0.2)
}

/// The pen of axes.
pub(super) fn edge(theme: &Theme) -> Pen {
    Pen { colour: theme.faint, width: theme.stroke_px }
}

fn grid(theme: &Theme) -> Pen {
    Pen { colour: theme.grid, width: theme.stroke_px }
}

fn widest(axis: &Axis, font: f64) -> f64 {
    axis.ticks.iter().map(|tick| width(&tick.label, font)).fold(0.0, f64::max)
}
