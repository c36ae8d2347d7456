//! JSON read in its one form: a record is an object.
//!
//! Serde's readers take a list of the fields in their order as well. No description of the stored form allows it, nothing
//! writes it, and the readers of so many types are a third smaller without it. Everything else is handed on as it comes.

use std::fmt;

use serde::de::{
    DeserializeOwned, DeserializeSeed, Deserializer, EnumAccess, Error, MapAccess, SeqAccess, VariantAccess,
    Visitor,
};

/// Reads a value from the text of a JSON document (RFC 8259).
///
/// # Errors
/// What is not JSON, or not of this form, with its line and column.
pub fn from_json<T: DeserializeOwned>(text: &str) -> serde_json::Result<T> {
    let mut json = serde_json::Deserializer::from_str(text);
    let value = T::deserialize(Records(&mut json))?;
    json.end()?;
    Ok(value)
}

/// A reader, or a part of one, whose records are objects.
struct Records<T>(T);

/// Hands on what asks for a value and says no more of it.
macro_rules! hand_on {
    ($($ask:ident)+) => {
        $(fn $ask<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Self::Error> {
            self.0.$ask(Records(visitor))
        })+
    };
}

impl<'de, D: Deserializer<'de>> Deserializer<'de> for Records<D> {
    type Error = D::Error;

    hand_on! {
        deserialize_any deserialize_bool deserialize_i8 deserialize_i16 deserialize_i32 deserialize_i64 deserialize_u8
        deserialize_u16 deserialize_u32 deserialize_u64 deserialize_f32 deserialize_f64 deserialize_char deserialize_str
        deserialize_string deserialize_bytes deserialize_byte_buf deserialize_option deserialize_unit deserialize_seq
        deserialize_map deserialize_identifier deserialize_ignored_any
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, D::Error> {
        self.deserialize_map(visitor)
    }

    fn deserialize_unit_struct<V: Visitor<'de>>(
        self,
        name: &'static str,
        visitor: V,
    ) -> Result<V::Value, D::Error> {
        self.0.deserialize_unit_struct(name, Records(visitor))
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(
        self,
        name: &'static str,
        visitor: V,
    ) -> Result<V::Value, D::Error> {
        self.0.deserialize_newtype_struct(name, Records(visitor))
    }

    fn deserialize_tuple<V: Visitor<'de>>(self, len: usize, visitor: V) -> Result<V::Value, D::Error> {
        self.0.deserialize_tuple(len, Records(visitor))
    }

    fn deserialize_tuple_struct<V: Visitor<'de>>(
        self,
        name: &'static str,
        len: usize,
        visitor: V,
    ) -> Result<V::Value, D::Error> {
        self.0.deserialize_tuple_struct(name, len, Records(visitor))
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        name: &'static str,
        variants: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, D::Error> {
        self.0.deserialize_enum(name, variants, Records(visitor))
    }
}

/// Hands on what was found, where it holds nothing that is read in turn.
macro_rules! found {
    ($($visit:ident($found:ty))+) => {
        $(fn $visit<E: Error>(self, found: $found) -> Result<V::Value, E> {
            self.0.$visit(found)
        })+
    };
}

impl<'de, V: Visitor<'de>> Visitor<'de> for Records<V> {
    type Value = V::Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.expecting(f)
    }

    found! {
        visit_bool(bool) visit_i64(i64) visit_u64(u64) visit_f64(f64) visit_str(&str) visit_borrowed_str(&'de str)
        visit_string(String) visit_bytes(&[u8]) visit_borrowed_bytes(&'de [u8]) visit_byte_buf(Vec<u8>)
    }

    fn visit_none<E: Error>(self) -> Result<V::Value, E> {
        self.0.visit_none()
    }

    fn visit_unit<E: Error>(self) -> Result<V::Value, E> {
        self.0.visit_unit()
    }

    fn visit_some<D: Deserializer<'de>>(self, some: D) -> Result<V::Value, D::Error> {
        self.0.visit_some(Records(some))
    }

    fn visit_newtype_struct<D: Deserializer<'de>>(self, held: D) -> Result<V::Value, D::Error> {
        self.0.visit_newtype_struct(Records(held))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, list: A) -> Result<V::Value, A::Error> {
        self.0.visit_seq(Records(list))
    }

    fn visit_map<A: MapAccess<'de>>(self, object: A) -> Result<V::Value, A::Error> {
        self.0.visit_map(Records(object))
    }

    fn visit_enum<A: EnumAccess<'de>>(self, choice: A) -> Result<V::Value, A::Error> {
        self.0.visit_enum(Records(choice))
    }
}

impl<'de, S: DeserializeSeed<'de>> DeserializeSeed<'de> for Records<S> {
    type Value = S::Value;

    fn deserialize<D: Deserializer<'de>>(self, value: D) -> Result<S::Value, D::Error> {
        self.0.deserialize(Records(value))
    }
}

impl<'de, A: SeqAccess<'de>> SeqAccess<'de> for Records<A> {
    type Error = A::Error;

    fn next_element_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<Option<S::Value>, A::Error> {
        self.0.next_element_seed(Records(seed))
    }

    fn size_hint(&self) -> Option<usize> {
        self.0.size_hint()
    }
}

impl<'de, A: MapAccess<'de>> MapAccess<'de> for Records<A> {
    type Error = A::Error;

    fn next_key_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<Option<S::Value>, A::Error> {
        self.0.next_key_seed(Records(seed))
    }

    fn next_value_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<S::Value, A::Error> {
        self.0.next_value_seed(Records(seed))
    }

    fn size_hint(&self) -> Option<usize> {
        self.0.size_hint()
    }
}

impl<'de, A: EnumAccess<'de>> EnumAccess<'de> for Records<A> {
    type Error = A::Error;
    type Variant = Records<A::Variant>;

    fn variant_seed<S: DeserializeSeed<'de>>(self, seed: S) -> Result<(S::Value, Self::Variant), A::Error> {
        let (name, held) = self.0.variant_seed(Records(seed))?;
        Ok((name, Records(held)))
    }
}

impl<'de, A: VariantAccess<'de>> VariantAccess<'de> for Records<A> {
    type Error = A::Error;

    fn unit_variant(self) -> Result<(), A::Error> {
        self.0.unit_variant()
    }

    fn newtype_variant_seed<S: DeserializeSeed<'de>>(self, seed: S) -> Result<S::Value, A::Error> {
        self.0.newtype_variant_seed(Records(seed))
    }

    fn tuple_variant<V: Visitor<'de>>(self, len: usize, visitor: V) -> Result<V::Value, A::Error> {
        self.0.tuple_variant(len, Records(visitor))
    }

    fn struct_variant<V: Visitor<'de>>(
        self,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, A::Error> {
        self.0.newtype_variant_seed(Record(visitor))
    }
}

/// What a choice holds, as a record.
struct Record<V>(V);

impl<'de, V: Visitor<'de>> DeserializeSeed<'de> for Record<V> {
    type Value = V::Value;

    fn deserialize<D: Deserializer<'de>>(self, value: D) -> Result<V::Value, D::Error> {
        value.deserialize_map(Records(self.0))
    }
}

#[cfg(test)]
#[path = "records_test.rs"]
mod tests;
