#![expect(clippy::unwrap_used, reason = "tests")]

use slope_evidence::photo::{PixelPoint, Plane};

use super::*;

fn plain() -> Screen {
    let pulse = Pulse { edge: 2.5, base: 3.5, peak: 1.0, rise: 0.3, decay: 4.0 };
    let other = Pulse { edge: 6.0, base: 7.5, peak: 5.5, ..pulse };
    Screen {
        columns: 10,
        rows: 8,
        small: 5,
        pulses: [pulse, other],
        line: 0.06,
        grid_line: 0.02,
        dotted: false,
        fade: 0.0,
        theme: THEMES[1],
        time_base: Some(2.5),
        raster: None,
    }
}

fn pixel(picture: &Picture, at: PixelPoint) -> [i32; 3] {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "inside of the picture")]
    let start = (at.y as usize * picture.width + at.x as usize) * 4;
    [0, 1, 2].map(|i| i32::from(picture.rgba[start + i]))
}

/// Straight before the screen: 1600 pixels × 0.75 over 10 divisions are 120 pixels a division.
#[test]
fn a_straight_picture_is_drawn_to_scale() {
    let truth = Camera::default().truth(&plain());
    let [first, .., last] = truth.corners;
    assert!((first.at.x - 200.0).abs() < 1e-9 && (first.at.y - 120.0).abs() < 1e-9);
    assert!((last.at.x - 200.0).abs() < 1e-9 && (last.at.y - 1080.0).abs() < 1e-9);
    assert!((truth.edges[0].x - 500.0).abs() < 1e-9 && (truth.edges[0].y - 390.0).abs() < 1e-9);
    assert_eq!(truth.separation, 3.5);
}

/// What is drawn stands where the truth says, through tilt and lens: the trace's colour at the edges, the grid's at
/// the corners.
#[test]
fn the_picture_shows_the_truth() {
    let screen = plain();
    for k1 in [0.0, 0.04, -0.04] {
        let camera = Camera { yaw: 0.3, pitch: -0.2, roll: 0.05, k1, fill: 0.65, ..Camera::default() };
        let (picture, truth) = (camera.photograph(&screen, 1), camera.truth(&screen));
        for (at, colour) in truth.edges.iter().zip(screen.theme.traces) {
            let off = pixel(&picture, *at).iter().zip(colour).map(|(a, b)| (a - i32::from(b)).abs()).max();
            assert!(off.unwrap() < 6, "{k1}: {off:?}");
        }
        for corner in truth.corners {
            let [red, ..] = pixel(&picture, corner.at);
            assert!(red < i32::from(screen.theme.ground[0]) - 30, "{k1}: {corner:?} {red}");
        }
    }
}

/// The plane of the corners puts the edges where they were drawn, unless the lens bends.
#[test]
fn corners_and_edges_lie_on_one_plane() {
    let screen = plain();
    let camera = Camera { yaw: -0.35, pitch: 0.2, roll: -0.1, ..Camera::default() };
    let columns = |camera: Camera| {
        let truth = camera.truth(&screen);
        let plane = Plane::fit(&truth.corners, 1.0).unwrap();
        truth.edges.map(|edge| plane.divisions(edge)[0])
    };
    let [a, b] = columns(camera);
    assert!((a - 2.5).abs() < 1e-10 && (b - 6.0).abs() < 1e-10, "{a} {b}");
    let [a, b] = columns(Camera { k1: 0.05, ..camera });
    assert!((a - 2.5).abs() > 0.01 || (b - 6.0).abs() > 0.01, "{a} {b}");
}

#[test]
fn a_seed_gives_one_picture() {
    let (screen, camera) = random_view(5, 20.0);
    let camera = Camera { width: 160, height: 120, ..camera };
    assert_eq!(camera.photograph(&screen, 1), camera.photograph(&screen, 1));
    assert_ne!(camera.photograph(&screen, 1), camera.photograph(&screen, 2));
    assert_eq!(random_view(5, 20.0), random_view(5, 20.0));
    assert_ne!(random_view(5, 20.0), random_view(6, 20.0));
}

#[test]
fn a_series_has_one_camera_and_the_delays_asked_for() {
    let shots: Vec<Shot> = (1..=10).map(|i| Shot { delay: 3.0 * f64::from(i), time_base: 5.0 }).collect();
    let series = demo_series(3, &shots);
    assert_eq!(series.len(), 10);
    for ((_, camera, truth), shot) in series.iter().zip(&shots) {
        assert_eq!((camera, truth.corners), (&series[0].1, series[0].2.corners));
        assert!((truth.separation * shot.time_base - shot.delay).abs() < 1e-9);
        let inside = |at: &PixelPoint| at.x > 0.0 && at.x < 1600.0 && at.y > 0.0 && at.y < 1200.0;
        assert!(truth.corners.iter().all(|c| inside(&c.at)) && truth.edges.iter().all(inside));
    }
}

/// 120 pixels a division, and picture elements 21/20 of a pixel apart: bands of 21 pixels, of a colour each.
#[test]
fn picture_elements_are_seen_as_bands() {
    let screen = Screen { raster: Some(Raster { pitch: 1.05 / 120.0, depth: 0.3 }), ..plain() };
    let (camera, row) = (Camera::default(), 1100.5);
    let picture = camera.photograph(&screen, 1);
    let red = |x: u32| f64::from(pixel(&picture, PixelPoint { x: 210.5 + f64::from(x), y: row })[0]);
    let (lightest, darkest) = (0..42).map(red).fold((0.0_f64, 255.0_f64), |(a, b), x| (a.max(x), b.min(x)));
    assert!(lightest - darkest > 60.0, "{lightest} {darkest}");
    for x in 0..20 {
        assert!((red(x) - red(x + 21)).abs() < 8.0, "{x}: {} {}", red(x), red(x + 21));
    }
}
