//! From the setup to the straight line Δt = t₀ + b·d, with every error that rows share in its covariance.

use super::goodness::{p_value, weights_degrees};
use super::origin::{Origin, Quantity};
use super::parts::{add_squares, joint_part, slope_parts, total};
use super::point::Point;
use super::refusal::refusal;
use super::setup::Setup;
use super::types::{Checks, LineAnalysis, Refusal, SlopePart};
use crate::line::{self, Fit, Noise};
use crate::notebook::{ActsOn, ErrorShape, NotebookState};

/// Fits the line, without the side checks.
///
/// # Errors
/// Why there is no line, naming the rows.
pub fn fit(page: &NotebookState, points: &[Point], setup: &Setup) -> Result<LineAnalysis, Refusal> {
    let fit = line::fit(&setup.data).map_err(|error| refusal(&error, page, points, setup))?;
    let stated = setup.data.noise != Noise::Unstated;
    let weights_degrees = weights_degrees(setup, &fit);
    Ok(LineAnalysis {
        rows: points.iter().map(|p| p.row).collect(),
        distance: points.iter().map(|p| p.x).collect(),
        delay: points.iter().map(|p| p.y).collect(),
        u_distance: full(points, setup, ActsOn::Distances),
        u_delay: full(points, setup, ActsOn::Delays),
        stated,
        weights_degrees,
        p_value: p_value(&fit, weights_degrees).filter(|_| stated),
        birge_ratio: fit.scatter().filter(|_| stated),
        checks: Checks::default(),
        parts: parts_of(setup, &fit),
        shared: setup.shared.iter().map(|shared| shared.origin.clone()).collect(),
        free: setup.free.iter().filter_map(|i| page.rails.get(*i)).map(|rail| rail.id).collect(),
        fit,
    })
}

/// Full standard uncertainty of each distance or delay, shared parts included.
fn full(points: &[Point], setup: &Setup, acts_on: ActsOn) -> Vec<f64> {
    let mut common = vec![0.0; points.len()];
    for shared in &setup.shared {
        add_squares(
            &mut common,
            match acts_on {
                ActsOn::Distances => &shared.column.x,
                ActsOn::Delays => &shared.column.y,
            },
        );
    }
    if let Some(joint) = setup.joint() {
        let block = match acts_on {
            ActsOn::Distances => &joint.xx,
            ActsOn::Delays => &joint.yy,
        };
        let variances = block.iter().step_by(points.len() + 1);
        common.iter_mut().zip(variances).for_each(|(common, variance)| *common += variance);
    }
    let own = total(points, &setup.noises, acts_on);
    own.iter().zip(common).map(|(own, common)| (own * own + common).sqrt()).collect()
}

/// What the slope's variance is made of; one part for all of it where nothing was stated.
fn parts_of(setup: &Setup, fit: &Fit) -> Vec<SlopePart> {
    let Some(u) = fit.uncertainty else { return Vec::new() };
    if setup.data.noise == Noise::Unstated {
        return vec![SlopePart {
            origin: Origin::Scatter,
            u: u.slope,
            quantity: Quantity::Slope,
            slope: u.slope,
            degrees_of_freedom: Some(fit.degrees_of_freedom as f64),
            shape: ErrorShape::Normal,
            independent: true,
        }];
    }
    let joint = setup.joint().map(|joint| joint_part(fit, joint));
    slope_parts(fit, &setup.noises, joint, &setup.shared)
}
