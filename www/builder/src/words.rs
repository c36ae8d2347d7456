//! The tables of words, `www/page/words/`, in the syntax of Fluent: what the type check knows of them, whether each of
//! their texts is said, and which of them a visit loads first.
//!
//! Source: Fluent Syntax 1.0.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;
use std::fs;
use std::path::Path;

use anyhow::{Context, Result, bail};
use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement};
use fluent_syntax::{parser, serializer};

use crate::files::{files_below, stems_below};
use crate::messages::{self, Said};
use crate::project::Project;
use crate::summary::Tally;

/// The language whose table is the whole one.
pub const FIRST: &str = "en";

/// The text that names a table's language in itself.
const NAME: &str = "language-name";

/// What each text of a table asks to be filled with, by its identifier.
type Texts = BTreeMap<String, BTreeSet<String>>;

/// The TypeScript declaration of the first language's table: each text with what it asks for.
///
/// # Errors
/// When the table can't be read.
pub fn declaration(project: &Project) -> Result<String> {
    let mut text = String::from(
        "/** @import { Value } from './types.js' */\nimport type { Value } from './types.js';\n\n/** What each text is filled with. */\nexport type Table = {\n",
    );
    for (id, values) in table(project, FIRST)? {
        let values: Vec<String> = values.iter().map(|value| format!("{value}: Value")).collect();
        let values = match values.as_slice() {
            [] => "Record<string, never>".to_owned(),
            some => format!("{{ {} }}", some.join(", ")),
        };
        writeln!(text, "  '{id}': {values},")?;
    }
    Ok(text + "};\n")
}

/// The script that names the languages: each that has a table, with its name in itself, so that no list is kept by hand.
///
/// # Errors
/// When a table can't be read, or has no name of its language.
pub fn languages_script(project: &Project) -> Result<String> {
    let mut names = serde_json::Map::new();
    for language in languages(project)? {
        let name = plain(project, &language)?.remove(NAME);
        let name = name.with_context(|| format!("{} has no plain text “{NAME}”", file(&language)))?;
        names.insert(language, name.into());
    }
    let names = serde_json::Value::from(names);
    Ok(format!(
        "/** The languages that have a table of words, each by its own name. @type {{Record<string, string>}} */\n\
         export const LANGUAGES = {names};\n"
    ))
}

/// Checks that the core's messages are filled with what their texts ask for, and that every table has the texts of the
/// first. For the page's own texts the type check says so.
///
/// # Errors
/// When a file can't be read, or a table is not in the syntax of Fluent.
pub fn check(project: &Project) -> Result<Tally> {
    let table = table(project, FIRST)?;
    let said = messages::said(project)?;
    let slips: Vec<String> = said.iter().filter_map(|message| slip(&table, message)).collect();
    for slip in &slips {
        println!("FAILED: {slip}");
    }
    let mut differences = Vec::new();
    for language in languages(project)?.iter().filter(|language| *language != FIRST) {
        let other = self::table(project, language)?;
        differences
            .extend(unlike(&table, &other).into_iter().map(|told| format!("{}: {told}", file(language))));
    }
    for told in &differences {
        println!("FAILED: {told}");
    }
    let passed = slips.is_empty() && differences.is_empty();
    if passed {
        println!("passed: each message of the core finds its text, and each language has every text");
    }
    Ok(Tally::one(passed))
}

/// Checks that every text of the first table is said: by the scripts, as their type check lists what they say, an
/// identifier a line; by the HTML of page and help; or by the core.
///
/// # Errors
/// When a file can't be read, or the table is not in the syntax of Fluent.
pub fn each_is_said(project: &Project, by_scripts: &str) -> Result<Tally> {
    let mut html = String::new();
    for file in files_below(&project.page())? {
        if file.extension().is_some_and(|extension| extension == "html") {
            html +=
                &fs::read_to_string(&file).with_context(|| format!("could not read {}", file.display()))?;
        }
    }
    let said = messages::said(project)?;
    let by_core = said.iter().map(|message| message.id.as_str());
    let all: BTreeSet<&str> = by_core.chain(by_scripts.lines()).chain(in_html(&html)).chain([NAME]).collect();
    let table = table(project, FIRST)?;
    let unsaid: Vec<&String> = table.keys().filter(|id| !all.contains(id.as_str())).collect();
    for id in &unsaid {
        println!("FAILED: nothing says the text “{id}” of words/{FIRST}.ftl");
    }
    if unsaid.is_empty() {
        println!("passed: every text of words/{FIRST}.ftl is said");
    }
    Ok(Tally::one(unsaid.is_empty()))
}

/// The texts that HTML names, in `data-words` and `data-label-words`.
fn in_html(html: &str) -> impl Iterator<Item = &str> {
    html.split("words=\"").skip(1).filter_map(|rest| Some(rest.split_once('"')?.0))
}

