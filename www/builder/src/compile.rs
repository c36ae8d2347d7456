//! Wasm and examples, by cargo; cargo decides what has to be compiled again.

use std::path::PathBuf;
use std::process::{Command, Stdio};

use anyhow::{Context, Result, bail};
use serde_json::Value;

use crate::project::{Build, CRATE, Project, Wasm};
use crate::shell;
use crate::toolchain::Toolchain;

/// What becomes wasm on its own.
const LIBRARY: &str = "cdylib";
/// The example that prints the description of the notebook's format.
pub const SCHEMA: &str = "schema";

/// Compiles a library for a browser; gives the wasm as the compiler left it.
///
/// That it is to be wasm is said here and not in the package: a library that is both wasm and a Rust library is
/// left out by cargo when it optimises across crates, which is a twelfth of the page.
///
/// # Errors
/// When there is no toolchain for it, or the package does not compile.
pub fn library(project: &Project, wasm: &Wasm, build: Build) -> Result<PathBuf> {
    let package = wasm.package;
    let mut command = Toolchain::get()?.cargo(project, "rustc");
    command.args(["--profile", build.profile(), "-p", package, "--lib", "--crate-type", LIBRARY]);
    if build == Build::Small {
        for fast in wasm.fast {
            command.args(["--config", &format!("profile.{}.package.{fast}.opt-level=3", build.profile())]);
        }
    }
    command.arg("--message-format=json-render-diagnostics");
    artefact(&mut command, LIBRARY, package)
}

/// Compiles an integration test of the notebook crate for a browser, with the page's own optimisation.
///
/// # Errors
/// When there is no toolchain for it, or the test does not compile.
pub fn browser_test(project: &Project, test: &str, environment: &[(&str, PathBuf)]) -> Result<PathBuf> {
    let mut command = Toolchain::get()?.cargo(project, "test");
    command.args(["--no-run", "--profile", Build::Small.profile(), "-p", CRATE, "--test", test]);
    command.arg("--message-format=json-render-diagnostics");
    command.envs(environment.iter().map(|(name, value)| (name, value)));
    artefact(&mut command, "test", test)
}

/// Runs an example of the notebook crate in the workspace's root, in sight.
///
/// # Errors
/// When it does not compile, or fails.
pub fn example(project: &Project, cargo: &[&str], name: &str, arguments: &[&str]) -> Result<()> {
    let mut command = shell::cargo(project);
    command.args(["run", "--quiet", "-p", CRATE]).args(cargo).args(["--example", name, "--"]).args(arguments);
    shell::run(&mut command)
}

/// What an example of the workspace prints.
///
/// # Errors
/// When it does not compile, or fails.
pub fn example_output(project: &Project, name: &str) -> Result<Vec<u8>> {
    let mut command = Command::new(program(project, "example", name)?);
    let output = command.current_dir(&project.root).stderr(Stdio::inherit()).output()?;
    if !output.status.success() {
        bail!("{} ended with {}", shell::shown(&command), output.status);
    }
    Ok(output.stdout)
}

/// Compiles a program of the workspace, a `bin` or an `example`, for this machine, and gives where it lies.
///
/// Cargo chooses the features of what packages share by all that it is asked for at a time. So it is always asked for the
/// whole workspace and, by an example, for what tests need: programs and tests then share all that is compiled.
///
/// # Errors
/// When it does not compile.
pub fn program(project: &Project, kind: &str, name: &str) -> Result<PathBuf> {
    let mut command = shell::cargo(project);
    command.args(["build", "--quiet", "--workspace", "--example", SCHEMA, &format!("--{kind}"), name]);
    command.arg("--message-format=json-render-diagnostics");
    let messages = shell::output(&mut command)?;
    let found = messages.lines().rev().find_map(|line| program_of(line, kind, name));
    found.with_context(|| format!("{} made no program", shell::shown(&command)))
}

/// The program that one of cargo's JSON messages names, when it is about the target of that kind and name.
fn program_of(message: &str, kind: &str, name: &str) -> Option<PathBuf> {
    let message: Value = serde_json::from_str(message).ok()?;
    is_about(&message, kind, name)?;
    Some(message.get("executable")?.as_str()?.into())
}

/// Runs cargo and gives the wasm file of the target of a kind and name.
fn artefact(command: &mut Command, kind: &str, name: &str) -> Result<PathBuf> {
    let output = command
        .stderr(Stdio::inherit())
        .output()
        .with_context(|| format!("could not start {}", shell::shown(command)))?;
    if !output.status.success() {
        bail!("{} ended with {}", shell::shown(command), output.status);
    }
    let messages = String::from_utf8_lossy(&output.stdout);
    let found = messages.lines().rev().find_map(|line| wasm_of(line, kind, name));
    found.with_context(|| format!("{} made no wasm", shell::shown(command)))
}

/// The wasm file that one of cargo's JSON messages names, when it is about the target of that kind and name.
fn wasm_of(message: &str, kind: &str, name: &str) -> Option<PathBuf> {
    let message: Value = serde_json::from_str(message).ok()?;
    is_about(&message, kind, name)?;
    let files = message.get("filenames")?.as_array()?;
    files
        .iter()
        .filter_map(Value::as_str)
        .map(PathBuf::from)
        .find(|file| file.extension().is_some_and(|end| end == "wasm"))
}

/// Whether a message of cargo is about the target of a kind and name. Versions of cargo differ in whether a library's name
/// has hyphens or underscores.
fn is_about(message: &Value, kind: &str, name: &str) -> Option<()> {
    let kinds = message.pointer("/target/kind")?.as_array()?;
    let found = message.pointer("/target/name")?.as_str()?;
    let is_it = kinds.iter().any(|each| each == kind) && found.replace('-', "_") == name.replace('-', "_");
    is_it.then_some(())
}
