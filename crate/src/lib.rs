//! Slope of Light: readings of a time-of-flight bench, turned into the speed of light with its uncertainty.
//!
//! The modules, in the order in which data flows. Each may use those above it, never those below; `web` alone
//! knows a browser.
//!
//! Inside the crate every length is in metres and every time in nanoseconds, unless a name says otherwise.
//!
//! ```
//! use slope_of_light::{analysis::analyse, simulated::demo};
//!
//! let (notebook, truth) = demo::typed_readings()?;
//! let analysis = analyse(&notebook);
//! let speed = analysis.speed.map_err(|refusal| refusal.id)?;
//! assert!((speed.c - truth.c).abs() < speed.expanded().unwrap_or(0.0));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

// What is said to people: identifiers of texts with what fills them.
pub mod words;

// Numbers as people write and read them: parsing, units, value ± uncertainty, rounding.
pub mod quantity;

// Distributions, straight lines, uncertainty budgets: a package of their own, compiled for speed where the rest of the
// page is compiled for size.
pub use slope_engine::{budget, consensus, distribution, line};

// Recorded traces and photographs of a screen: a package of their own, most of which works in a worker beside the page.
pub use slope_evidence::{errors_as_data, message, photo, trace};

// Phase and group index of air.
pub mod air;

// Rails and splices: readings to distances and what they share.
pub mod rail;

// Divisions times time base: screen readings to delays.
pub mod screen;

// The notebook: its log of edits and the page folded from it.
pub mod notebook;

// From a notebook to everything computed from it, once.
pub mod analysis;

// Before the lab, and between two readings: what a run is expected to give and what would help.
pub mod plan;

// Everything computed, in words and digits, for the page and the report.
pub mod view;

// Text from a notebook, made fit to stand in HTML, LaTeX and Markdown.
pub mod escape;

// Drawings on any backend: canvas in the page, SVG natively, and in LaTeX.
pub mod chart;

// What is drawn of a notebook: from what was analysed to plain pictures, and to charts in SVG or LaTeX.
pub mod drawings;

// Tables, and the report to print, in LaTeX and in Markdown.
pub mod report;

// The zip that is handed in, out and in again.
pub mod bundle;

// Notebooks that a person at a simulated bench would write: demo, tests, practice.
pub mod simulated;

// The wasm boundary: the only module that knows a browser.
#[cfg(target_arch = "wasm32")]
pub mod web;
