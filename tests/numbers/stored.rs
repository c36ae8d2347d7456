//! Notebooks as format 1 stored them: `reference/format_1/` holds the demo sets as they were before traces' remarks were
//! stored as what they are, and beside them the tables that the program of then wrote into their bundles.

#![expect(clippy::expect_used, reason = "tests")]

use serde_json::Value;
use slope_of_light::analysis::analyse;
use slope_of_light::notebook::{Evidence, read, remark_words, write};
use slope_of_light::quantity::DecimalMark;
use slope_of_light::report::exact::{fit_figures, fit_table, residual_rows, residuals_table};
use slope_of_light::words::Table;

const TRACES: &str = include_str!("reference/format_1/traces.json");
const PHOTOGRAPHS: &str = include_str!("reference/format_1/photographs.json");
const TYPED: &str = include_str!("reference/format_1/typed-readings.json");

/// Every double with all its digits, as the program of then wrote it.
#[test]
fn they_give_the_digits_that_they_gave() {
    let sets = [
        (
            TRACES,
            include_str!("reference/format_1/traces.line.csv"),
            include_str!("reference/format_1/traces.residuals.csv"),
        ),
        (
            PHOTOGRAPHS,
            include_str!("reference/format_1/photographs.line.csv"),
            include_str!("reference/format_1/photographs.residuals.csv"),
        ),
    ];
    let words = Table::english().expect("the table of English");
    for (text, line, residuals) in sets {
        let analysis = analyse(&read(text).expect("a notebook"));
        let figures = fit_table(&fit_figures(&analysis), &words).to_csv().expect("a table");
        assert_eq!(without_words(&figures, Some(NAME)), without_words(line, Some(NAME)));
        let rows = residuals_table(&residual_rows(&analysis), &words).to_csv().expect("a table");
        assert_eq!(without_words(&rows, None), without_words(residuals, None));
    }
}

/// The column of a figure's name, whose words may change.
const NAME: usize = 1;

/// The cells of a table without its heads, which are words, and without one column.
fn without_words(csv: &str, column: Option<usize>) -> Vec<Vec<&str>> {
    let cells = |line| {
        let cells = str::split(line, ',').enumerate();
        cells.filter(|(place, _)| Some(*place) != column).map(|(_, cell)| cell).collect()
    };
    csv.lines().skip(1).map(cells).collect()
}

/// What is written now opens again as the same notebook.
#[test]
fn written_anew_they_are_the_same_notebooks() {
    for text in [TRACES, PHOTOGRAPHS, TYPED] {
        let notebook = read(text).expect("a notebook");
        let again = read(&write(&notebook)).expect("a notebook");
        assert_eq!(notebook.log(), again.log());
    }
}

/// The remarks of the traces, which were sentences, are told in the same words.
#[test]
fn their_remarks_say_what_they_said() {
    let stored: Value = serde_json::from_str(TRACES).expect("JSON");
    let mut said = Vec::new();
    collect(&stored, &mut said);
    let notebook = read(TRACES).expect("a notebook");
    let mut says = Vec::new();
    for row in &notebook.state().rows {
        let Some(Evidence::Traces(traces)) = &row.evidence else { continue };
        for delay in &traces.delays {
            let words = remark_words(&delay.remarks, &traces.files, DecimalMark::Point);
            if !words.is_empty() {
                says.push(words);
            }
        }
    }
    assert_eq!(said.len(), 32);
    assert_eq!(says, said);
    assert!(!write(&notebook).contains("over the baselines"));
}

/// Every remark in words, in the order of the file.
fn collect(value: &Value, said: &mut Vec<String>) {
    match value {
        Value::Object(members) => {
            if let (Some(_), Some(Value::String(remark))) = (members.get("estimator"), members.get("remark"))
            {
                said.push(remark.clone());
            }
            members.values().for_each(|member| collect(member, said));
        }
        Value::Array(items) => items.iter().for_each(|item| collect(item, said)),
        _ => {}
    }
}
