//! The report in LaTeX: what stands in it, that nothing from a notebook becomes a command, and what LaTeX itself says.
//! Where there is no LaTeX, that is said and only the rest is tested.
#![expect(clippy::unwrap_used, clippy::panic, reason = "tests")]

use std::collections::BTreeMap;
use std::io::ErrorKind;
use std::process::Command;

use super::super::sample::{english, french, view_of};
use super::*;
use crate::analysis::analyse;
use crate::drawings::{ChartForm, Charts, charts};
use crate::notebook::Imprint;
use crate::simulated::demo;
use crate::view::view;
use crate::words::WordTable;

const HOSTILE: &str =
    "\\input{/etc/passwd} $x^2_3$ %\n\n& # ~ } { \\end{document} ^^M \\write18{ls} [*] | < >";

fn latex_of(text: &str) -> String {
    Document::of(&view_of(text), &Charts::default(), None, &Imprint::default(), &english()).latex()
}

/// The demo as a report, with its charts.
fn demo_in(words: &WordTable) -> String {
    let (notebook, _) = demo::typed_readings().unwrap();
    let analysis = analyse(&notebook);
    let charts = charts(notebook.state(), &analysis, None, ChartForm::Latex, words);
    Document::of(&view(&notebook, &analysis), &charts, None, &Imprint::of(&notebook), words).latex()
}

/// The commands of a document, but for those that set the signs of a text, each with how often it stands there.
fn commands(latex: &str) -> BTreeMap<&str, usize> {
    const SIGNS: [&str; 7] = [
        "textbackslash",
        "textasciitilde",
        "textasciicircum",
        "textless",
        "textgreater",
        "textbar",
        "textsubscript",
    ];
    let mut found = BTreeMap::new();
    for rest in latex.split('\\').skip(1) {
        let end = rest.find(|c: char| !c.is_ascii_alphabetic()).unwrap_or(rest.len());
        let name = rest.get(..end).unwrap();
        if !name.is_empty() && name != "newline" && !SIGNS.contains(&name) {
            *found.entry(name).or_insert(0) += 1;
        }
    }
    found
}

#[test]
fn no_text_of_a_notebook_becomes_a_command() {
    let (plain, hostile) = (latex_of("plain"), latex_of(HOSTILE));
    let (plain, hostile) = (commands(&plain), commands(&hostile));
    assert_eq!(plain, hostile);
    assert!(plain.contains_key("longtable") || plain.contains_key("endfirsthead"), "{plain:?}");
}

#[test]
fn a_table_alone_fits_a4() {
    let view = view_of("a text of several words that has no room on one line");
    let table = super::super::shown::readings_table(&view, &english());
    let latex = table.to_latex();
    let widths: Vec<f64> =
        latex.split("p{").skip(1).filter_map(|rest| rest.split("pt}").next()?.parse().ok()).collect();
    assert_eq!(widths.len(), table.columns.len());
    let taken = widths.iter().sum::<f64>() + 2.0 * COLUMN_SPACE * widths.len() as f64;
    assert!(taken <= ALONE.width, "{taken} pt");
    assert!(widths.iter().all(|width| *width > 0.0));
}

#[test]
fn a_struck_row_is_grey_but_not_its_reason() {
    let mut view = view_of("7");
    view.rows[1].struck = "bumped".into();
    let latex = Document::of(&view, &Charts::default(), None, &Imprint::default(), &english()).latex();
    let row = latex.lines().find(|line| line.contains("bumped")).unwrap();
    assert!(row.starts_with("\\color[gray]{0.55}2 & \\color[gray]{0.55}7"), "{row}");
    assert!(row.ends_with("& struck out: bumped & 7 \\\\"), "{row}");
}

/// What pdfLaTeX, run twice as tables over several pages ask, says of a document; nothing where there is none.
fn compiled(latex: &str, name: &str) -> Option<String> {
    let folder = std::env::temp_dir().join(format!("slope-of-light-latex-{name}-{}", std::process::id()));
    std::fs::create_dir_all(&folder).unwrap();
    std::fs::write(folder.join("report.tex"), latex).unwrap();
    let mut said = None;
    for _ in 0..2 {
        let run = Command::new("pdflatex")
            .args(["-interaction=nonstopmode", "-halt-on-error", "-no-shell-escape", "report.tex"])
            .current_dir(&folder)
            .output();
        said = match run {
            Ok(output) => {
                let log = String::from_utf8_lossy(&output.stdout).into_owned();
                assert!(output.status.success(), "{log}");
                Some(log)
            }
            Err(error) if error.kind() == ErrorKind::NotFound => {
                println!("skipped: no pdflatex");
                None
            }
            Err(error) => panic!("pdflatex did not start: {error}"),
        };
    }
    std::fs::remove_dir_all(&folder).unwrap();
    said
}

/// Lines that LaTeX could not fit, by more than a letter.
fn overfull(log: &str) -> Vec<&str> {
    let too_wide = |line: &&str| {
        let points = line.split_once('(').and_then(|(_, rest)| rest.split_once("pt too wide"));
        points.is_some_and(|(points, _)| points.parse::<f64>().is_ok_and(|points| points > REPORT.letter))
    };
    log.lines().filter(too_wide).collect()
}

#[test]
fn latex_compiles_the_demo_and_it_fits_the_page() {
    for (name, words) in [("english", english()), ("french", french())] {
        if let Some(log) = compiled(&demo_in(&words), name) {
            let overfull = overfull(&log);
            assert!(overfull.is_empty(), "{name}: {overfull:#?}");
        }
    }
}

#[test]
fn a_line_of_which_nothing_is_shown_parts_paragraphs() {
    // A word joiner, and a control character.
    assert_eq!(typed("\u{2060}\na\nb\n\u{7}\nc"), "\na\\newline\nb\n\nc\n\n");
}

/// Knuth, "The TeXbook", chapter 10: no dimension reaches 16384 pt.
#[test]
fn no_column_is_wider_than_tex_can_say() {
    let table = super::super::shown::readings_table(&view_of(&"a".repeat(4000)), &english());
    let widths = table.latex_columns(&REPORT);
    let widths = widths.split("p{").skip(1).map(|rest| rest.split("pt}").next().unwrap().parse::<f64>());
    assert!(widths.map(Result::unwrap).all(|width| width <= REPORT.width));
}

/// Words without a space may stand out of their columns, but nothing stops LaTeX.
#[test]
fn latex_compiles_whatever_was_typed() {
    for (name, text) in [
        ("hostile", HOSTILE),
        ("empty", ""),
        ("letters", "光速 скорость 🙂 ŵ ħĦĸĿŀŉŦŧſ"),
        ("joiner", "\u{2060}\na"),
    ] {
        compiled(&latex_of(text), name);
    }
}
