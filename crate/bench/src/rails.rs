//! Rails with a carriage: where it really stands, and what is read there.
//!
//! A [`Rig`] is what a careful person knows of the bench, and how well. [`Rig::run`] draws the errors it really has and
//! moves the carriage along: a [`Run`] holds what was read, and the [`Truth`] apart from it. All in plain numbers; who
//! makes a notebook of them labels the rails as it likes.

use crate::chance::Chance;

/// A bench with rails.
#[derive(Clone, Debug)]
pub struct Rig<Label> {
    /// The rails, from the splitter outwards.
    pub rails: Vec<Rail<Label>>,
    /// Speed of light in vacuum, m/s.
    pub c: f64,
    /// Group index of the air.
    pub group_index: f64,
    /// Delay at zero distance, ns.
    pub t0: f64,
    /// Half-width within which an edge is read, divisions.
    pub half_width: f64,
    /// Where edges are written to whole steps, a step, divisions; the half-width, of half a step at least, holds the
    /// rounding too.
    pub step: Option<f64>,
    /// Relative standard uncertainty of the time base.
    pub u_time_base: f64,
    /// How much later edge B seems to come for each metre because the light weakens: standard deviation, ns/m.
    pub u_walk: f64,
    /// Places visited, in their order.
    pub stops: Vec<Stop>,
}

/// A rail as it is known. Readings are metres of its ruler.
#[derive(Clone, Debug)]
pub struct Rail<Label> {
    /// What it is called, and whatever else is of no matter here.
    pub label: Label,
    /// Whether readings grow with the distance from the splitter.
    pub grows: bool,
    /// First and last mark.
    pub span: (f64, f64),
    /// Standard uncertainty of one reading, m.
    pub u_reading: f64,
    /// Relative standard uncertainty of its scale.
    pub u_scale: f64,
    /// A reading.
    pub mark: f64,
    /// Where that reading is believed to stand, m from the splitter.
    pub believed: f64,
    /// How that is known.
    pub joint: Joint,
}

/// How the place of a rail is known.
#[derive(Clone, Debug)]
pub enum Joint {
    /// Its mark is at the splitter (`believed` is 0), with this standard uncertainty, m.
    AtSplitter(f64),
    /// Its distance from the splitter was measured, with this standard uncertainty, m.
    Stated(f64),
    /// Its mark meets one of the rail before, with a gap (m) known to this standard uncertainty, m.
    Meeting {
        /// The gap, m.
        gap: f64,
        /// Standard uncertainty, m.
        u: f64,
    },
    /// Read on both rails, at these readings of this one.
    Overlap(Vec<f64>),
    /// Not known.
    Free,
}

/// A place visited.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stop {
    /// The rail, from 0.
    pub rail: usize,
    /// The reading aimed at, m of ruler.
    pub aim: f64,
    /// Time per division, ns.
    pub time_base: f64,
}

/// What a run gave.
#[derive(Clone, Debug, PartialEq)]
pub struct Run {
    /// What each rail's joint showed.
    pub joints: Vec<ReadJoint>,
    /// What was read at each stop.
    pub rows: Vec<Row>,
    /// What was so.
    pub truth: Truth,
}

/// A joint as it was read. A rail that should meet another and has none before it is free.
#[derive(Clone, Debug, PartialEq)]
pub enum ReadJoint {
    /// The mark is at the splitter, with this standard uncertainty, m.
    AtSplitter(f64),
    /// The mark's distance from the splitter and its standard uncertainty, m.
    Stated {
        /// The distance, m.
        distance: f64,
        /// Standard uncertainty, m.
        u: f64,
    },
    /// The mark meets one of the rail before.
    Meeting {
        /// The other mark, m of the ruler before.
        before: f64,
        /// The gap, m.
        gap: f64,
        /// Standard uncertainty, m.
        u: f64,
    },
    /// Readings on this rail and on the one before, m of their rulers, at the same places.
    Overlap(Vec<(f64, f64)>),
    /// Not known.
    Free,
}

/// What was read at a stop, not yet rounded.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row {
    /// The rail, from 0.
    pub rail: usize,
    /// The reading, m of ruler.
    pub reading: f64,
    /// Time per division, ns.
    pub time_base: f64,
    /// Edge A, divisions.
    pub a: f64,
    /// Edge B, divisions.
    pub b: f64,
}

/// What was really so.
#[derive(Clone, Debug, PartialEq)]
pub struct Truth {
    /// Speed of light in vacuum, m/s.
    pub c: f64,
    /// Delay at zero distance, ns.
    pub t0: f64,
    /// True distance of the mark of each rail, m.
    pub marks: Vec<f64>,
    /// True distance of each row, m.
    pub distances: Vec<f64>,
}

