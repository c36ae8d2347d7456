//! The page's modules joined into one script, without a bundler.
//!
//! Each module becomes a function of its own that gives what the module exports, and they stand in the order
//! in which they need each other. So a page's modules keep to a few forms, and any other is refused by name:
//!
//! - imports first, before any other code: `import './x.js'`, `import { a, b as c } from './x.js'`,
//!   `import * as x from './x.js'`, `import a from './x.js'`, and the last beside either of the two before it;
//! - exports at the start of a line: `export function`, `export async function`, `export class`,
//!   `export const NAME =`, `export { a, b as c }`;
//! - no circle of imports, no `import(…)`, no `export default`, `export … from`, `export let`.
//!
//! The glue of the wasm keeps to the same forms.
//!
//! A worker's script is joined as a classic one: a module worker can't be started from a file on the disk. Its
//! modules await nothing at their top level and have no `import.meta`, for a classic script knows neither.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::fs;
use std::path::{Component, Path, PathBuf};

use anyhow::{Context, Result, bail};

use crate::script::{self, Kind};

/// As what the joined script is run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// As a module.
    Module,
    /// As a classic script, all inside one function.
    Classic,
}

/// Under this name a script leaves its modules for one that is loaded later.
const SHARED: &str = "globalThis.SLOPE_MODULES";

/// Joins a module and all it imports, read from a folder.
///
/// # Errors
/// When a module is missing or keeps to none of the forms above; the message names it.
pub fn join(folder: &Path, entry: &Path, form: Form) -> Result<String> {
    gather(&|module| source(folder, module), entry, form)
}

/// The same for the one file: what imports the module `from` of the folder gets its module `to`.
///
/// # Errors
/// As [`join`].
pub fn join_for_one_file(folder: &Path, entry: &Path, form: Form, [from, to]: [&Path; 2]) -> Result<String> {
    gather(&|module| source(folder, if module == from { to } else { module }), entry, form)
}

/// Joins two modules for two scripts, the second of which is loaded later and shares the modules of the first.
///
/// # Errors
/// As [`join`].
pub fn join_two(folder: &Path, first: &Path, later: &Path) -> Result<[String; 2]> {
    let read = |module: &Path| source(folder, module);
    let mut graph = Graph::new(&read, Form::Module);
    graph.add(first)?;
    let mut second = Graph::new(&read, Form::Module);
    let mut shared = String::new();
    for (path, done) in graph.done {
        let name = path.display().to_string();
        write!(shared, "{name:?}: {}, ", done.variable)?;
        second.done.insert(path, Done { variable: format!("{SHARED}[{name:?}]"), ..done });
    }
    second.add(later)?;
    Ok([format!("{}{SHARED} = {{ {shared}}};\n", graph.text), second.text])
}

/// Joins a module and all it imports, read by `read`.
fn gather(read: &dyn Fn(&Path) -> Result<String>, entry: &Path, form: Form) -> Result<String> {
    let mut graph = Graph::new(read, form);
    graph.add(entry)?;
    Ok(match form {
        Form::Module => graph.text,
        // A module is strict without saying so.
        Form::Classic => format!("(() => {{\n'use strict';\n{}}})();\n", graph.text),
    })
}

fn source(folder: &Path, module: &Path) -> Result<String> {
    let path = folder.join(module);
    fs::read_to_string(&path).with_context(|| format!("could not read the module {}", path.display()))
}

/// Modules gathered so far. A module is named by its path in the folder.
struct Graph<'a> {
    read: &'a dyn Fn(&Path) -> Result<String>,
    form: Form,
    /// The finished modules.
    done: BTreeMap<PathBuf, Done>,
    /// The chain of imports that leads to the module at hand.
    open: Vec<PathBuf>,
    text: String,
}

/// A module that stands in the text already.
#[derive(Clone)]
struct Done {
    /// The variable its exports are in.
    variable: String,
    /// The names it exports.
    exports: Vec<String>,
}

impl<'a> Graph<'a> {
    fn new(read: &'a dyn Fn(&Path) -> Result<String>, form: Form) -> Self {
        Self { read, form, done: BTreeMap::new(), open: Vec::new(), text: String::new() }
    }

