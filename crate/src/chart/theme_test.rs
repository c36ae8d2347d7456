//! Contrast and colours of the themes.

#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;

/// Relative luminance of an sRGB colour (WCAG 2.2, definition "relative luminance").
fn luminance(colour: Colour) -> f64 {
    let linear = |channel: u8| {
        let share = f64::from(channel) / 255.0;
        if share <= 0.04045 { share / 12.92 } else { ((share + 0.055) / 1.055).powf(2.4) }
    };
    0.2126 * linear(colour.red) + 0.7152 * linear(colour.green) + 0.0722 * linear(colour.blue)
}

/// Contrast ratio (WCAG 2.2, definition "contrast ratio").
fn contrast(one: Colour, other: Colour) -> f64 {
    let (one, other) = (luminance(one), luminance(other));
    (one.max(other) + 0.05) / (one.min(other) + 0.05)
}

#[test]
fn contrast_of_black_on_white_is_21() {
    // WCAG 2.2: the ratio runs from 1 to 21. Rounding of the coefficients leaves a few ulps.
    let ratio = contrast(Colour::new(0, 0, 0), Colour::new(255, 255, 255));
    assert!((ratio - 21.0).abs() < 1e-12, "{ratio}");
}

#[test]
fn marks_stand_out_from_their_paper() {
    // WCAG 2.2, 1.4.11: 3 to 1 for graphics; 1.4.3: 4.5 to 1 for text.
    for theme in [Theme::light(), Theme::dark(), Theme::print(), Theme::white(), Theme::black()] {
        for colour in theme.series.into_iter().chain([theme.accent]) {
            assert!(contrast(colour, theme.paper) >= 3.0, "{colour:?} on {:?}", theme.paper);
        }
        for colour in [theme.ink, theme.faint] {
            assert!(contrast(colour, theme.paper) >= 4.5, "{colour:?} on {:?}", theme.paper);
        }
    }
}

/// The line and its band are told from any series by their lightness alone, which every form of colour vision sees. There
/// is no standard for two graphics beside each other: half of the 3 to 1 that WCAG 2.2, 1.4.11, asks of either against
/// its paper.
#[test]
fn the_accent_is_no_series() {
    for theme in [Theme::light(), Theme::dark(), Theme::print()] {
        for colour in theme.series {
            assert!(contrast(colour, theme.accent) >= 1.5, "{colour:?} beside {:?}", theme.accent);
        }
    }
}

/// Okabe and Ito, Color Universal Design (2008 revision). Their own order and their yellow, 240 228 66, are what plotting
/// programs show first.
#[test]
fn the_series_have_an_order_of_their_own() {
    let of = |theme: Theme| theme.series.map(|Colour { red, green, blue, .. }| [red, green, blue]);
    let (green, black, vermilion, blue) = ([0, 158, 115], [0, 0, 0], [213, 94, 0], [0, 114, 178]);
    for paper in [Theme::light(), Theme::print()] {
        assert_eq!(of(paper), [green, black, vermilion, blue]);
    }
    assert_eq!(of(Theme::dark()), [green, [204, 121, 167], [86, 180, 233], [230, 159, 0]]);
}

#[test]
fn series_colours_come_round_again() {
    let theme = Theme::dark();
    assert_eq!(theme.colour_of(0), theme.colour_of(theme.series.len()));
    assert_ne!(theme.colour_of(0), theme.colour_of(1));
}

#[test]
fn scaling_multiplies_lengths_and_survives_nonsense() {
    let twice = Theme::light().scaled(2.0);
    assert!((twice.font_px - 26.0).abs() < f64::EPSILON);
    for ratio in [f64::NAN, f64::INFINITY, -1.0, 0.0] {
        assert!(Theme::light().scaled(ratio).font_px > 0.0, "{ratio}");
    }
}

const PAGE: &str = include_str!("../../../www/page/page.css");
const HELP: &str = include_str!("../../../www/page/help/help.css");
const ICON: &str = include_str!("../../../www/page/icon.svg");

/// Colours of a style sheet, on light and on dark, from where it names them: `--paper: light-dark(#fdfaf4, #211e1a);`.
fn named(sheet: &str, name: &str) -> [Colour; 2] {
    let (_, rest) = sheet.split_once(&format!("  {name}: light-dark(")).unwrap();
    let (both, _) = rest.split_once(')').unwrap();
    let colour = |text: &str| {
        let part = |at| u8::from_str_radix(&text.trim()[at..at + 2], 16).unwrap();
        Colour::new(part(1), part(3), part(5))
    };
    let (light, dark) = both.split_once(',').unwrap();
    [colour(light), colour(dark)]
}

/// The drawings stand on the page's paper, in its ink and with its accent, and so does the help.
#[test]
fn drawings_have_the_pages_colours() {
    let themes = [Theme::light(), Theme::dark()];
    for sheet in [PAGE, HELP] {
        assert_eq!(named(sheet, "--paper"), themes.clone().map(|theme| theme.paper));
        assert_eq!(named(sheet, "--ink"), themes.clone().map(|theme| theme.ink));
        assert_eq!(named(sheet, "--soft"), themes.clone().map(|theme| theme.faint));
        assert_eq!(named(sheet, "--accent"), themes.clone().map(|theme| theme.accent));
    }
    assert_eq!(named(PAGE, "--focus"), themes.map(|theme| theme.accent));
    let Colour { red, green, blue, .. } = Theme::light().accent;
    assert!(ICON.contains(&format!("#{red:02x}{green:02x}{blue:02x}")), "{ICON}");
}

/// Where more contrast is wished for, drawings too stand on white and on black, and their grid is told from both: 3 to 1, as
/// WCAG 2.2, 1.4.11, asks of graphics.
#[test]
fn drawings_have_the_pages_contrast() {
    let (_, rule) = PAGE.split_once("[data-contrast=\"more\"] {").unwrap();
    let (rule, _) = rule.split_once('}').unwrap();
    assert!(rule.contains("--paper: light-dark(#fff, #000); --ink: light-dark(#000, #fff);"), "{rule}");
    assert!(rule.contains("--soft: var(--ink);"), "{rule}");
    let (black, white) = (Colour::new(0, 0, 0), Colour::new(255, 255, 255));
    for (theme, paper, ink) in [(Theme::white(), white, black), (Theme::black(), black, white)] {
        assert_eq!([theme.paper, theme.ink, theme.faint], [paper, ink, ink]);
        assert!(contrast(theme.grid, paper) >= 3.0, "{:?}", theme.grid);
    }
}
