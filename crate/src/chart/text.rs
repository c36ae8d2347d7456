//! Text on a drawing: how wide it is, about; wrapping, shortening, and finding room for labels.
//!
//! No font is at hand, so widths are estimated from a common sans-serif face, rather too wide than too narrow.

use super::scene::{Anchor, ScenePoint, printable};

/// Width of a text at font size `font`, px, estimated.
pub(super) fn width(text: &str, font: f64) -> f64 {
    text.chars().map(em).sum::<f64>() * font
}

/// Width of a character in units of the font size.
fn em(character: char) -> f64 {
    match character {
        'i' | 'j' | 'l' | '.' | ',' | ':' | ';' | '\'' | '|' | '!' => 0.31,
        ' ' | 'f' | 'r' | 't' | '(' | ')' | '[' | ']' | '/' | '-' | 'I' => 0.4,
        'm' | 'w' | 'M' | 'W' | '@' | '%' | '—' => 0.95,
        '\u{2e80}'.. => 1.0,
        character if character.is_uppercase() => 0.7,
        '±' | '−' | '→' | '…' => 0.85,
        _ => 0.62,
    }
}

/// The text, shortened with "…" to at most `room` px.
pub(super) fn shortened(text: &str, room: f64, font: f64) -> String {
    if width(text, font) <= room {
        return text.to_owned();
    }
    let mut kept = String::new();
    let mut used = em('…') * font;
    for character in text.chars() {
        used += em(character) * font;
        if used > room {
            break;
        }
        kept.push(character);
    }
    format!("{}…", kept.trim_end())
}

/// The text in lines of at most `room` px, broken at spaces.
pub(super) fn wrapped(text: &str, room: f64, font: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        match lines.last_mut() {
            Some(line) if width(line, font) + width(word, font) + em(' ') * font <= room => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

/// The text as it stands between XML tags.
pub(super) fn escaped(text: &str) -> String {
    printable(text).replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;")
}

/// A level rectangle, px.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Area {
    pub(super) left: f64,
    pub(super) top: f64,
    pub(super) right: f64,
    pub(super) bottom: f64,
}

impl Area {
    /// A square around a centre.
    pub(super) fn around((x, y): ScenePoint, half: f64) -> Self {
        Self { left: x - half, top: y - half, right: x + half, bottom: y + half }
    }

    pub(super) fn corners(&self) -> Vec<ScenePoint> {
        let Self { left, top, right, bottom } = *self;
        vec![(left, top), (right, top), (right, bottom), (left, bottom)]
    }

    fn meets(&self, other: &Self) -> bool {
        self.left < other.right
            && other.left < self.right
            && self.top < other.bottom
            && other.top < self.bottom
    }

    fn holds(&self, other: &Self) -> bool {
        self.left <= other.left
            && other.right <= self.right
            && self.top <= other.top
            && other.bottom <= self.bottom
    }
}

/// Finds room for labels beside marks.
pub(super) struct Room {
    within: Area,
    occupied: Vec<Area>,
}

impl Room {
    pub(super) fn new(within: Area) -> Self {
        Self { within, occupied: Vec::new() }
    }

    /// Keeps labels off an area.
    pub(super) fn take(&mut self, area: Area) {
        self.occupied.push(area);
    }

    /// A spot for a label beside a mark, tried all round it, or none where there is no room.
    pub(super) fn beside(
        &mut self,
        mark: ScenePoint,
        clear: f64,
        label: &str,
        font: f64,
    ) -> Option<(ScenePoint, Anchor)> {
        let (x, y) = mark;
        let (across, height) = (width(label, font), 1.1 * font);
        let (up, down) = (y - clear - height / 2.0, y + clear + height / 2.0);
        let choices = [
            ((x + clear, y), Anchor::Start),
            ((x - clear, y), Anchor::End),
            ((x, up), Anchor::Middle),
            ((x, down), Anchor::Middle),
            ((x + clear, down), Anchor::Start),
            ((x - clear, up), Anchor::End),
            ((x + clear, up), Anchor::Start),
            ((x - clear, down), Anchor::End),
        ];
        choices.into_iter().find(|&((x, y), anchor)| {
            let left = match anchor {
                Anchor::Start => x,
                Anchor::Middle => x - across / 2.0,
                Anchor::End => x - across,
            };
            let area = Area { left, top: y - height / 2.0, right: left + across, bottom: y + height / 2.0 };
            let free = self.within.holds(&area) && !self.occupied.iter().any(|other| other.meets(&area));
            if free {
                self.occupied.push(area);
            }
            free
        })
    }
}

#[cfg(test)]
#[path = "text_test.rs"]
mod tests;
