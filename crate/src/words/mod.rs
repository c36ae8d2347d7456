//! What the core says to people, as identifiers of texts with what fills them. The texts themselves stand in tables, one a
//! language, which the page keeps (`www/page/words/`); they are put in at the end, where something is shown.
//!
//! - [`Message`]: a text by its identifier, filled with [`Value`]s; made by [`message!`](crate::message).
//! - [`Words`]: whoever has a table at hand: the page, or natively a [`WordTable`].

pub use slope_evidence::words::{Message, Value, Words};

// Tables read natively: for the demo, for scripts and tests. In a browser the page has them.
#[cfg(not(target_arch = "wasm32"))]
mod table;

#[cfg(not(target_arch = "wasm32"))]
pub use table::{WordTable, WordTableError};

#[cfg(test)]
pub use table::in_english;
