//! A sound bench, and what is done to it.
#![expect(clippy::unwrap_used, reason = "tests")]

use litemap::LiteMap;

use crate::analysis::analyse;
use crate::notebook::{
    ActsOn, BenchField, Cell, CovarianceOf, EdgeHeight, EdgeHeights, Edit, Effect, ErrorShape, Estimator,
    Evidence, Grid, GridCheck, Notebook, Picture, RailField, RailId, Remark, RowId, Scope, SharedError,
    Splice, Spot, StatedCovariance, StoredFile, TraceDelay, TraceTime, Traces,
};
use slope_evidence::trace::{Detector, Flag};

/// Small deviations with no pattern, in units of 0.04 ns.
const WOBBLE: [f64; 12] = [0.7, -0.9, -0.3, 1.1, -0.5, 0.2, 0.9, -1.2, 0.4, -0.6, -0.1, 0.8];

pub(super) fn text(value: f64) -> String {
    format!("{value:.4}")
}

/// Two rails of 2 m, joined by meeting marks, six rows on each; light at 3.3356 ns/m and t₀ = 2 ns.
pub(super) struct Bench {
    pub(super) notebook: Notebook,
}

impl Bench {
    pub(super) fn sound() -> Self {
        let mut bench = Self { notebook: Notebook::new() };
        for rail in [1, 2] {
            bench.put(Edit::AddRail(rail));
            for (field, value) in [
                (RailField::From, "0"),
                (RailField::To, "200"),
                (RailField::ReadingUncertainty, "0.05"),
                (RailField::ScaleUncertainty, "0"),
            ] {
                bench.put(Edit::SetRail { rail, field, text: value.into() });
            }
        }
        bench.put(Edit::SetSplice {
            rail: 1,
            splice: Splice::AtSplitter { mark: "0".into(), uncertainty: "1 mm".into() },
        });
        bench.put(Edit::SetSplice {
            rail: 2,
            splice: Splice::Joined {
                mark: "0".into(),
                mark_before: "200".into(),
                gap: "0".into(),
                uncertainty: "0.2".into(),
            },
        });
        bench.put(Edit::SetBench { field: BenchField::EdgeHalfWidth, text: "0.03".into() });
        bench.put(Edit::SetBench { field: BenchField::TimeBaseUncertainty, text: "0".into() });
        for (row, wobble) in WOBBLE.iter().enumerate() {
            let (rail, r) =
                if row < 6 { (1, 20.0 + 30.0 * row as f64) } else { (2, 10.0 + 30.0 * (row - 6) as f64) };
            let d = r / 100.0 + if rail == 2 { 2.0 } else { 0.0 };
            let delay = 2.0 + 3.3356 * d + 0.04 * wobble;
            let cells = LiteMap::from_iter([
                (Cell::Rail, rail.to_string()),
                (Cell::Reading, format!("{r:.2}")),
                (Cell::TimeBase, "2".to_owned()),
                (Cell::EdgeA, "0.5".to_owned()),
                (Cell::EdgeB, text(0.5 + delay / 2.0)),
            ]);
            bench.put(Edit::AddRow { row: u32::try_from(row).unwrap() + 1, after: None, cells });
        }
        bench
    }

    pub(super) fn put(&mut self, edit: Edit) {
        self.notebook.apply(edit, "").unwrap();
    }

    pub(super) fn set(&mut self, row: RowId, cell: Cell, text: &str) {
        self.put(Edit::SetCell { row, cell, text: text.into() });
    }

    /// Adds `ns` to the delay of a row.
    pub(super) fn late(&mut self, row: RowId, ns: f64) {
        let held = self.notebook.state().row(row).unwrap().text(Cell::EdgeB).to_owned();
        self.set(row, Cell::EdgeB, &text(held.parse::<f64>().unwrap() + ns / 2.0));
    }

    pub(super) fn strike(&mut self, rows: impl IntoIterator<Item = RowId>) {
        rows.into_iter().for_each(|row| self.put(Edit::StrikeRow { row, reason: "test".into() }));
    }

    pub(super) fn set_bench(&mut self, field: BenchField, text: &str) {
        self.put(Edit::SetBench { field, text: text.into() });
    }

