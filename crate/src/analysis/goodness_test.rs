//! ν₂ and p against closed forms; how often p is small on sound benches is in `tests/numbers/few_repeats.rs`.

use super::*;
use crate::analysis::prepare;
use crate::line::fit;
use crate::notebook::{BenchField, Cell, Edit, Effect, ErrorShape, Notebook, Scope, SharedError};
use crate::simulated::{demo, random};

type Outcome = Result<(), Box<dyn std::error::Error>>;

/// Repeats of edge B at four places, off the line by turns; each pair scatters by 0.04 or 0.02 divisions about its mean.
const PAIRS: [(&str, &str); 4] =
    [("0.5", "1.00; 1.04"), ("1.5", "1.70; 1.68"), ("2.5", "2.36; 2.40"), ("3.5", "3.08; 3.06")];

fn read_twice(half_width: &str) -> Result<Notebook, Box<dyn std::error::Error>> {
    let mut notebook = Notebook::new();
    notebook.apply(Edit::SetBench { field: BenchField::EdgeHalfWidth, text: half_width.into() }, "")?;
    for (row, (distance, edges)) in (1..).zip(PAIRS) {
        let cells = [
            (Cell::Distance, distance.to_owned()),
            (Cell::TimeBase, "5".to_owned()),
            (Cell::EdgeA, "0".to_owned()),
            (Cell::EdgeB, edges.to_owned()),
        ];
        notebook.apply(Edit::AddRow { row, after: None, cells: cells.into_iter().collect() }, "")?;
    }
    Ok(notebook)
}

/// Where a pooled scatter of four pairs is all there is, ν₂ = 4, and F with 2 and 4 is elementary: p = (1 + χ²/ν₂)^−ν₂/2.
#[test]
fn pure_error_gives_the_test_of_lack_of_fit() -> Outcome {
    let notebook = read_twice("1e-9")?;
    let prepared = prepare(notebook.state(), None);
    let setup = prepared.setup.map_err(|why| why.id)?;
    let line = fit(&setup.data)?;
    let below = weights_degrees(&setup, &line).ok_or("known")?;
    // What is left of the limit of reading is 10⁻¹⁴ of the variance.
    assert!((below - 4.0).abs() < 1e-9, "{below}");
    let p = p_value(&line, Some(below)).ok_or("no p")?;
    let closed = libm::pow(1.0 + line.chi_square / 4.0, -2.0);
    assert!((p - closed).abs() < 1e-9 * closed, "{p} instead of {closed}");
    assert!(p > chi_square_sf(line.chi_square, 2.0));
    Ok(())
}

/// Beside a limit of reading of the same variance half of what counts is known: ν₂ = 4/(½)² = 16.
#[test]
fn what_is_known_beside_it_counts_by_its_share() -> Outcome {
    // The pooled variance is (2·0.02² + 2·0.01²)/4 · 2 = 0.0005 of one reading, 0.00025 of a mean; ⅔ a² is as large.
    let notebook = read_twice("0.019364916731037084")?;
    let prepared = prepare(notebook.state(), None);
    let setup = prepared.setup.map_err(|why| why.id)?;
    let below = weights_degrees(&setup, &fit(&setup.data)?).ok_or("known")?;
    assert!((below - 16.0).abs() < 1e-6, "{below}");
    Ok(())
}

/// χ² holds nothing of a scale that all delays share, so that its few degrees of freedom are none of χ²'s.
#[test]
fn few_degrees_of_a_common_scale_leave_chi_square_as_it_is() -> Outcome {
    let (mut notebook, _) = demo::typed_readings()?;
    notebook.apply(
        Edit::SetShared(SharedError {
            id: 900,
            name: "counter".into(),
            acts_on: ActsOn::Delays,
            effect: Effect::Scale,
            rows: Scope::All,
            uncertainty: "1 %".into(),
            shape: ErrorShape::Student,
            degrees_of_freedom: "4".into(),
        }),
        "",
    )?;
    let prepared = prepare(notebook.state(), None);
    let setup = prepared.setup.map_err(|why| why.id)?;
    let below = weights_degrees(&setup, &fit(&setup.data)?);
    assert!(below.is_none(), "{below:?}");
    Ok(())
}

/// The redundancies of the rows, and 1 − u² of each error that they share, add up to ν (W. Baarda).
#[test]
fn redundancies_add_up_to_the_degrees_of_freedom() -> Outcome {
    let mut notebooks = vec![demo::typed_readings()?.0];
    for seed in 0..20 {
        notebooks.push(random::bench(seed).run(seed)?.0);
    }
    for (place, notebook) in notebooks.iter().enumerate() {
        let prepared = prepare(notebook.state(), None);
        let line = fit(&prepared.setup.map_err(|why| why.id)?.data)?;
        let rows: f64 = line.rows.iter().map(|row| row.redundancy).sum();
        let shared: f64 = line.shared.iter().filter_map(|found| found.u).map(|u| 1.0 - u * u).sum();
        let nu = line.degrees_of_freedom as f64;
        // Rounding in sums of some hundred terms.
        assert!((rows + shared - nu).abs() < 1e-8 * nu, "notebook {place}: {rows} + {shared}, not {nu}");
    }
    Ok(())
}
