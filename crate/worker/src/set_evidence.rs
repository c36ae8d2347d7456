//! Pictures and traces of the rows of a data set, as the simulated bench takes them of what is really so.
//!
//! What recorder and camera add is drawn from a key of its own for each row, which is SHA-256 (FIPS 180-4) of a text with the
//! secret of the set: nobody tells the noise of one without the secret, or takes it off. A file says nothing of where it comes
//! from: of what is really so it holds what one sees in it.

use slope_archive::sha256;
use slope_bench::chance::Chance;
use slope_bench::record::{Bench, DetectorResponse, Digitiser};
use slope_bench::screen::{Camera, Picture, Shot, on_a_shelf};
use slope_evidence::decimal::Decimal;
use slope_evidence::message;
use slope_evidence::row_truth::RowTruth;
use slope_evidence::trace::{DecimalMark, Recording};
use slope_evidence::words::Message;

/// Width of a photograph, pixels.
pub const WIDTH: usize = 1200;
/// Its height, pixels.
const HEIGHT: usize = 900;

/// How near an edge may come to either side of the screen, divisions.
const LEAST_SIDE: f64 = 0.5;
/// How near it comes where there is room, divisions.
const SIDE: f64 = 1.0;
/// How far A's edge moves about from photograph to photograph, as the trigger leaves it, divisions.
const WANDER: f64 = 1.5;
/// Divisions across a screen, at most.
const MOST_COLUMNS: f64 = 20.0;

/// How long before A's edge a record begins, ns.
const BEFORE: f64 = 50.0;
/// How long it goes on behind B's, ns.
const BEHIND: f64 = 60.0;
/// From sample to sample, ns.
const STEP: f64 = 0.25;
/// Samples of the shortest record; a longer one has twice as many, or four times…
const SAMPLES: usize = 560;
/// Place of the last digit of a time, ns: steps of a quarter of a nanosecond are written whole.
const TIME_PLACE: i32 = -2;
/// Place of the last digit of a voltage, V: far below what the digitiser rounds to.
const VOLT_PLACE: i32 = -6;
/// The longest delay that is recorded, ns.
const LATEST: f64 = 2000.0;
/// The least light that arrives at B, as a share of A's: however far, the amplifier is set to the pulse.
const DIMMEST: f64 = 0.3;

/// What is drawn for something of a set.
fn chance(secret: &str, of: &str) -> Chance {
    Chance::keyed(sha256(format!("slope-of-light taken\n{secret}\n{of}").as_bytes()))
}

/// Both traces of a row in one file, its decimals with a mark. The recorder's own clock is a true one: by what it is off, the
/// delay is already.
///
/// # Errors
/// When the delay is too long for a record.
pub fn traces(secret: &str, so: &RowTruth, mark: DecimalMark) -> Result<String, Message> {
    if !(-BEFORE / 2.0..=LATEST).contains(&so.delay) {
        return Err(message!("sets-too_late", row = so.row as usize));
    }
    let bench = detectors(so.delay);
    let light = bench.light(so.distance).clamp(DIMMEST, 1.0);
    let recording = bench.record(so.delay, light, &mut chance(secret, &format!("traces {}", so.row)));
    Ok(text(&recording, mark))
}

fn detectors(delay: f64) -> Bench {
    let detector = DetectorResponse { rise: 2.6, decay: 16.0, ..DetectorResponse::default() };
    let mut samples = SAMPLES;
    while samples as f64 * STEP < BEFORE + delay + BEHIND {
        samples *= 2;
    }
    let digitiser =
        Digitiser { step: STEP, samples, start: -BEFORE, bits: 10, noise: 0.004, ..Digitiser::default() };
    Bench { a: detector, b: detector, digitiser, fall_off: 9.0 }
}

/// A file with both channels: labels, and a line a sample. Numbers are written as elsewhere here, so that no other way of writing
/// them need be loaded.
fn text(recording: &Recording, mark: DecimalMark) -> String {
    let number = |value: f64, place: i32| {
        Decimal::at_place(value, place).map_or_else(String::new, |decimal| decimal.positional('-', mark))
    };
    let mut text = String::from("t (ns)");
    for channel in &recording.channels {
        text += ";";
        text += &channel.label;
        text += " (V)";
    }
    let samples = recording.channels.first().map_or(0, |channel| channel.samples.len());
    for sample in 0..samples {
        text += "\n";
        text += &number(recording.start + sample as f64 * recording.step, TIME_PLACE);
        for volts in recording.channels.iter().filter_map(|channel| channel.samples.get(sample)) {
            text += ";";
            text += &number(*volts, VOLT_PLACE);
        }
    }
    text + "\n"
}

/// A photograph of the screen at a row, by a camera that is not moved from row to row of a set.
///
/// # Errors
/// When the delay does not fit on the screen.
pub fn photograph(secret: &str, so: &RowTruth) -> Result<Picture, Message> {
    let columns = so.screen_width.round();
    let left = columns - so.delay / so.time_base;
    let side = (left / 2.0).min(SIDE);
    let fits = side >= LEAST_SIDE && left <= columns && columns <= MOST_COLUMNS;
    if !fits {
        return Err(message!("sets-off_screen", row = so.row as usize));
    }
    let mut chance = chance(secret, &format!("photograph {}", so.row));
    let edge = side + (left - 2.0 * side).min(WANDER) * chance.unit();
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "from 1 to MOST_COLUMNS")]
    let columns = columns as u32;
    let shot = Shot { delay: so.delay, time_base: so.time_base };
    let screen = shot.screen(columns, edge, 0.1 * chance.unit());
    Ok(camera(secret).photograph_by(&screen, &mut chance))
}

/// The camera of a set, on a shelf of its own.
fn camera(secret: &str) -> Camera {
    let mut chance = chance(secret, "camera");
    let shelf = Camera { width: WIDTH, height: HEIGHT, ..on_a_shelf() };
    let mut about = |middle: f64, half: f64| middle + chance.uniform(half);
    Camera {
        aim: [about(shelf.aim[0], 0.1), about(shelf.aim[1], 0.1)],
        yaw: about(shelf.yaw, 0.08),
        pitch: about(shelf.pitch, 0.06),
        roll: about(shelf.roll, 0.02),
        ..shelf
    }
}

#[cfg(test)]
#[path = "set_evidence_test.rs"]
mod tests;