    /// Adds a module after all it needs.
    fn add(&mut self, path: &Path) -> Result<Done> {
        if let Some(done) = self.done.get(path) {
            return Ok(done.clone());
        }
        if self.open.iter().any(|each| each == path) {
            bail!(
                "{} is in a circle of imports; move what both sides need to a module of its own",
                path.display()
            );
        }
        let source = (self.read)(path)?.replace("\r\n", "\n");
        let module = Module::parse(&source).with_context(|| format!("in {}", path.display()))?;
        if self.form == Form::Classic && names_itself(&module.body) {
            bail!("{} has an import.meta, which a classic script does not know", path.display());
        }
        self.open.push(path.to_path_buf());
        let mut head = String::new();
        for import in &module.imports {
            let needed = resolve(path, import.from).with_context(|| format!("in {}", path.display()))?;
            let done = self.add(&needed)?;
            for binding in &import.bindings {
                let declaration = binding.declaration(&done).with_context(|| {
                    format!("{} takes from {} what that does not export", path.display(), needed.display())
                })?;
                head.push_str(&declaration);
            }
        }
        self.open.pop();
        let variable = format!("$module{}", self.done.len());
        let exports: Vec<String> =
            module.exports.iter().map(|Export { outer, inner }| format!("{outer}: {inner}")).collect();
        // Awaited, since a module may await at its top level, and in order.
        let start = match self.form {
            Form::Module => "await (async () =>",
            Form::Classic => "(() =>",
        };
        writeln!(
            self.text,
            "// {}\nconst {variable} = {start} {{\n{head}{}\nreturn Object.freeze({{ {} }});\n}})();",
            path.display(),
            module.body.trim(),
            exports.join(", ")
        )?;
        let exports = module.exports.into_iter().map(|export| export.outer).collect();
        let done = Done { variable, exports };
        self.done.insert(path.to_path_buf(), done.clone());
        Ok(done)
    }
}

/// The module a relative import names.
fn resolve(importer: &Path, from: &str) -> Result<PathBuf> {
    if !from.starts_with("./") && !from.starts_with("../") {
        bail!("the import of {from:?} is not relative; write './{from}'");
    }
    let mut path = importer.parent().unwrap_or(Path::new("")).to_path_buf();
    for part in Path::new(from).components() {
        match part {
            Component::Normal(name) => path.push(name),
            Component::ParentDir if path.pop() => {}
            Component::ParentDir => bail!("the import of {from:?} leads out of the page's folder"),
            _ => {}
        }
    }
    Ok(path)
}

/// A module taken apart.
#[derive(Debug, PartialEq)]
struct Module<'a> {
    imports: Vec<Import<'a>>,
    exports: Vec<Export>,
    /// The module without its import statements and `export` words.
    body: String,
}

#[derive(Debug, PartialEq)]
struct Import<'a> {
    bindings: Vec<Binding>,
    from: &'a str,
}

#[derive(Debug, PartialEq)]
enum Binding {
    /// All exports under one name.
    All(String),
    /// One export, under its own name or another.
    One { outer: String, inner: String },
}

impl Binding {
    /// The declaration that stands for the import, when the module exports what it takes.
    fn declaration(&self, module: &Done) -> Option<String> {
        let variable = &module.variable;
        match self {
            Self::All(inner) => Some(format!("const {inner} = {variable};\n")),
            Self::One { outer, inner } => {
                module.exports.contains(outer).then(|| format!("const {inner} = {variable}.{outer};\n"))
            }
        }
    }
}

#[derive(Debug, PartialEq)]
struct Export {
    outer: String,
    inner: String,
}

impl<'a> Module<'a> {
    fn parse(source: &'a str) -> Result<Self> {
        let kinds = script::kinds(source);
        let code = |at: usize| kinds.get(at) == Some(&Kind::Code);
        let (imports, start) = imports(source, &kinds)?;
        let mut exports = Vec::new();
        let mut body = String::new();
        let mut at = start;
        while let Some(rest) = source.get(at..).filter(|rest| !rest.is_empty()) {
            let line = rest.split_inclusive('\n').next().unwrap_or(rest);
            if code(at) && word(line) == "export" {
                let used = export(rest, &mut exports, &mut body)?;
                at += used;
                continue;
            }
            refuse_late_imports(line, at, &kinds)?;
            body.push_str(line);
            at += line.len();
        }
        Ok(Self { imports, exports, body })
    }
}

/// The import statements at the top, and where the rest of the module starts.
fn imports<'a>(source: &'a str, kinds: &[Kind]) -> Result<(Vec<Import<'a>>, usize)> {
    let mut imports = Vec::new();
    let mut at = 0;
    loop {
        let next = source
            .char_indices()
            .skip_while(|(i, _)| *i < at)
            .find(|(i, c)| kinds.get(*i) != Some(&Kind::Comment) && !c.is_whitespace());
        let Some((start, _)) = next else { return Ok((imports, at)) };
        let rest = source.get(start..).unwrap_or_default();
        let after = rest.get(word(rest).len()..).unwrap_or_default().trim_start();
        if word(rest) != "import" || after.starts_with(['(', '.']) {
            return Ok((imports, at));
        }
        let (import, length) = import(rest)?;
        imports.push(import);
        at = start + length;
    }
}

/// One import statement, and its length.
fn import(text: &str) -> Result<(Import<'_>, usize)> {
    let shown = text.lines().next().unwrap_or(text);
    let bad = || format!("the import {shown:?} is of no form that can be joined");
    let open = text.find(['\'', '"']).with_context(bad)?;
    let quote = text.get(open..=open).with_context(bad)?;
    let close = open + 1 + text.get(open + 1..).and_then(|rest| rest.find(quote)).with_context(bad)?;
    let from = text.get(open + 1..close).with_context(bad)?;
    let clause = text.get("import".len()..open).with_context(bad)?.trim();
    let bindings = match clause.strip_suffix("from") {
        None if clause.is_empty() => Vec::new(),
        None => bail!(bad()),
        Some(clause) => bindings(clause.trim()).with_context(bad)?,
    };
    let end = close + 1;
    let semicolon = usize::from(text.get(end..).is_some_and(|rest| rest.starts_with(';')));
    Ok((Import { bindings, from }, end + semicolon))
}

