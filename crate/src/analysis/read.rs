//! Texts to numbers: reads what was typed, and notes what can't be read and where.

use super::evidence::MARK_UNCERTAINTY;
use super::place::{EntryProblem, Place, SplicePart};
use crate::air::Air;
use crate::message;
use crate::notebook::{
    BenchField, NotebookState, OverlapPair, Rail as TypedRail, RailField, RailId, RulerUnit, SettingId,
    Splice, UncertaintyKind, UncertaintyOf,
};
use crate::quantity::{self, DecimalMark, Number, NumberError, Unit};
use crate::rail::{Joint, Rail};
use crate::screen::{SCREEN_WIDTH, SMALL_DIVISIONS};
use crate::words::Message;

/// Standard uncertainty of a rail reading where none is stated: half a millimetre either way, rectangular,
/// 0.5 mm/√3 (a ruler graduated in millimetres; common practice, no source), m.
pub const READING_UNCERTAINTY: f64 = 0.000_288_675_134_594_812_9;

/// Standard uncertainty of the place of a rail where none is stated: 1 mm (common practice, no source), m.
pub const JOINT_UNCERTAINTY: f64 = 0.001;

/// Vacuum wavelength where none is stated, nm: a red laser diode (common practice, no source).
pub const WAVELENGTH_NM: f64 = 650.0;

/// Reads texts in one notation and gathers what can't be read.
pub struct Reader {
    mark: DecimalMark,
    /// What could not be used so far.
    pub problems: Vec<EntryProblem>,
}

impl Reader {
    /// A reader for a notebook that writes decimals with `mark`.
    pub fn new(mark: DecimalMark) -> Self {
        Self { mark, problems: Vec::new() }
    }

    /// How the notebook writes decimals.
    pub fn mark(&self) -> DecimalMark {
        self.mark
    }

    /// Notes a problem.
    pub fn note(&mut self, place: Place, message: Message) {
        self.problems.push(EntryProblem { place, message });
    }

    /// What was read at `place`; none if the text is empty or, with a note, unreadable.
    fn noted<T>(&mut self, place: Place, read: Result<T, NumberError>) -> Option<T> {
        match read {
            Ok(read) => Some(read),
            Err(NumberError::Empty) => None,
            Err(error) => {
                self.note(place, error.message());
                None
            }
        }
    }

    /// The number typed at `place`, in the base unit, where its uncertainty may be written behind it.
    pub fn measured(&mut self, place: Place, text: &str, unit: Unit) -> Option<Number> {
        self.noted(place, quantity::parse(text, self.mark, unit))
    }

    /// The number typed at `place`, in the base unit, where an uncertainty behind it would have no effect and is refused.
    pub fn number(&mut self, place: Place, text: &str, unit: Unit) -> Option<f64> {
        self.noted(place, quantity::parse_alone(text, self.mark, unit))
    }

    /// The repeated readings of an edge typed in one cell, separated by semicolons. How uncertain one is, is stated once
    /// for all edges.
    pub fn edges(&mut self, place: Place, text: &str) -> Vec<f64> {
        let read = quantity::parse_list(text, self.mark, Unit::DIVISION)
            .and_then(|numbers| numbers.iter().map(|number| number.alone(text)).collect());
        if let Err(NumberError::Uncertain { found }) = read {
            self.note(place, message!("number-uncertain_edge", found = found));
            return Vec::new();
        }
        self.noted(place, read).unwrap_or_default()
    }

    /// A number that must not be negative.
    pub fn not_negative(&mut self, place: Place, text: &str, unit: Unit) -> Option<f64> {
        let value = self.number(place.clone(), text, unit)?;
        if value < 0.0 {
            self.note(place, message!("number-negative", found = text.trim()));
            return None;
        }
        Some(value)
    }

