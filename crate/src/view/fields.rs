//! Texts as typed, with what is wrong with them and what stands in while they are empty.

use litemap::LiteMap;

use super::types::Field;
use crate::analysis::evidence::MARK_UNCERTAINTY;
use crate::analysis::read::{READING_UNCERTAINTY, WAVELENGTH_NM, ruler_unit};
use crate::analysis::{Analysis, Place, RowReading};
use crate::notebook::{BenchField, Cell, NotebookState, Rail, RailField, RailId, Row};
use crate::quantity::{DecimalMark, Unit, plain};
use crate::screen::{SCREEN_WIDTH, SMALL_DIVISIONS};

/// The problems of a notebook, to be looked up by place.
pub struct Problems<'a> {
    analysis: &'a Analysis,
}

impl<'a> Problems<'a> {
    /// The problems found in an analysis.
    pub fn of(analysis: &'a Analysis) -> Self {
        Self { analysis }
    }

    /// What is wrong at `place`; empty if nothing is.
    pub fn at(&self, place: &Place) -> String {
        let found = self.analysis.problems.iter().find(|problem| problem.place == *place);
        found.map_or_else(String::new, |problem| problem.message.clone())
    }

    /// A text at `place` with what is wrong with it.
    pub fn field(&self, place: &Place, text: &str, unit: Unit, default: &str) -> Field {
        Field {
            text: text.to_owned(),
            problem: self.at(place),
            default: default.to_owned(),
            unit: unit.symbol().to_owned(),
        }
    }

    /// What is wrong with a splice, by the name of its part.
    pub fn of_splice(&self, rail: RailId) -> LiteMap<String, String> {
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
    let small = plain(SMALL_DIVISIONS, 2, page.decimal_mark);
    let width = plain(SCREEN_WIDTH, 2, page.decimal_mark);
    let pressure = plain(1013.25, 6, page.decimal_mark);
    let wavelength = plain(WAVELENGTH_NM, 3, page.decimal_mark);
    let mark_default = plain(MARK_UNCERTAINTY, 2, page.decimal_mark);
    let all = [
        (BenchField::People, Unit::ONE, ""),
        (BenchField::Place, Unit::ONE, ""),
        (BenchField::LocalRules, Unit::ONE, ""),
        (BenchField::LocalContact, Unit::ONE, ""),
        (BenchField::Wavelength, Unit::NANOMETRE, wavelength.as_str()),
        (BenchField::PulseRate, Unit::HERTZ, ""),
        (BenchField::SmallDivisions, Unit::ONE, small.as_str()),
        (BenchField::EdgeHalfWidth, Unit::DIVISION, "half a small division"),
        (BenchField::EdgeReason, Unit::ONE, ""),
        (BenchField::ScreenWidth, Unit::DIVISION, width.as_str()),
        (BenchField::TimeBaseUncertainty, Unit::PERCENT, "none"),
        (BenchField::Temperature, Unit::CELSIUS, "20"),
        (BenchField::Pressure, Unit::HECTOPASCAL, pressure.as_str()),
        (BenchField::Humidity, Unit::PERCENT, "50"),
        (BenchField::CarbonDioxide, Unit::PPM, "450"),
        (BenchField::BeamAngle, Unit::MILLIRADIAN, "none"),
        (BenchField::Coverage, Unit::PERCENT, "95"),
        (BenchField::MarkUncertainty, Unit::PIXEL, mark_default.as_str()),
        (BenchField::TraceLevel, Unit::VOLT, "half of the smallest pulse"),
        (BenchField::TraceFraction, Unit::PERCENT, "50"),
        (BenchField::Aim, Unit::ONE, ""),
        (BenchField::Method, Unit::ONE, ""),
        (BenchField::Discussion, Unit::ONE, ""),
    ];
    all.into_iter()
        .map(|(field, unit, default)| {
            let text = page.text(field);
            (field, problems.field(&Place::Bench { field }, text, unit, default))
        })
        .collect()
}

/// Every text of a rail.
pub fn rail_fields(rail: &Rail, index: usize, problems: &Problems) -> LiteMap<RailField, Field> {
    let unit = ruler_unit(rail.unit);
    let name = (index + 1).to_string();
    let u_reading = plain(unit.from_base(READING_UNCERTAINTY), 2, DecimalMark::Point);
    let all = [
        (RailField::Name, Unit::ONE, name.as_str()),
        (RailField::From, unit, ""),
        (RailField::To, unit, ""),
        (RailField::ReadingUncertainty, unit, u_reading.as_str()),
        (RailField::ScaleUncertainty, Unit::PERCENT, "none"),
    ];
    all.into_iter()
        .map(|(field, unit, default)| {
            let text = rail.texts.get(&field).map_or("", String::as_str);
            (field, problems.field(&Place::Rail { rail: rail.id, field }, text, unit, default))
        })
        .collect()
}

/// Every cell of a row.
pub fn cell_fields(
    page: &NotebookState,
    row: &Row,
    reading: &RowReading,
    problems: &Problems,
) -> LiteMap<Cell, Field> {
    let rail = reading.rail.and_then(|id| page.rails.iter().find(|rail| rail.id == id));
    let ruler = rail.map_or(Unit::CENTIMETRE, |rail| ruler_unit(rail.unit));
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
            (cell, problems.field(&Place::Cell { row: row.id, cell }, row.text(cell), unit, ""))
        })
        .collect()
}
