//! A rail that is described wrongly: its sense, its unit, its joint.

use super::case::{Case, Hypothesis};
use crate::analysis::read::ruler_unit;
use crate::rail::{self, Joint, Rail};

/// What the unit of a ruler may have been taken for.
const UNITS: [f64; 4] = [10.0, 0.1, 2.54, 1.0 / 2.54];

/// Every explanation by the description of a rail, and by the run as a whole.
pub(super) fn hypotheses(case: &Case) -> Vec<Hypothesis> {
    let turned: Vec<f64> = case.y.iter().map(|y| -y).collect();
    let mut all: Vec<Hypothesis> = case.mended("edges_swapped", 3.0, &case.x, &turned).into_iter().collect();
    for of in &mut all {
        of.odd += case.odd_readings(&[]);
    }
    let rails: Option<Vec<&Rail>> = case.context.rails.iter().map(|numbers| numbers.rail.as_ref()).collect();
    // Rails that can't be read are not guessed at.
    let Some(rails) = rails else { return all };
    let tries = libm::log(rails.len().max(1) as f64);
    let others = |change: &dyn Fn(usize, &Rail) -> Rail| -> Vec<Rail> {
        rails.iter().enumerate().map(|(index, rail)| change(index, rail)).collect()
    };
    let every = others(&|_, rail| Rail { sign: -rail.sign, ..rail.clone() });
    if rails.len() > 1 {
        all.extend(laid(case, "wrong_sense", 4.0, &every, None, 1.0));
    }
    for wrong in 0..rails.len() {
        let one = |change: &dyn Fn(&Rail) -> Rail| {
            others(&|index, rail| if index == wrong { change(rail) } else { rail.clone() })
        };
        let sense = one(&|rail| Rail { sign: -rail.sign, ..rail.clone() });
        all.extend(laid(case, "wrong_sense", 3.0 + tries, &sense, Some(wrong), 1.0));
        if wrong > 0 {
            let joint = exchanged(case, &rails[wrong].joint, wrong);
            let overlap = joint.map(|joint| one(&|rail| Rail { joint: joint.clone(), ..rail.clone() }));
            let pairs =
                overlap.and_then(|rails| laid(case, "overlap_turned", 3.0 + tries, &rails, Some(wrong), 1.0));
            all.extend(pairs);
        }
        for factor in UNITS {
            let cost = 3.5 + tries + libm::log(2.0 * UNITS.len() as f64);
            let same = others(&|_, rail| rail.clone());
            all.extend(laid(case, "rail_unit", cost, &same, Some(wrong), factor));
            let scaled = others(&|index, rail| in_unit(rail, factor, index == wrong, index == wrong + 1));
            all.extend(laid(case, "rail_unit", cost, &scaled, Some(wrong), factor));
        }
    }
    all
}

/// The line with the rails laid so, and the readings of one of them times a factor.
fn laid(
    case: &Case,
    cause: &'static str,
    cost: f64,
    rails: &[Rail],
    wrong: Option<usize>,
    factor: f64,
) -> Option<Hypothesis> {
    let stands = rail::lay(&rails.iter().map(Some).collect::<Vec<_>>());
    let mut x = Vec::with_capacity(case.x.len());
    let mut off = 0.0;
    for (typed, before) in case.typed.iter().zip(&case.x) {
        let (Some(rail), Some(reading)) = (typed.rail, typed.reading) else {
            x.push(*before);
            continue;
        };
        let reading = reading.value * if wrong == Some(rail) { factor } else { 1.0 };
        let stand = stands.get(rail)?.as_ref()?.as_ref().ok()?;
        x.push(stand.distance(reading));
        let span = rails.get(rail)?.span;
        if span.is_some_and(|(from, to)| reading < from.min(to) - 0.01 || reading > from.max(to) + 0.01) {
            off += 3.0_f64;
        }
    }
    let mut of = case.mended(cause, cost, &x, &case.y)?;
    of.odd += off.min(15.0);
    of.rail = wrong;
    Some(of)
}

/// Readings of the joint entered as those of the other rail: the same numbers, each in the other's unit.
fn exchanged(case: &Case, joint: &Joint, rail: usize) -> Option<Joint> {
    let unit = |rail: usize| case.context.page.rails.get(rail).map(|rail| ruler_unit(rail.unit).to_base(1.0));
    let here = unit(rail)? / unit(rail - 1)?;
    match joint {
        Joint::Overlap { pairs } => {
            let pairs = pairs.iter().map(|(this, before)| (before * here, this / here)).collect();
            Some(Joint::Overlap { pairs })
        }
        Joint::Meeting { mark, mark_before, gap, uncertainty } => Some(Joint::Meeting {
            mark: mark_before * here,
            mark_before: mark / here,
            gap: *gap,
            uncertainty: *uncertainty,
        }),
        Joint::At { .. } | Joint::Free { .. } => None,
    }
}

/// A rail whose ruler counts in another unit; or that is joined to such a one.
fn in_unit(rail: &Rail, factor: f64, own: bool, next: bool) -> Rail {
    let (own, before) = (if own { factor } else { 1.0 }, if next { factor } else { 1.0 });
    let joint = match &rail.joint {
        Joint::At { mark, distance, uncertainty } => {
            Joint::At { mark: mark * own, distance: *distance, uncertainty: *uncertainty }
        }
        Joint::Meeting { mark, mark_before, gap, uncertainty } => Joint::Meeting {
            mark: mark * own,
            mark_before: mark_before * before,
            gap: *gap,
            uncertainty: *uncertainty,
        },
        Joint::Overlap { pairs } => {
            Joint::Overlap { pairs: pairs.iter().map(|(a, b)| (a * own, b * before)).collect() }
        }
        Joint::Free { mark } => Joint::Free { mark: mark * own },
    };
    let span = rail.span.map(|(from, to)| (from * own, to * own));
    Rail { span, joint, ..rail.clone() }
}
