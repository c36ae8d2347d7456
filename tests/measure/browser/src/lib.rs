//! What is timed natively and in a browser: one library, so that both do the same work. Compiled as the wasm of the page
//! and of its evidence worker.

pub mod lines;
pub mod traces;
