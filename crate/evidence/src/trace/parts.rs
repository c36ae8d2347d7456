//! Flags and refusals out of what is stored of them: the name of a kind, and the numbers that belong to it.
//!
//! Derived readers have a part for each kind, and those that look for the kind first are large: together they were a
//! twentieth of the page's wasm. This is one reader for all kinds.

use std::fmt;

use serde::de::{Error, MapAccess, Visitor};
use serde::{Deserialize, Deserializer};

use super::Digits;

/// Values by their names, as texts.
#[derive(Debug, Default)]
pub struct Parts(Vec<(String, String)>);

/// Why parts make neither flag nor refusal.
#[derive(Debug, thiserror::Error)]
pub enum PartsError {
    /// As serde says it, by which a notebook of a later version is known.
    #[error("unknown variant `{0}`")]
    UnknownKind(String),
    /// A part is not there, or is no number of its sort.
    #[error("“{0}” is missing, or is no such number as belongs there")]
    Part(&'static str),
}

impl Parts {
    /// Parts by their names.
    pub fn new(parts: Vec<(String, String)>) -> Self {
        Self(parts)
    }

    pub(super) fn text(&self, name: &'static str) -> Result<&str, PartsError> {
        let found = self.0.iter().find(|(known, _)| known == name);
        found.map(|(_, text)| text.as_str()).ok_or(PartsError::Part(name))
    }

    pub(super) fn whole(&self, name: &'static str) -> Result<usize, PartsError> {
        self.text(name)?.parse().map_err(|_| PartsError::Part(name))
    }

    pub(super) fn digits(&self, name: &'static str) -> Result<Digits, PartsError> {
        self.text(name).map(Digits::stored)
    }
}

impl<'de> Deserialize<'de> for Parts {
    fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
        reader.deserialize_map(PartsVisitor)
    }
}

struct PartsVisitor;

impl<'de> Visitor<'de> for PartsVisitor {
    type Value = Parts;

    fn expecting(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str("a kind and its numbers, by their names")
    }

    fn visit_map<M: MapAccess<'de>>(self, mut map: M) -> Result<Parts, M::Error> {
        let mut parts = Vec::new();
        while let Some((name, Part(text))) = map.next_entry()? {
            parts.push((name, text));
        }
        Ok(Parts(parts))
    }
}

/// A whole number or a text, as a text.
struct Part(String);

impl<'de> Deserialize<'de> for Part {
    fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
        reader.deserialize_any(PartVisitor)
    }
}

struct PartVisitor;

impl Visitor<'_> for PartVisitor {
    type Value = Part;

    fn expecting(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str("a text or a whole number")
    }

    fn visit_u64<E: Error>(self, value: u64) -> Result<Part, E> {
        Ok(Part(value.to_string()))
    }

    fn visit_i64<E: Error>(self, value: i64) -> Result<Part, E> {
        Ok(Part(value.to_string()))
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<Part, E> {
        Ok(Part(text.to_owned()))
    }
}

#[cfg(test)]
#[path = "parts_test.rs"]
mod tests;
