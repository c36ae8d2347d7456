//! What the report says, section by section, as plain texts, tables and charts; [`super::html`], [`super::latex`] and
//! [`super::markdown`] write it. What it shows is the [`View`] and nothing else.

use super::block::{Block, DocumentSection, NoticeText, facts, figure, paragraph, table};
use super::labels::{self, splice};
use super::shown::{
    answers_table, budget_notes, budget_table, checks_table, line_table, readings_table, result_table,
    shown_rows, trials_table,
};
use super::table::{Column, Kind, Table};
use crate::analysis::Notice;
use crate::analysis::{bench_field, rail_field};
use crate::drawings::Charts;
use crate::message;
use crate::notebook::{BenchField, Cell, Imprint, Note, RailField, RowId, UncertaintyKind};
use crate::view::cautions::to_the_minute;
use crate::view::evidence::estimator_name;
use crate::view::{
    Behind, CautionGroup, CautionsView, EvidenceKind, Field, Meant, RailView, RowState, RowView, TrialsView,
    View, budget,
};
use crate::words::{Message, Words};

/// How many rails have room beside one another on paper.
const BESIDE: usize = 6;

/// How many sentences of the result sum it up; they open the report, and are not said again.
const SUMMED_UP: usize = 2;

/// A report. No text in it is empty, or markup.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Document {
    /// Code of its language.
    pub(super) language: String,
    /// Title of the notebook.
    pub(super) title: String,
    /// Who, when and where; the result in a sentence or two.
    pub(super) opening: Vec<Block>,
    /// What follows, in order.
    pub(super) sections: Vec<DocumentSection>,
}

impl Document {
    /// The report on a notebook, with what trials gave if they were made, in the words of a table; `imprint` is that of
    /// its log.
    pub fn of(
        view: &View,
        charts: &Charts,
        trials: Option<&TrialsView>,
        imprint: &Imprint,
        words: &dyn Words,
    ) -> Self {
        Report { view, charts, trials, imprint, words }.document()
    }
}

/// Columns of the readings that stand as they are where a row is struck out: they say why.
pub(super) const UNSTRUCK: [&str; 2] = ["outside_because", "remark"];

/// Whether the delay of a row is that of two edges read on the screen: neither typed, nor taken from marks or traces.
fn read_on_screen(row: &RowView) -> bool {
    let has_typed_delay = row.cells.get(&Cell::Delay).is_some_and(|cell| !cell.text.is_empty());
    row.evidence == EvidenceKind::Typed && !has_typed_delay
}