    /// An uncertainty as it was typed, as a limit or as a standard one, in the base unit. It must not be negative.
    pub fn typed_uncertainty(
        &mut self,
        place: Place,
        text: &str,
        unit: Unit,
        kind: UncertaintyKind,
    ) -> Option<f64> {
        let number = self.of_kind(&place, text, kind)?;
        if let Err(NumberError::Uncertain { found }) = quantity::parse_alone(number, self.mark, unit) {
            self.note(place, message!("number-uncertain_uncertainty", found = found));
            return None;
        }
        self.not_negative(place, number, unit)
    }

    /// A standard uncertainty, from what was typed as a limit or as one.
    pub fn uncertainty(
        &mut self,
        place: Place,
        text: &str,
        unit: Unit,
        kind: UncertaintyKind,
    ) -> Option<f64> {
        self.typed_uncertainty(place, text, unit, kind).map(|typed| kind.standard(typed))
    }

    /// The number in the text of an uncertainty, which may have the sign of a limit where it is meant as one.
    fn of_kind<'a>(&mut self, place: &Place, text: &'a str, kind: UncertaintyKind) -> Option<&'a str> {
        let (written, number) = UncertaintyKind::written(text);
        if written == UncertaintyKind::Limit && kind == UncertaintyKind::Standard {
            let limit = message!("field-kinds-limit");
            self.note(place.clone(), message!("number-limit_sign", found = text.trim(), kind = limit));
            return None;
        }
        Some(number)
    }

    /// A relative standard uncertainty, from what was typed as a limit or as one. It must leave most of the value
    /// standing.
    pub fn ratio(&mut self, place: Place, text: &str, kind: UncertaintyKind) -> Option<f64> {
        /// Beyond this it is no small correction any more.
        const LARGEST: f64 = 0.5;
        let value = self.typed_uncertainty(place.clone(), text, Unit::PERCENT, kind)?;
        if value > LARGEST {
            self.note(place, message!("number-too_large_ratio", found = text.trim()));
            return None;
        }
        Some(kind.standard(value))
    }

    /// A number that must be above zero.
    pub fn positive(&mut self, place: Place, text: &str, unit: Unit) -> Option<f64> {
        let value = self.number(place.clone(), text, unit)?;
        if value <= 0.0 {
            self.note(place, message!("number-not_positive", found = text.trim()));
            return None;
        }
        Some(value)
    }
}

/// What the texts of the bench say, in base units.
#[derive(Clone, Debug, PartialEq)]
pub struct BenchNumbers {
    /// Vacuum wavelength, nm.
    pub wavelength_nm: f64,
    /// Pulse rate, Hz.
    pub pulse_rate: Option<f64>,
    /// Half-width within which an edge is read, divisions.
    pub half_width: f64,
    /// Whether that was stated rather than taken.
    pub half_width_stated: bool,
    /// Small divisions in a division.
    pub small_divisions: f64,
    /// Divisions across the screen.
    pub screen_width: f64,
    /// Relative standard uncertainty of the time base, if stated.
    pub u_time_base: Option<f64>,
    /// The air.
    pub air: Air,
}

/// Standard uncertainty of a mark on a picture, pixels.
pub fn mark_uncertainty(page: &NotebookState, reader: &mut Reader) -> f64 {
    let place = Place::Bench { field: BenchField::MarkUncertainty };
    let text = page.text(BenchField::MarkUncertainty);
    let kind = page.kind(UncertaintyOf::Mark);
    reader.uncertainty(place, text, Unit::PIXEL, kind).unwrap_or(MARK_UNCERTAINTY)
}

/// The fixed level on traces, V over the baseline, where one is stated, and the constant fraction.
pub fn trace_wishes(page: &NotebookState, reader: &mut Reader) -> (Option<f64>, f64) {
    const MIDDLE: f64 = 0.5;
    let text = |field| page.text(field);
    let (level, fraction) = (BenchField::TraceLevel, BenchField::TraceFraction);
    let volts = reader.positive(Place::Bench { field: level }, text(level), Unit::VOLT);
    let place = Place::Bench { field: fraction };
    let share = reader.number(place.clone(), text(fraction), Unit::PERCENT);
    if share.is_some_and(|share| !(0.1..=0.9).contains(&share)) {
        reader.note(place, message!("number-fraction"));
    }
    (volts, share.filter(|share| (0.1..=0.9).contains(share)).unwrap_or(MIDDLE))
}

