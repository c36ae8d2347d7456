//! Messages: what is said, apart from the words for it.

use litemap::LiteMap;
use serde::Serialize;

/// Whoever can put a message into words, having a table of a language at hand.
pub trait Words {
    /// The text of a message.
    fn say(&self, message: &Message) -> String;
}

/// Something to be said.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Message {
    /// The identifier of its text in the tables.
    pub id: &'static str,
    /// What fills the text, by the names that stand there.
    #[cfg_attr(not(target_arch = "wasm32"), ts(type = "Record<string, Value>"))]
    pub values: LiteMap<&'static str, Value>,
}

impl Message {
    /// A message that nothing fills yet.
    pub const fn of(id: &'static str) -> Self {
        Self { id, values: LiteMap::new() }
    }

    /// The same, with a value by its name.
    #[must_use]
    pub fn with(mut self, name: &'static str, value: Value) -> Self {
        self.values.insert(name, value);
        self
    }
}

/// What fills a text.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
#[serde(untagged)]
pub enum Value {
    /// How many, or the number of a row: by it a text chooses between its forms for one and for more.
    Number(u32),
    /// A number already written as the notebook writes it, a symbol, or something that was typed.
    Text(String),
    /// Another message.
    Message(Message),
    /// Several of them together, to be listed: "1, 2 and 3".
    All {
        /// Each of them.
        all: Vec<Value>,
    },
}

impl From<usize> for Value {
    fn from(count: usize) -> Self {
        Self::Number(u32::try_from(count).unwrap_or(u32::MAX))
    }
}

impl From<String> for Value {
    fn from(text: String) -> Self {
        Self::Text(text)
    }
}

impl From<&str> for Value {
    fn from(text: &str) -> Self {
        Self::Text(text.to_owned())
    }
}

impl From<Message> for Value {
    fn from(message: Message) -> Self {
        Self::Message(message)
    }
}

impl<T: Into<Value>> From<Vec<T>> for Value {
    fn from(all: Vec<T>) -> Self {
        Self::All { all: all.into_iter().map(Into::into).collect() }
    }
}

/// The message with an identifier, filled with values by their names: `message!("notice-few_rows", n = 3_usize)`. That
/// the tables have such a text, and that it asks for just these values, is held by `cargo verify style`.
#[macro_export]
macro_rules! message {
    ($id:literal $(, $name:ident = $value:expr)* $(,)?) => {
        $crate::words::Message::of($id)$(.with(stringify!($name), $crate::words::Value::from($value)))*
    };
}
