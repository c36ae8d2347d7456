//! Formulas as presentation MathML (MathML Core, W3C), held as data, of which the page builds elements.

use std::iter::from_fn;
use std::vec::IntoIter;

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

/// A formula from its text, and the numbers in it as they are written out, with their units.
///
/// `a_b` is a symbol of which a part is set low, `a^2` a power, `a/b` one over the other, `√a` a root. `#` is the next of the
/// numbers. `{a + b}` stands together as one, `(a + b)` in brackets that are seen. A name ends at a space or a sign; where
/// it has signs itself it stands between backticks.
pub fn formula(text: &str, numbers: Vec<String>) -> Formula {
    let mut unread = Unread { text, numbers: numbers.into_iter() };
    let formula = unread.row();
    debug_assert!(unread.text.is_empty() && unread.numbers.as_slice().is_empty(), "{text}");
    formula
}

/// `left = symbols`, and in the line below the same with numbers in place of symbols: `= in_numbers = value`, or `< value`
/// where the value says only what it is below. Each is the text of a [`formula`].
pub fn equation(left: &str, symbols: &str, in_numbers: &str, numbers: Vec<String>, value: String) -> Formula {
    let line = |children| node("mtr", vec![node("mtd", vec![node("mrow", children)])]);
    let sign = |text: &str| leaf("mo", text);
    let (relation, value) = match value.strip_prefix("< ") {
        Some(bound) => ("<", bound.to_owned()),
        None => ("=", value),
    };
    node(
        "mtable",
        vec![
            line(vec![formula(left, vec![]), sign("="), formula(symbols, vec![])]),
            line(vec![sign("="), formula(in_numbers, numbers), sign(relation), leaf("mn", value)]),
        ],
    )
}

/// What is left of a formula's text, and of its numbers.
struct Unread<'a> {
    text: &'a str,
    numbers: IntoIter<String>,
}

impl<'a> Unread<'a> {
    /// One thing after the other, up to the bracket that closes them or to the end.
    fn row(&mut self) -> Formula {
        let items: Vec<Formula> = from_fn(|| self.item()).collect();
        match <[Formula; 1]>::try_from(items) {
            Ok([only]) => only,
            Err(items) => node("mrow", items),
        }
    }

    /// The next thing with its powers, and over what it stands.
    fn item(&mut self) -> Option<Formula> {
        let mut item = self.single()?;
        loop {
            if self.takes('^') {
                let exponent = self.exponent();
                item = node("msup", vec![item, leaf("mn", exponent)]);
            } else if self.takes('/') {
                item = node("mfrac", vec![item, self.single()?]);
            } else {
                return Some(item);
            }
        }
    }

    /// The next thing alone.
    fn single(&mut self) -> Option<Formula> {
        self.text = self.text.trim_start_matches(' ');
        let word = self.word();
        Some(match word.chars().next()? {
            '}' | ')' => return None,
            '{' => self.row(),
            '(' => node("mrow", vec![leaf("mo", "("), self.row(), leaf("mo", ")")]),
            '√' => node("msqrt", vec![self.single()?]),
            '#' => leaf("mn", self.number()),
            '`' => named(self.quoted()),
            first if is_operator(first) => leaf("mo", word),
            _ => named(word),
        })
    }

    fn exponent(&mut self) -> String {
        match self.word() {
            "#" => self.number(),
            "`" => self.quoted().to_owned(),
            word => word.to_owned(),
        }
    }

    /// The next of the numbers.
    fn number(&mut self) -> String {
        let number = self.numbers.next();
        debug_assert!(number.is_some(), "{}", self.text);
        number.unwrap_or_default()
    }

    /// What stands before the next backtick.
    fn quoted(&mut self) -> &'a str {
        let (quoted, rest) = self.text.split_once('`').unwrap_or((self.text, ""));
        self.text = rest;
        quoted
    }

    /// A sign, or all that stands before the next one.
    fn word(&mut self) -> &'a str {
        let mut characters = self.text.char_indices();
        let is_sign = characters.next().is_some_and(|(_, first)| ends_word(first));
        let end = characters.find(|(_, next)| is_sign || ends_word(*next));
        let (word, rest) = self.text.split_at(end.map_or(self.text.len(), |(at, _)| at));
        self.text = rest;
        word
    }

    /// Whether a sign is next, which then is passed over.
    fn takes(&mut self, sign: char) -> bool {
        let rest = self.text.strip_prefix(sign);
        self.text = rest.unwrap_or(self.text);
        rest.is_some()
    }
}

fn is_operator(character: char) -> bool {
    matches!(character, '·' | '+' | '−' | '=' | '±' | '<' | '≤' | '≥' | '|' | ',' | '…' | 'Σ')
}

fn ends_word(character: char) -> bool {
    is_operator(character) || matches!(character, ' ' | '{' | '}' | '(' | ')' | '/' | '^' | '√' | '#' | '`')
}

/// A number, or a symbol: what stands behind its low line is set low.
fn named(text: &str) -> Formula {
    match text.split_once('_') {
        _ if text.starts_with(|first: char| first.is_ascii_digit()) => leaf("mn", text),
        Some((base, low)) => node("msub", vec![leaf("mi", base), leaf("mi", low)]),
        None => leaf("mi", text),
    }
}

fn leaf(tag: &'static str, text: impl Into<String>) -> Formula {
    Formula::Leaf { tag, text: text.into() }
}

fn node(tag: &'static str, children: Vec<Formula>) -> Formula {
    Formula::Node { tag, children }
}

#[cfg(test)]
#[path = "math_test.rs"]
mod tests;
