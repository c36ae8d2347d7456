//! The workspace's own tests: compiled by cargo, run here, so that their runner can be asked for what it tells only a
//! caller who asks: the time of each test, and what tests say that passed.

use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::Result;
use serde_json::Value;

use crate::project::Project;
use crate::shell;
use crate::summary::Tally;

/// A compiled set of tests.
pub struct Suite {
    /// What cargo calls it: of a package, or of a file of tests.
    pub name: String,
    program: PathBuf,
    /// The package's folder, in which cargo would start it.
    folder: PathBuf,
}

/// Compiles all tests of the workspace.
///
/// # Errors
/// When they do not compile.
pub fn suites(project: &Project) -> Result<Vec<Suite>> {
    let mut build = shell::cargo(project);
    build.args(["test", "--workspace", "--no-run", "--message-format=json-render-diagnostics"]);
    let messages = shell::output(&mut build)?;
    Ok(messages.lines().filter_map(suite_of).collect())
}

/// The suite that one of cargo's messages tells of.
fn suite_of(message: &str) -> Option<Suite> {
    let message: Value = serde_json::from_str(message).ok()?;
    if message.pointer("/profile/test")? != true {
        return None;
    }
    let manifest = PathBuf::from(message.get("manifest_path")?.as_str()?);
    Some(Suite {
        name: message.pointer("/target/name")?.as_str()?.to_owned(),
        program: message.get("executable")?.as_str()?.into(),
        folder: manifest.parent()?.to_path_buf(),
    })
}

impl Suite {
    /// Runs the tests that `arguments` choose, with some variables set.
    ///
    /// # Errors
    /// When it does not start.
    pub fn run(&self, arguments: &[&str], environment: &[(&str, &Path)]) -> Result<Tally> {
        println!("\n{}", self.name);
        let mut command = Command::new(&self.program);
        command
            .args(["-Zunstable-options", "--report-time", "--show-output"])
            .args(arguments)
            .current_dir(&self.folder)
            .env("CARGO_MANIFEST_DIR", &self.folder)
            .envs(environment.iter().copied())
            // The runner of any toolchain takes these options from a caller who says so; nothing is compiled by it.
            .env("RUSTC_BOOTSTRAP", "1");
        let mut quiet = false;
        let heard = shell::overhear_some(&mut command, |line| {
            // What passed tests printed is read, but not shown.
            quiet =
                line == "successes:" || (quiet && line != "failures:" && !line.starts_with("test result: "));
            !quiet && !line.is_empty()
        })?;
        Ok(Tally::heard(&heard).of(&self.name))
    }

    /// How many tests `arguments` choose.
    ///
    /// # Errors
    /// When it does not start.
    pub fn count(&self, arguments: &[&str]) -> Result<usize> {
        let mut list = Command::new(&self.program);
        list.args(["--list", "--format=terse"]).args(arguments).current_dir(&self.folder);
        Ok(shell::output(&mut list)?.lines().filter(|line| line.ends_with(": test")).count())
    }
}

/// The examples in the documentation.
///
/// # Errors
/// When cargo does not start.
pub fn documented(project: &Project) -> Result<Tally> {
    println!("\nexamples in the documentation");
    let mut command = shell::cargo(project);
    command.args(["test", "--workspace", "--doc", "--quiet", "--no-fail-fast"]);
    Ok(Tally::heard(&shell::overhear(&mut command)?))
}
