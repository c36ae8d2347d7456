//! The report: one HTML document to read, print or hand in, which needs nothing but itself.
//!
//! It holds no script and may load nothing (its Content-Security-Policy says so to the browser); every text of
//! the notebook is escaped. What it shows is the [`View`] and nothing else.

use std::fmt::Write as _;

use super::escape::html_text;
use super::shown::{
    budget_figures_table, budget_table, checks_table, line_table, readings_table, result_table, shown_rows,
    trials_table,
};
use super::table::{Column, Table};
use super::words;
use crate::analysis::Notice;
use crate::message;
use crate::notebook::BenchField;
use crate::pictures::Charts;
use crate::view::{Field, RailView, RowState, TrialsView, View};
use crate::words::Words;

/// May load nothing and run nothing; styles only from inside the document.
const POLICY: &str = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

const STYLE: &str = include_str!("report.css");

/// The report on a notebook, with what trials gave if they were made, in the words of a table.
pub fn html(view: &View, charts: &Charts, trials: Option<&TrialsView>, words: &dyn Words) -> String {
    let title = if view.title.is_empty() { "Untitled notebook" } else { &view.title };
    let title = html_text(title);
    let sections = [
        heading(view, &title),
        section("Cautions", &list(words::CAUTIONS.iter().map(|caution| html_text(caution)))),
        typed_section(view, BenchField::Aim),
        typed_section(view, BenchField::Method),
        section("Apparatus", &apparatus(view, charts)),
        section("Readings", &readings(view)),
        section("Line", &line(view, charts)),
        section("Uncertainty", &uncertainty(view, charts, trials)),
        section("Result", &result(view)),
        section("Notices", &notices(view, words)),
        typed_section(view, BenchField::Discussion),
        section("History", &history(view)),
    ];
    format!(
        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta http-equiv=\"Content-Security-Policy\" content=\"{POLICY}\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
         <title>{title}</title>\n<style>\n{STYLE}</style>\n</head>\n<body>\n<main>\n{}</main>\n</body>\n</html>\n",
        sections.concat()
    )
}

fn heading(view: &View, title: &str) -> String {
    let fields = [BenchField::People, BenchField::Place].map(|field| bench_item(view, field));
    format!("<h1>{title}</h1>\n{}", items(fields))
}

fn apparatus(view: &View, charts: &Charts) -> String {
    let carriage = [("The carriage carries".to_owned(), words::path(view.path).to_owned())];
    let bench = words::BENCH_FIELDS.iter().map(|field| bench_item(view, *field));
    let mut text = items(carriage.into_iter().chain(bench));
    text += &figure(&charts.bench_svg, "The bench, to scale");
    let mut ruler_before = "";
    for rail in &view.rails {
        text += &rail_block(rail, ruler_before);
        ruler_before = &rail.unit_symbol;
    }
    let settings = view.settings.iter().map(|setting| {
        let name = format!("Time base at {} per division", with_unit(&setting.time_per_division));
        (name, format!("relative standard uncertainty {}", with_unit(&setting.uncertainty)))
    });
    let shared = view.shared.iter().map(|error| {
        let effect = words::shared(error.acts_on, error.effect);
        (error.name.clone(), format!("{effect}, standard uncertainty {}", with_unit(&error.uncertainty)))
    });
    text += &items(settings.chain(shared));
    text
}

fn rail_block(rail: &RailView, ruler_before: &str) -> String {
    let name = rail.fields.get(&crate::notebook::RailField::Name).map_or("", words::taken);
    let fields = words::RAIL_FIELDS.iter().map(|field| {
        let text = rail.fields.get(field).map_or_else(String::new, with_unit);
        (words::rail_label(*field).to_owned(), text)
    });
    let told = [
        ("Ruler".to_owned(), format!("in {}; readings {}", rail.unit_symbol, words::sense(rail.sense))),
        ("Splice, as stated".to_owned(), words::splice(&rail.splice, &rail.unit_symbol, ruler_before)),
        ("Stands".to_owned(), rail.stands.clone()),
        ("Step that the readings show".to_owned(), rail.step.clone()),
    ];
    format!("<h3>Rail {}</h3>\n{}", html_text(name), items(told.into_iter().chain(fields)))
}

/// The rows; those struck out are struck through, but for the word that says so, the reason and the remark.
fn readings(view: &View) -> String {
    let shown = readings_table(view);
    let struck: Vec<bool> = shown_rows(view).map(|row| row.state == RowState::Struck).collect();
    let struck = |row: usize, column: &Column| {
        struck.get(row) == Some(&true) && !["state", "outside_because", "remark"].contains(&column.name)
    };
    wide(&shown, &shown.to_html_struck(struck))
}

fn line(view: &View, charts: &Charts) -> String {
    if !view.line.refusal.is_empty() {
        return paragraph(&view.line.refusal);
    }
    [
        paragraph(&view.line.method),
        figure(&charts.line_svg, &view.line.summary),
        table(&line_table(view)),
        figure(&charts.residuals_svg, &view.line.residual_summary),
        table(&checks_table(view)),
    ]
    .concat()
}

