//! The words of the report: labels, headings and the standing cautions, in one place.

use crate::analysis::Weight;
pub use crate::analysis::fields::{bench_label, rail_label};
use crate::message;
use crate::notebook::{ActsOn, BenchField, Effect, Path, RailField, Sense, Splice};
use crate::view::{Field, RowState};
use crate::words::Message;

/// The cautions that stand in every report, and to whom they defer.
pub const CAUTIONS: &[&str] = &[
    "Read before the laser is switched on. The instructions of your laser safety officer and your local rules \
     take precedence over this page. It calculates no exposure limits.",
    "Never look into the beam or along the rail, whatever the class of the laser. One pulse can blind, also \
     by a reflection. An invisible beam gives no warning.",
    "Keep your eyes above the beam. Close the shutter before you bend to read a ruler: your eyes come to beam \
     height. Seated and shorter people’s eyes may already be there.",
    "Metal rulers, carriages, tools, rings and watches reflect: take off jewellery. Keep the beam path closed \
     or matt and below eye level, with a beam stop behind the last rail.",
    "Wear eyewear rated for the wavelength and for the pulses in use. Eyewear is never permission \
     to look into the beam.",
    "Ultraviolet light also harms the skin: cover it. Look at an ultraviolet beam only by way of a \
     fluorescing card.",
    "Alignment is done by trained people, at the lowest power. Move carriages only with the shutter closed.",
    "Pulse supplies and the bias of detectors are at high voltage, and so are their cables. A pulse supply \
     holds a lethal charge after it is switched off. Housings are opened by authorised service alone.",
    "Gas sources: secure the cylinders and ventilate the room; ultraviolet light makes ozone.",
    "Rails and cables are trip hazards. Keep escape routes free. Close the door, put up the warning sign, and \
     keep bystanders out.",
    "Know how to stop before you start: shutter, key switch, emergency stop. After a possible exposure of an \
     eye or the skin: stop, report it at once, and have it examined by a doctor, even if nothing hurts.",
    "Controls for users: IEC TR 60825-14 and your national rules. Laser classes: IEC 60825-1.",
];

/// Texts of the bench in the order of the report.
pub const BENCH_FIELDS: &[BenchField] = &[
    BenchField::Wavelength,
    BenchField::PulseRate,
    BenchField::ScreenWidth,
    BenchField::SmallDivisions,
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
pub fn path(path: Path) -> &'static str {
    match path {
        Path::Detector => "detector B; the light goes along the rails once",
        Path::Mirror => "a mirror; the light goes there and back",
    }
}

/// The sense of a ruler.
pub fn sense(sense: Sense) -> &'static str {
    match sense {
        Sense::Grows => "grow away from the splitter",
        Sense::Falls => "fall away from the splitter",
    }
}

/// How a row takes part.
pub fn state(state: RowState) -> &'static str {
    match state {
        RowState::Empty => "empty",
        RowState::Incomplete => "incomplete",
        RowState::Used => "included",
        RowState::Struck => "struck out",
    }
}

/// How serious a notice is.
pub fn weight(weight: Weight) -> Message {
    match weight {
        Weight::Grave => message!("notices-weights-grave"),
        Weight::Look => message!("notices-weights-look"),
        Weight::Know => message!("notices-weights-know"),
    }
}

/// What an error of the user's own does.
pub fn shared(acts_on: ActsOn, effect: Effect) -> &'static str {
    match (acts_on, effect) {
        (ActsOn::Distances, Effect::Offset) => "one offset on the distances",
        (ActsOn::Distances, Effect::Noise) => "an error of its own on each distance",
        (ActsOn::Delays, Effect::Noise) => "an error of its own on each delay",
        (ActsOn::Distances, Effect::Scale) => "one relative scale on the distances",
        (ActsOn::Delays, Effect::Offset) => "one offset on the delays",
        (ActsOn::Delays, Effect::Scale) => "one relative scale on the delays",
    }
}

/// A text as typed, or what is taken while it is empty.
pub fn taken(field: &Field) -> &str {
    if field.text.is_empty() { &field.default } else { &field.text }
}

/// A text as typed, with the unit in which it is taken if it is a bare number.
pub fn with_unit(text: &str, unit: &str) -> String {
    if !unit.is_empty() && text.trim_end().ends_with(|last: char| last.is_ascii_digit()) {
        format!("{} {unit}", text.trim_end())
    } else {
        text.to_owned()
    }
}

/// Where a rail stands, as stated. `ruler` and `ruler_before` are the units of its ruler and of the ruler before.
pub fn splice(splice: &Splice, ruler: &str, ruler_before: &str) -> String {
    let here = |text| given(text, ruler);
    let before = |text| given(text, ruler_before);
    match splice {
        Splice::Unsaid => "not stated".into(),
        Splice::AtSplitter { mark, uncertainty } => {
            format!("mark {} lies at the splitter{}", here(mark), give_or_take(uncertainty, ruler))
        }
        Splice::AtDistance { mark, distance, uncertainty } => format!(
            "mark {} stands at {} from the splitter{}",
            here(mark),
            here(distance),
            give_or_take(uncertainty, ruler)
        ),
        Splice::Joined { mark, mark_before, gap, uncertainty } => format!(
            "mark {} meets mark {} on the rail before, with a gap of {}{}",
            here(mark),
            before(mark_before),
            here(gap),
            give_or_take(uncertainty, ruler)
        ),
        Splice::Overlap { pairs } => {
            let pairs: Vec<String> = pairs
                .iter()
                .map(|pair| {
                    format!("{} where the rail before reads {}", here(&pair.here), before(&pair.before))
                })
                .collect();
            let told = if pairs.is_empty() { "no pairs".to_owned() } else { pairs.join("; ") };
            format!("overlaps the rail before: {told}")
        }
        Splice::Free { mark } => format!("the step at mark {} is an unknown of the line", here(mark)),
    }
}

fn given(text: &str, unit: &str) -> String {
    if text.is_empty() { "(not given)".into() } else { with_unit(text, unit) }
}

fn give_or_take(uncertainty: &str, unit: &str) -> String {
    if uncertainty.is_empty() {
        String::new()
    } else {
        format!(", standard uncertainty {}", with_unit(uncertainty, unit))
    }
}
