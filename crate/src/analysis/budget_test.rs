use super::*;
use crate::analysis::{Speed, analyse, analyse_page};
use crate::budget::BudgetError;
use crate::distribution::student_t_quantile;
use crate::notebook::{
    ActsOn, Beam, BenchField, Cell, Claim, Edit, Effect, Notebook, RailField, Scope, SharedError, Splice,
    UncertaintyKind, UncertaintyOf,
};
use crate::simulated::demo;

type Outcome = Result<(), Box<dyn std::error::Error>>;

fn speed(notebook: &Notebook) -> Result<Speed, &'static str> {
    analyse(notebook).speed.map(|speed| (*speed).clone()).map_err(|refusal| refusal.id)
}

fn demo() -> Result<Notebook, Box<dyn std::error::Error>> {
    Ok(demo::typed_readings()?.0)
}

fn bench(field: BenchField, text: &str) -> Edit {
    Edit::SetBench { field, text: text.into() }
}

fn share(speed: &Speed, origin: &Origin) -> Option<f64> {
    speed.budget.components.iter().find(|part| part.origin == *origin).map(|part| part.share)
}

#[test]
fn shares_of_the_demo_add_up() -> Outcome {
    let notebook = demo()?;
    let speed = speed(&notebook)?;
    let sum: f64 = speed.budget.components.iter().map(|part| part.share).sum();
    assert!((sum - 1.0).abs() < 1e-12);
    let rails: Vec<u32> = notebook.state().rails.iter().map(|rail| rail.id).collect();
    assert!(share(&speed, &Origin::Splice { rail: rails[2] }) > Some(0.1));
    assert!(share(&speed, &Origin::ScreenLimit) > Some(0.1));
    assert_eq!(share(&speed, &Origin::ChannelSkew), Some(0.0));
    Ok(())
}

/// 10⁹/10⁻³⁰⁰ is beyond all doubles.
#[test]
fn a_speed_too_large_to_calculate_with_is_refused() -> Outcome {
    let mut notebook = Notebook::new();
    for (row, (distance, delay)) in
        (1..).zip([("0", "1e-300"), ("1", "2e-300"), ("2", "3e-300"), ("3", "4e-300")])
    {
        let cells = [
            (Cell::Distance, distance),
            (Cell::DistanceUncertainty, "0.001"),
            (Cell::Delay, delay),
            (Cell::DelayUncertainty, "1e-301"),
        ];
        let cells = cells.into_iter().map(|(cell, text)| (cell, text.to_owned())).collect();
        notebook.apply(Edit::AddRow { row, after: None, cells }, "")?;
    }
    assert_eq!(speed(&notebook).err(), Some("out_of_range"));
    Ok(())
}

/// What shifts all delays alike is in the table with nothing, whatever its size (JCGM 100:2008, 5.1.3: its
/// sensitivity is zero, since a slope does not hang on where delays are counted from).
#[test]
fn an_offset_of_all_delays_contributes_nothing() -> Outcome {
    let mut notebook = demo()?;
    let before = speed(&notebook)?;
    notebook.apply(
        Edit::SetShared(SharedError {
            id: 900,
            name: "cable".into(),
            acts_on: ActsOn::Delays,
            effect: Effect::Offset,
            rows: Scope::All,
            uncertainty: "5".into(),
            shape: ErrorShape::Rectangular,
            degrees_of_freedom: String::new(),
        }),
        "",
    )?;
    let after = speed(&notebook)?;
    assert!((after.relative / before.relative - 1.0).abs() < 1e-9);
    let cable = after.budget.components.iter().find(|part| part.origin == Origin::Stated { shared: 900 });
    assert_eq!(cable.map(|part| (part.relative, part.entry)), Some((0.0, HowEntered::ShiftsOnly)));
    Ok(())
}

/// A scale error of all delays moves v by the same fraction (JCGM 100:2008, 5.1.6).
#[test]
fn a_scale_error_contributes_its_own_size() -> Outcome {
    let mut notebook = demo()?;
    notebook.apply(
        Edit::SetShared(SharedError {
            id: 900,
            name: "clock".into(),
            acts_on: ActsOn::Delays,
            effect: Effect::Scale,
            rows: Scope::All,
            uncertainty: "2 %".into(),
            shape: ErrorShape::Rectangular,
            degrees_of_freedom: "7".into(),
        }),
        "",
    )?;
    let speed = speed(&notebook)?;
    let clock = speed.budget.components.iter().find(|part| part.origin == Origin::Stated { shared: 900 });
    let clock = clock.ok_or("not in the budget")?;
    // The fit's scale acts on readings, not on the line: they differ by the residuals and by t₀ against its mean.
    assert!((clock.relative / 0.02 - 1.0).abs() < 0.02, "{}", clock.relative);
    assert!(clock.share > 0.8);
    let nu = speed.budget.degrees_of_freedom.ok_or("many degrees of freedom")?;
    assert!((nu - 7.0 / (clock.share * clock.share)).abs() < 0.02 * nu, "{nu}");
    assert!(analyse(&notebook).notices.iter().any(|notice| notice.id == "dominant_component"));
    Ok(())
}

