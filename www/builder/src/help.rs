//! The help pages, `www/page/help/`, one document a language: that they belong together and that what they name exists.
//!
//! They are written so that they are well-formed as XML too (HTML Standard, section 14), and are read as that.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

use anyhow::{Context, Result};
use roxmltree::{Document, Node, ParsingOptions};

use crate::files::stems_below;
use crate::project::Project;
use crate::summary::Tally;
use crate::words;

/// The folder of the help, beside the page.
pub const FOLDER: &str = "help";

/// What a language's help is called in its folder.
pub fn name(language: &str) -> String {
    format!("{language}.html")
}

/// The file of a language's help, beside the page.
fn file(language: &str) -> String {
    format!("{FOLDER}/{}", name(language))
}

/// Checks that every language that has a table of words has a help, and each help.
///
/// # Errors
/// When a document can't be read, or is not well-formed.
pub fn check(project: &Project) -> Result<Tally> {
    let tables = words::languages(project)?;
    let helps = stems_below(&project.page().join(FOLDER), "html")?;
    let unpaired = unpaired(&tables, &helps);
    for told in &unpaired {
        println!("FAILED: {told}");
    }
    if unpaired.is_empty() {
        println!("passed: each language has words and help");
    }
    let mut sum = Tally::one(unpaired.is_empty());
    for language in tables.iter().filter(|language| helps.contains(language)) {
        let faults = faults(project, language)?;
        for fault in &faults {
            println!("FAILED: {}: {fault}", file(language));
        }
        if faults.is_empty() {
            println!("passed: {} cites the page as it is, and leads nowhere else", file(language));
        }
        sum += Tally::one(faults.is_empty());
    }
    Ok(sum)
}

/// What is missing of languages that have a table of words and no help, or a help and no table.
fn unpaired(tables: &[String], helps: &[String]) -> Vec<String> {
    let lacking = tables.iter().filter(|language| !helps.contains(language));
    let extra = helps.iter().filter(|language| !tables.contains(language));
    let lacking = lacking.map(|language| format!("{} has no {}", words::file(language), file(language)));
    lacking
        .chain(extra.map(|language| format!("{} has no {}", file(language), words::file(language))))
        .collect()
}

/// What is wrong with the help in a language: labels that the page does not have so, links into nowhere, pictures that are
/// missing, sections or terms that the first language has and this one has not.
fn faults(project: &Project, language: &str) -> Result<Vec<String>> {
    let text = read(project, language)?;
    let help = parsed(&text, language)?;
    let original = read(project, words::FIRST)?;
    let original = parsed(&original, words::FIRST)?;
    let mut faults = labels_unlike(&help, &words::plain(project, language)?);
    faults.extend(links_into_nowhere(&help));
    faults.extend(pictures_unlike(&help, &project.page().join(FOLDER)));
    faults.extend(places_unlike(&help, &original));
    Ok(faults)
}

fn read(project: &Project, language: &str) -> Result<String> {
    let path = project.page().join(file(language));
    fs::read_to_string(&path).with_context(|| format!("could not read {}", path.display()))
}

fn parsed<'a>(text: &'a str, language: &str) -> Result<Document<'a>> {
    let options = ParsingOptions { allow_dtd: true, ..ParsingOptions::default() };
    Document::parse_with_options(text, options).with_context(|| format!("in {}", file(language)))
}

fn elements<'a>(help: &'a Document<'a>) -> impl Iterator<Item = Node<'a, 'a>> {
    help.descendants().filter(Node::is_element)
}

fn identified<'a>(help: &'a Document<'a>) -> Vec<&'a str> {
    elements(help).filter_map(|element| element.attribute("id")).collect()
}

/// Labels cited with the identifier of their text, whose words are not those of the page.
fn labels_unlike(help: &Document<'_>, labels: &BTreeMap<String, String>) -> Vec<String> {
    let cited =
        elements(help).filter_map(|element| Some((element.attribute("data-words")?, element.text()?)));
    cited
        .filter(|(id, text)| labels.get(*id).is_none_or(|label| label != text))
        .map(|(id, text)| match labels.get(id) {
            Some(label) => format!("cites “{text}”, which the page calls “{label}” ({id})"),
            None => format!("cites “{text}” as {id}, and the table has no such text, or one with values"),
        })
        .collect()
}

fn links_into_nowhere(help: &Document<'_>) -> Vec<String> {
    let places: BTreeSet<&str> = identified(help).into_iter().collect();
    let links = elements(help).filter_map(|element| element.attribute("href")?.strip_prefix('#'));
    links.filter(|place| !places.contains(place)).map(|place| format!("a link leads to #{place}")).collect()
}

/// Pictures that are missing, or whose size the document gives otherwise, so that the text below would jump when they come.
fn pictures_unlike(help: &Document<'_>, folder: &Path) -> Vec<String> {
    let pictures = elements(help).filter_map(|element| Some((element, element.attribute("src")?)));
    let faults = pictures.map(|(element, name)| {
        let Ok(picture) = fs::read(folder.join(name)) else {
            return Some(format!("there is no picture {name}"));
        };
        let [width, height] = ["width", "height"].map(|side| element.attribute(side).unwrap_or_default());
        match size_of_webp(&picture) {
            Some([w, h]) if [w.to_string(), h.to_string()] == [width, height] => None,
            Some([w, h]) => Some(format!("gives {name} as {width} × {height}, and it is {w} × {h}")),
            None => Some(format!("{name} is no picture in the extended form of WebP")),
        }
    });
    faults.flatten().collect()
}

/// Width and height of a picture in the extended form of `WebP` (RFC 9649, section 2.7): each less one, in 24 bits.
fn size_of_webp(picture: &[u8]) -> Option<[u32; 2]> {
    let side = |at: usize| match picture.get(at..at + 3) {
        Some(&[low, middle, high]) => Some(u32::from_le_bytes([low, middle, high, 0]) + 1),
        _ => None,
    };
    let is_extended = picture.get(8..16) == Some(b"WEBPVP8X");
    is_extended.then(|| Some([side(24)?, side(27)?]))?
}

/// Places that one of two languages has alone, or in another order.
fn places_unlike(help: &Document<'_>, original: &Document<'_>) -> Vec<String> {
    let (here, there) = (identified(help), identified(original));
    let lacking = there.iter().filter(|place| !here.contains(place)).map(|place| format!("lacks #{place}"));
    let extra = here.iter().filter(|place| !there.contains(place));
    lacking.chain(extra.map(|place| format!("has #{place}, which no other language has"))).collect()
}

#[cfg(test)]
#[path = "help_test.rs"]
mod tests;
