//! The drawings as SVG text: what is in them, and that nothing a notebook holds can break them.

#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;
use crate::quantity::DecimalMark;
use crate::words::WordTable;

const SIZE: (u32, u32) = (900, 520);

fn line_of(picture: &LinePicture) -> String {
    line_at(SIZE, picture).unwrap()
}

fn line_at((width, height): (u32, u32), picture: &LinePicture) -> Result<String, ChartError> {
    svg((width, height), "a test", Drawing::Line(picture), &Theme::light(), &english())
}

fn residuals_of(picture: &LinePicture) -> String {
    residuals_at(SIZE, picture).unwrap()
}

fn residuals_at((width, height): (u32, u32), picture: &LinePicture) -> Result<String, ChartError> {
    svg((width, height), "a test", Drawing::Residuals(picture), &Theme::light(), &english())
}

fn bench_of(picture: &BenchPicture) -> String {
    bench_at(SIZE, picture).unwrap()
}

fn bench_at((width, height): (u32, u32), picture: &BenchPicture) -> Result<String, ChartError> {
    svg((width, height), "a test", Drawing::Bench(picture), &Theme::light(), &english())
}

/// Twelve invented readings on two rails, one struck, on the line Δt = 4 ns + 3.3 ns/m · d.
fn readings() -> LinePicture {
    let mark = |number: usize| {
        let distance = 0.5 * number as f64;
        PlottedRow {
            number,
            distance,
            delay: 4.0 + 3.3 * distance,
            u_distance: None,
            u_delay: None,
            series: usize::from(number > 6),
            struck: number == 4,
            residual: (number != 4).then_some(if number.is_multiple_of(2) { 0.7 } else { -0.7 }),
        }
    };
    LinePicture {
        marks: (1..=12).map(mark).collect(),
        line: Some(FittedLine {
            slope: 3.3,
            intercept: 4.0,
            band: Some(Band { centre: 3.2, u_at_centre: 0.12, u_slope: 0.05, coverage_factor: 2.0 }),
        }),
        series: vec!["rail A".into(), "rail B".into()],
        decimal_mark: DecimalMark::Point,
        upright: Upright::Delay,
        window: PlotWindow::default(),
    }
}

fn rails() -> BenchPicture {
    let rail = |name: &str, near: f64, far: f64| BenchRail {
        name: name.to_owned(),
        near,
        far,
        near_reading: "0 cm".to_owned(),
        far_reading: "300 cm".to_owned(),
        grows: true,
        splice: Some(BenchSplice { distance: near, note: "u = 1 mm".into() }),
    };
    let carriage = |number, distance, rail, struck| Carriage { number, distance, rail: Some(rail), struck };
    BenchPicture {
        rails: vec![rail("rail A", 0.2, 3.2), rail("rail B", 3.2, 6.2)],
        unplaced: vec![],
        carriages: vec![carriage(1, 0.5, 0, false), carriage(2, 1.5, 0, true), carriage(3, 4.0, 1, false)],
        decimal_mark: DecimalMark::Point,
    }
}

/// How many shapes of a kind are filled with a colour of the light theme's series.
fn filled(document: &str, kind: &str, series: usize) -> usize {
    let Colour { red, green, blue, .. } = Theme::light().colour_of(series);
    let fill = format!("fill=\"#{red:02X}{green:02X}{blue:02X}\"");
    document.lines().filter(|line| line.starts_with(kind) && line.contains(&fill)).count()
}

fn english() -> WordTable {
    WordTable::english().unwrap()
}

fn texts(document: &str) -> Vec<&str> {
    let lines: Vec<&str> = document.lines().collect();
    lines.windows(2).filter_map(|pair| pair[0].starts_with("<text").then_some(pair[1])).collect()
}

