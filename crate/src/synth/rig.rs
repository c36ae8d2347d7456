//! A bench with its truth kept apart from what is read.
//!
//! A [`Rig`] is what a careful person knows of the bench, and how well. [`Rig::run`] draws the errors it really
//! has, moves the carriage along, and writes the notebook: rows hold what was read, the [`Truth`] what was so.

use litemap::LiteMap;

use super::chance::Chance;
use crate::analysis::C0;
use crate::notebook::{
    BenchField, Cell, Edit, EditError, Notebook, OverlapPair, RailField, RowId, RulerUnit, Sense, Splice,
};
use crate::quantity::{DecimalMark, Unit, fixed, in_unit};

/// A bench as it is described.
#[derive(Clone, Debug)]
pub struct Rig {
    /// Title of the notebook.
    pub title: String,
    /// Texts of the bench.
    pub bench: Vec<(BenchField, String)>,
    /// The rails, from the splitter outwards.
    pub rails: Vec<RigRail>,
    /// Half-width within which an edge is read, divisions.
    pub half_width: f64,
    /// Relative standard uncertainty of the time base.
    pub u_time_base: f64,
    /// Group index of the air.
    pub group_index: f64,
    /// Delay at zero distance, ns.
    pub t0: f64,
    /// How much later edge B seems to come for each metre because the light weakens: standard deviation, ns/m.
    pub u_walk: f64,
    /// Where edges are read to a mark of the screen, the distance between marks, divisions.
    pub step: Option<f64>,
    /// Places visited: rail (from 0), reading aimed at in the ruler's unit, time per division in ns.
    pub stops: Vec<(usize, f64, f64)>,
}

/// A rail as it is described, and how well its place is known.
#[derive(Clone, Debug)]
pub struct RigRail {
    /// Its name.
    pub name: &'static str,
    /// Unit of its ruler.
    pub unit: RulerUnit,
    /// Sense of its ruler.
    pub sense: Sense,
    /// First and last mark, in the ruler's unit.
    pub span: (f64, f64),
    /// Standard uncertainty of one reading, m.
    pub u_reading: f64,
    /// Relative standard uncertainty of its scale.
    pub u_scale: f64,
    /// A reading (in the ruler's unit), and where it is believed to stand, m from the splitter.
    pub mark: f64,
    /// Where that mark is believed to stand, m from the splitter.
    pub believed: f64,
    /// How that is known.
    pub joint: RigJoint,
}

/// How the place of a rail is known.
#[derive(Clone, Debug)]
pub enum RigJoint {
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
    /// Read on both rails at these readings of this rail, in its unit.
    Overlap(Vec<f64>),
    /// Not known.
    Free,
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

/// A rail in place: where its mark really stands, and by how much its ruler is really stretched.
struct Placed {
    unit: Unit,
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

    /// What the ruler shows at the true distance `d`, m of ruler.
    fn reading(&self, d: f64) -> f64 {
        self.mark + self.sign * (d - self.stands) / (1.0 + self.stretch)
    }

    /// A reading as a person takes it, as a text in the ruler's unit to a tenth of a millimetre.
    fn read(&self, d: f64, chance: &mut Chance) -> String {
        let seen = self.reading(d) + chance.normal(self.u_reading);
        fixed(self.unit.from_base(seen), self.finest(), DecimalMark::Point)
    }

    /// Power of ten of the last digit read: the one nearest to a tenth of a millimetre, from below.
    fn finest(&self) -> i32 {
        let mut place = 0;
        let mut step = self.unit.to_base(1.0);
        while step > 1.01e-4 {
            step /= 10.0;
            place -= 1;
        }
        place
    }
}

impl Rig {
    /// Runs the measurement once, with errors drawn from `seed`.
    ///
    /// # Errors
    /// Only if the rig names one rail twice or none where one is needed.
    pub fn run(&self, seed: u64) -> Result<(Notebook, Truth), EditError> {
        let mut chance = Chance::seeded(seed);
        let mut notebook = Notebook::new();
        let mut put = |edit: Edit| notebook.apply(edit, "");
        put(Edit::SetTitle(self.title.clone()))?;
        for (field, text) in &self.bench {
            put(Edit::SetBench { field: *field, text: text.clone() })?;
        }
        let mut placed: Vec<Placed> = Vec::new();
        for (index, rail) in self.rails.iter().enumerate() {
            let stands = place(rail, placed.last(), &mut chance);
            let splice = describe(rail, &stands, placed.last(), &mut chance);
            for edit in rail_edits(index, rail, splice) {
                put(edit)?;
            }
            placed.push(stands);
        }
        let mut truth = Truth {
            c: C0,
            t0: self.t0,
            marks: placed.iter().map(|rail| rail.stands).collect(),
            distances: Vec::new(),
        };
        let stretch = self.time_stretches(&mut chance);
        let walk = if self.u_walk > 0.0 { chance.normal(self.u_walk) } else { 0.0 };
        let mut row: RowId = 0;
        for (rail, aim, time) in &self.stops {
            let (Some(on), Some(rig)) = (placed.get(*rail), self.rails.get(*rail)) else { continue };
            let distance = on.distance(on.unit.to_base(*aim));
            let stretch = stretch.iter().find(|(t, _)| t == time).map_or(0.0, |(_, s)| *s);
            row += 1;
            let cells = self.read_row(on, rig.name, distance, *time, (stretch, walk), &mut chance);
            put(Edit::AddRow { row, after: None, cells })?;
            truth.distances.push(distance);
        }
        Ok((notebook, truth))
    }

