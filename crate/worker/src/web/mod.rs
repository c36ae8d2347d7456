//! What the worker may call. Values cross as `slope_evidence::border` makes them. The glue that wasm-bindgen makes of
//! these functions names their types, which `www/page/worker-types.d.ts` declares; that file is made from the Rust types.

mod packing;

use js_sys::{Array, Uint8Array};
use slope_archive::Entry;
use slope_evidence::border::{from_js, thrown, to_js};
use slope_evidence::photo::{self, Corner, Hint, LensChecks, MarkedBefore, Plane, Proposal, Shrinking};
use slope_evidence::row_truth::RowTruth;
use slope_evidence::stored;
use slope_evidence::trace::{self, DecimalMark, Detector, Envelope, Layout, Named, Pair};
use wasm_bindgen::prelude::*;

use crate::class::{self, Class, Given};
use crate::feedback::{self, Feedback};
use crate::handed_in::{self, may_hold_notebook};
use crate::key::{self, Key};
use crate::reading::{self, Known, Measured, ReadingError, Wanted};
use crate::refusals::archive;
use crate::set_evidence;
use crate::size::{self, Size, SizeError, size};
use crate::standing::Standing;

/// Where the glue's declarations have their types from.
#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str = "import type * as Types from './worker-types.js';";

/// The bytes of a bundle with entries: the name of each, and its bytes in the same place.
///
/// # Errors
/// `{kind: "bundle", message}`.
#[wasm_bindgen(unchecked_return_type = "Uint8Array<ArrayBuffer>")]
pub fn pack(names: Vec<String>, contents: Vec<Uint8Array>) -> Result<Vec<u8>, JsValue> {
    let entries = names.into_iter().zip(contents);
    let entries: Vec<Entry> = entries.map(|(name, bytes)| Entry { name, bytes: bytes.to_vec() }).collect();
    slope_archive::pack(&entries).map_err(|error| thrown("bundle", archive(&error)))
}

/// The entries of a bundle, name and bytes of each in turn.
///
/// # Errors
/// `{kind: "bundle", message}`, naming the entry.
#[wasm_bindgen(unchecked_return_type = "(string | Uint8Array<ArrayBuffer>)[]")]
pub fn unpack(bytes: &[u8]) -> Result<Array, JsValue> {
    let entries = slope_archive::unpack(bytes).map_err(|error| thrown("bundle", archive(&error)))?;
    Ok(listed(&entries.into_vec()))
}

/// Name and bytes of each entry in turn.
fn listed(entries: &[Entry]) -> Array {
    let all = Array::new();
    for Entry { name, bytes } in entries {
        all.push(&name.as_str().into());
        all.push(&Uint8Array::from(bytes.as_slice()));
    }
    all
}

/// What a file turned out to be that was handed in.
#[wasm_bindgen]
pub struct HandedIn(handed_in::HandedIn);

#[wasm_bindgen]
impl HandedIn {
    /// Looks at a file.
    ///
    /// # Errors
    /// `{kind: "bundle", message}`.
    pub fn of(name: &str, bytes: &[u8]) -> Result<HandedIn, JsValue> {
        handed_in::handed_in(name, bytes).map(HandedIn).map_err(|message| thrown("bundle", message))
    }

    /// The text of its notebook, where it holds one.
    pub fn text(&self) -> Option<String> {
        match &self.0 {
            handed_in::HandedIn::Notebook { text, .. } => Some(text.clone()),
            _ => None,
        }
    }

    /// The key to data sets, where it is one.
    #[wasm_bindgen(unchecked_return_type = "Types.Key | undefined")]
    pub fn key(&self) -> JsValue {
        match &self.0 {
            handed_in::HandedIn::Key(key) => to_js::<Key>(key),
            _ => JsValue::UNDEFINED,
        }
    }

    /// What a teacher says of a notebook, where it is that.
    #[wasm_bindgen(unchecked_return_type = "Types.Feedback | undefined")]
    pub fn feedback(&self) -> JsValue {
        match &self.0 {
            handed_in::HandedIn::Feedback(feedback) => to_js::<Feedback>(feedback),
            _ => JsValue::UNDEFINED,
        }
    }