#[test]
fn what_if_is_the_same_as_typing_it() -> Outcome {
    let mut notebook = demo()?;
    let rail = notebook.state().rails.get(1).ok_or("no second rail")?.clone();
    let origin = Origin::Splice { rail: rail.id };
    let what_if = |factor| {
        let what_if = WhatIf { origin: origin.id(), factor };
        analyse_page(notebook.state(), Some(&what_if))
            .speed
            .map(|speed| (*speed).clone())
            .map_err(|refusal| refusal.id)
    };
    let (same, without, double) = (what_if(1.0)?, what_if(0.0)?, what_if(2.0)?);
    assert_eq!(same, speed(&notebook)?);
    assert!(without.relative < same.relative && same.relative < double.relative);
    let splice = match rail.splice {
        Splice::AtDistance { mark, distance, .. } => {
            Splice::AtDistance { mark, distance, uncertainty: "0".into() }
        }
        Splice::Joined { mark, mark_before, gap, .. } => {
            Splice::Joined { mark, mark_before, gap, uncertainty: "0".into() }
        }
        other => return Err(format!("the demo’s second rail is joined otherwise: {other:?}").into()),
    };
    notebook.apply(Edit::SetSplice { rail: rail.id, splice }, "")?;
    assert!((speed(&notebook)?.relative / without.relative - 1.0).abs() < 1e-12);
    Ok(())
}

fn claimed_by_scatter() -> Edit {
    Edit::SetClaim(Claim { basis: Basis::Scatter, reason: "to see".into() })
}

/// What entered the budget so, together.
fn together(speed: &Speed, entry: HowEntered) -> f64 {
    let parts = speed.budget.components.iter().filter(|part| part.entry == entry);
    parts.map(|part| part.relative * part.relative).sum::<f64>().sqrt()
}

#[test]
fn the_scatter_leaves_what_rows_share() -> Outcome {
    let mut notebook = demo()?;
    let stated = speed(&notebook)?;
    notebook.apply(claimed_by_scatter(), "")?;
    let shared = together(&stated, HowEntered::Shared);
    assert!(shared > 0.0 && (together(&speed(&notebook)?, HowEntered::Shared) - shared).abs() < 1e-15);
    Ok(())
}

/// Six rows in turn so far above and below a line; distances known to ±2 cm, delays with u = 0.05 ns. All weights are
/// alike, so that by hand u²(b) is in proportion to b²·(2 cm)²/3 + (0.05 ns)², and a scatter r times what is stated has
/// r² times that where r is above 1. A smaller one takes the place of the delays' part alone: whoever reads ±2 cm knows a
/// place no better for having read it the same way each time (JCGM 100:2008, F.2.2.1).
#[test]
fn the_scatter_takes_the_place_of_what_rows_state_but_of_no_limit_where_it_is_small() -> Outcome {
    for (off, is_small) in [(0.02, true), (0.2, false)] {
        let mut notebook = Notebook::new();
        for row in 1..=6_u32 {
            let sign = if row % 2 == 0 { off } else { -off };
            let cells = [
                (Cell::Distance, row.to_string()),
                (Cell::DistanceUncertainty, "±0.02".to_owned()),
                (Cell::Delay, format!("{:.3}", 3.336 * f64::from(row) + sign)),
                (Cell::DelayUncertainty, "0.05".to_owned()),
            ];
            notebook.apply(Edit::AddRow { row, after: None, cells: cells.into_iter().collect() }, "")?;
        }
        let stated = speed(&notebook)?;
        notebook.apply(claimed_by_scatter(), "")?;
        let claimed = speed(&notebook)?;
        let line = analyse(&notebook).line.map_err(|refusal| refusal.id)?;
        let (r, b) = (line.birge_ratio.ok_or("no Birge ratio")?, line.fit.slope);
        assert_eq!(r < 1.0, is_small, "{r}");
        let (limit, delays) = (b * b * 0.02 * 0.02 / 3.0, 0.05 * 0.05);
        let left = if is_small { limit + r * r * delays } else { r * r * (limit + delays) };
        let found = together(&claimed, HowEntered::Rows) / together(&stated, HowEntered::Rows);
        assert!((found * found * (limit + delays) / left - 1.0).abs() < 1e-12, "{found}");
        let distances = |speed: &Speed| {
            let parts = &speed.budget.components;
            parts.iter().find(|part| part.origin == Origin::Distances).map(|part| part.relative)
        };
        assert_eq!(distances(&claimed), distances(&stated).filter(|_| is_small));
    }
    Ok(())
}

