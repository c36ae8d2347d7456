//! The state of the air: what of it is out of range, and how well it is known.

use super::place::Place;
use super::read::{BenchNumbers, Reader};
use crate::air::{self, AirError, Input};
use crate::notebook::{BenchField, NotebookState, UncertaintyKind};
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

/// How far an input of the index may be off, ±a in its base unit, where no uncertainty is typed behind it ("21.5 ± 0.3"):
/// ±1 °C, ±2 hPa, ±10 %, ±100 ppm and ±1 nm where a value was typed; else ±5 °C, ±30 hPa, ±40 %, ±150 ppm and ±10 nm, as
/// air in a room varies. All of these are rectangular (common practice, no source).
pub fn default_limit(input: Input, is_typed: bool) -> f64 {
    let (typed, taken) = match input {
        Input::Temperature => (1.0, 5.0),
        Input::Pressure => (200.0, 3000.0),
        Input::Humidity => (0.1, 0.4),
        Input::CarbonDioxide => (100e-6, 150e-6),
        Input::Wavelength => (1.0, 10.0),
    };
    if is_typed { typed } else { taken }
}

/// How well the air is known: as typed behind each value, else by its [`default_limit`].
pub fn air_limits(page: &NotebookState) -> AirLimits {
    let uncertainty = |input, field, unit: Unit| {
        let number = quantity::parse(page.text(field), page.decimal_mark, unit).ok();
        let stated = number.and_then(|number| number.uncertainty);
        stated.unwrap_or_else(|| UncertaintyKind::Limit.standard(default_limit(input, number.is_some())))
    };
    AirLimits {
        temperature_c: uncertainty(Input::Temperature, BenchField::Temperature, Unit::CELSIUS),
        pressure_pa: uncertainty(Input::Pressure, BenchField::Pressure, Unit::HECTOPASCAL),
        humidity_percent: 100.0 * uncertainty(Input::Humidity, BenchField::Humidity, Unit::PERCENT),
        co2_ppm: 1e6 * uncertainty(Input::CarbonDioxide, BenchField::CarbonDioxide, Unit::PPM),
        wavelength_nm: uncertainty(Input::Wavelength, BenchField::Wavelength, Unit::NANOMETRE),
    }
}
