//! The report: one HTML document to read, print or hand in, which needs nothing but itself.
//!
//! It holds no script and may load nothing (its Content-Security-Policy says so to the browser); every text of
//! the notebook is escaped. What it shows is the [`View`] and nothing else.

use std::fmt::Write as _;

use super::escape::html_text;
use super::labels::{self, splice};
use super::shown::{
    answers_table, budget_figures_table, budget_notes, budget_table, checks_table, line_table,
    readings_table, result_table, shown_rows, trials_table,
};
use super::table::{Column, Kind, Table};
use crate::analysis::Notice;
use crate::analysis::{bench_field, rail_field};
use crate::drawings::Charts;
use crate::message;
use crate::notebook::{BenchField, RailField, UncertaintyKind};
use crate::view::{
    Behind, CautionGroup, CautionsView, Field, Meant, RailView, RowState, TrialsView, View, budget,
};
use crate::words::{Message, Words};

/// May load nothing and run nothing; styles only from inside the document.
const POLICY: &str = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

/// How many rails have room beside one another on paper.
const BESIDE: usize = 6;

const STYLE: &str = include_str!("report.css");

/// The report on a notebook, with what trials gave if they were made, in the words of a table.
pub fn html(view: &View, charts: &Charts, trials: Option<&TrialsView>, words: &dyn Words) -> String {
    Report { view, charts, trials, words }.html()
}

/// What the report is made of. What its functions give is HTML, unless they say otherwise.
struct Report<'a> {
    view: &'a View,
    charts: &'a Charts,
    trials: Option<&'a TrialsView>,
    words: &'a dyn Words,
}

