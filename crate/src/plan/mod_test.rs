use proptest::prelude::*;

use super::next::Why;
use super::*;
use crate::analysis::{C0, Origin, analyse};
use crate::notebook::{BenchField, Cell, Edit, Notebook, PlannedPosition, RulerUnit};
use crate::quantity::DecimalMark::{Comma, Point};
use crate::simulated::{demo, random};

type Outcome = Result<(), Box<dyn std::error::Error>>;

fn position(id: u32, rail: &str, reading: &str, time_base: &str, repeats: &str) -> Edit {
    Edit::SetPosition(PlannedPosition {
        id,
        rail: rail.into(),
        reading: reading.into(),
        time_base: time_base.into(),
        repeats: repeats.into(),
    })
}

/// Lays a rail of two metres behind the others, told in centimetres.
fn rail(notebook: &mut Notebook, id: u32, splice: Splice) -> Outcome {
    notebook.apply(Edit::AddRail(id), "")?;
    for (field, text) in
        [(RailField::From, "0"), (RailField::To, "200"), (RailField::ReadingUncertainty, "0.5 mm")]
    {
        notebook.apply(Edit::SetRail { rail: id, field, text: text.into() }, "")?;
    }
    Ok(notebook.apply(Edit::SetSplice { rail: id, splice }, "")?)
}

fn at_splitter() -> Splice {
    Splice::AtSplitter { mark: "0".into(), uncertainty: "1 mm".into() }
}

fn one_rail() -> Result<Notebook, Box<dyn std::error::Error>> {
    let mut notebook = Notebook::new();
    rail(&mut notebook, 1, at_splitter())?;
    notebook.apply(Edit::SetBench { field: BenchField::EdgeHalfWidth, text: "0.05".into() }, "")?;
    Ok(notebook)
}

fn two_rails() -> Result<Notebook, Box<dyn std::error::Error>> {
    let mut notebook = one_rail()?;
    let splice =
        Splice::AtDistance { mark: "0".into(), distance: "2.1 m".into(), uncertainty: "5 mm".into() };
    rail(&mut notebook, 2, splice)?;
    Ok(notebook)
}

fn seen(notebook: &Notebook) -> Result<Plan, &'static str> {
    plan(notebook.state(), &analyse(notebook)).map_err(|refusal| refusal.id)
}

fn expected_of(notebook: &Notebook) -> Result<f64, &'static str> {
    forecast(notebook.state()).map(|found| found.relative).map_err(|refusal| refusal.id)
}

/// u(b) = σ/√Σ(d_i − d̄)² with σ² = u_t² + b²u_d² (ISO/TS 28037:2010, clause 7.2, for like rows; the edges are each
/// rectangular within ±a, JCGM 100:2008, 4.3.7). The place of the only rail moves t₀ alone.
#[test]
fn independent_readings_give_the_closed_form() -> Outcome {
    let mut notebook = one_rail()?;
    let places: [(f64, u32); 5] = [(0.2, 1), (0.5, 2), (1.0, 1), (1.5, 3), (1.9, 1)];
    for (id, (d, repeats)) in (1..).zip(places) {
        notebook.apply(position(id, "", &format!("{d} m"), "2", &repeats.to_string()), "")?;
    }
    let found = forecast(notebook.state()).map_err(|refusal| refusal.id)?;
    let context = PlanContext::of(notebook.state()).map_err(|refusal| refusal.id)?;
    let slope = context.group_index / C0 * 1e9;
    let (u_t, u_d): (f64, f64) = (0.05 * (2.0_f64 / 3.0).sqrt() * 2.0, 0.0005);
    let sigma = (u_t * u_t + slope * slope * u_d * u_d).sqrt();
    let all: Vec<f64> = places.iter().flat_map(|(d, n)| std::iter::repeat_n(*d, *n as usize)).collect();
    let mean = all.iter().sum::<f64>() / all.len() as f64;
    let squares: f64 = all.iter().map(|d| (d - mean) * (d - mean)).sum();
    let closed = sigma / squares.sqrt() / slope;
    // Rounding of some ten terms; edges are written to all their digits.
    assert!((found.relative / closed - 1.0).abs() < 1e-9, "{} against {closed}", found.relative);
    assert_eq!(found.rows, all.len());
    assert!(found.shared < 1e-9 * found.relative);
    assert_eq!(found.largest.map(|largest| largest.0), Some(Origin::ScreenLimit));
    Ok(())
}