    /// The table of the notebook's line, where one came with it.
    pub fn line(&self) -> Option<String> {
        match &self.0 {
            handed_in::HandedIn::Notebook { line, .. } => line.clone(),
            _ => None,
        }
    }

    /// The files in it to be looked at in their turn, name and bytes of each.
    #[wasm_bindgen(unchecked_return_type = "(string | Uint8Array<ArrayBuffer>)[]")]
    pub fn files(&self) -> Array {
        match &self.0 {
            handed_in::HandedIn::Several(files) => listed(files),
            _ => Array::new(),
        }
    }
}

/// Which files may hold a notebook by their names.
#[wasm_bindgen]
pub fn handed_in_by_name(names: Vec<String>) -> Vec<u8> {
    names.iter().map(|name| u8::from(may_hold_notebook(name))).collect()
}

/// The secret of a data set by its number.
#[wasm_bindgen]
pub fn set_secret(seed: &str, number: u32) -> String {
    key::secret(seed, number)
}

/// The text of a file with both traces of a row of a data set, of what is really so there.
///
/// # Errors
/// `{kind: "asked" | "set", message}`.
#[wasm_bindgen]
pub fn traces_of(
    secret: &str,
    #[wasm_bindgen(unchecked_param_type = "Types.RowTruth")] so: JsValue,
    #[wasm_bindgen(unchecked_param_type = "Types.DecimalMark")] decimal: JsValue,
) -> Result<String, JsValue> {
    let so = from_js::<RowTruth>(so, "asked")?;
    let decimal = from_js::<DecimalMark>(decimal, "asked")?;
    set_evidence::traces(secret, &so, decimal).map_err(|message| thrown("set", message))
}

/// A photograph of the screen at a row of a data set: four bytes a pixel, row by row, each of [`photograph_width`].
///
/// # Errors
/// `{kind: "asked" | "set", message}`.
#[wasm_bindgen(unchecked_return_type = "Uint8Array<ArrayBuffer>")]
pub fn photograph_of(
    secret: &str,
    #[wasm_bindgen(unchecked_param_type = "Types.RowTruth")] so: JsValue,
) -> Result<Vec<u8>, JsValue> {
    let so = from_js::<RowTruth>(so, "asked")?;
    set_evidence::photograph(secret, &so)
        .map(|picture| picture.rgba)
        .map_err(|message| thrown("set", message))
}

/// Width of a photograph of a data set, pixels.
#[wasm_bindgen]
pub fn photograph_width() -> usize {
    set_evidence::WIDTH
}

/// The text of the key to data sets.
///
/// # Errors
/// `{kind: "asked", message}`.
#[wasm_bindgen]
pub fn write_key(
    #[wasm_bindgen(unchecked_param_type = "Types.Key")] key: JsValue,
) -> Result<String, JsValue> {
    let key = from_js::<Key>(key, "asked")?;
    Ok(key::write(&key))
}

/// The text of a file with what a teacher says of a notebook.
///
/// # Errors
/// `{kind: "asked" | "feedback", message}`.
#[wasm_bindgen]
pub fn write_feedback(
    #[wasm_bindgen(unchecked_param_type = "Types.Feedback")] feedback: JsValue,
) -> Result<String, JsValue> {
    let feedback = from_js::<Feedback>(feedback, "asked")?;
    feedback::write(&feedback).map_err(|message| thrown("feedback", message))
}

/// What a teacher says of a notebook, out of the text of a file; nothing where it is no such file.
///
/// # Errors
/// `{kind: "feedback", message}`.
#[wasm_bindgen(unchecked_return_type = "Types.Feedback | undefined")]
pub fn read_feedback(name: &str, text: &str) -> Result<JsValue, JsValue> {
    match feedback::read(name, text).map_err(|message| thrown("feedback", message))? {
        Some(feedback) => Ok(to_js::<Feedback>(&feedback)),
        None => Ok(JsValue::UNDEFINED),
    }
}