/// What a table lacks, has beyond the first language's, or fills with something else.
fn unlike(first: &Texts, other: &Texts) -> Vec<String> {
    let lacking =
        first.keys().filter(|id| !other.contains_key(*id)).map(|id| format!("lacks the text “{id}”"));
    let changed = other.iter().filter_map(|(id, values)| match first.get(id) {
        None => Some(format!("has the text “{id}”, which {FIRST}.ftl has not")),
        Some(asked) if asked != values => Some(format!(
            "the text “{id}” asks for {}, and for {} in {FIRST}.ftl",
            listed(values),
            listed(asked)
        )),
        Some(_) => None,
    });
    lacking.chain(changed).collect()
}

/// What is wrong with a message of the core.
fn slip(table: &Texts, message: &Said) -> Option<String> {
    let Said { file, id, values } = message;
    let Some(asked) = table.get(id) else {
        return Some(format!("{}: words/{FIRST}.ftl has no text “{id}”", file.display()));
    };
    (asked != values).then(|| {
        let (asked, given) = (listed(asked), listed(values));
        format!("{}: the text “{id}” asks for {asked}, and is given {given}", file.display())
    })
}

fn listed(names: &BTreeSet<String>) -> String {
    if names.is_empty() { "nothing".to_owned() } else { names.iter().cloned().collect::<Vec<_>>().join(", ") }
}

/// The languages that have a table, in the order of their names.
///
/// # Errors
/// When the folder can't be read.
pub fn languages(project: &Project) -> Result<Vec<String>> {
    stems_below(&project.page().join("words"), "ftl")
}

/// The language to which a file of the page belongs, by its path: the name of a table or a help page, or the start of a
/// picture's, two letters (ISO 639-1). Nothing where all languages need it.
pub fn language_of(path: &Path) -> Option<&str> {
    let of_language =
        ["ftl", "html", "webp"].iter().any(|end| path.extension().is_some_and(|its| its == *end));
    let inside = ["words", "help"].iter().any(|folder| path.starts_with(folder));
    let (language, _) = path.file_stem()?.to_str().map(|stem| stem.split_once('-').unwrap_or((stem, "")))?;
    Some(language).filter(|language| inside && of_language && language.len() == 2)
}

/// The texts of a language's table that are filled with nothing, by their identifiers.
///
/// # Errors
/// When the table can't be read.
pub fn plain(project: &Project, language: &str) -> Result<BTreeMap<String, String>> {
    let path = project.page().join(file(language));
    let text = fs::read_to_string(&path).with_context(|| format!("could not read {}", path.display()))?;
    let Ok(resource) = parser::parse(text.as_str()) else { bail!("{} can't be read", path.display()) };
    let messages = resource.body.iter().filter_map(|entry| match entry {
        Entry::Message(message) => Some((message.id.name.to_owned(), plainly(message.value.as_ref()?)?)),
        _ => None,
    });
    Ok(messages.collect())
}

/// A pattern that is filled with nothing, as a text.
fn plainly(pattern: &Pattern<&str>) -> Option<String> {
    let texts = pattern.elements.iter().map(|element| match element {
        PatternElement::TextElement { value } => Some(*value),
        PatternElement::Placeable { .. } => None,
    });
    texts.collect()
}

/// A language's table as a visit loads it: without what is said to those who write in it.
pub struct Packed {
    /// What the page may say before all its scripts have come.
    pub first: String,
    /// What only later scripts say.
    pub late: String,
}

/// What is said nowhere but here is told by later scripts alone, which come with these texts: in what leaves the page, and in
/// sections that come once it is open.
const LATER: [&str; 14] = [
    "crate/src/report",
    "crate/src/bundle",
    "crate/src/plan",
    "crate/src/view/plan",
    "crate/src/view/budget.rs",
    "crate/src/view/cautions.rs",
    "crate/src/view/checks.rs",
    "crate/src/view/evidence.rs",
    "crate/src/view/result.rs",
    "crate/src/view/row_work.rs",
    "crate/src/view/trials.rs",
    "crate/src/notebook/merge.rs",
    "crate/evidence/src/photo/propose.rs",
    "crate/worker/src",
];

/// Each language's table as a visit loads it, parted by what `at_once` says: the scripts loaded before the page is ready,
/// and its HTML. What else the core says may be said at any time.
///
/// # Errors
/// When a table or a source of the core can't be read.
pub fn packed(project: &Project, at_once: &str) -> Result<Vec<(String, Packed)>> {
    let mut late: BTreeSet<String> = unnamed(&table(project, FIRST)?, at_once).into_iter().collect();
    let is_later = |said: &messages::Said| LATER.iter().any(|place| said.file.starts_with(place));
    for message in messages::said(project)?.into_iter().filter(|said| !is_later(said)) {
        late.remove(&message.id);
    }
    let part = |language: &str, is_late: bool| {
        let path = project.page().join(file(language));
        let text = fs::read_to_string(&path).with_context(|| format!("could not read {}", path.display()))?;
        let Ok(mut resource) = parser::parse(text.as_str()) else {
            bail!("{} can't be read", path.display())
        };
        resource.body.retain(|entry| match entry {
            Entry::Message(message) => late.contains(message.id.name) == is_late,
            Entry::Term(_) => !is_late,
            _ => false,
        });
        Ok(serializer::serialize(&resource))
    };
    let languages = languages(project)?.into_iter();
    languages
        .map(|language| {
            let packed = Packed { first: part(&language, false)?, late: part(&language, true)? };
            Ok((language, packed))
        })
        .collect()
}