/// Every element is closed, in order, and no stray "<" or "&" stands in the text.
fn is_well_formed(document: &str) -> bool {
    let mut open: Vec<&str> = Vec::new();
    for part in document.split('<').skip(1) {
        let Some((tag, text)) = part.split_once('>') else { return false };
        if text.contains('>') || text.chars().any(|c| c.is_control() && c != '\n') {
            return false;
        }
        if let Some(name) = tag.strip_prefix('/') {
            if open.pop() != Some(name) {
                return false;
            }
        } else if !tag.ends_with('/') {
            open.push(tag.split_whitespace().next().unwrap_or_default());
        }
    }
    let known = ["&amp;", "&lt;", "&gt;", "&quot;", "&apos;"];
    open.is_empty()
        && document
            .match_indices('&')
            .all(|(at, _)| known.iter().any(|name| document[at..].starts_with(name)))
}

#[test]
fn line_shows_axes_series_and_one_mark_a_row() {
    let document = line_of(&readings());
    for label in ["distance d / m", "delay Δt / ns", "rail A", "rail B", "struck out", "row 4"] {
        assert!(texts(&document).contains(&label), "{label} in {:?}", texts(&document));
    }
    // Series A: rows 1 to 6 without the struck one, and the legend; series B: rows 7 to 12, and the legend.
    assert_eq!(filled(&document, "<circle", 0), 6);
    assert_eq!(filled(&document, "<polygon", 1), 7);
    assert!(is_well_formed(&document));
}

#[test]
fn error_bars_stand_only_where_stated() {
    let bars = |picture: &LinePicture| {
        let Colour { red, green, blue, .. } = Theme::light().colour_of(0);
        let stroke = format!("stroke=\"#{red:02X}{green:02X}{blue:02X}\"");
        let document = line_of(picture);
        let legend = texts(&document).contains(&"bars: ± 1 u");
        (
            document.lines().filter(|line| line.starts_with("<polyline") && line.contains(&stroke)).count(),
            legend,
        )
    };
    let mut picture = readings();
    // The rim of the struck row's mark and its sample in the legend are circles, not paths.
    assert_eq!(bars(&picture), (0, false));
    picture.marks[0].u_delay = Some(0.5);
    assert_eq!(bars(&picture), (1, true));
    picture.marks[1].u_delay = Some(0.5);
    picture.marks[1].u_distance = Some(0.1);
    assert_eq!(bars(&picture), (3, true));
}

#[test]
fn band_needs_a_line_and_its_uncertainty() {
    let band = |picture: &LinePicture| line_of(picture).matches("opacity=\"0.2\"").count();
    let mut picture = readings();
    // The band and its sample in the legend.
    assert_eq!(band(&picture), 2);
    picture.line = picture.line.map(|line| FittedLine { band: None, ..line });
    assert_eq!(band(&picture), 0);
    assert!(texts(&line_of(&picture)).contains(&"fitted line"));
    picture.line = None;
    assert!(!texts(&line_of(&picture)).contains(&"fitted line"));
}

#[test]
fn half_width_of_the_band_is_the_propagated_uncertainty() {
    // GUM (JCGM 100) 5.1.2 for level and slope uncorrelated, worked by hand:
    // u² = 0.12² + (6.4 − 3.2)²·0.05² = 0.0144 + 0.0256 = 0.04, so k·u = 0.4.
    let band = readings().line.unwrap().band.unwrap();
    // A few ulps for the rounding of the sum.
    assert!((band.half_width(6.4) - 0.4).abs() <= 1e-14 * 0.4);
}

#[test]
fn a_struck_row_far_away_is_shown_at_the_edge() {
    let mut picture = readings();
    picture.marks[3].delay = 1e6;
    let document = line_of(&picture);
    assert!(texts(&document).contains(&"row 4, beyond ↑"));
    assert!(texts(&document).contains(&"10"), "the axis still fits the other rows");
}

#[test]
fn residuals_show_lines_at_two_and_every_row_that_has_one() {
    let document = residuals_of(&readings());
    for label in ["normalized residual", "± 2", "−2", "0", "2"] {
        assert!(texts(&document).contains(&label), "{label} in {:?}", texts(&document));
    }
    assert_eq!(filled(&document, "<circle", 0), 6);
    assert!(!texts(&document).contains(&"row 4"));
}