    /// The relative error of the time base at each setting.
    fn time_stretches(&self, chance: &mut Chance) -> Vec<(f64, f64)> {
        let mut settings: Vec<f64> = self.stops.iter().map(|(_, _, time)| *time).collect();
        settings.sort_by(f64::total_cmp);
        settings.dedup();
        settings.into_iter().map(|time| (time, chance.normal(self.u_time_base))).collect()
    }

    fn read_row(
        &self,
        on: &Placed,
        name: &str,
        distance: f64,
        time: f64,
        (stretch, walk): (f64, f64),
        chance: &mut Chance,
    ) -> LiteMap<Cell, String> {
        let delay = self.t0 + distance * (self.group_index / C0 * 1e9 + walk);
        // A longer true division shows fewer of them.
        let divisions = delay / time * (1.0 - stretch);
        let a = 0.4 + 0.8 * chance.unit();
        let edge = |q: f64, chance: &mut Chance| {
            let seen = match self.step {
                Some(step) => (q / step).round() * step,
                None => q + chance.uniform(self.half_width),
            };
            fixed(seen, -3, DecimalMark::Point)
        };
        LiteMap::from_iter([
            (Cell::Rail, name.to_owned()),
            (Cell::Reading, on.read(distance, chance)),
            (Cell::TimeBase, format!("{time}")),
            (Cell::EdgeA, edge(a, chance)),
            (Cell::EdgeB, edge(a + divisions, chance)),
        ])
    }
}

/// Puts a rail where it really stands: off from where it is believed to, by as much as its joint allows.
fn place(rail: &RigRail, before: Option<&Placed>, chance: &mut Chance) -> Placed {
    let unit = crate::analysis::read::ruler_unit(rail.unit);
    let u = match rail.joint {
        RigJoint::AtSplitter(u) | RigJoint::Stated(u) | RigJoint::Meeting { u, .. } => u,
        RigJoint::Overlap(_) => 0.0,
        // Nobody knows a free step: any will do.
        RigJoint::Free => 0.02,
    };
    let stands = match (&rail.joint, before) {
        (RigJoint::Meeting { gap, .. }, Some(before)) => meeting(rail, *gap, before),
        _ => rail.believed,
    };
    Placed {
        unit,
        sign: rail.sense.sign(),
        mark: unit.to_base(rail.mark),
        stands: stands + chance.normal(u),
        stretch: chance.normal(rail.u_scale),
        u_reading: rail.u_reading,
    }
}

/// Where a mark stands that meets the rail before at the reading believed to be there.
fn meeting(rail: &RigRail, gap: f64, before: &Placed) -> f64 {
    before.distance(nominal_before(rail, gap, before)) + gap
}

/// The reading on the rail before at which the meeting mark lies, m of ruler, as the description has it.
fn nominal_before(rail: &RigRail, gap: f64, before: &Placed) -> f64 {
    let exact = before.mark + before.sign * (rail.believed - gap - before.stands);
    // A mark is a round one: to the centimetre.
    (exact * 100.0).round() / 100.0
}

fn describe(rail: &RigRail, stands: &Placed, before: Option<&Placed>, chance: &mut Chance) -> Splice {
    let mark = text(rail.mark);
    let metres = |value: f64| format!("{} m", fixed(value, -4, DecimalMark::Point));
    let millimetres = |u: f64| in_unit(u, Unit::MILLIMETRE, DecimalMark::Point);
    match (&rail.joint, before) {
        (RigJoint::AtSplitter(u), _) => Splice::AtSplitter { mark, uncertainty: millimetres(*u) },
        (RigJoint::Stated(u), _) => {
            Splice::AtDistance { mark, distance: metres(rail.believed), uncertainty: millimetres(*u) }
        }
        (RigJoint::Meeting { gap, u }, Some(before)) => Splice::Joined {
            mark,
            mark_before: text(before.unit.from_base(nominal_before(rail, *gap, before))),
            gap: metres(*gap),
            uncertainty: millimetres(*u),
        },
        (RigJoint::Overlap(readings), Some(before)) => Splice::Overlap {
            pairs: readings
                .iter()
                .map(|r| {
                    let distance = stands.distance(stands.unit.to_base(*r));
                    OverlapPair { here: stands.read(distance, chance), before: before.read(distance, chance) }
                })
                .collect(),
        },
        (RigJoint::Free | RigJoint::Meeting { .. } | RigJoint::Overlap(_), _) => Splice::Free { mark },
    }
}

fn rail_edits(index: usize, rail: &RigRail, splice: Splice) -> Vec<Edit> {
    let id = u32::try_from(index + 1).unwrap_or(u32::MAX);
    let unit = crate::analysis::read::ruler_unit(rail.unit);
    let write = |field, text: String| Edit::SetRail { rail: id, field, text };
    let mut edits = vec![
        Edit::AddRail(id),
        write(RailField::Name, rail.name.to_owned()),
        Edit::SetRulerUnit { rail: id, unit: rail.unit },
        Edit::SetSense { rail: id, sense: rail.sense },
        write(RailField::From, text(rail.span.0)),
        write(RailField::To, text(rail.span.1)),
        write(RailField::ReadingUncertainty, text(unit.from_base(rail.u_reading))),
        Edit::SetSplice { rail: id, splice },
    ];
    if rail.u_scale > 0.0 {
        edits.push(write(RailField::ScaleUncertainty, format!("{} %", text(rail.u_scale * 100.0))));
    }
    edits
}

/// A number with the fewest digits that tell it.
fn text(value: f64) -> String {
    format!("{value}")
}
