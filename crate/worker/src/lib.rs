//! What works beside the page: the evidence of `slope-evidence`, a class's notebooks, keys to data sets, a teacher's feedback.
//!
//! This becomes a wasm of its own. The page's own stays small that way and is not held up by hundreds of trace files or
//! a picture of many megapixels; this one is loaded once all sections of the page have come.

// The size of a picture out of its header, before anybody decodes it.
pub mod size;

// One picture's marks held against another's grid.
pub mod standing;

// Trace files that belong together, kept to be looked at again.
pub mod reading;

// Why a bundle is refused, to be told.
pub mod refusals;

// What a file says of itself at its top.
pub mod head;

// What is really so in the data sets of a class.
pub mod key;

// Pictures and traces of the rows of data sets.
pub mod set_evidence;

// What a teacher says of a notebook.
pub mod feedback;

// Files that were handed in.
pub mod handed_in;

// How the notebooks of a class compare.
pub mod class;

// What the worker may call.
#[cfg(target_arch = "wasm32")]
mod web;
