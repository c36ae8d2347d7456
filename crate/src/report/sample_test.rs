//! A view to test with: every text in it is the one given; an analysis with round numbers; and words.

#![expect(clippy::unwrap_used, reason = "tests")]

use crate::analysis::{
    AirReading, Analysis, Budget, Checks, Comparison, LineAnalysis, Refusal, RowPart, RowReading, Shown,
    Speed,
};
use crate::analysis::{Notice, Section, Weight};
use crate::line::{Fit, RowFit, Uncertainty};
use crate::message;
use crate::notebook::{
    ActsOn, Asks, Basis, Beam, BenchField, Cell, Effect, ErrorShape, Estimator, Note, NotebookState,
    OverlapPair, Path, Piece, RailField, RulerUnit, Scope, Sense, Splice,
};
use crate::quantity::DecimalMark;
use crate::view::{
    BudgetView, CautionsView, ComponentView, DelaysView, Field, Figure, HandoutView, LineView, NewRow,
    RailView, ResultView, RowState, RowView, SettingView, SharedView, TaskView, TrialPlanView, View,
    cautions_view,
};
use crate::words::{Message, WordTable};

/// A view with two rows, the second struck out, and every text set to `text`.
pub fn view_of(text: &str) -> View {
    let field = || Field { text: text.into(), ..Field::default() };
    let figure = || Figure {
        id: "slope".into(),
        name: text.into(),
        symbol: text.into(),
        value: text.into(),
        meaning: vec![text.into()],
        formula: None,
        source: Some(text.into()),
    };
    View {
        delays: DelaysView {
            estimator: Estimator::ConstantFraction,
            level: None,
            fraction: 0.5,
            grids: Vec::new(),
            walk: vec![figure()],
            heights: Some(said(text)),
            walk_summary: Some(said(text)),
        },
        title: text.into(),
        decimal_mark: DecimalMark::Point,
        path: Path::Mirror,
        beam: Beam::default(),
        can_undo: true,
        can_redo: false,
        entries: 12,
        cautions: CautionsView {
            read: vec![message!("cautions-read-by-undated", name = text)],
            ..cautions_view(&NotebookState::default())
        },
        bench: BENCH.iter().map(|name| (*name, field())).collect(),
        handout: HandoutView {
            tasks: vec![TaskView {
                id: 1,
                at: Piece::Line,
                asks: Asks::Words,
                text: text.into(),
                answer: field(),
            }],
            ..HandoutView::default()
        },
        rails: splices(text).into_iter().map(|splice| rail(text, splice)).collect(),
        settings: vec![SettingView { id: 1, time_per_division: field(), uncertainty: field() }],
        shared: vec![SharedView {
            id: 1,
            name: text.into(),
            acts_on: ActsOn::Delays,
            effect: Effect::Offset,
            rows: Scope::All,
            uncertainty: field(),
            shape: ErrorShape::Normal,
            degrees_of_freedom: field(),
        }],
        rows: vec![
            row(text, 11, 1, RowState::Used, ""),
            row(text, 12, 2, RowState::Struck, text),
            row("", 13, 3, RowState::Empty, ""),
        ],
        proposal: NewRow::default(),
        line: LineView {
            refusal: None,
            method: Some(said(text)),
            figures: vec![figure()],
            checks: vec![figure()],
            summary: Some(said(text)),
            residual_summary: Some(said(text)),
        },
        budget: BudgetView {
            refusal: None,
            components: vec![component(text)],
            figures: vec![figure()],
            summary: Some(said(text)),
        },
        trials: TrialPlanView { seed: text.into(), wanted: field(), refusal: None },
        result: ResultView {
            refusal: None,
            short: text.into(),
            figures: vec![figure()],
            sentences: vec![said(text)],
            basis: Basis::Stated,
            reason: text.into(),
            choice: Some(said(text)),
            sealed: false,
            may_seal: true,
        },
        photo: None,
        notes: vec![Note { id: 21, after: Some(11), text: text.into(), at: String::new() }],
        notices: vec![Notice {
            id: "runs",
            weight: Weight::Look,
            section: Section::Line,
            text: message!("notice-step_at_splice", rail = text, step = "1", u = "0"),
            look_at: message!("notice-step_at_splice-look"),
            rows: vec![11, 12],
            rail: None,
            signs: Vec::new(),
            repair: None,
        }],
    }
}

/// A message that says a text.
fn said(text: &str) -> Message {
    message!("list", all = text)
}

/// The table of English.
pub fn english() -> WordTable {
    WordTable::english().unwrap()
}

/// The table of French.
pub fn french() -> WordTable {
    WordTable::read("fr", include_str!("../../../www/page/words/fr.ftl")).unwrap()
}

fn component(text: &str) -> ComponentView {
    ComponentView {
        id: "air".into(),
        name: text.into(),
        acts_on: said(text),
        u: text.into(),
        shape: said(text),
        degrees_of_freedom: text.into(),
        sensitivity: text.into(),
        contribution: text.into(),
        bar: "100%".into(),
        share_text: text.into(),
        remark: said(text),
    }
}

