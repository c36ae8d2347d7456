use slope_bench::rails::Stop;

use super::*;
use crate::analysis::{LineAnalysis, analyse, prepare};
use crate::line::{Data, fit};
use crate::notebook::{Edit, Notebook};
use crate::simulated::{demo, random};

type Outcome = Result<(), Box<dyn std::error::Error>>;

fn line(notebook: &Notebook) -> Result<LineAnalysis, &'static str> {
    analyse(notebook).line.map(|line| (*line).clone()).map_err(|refusal| refusal.id)
}

fn squares(line: &LineAnalysis) -> f64 {
    line.parts.iter().map(|part| part.slope * part.slope).sum()
}

fn noise(id: u32, acts_on: ActsOn, uncertainty: &str) -> Edit {
    Edit::SetShared(SharedError {
        id,
        name: "jitter".into(),
        acts_on,
        effect: Effect::Noise,
        rows: Scope::All,
        uncertainty: uncertainty.into(),
        shape: ErrorShape::Normal,
        degrees_of_freedom: String::new(),
    })
}

/// Nothing is counted twice and nothing left out: the parts are the variance that the fit itself states.
#[test]
fn parts_add_up_to_the_variance_of_the_slope() -> Outcome {
    let mut notebooks = vec![demo::typed_readings()?.0];
    for seed in 0..40 {
        notebooks.push(random::bench(seed).run(seed)?.0);
    }
    for (place, notebook) in notebooks.iter_mut().enumerate() {
        notebook.apply(noise(900, ActsOn::Delays, "0.05"), "")?;
        let line = line(notebook)?;
        let u = line.fit.uncertainty.ok_or("no uncertainty")?.slope;
        // Rounding in sums of some twenty terms.
        assert!(
            (squares(&line) / (u * u) - 1.0).abs() < 1e-9,
            "notebook {place}: {} against {}",
            squares(&line),
            u * u
        );
        assert!(
            line.parts.iter().any(|part| part.origin == Origin::Stated { shared: 900 } && part.slope > 0.0)
        );
    }
    Ok(())
}

/// Sensitivities in closed form against differences of the whole fit (JCGM 100:2008, 5.1.3, note 2), on readings
/// that lie on their line: there the weights' own dependence on the slope drops out.
#[test]
fn closed_forms_agree_with_differencing() -> Outcome {
    let notebook = demo::typed_readings()?.0;
    let setup = prepare(notebook.state(), None).setup.map_err(|refusal| refusal.id)?;
    let straight = fit(&setup.data)?;
    let y = setup.data.x.iter().map(|x| straight.intercept + straight.slope * x).collect();
    let data = Data { y, ..setup.data.clone() };
    let nominal = fit(&data)?;
    let moved = |column: &SharedColumn, by: f64| -> Result<f64, Box<dyn std::error::Error>> {
        let add = |list: &[f64], column: &[f64]| -> Vec<f64> {
            let at = |i: usize| column.get(i).copied().unwrap_or(0.0);
            list.iter().enumerate().map(|(i, value)| value + by * at(i)).collect()
        };
        Ok(fit(&Data { x: add(&data.x, &column.x), y: add(&data.y, &column.y), ..data.clone() })?.slope)
    };
    // Differences over 2·10⁻³ standard deviations: third-order terms below 10⁻⁶ of the derivative.
    let step = 1e-3;
    let derivative = |column: &SharedColumn| -> Result<f64, Box<dyn std::error::Error>> {
        Ok((moved(column, step)? - moved(column, -step)?) / (2.0 * step))
    };
    let largest = nominal.uncertainty.ok_or("no uncertainty")?.slope;
    for (shared, estimate) in setup.shared.iter().zip(&nominal.shared) {
        let found = derivative(&shared.column)?.abs();
        let closed = estimate.covariance_with_slope.ok_or("no covariance")?.abs();
        assert!((found - closed).abs() < 1e-5 * largest, "{:?}: {found} against {closed}", shared.origin);
    }
    for (row, fitted) in nominal.rows.iter().enumerate() {
        let unit: Vec<f64> = (0..nominal.rows.len()).map(|i| if i == row { 0.1 } else { 0.0 }).collect();
        let in_y = derivative(&SharedColumn { x: vec![], y: unit.clone() })?;
        assert!((in_y - 0.1 * fitted.influence).abs() < 1e-5 * largest, "row {row}");
        let in_x = derivative(&SharedColumn { x: unit, y: vec![] })?;
        assert!((in_x + 0.1 * nominal.slope * fitted.influence).abs() < 1e-5 * largest, "row {row}");
    }
    Ok(())
}

