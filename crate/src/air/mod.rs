//! The refractive index of air: phase and group, by Ciddor's equations.
//!
//! | symbol | meaning | unit |
//! | --- | --- | --- |
//! | λ | vacuum wavelength | nm (µm inside) |
//! | σ, s | vacuum wavenumber 1/λ, and σ² | µm⁻¹, µm⁻² |
//! | t, T | temperature | °C, K |
//! | p | pressure | Pa |
//! | h | relative humidity | % |
//! | `x_c`, `x_w` | amount fractions of CO₂ and of water vapour | ppm, 1 |
//! | n, `n_g` | phase and group index, `n_g = n + σ dn/dσ` | 1 |
//!
//! What is computed is the refractivity n − 1, as a sum of positive terms, so that no digits are lost.
//! Ciddor states 2 to 5 parts in 10⁸ for the phase index from 360 nm up; below that the dispersion of water
//! vapour is extrapolated (`extrapolated`). The molar gas constant cancels: only ratios of densities occur.
//! The limits of CO₂ are common practice (no source); the others are quoted with the equations (from memory).
//!
//! Sources: P. E. Ciddor, Applied Optics 35 (1996) 1566 (equations 1 to 5, appendices A to C, with the
//! saturation pressure and the enhancement factor given there); P. E. Ciddor and R. J. Hill, Applied Optics
//! 38 (1999) 1663 (group index; here by differentiating the 1996 equations, which differs by less than 10⁻⁹).

use core::ops::RangeInclusive;

use crate::message;
use crate::quantity::{DecimalMark, plus_minus};
use crate::words::Message;

/// Temperatures for which the equations hold, °C.
pub const TEMPERATURE_C: RangeInclusive<f64> = -40.0..=100.0;
/// Pressures for which the equations hold, Pa.
pub const PRESSURE_PA: RangeInclusive<f64> = 10e3..=140e3;
/// Relative humidities, %.
pub const HUMIDITY_PERCENT: RangeInclusive<f64> = 0.0..=100.0;
/// Amount fractions of carbon dioxide, ppm.
pub const CO2_PPM: RangeInclusive<f64> = 0.0..=2000.0;
/// Vacuum wavelengths for which the equations hold, nm.
pub const WAVELENGTH_NM: RangeInclusive<f64> = 300.0..=1690.0;
/// Below this vacuum wavelength, nm, the term of water vapour is extrapolated.
pub const WATER_VAPOUR_FROM_NM: f64 = 360.0;

/// The state of the air along the beam.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Air {
    /// Temperature, °C.
    pub temperature_c: f64,
    /// Pressure, Pa.
    pub pressure_pa: f64,
    /// Relative humidity, %, over liquid water.
    pub humidity_percent: f64,
    /// Amount fraction of carbon dioxide, ppm.
    pub co2_ppm: f64,
}

/// What the index is computed from.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Input {
    /// Temperature, °C.
    Temperature,
    /// Pressure, Pa.
    Pressure,
    /// Relative humidity, %.
    Humidity,
    /// Carbon dioxide, ppm.
    CarbonDioxide,
    /// Vacuum wavelength, nm.
    Wavelength,
}

impl Input {
    /// What it is called.
    fn name(self) -> Message {
        match self {
            Self::Temperature => message!("fields-temperature"),
            Self::Pressure => message!("fields-pressure"),
            Self::Humidity => message!("fields-humidity"),
            Self::CarbonDioxide => message!("fields-carbon_dioxide"),
            Self::Wavelength => message!("fields-wavelength"),
        }
    }

    /// The values for which the equations hold.
    const fn range(self) -> RangeInclusive<f64> {
        match self {
            Self::Temperature => TEMPERATURE_C,
            Self::Pressure => PRESSURE_PA,
            Self::Humidity => HUMIDITY_PERCENT,
            Self::CarbonDioxide => CO2_PPM,
            Self::Wavelength => WAVELENGTH_NM,
        }
    }

    /// A value as one would type it, with its unit.
    fn told(self, value: f64, mark: DecimalMark) -> String {
        let (scale, unit) = match self {
            Self::Temperature => (1.0, "°C"),
            Self::Pressure => (100.0, "hPa"),
            Self::Humidity => (1.0, "%"),
            Self::CarbonDioxide => (1.0, "ppm"),
            Self::Wavelength => (1.0, "nm"),
        };
        plus_minus(value / scale, None, unit, mark)
    }
}

