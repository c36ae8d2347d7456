//! The seal: a hidden factor on every v and c shown, so that the known answer can't steer the data (blind analysis,
//! as in particle physics; A. Roodman, arXiv physics/0312102).
//!
//! The factor lies within ±8 % and follows from the salt in the notebook. The slope is the same statement as v, so
//! where it is shown in digits it carries the inverse. The seal is a promise, not a lock: who computes the slope by
//! hand, or reads this code, can see through it.

use sha2::{Digest, Sha256};

use super::types::{LineAnalysis, Speed};
use crate::notebook::{Page, Seal};

/// Largest relative shift.
const LARGEST: f64 = 0.08;

/// The factor that a closed seal puts on v and c; none where there is no seal, or an open one.
pub fn factor(seal: Option<&Seal>) -> Option<f64> {
    let seal = seal.filter(|seal| !seal.opened)?;
    let digest = Sha256::digest(seal.salt.as_bytes());
    let bytes = digest.iter().take(6).fold(0_u64, |number, byte| (number << 8) | u64::from(*byte));
    // 48 bits, evenly over −1 … 1.
    let place = bytes as f64 / (1_u64 << 47) as f64 - 1.0;
    Some(1.0 + LARGEST * place)
}

/// The speed as it may be shown: while the seal is closed, with its factor, and without the comparison with c₀.
pub fn shown_speed(page: &Page, speed: Speed) -> Speed {
    let Some(factor) = factor(page.seal.as_ref()) else { return speed };
    Speed { v: speed.v * factor, c: speed.c * factor, comparison: None, sealed: true, ..speed }
}

/// The line as its digits may be shown: with every slope divided by the factor of a closed seal.
pub fn shown_line(line: &LineAnalysis, hidden: Option<f64>) -> LineAnalysis {
    let mut line = line.clone();
    let Some(factor) = hidden else { return line };
    let cover = |slope: &mut f64| *slope /= factor;
    cover(&mut line.fit.slope);
    if let Some(u) = &mut line.fit.uncertainty {
        cover(&mut u.slope);
        cover(&mut u.covariance);
    }
    let checks = &mut line.checks;
    let measured = checks.rails_alone.iter_mut().filter_map(|(_, alone)| alone.as_mut());
    for slope in measured.chain(&mut checks.through_zero) {
        cover(&mut slope.value);
        slope.uncertainty.iter_mut().for_each(cover);
    }
    checks.theil_sen.iter_mut().chain(&mut checks.other_way).for_each(cover);
    checks.decisive_row.iter_mut().for_each(|(_, slope)| cover(slope));
    line
}

#[cfg(test)]
#[path = "seal_test.rs"]
mod tests;
