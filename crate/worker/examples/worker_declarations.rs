//! Writes the TypeScript declarations of all that crosses between the evidence worker's wasm and its script on standard
//! output.

use slope_evidence::border::{Declarations, Thrown};
use slope_evidence::photo::{LensChecks, MarkedBefore, Proposal};
use slope_evidence::row_truth::RowTruth;
use slope_evidence::trace::{Envelope, Layout, Named, Pair};
use slope_evidence::words::Value;
use slope_worker::class::{Class, Given};
use slope_worker::feedback::Feedback;
use slope_worker::key::Key;
use slope_worker::reading::{Known, Measured, Wanted};
use slope_worker::size::Size;
use slope_worker::standing::Standing;

fn main() {
    let all = Declarations::new(
        "cargo run -p slope-worker --example worker_declarations > www/page/worker-types.d.ts",
    )
    .with::<Layout>()
    .with::<Known>()
    .with::<Named>()
    .with::<Pair>()
    .with::<Wanted>()
    .with::<Measured>()
    .with::<Envelope>()
    .with::<Size>()
    .with::<Proposal>()
    .with::<MarkedBefore>()
    .with::<LensChecks>()
    .with::<Standing>()
    .with::<Given>()
    .with::<Class>()
    .with::<Key>()
    .with::<Feedback>()
    .with::<RowTruth>()
    .with::<Value>()
    .with::<Thrown>();
    print!("{all}");
}
