#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;
use crate::analysis::analyse;
use crate::notebook::{BenchField, Cell, Claim, Edit, Notebook, Row};
use crate::simulated::demo;

/// Ciddor's measurements of water vapour begin at 360 nm (Appl. Opt. 35 (1996) 1566; from memory).
#[test]
fn an_extrapolated_index_of_air_says_so() {
    let (mut notebook, _) = demo::typed_readings().unwrap();
    for (wavelength, extrapolated) in [("355", true), ("360", false), ("405", false)] {
        notebook
            .apply(Edit::SetBench { field: BenchField::Wavelength, text: wavelength.into() }, "")
            .unwrap();
        let view = result_view(notebook.state(), &analyse(&notebook));
        let index = view.figures.iter().find(|figure| figure.id == "group_index").unwrap();
        let told = index.meaning.contains(&message!("figures-group_index-extrapolated").into());
        assert_eq!(told, extrapolated, "{wavelength} nm");
    }
}

/// A claim from the scatter says that it does not take the place of all that was stated, or of nothing where all of it are
/// limits and the scatter is smaller (JCGM 100:2008, F.2.2.1), and that the choice is none then; where nothing was stated, that
/// the scatter is all there is.
#[test]
fn a_result_says_on_what_its_uncertainty_rests() {
    let says = |notebook: &Notebook, id: &str| {
        let told = result_view(notebook.state(), &analyse(notebook)).sentences;
        told.first().is_some_and(|sentence| sentence.id == id)
    };
    let (mut notebook, _) = demo::typed_readings().unwrap();
    assert!(says(&notebook, "result-from-stated"));
    let claim = Claim { basis: Basis::Scatter, reason: "to see".into() };
    notebook.apply(Edit::SetClaim(claim), "").unwrap();
    assert!(says(&notebook, "result-from-limits"));
    let asks = |notebook: &Notebook| result_view(notebook.state(), &analyse(notebook)).choice.unwrap().id;
    assert_eq!(asks(&notebook), "result-choice-same");
    // A row a fifth of a division off its line scatters more than was stated.
    let Row { id, cells, .. } = notebook.state().rows[3].clone();
    let off: f64 = cells[&Cell::EdgeB].parse::<f64>().unwrap() + 0.2;
    notebook.apply(Edit::SetCell { row: id, cell: Cell::EdgeB, text: off.to_string() }, "").unwrap();
    assert!(says(&notebook, "result-from-both"));
    assert_eq!(asks(&notebook), "result-choice-more");
    let mut bare = Notebook::new();
    for (row, (distance, delay)) in (1..).zip([("1", "3.36"), ("2", "6.67"), ("3", "10.0")]) {
        let cells = [(Cell::Distance, distance.to_owned()), (Cell::Delay, delay.to_owned())];
        bare.apply(Edit::AddRow { row, after: None, cells: cells.into_iter().collect() }, "").unwrap();
    }
    assert!(says(&bare, "result-from-scatter"));
}

/// What v is said to be worked out from gives v: with a beam at an angle, its correction too.
#[test]
fn the_correction_for_the_beam_stands_where_it_is_made() {
    let speed_in_air = |notebook: &Notebook| {
        let view = result_view(notebook.state(), &analyse(notebook));
        view.figures.into_iter().find(|figure| figure.id == "v").unwrap()
    };
    let (mut notebook, _) = demo::typed_readings().unwrap();
    assert_eq!(speed_in_air(&notebook).symbol, "v = f/b");
    let angle = Edit::SetBench { field: BenchField::BeamAngle, text: "20".into() };
    notebook.apply(angle, "").unwrap();
    let v = speed_in_air(&notebook);
    assert_eq!(v.symbol, "v = κ·f/b");
    // θ²/4 for θ = 20 mrad, less for a beam wider than the detector (JCGM 100:2008, F.2.4.4).
    assert!(format!("{:?}", v.formula).contains("0.9999000"));
}
