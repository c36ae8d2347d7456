//! Files and texts that nobody means well by: samples changed at random, and what is read of them. Nothing panics, hangs
//! or takes memory without bound, and what is taken makes a page, a report and a bundle.
//!
//! A run of the tests takes some thousand inputs for each reader, always the same ones. `cargo fuzz-all` takes others at
//! every run, a minute for each; `SLOPE_FUZZ_SECONDS=3600 cargo fuzz-all` an hour, and
//! `SLOPE_FUZZ_INPUTS=10000000 cargo fuzz-all picture_head` ten million for that reader. Each says how many it took, and in
//! what time. An input that fails is put into `found/`, named by its reader, and is tried first from then on: it stays there
//! as a test. One at which the whole program ends (memory, stack) or never does is not kept: the run of the tests, whose
//! inputs are always the same, comes to it again.
#![cfg(not(target_arch = "wasm32"))]
#![expect(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "tests")]

mod samples;
mod changes;
mod json;
mod trials;
mod use_all;
mod readers;
mod large;
