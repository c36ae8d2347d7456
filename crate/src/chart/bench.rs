//! The bench seen from above, to scale along the beam: splitter, rails with their end readings and splices, and
//! the carriage positions taken so far. Rails that would touch stand below one another.

use super::frame::{self, Glyph, LegendEntry, arrow, bottom_axis, bottom_title, level_axis, place};
use super::picture::{BenchPicture, BenchRail, BenchSplice, Carriage};
use super::scale::{Axis, Span, drawable};
use super::scene::{Anchor, Pen, Scene, ScenePoint};
use super::text::{Area, shortened, width};
use super::theme::{Colour, Theme};
use super::{labels, marks};
use crate::words::Words;

/// Tallest track of a rail, in heights of the text: name, rail, readings.
const TRACK: f64 = 4.6;
/// From the top of the bench to the beam, in heights of the text.
const ABOVE_BEAM: f64 = 2.8;
/// From the beam to the first track, in heights of the text.
const BELOW_BEAM: f64 = 0.9;
/// Labels and title of the axis, in heights of the text.
const AXIS: f64 = 3.3;

pub(super) fn scene(size: ScenePoint, picture: &BenchPicture, theme: &Theme, words: &dyn Words) -> Scene {
    let mut scene = Scene::default();
    let font = theme.font_px;
    let top = frame::legend(&mut scene, &legend(picture, words), size.0, theme);
    let notes = notes_height(picture, theme);
    let bench = BenchLayout::new(size.0, (top, size.1 - AXIS * font - notes), picture, (theme, words));
    bottom_axis(&mut scene, &bench.plot, &bench.axis, size.0, theme);
    bottom_title(
        &mut scene,
        &bench.axis.title(&labels::BENCH_DISTANCE, words),
        (size.0, size.1 - notes),
        theme,
    );
    if notes > 0.0 {
        let note = shortened(&words.say(&labels::unplaced(&picture.unplaced)), size.0 - font, font);
        scene.text(&note, (0.5 * font, size.1 - 0.9 * font), Anchor::Start, theme.faint, theme);
    }

    let beam = bench.plot.top + ABOVE_BEAM * font;
    bench.draw_beam(&mut scene, beam);
    let below = Area { top: beam + BELOW_BEAM * font, ..bench.plot };
    let rails = bench.placed(picture, &below);
    if rails.is_empty() {
        frame::sentence(&mut scene, &words.say(&labels::NO_RAILS), &below, theme);
    }
    let mut before = beam;
    for placed in &rails {
        if let Some(splice) = placed.rail.splice.as_ref().filter(|splice| drawable(splice.distance)) {
            bench.draw_splice(&mut scene, splice, before, placed.level);
        }
        before = placed.level;
    }
    for placed in &rails {
        bench.draw_rail(&mut scene, placed);
    }
    bench.draw_carriages(&mut scene, picture, &rails, beam);
    scene
}

/// The height at which nothing has to be squeezed, px.
pub(super) fn height(across: f64, picture: &BenchPicture, theme: &Theme, words: &dyn Words) -> f64 {
    let font = theme.font_px;
    let top = frame::legend(&mut Scene::default(), &legend(picture, words), across, theme);
    let bench = BenchLayout::new(across, (top, top), picture, (theme, words));
    let tracks = bench.tracks(picture).iter().map(|&(_, _, track)| track + 1).max().unwrap_or(1);
    let rails = TRACK * font * tracks as f64;
    bench.plot.top + (ABOVE_BEAM + BELOW_BEAM + AXIS) * font + rails + notes_height(picture, theme)
}

fn notes_height(picture: &BenchPicture, theme: &Theme) -> f64 {
    if picture.unplaced.is_empty() { 0.0 } else { 1.4 * theme.font_px }
}

fn shown(rail: &BenchRail) -> bool {
    drawable(rail.near) && drawable(rail.far)
}

/// From the splitter (or before it) to the farthest end.
fn span(picture: &BenchPicture) -> Span {
    let rails = picture.rails.iter().filter(|rail| shown(rail)).flat_map(|rail| [rail.near, rail.far]);
    let carriages = picture.carriages.iter().map(|carriage| carriage.distance);
    let values: Vec<f64> = rails.chain(carriages).filter(|&value| drawable(value)).collect();
    if values.is_empty() {
        return Span { low: 0.0, high: 1.0 };
    }
    Span::of(values.into_iter().chain([0.0])).unwrap_or(Span { low: 0.0, high: 1.0 })
}