#[test]
fn noise_of_the_users_own_widens_each_row_it_names() -> Outcome {
    let (mut notebook, _) = demo::typed_readings()?;
    let before = line(&notebook)?;
    notebook.apply(noise(900, ActsOn::Distances, "3 mm"), "")?;
    let after = line(&notebook)?;
    for (old, new) in before.u_distance.iter().zip(&after.u_distance) {
        // The noise moves the line a little, and with it what scales are taken of.
        assert!((new * new - old * old - 9e-6).abs() < 1e-8);
    }
    for (old, new) in before.u_delay.iter().zip(&after.u_delay) {
        assert!((new / old - 1.0).abs() < 1e-6);
    }
    Ok(())
}

#[test]
fn students_t_needs_its_degrees_of_freedom() -> Outcome {
    let (mut notebook, _) = demo::typed_readings()?;
    let Edit::SetShared(shared) = noise(900, ActsOn::Delays, "0.1") else {
        return Err("no shared error".into());
    };
    notebook.apply(Edit::SetShared(SharedError { shape: ErrorShape::Student, ..shared }), "")?;
    let problems = analyse(&notebook).problems;
    let place = Place::Shared { shared: 900, part: SharedPart::DegreesOfFreedom };
    assert!(problems.iter().any(|problem| problem.place == place), "{problems:?}");
    Ok(())
}

/// A common error in proportion widens the uncertainty and leaves the slope where it was, however many rows there are:
/// taken of the readings instead of the line it would pull the slope down (G. D'Agostini, Nucl. Instrum. Meth. A 346
/// (1994) 306).
#[test]
fn an_error_in_proportion_does_not_pull_the_slope() -> Outcome {
    let mut bench = demo::bench();
    let stop = |at: u32| Stop { rail: 0, aim: 0.06 + 0.012 * f64::from(at), time_base: 1.0 };
    bench.rig.stops = (0..150).map(stop).collect();
    let (mut notebook, _) = bench.run(5)?;
    let slope = |notebook: &Notebook| line(notebook).map(|line| (line.fit.slope, line.fit.uncertainty));
    let (alone, _) = slope(&notebook)?;
    for acts_on in [ActsOn::Delays, ActsOn::Distances] {
        let Edit::SetShared(shared) = noise(900, acts_on, "3 %") else {
            return Err("no shared error".into());
        };
        notebook.apply(Edit::SetShared(SharedError { effect: Effect::Scale, ..shared }), "")?;
        let (with, u) = slope(&notebook)?;
        let u = u.ok_or("no uncertainty")?.slope;
        assert!((with / alone - 1.0).abs() < 2e-3, "{acts_on:?}: {with} beside {alone}");
        assert!((u / with - 0.03).abs() < 2e-3, "{acts_on:?}: {}", u / with);
    }
    Ok(())
}

#[test]
fn errors_that_touch_nothing_or_everything_are_told_at_their_place() -> Outcome {
    let (notebook, _) = demo::typed_readings()?;
    let Edit::SetShared(shared) = noise(900, ActsOn::Delays, "1e300 %") else { return Err("none".into()) };
    let cases = [
        SharedError { effect: Effect::Scale, ..shared.clone() },
        SharedError { effect: Effect::Offset, uncertainty: "1e200".into(), ..shared.clone() },
        SharedError { rows: Scope::Rows(vec![99]), uncertainty: "0.1".into(), ..shared.clone() },
        SharedError { rows: Scope::Rail(77), uncertainty: "0.1".into(), ..shared },
    ];
    for case in cases {
        let mut notebook = notebook.clone();
        notebook.apply(Edit::SetShared(case.clone()), "")?;
        let place = Place::Shared { shared: 900, part: SharedPart::Uncertainty };
        let analysis = analyse(&notebook);
        assert!(analysis.problems.iter().any(|problem| problem.place == place), "{case:?}");
        assert!(analysis.speed.is_ok());
    }
    Ok(())
}
