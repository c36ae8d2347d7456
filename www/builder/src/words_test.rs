//! What a table holds, and what of it is used.

#![expect(clippy::expect_used, reason = "tests")]

use std::collections::BTreeSet;
use std::path::Path;

use super::{FIRST, Texts, in_html, in_one_order, language_of, read, slip, unlike, unnamed};
use crate::messages::Said;

fn of(text: &str) -> Texts {
    read(text).expect("the table is well-formed")
}

#[test]
fn a_text_asks_for_what_any_of_its_forms_holds() {
    let table = of(
        "none = Words alone\nsome = { $name } has { $count ->\n    [one] a row\n   *[other] { $count } rows of { $all }\n}\n",
    );
    assert!(table["none"].is_empty());
    assert_eq!(table["some"].iter().collect::<Vec<_>>(), ["all", "count", "name"]);
}

#[test]
fn the_one_file_names_each_text_once() {
    let first = "a = One\nb =\n    { $n ->\n        [one] a = b\n       *[other] c\n    }\n";
    let other = ("de".to_owned(), "b = Zwei\na =\n    Eins\n".to_owned());
    let whole = (FIRST.to_owned(), first.to_owned());
    let held = in_one_order(&[other, whole.clone()]).expect("both have the same texts");
    assert_eq!(held, [("de".to_owned(), "=\n    Eins\n= Zwei\n".to_owned()), whole.clone()]);
    let lacking = ("de".to_owned(), "a = Eins\n".to_owned());
    assert!(in_one_order(&[lacking, whole]).is_err());
}

#[test]
fn what_is_no_table_is_refused_with_its_line() {
    let error = read("a = Good\nb = { $\n").expect_err("a value has no name");
    assert!(error.to_string().starts_with("line 2"), "{error}");
    let error = read("a = One\na = Two\n").expect_err("it stands there twice");
    assert!(error.to_string().contains("twice"), "{error}");
}

#[test]
fn a_text_is_named_whole_or_by_a_template() {
    let table = of("row-new = a\nrow-old = b\nrow-old-hint = c\nlost = d\nrow = e\n");
    let source = "say('row-new'); say(`row-${age}`); <p data-words=\"row\">";
    assert_eq!(unnamed(&table, source), ["lost"]);
    assert_eq!(unnamed(&table, "say(`row-${age}-hint`)"), ["lost", "row", "row-new", "row-old"]);
}

#[test]
fn html_names_texts_of_elements_and_of_labels() {
    let html = r#"<h1 data-words="app"></h1><nav id="outline" data-label-words="parts"></nav>"#;
    assert_eq!(in_html(html).collect::<Vec<_>>(), ["app", "parts"]);
}

#[test]
fn a_message_of_the_core_gives_what_its_text_asks_for() {
    let table = of("plain = a\nfilled = { $n }\n");
    let message = |id: &str, values: &[&str]| Said {
        file: "a.rs".into(),
        id: id.into(),
        values: values.iter().map(|&name| name.to_owned()).collect(),
    };
    assert_eq!(slip(&table, &message("filled", &["n"])), None);
    assert_eq!(slip(&table, &message("plain", &[])), None);
    for (slipped, told) in [
        (message("lost", &[]), "no text “lost”"),
        (message("filled", &[]), "asks for n, and is given nothing"),
        (message("filled", &["m", "n"]), "asks for n, and is given m, n"),
    ] {
        let slip = slip(&table, &slipped);
        assert!(slip.as_ref().is_some_and(|slip| slip.contains(told)), "{slip:?}");
    }
}

#[test]
fn a_file_belongs_to_its_language_or_to_all() {
    let of = |path: &'static str| language_of(Path::new(path));
    assert_eq!(of("words/fr.ftl"), Some("fr"));
    assert_eq!(of("help/en.html"), Some("en"));
    assert_eq!(of("help/pictures/fr-line.webp"), Some("fr"));
    for path in ["help/help.css", "help/pictures/photographs.webp", "index.html", "fr-line.webp"] {
        assert_eq!(of(path), None, "{path}");
    }
}

#[test]
fn a_table_has_the_texts_of_the_first_and_fills_them_alike() {
    let first = of("a = A\nb = { $n } of { $all }\n");
    assert!(unlike(&first, &of("a = À\nb = { $all }, { $n }\n")).is_empty());
    assert_eq!(unlike(&first, &of("b = { $n } de { $all }\n")), ["lacks the text “a”"]);
    let told = unlike(&first, &of("a = À\nb = { $m } de { $all }\nc = C\n"));
    assert_eq!(
        told,
        ["the text “b” asks for all, m, and for all, n in en.ftl", "has the text “c”, which en.ftl has not"]
    );
}

/// Imprimerie nationale, Lexique des règles typographiques: a space that does not break stands before ; : ! ? % and ».
#[test]
fn french_signs_are_not_torn_from_their_words() {
    let sources = [include_str!("../../page/words/fr.ftl"), include_str!("../../page/help/fr.html")];
    for line in sources.iter().flat_map(|source| source.lines()).filter(|line| !line.starts_with('#')) {
        let line = line.split_once(" = ").map_or(line, |(_, text)| text);
        for torn in [" ;", " :", " !", " ?", " %", " »", "« "] {
            assert!(!line.contains(torn), "“{torn}” in {line}");
        }
    }
}

/// Where two places say the same in more than a few words, they say one text.
#[test]
fn no_sentence_stands_twice() {
    for table in [include_str!("../../page/words/en.ftl"), include_str!("../../page/words/fr.ftl")] {
        let mut sentences = BTreeSet::new();
        for (id, text) in table.lines().filter_map(|line| line.split_once(" = ")) {
            let is_sentence = text.split_whitespace().count() > 4;
            assert!(!is_sentence || sentences.insert(text), "“{text}”, as {id}, stands there twice");
        }
    }
}

/// What may stand behind a number in the texts, as its unit.
const UNITS: [&str; 16] =
    ["ns", "mm", "cm", "m", "div", "%", "u", "m/s", "ns²/m", "ppm", "hPa", "V", "mrad", "nm", "°C", "KiB"];

/// SI Brochure, 9th edition, 5.4.3: a space stands between a number and its unit. A line is not to end there.
#[test]
fn units_are_not_torn_from_their_numbers() {
    let sources = [
        include_str!("../../page/words/en.ftl"),
        include_str!("../../page/words/fr.ftl"),
        include_str!("../../page/help/en.html"),
        include_str!("../../page/help/fr.html"),
    ];
    for line in sources.iter().flat_map(|source| source.lines()).filter(|line| !line.starts_with('#')) {
        let words: Vec<&str> = line.split(' ').collect();
        for pair in words.windows(2) {
            let [number, behind] = pair else { continue };
            let unit =
                behind.split('<').next().unwrap_or_default().trim_end_matches(['.', ',', ':', ')', '”']);
            let is_number = number.ends_with(|last: char| last == '}' || last.is_numeric());
            assert!(!is_number || !UNITS.contains(&unit), "“{number} {unit}” in {line}");
        }
    }
}
