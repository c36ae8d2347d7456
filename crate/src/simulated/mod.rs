//! Notebooks that a person at a simulated bench would write, with the truth apart: for the demo, tests, and practice.
//!
//! The bench itself is a package of its own, `slope-bench`, which draws plain numbers and knows no notebook.
//!
//! - [`described`]: a bench with what is written of it, and the notebook of a run.
//! - [`demo`](mod@demo): the bench of the demo notebook.
//! - [`random`](mod@random): benches at random.

pub mod described;
pub mod demo;
pub mod random;
