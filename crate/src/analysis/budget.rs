//! The uncertainty budget of c: c = n_g·κ·f/b, with b the slope, f the path factor, n_g the group index of the air
//! and κ the correction for the beam's angle.
//!
//! What acts on the slope is taken from the fit's own covariance ([`parts`](super::parts)), so nothing is counted
//! twice; the beam's angle and the air stand beyond it. All sensitivities are relative: ∂c/c = −∂b/b = ∂n_g/n_g.
//! Combined by JCGM 100:2008, 5.1.2, with effective degrees of freedom by G.4.1.
//!
//! Where the scatter of the rows is claimed instead of what was stated, it takes the place of the errors that each
//! row has for itself, with the fit's degrees of freedom, but of no reading limit by a smaller scatter
//! ([`gives_way`]); errors that rows share do not show in the scatter, and stay as stated.

use super::air_state::AirLimits;
use super::origin::{Origin, Quantity};
use super::parts::{WhatIf, factor, gives_way};
use super::read::BenchNumbers;
use super::types::{Budget, BudgetComponent, HowEntered, LineAnalysis, SlopePart};
use crate::air::{self, Air};
use crate::budget::{Component, combine, coverage_factor, sensitivities};
use crate::notebook::{Basis, ErrorShape};

/// What enters beyond the fit: the beam and the air.
#[derive(Clone, Copy, Debug)]
pub struct BeyondFit<'a> {
    /// Standard uncertainty of the group index.
    pub u_air: Option<f64>,
    /// By what share of the distances the way of the light may be longer at most, or shorter where it is negative
    /// ([`Beam::lengthening`](crate::notebook::Beam::lengthening)).
    pub lengthening: f64,
    /// Coverage probability.
    pub probability: f64,
    /// A source made larger or smaller.
    pub what_if: Option<&'a WhatIf>,
}

impl BeyondFit<'_> {
    /// κ: the way of a beam at the angle θ differs from the distance read by ±θ²/2, always in one sense, so that its
    /// mean is a correction (JCGM 100:2008, F.2.4.4). Known is only a bound of θ: both components of the direction lie
    /// evenly within a circle, θ² evenly up to its bound, and its mean is half of that.
    pub fn correction(&self) -> f64 {
        1.0 + self.lengthening / 2.0
    }

    /// Relative standard uncertainty of κ: rectangular from none to the whole lengthening (JCGM 100:2008, 4.3.7).
    fn u_correction(&self) -> f64 {
        self.lengthening.abs() / 2.0 / 3.0_f64.sqrt() / self.correction()
    }

    fn factor(&self, origin: &Origin) -> f64 {
        factor(self.what_if, origin)
    }
}

/// Standard uncertainty of the group index from the uncertainties of what it is computed from; none where those
/// reach beyond the range of the equations.
pub fn u_air(bench: &BenchNumbers, limits: &AirLimits) -> Option<f64> {
    let at = [
        bench.air.temperature_c,
        bench.air.pressure_pa,
        bench.air.humidity_percent,
        bench.air.co2_ppm,
        bench.wavelength_nm,
    ];
    let u = [
        limits.temperature_c,
        limits.pressure_pa,
        limits.humidity_percent,
        limits.co2_ppm,
        limits.wavelength_nm,
    ];
    let index = |x: &[f64]| {
        let [temperature_c, pressure_pa, humidity_percent, co2_ppm, wavelength] = x else { return None };
        let air = Air {
            temperature_c: *temperature_c,
            pressure_pa: *pressure_pa,
            humidity_percent: *humidity_percent,
            co2_ppm: *co2_ppm,
        };
        air::group_index(&air, *wavelength).ok().map(|index| vec![index])
    };
    // An input known exactly still needs a step to be moved by.
    let steps: Vec<f64> =
        u.iter().zip(&at).map(|(u, at)| if *u > 0.0 { *u } else { 1e-6 * at.abs().max(1.0) }).collect();
    // Near an end of the equations' range the slope is taken one step inside it.
    let ends =
        [air::TEMPERATURE_C, air::PRESSURE_PA, air::HUMIDITY_PERCENT, air::CO2_PPM, air::WAVELENGTH_NM];
    let inside: Vec<f64> = at
        .iter()
        .zip(&steps)
        .zip(&ends)
        .map(|((at, step), range)| {
            at.clamp(range.start() + step, (range.end() - step).max(range.start() + step))
        })
        .collect();
    let jacobian = sensitivities(index, &inside, &steps)?;
    let variance: f64 = jacobian.iter().zip(&u).map(|(slope, u)| slope * (u * u) * slope).sum();
    Some(variance.sqrt())
}