/// Reads the bench.
pub fn bench(page: &NotebookState, reader: &mut Reader) -> BenchNumbers {
    let text = |field| page.text(field);
    let at = |field| Place::Bench { field };
    let small = reader
        .positive(at(BenchField::SmallDivisions), text(BenchField::SmallDivisions), Unit::ONE)
        .unwrap_or(SMALL_DIVISIONS);
    let kind = page.kind(UncertaintyOf::Edge);
    let edge = reader.typed_uncertainty(
        at(BenchField::EdgeHalfWidth),
        text(BenchField::EdgeHalfWidth),
        Unit::DIVISION,
        kind,
    );
    let half_width = edge.map_or(0.5 / small, |typed| kind.limit(typed));
    let mut number = |field, unit, default: f64| {
        reader.measured(at(field), text(field), unit).map_or(default, |number: Number| number.value)
    };
    let air = Air {
        temperature_c: number(BenchField::Temperature, Unit::CELSIUS, 20.0),
        pressure_pa: number(BenchField::Pressure, Unit::HECTOPASCAL, 101_325.0),
        humidity_percent: 100.0 * number(BenchField::Humidity, Unit::PERCENT, 0.5),
        co2_ppm: 1e6 * number(BenchField::CarbonDioxide, Unit::PPM, 450e-6),
    };
    let wavelength_nm = number(BenchField::Wavelength, Unit::NANOMETRE, WAVELENGTH_NM);
    // Nothing is computed from it: it is marked here like every other field.
    reader.positive(at(BenchField::LeastRows), text(BenchField::LeastRows), Unit::ONE);
    BenchNumbers {
        wavelength_nm,
        pulse_rate: reader.positive(at(BenchField::PulseRate), text(BenchField::PulseRate), Unit::HERTZ),
        half_width,
        half_width_stated: edge.is_some(),
        small_divisions: small,
        screen_width: reader
            .positive(at(BenchField::ScreenWidth), text(BenchField::ScreenWidth), Unit::DIVISION)
            .unwrap_or(SCREEN_WIDTH),
        u_time_base: reader.ratio(
            at(BenchField::TimeBaseUncertainty),
            text(BenchField::TimeBaseUncertainty),
            page.kind(UncertaintyOf::TimeBase),
        ),
        air,
    }
}

/// Coverage probability where none is stated.
pub const COVERAGE: f64 = 0.95;

/// Coverage probability of the expanded uncertainty.
pub fn coverage(page: &NotebookState, reader: &mut Reader) -> f64 {
    let place = Place::Bench { field: BenchField::Coverage };
    let text = page.text(BenchField::Coverage);
    match reader.number(place.clone(), text, Unit::PERCENT) {
        Some(probability) if (0.5..1.0).contains(&probability) => probability,
        Some(_) => {
            reader.note(place, message!("number-coverage"));
            COVERAGE
        }
        None => COVERAGE,
    }
}

/// Largest angle between beam and rails, rad; zero where none is stated.
pub fn beam_angle(page: &NotebookState, reader: &mut Reader) -> f64 {
    /// Beyond this the beam leaves any rail, and θ²/2 no longer holds.
    const LARGEST: f64 = 0.5;
    let place = Place::Bench { field: BenchField::BeamAngle };
    let text = page.text(BenchField::BeamAngle);
    let angle = reader.not_negative(place.clone(), text, Unit::MILLIRADIAN).unwrap_or(0.0);
    if angle > LARGEST {
        reader.note(place, message!("number-beam_angle"));
        return 0.0;
    }
    angle
}

/// The unit in which a ruler counts.
pub fn ruler_unit(unit: RulerUnit) -> Unit {
    match unit {
        RulerUnit::Millimetre => Unit::MILLIMETRE,
        RulerUnit::Centimetre => Unit::CENTIMETRE,
        RulerUnit::Metre => Unit::METRE,
        RulerUnit::Inch => Unit::INCH,
    }
}

