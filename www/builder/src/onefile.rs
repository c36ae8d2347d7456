//! The whole notebook as one HTML file that works from a double click: styles, modules, wasm and demo inside,
//! under a content security policy that lets nothing else in.
//!
//! The file first sets what the page would else fetch, as properties of `globalThis`: its script, each wasm, each worker's
//! script and the demo notebook of each language, after gzip, in digits of 13 bits to a pair. A few lines then unpack the
//! page's script and run it; the policy names it by the hash of what is unpacked. The help pages come so too, their styles
//! and pictures inside; they are opened under the file's own policy (HTML Standard, 7.1.7: a blob's document has that of the
//! page that made it).
//! Sources: Content Security Policy Level 3 (hashes, `wasm-unsafe-eval`); RFC 4648 section 4 (base64);
//! RFC 2397 (data URLs); RFC 1952 (gzip).

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

use anyhow::{Context, Result, bail};
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use sha2::{Digest, Sha256};
use zopfli::{Format, Options};

use crate::{help, html, words};

/// What the page's policy is called in its HTML.
const POLICY: &str = "Content-Security-Policy";
/// Under what name the page's script is handed to the one that runs it.
const PAGE: &str = "SLOPE_PAGE";
/// Under what name the page's script is handed the style that it puts in later.
const LATE: &str = "SLOPE_LATE_STYLE";
/// The digits in which bytes stand, as `www/page/packed.js` reads them: what ASCII can print but the space and what means
/// something in a JavaScript string or could end its script (`"`, `\`, `<`).
const DIGITS: &[u8; 91] =
    b"!#$%&'()*+,-./0123456789:;=>?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[]^_`abcdefghijklmnopqrstuvwxyz{|}~";
/// Bits that a pair of digits holds: 2¹³ is just below 91².
const PAIR: usize = 13;
/// Stands for the policy until the hashes of all scripts and styles are known.
const PLACE: &str = "<!-- policy -->";

/// The scripts of the file.
pub struct Scripts {
    /// The page's own.
    pub page: String,
    /// Unpacks it and runs it.
    pub start: String,
}

/// What the file hands its scripts.
pub enum Handed {
    /// Bytes, after gzip, in digits.
    Bytes(Vec<u8>),
    /// Texts by their names, each after gzip, in digits.
    Texts(Vec<(String, String)>),
}

/// A help page as one text.
pub struct Help {
    /// Its HTML.
    pub html: String,
    /// Its style, which the file's policy must let in.
    pub style: String,
    /// The pictures that it has in common with other languages, as data URLs (RFC 2397), by how it names them: they are put in
    /// where it is opened, so that the file holds them once.
    pub shared: BTreeMap<String, String>,
}

/// A help page with its style and the pictures of its language inside, and without a policy of its own.
///
/// # Errors
/// When something it names is missing, or can't be inlined.
pub fn help(folder: &Path, name: &str) -> Result<Help> {
    let read = |name: &str| {
        let path = folder.join(name);
        fs::read(&path).with_context(|| format!("could not read {}", path.display()))
    };
    let mut style = String::new();
    let mut shared = BTreeMap::new();
    let page = String::from_utf8(read(name)?)?;
    let html = html::rewrite(&page, |element| match element.name {
        "meta" => Ok(is_policy(element).then(String::new)),
        "link" if element.attribute("rel") == Some("icon") => Ok(Some(String::new())),
        "link" => {
            style = String::from_utf8(read(element.attribute("href").context("a link has no href")?)?)?;
            Ok(Some(format!("<style>{style}</style>")))
        }
        "img" => {
            let source = element.attribute("src").context("an image has no src")?;
            // The page is packed before its pictures are first taken.
            if !folder.join(source).is_file() {
                return Ok(None);
            }
            let data = format!("data:image/webp;base64,{}", STANDARD.encode(read(source)?));
            if words::language_of(&Path::new(help::FOLDER).join(source)).is_none() {
                shared.insert(source.to_owned(), data);
                return Ok(None);
            }
            Ok(Some(element.whole.replacen(source, &data, 1)))
        }
        other => bail!("it has an element {other}"),
    })
    .with_context(|| format!("in {name}"))?;
    Ok(Help { html, style, shared })
}

