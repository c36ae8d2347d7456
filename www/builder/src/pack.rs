//! `www/dist/`: the page for any static host, and the same as one file.
//!
//! A file is written only when it differs, so that its time tells whether it changed; what does not belong is
//! removed.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use serde_json::{Map, Value, json};
use sha2::{Digest, Sha256};

use crate::bundle::{Bundler, Form, loaded_at_once};
use crate::files::{files_below, write_if_changed};
use crate::onefile::{Handed, Help, Scripts};
use crate::project::{BORROWED, Build, CORE, Project, WASMS, WORKER};
use crate::words::Packed;
use crate::{build, compile, help, html, onefile, words};

/// The page as one file.
pub const ONE_FILE: &str = "slope-of-light.html";
/// The description of the notebook's format.
pub const SCHEMA: &str = "schema/notebook.schema.json";

/// The script that the page begins with.
pub const PAGE: &str = "main.js";
/// The script that is loaded before it, and is one of its modules.
pub const EARLY: &str = "language.js";
/// The script that the one file begins with.
const ONE_FILE_START: &str = "one-file.js";
/// The script of the workers that run trials.
const TRIALS: &str = "trials-worker.js";
/// The script of the workers that read evidence.
const EVIDENCE: &str = "evidence-worker.js";
/// How files end that a page without a network does without.
const NOT_KEPT: [&str; 3] = [".zip", ".truth.json", ".schema.json"];
/// The script that keeps the site for when there is no network.
const SERVICE: &str = "service-worker.js";
/// Those of the workers.
const WORKERS: [&str; 3] = [TRIALS, EVIDENCE, SERVICE];
/// The sheet that comes with late scripts.
pub const LATE_STYLE: &str = "late.css";
const STYLES: [&str; 3] = ["page.css", "parts.css", LATE_STYLE];

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
    bundler.scripts(&source, &[PAGE, EARLY], Form::Split, &site)?;
    bundler.scripts(&source, &[PAGE, ONE_FILE_START], Form::Whole, &whole)?;
    bundler.scripts(&source, &WORKERS, Form::Classic, &workers)?;
    bundler.styles(&source, &STYLES, &site)?;

    let mut dist = Dist { root: project.dist(), kept: BTreeSet::new() };
    let page = html::compact(&read(&source.join("index.html"))?)?;
    let page = html::preloading(&page, &page_scripts(&site)?)?;
    dist.write(Path::new("index.html"), page.as_bytes())?;
    dist.copy_folder(&source, &["svg", "webmanifest", "wasm", "json", "zip"])?;
    let mut tables = Vec::new();
    for (language, Packed { first, late }) in words::packed(project, &said_at_once(&source, &site)?)? {
        dist.write(Path::new(&words::file(&language)), first.as_bytes())?;
        dist.write(Path::new(&words::late_file(&language)), late.as_bytes())?;
        tables.push((language, first + &late));
    }
    dist.copy_below(&source.join(help::FOLDER), Path::new(help::FOLDER), &["html", "css", "webp"])?;
    dist.copy_folder(&site, &["js", "css"])?;
    for worker in [TRIALS, EVIDENCE] {
        dist.write(Path::new(worker), &fs::read(workers.join(worker))?)?;
    }
    dist.write(Path::new(SCHEMA), &compile::example_output(project, compile::SCHEMA)?)?;
    let helps = helps(project, &source.join(help::FOLDER))?;
    let styles: BTreeSet<String> = helps.iter().map(|(_, help)| help.style.clone()).collect();
    let handed = dist.handed(words::in_one_order(&tables)?, helps, demos(project)?)?;
    let scripts = Scripts { page: read(&whole.join(PAGE))?, start: read(&whole.join(ONE_FILE_START))? };
    let one_file = onefile::make(&dist.root, &handed, &scripts, &styles)?;
    let service = format!("self.SLOPE_SITE={};\n{}", dist.site()?, read(&workers.join(SERVICE))?);
    dist.write(Path::new(SERVICE), service.as_bytes())?;
    dist.write(Path::new(ONE_FILE), one_file.as_bytes())?;
    dist.sweep()
}

/// The scripts that are loaded before the page is ready, in the folder where they were bundled to.
///
/// # Errors
/// When what the bundler said of them can't be read.
pub fn page_scripts(site: &Path) -> Result<BTreeSet<String>> {
    Ok(loaded_at_once(site, PAGE)?.into_iter().chain(loaded_at_once(site, EARLY)?).collect())
}