/// The plan says of the demo's own positions what its readings then gave.
#[test]
fn the_demo_achieves_what_its_positions_promise() -> Outcome {
    let (mut notebook, _) = demo::typed_readings()?;
    let rows: Vec<Row> = notebook.state().rows.iter().filter(|row| row.struck.is_none()).cloned().collect();
    for row in &rows {
        let text = |cell| row.text(cell).to_owned();
        let planned = PlannedPosition {
            id: row.id,
            rail: text(Cell::Rail),
            reading: text(Cell::Reading),
            time_base: text(Cell::TimeBase),
            repeats: String::new(),
        };
        notebook.apply(Edit::SetPosition(planned), "")?;
    }
    let achieved = analyse(&notebook).speed.map_err(|refusal| refusal.id)?.relative_v;
    let predicted = expected_of(&notebook)?;
    // Real readings scatter about the line, so that slope and weights differ by some tenths of a per cent.
    assert!((predicted / achieved - 1.0).abs() < 0.01, "{predicted} against {achieved}");
    Ok(())
}

/// No repeat gets below the floor, one more is of use, and the floor is that of the splice alone.
#[test]
fn repeats_help_down_to_the_floor() -> Outcome {
    let mut notebook = two_rails()?;
    for (id, (rail, reading)) in
        (1..).zip([("1", "20"), ("1", "100"), ("1", "190"), ("2", "10"), ("2", "100"), ("2", "190")])
    {
        notebook.apply(position(id, rail, reading, "2", ""), "")?;
    }
    let found = seen(&notebook)?;
    let now = found.predicted.map_err(|refusal| refusal.id)?;
    let (again, floor) = (found.what_if.again.ok_or("no repeat")?, found.what_if.floor.ok_or("no floor")?);
    assert!(floor < again && again < now.relative, "{floor}, {again}, {}", now.relative);
    // Each row read twice is the same plan with repeats.
    let mut twice = notebook.clone();
    for position in notebook.state().plan.clone() {
        twice.apply(Edit::SetPosition(PlannedPosition { repeats: "2".into(), ..position }), "")?;
    }
    assert!((expected_of(&twice)? / again - 1.0).abs() < 1e-9);
    assert!(found.what_if.rail.ok_or("no rail")? < now.relative);
    let faster = found.what_if.faster.ok_or("no faster time base")?;
    assert!(faster.relative <= now.relative && faster.rows <= 6);
    Ok(())
}

/// The reading proposed is the best of those looked at, and does what is said of it.
#[test]
fn the_next_reading_does_what_is_said() -> Outcome {
    let mut notebook = two_rails()?;
    let all = [("1", "20"), ("1", "100"), ("1", "190"), ("2", "10"), ("2", "190")];
    for (id, (rail, reading)) in (1..).zip(all) {
        notebook.apply(position(id, rail, reading, "2", ""), "")?;
    }
    let found = seen(&notebook)?;
    let [best, honest] = found.next.as_slice() else { return Err("not two readings".into()) };
    let (before, after) = best.effect.ok_or("no effect")?;
    assert!((before / expected_of(&notebook)? - 1.0).abs() < 1e-9);
    assert!(matches!(best.why, Why::Lever(_)) && best.stop.reading == "200", "{best:?}");
    assert!(honest.why == Why::Side(2) && honest.stop.rail == 1, "{honest:?}");
    let rails = ["1", "2"];
    for next in [best, honest] {
        let mut with_it = notebook.clone();
        let rail = rails.get(next.stop.rail).ok_or("no such rail")?;
        with_it.apply(position(9, rail, &next.stop.reading, &next.stop.time_base, ""), "")?;
        let said = next.effect.ok_or("no effect")?.1;
        assert!((expected_of(&with_it)? / said - 1.0).abs() < 1e-9);
        assert!(said >= after);
    }
    Ok(())
}

/// A row whose place is written counts as one to be read: the same place is not proposed again and again.
#[test]
fn a_row_begun_counts() -> Outcome {
    let mut notebook = two_rails()?;
    let mut places = Vec::new();
    for row in 1..=8 {
        let stop = seen(&notebook)?.next.first().ok_or("no reading")?.stop.clone();
        let name = (stop.rail + 1).to_string();
        let cells =
            [(Cell::Rail, name), (Cell::Reading, stop.reading.clone()), (Cell::TimeBase, stop.time_base)];
        notebook.apply(Edit::AddRow { row, after: None, cells: cells.into_iter().collect() }, "")?;
        places.push(stop.distance);
    }
    // Readings at both ends make the best lever.
    assert!(places.iter().any(|d| *d < 0.2) && places.iter().any(|d| *d > 4.0), "{places:?}");
    assert_eq!(seen(&notebook)?.rows_read, 0);
    Ok(())
}

