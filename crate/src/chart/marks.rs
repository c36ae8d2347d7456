//! The mark of a reading: shape and colour say the series; hollow with a stroke through it means struck out.

use super::scene::{Pen, Scene, ScenePoint};
use super::theme::Theme;

/// The outlines of the series, in order. Their number and the number of colours have no common factor, so that
/// shape and colour together repeat only after twenty series.
const OUTLINES: [Outline; 5] =
    [Outline::Round, Outline::Square, Outline::Up, Outline::Diamond, Outline::Down];

#[derive(Clone, Copy)]
enum Outline {
    Round,
    Square,
    Up,
    Diamond,
    Down,
}

impl Outline {
    fn of(series: usize) -> Self {
        OUTLINES.into_iter().nth(series % OUTLINES.len()).unwrap_or(Self::Round)
    }

    /// The corners, for a mark that looks as large as a disc of the given radius; none for the disc.
    fn corners(self, (x, y): ScenePoint, radius: f64) -> Vec<ScenePoint> {
        let square = 0.89 * radius;
        let point = 1.3 * radius;
        match self {
            Self::Round => Vec::new(),
            Self::Square => vec![
                (x - square, y - square),
                (x + square, y - square),
                (x + square, y + square),
                (x - square, y + square),
            ],
            Self::Up => vec![(x, y - point), (x + point, y + square), (x - point, y + square)],
            Self::Down => vec![(x, y + point), (x - point, y - square), (x + point, y - square)],
            Self::Diamond => vec![(x, y - point), (x + point, y), (x, y + point), (x - point, y)],
        }
    }
}

/// Draws a mark with a rim of paper, which keeps it apart from what lies beneath.
pub(super) fn mark(scene: &mut Scene, at: ScenePoint, series: usize, struck: bool, theme: &Theme) {
    fill(scene, Outline::of(series), at, theme.mark_px + theme.stroke_px, theme.paper);
    bare_mark(scene, at, series, struck, theme);
}

/// Draws a mark without a rim.
pub(super) fn bare_mark(scene: &mut Scene, at: ScenePoint, series: usize, struck: bool, theme: &Theme) {
    let outline = Outline::of(series);
    let colour = theme.colour_of(series);
    if struck {
        let pen = Pen { colour, width: 1.5 * theme.stroke_px };
        rim(scene, outline, at, theme.mark_px, pen);
        strike(scene, at, theme);
    } else {
        fill(scene, outline, at, theme.mark_px, colour);
    }
}

fn fill(scene: &mut Scene, outline: Outline, at: ScenePoint, radius: f64, colour: super::Colour) {
    match outline {
        Outline::Round => scene.disc(at, radius, colour),
        _ => scene.filled(outline.corners(at, radius), colour),
    }
}

fn rim(scene: &mut Scene, outline: Outline, at: ScenePoint, radius: f64, pen: Pen) {
    let mut corners = outline.corners(at, radius);
    match corners.first().copied() {
        None => scene.circle(at, radius, pen),
        Some(first) => {
            corners.push(first);
            scene.path(corners, pen);
        }
    }
}

/// A stroke through the mark.
fn strike(scene: &mut Scene, (x, y): ScenePoint, theme: &Theme) {
    let arm = 1.7 * theme.mark_px;
    let pen = Pen { colour: theme.ink, width: 1.5 * theme.stroke_px };
    scene.stroke((x - arm, y + arm), (x + arm, y - arm), pen);
}
