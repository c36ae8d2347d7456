#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;
use crate::analysis::analyse;
use crate::analysis::trials::outcome;
use crate::notebook::{BenchField, Edit, Notebook, TrialPlan};
use crate::simulated::demo;
use crate::words::{WordTable, Words};

/// The number in a text such as "2.9880 × 10⁸".
fn power_of_eight(text: &str) -> f64 {
    text.strip_suffix("\u{a0}×\u{a0}10⁸").unwrap().parse::<f64>().unwrap() * 1e8
}

/// Few trials judge nothing.
#[test]
fn few_trials_say_that_they_are_few() {
    let mut notebook = demo_with("1000");
    // The demo's u(c) rounds up to 10⁶ m/s, whose tolerance of half a digit a thousand trials do meet; 8 × 10⁵ has a tenth.
    notebook.apply(Edit::SetBench { field: BenchField::EdgeHalfWidth, text: "0.02".into() }, "").unwrap();
    let view = trials_view(notebook.state(), &outcome(notebook.state()));
    assert_eq!(view.verdict.unwrap().id, "trials-verdict-undecided");
}

fn demo_with(wanted: &str) -> Notebook {
    let mut notebook = demo::typed_readings().unwrap().0;
    let plan = TrialPlan { seed: "4".into(), wanted: wanted.into() };
    notebook.apply(Edit::SetTrials(plan), "").unwrap();
    notebook
}

#[test]
fn an_outcome_is_told_in_words() {
    let notebook = demo_with("400000");
    let view = trials_view(notebook.state(), &outcome(notebook.state()));
    let words = WordTable::english().unwrap();
    assert_eq!(words.text(&view.figures[0].value), "400\u{202f}000 (seed 4)");
    let verdict = words.say(&view.verdict.unwrap());
    assert!(verdict.starts_with("The budget’s interval is validated: its ends differ by"), "{verdict}");
    let summary = words.say(&view.summary.unwrap());
    assert!(summary.contains("normal distribution"), "{summary}");
    // Both ends are written to the place of the uncertainty's second digit, here 10⁵ m/s.
    let interval = words.text(&view.figures[2].value);
    let found = outcome(notebook.state()).unwrap().summary.symmetric;
    let ends: Vec<f64> = interval.trim_end_matches("\u{a0}m/s").split(" to ").map(power_of_eight).collect();
    assert!((ends[0] - found.0).abs() <= 5e4 && (ends[1] - found.1).abs() <= 5e4, "{interval}");
    assert_eq!([1, 12, 1_234, 1_234_567].map(count), ["1", "12", "1\u{202f}234", "1\u{202f}234\u{202f}567"]);
}

#[test]
fn what_is_wrong_with_the_plan_stands_at_its_field() {
    let notebook = demo_with("ten");
    let plan = trial_plan_view(notebook.state(), &analyse(&notebook));
    assert!(plan.wanted.problem.as_ref().is_some_and(|problem| problem.id == "number-none"));
    assert_eq!(plan.refusal, plan.wanted.problem);
    let sound = demo_with("");
    assert_eq!(trial_plan_view(sound.state(), &analyse(&sound)).refusal, None);
}

/// The trials carry the hidden factor as the result does, so they don't tell it.
#[test]
fn a_closed_seal_covers_trials_too() {
    let mut notebook = demo_with("5000");
    notebook.apply(Edit::Seal("0f".into()), "").unwrap();
    let shown = analyse(&notebook).speed.unwrap();
    let found = outcome(notebook.state()).unwrap();
    assert!((found.summary.mean - shown.c).abs() < 0.1 * shown.u_c());
    assert!(found.validation.unwrap().low < 0.1 * shown.u_c());
}
