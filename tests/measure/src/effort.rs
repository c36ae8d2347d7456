//! How thoroughly is measured.

/// How often, and on how much, something is timed.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Effort {
    /// As a figure needs it.
    Full,
    /// Once, at its smallest: no figure, but whether one can be taken at all.
    Once,
}

impl Effort {
    /// The first for a figure, the second for once.
    pub fn of<T>(self, full: T, least: T) -> T {
        match self {
            Self::Full => full,
            Self::Once => least,
        }
    }
}
