//! Each notice: absent from a sound notebook, present once its fault is planted, naming the rows.
#![expect(clippy::unwrap_used, reason = "tests")]

use litemap::LiteMap;

use crate::analysis::analyse;
use crate::notebook::{BenchField, Cell, Edit, Notebook, RailField, RowId, Sense, Splice};

/// Small deviations with no pattern, in units of 0.04 ns.
const WOBBLE: [f64; 12] = [0.7, -0.9, -0.3, 1.1, -0.5, 0.2, 0.9, -1.2, 0.4, -0.6, -0.1, 0.8];

fn text(value: f64) -> String {
    format!("{value:.4}")
}

/// Two rails of 2 m, joined by meeting marks, six rows on each; light at 3.3356 ns/m and t₀ = 2 ns.
struct Bench {
    notebook: Notebook,
}

impl Bench {
    fn sound() -> Self {
        let mut bench = Self { notebook: Notebook::new() };
        for rail in [1, 2] {
            bench.put(Edit::AddRail(rail));
            for (field, value) in
                [(RailField::From, "0"), (RailField::To, "200"), (RailField::ReadingUncertainty, "0.05")]
            {
                bench.put(Edit::SetRail { rail, field, text: value.into() });
            }
        }
        bench.put(Edit::SetSplice {
            rail: 1,
            splice: Splice::AtSplitter { mark: "0".into(), uncertainty: "1 mm".into() },
        });
        bench.put(Edit::SetSplice {
            rail: 2,
            splice: Splice::Meeting {
                mark: "0".into(),
                mark_before: "200".into(),
                gap: "0".into(),
                uncertainty: "0.002".into(),
            },
        });
        bench.put(Edit::SetBench { field: BenchField::EdgeHalfWidth, text: "0.03".into() });
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

    fn put(&mut self, edit: Edit) {
        self.notebook.apply(edit, "").unwrap();
    }

    fn set(&mut self, row: RowId, cell: Cell, text: &str) {
        self.put(Edit::SetCell { row, cell, text: text.into() });
    }

    /// Adds `ns` to the delay of a row.
    fn late(&mut self, row: RowId, ns: f64) {
        let held =
            self.notebook.page().rows.iter().find(|r| r.id == row).unwrap().text(Cell::EdgeB).to_owned();
        self.set(row, Cell::EdgeB, &text(held.parse::<f64>().unwrap() + ns / 2.0));
    }

    fn noticed(&self) -> Vec<(&'static str, Vec<RowId>)> {
        analyse(&self.notebook).notices.iter().map(|notice| (notice.id, notice.rows.clone())).collect()
    }

    fn rows_of(&self, id: &str) -> Option<Vec<RowId>> {
        self.noticed().into_iter().find(|(found, _)| *found == id).map(|(_, rows)| rows)
    }
}

/// A fault to plant, the notice it raises, and the rows that the notice names.
type Case = (&'static str, fn(&mut Bench), &'static [RowId]);

const CASES: [Case; 17] = [
    ("off_the_rail", |b| b.set(3, Cell::Reading, "230"), &[3]),
    (
        "edge_off_screen",
        |b| b.put(Edit::SetBench { field: BenchField::ScreenWidth, text: "7.3".into() }),
        &[12],
    ),
    ("restarted_count", |b| (7..=12).for_each(|row| b.set(row, Cell::Rail, "1")), &[7]),
    (
        "coarse_figures",
        |b| [(2, "50"), (4, "110"), (6, "170")].into_iter().for_each(|(row, r)| b.set(row, Cell::Reading, r)),
        &[2, 4, 6],
    ),
    (
        "disagreeing_places",
        |b| {
            b.set(3, Cell::Reading, "50.00");
            b.late(3, 0.0);
        },
        &[2, 3],
    ),
    ("delay_falls", |b| b.late(9, 4.0), &[10]),
    (
        "delay_falls",
        |b| {
            b.put(Edit::Together(vec![
                Edit::SetSense { rail: 1, sense: Sense::Falls },
                Edit::SetSense { rail: 2, sense: Sense::Falls },
            ]));
        },
        &[],
    ),
    ("delay_below_uncertainty", |b| b.set(1, Cell::EdgeB, "0.51"), &[1]),
    (
        "beyond_a_period",
        |b| b.put(Edit::SetBench { field: BenchField::PulseRate, text: "75 MHz".into() }),
        &[12],
    ),
    ("step_at_splice", |b| (7..=12).for_each(|row| b.late(row, 0.4)), &[]),
    (
        "scatter_too_large",
        |b| {
            b.late(4, 0.5);
            b.late(8, -0.5);
        },
        &[],
    ),
    (
        "scatter_too_small",
        |b| b.put(Edit::SetBench { field: BenchField::EdgeHalfWidth, text: "0.2".into() }),
        &[],
    ),
    (
        "curvature",
        |b| {
            (1..=12).for_each(|row| {
                let k = f64::from(row) - 6.5;
                b.late(row, 0.012 * k * k);
            });
        },
        &[],
    ),
    ("runs", |b| (4..=9).for_each(|row| b.late(row, 0.12)), &[]),
    ("few_rows", |b| (1..=8).for_each(|row| b.put(Edit::StrikeRow { row, reason: "test".into() })), &[]),
    ("faster_than_light", |b| b.put(Edit::SetPath(crate::notebook::Path::Mirror)), &[]),
    ("short_span", |b| b.put(Edit::SetBench { field: BenchField::EdgeHalfWidth, text: "1.2".into() }), &[]),
];

#[test]
fn a_sound_notebook_raises_no_notice() {
    assert_eq!(Bench::sound().noticed(), vec![]);
}

#[test]
fn each_planted_fault_is_noticed_with_its_rows() {
    let mut missed = Vec::new();
    for (id, plant, rows) in CASES {
        let mut bench = Bench::sound();
        plant(&mut bench);
        let named = bench.rows_of(id);
        if named.is_none() || (!rows.is_empty() && named.as_deref() != Some(rows)) {
            missed.push(format!("{id} at {rows:?}; there is {:?}", bench.noticed()));
        }
    }
    assert!(missed.is_empty(), "not raised: {missed:#?}");
}

#[test]
fn rows_of_one_time_base_off_from_the_rest_are_noticed() {
    let mut bench = Bench::sound();
    for row in [2, 5, 8, 11] {
        bench.set(row, Cell::TimeBase, "2.5");
        let held = bench.notebook.page().rows[row as usize - 1].text(Cell::EdgeB).parse::<f64>().unwrap();
        bench.set(row, Cell::EdgeB, &text(0.5 + (held - 0.5) * 0.8 + 0.2));
    }
    assert_eq!(bench.rows_of("time_base_off"), Some(vec![2, 5, 8, 11]));
}

#[test]
fn one_row_that_decides_the_slope_is_noticed() {
    let mut bench = Bench::sound();
    for row in 4..=11 {
        bench.put(Edit::StrikeRow { row, reason: "test".into() });
    }
    bench.late(12, 0.3);
    assert_eq!(bench.rows_of("decisive_row"), Some(vec![12]));
}

#[test]
fn uncertainties_left_as_taken_are_noticed() {
    let mut bench = Bench::sound();
    bench.put(Edit::SetBench { field: BenchField::EdgeHalfWidth, text: String::new() });
    for rail in [1, 2] {
        bench.put(Edit::SetRail { rail, field: RailField::ReadingUncertainty, text: String::new() });
    }
    bench.put(Edit::SetSplice {
        rail: 1,
        splice: Splice::AtSplitter { mark: "0".into(), uncertainty: String::new() },
    });
    bench.put(Edit::SetSplice {
        rail: 2,
        splice: Splice::Meeting {
            mark: "0".into(),
            mark_before: "200".into(),
            gap: "0".into(),
            uncertainty: String::new(),
        },
    });
    assert!(bench.rows_of("defaults_only").is_some());
}
