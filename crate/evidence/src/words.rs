//! Messages: what is said, apart from the words for it. Both wasms speak so; the texts stand in the page's tables.

use litemap::LiteMap;
use serde::Serialize;

use crate::message;

/// Whoever can put a message into words, having a table of a language at hand.
pub trait Words {
    /// The text of a message.
    fn say(&self, message: &Message) -> String;

    /// The text of what may be a message.
    fn text(&self, value: &Value) -> String {
        match value {
            Value::Number(number) => number.to_string(),
            Value::Text(text) => text.clone(),
            Value::Message(message) => self.say(message),
            Value::All { .. } => self.say(&message!("list", all = value.clone())),
        }
    }
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

    /// A message that `fill` fills.
    #[inline(always)]
    #[expect(
        clippy::inline_always,
        reason = "a call of the closure for each message would cost the core more"
    )]
    pub fn made(id: &'static str, fill: impl FnOnce(&mut Self)) -> Self {
        let mut message = Self::of(id);
        fill(&mut message);
        message
    }

    /// Fills in a value by its name.
    // Not inlined: it stands behind every `message!`.
    #[inline(never)]
    pub fn fill(&mut self, name: &'static str, value: Value) {
        self.values.insert(name, value);
    }
}

/// What fills a text, or stands where a text may stand.
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

impl Value {
    /// Whether it is a text with nothing in it.
    pub fn is_empty(&self) -> bool {
        matches!(self, Self::Text(text) if text.is_empty())
    }
}

/// No text.
impl Default for Value {
    fn default() -> Self {
        Self::Text(String::new())
    }
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
    // Not inlined: a copy of the text in each of some hundred places costs the core more than the calls.
    #[inline(never)]
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
    ($id:literal) => {
        $crate::words::Message::of($id)
    };
    ($id:literal, $($name:ident = $value:expr),+ $(,)?) => {
        $crate::words::Message::made($id, |message| {
            $(message.fill(stringify!($name), $crate::words::Value::from($value));)+
        })
    };
}

/// Makes types errors that are written as what they are, for programs; what a person is told of them is a message.
#[macro_export]
macro_rules! errors_as_data {
    ($($error:ty),+ $(,)?) => {
        $(
            impl ::std::fmt::Display for $error {
                fn fmt(&self, f: &mut ::std::fmt::Formatter<'_>) -> ::std::fmt::Result {
                    ::std::fmt::Debug::fmt(self, f)
                }
            }

            impl ::std::error::Error for $error {}
        )+
    };
}
