//! What the sets have in common: a bench, a run on it, and evidence in place of what is read on the screen by eye.

use std::error::Error;

use serde_json::{Value, json};
use slope_bench::rails::Truth;
use slope_of_light::analysis::analyse;
use slope_of_light::bundle::{self, Entry};
use slope_of_light::drawings::{ChartForm, charts};
use slope_of_light::notebook::{BenchField, Cell, Edit, EditError, Notebook, Row};
use slope_of_light::quantity::DecimalMark;
use slope_of_light::simulated::described::Described;
use slope_of_light::view::view;
use slope_of_light::words::WordTable;

/// A file: its name, and its bytes.
pub type Made = (String, Vec<u8>);

/// The table of French.
const FRENCH: &str = include_str!("../../../www/page/words/fr.ftl");

/// What an invented person wrote, in one language.
pub struct Notes {
    /// The language, as its table of words is called.
    pub language: &'static str,
    /// How decimals are written.
    pub mark: DecimalMark,
    /// Title of the notebook.
    pub title: &'static str,
    /// Who measured.
    pub people: &'static str,
    /// Where.
    pub place: &'static str,
    /// What for.
    pub aim: &'static str,
    /// How.
    pub method: &'static str,
    /// Names of the rails.
    pub rails: [&'static str; 2],
}

/// A set whose delays come out of evidence, in one language.
pub struct Set {
    /// What its files are called.
    pub name: &'static str,
    /// The language in which it is written, as its table of words is called.
    pub language: &'static str,
    /// What all of it is drawn from.
    pub seed: u64,
    /// The bench.
    pub bench: Described,
    /// Takes the evidence of all rows.
    pub take: Take,
}

/// How evidence is taken.
pub type Take = fn(&[Case]) -> Result<WithEvidence, Box<dyn Error>>;

/// A row whose evidence is to be taken.
pub struct Case<'a> {
    /// What is written in it.
    pub row: &'a Row,
    /// Time per division of the screen, ns.
    pub time_base: f64,
    /// Its true distance, m.
    pub distance: f64,
    /// Its true delay, ns.
    pub delay: f64,
}

/// The evidence of all rows.
pub struct WithEvidence {
    /// What puts it into the notebook.
    pub edits: Vec<Edit>,
    /// Its files.
    pub files: Vec<Entry>,
    /// What is told of it beside the truth of the bench: a name and a value.
    pub told: (&'static str, Value),
}

impl Set {
    /// Its files: the bundle, and what was really so.
    ///
    /// # Errors
    /// When evidence can't be made, or gives no delay.
    pub fn files(&self) -> Result<[Made; 2], Box<dyn Error>> {
        let (typed, truth) = self.bench.run(self.seed)?;
        let per_metre = self.bench.rig.group_index / self.bench.rig.c * 1e9;
        let rows = typed.state().rows.iter().zip(&self.bench.rig.stops).zip(&truth.distances);
        let cases: Vec<Case> = rows
            .map(|((row, stop), &distance)| {
                let delay = truth.t0 + distance * per_metre;
                Case { row, time_base: stop.time_base, distance, delay }
            })
            .collect();
        let taken = (self.take)(&cases)?;
        let mut notebook = without_edges(&typed)?;
        for edit in taken.edits {
            notebook.apply(edit, "")?;
        }
        let bundle =
            (format!("{}.{}.zip", self.name, self.language), bundled(&notebook, taken.files, self.language)?);
        Ok([bundle, told(self.name, self.seed, &truth, Some(taken.told))])
    }
}

/// The file that tells what was really so.
pub fn told(name: &str, seed: u64, truth: &Truth, more: Option<(&str, Value)>) -> Made {
    let mut told = json!({
        "seed": seed,
        "c_m_per_s": truth.c,
        "t0_ns": truth.t0,
        "rail_marks_m": truth.marks,
        "row_distances_m": truth.distances,
    });
    if let Some((name, value)) = more {
        told[name] = value;
    }
    // The alternate form of a JSON value is the pretty one, and can't fail.
    (format!("{name}.truth.json"), format!("{told:#}\n").into_bytes())
}

/// The bundle of a notebook with its files.
fn bundled(notebook: &Notebook, files: Vec<Entry>, language: &str) -> Result<Vec<u8>, Box<dyn Error>> {
    let analysis = analyse(notebook);
    let words = if language == "fr" { WordTable::read(language, FRENCH)? } else { WordTable::english()? };
    let charts = charts(notebook.state(), &analysis, None, ChartForm::Svg, &words);
    Ok(bundle::of(notebook, &analysis, &view(notebook, &analysis), &charts, None, &words, files)?)
}

/// The same notebook, with nothing read on the screen.
fn without_edges(typed: &Notebook) -> Result<Notebook, EditError> {
    let mut notebook = Notebook::new();
    for entry in typed.log() {
        let edit = match entry.edit.clone() {
            Edit::AddRow { row, after, mut cells } => {
                cells.remove(&Cell::EdgeA);
                cells.remove(&Cell::EdgeB);
                Edit::AddRow { row, after, cells }
            }
            // What is read on a screen by eye has no place here.
            Edit::SetBench { field: BenchField::EdgeHalfWidth, .. } => continue,
            other => other,
        };
        notebook.apply(edit, "")?;
    }
    Ok(notebook)
}