/// Why no index was computed.
#[derive(Clone, PartialEq, Debug)]
pub enum AirError {
    /// An input outside the range for which the equations hold, or not a number.
    OutOfRange {
        /// Which.
        input: Input,
        /// What was given, in the unit of the input.
        value: f64,
    },
    /// So warm and humid that water vapour alone would exceed the stated pressure.
    VapourAbovePressure {
        /// Vapour pressure that the humidity asks for, Pa.
        vapour_pa: f64,
        /// The stated pressure, Pa.
        pressure_pa: f64,
    },
}

impl AirError {
    /// What is wrong and what to look at, with numbers as the notebook writes them.
    pub fn message(&self, mark: DecimalMark) -> Message {
        match self {
            Self::OutOfRange { input, value } => {
                let told = |value| input.told(value, mark);
                let range = input.range();
                message!(
                    "air-out_of_range",
                    input = input.name(),
                    value = told(*value),
                    low = told(*range.start()),
                    high = told(*range.end())
                )
            }
            Self::VapourAbovePressure { vapour_pa, pressure_pa } => message!(
                "air-vapour",
                vapour = Input::Pressure.told(vapour_pa.round(), mark),
                pressure = Input::Pressure.told(*pressure_pa, mark)
            ),
        }
    }
}

/// Group index `n_g` of `air` at a vacuum wavelength in nm: what slows a pulse.
///
/// # Errors
/// An input out of range, by name, or more vapour than pressure.
pub fn group_index(air: &Air, vacuum_wavelength_nm: f64) -> Result<f64, AirError> {
    group_refractivity(air, vacuum_wavelength_nm).map(|refractivity| 1.0 + refractivity)
}

/// n − 1, with the digits that n itself has no room for: what Ciddor's tables give, so the equations are held to them by
/// it. A pulse asks for the group index alone.
///
/// # Errors
/// An input out of range, by name, or more vapour than pressure.
pub fn phase_refractivity(air: &Air, vacuum_wavelength_nm: f64) -> Result<f64, AirError> {
    refractivity(air, vacuum_wavelength_nm, |dispersion| dispersion.phase)
}

/// `n_g` − 1, with the digits that `n_g` itself has no room for.
///
/// # Errors
/// An input out of range, by name, or more vapour than pressure.
pub fn group_refractivity(air: &Air, vacuum_wavelength_nm: f64) -> Result<f64, AirError> {
    refractivity(air, vacuum_wavelength_nm, |dispersion| dispersion.group)
}

/// Whether the term of water vapour is used below the wavelengths at which it was measured.
pub fn extrapolated(vacuum_wavelength_nm: f64) -> bool {
    vacuum_wavelength_nm < WATER_VAPOUR_FROM_NM
}

/// Saturation pressure of water vapour over liquid water, Pa, at a temperature in °C (Ciddor, appendix A).
pub fn saturation_pressure(temperature_c: f64) -> f64 {
    let t = kelvin(temperature_c);
    libm::exp(1.237_884_7e-5 * t * t - 1.912_131_6e-2 * t + 33.937_110_47 - 6.343_164_5e3 / t)
}

/// By how much air raises the vapour's pressure at saturation (Ciddor, appendix A).
pub fn enhancement_factor(temperature_c: f64, pressure_pa: f64) -> f64 {
    1.000_62 + 3.14e-8 * pressure_pa + 5.6e-7 * temperature_c * temperature_c
}

/// Ciddor's equation 5: each gas's refractivity in its own standard state, weighted by its density.
fn refractivity(air: &Air, vacuum_wavelength_nm: f64, pick: fn(Dispersion) -> f64) -> Result<f64, AirError> {
    check(air, vacuum_wavelength_nm)?;
    let x_w = vapour_fraction(air)?;
    let micrometres = vacuum_wavelength_nm / 1000.0;
    let s = 1.0 / (micrometres * micrometres);
    let co2 = 1.0 + 0.534e-6 * (air.co2_ppm - 450.0);
    let density = molar_density(air.temperature_c, air.pressure_pa, x_w);
    let dry = density * (1.0 - x_w) / molar_density(15.0, 101_325.0, 0.0);
    let vapour = density * x_w / molar_density(20.0, 1333.0, 1.0);
    Ok(dry * co2 * pick(dry_air(s)) + vapour * pick(water_vapour(s)))
}

