//! Planted sentences are found, and what nobody reads is not.

#![expect(clippy::unwrap_used, reason = "tests")]

use super::{in_html, in_rust, in_script, is_prose, without_table};

#[test]
fn a_sentence_in_rust_is_found() {
    let planted = r##"
        //! The head of a module.
        /// A comment says a lot.
        #[expect(dead_code, reason = "an attribute has its reasons")]
        #[error("row {row} has no place")]
        enum A {}
        fn a() -> String {
            let id = message!("row-no_place", why = format!("the rail {name} is gone"));
            assert!(true, "this is for programmers");
            let raw = r#"one more "raw text" here"#;
            "<p class=\"wide table\">{name}</p>".to_owned() + b"of bytes only" + "u(v)/v = 3 m" + "Nothing is planned"
        }
        #[wasm_bindgen(typescript_custom_section)]
        const DECLARED: &str = "export type Ends = [near: number, far: number];";
        #[cfg(test)]
        mod tests { const TEXT: &str = "a test may say so"; }
        const AFTER: &str = "and what follows counts";
    "##;
    assert_eq!(
        in_rust(planted.parse().unwrap()),
        [
            "row {row} has no place",
            "the rail {name} is gone",
            "r#\"one more \"raw text\" here\"#",
            "Nothing is planned",
            "and what follows counts"
        ]
    );
}

#[test]
fn a_sentence_in_a_script_is_found() {
    let planted = r#"
        // A comment says a lot.
        import { say } from './words.js';
        el('p', { class: 'wide table' }, say('row-no_place'), 'Nothing is planned');
        setAttribute(node, 'class', wide ? 'wide table' : 'table');
        throw new Error('nothing is drawn yet');
        throw new Error(`the page has no element "${id}"`);
        setText(node, `${name} was removed by you`);
    "#;
    assert_eq!(in_script(planted), ["Nothing is planned", "nothing is drawn yet", " was removed by you"]);
}

#[test]
fn a_language_that_is_silent_without_a_table_is_found() {
    let page = "<div id=\"not-started\" hidden><p lang=\"en\">It failed.</p><p lang=\"fr\">Raté.</p></div>\
                <noscript><p lang=\"en\">It needs scripts.</p></noscript>";
    assert_eq!(in_html(page), Vec::<String>::new());
    assert_eq!(without_table(page, &["en".to_owned(), "fr".to_owned()]), ["fr"]);
}

#[test]
fn a_text_in_html_is_found() {
    let planted = "<!-- a remark --><p data-words=\"a\"></p><script>let a = 'b c';</script><p title=\"Tip\">Text <b>✕</b></p>\n";
    assert_eq!(in_html(planted), ["Tip", "Text"]);
}

#[test]
fn names_and_numbers_are_no_prose() {
    for none in [
        "plan-no_rails",
        "u(v)/v",
        "ISO/TS 28037:2010, 6.3",
        "12.5 mm",
        "readings_table",
        "{a} {b}",
        "US",
        "R. T. Birge, Phys. Rev. 40 (1932) 207",
    ] {
        assert!(!is_prose(none), "{none}");
    }
}
