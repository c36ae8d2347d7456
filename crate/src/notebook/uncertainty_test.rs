//! The two kinds, and what notebooks of the time before the choice mean.
#![expect(clippy::unwrap_used, reason = "tests")]

use litemap::LiteMap;

use super::super::{
    BenchField, Edit, ErrorShape, FileError, Notebook, RailField, Splice, read, read_entry, write,
};
use super::*;
use crate::analysis::{BudgetComponent, Origin, analyse};
use UncertaintyKind::{Limit, Standard};

/// The demo set of typed readings as format 2 had it before a kind could be chosen, byte for byte.
const BEFORE: &str = include_str!("samples/format-2.json");

/// JCGM 100:2008, 4.3.7: an input within ±a, every value as likely as any other, has u² = a²/3; and its example to
/// 4.3.7: limits of (16.40 and 16.73) × 10⁻⁶ °C⁻¹ make a half-width of 0.165 and a u of 0.095 (× 10⁻⁶ °C⁻¹).
#[test]
fn a_limit_is_root_three_standard_uncertainties() {
    let u = Limit.standard(0.165);
    assert!((u * u - 0.165 * 0.165 / 3.0).abs() < 1e-17, "{u}");
    assert!((u - 0.095).abs() < 0.0005, "{u}");
    assert!((Standard.limit(u) - 0.165).abs() < 1e-16);
    // What is of the kind asked for is not touched.
    assert_eq!(Standard.standard(0.165).to_bits(), 0.165_f64.to_bits());
    assert_eq!(Limit.limit(0.165).to_bits(), 0.165_f64.to_bits());
}

/// c and its relative standard uncertainty, as they came out of that notebook before a kind could be chosen.
#[test]
fn a_notebook_from_before_the_choice_keeps_its_digits() {
    let before = read(BEFORE).unwrap();
    assert_eq!(before.state().kinds, LiteMap::new());
    let speed = analyse(&before).speed.unwrap();
    assert_eq!((speed.c, speed.relative), (300_514_878.581_955, 0.002_941_627_385_742_633));
    assert_eq!(read(&write(&before)).unwrap(), before);
}

/// The demo with every uncertainty typed as `kind`: what was typed as the other one before is turned into it.
fn demo_as(kind: UncertaintyKind) -> Notebook {
    let mut notebook = read(BEFORE).unwrap();
    let mut all: Vec<(UncertaintyOf, Edit)> = vec![
        (UncertaintyOf::Edge, bench(BenchField::EdgeHalfWidth, turned(0.04, Limit, kind, ""))),
        (
            UncertaintyOf::TimeBase,
            bench(BenchField::TimeBaseUncertainty, turned(50.0, Standard, kind, " ppm")),
        ),
    ];
    for rail in notebook.state().rails.clone() {
        for (of, field) in [
            (UncertaintyOf::RulerReading(rail.id), RailField::ReadingUncertainty),
            (UncertaintyOf::RulerScale(rail.id), RailField::ScaleUncertainty),
        ] {
            let (number, unit) = split(rail.texts.get(&field).unwrap());
            let text = turned(number, Standard, kind, unit);
            all.push((of, Edit::SetRail { rail: rail.id, field, text }));
        }
        let mut splice = rail.splice.clone();
        let (Splice::AtSplitter { uncertainty, .. }
        | Splice::AtDistance { uncertainty, .. }
        | Splice::Joined { uncertainty, .. }) = &mut splice
        else {
            unreachable!("the demo states each place with an uncertainty")
        };
        let (number, unit) = split(uncertainty);
        *uncertainty = turned(number, Standard, kind, unit);
        all.push((UncertaintyOf::Splice(rail.id), Edit::SetSplice { rail: rail.id, splice }));
    }
    for (of, edit) in all {
        notebook.apply(Edit::Together(vec![Edit::SetKind { of, kind }, edit]), "").unwrap();
    }
    notebook
}

fn bench(field: BenchField, text: String) -> Edit {
    Edit::SetBench { field, text }
}

/// A number as typed, and what stands behind it.
fn split(text: &str) -> (f64, &str) {
    let end = text.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(text.len());
    (text[..end].parse().unwrap(), &text[end..])
}

