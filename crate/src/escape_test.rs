use super::*;

#[test]
fn html_keeps_text_text() {
    // HTML Living Standard, 13.3: ampersand, angle brackets and quotation marks; the apostrophe as well, so that
    // it may stand in any quoted attribute.
    let hostile = "<script>alert('1')</script> & \"x\" <img src=x onerror=y>";
    let expected =
        "&lt;script&gt;alert(&#39;1&#39;)&lt;/script&gt; &amp; &quot;x&quot; &lt;img src=x onerror=y&gt;";
    assert_eq!(html_text(hostile), expected);
    assert_eq!(html_text("&lt;"), "&amp;lt;");
    assert_eq!(html_text("2.31 ± 0.02 µs"), "2.31 ± 0.02 µs");
    assert_eq!(html_text("a\0b"), "a\u{fffd}b");
}

#[test]
fn latex_takes_the_ten_special_characters_as_text() {
    // L. Lamport, "LaTeX: A Document Preparation System", 2nd ed., 2.2.2 and 3.2.
    assert_eq!(
        latex_text("# $ % & ~ _ ^ \\ { }"),
        concat!(r"\# \$ \% \& \textasciitilde{} \_ \textasciicircum{} ", r"\textbackslash{} \{ \}")
    );
    assert_eq!(latex_text(r"\input{/etc/passwd}"), r"\textbackslash{}input\{/etc/passwd\}");
}

#[test]
fn latex_sets_signs_as_mathematics() {
    assert_eq!(latex_text("2.987 ± 0.021 × 10⁸"), r"2.987 $\pm$ 0.021 $\times$ 10$^{8}$");
    assert_eq!(latex_text("−3 µs"), r"$-$3 $\mu$s");
    assert_eq!(latex_text("ħω"), r"$\hbar$$\omega$");
    assert_eq!(latex_text("a\r\nb"), "a  b");
    assert_eq!(latex_text("[2] * <3|"), r"{[}2{]} {*} \textless{}3\textbar{}");
}

#[test]
fn markdown_keeps_a_cell_a_cell() {
    // CommonMark 0.31.2, 2.4 (any punctuation may be escaped by a backslash); pipes in cells: common practice, no source.
    assert_eq!(markdown_text("a|b"), r"a\|b");
    assert_eq!(markdown_text(r"a\|b"), r"a\\\|b");
    assert_eq!(markdown_text("*a* _b_ `c` [d](e) <f>"), r"\*a\* \_b\_ \`c\` \[d\](e) \<f\>");
    assert_eq!(markdown_text("a #"), r"a \#");
    assert_eq!(markdown_text("a\nb"), "a b");
}

#[test]
fn markdown_begins_nothing_that_was_not_meant() {
    // CommonMark 0.31.2, 4.1 (rules), 4.2 and 4.3 (headings), 5.2 (list items); all of it may be escaped (2.4).
    assert_eq!(markdown_line("# a"), r"\# a");
    assert_eq!(markdown_line("  - a"), r"\- a");
    assert_eq!(markdown_line("12. a"), r"12\. a");
    assert_eq!(markdown_line("12.5 ns"), r"12\.5 ns");
    assert_eq!(markdown_line("a - b"), "a - b");
}
