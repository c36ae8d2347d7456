//! Shapes in pixels, and how a backend paints them. x grows to the right, y downwards.

use plotters::element::{Drawable, PointCollection};
use plotters::style::text_anchor::{HPos, Pos, VPos};
use plotters::style::{FontDesc, FontFamily, FontStyle, ShapeStyle, TextStyle};
use plotters_backend::{BackendCoord, DrawingBackend, DrawingErrorKind};

use super::theme::{Colour, Theme};

/// The font: what the reader's system uses for its own text.
const FONT: &str = "system-ui, sans-serif";

/// A place on the drawing, px.
pub(super) type ScenePoint = (f64, f64);

/// Colour and width of a stroke.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Pen {
    pub(super) colour: Colour,
    pub(super) width: f64,
}

/// Which part of a text stands at its place; the middle of its height always does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Anchor {
    Start,
    Middle,
    End,
}

/// One thing to paint.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Painted {
    Stroke { from: ScenePoint, to: ScenePoint, pen: Pen },
    Path { points: Vec<ScenePoint>, pen: Pen },
    Filled { points: Vec<ScenePoint>, colour: Colour },
    Disc { centre: ScenePoint, radius: f64, colour: Colour },
    Circle { centre: ScenePoint, radius: f64, pen: Pen },
    Text { text: String, at: ScenePoint, anchor: Anchor, colour: Colour, font: f64 },
}

/// Everything to paint, from back to front.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Scene {
    pub(super) shapes: Vec<Painted>,
    /// Corners of the frame in which the readings stand: left and top, right and bottom.
    pub(super) frame: Option<[ScenePoint; 2]>,
    /// Where the mark of each reading stands, with the number of its row.
    pub(super) marks: Vec<(usize, ScenePoint)>,
}

impl Scene {
    pub(super) fn stroke(&mut self, from: ScenePoint, to: ScenePoint, pen: Pen) {
        self.shapes.push(Painted::Stroke { from, to, pen });
    }

    pub(super) fn path(&mut self, points: Vec<ScenePoint>, pen: Pen) {
        self.shapes.push(Painted::Path { points, pen });
    }

    pub(super) fn filled(&mut self, points: Vec<ScenePoint>, colour: Colour) {
        self.shapes.push(Painted::Filled { points, colour });
    }

    pub(super) fn disc(&mut self, centre: ScenePoint, radius: f64, colour: Colour) {
        self.shapes.push(Painted::Disc { centre, radius, colour });
    }

    pub(super) fn circle(&mut self, centre: ScenePoint, radius: f64, pen: Pen) {
        self.shapes.push(Painted::Circle { centre, radius, pen });
    }

    /// A text from anywhere; characters that a document can't hold are left out.
    pub(super) fn text(&mut self, text: &str, at: ScenePoint, anchor: Anchor, colour: Colour, theme: &Theme) {
        let font = theme.requested_font();
        self.shapes.push(Painted::Text { text: printable(text), at, anchor, colour, font });
    }

    /// A level or upright stroke, broken into dashes.
    pub(super) fn dashed(&mut self, from: ScenePoint, to: ScenePoint, pen: Pen) {
        let (dash, gap) = (5.0 * pen.width, 4.0 * pen.width);
        let length = (to.0 - from.0).abs().max((to.1 - from.1).abs());
        if length < dash {
            return self.stroke(from, to, pen);
        }
        let along = |way: f64| {
            let share = (way / length).min(1.0);
            (from.0 + share * (to.0 - from.0), from.1 + share * (to.1 - from.1))
        };
        let mut way = 0.0;
        while way < length {
            self.stroke(along(way), along(way + dash), pen);
            way += dash + gap;
        }
    }
}

impl<'a> PointCollection<'a, BackendCoord> for &'a Scene {
    type Point = BackendCoord;
    type IntoIter = std::iter::Once<BackendCoord>;

    /// The scene's own origin, which plotters moves to where the area stands.
    fn point_iter(self) -> Self::IntoIter {
        std::iter::once((0, 0))
    }
}

impl<B: DrawingBackend> Drawable<B> for Scene {
    fn draw<I: Iterator<Item = BackendCoord>>(
        &self,
        mut points: I,
        backend: &mut B,
        _size: (u32, u32),
    ) -> Result<(), DrawingErrorKind<B::ErrorType>> {
        let origin = points.next().unwrap_or_default();
        self.shapes.iter().try_for_each(|shape| shape.paint(origin, backend))
    }
}

impl Painted {
    fn paint<B: DrawingBackend>(
        &self,
        origin: BackendCoord,
        backend: &mut B,
    ) -> Result<(), DrawingErrorKind<B::ErrorType>> {
        let on = |place: &ScenePoint| {
            (origin.0.saturating_add(pixel(place.0)), origin.1.saturating_add(pixel(place.1)))
        };
        match self {
            Self::Stroke { from, to, pen } => backend.draw_line(on(from), on(to), &pen.style()),
            Self::Path { points, pen } => backend.draw_path(points.iter().map(on), &pen.style()),
            Self::Filled { points, colour } => {
                backend.fill_polygon(points.iter().map(on), &colour.plotters())
            }
            Self::Disc { centre, radius, colour } => {
                backend.draw_circle(on(centre), pixels(*radius), &colour.plotters(), true)
            }
            Self::Circle { centre, radius, pen } => {
                backend.draw_circle(on(centre), pixels(*radius), &pen.style(), false)
            }
            Self::Text { text, at, anchor, colour, font } => {
                backend.draw_text(text, &text_style(*anchor, *colour, *font), on(at))
            }
        }
    }
}

impl Pen {
    fn style(self) -> ShapeStyle {
        ShapeStyle { color: self.colour.plotters(), filled: false, stroke_width: pixels(self.width).max(1) }
    }
}

fn text_style(anchor: Anchor, colour: Colour, font: f64) -> TextStyle<'static> {
    let across = match anchor {
        Anchor::Start => HPos::Left,
        Anchor::Middle => HPos::Center,
        Anchor::End => HPos::Right,
    };
    TextStyle {
        font: FontDesc::new(FontFamily::Name(FONT), font, FontStyle::Normal),
        color: colour.backend(),
        pos: Pos::new(across, VPos::Center),
    }
}

/// The text without control characters, which neither XML nor a canvas can show.
pub(super) fn printable(text: &str) -> String {
    let held = |c: &char| !c.is_control() && !matches!(c, '\u{fffe}' | '\u{ffff}');
    text.chars().map(|c| if c.is_whitespace() { ' ' } else { c }).filter(held).collect()
}

/// The nearest whole pixel.
#[expect(
    clippy::cast_possible_truncation,
    reason = "the cast saturates; a place off the drawing stays off it"
)]
fn pixel(length: f64) -> i32 {
    length.round() as i32
}

/// A length in whole pixels, at least 0.
pub(super) fn pixels(length: f64) -> u32 {
    u32::try_from(pixel(length)).unwrap_or(0)
}
