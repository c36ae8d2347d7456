//! The browser and the page, as `cargo measure` names them.

use std::env;
use std::path::PathBuf;

use anyhow::{Context, Result};
use page_tests::driver::Driver;
use page_tests::engine::Installed;
use page_tests::stage::Stage;

/// The packed page and a driver to visit it with.
///
/// # Errors
/// When `cargo measure` did not say where they are, or the driver does not start.
pub fn stage() -> Result<Stage> {
    Ok(Stage {
        driver: driver()?,
        address: told("SLOPE_URL")?,
        dist: PathBuf::from(told("SLOPE_DIST")?),
        parts: None,
        slowing: 1.0,
    })
}

/// The page with its modules one by one, which a script can import, and a driver to visit it with.
///
/// # Errors
/// As [`stage`].
pub fn parts() -> Result<Stage> {
    Ok(Stage { address: told("SLOPE_PARTS")?, ..stage()? })
}

/// The driver alone.
///
/// # Errors
/// When `cargo measure` did not say where it is, or it does not start.
pub fn driver() -> Result<Driver> {
    Driver::start(Installed::told(|name| env::var_os(name)).context("run cargo measure")?)
}

/// What `cargo measure` says by an environment variable.
///
/// # Errors
/// When it says nothing.
pub fn told(name: &str) -> Result<String> {
    env::var(name).with_context(|| format!("{name} is not set: run cargo measure"))
}
