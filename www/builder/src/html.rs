//! The few elements of the page's HTML that the one file replaces: links, scripts, metas, images. The page is our own
//! and written plainly (attributes quoted or bare, comments closed), so that tags can be found by their names.

use std::collections::BTreeSet;

use anyhow::{Context, Result};

/// A tag, and for a script the whole element.
#[derive(Debug, PartialEq)]
pub struct Element<'a> {
    /// `link`, `script`, `meta` or `img`.
    pub name: &'a str,
    /// The whole of it, as it is written.
    pub whole: &'a str,
    attributes: &'a str,
}

impl Element<'_> {
    /// The value of an attribute; empty when it has none.
    pub fn attribute(&self, name: &str) -> Option<&str> {
        let mut rest = self.attributes.trim_start();
        while !rest.is_empty() {
            let end = rest.find(|c: char| c == '=' || c.is_whitespace()).unwrap_or(rest.len());
            let (key, after) = rest.split_at(end);
            let (value, after) = match after.trim_start().strip_prefix('=') {
                Some(after) => value(after.trim_start()),
                None => ("", after),
            };
            if key.eq_ignore_ascii_case(name) {
                return Some(value);
            }
            rest = after.trim_start();
        }
        None
    }
}

/// An attribute's value at the start of a text, and what follows it.
fn value(text: &str) -> (&str, &str) {
    for quote in ['"', '\''] {
        if let Some((value, after)) = text.strip_prefix(quote).and_then(|inside| inside.split_once(quote)) {
            return (value, after);
        }
    }
    text.split_at(text.find(char::is_whitespace).unwrap_or(text.len()))
}

/// Rewrites a page: each link, script, meta and image becomes what `replace` gives for it, or stays where that is
/// nothing. Comments are dropped.
///
/// # Errors
/// When a tag or comment is not closed, or `replace` refuses an element.
pub fn rewrite(
    html: &str,
    mut replace: impl FnMut(&Element<'_>) -> Result<Option<String>>,
) -> Result<String> {
    let mut out = String::with_capacity(html.len());
    let mut rest = html;
    while let Some(at) = rest.find('<') {
        let (before, tag) = rest.split_at(at);
        out.push_str(before);
        if tag.starts_with("<!--") {
            rest = after(tag, "-->")?;
            continue;
        }
        let Some(name) = ["link", "script", "meta", "img"].into_iter().find(|name| is_tag(tag, name)) else {
            out.push('<');
            rest = tag.get(1..).unwrap_or_default();
            continue;
        };
        let behind = after(tag, if name == "script" { "</script>" } else { ">" })?;
        let whole = tag.get(..tag.len() - behind.len()).unwrap_or_default();
        let attributes =
            whole.get(1 + name.len()..).and_then(|rest| rest.split('>').next()).unwrap_or_default();
        let element = Element { name, whole, attributes: attributes.trim_end_matches('/') };
        out.push_str(replace(&element)?.as_deref().unwrap_or(whole));
        rest = behind;
    }
    out.push_str(rest);
    Ok(out)
}

/// A page without comments and without the blanks that begin its lines.
///
/// # Errors
/// When a tag or comment is not closed.
pub fn compact(html: &str) -> Result<String> {
    let bare = rewrite(html, |_| Ok(None))?;
    let lines: Vec<&str> = bare.lines().map(str::trim).filter(|line| !line.is_empty()).collect();
    Ok(lines.join("\n"))
}

/// A page that asks for these scripts at once, where a browser would find them only in the one that imports them.
///
/// # Errors
/// When it has no end of its head.
pub fn preloading(html: &str, scripts: &BTreeSet<String>) -> Result<String> {
    let (head, rest) = html.split_once("</head>").context("the page has no </head>")?;
    let links = scripts.iter().map(|script| format!("<link rel=\"modulepreload\" href=\"{script}\">\n"));
    Ok(format!("{head}{}</head>{rest}", links.collect::<Vec<_>>().concat()))
}

/// What follows the first end mark in a text.
fn after<'a>(text: &'a str, end: &str) -> Result<&'a str> {
    let (_, behind) = text
        .split_once(end)
        .with_context(|| format!("{:?} is not closed by {end}", text.lines().next().unwrap_or(text)))?;
    Ok(behind)
}

fn is_tag(text: &str, name: &str) -> bool {
    let rest = text.get(1..).and_then(|rest| rest.strip_prefix(name));
    rest.is_some_and(|rest| rest.starts_with(|c: char| c.is_whitespace() || c == '>' || c == '/'))
}

#[cfg(test)]
#[path = "html_test.rs"]
mod tests;
