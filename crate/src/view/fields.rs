//! Texts as typed, with what is wrong with them and what stands in while they are empty.

use litemap::LiteMap;

use super::figures::undivided;
use super::types::{Behind, Field, Meant};
use crate::air::Input;
use crate::analysis::air_state::default_limit;
use crate::analysis::evidence::MARK_UNCERTAINTY;
use crate::analysis::place::SplicePart;
use crate::analysis::read::{JOINT_UNCERTAINTY, READING_UNCERTAINTY, WAVELENGTH_NM, ruler_unit};
use crate::analysis::{Analysis, Place, RowReading};
use crate::message;
use crate::notebook::{
    BenchField, Cell, ErrorShape, NotebookState, Rail, RailField, RailId, Row, Splice, UncertaintyKind,
    UncertaintyOf,
};
use crate::quantity::{Unit, at_most, parse, parse_alone, plain};
use crate::screen::{SCREEN_WIDTH, SMALL_DIVISIONS};
use crate::words::{Message, Value};

/// The problems of a notebook, to be looked up by place.
pub struct Problems<'a> {
    analysis: &'a Analysis,
}

impl<'a> Problems<'a> {
    /// The problems found in an analysis.
    pub fn of(analysis: &'a Analysis) -> Self {
        Self { analysis }
    }

    /// What is wrong at `place`; none if nothing is.
    pub fn at(&self, place: &Place) -> Option<Message> {
        let found = self.analysis.problems.iter().find(|problem| problem.place == *place);
        found.map(|problem| problem.message.clone())
    }

    /// A text at `place` with what is wrong with it.
    pub fn field(&self, place: &Place, text: &str, unit: Unit, default: impl Into<Value>) -> Field {
        Field {
            text: text.to_owned(),
            problem: self.at(place),
            default: default.into(),
            unit: unit.symbol().to_owned(),
            meant: None,
            behind: None,
        }
    }

    /// The text of an uncertainty at `place`, as what it is meant, and what follows; where no kind can be chosen `of` it, the
    /// text itself says it ([`UncertaintyKind::written`]); `u` is the standard uncertainty
    /// taken while it is empty, if any is, in the base unit.
    pub fn uncertainty(
        &self,
        page: &NotebookState,
        of: Option<UncertaintyOf>,
        place: &Place,
        text: &str,
        unit: Unit,
        u: Option<f64>,
    ) -> Field {
        let (written, number) = UncertaintyKind::written(text);
        let kind = of.map_or(written, |of| page.kind(of));
        let mark = page.decimal_mark;
        let typed = parse(number, mark, unit).ok();
        let typed = typed.filter(|typed| typed.value >= 0.0 && typed.uncertainty.is_none());
        let in_unit = |value: f64, unit: Unit| plain(unit.from_base(value), 2, mark);
        let shared = page.shared.iter().find(|error| Some(UncertaintyOf::Shared(error.id)) == of);
        let under_root = shared.map_or(ErrorShape::Rectangular, |error| page.shape(error)).under_root();
        let taken = u.map(|u| match kind {
            UncertaintyKind::Limit => UncertaintyKind::Standard.limit(u),
            UncertaintyKind::Standard => u,
        });
        let follows = match kind {
            UncertaintyKind::Standard => None,
            UncertaintyKind::Limit if text.is_empty() => taken.map(|limit| (limit, unit)),
            UncertaintyKind::Limit => typed.map(|typed| (typed.value, typed.unit)),
        };
        let follows = follows.filter(|(limit, _)| *limit > 0.0);
        let default = match taken {
            Some(0.0) => "0".to_owned(),
            // Half a small division of a quarter is 0.125, which two digits do not hold.
            Some(limit) if kind == UncertaintyKind::Limit => at_most(unit.from_base(limit), 3, mark),
            Some(u) => in_unit(u, unit),
            None => String::new(),
        };
        let meant = Meant {
            of,
            kind,
            u: follows.map_or_else(String::new, |(limit, unit)| {
                format!("{}\u{a0}{}", in_unit(limit / f64::from(under_root).sqrt(), unit), unit.symbol())
            }),
            under_root,
            exact: text.is_empty() && u == Some(0.0),
        };
        Field { meant: Some(meant), ..self.field(place, text, unit, default) }
    }

