//! Delay against distance: the readings with bars of one standard uncertainty, the fitted line and its 95 % band.

use super::frame::{self, BarEnd, Frame, FrameContent, Glyph, LegendEntry};
use super::labels;
use super::marks;
use super::picture::{Band, FittedLine, LinePicture, PlotWindow, PlottedRow, Upright};
use super::scale::{Span, drawable};
use super::scene::{Scene, ScenePoint};
use super::text::{Area, Room};
use super::theme::Theme;
use crate::words::{Value, Words};

/// Corners of the band along each of its edges.
const BAND_CORNERS: u32 = 48;
/// Readings beyond which their marks are smaller and their bars bare, to be told apart.
const MANY: usize = 80;

pub(super) fn scene(size: ScenePoint, picture: &LinePicture, theme: &Theme, words: &dyn Words) -> Scene {
    let mut scene = Scene::default();
    let marks: Vec<&PlottedRow> = picture.marks.iter().filter(|mark| shown(mark)).collect();
    let wanted = FrameContent {
        size,
        x: distances(&marks).part(picture.window.across()),
        y: delays(&marks).part(picture.window.up()),
        x_title: labels::DISTANCE,
        y_title: match picture.upright {
            Upright::Delay => labels::DELAY,
            Upright::Walk => labels::WALK,
        },
        legend: legend(picture, &marks, words),
        decimal_mark: picture.decimal_mark,
    };
    let frame = Frame::draw(&mut scene, &wanted, theme, words);
    if marks.is_empty() {
        frame::sentence(&mut scene, &words.say(&labels::NO_READINGS), &frame.plot, theme);
        return scene;
    }
    if let Some(line) = picture.line.as_ref().filter(|line| can_draw(line)) {
        draw_line(&mut scene, &frame, line, theme);
    }
    let marks = looked_at(marks, &frame, picture.window, |mark| mark.delay);
    let bar = if is_crowd(&marks) { frame::plain_bar } else { frame::bar };
    for mark in &marks {
        draw_bars(&mut scene, &frame, mark, bar, theme);
    }
    draw_marks(&mut scene, &frame, &marks, |mark| mark.delay, (theme, words));
    scene
}

/// The readings that stand in the part that is looked at; in the whole all do, those beyond it at its edge.
pub(super) fn looked_at<'a>(
    marks: Vec<&'a PlottedRow>,
    frame: &Frame,
    window: PlotWindow,
    height: impl Fn(&PlottedRow) -> f64,
) -> Vec<&'a PlottedRow> {
    let (x, y) = (frame.x_span(), frame.y_span());
    let all = window == PlotWindow::default();
    marks.into_iter().filter(|mark| all || (x.holds(mark.distance) && y.holds(height(mark)))).collect()
}

/// Whether there are so many marks that each must be slight.
fn is_crowd(marks: &[&PlottedRow]) -> bool {
    marks.len() > MANY
}

/// Whether a reading can be drawn.
fn shown(mark: &PlottedRow) -> bool {
    drawable(mark.distance) && drawable(mark.delay)
}

fn can_draw(line: &FittedLine) -> bool {
    line.slope.is_finite() && line.intercept.is_finite()
}

fn can_draw_band(band: &Band) -> bool {
    [band.centre, band.u_at_centre, band.u_slope, band.coverage_factor].into_iter().all(f64::is_finite)
}

/// The range of distances, the same for both plots of the readings.
pub(super) fn distances(marks: &[&PlottedRow]) -> Span {
    range(marks, |mark| (mark.distance, mark.u_distance)).reaching_for_zero().padded(0.03)
}

fn delays(marks: &[&PlottedRow]) -> Span {
    range(marks, |mark| (mark.delay, mark.u_delay)).padded(0.05)
}

