//! Wrapping, shortening, escaping, finding room.

use super::*;

#[test]
fn wraps_at_spaces_and_keeps_every_word() {
    let text = "No row has both a distance and a delay yet.";
    let lines = wrapped(text, 150.0, 13.0);
    assert!(lines.len() > 1);
    assert!(lines.iter().all(|line| width(line, 13.0) <= 150.0), "{lines:?}");
    assert_eq!(lines.join(" "), text);
}

#[test]
fn shortens_only_what_is_too_long() {
    assert_eq!(shortened("rail A", 200.0, 13.0), "rail A");
    let short = shortened("a rail with a very long name indeed", 100.0, 13.0);
    assert!(short.ends_with('…') && width(&short, 13.0) <= 100.0, "{short}");
    assert_eq!(shortened("rail", 0.0, 13.0), "…");
}

#[test]
fn escapes_markup_and_leaves_out_control_characters() {
    assert_eq!(escaped("a<b>&\u{0}\u{1b}c\nd"), "a&lt;b&gt;&amp;cd".replace("cd", "c d"));
}

#[test]
fn labels_never_cover_one_another() {
    let within = Area { left: 0.0, top: 0.0, right: 200.0, bottom: 40.0 };
    let mut room = Room::new(within);
    let placed: Vec<_> = (0..20).filter_map(|_| room.beside((100.0, 20.0), 8.0, "row 1", 13.0)).collect();
    assert!(!placed.is_empty() && placed.len() < 9);
    for (number, area) in room.occupied.iter().enumerate() {
        assert!(within.holds(area));
        assert!(!room.occupied.iter().skip(number + 1).any(|other| other.meets(area)));
    }
}
