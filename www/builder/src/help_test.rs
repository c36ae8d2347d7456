//! What is found wrong with a help page.

#![expect(clippy::expect_used, reason = "tests")]

use std::collections::BTreeMap;
use std::path::Path;

use super::{labels_unlike, links_into_nowhere, missing_pictures, parsed, places_unlike};

const GOOD: &str = "<!DOCTYPE html><html><body><section id=\"a\"><b data-words=\"undo\">Undo</b><a href=\"#a\">up</a></section></body></html>";

fn labels() -> BTreeMap<String, String> {
    BTreeMap::from([("undo".to_owned(), "Undo".to_owned())])
}

#[test]
fn a_page_in_order_has_no_fault() {
    let help = parsed(GOOD, "en").expect("it is well-formed");
    assert!(labels_unlike(&help, &labels()).is_empty());
    assert!(links_into_nowhere(&help).is_empty());
    assert!(missing_pictures(&help, Path::new(".")).is_empty());
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
    assert_eq!(missing_pictures(&bad, Path::new(".")), ["there is no picture no.webp"]);
    assert_eq!(places_unlike(&bad, &good), ["lacks #a", "has #c, which no other language has"]);
}

#[test]
fn what_is_not_well_formed_is_refused_by_its_name() {
    let error = parsed("<html><body><p></body></html>", "fr").expect_err("p is not closed");
    assert!(format!("{error:#}").starts_with("in help/fr.html"), "{error:#}");
}