#[test]
fn what_is_unwise_is_said() -> Outcome {
    let mut notebook = two_rails()?;
    notebook.apply(Edit::SetBench { field: BenchField::PulseRate, text: "80 MHz".into() }, "")?;
    let all = [("1", "20", "2"), ("1", "100", "2"), ("1", "250", "0.5"), ("2", "190", "2")];
    for (id, (rail, reading, time)) in (1..).zip(all) {
        notebook.apply(position(id, rail, reading, time, ""), "")?;
    }
    let found = seen(&notebook)?;
    // 80 MHz: 12.5 ns, 3.75 m of air; rail 2 at 190 cm stands 4 m away. 250 cm is beyond the mark 200, and its
    // 8.3 ns find no room on ten divisions of 0.5 ns.
    let expected = [
        Warning::OffRail(vec![3]),
        Warning::BeyondReach(vec![4]),
        Warning::OffScreen(vec![3]),
        Warning::Side(1, 1),
        Warning::Few(4),
    ];
    assert_eq!(found.warnings, expected);
    let farthest = found.farthest.ok_or("no reach")?;
    assert!((farthest.period - 12.5).abs() < 1e-12, "{farthest:?}");
    assert!((farthest.distance - 3.746).abs() < 0.001, "{farthest:?}");
    let near = found.next.first().ok_or("no reading")?.stop.distance;
    assert!(near < farthest.distance);
    Ok(())
}

#[test]
fn close_positions_are_a_cluster() -> Outcome {
    let mut notebook = two_rails()?;
    for (id, reading) in (1..).zip(["10", "20", "30", "40", "50"]) {
        notebook.apply(position(id, "1", reading, "2", ""), "")?;
    }
    assert!(matches!(seen(&notebook)?.warnings.as_slice(), [Warning::Cluster(..)]));
    Ok(())
}

/// At the ends rows of like uncertainty that share nothing tell most: Σ(d − d̄)² is largest there.
#[test]
fn proposals_are_spread_or_at_the_ends() -> Outcome {
    for (notebook, rails) in [(one_rail()?, 1), (two_rails()?, 2)] {
        let found = seen(&notebook)?;
        let (spread, ends) = (found.spread.ok_or("no spread")?, found.ends.ok_or("no ends")?);
        assert_eq!(spread.stops.len(), ends.stops.len());
        for rail in 0..rails {
            assert!(spread.stops.iter().filter(|stop| stop.rail == rail).count() >= SIDE);
        }
        let context = PlanContext::of(notebook.state()).map_err(|refusal| refusal.id)?;
        let at_one_setting = |stops: &[PlannedStop]| {
            let stops: Vec<PlannedStop> =
                stops.iter().map(|stop| PlannedStop { time_base: "2".into(), ..stop.clone() }).collect();
            ask_stops(&context, &stops).map(|asked| asked.prediction.readings)
        };
        let (apart, even) = (at_one_setting(&ends.stops), at_one_setting(&spread.stops));
        let (apart, even) = apart.ok().zip(even.ok()).ok_or("no line")?;
        assert!(rails > 1 || apart < even, "{apart}, {even}");
    }
    Ok(())
}

#[test]
fn without_a_bench_it_is_said_what_to_do() -> Outcome {
    let refused =
        |notebook: &Notebook| plan(notebook.state(), &analyse(notebook)).err().map(|refusal| refusal.id);
    assert_eq!(refused(&Notebook::new()), Some("no_rails"));
    let mut notebook = Notebook::new();
    notebook.apply(Edit::AddRail(1), "")?;
    assert_eq!(refused(&notebook), Some("no_place"));
    let found = seen(&one_rail()?)?;
    assert_eq!(found.predicted.err().map(|refusal| refusal.id), Some("too_few_rows"));
    let first = found.next.first().ok_or("no reading")?;
    assert_eq!((first.why, first.effect), (Why::First, None));
    Ok(())
}

