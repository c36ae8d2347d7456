//! Units that may be typed beside a number, and the crate's base unit of each dimension.
//!
//! Base units: length m, time ns, time per division ns/div, divisions div, ratio 1, angle rad, frequency
//! Hz, temperature °C, pressure Pa, wavelength nm, voltage V, speed m/s, picture distance px.
//!
//! Sources: SI Brochure, 9th ed., tables 4, 7 and 8; the inch is 25.4 mm exactly (international inch, 1959).

use core::f64::consts::PI;

use serde::{Deserialize, Serialize};

use slope_evidence::decimal::{as_typed, plain};

use super::{Decimal, DecimalMark};
use crate::message;
use crate::words::Message;

/// What kind of quantity a unit measures. Units of two dimensions never convert into each other.
#[derive(Serialize, Deserialize, Clone, Copy, PartialEq, Eq, Debug)]
#[serde(rename_all = "snake_case")]
pub enum Dimension {
    /// Distances along a rail; base unit m.
    Length,
    /// Delays; base unit ns.
    Time,
    /// A time base; base unit ns/div. The `/div` may be left out when typing.
    TimePerDivision,
    /// Places on a screen's grid; base unit div.
    Divisions,
    /// Relative quantities; base unit 1.
    Ratio,
    /// Base unit rad.
    Angle,
    /// Pulse rates; base unit Hz.
    Frequency,
    /// Base unit °C.
    Temperature,
    /// Base unit Pa.
    Pressure,
    /// Vacuum wavelengths; base unit nm.
    Wavelength,
    /// Base unit V.
    Voltage,
    /// Base unit m/s.
    Speed,
    /// Distances in a picture; base unit px.
    Pixels,
}

impl Dimension {
    /// What it is called in a sentence.
    pub fn message(self) -> Message {
        match self {
            Self::Length => message!("dimension-length"),
            Self::Time => message!("dimension-time"),
            Self::TimePerDivision => message!("dimension-timeperdivision"),
            Self::Divisions => message!("dimension-divisions"),
            Self::Ratio => message!("dimension-ratio"),
            Self::Angle => message!("dimension-angle"),
            Self::Frequency => message!("dimension-frequency"),
            Self::Temperature => message!("dimension-temperature"),
            Self::Pressure => message!("dimension-pressure"),
            Self::Wavelength => message!("dimension-wavelength"),
            Self::Voltage => message!("dimension-voltage"),
            Self::Speed => message!("dimension-speed"),
            Self::Pixels => message!("dimension-pixels"),
        }
    }

    /// The units that may be typed for this dimension, the base unit among them.
    pub fn units(self) -> impl Iterator<Item = Unit> {
        ALL.iter().copied().filter(move |unit| unit.dimension == self)
    }
}

/// How many base units one unit is.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) enum Scale {
    /// A power of ten.
    TenTo(i32),
    /// 254 × 10⁻⁴.
    Inch,
    /// π/180, the one factor that no decimal gives: such a value is rounded twice.
    Degree,
}

/// One unit: its symbol, its dimension, and how it stands to the base unit.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Unit {
    symbol: &'static str,
    also: &'static [&'static str],
    dimension: Dimension,
    scale: Scale,
}

/// Defines the constants and the list of them all in one place, so that none can be forgotten.
macro_rules! units {
    ($($name:ident $symbol:literal $also:expr, $dimension:ident, $scale:expr;)*) => {
        impl Unit {
            $(
                #[doc = concat!("The unit `", $symbol, "`.")]
                pub const $name: Unit = Unit {
                    symbol: $symbol,
                    also: &$also,
                    dimension: Dimension::$dimension,
                    scale: $scale,
                };
            )*
        }

        /// Every unit, in the order in which messages offer them.
        const ALL: &[Unit] = &[$(Unit::$name),*];
    };
}

