//! The shares of the budget as bars, the largest on top: length, order and label carry them, colour does not.

use super::picture::{Share, SharesPicture};
use super::scene::{Anchor, Scene, ScenePoint};
use super::text::{shortened, width};
use super::theme::Theme;
use super::{frame, labels, text::Area};
use crate::words::Words;

/// Height of one bar with its room, in heights of the text.
const BAR_ROOM: f64 = 1.9;
/// Share of it that the bar fills.
const FILLED: f64 = 0.62;

pub(super) fn scene(size: ScenePoint, picture: &SharesPicture, theme: &Theme, words: &dyn Words) -> Scene {
    let mut scene = Scene::default();
    let font = theme.font_px;
    let bars: Vec<&Share> = picture.shares.iter().filter(|share| share.share.is_finite()).collect();
    if bars.is_empty() {
        let whole = Area { left: 0.0, top: 0.0, right: size.0, bottom: size.1 };
        frame::sentence(&mut scene, &words.say(&labels::NO_BUDGET), &whole, theme);
        return scene;
    }
    let names: Vec<String> = bars.iter().map(|share| words.text(&share.label)).collect();
    let widest = |widths: &mut dyn Iterator<Item = f64>| widths.fold(0.0, f64::max);
    let label = (widest(&mut names.iter().map(|name| width(name, font))) + font).min(size.0 / 2.0);
    let room = size.0 - label - widest(&mut bars.iter().map(|share| width(&share.text, font))) - 1.5 * font;
    for (place, (share, name)) in bars.iter().zip(&names).enumerate() {
        let middle = (place as f64 + 0.5) * BAR_ROOM * font;
        let name = shortened(name, label - font, font);
        scene.text(&name, (label - 0.5 * font, middle), Anchor::End, theme.ink, theme);
        let half = 0.5 * FILLED * BAR_ROOM * font;
        let end = label + room.max(0.0) * share.share.clamp(0.0, 1.0);
        if share.share > 0.0 {
            let corners = vec![
                (label, middle - half),
                (end, middle - half),
                (end, middle + half),
                (label, middle + half),
            ];
            scene.filled(corners, theme.colour_of(0));
        }
        scene.text(&share.text, (end + 0.5 * font, middle), Anchor::Start, theme.ink, theme);
    }
    scene.stroke((label, 0.0), (label, bars.len() as f64 * BAR_ROOM * font), frame::edge(theme));
    scene
}

/// The height at which every bar has its room, px.
pub(super) fn height(picture: &SharesPicture, theme: &Theme) -> f64 {
    BAR_ROOM * theme.font_px * picture.shares.len().max(1) as f64
}
