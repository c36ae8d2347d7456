//! Words in code: what a person would read stands in the tables of words, so that each text is there once and in every
//! language. This looks for sentences that stand in Rust, in scripts and in the page's HTML instead.
//!
//! A literal counts as prose where two words follow one another, at least one of them in small letters. Left out are tests,
//! attributes, declarations for TypeScript, what is said to those who program (panics), names of classes and selectors, and
//! the places and the literals listed below, each with its reason. What a script throws counts: it may be shown.

use std::fs;
use std::path::Path;

use anyhow::{Context, Result};
use proc_macro2::{Delimiter, TokenStream, TokenTree};

use crate::files::files_below;
use crate::messages::{self, Source};
use crate::project::Project;
use crate::script::{Literal, literals};
use crate::summary::Tally;
use crate::words;

/// Files and folders whose literals nobody reads on the page, and why.
const ALLOWED: [(&str, &str); 9] = [
    ("crate/engine/src/", "a library of numbers: its errors are typed, and the core has messages for them"),
    ("crate/archive/src/", "what exactly a reader of zips met stays in the error; the worker has messages"),
    ("crate/evidence/src/border/declarations.rs", "makes declarations, natively"),
    ("crate/evidence/src/stored/prose.rs", "sentences that the first format stored, read back"),
    ("crate/evidence/src/trace/header.rs", "names of settings in trace files"),
    ("crate/evidence/src/trace/parts.rs", "what serde expects, told to programs"),
    ("crate/src/simulated/", "notes of the invented person who wrote the demo"),
    ("crate/src/words/table.rs", "errors of tables, natively"),
    ("crate/src/notebook/file.rs", "what serde says and what a file calls itself"),
];

/// Literals that look like prose and are none, and why.
const NAMES: [(&str, &str); 9] = [
    ("slope-of-light bundle", "what a file calls itself"),
    ("one more", "an internal name of a rail that is not there"),
    ("system-ui, sans-serif", "names of fonts"),
    ("take over", "what scripts send one another"),
    (" set aside ", "a key of what is stored"),
    ("Slope of Light", "the title of the page before its words are there"),
    ("the page has no element ", "a slip between a script and the page's HTML, told to who programs"),
    ("the table has no text “", "a slip that the type check finds first; no words are at hand then"),
    (" is not of version ", "what a service worker throws, which only the browser's console shows"),
];

/// Macros and methods whose words are for those who program.
const FOR_PROGRAMMERS: [&str; 9] = [
    "panic",
    "unreachable",
    "todo",
    "assert",
    "assert_eq",
    "assert_ne",
    "debug_assert",
    "debug_assert_eq",
    "expect",
];

/// What stands before a literal of a script that nobody reads.
const UNREAD: [&str; 9] = [
    "class:",
    "'class'",
    "className",
    "querySelector",
    "closest(",
    "matches(",
    "import ",
    "toggle(",
    "@type",
];

/// Attributes of HTML that are read out or shown.
const READ_ATTRIBUTES: [&str; 5] = ["aria-label", "title", "alt", "placeholder", "aria-description"];

/// Looks through the sources, and prints each text that belongs into the tables.
///
/// # Errors
/// When a source can't be read.
pub fn check(project: &Project) -> Result<Tally> {
    let mut faults = Vec::new();
    for Source { file, tokens } in messages::sources(project)? {
        if !is_allowed(&file) {
            faults.extend(in_rust(tokens).into_iter().map(|text| (file.clone(), text)));
        }
    }
    for path in files_below(&project.page())? {
        let file = path.strip_prefix(&project.root).unwrap_or(&path).to_owned();
        let ending = path.extension().and_then(|end| end.to_str());
        if path.starts_with(project.page().join("help")) {
            continue;
        }
        let read = || fs::read_to_string(&path).with_context(|| format!("could not read {}", path.display()));
        let found = match ending {
            Some("js") => in_script(&read()?),
            Some("html") => in_html(&read()?),
            _ => continue,
        };
        faults.extend(found.into_iter().map(|text| (file.clone(), text)));
    }
    let page = fs::read_to_string(project.page().join("index.html")).context("could not read index.html")?;
    let languages = words::languages(project)?;
    let silent = without_table(&page, &languages);
    for language in &silent {
        println!("FAILED: index.html does not say in “{language}” that it needs scripts, or could not start");
    }
    for (file, text) in &faults {
        println!("FAILED: {} says {text:?} by itself: it belongs into the tables of words", file.display());
    }
    let sound = faults.is_empty() && silent.is_empty();
    if sound {
        println!("passed: no sentence stands in code, outside the tables of words");
    }
    Ok(Tally::one(sound))
}

fn is_allowed(file: &Path) -> bool {
    let file = file.to_string_lossy();
    ALLOWED.iter().any(|(place, _)| file.starts_with(place))
}

/// The prose of Rust source.
fn in_rust(tokens: TokenStream) -> Vec<String> {
    let mut found = Vec::new();
    gather(tokens, &mut found);
    found
}

