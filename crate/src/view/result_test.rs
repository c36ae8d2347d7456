#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;
use crate::analysis::analyse;
use crate::notebook::{BenchField, Edit};
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
