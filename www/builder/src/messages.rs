//! What the Rust source says: every `message!`, with its identifier and the names of the values that it gives.

use std::collections::BTreeSet;
use std::fs;
use std::path::PathBuf;

use anyhow::{Context, Result, anyhow};
use proc_macro2::{TokenStream, TokenTree};

use crate::files::files_below;
use crate::project::Project;

/// One `message!`.
#[derive(Debug, PartialEq)]
pub struct Said {
    /// The file in which it stands.
    pub file: PathBuf,
    /// The identifier of its text.
    pub id: String,
    /// The names of the values that fill it.
    pub values: BTreeSet<String>,
}

/// Where the source of the two wasms stands.
const SOURCES: [&str; 5] =
    ["crate/engine/src", "crate/evidence/src", "crate/archive/src", "crate/worker/src", "crate/src"];

/// A file of Rust source, by its path in the project.
pub struct Source {
    /// The path.
    pub file: PathBuf,
    /// What stands in it.
    pub tokens: TokenStream,
}

/// The source of what runs in the browser, its tests aside.
///
/// # Errors
/// When a file can't be read.
pub fn sources(project: &Project) -> Result<Vec<Source>> {
    let mut all = Vec::new();
    for folder in SOURCES {
        for path in files_below(&project.root.join(folder))? {
            let is_rust = path.extension().is_some_and(|end| end == "rs");
            let is_test = path.file_stem().is_some_and(|name| name.to_string_lossy().ends_with("_test"));
            if is_rust && !is_test {
                let text = fs::read_to_string(&path)
                    .with_context(|| format!("could not read {}", path.display()))?;
                let tokens = tokens(&text).with_context(|| format!("in {}", path.display()))?;
                all.push(Source {
                    file: path.strip_prefix(&project.root).unwrap_or(&path).to_owned(),
                    tokens,
                });
            }
        }
    }
    Ok(all)
}

/// Every message that the two wasms make.
///
/// # Errors
/// When a file can't be read.
pub fn said(project: &Project) -> Result<Vec<Said>> {
    let each = sources(project)?.into_iter().flat_map(|Source { file, tokens }| {
        let mut found = Vec::new();
        gather(tokens, &mut found);
        found.into_iter().map(move |(id, values)| Said { file: file.clone(), id, values })
    });
    Ok(each.collect())
}

/// A source as its tokens.
///
/// # Errors
/// When it is no Rust.
pub fn tokens(source: &str) -> Result<TokenStream> {
    source.parse().map_err(|error| anyhow!("it is no Rust: {error}"))
}

fn gather(tokens: TokenStream, found: &mut Vec<(String, BTreeSet<String>)>) {
    let trees: Vec<TokenTree> = tokens.into_iter().collect();
    for (place, tree) in trees.iter().enumerate() {
        let TokenTree::Group(group) = tree else { continue };
        let before = trees[..place].iter().rev().take(2).map(ToString::to_string).collect::<Vec<_>>();
        if before == ["!", "message"] {
            found.extend(message(&group.stream()));
        }
        gather(group.stream(), found);
    }
}

/// What stands between the brackets of a `message!`; nothing where it is the macro's own definition.
fn message(inside: &TokenStream) -> Option<(String, BTreeSet<String>)> {
    let trees: Vec<TokenTree> = inside.clone().into_iter().collect();
    let TokenTree::Literal(id) = trees.first()? else { return None };
    let names = trees.windows(3).filter_map(|three| match three {
        [TokenTree::Punct(comma), TokenTree::Ident(name), TokenTree::Punct(equals)]
            if comma.as_char() == ',' && equals.as_char() == '=' =>
        {
            Some(name.to_string())
        }
        _ => None,
    });
    Some((id.to_string().trim_matches('"').to_owned(), names.collect()))
}

#[cfg(test)]
#[path = "messages_test.rs"]
mod tests;
