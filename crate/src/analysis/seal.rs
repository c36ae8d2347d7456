//! The seal: a hidden factor on every v and c shown, so that the known answer can't steer the data (blind analysis,
//! as in particle physics; A. Roodman, arXiv physics/0312102).
//!
//! The factor lies within ±8 % and follows from the salt in the notebook. The slope is the same statement as v, so
//! it carries the inverse. Nothing leaves the analysis but as [`Shown`], so that nobody who puts a slope or a speed
//! into words has to think of the seal. What of each record is covered, and how, says `cover`.
//!
//! The seal is a promise, not a lock: who computes the slope by hand, or reads this code, can see through it.

use std::ops::Deref;

use serde::Serialize;
use slope_archive::sha256;

use crate::notebook::Seal;

/// Largest relative shift.
const LARGEST: f64 = 0.08;

/// The factor that a closed seal puts on v and c; none where there is no seal, or an open one.
pub(super) fn factor(seal: Option<&Seal>) -> Option<f64> {
    let seal = seal.filter(|seal| !seal.opened)?;
    let digest = sha256(seal.salt.as_bytes());
    let bytes = digest.iter().take(6).fold(0_u64, |number, byte| (number << 8) | u64::from(*byte));
    // 48 bits, evenly over −1 … 1.
    let place = bytes as f64 / (1_u64 << 47) as f64 - 1.0;
    Some(1.0 + LARGEST * place)
}

/// What says a slope or a speed, and how it is covered.
pub trait Cover {
    /// The same under a closed seal that puts `factor` on v and c, and its inverse on slopes.
    #[must_use]
    fn covered(self, factor: f64) -> Self;
}

/// Something that says a slope or a speed, as it may be shown: while a seal is closed, what was so is not in here.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(transparent)]
pub struct Shown<T>(T);

impl<T: Cover> Shown<T> {
    /// What may be shown of `truth` under the seal of a page, if it has one.
    pub fn of(truth: T, seal: Option<&Seal>) -> Self {
        match factor(seal) {
            Some(factor) => Self(truth.covered(factor)),
            None => Self(truth),
        }
    }
}

impl<T> Deref for Shown<T> {
    type Target = T;

    fn deref(&self) -> &T {
        &self.0
    }
}

#[cfg(test)]
#[path = "seal_test.rs"]
mod tests;
