//! `www/dist/`: the page for any static host, and the same as one file.
//!
//! A file is written only when it differs, so that its time tells whether it changed; what does not belong is
//! removed.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};

use crate::bundle::{Bundler, Form};
use crate::onefile::Handed;
use crate::project::{CORE, Project, WASMS, WORKER};
use crate::{bind, compile, html, onefile};

/// The page as one file.
pub const ONE_FILE: &str = "slope-of-light.html";
/// The description of the notebook's format.
pub const SCHEMA: &str = "schema/notebook.schema.json";
/// The notebook the page opens on.
pub const DEMO: &str = "demo/typed-readings.json";

/// The script that the page begins with.
pub const PAGE: &str = "main.js";
/// The script of the workers that run trials.
const TRIALS: &str = "trials-worker.js";
/// The script of the workers that read evidence.
const EVIDENCE: &str = "evidence-worker.js";
/// Those of the workers.
pub const WORKERS: [&str; 2] = [TRIALS, EVIDENCE];
const STYLES: [&str; 2] = ["page.css", "parts.css"];

/// `cargo pack`.
///
/// # Errors
/// See [`pack`].
pub fn command(project: &Project) -> Result<()> {
    pack(project)?;
    let dist = project.dist();
    println!("{}: for any static host", project.shown(&dist));
    println!("{}: one file, to open with a double click", project.shown(&dist.join(ONE_FILE)));
    Ok(())
}

/// Builds whatever changed, and packs it.
///
/// # Errors
/// When something does not compile, or a file can't be read or written.
pub fn pack(project: &Project) -> Result<()> {
    let source = source(project)?;
    let bundler = Bundler::get(project)?;
    let (site, whole, workers) =
        (project.bundled("site"), project.bundled("whole"), project.bundled("workers"));
    bundler.scripts(&source, &[PAGE], Form::Split, &site)?;
    bundler.scripts(&source, &[PAGE], Form::Whole, &whole)?;
    bundler.scripts(&source, &WORKERS, Form::Classic, &workers)?;
    bundler.styles(&source, &STYLES, &site)?;

    let mut dist = Dist { root: project.dist(), kept: BTreeSet::new() };
    dist.write(Path::new("index.html"), html::compact(&read(&source.join("index.html"))?)?.as_bytes())?;
    dist.copy_folder(&source, &["svg", "webmanifest", "wasm", "json", "zip"])?;
    dist.copy_folder(&site, &["js", "css"])?;
    dist.copy_folder(&workers, &["js"])?;
    dist.write(Path::new(SCHEMA), &compile::example_output(project, "schema")?)?;
    let one_file = onefile::make(&dist.root, &dist.handed()?, &read(&whole.join(PAGE))?)?;
    dist.write(Path::new(ONE_FILE), one_file.as_bytes())?;
    dist.sweep()
}

/// Builds each wasm that changed; gives a folder with the page's source, each wasm and its glue side by side, as scripts
/// import one another.
///
/// # Errors
/// When something does not compile, or a file can't be read or written.
pub fn source(project: &Project) -> Result<PathBuf> {
    for wasm in &WASMS {
        bind::bind(&compile::library(project, wasm)?, &project.bound(wasm), wasm.stem)?;
    }
    copy_declarations(project)?;
    let mut source = Dist { root: project.target.join("page-source"), kept: BTreeSet::new() };
    source.copy_folder(&project.page(), &["html", "css", "js", "svg", "webmanifest"])?;
    for wasm in &WASMS {
        source.copy_folder(&project.bound(wasm), &["js", "wasm"])?;
    }
    source.copy_below(&project.root.join("demo"), Path::new("demo"), &["json", "zip"])?;
    source.sweep()?;
    Ok(source.root)
}

fn read(path: &Path) -> Result<String> {
    fs::read_to_string(path).with_context(|| format!("could not read {}", path.display()))
}

/// The declarations of the wasm exports go where the type check looks for them.
fn copy_declarations(project: &Project) -> Result<()> {
    for wasm in &WASMS {
        let name = format!("{}.d.ts", wasm.stem);
        let text =
            fs::read(project.bound(wasm).join(&name)).with_context(|| format!("could not read {name}"))?;
        write_if_changed(&project.page_types().join(name), &text)?;
    }
    Ok(())
}

/// The folder being filled.
struct Dist {
    root: PathBuf,
    /// The files that belong, by their path from the root.
    kept: BTreeSet<PathBuf>,
}

impl Dist {
    fn write(&mut self, path: &Path, bytes: &[u8]) -> Result<()> {
        write_if_changed(&self.root.join(path), bytes)?;
        self.kept.insert(path.to_path_buf());
        Ok(())
    }

    /// Copies the files of a folder, those below it too, whose extension is one of a list.
    fn copy_folder(&mut self, from: &Path, extensions: &[&str]) -> Result<()> {
        self.copy_below(from, Path::new(""), extensions)
    }

    /// The same, into a folder of this one.
    fn copy_below(&mut self, from: &Path, to: &Path, extensions: &[&str]) -> Result<()> {
        for file in files_below(from)? {
            let inside = file.strip_prefix(from).unwrap_or(&file);
            let extension = file.extension().and_then(|extension| extension.to_str()).unwrap_or_default();
            if extensions.contains(&extension) {
                let bytes = fs::read(&file).with_context(|| format!("could not read {}", file.display()))?;
                self.write(&to.join(inside), &bytes)?;
            }
        }
        Ok(())
    }

    /// What the one file hands its scripts, by the names under which they look for it.
    fn handed(&self) -> Result<[(&'static str, Handed); 5]> {
        let bytes = |name: &str| {
            let path = self.root.join(name);
            fs::read(&path).with_context(|| format!("could not read {}", path.display()))
        };
        let text = |name: &str| read(&self.root.join(name));
        Ok([
            ("SLOPE_WASM_BASE64", Handed::Bytes(bytes(&CORE.file())?)),
            ("SLOPE_TRIALS_WORKER", Handed::Text(text(TRIALS)?)),
            ("SLOPE_WORKER_BASE64", Handed::Bytes(bytes(&WORKER.file())?)),
            ("SLOPE_EVIDENCE_WORKER", Handed::Text(text(EVIDENCE)?)),
            ("SLOPE_DEMO", Handed::Text(text(DEMO)?)),
        ])
    }

    /// Removes what earlier packing left and this did not write.
    fn sweep(&self) -> Result<()> {
        for file in files_below(&self.root)? {
            if !self.kept.contains(file.strip_prefix(&self.root).unwrap_or(&file)) {
                fs::remove_file(&file).with_context(|| format!("could not remove {}", file.display()))?;
            }
        }
        Ok(())
    }
}

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
