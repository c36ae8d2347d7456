//! A simulated bench: what its detectors, its digitiser and a camera before its screen would show.
//!
//! Everything is drawn from a seed, and the truth is kept apart from what is shown. Lengths are in metres, times in
//! nanoseconds.

// Pulses, detectors and a digitiser: recorded traces, and the files they are kept in.
pub mod record;

// A plain screen of our own drawing, and a photograph of it.
pub mod screen;
