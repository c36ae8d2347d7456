//! Starting other programs: silently, in sight, or in sight with a copy kept.

use std::ffi::OsStr;
use std::io::{BufRead, BufReader, Write};
use std::path::PathBuf;
use std::process::{Command, Stdio};

use anyhow::{Context, Result, bail};

use crate::project::Project;

/// Cargo of the active toolchain, in the workspace, with the target folder this program uses.
pub fn cargo(project: &Project) -> Command {
    let program = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    cargo_at(project, program)
}

/// A cargo named by its path, without what `cargo run` told this program about itself.
pub fn cargo_at(project: &Project, program: impl AsRef<OsStr>) -> Command {
    let mut command = Command::new(program);
    for (name, _) in std::env::vars_os() {
        let told = name.to_string_lossy();
        if told.starts_with("CARGO_PKG_")
            || told.starts_with("CARGO_MANIFEST_")
            || told.starts_with("CARGO_BIN_")
        {
            command.env_remove(&name);
        }
    }
    command.current_dir(&project.root).env("CARGO_TARGET_DIR", &project.target);
    command
}

/// Runs a program in sight.
///
/// # Errors
/// When it does not start, or ends with anything but success.
pub fn run(command: &mut Command) -> Result<()> {
    let status = command.status().with_context(|| format!("could not start {}", shown(command)))?;
    if !status.success() {
        bail!("{} ended with {status}", shown(command));
    }
    Ok(())
}

/// Whether a program starts and succeeds; nothing is shown.
pub fn succeeds(command: &mut Command) -> bool {
    command
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .status()
        .is_ok_and(|status| status.success())
}

/// What a program prints on standard output, when it succeeds; nothing is shown.
pub fn answer(command: &mut Command) -> Option<String> {
    let output = command.stdin(Stdio::null()).stderr(Stdio::null()).output().ok()?;
    output.status.success().then(|| String::from_utf8_lossy(&output.stdout).trim().to_owned())
}

/// What a program prints on standard output; what it complains of is shown.
///
/// # Errors
/// When it does not start, or ends with anything but success.
pub fn output(command: &mut Command) -> Result<String> {
    let output = command
        .stderr(Stdio::inherit())
        .output()
        .with_context(|| format!("could not start {}", shown(command)))?;
    if !output.status.success() {
        bail!("{} ended with {}", shown(command), output.status);
    }
    Ok(String::from_utf8_lossy(&output.stdout).into_owned())
}

/// What a program did: the lines of its standard output, and whether it succeeded.
pub struct Heard {
    /// Lines of standard output.
    pub lines: Vec<String>,
    /// Whether its exit code was zero.
    pub success: bool,
}

/// Runs a program in sight and keeps the lines of its standard output.
///
/// # Errors
/// When it does not start, or its output can't be read.
pub fn overhear(command: &mut Command) -> Result<Heard> {
    overhear_some(command, |_| true)
}

/// The same, showing those lines that `is_shown` chooses.
///
/// # Errors
/// As [`overhear`].
pub fn overhear_some(command: &mut Command, mut is_shown: impl FnMut(&str) -> bool) -> Result<Heard> {
    let mut child = command
        .stdout(Stdio::piped())
        .spawn()
        .with_context(|| format!("could not start {}", shown(command)))?;
    let mut lines = Vec::new();
    if let Some(stdout) = child.stdout.take() {
        for line in BufReader::new(stdout).split(b'\n') {
            let line = String::from_utf8_lossy(&line?).into_owned();
            if is_shown(&line) {
                println!("{line}");
                std::io::stdout().flush()?;
            }
            lines.push(line);
        }
    }
    let success = child.wait()?.success();
    Ok(Heard { lines, success })
}

/// A program on the search path.
pub fn on_path(program: &str) -> Option<PathBuf> {
    std::env::split_paths(&std::env::var_os("PATH")?).map(|dir| dir.join(program)).find(|path| path.is_file())
}

/// The command as one would type it.
pub fn shown(command: &Command) -> String {
    let words = std::iter::once(command.get_program()).chain(command.get_args());
    words.map(|word| word.to_string_lossy()).collect::<Vec<_>>().join(" ")
}