/// What one rail's texts say; the joint is absent while it can't be read.
#[derive(Clone, Debug, PartialEq)]
pub struct RailNumbers {
    /// The rail with its joint, if all of it can be read.
    pub rail: Option<Rail>,
    /// First and last readable mark, m of ruler.
    pub span: Option<(f64, f64)>,
    /// Standard uncertainty of one reading, m.
    pub u_reading: f64,
    /// Whether that uncertainty was stated rather than taken.
    pub u_reading_stated: bool,
    /// Whether the uncertainty of its place was stated rather than taken.
    pub u_joint_stated: bool,
}

/// Reads the rails; `rails[i]` of the result is `page.rails[i]`.
pub fn rails(page: &NotebookState, reader: &mut Reader) -> Vec<RailNumbers> {
    let mut before = None;
    let mut all = Vec::with_capacity(page.rails.len());
    for typed in &page.rails {
        all.push(rail(page, typed, before, reader));
        before = Some(ruler_unit(typed.unit));
    }
    all
}

fn rail(page: &NotebookState, typed: &TypedRail, before: Option<Unit>, reader: &mut Reader) -> RailNumbers {
    let unit = ruler_unit(typed.unit);
    let text = |field| typed.texts.get(&field).map_or("", String::as_str);
    let at = |field| Place::Rail { rail: typed.id, field };
    let mut mark = |field| reader.number(at(field), text(field), unit);
    let span = mark(RailField::From).zip(mark(RailField::To));
    if let Some((first, last)) = span
        && last <= first
    {
        reader.note(at(RailField::To), message!("number-last_mark"));
    }
    let field = RailField::ReadingUncertainty;
    let kind = page.kind(UncertaintyOf::RulerReading(typed.id));
    let u_stated = reader.uncertainty(at(field), text(field), unit, kind);
    let u_reading = u_stated.unwrap_or(READING_UNCERTAINTY);
    let field = RailField::ScaleUncertainty;
    let kind = page.kind(UncertaintyOf::RulerScale(typed.id));
    let u_scale = reader.ratio(at(field), text(field), kind).unwrap_or(0.0);
    let kind = page.kind(UncertaintyOf::Splice(typed.id));
    let (joint, u_joint_stated) =
        SpliceReader { rail: typed.id, unit, before, kind, reader }.joint(&typed.splice);
    RailNumbers {
        rail: joint.map(|joint| Rail { span, sign: typed.sense.sign(), u_reading, u_scale, joint }),
        span,
        u_reading,
        u_reading_stated: u_stated.is_some(),
        u_joint_stated,
    }
}

/// Reads the parts of one splice.
struct SpliceReader<'a> {
    rail: RailId,
    unit: Unit,
    before: Option<Unit>,
    /// As what the uncertainty of the place is typed.
    kind: UncertaintyKind,
    reader: &'a mut Reader,
}