/// What stands between `import` and `from`.
fn bindings(clause: &str) -> Option<Vec<Binding>> {
    let clause = clause.trim();
    if let Some(inside) = clause.strip_prefix('{') {
        return Some(
            pairs(inside.strip_suffix('}')?)?
                .into_iter()
                .map(|(outer, inner)| Binding::One { outer, inner })
                .collect(),
        );
    }
    if let Some(name) = clause.strip_prefix('*') {
        return Some(vec![Binding::All(name_of(name.trim().strip_prefix("as")?)?)]);
    }
    let (name, more) = clause.split_once(',').map_or((clause, None), |(name, more)| (name, Some(more)));
    let mut all = vec![Binding::One { outer: "default".to_owned(), inner: name_of(name)? }];
    if let Some(more) = more {
        all.extend(bindings(more)?);
    }
    Some(all)
}

/// The pairs of `a, b as c`: the name outside this list's module or statement first.
fn pairs(list: &str) -> Option<Vec<(String, String)>> {
    let items = list.split(',').map(str::trim).filter(|item| !item.is_empty());
    items
        .map(|item| match item.split_once(" as ") {
            Some((first, second)) => Some((name_of(first)?, name_of(second)?)),
            None => name_of(item).map(|name| (name.clone(), name)),
        })
        .collect()
}

/// Takes one export statement from the start of a text; gives how much of the text was used.
fn export(text: &str, exports: &mut Vec<Export>, body: &mut String) -> Result<usize> {
    let shown = text.lines().next().unwrap_or(text);
    let bad = || format!("the export {shown:?} is of no form that can be joined");
    let after = text.get("export".len()..).with_context(bad)?;
    let declaration = after.trim_start();
    let skipped = text.len() - declaration.len();
    if let Some(list) = declaration.strip_prefix('{') {
        let end = list.find('}').with_context(bad)?;
        let rest = list.get(end + 1..).unwrap_or_default();
        if word(rest.trim_start()) == "from" {
            bail!(bad());
        }
        let pairs = list.get(..end).and_then(pairs).with_context(bad)?;
        exports.extend(pairs.into_iter().map(|(inner, outer)| Export { outer, inner }));
        let semicolon = usize::from(rest.starts_with(';'));
        return Ok(skipped + 1 + end + 1 + semicolon);
    }
    let name = declared(declaration).with_context(bad)?;
    exports.push(Export { outer: name.to_owned(), inner: name.to_owned() });
    // The word `export` goes; the declaration's own line is kept, so that it is not looked at again.
    let line = declaration.split_inclusive('\n').next().unwrap_or(declaration);
    body.push_str(line);
    Ok(skipped + line.len())
}

/// The name that a declaration declares.
fn declared(declaration: &str) -> Option<&str> {
    let rest = declaration.strip_prefix("async ").unwrap_or(declaration).trim_start();
    let kind = word(rest);
    if !matches!(kind, "function" | "class" | "const") {
        return None;
    }
    let rest = rest.get(kind.len()..)?;
    let name = word(rest.trim_start_matches(['*', ' ']));
    (!name.is_empty()).then_some(name)
}

/// Refuses `import` in code below the top, where it would be lost; `import.meta` may stay.
fn refuse_late_imports(line: &str, at: usize, kinds: &[Kind]) -> Result<()> {
    for (column, found) in line.match_indices("import") {
        let before = line.get(..column).and_then(|start| start.chars().next_back());
        let after = line.get(column + found.len()..).unwrap_or_default();
        let whole = !before.is_some_and(|c| is_name(c) || c == '.') && !after.starts_with(is_name);
        let property = after.trim_start().starts_with(['.', ':', '=']);
        if whole && !property && kinds.get(at + column) == Some(&Kind::Code) {
            bail!("an import stands below the top of the module: {:?}", line.trim());
        }
    }
    Ok(())
}

/// Whether a script asks for its own address by `import.meta`.
fn names_itself(source: &str) -> bool {
    let kinds = script::kinds(source);
    source.match_indices("import.meta").any(|(at, _)| kinds.get(at) == Some(&Kind::Code))
}

/// The name a text starts with, or nothing.
fn word(text: &str) -> &str {
    let end = text.find(|c| !is_name(c)).unwrap_or(text.len());
    text.get(..end).unwrap_or_default()
}

/// A text that is one name and nothing else.
fn name_of(text: &str) -> Option<String> {
    let text = text.trim();
    (!text.is_empty() && text.chars().all(is_name)).then(|| text.to_owned())
}

fn is_name(c: char) -> bool {
    c.is_alphanumeric() || c == '_' || c == '$'
}

#[cfg(test)]
#[path = "modules_test.rs"]
mod tests;