/// Makes the one file from a folder that holds the packed page; what is handed goes by the names given, `scripts` take the
/// place of the page's own, and the policy lets in the styles of the help too.
///
/// # Errors
/// When a file of the page is missing, or holds something that can't be inlined; the message names it.
pub fn make(
    folder: &Path,
    handed: &[(&str, Handed)],
    scripts: &Scripts,
    styles_of_help: &BTreeSet<String>,
) -> Result<String> {
    let mut set = handed.iter().map(|(name, what)| prelude(name, what)).collect::<Result<String>>()?;
    set += &prelude(PAGE, &Handed::Bytes(scripts.page.clone().into_bytes()))?;
    let styles = styles_of_help.iter().map(|style| hash(style)).collect();
    let mut parts =
        Parts { folder, prelude: Some(set), late: String::new(), scripts, hashes: vec![], styles };
    let page = parts.read("index.html")?;
    let page = html::rewrite(&page, |element| parts.inline(element)).context("in index.html")?;
    if parts.prelude.is_some() {
        bail!("index.html has no <script type=\"module\" src=…>");
    }
    let head = page.find("<head>").context("index.html has no <head>")? + "<head>".len();
    let (start, rest) = page.split_at(head);
    // The encoding has to be told before the parser has read far.
    Ok(format!("{start}\n<meta charset=\"utf-8\">\n{PLACE}{rest}").replacen(PLACE, &parts.policy(), 1))
}

/// The line of script that hands one thing.
fn prelude(name: &str, what: &Handed) -> Result<String> {
    let value = match what {
        Handed::Bytes(bytes) => packed(bytes)?,
        Handed::Texts(texts) => {
            let pair = |(name, text): &(String, String)| {
                Ok(format!("{}:{}", literal(name), packed(text.as_bytes())?))
            };
            format!("{{{}}}", texts.iter().map(pair).collect::<Result<Vec<_>>>()?.join(","))
        }
    };
    Ok(format!("globalThis.{name}={value};\n"))
}

/// Bytes after gzip, in digits, as a JavaScript string literal. Packed as tightly as the format allows: the file is made once
/// and handed on by mail and stick.
fn packed(bytes: &[u8]) -> Result<String> {
    let mut tight = Vec::new();
    zopfli::compress(Options::default(), Format::Gzip, bytes, &mut tight)?;
    Ok(format!("\"{}\"", in_digits(&tight)))
}

/// Bytes as digits: 13 bits, lowest first, to a pair with the lower digit first; of what is left at the end, up to 6 bits to
/// one digit.
fn in_digits(bytes: &[u8]) -> String {
    let mut text = String::new();
    let (mut held, mut bits) = (0, 0);
    for byte in bytes {
        held |= usize::from(*byte) << bits;
        bits += 8;
        if bits >= PAIR {
            let pair = held % (1 << PAIR);
            text.extend([DIGITS[pair % DIGITS.len()], DIGITS[pair / DIGITS.len()]].map(char::from));
            held >>= PAIR;
            bits -= PAIR;
        }
    }
    if bits > 0 {
        text.push(DIGITS[held % DIGITS.len()].into());
    }
    if bits > PAIR / 2 {
        text.push(DIGITS[held / DIGITS.len()].into());
    }
    text
}

/// A text as a JavaScript string literal that can stand inside an HTML page.
fn literal(text: &str) -> String {
    serde_json::Value::from(text).to_string().replace('<', "\\u003C")
}

struct Parts<'a> {
    folder: &'a Path,
    /// Set before the page's modules run; taken when they are inlined.
    prelude: Option<String>,
    /// What stands in the place of the page's script.
    scripts: &'a Scripts,
    /// What comes later, set with it.
    late: String,
    /// Hashes of all that may run.
    hashes: Vec<String>,
    /// Hashes of the styles.
    styles: Vec<String>,
}