#[test]
fn mistakes_are_told_at_their_place() -> Outcome {
    let mut notebook = one_rail()?;
    notebook.apply(position(1, "9", "x", "0", "0.5"), "")?;
    notebook.apply(position(2, "", "20", "fast", ""), "")?;
    let found = seen(&notebook)?.positions;
    let cells = |place: usize| -> Vec<Cell> {
        found
            .get(place)
            .map_or_else(Vec::new, |position| position.problems.iter().map(|(cell, _)| *cell).collect())
    };
    assert_eq!(cells(0), [Cell::Rail, Cell::Reading, Cell::Remark]);
    assert_eq!(cells(1), [Cell::TimeBase]);
    Ok(())
}

/// Handles move by round readings, outwards whatever the sense of the ruler, and stay on their rail.
#[test]
fn handles_move_by_round_readings() -> Outcome {
    let mut notebook = one_rail()?;
    notebook.apply(Edit::SetSense { rail: 1, sense: crate::notebook::Sense::Falls }, "")?;
    let splice = Splice::AtSplitter { mark: "200".into(), uncertainty: String::new() };
    notebook.apply(Edit::SetSplice { rail: 1, splice }, "")?;
    notebook.apply(position(1, "", "100.3", "", ""), "")?;
    let reading = |to| moved(notebook.state(), 1, to).map(|stop| stop.reading);
    assert_eq!(reading(To::Steps(1.0)).as_deref(), Some("99"));
    assert_eq!(reading(To::Steps(-1.0)).as_deref(), Some("101"));
    assert_eq!(reading(To::Share(0.25)).as_deref(), Some("150"));
    assert_eq!(reading(To::Share(2.0)).as_deref(), Some("0"));
    assert_eq!(reading(To::Share(f64::NAN)), None);
    assert_eq!(moved(notebook.state(), 2, To::Share(0.5)), None);
    Ok(())
}

/// Decimal commas go through the plan as points do.
#[test]
fn commas_change_nothing() -> Outcome {
    let with = |mark, half: &str| -> Result<f64, Box<dyn std::error::Error>> {
        let mut notebook = one_rail()?;
        notebook.apply(Edit::SetDecimalMark(mark), "")?;
        let unread = Edit::SetRail { rail: 1, field: RailField::ReadingUncertainty, text: String::new() };
        notebook.apply(unread, "")?;
        notebook.apply(Edit::SetBench { field: BenchField::EdgeHalfWidth, text: half.into() }, "")?;
        for (id, reading) in (1..).zip(["10", "90", "185"]) {
            notebook.apply(position(id, "", reading, "", ""), "")?;
        }
        Ok(expected_of(&notebook)?)
    };
    assert_eq!(with(Comma, "0,05")?, with(Point, "0.05")?);
    Ok(())
}

/// An inch ruler is laid and planned on like any other.
#[test]
fn inches_are_planned_on() -> Outcome {
    let mut notebook = one_rail()?;
    notebook.apply(Edit::SetRulerUnit { rail: 1, unit: RulerUnit::Inch }, "")?;
    let found = seen(&notebook)?;
    assert!(
        found
            .spread
            .is_some_and(|spread| spread.stops.iter().all(|stop| stop.distance < 200.0 * 0.0254 + 1e-9))
    );
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    /// A reading more never makes the speed less certain (Gauss–Markov: an estimator may leave a row out), on benches
    /// of every joint, unit and sense; and no panic on the way.
    #[test]
    fn a_reading_more_never_hurts(seed in 0_u64..10_000) {
        let mut notebook = random::bench(seed).run(seed).map_err(|e| TestCaseError::fail(e.to_string()))?.0;
        let rows = notebook.state().rows.clone();
        let mut before = f64::INFINITY;
        for row in rows {
            let text = |cell| row.text(cell).to_owned();
            let planned = PlannedPosition {
                id: row.id,
                rail: text(Cell::Rail),
                reading: text(Cell::Reading),
                time_base: text(Cell::TimeBase),
                repeats: String::new(),
            };
            notebook.apply(Edit::SetPosition(planned), "").map_err(|e| TestCaseError::fail(e.to_string()))?;
            if let Ok(found) = forecast(notebook.state()) {
                prop_assert!(found.relative <= before * (1.0 + 1e-9), "{} after {before}", found.relative);
                before = found.relative;
            }
        }
        prop_assert!(before.is_finite());
        let found = seen(&notebook).map_err(TestCaseError::fail)?;
        for (was, becomes) in found.next.into_iter().filter_map(|next| next.effect) {
            prop_assert!(becomes <= was * (1.0 + 1e-9), "{becomes} after {was}");
        }
    }
}
