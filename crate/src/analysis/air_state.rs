//! The state of the air: what of it is out of range, and how well it is known.

use super::place::Place;
use super::read::{BenchNumbers, Reader};
use crate::air::{self, AirError, Input};
use crate::notebook::{BenchField, NotebookState};
use crate::quantity::{self, Unit};

/// Marks what lies outside the range for which the index of air is known.
pub fn note_air(bench: &BenchNumbers, reader: &mut Reader) {
    let mut errors: Vec<AirError> = air::out_of_range(&bench.air, bench.wavelength_nm).collect();
    if errors.is_empty() {
        errors.extend(air::group_index(&bench.air, bench.wavelength_nm).err());
    }
    for error in errors {
        let fields: &[BenchField] = match &error {
            AirError::OutOfRange { input, .. } => match input {
                Input::Temperature => &[BenchField::Temperature],
                Input::Pressure => &[BenchField::Pressure],
                Input::Humidity => &[BenchField::Humidity],
                Input::CarbonDioxide => &[BenchField::CarbonDioxide],
                Input::Wavelength => &[BenchField::Wavelength],
            },
            AirError::VapourAbovePressure { .. } => {
                &[BenchField::Temperature, BenchField::Pressure, BenchField::Humidity]
            }
        };
        for field in fields {
            reader.note(Place::Bench { field: *field }, error.message(reader.mark()));
        }
    }
}

/// Standard uncertainties of the state of the air and of the wavelength.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AirLimits {
    /// Of the temperature, °C.
    pub temperature_c: f64,
    /// Of the pressure, Pa.
    pub pressure_pa: f64,
    /// Of the relative humidity, per cent.
    pub humidity_percent: f64,
    /// Of the carbon dioxide, ppm.
    pub co2_ppm: f64,
    /// Of the vacuum wavelength, nm.
    pub wavelength_nm: f64,
}

/// How well the air is known: as typed behind each value ("21.5 ± 0.3"); else to ±1 °C, ±2 hPa, ±10 %, ±100 ppm and
/// ±1 nm where a value was typed; else to ±5 °C, ±30 hPa, ±40 %, ±150 ppm and ±10 nm, as air in a room varies. All of
/// these are rectangular (common practice, no source).
pub fn air_limits(page: &NotebookState) -> AirLimits {
    let half_width = |field, unit: Unit, typed: f64, taken: f64| {
        let number = quantity::parse(page.text(field), page.decimal_mark, unit).ok();
        let rectangular = |half: f64| half / 3.0_f64.sqrt();
        number.map_or(rectangular(taken), |number| number.uncertainty.unwrap_or(rectangular(typed)))
    };
    AirLimits {
        temperature_c: half_width(BenchField::Temperature, Unit::CELSIUS, 1.0, 5.0),
        pressure_pa: half_width(BenchField::Pressure, Unit::HECTOPASCAL, 200.0, 3000.0),
        humidity_percent: 100.0 * half_width(BenchField::Humidity, Unit::PERCENT, 0.1, 0.4),
        co2_ppm: 1e6 * half_width(BenchField::CarbonDioxide, Unit::PPM, 100e-6, 150e-6),
        wavelength_nm: half_width(BenchField::Wavelength, Unit::NANOMETRE, 1.0, 10.0),
    }
}
