//! What can go wrong in a run and be told from its readings.

/// What can go wrong.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Cause {
    /// One row is off the line.
    RowOff,
    /// A row of zeros that nobody measured.
    ForcedZero,
    /// Two rows have each other's delays.
    RowsExchanged,
    /// Rows hold the edges of another one.
    CopiedRows,
    /// B was read for A.
    EdgesSwapped,
    /// A factor of ten.
    SlippedDecimal,
    /// Another time base was set.
    TimeBaseSlip,
    /// A reading of another rail.
    WrongRail,
    /// A pulse of another period.
    BeyondAPeriod,
    /// Delays are offset from a row on.
    ChangeFromRow,
    /// Delays drift along the run.
    Drift,
    /// The line is bent.
    Curvature,
    /// A time base is off by an amount.
    TimeBaseOff,
    /// A ruler is stretched.
    RulerScale,
    /// A rail stands elsewhere.
    StepAtSplice,
    /// A ruler starts again.
    RulerRestarts,
    /// Rulers count the other way.
    WrongSense,
    /// The pairs of a joint are exchanged.
    OverlapTurned,
    /// A ruler counts in another unit.
    RailUnit,
    /// Uncertainties are too small.
    ScatterTooLarge,
    /// Uncertainties are too large.
    ScatterTooSmall,
}