fn uncertainty(view: &View, charts: &Charts, trials: Option<&TrialsView>) -> String {
    if !view.budget.refusal.is_empty() {
        return paragraph(&view.budget.refusal);
    }
    let mut text = paragraph(&view.budget.summary);
    text += &figure(&charts.budget_svg, "Shares of the variance of c");
    text += &table(&budget_table(view));
    text += &table(&budget_figures_table(view));
    if let Some(trials) = trials.filter(|trials| trials.refusal.is_empty()) {
        text += "<h3>Monte Carlo trials</h3>\n";
        text += &paragraph(&trials.verdict);
        text += &figure(&charts.trials_svg, &trials.summary);
        text += &table(&trials_table(trials));
    }
    text
}

fn result(view: &View) -> String {
    if !view.result.refusal.is_empty() {
        return paragraph(&view.result.refusal);
    }
    let mut text: String = view.result.sentences.iter().map(|sentence| paragraph(sentence)).collect();
    text += &table(&result_table(view));
    text += &paragraph(&view.result.choice);
    text += &items([("Reason given".to_owned(), view.result.reason.clone())]);
    text
}

fn notices(view: &View, words: &dyn Words) -> String {
    if view.notices.is_empty() {
        return paragraph("No notices.");
    }
    list(view.notices.iter().map(|notice| notice_text(view, notice, words)))
}

fn notice_text(view: &View, notice: &Notice, words: &dyn Words) -> String {
    let named = view.rows.iter().filter(|row| notice.rows.contains(&row.id));
    let numbers: Vec<usize> = named.map(|row| row.number).collect();
    let rows = match numbers.len() {
        0 => String::new(),
        n => format!(" {}", words.say(&message!("report-notice-rows", n = n, rows = numbers))),
    };
    let said = [&words::weight(notice.weight), &notice.text, &notice.look_at].map(|part| words.say(part));
    let [weight, text, look_at] = said.each_ref().map(|part| html_text(part));
    format!("<strong>{weight}:</strong> {text}{} {look_at}", html_text(&rows))
}

fn history(view: &View) -> String {
    let entries = match view.entries {
        1 => "1 entry".to_owned(),
        count => format!("{count} entries"),
    };
    paragraph(&format!("The history of this notebook holds {entries}, stored in notebook.json."))
}

fn bench_item(view: &View, field: BenchField) -> (String, String) {
    let text = view.bench.get(&field).map_or_else(String::new, with_unit);
    (words::bench_label(field).to_owned(), text)
}

/// A text as typed, or what is taken while it is empty; a bare number has its unit.
fn with_unit(field: &Field) -> String {
    let text = words::with_unit(words::taken(field), &field.unit);
    if field.text.is_empty() && !text.is_empty() { format!("{text} (default)") } else { text }
}

fn typed_section(view: &View, field: BenchField) -> String {
    let text = view.bench.get(&field).map_or("", |field| field.text.as_str());
    if text.is_empty() {
        return String::new();
    }
    section(words::bench_label(field), &format!("<p class=\"typed\">{}</p>\n", html_text(text)))
}

fn section(title: &str, body: &str) -> String {
    format!("<section>\n<h2>{title}</h2>\n{body}</section>\n")
}

fn paragraph(text: &str) -> String {
    if text.is_empty() { String::new() } else { format!("<p>{}</p>\n", html_text(text)) }
}

/// A list of things already in HTML.
fn list(things: impl Iterator<Item = String>) -> String {
    let mut text = String::from("<ul>\n");
    for thing in things {
        let _ = writeln!(text, "<li>{thing}</li>");
    }
    text + "</ul>\n"
}

/// Names and texts; those without a text are left out.
fn items(pairs: impl IntoIterator<Item = (String, String)>) -> String {
    let mut body = String::new();
    for (name, text) in pairs.into_iter().filter(|(_, text)| !text.is_empty()) {
        let _ = writeln!(body, "<dt>{}</dt><dd>{}</dd>", html_text(&name), html_text(&text));
    }
    if body.is_empty() { body } else { format!("<dl>\n{body}</dl>\n") }
}

fn table(table: &Table) -> String {
    wide(table, &table.to_html())
}

/// A table in HTML with room for its width; nothing where it has no rows.
fn wide(table: &Table, html: &str) -> String {
    if table.rows.is_empty() { String::new() } else { format!("<div class=\"wide\">\n{html}</div>\n") }
}

fn figure(svg: &str, caption: &str) -> String {
    if svg.is_empty() {
        return String::new();
    }
    format!("<figure>\n{svg}\n<figcaption>{}</figcaption>\n</figure>\n", html_text(caption))
}

#[cfg(test)]
#[path = "document_test.rs"]
mod tests;