impl<Label> Rig<Label> {
    /// Runs the measurement once, with errors drawn from `seed`. Stops on rails that there are not are left out.
    pub fn run(&self, seed: u64) -> Run {
        let mut chance = Chance::seeded(seed);
        let mut placed: Vec<Placed> = Vec::new();
        let mut joints = Vec::new();
        for rail in &self.rails {
            let here = place(rail, placed.last(), &mut chance);
            joints.push(read_joint(rail, &here, placed.last(), &mut chance));
            placed.push(here);
        }
        let stretches = self.time_stretches(&mut chance);
        let walk = if self.u_walk > 0.0 { chance.normal(self.u_walk) } else { 0.0 };
        let (mut rows, mut distances) = (Vec::new(), Vec::new());
        for stop in &self.stops {
            let Some(rail) = placed.get(stop.rail) else { continue };
            let distance = rail.distance(stop.aim);
            let stretch = stretches.iter().find(|(time, _)| *time == stop.time_base).map_or(0.0, |(_, s)| *s);
            rows.push(self.read_row(stop, rail, distance, (stretch, walk), &mut chance));
            distances.push(distance);
        }
        let marks = placed.iter().map(|rail| rail.stands).collect();
        Run { joints, rows, truth: Truth { c: self.c, t0: self.t0, marks, distances } }
    }

    /// The relative error of the time base at each setting.
    fn time_stretches(&self, chance: &mut Chance) -> Vec<(f64, f64)> {
        let mut settings: Vec<f64> = self.stops.iter().map(|stop| stop.time_base).collect();
        settings.sort_by(f64::total_cmp);
        settings.dedup();
        settings.into_iter().map(|time| (time, chance.normal(self.u_time_base))).collect()
    }

    fn read_row(
        &self,
        stop: &Stop,
        rail: &Placed,
        distance: f64,
        (stretch, walk): (f64, f64),
        chance: &mut Chance,
    ) -> Row {
        let delay = self.t0 + distance * (self.group_index / self.c * 1e9 + walk);
        // A longer true division shows fewer of them.
        let divisions = delay / stop.time_base * (1.0 - stretch);
        let edge = 0.4 + 0.8 * chance.unit();
        let reading = rail.read(distance, chance);
        let mut seen = |edge: f64| match self.step {
            Some(step) => {
                // What rounding leaves of the variance a²/3.
                let estimate = (self.half_width * self.half_width - 0.25 * step * step).max(0.0).sqrt();
                ((edge + chance.uniform(estimate)) / step).round() * step
            }
            None => edge + chance.uniform(self.half_width),
        };
        let (a, b) = (seen(edge), seen(edge + divisions));
        Row { rail: stop.rail, reading, time_base: stop.time_base, a, b }
    }
}

/// A rail in place: where its mark really stands, and by how much its ruler is really stretched.
struct Placed {
    sign: f64,
    mark: f64,
    stands: f64,
    stretch: f64,
    u_reading: f64,
}

impl Placed {
    /// True distance of the reading `r`, m of ruler.
    fn distance(&self, r: f64) -> f64 {
        self.stands + self.sign * (r - self.mark) * (1.0 + self.stretch)
    }

    /// A reading as a person takes it at the true distance `d`, m of ruler.
    fn read(&self, d: f64, chance: &mut Chance) -> f64 {
        let shown = self.mark + self.sign * (d - self.stands) / (1.0 + self.stretch);
        shown + chance.normal(self.u_reading)
    }

    /// The reading at which another rail's mark is taken to meet this one, m of ruler.
    fn meeting(&self, believed: f64, gap: f64) -> f64 {
        let exact = self.mark + self.sign * (believed - gap - self.stands);
        // A mark is a round one: to the centimetre.
        (exact * 100.0).round() / 100.0
    }
}

/// Puts a rail where it really stands: off from where it is believed to, by as much as its joint allows.
fn place<Label>(rail: &Rail<Label>, before: Option<&Placed>, chance: &mut Chance) -> Placed {
    let u = match rail.joint {
        Joint::AtSplitter(u) | Joint::Stated(u) | Joint::Meeting { u, .. } => u,
        Joint::Overlap(_) => 0.0,
        // Nobody knows a free step: any will do.
        Joint::Free => 0.02,
    };
    let stands = match (&rail.joint, before) {
        (Joint::Meeting { gap, .. }, Some(before)) => {
            before.distance(before.meeting(rail.believed, *gap)) + gap
        }
        _ => rail.believed,
    };
    Placed {
        sign: if rail.grows { 1.0 } else { -1.0 },
        mark: rail.mark,
        stands: stands + chance.normal(u),
        stretch: chance.normal(rail.u_scale),
        u_reading: rail.u_reading,
    }
}

fn read_joint<Label>(
    rail: &Rail<Label>,
    here: &Placed,
    before: Option<&Placed>,
    chance: &mut Chance,
) -> ReadJoint {
    match (&rail.joint, before) {
        (Joint::AtSplitter(u), _) => ReadJoint::AtSplitter(*u),
        (Joint::Stated(u), _) => ReadJoint::Stated { distance: rail.believed, u: *u },
        (Joint::Meeting { gap, u }, Some(before)) => {
            ReadJoint::Meeting { before: before.meeting(rail.believed, *gap), gap: *gap, u: *u }
        }
        (Joint::Overlap(readings), Some(before)) => {
            let pair = |r: &f64| {
                let distance = here.distance(*r);
                (here.read(distance, chance), before.read(distance, chance))
            };
            ReadJoint::Overlap(readings.iter().map(pair).collect())
        }
        (Joint::Free | Joint::Meeting { .. } | Joint::Overlap(_), _) => ReadJoint::Free,
    }
}

#[cfg(test)]
#[path = "rails_test.rs"]
mod tests;