fn turned(number: f64, from: UncertaintyKind, to: UncertaintyKind, unit: &str) -> String {
    let number = match (from, to) {
        (Standard, Limit) => number * 3.0_f64.sqrt(),
        (Limit, Standard) => number / 3.0_f64.sqrt(),
        _ => number,
    };
    format!("{number}{unit}")
}

/// All as limits, or all as standard uncertainties: another way to state the same.
#[test]
fn either_kind_states_the_same() {
    let of = |notebook: &Notebook| analyse(notebook).speed.unwrap();
    let (before, limits, standard) =
        (of(&read(BEFORE).unwrap()), of(&demo_as(Limit)), of(&demo_as(Standard)));
    for (name, speed) in [("limits", limits), ("standard uncertainties", standard)] {
        assert!((speed.c / before.c - 1.0).abs() < 1e-13, "{name}: {}", speed.c);
        assert!((speed.relative / before.relative - 1.0).abs() < 1e-12, "{name}: {}", speed.relative);
    }
}

/// What is typed as a limit is drawn as one: rectangular; an edge typed as a standard uncertainty is normal.
#[test]
fn the_budget_shows_the_shape_that_was_stated() {
    let shapes = |notebook: &Notebook| -> Vec<ErrorShape> {
        let of = |component: &BudgetComponent| match component.origin {
            Origin::RailReadings
            | Origin::ScreenLimit
            | Origin::TimeBase { .. }
            | Origin::RulerScale { .. }
            | Origin::Splice { .. } => Some(component.shape),
            _ => None,
        };
        analyse(notebook).speed.unwrap().budget.components.iter().filter_map(of).collect()
    };
    let of = |kind| {
        let all = shapes(&demo_as(kind));
        let edges = all.iter().filter(|shape| **shape == ErrorShape::Triangular).count();
        (all.len(), edges, all.iter().filter(|shape| **shape == ErrorShape::Rectangular).count())
    };
    let (all, triangular, rectangular) = of(Limit);
    assert_eq!(
        (triangular, rectangular),
        (1, all - 1),
        "edges apart: the difference of two of them is triangular"
    );
    assert_eq!(of(Standard), (all, 0, 0));
}

/// Half a millimetre as a limit, and as a standard uncertainty, are not the same: the factor is √3.
#[test]
fn choosing_the_kind_alone_moves_u_by_root_three() {
    let mut notebook = read(BEFORE).unwrap();
    let of = UncertaintyOf::Splice(3);
    let u = |notebook: &Notebook| {
        let components = analyse(notebook).speed.unwrap().budget.components.clone();
        components.iter().find(|c| c.origin == Origin::Splice { rail: 3 }).unwrap().u.unwrap()
    };
    let standard = u(&notebook);
    notebook.apply(Edit::SetKind { of, kind: Limit }, "").unwrap();
    assert!((standard / u(&notebook) - 3.0_f64.sqrt()).abs() < 1e-12);
    notebook.apply(Edit::Undo, "").unwrap();
    assert_eq!(u(&notebook).to_bits(), standard.to_bits());
}

/// JCGM 101:2008, table 1 (6.4.2, 6.4.5, 6.4.6): between limits ±a, the variance of a rectangular distribution is a²/3, of
/// a triangular one a²/6, of an arcsine one a²/2. What is normal or Student's t has no limits: rectangular is taken.
#[test]
fn a_component_of_ones_own_is_a_limit_of_its_distribution() {
    for (shape, under_root, taken) in [
        ("normal", 3.0, ErrorShape::Rectangular),
        ("rectangular", 3.0, ErrorShape::Rectangular),
        ("triangular", 6.0, ErrorShape::Triangular),
        ("arcsine", 2.0, ErrorShape::Arcsine),
        ("student", 3.0, ErrorShape::Rectangular),
    ] {
        let mut notebook = read(BEFORE).unwrap();
        let id = notebook.state().new_number();
        let stated = format!(
            r#"{{"edit":{{"set_shared":{{"id":{id},"name":"","acts_on":"delays","effect":"scale","rows":"all",
            "uncertainty":"0.2 %","shape":"{shape}","degrees_of_freedom":"9"}}}}}}"#
        );
        notebook.apply(read_entry(&stated).unwrap().edit, "").unwrap();
        let component = |notebook: &Notebook| {
            let budget = analyse(notebook).speed.unwrap().budget.clone();
            let found =
                budget.components.into_iter().find(|c| c.origin == Origin::Stated { shared: id }).unwrap();
            (found.u.unwrap(), found.shape)
        };
        let (standard, _) = component(&notebook);
        assert_eq!(standard.to_bits(), 0.002_f64.to_bits());
        notebook.apply(Edit::SetKind { of: UncertaintyOf::Shared(id), kind: Limit }, "").unwrap();
        let (u, shown) = component(&notebook);
        assert!((u * u * under_root / (0.002 * 0.002) - 1.0).abs() < 1e-12, "{shape}: {u}");
        assert_eq!(shown, taken, "{shape}");
    }
}

