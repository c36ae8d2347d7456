//! Trace files that belong together: one that holds both traces, or A's and B's. They are kept as samples, so that what
//! was measured can be measured again by other settings, and looked at closer, without reading files again.

use serde::{Deserialize, Serialize};
use slope_evidence::border::to_json;
use slope_evidence::stored::{Estimator, LevelOf, StoredFile, Traces, refusal};
use slope_evidence::trace::{
    self, Asked, DecimalMark, Delay, DelayMethod, Delimiter, Detector, Drawn, Envelope, Layout, ReadError,
    Recording, Role, TraceError, Waveform,
};
use slope_evidence::words::Message;
use slope_evidence::{errors_as_data, message};

/// Why files give no pair of traces.
#[derive(Clone, Debug, PartialEq)]
pub enum ReadingError {
    /// A file can't be read.
    Read(ReadError),
    /// No file yet.
    None,
    /// More than two.
    Third {
        /// The third one.
        file: String,
    },
    /// One file with one trace.
    One {
        /// The file.
        file: String,
    },
    /// No column stands for a detector.
    Lacks {
        /// The file.
        file: String,
        /// Whose trace it lacks.
        detector: Detector,
    },
    /// The two traces are one and the same, sample by sample.
    Same {
        /// The file of B.
        file: String,
    },
    /// Nothing tells how the times of two files lie beside one another.
    Apart {
        /// The file that does not tell when its first sample was taken.
        file: String,
        /// The other one.
        other: String,
    },
}

errors_as_data!(ReadingError);

impl ReadingError {
    /// What is wrong, its numbers with a decimal mark.
    pub fn message(&self, mark: DecimalMark) -> Message {
        match self {
            Self::Read(error) => error.message(mark),
            Self::None => message!("reading-none"),
            Self::Third { file } => message!("reading-third", file = file.as_str()),
            Self::One { file } => message!("reading-one", file = file.as_str()),
            Self::Lacks { file, detector: Detector::A } => message!("reading-lacks_a", file = file.as_str()),
            Self::Lacks { file, detector: Detector::B } => message!("reading-lacks_b", file = file.as_str()),
            Self::Same { file } => message!("reading-same", file = file.as_str()),
            Self::Apart { file, other } => {
                message!("reading-apart", file = file.as_str(), other = other.as_str())
            }
        }
    }
}

impl From<ReadError> for ReadingError {
    fn from(error: ReadError) -> Self {
        Self::Read(error)
    }
}

/// One file that holds both traces, or A's and B's.
#[derive(Clone, Debug, Default)]
pub struct Reading {
    mark: DecimalMark,
    files: Vec<(String, Recording)>,
    stored: Vec<StoredFile>,
    /// Of each file the layout that was asked for, as JSON; empty where it was recognised.
    stated: Vec<String>,
}

impl Reading {
    /// Without a file; what is told of them has its numbers with a decimal mark.
    pub fn new(mark: DecimalMark) -> Self {
        Self { mark, ..Self::default() }
    }

    /// Reads a file in: A's first. Without a layout it is recognised; gives the layout. What a layout does not say (a first
    /// line of 0, no step, no start) the file says itself. `sha256` is of its bytes, as the notebook keeps it.
    ///
    /// # Errors
    /// What is wrong with the file, or that it is a third one.
    pub fn add(
        &mut self,
        name: &str,
        bytes: &[u8],
        layout: Option<Layout>,
        sha256: &str,
    ) -> Result<Layout, ReadingError> {
        if self.files.len() == 2 {
            return Err(ReadingError::Third { file: name.to_owned() });
        }
        // What the file says beside its samples is in the file.
        let bare = layout.as_ref().map(|layout| Layout { settings: vec![], ..layout.clone() });
        let layout = match layout {
            Some(layout) => settled(name, bytes, layout)?,
            None => trace::recognise(name, bytes)?,
        };
        self.files.push((name.to_owned(), trace::read(name, bytes, &layout)?));
        let length = u32::try_from(bytes.len()).unwrap_or(u32::MAX);
        self.stored.push(StoredFile { sha256: sha256.to_owned(), name: name.to_owned(), bytes: length });
        self.stated.push(bare.as_ref().map(to_json).unwrap_or_default());
        Ok(layout)
    }

