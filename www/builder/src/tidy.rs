//! The order of the house, which no compiler looks at: what may use what, how files begin and how long they are, and that
//! the guide for developers names places that exist.
//!
//! - Modules stand in the order in which data flows: each uses those declared above it, in every folder.
//! - No file uses another that uses it in turn, by whatever way round.
//! - The page's scripts stand in the layers listed in `DEVELOPERS.md`; each imports from its own and those above it.
//! - Each export of a wasm makes and reads the types that it names to the page.

use std::collections::BTreeSet;

use anyhow::Result;

use crate::exports::misnamed;
use crate::project::Project;
use crate::sources::{Imports, Sources};
use crate::summary::Tally;

/// What is read.
const ENDINGS: [&str; 8] = [".rs", ".js", ".ts", ".css", ".html", ".py", ".toml", ".md"];

/// Most lines of a file that people write.
const LONGEST: usize = 500;

/// How declarations begin that are made from the Rust types.
const MADE_FROM_TYPES: &str = "// Made from the Rust types";

/// The guide for developers.
const GUIDE: &str = "DEVELOPERS.md";

/// Where decisions are told.
const DECISIONS: &str = "crate/DECISIONS.md";

/// The heading over its table of layers.
const LAYERS: &str = "## The page's scripts, layer by layer";

/// Where the page's scripts are.
const PAGE: &str = "www/page/";

/// From where the guide counts its paths.
const FROM: [&str; 4] = ["", "crate/", "crate/src/", PAGE];

/// What is made or handed out, and so named by the guide while it may not be there.
const MADE: [&str; 3] = ["www/dist/", "languages.js", "notebook.json"];

/// What stands for the code of any language in a path.
const ANY_LANGUAGE: &str = "XX.";

/// The endings of files that the guide names.
const NAMED: [&str; 10] = [".rs", ".js", ".ts", ".css", ".ftl", ".html", ".json", ".py", ".toml", ".md"];

/// Looks everything over, and prints what is out of order.
///
/// # Errors
/// When a source can't be read.
pub fn check(project: &Project) -> Result<Tally> {
    let sources = Sources::read(&project.root, &ENDINGS)?;
    let exists = |path: &str| project.root.join(path).exists();
    let rules: [(&str, Vec<String>); 7] = [
        ("modules in the order in which data flows", modules(&sources)),
        ("no circles of imports", circles(&sources)),
        ("scripts import from their layer or those above", scripts(&sources)),
        ("exports make and read what they name", misnamed(&sources)),
        ("each module says at its head what it is", heads(&sources)),
        ("files of at most 500 lines", lengths(&sources)),
        ("places that the guide and the decisions name exist", paths(&sources, exists)),
    ];
    let mut sum = Tally::default();
    for (rule, faults) in rules {
        println!("{}: {rule}", if faults.is_empty() { "passed" } else { "FAILED" });
        for fault in &faults {
            println!("  {fault}");
        }
        sum += Tally::one(faults.is_empty());
    }
    Ok(sum)
}

fn modules(sources: &Sources) -> Vec<String> {
    let upward = sources.trees().into_iter().flat_map(|tree| tree.upward()).collect::<BTreeSet<_>>();
    let told =
        |[user, used, face]: [&str; 3]| format!("{user} uses {used}: declare that one above it in {face}");
    upward.into_iter().map(told).collect()
}

fn circles(sources: &Sources) -> Vec<String> {
    let trees = sources.trees().into_iter().map(|tree| tree.imports());
    let circles = trees.chain([sources.script_imports()]).map(|imports| circle(&imports));
    circles
        .filter(|circle| !circle.is_empty())
        .map(|circle| format!("a circle: {}", circle.into_iter().collect::<Vec<_>>().join(", ")))
        .collect()
}

/// The files on a circle, or between two: what is left when those that use none of the rest, and those that none of the
/// rest uses, are put aside again and again.
fn circle<'a>(imports: &Imports<'a>) -> BTreeSet<&'a str> {
    let mut left: BTreeSet<&str> = imports.keys().copied().collect();
    loop {
        let used: BTreeSet<&str> = left.iter().flat_map(|file| &imports[file]).copied().collect();
        let on = |file: &&str| used.contains(file) && !imports[file].is_disjoint(&left);
        let still: BTreeSet<&str> = left.iter().copied().filter(on).collect();
        if still.len() == left.len() {
            return left;
        }
        left = still;
    }
}

fn scripts(sources: &Sources) -> Vec<String> {
    let guide = sources.0.get(GUIDE).map_or("", String::as_str);
    let layers = layers(guide);
    let place = |path: &str| {
        let name = path.strip_prefix(PAGE)?;
        layers.iter().position(|layer| layer.contains(&name))
    };
    let mut faults = Vec::new();
    for (script, imported) in sources.script_imports() {
        let Some(at) = place(script) else {
            faults.push(format!("{script} stands in no layer of {GUIDE}"));
            continue;
        };
        let above = imported.into_iter().filter(|other| place(other).is_some_and(|there| there > at));
        faults
            .extend(above.map(|other| format!("{script} imports {other}, which stands in a layer below it")));
    }
    faults
}

/// The scripts of each layer: the names in code quotes in each row of the table.
fn layers(guide: &str) -> Vec<Vec<&str>> {
    let table = guide.split_once(LAYERS).map_or("", |(_, rest)| rest);
    let rows =
        table.lines().skip_while(|line| !line.starts_with('|')).take_while(|line| line.starts_with('|'));
    rows.map(|row| quoted(row).collect()).filter(|layer: &Vec<&str>| !layer.is_empty()).collect()
}

fn heads(sources: &Sources) -> Vec<String> {
    let headless = |ending, head: &'static str| {
        let files = sources.ending(ending).filter(move |(_, text)| !text.starts_with(head));
        files.map(move |(path, _)| format!("{path} does not begin with {head}"))
    };
    headless(".rs", "//!").chain(headless(".js", "/**")).collect()
}

fn lengths(sources: &Sources) -> Vec<String> {
    let written = sources.0.iter().filter(|(_, text)| !text.starts_with(MADE_FROM_TYPES));
    let long = written.map(|(path, text)| (path, text.lines().count())).filter(|(_, n)| *n > LONGEST);
    long.map(|(path, n)| format!("{path} has {n} lines")).collect()
}

fn paths(sources: &Sources, exists: impl Fn(&str) -> bool) -> Vec<String> {
    let missing = |path: &&str| is_path(path) && !FROM.iter().any(|from| exists(&format!("{from}{path}")));
    let mut faults = Vec::new();
    for page in [GUIDE, DECISIONS] {
        let text = sources.0.get(page).map_or("", String::as_str);
        let prose = text.split("```").step_by(2).flat_map(str::lines);
        let gone = prose.flat_map(quoted).filter(missing);
        faults.extend(gone.map(|path| format!("{page} names {path}, which is not there")));
    }
    faults
}

/// What stands in code quotes on a line.
fn quoted(line: &str) -> impl Iterator<Item = &str> {
    line.split('`').skip(1).step_by(2)
}

fn is_path(quote: &str) -> bool {
    let file = NAMED.iter().any(|ending| quote.ends_with(ending));
    let plain = quote.chars().all(|c| c.is_alphanumeric() || "/._-".contains(c));
    let stays = !quote.contains(ANY_LANGUAGE) && !MADE.iter().any(|made| quote.starts_with(made));
    plain && stays && (file || quote.ends_with('/'))
}

#[cfg(test)]
#[path = "tidy_test.rs"]
mod tests;
