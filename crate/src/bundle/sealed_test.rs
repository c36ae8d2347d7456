//! Nothing that leaves the core tells what a closed seal hides: in no text stand the digits of the true speed or slope.
//!
//! A number is taken to tell it if it agrees with the true one to all its digits, four or more, up to the eighth. The
//! drawings show the readings as they are, so of them the words are looked at. Opening the seal shows that the same
//! search finds the digits where they stand.
#![expect(clippy::unwrap_used, reason = "a test stops where its data are wrong")]

use std::collections::BTreeSet;

use serde_json::Value;

use super::{NOTEBOOK, read, texts};
use crate::analysis::trials::outcome;
use crate::analysis::{C0, WhatIf, analyse, analyse_page};
use crate::drawings::{ChartForm, Charts, charts};
use crate::notebook::{
    ActsOn, Basis, Claim, Edit, Effect, ErrorShape, Imprint, Notebook, Path, PlannedPosition, Scope,
    SharedError, TrialPlan, write,
};
use crate::report::exact::{
    ResidualRow, budget_numbers, fit_figures, fit_table, readings_numbers, residual_rows, residuals_table,
};
use crate::report::sample::english;
use crate::report::{Document, shown};
use crate::simulated::demo;
use crate::view::{PreviousView, budget, evidence, plan, row_work, trials, view, view_after};

/// Digits that a number needs to be told from another by chance.
const TELLING: usize = 4;
/// Digits compared at most.
const COMPARED: usize = 8;

/// Salts of seals: more than one, since a factor could by chance be near one.
const SALTS: [&str; 2] = ["5f1c", "a salt"];

/// Marks and spaces inside a number: points and commas, and the narrow spaces between groups of digits.
fn joins(c: char) -> bool {
    matches!(c, '.' | ',' | '\u{2009}' | '\u{202f}' | '\u{a0}')
}

/// The digits of each number in a text from the first that is not zero on, where there are enough to tell something.
/// Names made of letters and digits, such as hashes, are no numbers.
fn numbers(text: &str) -> BTreeSet<String> {
    let text: Vec<char> = text.chars().collect();
    let at = |i: usize| text.get(i).copied().unwrap_or(' ');
    let mut found = BTreeSet::new();
    let mut i = 0;
    while i < text.len() {
        if !at(i).is_ascii_digit() {
            i += 1;
            continue;
        }
        let begin = i;
        let mut digits = String::new();
        while at(i).is_ascii_digit() || (joins(at(i)) && at(i + 1).is_ascii_digit()) {
            digits.extend(Some(at(i)).filter(char::is_ascii_digit));
            i += 1;
        }
        let exponent = at(i) == 'e' && (at(i + 1) == '-' || at(i + 1).is_ascii_digit());
        let in_a_name =
            begin > 0 && at(begin - 1).is_ascii_alphanumeric() || at(i).is_ascii_alphabetic() && !exponent;
        let digits = digits.trim_start_matches('0');
        if !in_a_name && digits.len() >= TELLING {
            found.insert(digits.to_owned());
        }
    }
    found
}

/// Whether a number, by its digits, is `truth` as far as it goes.
fn tells(digits: &str, truth: f64) -> bool {
    let count = digits.len().min(COMPARED);
    let said: f64 = digits.get(..count).unwrap().parse().unwrap();
    let whole = format!("{truth:.16e}").replace('.', "");
    let true_digits: String = whole.chars().take_while(char::is_ascii_digit).collect();
    let (head, tail) = true_digits.split_at(count);
    let meant: f64 = format!("{head}.{tail}").parse().unwrap();
    // Rounded where all digits are there, cut off where more follow.
    let nearest = if digits.len() > count { 1.0 } else { 0.5 };
    (said - meant).abs() <= nearest
}

