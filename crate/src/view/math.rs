//! Formulas as presentation MathML (MathML Core, W3C), held as data: the page builds elements from it, the report
//! writes it out.

use serde::Serialize;

/// An element of a formula. Its JSON form is `{"tag": "mi", "text": "c"}` or `{"tag": "mrow", "children": […]}`.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
#[serde(untagged)]
pub enum Formula {
    /// An element that holds text.
    Leaf {
        /// Its name: mi, mn, mo or mtext.
        tag: &'static str,
        /// The text.
        text: String,
    },
    /// An element that holds others.
    Node {
        /// Its name: mrow, mfrac, msub, msup, msqrt, mtable, mtr or mtd.
        tag: &'static str,
        /// What it holds.
        children: Vec<Formula>,
    },
}

/// A symbol such as `u_c` or `ν_eff`: what stands behind the low line is set low.
pub fn symbol(text: &str) -> Formula {
    match text.split_once('_') {
        Some((base, low)) => node("msub", vec![leaf("mi", base), leaf("mi", low)]),
        None => leaf("mi", text),
    }
}

/// A number with its unit, as already written out.
pub fn number(text: impl Into<String>) -> Formula {
    leaf("mn", text)
}

/// An operator.
pub fn op(text: &str) -> Formula {
    leaf("mo", text)
}

/// One after the other.
pub fn row(children: Vec<Formula>) -> Formula {
    node("mrow", children)
}

/// One over the other.
pub fn over(above: Formula, below: Formula) -> Formula {
    node("mfrac", vec![above, below])
}

/// A power.
pub fn power(base: Formula, exponent: &str) -> Formula {
    node("msup", vec![base, leaf("mn", exponent)])
}

/// A square root.
pub fn root(inner: Formula) -> Formula {
    node("msqrt", vec![inner])
}

/// The product of two factors.
pub fn times(a: Formula, b: Formula) -> Formula {
    row(vec![a, op("·"), b])
}

/// Set in brackets.
pub fn bracket(inner: Formula) -> Formula {
    row(vec![op("("), inner, op(")")])
}

/// `left = symbols`, and in the line below the same with the numbers put in: `= numbers = value`, or `< value` where the
/// value says only what it is below.
pub fn equation(left: Formula, symbols: Formula, numbers: Formula, value: String) -> Formula {
    let line = |children| node("mtr", vec![node("mtd", vec![row(children)])]);
    let (relation, value) = match value.strip_prefix("< ") {
        Some(bound) => ("<", bound.to_owned()),
        None => ("=", value),
    };
    node(
        "mtable",
        vec![line(vec![left, op("="), symbols]), line(vec![op("="), numbers, op(relation), number(value)])],
    )
}

fn leaf(tag: &'static str, text: impl Into<String>) -> Formula {
    Formula::Leaf { tag, text: text.into() }
}

fn node(tag: &'static str, children: Vec<Formula>) -> Formula {
    Formula::Node { tag, children }
}
