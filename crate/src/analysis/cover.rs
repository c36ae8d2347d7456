//! What a closed seal covers of the line and of the speed: each slope, and what is a slope's by its unit, is divided
//! by the factor; v and c are multiplied by it.
//!
//! Of two lines through the same readings more than the slope differs, and each of these would tell the true one. So
//! the line is turned about the mean distance, where it stays among the readings, and intercept, uncertainties and
//! residuals are those of the turned line: whatever is reckoned from them and the readings gives the slope that is shown.
//!
//! Every field is named here, so that one more does not compile until it is said whether the seal covers it. Of the
//! side checks a bare number can't be let through as it is: what has no slope in it says so by [`NoSlope`].

use super::origin::Quantity;
use super::seal::Cover;
use super::types::{
    Budget, BudgetComponent, Checks, LineAnalysis, MeasuredValue, SettingCheck, SlopePart, Speed, StepCheck,
    Tested,
};
use crate::line::diagnostics::RunsTest;
use crate::line::{Fit, FittedValue, RowFit, Uncertainty};
use crate::notebook::RowId;

/// A slope, ns/m, or its uncertainty.
fn slope(truth: f64, factor: f64) -> f64 {
    truth / factor
}

fn measured(truth: MeasuredValue, factor: f64) -> MeasuredValue {
    MeasuredValue {
        value: slope(truth.value, factor),
        uncertainty: truth.uncertainty.map(|u| slope(u, factor)),
    }
}

/// What holds no slope and no speed.
trait NoSlope {}
impl NoSlope for StepCheck {}
impl NoSlope for SettingCheck {}
impl NoSlope for Tested {}
impl NoSlope for RunsTest {}
impl NoSlope for RowId {}
impl<T: NoSlope> NoSlope for Vec<T> {}
impl<T: NoSlope> NoSlope for Option<T> {}

/// As it is: the seal hides slopes and speeds alone.
fn bare<T: NoSlope>(truth: T) -> T {
    truth
}

impl Cover for LineAnalysis {
    fn covered(self, factor: f64) -> Self {
        let Self {
            rows,
            distance,
            delay,
            u_distance,
            u_delay,
            stated,
            fit,
            weights_degrees,
            p_value,
            birge_ratio,
            shared,
            parts,
            free,
            checks,
        } = self;
        Self {
            rows,
            fit: turned(fit, &distance, factor),
            distance,
            delay,
            u_distance,
            u_delay,
            stated,
            weights_degrees,
            p_value,
            birge_ratio,
            shared,
            parts: parts.into_iter().map(|part| part.covered(factor)).collect(),
            free,
            checks: checks.covered(factor),
        }
    }
}

/// A fit of rows at `distance`, turned about their mean.
fn turned(truth: Fit, distance: &[f64], factor: f64) -> Fit {
    let Fit {
        intercept,
        slope: true_slope,
        uncertainty,
        chi_square,
        degrees_of_freedom,
        stated,
        rows,
        shared,
        free,
        centre,
        at_centre: _,
    } = truth;
    let b = slope(true_slope, factor);
    let middle = distance.iter().sum::<f64>() / distance.len().max(1) as f64;
    let intercept = intercept + (true_slope - b) * middle;
    let of_unknowns = |list: Vec<FittedValue>| list.into_iter().map(|one| one.covered(factor)).collect();
    let row = |(truth, x): (RowFit, &f64)| {
        let RowFit { true_x, residual, normalised, leverage, redundancy, influence } = truth;
        let residual = residual + (true_slope - b) * (x - middle);
        // A slope is the sum of the delays, each times its influence.
        RowFit { true_x, residual, normalised, leverage, redundancy, influence: slope(influence, factor) }
    };
    Fit {
        intercept,
        slope: b,
        uncertainty: uncertainty.map(|u| u.covered(factor)),
        chi_square,
        degrees_of_freedom,
        stated,
        rows: rows.into_iter().zip(distance).map(row).collect(),
        shared: of_unknowns(shared),
        free: of_unknowns(free),
        centre,
        at_centre: intercept + b * centre,
    }
}

impl Cover for Uncertainty {
    fn covered(self, factor: f64) -> Self {
        let Self { intercept: _, slope: u, covariance: _, centre, at_centre } = self;
        let u = slope(u, factor);
        let intercept = libm::hypot(at_centre, centre * u);
        Self { intercept, slope: u, covariance: -centre * u * u, centre, at_centre }
    }
}

impl Cover for FittedValue {
    fn covered(self, factor: f64) -> Self {
        let Self { value, u, covariance_with_slope } = self;
        Self { value, u, covariance_with_slope: covariance_with_slope.map(|cov| slope(cov, factor)) }
    }
}

impl Cover for SlopePart {
    fn covered(self, factor: f64) -> Self {
        let Self { origin, u, quantity, slope: part, degrees_of_freedom, shape, independent } = self;
        let u = of_quantity(u, quantity, factor);
        Self { origin, u, quantity, slope: slope(part, factor), degrees_of_freedom, shape, independent }
    }
}

/// A number of a quantity, which is covered where it is a slope.
fn of_quantity(truth: f64, quantity: Quantity, factor: f64) -> f64 {
    match quantity {
        Quantity::Slope => slope(truth, factor),
        Quantity::Length | Quantity::Time | Quantity::Ratio | Quantity::Angle | Quantity::Pixel => truth,
    }
}

impl Cover for Checks {
    fn covered(self, factor: f64) -> Self {
        let Self {
            through_zero,
            rails_alone,
            steps,
            settings,
            quadratic,
            theil_sen,
            decisive_row,
            other_way,
            runs,
            chauvenet,
            peirce,
        } = self;
        let alone = |truth: Option<MeasuredValue>| truth.map(|truth| measured(truth, factor));
        Self {
            through_zero: alone(through_zero),
            rails_alone: rails_alone.into_iter().map(|(rail, truth)| (rail, alone(truth))).collect(),
            steps: bare(steps),
            settings: bare(settings),
            quadratic: bare(quadratic),
            theil_sen: theil_sen.map(|truth| slope(truth, factor)),
            decisive_row: decisive_row.map(|(row, truth)| (row, slope(truth, factor))),
            other_way: other_way.map(|truth| slope(truth, factor)),
            runs: bare(runs),
            chauvenet: bare(chauvenet),
            peirce: bare(peirce),
        }
    }
}

impl Cover for Speed {
    fn covered(self, factor: f64) -> Self {
        let Self {
            v,
            c,
            group_index,
            basis,
            relative,
            relative_v,
            relative_stated,
            relative_scatter,
            budget,
            comparison: _,
            second_order,
            sealed: _,
        } = self;
        Self {
            v: v * factor,
            c: c * factor,
            group_index,
            basis,
            relative,
            relative_v,
            relative_stated,
            relative_scatter,
            budget: budget.covered(factor),
            // It would tell on which side of c₀ the result lies.
            comparison: None,
            second_order,
            sealed: true,
        }
    }
}

impl Cover for Budget {
    fn covered(self, factor: f64) -> Self {
        let Self { components, degrees_of_freedom, probability, coverage_factor } = self;
        let components = components.into_iter().map(|part| part.covered(factor)).collect();
        Self { components, degrees_of_freedom, probability, coverage_factor }
    }
}

impl Cover for BudgetComponent {
    fn covered(self, factor: f64) -> Self {
        let Self { origin, u, quantity, shape, degrees_of_freedom, relative, share, entry } = self;
        let u = u.map(|u| of_quantity(u, quantity, factor));
        Self { origin, u, quantity, shape, degrees_of_freedom, relative, share, entry }
    }
}
