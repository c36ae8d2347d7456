//! How well the rows fit what was stated of them: χ² against the distribution that it has.
//!
//! Where all uncertainties count as known that is chi-square, with ν degrees of freedom. Those that come from few repeats
//! are uncertain themselves: χ²/ν is then a ratio of two estimated variances, and has F's with ν and ν₂. Where one pooled
//! scatter is all that rows vary by, this is the exact test of lack of fit against pure error (N. R. Draper and H. Smith,
//! Applied Regression Analysis, 3rd ed. 1998, 2.1). Elsewhere ν₂ is the effective one of a sum of variances (F. E.
//! Satterthwaite, Biometrics Bulletin 2 (1946) 110; both from memory), each with its share in ν: the redundancy of the rows
//! (W. Baarda) is what their errors have in it, 1 − u² what a shared error has.

use super::parts::{RowErrors, add_squares};
use super::setup::Setup;
use crate::budget::{Component, combine};
use crate::distribution::{chi_square_sf, f_sf};
use crate::line::{Dense, Fit};
use crate::notebook::ActsOn;

/// From so many degrees of freedom on F is chi-square over ν to more digits than p is shown with. Of an error that all rows
/// share χ² holds nothing: what rounding leaves of its share would be told as 10²⁶.
const MANY: f64 = 1e6;

/// ν₂, the degrees of freedom of the stated uncertainties as χ² weighs them; none means many.
pub fn weights_degrees(setup: &Setup, fit: &Fit) -> Option<f64> {
    let from_rows = setup.noises.iter().map(|noise| noise.degrees_of_freedom);
    if from_rows.chain(setup.shared.iter().map(|shared| shared.degrees_of_freedom)).all(|nu| nu.is_none()) {
        return None;
    }
    let variances = own_variances(setup, fit);
    let of_rows = setup.noises.iter().map(|noise| {
        let each = fit.rows.iter().zip(errors(noise, fit.slope)).zip(&variances);
        let share: f64 =
            each.map(|((row, error), variance)| row.redundancy * (error * error) / variance).sum();
        (share, noise.degrees_of_freedom)
    });
    let shared = setup.shared.iter().zip(&fit.shared).map(|(shared, found)| {
        let left = found.u.unwrap_or(1.0);
        ((1.0 - left * left).max(0.0), shared.degrees_of_freedom)
    });
    let mut shares: Vec<(f64, Option<f64>)> = of_rows.chain(shared).collect();
    // What matrices have in it counts as known.
    let told: f64 = shares.iter().map(|(share, _)| share).sum();
    shares.push(((fit.degrees_of_freedom as f64 - told).max(0.0), None));
    let part = |(share, degrees_of_freedom): (f64, Option<f64>)| Component {
        u: share.sqrt(),
        degrees_of_freedom,
        sensitivity: 1.0,
    };
    let parts: Vec<Component> = shares.into_iter().map(part).collect();
    combine(&parts).degrees_of_freedom.filter(|nu| *nu < MANY)
}

/// Probability of a larger χ² by chance, with `weights_degrees` as above; none with no degree of freedom.
pub fn p_value(fit: &Fit, weights_degrees: Option<f64>) -> Option<f64> {
    let nu = fit.degrees_of_freedom as f64;
    (nu > 0.0).then(|| match weights_degrees {
        Some(below) => f_sf(fit.chi_square / nu, nu, below),
        None => chi_square_sf(fit.chi_square, nu),
    })
}

/// The errors of one source as the delays show them at this slope, ns.
fn errors(noise: &RowErrors, slope: f64) -> impl Iterator<Item = f64> {
    let per_unit = match noise.acts_on {
        ActsOn::Distances => slope,
        ActsOn::Delays => 1.0,
    };
    noise.u.iter().map(move |u| per_unit * u)
}

/// Variance of each row's Δt − b·d, without the errors that it shares, ns².
fn own_variances(setup: &Setup, fit: &Fit) -> Vec<f64> {
    let n = fit.rows.len();
    let mut all = vec![0.0; n];
    for noise in &setup.noises {
        add_squares(&mut all, &errors(noise, fit.slope).collect::<Vec<_>>());
    }
    if let Some(Dense { xx, yy, xy }) = setup.joint() {
        let b = fit.slope;
        for (block, weight) in [(yy, 1.0), (xx, b * b), (xy, -2.0 * b)] {
            let own = block.iter().step_by(n + 1);
            all.iter_mut().zip(own).for_each(|(sum, entry)| *sum += weight * entry);
        }
    }
    all
}

#[cfg(test)]
#[path = "goodness_test.rs"]
mod tests;
