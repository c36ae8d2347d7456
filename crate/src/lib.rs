//! Slope of Light: readings of a time-of-flight bench, turned into the speed of light with its uncertainty.
//!
//! The modules, in the order in which data flows. Each may use those above it, never those below.
//!
//! Inside the crate every length is in metres and every time in nanoseconds, unless a name says otherwise.

pub mod quantity;

pub mod distribution;

pub mod air;

pub mod rail;

pub mod screen;

pub mod line;

pub mod notebook;

pub mod chart;

pub mod report;

pub mod bundle;

pub mod synth;