units! {
    METRE "m" [], Length, Scale::TenTo(0);
    CENTIMETRE "cm" [], Length, Scale::TenTo(-2);
    MILLIMETRE "mm" [], Length, Scale::TenTo(-3);
    MICROMETRE "µm" ["um"], Length, Scale::TenTo(-6);
    KILOMETRE "km" [], Length, Scale::TenTo(3);
    INCH "in" ["″", "\"", "inch", "inches"], Length, Scale::Inch;

    NANOSECOND "ns" [], Time, Scale::TenTo(0);
    PICOSECOND "ps" [], Time, Scale::TenTo(-3);
    FEMTOSECOND "fs" [], Time, Scale::TenTo(-6);
    MICROSECOND "µs" ["us"], Time, Scale::TenTo(3);
    MILLISECOND "ms" [], Time, Scale::TenTo(6);
    SECOND "s" [], Time, Scale::TenTo(9);

    NANOSECOND_PER_DIVISION "ns/div" ["ns"], TimePerDivision, Scale::TenTo(0);
    PICOSECOND_PER_DIVISION "ps/div" ["ps"], TimePerDivision, Scale::TenTo(-3);
    MICROSECOND_PER_DIVISION "µs/div" ["us/div", "µs", "us"], TimePerDivision, Scale::TenTo(3);
    MILLISECOND_PER_DIVISION "ms/div" ["ms"], TimePerDivision, Scale::TenTo(6);
    SECOND_PER_DIVISION "s/div" ["s"], TimePerDivision, Scale::TenTo(9);

    DIVISION "div" ["divs", "division", "divisions"], Divisions, Scale::TenTo(0);

    ONE "" [], Ratio, Scale::TenTo(0);
    PERCENT "%" [], Ratio, Scale::TenTo(-2);
    PER_MILLE "‰" [], Ratio, Scale::TenTo(-3);
    PPM "ppm" [], Ratio, Scale::TenTo(-6);

    RADIAN "rad" [], Angle, Scale::TenTo(0);
    MILLIRADIAN "mrad" [], Angle, Scale::TenTo(-3);
    MICRORADIAN "µrad" ["urad"], Angle, Scale::TenTo(-6);
    DEGREE "°" ["deg"], Angle, Scale::Degree;

    HERTZ "Hz" [], Frequency, Scale::TenTo(0);
    KILOHERTZ "kHz" [], Frequency, Scale::TenTo(3);
    MEGAHERTZ "MHz" [], Frequency, Scale::TenTo(6);
    GIGAHERTZ "GHz" [], Frequency, Scale::TenTo(9);

    CELSIUS "°C" ["℃", "C", "degC"], Temperature, Scale::TenTo(0);

    PASCAL "Pa" [], Pressure, Scale::TenTo(0);
    HECTOPASCAL "hPa" [], Pressure, Scale::TenTo(2);
    KILOPASCAL "kPa" [], Pressure, Scale::TenTo(3);
    MILLIBAR "mbar" [], Pressure, Scale::TenTo(2);
    BAR "bar" [], Pressure, Scale::TenTo(5);

    NANOMETRE "nm" [], Wavelength, Scale::TenTo(0);
    MICROMETRE_OF_WAVELENGTH "µm" ["um"], Wavelength, Scale::TenTo(3);

    VOLT "V" [], Voltage, Scale::TenTo(0);
    MILLIVOLT "mV" [], Voltage, Scale::TenTo(-3);

    METRE_PER_SECOND "m/s" [], Speed, Scale::TenTo(0);
    KILOMETRE_PER_SECOND "km/s" [], Speed, Scale::TenTo(3);

    PIXEL "px" [], Pixels, Scale::TenTo(0);
}

impl Unit {
    /// The symbol as printed, e.g. `µs`; empty for the unit one.
    pub const fn symbol(self) -> &'static str {
        self.symbol
    }

    /// What the unit measures.
    pub const fn dimension(self) -> Dimension {
        self.dimension
    }

    pub(super) const fn scale(self) -> Scale {
        self.scale
    }

    /// `value` in this unit, turned into the base unit (e.g. 12.5 with `CENTIMETRE` gives 0.125).
    ///
    /// The shortest decimal of `value` is what is converted, as if it had been typed. Not finite stays as is.
    pub fn to_base(self, value: f64) -> f64 {
        match self.scale {
            Scale::TenTo(exponent) => shifted(value, exponent),
            Scale::Inch => value * 254.0 / 1e4,
            Scale::Degree => value * (PI / 180.0),
        }
    }

    /// `value` in the base unit, turned into this unit: the inverse of `to_base`.
    ///
    /// Exact on decimals for powers of ten; for inch and degree within two units in the last place.
    pub fn from_base(self, value: f64) -> f64 {
        match self.scale {
            Scale::TenTo(exponent) => shifted(value, -exponent),
            Scale::Inch => value * 1e4 / 254.0,
            Scale::Degree => value / (PI / 180.0),
        }
    }

    /// The unit of `dimension` with this symbol, or with another accepted spelling of it.
    pub fn spelled(spelling: &str, dimension: Dimension) -> Option<Unit> {
        dimension.units().find(|unit| unit.is_spelled(spelling))
    }

    /// Any unit spelled so.
    pub(super) fn spelled_anywhere(spelling: &str) -> Option<Unit> {
        ALL.iter().copied().find(|unit| unit.is_spelled(spelling))
    }

    fn is_spelled(self, spelling: &str) -> bool {
        self.symbol == spelling || self.also.contains(&spelling)
    }
}

/// `value` × 10^`exponent`, rounded once.
fn shifted(value: f64, exponent: i32) -> f64 {
    Decimal::shortest(value).map_or(value, |decimal| decimal.shifted(exponent).to_f64())
}

/// `value`, given in the base unit, as one would type it in `unit`: `12.5 cm`.
///
/// [`parse`](super::parse()) reads it back to the same double (for inches and degrees: within two units in the last
/// place).
pub fn in_unit(value: f64, unit: Unit, mark: DecimalMark) -> String {
    let decimal = match unit.scale() {
        Scale::TenTo(exponent) => Decimal::shortest(value).map(|decimal| decimal.shifted(-exponent)),
        Scale::Inch | Scale::Degree => Decimal::shortest(unit.from_base(value)),
    };
    match decimal {
        Some(decimal) => as_typed(&decimal, unit.symbol(), mark),
        None => plain(value, 1, mark),
    }
}

#[cfg(all(test, not(target_arch = "wasm32")))]
#[path = "unit_test.rs"]
mod tests;