/// The range of the readings in the line with their bars; of a lone reading, from zero to it. Struck rows are in it too, unless they lie so far
/// off that the line would shrink to a smudge: those are shown at the edge.
fn range(marks: &[&PlottedRow], value: impl Fn(&PlottedRow) -> (f64, Option<f64>)) -> Span {
    let ends = |struck: bool| {
        let chosen = marks.iter().filter(move |mark| mark.struck == struck);
        Span::of(chosen.flat_map(|mark| {
            let (value, u) = value(mark);
            let u = u.filter(|&u| drawable(u)).unwrap_or(0.0);
            [value - u, value + u]
        }))
    };
    let zero = Span { low: 0.0, high: 0.0 };
    match (ends(false), ends(true)) {
        (Some(span), None) | (None, Some(span)) if marks.len() == 1 => span.joined(zero),
        (Some(kept), Some(struck)) => {
            let reach = kept.padded(0.5);
            let near = [struck.low, struck.high].into_iter().filter(|&end| reach.holds(end));
            Span::of(near).map_or(kept, |near| kept.joined(near))
        }
        (Some(span), None) | (None, Some(span)) => span,
        (None, None) => Span { low: 0.0, high: 1.0 },
    }
}

fn legend(picture: &LinePicture, marks: &[&PlottedRow], words: &dyn Words) -> Vec<LegendEntry> {
    let mut legend = series_legend(picture, marks, words);
    if let Some(line) = picture.line.as_ref().filter(|_| !marks.is_empty()) {
        let in_band = line.band.is_some();
        let label = if in_band { labels::LINE_IN_BAND } else { labels::LINE };
        legend.push(LegendEntry { glyph: Glyph::Line { in_band }, label: words.say(&label) });
    }
    if marks.iter().any(|mark| mark.u_delay.is_some() || mark.u_distance.is_some()) {
        legend.push(LegendEntry { glyph: Glyph::Bar, label: words.say(&labels::BARS) });
    }
    legend
}

/// An entry for each series that has a reading, and one for struck rows if there are any.
pub(super) fn series_legend(
    picture: &LinePicture,
    marks: &[&PlottedRow],
    words: &dyn Words,
) -> Vec<LegendEntry> {
    let used = |&(series, _): &(usize, &Value)| marks.iter().any(|mark| mark.series == series);
    let mut legend: Vec<LegendEntry> = picture
        .series
        .iter()
        .enumerate()
        .filter(used)
        .map(|(series, name)| LegendEntry {
            glyph: Glyph::Mark { series, struck: false },
            label: words.text(name),
        })
        .collect();
    if let Some(mark) = marks.iter().find(|mark| mark.struck) {
        let glyph = Glyph::Mark { series: mark.series, struck: true };
        legend.push(LegendEntry { glyph, label: words.say(&labels::STRUCK) });
    }
    legend
}

fn draw_line(scene: &mut Scene, frame: &Frame, line: &FittedLine, theme: &Theme) {
    if let Some(band) = line.band.as_ref().filter(|band| can_draw_band(band)) {
        draw_band(scene, frame, line, band, theme);
    }
    if let Some((from, to)) = inside(line, frame.x_span(), frame.y_span()) {
        scene.stroke(frame.at(from, line.at(from)), frame.at(to, line.at(to)), frame::accent(theme));
    }
}

fn draw_band(scene: &mut Scene, frame: &Frame, line: &FittedLine, band: &Band, theme: &Theme) {
    let x = frame.x_span();
    let places: Vec<f64> = (0..=BAND_CORNERS)
        .map(|corner| x.low + x.width() * f64::from(corner) / f64::from(BAND_CORNERS))
        .collect();
    let above = places.iter().map(|&d| frame.at(d, line.at(d) + band.half_width(d)));
    let below = places.iter().rev().map(|&d| frame.at(d, line.at(d) - band.half_width(d)));
    scene.filled(above.chain(below).collect(), frame::band(theme));
}

