//! What drives the real page, for its tests and for the measurements: the browser, the page, and the names of its
//! parts.

pub mod names;
pub mod engine;
pub mod driver;
pub mod host;
pub mod home;
pub mod page;
pub mod stage;
pub mod leaves;
pub mod downloads;
pub mod bench;