fn gather(tokens: TokenStream, found: &mut Vec<String>) {
    let mut before: [String; 2] = Default::default();
    let mut skip_item = false;
    for tree in tokens {
        match &tree {
            TokenTree::Group(group) if group.delimiter() == Delimiter::Bracket && is_attribute(&before) => {
                let inside = group.stream().to_string().replace(' ', "");
                skip_item |= inside.starts_with("cfg(test") || inside.contains("typescript_custom_section");
                // An attribute of thiserror holds the words of an error.
                if inside.starts_with("error(") {
                    gather(group.stream(), found);
                }
            }
            TokenTree::Group(group) => {
                let programmers = FOR_PROGRAMMERS
                    .iter()
                    .any(|name| before[1] == *name || (before[1] == "!" && before[0] == *name));
                if !(programmers || skip_item) {
                    gather(group.stream(), found);
                }
                skip_item &= group.delimiter() != Delimiter::Brace;
            }
            TokenTree::Literal(literal) if !skip_item => {
                let text = literal.to_string();
                if is_prose(&text) && text.contains('"') && !text.starts_with('b') {
                    found.push(text.trim_matches('"').to_owned());
                }
            }
            TokenTree::Punct(punct) if punct.as_char() == ';' => skip_item = false,
            _ => {}
        }
        before = [std::mem::take(&mut before[1]), tree.to_string()];
    }
}

/// Whether what follows is in the brackets of an attribute, `#[…]` or `#![…]`.
fn is_attribute(before: &[String; 2]) -> bool {
    before[1] == "#" || (before[0] == "#" && before[1] == "!")
}

/// The prose of a script.
fn in_script(source: &str) -> Vec<String> {
    let read = literals(source).into_iter().filter(|Literal { line_before, text }| {
        // Its own part of the line, up to the comma or brace before it; and whether it is an attribute's value.
        let mut parts = line_before.rsplit([',', '{']);
        let before = parts.next().unwrap_or_default();
        let is_class = parts.next().is_some_and(|name| name.trim_end().ends_with("'class'"));
        is_prose(text) && !is_class && !UNREAD.iter().any(|unread| before.contains(unread))
    });
    read.map(|literal| literal.text).collect()
}

/// What a person would read in HTML: letters between its tags, and attributes that are read out. A paragraph that names
/// its language is said where no table can be had, and [`without_table`] looks after it.
fn in_html(source: &str) -> Vec<String> {
    let mut found = Vec::new();
    let mut rest = source;
    let mut names_language = false;
    while let Some((text, after)) = rest.split_once('<') {
        let text = text.trim();
        if is_read(text) && !is_named(text) && !names_language {
            found.push(text.to_owned());
        }
        let end = if after.starts_with("!--") { "-->" } else { ">" };
        let (tag, left) = after.split_once(end).unwrap_or((after, ""));
        names_language = tag.starts_with("p lang=");
        for name in READ_ATTRIBUTES {
            let value = tag.split_once(&format!(" {name}=\"")).and_then(|(_, value)| value.split('"').next());
            found.extend(value.filter(|value| is_read(value)).map(str::to_owned));
        }
        // What a script or a style holds is no text.
        rest = ["script", "style"]
            .iter()
            .find(|name| tag.starts_with(**name))
            .and_then(|name| left.split_once(&format!("</{name}>")))
            .map_or(left, |(_, left)| left);
    }
    found
}

/// The languages in which the page does not say what is said where no table can be had: that it needs scripts, and that
/// it could not start.
fn without_table<'a>(page: &str, languages: &'a [String]) -> Vec<&'a String> {
    let said = |start: &str, end: &str, language: &str| {
        let inside = page.split_once(start).and_then(|(_, rest)| rest.split_once(end));
        inside.is_some_and(|(inside, _)| inside.contains(&format!("<p lang=\"{language}\">")))
    };
    let says = |language: &&String| {
        said("<noscript>", "</noscript>", language) && said("id=\"not-started\"", "</div>", language)
    };
    languages.iter().filter(|language| !says(language)).collect()
}

/// Whether there are words in it: a single letter is a symbol.
fn is_read(text: &str) -> bool {
    text.chars().filter(|letter| letter.is_alphabetic()).count() > 1
}

fn is_named(literal: &str) -> bool {
    NAMES.iter().any(|(name, _)| literal.trim_matches('"') == *name)
}

/// Whether two words follow one another, at least one of them in small letters.
fn is_prose(literal: &str) -> bool {
    let text = without(&without(literal, '{', '}'), '<', '>');
    if is_named(literal) || is_citation(literal) {
        return false;
    }
    let words: Vec<&str> = text.split(' ').collect();
    let is_word = |word: &str| {
        let letters = word.trim_matches(|sign: char| ",.;:!?“”\"()".contains(sign));
        letters.chars().count() > 1 && letters.chars().all(|letter| letter.is_alphabetic() || letter == '’')
    };
    let is_small = |word: &str| word.chars().filter(|letter| letter.is_lowercase()).count() > 2;
    words.windows(2).any(|two| two.iter().all(|word| is_word(word)) && two.iter().any(|word| is_small(word)))
}

/// Whether it cites a paper: a year in brackets, with the page behind it.
fn is_citation(text: &str) -> bool {
    text.split('(').skip(1).any(|part| {
        part.split_once(") ").is_some_and(|(year, page)| {
            let is_number = |text: &str| !text.is_empty() && text.bytes().all(|sign| sign.is_ascii_digit());
            year.len() == 4 && is_number(year) && is_number(page.trim_end_matches('"'))
        })
    })
}

/// A text without what stands between two signs.
fn without(text: &str, open: char, close: char) -> String {
    let mut depth = 0_usize;
    let outside = text.chars().filter(|&sign| {
        if sign == open {
            depth += 1;
        } else if sign == close {
            depth = depth.saturating_sub(1);
            return false;
        }
        depth == 0
    });
    outside.collect()
}

#[cfg(test)]
#[path = "prose_test.rs"]
mod tests;
