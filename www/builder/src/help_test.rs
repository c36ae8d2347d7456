//! What is found wrong with a help page.

#![expect(clippy::expect_used, reason = "tests")]

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

use super::{
    labels_unlike, links_into_nowhere, parsed, pictures_unlike, places_unlike, size_of_webp, unpaired,
};

const GOOD: &str = "<!DOCTYPE html><html><body><section id=\"a\"><b data-words=\"undo\">Undo</b><a href=\"#a\">up</a></section></body></html>";

fn labels() -> BTreeMap<String, String> {
    BTreeMap::from([("undo".to_owned(), "Undo".to_owned())])
}

#[test]
fn a_page_in_order_has_no_fault() {
    let help = parsed(GOOD, "en").expect("it is well-formed");
    assert!(labels_unlike(&help, &labels()).is_empty());
    assert!(links_into_nowhere(&help).is_empty());
    assert!(pictures_unlike(&help, Path::new(".")).is_empty());
    assert!(places_unlike(&help, &help).is_empty());
}

#[test]
fn each_fault_is_named() {
    let bad = GOOD
        .replace("Undo<", "Take back<")
        .replace("\"#a\"", "\"#b\"")
        .replace("<section id=\"a\">", "<section id=\"c\"><img src=\"no.webp\"/>");
    let (good, bad) = (parsed(GOOD, "en").expect("well-formed"), parsed(&bad, "fr").expect("well-formed"));
    assert_eq!(labels_unlike(&bad, &labels()), ["cites “Take back”, which the page calls “Undo” (undo)"]);
    assert_eq!(labels_unlike(&bad, &BTreeMap::new()).len(), 1);
    assert_eq!(links_into_nowhere(&bad), ["a link leads to #b"]);
    assert_eq!(pictures_unlike(&bad, Path::new(".")), ["there is no picture no.webp"]);
    assert_eq!(places_unlike(&bad, &good), ["lacks #a", "has #c, which no other language has"]);
}

#[test]
fn a_language_has_words_and_help() {
    let languages = |names: &[&str]| names.iter().map(|&name| name.to_owned()).collect::<Vec<_>>();
    assert!(unpaired(&languages(&["en", "fr"]), &languages(&["en", "fr"])).is_empty());
    assert_eq!(
        unpaired(&languages(&["en", "fr"]), &languages(&["en"])),
        ["words/fr.ftl has no help/fr.html"]
    );
    assert_eq!(
        unpaired(&languages(&["en"]), &languages(&["de", "en"])),
        ["help/de.html has no words/de.ftl"]
    );
}

/// RFC 9649, figure 7: after "RIFF", a size and "WEBP" the chunk "VP8X", its size, flags, and the two sides less one.
#[test]
fn a_size_is_held_against_the_picture() {
    let picture = b"RIFF\x16\0\0\0WEBPVP8X\x0a\0\0\0\x10\0\0\0\xff\x02\0\xf7\0\0".as_slice();
    assert_eq!(size_of_webp(picture), Some([768, 248]));
    assert_eq!(size_of_webp(picture.get(..28).expect("it is longer")), None);
    let folder = std::env::temp_dir().join(format!("slope-help-{}", std::process::id()));
    fs::create_dir_all(&folder).expect("a folder");
    fs::write(folder.join("a.webp"), picture).expect("a file");
    let of = |size: &str| {
        let text = GOOD.replace("<section", &format!("<img src=\"a.webp\" {size}/><section"));
        pictures_unlike(&parsed(&text, "en").expect("well-formed"), &folder)
    };
    let (right, wrong) = (of("width=\"768\" height=\"248\""), of("width=\"64512\" height=\"0\""));
    fs::remove_dir_all(&folder).expect("it was there");
    assert!(right.is_empty(), "{right:?}");
    assert_eq!(wrong, ["gives a.webp as 64512 × 0, and it is 768 × 248"]);
}

