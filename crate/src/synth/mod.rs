//! A simulated bench: true geometry and true errors, and the notebook that a person reading it would write.
//!
//! - [`chance`]: seeded random numbers, the same on every machine.
//! - [`rig`]: a bench with its truth kept apart from what is read.
//! - [`random`](mod@random): benches at random.
//! - [`sameness`]: digests that two builds must share.
//! - [`demo`](mod@demo): the bench of the demo notebook.
//!
//! It serves the demo, the tests, and practice. Lengths are in metres, times in nanoseconds.

pub mod chance;
pub mod rig;
pub mod demo;
pub mod random;
pub mod sameness;