fn legend(picture: &BenchPicture, words: &dyn Words) -> Vec<LegendEntry> {
    let mut legend = Vec::new();
    let series = |struck: bool| {
        let carriage = picture.carriages.iter().find(|carriage| carriage.struck == struck);
        carriage.map(|carriage| series_of(carriage.rail, picture))
    };
    for (struck, label) in [(false, labels::CARRIAGE), (true, labels::STRUCK)] {
        if let Some(series) = series(struck) {
            legend.push(LegendEntry { glyph: Glyph::Mark { series, struck }, label: words.say(&label) });
        }
    }
    if !picture.rails.is_empty() {
        legend.push(LegendEntry { glyph: Glyph::Arrow, label: words.say(&labels::GROWS) });
        legend.push(LegendEntry { glyph: Glyph::Splice, label: words.say(&labels::SPLICE) });
    }
    legend
}

/// Distances given directly form the series after the last rail.
fn series_of(rail: Option<usize>, picture: &BenchPicture) -> usize {
    rail.unwrap_or(picture.rails.len())
}

/// A rail with its number in the picture, its level and the height of its track, px.
struct PlacedRail<'p> {
    index: usize,
    rail: &'p BenchRail,
    level: f64,
    height: f64,
}

struct BenchLayout<'a> {
    plot: Area,
    axis: Axis,
    theme: &'a Theme,
    words: &'a dyn Words,
}

impl<'a> BenchLayout<'a> {
    fn new(
        across: f64,
        (top, bottom): (f64, f64),
        picture: &BenchPicture,
        (theme, words): (&'a Theme, &'a dyn Words),
    ) -> Self {
        let font = theme.font_px;
        let (left, right) = (4.3 * font, across - 1.2 * font);
        let axis = level_axis(span(picture), right - left, picture.decimal_mark, font);
        Self { plot: Area { left, top: top + 0.4 * font, right, bottom }, axis, theme, words }
    }

    fn x(&self, distance: f64) -> f64 {
        place(&self.plot, &self.axis, distance)
    }

    /// Source, beam, splitter and the start detector A.
    fn draw_beam(&self, scene: &mut Scene, y: f64) {
        let (theme, font) = (self.theme, self.theme.font_px);
        let splitter = self.x(0.0);
        let half = 0.6 * font;
        scene.stroke((0.8 * font, y), (self.plot.right, y), frame::accent(theme));
        scene.stroke((splitter, y), (splitter, y - 1.5 * font), frame::accent(theme));
        let source = Area { left: 0.5 * font, top: y - half, right: 2.0 * font, bottom: y + half };
        scene.filled(source.corners(), theme.ink);
        scene.text(
            &self.words.say(&labels::SOURCE),
            (0.5 * font, y + 1.3 * font),
            Anchor::Start,
            theme.faint,
            theme,
        );
        let start = Area::around((splitter, y - 1.7 * font), 0.45 * font);
        scene.filled(start.corners(), theme.ink);
        let pen = Pen { colour: theme.ink, width: 2.0 * theme.stroke_px };
        scene.stroke((splitter - half, y + half), (splitter + half, y - half), pen);
        let beside = splitter + 0.9 * font;
        scene.text(
            &self.words.say(&labels::START),
            (beside, y - 1.7 * font),
            Anchor::Start,
            theme.faint,
            theme,
        );
        scene.text(
            &self.words.say(&labels::SPLITTER),
            (beside, y - 0.7 * font),
            Anchor::Start,
            theme.faint,
            theme,
        );
    }

