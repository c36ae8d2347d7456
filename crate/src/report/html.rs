//! The report as one HTML document to read, print or hand in, which needs nothing but itself.
//!
//! It holds no script and may load nothing (its Content-Security-Policy says so to the browser); every text of
//! the notebook is escaped.

use std::fmt::Write as _;

use super::block::{Block, DocumentSection, NoticeText};
use super::document::{Document, UNSTRUCK};
use super::table::{Column, Kind, Table};
use crate::escape::html_text;

/// May load nothing and run nothing; styles only from inside the document.
const POLICY: &str = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

const STYLE: &str = include_str!("report.css");

impl Document {
    /// The document in HTML; its charts are SVG elements.
    pub fn html(&self) -> String {
        let (title, language) = (html_text(&self.title), html_text(&self.language));
        format!(
            "<!DOCTYPE html>\n<html lang=\"{language}\">\n<head>\n<meta charset=\"utf-8\">\n\
             <meta http-equiv=\"Content-Security-Policy\" content=\"{POLICY}\">\n\
             <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
             <title>{title}</title>\n<style>\n{STYLE}</style>\n</head>\n<body>\n<main>\n<h1>{title}</h1>\n{}{}\
             </main>\n</body>\n</html>\n",
            blocks(&self.opening),
            self.sections.iter().map(section).collect::<String>()
        )
    }
}

impl Table {
    /// The table as an HTML fragment of the class that is its name, with its title as caption.
    pub fn to_html(&self) -> String {
        self.to_html_struck(|_, _| false)
    }

    /// As [`Table::to_html`], with each cell of the class `struck` of which `struck` says so, by its row (from 0) and
    /// its column.
    fn to_html_struck(&self, struck: impl Fn(usize, &Column) -> bool) -> String {
        let mut text = format!(
            "<table class=\"{}\">\n<caption>{}</caption>\n<thead><tr>",
            self.name,
            html_text(&self.title)
        );
        for column in &self.columns {
            let _ = write!(text, "<th scope=\"col\">{}</th>", html_text(&column.head()));
        }
        text.push_str("</tr></thead>\n<tbody>\n");
        for (place, row) in self.rows.iter().enumerate() {
            if let Some(note) = self.over_all(row) {
                let (across, note) = (self.columns.len(), html_text(note));
                let _ = writeln!(text, "<tr><td class=\"note\" colspan=\"{across}\">{note}</td></tr>");
                continue;
            }
            text.push_str("<tr>");
            for (column, cell) in self.columns.iter().zip(row) {
                let kind = match column.kind {
                    Kind::Number => "number",
                    Kind::Symbol => "symbol",
                    Kind::Text if UNSTRUCK.contains(&column.name) => "said",
                    Kind::Text => "",
                };
                let struck = if struck(place, column) { "struck" } else { "" };
                let class = match [kind, struck].join(" ").trim() {
                    "" => String::new(),
                    class => format!(" class=\"{class}\""),
                };
                let cell = column.kind.lowered(cell, html_text, ["<sub>", "</sub>"]);
                let _ = write!(text, "<td{class}>{cell}</td>");
            }
            text.push_str("</tr>\n");
        }
        text.push_str("</tbody>\n</table>\n");
        text
    }
}

fn section(DocumentSection { title, blocks: all }: &DocumentSection) -> String {
    format!("<section>\n<h2>{}</h2>\n{}</section>\n", html_text(title), blocks(all))
}

fn blocks(all: &[Block]) -> String {
    all.iter().map(block).collect()
}

fn block(block: &Block) -> String {
    match block {
        Block::Heading(text) => format!("<h3>{}</h3>\n", html_text(text)),
        Block::Paragraph(text) => format!("<p>{}</p>\n", html_text(text)),
        Block::Summary(text) => format!("<p class=\"summary\">{}</p>\n", html_text(text)),
        Block::Typed(text) => format!("<p class=\"typed\">{}</p>\n", html_text(text)),
        Block::Facts(pairs) => facts(pairs),
        Block::Points(points) => list("ul", points.iter().map(|point| html_text(point))),
        Block::Notes(notes) => list("ol", notes.iter().map(|note| html_text(note))),
        Block::Notices(notices) => list("ul", notices.iter().map(notice)),
        Block::Columns(all) => format!("<div class=\"cautions\">\n{}</div>\n", blocks(all)),
        Block::Table(table) => wide(table, &table.to_html()),
        Block::Readings(table, struck) => {
            let struck = |row: usize, column: &Column| {
                struck.get(row) == Some(&true) && !UNSTRUCK.contains(&column.name)
            };
            wide(table, &table.to_html_struck(struck))
        }
        Block::Figure { drawn, caption, .. } => {
            format!("<figure>\n{drawn}\n<figcaption>{}</figcaption>\n</figure>\n", html_text(caption))
        }
    }
}

fn notice(NoticeText { lead, text, signs }: &NoticeText) -> String {
    let signs = signs.as_ref().map_or_else(String::new, |(said, signs)| {
        format!(" {}{}", html_text(said), list("ul", signs.iter().map(|sign| html_text(sign))))
    });
    format!("<strong>{}</strong> {}{signs}", html_text(lead), html_text(text))
}

/// A list, "ul" or "ol", of things already in HTML; nothing where there is none.
fn list(tag: &str, things: impl Iterator<Item = String>) -> String {
    let body = things.fold(String::new(), |text, thing| text + "<li>" + &thing + "</li>\n");
    if body.is_empty() { body } else { format!("<{tag}>\n{body}</{tag}>\n") }
}

fn facts(pairs: &[(String, String)]) -> String {
    let mut body = String::new();
    for (name, text) in pairs {
        let _ = writeln!(body, "<div><dt>{}</dt><dd>{}</dd></div>", html_text(name), html_text(text));
    }
    format!("<dl>\n{body}</dl>\n")
}

/// A table in HTML with room for its width, along which keys move.
fn wide(table: &Table, html: &str) -> String {
    let name = html_text(&table.title);
    format!("<div class=\"wide\" tabindex=\"0\" role=\"group\" aria-label=\"{name}\">\n{html}</div>\n")
}

#[cfg(test)]
#[path = "html_test.rs"]
mod tests;