    /// Everything of the pair.
    ///
    /// # Errors
    /// When a trace is missing or there twice, or the times of two files can't be compared. What is wrong with a trace stands in what is
    /// measured.
    pub fn measure(&self, wanted: &Wanted) -> Result<Measured, ReadingError> {
        let [a, b] = self.both()?;
        self.share_their_times()?;
        if self.wave(Detector::A)?.samples == self.wave(Detector::B)?.samples {
            return Err(ReadingError::Same { file: self.file(Detector::B)?.0.clone() });
        }
        let measured = trace::measure(a, b, &wanted.asked);
        let is_stated = self.stated.iter().any(|layout| !layout.is_empty());
        let layouts = if is_stated { self.stated.clone() } else { vec![] };
        let evidence = Traces::of(&self.stored, &measured, wanted.level_of);
        let evidence = evidence.map(|traces| Traces { layouts, ..traces });
        let refusal = refusal(&self.stored, &measured, self.mark);
        Ok(Measured { evidence, refusal, ..Measured::of(measured, self.mark) })
    }

    /// A trace as it is drawn, from one time to another (ns), in so many stretches at most.
    ///
    /// # Errors
    /// When a trace is missing.
    pub fn envelope(
        &self,
        side: Detector,
        from: f64,
        to: f64,
        points: usize,
    ) -> Result<Envelope, ReadingError> {
        self.both()?;
        Ok(trace::envelope(&self.wave(side)?, from, to, points))
    }

    /// The recordings of A and of B, each with its trace.
    fn both(&self) -> Result<[&Recording; 2], ReadingError> {
        if let [(file, recording)] = self.files.as_slice()
            && recording.channels.len() < 2
        {
            return Err(ReadingError::One { file: file.clone() });
        }
        self.wave(Detector::A)?;
        self.wave(Detector::B)?;
        Ok([&self.file(Detector::A)?.1, &self.file(Detector::B)?.1])
    }

    /// Two files tell the times of their first samples; or neither does and both have the same step, as of one recorder, which
    /// begins both of its traces at once.
    fn share_their_times(&self) -> Result<(), ReadingError> {
        /// By what share steps may differ that are the same.
        const SAME: f64 = 1e-6;
        let [(first, a), (second, b)] = self.files.as_slice() else { return Ok(()) };
        let is_same = (a.step - b.step).abs() <= SAME * a.step;
        let apart = |file: &String, other: &String| {
            Err(ReadingError::Apart { file: file.clone(), other: other.clone() })
        };
        match (a.is_start_told, b.is_start_told) {
            (true, true) => Ok(()),
            (false, false) if is_same => Ok(()),
            (false, _) => apart(first, second),
            (true, false) => apart(second, first),
        }
    }

    fn file(&self, side: Detector) -> Result<&(String, Recording), ReadingError> {
        let found = match side {
            Detector::A => self.files.first(),
            Detector::B => self.files.last(),
        };
        found.ok_or(ReadingError::None)
    }

    /// The trace of a detector: the only one of its file, or the one that the layout takes for it.
    fn wave(&self, detector: Detector) -> Result<Waveform<'_>, ReadingError> {
        let (file, recording) = self.file(detector)?;
        let wave = match recording.channels.len() {
            1 => recording.waveform(0),
            _ => recording.detector(detector),
        };
        wave.ok_or_else(|| ReadingError::Lacks { file: file.clone(), detector })
    }
}

