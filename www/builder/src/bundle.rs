//! Joining and shrinking scripts and styles, by the bundler that `www/builder/package-lock.json` pins.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result};
use serde_json::Value;

use crate::project::Project;
use crate::{npm, shell};

/// What the bundler says of what it made.
pub const FACTS: &str = "facts.json";

/// How a script is begun with.
#[derive(Clone, Copy, PartialEq)]
pub enum Form {
    /// As a module with parts beside it, which come when they are asked for.
    Split,
    /// As a module that holds everything.
    Whole,
    /// As a classic script that holds everything: a worker, which can't be a module where the page is a file on the disk.
    Classic,
}

/// The bundler, installed.
pub struct Bundler {
    program: PathBuf,
}

impl Bundler {
    /// # Errors
    /// When it can't be installed.
    pub fn get(project: &Project) -> Result<Self> {
        let folder = project.packages();
        npm::install(&folder)?;
        Ok(Self { program: folder.join("node_modules/.bin/esbuild") })
    }

    /// Bundles the scripts of a folder, each with all that it imports, into another folder, which is emptied first. What
    /// went where stands in [`FACTS`] beside them.
    ///
    /// # Errors
    /// When a script or an import is missing or not understood; the bundler has said where.
    pub fn scripts(&self, from: &Path, entries: &[&str], form: Form, to: &Path) -> Result<()> {
        if to.exists() {
            fs::remove_dir_all(to).with_context(|| format!("could not clear {}", to.display()))?;
        }
        let mut command = self.command(from, entries, to);
        command.args(["--bundle", "--define:globalThis.SLOPE_PACKED=true"]);
        command.arg(format!("--metafile={}", to.join(FACTS).display()));
        match form {
            Form::Split => command.args(["--format=esm", "--splitting", "--chunk-names=[name]-[hash]"]),
            Form::Whole => command.arg("--format=esm"),
            // The glue would look for its wasm beside itself, were it not handed one.
            Form::Classic => command.args(["--format=iife", "--log-override:empty-import-meta=silent"]),
        };
        shell::run(&mut command)
    }

    /// Shrinks styles of a folder into another one.
    ///
    /// # Errors
    /// When one is missing or not understood; the bundler has said where.
    pub fn styles(&self, from: &Path, names: &[&str], to: &Path) -> Result<()> {
        shell::run(&mut self.command(from, names, to))
    }

    fn command(&self, from: &Path, names: &[&str], to: &Path) -> Command {
        let mut command = Command::new(&self.program);
        command.current_dir(from).args(names).arg(format!("--outdir={}", to.display()));
        command.args(["--minify", "--charset=utf8", "--legal-comments=none", "--log-level=warning"]);
        command
    }
}

/// The scripts that a browser has loaded before the first line of `entry` runs: itself, and what it imports at once, but
/// nothing that comes when it is asked for. `folder` is where they were bundled to.
///
/// # Errors
/// When what the bundler said of them can't be read, or names no such script.
pub fn loaded_at_once(folder: &Path, entry: &str) -> Result<BTreeSet<String>> {
    let facts = fs::read(folder.join(FACTS)).context("the page was not bundled")?;
    loaded_by_facts(&serde_json::from_slice(&facts)?, entry)
}

/// The same, of what stands in [`FACTS`].
fn loaded_by_facts(facts: &Value, entry: &str) -> Result<BTreeSet<String>> {
    let outputs =
        facts.get("outputs").and_then(Value::as_object).context("the bundler's facts name no outputs")?;
    let mut loaded = BTreeSet::new();
    let mut open = vec![entry.to_owned()];
    while let Some(name) = open.pop() {
        let is_it = |path: &str| path.rsplit('/').next() == Some(&name);
        let (_, facts) = outputs
            .iter()
            .find(|(path, _)| is_it(path))
            .with_context(|| format!("there is no script {name}"))?;
        let imports = facts.get("imports").and_then(Value::as_array).into_iter().flatten();
        let static_ones =
            imports.filter(|import| import.get("kind").is_some_and(|kind| kind == "import-statement"));
        for path in static_ones.filter_map(|import| import.get("path")?.as_str()) {
            let import = path.rsplit('/').next().unwrap_or(path).to_owned();
            if !loaded.contains(&import) {
                open.push(import);
            }
        }
        loaded.insert(name);
    }
    Ok(loaded)
}

#[cfg(test)]
#[path = "bundle_test.rs"]
mod tests;
