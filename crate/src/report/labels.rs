//! The words of the report: labels and headings, in one place.

use crate::analysis::Weight;
use crate::message;
use crate::notebook::{Beam, BenchField, OverlapPair, Path, RailField, Sense, Splice};
use crate::view::{Field, RowState};
use crate::words::{Message, Value, Words};

/// Texts of the bench in the order of the report.
pub const BENCH_FIELDS: &[BenchField] = &[
    BenchField::Instruments,
    BenchField::Cables,
    BenchField::FixedArm,
    BenchField::Trigger,
    BenchField::Wavelength,
    BenchField::PulseRate,
    BenchField::ScreenWidth,
    BenchField::SmallDivisions,
    BenchField::EdgeFraction,
    BenchField::EdgeHalfWidth,
    BenchField::EdgeReason,
    BenchField::TimeBaseUncertainty,
    BenchField::Temperature,
    BenchField::Pressure,
    BenchField::Humidity,
    BenchField::CarbonDioxide,
    BenchField::BeamAngle,
    BenchField::Coverage,
    BenchField::MarkUncertainty,
    BenchField::TraceLevel,
    BenchField::TraceFraction,
];

/// Texts of a rail in the order of the report.
pub const RAIL_FIELDS: &[RailField] =
    &[RailField::From, RailField::To, RailField::ReadingUncertainty, RailField::ScaleUncertainty];

/// What the carriage carries.
pub fn path(path: Path) -> Message {
    match path {
        Path::Detector => message!("apparatus-paths-detector"),
        Path::Mirror => message!("apparatus-paths-mirror"),
    }
}

/// How the beam reaches what is on the carriage.
pub fn beam(beam: Beam) -> Message {
    match beam {
        Beam::Wide => message!("apparatus-beams-wide"),
        Beam::Followed => message!("apparatus-beams-followed"),
    }
}

/// Which way the readings of a ruler change.
pub fn sense(sense: Sense) -> Message {
    match sense {
        Sense::Grows => message!("rails-senses-grows"),
        Sense::Falls => message!("rails-senses-falls"),
    }
}

/// How a row takes part.
pub fn state(state: RowState) -> Message {
    match state {
        RowState::Empty => message!("tables-states-empty"),
        RowState::Incomplete => message!("tables-states-incomplete"),
        RowState::Used => message!("tables-states-used"),
        RowState::Struck => message!("tables-states-struck"),
    }
}

/// Rows by their numbers, which grow; three or more that follow one another by the first and the last of them, "4–7".
pub fn rows(numbers: &[usize]) -> Value {
    let runs = numbers.chunk_by(|number, next| number + 1 == *next);
    let told = runs.flat_map(|run| match run {
        [first, _, .., last] => vec![format!("{first}–{last}")],
        few => few.iter().map(usize::to_string).collect(),
    });
    told.collect::<Vec<String>>().into()
}

/// What an error of the user's own is called, as in the budget.
pub fn own_name(name: &str) -> Value {
    if name.trim().is_empty() { message!("budget-names-unnamed").into() } else { name.into() }
}

/// How serious a notice is.
pub fn weight(weight: Weight) -> Message {
    match weight {
        Weight::Grave => message!("notices-weights-grave"),
        Weight::Look => message!("notices-weights-look"),
        Weight::Know => message!("notices-weights-know"),
    }
}

/// A text as typed, or what counts while it is empty.
pub fn typed_or_default(field: &Field, words: &dyn Words) -> String {
    if field.text.is_empty() { words.text(&field.default) } else { field.text.clone() }
}

/// A text as typed, with the unit in which it is taken if it is a bare number.
pub fn with_unit(text: &str, unit: &str) -> String {
    if !unit.is_empty() && text.trim_end().ends_with(|last: char| last.is_ascii_digit()) {
        format!("{}\u{a0}{unit}", text.trim_end())
    } else {
        text.to_owned()
    }
}

/// Where a rail stands, as stated. `ruler` and `ruler_before` are the units of its ruler and of the ruler before.
pub fn splice(splice: &Splice, ruler: &str, ruler_before: &str) -> Message {
    let here = |text| given(text, ruler);
    match splice {
        Splice::Unsaid => message!("splice-kinds-unsaid"),
        Splice::AtSplitter { mark, .. } => message!("report-splices-at_splitter", mark = here(mark)),
        Splice::AtDistance { mark, distance, .. } => {
            message!("report-splices-at_distance", mark = here(mark), distance = here(distance))
        }
        Splice::Joined { mark, mark_before, gap, .. } => message!(
            "report-splices-joined",
            mark = here(mark),
            before = given(mark_before, ruler_before),
            gap = here(gap)
        ),
        Splice::Overlap { pairs } if pairs.is_empty() => message!("report-splices-no-pairs"),
        Splice::Overlap { pairs } => {
            let pair = |pair: &OverlapPair| {
                message!(
                    "report-splices-pair",
                    here = given(&pair.here, ruler),
                    before = given(&pair.before, ruler_before)
                )
            };
            message!("report-splices-overlap", pairs = pairs.iter().map(pair).collect::<Vec<_>>())
        }
        Splice::Free { mark } => message!("report-splices-free", mark = here(mark)),
    }
}

fn given(text: &str, unit: &str) -> Value {
    if text.is_empty() { message!("report-not-given").into() } else { with_unit(text, unit).into() }
}
