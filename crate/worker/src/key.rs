//! The key to data sets, one for each student of a class: what they were drawn from, and what is really so in each.
//!
//! Everything of a set is drawn from a secret of its own. That is SHA-256 (FIPS 180-4) of a text with the seed, 256 bits that
//! only the key holds, and the set's number: nobody finds from one secret another one, or the seed.

use serde::{Deserialize, Serialize};
use slope_archive::sha256_hex;
use slope_evidence::border::{from_json, to_json_lines};
use slope_evidence::decimal::Decimal;
use slope_evidence::message;
use slope_evidence::words::Message;

use crate::head::{Head, head};

/// Speed of light in vacuum, m/s (SI Brochure, 9th edition, 2.2): that in every data set.
pub const C0: f64 = 299_792_458.0;

/// The version of the key that is written.
const FORMAT: u64 = 1;
/// The word by which a key is known.
const KIND: &str = "slope-of-light key";

/// The data sets of a class.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Key {
    /// The title of the notebook that was handed out.
    pub title: String,
    /// What all secrets come of, in hexadecimal digits.
    pub seed: String,
    /// Each data set.
    pub sets: Vec<KeySet>,
}

/// A data set as its key tells it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct KeySet {
    /// Its number, from 1.
    pub number: u32,
    /// For whom it was drawn; empty where no name was given.
    pub name: String,
    /// What its file is called.
    pub file: String,
    /// SHA-256 of the teacher's layer, its entries one a line, in hexadecimal digits.
    pub digest: String,
    /// What is really so in it.
    pub truth: KeyTruth,
}

/// What is really so in a data set.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct KeyTruth {
    /// Delay at zero distance, ns, as it is told: "1.234 ns", to a thousandth.
    pub t0: String,
    /// Each error that rows share, in words.
    pub errors: Vec<String>,
}

impl KeyTruth {
    /// Delay at zero distance, ns; none where it can't be read.
    pub fn t0(&self) -> Option<f64> {
        let number = self.t0.split(char::is_whitespace).next()?.replace(',', ".");
        Decimal::read(&number).map(|decimal| decimal.to_f64())
    }
}

/// A key as it is stored: what it is and its version first.
#[derive(Serialize)]
struct KeyFile<'a> {
    kind: &'static str,
    format: u64,
    /// Speed of light in vacuum, m/s.
    c: f64,
    key: &'a Key,
}

/// What is read of a key of this version.
#[derive(Deserialize)]
struct Body {
    key: Key,
}

/// The secret of a data set by its number.
pub fn secret(seed: &str, number: u32) -> String {
    sha256_hex(format!("slope-of-light data set\n{seed}\n{number}").as_bytes())
}

/// The text of a key.
pub fn write(key: &Key) -> String {
    to_json_lines(&KeyFile { kind: KIND, format: FORMAT, c: C0, key }) + "\n"
}

/// Reads a key; nothing where the text is none.
///
/// # Errors
/// Why a key can't be read, and what to do.
pub fn read(name: &str, text: &str) -> Result<Option<Key>, Message> {
    let damaged = || message!("key-damaged", name = name);
    match head(text, KIND, FORMAT) {
        Head::Another => Ok(None),
        Head::Later => Err(message!("key-later", name = name)),
        Head::Damaged => Err(damaged()),
        Head::Ours => {
            let Body { key } = from_json(text).map_err(|_| damaged())?;
            let is_told = key.sets.iter().all(|set| set.truth.t0().is_some());
            if is_told { Ok(Some(key)) } else { Err(damaged()) }
        }
    }
}

#[cfg(test)]
#[path = "key_test.rs"]
mod tests;
