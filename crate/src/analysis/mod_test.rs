//! The analysis as a whole: what it refuses, where it says so, and that it never loses what was typed.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;
use crate::notebook::{Cell, Edit, Notebook, RailField, Splice};
use crate::view::view;
use crate::words::in_english;

/// Rows that give distance and delay directly: (d, u(d), Δt, u(Δt)) as typed.
fn direct(rows: &[[&str; 4]]) -> Notebook {
    let mut notebook = Notebook::new();
    for (row, texts) in (1..).zip(rows) {
        let cells = [Cell::Distance, Cell::DistanceUncertainty, Cell::Delay, Cell::DelayUncertainty];
        let cells = cells.into_iter().zip(texts.map(str::to_owned)).collect();
        notebook.apply(Edit::AddRow { row, after: None, cells }, "").unwrap();
    }
    notebook
}

/// One rail at the splitter, and rows of (rail, reading, time base, edge A, edge B) as typed.
fn on_a_rail(splice: Splice, rows: &[[&str; 5]]) -> Notebook {
    let mut notebook = Notebook::new();
    notebook.apply(Edit::AddRail(1), "").unwrap();
    notebook.apply(Edit::SetSplice { rail: 1, splice }, "").unwrap();
    for (field, text) in [(RailField::From, "0"), (RailField::To, "200")] {
        notebook.apply(Edit::SetRail { rail: 1, field, text: text.into() }, "").unwrap();
    }
    for (row, texts) in (1..).zip(rows) {
        let cells = [Cell::Rail, Cell::Reading, Cell::TimeBase, Cell::EdgeA, Cell::EdgeB];
        let cells = cells.into_iter().zip(texts.map(str::to_owned)).collect();
        notebook.apply(Edit::AddRow { row, after: None, cells }, "").unwrap();
    }
    notebook
}

fn at_splitter() -> Splice {
    Splice::AtSplitter { mark: "0".into(), uncertainty: "1 mm".into() }
}

fn refusal(notebook: &Notebook) -> Refusal {
    analyse(notebook).line.unwrap_err()
}

/// While a rail that is renamed has another's name, its rows are still read on it.
#[test]
fn a_row_is_read_on_its_rail_while_that_is_renamed() {
    let mut notebook = on_a_rail(at_splitter(), &[["1", "10", "5", "1", "2"]]);
    let name = |rail, name: &str| Edit::RenameRail { rail, name: name.into() };
    for edit in [name(1, "A"), Edit::AddRail(9), name(9, "B"), name(1, "B")] {
        notebook.apply(edit, "").unwrap();
        assert_eq!(analyse(&notebook).rows.first().and_then(|row| row.rail), Some(1));
    }
}

/// What all rows leave out is treated as exact, and that is said beside the result.
#[test]
fn what_no_row_states_is_noticed() {
    let missing = |rows: &[[&str; 4]]| {
        let notices = analyse(&direct(rows)).notices;
        notices.into_iter().find(|n| n.id == "uncertainty_missing").map(|n| in_english(&n.text))
    };
    let delays = missing(&[["1", "0.01", "3", ""], ["2", "0.01", "6", ""], ["3", "0.01", "9.1", ""]]);
    assert!(delays.is_some_and(|text| text.contains("its delay")));
    let distances = missing(&[["1", "", "3", "0.1"], ["2", "", "6", "0.1"], ["3", "", "9.1", "0.1"]]);
    assert!(distances.is_some_and(|text| text.contains("its distance")));
    let zeros = [["1", "0", "3", "0.1"], ["2", "0", "6", "0.1"], ["3", "0", "9.1", "0.1"]];
    assert_eq!(missing(&zeros), None, "stated as exact");
    assert_eq!(
        missing(&[["1", "", "3", ""], ["2", "", "6", ""], ["3", "", "9.1", ""]]),
        None,
        "from the scatter"
    );
}

/// Ten rows of one spread, the fifth of them far off: Chauvenet and Peirce point at it alone, whatever is stated of the rows,
/// since both judge by the deviations of the sample itself (J. R. Taylor, An Introduction to Error Analysis; S. M. Ross,
/// J. Eng. Technol. 20 (2003) 38; their limits for ten values are 1.960 and 1.878).
#[test]
fn doubtful_rows_do_not_hang_on_what_was_stated() {
    let off = |row: u32| if row == 5 { 1.2 } else { 0.1 * (1.0 - 2.0 * f64::from(row % 2)) };
    let delays: Vec<String> = (1..=10).map(|row| format!("{:.2}", 3.3 * f64::from(row) + off(row))).collect();
    let places: Vec<String> = (1..=10).map(|row: u32| row.to_string()).collect();
    for u in ["2", "0.1", "0.01", ""] {
        let rows: Vec<[&str; 4]> = places
            .iter()
            .zip(&delays)
            .map(|(place, delay)| [place.as_str(), "", delay.as_str(), u])
            .collect();
        let checks = analyse(&direct(&rows)).line.unwrap().checks.clone();
        assert_eq!((checks.chauvenet, checks.peirce), (vec![5], vec![5]), "u = {u}");
    }
}

