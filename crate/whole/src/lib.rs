//! The notebook's core with everything that the page may ever call.
//!
//! The page opens on the core alone, which is smaller, and changes to this one before the sections that need it are
//! added. A package of its own, because cargo keeps what it compiled by package: one library with and without a
//! feature would be compiled anew each time.

pub use slope_of_light::*;