/// Each language's whole table, as the one file holds them: that of the [`FIRST`] as it is, of the others the texts in its
/// order, each from its `=` on. The names are the same in all, and take a fifth of a table's room.
///
/// # Errors
/// When a table lacks a text of the first.
pub fn in_one_order(tables: &[(String, String)]) -> Result<Vec<(String, String)>> {
    let first = tables.iter().find(|(language, _)| language == FIRST);
    let (_, first) = first.with_context(|| format!("there is no table “{FIRST}”"))?;
    let order = by_name(first);
    let mut all = Vec::new();
    for (language, table) in tables {
        let held = if language == FIRST {
            table.clone()
        } else {
            nameless(table, &order).with_context(|| format!("in {}", file(language)))?
        };
        all.push((language.clone(), held));
    }
    Ok(all)
}

/// The texts of a table in an order, without their names.
fn nameless(table: &str, order: &[(&str, String)]) -> Result<String> {
    let texts: BTreeMap<&str, String> = by_name(table).into_iter().collect();
    let mut all = String::new();
    for (name, _) in order {
        all.push_str(texts.get(name).with_context(|| format!("it lacks “{name}”"))?);
    }
    Ok(all)
}

/// The messages of a table as it is packed, each by its name, from its `=` on: there names alone stand at the beginning of a
/// line.
fn by_name(table: &str) -> Vec<(&str, String)> {
    let mut all: Vec<(&str, String)> = Vec::new();
    for line in table.lines() {
        match line.split_once(" =").filter(|(name, _)| !name.starts_with(' ')) {
            Some((name, text)) => all.push((name, format!("={text}\n"))),
            None => {
                if let Some((_, message)) = all.last_mut() {
                    message.push_str(line);
                    message.push('\n');
                }
            }
        }
    }
    all
}

/// The file of what only later scripts say, beside the page.
pub fn late_file(language: &str) -> String {
    format!("words/{language}-late.ftl")
}

/// The file of a language's table, beside the page.
pub fn file(language: &str) -> String {
    format!("words/{language}.ftl")
}

fn table(project: &Project, language: &str) -> Result<Texts> {
    let path = project.page().join(file(language));
    let text = fs::read_to_string(&path).with_context(|| format!("could not read {}", path.display()))?;
    read(&text).with_context(|| format!("in {}", path.display()))
}

/// Reads a table.
fn read(text: &str) -> Result<Texts> {
    let resource = match parser::parse(text) {
        Ok(resource) => resource,
        Err((_, errors)) => {
            let Some(error) = errors.first() else { bail!("the table can't be read") };
            let line = text.get(..error.pos.start).unwrap_or_default().lines().count();
            bail!("line {line}: {error}")
        }
    };
    let mut table = Texts::new();
    for entry in resource.body {
        let Entry::Message(message) = entry else { continue };
        let id = message.id.name.to_owned();
        let mut values = BTreeSet::new();
        if let Some(pattern) = &message.value {
            gather(pattern, &mut values);
        }
        if table.insert(id.clone(), values).is_some() {
            bail!("the text “{id}” stands there twice");
        }
    }
    Ok(table)
}

/// The names of the values that a text asks for.
fn gather(pattern: &Pattern<&str>, values: &mut BTreeSet<String>) {
    for element in &pattern.elements {
        let PatternElement::Placeable { expression } = element else { continue };
        let (Expression::Inline(inline) | Expression::Select { selector: inline, .. }) = expression;
        if let InlineExpression::VariableReference { id } = inline {
            values.insert(id.name.to_owned());
        }
        if let Expression::Select { variants, .. } = expression {
            for variant in variants {
                gather(&variant.value, values);
            }
        }
    }
}

/// The texts of a table that a source names neither whole nor by a template such as `` `rails-fields-${field}` ``, which
/// is taken to name all that begin and end like it: a bundled script tells no types.
fn unnamed(table: &Texts, source: &str) -> Vec<String> {
    let named: BTreeSet<&str> = source.split(['\'', '"', '`']).collect();
    let templates: Vec<(&str, &str)> = named
        .iter()
        .filter_map(|text| {
            let (start, rest) = text.split_once("${")?;
            Some((start, rest.rsplit_once('}')?.1))
        })
        .filter(|(start, _)| start.contains('-'))
        .collect();
    let is_named = |id: &str| {
        named.contains(id) || templates.iter().any(|(start, end)| id.starts_with(start) && id.ends_with(end))
    };
    table.keys().filter(|id| !is_named(id)).cloned().collect()
}

#[cfg(test)]
#[path = "words_test.rs"]
mod tests;