/// What ruler and screen are read to stays as a whole, whether it was written as a limit or as a standard uncertainty.
#[test]
fn readings_without_scatter_are_known_no_better() -> Outcome {
    let mut notebook = Notebook::new();
    let rail = |field, text: &str| Edit::SetRail { rail: 1, field, text: text.into() };
    let splice = Splice::AtSplitter { mark: "0".into(), uncertainty: "0".into() };
    let bench = [
        Edit::AddRail(1),
        rail(RailField::From, "0"),
        rail(RailField::To, "200"),
        rail(RailField::ReadingUncertainty, "0.3"),
        Edit::SetSplice { rail: 1, splice },
        bench(BenchField::EdgeHalfWidth, "0.1"),
        claimed_by_scatter(),
    ];
    for edit in bench {
        notebook.apply(edit, "")?;
    }
    for row in 1..=6_u32 {
        let reading = f64::from(30 * row);
        let cells = [
            (Cell::Rail, "1".to_owned()),
            (Cell::Reading, reading.to_string()),
            (Cell::TimeBase, "1".to_owned()),
            (Cell::EdgeA, "1".to_owned()),
            (Cell::EdgeB, format!("{:.4}", 2.0 + 0.03336 * reading)),
        ];
        notebook.apply(Edit::AddRow { row, after: None, cells: cells.into_iter().collect() }, "")?;
    }
    for kind in [UncertaintyKind::Limit, UncertaintyKind::Standard] {
        for of in [UncertaintyOf::Edge, UncertaintyOf::RulerReading(1)] {
            notebook.apply(Edit::SetKind { of, kind }, "")?;
        }
        let speed = speed(&notebook)?;
        assert_eq!((speed.basis, Some(speed.relative)), (Basis::Scatter, speed.relative_stated), "{kind:?}");
        assert_eq!(share(&speed, &Origin::Scatter), None, "{kind:?}");
        assert!(share(&speed, &Origin::ScreenLimit) > Some(0.1), "{kind:?}");
    }
    Ok(())
}

/// With nothing shared and nothing beside it but the air, k is that of Student's t with the degrees of freedom of
/// the fit (JCGM 100:2008, H.3.4).
#[test]
fn unstated_rows_have_the_degrees_of_freedom_of_the_fit() -> Outcome {
    let mut notebook = Notebook::new();
    for (row, (distance, delay)) in
        [("1", "4.0"), ("2", "7.4"), ("3", "10.6"), ("4", "14.1")].iter().enumerate()
    {
        let cells = [(Cell::Distance, *distance), (Cell::Delay, *delay)];
        let cells = cells.map(|(cell, text)| (cell, text.to_owned())).into_iter().collect();
        notebook.apply(Edit::AddRow { row: u32::try_from(row)? + 1, after: None, cells }, "")?;
    }
    let speed = speed(&notebook)?;
    let nu = speed.budget.degrees_of_freedom.ok_or("many")?;
    assert!((nu - 2.0).abs() < 1e-4, "{nu}");
    let k = speed.budget.coverage_factor.clone()?;
    assert!((k / student_t_quantile(0.975, 2.0) - 1.0).abs() < 1e-4);
    Ok(())
}

/// θ up to 20 mrad: the light goes 0 to 2·10⁻⁴ less than is read, or more where the detector follows a thin beam, so v is
/// corrected by 1·10⁻⁴ with u = 1·10⁻⁴/√3.
#[test]
fn the_beams_angle_corrects_half_its_bound() -> Outcome {
    let mut notebook = demo()?;
    let straight = speed(&notebook)?;
    notebook.apply(bench(BenchField::BeamAngle, "20"), "")?;
    let oblique = speed(&notebook)?;
    assert!((oblique.v / straight.v - (1.0 - 1e-4)).abs() < 1e-15);
    notebook.apply(Edit::SetBeam(Beam::Followed), "")?;
    assert!((speed(&notebook)?.v / straight.v - (1.0 + 1e-4)).abs() < 1e-15);
    let part = oblique.budget.components.iter().find(|part| part.origin == Origin::BeamAngle);
    let expected = 1e-4 / 3.0_f64.sqrt() / (1.0 - 1e-4);
    assert!(part.is_some_and(|part| (part.relative / expected - 1.0).abs() < 1e-12));
    Ok(())
}

