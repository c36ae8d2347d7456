//! What can be wrong with the readings a line is asked of.

use thiserror::Error;

/// Why no line could be fitted. Rows are counted from 0 in the fields and from 1 in the messages.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum LineError {
    /// Fewer rows than unknowns.
    #[error("{got} rows are too few: {needed} are needed for this line; take more readings")]
    TooFewRows {
        /// Rows given.
        got: usize,
        /// Rows needed: one for each unknown.
        needed: usize,
    },
    /// Every x is the same, or differs from the others by a few roundings, so no slope can be told.
    #[error("all rows stand at the same place, so the line has no slope; move the carriage between readings")]
    AllPositionsEqual,
    /// A value is not a finite number.
    #[error("row {}: {which} is not a finite number", .row + 1)]
    NotFinite {
        /// The row.
        row: usize,
        /// Which quantity, in words.
        which: &'static str,
    },
    /// A list is not as long as the list of x.
    #[error("{which} has {got} values, but there are {expected} rows; give one value for each row")]
    LengthMismatch {
        /// Which quantity, in words.
        which: &'static str,
        /// Values given.
        got: usize,
        /// Values expected.
        expected: usize,
    },
    /// A standard uncertainty below zero.
    #[error("row {}: an uncertainty is negative; it must be zero or more", .row + 1)]
    NegativeUncertainty {
        /// The row.
        row: usize,
    },
    /// Rows with no independent uncertainty at all would need an infinite weight.
    #[error("{} stated without any uncertainty of their own; state one, however small, in d or in the delay", rows_are(.rows))]
    ZeroUncertainty {
        /// The rows.
        rows: Vec<usize>,
    },
    /// Free column `column` cannot be told from the line and the columns before it; or it is a step in x, and the line
    /// is level.
    #[error("unknown {} cannot be told from the line itself by these rows; take it out or spread the rows", .column + 1)]
    UndeterminedColumn {
        /// Which of [`Data::free`](super::Data::free).
        column: usize,
    },
    /// The slope cannot be told from the intercept and the free columns.
    #[error("the slope cannot be told from the other unknowns by these rows; spread the readings")]
    UndeterminedSlope,
    /// The stated covariance gives some combination of these rows a negative variance.
    #[error("the stated covariance is impossible: a combination of {} would have a negative variance", rows_named(.rows))]
    Indefinite {
        /// The rows that make up most of that combination.
        rows: Vec<usize>,
    },
    /// The stated covariance leaves some combination of these rows no uncertainty, or one that is lost in rounding.
    #[error("the stated covariance leaves a combination of {} no uncertainty; state an error that they share by itself", rows_named(.rows))]
    Singular {
        /// The rows that make up most of that combination.
        rows: Vec<usize>,
    },
    /// A stated covariance matrix is not symmetric.
    #[error("the stated covariance of rows {} and {} differs from the one of rows {1} and {0}", .rows.0 + 1, .rows.1 + 1)]
    NotSymmetric {
        /// The two rows.
        rows: (usize, usize),
    },
    /// The values are so large or so small that the result cannot be held in a double.
    #[error(
        "the values are too large or too small for the arithmetic; use units that bring them nearer to 1"
    )]
    OutOfRange,
    /// χ² has no minimum at a finite slope.
    #[error(
        "no finite slope fits best: within their uncertainties the rows could stand at one place; spread the readings"
    )]
    NoConvergence,
}

fn rows_named(rows: &[usize]) -> String {
    let numbers: Vec<String> = rows.iter().map(|row| (row + 1).to_string()).collect();
    match numbers.as_slice() {
        [one] => format!("row {one}"),
        [first @ .., last] => format!("rows {} and {last}", first.join(", ")),
        [] => "the rows".into(),
    }
}

fn rows_are(rows: &[usize]) -> String {
    format!("{} {}", rows_named(rows), if rows.len() == 1 { "is" } else { "are" })
}