/// The distances between which the line runs inside the frame; none if it runs past it.
fn inside(line: &FittedLine, x: Span, y: Span) -> Option<(f64, f64)> {
    if line.slope == 0.0 {
        return y.holds(line.intercept).then_some((x.low, x.high));
    }
    let first = (y.low - line.intercept) / line.slope;
    let last = (y.high - line.intercept) / line.slope;
    let (from, to) = (first.min(last).max(x.low), first.max(last).min(x.high));
    (from < to).then_some((from, to))
}

/// What draws an error bar from one end to the other.
type DrawBar = fn(&mut Scene, [BarEnd; 2], super::Colour, &Theme);

fn draw_bars(scene: &mut Scene, frame: &Frame, mark: &PlottedRow, bar: DrawBar, theme: &Theme) {
    let (d, t) = (mark.distance, mark.delay);
    let colour = theme.colour_of(mark.series);
    let above = |t| BarEnd { at: frame.at(d, t), is_cut: !frame.y_span().holds(t) };
    let along = |d| BarEnd { at: frame.at(d, t), is_cut: !frame.x_span().holds(d) };
    let bars = [
        mark.u_delay.filter(|&u| drawable(u)).map(|u| [t - u, t + u].map(above)),
        mark.u_distance.filter(|&u| drawable(u)).map(|u| [d - u, d + u].map(along)),
    ];
    for ends in bars.into_iter().flatten().filter(|ends| reaches_out(ends, theme)) {
        bar(scene, ends, colour, theme);
    }
}

/// Whether a bar can be seen behind its mark. With hundreds of readings most can't, and each costs time to paint.
fn reaches_out([from, to]: &[BarEnd; 2], theme: &Theme) -> bool {
    (to.at.0 - from.at.0).abs().max((to.at.1 - from.at.1).abs()) > 2.0 * theme.mark_px
}

/// Draws the marks, those in the line on top, and labels the rows that were struck out.
pub(super) fn draw_marks(
    scene: &mut Scene,
    frame: &Frame,
    marks: &[&PlottedRow],
    height: impl Fn(&PlottedRow) -> f64,
    (theme, words): (&Theme, &dyn Words),
) {
    let Area { left, top, right, bottom } = frame.plot;
    let font = theme.font_px;
    let mut room = Room::new(Area { left, top: top - 0.6 * font, right: right + font, bottom });
    // Each shape costs time to paint, and a rim of paper would hide the next mark.
    let crowd = is_crowd(marks);
    let draw = if crowd { marks::bare_mark } else { marks::mark };
    let theme = &if crowd { theme.crowded() } else { theme.clone() };
    let (struck, kept): (Vec<&PlottedRow>, Vec<&PlottedRow>) = marks.iter().partition(|mark| mark.struck);
    for mark in struck.iter().chain(&kept) {
        let at = frame.at(mark.distance, height(mark));
        draw(scene, at, mark.series, mark.struck, theme);
        scene.marks.push((mark.number, at));
        room.take(Area::around(at, theme.mark_px));
    }
    for mark in struck {
        let y = height(mark);
        let label = match beyond(frame, mark.distance, y) {
            Some(arrow) => labels::row_beyond(mark.number, arrow),
            None => labels::row(mark.number),
        };
        label_mark(scene, &mut room, frame.at(mark.distance, y), &words.say(&label), theme);
    }
}

/// On which side of the frame a reading lies, if not in it.
fn beyond(frame: &Frame, x: f64, y: f64) -> Option<char> {
    let sides = [
        (y > frame.y_span().high, '↑'),
        (y < frame.y_span().low, '↓'),
        (x < frame.x_span().low, '←'),
        (x > frame.x_span().high, '→'),
    ];
    sides.into_iter().find_map(|(lies, arrow)| lies.then_some(arrow))
}

/// Writes a label beside a mark, if there is room.
fn label_mark(scene: &mut Scene, room: &mut Room, at: ScenePoint, label: &str, theme: &Theme) {
    if let Some((at, anchor)) = room.beside(at, 2.4 * theme.mark_px, label, theme.font_px) {
        scene.text(label, at, anchor, theme.faint, theme);
    }
}