    /// What is wrong with a splice, by the name of its part.
    pub fn of_splice(&self, rail: RailId) -> LiteMap<String, Message> {
        let problems = self.analysis.problems.iter();
        problems
            .filter_map(|problem| match &problem.place {
                Place::Splice { rail: at, part } if *at == rail => {
                    Some((part.to_string(), problem.message.clone()))
                }
                _ => None,
            })
            .collect()
    }
}

/// Every text of the bench and the report.
pub fn bench_fields(page: &NotebookState, problems: &Problems) -> LiteMap<BenchField, Field> {
    let digits = |value, digits| Value::from(plain(value, digits, page.decimal_mark));
    let nothing = Value::default;
    let all = [
        (BenchField::People, Unit::ONE, nothing()),
        (BenchField::Place, Unit::ONE, nothing()),
        (BenchField::LocalRules, Unit::ONE, nothing()),
        (BenchField::LocalContact, Unit::ONE, nothing()),
        (BenchField::Instruments, Unit::ONE, nothing()),
        (BenchField::Cables, Unit::ONE, nothing()),
        (BenchField::FixedArm, Unit::ONE, nothing()),
        (BenchField::Trigger, Unit::ONE, nothing()),
        (BenchField::EdgeFraction, Unit::ONE, nothing()),
        (BenchField::PulseRate, Unit::HERTZ, nothing()),
        (BenchField::SmallDivisions, Unit::ONE, digits(SMALL_DIVISIONS, 1)),
        (BenchField::EdgeReason, Unit::ONE, nothing()),
        (BenchField::ScreenWidth, Unit::DIVISION, digits(SCREEN_WIDTH, 2)),
        (BenchField::BeamAngle, Unit::MILLIRADIAN, message!("defaults-exact").into()),
        (BenchField::Coverage, Unit::PERCENT, "95".into()),
        (BenchField::TraceLevel, Unit::VOLT, message!("defaults-half_pulse").into()),
        (BenchField::TraceFraction, Unit::PERCENT, "50".into()),
        (BenchField::StudentNumber, Unit::ONE, nothing()),
        (BenchField::Group, Unit::ONE, nothing()),
        (BenchField::Date, Unit::ONE, nothing()),
        (BenchField::LeastRows, Unit::ONE, "3".into()),
        (BenchField::Aim, Unit::ONE, nothing()),
        (BenchField::Method, Unit::ONE, nothing()),
        (BenchField::Discussion, Unit::ONE, nothing()),
    ];
    all.into_iter()
        .map(|(field, unit, default)| {
            let text = page.text(field);
            (field, problems.field(&Place::Bench { field }, text, unit, default))
        })
        .chain(bench_measured(page, problems))
        .chain(bench_uncertainties(page, problems))
        .collect()
}

/// The values of the bench behind which an uncertainty may be typed.
fn bench_measured(page: &NotebookState, problems: &Problems) -> [(BenchField, Field); 5] {
    let mark = page.decimal_mark;
    let of = |field, input, unit: Unit, default: f64, digits| {
        let text = page.text(field);
        let typed = parse(text, mark, unit).ok();
        let stated = typed.and_then(|typed| typed.uncertainty);
        let limit = default_limit(input, typed.is_some());
        let u = stated.unwrap_or_else(|| UncertaintyKind::Limit.standard(limit));
        let behind = Behind {
            limit: if stated.is_some() { String::new() } else { undivided(limit, unit, mark) },
            u: format!("{}\u{a0}{}", plain(unit.from_base(u), 2, mark), unit.symbol()),
        };
        let shown = problems.field(&Place::Bench { field }, text, unit, plain(default, digits, mark));
        // Of what is refused nothing more is said.
        let behind = shown.problem.is_none().then_some(behind);
        (field, Field { behind, ..shown })
    };
    [
        of(BenchField::Wavelength, Input::Wavelength, Unit::NANOMETRE, WAVELENGTH_NM, 3),
        of(BenchField::Temperature, Input::Temperature, Unit::CELSIUS, 20.0, 2),
        of(BenchField::Pressure, Input::Pressure, Unit::HECTOPASCAL, 1013.25, 6),
        of(BenchField::Humidity, Input::Humidity, Unit::PERCENT, 50.0, 2),
        of(BenchField::CarbonDioxide, Input::CarbonDioxide, Unit::PPM, 450.0, 3),
    ]
}

