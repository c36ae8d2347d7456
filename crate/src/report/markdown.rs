//! The report in Markdown, with its charts as files beside it: CommonMark 0.31.2, with pipe tables as GitHub Flavored
//! Markdown has them (its specification, 4.10).

use super::block::{Block, DocumentSection, NoticeText};
use super::document::Document;
use super::table::{Kind, Table};
use crate::escape::{markdown_line, markdown_text};

impl Document {
    /// The document in Markdown; the chart called `name` is the file `{name}.svg` beside it.
    pub fn markdown(&self) -> String {
        let sections = self.sections.iter().map(section).collect::<String>();
        format!("# {}\n\n{}{sections}", markdown_text(&self.title), blocks(&self.title, &self.opening))
    }
}

impl Table {
    /// The table as a pipe table.
    pub fn to_markdown(&self) -> String {
        let line = |cells: Vec<String>| format!("| {} |\n", cells.join(" | "));
        let side = |kind| if kind == Kind::Number { "---:" } else { ":---" };
        let mut text = line(self.columns.iter().map(|column| markdown_text(&column.head())).collect());
        text += &line(self.columns.iter().map(|column| side(column.kind).into()).collect());
        for row in &self.rows {
            let cells = self.columns.iter().zip(row);
            text += &line(
                cells
                    .map(|(column, cell)| column.kind.lowered(cell, markdown_text, ["<sub>", "</sub>"]))
                    .collect(),
            );
        }
        text
    }
}

fn section(DocumentSection { title, blocks: all }: &DocumentSection) -> String {
    format!("## {}\n\n{}", markdown_text(title), blocks(title, all))
}

/// Blocks below a heading.
fn blocks<'a>(mut heading: &'a str, all: &'a [Block]) -> String {
    let mut text = String::new();
    for one in all {
        if let Block::Heading(below) = one {
            heading = below;
        }
        text += &block(heading, one);
    }
    text
}

/// A block below a heading, with the empty line behind it.
fn block(heading: &str, block: &Block) -> String {
    let text = match block {
        Block::Heading(text) => format!("### {}\n", markdown_text(text)),
        Block::Paragraph(text) => format!("{}\n", markdown_line(text)),
        Block::Summary(text) => strong(text) + "\n",
        Block::Typed(text) => typed(text),
        Block::Facts(pairs) => points(
            // No colon: a name may hold one, and languages differ in the space before it.
            pairs.iter().map(|(name, text)| format!("{} {}", strong(name), markdown_text(text))),
        ),
        Block::Points(all) => points(all.iter().map(|point| markdown_line(point))),
        Block::Notes(notes) => {
            let numbered = notes.iter().zip(1..).map(|(note, n)| format!("{n}. {}", markdown_line(note)));
            numbered.fold(String::new(), |text, note| text + &note + "\n")
        }
        Block::Notices(notices) => points(notices.iter().map(notice)),
        Block::Columns(all) => return blocks(heading, all),
        // The heading above it is its title.
        Block::Table(table) | Block::Readings(table, _) if table.title == heading => table.to_markdown(),
        Block::Table(table) | Block::Readings(table, _) => {
            format!("{}\n\n{}", strong(&table.title), table.to_markdown())
        }
        Block::Figure { name, caption, .. } => format!("![{}]({name}.svg)\n", markdown_text(caption)),
    };
    format!("{text}\n")
}

/// A text in strong emphasis, which does not begin with a space (6.2).
fn strong(text: &str) -> String {
    format!("**{}**", markdown_text(text.trim()))
}

/// Lines as somebody typed them; an empty one parts paragraphs.
fn typed(text: &str) -> String {
    let mut out = String::new();
    let mut lines = text.lines().map(str::trim).peekable();
    while let Some(line) = lines.next() {
        out += &markdown_line(line);
        // A backslash at its end breaks a line (6.7); before an empty one it would be shown.
        let goes_on = !line.is_empty() && lines.peek().is_some_and(|next| !next.is_empty());
        out += if goes_on { "\\\n" } else { "\n" };
    }
    out
}

fn points(points: impl Iterator<Item = String>) -> String {
    points.fold(String::new(), |text, point| text + "- " + &point + "\n")
}

fn notice(NoticeText { lead, text, signs }: &NoticeText) -> String {
    let signs = signs.as_ref().map_or_else(String::new, |(said, signs)| {
        let signs = signs.iter().fold(String::new(), |text, sign| text + "\n  - " + &markdown_line(sign));
        format!(" {}{signs}", markdown_text(said))
    });
    format!("{} {}{signs}", strong(lead), markdown_text(text))
}

#[cfg(test)]
#[path = "markdown_test.rs"]
mod tests;