#[test]
fn bench_shows_rails_ends_and_positions() {
    let document = bench_of(&rails());
    for label in ["splitter", "rail A: u = 1 mm", "rail B: u = 1 mm", "0 cm", "300 cm", "carriage position"] {
        assert!(texts(&document).contains(&label), "{label} in {:?}", texts(&document));
    }
    assert_eq!(filled(&document, "<circle", 0), 2, "one carriage and the legend");
    assert_eq!(filled(&document, "<polygon", 1), 1);
}

#[test]
fn bench_is_taller_where_rails_overlap() {
    let theme = Theme::light();
    let mut picture = rails();
    let apart = bench_height(900, &picture, &theme, &english());
    picture.rails[1].near = 2.0;
    let overlapping = bench_height(900, &picture, &theme, &english());
    picture.unplaced = vec!["rail C".to_owned()];
    assert!(apart < overlapping && overlapping < bench_height(900, &picture, &theme, &english()));
    assert!(texts(&bench_of(&picture)).contains(&"position not known yet: rail C"));
}

fn shares_of(picture: &SharesPicture) -> String {
    let height = shares_height(picture, &Theme::light());
    svg((900, height), "a test", Drawing::Shares(picture), &Theme::light(), &english()).unwrap()
}

fn histogram_of(picture: &HistogramPicture) -> String {
    svg((900, 260), "a test", Drawing::Histogram(picture), &Theme::light(), &english()).unwrap()
}

#[test]
fn shares_are_bars_in_the_order_given_each_with_its_words() {
    let share = |label: &str, share: f64| Share { label: label.into(), share, text: format!("{share}") };
    let picture =
        SharesPicture { shares: vec![share("screen", 0.6), share("splice", 0.4), share("air", 0.0)] };
    let drawn = shares_of(&picture);
    assert!(is_well_formed(&drawn));
    assert_eq!(drawn.matches("<polygon").count(), 2, "a share of nothing has no bar");
    assert_eq!(texts(&drawn), ["screen", "0.6", "splice", "0.4", "air", "0"]);
    let hostile = SharesPicture { shares: vec![share("<script>", f64::NAN), share("<b>&", 1.0)] };
    assert!(is_well_formed(&shares_of(&hostile)));
    assert!(texts(&shares_of(&SharesPicture::default())).concat().contains("No budget yet"));
}

#[test]
fn a_histogram_has_a_bar_for_each_bin_that_holds_something() {
    let picture = HistogramPicture {
        from: 299.0,
        width: 0.1,
        densities: vec![1.0, 4.0, 0.0, 5.0],
        expected: vec![0.25; 4],
        curve: (0..40).map(|i| (299.0 + 0.01 * f64::from(i), 2.5)).collect(),
        interval: [299.05, 299.35],
        decimal_mark: DecimalMark::Point,
    };
    let drawn = histogram_of(&picture);
    assert!(is_well_formed(&drawn));
    // The bars, and the little one of the legend's mark in the same colour.
    assert!(drawn.matches("<polygon").count() >= 3);
    assert_eq!(
        drawn.matches("<polygon").count(),
        histogram_of(&HistogramPicture { densities: vec![1.0, 4.0, 1.0, 5.0], ..picture.clone() })
            .matches("<polygon")
            .count()
            - 1
    );
    for broken in [f64::NAN, f64::INFINITY, 0.0] {
        let picture = HistogramPicture { width: broken, ..picture.clone() };
        assert!(texts(&histogram_of(&picture)).concat().contains("No trials yet"), "{broken}");
    }
}

#[test]
fn empty_pictures_say_what_is_missing() {
    let empty = LinePicture::default();
    assert!(line_of(&empty).contains("No row has both"));
    assert!(residuals_of(&empty).contains("No residuals yet"));
    assert!(bench_of(&BenchPicture::default()).contains("No rail has a position yet"));
}