impl Report<'_> {
    /// A message as plain text.
    fn say(&self, message: &Message) -> String {
        self.words.say(message)
    }

    /// The same of what there may be to say.
    fn told(&self, message: Option<&Message>) -> String {
        message.map_or_else(String::new, |message| self.say(message))
    }

    fn html(&self) -> String {
        let title = match self.view.title.as_str() {
            "" => self.say(&message!("untitled")),
            title => title.to_owned(),
        };
        let (title, language) = (html_text(&title), html_text(&self.say(&message!("language"))));
        let sections = [
            self.heading(&title),
            self.section(&message!("cautions-title"), &self.cautions()),
            self.typed_section(BenchField::Aim),
            self.typed_section(BenchField::Method),
            self.section(&message!("apparatus-title"), &self.apparatus()),
            self.section(&message!("readings-title"), &self.readings()),
            self.section(&message!("line-title"), &self.line()),
            self.section(&message!("uncertainty-title"), &self.uncertainty()),
            self.section(&message!("result-title"), &self.result()),
            self.section(&message!("report-notices"), &self.notices()),
            self.typed_section(BenchField::Discussion),
            self.answers(),
            self.section(&message!("report-history"), &self.history()),
        ];
        format!(
            "<!DOCTYPE html>\n<html lang=\"{language}\">\n<head>\n<meta charset=\"utf-8\">\n\
             <meta http-equiv=\"Content-Security-Policy\" content=\"{POLICY}\">\n\
             <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
             <title>{title}</title>\n<style>\n{STYLE}</style>\n</head>\n<body>\n<main>\n{}</main>\n</body>\n</html>\n",
            sections.concat()
        )
    }

    fn heading(&self, title: &str) -> String {
        let fields = [
            BenchField::People,
            BenchField::StudentNumber,
            BenchField::Group,
            BenchField::Date,
            BenchField::Place,
        ]
        .map(|field| self.bench_item(field));
        format!("<h1>{title}</h1>\n{}{}", items(&mut fields.into_iter()), self.summary())
    }

    /// The result with its uncertainties, for one who leafs through many reports; nothing where there is none yet.
    fn summary(&self) -> String {
        let said: Vec<String> =
            self.view.result.sentences.iter().take(2).map(|sentence| self.say(sentence)).collect();
        if said.is_empty() {
            return String::new();
        }
        format!("<p class=\"summary\">{}</p>\n", html_text(&said.join(" ")))
    }

    fn cautions(&self) -> String {
        let CautionsView { groups, read } = &self.view.cautions;
        let mut text = self.typed_with_heading(BenchField::LocalRules);
        text += &items(&mut std::iter::once(self.bench_item(BenchField::LocalContact)));
        text += &paragraph(&self.say(&message!("cautions-lead")));
        text += "<div class=\"cautions\">\n";
        for CautionGroup { title, cautions } in groups {
            let _ = writeln!(text, "<h3>{}</h3>", html_text(&self.say(title)));
            text += &self.list_of(cautions);
        }
        text += "</div>\n";
        if read.is_empty() {
            return text + &paragraph(&self.say(&message!("cautions-unread")));
        }
        text + &self.list_of(read)
    }

    fn apparatus(&self) -> String {
        let carriage = (self.say(&message!("apparatus-path")), self.say(&labels::path(self.view.path)));
        let bench = labels::BENCH_FIELDS.iter().map(|field| self.bench_item(*field));
        // Without an angle nothing rests on it.
        let has_angle =
            self.view.bench.get(&BenchField::BeamAngle).is_some_and(|field| !field.text.is_empty());
        let beam = (self.say(&message!("apparatus-beam")), self.say(&labels::beam(self.view.beam)));
        let mut text = items(&mut [carriage].into_iter().chain(bench).chain(has_angle.then_some(beam)));
        text += &figure(&self.charts.bench_svg, &self.say(&message!("apparatus-drawing")));
        let mut ruler_before = "";
        for rails in self.view.rails.chunks(BESIDE) {
            text += &table(&self.rails(rails, ruler_before));
            ruler_before = rails.last().map_or("", |rail| &rail.unit_symbol);
        }
        let settings = self.view.settings.iter().map(|setting| {
            let base = self.with_unit(&setting.time_per_division);
            let u = self.with_unit(&setting.uncertainty);
            (
                self.say(&message!("report-setting", base = base)),
                self.say(&message!("report-setting-uncertainty", u = u)),
            )
        });
        let shared = self.view.shared.iter().map(|error| {
            let told = message!(
                "report-shared",
                effect = budget::effect(error.effect),
                acts = budget::acts(error.acts_on),
                u = self.with_unit(&error.uncertainty)
            );
            (error.name.clone(), self.say(&told))
        });
        text += &items(&mut settings.chain(shared));
        text
    }

    /// Rails side by side, a column each, so that they can be compared; `ruler_before` is the unit of the one before them.
    fn rails<'b>(&self, rails: &'b [RailView], mut ruler_before: &'b str) -> Table {
        let head = |title| Column { name: "rail", title, unit: "", kind: Kind::Text, description: None };
        let mut columns = vec![head(self.say(&message!("columns-figures-name")))];
        let mut rows: Vec<Vec<String>> = Vec::new();
        for rail in rails {
            let name = rail.fields.get(&RailField::Name);
            let name = name.map_or_else(String::new, |name| labels::taken(name, self.words));
            columns.push(head(self.say(&message!("report-rail", name = name))));
            for (place, (name, text)) in self.rail(rail, ruler_before).into_iter().enumerate() {
                if rows.len() == place {
                    rows.push(vec![name]);
                }
                if let Some(row) = rows.get_mut(place) {
                    row.push(text);
                }
            }
            ruler_before = &rail.unit_symbol;
        }
        rows.retain(|row| row.iter().skip(1).any(|text| !text.is_empty()));
        Table { name: "rails", title: self.say(&message!("rails-title")), columns, rows }
    }

    /// What is stated of a rail, and what is found of its splice: names and texts.
    fn rail(&self, rail: &RailView, ruler_before: &str) -> Vec<(String, String)> {
        let ruler =
            message!("report-ruler-text", unit = &*rail.unit_symbol, sense = labels::sense(rail.sense));
        let mut told = vec![
            (self.say(&message!("report-ruler")), self.say(&ruler)),
            (
                self.say(&message!("report-splice")),
                self.say(&splice(&rail.splice, &rail.unit_symbol, ruler_before)),
            ),
            (self.say(&message!("splice-uncertainty")), self.with_unit(&rail.splice_uncertainty)),
            (self.say(&message!("report-stands")), self.told(rail.stands.as_ref())),
            (self.say(&message!("report-step")), self.told(rail.step.as_ref())),
        ];
        for field in labels::RAIL_FIELDS {
            let text = rail.fields.get(field).map_or_else(String::new, |field| self.with_unit(field));
            told.push((self.say(&rail_field(*field)), text));
        }
        told
    }

    /// The rows; those struck out are struck through, but for the word that says so, the reason and the remark.
    fn readings(&self) -> String {
        let shown = readings_table(self.view, self.words);
        let struck: Vec<bool> = shown_rows(self.view).map(|row| row.state == RowState::Struck).collect();
        let struck = |row: usize, column: &Column| {
            struck.get(row) == Some(&true) && !["outside_because", "remark"].contains(&column.name)
        };
        wide(&shown, &shown.to_html_struck(struck))
    }

    fn line(&self) -> String {
        let line = &self.view.line;
        if let Some(refusal) = &line.refusal {
            return paragraph(&self.say(refusal));
        }
        [
            paragraph(&self.told(line.method.as_ref())),
            figure(&self.charts.line_svg, &self.told(line.summary.as_ref())),
            table(&line_table(self.view, self.words)),
            figure(&self.charts.residuals_svg, &self.told(line.residual_summary.as_ref())),
            table(&checks_table(self.view, self.words)),
        ]
        .concat()
    }

    fn uncertainty(&self) -> String {
        let budget = &self.view.budget;
        if let Some(refusal) = &budget.refusal {
            return self.refused(refusal, &[(message!("line-title"), &self.view.line.refusal)]);
        }
        let mut text = paragraph(&self.told(budget.summary.as_ref()));
        text += &figure(&self.charts.budget_svg, &self.say(&message!("report-shares")));
        text += &table(&budget_table(self.view, self.words));
        text += &list("ol", &mut budget_notes(self.view, self.words).iter().map(|note| html_text(note)));
        text += &table(&budget_figures_table(self.view, self.words));
        if let Some(trials) = self.trials.filter(|trials| trials.refusal.is_none()) {
            let _ = writeln!(text, "<h3>{}</h3>", html_text(&self.say(&message!("trials-title"))));
            text += &paragraph(&self.told(trials.verdict.as_ref()));
            text += &figure(&self.charts.trials_svg, &self.told(trials.summary.as_ref()));
            text += &table(&trials_table(trials, self.words));
        }
        text
    }

    fn result(&self) -> String {
        let result = &self.view.result;
        if let Some(refusal) = &result.refusal {
            let before = [
                (message!("line-title"), &self.view.line.refusal),
                (message!("uncertainty-title"), &self.view.budget.refusal),
            ];
            return self.refused(refusal, &before);
        }
        let mut text: String =
            result.sentences.iter().map(|sentence| paragraph(&self.say(sentence))).collect();
        text += &table(&result_table(self.view, self.words));
        text += &paragraph(&self.told(result.choice.as_ref()));
        text += &items(&mut std::iter::once((self.say(&message!("report-reason")), result.reason.clone())));
        text
    }

    /// Why there is nothing to show; where a section before says the same, that section by its title.
    fn refused(&self, refusal: &Message, before: &[(Message, &Option<Message>)]) -> String {
        let first = before.iter().find(|(_, said)| said.as_ref() == Some(refusal));
        paragraph(&match first {
            Some((title, _)) => self.say(&message!("section-waits", section = title.clone())),
            None => self.say(refusal),
        })
    }

    fn notices(&self) -> String {
        if self.view.notices.is_empty() {
            return paragraph(&self.say(&message!("report-no-notices")));
        }
        list("ul", &mut self.view.notices.iter().map(|notice| self.notice(notice)))
    }

    fn notice(&self, notice: &Notice) -> String {
        let named = self.view.rows.iter().filter(|row| notice.rows.contains(&row.id));
        let numbers: Vec<usize> = named.map(|row| row.number).collect();
        let rows = match numbers.len() {
            0 => String::new(),
            n => format!(" {}", self.say(&message!("report-notice-rows", n = n, rows = numbers))),
        };
        let lead = message!("notices-lead", weight = labels::weight(notice.weight));
        let said = [&lead, &notice.text, &notice.look_at].map(|part| self.say(part));
        let [lead, text, look_at] = said.each_ref().map(|part| html_text(part));
        let signs = match self.list_of(&notice.signs) {
            signs if signs.is_empty() => signs,
            signs => format!(" {}{signs}", html_text(&self.say(&message!("notices-signs")))),
        };
        format!("<strong>{lead}</strong> {text}{} {look_at}{signs}", html_text(&rows))
    }

    fn list_of(&self, messages: &[Message]) -> String {
        list("ul", &mut messages.iter().map(|message| html_text(&self.say(message))))
    }

    fn answers(&self) -> String {
        let asked = answers_table(self.view, self.words);
        if asked.rows.is_empty() {
            return String::new();
        }
        self.section(&message!("tables-answers"), &table(&asked))
    }

    fn history(&self) -> String {
        paragraph(&self.say(&message!("report-entries", n = self.view.entries)))
    }

    /// What a field is called, and what stands in it; both plain texts.
    fn bench_item(&self, field: BenchField) -> (String, String) {
        let text = self.view.bench.get(&field).map_or_else(String::new, |field| self.with_unit(field));
        (self.say(&bench_field(field)), text)
    }

    /// A text as typed, or what is taken while it is empty, as plain text; a bare number has its unit.
    fn with_unit(&self, field: &Field) -> String {
        let text = self.meant(field, labels::with_unit(&labels::taken(field, self.words), &field.unit));
        let text = if field.text.is_empty() && !text.is_empty() {
            self.say(&message!("report-default", text = text))
        } else {
            text
        };
        self.with_behind(field, text)
    }

    /// A value with its uncertainty, where one may be typed behind it; any other text as it stands.
    fn with_behind(&self, field: &Field, text: String) -> String {
        let Some(Behind { limit, u }) = &field.behind else { return text };
        self.say(&if limit.is_empty() {
            message!("report-value-standard", value = text, u = u.as_str())
        } else {
            message!("report-value-limit", value = text, a = limit.as_str(), u = u.as_str())
        })
    }

    /// An uncertainty, as what it is meant; any other text as it stands.
    fn meant(&self, field: &Field, text: String) -> String {
        let Some(Meant { kind, u, exact, .. }) = field.meant.as_ref().filter(|_| !text.is_empty()) else {
            return text;
        };
        self.say(&match kind {
            _ if *exact => message!("report-exact", u = text),
            UncertaintyKind::Standard => message!("report-standard", u = text),
            UncertaintyKind::Limit if u.is_empty() => message!("report-limit-alone", a = text),
            UncertaintyKind::Limit => message!("report-limit", a = text, u = u.as_str()),
        })
    }

    fn typed_section(&self, field: BenchField) -> String {
        self.typed(field).map_or_else(String::new, |text| self.section(&bench_field(field), &text))
    }

    fn typed_with_heading(&self, field: BenchField) -> String {
        let heading = html_text(&self.say(&bench_field(field)));
        self.typed(field).map_or_else(String::new, |text| format!("<h3>{heading}</h3>\n{text}"))
    }

    /// A text of the notebook as it was typed; none where it is empty.
    fn typed(&self, field: BenchField) -> Option<String> {
        let text = self.view.bench.get(&field).map_or("", |field| field.text.as_str());
        (!text.is_empty()).then(|| format!("<p class=\"typed\">{}</p>\n", html_text(text)))
    }

    fn section(&self, title: &Message, body: &str) -> String {
        format!("<section>\n<h2>{}</h2>\n{body}</section>\n", html_text(&self.say(title)))
    }
}