fn check(air: &Air, vacuum_wavelength_nm: f64) -> Result<(), AirError> {
    out_of_range(air, vacuum_wavelength_nm).next().map_or(Ok(()), Err)
}

/// Every input outside the range for which the equations hold.
pub fn out_of_range(air: &Air, vacuum_wavelength_nm: f64) -> impl Iterator<Item = AirError> {
    let inputs = [
        (Input::Temperature, air.temperature_c),
        (Input::Pressure, air.pressure_pa),
        (Input::Humidity, air.humidity_percent),
        (Input::CarbonDioxide, air.co2_ppm),
        (Input::Wavelength, vacuum_wavelength_nm),
    ];
    let outside = inputs.into_iter().filter(|(input, value)| !input.range().contains(value));
    outside.map(|(input, value)| AirError::OutOfRange { input, value })
}

/// `x_w`, at most 1.
fn vapour_fraction(air: &Air) -> Result<f64, AirError> {
    let saturated =
        enhancement_factor(air.temperature_c, air.pressure_pa) * saturation_pressure(air.temperature_c);
    let vapour_pa = air.humidity_percent / 100.0 * saturated;
    if vapour_pa > air.pressure_pa {
        return Err(AirError::VapourAbovePressure { vapour_pa, pressure_pa: air.pressure_pa });
    }
    Ok(vapour_pa / air.pressure_pa)
}

/// A gas's n − 1 and `n_g` − 1 in its standard state.
#[derive(Clone, Copy)]
struct Dispersion {
    phase: f64,
    group: f64,
}

impl Dispersion {
    /// From n − 1 and its derivative by s; σ dn/dσ = 2 s dn/ds.
    fn new(phase: f64, by_s: f64, s: f64) -> Self {
        Self { phase, group: phase + 2.0 * s * by_s }
    }
}

/// Dry air at 15 °C, 101 325 Pa, 450 ppm CO₂ (equation 1).
fn dry_air(s: f64) -> Dispersion {
    let terms = [(5_792_105e-8, 238.018_5 - s), (167_917e-8, 57.362 - s)];
    let [a, b] = terms.map(|(strength, distance)| strength / distance);
    let [a_by_s, b_by_s] = terms.map(|(strength, distance)| strength / (distance * distance));
    Dispersion::new(a + b, a_by_s + b_by_s, s)
}

/// Pure water vapour at 20 °C, 1333 Pa (equation 3).
fn water_vapour(s: f64) -> Dispersion {
    const FACTOR: f64 = 1.022e-8;
    let value = 295.235 + s * (2.6422 + s * (-0.032_380 + s * 0.004_028));
    let by_s = 2.6422 + s * (-2.0 * 0.032_380 + s * 3.0 * 0.004_028);
    Dispersion::new(FACTOR * value, FACTOR * by_s, s)
}

/// p/(Z·T) in Pa/K: the amount of gas in a volume, but for the gas constant (equation 4).
fn molar_density(temperature_c: f64, pressure_pa: f64, x_w: f64) -> f64 {
    let ratio = pressure_pa / kelvin(temperature_c);
    ratio / compressibility(temperature_c, ratio, x_w)
}

/// Z of moist air (equation 12); `ratio` is p/T in Pa/K.
fn compressibility(t: f64, ratio: f64, x_w: f64) -> f64 {
    let dry = 1.581_23e-6 + t * (-2.933_1e-8 + t * 1.104_3e-10);
    let mixed = 5.707e-6 - 2.051e-8 * t;
    let vapour = 1.989_8e-4 - 2.376e-6 * t;
    let second = 1.83e-11 - 0.765e-8 * x_w * x_w;
    1.0 - ratio * (dry + x_w * (mixed + x_w * vapour)) + ratio * ratio * second
}

fn kelvin(celsius: f64) -> f64 {
    celsius + 273.15
}

#[cfg(test)]
#[path = "air_test.rs"]
mod tests;
