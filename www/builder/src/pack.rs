//! `www/dist/`: the page for any static host, and the same as one file.
//!
//! A file is written only when it differs, so that its time tells whether it changed; what does not belong is
//! removed.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};

use crate::modules::{self, Form};
use crate::onefile::Handed;
use crate::project::{CORE, Project, WASMS, WHOLE, WORKER};
use crate::{bind, compile, onefile, script};

/// The page as one file.
pub const ONE_FILE: &str = "slope-of-light.html";
/// The description of the notebook's format.
pub const SCHEMA: &str = "schema/notebook.schema.json";
/// The notebook the page opens on.
pub const DEMO: &str = "demo/typed-readings.json";

/// The script that the page begins with.
const PAGE: &str = "main.js";
/// The script with the sections that are added once the page is open.
const LATER: &str = "later-begin.js";
/// The script of the one file, which has both.
const ALL: &str = "all.js";
/// The script of the workers that run trials.
const TRIALS: &str = "trials-worker.js";
/// The script of the workers that read evidence.
const EVIDENCE: &str = "evidence-worker.js";
/// What is not needed for the page to open.
pub const BROUGHT_LATER: [&str; 2] = [LATER, EVIDENCE];
/// Those of the workers, which are classic.
const WORKERS: [&str; 2] = [TRIALS, EVIDENCE];

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
    for wasm in &WASMS {
        bind::bind(&compile::library(project, wasm)?, &project.bound(wasm), wasm.stem)?;
    }
    let mut dist = Dist { root: project.dist(), kept: BTreeSet::new() };
    dist.copy_folder(&project.page(), Path::new(""), &["html", "css", "js", "svg", "json", "webmanifest"])?;
    for wasm in &WASMS {
        dist.copy_folder(&project.bound(wasm), Path::new(""), &["js", "wasm"])?;
    }
    copy_declarations(project)?;
    dist.write(Path::new(SCHEMA), &compile::example_output(project, "schema")?)?;
    dist.copy_folder(&project.root.join("demo"), Path::new("demo"), &["json", "zip"])?;
    let script = dist.joined_whole(ALL, Form::Module)?;
    let one_file = onefile::make(&dist.root, &dist.handed()?, &script)?;
    dist.write(Path::new(ONE_FILE), one_file.as_bytes())?;
    dist.join_scripts()?;
    dist.sweep()
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

    /// Copies the files of a folder, those below it too, whose extension is one of a list. A folder that does
    /// not exist has none.
    fn copy_folder(&mut self, from: &Path, to: &Path, extensions: &[&str]) -> Result<()> {
        for file in files_below(from)? {
            let inside = file.strip_prefix(from).unwrap_or(&file);
            let extension = file.extension().and_then(|extension| extension.to_str()).unwrap_or_default();
            let declarations = file.to_string_lossy().ends_with(".d.ts");
            if extensions.contains(&extension) && !declarations {
                let bytes = fs::read(&file).with_context(|| format!("could not read {}", file.display()))?;
                self.write(&to.join(inside), &bytes)?;
            }
        }
        Ok(())
    }

    /// A script with all that it imports, without comments.
    fn joined(&self, entry: &str, form: Form) -> Result<String> {
        Ok(script::without_comments(&modules::join(&self.root, Path::new(entry), form)?))
    }

    /// The same for the one file, whose only core is the whole one.
    fn joined_whole(&self, entry: &str, form: Form) -> Result<String> {
        let glue = [CORE, WHOLE].map(|wasm| format!("{}.js", wasm.stem));
        let [from, to] = &glue;
        let swap = [Path::new(from), Path::new(to)];
        let joined = modules::join_for_one_file(&self.root, Path::new(entry), form, swap)?;
        Ok(script::without_comments(&joined))
    }

    /// What the one file hands its scripts, by the names under which they look for it.
    fn handed(&self) -> Result<[(&'static str, Handed); 5]> {
        let read = |name: &str| {
            let path = self.root.join(name);
            fs::read(&path).with_context(|| format!("could not read {}", path.display()))
        };
        let demo = self.kept.contains(Path::new(DEMO)).then(|| read(DEMO)).transpose()?;
        let demo = demo.map(|bytes| String::from_utf8(bytes).context("the demo is no UTF-8")).transpose()?;
        Ok([
            ("SLOPE_WASM_BASE64", Handed::Bytes(read(&WHOLE.file())?)),
            ("SLOPE_TRIALS_WORKER", Handed::Text(self.joined_whole(TRIALS, Form::Classic)?)),
            ("SLOPE_WORKER_BASE64", Handed::Bytes(read(&WORKER.file())?)),
            ("SLOPE_EVIDENCE_WORKER", Handed::Text(self.joined(EVIDENCE, Form::Classic)?)),
            ("SLOPE_DEMO", demo.map_or(Handed::Nothing, Handed::Text)),
        ])
    }

    /// Joins all scripts into those that are begun with: they are smaller, and come with one request each.
    fn join_scripts(&mut self) -> Result<()> {
        // All are read before one is written over.
        let [page, later] = modules::join_two(&self.root, Path::new(PAGE), Path::new(LATER))?;
        let workers = WORKERS.map(|entry| (entry, self.joined(entry, Form::Classic)));
        self.kept.retain(|path| path.extension().is_none_or(|extension| extension != "js"));
        for (entry, text) in [(PAGE, page), (LATER, later)] {
            self.write(Path::new(entry), script::without_comments(&text).as_bytes())?;
        }
        for (entry, text) in workers {
            self.write(Path::new(entry), text?.as_bytes())?;
        }
        Ok(())
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
