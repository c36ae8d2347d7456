//! A view to test with: every text in it is the one given.

use crate::analysis::notices::{Notice, Section, Weight};
use crate::notebook::{
    ActsOn, Basis, BenchField, Cell, Effect, OverlapPair, Path, RailField, RulerUnit, Scope, Sense, Splice,
};
use crate::quantity::DecimalMark;
use crate::view::{
    Field, Figure, LineView, Proposal, RailView, ResultView, RowState, RowView, SettingView, SharedView, View,
};

/// A view with two rows, the second struck out, and every text set to `text`.
pub fn view_of(text: &str) -> View {
    let field = || Field { text: text.into(), ..Field::default() };
    let figure = || Figure {
        id: "slope".into(),
        name: text.into(),
        symbol: text.into(),
        value: text.into(),
        meaning: text.into(),
    };
    View {
        title: text.into(),
        decimal_mark: DecimalMark::Point,
        path: Path::Mirror,
        can_undo: true,
        can_redo: false,
        entries: 12,
        bench: BENCH.iter().map(|name| (*name, field())).collect(),
        rails: splices(text).into_iter().map(|splice| rail(text, splice)).collect(),
        settings: vec![SettingView { id: 1, time_per_division: field(), uncertainty: field() }],
        shared: vec![SharedView {
            id: 1,
            name: text.into(),
            acts_on: ActsOn::Delays,
            effect: Effect::Offset,
            rows: Scope::All,
            uncertainty: field(),
        }],
        rows: vec![
            row(text, 11, 1, RowState::Used, ""),
            row(text, 12, 2, RowState::Struck, text),
            row("", 13, 3, RowState::Empty, ""),
        ],
        proposal: Proposal::default(),
        line: LineView {
            refusal: String::new(),
            method: text.into(),
            figures: vec![figure()],
            checks: vec![figure()],
            summary: text.into(),
            residual_summary: text.into(),
        },
        result: ResultView {
            refusal: String::new(),
            short: text.into(),
            figures: vec![figure()],
            sentences: vec![text.into()],
            basis: Basis::Stated,
            reason: text.into(),
            choice: text.into(),
        },
        notices: vec![Notice {
            id: "runs",
            weight: Weight::Look,
            section: Section::Line,
            text: text.into(),
            look_at: text.into(),
            rows: vec![11, 12],
            rail: None,
        }],
    }
}

const BENCH: [BenchField; 16] = [
    BenchField::People,
    BenchField::Place,
    BenchField::Wavelength,
    BenchField::PulseRate,
    BenchField::SmallDivisions,
    BenchField::EdgeHalfWidth,
    BenchField::EdgeReason,
    BenchField::ScreenWidth,
    BenchField::TimeBaseUncertainty,
    BenchField::Temperature,
    BenchField::Pressure,
    BenchField::Humidity,
    BenchField::CarbonDioxide,
    BenchField::Aim,
    BenchField::Method,
    BenchField::Discussion,
];

fn splices(text: &str) -> [Splice; 6] {
    let text = || text.to_owned();
    [
        Splice::Unsaid,
        Splice::AtSplitter { mark: text(), uncertainty: text() },
        Splice::Stated { mark: text(), distance: text(), uncertainty: text() },
        Splice::Meeting { mark: text(), mark_before: text(), gap: text(), uncertainty: text() },
        Splice::Overlap { pairs: vec![OverlapPair { here: text(), before: text() }] },
        Splice::Free { mark: text() },
    ]
}

fn rail(text: &str, splice: Splice) -> RailView {
    use RailField::{From, Name, ReadingUncertainty, ScaleUncertainty, To};
    let field = || Field { text: text.into(), ..Field::default() };
    RailView {
        id: 1,
        fields: [Name, From, To, ReadingUncertainty, ScaleUncertainty].map(|name| (name, field())).into(),
        unit: RulerUnit::Centimetre,
        unit_symbol: "cm".into(),
        sense: Sense::Falls,
        splice,
        splice_problems: [].into(),
        stands: text.into(),
        step: text.into(),
        rows: 2,
    }
}

fn row(text: &str, id: u32, number: usize, state: RowState, struck: &str) -> RowView {
    use Cell::{EdgeA, EdgeB, Rail, Reading, Remark, TimeBase};
    let field = |name| {
        let unit = if name == Reading { "cm".into() } else { String::new() };
        (name, Field { text: text.into(), unit, ..Field::default() })
    };
    RowView {
        id,
        number,
        state,
        cells: [Rail, Reading, TimeBase, EdgeA, EdgeB, Remark].map(field).into(),
        struck: struck.into(),
        lacks: String::new(),
        distance: text.into(),
        delay: text.into(),
        residual: text.into(),
        notices: vec![],
    }
}
