//! A simulated bench: what is read on its rails, and what its detectors, its digitiser and a camera before its screen
//! would show.
//!
//! Everything is drawn from a seed, and the truth is kept apart from what is shown. Lengths are in metres, times in
//! nanoseconds. No notebook is known here.

// Seeded random numbers, the same on every machine.
pub mod chance;

// Rails with a carriage: what is read at each stop.
pub mod rails;

// Pulses, detectors and a digitiser: recorded traces, and the files they are kept in.
pub mod record;

// A plain screen of our own drawing, and a photograph of it.
pub mod screen;

// What a person writes of a run, and the mistakes made in writing it.
pub mod written;