#[test]
fn what_is_not_well_formed_is_refused_by_its_name() {
    let error = parsed("<html><body><p></body></html>", "fr").expect_err("p is not closed");
    assert!(format!("{error:#}").starts_with("in help/fr.html"), "{error:#}");
}

const GUIDE: &str = include_str!("../../../DEVELOPERS.md");
const TABLE: &str = include_str!("../../page/words/en.ftl");
const HELP: &str = include_str!("../../page/help/en.html");

/// What a figure shows in place of a value, and so no names.
const NO_NAMES: [&str; 3] = ["figures-none", "figures-too_few_rows", "figures-no_expanded"];

/// The terms of the glossary.
fn glossary() -> BTreeSet<String> {
    let terms = HELP.split("<dfn>").skip(1);
    terms.filter_map(|rest| Some(rest.split_once("</dfn>")?.0.to_lowercase())).collect()
}

/// The terms that the guide answers for, in the first cells of its table.
fn answered() -> BTreeSet<String> {
    let (_, rest) = GUIDE.split_once("## Terms that").expect("the guide has them");
    let (table, _) = rest.split_once("\n## ").expect("something follows");
    let cells = table.lines().filter_map(|line| line.strip_prefix("| ")?.split(" | ").next()).skip(2);
    let mut terms = BTreeSet::new();
    for cell in cells {
        terms.extend(without_brackets(cell).to_lowercase().split(", ").map(|term| term.trim().to_owned()));
    }
    terms
}

/// A text without what stands in brackets.
fn without_brackets(text: &str) -> String {
    let mut parts = text.split('(');
    let start = parts.next().unwrap_or_default().to_owned();
    parts.fold(start, |bare, part| bare + part.split_once(')').map_or(part, |(_, rest)| rest))
}

/// What a reader meets: the texts of page and help.
fn met() -> String {
    let texts = TABLE.lines().filter(|line| !line.starts_with('#'));
    let texts = texts.map(|line| line.split_once(" = ").map_or(line, |(_, text)| text));
    let help = HELP.split('<').map(|part| part.split_once('>').map_or(part, |(_, text)| text));
    texts.chain(help).collect::<Vec<_>>().join(" ").to_lowercase()
}

/// Whether a text is the name of a figure, of a distribution or of a way to time edges.
fn is_name(id: &str) -> bool {
    let starts = ["figures-", "shared-shapes-", "traces-estimators-"];
    let rest = starts.iter().find_map(|start| id.strip_prefix(start));
    rest.is_some_and(|rest| !rest.contains('-')) && !NO_NAMES.contains(&id)
}

/// All these names.
fn names() -> Vec<String> {
    let texts = TABLE.lines().filter_map(|line| line.split_once(" = "));
    texts.filter(|(id, _)| is_name(id)).map(|(_, name)| name.to_lowercase()).collect()
}

/// Whether a word of a text begins as a term does: a term may stand in the plural.
fn holds(text: &str, term: &str) -> bool {
    text.match_indices(term)
        .any(|(at, _)| text.get(..at).is_none_or(|before| !before.ends_with(char::is_alphabetic)))
}

#[test]
fn each_term_is_explained_once_and_met() {
    let (glossary, answered) = (glossary(), answered());
    assert!(glossary.len() > 20 && answered.len() > 100, "{glossary:?}, {answered:?}");
    let twice: Vec<&String> = glossary.intersection(&answered).collect();
    assert!(twice.is_empty(), "in the glossary and in the guide: {twice:?}");
    let met = met();
    let unmet: Vec<&String> = answered.iter().filter(|term| !holds(&met, term)).collect();
    assert!(unmet.is_empty(), "in the guide, and nobody meets it: {unmet:?}");
}

#[test]
fn what_is_named_has_a_term_that_is_explained() {
    let (glossary, answered, names) = (glossary(), answered(), names());
    assert!(names.len() > 40, "{names:?}");
    for name in names {
        let explains = |term: &String| holds(&name, term) || holds(term, &name);
        assert!(glossary.union(&answered).any(explains), "neither glossary nor guide has a term of “{name}”");
    }
}
