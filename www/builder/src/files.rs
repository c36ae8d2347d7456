//! Files: those below a folder, writing one, and compressing.

use std::fs;
use std::io::Write as _;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};
use flate2::Compression;
use flate2::write::GzEncoder;

/// All files below a folder, in the order of their names.
///
/// # Errors
/// When a folder can't be read.
pub fn files_below(folder: &Path) -> Result<Vec<PathBuf>> {
    let mut files = Vec::new();
    let mut folders = vec![folder.to_path_buf()];
    while let Some(folder) = folders.pop() {
        if !folder.exists() {
            continue;
        }
        let entries =
            fs::read_dir(&folder).with_context(|| format!("could not read {}", folder.display()))?;
        for entry in entries {
            let path = entry?.path();
            if path.is_dir() { folders.push(path) } else { files.push(path) }
        }
    }
    files.sort();
    Ok(files)
}

/// What the files below a folder are called that have an extension, without it, in the order of these names.
///
/// # Errors
/// When a folder can't be read.
pub fn stems_below(folder: &Path, extension: &str) -> Result<Vec<String>> {
    let files = files_below(folder)?;
    let of_kind = files.iter().filter(|file| file.extension().is_some_and(|its| its == extension));
    let mut stems: Vec<String> =
        of_kind.filter_map(|file| Some(file.file_stem()?.to_str()?.to_owned())).collect();
    stems.sort_unstable();
    Ok(stems)
}

/// Writes a file, unless it is there with the same content.
///
/// # Errors
/// When it can't be written.
pub fn write_if_changed(path: &Path, bytes: &[u8]) -> Result<()> {
    if fs::read(path).is_ok_and(|old| old == bytes) {
        return Ok(());
    }
    if let Some(folder) = path.parent() {
        fs::create_dir_all(folder).with_context(|| format!("could not make {}", folder.display()))?;
    }
    fs::write(path, bytes).with_context(|| format!("could not write {}", path.display()))
}

/// Bytes after gzip.
///
/// # Errors
/// None that memory does not make.
pub fn gzipped(bytes: &[u8], how: Compression) -> Result<Vec<u8>> {
    let mut encoder = GzEncoder::new(Vec::new(), how);
    encoder.write_all(bytes)?;
    Ok(encoder.finish()?)
}