impl Parts<'_> {
    fn inline(&mut self, element: &html::Element<'_>) -> Result<Option<String>> {
        match element.name {
            "meta" => Ok(self.without(element)),
            "link" => self.link(element),
            _ => self.script(element).map(Some),
        }
    }

    /// The page's own policy and encoding go: the one file states both itself.
    #[expect(clippy::unused_self, reason = "stands beside link and script")]
    fn without(&self, meta: &html::Element<'_>) -> Option<String> {
        (is_policy(meta) || meta.attribute("charset").is_some()).then(String::new)
    }

    fn link(&mut self, link: &html::Element<'_>) -> Result<Option<String>> {
        let href = link.attribute("href").context("a link has no href")?;
        match link.attribute("rel").unwrap_or_default() {
            "stylesheet" => {
                let style = self.read(href)?;
                if style.contains("@import") || style.to_lowercase().contains("</style") {
                    bail!("{href} has an @import or a </style, which can't be inlined");
                }
                self.styles.push(hash(&style));
                // One that is disabled comes later, and may come packed.
                if link.attribute("disabled").is_some() {
                    self.late += &prelude(LATE, &Handed::Bytes(style.into_bytes()))?;
                    return Ok(Some(String::new()));
                }
                Ok(Some(format!("<style>{style}</style>")))
            }
            "icon" if href.starts_with("data:") => Ok(None),
            "icon" if Path::new(href).extension().is_some_and(|end| end == "svg") => {
                let icon = STANDARD.encode(self.read(href)?);
                Ok(Some(format!("<link rel=\"icon\" href=\"data:image/svg+xml;base64,{icon}\">")))
            }
            // Hints to fetch early, and what only a served page can use.
            "modulepreload" | "preload" | "manifest" => Ok(Some(String::new())),
            other => bail!("a link of the kind {other:?} can't be inlined"),
        }
    }

    fn script(&mut self, element: &html::Element<'_>) -> Result<String> {
        let source = element.attribute("src").context("a script has no src: the page's scripts are files")?;
        // One that only begins sooner is a module of the page's own script.
        if element.attribute("async").is_some() {
            return Ok(String::new());
        }
        if element.attribute("type") != Some("module") {
            bail!("{source} is not loaded as a module");
        }
        let prelude =
            self.prelude.take().with_context(|| format!("{source} is a second script; one is enough"))?
                + &self.late;
        let Scripts { page, start } = self.scripts;
        // The bundler writes neither in a string; HTML would end the script at the one, and not see its end after the other.
        if start.to_lowercase().contains("</script") || start.contains("<!--") {
            bail!("the script that starts the page has a </script or a <!--, which can't be inlined");
        }
        self.hashes.extend([hash(&prelude), hash(start), hash(page)]);
        Ok(format!("<script>{prelude}</script>\n<script type=\"module\">{start}</script>"))
    }

    fn read(&self, name: &str) -> Result<String> {
        let path = self.folder.join(name);
        let text = fs::read_to_string(&path).with_context(|| format!("could not read {}", path.display()))?;
        Ok(text.replace("\r\n", "\n"))
    }

    /// The policy: what stands in the file may run, and nothing else.
    fn policy(&self) -> String {
        let (scripts, styles) = (self.hashes.join(" "), self.styles.join(" "));
        format!(
            "<meta http-equiv=\"{POLICY}\" content=\"default-src 'none'; script-src {scripts} 'wasm-unsafe-eval'; \
             worker-src blob:; style-src {styles}; img-src data: blob:; media-src blob:; base-uri 'none'; form-action 'none'\">"
        )
    }
}

fn is_policy(meta: &html::Element<'_>) -> bool {
    meta.attribute("http-equiv").is_some_and(|name| name.eq_ignore_ascii_case(POLICY))
}

/// A script's or style's hash as the policy writes it.
fn hash(text: &str) -> String {
    format!("'sha256-{}'", STANDARD.encode(Sha256::digest(text)))
}

#[cfg(test)]
#[path = "onefile_test.rs"]
mod tests;