fn paragraph(text: &str) -> String {
    if text.is_empty() { String::new() } else { format!("<p>{}</p>\n", html_text(text)) }
}

/// A list, "ul" or "ol", of things already in HTML; nothing where there is none.
fn list(tag: &str, things: &mut dyn Iterator<Item = String>) -> String {
    let mut body = String::new();
    for thing in things {
        let _ = writeln!(body, "<li>{thing}</li>");
    }
    if body.is_empty() { body } else { format!("<{tag}>\n{body}</{tag}>\n") }
}

/// Names and texts; those without a text are left out.
fn items(pairs: &mut dyn Iterator<Item = (String, String)>) -> String {
    let mut body = String::new();
    for (name, text) in pairs {
        if !text.is_empty() {
            let _ = writeln!(body, "<dt>{}</dt><dd>{}</dd>", html_text(&name), html_text(&text));
        }
    }
    if body.is_empty() { body } else { format!("<dl>\n{body}</dl>\n") }
}

fn table(table: &Table) -> String {
    wide(table, &table.to_html())
}

/// A table in HTML with room for its width, along which keys move; nothing where it has no rows.
fn wide(table: &Table, html: &str) -> String {
    if table.rows.is_empty() {
        return String::new();
    }
    let name = html_text(&table.title);
    format!("<div class=\"wide\" tabindex=\"0\" role=\"group\" aria-label=\"{name}\">\n{html}</div>\n")
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
