//! The folder in which a browser keeps its things.

use std::fs;
use std::path::PathBuf;

use anyhow::Result;
use tempfile::TempDir;

/// The folder of one browser: its profile, its downloads, and the files the test gives it.
pub struct Home(TempDir);

impl Home {
    /// An empty one.
    ///
    /// # Errors
    /// When it can't be made.
    pub fn new() -> Result<Self> {
        Ok(Self(tempfile::Builder::new().prefix("slope-of-light-").tempdir()?))
    }

    /// A folder of this home, which may not be there yet.
    pub fn folder(&self, name: &str) -> PathBuf {
        self.0.path().join(name)
    }

    /// Writes a file to be opened in the page.
    ///
    /// # Errors
    /// When it can't be written.
    pub fn write(&self, name: &str, bytes: &[u8]) -> Result<PathBuf> {
        let path = self.folder(name);
        fs::write(&path, bytes)?;
        Ok(path)
    }
}
