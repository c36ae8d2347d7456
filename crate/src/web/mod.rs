//! The wasm boundary: what the page may call. The only module that knows a browser.
//!
//! - `words`: the page's table of words.
//! - `canvas`: where drawings go.
//! - [`desk`]: one open notebook.
//! - `plots`: the plots of the readings.
//! - `report`: what is taken out of a notebook.
//! - `evidence`: delays that come from pictures and traces.
//! - `handout`: a notebook to be handed out.
//! - `replay`: the run played back.
//! - `plan`: the plan, and rehearsals.
//! - [`trials`]: Monte Carlo trials, shared between workers.
//! - `class`: the notebooks of a class.
//! - `merge`: a partner's notebook, to be merged.
//! - [`shelf`]: the notebooks kept in local storage, and the settings.
//!
//! Values cross as `slope_evidence::border` makes them. The glue that wasm-bindgen makes of these functions names their
//! types, which `www/page/types.d.ts` declares; that file is made from the Rust types.

mod words;
mod canvas;
pub mod trials;
pub mod desk;
mod plots;
mod report;
mod plan;
mod handout;
mod replay;
mod evidence;
mod class;
mod merge;
pub mod shelf;

use slope_evidence::border::{from_js, from_json, thrown, to_js, to_js_by_text, to_json};
use wasm_bindgen::prelude::*;

/// Where the glue's declarations have their types from.
#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str = "import type * as Types from './types.js';";
