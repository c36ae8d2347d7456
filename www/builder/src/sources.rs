//! The project's sources as text, and what each file imports of the others.
//!
//! Of Rust the paths are read, `a::{b, c::D}` wherever it stands, and followed to the file that a name comes from. What
//! the face of a folder (`lib.rs`, `main.rs`, `mod.rs`) hands on by `pub use` is no use of its own.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

use anyhow::{Context, Result};

/// Folders that hold no source: what is made, fetched or handed in.
const PASSED_OVER: [&str; 4] = ["target", "node_modules", "dist", "demo"];

/// From each file to those that it imports.
pub type Imports<'a> = BTreeMap<&'a str, BTreeSet<&'a str>>;

/// The texts of the project's files, by their paths from its root.
pub struct Sources(pub BTreeMap<String, String>);

impl Sources {
    /// Reads every file of the project whose name has one of these endings.
    ///
    /// # Errors
    /// When a folder or a file can't be read.
    pub fn read(root: &Path, endings: &[&str]) -> Result<Self> {
        let mut found = BTreeMap::new();
        let mut folders = vec![root.to_owned()];
        while let Some(folder) = folders.pop() {
            let unreadable = || format!("could not read {}", folder.display());
            for entry in fs::read_dir(&folder).with_context(unreadable)? {
                let path = entry.with_context(unreadable)?.path();
                let name = path.file_name().unwrap_or_default().to_string_lossy();
                if path.is_dir() {
                    if !name.starts_with('.') && !PASSED_OVER.contains(&name.as_ref()) {
                        folders.push(path);
                    }
                } else if endings.iter().any(|ending| name.ends_with(ending)) {
                    let text = fs::read_to_string(&path).with_context(unreadable)?;
                    let place = path.strip_prefix(root).unwrap_or(&path);
                    found.insert(place.to_string_lossy().replace('\\', "/"), text);
                }
            }
        }
        Ok(Self(found))
    }

    /// The files with an ending, tests apart.
    pub fn ending<'a>(&'a self, ending: &'a str) -> impl Iterator<Item = (&'a str, &'a str)> {
        let all = self.0.iter().map(|(path, text)| (path.as_str(), text.as_str()));
        all.filter(move |(path, _)| path.ends_with(ending) && !path.ends_with("_test.rs"))
    }

    /// What each script imports.
    pub fn script_imports(&self) -> Imports<'_> {
        let imported = |path: &str, text: &str| {
            let folder = Path::new(path).parent().unwrap_or(Path::new(""));
            let code = without_comments(text);
            let quoted = code.split(['"', '\'']);
            let paths = quoted.filter_map(|name| {
                let path = match name.strip_prefix("./") {
                    Some(below) => folder.join(below),
                    None => folder.parent()?.join(name.strip_prefix("../")?),
                };
                Some(self.0.get_key_value(path.to_str()?)?.0.as_str())
            });
            paths.collect()
        };
        self.ending(".js").map(|(path, text)| (path, imported(path, text))).collect()
    }

    /// The Rust programs and libraries, each with its modules.
    pub fn trees(&self) -> Vec<Tree<'_>> {
        let roots = self.ending(".rs").map(|(path, _)| path);
        let roots =
            roots.filter(|path| path.ends_with("/lib.rs") || path.ends_with("/main.rs")).map(folder_of);
        roots.collect::<BTreeSet<_>>().into_iter().map(|folder| Tree::of(self, folder)).collect()
    }
}

/// The modules of one program or library.
pub struct Tree<'a> {
    modules: BTreeMap<Vec<&'a str>, Module<'a>>,
}

/// One module.
struct Module<'a> {
    path: &'a str,
    /// Its modules, in the order in which they are declared.
    declared: Vec<&'a str>,
    /// The paths that it uses.
    used: Vec<Vec<&'a str>>,
    /// The paths that it hands on, as the face of its folder.
    handed_on: Vec<Vec<&'a str>>,
}

impl<'a> Tree<'a> {
    fn of(sources: &'a Sources, folder: &str) -> Self {
        let files = sources.ending(".rs").filter(|(path, _)| path.starts_with(folder));
        let modules = files.map(|(path, text)| (name_of(&path[folder.len()..]), Module::read(path, text)));
        Self { modules: modules.collect() }
    }