/// Compares the notebooks of a class, and holds them against the keys to their data sets. The components of their budgets are
/// called by `names`, each as JSON, in the order of their numbers.
///
/// # Errors
/// `{kind: "asked", message}`.
#[wasm_bindgen(unchecked_return_type = "Types.Class")]
pub fn class_of(
    #[wasm_bindgen(unchecked_param_type = "Types.Given[]")] all: JsValue,
    #[wasm_bindgen(unchecked_param_type = "Types.Key[]")] keys: JsValue,
    names: Vec<String>,
    #[wasm_bindgen(unchecked_param_type = "Types.DecimalMark")] decimal: JsValue,
) -> Result<JsValue, JsValue> {
    let mut all = from_js::<Vec<Given>>(all, "asked")?;
    class::same_with_either_mark(&mut all, &names);
    let keys = from_js::<Vec<Key>>(keys, "asked")?;
    Ok(to_js::<Class>(&class::class(&all, &keys, from_js::<DecimalMark>(decimal, "asked")?)))
}

/// How the numbers of a file are set out where a person knows delimiter or decimal mark.
///
/// # Errors
/// `{kind: "read" | "asked", message}`.
#[wasm_bindgen(unchecked_return_type = "Types.Layout")]
pub fn recognise_by(
    name: &str,
    bytes: &[u8],
    #[wasm_bindgen(unchecked_param_type = "Types.Known")] known: JsValue,
) -> Result<JsValue, JsValue> {
    let Known { delimiter, decimal } = from_js::<Known>(known, "asked")?;
    trace::recognise_by(name, bytes, delimiter, decimal)
        .map(|layout| to_js::<Layout>(&layout))
        .map_err(|error| thrown("read", error.message(decimal.unwrap_or_default())))
}

/// The fields of the first rows of samples, as they stand in the file.
///
/// # Errors
/// `{kind: "asked", message}`.
#[wasm_bindgen(unchecked_return_type = "string[][]")]
pub fn first_rows(
    bytes: &[u8],
    #[wasm_bindgen(unchecked_param_type = "Types.Layout")] layout: JsValue,
    most: usize,
) -> Result<JsValue, JsValue> {
    let layout = from_js::<Layout>(layout, "asked")?;
    Ok(to_js(&trace::first_rows(bytes, &layout, most)))
}

/// The one fixed level for a run, V, from half the lower pulse of each pair.
#[wasm_bindgen]
pub fn common_level(levels: &[f64]) -> Option<f64> {
    stored::common_level(levels)
}

/// Which files belong together, by their names.
#[wasm_bindgen(unchecked_return_type = "Types.Pair[]")]
pub fn pair(names: Vec<String>) -> JsValue {
    let names: Vec<&str> = names.iter().map(String::as_str).collect();
    to_js::<Vec<Pair>>(&trace::pair(&names))
}

/// What a file's name tells, where the rails have these names; its reading as the notebook writes it.
///
/// # Errors
/// `{kind: "asked", message}`.
#[wasm_bindgen(unchecked_return_type = "Types.Named")]
pub fn rail_reading(
    name: &str,
    rails: Vec<String>,
    #[wasm_bindgen(unchecked_param_type = "Types.DecimalMark")] decimal: JsValue,
) -> Result<JsValue, JsValue> {
    let decimal = from_js::<DecimalMark>(decimal, "asked")?;
    let rails: Vec<&str> = rails.iter().map(String::as_str).collect();
    Ok(to_js::<Named>(&trace::rail_reading(name, &rails).written(decimal)))
}

/// SHA-256 in hexadecimal digits.
#[wasm_bindgen]
pub fn sha256(bytes: &[u8]) -> String {
    slope_archive::sha256_hex(bytes)
}

/// The size of a picture out of its first bytes; nothing where more of them are needed, and there are more.
///
/// # Errors
/// `{kind: "picture", message}` where it is no picture, or too large a one.
#[wasm_bindgen(unchecked_return_type = "Types.Size | undefined")]
pub fn check_picture(name: &str, bytes: &[u8], more: bool) -> Result<JsValue, JsValue> {
    match size(bytes) {
        Ok(size) => Ok(to_js::<Size>(&size)),
        Err(SizeError::Cut) if more => Ok(JsValue::UNDEFINED),
        Err(error) => Err(thrown("picture", error.message(name))),
    }
}

