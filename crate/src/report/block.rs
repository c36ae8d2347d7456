//! The pieces that a report is made of: plain texts, tables and charts, not yet written.

use super::table::Table;

/// A section of a report.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct DocumentSection {
    pub title: String,
    pub blocks: Vec<Block>,
}

/// A piece of a section.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Block {
    /// A heading below that of the section.
    Heading(String),
    /// A paragraph.
    Paragraph(String),
    /// The result, for one who leafs through many reports.
    Summary(String),
    /// A text as somebody typed it, in lines.
    Typed(String),
    /// Names with what they stand for.
    Facts(Vec<(String, String)>),
    /// Points without an order.
    Points(Vec<String>),
    /// Notes to which numbers refer, from 1.
    Notes(Vec<String>),
    /// Notices.
    Notices(Vec<NoticeText>),
    /// Short pieces that may stand side by side.
    Columns(Vec<Block>),
    /// A table that has rows.
    Table(Table),
    /// The table of the readings, and which of its rows are struck out.
    Readings(Table, Vec<bool>),
    /// A chart by its name, drawn, with what it shows in words.
    Figure { name: &'static str, drawn: String, caption: String },
}

/// A notice in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct NoticeText {
    /// How serious it is.
    pub lead: String,
    /// What was found, where, and what to look at.
    pub text: String,
    /// What it comes with.
    pub signs: Option<(String, Vec<String>)>,
}

/// A paragraph; none where there is nothing to say.
pub(super) fn paragraph(text: String) -> Option<Block> {
    (!text.is_empty()).then_some(Block::Paragraph(text))
}

/// Names and texts; those without a text are left out.
pub(super) fn facts(pairs: impl IntoIterator<Item = (String, String)>) -> Option<Block> {
    let stated: Vec<_> = pairs.into_iter().filter(|(_, text)| !text.is_empty()).collect();
    (!stated.is_empty()).then_some(Block::Facts(stated))
}

/// A table; none without rows.
pub(super) fn table(table: Table) -> Option<Block> {
    (!table.rows.is_empty()).then_some(Block::Table(table))
}

/// A chart; none where nothing is drawn.
pub(super) fn figure(name: &'static str, drawn: &str, caption: String) -> Option<Block> {
    (!drawn.is_empty()).then(|| Block::Figure { name, drawn: drawn.to_owned(), caption })
}
