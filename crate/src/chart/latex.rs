//! A scene as a picture of LaTeX that asks for no package beside `color`: strokes and fills are operators of PDF
//! (ISO 32000-1:2008, 8.4 and 8.5), which each engine that writes PDF has a primitive for; words are set by LaTeX.

use std::fmt::Write as _;

use super::scene::{Anchor, Painted, Pen, Scene, ScenePoint};
use super::theme::Colour;
use crate::escape::latex_text;

/// What a document must say before its first drawing: `\drawn`, by pdfTeX, LuaTeX or XeTeX.
pub const DRAWN: &str = "\\ifdefined\\pdfliteral \\def\\drawn#1{\\pdfliteral{#1}}\\else\n\
\\ifdefined\\pdfextension \\def\\drawn#1{\\pdfextension literal{#1}}\\else\n\
\\def\\drawn#1{\\special{pdf:literal #1}}\\fi\\fi\n";

/// Big points (1/72 inch) to a pixel: 760 pixels, the width of a drawing on paper, stand on a line of 17 cm.
const POINTS: f64 = 0.63;

/// Distance of a curve's control points that makes it a quarter of a circle, in radii: 4/3 (√2 − 1).
const QUARTER: f64 = 0.552_285;

/// The picture, of a size in pixels.
pub(super) fn picture(scene: &Scene, (width, height): ScenePoint) -> String {
    let mut lines = String::new();
    let mut words = String::new();
    for shape in &scene.shapes {
        match shape {
            Painted::Text { text, at, anchor, colour, font } => {
                words += &word(text, (at.0, height - at.1), *anchor, *colour, *font);
            }
            shape => lines += &operators(shape),
        }
    }
    format!(
        "{{\\setlength{{\\unitlength}}{{{POINTS}bp}}\\sffamily\n\\begin{{picture}}({width:.0},{height:.0})\n\
         \\put(0,0){{\\drawn{{q {POINTS} 0 0 -{POINTS} 0 {down:.2} cm 1 j\n{lines}Q}}}}\n{words}\\end{{picture}}}}\n",
        down = POINTS * height
    )
}

/// A text at its place, y upwards.
fn word(text: &str, (x, y): ScenePoint, anchor: Anchor, colour: Colour, font: f64) -> String {
    let side = match anchor {
        Anchor::Start => "[l]",
        Anchor::Middle => "",
        Anchor::End => "[r]",
    };
    let size = POINTS * font;
    let [red, green, blue] = on_paper(colour);
    format!(
        "\\put({x:.1},{y:.1}){{\\makebox(0,0){side}{{\\fontsize{{{size:.1}bp}}{{{size:.1}bp}}\\selectfont\
         \\color[rgb]{{{red:.3},{green:.3},{blue:.3}}}{}}}}}\n",
        latex_text(text)
    )
}

/// The operators that paint a shape; nothing for a text.
fn operators(shape: &Painted) -> String {
    match shape {
        Painted::Stroke { from, to, pen } => format!("{}{}S\n", stroked(*pen), path(&[*from, *to])),
        Painted::Path { points, pen } => format!("{}{}S\n", stroked(*pen), path(points)),
        Painted::Filled { points, colour } => format!("{}{}f\n", filled(*colour), path(points)),
        Painted::Disc { centre, radius, colour } => {
            format!("{}{}f\n", filled(*colour), circle(*centre, *radius))
        }
        Painted::Circle { centre, radius, pen } => {
            format!("{}{}s\n", stroked(*pen), circle(*centre, *radius))
        }
        Painted::Text { .. } => String::new(),
    }
}

fn stroked(pen: Pen) -> String {
    let [red, green, blue] = on_paper(pen.colour);
    format!("{red:.3} {green:.3} {blue:.3} RG {:.2} w ", pen.width)
}

fn filled(colour: Colour) -> String {
    let [red, green, blue] = on_paper(colour);
    format!("{red:.3} {green:.3} {blue:.3} rg ")
}

/// Shares of red, green and blue, from 0 to 1, as they are seen on white paper: a bare operator knows no opacity.
fn on_paper(Colour { red, green, blue, alpha }: Colour) -> [f64; 3] {
    [red, green, blue].map(|part| 1.0 - alpha * (1.0 - f64::from(part) / 255.0))
}

/// Straight from point to point; nothing for points that are off any paper, or none.
fn path(points: &[ScenePoint]) -> String {
    let mut text = String::new();
    for (place, (x, y)) in points.iter().filter(|(x, y)| x.abs() < 1e5 && y.abs() < 1e5).enumerate() {
        let _ = write!(text, "{x:.2} {y:.2} {} ", if place == 0 { 'm' } else { 'l' });
    }
    text
}

fn circle((x, y): ScenePoint, radius: f64) -> String {
    let (far, near) = (radius, QUARTER * radius);
    let mut text = path(&[(x + far, y)]);
    if text.is_empty() {
        return text;
    }
    let quarters = [
        [(far, near), (near, far), (0.0, far)],
        [(-near, far), (-far, near), (-far, 0.0)],
        [(-far, -near), (-near, -far), (0.0, -far)],
        [(near, -far), (far, -near), (far, 0.0)],
    ];
    for quarter in quarters {
        for (across, down) in quarter {
            let _ = write!(text, "{:.2} {:.2} ", x + across, y + down);
        }
        text.push_str("c ");
    }
    text
}

#[cfg(test)]
#[path = "latex_test.rs"]
mod tests;
