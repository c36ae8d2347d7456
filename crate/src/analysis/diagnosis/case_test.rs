//! Readings of which something is missing.

#![expect(clippy::unwrap_used, clippy::panic, reason = "tests")]

use super::*;
use crate::analysis::prepare::prepare;
use crate::simulated::demo;

/// The case of the demo, with what is stated of its errors changed.
fn case_of(change: fn(&mut Stated)) -> Option<f64> {
    let (notebook, _) = demo::typed_readings().unwrap();
    let page = prepare(notebook.state(), None);
    let mut setup = page.setup.unwrap();
    let Noise::Stated(stated) = &mut setup.data.noise else { panic!("the demo states its uncertainties") };
    change(stated);
    Case::new(&page.context, &page.rows, &setup, false).map(|case| case.chi_square)
}

#[test]
fn the_demo_is_a_case() {
    assert!(case_of(|_| {}).is_some());
}

/// A row that a list left out would pass for one without that error.
#[test]
#[should_panic(expected = "index out of bounds")]
fn an_uncertainty_that_is_missing_is_not_taken_for_none() {
    case_of(|stated| stated.uy.truncate(1));
}

#[test]
#[should_panic(expected = "index out of bounds")]
fn nor_is_the_effect_of_a_shared_error() {
    case_of(|stated| {
        let full = stated.shared.iter_mut().find(|shared| !shared.x.is_empty());
        full.unwrap().x.truncate(1);
    });
}