/// The uncertainties of the bench.
fn bench_uncertainties(page: &NotebookState, problems: &Problems) -> [(BenchField, Field); 3] {
    let of = |of, field, unit, u| {
        (
            field,
            problems.uncertainty(page, Some(of), &Place::Bench { field }, page.text(field), unit, Some(u)),
        )
    };
    let small = parse_alone(page.text(BenchField::SmallDivisions), page.decimal_mark, Unit::ONE).ok();
    let small = small.filter(|small| *small > 0.0).unwrap_or(SMALL_DIVISIONS);
    // Half a small division either way.
    let edge = UncertaintyKind::Limit.standard(0.5 / small);
    [
        of(UncertaintyOf::Edge, BenchField::EdgeHalfWidth, Unit::DIVISION, edge),
        of(UncertaintyOf::TimeBase, BenchField::TimeBaseUncertainty, Unit::PERCENT, 0.0),
        of(UncertaintyOf::Mark, BenchField::MarkUncertainty, Unit::PIXEL, MARK_UNCERTAINTY),
    ]
}

/// Every text of a rail.
pub fn rail_fields(
    page: &NotebookState,
    rail: &Rail,
    index: usize,
    problems: &Problems,
) -> LiteMap<RailField, Field> {
    let unit = ruler_unit(rail.unit);
    let all = [
        (RailField::Name, Unit::ONE, Value::from((index + 1).to_string())),
        (RailField::From, unit, Value::default()),
        (RailField::To, unit, Value::default()),
    ];
    let text = |field| rail.texts.get(&field).map_or("", String::as_str);
    let place = |field| Place::Rail { rail: rail.id, field };
    let uncertainty = |of, field, unit, u| {
        (field, problems.uncertainty(page, Some(of), &place(field), text(field), unit, Some(u)))
    };
    all.into_iter()
        .map(|(field, unit, default)| (field, problems.field(&place(field), text(field), unit, default)))
        .chain([
            uncertainty(
                UncertaintyOf::RulerReading(rail.id),
                RailField::ReadingUncertainty,
                unit,
                READING_UNCERTAINTY,
            ),
            uncertainty(UncertaintyOf::RulerScale(rail.id), RailField::ScaleUncertainty, Unit::PERCENT, 0.0),
        ])
        .collect()
}

/// The uncertainty of the place of a rail; empty where its splice states none.
pub fn splice_uncertainty(page: &NotebookState, rail: &Rail, problems: &Problems) -> Field {
    let (Splice::AtSplitter { uncertainty, .. }
    | Splice::AtDistance { uncertainty, .. }
    | Splice::Joined { uncertainty, .. }) = &rail.splice
    else {
        return Field::default();
    };
    problems.uncertainty(
        page,
        Some(UncertaintyOf::Splice(rail.id)),
        &Place::Splice { rail: rail.id, part: SplicePart::Uncertainty },
        uncertainty,
        ruler_unit(rail.unit),
        Some(JOINT_UNCERTAINTY),
    )
}

/// Every cell of a row.
pub fn cell_fields(
    page: &NotebookState,
    row: &Row,
    reading: &RowReading,
    problems: &Problems,
) -> LiteMap<Cell, Field> {
    let rail = reading.rail.and_then(|id| page.rail(id));
    let ruler = rail.map_or(Unit::CENTIMETRE, |(_, rail)| ruler_unit(rail.unit));
    let all = [
        (Cell::Rail, Unit::ONE),
        (Cell::Reading, ruler),
        (Cell::TimeBase, Unit::NANOSECOND),
        (Cell::EdgeA, Unit::DIVISION),
        (Cell::EdgeB, Unit::DIVISION),
        (Cell::Distance, Unit::METRE),
        (Cell::DistanceUncertainty, Unit::METRE),
        (Cell::Delay, Unit::NANOSECOND),
        (Cell::DelayUncertainty, Unit::NANOSECOND),
        (Cell::Remark, Unit::ONE),
    ];
    all.into_iter()
        .map(|(cell, unit)| {
            let (place, text) = (Place::Cell { row: row.id, cell }, row.text(cell));
            let field = match UncertaintyKind::written(text).0 {
                UncertaintyKind::Limit => problems.uncertainty(page, None, &place, text, unit, None),
                UncertaintyKind::Standard => problems.field(&place, text, unit, ""),
            };
            (cell, field)
        })
        .collect()
}
