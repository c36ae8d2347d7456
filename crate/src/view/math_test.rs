//! Texts of formulas against markup written by hand, of the elements of MathML Core (W3C).

use super::*;

fn markup(formula: &Formula) -> String {
    match formula {
        Formula::Leaf { tag, text } => format!("<{tag}>{text}</{tag}>"),
        Formula::Node { tag, children } => {
            format!("<{tag}>{}</{tag}>", children.iter().map(markup).collect::<String>())
        }
    }
}

fn read(text: &str, numbers: &[&str]) -> String {
    markup(&formula(text, numbers.iter().map(|number| (*number).to_owned()).collect()))
}

#[test]
fn a_name_is_an_identifier_and_digits_are_a_number() {
    assert_eq!(read("Δt", &[]), "<mi>Δt</mi>");
    assert_eq!(read("ν_eff", &[]), "<msub><mi>ν</mi><mi>eff</mi></msub>");
    assert_eq!(read("10", &[]), "<mn>10</mn>");
    assert_eq!(read("c̄", &[]), "<mi>c̄</mi>");
    assert_eq!(read("`n_+`", &[]), "<msub><mi>n</mi><mi>+</mi></msub>");
    assert_eq!(read("`2√2`", &[]), "<mn>2√2</mn>");
}

#[test]
fn braces_hold_together_and_brackets_are_seen() {
    assert_eq!(
        read("a + b/{c − 1}", &[]),
        "<mrow><mi>a</mi><mo>+</mo><mfrac><mi>b</mi><mrow><mi>c</mi><mo>−</mo><mn>1</mn></mrow></mfrac></mrow>"
    );
    assert_eq!(
        read("(a − b)^2", &[]),
        "<msup><mrow><mo>(</mo><mrow><mi>a</mi><mo>−</mo><mi>b</mi></mrow><mo>)</mo></mrow><mn>2</mn></msup>"
    );
    assert_eq!(
        read("√{{Σ r^2}/ν}", &[]),
        "<msqrt><mfrac><mrow><mo>Σ</mo><msup><mi>r</mi><mn>2</mn></msup></mrow><mi>ν</mi></mfrac></msqrt>"
    );
    assert_eq!(read("{a}", &[]), "<mi>a</mi>");
}

#[test]
fn numbers_are_put_in_one_after_the_other() {
    assert_eq!(
        read("#/{#·#}", &["1", "2 m", "3"]),
        "<mfrac><mn>1</mn><mrow><mn>2 m</mn><mo>·</mo><mn>3</mn></mrow></mfrac>"
    );
    assert_eq!(read("10^#", &["−3"]), "<msup><mn>10</mn><mn>−3</mn></msup>");
    assert_eq!(read("V^`−1`", &[]), "<msup><mi>V</mi><mn>−1</mn></msup>");
}

#[test]
fn an_equation_has_its_numbers_in_a_second_line() {
    let found = |value: &str| markup(&equation("p", "a·b", "#", vec!["4".into()], value.into()));
    let first =
        "<mtr><mtd><mrow><mi>p</mi><mo>=</mo><mrow><mi>a</mi><mo>·</mo><mi>b</mi></mrow></mrow></mtd></mtr>";
    let second = |sign: &str, value: &str| {
        format!("<mtr><mtd><mrow><mo>=</mo><mn>4</mn><mo>{sign}</mo><mn>{value}</mn></mrow></mtd></mtr>")
    };
    assert_eq!(found("5"), format!("<mtable>{first}{}</mtable>", second("=", "5")));
    assert_eq!(found("< 0.001"), format!("<mtable>{first}{}</mtable>", second("<", "0.001")));
}
