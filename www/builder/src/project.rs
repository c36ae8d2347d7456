//! Where the parts of the project are.

use std::env;
use std::path::{Path, PathBuf};

/// Name of the crate that holds the notebook.
pub const CRATE: &str = "slope-of-light";
/// What reads traces and photographs, in the worker; the core only knows what was read.
pub const EVIDENCE: &str = "slope-evidence";
/// What becomes wasm for the page.
pub struct Wasm {
    /// Its package.
    pub package: &'static str,
    /// Stem of the bound files: `slope_of_light.js`, `slope_of_light_bg.wasm`.
    pub stem: &'static str,
    /// The packages that are compiled for speed in it, beside those that are so everywhere.
    pub fast: &'static [&'static str],
}

/// How wasm is compiled.
#[derive(Clone, Copy, PartialEq)]
pub enum Build {
    /// Small, but fast in what is computed over and over: as it is packed, tested and measured.
    Small,
    /// In a fraction of that time: as it is served while one works on it.
    Quick,
}

impl Build {
    /// The profile, in the workspace's `Cargo.toml`.
    pub fn profile(self) -> &'static str {
        match self {
            Self::Small => "wasm",
            Self::Quick => "wasm-quick",
        }
    }

    /// How long it takes, in words.
    pub fn usually(self) -> &'static str {
        match self {
            Self::Small => "minutes at first, also for the standard library; seconds where nothing changed",
            Self::Quick => "a minute or two at first, also for the standard library; seconds later",
        }
    }
}

/// What the page itself begins with.
pub const CORE: Wasm = Wasm { package: CRATE, stem: "slope_of_light", fast: &[] };
/// What its evidence worker begins with.
pub const WORKER: Wasm = Wasm { package: "slope-worker", stem: "slope_worker", fast: &[EVIDENCE] };
/// Both of them.
pub const WASMS: [Wasm; 2] = [CORE, WORKER];

impl Wasm {
    /// The bound wasm's file name.
    pub fn file(&self) -> String {
        format!("{}_bg.wasm", self.stem)
    }
}

/// Scripts of a package from npm that stand in a folder beside the page's.
pub struct Borrowed {
    /// The folder, with the slash behind it.
    pub folder: &'static str,
    /// Where they are among the packages.
    package: &'static str,
}

/// What puts texts of a table into words, and what takes texts with marks of `CommonMark` apart.
pub const BORROWED: [Borrowed; 2] = [
    Borrowed { folder: "fluent/", package: "@fluent/bundle/esm" },
    Borrowed { folder: "marked/", package: "marked/lib" },
];

/// The folders the commands read and write.
pub struct Project {
    /// The workspace.
    pub root: PathBuf,
    /// Cargo's target folder.
    pub target: PathBuf,
}

impl Project {
    /// The project this program was built from.
    pub fn find() -> Self {
        let here = env::var_os("CARGO_MANIFEST_DIR")
            .map_or_else(|| PathBuf::from(env!("CARGO_MANIFEST_DIR")), PathBuf::from);
        let root = here.ancestors().nth(2).unwrap_or(&here).to_path_buf();
        let target =
            env::var_os("CARGO_TARGET_DIR").map_or_else(|| root.join("target"), |dir| root.join(dir));
        Self { root, target }
    }

    /// Static source of the page.
    pub fn page(&self) -> PathBuf {
        self.root.join("www/page")
    }

    /// What `cargo pack` makes.
    pub fn dist(&self) -> PathBuf {
        self.root.join("www/dist")
    }

    /// A bound wasm, its glue and declarations, with the stamp that tells whether they are current.
    pub fn bound(&self, wasm: &Wasm, build: Build) -> PathBuf {
        self.target.join("bound").join(build.profile()).join(wasm.stem)
    }

    /// Where packages from npm are installed that the page is made with.
    pub fn packages(&self) -> PathBuf {
        self.root.join("www/builder")
    }

    /// Scripts of a package from npm, as it was installed.
    pub fn borrowed(&self, scripts: &Borrowed) -> PathBuf {
        self.packages().join("node_modules").join(scripts.package)
    }

    /// Scripts as the bundler made them, in one of its forms.
    pub fn bundled(&self, form: &str) -> PathBuf {
        self.target.join("bundled").join(form)
    }

    /// The scripts that the builder makes from data of the page.
    pub fn made_scripts(&self) -> PathBuf {
        self.target.join("page-scripts")
    }

    /// Declarations of the wasm exports for the type check; always in the workspace's own `target`, as
    /// `tests/page/tsconfig.json` names it.
    pub fn page_types(&self) -> PathBuf {
        self.root.join("target/page-types")
    }

    /// The page suite: package `page-tests`, the type check, the wasm tests.
    pub fn page_tests(&self) -> PathBuf {
        self.root.join("tests/page")
    }

    /// A path as a person at the workspace's root would write it.
    pub fn shown(&self, path: &Path) -> String {
        path.strip_prefix(&self.root).unwrap_or(path).display().to_string()
    }
}
