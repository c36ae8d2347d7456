//! Writes the TypeScript declarations of all that crosses between the core and the page on standard output.

use slope_evidence::border::{Declarations, Thrown};
use slope_evidence::row_truth::RowTruth;
use slope_of_light::analysis::taken::TakenEvidence;
use slope_of_light::chart::{PlotPlaces, PlotTable};
use slope_of_light::notebook::{Edit, LogStep, Merge};
use slope_of_light::plan::rehearsal::SetForm;
use slope_of_light::report::exact::FitFigure;
use slope_of_light::view::evidence::{EvidenceView, GridLines};
use slope_of_light::view::typed::TypedNumber;
use slope_of_light::view::{
    News, PlanView, ProgressView, ProposedView, StoredNotebook, TrialsView, View, WhatIfView,
};
use slope_of_light::words::Value;

fn main() {
    let all = Declarations::new("cargo run -p slope-of-light --example declarations > www/page/types.d.ts")
        .with::<Edit>()
        .with::<TakenEvidence>()
        .with::<View>()
        .with::<News<'static>>()
        .with::<WhatIfView>()
        .with::<ProgressView>()
        .with::<TrialsView>()
        .with::<EvidenceView>()
        .with::<GridLines>()
        .with::<PlanView>()
        .with::<SetForm>()
        .with::<RowTruth>()
        .with::<PlotPlaces>()
        .with::<PlotTable>()
        .with::<ProposedView>()
        .with::<StoredNotebook>()
        .with::<LogStep>()
        .with::<Merge>()
        .with::<FitFigure>()
        .with::<TypedNumber>()
        .with::<Value>()
        .with::<Thrown>();
    print!("{all}");
}
