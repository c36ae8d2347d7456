//! A simulated bench with what is written of it, and the notebook of a run.

use litemap::LiteMap;
use slope_bench::rails::{Rail, ReadJoint, Rig, Row, Truth};

use crate::analysis::read::ruler_unit;
use crate::notebook::{
    BenchField, Cell, Edit, EditError, Notebook, OverlapPair, RailField, RowId, RulerUnit, Sense, Splice,
};
use crate::quantity::{DecimalMark, Unit, fixed, in_unit};

/// A bench as it is described.
#[derive(Clone, Debug)]
pub struct Described {
    /// Title of the notebook.
    pub title: String,
    /// The decimal mark that its numbers are written with, as its texts are.
    pub mark: DecimalMark,
    /// Edges are written with their last digit at ten to this.
    pub edge_place: i32,
    /// Texts of the bench.
    pub texts: Vec<(BenchField, String)>,
    /// The bench itself.
    pub rig: Rig<Ruler>,
}

/// What is written on a rail.
#[derive(Clone, Copy, Debug)]
pub struct Ruler {
    /// Its name.
    pub name: &'static str,
    /// Unit of its ruler.
    pub unit: RulerUnit,
}

impl Described {
    /// Runs the measurement once, with errors drawn from `seed`: the notebook that a person would write, and what was
    /// really so.
    ///
    /// # Errors
    /// Only if two rails have one name.
    pub fn run(&self, seed: u64) -> Result<(Notebook, Truth), EditError> {
        let run = self.rig.run(seed);
        let mut notebook = Notebook::new();
        let mut put = |edit: Edit| notebook.apply(edit, "");
        put(Edit::SetTitle(self.title.clone()))?;
        if self.mark != DecimalMark::default() {
            put(Edit::SetDecimalMark(self.mark))?;
        }
        for (field, text) in &self.texts {
            put(Edit::SetBench { field: *field, text: text.clone() })?;
        }
        let mut before = Unit::METRE;
        for ((rail, joint), id) in self.rig.rails.iter().zip(&run.joints).zip(1..) {
            for edit in self.rail_edits(id, rail, joint, before) {
                put(edit)?;
            }
            before = ruler_unit(rail.label.unit);
        }
        for (row, id) in run.rows.iter().zip(1..) {
            let Some(rail) = self.rig.rails.get(row.rail) else { continue };
            put(self.row_edit(id, row, rail.label))?;
        }
        Ok((notebook, run.truth))
    }

    /// The edits that describe a rail; `before` is the unit of the ruler before it.
    fn rail_edits(&self, id: u32, rail: &Rail<Ruler>, joint: &ReadJoint, before: Unit) -> Vec<Edit> {
        let Ruler { name, unit: of_ruler } = rail.label;
        let unit = ruler_unit(of_ruler);
        let marks = |value: f64| self.text(unit.from_base(value));
        let write = |field, text: String| Edit::SetRail { rail: id, field, text };
        let mut edits = vec![
            Edit::AddRail(id),
            write(RailField::Name, name.to_owned()),
            Edit::SetRulerUnit { rail: id, unit: of_ruler },
            Edit::SetSense { rail: id, sense: if rail.grows { Sense::Grows } else { Sense::Falls } },
            write(RailField::From, marks(rail.span.0)),
            write(RailField::To, marks(rail.span.1)),
            write(RailField::ReadingUncertainty, marks(rail.u_reading)),
            Edit::SetSplice { rail: id, splice: self.splice(marks(rail.mark), joint, unit, before) },
        ];
        if rail.u_scale > 0.0 {
            edits.push(write(RailField::ScaleUncertainty, format!("{} %", self.text(rail.u_scale * 100.0))));
        }
        edits
    }

    fn splice(&self, mark: String, joint: &ReadJoint, here: Unit, before: Unit) -> Splice {
        let metres = |value: f64| format!("{} m", fixed(value, -3, self.mark));
        let millimetres = |u: f64| in_unit(u, Unit::MILLIMETRE, self.mark);
        match joint {
            ReadJoint::AtSplitter(u) => Splice::AtSplitter { mark, uncertainty: millimetres(*u) },
            ReadJoint::Stated { distance, u } => {
                Splice::AtDistance { mark, distance: metres(*distance), uncertainty: millimetres(*u) }
            }
            ReadJoint::Meeting { before: met, gap, u } => Splice::Joined {
                mark,
                mark_before: self.text(before.from_base(*met)),
                gap: metres(*gap),
                uncertainty: millimetres(*u),
            },
            ReadJoint::Overlap(pairs) => {
                let pair = |(on_this, on_that): &(f64, f64)| OverlapPair {
                    here: self.reading(*on_this, here),
                    before: self.reading(*on_that, before),
                };
                Splice::Overlap { pairs: pairs.iter().map(pair).collect() }
            }
            ReadJoint::Free => Splice::Free { mark },
        }
    }

    fn row_edit(&self, row: RowId, read: &Row, ruler: Ruler) -> Edit {
        let cells = LiteMap::from_iter([
            (Cell::Rail, ruler.name.to_owned()),
            (Cell::Reading, self.reading(read.reading, ruler_unit(ruler.unit))),
            (Cell::TimeBase, self.text(read.time_base)),
            (Cell::EdgeA, self.edge(read.a)),
            (Cell::EdgeB, self.edge(read.b)),
        ]);
        Edit::AddRow { row, after: None, cells }
    }

    /// An edge as it is written down.
    pub(super) fn edge(&self, divisions: f64) -> String {
        fixed(divisions, self.edge_place, self.mark)
    }

    /// A reading in the ruler's unit, to a tenth of a millimetre: in inches to the next finer power of ten.
    fn reading(&self, metres: f64, unit: Unit) -> String {
        let mut place = 0;
        let mut step = unit.to_base(1.0);
        while step > 1.01e-4 {
            step /= 10.0;
            place -= 1;
        }
        fixed(unit.from_base(metres), place, self.mark)
    }

    /// A number with the fewest digits that tell it.
    fn text(&self, value: f64) -> String {
        format!("{value}").replace(DecimalMark::Point.char(), self.mark.char().encode_utf8(&mut [0; 4]))
    }
}