    /// Takes the delays from traces by a fixed level, 0.125 ns too late for every metre, in place of the screen.
    pub(super) fn walks(&mut self) {
        self.takes_traces(0.125, |_| Vec::new());
    }

    /// Takes them from traces, and is wary of rows 3 and 7.
    pub(super) fn flags(&mut self, flag: &Flag) {
        let remark = Remark::Edge { trace: Detector::B, flag: flag.clone() };
        self.takes_traces(0.0, |row| if [3, 7].contains(&row) { vec![remark.clone()] } else { Vec::new() });
    }

    /// Takes the delays from traces by a fixed level, `walk` ns too late for every metre, with these remarks.
    pub(super) fn takes_traces(&mut self, walk: f64, remarks: impl Fn(RowId) -> Vec<Remark>) {
        for row in 1..=12 {
            let held = self.notebook.state().row(row).unwrap();
            let (rail, reading) = (held.text(Cell::Rail), held.text(Cell::Reading));
            let d = reading.parse::<f64>().unwrap() / 100.0 + if rail == "2" { 2.0 } else { 0.0 };
            for cell in [Cell::TimeBase, Cell::EdgeA, Cell::EdgeB] {
                self.set(row, cell, "");
            }
            let time = |value: f64| Some(TraceTime { value: text(value), uncertainty: "0.04".into() });
            let wobble = 0.04 * WOBBLE[row as usize - 1];
            let delay = time(2.0 + (3.3356 + walk) * d + wobble);
            let at_fraction = time(2.0 + 3.3356 * d + wobble);
            let delays = vec![
                TraceDelay { estimator: Estimator::FixedLevel, delay, remarks: remarks(row) },
                TraceDelay { estimator: Estimator::ConstantFraction, delay: at_fraction, remarks: vec![] },
            ];
            let traces = Traces { files: vec![kept()], delays, walk: time(walk * d), layouts: vec![] };
            self.put(Edit::SetEvidence { row, evidence: Some(Evidence::Traces(traces)) });
        }
        self.put(Edit::SetEstimator(Estimator::FixedLevel));
    }

    /// Types the delays that the screen gave, and no uncertainty of them.
    pub(super) fn types_bare_delays(&mut self) {
        for row in 1..=12 {
            let held = self.notebook.state().row(row).unwrap().text(Cell::EdgeB);
            let delay = 2.0 * (held.parse::<f64>().unwrap() - 0.5);
            for cell in [Cell::TimeBase, Cell::EdgeA, Cell::EdgeB] {
                self.set(row, cell, "");
            }
            self.set(row, Cell::Delay, &text(delay));
        }
    }

    /// A grid of 10 × 8 divisions, 100 pixels each, whose middle was marked a fifth of a division too far right.
    pub(super) fn bends_a_grid(&mut self) {
        let corners = [Spot(0, 0), Spot(100_000, 0), Spot(100_000, 80_000), Spot(0, 80_000)];
        let middle = GridCheck { half_columns: 10, half_rows: 8, at: Spot(52_000, 40_000) };
        self.put(Edit::SetGrid(Grid { id: 1, columns: 10, rows: 8, corners, checks: vec![middle] }));
    }

    /// Takes the delays of rows 3 and 7 from marks on a picture, where B's edge begins and ends off the screen.
    pub(super) fn leaves_the_screen(&mut self) {
        let corners = [Spot(0, 0), Spot(100_000, 0), Spot(100_000, 80_000), Spot(0, 80_000)];
        self.put(Edit::SetGrid(Grid { id: 1, columns: 10, rows: 8, corners, checks: Vec::new() }));
        for row in [3, 7] {
            let held = self.notebook.state().row(row).unwrap();
            let edge = held.text(Cell::EdgeB).parse::<f64>().unwrap();
            #[expect(clippy::cast_possible_truncation, reason = "a place on the picture")]
            let b = Spot((10_000.0 * edge).round() as i32, 40_000);
            for cell in [Cell::EdgeA, Cell::EdgeB] {
                self.set(row, cell, "");
            }
            let a = EdgeHeight { baseline: Some(Spot(3_000, 60_000)), top: Some(Spot(7_000, 20_000)) };
            let heights = Some(EdgeHeights { a, b: EdgeHeight::default(), thickness: 3 });
            let (width, height, a, b) = (1_000, 800, vec![Spot(5_000, 40_000)], vec![b]);
            let picture = Picture { file: kept(), width, height, grid: 1, a, b, heights };
            self.put(Edit::SetEvidence { row, evidence: Some(Evidence::Picture(picture)) });
        }
    }

