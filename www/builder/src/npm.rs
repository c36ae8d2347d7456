//! Packages from npm, of the versions in a folder's lock file.

use std::fs;
use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result};

use crate::{machine, shell};

/// Sees to it that the packages of a folder are installed as its `package-lock.json` says; nothing is run when they are.
///
/// # Errors
/// When there is no npm and none can be had, or it fails.
pub fn install(folder: &Path) -> Result<()> {
    machine::need_npm()?;
    let lock = folder.join("package-lock.json");
    let lock = fs::read(&lock).with_context(|| format!("could not read {}", lock.display()))?;
    let stamp = folder.join("node_modules/installed-from");
    if fs::read(&stamp).ok().as_ref() == Some(&lock) {
        return Ok(());
    }
    let mut command = Command::new("npm");
    command.args(["ci", "--no-audit", "--no-fund", "--ignore-scripts"]).current_dir(folder);
    shell::run(&mut command)?;
    fs::write(&stamp, &lock).with_context(|| format!("could not write {}", stamp.display()))
}