#[test]
fn words_from_a_notebook_stay_words() {
    let evil = "<script>&\"'\u{0}\u{8}]]>".to_owned();
    let mut picture = readings();
    picture.series = vec![evil.as_str().into(), evil.as_str().into()];
    let mut bench_picture = rails();
    bench_picture.rails[0].name.clone_from(&evil);
    bench_picture.rails[0].near_reading.clone_from(&evil);
    bench_picture.unplaced = vec![evil.clone()];
    let titled = svg((400, 300), &evil, Drawing::Line(&picture), &Theme::dark(), &english()).unwrap();
    for document in [titled, residuals_of(&picture), bench_of(&bench_picture)] {
        assert!(!document.contains("<script") && is_well_formed(&document), "{document}");
    }
}

#[test]
fn document_has_size_role_and_title() {
    let document = line_of(&readings());
    let head = document.lines().next().unwrap();
    for attribute in ["width=\"900\"", "height=\"520\"", "viewBox=\"0 0 3600 2080\"", "role=\"img\""] {
        assert!(head.contains(attribute), "{head}");
    }
    assert_eq!(document.lines().nth(1), Some("<title>a test</title>"));
}

#[test]
fn no_value_breaks_a_drawing() {
    let values =
        [0.0, -0.0, 1.0, -1e300, 1e300, f64::MAX, 1e-300, 5e-324, f64::NAN, f64::INFINITY, -f64::INFINITY];
    for one in values {
        for other in values {
            let mut picture = readings();
            picture.marks[0].distance = one;
            picture.marks[0].delay = other;
            picture.marks[0].u_distance = Some(other);
            picture.marks[0].u_delay = Some(one);
            picture.marks[0].series = usize::MAX;
            picture.marks[1].residual = Some(one);
            picture.line = Some(FittedLine {
                slope: one,
                intercept: other,
                band: Some(Band { centre: one, u_at_centre: other, u_slope: one, coverage_factor: 2.0 }),
            });
            let mut few = picture.clone();
            few.marks.truncate(1);
            let mut bench_picture = rails();
            bench_picture.rails[0].near = one;
            bench_picture.rails[1].far = other;
            bench_picture.carriages[0].distance = other;
            bench_picture.carriages[1].rail = Some(99);
            for document in [
                line_of(&picture),
                residuals_of(&picture),
                line_of(&few),
                residuals_of(&few),
                bench_of(&bench_picture),
            ] {
                assert!(!document.contains("NaN") && !document.contains("inf"), "{one} {other}");
                assert!(document.len() < 100_000, "{one} {other}");
            }
        }
    }
}

#[test]
fn a_phone_is_wide_enough_and_a_stamp_is_not() {
    let phone = (360, 240);
    for document in [line_at(phone, &readings()), residuals_at(phone, &readings()), bench_at(phone, &rails())]
    {
        assert!(is_well_formed(&document.unwrap()));
    }
    for size in [(40, 30), (0, 0), (900, 20)] {
        let stamps = [line_at(size, &readings()), residuals_at(size, &readings()), bench_at(size, &rails())];
        for stamp in stamps {
            assert!(matches!(stamp, Err(ChartError::TooSmall { .. })), "{stamp:?}");
        }
    }
}

#[test]
fn a_device_pixel_theme_gives_the_same_drawing_larger() {
    let counts = [1.0, 2.0, 3.0].map(|ratio| {
        let theme = Theme::light().scaled(ratio);
        let mut buffer = String::new();
        let size = (scene::pixels(900.0 * ratio), scene::pixels(520.0 * ratio));
        let area = SVGBackend::with_string(&mut buffer, size).into_drawing_area();
        draw(&area, Drawing::Line(&readings()), &theme, &english()).unwrap();
        area.present().unwrap();
        drop(area);
        texts(&buffer).len()
    });
    assert_eq!(counts[0], counts[1]);
    assert_eq!(counts[1], counts[2]);
}