    /// Reads all edges to whole small divisions of a fifth.
    pub(super) fn rounds_edges(&mut self) {
        for row in 1..=12 {
            let held = self.notebook.state().row(row).unwrap();
            let edge = held.text(Cell::EdgeB).parse::<f64>().unwrap();
            self.set(row, Cell::EdgeA, "0.4");
            self.set(row, Cell::EdgeB, &format!("{:.1}", (edge * 5.0).round() / 5.0));
        }
    }

    /// Types a reading to a millionth of a centimetre.
    pub(super) fn late_figures(&mut self, row: RowId) {
        let held = self.notebook.state().row(row).unwrap();
        let reading = format!("{}0000", held.text(Cell::Reading));
        self.set(row, Cell::Reading, &reading);
    }

    /// Empties every field that states an uncertainty.
    pub(super) fn states_nothing(&mut self) {
        self.set_bench(BenchField::EdgeHalfWidth, "");
        for rail in [1, 2] {
            self.put(Edit::SetRail { rail, field: RailField::ReadingUncertainty, text: String::new() });
        }
        let uncertainty = String::new();
        let at_splitter = Splice::AtSplitter { mark: "0".into(), uncertainty: uncertainty.clone() };
        let meeting =
            Splice::Joined { mark: "0".into(), mark_before: "200".into(), gap: "0".into(), uncertainty };
        self.put(Edit::SetSplice { rail: 1, splice: at_splitter });
        self.put(Edit::SetSplice { rail: 2, splice: meeting });
    }

    /// Has a hundred and one rows, of which the last two vary together.
    pub(super) fn takes_a_hundred_rows(&mut self) {
        for row in 13..=101 {
            let r = 10.0 + 2.0 * f64::from(row - 12);
            let delay = 2.0 + 3.3356 * r / 100.0 + 0.04 * WOBBLE[row as usize % WOBBLE.len()];
            let u = if row < 100 { "0.04" } else { "" };
            let cells = LiteMap::from_iter([
                (Cell::Rail, "1".to_owned()),
                (Cell::Reading, format!("{r:.2}")),
                (Cell::Delay, text(delay)),
                (Cell::DelayUncertainty, u.to_owned()),
            ]);
            self.put(Edit::AddRow { row, after: None, cells });
        }
        let matrix = [["0.0016", "0.0008"], ["0.0008", "0.0016"]].map(|row| row.map(str::to_owned).to_vec());
        self.put(Edit::SetCovariance(StatedCovariance {
            acts_on: CovarianceOf::Delays,
            rows: vec![100, 101],
            matrix: matrix.to_vec(),
        }));
    }

    /// Says of all rows that they were read on the first rail, and knows no other.
    pub(super) fn has_one_rail(&mut self) {
        (7..=12).for_each(|row| self.set(row, Cell::Rail, "1"));
        self.put(Edit::RemoveRail(2));
    }

    /// The notices: identifier, rows named, rail named.
    pub(super) fn noticed(&self) -> Vec<Named> {
        let notices = analyse(&self.notebook).notices;
        notices.into_iter().map(|notice| (notice.id, notice.rows, notice.rail)).collect()
    }
}

/// A notice by its identifier, the rows that it names, and the rail.
pub(super) type Named = (&'static str, Vec<RowId>, Option<RailId>);

fn kept() -> StoredFile {
    StoredFile { sha256: "0".repeat(64), name: "traces.csv".into(), bytes: 1000 }
}

/// An error of all delays in proportion to them.
pub(super) fn clock(uncertainty: &str) -> SharedError {
    SharedError {
        id: 900,
        name: "clock".into(),
        acts_on: ActsOn::Delays,
        effect: Effect::Scale,
        rows: Scope::All,
        uncertainty: uncertainty.into(),
        shape: ErrorShape::Normal,
        degrees_of_freedom: String::new(),
    }
}
