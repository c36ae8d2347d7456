//! Each wasm of the page, compiled and bound, and what goes with it.

use std::fs;

use anyhow::{Context, Result};

use crate::files::write_if_changed;
use crate::project::{Build, Project, WASMS};
use crate::steps::step;
use crate::toolchain::Toolchain;
use crate::{bind, compile};

/// Compiles and binds whatever changed.
///
/// # Errors
/// When there is no toolchain, or something does not compile; what was built before stays.
pub fn build(project: &Project, build: Build) -> Result<()> {
    step(
        "Looking for a compiler that makes WebAssembly",
        "installed first where it is missing: two minutes",
        || Toolchain::get().map(drop),
    )?;
    for wasm in &WASMS {
        let what = format!("Compiling {} for the browser", wasm.package);
        let compiled = step(&what, build.usually(), || compile::library(project, wasm.package, build))?;
        let what = format!("Binding {}", wasm.stem);
        step(&what, "seconds", || bind::bind(&compiled, &project.bound(wasm, build), wasm.stem))?;
    }
    copy_declarations(project, build)
}

/// The declarations of the wasm exports go where the type check looks for them.
fn copy_declarations(project: &Project, build: Build) -> Result<()> {
    for wasm in &WASMS {
        let name = format!("{}.d.ts", wasm.stem);
        let text = fs::read(project.bound(wasm, build).join(&name))
            .with_context(|| format!("could not read {name}"))?;
        write_if_changed(&project.page_types().join(name), &text)?;
    }
    Ok(())
}
