//! Rails laid end to end: ruler readings to distances, and the errors that readings share.
//!
//! d = o + s·(r − m), with o the distance from the splitter of the reference mark m on a rail, r the reading,
//! and s = +1 or −1 as readings grow or fall outwards. All lengths in metres.
//!
//! An error of a splice, or of a ruler's scale, shifts every reading behind it alike: each is one shared
//! [`Source`], and [`Stand::effects_at`] tells what one standard deviation of it does to one reading. With
//! the columns so formed, the covariance of the distances is V_d = diag(u_r²) + Σ_k c_k c_kᵀ (common practice;
//! the law of propagation is JCGM 100:2008, 5.2.2).
//!
//! A rail whose distance was *stated* from the splitter does not inherit the errors of the rails before it; one
//! that is joined to the rail before inherits all of them.

use crate::message;
use crate::words::Message;

/// One rail, in numbers.
#[derive(Clone, Debug, PartialEq)]
pub struct Rail {
    /// First and last readable mark, m of ruler, in either order.
    pub span: Option<(f64, f64)>,
    /// +1 if readings grow outwards, −1 if they fall.
    pub sign: f64,
    /// Standard uncertainty of one reading, m.
    pub u_reading: f64,
    /// Relative standard uncertainty of the ruler's scale.
    pub u_scale: f64,
    /// Where it stands.
    pub joint: Joint,
}

/// Where a rail stands. Marks are in metres of ruler.
#[derive(Clone, Debug, PartialEq)]
pub enum Joint {
    /// The reading at the splitter, or at a stated distance from it.
    At {
        /// A reading on this rail.
        mark: f64,
        /// Its distance from the splitter, m; 0 at the splitter.
        distance: f64,
        /// Standard uncertainty of that distance, m.
        uncertainty: f64,
    },
    /// A mark that meets a mark of the rail before.
    Meeting {
        /// A reading on this rail.
        mark: f64,
        /// A reading on the rail before.
        mark_before: f64,
        /// From `mark_before` outwards to `mark`, m.
        gap: f64,
        /// Standard uncertainty of the joint, m.
        uncertainty: f64,
    },
    /// Carriage positions read on both rails, (here, before); one or more.
    Overlap {
        /// The pairs of readings.
        pairs: Vec<(f64, f64)>,
    },
    /// The step is an unknown of the fit; the mark is put at the far end of the rail before to begin with.
    Free {
        /// A reading on this rail.
        mark: f64,
    },
}

/// What an error shared by several readings comes from. Rails are counted from 0, from the splitter outwards.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Source {
    /// The place of a rail.
    Splice(usize),
    /// The scale of a rail's ruler.
    Scale(usize),
}

/// Where a rail stands, and what its place owes to shared errors.
#[derive(Clone, Debug, PartialEq)]
pub struct Stand {
    /// Reference mark m, m of ruler.
    pub mark: f64,
    /// Its distance o from the splitter, m.
    pub offset: f64,
    /// s.
    pub sign: f64,
    /// Standard uncertainty of one reading, m.
    pub u_reading: f64,
    /// Shift of the whole rail for one standard deviation of each source, m.
    shifts: Vec<(Source, f64)>,
    /// The rail's own scale: source and relative uncertainty.
    scale: Option<(Source, f64)>,
    /// The rails with a free step that move this rail (itself or one it is joined to).
    pub free: Vec<usize>,
}

/// Why a rail's place can't be told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum JointError {
    /// The first rail is joined to a rail before it.
    NoRailBefore,
    /// The rail before has no place itself.
    RailBeforeUnplaced,
    /// A free step needs the span of the rail before.
    NoSpanBefore,
    /// No pair of readings.
    NoPairs,
}

impl JointError {
    /// What is missing, and what to do.
    pub fn message(self) -> Message {
        match self {
            Self::NoRailBefore => message!("joint-no_rail_before"),
            Self::RailBeforeUnplaced => message!("joint-rail_before_unplaced"),
            Self::NoSpanBefore => message!("joint-no_span_before"),
            Self::NoPairs => message!("joint-no_pairs"),
        }
    }
}

impl Stand {
    /// Distance of the reading `r` from the splitter, m.
    pub fn distance(&self, r: f64) -> f64 {
        self.offset + self.sign * (r - self.mark)
    }

    /// The reading at the distance `d`, m of ruler.
    pub fn reading(&self, d: f64) -> f64 {
        self.mark + self.sign * (d - self.offset)
    }

    /// What one standard deviation of each shared source does to the distance of the reading `r`, m.
    pub fn effects_at(&self, r: f64) -> Vec<(Source, f64)> {
        let mut effects = self.shifts.clone();
        if let Some((source, relative)) = self.scale {
            add(&mut effects, source, self.sign * (r - self.mark) * relative);
        }
        effects
    }

    /// What one standard deviation of a shared source does to the place of the rail, m.
    pub fn shift_by(&self, source: Source) -> f64 {
        self.shifts.iter().find(|(own, _)| *own == source).map_or(0.0, |(_, shift)| *shift)
    }

    /// Standard uncertainty of the place of the rail as a whole, m.
    pub fn u_offset(&self) -> f64 {
        self.shifts.iter().map(|(_, shift)| shift * shift).sum::<f64>().sqrt()
    }
}

