//! What a teacher fixes, asks and asks for: the layer of a hand-out.
//!
//! While a notebook is prepared, its rules and tasks are edits like any other. [`super::Edit::HandOut`] closes them:
//! what stands before it in the log is the teacher's layer, for good. There is one of it, so that no later entry can
//! claim to be the teacher's; undo stops at it, and what its rules fix refuses every edit (`reach`).

#[cfg(not(target_arch = "wasm32"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use slope_evidence::all_variants;
use slope_evidence::border::to_json;

/// Names a task for the life of the notebook.
pub type TaskId = u32;

/// A piece of the notebook that a teacher can fix or ask for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Piece {
    /// The title.
    Title,
    /// That somebody has read the cautions. The rules of the laboratory and whom to call are the teacher's in any case.
    Cautions,
    /// Carriage, source and beam.
    Source,
    /// Instruments, cables, fixed arm, trigger, and where on their edges pulses are read.
    Instruments,
    /// The rails with their rulers and splices.
    Rails,
    /// The screen, and how edges are read on it and timed on traces.
    Screen,
    /// Time bases, those of the rows handed out too.
    TimeBases,
    /// The air.
    Air,
    /// Planned positions, and the positions of the rows handed out.
    Positions,
    /// Which pictures and traces the rows handed out have. Marking them stays open.
    Evidence,
    /// Errors stated beside rails and screen, and stated covariances.
    Uncertainty,
    /// What the rows handed out read, and which rows there are.
    Readings,
    /// Which rows the line leaves out; asked for, that there is a line.
    Line,
    /// Which uncertainty is claimed; asked for, that there is a result.
    Result,
    /// The text of the aim.
    Aim,
    /// The text of the method.
    Method,
    /// The text of the discussion.
    Discussion,
    /// Who measured.
    People,
    /// Student number.
    StudentNumber,
    /// Group.
    Group,
    /// Date.
    Date,
    /// The answers to all questions.
    Answers,
}

/// What a teacher rules of a piece. So nothing can be fixed and asked for at once.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Rule {
    /// The student's, as they like.
    #[default]
    Open,
    /// As it was handed out.
    Fixed,
    /// The student's, and a notebook without it is not complete.
    Needed,
}

/// What a task asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Asks {
    /// Nothing: it is to be read.
    Nothing,
    /// An answer in words.
    Words,
    /// A number, in the unit that the text names.
    Number,
}

/// A text or question of the teacher's, beside what it is about, with its answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Task {
    /// Names it for the life of the notebook.
    pub id: TaskId,
    /// What it is about.
    pub at: Piece,
    /// What it asks for.
    pub asks: Asks,
    /// The text.
    pub text: String,
    /// The answer as typed; empty where there is none.
    pub answer: String,
}

/// Everything a teacher laid down, and what was answered.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Handout {
    /// What is ruled of each piece, in the order of [`Piece::ALL`].
    rules: [Rule; Piece::ALL.len()],
    /// Texts and questions, in the order in which they were begun.
    pub tasks: Vec<Task>,
    /// The highest number given when it was handed out; none while it is prepared, and in any other notebook.
    pub given: Option<u32>,
}

impl Handout {
    /// What is ruled of a piece.
    pub fn rule(&self, piece: Piece) -> Rule {
        self.rules.get(piece as usize).copied().unwrap_or_default()
    }

    /// Whether a piece is as it was handed out, for good.
    pub fn fixes(&self, piece: Piece) -> bool {
        self.given.is_some() && self.rule(piece) == Rule::Fixed
    }

    /// Rules on a piece.
    pub(super) fn set_rule(&mut self, piece: Piece, rule: Rule) {
        if let Some(old) = self.rules.get_mut(piece as usize) {
            *old = rule;
        }
    }

    /// The pieces of which a rule holds.
    pub fn ruled(&self, rule: Rule) -> impl Iterator<Item = Piece> {
        Piece::ALL.into_iter().filter(move |piece| self.rule(*piece) == rule)
    }

    /// Whether a row, rail or grid was there when the notebook was handed out.
    pub fn gave(&self, id: u32) -> bool {
        self.given.is_some_and(|last| id <= last)
    }
}

all_variants!(
    Piece: Title, Cautions, Source, Instruments, Rails, Screen, TimeBases, Air, Positions, Evidence, Uncertainty,
    Readings, Line, Result, Aim, Method, Discussion, People, StudentNumber, Group, Date, Answers,
);

impl Piece {
    /// The name by which it is stored, and by which a text tells it.
    pub fn name(self) -> String {
        to_json(&self).trim_matches('"').to_owned()
    }
}