#[test]
fn coverage_and_angle_are_read_or_told_at_their_place() -> Outcome {
    let mut notebook = demo()?;
    notebook.apply(bench(BenchField::Coverage, "99.73 %"), "")?;
    let wide = speed(&notebook)?;
    // Table G.2 of JCGM 100:2008: 3.000 for the normal distribution; ν is finite here but large.
    assert!(wide.budget.coverage_factor.clone()? >= 2.999);
    for (field, text) in [
        (BenchField::Coverage, "120"),
        (BenchField::Coverage, "0"),
        (BenchField::Coverage, "0.95"),
        (BenchField::TimeBaseUncertainty, "60"),
        (BenchField::BeamAngle, "-1"),
        (BenchField::BeamAngle, "900"),
    ] {
        notebook.apply(bench(field, text), "")?;
        let problems = analyse(&notebook).problems;
        assert!(
            problems.iter().any(|p| p.place == crate::analysis::Place::Bench { field }),
            "{field:?} {text}"
        );
    }
    Ok(())
}

/// Fewer than one effective degree of freedom is told in words, and the rest of the result stays.
#[test]
fn too_few_degrees_of_freedom_give_no_expanded_uncertainty() -> Outcome {
    let mut notebook = demo()?;
    notebook.apply(
        Edit::SetShared(SharedError {
            id: 900,
            name: "guess".into(),
            acts_on: ActsOn::Delays,
            effect: Effect::Scale,
            rows: Scope::All,
            uncertainty: "10 %".into(),
            shape: ErrorShape::Normal,
            degrees_of_freedom: "0.5".into(),
        }),
        "",
    )?;
    let speed = speed(&notebook)?;
    assert!(speed.expanded().is_none() && speed.u_c() > 0.0);
    let factor = speed.budget.coverage_factor;
    assert!(matches!(factor, Err(BudgetError::DegreesOfFreedom { got }) if got < 1.0), "{factor:?}");
    Ok(())
}

/// Results are compared at 95 %, whatever coverage the result is given with: E_n has U with k = 2 or so, and k of the normal
/// distribution at 95 % is 1.959964 (ISO 13528:2015, 9.7, from memory; NIST/SEMATECH e-Handbook, 1.3.6.7.1).
#[test]
fn another_coverage_leaves_the_comparison() -> Outcome {
    let mut notebook = demo()?;
    let usual = speed(&notebook)?;
    notebook.apply(bench(BenchField::Coverage, "99 %"), "")?;
    let wide = speed(&notebook)?;
    assert!(wide.expanded() > usual.expanded());
    let comparison = usual.comparison.ok_or("the demo is not sealed")?;
    assert_eq!(Some(comparison), wide.comparison);
    let k = comparison.e_n.map(|e_n| comparison.z / e_n).ok_or("no E_n")?;
    // The demo's degrees of freedom are ∞; the table has seven digits.
    assert!((k - 1.959_964).abs() < 1e-6, "{k}");
    Ok(())
}

/// At an end of the equations' range the index still has an uncertainty (P. E. Ciddor, Appl. Opt. 35 (1996) 1566).
#[test]
fn air_at_the_end_of_its_range_keeps_its_uncertainty() -> Outcome {
    let mut notebook = demo()?;
    for (field, text) in [
        (BenchField::Humidity, "100"),
        (BenchField::Humidity, "0"),
        (BenchField::Wavelength, "1690"),
        (BenchField::Wavelength, "300"),
        (BenchField::Pressure, "1400"),
        (BenchField::CarbonDioxide, "0"),
    ] {
        notebook.apply(bench(field, text), "")?;
        let u = analyse(&notebook).air.u_group_index.ok_or(format!("{field:?} {text}"))?;
        assert!(u > 1e-8 && u < 1e-5, "{field:?} {text}: {u}");
    }
    Ok(())
}

#[test]
fn rows_exactly_on_a_line_have_no_scatter_to_claim() -> Outcome {
    let mut notebook = Notebook::new();
    for row in 1..=5_u32 {
        let cells = [
            (Cell::Distance, f64::from(row).to_string()),
            (Cell::Delay, format!("{:.1}", 3.3 * f64::from(row))),
        ];
        notebook.apply(Edit::AddRow { row, after: None, cells: cells.into_iter().collect() }, "")?;
    }
    assert_eq!(analyse(&notebook).speed.err().map(|refusal| refusal.id), Some("no_scatter"));
    Ok(())
}