/// Lays the rails, each by its joint; a rail that can't be placed says why and leaves the others be. An absent
/// rail (one whose description can't be read) is not placed, and says nothing.
pub fn lay(rails: &[Option<&Rail>]) -> Vec<Option<Result<Stand, JointError>>> {
    let mut stands: Vec<Option<Result<Stand, JointError>>> = Vec::with_capacity(rails.len());
    for (index, rail) in rails.iter().enumerate() {
        let before = match index.checked_sub(1).and_then(|i| Some((rails.get(i)?, stands.get(i)?))) {
            None => Before::Nothing,
            Some((Some(rail), Some(Ok(stand)))) => Before::Placed(rail, stand),
            Some(_) => Before::Unplaced,
        };
        let stand = rail.map(|rail| place(index, rail, before));
        stands.push(stand);
    }
    stands
}

/// The rail before.
#[derive(Clone, Copy)]
enum Before<'a> {
    Nothing,
    Unplaced,
    Placed(&'a Rail, &'a Stand),
}

fn place(index: usize, rail: &Rail, before: Before) -> Result<Stand, JointError> {
    let own = Source::Splice(index);
    match &rail.joint {
        Joint::At { mark, distance, uncertainty } => {
            Ok(stand(index, rail, *mark, *distance, vec![(own, *uncertainty)], Vec::new()))
        }
        Joint::Meeting { mark, mark_before, gap, uncertainty } => {
            let (_, before) = joined(before)?;
            let mut shifts = before.effects_at(*mark_before);
            add(&mut shifts, own, *uncertainty);
            let offset = before.distance(*mark_before) + gap;
            Ok(stand(index, rail, *mark, offset, shifts, before.free.clone()))
        }
        Joint::Overlap { pairs } => overlap(index, rail, pairs, joined(before)?),
        Joint::Free { mark } => {
            let (rail_before, before) = joined(before)?;
            let end = far_end(rail_before, before).ok_or(JointError::NoSpanBefore)?;
            let mut free = before.free.clone();
            free.push(index);
            Ok(stand(index, rail, *mark, end, before.effects_at(before.reading(end)), free))
        }
    }
}

fn joined(before: Before<'_>) -> Result<(&Rail, &Stand), JointError> {
    match before {
        Before::Nothing => Err(JointError::NoRailBefore),
        Before::Unplaced => Err(JointError::RailBeforeUnplaced),
        Before::Placed(rail, stand) => Ok((rail, stand)),
    }
}

fn stand(
    index: usize,
    rail: &Rail,
    mark: f64,
    offset: f64,
    shifts: Vec<(Source, f64)>,
    free: Vec<usize>,
) -> Stand {
    let scale = (rail.u_scale > 0.0).then_some((Source::Scale(index), rail.u_scale));
    Stand { mark, offset, sign: rail.sign, u_reading: rail.u_reading, shifts, scale, free }
}

/// The offset is the mean over the pairs; its uncertainty the standard error of that mean combined with the
/// reading uncertainty on either rail (common practice, no source). The reading uncertainty is not divided by
/// the number of pairs: it is a Type B limit of reading a ruler, which repeats need not average out.
fn overlap(
    index: usize,
    rail: &Rail,
    pairs: &[(f64, f64)],
    (rail_before, before): (&Rail, &Stand),
) -> Result<Stand, JointError> {
    if pairs.is_empty() {
        return Err(JointError::NoPairs);
    }
    let n = pairs.len() as f64;
    let mark = pairs.iter().map(|(here, _)| here).sum::<f64>() / n;
    let mark_before = pairs.iter().map(|(_, before)| before).sum::<f64>() / n;
    let offsets: Vec<f64> =
        pairs.iter().map(|(here, there)| before.distance(*there) - rail.sign * (here - mark)).collect();
    let offset = offsets.iter().sum::<f64>() / n;
    let scatter = if pairs.len() > 1 {
        offsets.iter().map(|o| (o - offset) * (o - offset)).sum::<f64>() / (n - 1.0) / n
    } else {
        0.0
    };
    let reading = rail.u_reading * rail.u_reading + rail_before.u_reading * rail_before.u_reading;
    let mut shifts = before.effects_at(mark_before);
    add(&mut shifts, Source::Splice(index), (scatter + reading).sqrt());
    Ok(stand(index, rail, mark, offset, shifts, before.free.clone()))
}

/// Distance of the far end of a rail's span, m.
pub fn far_end(rail: &Rail, stand: &Stand) -> Option<f64> {
    rail.span.map(|(from, to)| stand.distance(from).max(stand.distance(to)))
}

/// Distance of the near end of a rail's span, m.
pub fn near_end(rail: &Rail, stand: &Stand) -> Option<f64> {
    rail.span.map(|(from, to)| stand.distance(from).min(stand.distance(to)))
}

/// Adds an effect of `source`, to the one that stands there already if there is one.
fn add(effects: &mut Vec<(Source, f64)>, source: Source, effect: f64) {
    match effects.iter_mut().find(|(s, _)| *s == source) {
        Some((_, sum)) => *sum += effect,
        None => effects.push((source, effect)),
    }
}

#[cfg(test)]
#[path = "mod_test.rs"]
mod tests;