/// The words of a drawing or a page: what stands between its tags.
fn words(markup: &str) -> String {
    let pieces = markup.split('<').map(|piece| piece.split_once('>').map_or(piece, |(_, words)| words));
    pieces.collect::<Vec<_>>().join(" ")
}

fn json(value: &impl serde::Serialize) -> String {
    serde_json::to_string(value).unwrap()
}

/// Everything that leaves the core for a notebook, each with its name.
fn leaves(notebook: &Notebook) -> Vec<(String, String)> {
    let page = notebook.state();
    let analysis = analyse(notebook);
    let drawn_anew = outcome(page);
    let shown_view = view(notebook, &analysis);
    let trials_view = trials::trials_view(page, &drawn_anew);
    let charts = charts(page, &analysis, drawn_anew.as_ref().ok(), ChartForm::Svg, &english());
    let report =
        |charts| Document::of(&shown_view, charts, Some(&trials_view), &Imprint::of(notebook), &english());
    let told = PreviousView {
        readings: analysis.rows.clone(),
        rows: shown_view.rows.clone(),
        decimal_mark: page.decimal_mark,
    };
    let twice = WhatIf { origin: "rail-readings".into(), factor: 2.0 };
    let mut all = vec![
        ("analysis".to_owned(), json(&analysis)),
        ("view".into(), json(&shown_view)),
        ("news".into(), json(&view_after(notebook, &analysis, &told))),
        ("trials view".into(), json(&trials_view)),
        ("plan view".into(), json(&plan::plan_view(page, &analysis))),
        ("what if".into(), json(&budget::budget_view(page, &analyse_page(page, Some(&twice))))),
        ("report".into(), words(&report(&charts).html())),
        ("report in Markdown".into(), report(&charts).markdown()),
        // The words of its charts are those of the SVGs.
        ("report in LaTeX".into(), report(&Charts::default()).latex()),
    ];
    for row in &page.rows {
        all.push(("row work".into(), json(&row_work::row_work(page, &analysis, row.id))));
        all.push(("evidence".into(), json(&evidence::evidence_view(page, row.id))));
    }
    for entry in texts(notebook, &analysis, &shown_view, &charts, Some(&trials_view), &english()).unwrap() {
        // The notebook itself holds what was typed.
        if entry.name != NOTEBOOK {
            all.push((entry.name, words(&String::from_utf8(entry.bytes).unwrap())));
        }
    }
    let tables = [
        shown::readings_table(&shown_view, &english()),
        shown::line_table(&shown_view, &english()),
        shown::checks_table(&shown_view, &english()),
        shown::result_table(&shown_view, &english()),
        shown::budget_table(&shown_view, &english()),
        readings_numbers(&analysis, &shown_view, &english()),
        budget_numbers(&analysis, &shown_view, &english()),
        shown::trials_table(&trials_view, &english()),
        fit_table(&fit_figures(&analysis), &english()),
        residuals_table(&residual_rows(&analysis), &english()),
    ];
    for table in tables {
        let name = table.name;
        all.push((format!("{name} as CSV"), table.to_csv().unwrap()));
        all.push((format!("{name} as LaTeX"), table.to_latex()));
        all.push((format!("{name} as Markdown"), table.to_markdown()));
        all.push((format!("{name} as HTML"), words(&table.to_html())));
    }
    all
}

/// What a seal hides: v, c, the slope and one over it.
fn truths(notebook: &Notebook) -> Vec<(&'static str, f64)> {
    let analysis = analyse(notebook);
    let (slope, speed) = (analysis.line.unwrap().fit.slope, analysis.speed.unwrap());
    vec![("v", speed.v), ("c", speed.c), ("slope", slope), ("1/slope", 1.0 / slope)]
}

