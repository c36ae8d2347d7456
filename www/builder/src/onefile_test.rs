//! The one file's policy and what it holds.

#![expect(clippy::unwrap_used, reason = "tests")]

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::io::Read as _;

use flate2::read::GzDecoder;

use super::{DIGITS, Handed, Scripts, hash, help, in_digits, make};

/// The digest of the empty text by FIPS 180-4, as the sha256sum of GNU coreutils computes it (e3b0c442 98fc1c14 …), in
/// base64.
#[test]
fn a_hash_is_written_as_the_policy_wants_it() {
    assert_eq!(hash(""), "'sha256-47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU='");
}

#[test]
fn the_file_holds_everything_and_its_policy_names_it() {
    let folder = std::env::temp_dir().join(format!("slope-onefile-{}", std::process::id()));
    fs::create_dir_all(&folder).unwrap();
    let page = "<!doctype html><html><head><meta charset=utf-8>\
                <meta http-equiv=\"content-security-policy\" content=\"default-src 'self'\">\
                <link rel=stylesheet href=a.css><link rel=stylesheet href=late.css disabled></head>\
                <body><script type=module src=./a.js></script></body></html>";
    for (name, text) in [("index.html", page), ("a.css", "p { margin: 0 }"), ("late.css", "i {}")] {
        fs::write(folder.join(name), text).unwrap();
    }
    let handed = [
        ("SLOPE_CORE", Handed::Bytes(b"\0asm".to_vec())),
        ("SLOPE_PICTURES", Handed::Texts(vec![("a<b.webp".to_owned(), "abc".to_owned())])),
        ("SLOPE_HELP", Handed::Texts(vec![("en".to_owned(), "<p>".to_owned())])),
    ];
    let page = "x('</script>');";
    let started_by = |start: &str, styles| {
        make(&folder, &handed, &Scripts { page: page.to_owned(), start: start.to_owned() }, &styles)
    };
    let file = started_by("x('<\\/script>');", BTreeSet::from(["b {}".to_owned()])).unwrap();
    let ended = started_by("x('</SCRIPT>');", BTreeSet::new());
    fs::remove_dir_all(&folder).unwrap();
    assert_eq!(file.matches("Content-Security-Policy").count(), 1);
    assert_eq!(file.matches("<style>").count(), 1);
    assert_eq!(handed_by(&file, "SLOPE_LATE_STYLE"), b"i {}");
    assert!(file.contains(&hash("i {}")), "what comes later is let in once it is unpacked");
    assert_eq!(handed_by(&file, "SLOPE_CORE"), b"\0asm");
    assert_eq!(handed_by(&file, "SLOPE_PAGE"), page.as_bytes());
    assert!(file.contains(&hash(page)), "the page's script is let in once it is unpacked");
    assert!(file.contains(r#"SLOPE_PICTURES={"a\u003Cb.webp":""#));
    assert!(ended.is_err(), "a script that HTML would end is not inlined");
    assert!(file.contains("worker-src blob:"));
    assert!(file.contains("media-src blob:"));
    assert_eq!(file.matches("</script").count(), 2);
    for script in file.split("<script").skip(1) {
        let body = script.split_once('>').unwrap().1.split_once("</script>").unwrap().0;
        assert!(file.contains(&hash(body)));
    }
    assert!(file.contains(&hash("p { margin: 0 }")));
    assert!(file.contains(&hash("b {}")), "the style of the help is let in");
    // RFC 1952: 1f 8b 08, and no name (00). The lowest 13 bits are 26 + 91 · 31, the next 68 + 91 · 0.
    assert!(file.contains("SLOPE_HELP={\"en\":\"=Bh!"));
    assert!(!file.contains("src=") && !file.contains("href="));
}

/// What a file hands its scripts by a name, unpacked.
fn handed_by(file: &str, name: &str) -> Vec<u8> {
    let (_, packed) = file.split_once(&format!("{name}=\"")).unwrap();
    let mut bytes = Vec::new();
    GzDecoder::new(from_digits(packed.split_once('"').unwrap().0).as_slice())
        .read_to_end(&mut bytes)
        .unwrap();
    bytes
}

/// The bytes that digits stand for: each pair a number of 13 bits, a last single one of 6.
fn from_digits(text: &str) -> Vec<u8> {
    let value = |digit: u8| DIGITS.iter().position(|other| *other == digit).unwrap();
    let mut bits = Vec::new();
    for pair in text.as_bytes().chunks(2) {
        let number = pair.iter().rev().fold(0, |number, digit| 91 * number + value(*digit));
        bits.extend((0..[6, 13][pair.len() - 1]).map(|bit| number >> bit & 1 == 1));
    }
    bits.chunks_exact(8).map(|byte| byte.iter().rev().fold(0, |all, bit| 2 * all + u8::from(*bit))).collect()
}

#[test]
fn digits_hold_bytes_of_any_number() {
    let bytes: Vec<u8> = (0..=255).map(|byte: u8| byte.wrapping_mul(167)).collect();
    for length in 0..=bytes.len() {
        let text = in_digits(&bytes[..length]);
        assert_eq!(from_digits(&text), bytes[..length]);
        assert!(2 * 8 * length <= 13 * text.len() && text.len() <= 16 * length / 13 + 2, "{length}: {text}");
        assert!(!text.contains(['"', '\\', '<', ' ', '\n']));
    }
}

#[test]
fn a_help_page_is_one_text() {
    let folder = std::env::temp_dir().join(format!("slope-onefile-help-{}", std::process::id()));
    fs::create_dir_all(&folder).unwrap();
    let page = "<html><head><meta charset=\"utf-8\"/><meta http-equiv=\"Content-Security-Policy\" content=\"x\"/>\
                <link rel=\"stylesheet\" href=\"h.css\"/></head><body><img src=\"en-a.webp\" alt=\"A\"/><img src=\"b.webp\" alt=\"B\"/></body></html>";
    for (name, text) in
        [("en.html", page), ("h.css", "b { margin: 0 }"), ("en-a.webp", "abc"), ("b.webp", "def")]
    {
        fs::write(folder.join(name), text).unwrap();
    }
    let whole = help(&folder, "en.html").unwrap();
    fs::remove_file(folder.join("en-a.webp")).unwrap();
    let lacking = help(&folder, "en.html");
    fs::remove_dir_all(&folder).unwrap();
    assert_eq!(whole.style, "b { margin: 0 }");
    assert_eq!(
        whole.html,
        "<html><head><meta charset=\"utf-8\"/><style>b { margin: 0 }</style></head>\
         <body><img src=\"data:image/webp;base64,YWJj\" alt=\"A\"/><img src=\"b.webp\" alt=\"B\"/></body></html>"
    );
    // RFC 4648, section 4: "def" is 64 65 66, in sixes of bits 25, 6, 21, 38.
    assert_eq!(
        whole.shared,
        BTreeMap::from([("b.webp".to_owned(), "data:image/webp;base64,ZGVm".to_owned())])
    );
    assert!(
        lacking.unwrap().html.contains("src=\"en-a.webp\""),
        "a picture not yet taken stays as it is named"
    );
}