/// Builds each wasm that changed; gives a folder with the page's source, each wasm and its glue side by side, as scripts
/// import one another.
///
/// # Errors
/// When something does not compile, or a file can't be read or written.
pub fn source(project: &Project) -> Result<PathBuf> {
    build::build(project, Build::Small)?;
    let mut source = Dist { root: project.target.join("page-source"), kept: BTreeSet::new() };
    source.copy_folder(&project.page(), &["html", "css", "js", "svg", "webmanifest", "ftl", "webp"])?;
    source.copy_folder(&project.made_scripts(), &["js"])?;
    for scripts in &BORROWED {
        source.copy_below(&project.borrowed(scripts), Path::new(scripts.folder), &["js"])?;
    }
    for wasm in &WASMS {
        source.copy_folder(&project.bound(wasm, Build::Small), &["js", "wasm"])?;
    }
    source.copy_below(&project.root.join("demo"), Path::new("demo"), &["json", "zip"])?;
    source.sweep()?;
    Ok(source.root)
}

/// The sources of what the page may say before all its scripts have come.
fn said_at_once(source: &Path, site: &Path) -> Result<String> {
    let scripts = page_scripts(site)?;
    let scripts = scripts.iter().map(|script| read(&site.join(script)));
    std::iter::once(read(&source.join("index.html"))).chain(scripts).collect()
}

/// The help page of each language that has one, as the one file holds it.
fn helps(project: &Project, folder: &Path) -> Result<Vec<(String, Help)>> {
    let languages = words::languages(project)?.into_iter();
    languages.map(|language| Ok((language.clone(), onefile::help(folder, &help::name(&language))?))).collect()
}

/// The notebook that the page opens on, in each language that it is written in.
fn demos(project: &Project) -> Result<Vec<(String, String)>> {
    let files = words::languages(project)?.into_iter().map(|language| {
        let file = project.root.join(format!("demo/typed-readings.{language}.json"));
        (language, file)
    });
    files.filter(|(_, file)| file.is_file()).map(|(language, file)| Ok((language, read(&file)?))).collect()
}

/// A digest by SHA-256, in base64.
fn digest(bytes: &[u8]) -> String {
    STANDARD.encode(Sha256::digest(bytes))
}

fn read(path: &Path) -> Result<String> {
    fs::read_to_string(path).with_context(|| format!("could not read {}", path.display()))
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
    fn handed(
        &self,
        tables: Vec<(String, String)>,
        helps: Vec<(String, Help)>,
        demos: Vec<(String, String)>,
    ) -> Result<[(&'static str, Handed); 8]> {
        let bytes = |name: &str| {
            let path = self.root.join(name);
            fs::read(&path).with_context(|| format!("could not read {}", path.display()))
        };
        let shared: BTreeMap<String, String> =
            helps.iter().flat_map(|(_, help)| help.shared.clone()).collect();
        Ok([
            ("SLOPE_CORE", Handed::Bytes(bytes(&CORE.file())?)),
            ("SLOPE_TRIALS_WORKER", Handed::Bytes(bytes(TRIALS)?)),
            ("SLOPE_EVIDENCE", Handed::Bytes(bytes(&WORKER.file())?)),
            ("SLOPE_EVIDENCE_WORKER", Handed::Bytes(bytes(EVIDENCE)?)),
            ("SLOPE_DEMO", Handed::Texts(demos)),
            ("SLOPE_HELP_PICTURES", Handed::Texts(shared.into_iter().collect())),
            ("SLOPE_HELP", Handed::Texts(helps.into_iter().map(|(name, help)| (name, help.html)).collect())),
            ("SLOPE_WORDS", Handed::Texts(tables)),
        ])
    }

    /// What the service worker keeps: what was written so far but demos with files, which are large, and what no page loads;
    /// each by its digest, and the version, which is the digest of all of them.
    fn site(&self) -> Result<Value> {
        let mut files = Map::new();
        for path in &self.kept {
            let name = path.to_string_lossy().replace('\\', "/");
            if !NOT_KEPT.iter().any(|end| name.ends_with(end)) {
                files.insert(name, digest(&fs::read(self.root.join(path))?).into());
            }
        }
        let version = digest(Value::from(files.clone()).to_string().as_bytes());
        Ok(json!({ "version": version, "files": files }))
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