/// Each place where a true number stands, with the number. What was typed is left out: it is there for all to see. So is
/// the speed from which a plan starts, whatever was read: c₀ over the index of air.
fn found(notebook: &Notebook, truths: &[(&'static str, f64)]) -> Vec<String> {
    let typed = numbers(&write(notebook));
    let expected = C0 / analyse(notebook).air.group_index.unwrap();
    let mut found = Vec::new();
    for (name, text) in leaves(notebook) {
        let plans = |digits: &str| name == "plan view" && tells(digits, expected);
        for digits in numbers(&text).difference(&typed).filter(|digits| !plans(digits)) {
            for (what, truth) in truths {
                if tells(digits, *truth) {
                    found.push(format!("{name}: {what} as {digits}"));
                }
            }
        }
    }
    found
}

fn error_of_all_delays() -> Edit {
    Edit::SetShared(SharedError {
        id: 900,
        name: "clock".into(),
        acts_on: ActsOn::Delays,
        effect: Effect::Scale,
        rows: Scope::All,
        uncertainty: "0.4 %".into(),
        shape: ErrorShape::Normal,
        degrees_of_freedom: String::new(),
    })
}

fn planned(id: u32, reading: &str) -> Edit {
    let rail = String::from("A");
    Edit::SetPosition(PlannedPosition { id, rail, reading: reading.into(), ..PlannedPosition::default() })
}

fn few_trials() -> Edit {
    Edit::SetTrials(TrialPlan { wanted: "1000".into(), ..TrialPlan::default() })
}

/// Notebooks of every kind, none sealed yet.
fn notebooks() -> Vec<(&'static str, Notebook)> {
    let typed = || demo::typed_readings().unwrap().0;
    let edited = |edits: Vec<Edit>| {
        let mut notebook = typed();
        for edit in edits {
            notebook.apply(edit, "").unwrap();
        }
        notebook
    };
    let photographs = include_bytes!("../../../demo/photographs.en.zip");
    let traces = include_bytes!("../../../demo/traces.en.zip");
    let claim = Claim { basis: Basis::Scatter, reason: "the rows tell it better".into() };
    vec![
        ("typed readings", typed()),
        ("a mirror on the carriage", edited(vec![Edit::SetPath(Path::Mirror)])),
        ("an error that all rows share", edited(vec![error_of_all_delays()])),
        ("a claim from the scatter", edited(vec![Edit::SetClaim(claim)])),
        ("positions planned", edited(vec![planned(901, "37.5"), planned(902, "141.5")])),
        ("photographs", read(photographs).unwrap().notebook),
        ("traces", read(traces).unwrap().notebook),
    ]
}

#[test]
fn a_closed_seal_leaves_no_true_digit_anywhere_and_an_open_one_shows_them() {
    for (kind, mut notebook) in notebooks() {
        notebook.apply(few_trials(), "").unwrap();
        let truths = truths(&notebook);
        for salt in SALTS {
            let mut sealed = notebook.clone();
            sealed.apply(Edit::Seal(salt.into()), "").unwrap();
            assert_eq!(found(&sealed, &truths), Vec::<String>::new(), "{kind}, sealed with “{salt}”");
        }
        let mut opened = notebook.clone();
        opened.apply(Edit::Seal("5f1c".into()), "").unwrap();
        opened.apply(Edit::OpenSeal, "").unwrap();
        let told = found(&opened, &truths);
        for name in ["analysis", "view", "news", "report", "line.csv"] {
            for what in ["v", "c", "slope"] {
                let entry = format!("{name}: {what} as ");
                assert!(told.iter().any(|one| one.starts_with(&entry)), "{kind}: no {entry}in {told:#?}");
            }
        }
    }
}

/// The slope as `residuals.csv` of a bundle tells it: delay less residual lies on the line, so two rows give it. None
/// where the table has no residuals.
fn slope_by_subtraction(notebook: &Notebook) -> Option<f64> {
    let analysis = analyse(notebook);
    let shown_view = view(notebook, &analysis);
    let charts = charts(notebook.state(), &analysis, None, ChartForm::Svg, &english());
    let entries = texts(notebook, &analysis, &shown_view, &charts, None, &english()).unwrap();
    let csv = entries.into_iter().find(|entry| entry.name == "residuals.csv").unwrap().bytes;
    let csv = String::from_utf8(csv).unwrap();
    let column = |title: &str| -> Vec<Option<f64>> {
        let place = csv.lines().next().unwrap().split(',').position(|name| name == title).unwrap();
        csv.lines().skip(1).map(|row| row.split(',').nth(place).unwrap().parse().ok()).collect()
    };
    let [x, y, residual] = ["distance / m", "delay / ns", "residual / ns"].map(column);
    assert!(x.len() > 2 && x.iter().chain(&y).all(Option::is_some));
    let on_line = |i: usize| Some((x[i]?, y[i]? - residual[i]?));
    let points: Vec<(f64, f64)> = (0..x.len()).filter_map(on_line).collect();
    let ((x1, y1), (x2, y2)) = (points.first()?, points.last()?);
    Some((y2 - y1) / (x2 - x1))
}

#[test]
fn no_subtraction_in_a_sealed_bundle_gives_the_slope_and_in_an_open_one_it_does() {
    let (mut notebook, _) = demo::typed_readings().unwrap();
    let slope = analyse(&notebook).line.unwrap().fit.slope;
    let told = slope_by_subtraction(&notebook).unwrap();
    assert!((told / slope - 1.0).abs() < 1e-9, "{told} for {slope}");
    notebook.apply(Edit::Seal("5f1c".into()), "").unwrap();
    assert_eq!(slope_by_subtraction(&notebook), None);
    notebook.apply(Edit::OpenSeal, "").unwrap();
    assert_eq!(slope_by_subtraction(&notebook), Some(told));
}

/// How far a slope may lie off, relative to it, that follows exactly, and one that follows only about.
const EXACT: f64 = 1e-6;
const ABOUT: f64 = 3e-3;

/// The slope by all that follows from the numbers of an analysis and its readings: each way with its name, what it gives,
/// and how far from the slope itself that may lie. The line goes through a weighted mean of the readings, which is only
/// about their plain one; and a slope is the sum of the influences' shares but for the errors of the distances.
fn slopes_that_follow(notebook: &Notebook) -> Vec<(&'static str, f64, f64)> {
    let analysis: Value = serde_json::from_str(&json(&analyse(notebook))).unwrap();
    let line = &analysis["line"]["Ok"];
    let fit = &line["fit"];
    let number = |value: &Value| value.as_f64().unwrap();
    let list = |value: &Value| -> Vec<f64> { value.as_array().unwrap().iter().map(number).collect() };
    let of_rows = |name: &str| -> Vec<f64> {
        fit["rows"].as_array().unwrap().iter().map(|row| number(&row[name])).collect()
    };
    let (x, y) = (list(&line["distance"]), list(&line["delay"]));
    let (residual, influence) = (of_rows("residual"), of_rows("influence"));
    let [centre, at_centre, intercept] = ["centre", "at_centre", "intercept"].map(|name| number(&fit[name]));
    let mean = |list: &[f64]| list.iter().sum::<f64>() / list.len() as f64;
    let path = if notebook.state().path == Path::Mirror { 2.0 } else { 1.0 };
    let u = |name: &str| number(&fit["uncertainty"][name]);
    let shown = number(&fit["slope"]);
    // Where the slope's own uncertainty follows in two ways, their ratio is the factor.
    let told_by_u = |other: f64| shown * other / u("slope");
    let last = x.len() - 1;
    let on_line = |i: usize| y[i] - residual[i];
    let mut told = vec![
        ("v", path * 1e9 / number(&analysis["speed"]["Ok"]["v"]), EXACT),
        ("intercept and centre", (at_centre - intercept) / centre, EXACT),
        ("intercept and mean", (mean(&y) - intercept) / mean(&x), ABOUT),
        ("two residuals", (on_line(last) - on_line(0)) / (x[last] - x[0]), EXACT),
        ("influences", influence.iter().zip(&y).map(|(a, y)| a * y).sum(), ABOUT),
        ("covariance", told_by_u((-u("covariance") / centre).sqrt()), EXACT),
        (
            "u of the intercept",
            told_by_u((u("intercept").powi(2) - u("at_centre").powi(2)).sqrt() / centre),
            EXACT,
        ),
    ];
    let walk = &analysis["walk"];
    if !walk.is_null() {
        // The delays of this demo are those of a constant fraction; a fixed level adds the walk's slope to theirs.
        let by_level = number(&walk["line"]["slope"]);
        told.push(("walk", -by_level / number(&walk["shift"][0]) - by_level, EXACT));
    }
    told
}

/// All of it belongs to the slope that is shown, which is the true one only where no seal is closed.
#[test]
fn whatever_follows_from_the_numbers_gives_the_slope_shown() {
    for (kind, mut notebook) in notebooks() {
        let truth = analyse(&notebook).line.unwrap().fit.slope;
        let hold = |notebook: &Notebook, expected: f64| {
            for (way, told, within) in slopes_that_follow(notebook) {
                let off = (told / expected - 1.0).abs();
                assert!(off < within, "{kind}: {told} by {way}, not {expected}, {truth} in truth");
            }
        };
        hold(&notebook, truth);
        notebook.apply(Edit::Seal("5f1c".into()), "").unwrap();
        let shown = analyse(&notebook).line.unwrap().fit.slope;
        assert!((shown / truth - 1.0).abs() > 0.01);
        hold(&notebook, shown);
        notebook.apply(Edit::OpenSeal, "").unwrap();
        hold(&notebook, truth);
    }
}

/// What a bundle gives: the line goes through the readings, so the intercept and a mean of theirs give a slope. It is
/// nearer to the one shown than to the true one.
#[test]
fn the_intercept_of_a_sealed_bundle_does_not_give_the_slope() {
    let (mut notebook, _) = demo::typed_readings().unwrap();
    let told = |notebook: &Notebook| {
        let analysis = analyse(notebook);
        let figures = fit_figures(&analysis);
        let value = |id| figures.iter().find(|figure| figure.id == id).unwrap().value;
        let rows = residual_rows(&analysis);
        let mean = |of: fn(&ResidualRow) -> f64| rows.iter().map(of).sum::<f64>() / rows.len() as f64;
        let by_means = (mean(|row| row.delay_ns) - value("intercept")) / mean(|row| row.distance_m);
        (by_means, value("slope"))
    };
    let (by_means, truth) = told(&notebook);
    assert!((by_means / truth - 1.0).abs() < 0.002, "{by_means} for {truth}");
    for salt in SALTS {
        let mut sealed = notebook.clone();
        sealed.apply(Edit::Seal(salt.into()), "").unwrap();
        let (by_means, shown) = told(&sealed);
        assert!((by_means - shown).abs() < (by_means - truth).abs(), "{by_means} is {shown} or {truth}");
    }
    notebook.apply(Edit::Seal("5f1c".into()), "").unwrap();
    notebook.apply(Edit::OpenSeal, "").unwrap();
    assert_eq!(told(&notebook), (by_means, truth));
}

#[test]
fn numbers_are_known_by_their_digits() {
    let text = "b = 3.3361(12) ns/m, 299\u{202f}792\u{202f}458 m/s, 2,998e8, ab3336cd, 0.003336, v2.9979, 12";
    let all: Vec<String> = numbers(text).into_iter().collect();
    assert_eq!(all, ["299792458", "2998", "3336", "33361"]);
    assert!(tells("3336", 3.336_1) && tells("33361", 3.336_1) && tells("3336100000", 3.336_1));
    assert!(!tells("3335", 3.336_1) && !tells("33362", 3.336_1) && !tells("3336200000", 3.336_1));
}
