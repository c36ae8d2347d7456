//! What pictures and traces show: walk, marks that don't fit their grid.

use super::input::NoticeInput;
use crate::analysis::notice::{Notice, Section, Weight};
use crate::message;
use crate::notebook::Estimator;

/// Beyond so many standard uncertainties something is there.
const SEEN: f64 = 2.0;

/// Every notice about pictures and traces.
pub(super) fn notices(input: &NoticeInput) -> Vec<Notice> {
    walk(input).into_iter().chain(bent(input)).collect()
}

/// Delays by a fixed level, where the light weakens on the way.
fn walk(input: &NoticeInput) -> Option<Notice> {
    let walk = input.walk.filter(|_| input.context.page.estimator == Estimator::FixedLevel)?;
    let (shift, _) = walk.shift;
    (walk.line.slope.abs() > SEEN * walk.line.uncertainty).then(|| {
        Notice::new(
            "walk",
            Weight::Grave,
            Section::Delays,
            message!("notice-walk", percent = input.figure(100.0 * shift, 2)),
            message!("notice-walk-look"),
        )
        .of_rows(walk.rows.iter().map(|row| row.row).collect())
    })
}

/// Crossings that lie off the plane of their grid by more than their marking explains.
fn bent(input: &NoticeInput) -> Option<Notice> {
    let off = input.context.marks.grids.iter().flat_map(|grid| &grid.checks).filter(|check| {
        let pairs = check.residual.divisions.iter().zip(check.uncertainty);
        pairs.clone().any(|(residual, u)| residual.abs() > 3.0 * u)
    });
    let largest = off.flat_map(|check| check.residual.divisions).map(f64::abs).fold(0.0, f64::max);
    (largest > 0.0).then(|| {
        Notice::new(
            "grid_bent",
            Weight::Look,
            Section::Delays,
            message!("notice-grid_bent", off = input.figure(largest, 2)),
            message!("notice-grid_bent-look"),
        )
    })
}