/// What the report is made of.
struct Report<'a> {
    view: &'a View,
    charts: &'a Charts,
    trials: Option<&'a TrialsView>,
    imprint: &'a Imprint,
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

    fn document(&self) -> Document {
        let title = match self.view.title.as_str() {
            "" => self.say(&message!("untitled")),
            title => title.to_owned(),
        };
        let sections = [
            (message!("cautions-title"), self.cautions()),
            (message!("leaf-bench"), self.bench().into_iter().collect()),
            self.typed_section(BenchField::Aim),
            self.typed_section(BenchField::Method),
            (message!("apparatus-title"), self.apparatus()),
            (message!("readings-title"), self.readings()),
            (message!("line-title"), self.line()),
            (message!("uncertainty-title"), self.uncertainty()),
            (message!("result-title"), self.result()),
            (message!("report-notices"), self.notices()),
            self.typed_section(BenchField::Discussion),
            (message!("tables-answers"), table(answers_table(self.view, self.words)).into_iter().collect()),
            (message!("report-history"), self.history()),
        ];
        Document {
            language: self.say(&message!("language")),
            title,
            opening: self.opening(),
            sections: sections
                .into_iter()
                .filter(|(_, blocks)| !blocks.is_empty())
                .map(|(title, blocks)| DocumentSection { title: self.say(&title), blocks })
                .collect(),
        }
    }

    fn opening(&self) -> Vec<Block> {
        let fields = [
            BenchField::People,
            BenchField::StudentNumber,
            BenchField::Group,
            BenchField::Date,
            BenchField::Place,
        ];
        let said: Vec<String> =
            self.view.result.sentences.iter().take(SUMMED_UP).map(|sentence| self.say(sentence)).collect();
        let summary = (!said.is_empty()).then(|| Block::Summary(said.join(" ")));
        facts(fields.map(|field| self.bench_item(field))).into_iter().chain(summary).collect()
    }

    fn cautions(&self) -> Vec<Block> {
        let CautionsView { groups, read } = &self.view.cautions;
        let mut blocks = Vec::new();
        if let Some(rules) = self.typed(BenchField::LocalRules) {
            blocks.extend([Block::Heading(self.say(&bench_field(BenchField::LocalRules))), rules]);
        }
        blocks.extend(facts([self.bench_item(BenchField::LocalContact)]));
        blocks.extend(paragraph(self.say(&message!("cautions-lead"))));
        let group = |CautionGroup { title, cautions }: &CautionGroup| {
            [Block::Heading(self.say(title)), Block::Points(self.all(cautions))]
        };
        blocks.push(Block::Columns(groups.iter().flat_map(group).collect()));
        if read.is_empty() {
            blocks.extend(paragraph(self.say(&message!("cautions-unread"))));
        } else {
            blocks.push(Block::Points(self.all(read)));
        }
        blocks
    }

    fn bench(&self) -> Option<Block> {
        figure("bench", &self.charts.bench, self.say(&message!("apparatus-drawing")))
    }

    /// Whether the analysis rests on a text of the bench: on one that was typed, or on its default.
    fn counts(&self, field: BenchField) -> bool {
        let any = |kind| shown_rows(self.view).any(|row| row.evidence == kind);
        let is_typed = self.view.bench.get(&field).is_some_and(|field| !field.text.is_empty());
        is_typed
            || match field {
                BenchField::SmallDivisions | BenchField::EdgeHalfWidth => {
                    shown_rows(self.view).any(read_on_screen)
                }
                BenchField::MarkUncertainty => any(EvidenceKind::Picture),
                BenchField::TraceLevel | BenchField::TraceFraction => any(EvidenceKind::Traces),
                _ => true,
            }
    }

    fn apparatus(&self) -> Vec<Block> {
        let carriage = (self.say(&message!("apparatus-path")), self.say(&labels::path(self.view.path)));
        let bench = labels::BENCH_FIELDS.iter().copied().filter(|field| self.counts(*field));
        let bench = bench.map(|field| self.bench_item(field));
        // Without an angle nothing rests on it.
        let has_angle =
            self.view.bench.get(&BenchField::BeamAngle).is_some_and(|field| !field.text.is_empty());
        let beam = (self.say(&message!("apparatus-beam")), self.say(&labels::beam(self.view.beam)));
        let photo = self.view.photo.as_ref().map(|photo| {
            let named = message!(
                "report-photo",
                name = photo.name.as_str(),
                file = photo.sha256.get(..8).unwrap_or(&photo.sha256)
            );
            (self.say(&message!("photo-title")), self.say(&named))
        });
        let described = [carriage].into_iter().chain(bench).chain(photo).chain(has_angle.then_some(beam));
        let mut blocks = facts(described).into_iter().collect::<Vec<Block>>();
        let mut ruler_before = "";
        for rails in self.view.rails.chunks(BESIDE) {
            blocks.extend(table(self.rails(rails, ruler_before)));
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
            (self.words.text(&labels::own_name(&error.name)), self.say(&told))
        });
        blocks.extend(facts(settings.chain(shared)));
        blocks
    }

    /// Rails side by side, a column each, so that they can be compared; `ruler_before` is the unit of the one before them.
    fn rails<'b>(&self, rails: &'b [RailView], mut ruler_before: &'b str) -> Table {
        let head = |title| Column { name: "rail", title, unit: "", kind: Kind::Text, description: None };
        let mut columns = vec![head(self.say(&message!("columns-figures-name")))];
        let mut rows: Vec<Vec<String>> = Vec::new();
        for rail in rails {
            let name = rail.fields.get(&RailField::Name);
            let name = name.map_or_else(String::new, |name| labels::typed_or_default(name, self.words));
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
            (
                self.say(&message!("report-step")),
                rail.step.as_ref().map_or_else(String::new, |step| self.step(step)),
            ),
        ];
        for field in labels::RAIL_FIELDS {
            let text = rail.fields.get(field).map_or_else(String::new, |field| self.with_unit(field));
            told.push((self.say(&rail_field(*field)), text));
        }
        told
    }

    /// What is found of a step, in the few words for which a table has room: its head says between what.
    fn step(&self, found: &Message) -> String {
        let value = |name: &str| found.values.get(name).cloned().unwrap_or_default();
        self.say(&match found.id {
            "rails-step" => message!("report-step-none", step = value("step"), p = value("p")),
            "rails-step-significant" => message!("report-step-found", step = value("step"), p = value("p")),
            _ => found.clone(),
        })
    }

    fn readings(&self) -> Vec<Block> {
        let mut shown = readings_table(self.view, self.words);
        let mut struck: Vec<bool> = Vec::new();
        let mut lines = std::mem::take(&mut shown.rows).into_iter();
        let is_row = |id: &RowId| self.view.rows.iter().any(|row| row.id == *id);
        let notes = |after: Option<RowId>| -> Vec<Vec<String>> {
            let here = self.view.notes.iter().filter(|note| note.after.filter(is_row) == after);
            here.map(|note| vec![self.note(note)]).filter(|cells| !cells.concat().trim().is_empty()).collect()
        };
        shown.rows.extend(notes(None));
        for row in &self.view.rows {
            if row.state != RowState::Empty {
                struck.resize(shown.rows.len(), false);
                struck.push(row.state == RowState::Struck);
                shown.rows.extend(lines.next());
            }
            shown.rows.extend(notes(Some(row.id)));
        }
        if shown.rows.is_empty() {
            return Vec::new();
        }
        std::iter::once(Block::Readings(shown, struck)).chain(self.delays()).collect()
    }

    /// A note, with when it was written.
    fn note(&self, note: &Note) -> String {
        let text = note.text.as_str();
        match to_the_minute(&note.at).filter(|_| !text.is_empty()) {
            Some((date, time)) => self.say(&message!("report-note", date = date, time = time, text = text)),
            None => text.to_owned(),
        }
    }

    /// How the delays were obtained, each way with its rows; nothing where there are none.
    fn delays(&self) -> Option<Block> {
        let rows_of = |is_so: &dyn Fn(&RowView) -> bool| -> Vec<usize> {
            let rows = shown_rows(self.view).filter(|row| !row.delay.is_empty() && is_so(row));
            rows.map(|row| row.number).collect()
        };
        let typed = rows_of(&|row| row.evidence == EvidenceKind::Typed && !read_on_screen(row));
        let on_screen = rows_of(&read_on_screen);
        let photos = rows_of(&|row| row.evidence == EvidenceKind::Picture);
        let traces = rows_of(&|row| row.evidence == EvidenceKind::Traces);
        let told = [
            message!("report-delays-typed", n = typed.len(), rows = labels::rows(&typed)),
            message!("report-delays-screen", n = on_screen.len(), rows = labels::rows(&on_screen)),
            message!("report-delays-photos", n = photos.len(), rows = labels::rows(&photos)),
            message!(
                "report-delays-traces",
                n = traces.len(),
                rows = labels::rows(&traces),
                how = estimator_name(self.view.delays.estimator)
            ),
        ];
        let all = told.iter().zip([typed, on_screen, photos, traces]).filter(|(_, rows)| !rows.is_empty());
        let told = all.map(|(message, _)| message).chain(&self.view.delays.heights);
        let sentences: Vec<String> = told.map(|message| self.say(message)).collect();
        paragraph(sentences.join(" "))
    }

    fn line(&self) -> Vec<Block> {
        let line = &self.view.line;
        if let Some(refusal) = &line.refusal {
            return paragraph(self.say(refusal)).into_iter().collect();
        }
        let blocks = [
            paragraph(self.told(line.method.as_ref())),
            table(line_table(self.view, self.words)),
            figure("line", &self.charts.line, self.told(line.summary.as_ref())),
            figure("residuals", &self.charts.residuals, self.told(line.residual_summary.as_ref())),
            table(checks_table(self.view, self.words)),
        ];
        blocks.into_iter().flatten().collect()
    }

    fn uncertainty(&self) -> Vec<Block> {
        let budget = &self.view.budget;
        if let Some(refusal) = &budget.refusal {
            return self.refused(refusal, &[(message!("line-title"), &self.view.line.refusal)]);
        }
        let notes = budget_notes(self.view, self.words);
        let mut blocks: Vec<Block> = [
            paragraph(self.told(budget.summary.as_ref())),
            figure("budget", &self.charts.budget, self.say(&message!("report-shares"))),
            table(budget_table(self.view, self.words)),
            (!notes.is_empty()).then_some(Block::Notes(notes)),
        ]
        .into_iter()
        .flatten()
        .collect();
        if let Some(trials) = self.trials.filter(|trials| trials.refusal.is_none()) {
            blocks.push(Block::Heading(self.say(&message!("trials-title"))));
            blocks.extend(paragraph(self.told(trials.verdict.as_ref())));
            blocks.extend(figure("trials", &self.charts.trials, self.told(trials.summary.as_ref())));
            blocks.extend(table(trials_table(trials, self.words)));
        }
        blocks
    }

    fn result(&self) -> Vec<Block> {
        let result = &self.view.result;
        if let Some(refusal) = &result.refusal {
            let before = [
                (message!("line-title"), &self.view.line.refusal),
                (message!("uncertainty-title"), &self.view.budget.refusal),
            ];
            return self.refused(refusal, &before);
        }
        let said = result.sentences.iter().skip(SUMMED_UP).chain(&result.choice);
        let said: Vec<String> = said.map(|sentence| self.say(sentence)).collect();
        table(result_table(self.view, self.words))
            .into_iter()
            .chain(paragraph(said.join(" ")))
            .chain(facts([(self.say(&message!("report-reason")), result.reason.clone())]))
            .collect()
    }

    /// Why there is nothing to show; where a section before says the same, that section by its title.
    fn refused(&self, refusal: &Message, before: &[(Message, &Option<Message>)]) -> Vec<Block> {
        let first = before.iter().find(|(_, said)| said.as_ref() == Some(refusal));
        let said = match first {
            Some((title, _)) => self.say(&message!("section-waits", section = title.clone())),
            None => self.say(refusal),
        };
        paragraph(said).into_iter().collect()
    }

    fn notices(&self) -> Vec<Block> {
        if self.view.notices.is_empty() {
            return paragraph(self.say(&message!("report-no-notices"))).into_iter().collect();
        }
        vec![Block::Notices(self.view.notices.iter().map(|notice| self.notice(notice)).collect())]
    }

    fn notice(&self, notice: &Notice) -> NoticeText {
        let named = self.view.rows.iter().filter(|row| notice.rows.contains(&row.id));
        let numbers: Vec<usize> = named.map(|row| row.number).collect();
        let rows = (!numbers.is_empty()).then(|| {
            self.say(&message!("report-notice-rows", n = numbers.len(), rows = labels::rows(&numbers)))
        });
        let said = [Some(self.say(&notice.text)), rows, Some(self.say(&notice.look_at))];
        NoticeText {
            lead: self.say(&message!("notices-lead", weight = labels::weight(notice.weight))),
            text: said.into_iter().flatten().collect::<Vec<_>>().join(" "),
            signs: (!notice.signs.is_empty())
                .then(|| (self.say(&message!("notices-signs")), self.all(&notice.signs))),
        }
    }

    fn all(&self, messages: &[Message]) -> Vec<String> {
        messages.iter().map(|message| self.say(message)).collect()
    }

    fn history(&self) -> Vec<Block> {
        let Imprint { first, last, digest } = self.imprint;
        let minute = |at: &str| to_the_minute(at).map(|(date, time)| format!("{date} {time}"));
        let times = minute(first).zip(minute(last));
        let said = [
            Some(message!("report-entries", n = self.view.entries)),
            times.map(|(first, last)| message!("report-times", first = first, last = last)),
            Some(message!("report-version", version = env!("CARGO_PKG_VERSION"))),
            (!digest.is_empty()).then(|| message!("report-digest", digest = digest.as_str())),
        ];
        let said: Vec<String> = said.iter().flatten().map(|message| self.say(message)).collect();
        paragraph(said.join(" ")).into_iter().collect()
    }

    /// What a field is called, and what stands in it; both plain texts.
    fn bench_item(&self, field: BenchField) -> (String, String) {
        let text = self.view.bench.get(&field).map_or_else(String::new, |field| self.with_unit(field));
        (self.say(&bench_field(field)), text)
    }

    /// A text as typed, or what is taken while it is empty, as plain text; a bare number has its unit. What is refused
    /// stands as typed, and says so.
    fn with_unit(&self, field: &Field) -> String {
        if field.problem.is_some() && !field.text.is_empty() {
            return self.say(&message!("report-unusable", text = field.text.as_str()));
        }
        let text =
            self.meant(field, labels::with_unit(&labels::typed_or_default(field, self.words), &field.unit));
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

    fn typed_section(&self, field: BenchField) -> (Message, Vec<Block>) {
        (bench_field(field), self.typed(field).into_iter().collect())
    }

    /// A text of the notebook as it was typed; none where it is empty.
    fn typed(&self, field: BenchField) -> Option<Block> {
        let text = self.view.bench.get(&field).map_or("", |field| field.text.as_str());
        (!text.is_empty()).then(|| Block::Typed(text.to_owned()))
    }
}

#[cfg(test)]
#[path = "document_test.rs"]
mod tests;
