#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;

fn sample() -> Table {
    let column = |name, title: &str, unit, kind| Column {
        name,
        title: title.into(),
        unit,
        kind,
        description: Some("Invented.".into()),
    };
    Table {
        name: "sample",
        title: "A <sample>".into(),
        columns: vec![
            column("delay_ns", "delay", "ns", Kind::Number),
            column("remark", "remark", "", Kind::Text),
        ],
        rows: vec![vec!["-1.5".into(), "a|b & <c>".into()], vec!["2".into(), "=1+1".into()]],
    }
}

#[test]
fn the_csv_has_its_units_in_the_head() {
    assert_eq!(sample().to_csv().unwrap(), "delay / ns,remark\r\n-1.5,a|b & <c>\r\n2,'=1+1\r\n");
}

#[test]
fn the_latex_is_a_tabular_with_the_package_array() {
    let latex = sample().to_latex();
    let column = |side: &str, width: &str| format!(">{{\\ragged{side}\\arraybackslash}}p{{{width}pt}}");
    let head = format!("\\begin{{tabular}}{{{}{}}}\n", column("left", "22.5"), column("right", "40.5"));
    assert!(latex.contains(&head), "{latex}");
    let rows = concat!(
        "\\hline\ndelay / ns & remark \\\\\n\\hline\n",
        "$-$1.5 & a\\textbar{}b \\& \\textless{}c\\textgreater{} \\\\\n",
        "2 & =1+1 \\\\\n\\hline\n\\end{tabular}}\n"
    );
    assert!(latex.ends_with(rows), "{latex}");
}

#[test]
fn the_markdown_is_a_pipe_table() {
    let expected = "| delay / ns | remark |\n| ---: | :--- |\n| -1.5 | a\\|b \\& \\<c\\> |\n| 2 | =1+1 |\n";
    assert_eq!(sample().to_markdown(), expected);
}

#[test]
fn the_html_is_a_table_of_texts() {
    let html = sample().to_html();
    assert!(html.starts_with(
        "<table class=\"sample\">\n<caption>A &lt;sample&gt;</caption>\n<thead><tr><th scope=\"col\">delay / ns</th>"
    ));
    assert!(
        html.contains("<tr><td class=\"number\">-1.5</td><td class=\"said\">a|b &amp; &lt;c&gt;</td></tr>")
    );
}

#[test]
fn a_row_of_another_length_is_refused() {
    let mut ragged = sample();
    ragged.rows.push(vec!["3".into()]);
    assert_eq!(ragged.to_csv(), Err(TableError { record: 4, found: 1, expected: 2 }));
}

#[test]
fn cells_are_found_by_column() {
    assert_eq!(sample().cells("delay_ns"), ["-1.5", "2"]);
    assert!(sample().cells("nothing").is_empty());
}

#[test]
fn the_low_part_of_a_symbol_stands_low() {
    let mut symbols = sample();
    symbols.columns[1].kind = Kind::Symbol;
    symbols.rows[0][1] = "u_c<".into();
    assert!(symbols.to_html().contains("<td class=\"symbol\">u<sub>c&lt;</sub></td>"));
    assert!(symbols.to_latex().contains("u\\textsubscript{c\\textless{}}"));
    assert!(symbols.to_markdown().contains("u<sub>c\\<</sub>"));
    assert!(symbols.to_csv().unwrap().contains("u_c<"));
    symbols.rows[0][1] = "c = n_g·v".into();
    assert!(
        symbols.to_html().contains("<td class=\"symbol\">c = n<sub>g</sub>·v</td>"),
        "a factor is not lowered"
    );
}
