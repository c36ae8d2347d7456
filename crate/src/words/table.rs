//! A table of words, read natively.
//!
//! Sources: Fluent Syntax 1.0; Unicode CLDR for plurals and lists.

use fluent_bundle::{FluentArgs, FluentBundle, FluentError, FluentResource, FluentValue};
use icu_list::options::ListFormatterOptions;
use icu_list::{ListFormatter, ListFormatterPreferences};
use icu_locale_core::Locale;
use thiserror::Error;
use unic_langid::LanguageIdentifier;

use super::{Message, Value, Words};

/// The table of the language in which the notebook is written first.
const ENGLISH: &str = include_str!("../../../www/page/words/en.ftl");

/// The texts of one language.
pub struct WordTable {
    texts: FluentBundle<FluentResource>,
    lists: ListFormatter,
}

/// Why a table can't be used.
#[derive(Debug, Error)]
pub enum WordTableError {
    /// Its language is no language tag (BCP 47).
    #[error("“{0}” is no language tag: “en” or “fr” is one")]
    Language(String),
    /// It is not in the syntax of Fluent, or a text stands there twice.
    #[error("the table can't be read: {0}")]
    Text(String),
    /// Nobody knows how its language lists things.
    #[error("lists of “{0}” are not known")]
    Lists(String),
}

impl WordTable {
    /// The table of English.
    ///
    /// # Errors
    /// When it has a fault.
    pub fn english() -> Result<Self, WordTableError> {
        Self::read("en", ENGLISH)
    }

    /// Reads the table of a language.
    ///
    /// # Errors
    /// When the language is not known, or the table has a fault.
    pub fn read(language: &str, table: &str) -> Result<Self, WordTableError> {
        let tag: LanguageIdentifier =
            language.parse().map_err(|_| WordTableError::Language(language.to_owned()))?;
        let locale: Locale = language.parse().map_err(|_| WordTableError::Language(language.to_owned()))?;
        let resource = FluentResource::try_new(table.to_owned()).map_err(|(_, errors)| named(&errors))?;
        let mut texts = FluentBundle::new(vec![tag]);
        // Marks about each value that keep its direction of writing would be copied and read along.
        texts.set_use_isolating(false);
        texts.add_resource(resource).map_err(|errors| named(&errors))?;
        let lists = ListFormatter::try_new_and(
            ListFormatterPreferences::from(&locale),
            ListFormatterOptions::default(),
        )
        .map_err(|_| WordTableError::Lists(language.to_owned()))?;
        Ok(Self { texts, lists })
    }
}

fn named<E: ToString>(errors: &[E]) -> WordTableError {
    WordTableError::Text(errors.iter().map(ToString::to_string).collect::<Vec<_>>().join("; "))
}

impl Words for WordTable {
    /// The text of a message; where the table has none, or it asks for something else, its identifier, so that the slip
    /// is seen and nothing else is lost.
    fn say(&self, message: &Message) -> String {
        let Some(pattern) = self.texts.get_message(message.id).and_then(|text| text.value()) else {
            return message.id.to_owned();
        };
        let mut values = FluentArgs::new();
        for (name, value) in &message.values {
            match value {
                Value::Number(number) => values.set(*name, *number),
                other => values.set(*name, FluentValue::from(self.text(other))),
            }
        }
        let mut slips: Vec<FluentError> = Vec::new();
        let text = self.texts.format_pattern(pattern, Some(&values), &mut slips);
        if slips.is_empty() { text.into_owned() } else { message.id.to_owned() }
    }

    fn text(&self, value: &Value) -> String {
        match value {
            Value::Number(number) => number.to_string(),
            Value::Text(text) => text.clone(),
            Value::Message(message) => self.say(message),
            Value::All { all } => {
                let each: Vec<String> = all.iter().map(|value| self.text(value)).collect();
                self.lists.format(each.iter()).to_string()
            }
        }
    }
}

/// A message in English, for tests.
#[cfg(test)]
pub fn in_english(message: &Message) -> String {
    WordTable::english().map_or_else(|error| error.to_string(), |table| table.say(message))
}

#[cfg(test)]
#[path = "table_test.rs"]
mod tests;
