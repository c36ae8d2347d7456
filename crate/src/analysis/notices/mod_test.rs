//! Each notice: absent from a sound notebook, present once its fault is planted, naming the rows.
#![expect(clippy::unwrap_used, reason = "tests")]

use crate::analysis::analyse;
use crate::message;
use crate::notebook::{
    BenchField, Cell, Edit, Effect, Path, RailField, RailId, RowId, Scope, Sense, SharedError, Splice,
};
use crate::words::{Message, Value, WordTable, Words};
use slope_evidence::trace::{Digits, Flag};

#[path = "bench_test.rs"]
mod bench;

use bench::{Bench, Named, clock, text};

/// What a notice names.
enum Names {
    /// These rows.
    Rows(&'static [RowId]),
    /// This rail, and no row.
    Rail(RailId),
    /// This rail, and these rows.
    RailRows(RailId, &'static [RowId]),
    /// Neither: it is about the line, the result or the notebook as a whole.
    Whole,
}

use Names::{Rail, RailRows, Rows, Whole};

/// A fault to plant, the notice it raises, and what that notice names.
type Case = (&'static str, fn(&mut Bench), Names);

const CASES: [Case; 50] = [
    ("off_the_rail", |b| b.set(3, Cell::Reading, "230"), Rows(&[3])),
    ("edge_off_screen", |b| b.set_bench(BenchField::ScreenWidth, "7.3"), Rows(&[12])),
    (
        "ruler_restarts",
        |b| (7..=12).for_each(|row| b.set(row, Cell::Rail, "1")),
        RailRows(1, &[7, 8, 9, 10, 11, 12]),
    ),
    (
        "coarse_figures",
        |b| [(2, "50"), (4, "110"), (6, "170")].into_iter().for_each(|(row, r)| b.set(row, Cell::Reading, r)),
        Rows(&[2, 4, 6]),
    ),
    (
        "disagreeing_places",
        |b| {
            b.set(3, Cell::Reading, "50.00");
            b.late(3, 0.0);
        },
        Rows(&[2, 3]),
    ),
    ("delay_falls", |b| b.late(9, 4.0), Rows(&[9, 10])),
    (
        "delay_falls",
        |b| [1, 2].into_iter().for_each(|rail| b.put(Edit::SetSense { rail, sense: Sense::Falls })),
        Rows(&[1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]),
    ),
    (
        "delay_below_uncertainty",
        |b| {
            b.strike(8..=12);
            b.set_bench(BenchField::EdgeHalfWidth, "12");
        },
        Rows(&[1, 2, 3, 4, 5, 6, 7]),
    ),
    ("edges_rounded", Bench::rounds_edges, Whole),
    (
        "fine_figures",
        |b| (1..=12).for_each(|row| b.late_figures(row)),
        Rows(&[1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]),
    ),
    ("beyond_a_period", |b| b.set_bench(BenchField::PulseRate, "75 MHz"), Rows(&[12])),
    ("defaults_only", Bench::states_nothing, Whole),
    ("treated_as_exact", |b| b.set_bench(BenchField::TimeBaseUncertainty, ""), Whole),
    (
        "treated_as_exact",
        |b| {
            b.put(Edit::SetRail { rail: 2, field: RailField::ScaleUncertainty, text: String::new() });
        },
        Whole,
    ),
    ("uncertainty_missing", Bench::types_bare_delays, Whole),
    ("rehearsal", |b| b.put(Edit::SetRehearsal(7)), Whole),
    ("walk", Bench::walks, Rows(&[1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12])),
    (
        "walk_twice",
        |b| {
            b.walks();
            b.put(Edit::SetShared(clock("2 %")));
        },
        Whole,
    ),
    ("second_pulse", |b| b.flags(&Flag::DoubleEdge { sample: 9 }), Rows(&[3, 7])),
    ("unlike_edges", |b| b.flags(&Flag::UnlikeEdge { time: Digits::of(0.12, 2) }), Rows(&[3, 7])),
    ("signal_before", |b| b.flags(&Flag::NotQuiet { sample: 9 }), Rows(&[3, 7])),
    ("not_level", |b| b.flags(&Flag::Drift { volts: Digits::of(0.02, 3) }), Rows(&[3, 7])),
    ("few_on_edge", |b| b.flags(&Flag::FewOnEdge { samples: 2 }), Rows(&[3, 7])),
    ("flat_top", |b| b.flags(&Flag::FlatTop { volts: Digits::of(0.8, 4) }), Rows(&[3, 7])),
    ("rough", |b| b.flags(&Flag::Rough), Rows(&[3, 7])),
    ("supposed_unit", |b| b.flags(&Flag::SupposedUnit), Rows(&[3, 7])),
    ("uneven_steps", |b| b.flags(&Flag::UnevenSteps { percent: Digits::of(20.0, 2) }), Rows(&[3, 7])),
    ("height_unknown", Bench::leaves_the_screen, Rows(&[3, 7])),
    ("grid_bent", Bench::bends_a_grid, Whole),
    ("few_rows", |b| b.strike(1..=8), Whole),
    ("not_diagnosed", Bench::takes_a_hundred_rows, Whole),
    (
        "scatter_too_large",
        |b| {
            b.late(4, 0.5);
            b.late(8, -0.5);
        },
        Whole,
    ),
    ("scatter_too_small", |b| b.set_bench(BenchField::EdgeHalfWidth, "0.2"), Whole),
    (
        "vague_splice",
        // 20 cm of 200 cm: a slip with the unit, say.
        |b| {
            b.put(Edit::SetSplice {
                rail: 2,
                splice: Splice::Joined {
                    mark: "0".into(),
                    mark_before: "200".into(),
                    gap: "0".into(),
                    uncertainty: "20".into(),
                },
            });
        },
        RailRows(2, &[7, 8, 9, 10, 11, 12]),
    ),
    (
        "vague_splice",
        // What rail 1 does not know, rail 2 behind it does not know either.
        |b| {
            b.put(Edit::SetSplice {
                rail: 1,
                splice: Splice::AtSplitter { mark: "0".into(), uncertainty: "11".into() },
            });
        },
        RailRows(1, &[1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]),
    ),
    (
        "rail_unplaced",
        // A letter where the mark of a joint belongs.
        |b| {
            b.put(Edit::SetSplice {
                rail: 2,
                splice: Splice::Joined {
                    mark: "abc".into(),
                    mark_before: "200".into(),
                    gap: "0".into(),
                    uncertainty: "0.1".into(),
                },
            });
        },
        Rows(&[7, 8, 9, 10, 11, 12]),
    ),
    (
        "vague_reading",
        |b| {
            b.put(Edit::SetRail { rail: 2, field: RailField::ReadingUncertainty, text: "1 m".into() });
        },
        RailRows(2, &[7, 8, 9, 10, 11, 12]),
    ),
    ("entry_replaced", |b| b.set_bench(BenchField::EdgeHalfWidth, "-0.03"), Whole),
    ("step_at_splice", |b| (7..=12).for_each(|row| b.late(row, 0.4)), Rail(2)),
    (
        "time_base_off",
        |b| {
            for row in [2, 5, 8, 11] {
                b.set(row, Cell::TimeBase, "2.5");
                let held =
                    b.notebook.state().rows[row as usize - 1].text(Cell::EdgeB).parse::<f64>().unwrap();
                b.set(row, Cell::EdgeB, &text(0.5 + (held - 0.5) * 0.8 + 0.2));
            }
        },
        Rows(&[2, 5, 8, 11]),
    ),
    (
        "curvature",
        |b| {
            (1..=12).for_each(|row| {
                let k = f64::from(row) - 6.5;
                b.late(row, 0.012 * k * k);
            });
        },
        Whole,
    ),
    ("runs", |b| (1..=12).for_each(|row| b.late(row, if row % 2 == 0 { 0.12 } else { -0.12 })), Whole),
    (
        "decisive_row",
        |b| {
            b.strike(4..=11);
            b.late(12, 0.3);
        },
        Rows(&[12]),
    ),
    ("air_left_out", |b| b.set_bench(BenchField::Temperature, "20 ± 80"), Whole),
    ("path_factor", |b| b.put(Edit::SetPath(Path::Mirror)), Whole),
    ("faster_than_light", |b| (1..=12).for_each(|row| b.set(row, Cell::TimeBase, "1.6")), Whole),
    ("scale_off", |b| (1..=12).for_each(|row| b.set(row, Cell::TimeBase, "2.5")), Whole),
    ("short_span", |b| b.set_bench(BenchField::EdgeHalfWidth, "1.2"), Whole),
    ("dominant_component", |b| b.put(Edit::SetShared(clock("5 %"))), Whole),
    ("vague_result", |b| b.put(Edit::SetShared(clock("30 %"))), Whole),
];

#[test]
fn a_sound_notebook_raises_no_notice() {
    assert_eq!(Bench::sound().noticed(), vec![]);
}

#[test]
fn each_planted_fault_is_noticed_with_what_it_names() {
    let words = WordTable::english().unwrap();
    let mut missed = Vec::new();
    for (id, plant, names) in CASES {
        let mut bench = Bench::sound();
        plant(&mut bench);
        let expected = match names {
            Rows(rows) => (id, rows.to_vec(), None),
            Rail(rail) => (id, vec![], Some(rail)),
            RailRows(rail, rows) => (id, rows.to_vec(), Some(rail)),
            Whole => (id, vec![], None),
        };
        let said = analyse(&bench.notebook).notices;
        let wordless =
            said.iter().flat_map(|notice| [&notice.text, &notice.look_at]).find(|m| words.say(m) == m.id);
        assert!(wordless.is_none(), "no words for {wordless:?}");
        let under = said.iter().any(|notice| notice.signs.iter().any(|sign| says(sign, &expected)));
        if !under && !bench.noticed().contains(&expected) {
            missed.push(format!("{expected:?}; there is {:?}", bench.noticed()));
        }
    }
    assert!(missed.is_empty(), "not raised: {missed:#?}");
}

/// Whether a text that stands as a sign under something else is that of a notice, and names the same rows and rail as
/// far as it names any.
fn says(sign: &Message, (id, rows, rail): &Named) -> bool {
    let of = sign.id.strip_prefix("notice-").and_then(|rest| rest.split('-').next());
    let named = ["rows", "row", "pairs"].into_iter().filter_map(|name| sign.values.get(name));
    let named: Vec<RowId> = named.flat_map(numbers).collect();
    // The rails of the bench have no names, and stand in the order of their numbers.
    let on = sign
        .values
        .get("rail")
        .is_none_or(|name| Some(name) == rail.map(|rail| Value::from(rail.to_string())).as_ref());
    of == Some(*id) && (named.is_empty() || named == *rows) && on
}

/// The numbers in a value, which are those of rows: the bench's rows stand in the order of theirs.
fn numbers(value: &Value) -> Vec<RowId> {
    match value {
        Value::Number(row) => vec![*row],
        Value::Text(_) => Vec::new(),
        Value::Message(message) => message.values.values().flat_map(numbers).collect(),
        Value::All { all } => all.iter().flat_map(numbers).collect(),
    }
}

fn is_said(bench: &Bench, id: &str) -> bool {
    let is_sign = |sign: &Message| sign.id.strip_prefix("notice-").is_some_and(|rest| rest.starts_with(id));
    analyse(&bench.notebook).notices.iter().any(|notice| notice.id == id || notice.signs.iter().any(is_sign))
}

/// What lies within the uncertainties that were stated is said of no sound notebook.
#[test]
fn what_is_known_no_better_is_not_noticed() {
    // A reading at the end of its ruler, 0.5 mm uncertain; the delay goes with it.
    for (reading, said) in [("200.10", false), ("200.20", true)] {
        let mut bench = Bench::sound();
        bench.set(6, Cell::Reading, reading);
        bench.late(6, 0.301 * 3.3356);
        assert_eq!(is_said(&bench, "off_the_rail"), said, "{reading} cm");
    }
    // A row that was struck is known to be wrong.
    let mut bench = Bench::sound();
    bench.set(3, Cell::Reading, "230");
    bench.strike([3]);
    assert!(!is_said(&bench, "off_the_rail"));
    // The last edge, at 7.52 divisions, is read within 0.03.
    for (width, said) in [("7.5", false), ("7.48", true)] {
        let mut bench = Bench::sound();
        bench.set_bench(BenchField::ScreenWidth, width);
        assert_eq!(is_said(&bench, "edge_off_screen"), said, "{width} divisions");
    }
    // Neighbours on two rails, of which the second stands 18 cm nearer than it was measured to.
    for (uncertainty, said) in [("9", false), ("0.2", true)] {
        let mut bench = Bench::sound();
        bench.set(6, Cell::Reading, "199.90");
        bench.late(6, 0.299 * 3.3356);
        bench.set(7, Cell::Reading, "0.00");
        bench.late(7, -0.1 * 3.3356);
        (7..=12).for_each(|row| bench.late(row, -0.6));
        bench.put(Edit::SetSplice {
            rail: 2,
            splice: Splice::Joined {
                mark: "0".into(),
                mark_before: "200".into(),
                gap: "0".into(),
                uncertainty: uncertainty.into(),
            },
        });
        assert_eq!(is_said(&bench, "delay_falls"), said, "{uncertainty} cm");
    }
    // Two readings at one place of the ruler, of which the second was taken 30 cm farther on: light takes 1 ns for these, and
    // 1.3 ns for four times what is not known of the way between, where each is read within 12 cm.
    for (uncertainty, said) in [("12", false), ("0.05", true)] {
        let mut bench = Bench::sound();
        bench.set(3, Cell::Reading, "50.00");
        bench.put(Edit::SetRail { rail: 1, field: RailField::ReadingUncertainty, text: uncertainty.into() });
        assert_eq!(is_said(&bench, "disagreeing_places"), said, "{uncertainty} cm");
    }
}

/// The identifiers are what the sources write between quotes in small letters alone.
#[test]
fn every_notice_has_a_planted_fault() {
    let sources =
        [include_str!("readings.rs"), include_str!("delays.rs"), include_str!("results.rs")].concat();
    let is_id = |text: &&str| text.len() > 3 && text.chars().all(|c| c.is_ascii_lowercase() || c == '_');
    let ids: Vec<&str> = sources.split('"').skip(1).step_by(2).filter(is_id).collect();
    assert!(ids.len() >= 24, "{ids:?}");
    let without: Vec<&&str> = ids.iter().filter(|id| CASES.iter().all(|(case, ..)| case != *id)).collect();
    assert!(without.is_empty(), "no fault is planted for {without:?}");
}

/// A mistake that one edit mends, the notice of it, and how near to the c of the sound bench the edit comes.
type MendedCase = (&'static str, fn(&mut Bench), f64);

const MENDED: [MendedCase; 11] = [
    ("row_off", |b| b.late(12, 4.0), 0.005),
    (
        "edges_swapped",
        |b| {
            let held = b.notebook.state().rows[4].clone();
            b.set(5, Cell::EdgeA, held.text(Cell::EdgeB));
            b.set(5, Cell::EdgeB, held.text(Cell::EdgeA));
        },
        1e-9,
    ),
    (
        "rows_exchanged",
        |b| {
            let (two, nine) = (b.notebook.state().rows[1].clone(), b.notebook.state().rows[8].clone());
            b.set(2, Cell::EdgeB, nine.text(Cell::EdgeB));
            b.set(9, Cell::EdgeB, two.text(Cell::EdgeB));
        },
        // The chance deviations of the two stand at each other's places now.
        0.005,
    ),
    ("wrong_sense", |b| b.put(Edit::SetSense { rail: 2, sense: Sense::Falls }), 1e-9),
    (
        "overlap_turned",
        |b| {
            b.put(Edit::SetSplice {
                rail: 2,
                splice: Splice::Joined {
                    mark: "200".into(),
                    mark_before: "0".into(),
                    gap: "0".into(),
                    uncertainty: "0.2".into(),
                },
            });
        },
        1e-9,
    ),
    ("path_factor", |b| b.put(Edit::SetPath(Path::Mirror)), 1e-9),
    ("wrong_rail", |b| b.set(9, Cell::Rail, "1"), 1e-9),
    // Traces are known otherwise than the screen, so that the splice weighs otherwise.
    ("walk", Bench::walks, 1e-3),
    ("ruler_restarts", |b| (7..=12).for_each(|row| b.set(row, Cell::Rail, "1")), 1e-9),
    // A place that is an unknown leaves the line less certain, not wrong: that of a rail, and that of a new one.
    ("step_at_splice", |b| (7..=12).for_each(|row| b.late(row, 0.4)), 0.03),
    ("ruler_restarts", Bench::has_one_rail, 0.03),
];

#[test]
fn what_is_offered_mends_the_mistake_and_can_be_undone() {
    let c = |bench: &Bench| analyse(&bench.notebook).speed.ok().map(|speed| speed.c);
    let sound = c(&Bench::sound()).unwrap();
    let mut told = 0;
    for (id, plant, near) in MENDED {
        let mut bench = Bench::sound();
        plant(&mut bench);
        let before = bench.notebook.state().clone();
        let first = analyse(&bench.notebook).notices.swap_remove(0);
        assert_eq!(first.id, id);
        let repair = first.repair.unwrap();
        let would_be = first.text.values.get("c").cloned();
        assert_eq!(repair.reason.is_some(), id == "row_off");
        bench.put(match repair.edit {
            Edit::StrikeRow { row, .. } => Edit::StrikeRow { row, reason: "as it was noticed".into() },
            edit => edit,
        });
        let mended = c(&bench).unwrap();
        assert!((mended / sound - 1.0).abs() < near, "{id}: {mended} is not {sound}");
        // The diagnosis weighs shared errors as it does those of rows: a few thousandths from the fit.
        if let Some(Value::Text(said)) = would_be {
            let said: f64 = said.parse().unwrap();
            assert!((said * 1e8 / mended - 1.0).abs() < 3e-3, "{id}: c would be {said}, and is {mended}");
            told += 1;
        }
        assert!(bench.noticed().iter().all(|(other, ..)| *other != id), "{id} is still there");
        bench.put(Edit::Undo);
        assert_eq!(bench.notebook.state(), &before);
    }
    assert_eq!(told, 8);
}

/// How rows scatter is judged by what is stated: what takes the place of an entry stands before it, and what is told of the
/// rows stands before both.
#[test]
fn an_entry_replaced_stands_before_a_small_scatter() {
    let mut bench = Bench::sound();
    bench.set_bench(BenchField::EdgeHalfWidth, "0.2");
    assert_eq!(analyse(&bench.notebook).notices[0].id, "scatter_too_small");
    bench.set_bench(BenchField::TimeBaseUncertainty, "-1 %");
    let said: Vec<_> = analyse(&bench.notebook).notices.iter().map(|notice| notice.id).collect();
    assert_eq!(said[0], "entry_replaced");
    assert!(said.contains(&"scatter_too_small"), "{said:?}");
    bench.late(12, 8.0);
    assert_eq!(analyse(&bench.notebook).notices[0].id, "row_off");
}

/// A notebook that had to state walk by hand, before the budget had a line for it, is told of both lines. What moves all delays alike moves the slope by nothing, and without a fixed threshold there is no such line.
#[test]
fn walk_that_is_stated_beside_the_budgets_own_line_is_named() {
    let twice =
        |bench: &Bench| analyse(&bench.notebook).notices.into_iter().find(|notice| notice.id == "walk_twice");
    let offset = |bench: &mut Bench| {
        bench.put(Edit::SetShared(SharedError { effect: Effect::Offset, ..clock("0.5") }));
    };
    let mut bench = Bench::sound();
    bench.put(Edit::SetShared(clock("2 %")));
    assert_eq!(twice(&bench), None);

    bench.walks();
    let notice = twice(&bench).unwrap();
    let names = vec![Value::from("clock")];
    assert_eq!(notice.text, message!("notice-walk_twice", n = 1_usize, names = names));
    let u_with_both = analyse(&bench.notebook).speed.unwrap().u_c();
    // Whether it stands for the walk nobody can tell from the readings: it is said, and nothing is offered.
    assert_eq!((notice.weight, notice.repair), (crate::analysis::notice::Weight::Know, None));
    bench.put(Edit::RemoveShared(900));
    assert_eq!(twice(&bench), None);
    assert!(analyse(&bench.notebook).speed.unwrap().u_c() < u_with_both);
    bench.put(Edit::Undo);
    assert!(twice(&bench).is_some());

    offset(&mut bench);
    assert_eq!(twice(&bench), None);

    // What rows without traces share is no walk; row 12 becomes one of them.
    let of_rows = |bench: &mut Bench, rows: &[RowId]| {
        bench.put(Edit::SetShared(SharedError { rows: Scope::Rows(rows.to_vec()), ..clock("2 %") }));
    };
    bench.put(Edit::SetEvidence { row: 12, evidence: None });
    bench.set(12, Cell::Delay, "20");
    bench.set(12, Cell::DelayUncertainty, "0.04");
    of_rows(&mut bench, &[12]);
    assert_eq!(twice(&bench), None);
    of_rows(&mut bench, &[11, 12]);
    assert!(twice(&bench).is_some());
}