/// A layout with what it leaves open taken from the file.
fn settled(name: &str, bytes: &[u8], layout: Layout) -> Result<Layout, ReadError> {
    let is_timed = layout.columns.iter().any(|column| column.role == Role::Time);
    let suffices = layout.first_line > 0 && (is_timed || layout.step.is_some());
    if suffices && (is_timed || layout.start.is_some()) {
        return Ok(layout);
    }
    let found = match trace::recognise_by(name, bytes, Some(layout.delimiter), Some(layout.decimal)) {
        // It is read as it was stated.
        Err(_) if suffices => return Ok(layout),
        found => found?,
    };
    Ok(Layout {
        first_line: if layout.first_line > 0 { layout.first_line } else { found.first_line },
        step: layout.step.or(found.step),
        is_step_supposed: layout.step.map_or(found.is_step_supposed, |_| layout.is_step_supposed),
        start: layout.start.or(found.start),
        ..layout
    })
}

/// What a person knows of a file's layout.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Known {
    /// The sign between fields.
    #[cfg_attr(not(target_arch = "wasm32"), ts(optional))]
    pub delimiter: Option<Delimiter>,
    /// How decimal numbers are written.
    #[cfg_attr(not(target_arch = "wasm32"), ts(optional))]
    pub decimal: Option<DecimalMark>,
}

/// What is asked of a pair.
#[derive(Clone, Copy, Debug, Default, PartialEq, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Wanted {
    /// Where the fixed level comes from.
    #[serde(default)]
    #[cfg_attr(not(target_arch = "wasm32"), ts(optional, as = "Option<_>"))]
    pub level_of: LevelOf,
    /// How to measure.
    #[serde(flatten)]
    pub asked: Asked,
}

/// What is found of a pair, with the words of what is refused. Fields as in [`trace::Measured`].
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
#[expect(missing_docs, reason = "documented there")]
pub struct Measured {
    pub outcomes: Vec<Outcome>,
    pub level: Option<f64>,
    pub walk: Option<(f64, f64)>,
    pub sides: [Side; 2],
    /// The same as a notebook keeps it; none where no method gives a delay.
    pub evidence: Option<Traces>,
    /// Why no method gives a delay; none where one does.
    pub refusal: Option<Message>,
}

/// One method's delay, or why it gives none; by `estimator` the notebook knows the method.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
#[expect(missing_docs, reason = "documented in `trace::Outcome`")]
pub struct Outcome {
    pub estimator: Estimator,
    pub method: DelayMethod,
    pub delay: Option<Delay>,
    pub refused: Option<Refused>,
}

/// One of the two traces.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
#[expect(missing_docs, reason = "documented in `trace::Side`")]
pub struct Side {
    pub drawn: Option<Drawn>,
    pub refused: Option<Refused>,
    pub envelope: Option<Envelope>,
}

/// Which trace is refused, and why.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Refused {
    /// Whose trace.
    pub detector: Detector,
    /// Why.
    pub problem: TraceError,
    /// The same, to be told.
    pub message: Message,
}

impl Refused {
    fn of(detector: Detector, problem: TraceError, mark: DecimalMark) -> Self {
        let message = problem.message(mark);
        Self { detector, problem, message }
    }
}

impl Measured {
    fn of(found: trace::Measured, mark: DecimalMark) -> Self {
        let trace::Measured { outcomes, level, walk, sides: [a, b] } = found;
        let outcome = |trace::Outcome { method, delay, refused }| {
            let refused = refused.map(|(detector, problem)| Refused::of(detector, problem, mark));
            Outcome { estimator: method.into(), method, delay, refused }
        };
        let side = |detector, trace::Side { drawn, refused, envelope }| {
            let refused = refused.map(|problem| Refused::of(detector, problem, mark));
            Side { drawn, refused, envelope }
        };
        Self {
            outcomes: outcomes.into_iter().map(outcome).collect(),
            level,
            walk,
            sides: [side(Detector::A, a), side(Detector::B, b)],
            evidence: None,
            refusal: None,
        }
    }
}

#[cfg(test)]
#[path = "reading_test.rs"]
mod tests;
