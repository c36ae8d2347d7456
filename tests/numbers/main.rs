//! The engine against published values. Each module names its source; the data lie in `reference/`.
#![cfg(not(target_arch = "wasm32"))]

mod air;
mod line;
mod reference;
mod rounding;
