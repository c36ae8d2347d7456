#![expect(clippy::unwrap_used, reason = "tests")]

use super::super::sample::{english, view_of};
use super::*;
use crate::notebook::Splice;

#[test]
fn a_bare_number_has_its_unit_and_a_default_says_that_it_is_one() {
    let bench = |text: &str, unit: &str, default: &str| Field {
        text: text.into(),
        unit: unit.into(),
        default: default.into(),
        ..Field::default()
    };
    let (view, charts, english) = (view_of(""), Charts::default(), english());
    let report =
        Report { view: &view, charts: &charts, trials: None, imprint: &Imprint::default(), words: &english };
    let with_unit = |field: &Field| report.with_unit(field);
    assert_eq!(with_unit(&bench("405", "nm", "")), "405\u{a0}nm");
    assert_eq!(with_unit(&bench("0.405 µm", "nm", "")), "0.405 µm");
    assert_eq!(with_unit(&bench("", "ppm", "450")), "450\u{a0}ppm (default)");
    assert_eq!(with_unit(&bench("", "", "5")), "5 (default)");
    assert_eq!(with_unit(&bench("", "div", "half a small division")), "half a small division (default)");
    assert_eq!(with_unit(&bench("", "nm", "")), "");
}

/// Somebody else could set up the same bench.
#[test]
fn what_the_bench_was_made_of_is_told() {
    use BenchField::{Cables, EdgeFraction, FixedArm, Instruments, Trigger};
    let (mut view, charts, english) = (view_of(""), Charts::default(), english());
    let all = [Instruments, Cables, FixedArm, Trigger, EdgeFraction];
    for field in all {
        let text = format!("as typed of {field:?}");
        view.bench.insert(field, Field { text, ..Field::default() });
    }
    let report =
        Report { view: &view, charts: &charts, trials: None, imprint: &Imprint::default(), words: &english };
    let blocks = report.apparatus();
    for field in all {
        let fact = (english.say(&bench_field(field)), format!("as typed of {field:?}"));
        let told = |block: &Block| matches!(block, Block::Facts(facts) if facts.contains(&fact));
        assert!(blocks.iter().any(told), "{fact:?} in {blocks:?}");
    }
}

/// Notes stand where they were written, with their time, over all columns; one whose row is not there is not lost.
#[test]
fn notes_stand_between_the_rows() {
    let (mut view, charts, english) = (view_of("7"), Charts::default(), english());
    let note = |id, after, text: &str, at: &str| Note { id, after, text: text.into(), at: at.into() };
    let [first, second] = [view.rows[0].id, view.rows[1].id];
    view.notes = vec![
        note(21, Some(second), "At the end", ""),
        note(22, Some(first), "Lamp changed", "2031-05-06T10:15:00.000Z"),
        note(23, Some(99), "Of a row that is not there", ""),
        note(24, Some(first), " ", ""),
    ];
    let report =
        Report { view: &view, charts: &charts, trials: None, imprint: &Imprint::default(), words: &english };
    let Some(Block::Readings(table, struck)) = report.readings().into_iter().next() else {
        unreachable!("there are rows")
    };
    let heads: Vec<&str> = table.rows.iter().map(|row| row[0].as_str()).collect();
    let dated = "2031-05-06, 10:15 UTC: Lamp changed";
    assert_eq!(heads, ["Of a row that is not there", "1", dated, "2", "At the end"]);
    assert_eq!(struck, [false, false, false, true]);
    let across = format!("colspan=\"{}\">{dated}<", table.columns.len());
    assert!(table.to_html().contains(&across), "{}", table.to_html());
    assert!(table.to_markdown().contains("Lamp changed"));
}

#[test]
fn splices_are_told_with_their_units() {
    let meeting = |gap: &str| Splice::Joined {
        mark: "0".into(),
        mark_before: "1000 mm".into(),
        gap: gap.into(),
        uncertainty: "0.5 mm".into(),
    };
    let told = "mark 0\u{a0}cm meets mark 1000 mm on the previous rail, with a gap of 0.2\u{a0}cm";
    let english = english();
    let told_of = |splice: &Splice| english.say(&labels::splice(splice, "cm", "mm"));
    assert_eq!(told_of(&meeting("0.2")), told);
    assert!(told_of(&meeting("")).contains("a gap of (not stated)"));
    let overlap = Splice::Overlap { pairs: vec![] };
    assert_eq!(told_of(&overlap), "positions read on both rulers: none yet");
}