/// An analysis of rows 1, 2 and 4 in the line; numbers invented, each with a short binary form.
pub fn analysis(stated: bool) -> Analysis {
    let numbers = [(11, 1), (12, 2), (14, 4)];
    Analysis {
        walk: None,
        problems: vec![],
        rails: vec![],
        rows: numbers.map(|(id, number)| reading(id, number)).into(),
        air: AirReading {
            temperature_c: 20.0,
            pressure_pa: 101_325.0,
            humidity_percent: 50.0,
            co2_ppm: 450.0,
            wavelength_nm: 650.0,
            group_index: Ok(1.0),
            u_group_index: Some(1e-6),
        },
        line: Ok(Shown::of(line(stated), None)),
        speed: Ok(Shown::of(speed(), None)),
        notices: vec![],
        drawn: None,
        sealed: false,
        judged: true,
    }
}

/// An analysis without a line.
pub fn empty_analysis() -> Analysis {
    let refusal = || Refusal::new("too_few_rows", crate::message!("plan-too_few"));
    Analysis { rows: vec![], line: Err(refusal()), speed: Err(refusal()), ..analysis(true) }
}

fn reading(id: u32, number: usize) -> RowReading {
    RowReading {
        id,
        number,
        part: RowPart::Used,
        rail: None,
        reading: None,
        time_per_division: None,
        distance: None,
        delay: None,
    }
}

fn line(stated: bool) -> LineAnalysis {
    let row = |residual| RowFit {
        true_x: 1.0,
        residual,
        normalised: Some(residual * 4.0),
        leverage: 0.5,
        redundancy: 0.5,
        influence: 0.25,
    };
    LineAnalysis {
        rows: vec![11, 12, 14],
        distance: vec![1.0, 2.0, 4.0],
        delay: vec![3.5, 7.0, 14.25],
        u_distance: vec![0.125; 3],
        u_delay: vec![0.25; 3],
        stated,
        fit: Fit {
            intercept: 0.25,
            slope: 3.5,
            uncertainty: Some(Uncertainty {
                intercept: 0.5,
                slope: 0.0625,
                covariance: -0.25,
                centre: 2.0,
                at_centre: 0.125,
            }),
            chi_square: 1.5,
            degrees_of_freedom: 1,
            stated,
            rows: [-0.25, -0.25, 0.5].map(row).into(),
            shared: vec![],
            free: vec![],
            centre: 2.0,
            at_centre: 7.25,
        },
        weights_degrees: None,
        p_value: Some(0.25),
        birge_ratio: Some(1.25),
        shared: vec![],
        parts: vec![],
        free: vec![],
        checks: Checks::default(),
    }
}

fn speed() -> Speed {
    Speed {
        v: 3e8,
        c: 3e8,
        group_index: 1.0,
        basis: Basis::Stated,
        relative: 0.03125,
        relative_v: 0.03125,
        relative_stated: Some(0.03125),
        relative_scatter: None,
        budget: Budget {
            components: vec![],
            degrees_of_freedom: None,
            probability: 0.95,
            coverage_factor: Ok(2.0),
        },
        comparison: Some(Comparison { z: 0.5, e_n: Some(0.25), relative_difference: 0.0625 }),
        second_order: 0.0,
        sealed: false,
    }
}

const BENCH: [BenchField; 23] = [
    BenchField::People,
    BenchField::StudentNumber,
    BenchField::Group,
    BenchField::Date,
    BenchField::Place,
    BenchField::LocalRules,
    BenchField::LocalContact,
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
    BenchField::BeamAngle,
    BenchField::Coverage,
    BenchField::Aim,
    BenchField::Method,
    BenchField::Discussion,
];

fn splices(text: &str) -> [Splice; 6] {
    let text = || text.to_owned();
    [
        Splice::Unsaid,
        Splice::AtSplitter { mark: text(), uncertainty: text() },
        Splice::AtDistance { mark: text(), distance: text(), uncertainty: text() },
        Splice::Joined { mark: text(), mark_before: text(), gap: text(), uncertainty: text() },
        Splice::Overlap { pairs: vec![OverlapPair { here: text(), before: text() }] },
        Splice::Free { mark: text() },
    ]
}

fn rail(text: &str, splice: Splice) -> RailView {
    use RailField::{From, Name, ReadingUncertainty, ScaleUncertainty, To};
    let field = || Field { text: text.into(), ..Field::default() };
    RailView {
        id: 1,
        fields: [Name, From, To, ReadingUncertainty, ScaleUncertainty]
            .map(|name| (name, field()))
            .into_iter()
            .collect(),
        unit: RulerUnit::Centimetre,
        unit_symbol: "cm".into(),
        sense: Sense::Falls,
        splice,
        splice_problems: litemap::LiteMap::new(),
        splice_uncertainty: field(),
        stands: Some(said(text)),
        step: Some(said(text)),
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
        evidence: crate::view::EvidenceKind::Typed,
        id,
        number,
        state,
        cells: [Rail, Reading, TimeBase, EdgeA, EdgeB, Remark].map(field).into_iter().collect(),
        struck: struck.into(),
        lacks: None,
        distance: text.into(),
        delay: text.into(),
        residual: text.into(),
        notices: vec![],
    }
}
