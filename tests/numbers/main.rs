//! The engine against published values. Each module names its source; the data lie in `reference/`.
#![cfg(not(target_arch = "wasm32"))]

mod air;
mod coverage;
mod distribution;
mod floor;
mod line;
mod line_checks;
mod line_properties;
mod reference;
mod rounding;
mod whole_path;
