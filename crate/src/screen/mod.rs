//! Reading a screen: divisions times time base give a delay.
//!
//! Δt = (q_B − q_A)·S, with q in divisions and the time base S in nanoseconds per division.
//!
//! - An edge read to ±a is a rectangular distribution, u = a/√3 (JCGM 100:2008, 4.3.7); the two edges are read
//!   independently, so the difference has u = a·√(2/3) (Type B).
//! - Repeats at one position: mean and standard error (JCGM 100:2008, 4.2.3; Type A). Few repeats tell little of
//!   their scatter, so it is pooled over all positions (JCGM 100:2008, 4.2.4, and H.3.6 on pooled estimates).

use crate::message;
use crate::words::Message;

/// Small divisions in a division, where nothing else is said (common practice, no source).
pub const SMALL_DIVISIONS: f64 = 5.0;

/// Divisions across a screen, where nothing else is said (common practice, no source).
pub const SCREEN_WIDTH: f64 = 10.0;

/// The edges read at one carriage position, in divisions.
#[derive(Clone, Debug, PartialEq)]
pub struct Edges {
    /// q_B − q_A, once for each repeat; never empty.
    differences: Vec<f64>,
}

/// Why two lists of edge readings don't make a delay.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EdgesError {
    /// One edge was not read.
    Missing,
    /// The numbers of repeats don't match.
    Unpaired {
        /// Readings of edge A.
        a: usize,
        /// Readings of edge B.
        b: usize,
    },
}

impl EdgesError {
    /// What is missing, and what to do.
    pub fn message(self) -> Message {
        match self {
            Self::Missing => message!("edges-missing"),
            Self::Unpaired { a, b } => message!("edges-unpaired", a = a, b = b),
        }
    }
}

/// Scatter of one difference q_B − q_A, pooled over positions.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scatter {
    /// Standard deviation of one difference, divisions.
    pub deviation: f64,
    /// Degrees of freedom Σ(n_i − 1).
    pub degrees_of_freedom: usize,
}

/// A delay and what its uncertainty is made of, in nanoseconds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScreenDelay {
    /// Δt.
    pub value: f64,
    /// Standard uncertainty from repeats.
    pub type_a: f64,
    /// Standard uncertainty from the limit of reading.
    pub type_b: f64,
}

impl ScreenDelay {
    /// Both combined.
    pub fn uncertainty(&self) -> f64 {
        (self.type_a * self.type_a + self.type_b * self.type_b).sqrt()
    }
}

impl Edges {
    /// Pairs the readings of the two edges: one of each, as many of each in order, or several of one beside a
    /// single one of the other.
    ///
    /// # Errors
    /// When an edge is missing or the numbers of repeats can't be paired.
    pub fn pair(a: &[f64], b: &[f64]) -> Result<Self, EdgesError> {
        let differences = match (a, b) {
            ([], _) | (_, []) => return Err(EdgesError::Missing),
            ([a], b) => b.iter().map(|b| b - a).collect(),
            (a, [b]) => a.iter().map(|a| b - a).collect(),
            (a, b) if a.len() == b.len() => a.iter().zip(b).map(|(a, b)| b - a).collect(),
            (a, b) => return Err(EdgesError::Unpaired { a: a.len(), b: b.len() }),
        };
        Ok(Self { differences })
    }

    /// How many times the position was read.
    pub fn repeats(&self) -> usize {
        self.differences.len()
    }

    /// Mean of q_B − q_A, divisions.
    pub fn mean(&self) -> f64 {
        self.differences.iter().sum::<f64>() / self.differences.len() as f64
    }

    /// The delay at `time_per_division` (ns), each edge read to ±`half_width` (divisions).
    pub fn delay(&self, time_per_division: f64, half_width: f64, scatter: Option<Scatter>) -> ScreenDelay {
        let per_repeat = scatter.map_or(0.0, |s| s.deviation);
        ScreenDelay {
            value: self.mean() * time_per_division,
            type_a: per_repeat / (self.differences.len() as f64).sqrt() * time_per_division.abs(),
            type_b: half_width * (2.0_f64 / 3.0).sqrt() * time_per_division.abs(),
        }
    }
}

/// The scatter of one difference, pooled over the positions that were read more than once; none if none was.
///
/// s² = Σ(n_i − 1)s_i² / Σ(n_i − 1), JCGM 100:2008, 4.2.4.
pub fn pooled_scatter<'a>(positions: impl IntoIterator<Item = &'a Edges>) -> Option<Scatter> {
    let (squares, degrees_of_freedom) =
        positions.into_iter().filter(|edges| edges.repeats() > 1).fold((0.0, 0), |(sum, dof), edges| {
            let mean = edges.mean();
            let own: f64 = edges.differences.iter().map(|q| (q - mean) * (q - mean)).sum();
            (sum + own, dof + edges.repeats() - 1)
        });
    (degrees_of_freedom > 0)
        .then(|| Scatter { deviation: (squares / degrees_of_freedom as f64).sqrt(), degrees_of_freedom })
}

#[cfg(test)]
#[path = "mod_test.rs"]
mod tests;