/// Whether a file that begins so is a picture: 32 bytes tell.
#[wasm_bindgen]
pub fn is_picture(bytes: &[u8]) -> bool {
    size::is_picture(bytes)
}

/// Whether a picture is there to its end, as far as its kind tells.
#[wasm_bindgen]
pub fn is_whole_picture(bytes: &[u8]) -> bool {
    size::is_whole(bytes)
}

/// A picture that is looked at: a small copy of it, made of one band after the other.
#[wasm_bindgen]
pub struct Look(Shrinking);

#[wasm_bindgen]
impl Look {
    /// Of a picture of a size, of which no band was given yet.
    #[wasm_bindgen(constructor)]
    pub fn new(width: usize, height: usize) -> Self {
        Self(Shrinking::of(width, height))
    }

    /// Rows of a band: a multiple of this, or all that are left.
    pub fn rows(&self) -> usize {
        self.0.rows()
    }

    /// Takes the next band in, of 4 bytes a pixel.
    pub fn add(&mut self, band: &[u8]) {
        self.0.add(band);
    }

    /// Marks proposed for it; a picture of the run that was marked before tells A's edge from B's.
    ///
    /// # Errors
    /// `{kind: "propose" | "asked", message}`.
    #[wasm_bindgen(unchecked_return_type = "Types.Proposal")]
    pub fn propose(
        &self,
        columns: u32,
        rows: u32,
        #[wasm_bindgen(unchecked_param_type = "Types.MarkedBefore | undefined")] before: JsValue,
    ) -> Result<JsValue, JsValue> {
        let before = from_js::<Option<MarkedBefore>>(before, "asked")?;
        photo::propose_on(&self.0, Hint { columns, rows }, before.as_ref())
            .map(|proposal| to_js::<Proposal>(&proposal))
            .map_err(|error| thrown("propose", error.message()))
    }

    /// Crossings for a check of the lens, near corners (a list) that a person has put.
    ///
    /// # Errors
    /// `{kind: "plane", message}` where the marks fix no plane, `{kind: "propose" | "asked", message}`.
    #[wasm_bindgen(unchecked_return_type = "Types.LensChecks")]
    pub fn lens_checks(
        &self,
        #[wasm_bindgen(unchecked_param_type = "Types.Corner[]")] corners: JsValue,
        columns: u32,
        rows: u32,
    ) -> Result<JsValue, JsValue> {
        let corners = from_js::<Vec<Corner>>(corners, "asked")?;
        photo::lens_checks(&plane(&corners, 0.0)?, &self.0, Hint { columns, rows })
            .map(|checks| to_js::<LensChecks>(&checks))
            .map_err(|error| thrown("propose", error.message()))
    }

    /// What becomes of the checks (a list) of a grid whose corners were moved from some places to others.
    ///
    /// # Errors
    /// As [`Self::lens_checks`].
    #[wasm_bindgen(unchecked_return_type = "Types.Corner[]")]
    pub fn follow(
        &self,
        #[wasm_bindgen(unchecked_param_type = "Types.Corner[]")] checks: JsValue,
        #[wasm_bindgen(unchecked_param_type = "Types.Corner[]")] from: JsValue,
        #[wasm_bindgen(unchecked_param_type = "Types.Corner[]")] to: JsValue,
        columns: u32,
        rows: u32,
    ) -> Result<JsValue, JsValue> {
        let checks = from_js::<Vec<Corner>>(checks, "asked")?;
        // The uncertainty of corners is of no matter here.
        let from = plane(&from_js::<Vec<Corner>>(from, "asked")?, 0.0)?;
        let to = plane(&from_js::<Vec<Corner>>(to, "asked")?, 0.0)?;
        photo::follow(&checks, &from, &to, &self.0, Hint { columns, rows })
            .map(|checks| to_js::<Vec<Corner>>(&checks))
            .map_err(|error| thrown("propose", error.message()))
    }

