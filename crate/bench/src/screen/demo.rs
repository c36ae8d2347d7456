//! Pictures for the demo: a fixed camera, tilted, and a screen for each row of readings.

use slope_engine::budget::Random;

use super::camera::{Camera, Truth};
use super::drawing::{Pulse, Screen};
use super::theme::THEMES;

/// What one picture is to show.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shot {
    /// Delay of B's edge behind A's, ns.
    pub delay: f64,
    /// Time base, ns per division.
    pub time_base: f64,
}

/// One picture for each shot, by a camera that does not move: screen, camera and truth. The picture itself is drawn by
/// [`Camera::photograph`].
///
/// A is the upper trace. Its edge stands near column 2, wherever the trigger left it; the pulse of B is smaller, the
/// more so the longer the delay. B's edge stays on a screen of ten divisions while the delay is below seven of them.
pub fn demo_series(seed: u64, shots: &[Shot]) -> Vec<(Screen, Camera, Truth)> {
    let mut random = Random::new(seed, 0);
    let camera = Camera {
        fill: 0.72,
        aim: [0.1, -0.15],
        yaw: 0.24,
        pitch: -0.13,
        roll: 0.02,
        blur: 0.9,
        noise: 3.0,
        vignetting: 0.18,
        exposure: 0.96,
        ..Camera::default()
    };
    shots
        .iter()
        .map(|shot| {
            let apart = shot.delay / shot.time_base;
            let edge = 2.0 + 0.25 * (random.unit() - 0.5);
            let rise = (1.6 / shot.time_base).clamp(0.08, 1.0);
            let decay = (18.0 / shot.time_base).max(1.5);
            let height = 2.6 / (1.0 + 0.06 * apart) + 0.1 * random.unit();
            let a = Pulse { edge, base: 3.5, peak: 0.7, rise, decay };
            let b = Pulse { edge: edge + apart, base: 7.4, peak: 7.4 - height, ..a };
            let screen = Screen {
                columns: 10,
                rows: 8,
                small: 5,
                pulses: [a, b],
                line: 0.05,
                grid_line: 0.02,
                theme: THEMES[0],
            };
            let truth = camera.truth(&screen);
            (screen, camera, truth)
        })
        .collect()
}
