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

/// Every message of the core, those of its tests aside.
///
/// # Errors
/// When a file can't be read.
pub fn said(project: &Project) -> Result<Vec<Said>> {
    let mut all = Vec::new();
    for file in files_below(&project.root.join("crate/src"))? {
        let is_rust = file.extension().is_some_and(|end| end == "rs");
        let is_test = file.file_stem().is_some_and(|name| name.to_string_lossy().ends_with("_test"));
        if is_rust && !is_test {
            let text =
                fs::read_to_string(&file).with_context(|| format!("could not read {}", file.display()))?;
            let messages = messages(&text).with_context(|| format!("in {}", file.display()))?;
            let file = file.strip_prefix(&project.root).unwrap_or(&file);
            all.extend(messages.into_iter().map(|(id, values)| Said { file: file.to_owned(), id, values }));
        }
    }
    Ok(all)
}

/// The messages of a source: identifiers, and the names of values.
fn messages(source: &str) -> Result<Vec<(String, BTreeSet<String>)>> {
    let tokens: TokenStream = source.parse().map_err(|error| anyhow!("it is no Rust: {error}"))?;
    let mut found = Vec::new();
    gather(tokens, &mut found);
    Ok(found)
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
