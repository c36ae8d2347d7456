//! The engine against published values. Each module names its source; the data lie in `reference/`.
#![cfg(not(target_arch = "wasm32"))]

mod adaptive;
mod reference;
mod air;
mod budget;
mod by_script;
mod from_memory;
mod certified;
mod consensus;
mod data_sets;
mod distribution;
mod few_repeats;
mod floor;
mod large;
mod light;
mod matrices;
mod line;
mod line_checks;
mod line_properties;
mod monte_carlo;
mod odrpack;
mod photo_coverage;
mod photo_plane;
mod photo_proposals;
mod photo_doubts;
mod rounding;
mod said_first;
mod coverage;
mod notices;
mod shapes;
mod stored;
mod trace_coverage;
mod trace_reference;
mod trace_walk;
mod whole_path;
