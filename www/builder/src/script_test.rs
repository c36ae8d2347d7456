//! Code, quoted text and comments told apart on small scripts whose reading the language's grammar fixes.

use super::{Kind, inside_html, kinds, literal, without_comments};

/// The script with everything but code blotted out.
fn code(source: &str) -> String {
    let kinds = kinds(source);
    assert_eq!(kinds.len(), source.len());
    source.char_indices().map(|(at, c)| if kinds[at] == Kind::Code { c } else { '.' }).collect()
}

#[test]
fn strings_templates_and_comments_are_not_code() {
    assert_eq!(code("a = 'it\\'s'; b"), "a = .......; b");
    assert_eq!(code("a; // b 'c\nd"), "a; ........d");
    assert_eq!(code("a /* 'b */ c"), "a ........ c");
    assert_eq!(code("`x${a + `y${b}`}z` + c"), "....a + ....b..... + c");
}

#[test]
fn braces_inside_a_template_stay_inside_it() {
    assert_eq!(code("`${ {a: {}} }` ; b"), "... {a: {}} .. ; b");
}

#[test]
fn a_slash_divides_or_opens_a_regular_expression() {
    assert_eq!(code("a / b / c"), "a / b / c");
    assert_eq!(code("f(x) / 2; '"), "f(x) / 2; .");
    assert_eq!(code("a = /[/'\"]/; b"), "a = .......; b");
    assert_eq!(code("return /'/.test(x)"), "return ....test(x)");
    assert_eq!(code("/* c */ /'/; d"), "....... ...; d");
}

#[test]
fn no_script_ends_or_hides_its_own_element() {
    for text in ["</script>", "<SCRIPT>", "<!-- x"] {
        let source = format!("a = '{text}'; /* {text} */ b = `{text}`;");
        let safe = inside_html(&source).to_lowercase();
        for word in ["</script", "<script", "<!--"] {
            assert!(!safe.contains(word), "{safe}");
        }
    }
    assert_eq!(inside_html("x = '</script>' < y"), "x = '\\x3C/script>' < y");
    assert_eq!(inside_html("a<!--b"), "a< !--b");
    assert_eq!(inside_html("é = '<b>'"), "é = '<b>'");
}

#[test]
fn a_literal_holds_any_text() {
    assert_eq!(literal("a\"b</script>\n"), r#""a\"b\u003C/script>\n""#);
}

#[test]
fn comments_go_and_all_else_stays() {
    let source = "/** Doc. */\nimport a from 'b'; // why\n\n  // whole line\nconst t = `x // no\n\n  /* no */`;\nconst r = /\\/\\/./; /* in\ntwo */ f();\n";
    let expected = "import a from 'b';\nconst t = `x // no\n\n  /* no */`;\nconst r = /\\/\\/./;\n f();\n";
    assert_eq!(without_comments(source), expected);
}
