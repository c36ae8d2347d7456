//! A rail that is described wrongly: its sense, its unit, its joint.

use super::case::{Case, Hearing, Hypothesis};
use super::cause::Cause;
use crate::analysis::read::ruler_unit;
use crate::rail::{self, Joint, Rail};

/// What the unit of a ruler may have been taken for: mm, cm and m, or cm and in.
const UNITS: [f64; 6] = [10.0, 0.1, 100.0, 0.01, 2.54, 1.0 / 2.54];

/// Every explanation by the description of a rail, and by the run as a whole.
pub(super) fn hypotheses(hearing: &mut Hearing) {
    let case = hearing.case;
    let turned: Vec<f64> = case.y.iter().map(|y| -y).collect();
    if let Some((line, odd)) = case.mended(&case.x, &turned) {
        let odd = odd + case.odd_readings(&[]);
        let cause = Cause::EdgesSwapped;
        hearing.hear(&Hypothesis { cause, cost: 3.0, unknowns: 0.0, line, odd, rows: &[], rail: None });
    }
    let rails: Option<Vec<Rail>> = case.context.rails.iter().map(|numbers| numbers.rail.clone()).collect();
    // Rails that can't be read are not guessed at.
    let Some(as_told) = rails else { return };
    let tries = libm::log(as_told.len().max(1) as f64);
    if as_told.len() > 1 {
        let mut rails = as_told.clone();
        for rail in &mut rails {
            rail.sign = -rail.sign;
        }
        laid(hearing, Cause::WrongSense, 4.0, &rails, (None, 1.0));
    }
    for wrong in 0..as_told.len() {
        let mut rails = as_told.clone();
        rails[wrong].sign = -rails[wrong].sign;
        laid(hearing, Cause::WrongSense, 3.0 + tries, &rails, (Some(wrong), 1.0));
        rails[wrong].sign = as_told[wrong].sign;
        if exchange(case, &mut rails[wrong].joint, wrong) {
            laid(hearing, Cause::OverlapTurned, 3.0 + tries, &rails, (Some(wrong), 1.0));
        }
        for factor in UNITS {
            let cost = 3.5 + tries + libm::log(2.0 * UNITS.len() as f64);
            laid(hearing, Cause::RailUnit, cost, &as_told, (Some(wrong), factor));
            let mut rails = as_told.clone();
            scale(&mut rails[wrong], factor, 1.0);
            rails[wrong].span = rails[wrong].span.map(|(from, to)| (from * factor, to * factor));
            if let Some(next) = rails.get_mut(wrong + 1) {
                scale(next, 1.0, factor);
            }
            laid(hearing, Cause::RailUnit, cost, &rails, (Some(wrong), factor));
        }
    }
}

/// Weighs the rails laid so, with the readings of one of them times a factor.
fn laid(
    hearing: &mut Hearing,
    cause: Cause,
    cost: f64,
    rails: &[Rail],
    (wrong, factor): (Option<usize>, f64),
) {
    if let Some((line, odd)) = line_on(hearing.case, rails, wrong, factor) {
        hearing.hear(&Hypothesis { cause, cost, unknowns: 0.0, line, odd, rows: &[], rail: wrong });
    }
}

fn line_on(
    case: &Case,
    rails: &[Rail],
    wrong: Option<usize>,
    factor: f64,
) -> Option<(super::weighed::WeighedLine, f64)> {
    let stands = rail::lay(&rails.iter().map(Some).collect::<Vec<_>>());
    let mut x = case.x.clone();
    let mut off = 0.0;
    for (typed, x) in case.typed.iter().zip(&mut x) {
        let (Some(rail), Some(reading)) = (typed.rail, typed.reading) else { continue };
        let reading = reading.value * if wrong == Some(rail) { factor } else { 1.0 };
        *x = stands.get(rail)?.as_ref()?.as_ref().ok()?.distance(reading);
        let span = rails.get(rail)?.span;
        if span.is_some_and(|(from, to)| reading < from.min(to) - 0.01 || reading > from.max(to) + 0.01) {
            off += 3.0_f64;
        }
    }
    let (line, odd) = case.mended(&x, &case.y)?;
    Some((line, odd + off.min(15.0)))
}

/// Takes the readings of a joint for those of the other rail: the same numbers, each in the other's unit. False where the
/// joint has none.
fn exchange(case: &Case, joint: &mut Joint, rail: usize) -> bool {
    let unit = |rail: usize| case.context.page.rails.get(rail).map(|rail| ruler_unit(rail.unit).to_base(1.0));
    let Some((own, other)) = rail.checked_sub(1).and_then(|before| Some((unit(rail)?, unit(before)?))) else {
        return false;
    };
    let here = own / other;
    let exchange = |this: &mut f64, before: &mut f64| (*this, *before) = (*before * here, *this / here);
    match joint {
        Joint::Overlap { pairs } => pairs.iter_mut().for_each(|(this, before)| exchange(this, before)),
        Joint::Meeting { mark, mark_before, .. } => exchange(mark, mark_before),
        Joint::At { .. } | Joint::Free { .. } => return false,
    }
    true
}

/// Takes the marks of a joint for marks in another unit, those of this rail and of the one before.
fn scale(rail: &mut Rail, own: f64, before: f64) {
    match &mut rail.joint {
        Joint::At { mark, .. } | Joint::Free { mark } => *mark *= own,
        Joint::Meeting { mark, mark_before, .. } => {
            *mark *= own;
            *mark_before *= before;
        }
        Joint::Overlap { pairs } => {
            for (here, there) in pairs {
                *here *= own;
                *there *= before;
            }
        }
    }
}