#[test]
fn refusals_name_what_is_missing() {
    let cases: Vec<(Notebook, &str, &str)> = vec![
        (Notebook::new(), "too_few_rows", "No row has both"),
        (direct(&[["1", "", "3", ""]]), "too_few_rows", "One row is not enough"),
        (
            direct(&[["1", "", "3", "0.1"], ["1", "", "4", "0.1"], ["1", "", "5", "0.1"]]),
            "all_positions_equal",
            "other positions",
        ),
        (
            direct(&[["1", "0", "3", "0"], ["2", "0", "6", "0.1"], ["3", "0", "9", "0"]]),
            "zero_uncertainty",
            "Rows 1 and 3",
        ),
        (
            direct(&[["1", "", "3", "0.1"], ["2", "", "6", ""], ["3", "", "9", "0.1"]]),
            "some_unstated",
            "Row 2",
        ),
        (
            direct(&[["1", "0.01", "3", "0.1"], ["2", "0.01", "6", ""], ["3", "0.01", "9", "0.1"]]),
            "some_unstated",
            "Row 2",
        ),
        (
            direct(&[["1", "0.01", "3", "0.1"], ["2", "", "6", "0.1"], ["3", "", "9", "0.1"]]),
            "some_unstated",
            "Rows 2 and 3",
        ),
    ];
    for (notebook, id, words) in cases {
        let refusal = refusal(&notebook);
        assert_eq!(refusal.id, id);
        let text = in_english(&refusal.message);
        assert!(text.contains(words), "{text}");
        let shown = view(&notebook, &analyse(&notebook));
        assert_eq!(shown.line.refusal, Some(refusal.message));
        assert!(shown.result.refusal.is_some());
    }
}

#[test]
fn two_rows_give_a_line_and_stated_uncertainties_its_uncertainty() {
    let bare = analyse(&direct(&[["1", "", "4", ""], ["3", "", "10", ""]]));
    assert_eq!(bare.line.unwrap().fit.slope, 3.0);
    assert_eq!(bare.speed.unwrap_err().id, "no_uncertainty");
    let stated = analyse(&direct(&[["1", "", "4", "0.3"], ["3", "", "10", "0.4"]]));
    // u(b) = √(0.3² + 0.4²)/2 by propagation (JCGM 100:2008, 5.1.2): exact to rounding.
    let u = stated.line.unwrap().fit.uncertainty.unwrap().slope;
    assert!((u - 0.25).abs() <= 1e-15, "{u}");
    assert!(stated.speed.is_ok());
}

/// After an edit the line is what it would be by the whole way, to the last bit, and checks and notices stay; but nothing
/// stays that was said before a seal was closed.
#[test]
fn the_line_comes_at_once_and_what_is_thought_of_it_after() {
    let mut notebook =
        direct(&[["1", "", "3", ""], ["2", "", "6.1", ""], ["3", "", "9", ""], ["4", "", "12", ""]]);
    let before = analyse(&notebook);
    notebook
        .apply(Edit::SetCell { row: 4, cell: Cell::Delay, text: "42".into() }, "2026-01-01T00:00:00Z")
        .unwrap();
    let (line, whole) = (analyse_line(notebook.state(), &before), analyse(&notebook));
    assert!(whole.judged && !line.judged);
    assert_ne!(whole.notices, before.notices);
    assert_eq!(line.notices, before.notices);
    assert_eq!(line.line.as_ref().unwrap().checks, before.line.as_ref().unwrap().checks);
    assert_eq!(line.line.as_ref().unwrap().fit, whole.line.as_ref().unwrap().fit);
    assert_eq!((&line.rows, &line.speed, &line.drawn), (&whole.rows, &whole.speed, &whole.drawn));

    notebook.apply(Edit::Seal("salt".into()), "2026-01-01T00:00:00Z").unwrap();
    assert_eq!(analyse_line(notebook.state(), &whole), analyse(&notebook));
    let sealed = analyse(&notebook);
    notebook.apply(Edit::OpenSeal, "2026-01-01T00:00:00Z").unwrap();
    assert_eq!(analyse_line(notebook.state(), &sealed), analyse(&notebook));
}

