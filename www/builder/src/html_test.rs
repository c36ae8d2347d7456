//! Finding and replacing elements in small pages.

#![expect(clippy::unwrap_used, reason = "tests")]

use super::{Element, compact, preloading, rewrite};

#[test]
fn attributes_are_read_quoted_bare_and_empty() {
    let element = Element {
        name: "link",
        whole: "",
        attributes: " rel=stylesheet href='./a b.css' Disabled x = \"y\"",
    };
    assert_eq!(element.attribute("rel"), Some("stylesheet"));
    assert_eq!(element.attribute("href"), Some("./a b.css"));
    assert_eq!(element.attribute("disabled"), Some(""));
    assert_eq!(element.attribute("x"), Some("y"));
    assert_eq!(element.attribute("no"), None);
}

#[test]
fn elements_are_replaced_or_stay_and_comments_go() {
    let page = "<p>a < b<!-- <script> --><linkage><meta charset=utf-8><script src=a.js></script>é</p>";
    let out = rewrite(page, |element| Ok((element.name == "script").then(|| "<i>".to_owned()))).unwrap();
    assert_eq!(out, "<p>a < b<linkage><meta charset=utf-8><i>é</p>");
    assert!(rewrite("<script>", |_| Ok(None)).is_err());
}

#[test]
fn a_compact_page_has_no_comments_and_no_blanks_about_its_lines() {
    assert_eq!(
        compact("<p>\n  one\n\n  <!-- two\n -->\n  <b>three</b> four\n").unwrap(),
        "<p>\none\n<b>three</b> four"
    );
}

#[test]
fn scripts_that_are_imported_are_asked_for_in_the_head() {
    let scripts = ["a.js".to_owned(), "b.js".to_owned()].into();
    assert_eq!(
        preloading("<head><title>t</title>\n</head><body>", &scripts).unwrap(),
        "<head><title>t</title>\n<link rel=\"modulepreload\" href=\"a.js\">\n<link rel=\"modulepreload\" href=\"b.js\">\n\
         </head><body>"
    );
    assert!(preloading("<body>", &scripts).is_err());
}
