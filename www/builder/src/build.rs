//! Each wasm of the page, compiled and bound, and what goes with it.

use std::fs;

use anyhow::{Context, Result};

use crate::files::{files_below, write_if_changed};
use crate::project::{BORROWED, Borrowed, Build, Project, WASMS};
use crate::steps::step;
use crate::toolchain::Toolchain;
use crate::{bind, compile, npm, words};

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
        let compiled = step(&what, build.usually(), || compile::library(project, wasm, build))?;
        let what = format!("Binding {}", wasm.stem);
        step(&what, "seconds", || bind::bind(&compiled, &project.bound(wasm, build), wasm.stem))?;
    }
    step("Fetching what puts words into the page", "seconds; nothing the next time", || {
        npm::install(&project.packages())
    })?;
    declare(project, build)
}

/// The declarations of what is made and of what comes from elsewhere go where the type check looks for them.
fn declare(project: &Project, build: Build) -> Result<()> {
    for wasm in &WASMS {
        let name = format!("{}.d.ts", wasm.stem);
        let text = fs::read(project.bound(wasm, build).join(&name))
            .with_context(|| format!("could not read {name}"))?;
        write_if_changed(&project.page_types().join(name), &text)?;
    }
    for scripts in &BORROWED {
        declare_borrowed(project, scripts)?;
    }
    let table = project.page_types().join("words-table.d.ts");
    write_if_changed(&table, words::declaration(project)?.as_bytes())?;
    let languages = words::languages_script(project)?;
    write_if_changed(&project.page_types().join("languages.js"), languages.as_bytes())?;
    write_if_changed(&project.made_scripts().join("languages.js"), languages.as_bytes())?;
    for language in words::languages(project)? {
        let late = project.made_scripts().join(words::late_file(&language));
        write_if_changed(&late, b"# Served from the source, the table is one.\n")?;
    }
    Ok(())
}

/// The declarations of a package, also by the name of the script that it is imported by.
fn declare_borrowed(project: &Project, scripts: &Borrowed) -> Result<()> {
    for file in files_below(&project.borrowed(scripts))? {
        let Some(stem) = file.file_name().and_then(|name| name.to_str()?.strip_suffix(".d.ts")) else {
            continue;
        };
        let text = fs::read(&file).with_context(|| format!("could not read {}", file.display()))?;
        for name in [format!("{stem}.d.ts"), format!("{stem}.esm.d.ts")] {
            write_if_changed(&project.page_types().join(scripts.folder).join(name), &text)?;
        }
    }
    Ok(())
}