#[test]
fn what_cannot_be_read_is_noted_at_its_cell_and_kept() {
    let texts = ["12o", "1e400", "NaN", "1,5", "inf", "1.2.3", "5 ns", "--3"];
    for text in texts {
        let notebook = direct(&[[text, "", "3", "0.1"], ["2", "", "6", "0.1"], ["3", "", "9", "0.1"]]);
        let analysis = analyse(&notebook);
        let place = Place::Cell { row: 1, cell: Cell::Distance };
        let problem = analysis.problems.iter().find(|p| p.place == place);
        assert!(problem.is_some(), "“{text}” should be noted");
        assert!(in_english(&problem.unwrap().message).len() > 10);
        assert_eq!(analysis.line.as_ref().unwrap().rows, vec![2, 3], "the other rows go on");
        let shown = view(&notebook, &analysis);
        assert_eq!(shown.rows[0].cells[&Cell::Distance].text, text);
        assert_eq!(
            shown.rows[0].cells[&Cell::Distance].problem.as_ref(),
            problem.map(|problem| &problem.message)
        );
        assert!(shown.rows[0].lacks.is_some());
    }
}

#[test]
fn a_negative_uncertainty_is_noted_and_keeps_its_row_out() {
    let analysis = analyse(&direct(&[["1", "", "3", "-0.1"], ["2", "", "6", "0.1"], ["3", "", "9", "0.1"]]));
    assert_eq!(analysis.problems[0].message.id, "number-negative");
    assert_eq!(analysis.line.unwrap().rows, vec![2, 3]);
}

#[test]
fn a_row_on_no_rail_and_a_rail_with_no_splice_say_so() {
    let row = ["side", "10", "2", "1", "3"];
    let analysis = analyse(&on_a_rail(at_splitter(), &[row]));
    let place = Place::Cell { row: 1, cell: Cell::Rail };
    assert!(analysis.problems.iter().any(|p| p.place == place && in_english(&p.message).contains("“side”")));

    let analysis = analyse(&on_a_rail(Splice::Unsaid, &[["1", "10", "2", "1", "3"]]));
    let place = Place::Splice { rail: 1, part: place::SplicePart::Whole };
    assert!(analysis.problems.iter().any(|p| p.place == place));
    assert!(matches!(&analysis.rows[0].part, RowPart::Incomplete { lacks: RowError::RailUnplaced }));
}

#[test]
fn a_name_that_two_rails_share_gives_no_distance() {
    let mut notebook = on_a_rail(at_splitter(), &[["A", "10", "2", "1", "3"]]);
    let name = |rail: u32, text: &str| Edit::SetRail { rail, field: RailField::Name, text: text.into() };
    for edit in [name(1, "A"), Edit::AddRail(2), name(2, "a")] {
        notebook.apply(edit, "").unwrap();
    }
    let analysis = analyse(&notebook);
    let place = Place::Cell { row: 1, cell: Cell::Rail };
    assert!(analysis.problems.iter().any(|p| p.place == place && p.message.id == "row-rail_ambiguous"));
    assert_eq!(analysis.rows[0].distance, None);
    notebook.apply(name(2, "B"), "").unwrap();
    assert!(analyse(&notebook).rows[0].distance.is_some());
}

#[test]
fn a_decimal_comma_notebook_reads_commas_and_refuses_points() {
    let mut notebook = direct(&[["1,5", "", "3", "0,1"], ["2,5", "", "6,5", "0,1"]]);
    assert_eq!(analyse(&notebook).rows[0].distance, None);
    let mark = crate::quantity::DecimalMark::Comma;
    notebook.apply(Edit::SetDecimalMark(mark), "").unwrap();
    let analysis = analyse(&notebook);
    assert_eq!(analysis.rows[0].distance.unwrap().value, 1.5);
    assert!(analysis.problems.is_empty());
}

#[test]
fn what_is_given_twice_is_not_guessed() {
    let mut notebook = on_a_rail(at_splitter(), &[["1", "10", "2", "1", "3"]]);
    notebook.apply(Edit::SetCell { row: 1, cell: Cell::Delay, text: "4".into() }, "").unwrap();
    notebook.apply(Edit::SetCell { row: 1, cell: Cell::Distance, text: "0.1".into() }, "").unwrap();
    let analysis = analyse(&notebook);
    let cells: Vec<_> = analysis.problems.iter().map(|p| p.place.clone()).collect();
    assert!(cells.contains(&Place::Cell { row: 1, cell: Cell::Delay }));
    assert!(cells.contains(&Place::Cell { row: 1, cell: Cell::Distance }));
}

#[test]
fn screen_rows_take_rail_and_time_base_from_the_only_one_there_is() {
    let mut notebook = on_a_rail(at_splitter(), &[["", "10", "", "1", "3"]]);
    let setting =
        crate::notebook::Setting { id: 1, time_per_division: "2 ns".into(), uncertainty: "1".into() };
    notebook.apply(Edit::SetSetting(setting), "").unwrap();
    let analysis = analyse(&notebook);
    assert_eq!(analysis.rows[0].part, RowPart::Used);
    assert_eq!(analysis.rows[0].delay.unwrap().value, 4.0);
}
