#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;
use crate::analysis::analyse;
use crate::notebook::{Edit, Notebook};
use crate::simulated::demo;
use crate::view::view;
use crate::words::{WordTable, Words};

fn demo() -> Notebook {
    demo::typed_readings().unwrap().0
}

fn of(notebook: &Notebook) -> BudgetView {
    budget_view(notebook.state(), &analyse(notebook))
}

#[test]
fn the_largest_part_stands_first_and_every_line_is_full() {
    let budget = of(&demo());
    assert!(budget.refusal.is_none());
    let length = |part: &ComponentView| part.bar.trim_end_matches('%').parse::<f64>().unwrap();
    assert!(budget.components.windows(2).all(|pair| length(&pair[0]) >= length(&pair[1])));
    let mut ids: Vec<&str> = budget.components.iter().map(|part| part.id.as_str()).collect();
    ids.sort_unstable();
    ids.dedup();
    assert_eq!(ids.len(), budget.components.len(), "identifiers are unique");
    for part in &budget.components {
        let texts =
            [&part.u, &part.degrees_of_freedom, &part.sensitivity, &part.contribution, &part.share_text];
        assert!(texts.iter().all(|text| !text.is_empty()) && !part.name.is_empty(), "{part:?}");
    }
    let first = &budget.components[0];
    let summary = budget.summary.as_ref().unwrap();
    assert_eq!(summary.values.get("name"), Some(&first.name));
    assert_eq!(summary.values.get("share"), Some(&first.share_text.as_str().into()));
    let nothing: Vec<&str> = budget
        .components
        .iter()
        .filter(|part| part.share_text == "0\u{a0}%")
        .map(|part| part.id.as_str())
        .collect();
    assert_eq!(nothing, ["beam-angle", "channel-skew"]);
}

#[test]
fn shares_are_written_to_a_tenth_of_a_per_cent() {
    let mark = DecimalMark::Comma;
    let written = [0.0, 1e-5, 0.123_45, 1.0].map(|value| share(value, mark));
    assert_eq!(written, ["0\u{a0}%", "< 0,1\u{a0}%", "12,3\u{a0}%", "100,0\u{a0}%"]);
}

#[test]
fn without_a_result_the_budget_says_why() {
    let budget = of(&Notebook::new());
    assert!(budget.refusal.is_some() && budget.components.is_empty() && budget.figures.is_empty());
}

/// A formula ends with what it gives: the value that stands beside it.
#[test]
fn formulas_end_with_their_values() {
    let mut notebook = demo();
    for sealed in [false, true] {
        if sealed {
            notebook.apply(Edit::Seal("0f".into()), "").unwrap();
        }
        let view = view(&notebook, &analyse(&notebook));
        let words = WordTable::english().unwrap();
        let figures = [view.line.figures, view.budget.figures, view.result.figures].concat();
        let mut seen = 0;
        for figure in figures
            .iter()
            .filter(|figure| !["slope", "intercept", "effective_degrees"].contains(&figure.id.as_str()))
        {
            let Some(formula) = &figure.formula else { continue };
            seen += 1;
            let last = last_text(formula).unwrap();
            let (given, _) = *numbers(&last).first().unwrap();
            let value = words.text(&figure.value);
            let shown = numbers(&value);
            // That of the covariance gives the correlation, which stands behind it.
            let place = if figure.id == "covariance" { shown.last() } else { shown.first() };
            let (number, decimals) = *place.unwrap();
            // The figure may show fewer digits, rounded with its uncertainty.
            let half = 0.5 * 10.0_f64.powi(-decimals) * (1.0 + 1e-9);
            assert!((number - given).abs() <= half, "{}: {} ends with {last}", figure.id, value);
            let power = power_of_ten(&last);
            assert!(power.is_none() || power == power_of_ten(&value), "{}: {last}", figure.id);
        }
        assert!(seen >= if sealed { 8 } else { 10 }, "{seen}");
    }
}

/// The numbers in a text, without signs and powers of ten, each with its digits after the point.
fn numbers(text: &str) -> Vec<(f64, i32)> {
    let texts = text.split(|c: char| !c.is_ascii_digit() && c != '.').filter(|text| !text.is_empty());
    let decimals =
        |text: &str| text.split_once('.').map_or(0, |(_, after)| i32::try_from(after.len()).unwrap());
    texts.filter_map(|text| Some((text.parse().ok()?, decimals(text)))).collect()
}

/// The power in a text such as "2.99 × 10⁸ m/s".
fn power_of_ten(text: &str) -> Option<&str> {
    text.split_once("× ")?.1.split(' ').next()
}

fn last_text(math: &crate::view::math::Formula) -> Option<String> {
    match math {
        crate::view::math::Formula::Leaf { text, .. } => Some(text.clone()),
        crate::view::math::Formula::Node { children, .. } => children.last().and_then(last_text),
    }
}

/// What holds nothing reaches the page as a record all the same, not as a list.
#[test]
fn empty_maps_are_records() {
    let notebook = demo();
    let json = serde_json::to_value(view(&notebook, &analyse(&notebook))).unwrap();
    assert_eq!(json["rails"][0]["splice_problems"], serde_json::json!({}));
    let blank = Notebook::new();
    let json = serde_json::to_value(view(&blank, &analyse(&blank))).unwrap();
    assert!(json["proposal"]["cells"].is_object(), "{}", json["proposal"]);
}