    /// Holds its grid against corner marks (a list) that were made on another picture.
    ///
    /// # Errors
    /// `{kind: "plane", message}` where the marks fix no plane, `{kind: "propose", message}` where no grid is seen.
    #[wasm_bindgen(unchecked_return_type = "Types.Standing")]
    pub fn check_series(
        &self,
        #[wasm_bindgen(unchecked_param_type = "Types.Corner[]")] corners: JsValue,
        u_pixels: f64,
        columns: u32,
        rows: u32,
    ) -> Result<JsValue, JsValue> {
        let corners = from_js::<Vec<Corner>>(corners, "asked")?;
        let standing = photo::check_series_on(&plane(&corners, u_pixels)?, &self.0, Hint { columns, rows })
            .map_err(|error| thrown("propose", error.message()))?;
        Ok(to_js::<Standing>(&Standing::of(&standing, u_pixels)))
    }
}

/// The plane of corners with their uncertainty in pixels.
fn plane(corners: &[Corner], u_pixels: f64) -> Result<Plane, JsValue> {
    Plane::fit(corners, u_pixels).map_err(|error| thrown("plane", error.message()))
}

/// One trace file that holds both traces, or A's and B's.
#[wasm_bindgen]
pub struct Reading {
    mark: DecimalMark,
    reading: reading::Reading,
}

#[wasm_bindgen]
impl Reading {
    /// Without a file; `decimal` is the notebook's decimal mark.
    ///
    /// # Errors
    /// `{kind: "asked", message}`.
    #[wasm_bindgen(constructor)]
    pub fn new(
        #[wasm_bindgen(unchecked_param_type = "Types.DecimalMark")] decimal: JsValue,
    ) -> Result<Self, JsValue> {
        let mark = from_js::<DecimalMark>(decimal, "asked")?;
        Ok(Self { mark, reading: reading::Reading::new(mark) })
    }

    /// Reads a file in, A's first, by a layout or as it is recognised; gives the layout.
    ///
    /// # Errors
    /// `{kind: "read" | "lacks_trace" | "asked", message}`.
    #[wasm_bindgen(unchecked_return_type = "Types.Layout")]
    pub fn add(
        &mut self,
        name: &str,
        bytes: &[u8],
        #[wasm_bindgen(unchecked_param_type = "Types.Layout | undefined")] layout: JsValue,
        sha256: &str,
    ) -> Result<JsValue, JsValue> {
        let layout = from_js::<Option<Layout>>(layout, "asked")?;
        self.reading
            .add(name, bytes, layout, sha256)
            .map(|layout| to_js::<Layout>(&layout))
            .map_err(|error| self.refused(&error))
    }

    /// Everything of the pair.
    ///
    /// # Errors
    /// `{kind: "lacks_trace" | "asked", message}`.
    #[wasm_bindgen(unchecked_return_type = "Types.Measured")]
    pub fn measure(
        &self,
        #[wasm_bindgen(unchecked_param_type = "Types.Wanted")] wanted: JsValue,
    ) -> Result<JsValue, JsValue> {
        let wanted = from_js::<Wanted>(wanted, "asked")?;
        let measured = self.reading.measure(&wanted).map_err(|error| self.refused(&error))?;
        Ok(to_js::<Measured>(&measured))
    }

    /// A trace as it is drawn, from one time to another (ns), in so many stretches at most.
    ///
    /// # Errors
    /// `{kind: "lacks_trace" | "asked", message}`.
    #[wasm_bindgen(unchecked_return_type = "Types.Envelope")]
    pub fn envelope(
        &self,
        #[wasm_bindgen(unchecked_param_type = "Types.Detector")] side: JsValue,
        from: f64,
        to: f64,
        points: usize,
    ) -> Result<JsValue, JsValue> {
        let side = from_js::<Detector>(side, "asked")?;
        let envelope = self.reading.envelope(side, from, to, points).map_err(|error| self.refused(&error))?;
        Ok(to_js::<Envelope>(&envelope))
    }
}

impl Reading {
    fn refused(&self, error: &ReadingError) -> JsValue {
        let kind = if matches!(error, ReadingError::Read(_)) { "read" } else { "lacks_trace" };
        thrown(kind, error.message(self.mark))
    }
}