/// Two rows given directly, with what stands in their cells of uncertainties.
fn given(u: [&str; 2]) -> Notebook {
    let mut notebook = Notebook::default();
    for (row, (u, (distance, delay))) in u.into_iter().zip([("0.5", "3.6"), ("1.5", "7.0")]).enumerate() {
        let entry = format!(
            r#"{{"edit":{{"add_row":{{"row":{},"cells":{{"distance":"{distance}","distance_uncertainty":"{u}",
            "delay":"{delay}","delay_uncertainty":"0.1"}}}}}}}}"#,
            row + 1
        );
        notebook.apply(read_entry(&entry).unwrap().edit, "").unwrap();
    }
    notebook
}

/// In a cell a sign makes a limit, with its unit: u² = a²/3 (JCGM 100:2008, 4.3.7). A bare number stays what it was.
#[test]
fn a_sign_in_a_cell_makes_a_limit() {
    let u = |text| analyse(&given([text; 2])).rows[0].distance.as_ref().unwrap().uncertainty.unwrap();
    assert_eq!(u("0.03").to_bits(), 0.03_f64.to_bits());
    for text in ["±0.03", "± 3 cm", "+/-30 mm", "+-0.03"] {
        assert!((u(text) * u(text) - 0.03 * 0.03 / 3.0).abs() < 1e-15, "{text}");
    }
    for text in ["±", "±-0.03", "±0.03 ± 0.01", "±x"] {
        let analysis = analyse(&given([text; 2]));
        assert!(!analysis.problems.is_empty() && analysis.speed.is_err(), "{text}");
    }
}

/// Trials draw typed values as rectangular only where each has a limit.
#[test]
fn limits_in_all_cells_are_drawn_as_limits() {
    let shape = |u| {
        let budget = analyse(&given(u)).speed.unwrap().budget.clone();
        budget.components.iter().find(|c| c.origin == Origin::Distances).unwrap().shape
    };
    assert_eq!(shape(["±0.03"; 2]), ErrorShape::Rectangular);
    assert_eq!(shape(["0.03"; 2]), ErrorShape::Normal);
    assert_eq!(shape(["±0.03", "0.03"]), ErrorShape::Normal);
}

#[test]
fn the_choice_is_stored() {
    for (of, written) in [
        (UncertaintyOf::Edge, r#""edge""#),
        (UncertaintyOf::TimeBase, r#""time_base""#),
        (UncertaintyOf::Mark, r#""mark""#),
        (UncertaintyOf::Setting(4), r#"{"setting":4}"#),
        (UncertaintyOf::RulerReading(1), r#"{"ruler_reading":1}"#),
        (UncertaintyOf::RulerScale(2), r#"{"ruler_scale":2}"#),
        (UncertaintyOf::Splice(3), r#"{"splice":3}"#),
        (UncertaintyOf::Shared(5), r#"{"shared":5}"#),
    ] {
        let entry = format!(r#"{{"edit":{{"set_kind":{{"of":{written},"kind":"limit"}}}}}}"#);
        assert_eq!(read_entry(&entry).unwrap().edit, Edit::SetKind { of, kind: Limit });
    }
    let later = r#"{"edit":{"set_kind":{"of":"edge","kind":"expanded"}}}"#;
    assert!(matches!(read_entry(later), Err(FileError::LaterName { .. })));
}