#[test]
fn how_delays_were_obtained_is_told() {
    let (mut view, charts, english) = (view_of("x"), Charts::default(), english());
    let told = |view: &View| match (Report {
        view,
        charts: &charts,
        trials: None,
        imprint: &Imprint::default(),
        words: &english,
    })
    .delays()
    {
        Some(Block::Paragraph(text)) => text,
        other => format!("{other:?}"),
    };
    let on_screen = told(&view);
    assert!(on_screen.contains("(edge B − edge A)") && !on_screen.contains("typed"), "{on_screen}");
    view.rows[0].cells.insert(Cell::Delay, Field { text: "3.5".into(), ..Field::default() });
    let typed = told(&view);
    assert!(typed.starts_with("Row 1: the delay was typed."), "{typed}");
    view.rows[0].evidence = EvidenceKind::Traces;
    let how = english.say(&estimator_name(view.delays.estimator));
    let text = told(&view);
    assert!(text.contains("recorded traces") && text.contains(&how), "{text}");
    assert!(!text.contains("photo"), "{text}");
}

#[test]
fn rows_that_follow_one_another_are_told_by_their_ends() {
    let told = |numbers: &[usize]| english().say(&message!("list", all = labels::rows(numbers)));
    assert_eq!(told(&[2, 3, 4, 5]), "2–5");
    assert_eq!(told(&[1, 2, 4, 6, 7, 8]), "1, 2, 4, and 6–8");
}

/// What is refused counts nowhere: it is not called an uncertainty.
#[test]
fn what_is_refused_says_so() {
    let (view, charts, english) = (view_of(""), Charts::default(), english());
    let report =
        Report { view: &view, charts: &charts, trials: None, imprint: &Imprint::default(), words: &english };
    let meant =
        Meant { of: None, kind: UncertaintyKind::Standard, u: String::new(), under_root: 3, exact: false };
    let problem = Some(message!("list", all = "why"));
    let field = Field { text: "±2 %".into(), problem, meant: Some(meant), ..Field::default() };
    assert_eq!(report.with_unit(&field), "±2 % (can’t be used)");
}

/// What no row rests on is no part of the report: neither uncertainty of marks without photos, nor thresholds without
/// traces, unless somebody typed them.
#[test]
fn a_default_on_which_nothing_rests_is_not_told() {
    let (mut view, charts, english) = (view_of("7"), Charts::default(), english());
    let mark = BenchField::MarkUncertainty;
    let told = |view: &View| {
        let imprint = Imprint::default();
        let report = Report { view, charts: &charts, trials: None, imprint: &imprint, words: &english };
        report.counts(mark)
    };
    view.bench.insert(mark, Field { default: "1 px".into(), ..Field::default() });
    assert!(!told(&view));
    view.bench.insert(mark, Field { text: "2 px".into(), ..Field::default() });
    assert!(told(&view), "it is typed");
    view.bench.insert(mark, Field::default());
    view.rows[0].evidence = EvidenceKind::Picture;
    assert!(told(&view));
}

/// The history in brief: how much, when, by which version, and the digest by which a later change shows.
#[test]
fn the_history_says_when_and_has_its_digest() {
    let (view, charts, english) = (view_of(""), Charts::default(), english());
    let at = |time: &str| format!("2031-05-06T{time}:30.000Z");
    let imprint = Imprint { first: at("09:10"), last: at("11:45"), digest: "5f".repeat(32) };
    let report = Report { view: &view, charts: &charts, trials: None, imprint: &imprint, words: &english };
    let Some(Block::Paragraph(told)) = report.history().into_iter().next() else {
        unreachable!("it is told")
    };
    for part in [
        "12 entries",
        "from 2031-05-06 09:10 to 2031-05-06 11:45 (UTC)",
        "version 0.",
        imprint.digest.as_str(),
    ] {
        assert!(told.contains(part), "{part} in {told}");
    }
}

/// On paper the small shares stand in the table alone.
#[test]
fn only_shares_that_can_be_seen_are_drawn() {
    use crate::drawings::{ChartForm, charts};
    let (notebook, _) = crate::simulated::demo::typed_readings().unwrap();
    let (analysis, english) = (crate::analysis::analyse(&notebook), english());
    let drawn = charts(notebook.state(), &analysis, None, ChartForm::Svg, &english).budget;
    let view = crate::view::view(&notebook, &analysis);
    let table = budget_table(&view, &english);
    let (largest, least) = (table.rows[0][0].as_str(), table.rows[table.rows.len() - 1][0].as_str());
    assert!(drawn.contains(largest) && !drawn.contains(least), "{largest}, not {least}, in {drawn}");
}

/// In the table of rails a step is told in few words; the page has room for a sentence.
#[test]
fn a_step_is_told_in_few_words() {
    let (notebook, _) = crate::simulated::demo::typed_readings().unwrap();
    let view = crate::view::view(&notebook, &crate::analysis::analyse(&notebook));
    let (charts, english, imprint) = (Charts::default(), english(), Imprint::default());
    let report = Report { view: &view, charts: &charts, trials: None, imprint: &imprint, words: &english };
    let step = view.rails[0].step.as_ref().unwrap();
    assert!(english.say(step).starts_with("The readings show a step of"));
    let told = report.step(step);
    assert!(told.contains("mm, not significantly different from zero (p = "), "{told}");
}