/// The budget of c; none where there is no uncertainty of the slope to take.
pub fn budget(line: &LineAnalysis, group_index: f64, basis: Basis, beyond: &BeyondFit) -> Option<Budget> {
    let slope = line.fit.slope;
    let mut components = match basis {
        Basis::Stated => line.parts.iter().map(|part| of_slope(part, slope)).collect(),
        Basis::Scatter => from_scatter(line, slope, beyond)?,
    };
    components.extend([beam_angle(beyond), of_air(group_index, beyond), skew()]);
    let inputs: Vec<Component> = (components.iter())
        .map(|component| Component {
            u: component.relative,
            degrees_of_freedom: component.degrees_of_freedom,
            sensitivity: 1.0,
        })
        .collect();
    let combined = combine(&inputs);
    for (component, share) in components.iter_mut().zip(&combined.shares) {
        component.share = *share;
    }
    Some(Budget {
        components,
        degrees_of_freedom: combined.degrees_of_freedom,
        probability: beyond.probability,
        coverage_factor: coverage_factor(combined.degrees_of_freedom, beyond.probability),
    })
}

/// The coverage probability of the U in E_n, whatever is chosen for the result (ISO 13528:2015, 9.7; from memory).
const OF_E_N: f64 = 0.95;

impl Budget {
    /// The coverage factor at 95 %, by which results are compared; none with too few degrees of freedom.
    pub fn factor_at_95(&self) -> Option<f64> {
        coverage_factor(self.degrees_of_freedom, OF_E_N).ok()
    }

    /// Relative combined standard uncertainty of c.
    pub fn relative(&self) -> f64 {
        sum(self.components.iter())
    }

    /// Relative combined standard uncertainty of v, which the air is no part of.
    pub fn relative_v(&self) -> f64 {
        sum(self.components.iter().filter(|component| component.origin != Origin::Air))
    }
}

fn sum<'a>(components: impl Iterator<Item = &'a BudgetComponent>) -> f64 {
    let parts: Vec<Component> = components
        .map(|component| Component { u: component.relative, degrees_of_freedom: None, sensitivity: 1.0 })
        .collect();
    combine(&parts).u
}

fn of_slope(part: &SlopePart, slope: f64) -> BudgetComponent {
    /// A share of the slope so small is rounding: the error moves t₀ alone.
    const NOTHING: f64 = 1e-9;
    let relative = part.slope / slope;
    let shifts = !part.independent && relative < NOTHING;
    let entry = match (part.independent, shifts) {
        (true, _) => HowEntered::Rows,
        (false, true) => HowEntered::ShiftsOnly,
        (false, false) => HowEntered::Shared,
    };
    BudgetComponent {
        origin: part.origin.clone(),
        u: Some(part.u),
        quantity: part.quantity,
        shape: part.shape,
        degrees_of_freedom: part.degrees_of_freedom,
        relative: if shifts { 0.0 } else { relative },
        share: 0.0,
        entry,
    }
}

/// The scatter about the line in place of what gives way to it, beside all else as stated.
fn from_scatter(line: &LineAnalysis, slope: f64, beyond: &BeyondFit) -> Option<Vec<BudgetComponent>> {
    let ratio = if line.stated { line.fit.scatter()? } else { 1.0 };
    let (replaced, kept): (Vec<&SlopePart>, Vec<&SlopePart>) = line.parts.iter().partition(|part| {
        part.independent && gives_way(&part.origin, part.shape, part.degrees_of_freedom, ratio)
    });
    let own: f64 = replaced.iter().map(|part| part.slope * part.slope).sum();
    let u = ratio * own.sqrt() * beyond.factor(&Origin::Scatter);
    let scatter = SlopePart {
        origin: Origin::Scatter,
        u,
        quantity: Quantity::Slope,
        slope: u,
        degrees_of_freedom: (line.fit.degrees_of_freedom > 0).then_some(line.fit.degrees_of_freedom as f64),
        shape: ErrorShape::Normal,
        independent: true,
    };
    // Nothing was stated, and no row is left over: there is no scatter either.
    if line.parts.is_empty() {
        return None;
    }
    let scatter = (!replaced.is_empty()).then_some(&scatter);
    Some(scatter.into_iter().chain(kept).map(|part| of_slope(part, slope)).collect())
}

fn beam_angle(beyond: &BeyondFit) -> BudgetComponent {
    BudgetComponent {
        origin: Origin::BeamAngle,
        u: (beyond.lengthening != 0.0).then(|| beyond.u_correction()),
        quantity: Quantity::Ratio,
        shape: ErrorShape::Rectangular,
        degrees_of_freedom: None,
        relative: beyond.u_correction() * beyond.factor(&Origin::BeamAngle),
        share: 0.0,
        entry: HowEntered::Beside,
    }
}

fn of_air(group_index: f64, beyond: &BeyondFit) -> BudgetComponent {
    BudgetComponent {
        origin: Origin::Air,
        u: beyond.u_air,
        quantity: Quantity::Ratio,
        shape: ErrorShape::Normal,
        degrees_of_freedom: None,
        relative: beyond.u_air.unwrap_or(0.0) / group_index * beyond.factor(&Origin::Air),
        share: 0.0,
        entry: HowEntered::Beside,
    }
}

fn skew() -> BudgetComponent {
    BudgetComponent {
        origin: Origin::ChannelSkew,
        u: None,
        quantity: Quantity::Time,
        shape: ErrorShape::Normal,
        degrees_of_freedom: None,
        relative: 0.0,
        share: 0.0,
        entry: HowEntered::ShiftsOnly,
    }
}

#[cfg(test)]
#[path = "budget_test.rs"]
mod tests;