    /// Each rail, with its number in the picture and its track: the first in which neither it nor its words touch
    /// another.
    fn tracks<'p>(&self, picture: &'p BenchPicture) -> Vec<(usize, &'p BenchRail, usize)> {
        let slack = 2.0 * self.theme.stroke_px;
        let mut ends: Vec<f64> = Vec::new();
        let mut tracks = Vec::new();
        for (index, rail) in picture.rails.iter().enumerate().filter(|(_, rail)| shown(rail)) {
            let (left, right) = self.extent(rail);
            let track = ends.iter().position(|&end| end <= left + slack).unwrap_or(ends.len());
            match ends.get_mut(track) {
                Some(end) => *end = right,
                None => ends.push(right),
            }
            tracks.push((index, rail, track));
        }
        tracks
    }

    /// The rails on their tracks, which share the room below the beam.
    fn placed<'p>(&self, picture: &'p BenchPicture, below: &Area) -> Vec<PlacedRail<'p>> {
        let tracks = self.tracks(picture);
        let count = tracks.iter().map(|&(_, _, track)| track + 1).max().unwrap_or(1);
        let height = ((below.bottom - below.top) / count as f64).clamp(0.0, TRACK * self.theme.font_px);
        let level = |track: usize| below.top + (track as f64 + 0.5) * height;
        tracks
            .into_iter()
            .map(|(index, rail, track)| PlacedRail { index, rail, level: level(track), height })
            .collect()
    }

    /// How far a rail and its words reach, px.
    fn extent(&self, rail: &BenchRail) -> (f64, f64) {
        let font = self.theme.font_px;
        let (left, right) = self.ends(rail);
        let readings = width(&rail.near_reading, font) + width(&rail.far_reading, font) + 1.2 * font;
        let words =
            readings.max(width(&self.title(rail), font)).min(0.5 * (self.plot.right - self.plot.left));
        (left, right.max(left + words + 0.6 * font))
    }

    /// Where the words of a rail may stand, px.
    fn words_between(&self, rail: &BenchRail) -> (f64, f64) {
        let (left, right) = self.extent(rail);
        let inset = 0.3 * self.theme.font_px;
        (left + inset, right.min(self.plot.right + self.theme.font_px) - inset)
    }

    fn ends(&self, rail: &BenchRail) -> (f64, f64) {
        (self.x(rail.near.min(rail.far)), self.x(rail.near.max(rail.far)))
    }

    /// The rail with its name above; below, what its ruler shows at the ends, and in which sense it counts.
    fn draw_rail(&self, scene: &mut Scene, placed: &PlacedRail) {
        let (theme, font) = (self.theme, self.theme.font_px);
        let PlacedRail { rail, level, height, .. } = *placed;
        let (left, right) = self.ends(rail);
        let half = 0.3 * font;
        let body = Area { left, top: level - half, right, bottom: level + half };
        scene.filled(body.corners(), theme.grid);
        let mut outline = body.corners();
        outline.push((left, body.top));
        scene.path(outline, frame::edge(theme));

        // In a squeezed track the readings go first, then the name.
        if height >= 2.4 * font {
            self.draw_title(scene, rail, level - 1.1 * font);
        }
        if height >= 3.6 * font {
            self.draw_readings(scene, rail, level + 1.1 * font);
        }
    }

    fn draw_title(&self, scene: &mut Scene, rail: &BenchRail, y: f64) {
        let (from, to) = self.words_between(rail);
        let title = shortened(&self.title(rail), to - from, self.theme.font_px);
        self.on_paper(scene, &title, (from, y), self.theme.ink);
    }

    /// Words with paper behind them, which keeps the strokes of splices off. Gives their width.
    fn on_paper(&self, scene: &mut Scene, words: &str, (left, y): ScenePoint, colour: Colour) -> f64 {
        let font = self.theme.font_px;
        let across = width(words, font);
        let behind = Area { left, top: y - 0.6 * font, right: left + across, bottom: y + 0.6 * font };
        scene.filled(behind.corners(), self.theme.paper);
        scene.text(words, (left, y), Anchor::Start, colour, self.theme);
        across
    }

    fn draw_readings(&self, scene: &mut Scene, rail: &BenchRail, y: f64) {
        let (theme, font) = (self.theme, self.theme.font_px);
        let (from, room_ends) = self.words_between(rail);
        let to = self.ends(rail).1 - 0.3 * font;
        let near = shortened(&rail.near_reading, room_ends - from, font);
        let first = self.on_paper(scene, &near, (from, y), theme.faint);
        let last = width(&rail.far_reading, font);
        let both = first + last + 0.6 * font <= to - from;
        if both {
            scene.text(&rail.far_reading, (to, y), Anchor::End, theme.faint, theme);
        }
        let from = from + first + 0.5 * font;
        let to = if both { to - last - 0.5 * font } else { to.max(from + 2.4 * font).min(room_ends) };
        let half = (0.5 * (to - from)).min(1.2 * font);
        if half >= 0.5 * font {
            let middle = 0.5 * (from + to);
            let way = if rail.grows { half } else { -half };
            arrow(scene, (middle - way, y), (middle + way, y), theme);
        }
    }

    /// A stroke through the place that ties the rail, from what it is tied to.
    fn draw_splice(&self, scene: &mut Scene, splice: &BenchSplice, before: f64, level: f64) {
        let x = self.x(splice.distance);
        let over = 0.65 * self.theme.font_px;
        let (from, to) = (before.min(level - over), before.max(level + over));
        scene.dashed((x, from), (x, to), frame::dashes(self.theme));
    }

    fn draw_carriages(&self, scene: &mut Scene, picture: &BenchPicture, rails: &[PlacedRail], beam: f64) {
        let shown = || picture.carriages.iter().filter(|carriage| drawable(carriage.distance));
        let at = |carriage: &Carriage| {
            let rail = rails.iter().find(|placed| Some(placed.index) == carriage.rail);
            (self.x(carriage.distance), rail.map_or(beam, |placed| placed.level))
        };
        for carriage in shown().filter(|carriage| carriage.struck).chain(shown().filter(|c| !c.struck)) {
            let series = series_of(carriage.rail, picture);
            marks::mark(scene, at(carriage), series, carriage.struck, self.theme);
        }
    }

    /// What stands above a rail: its name, and a word on its splice.
    fn title(&self, rail: &BenchRail) -> String {
        match rail.splice.as_ref().map(|splice| &splice.note).filter(|note| !note.is_empty()) {
            None => rail.name.clone(),
            Some(note) => self.words.say(&labels::noted(&rail.name, note)),
        }
    }
}
