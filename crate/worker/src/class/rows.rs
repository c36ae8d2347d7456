//! The rows of a notebook's line as its page tells them, read back: where on the bench each was read, and how far it lies
//! off the line of its own notebook.
//!
//! A place is a rail, counted from the splitter, and a whole centimetre of its ruler: a mark and what is read right beside
//! it belong together, and no two numbered marks do.

use slope_evidence::decimal::Decimal;

const CENTIMETRE: f64 = 0.01;
/// What stands for inches after a number.
const INCH_SIGNS: [char; 2] = ['″', '"'];
/// What begins a power of ten, as readings may have it.
const POWERS: [char; 8] = ['e', 'E', '×', 'x', 'X', '*', '·', '⋅'];
/// 12.5 cm and 125 mm are one mark, whatever the last bit of each.
const LAST_BIT: f64 = 1e-6;

/// A row of the line. Numbers as the page shows them, with either decimal mark.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct ShownRow<'a> {
    /// The place of its rail among the rails, from 0; empty where its distance was typed.
    rail: &'a str,
    /// Normalized residual; empty where there is none.
    residual: &'a str,
    /// Distance with its uncertainty, m.
    distance: &'a str,
    /// Delay with its uncertainty, ns.
    delay: &'a str,
    /// The unit of a bare number in the reading.
    unit: &'a str,
    /// The reading on the rail, or the distance, as typed.
    mark: &'a str,
}

/// Where on the bench a row was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct BenchPlace {
    /// The rail, from 0; none where a distance was typed.
    pub rail: Option<usize>,
    /// The whole centimetre.
    pub centimetre: i64,
}

/// A row of the line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct LineRow {
    pub place: BenchPlace,
    /// The reading, in the unit in which it was made.
    pub mark: f64,
    /// That unit; empty where it is none of a ruler.
    pub unit: &'static str,
    /// m.
    pub distance: f64,
    /// ns.
    pub delay: f64,
    /// Standard uncertainty of the delay, with that of the distance as the line carries it over, ns; 0 where none is stated.
    pub u: f64,
    /// Residual over its own standard uncertainty, to a tenth.
    pub normalized: f64,
    /// Delay less the line, ns; none where a seal covers the line.
    pub residual: Option<f64>,
}

/// The line of a notebook.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct NotebookLine {
    /// ns/m.
    pub slope: f64,
    /// ns.
    pub intercept: f64,
    pub sealed: bool,
}

impl<'a> ShownRow<'a> {
    /// A row as it crosses: its fields in their order, with tabs between them.
    pub(super) fn of(line: &'a str) -> Option<Self> {
        let mut fields = line.splitn(6, '\t');
        let [rail, residual, distance, delay, unit, mark] = std::array::from_fn(|_| fields.next());
        Some(Self {
            rail: rail?,
            residual: residual?,
            distance: distance?,
            delay: delay?,
            unit: unit?,
            mark: mark?,
        })
    }

    /// The row; none where a reading is no plain number with a unit of length, or a number has a power of ten.
    pub(super) fn read(self, line: NotebookLine) -> Option<LineRow> {
        let (mark, unit) = self.mark()?;
        let (distance, delay) = (ShownNumber::read(self.distance)?, ShownNumber::read(self.delay)?);
        let residual = delay.value - line.intercept - line.slope * distance.value;
        Some(LineRow {
            place: BenchPlace {
                rail: self.rail.parse().ok(),
                centimetre: whole_centimetre(mark * unit.metres),
            },
            mark,
            unit: unit.symbol,
            distance: distance.value,
            delay: delay.value,
            u: (delay.u.powi(2) + (line.slope * distance.u).powi(2)).sqrt(),
            normalized: ShownNumber::read(self.residual)?.value,
            residual: Some(residual).filter(|_| !line.sealed),
        })
    }

    /// The first of its readings, with its unit.
    fn mark(self) -> Option<(f64, &'static LengthUnit)> {
        let first = self.mark.split(';').next()?.trim_end();
        let bare =
            first.trim_end_matches(|letter: char| letter.is_alphabetic() || INCH_SIGNS.contains(&letter));
        let symbol = match first.strip_prefix(bare)? {
            "" => self.unit,
            "″" | "\"" | "inch" | "inches" => "in",
            typed => typed,
        };
        let unit = RULER_UNITS.iter().find(|unit| unit.symbol == symbol)?;
        let (number, rest) = number(bare)?;
        Some((number.to_f64(), unit)).filter(|_| !rest.contains(POWERS))
    }
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "a reading beyond all rulers stands at the end of the whole numbers"
)]
fn whole_centimetre(metres: f64) -> i64 {
    (metres / CENTIMETRE + 0.5 + LAST_BIT).floor() as i64
}

struct LengthUnit {
    symbol: &'static str,
    metres: f64,
}

/// The units of rulers; the inch by definition.
static RULER_UNITS: [LengthUnit; 4] = [
    LengthUnit { symbol: "cm", metres: 0.01 },
    LengthUnit { symbol: "mm", metres: 0.001 },
    LengthUnit { symbol: "m", metres: 1.0 },
    LengthUnit { symbol: "in", metres: 0.0254 },
];

/// A number as the page shows it: `0.500(11)`, `−0,8`.
struct ShownNumber {
    value: f64,
    /// What the bracket says in units of the last digit; 0 without one.
    u: f64,
}

impl ShownNumber {
    fn read(text: &str) -> Option<Self> {
        let (value, rest) = number(text)?;
        let bracket = rest.strip_prefix('(').and_then(|rest| rest.strip_suffix(')'));
        let u = match bracket {
            Some(digits) => Decimal::read(digits)?.shifted(value.place()).to_f64(),
            None if rest.is_empty() => 0.0,
            None => return None,
        };
        Some(Self { value: value.to_f64(), u })
    }
}

/// The number with which a text begins, with either decimal mark, either minus and spaces between its digits; and what
/// follows it.
fn number(text: &str) -> Option<(Decimal, &str)> {
    let text = text.trim();
    let part = |letter: char| letter.is_ascii_digit() || letter.is_whitespace() || ".,-+−".contains(letter);
    let end = text.find(|letter| !part(letter)).unwrap_or(text.len());
    let (digits, rest) = text.split_at(end);
    let plain: String = digits
        .chars()
        .filter(|letter| !letter.is_whitespace())
        .map(|letter| match letter {
            ',' => '.',
            '−' => '-',
            other => other,
        })
        .collect();
    Some((Decimal::read(plain.strip_prefix('+').unwrap_or(&plain))?, rest))
}

#[cfg(test)]
#[path = "rows_test.rs"]
mod tests;
