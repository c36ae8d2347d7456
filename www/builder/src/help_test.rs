//! What is found wrong with a help page.

#![expect(clippy::expect_used, reason = "tests")]

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use super::{labels_unlike, links_into_nowhere, parsed, pictures_unlike, places_unlike, size_of_webp};

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