    /// What each file imports of the others.
    pub fn imports(&self) -> Imports<'a> {
        let of = |name| self.uses(name).map(|used| self.modules[used].path).collect();
        self.modules.iter().map(|(name, module)| (module.path, of(name))).collect()
    }

    /// Each use of a module by one that is declared above it: the two files, and the face that declares them.
    pub fn upward(&self) -> Vec<[&'a str; 3]> {
        let mut found = Vec::new();
        for (user, module) in &self.modules {
            for used in self.uses(user) {
                let shared = user.iter().zip(used).take_while(|(a, b)| a == b).count();
                let (Some(here), Some(there)) = (user.get(shared), used.get(shared)) else { continue };
                let Some(face) = self.modules.get(&user[..shared]) else { continue };
                let place = |name| face.declared.iter().position(|declared| declared == name);
                if place(here).is_some_and(|here| place(there).is_some_and(|there| there > here)) {
                    found.push([module.path, self.modules[used].path, face.path]);
                }
            }
        }
        found
    }

    /// The other modules that a module uses.
    fn uses<'s>(&'s self, user: &'s Vec<&'a str>) -> impl Iterator<Item = &'s Vec<&'a str>> {
        let used = self.modules[user].used.iter();
        used.filter_map(|path| self.home(user, path, 0)).filter(move |home| *home != user)
    }

    /// The module in which what a path names was written; none for what is of another package.
    fn home(&self, from: &[&'a str], path: &[&'a str], hops: usize) -> Option<&Vec<&'a str>> {
        let (mut at, mut rest) = (from.to_vec(), path);
        match *path.first()? {
            "crate" => (at, rest) = (Vec::new(), &path[1..]),
            "self" | "super" => {
                while let Some(&step @ ("self" | "super")) = rest.first() {
                    if step == "super" {
                        at.pop();
                    }
                    rest = &rest[1..];
                }
            }
            child => {
                let inside = [from, &[child]].concat();
                self.modules.get(&inside)?;
            }
        }
        while let Some(next) = rest.first().map(|next| [&at[..], &[next]].concat()) {
            if !self.modules.contains_key(&next) {
                break;
            }
            (at, rest) = (next, &rest[1..]);
        }
        let (home, module) = self.modules.get_key_value(&at)?;
        let named = |handed: &&Vec<&str>| rest.first().is_some_and(|name| handed.last() == Some(name));
        let handed = module.handed_on.iter().find(named);
        match handed.or(module.handed_on.iter().find(|handed| handed.last() == Some(&"*"))) {
            Some(handed) if !rest.is_empty() && hops < 8 => self.home(&at, handed, hops + 1),
            _ => Some(home),
        }
    }
}

impl<'a> Module<'a> {
    fn read(path: &'a str, text: &'a str) -> Self {
        let is_face = ["/lib.rs", "/main.rs", "/mod.rs"].iter().any(|face| path.ends_with(face));
        let (mut used, mut handed_on) = (Vec::new(), Vec::new());
        let mut tokens = Tokens::of(text);
        let mut before = ["", ""];
        while let Some(token) = tokens.next() {
            let hands_on = is_face && token == "use" && (before[1] == "pub" || before[1] == ")");
            if hands_on {
                tokens.branches(Vec::new(), &mut handed_on);
            } else if tokens.peek() == "::" && token.starts_with(is_of_name) {
                tokens.path(vec![token], &mut used);
            }
            before = [before[1], token];
        }
        Self { path, declared: declared(text), used, handed_on }
    }
}

/// The words and signs of a text, comments left out.
struct Tokens<'a> {
    all: Vec<&'a str>,
    at: usize,
}

impl<'a> Tokens<'a> {
    fn of(text: &'a str) -> Self {
        let code = text.lines().map(|line| line.split("//").next().unwrap_or_default());
        Self { all: code.flat_map(words).collect(), at: 0 }
    }

    fn next(&mut self) -> Option<&'a str> {
        self.at += 1;
        self.all.get(self.at - 1).copied()
    }

    fn peek(&self) -> &'a str {
        self.all.get(self.at).copied().unwrap_or_default()
    }

    /// Reads on from a name, and puts each path that comes of it into `paths`.
    fn path(&mut self, so_far: Vec<&'a str>, paths: &mut Vec<Vec<&'a str>>) {
        if self.peek() == "::" {
            self.next();
            self.branches(so_far, paths);
        } else {
            paths.push(so_far);
        }
    }

    /// Reads what stands behind `::` or `use`: a name, or a list of paths in braces.
    fn branches(&mut self, so_far: Vec<&'a str>, paths: &mut Vec<Vec<&'a str>>) {
        match self.next() {
            Some("{") => loop {
                match self.peek() {
                    "}" | "" => break,
                    "," => self.at += 1,
                    "as" => self.at += 2,
                    _ => self.branches(so_far.clone(), paths),
                }
            },
            Some("self") if !so_far.is_empty() => paths.push(so_far),
            Some(name) => self.path([so_far, vec![name]].concat(), paths),
            None => {}
        }
    }
}

/// A line of code in names, `::` and single signs.
fn words(line: &str) -> Vec<&str> {
    let (mut found, mut rest) = (Vec::new(), line.trim_start());
    while let Some(first) = rest.chars().next() {
        let name = rest.find(|c: char| !is_of_name(c)).unwrap_or(rest.len());
        let length = match name {
            0 if rest.starts_with("::") => 2,
            0 => first.len_utf8(),
            name => name,
        };
        found.push(&rest[..length]);
        rest = rest[length..].trim_start();
    }
    found
}

fn is_of_name(character: char) -> bool {
    character.is_alphanumeric() || character == '_'
}

/// The modules that a face declares, in its order.
fn declared(text: &str) -> Vec<&str> {
    let declarations = text.lines().filter_map(|line| line.trim().strip_suffix(';')?.split_once("mod "));
    declarations
        .filter(|(before, _)| before.is_empty() || before.starts_with("pub"))
        .map(|(_, name)| name)
        .collect()
}

/// A module's name from its path inside the package: of `a/b.rs` and `a/b/mod.rs` it is `a::b`.
fn name_of(path: &str) -> Vec<&str> {
    let mut name: Vec<&str> = path.trim_end_matches(".rs").split('/').collect();
    if matches!(name.last(), Some(&("mod" | "lib" | "main"))) {
        name.pop();
    }
    name
}

/// The folder of a file, with its last slash.
fn folder_of(path: &str) -> &str {
    path.rfind('/').map_or("", |slash| &path[..=slash])
}

/// The lines of a script that are no comment.
fn without_comments(text: &str) -> String {
    let is_comment = |line: &str| ["//", "/*", "*"].iter().any(|mark| line.trim_start().starts_with(mark));
    text.lines().filter(|line| !is_comment(line)).collect::<Vec<_>>().join("\n")
}