impl SpliceReader<'_> {
    /// The joint, if all its parts can be read, and whether its uncertainty was stated.
    fn joint(&mut self, splice: &Splice) -> (Option<Joint>, bool) {
        match splice {
            Splice::Unsaid => {
                self.note(SplicePart::Whole, message!("splice-unstated"));
                (None, false)
            }
            Splice::AtSplitter { mark, uncertainty } => {
                let (u, stated) = self.uncertainty(uncertainty);
                let joint = self.mark(SplicePart::Mark, mark).map(|mark| Joint::At {
                    mark,
                    distance: 0.0,
                    uncertainty: u,
                });
                (joint, stated)
            }
            Splice::AtDistance { mark, distance, uncertainty } => {
                let (u, stated) = self.uncertainty(uncertainty);
                let mark = self.mark(SplicePart::Mark, mark);
                let missing = message!("splice-no_distance");
                let distance = self.needed(SplicePart::Distance, distance, self.unit, missing);
                let joint =
                    mark.zip(distance).map(|(mark, distance)| Joint::At { mark, distance, uncertainty: u });
                (joint, stated)
            }
            Splice::Joined { mark, mark_before, gap, uncertainty } => {
                let (u, stated) = self.uncertainty(uncertainty);
                let mark = self.mark(SplicePart::Mark, mark);
                let mark_before = self.mark_before(SplicePart::MarkBefore, mark_before);
                let gap = self.number(SplicePart::Gap, gap, self.unit).unwrap_or(0.0);
                let joint = mark.zip(mark_before).map(|(mark, mark_before)| Joint::Meeting {
                    mark,
                    mark_before,
                    gap,
                    uncertainty: u,
                });
                (joint, stated)
            }
            Splice::Overlap { pairs } => (self.overlap(pairs), true),
            Splice::Free { mark } => {
                (self.mark(SplicePart::Mark, mark).map(|mark| Joint::Free { mark }), true)
            }
        }
    }

    /// A pair with both cells empty is not there; half a pair is a problem.
    fn overlap(&mut self, pairs: &[OverlapPair]) -> Option<Joint> {
        let mut read = Vec::with_capacity(pairs.len());
        let mut whole = true;
        for (index, pair) in pairs.iter().enumerate() {
            if pair.here.trim().is_empty() && pair.before.trim().is_empty() {
                continue;
            }
            let here = self.mark(SplicePart::PairHere(index), &pair.here);
            let before = self.mark_before(SplicePart::PairBefore(index), &pair.before);
            match here.zip(before) {
                Some(pair) => read.push(pair),
                None => whole = false,
            }
        }
        whole.then_some(Joint::Overlap { pairs: read })
    }

    fn uncertainty(&mut self, text: &str) -> (f64, bool) {
        let place = self.place(SplicePart::Uncertainty);
        match self.reader.uncertainty(place, text, self.unit, self.kind) {
            Some(u) => (u, true),
            None => (JOINT_UNCERTAINTY, false),
        }
    }

    fn mark(&mut self, part: SplicePart, text: &str) -> Option<f64> {
        self.needed(part, text, self.unit, message!("splice-no_mark"))
    }

    fn mark_before(&mut self, part: SplicePart, text: &str) -> Option<f64> {
        let unit = self.before.unwrap_or(self.unit);
        self.needed(part, text, unit, message!("splice-no_mark_before"))
    }

    fn needed(&mut self, part: SplicePart, text: &str, unit: Unit, missing: Message) -> Option<f64> {
        if text.trim().is_empty() {
            self.note(part, missing);
            return None;
        }
        self.number(part, text, unit)
    }

    fn number(&mut self, part: SplicePart, text: &str, unit: Unit) -> Option<f64> {
        let place = self.place(part);
        self.reader.number(place, text, unit)
    }

    fn note(&mut self, part: SplicePart, message: Message) {
        let place = self.place(part);
        self.reader.note(place, message);
    }

    fn place(&self, part: SplicePart) -> Place {
        Place::Splice { rail: self.rail, part }
    }
}

/// A time base setting, in numbers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SettingNumbers {
    /// Time per division, ns.
    pub time_per_division: f64,
    /// Relative standard uncertainty; none if left empty.
    pub uncertainty: Option<f64>,
    /// As what it was typed.
    pub kind: UncertaintyKind,
}

/// Reads the settings whose own uncertainty was stated.
pub fn settings(page: &NotebookState, reader: &mut Reader) -> Vec<SettingNumbers> {
    let at = |setting: SettingId, uncertainty| Place::Setting { setting, uncertainty };
    page.settings
        .iter()
        .filter_map(|typed| {
            let time = reader.positive(at(typed.id, false), &typed.time_per_division, Unit::NANOSECOND);
            let kind = page.kind(UncertaintyOf::Setting(typed.id));
            let uncertainty = reader.ratio(at(typed.id, true), &typed.uncertainty, kind);
            time.map(|time_per_division| SettingNumbers { time_per_division, uncertainty, kind })
        })
        .collect()
}
