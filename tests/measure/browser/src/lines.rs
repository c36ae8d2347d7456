//! The lines that are fitted where fits are timed. Lengths in metres, times in nanoseconds.
//!
//! The benches are invented. Both have about the scatter of a student's run: 1 cm in distance, 0.15 ns in delay,
//! delays of 3.3356 ns for each metre after 12 ns of cables.

use slope_bench::chance::Chance;
use slope_of_light::line::{Data, Noise, SharedColumn, Stated, fit};

/// Delay for one metre, ns.
const SLOPE: f64 = 3.3356;
/// Delay at zero distance, ns.
const INTERCEPT: f64 = 12.0;

/// 24 rows from 0.5 m to 12 m, each with uncertainties of its own in both variables, which differ from row to row.
pub fn rows_24() -> Data {
    let wave = |row: usize, size: f64| 1.0 + size * (row as f64).sin();
    let ux = (0..24).map(|row| 0.01 * wave(row, 0.5)).collect();
    let uy = (0..24).map(|row| 0.15 * wave(row + 11, 0.4)).collect();
    drawn(&even(0.5, 12.0, 24), Stated { ux, uy, ..Stated::default() }, 24)
}

/// 200 rows from 0 m to 12 m over three rails, whose two splices and one time base are errors shared by many rows.
pub fn rows_200_shared() -> Data {
    let places = even(0.0, 12.0, 200);
    let splice = |at: f64, u: f64| SharedColumn {
        x: places.iter().map(|x| if *x > at { u } else { 0.0 }).collect(),
        y: vec![],
    };
    let time_base =
        SharedColumn { x: vec![], y: places.iter().map(|x| 5e-4 * (INTERCEPT + SLOPE * x)).collect() };
    let shared = vec![splice(4.0, 0.012), splice(8.0, 0.015), time_base];
    drawn(&places, Stated { ux: vec![0.01; 200], uy: vec![0.15; 200], shared, ..Stated::default() }, 200)
}

/// `count` places at even steps.
fn even(from: f64, to: f64, count: usize) -> Vec<f64> {
    (0..count).map(|row| from + (to - from) * row as f64 / (count - 1) as f64).collect()
}

/// Readings with errors drawn from what is stated of them.
fn drawn(places: &[f64], stated: Stated, seed: u64) -> Data {
    let mut chance = Chance::seeded(seed);
    let mut x: Vec<f64> = places.iter().zip(&stated.ux).map(|(x, u)| x + chance.normal(*u)).collect();
    let on_line = places.iter().map(|x| INTERCEPT + SLOPE * x);
    let mut y: Vec<f64> = on_line.zip(&stated.uy).map(|(y, u)| y + chance.normal(*u)).collect();
    for column in &stated.shared {
        let size = chance.normal(1.0);
        let add = |list: &mut [f64], effects: &[f64]| {
            list.iter_mut().zip(effects).for_each(|(value, effect)| *value += size * effect);
        };
        add(&mut x, &column.x);
        add(&mut y, &column.y);
    }
    Data { x, y, noise: Noise::Stated(stated), free: vec![] }
}

/// Fits a line `times` over; gives the sum of the slopes, so that no fit can be left out.
pub fn fit_many(data: &Data, times: u32) -> f64 {
    (0..times).map(|_| fit(std::hint::black_box(data)).map_or(f64::NAN, |line| line.slope)).sum()
}

/// What a browser may call.
#[cfg(target_arch = "wasm32")]
mod web {
    use wasm_bindgen::prelude::*;

    use super::Data;

    /// A line to be fitted.
    #[wasm_bindgen]
    pub struct Bench(Data);

    #[wasm_bindgen]
    impl Bench {
        /// See [`super::rows_24`].
        pub fn rows_24() -> Bench {
            Bench(super::rows_24())
        }

        /// See [`super::rows_200_shared`].
        pub fn rows_200_shared() -> Bench {
            Bench(super::rows_200_shared())
        }

        /// See [`super::fit_many`].
        pub fn fit_many(&self, times: u32) -> f64 {
            super::fit_many(&self.0, times)
        }
    }
}