/// The places of the marks are where the drawing has them, and the frame holds those in the line.
#[test]
fn marks_are_told_where_they_are_drawn() {
    let picture = readings();
    for drawing in [Drawing::Line(&picture), Drawing::Residuals(&picture)] {
        let told = places(SIZE, drawing, &Theme::light(), &english()).unwrap();
        let [left, top, right, bottom] = told.frame;
        assert!(0.0 < left && left < right && right < 1.0 && 0.0 < top && top < bottom && bottom < 1.0);
        assert!(
            told.marks
                .iter()
                .all(|mark| left <= mark.x && mark.x <= right && top <= mark.y && mark.y <= bottom)
        );
        let scene = drawing.scene((900.0, 520.0), &Theme::light(), &english());
        assert_eq!(told.marks.len(), scene.marks.len());
        let (number, (x, y)) = *scene.marks.last().unwrap();
        assert_eq!(told.marks.last(), Some(&MarkPlace { number, x: x / 900.0, y: y / 520.0 }));
    }
    let numbers = places(SIZE, Drawing::Line(&picture), &Theme::light(), &english()).unwrap();
    assert_eq!(numbers.marks.len(), 12);
}

/// Half the width of a plot is looked at: what stands there stands twice as far apart, and nothing else is drawn.
#[test]
fn a_window_shows_a_part_of_the_range() {
    let whole = readings();
    let part = LinePicture { window: PlotWindow::of(&[0.5, 1.0, 0.0, 1.0]), ..readings() };
    let marks =
        |picture: &LinePicture| places(SIZE, Drawing::Line(picture), &Theme::light(), &english()).unwrap();
    let (all, near) = (marks(&whole), marks(&part));
    assert!(near.marks.len() < all.marks.len() && near.marks.len() > 3);
    let x = |places: &PlotPlaces, number| places.marks.iter().find(|mark| mark.number == number).unwrap().x;
    let apart = |places: &PlotPlaces| (x(places, 12) - x(places, 10)) / (places.frame[2] - places.frame[0]);
    // Equal but for rounding.
    assert!((apart(&near) / apart(&all) - 2.0).abs() < 1e-9);
    let labels = texts(&line_of(&part)).len();
    assert!(labels > 5, "it has its ticks");
}

#[test]
fn a_window_that_is_none_shows_the_whole() {
    for ends in [
        &[][..],
        &[0.0, 1.0],
        &[0.5, 0.5, 0.0, 1.0],
        &[0.7, 0.2, 0.0, 1.0],
        &[-1.0, 1.0, 0.0, 1.0],
        &[f64::NAN; 4],
    ] {
        assert_eq!(PlotWindow::of(ends), PlotWindow::default(), "{ends:?}");
    }
    assert_ne!(PlotWindow::of(&[0.0, 1.0, 0.25, 1.0]), PlotWindow::default());
}

/// A bar that goes on beyond what is looked at has a cross stroke where it ends alone. That of row 6 goes from 8.9 ns to
/// 18.9 ns; three fifths of the whole range, 4.7 ns to 24.7 ns, are looked at.
#[test]
fn a_bar_that_is_cut_has_no_cross_stroke_there() {
    let mut picture = readings();
    picture.marks[5].u_delay = Some(5.0);
    let strokes = |window: &[f64]| {
        let picture = LinePicture { window: PlotWindow::of(window), ..picture.clone() };
        let scene = Drawing::Line(&picture).scene((900.0, 520.0), &Theme::light(), &english());
        let colour = Theme::light().colour_of(0);
        let bar = scene.shapes.into_iter().find_map(|shape| match shape {
            scene::Painted::Path { points, pen } if pen.colour == colour && points.len() == 6 => Some(points),
            _ => None,
        });
        let bar = bar.unwrap();
        [(bar[0].0, bar[1].0), (bar[5].0, bar[4].0)].map(|(one, other)| (one - other).abs() > 1.0)
    };
    assert_eq!(strokes(&[]), [true, true], "foot and top");
    assert_eq!(strokes(&[0.0, 1.0, 0.0, 0.6]), [true, false]);
    assert_eq!(strokes(&[0.0, 1.0, 0.4, 1.0]), [false, true]);
}
