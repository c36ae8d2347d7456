//! `cargo serve`: the page's source on the loopback address, for this machine alone, compressed as static hosts do.
//!
//! A browser asks for each file again (`no-cache`) and is told when it has not changed (`ETag`), so a reload always shows
//! what is there. Sources: RFC 9110 (conditional requests, content codings), RFC 3986 section 2.1 (percent-encoding).

use std::collections::HashMap;
use std::fs;
use std::io::Write as _;
use std::net::{Ipv4Addr, SocketAddr, TcpListener};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};
use std::thread;
use std::time::UNIX_EPOCH;

use anyhow::{Context, Result, anyhow, bail};
use flate2::Compression;
use flate2::write::GzEncoder;
use tiny_http::{Header, Method, Request, Response, Server, StatusCode};

use crate::project::{Build, Project, WASMS};
use crate::{build, watch};

/// Where the search for a free port starts.
const FIRST_PORT: u16 = 8731;
/// How many ports are tried.
const PORTS: u16 = 100;
/// A page asks for a few files at a time.
const THREADS: usize = 4;

/// `cargo serve [--port N]`: builds, serves the source as it is, and goes on until it is stopped; what changes of the Rust
/// source is built again.
///
/// # Errors
/// When the build fails, or the port is taken.
pub fn command(project: &Project, arguments: &[String]) -> Result<()> {
    let port = asked_port(arguments)?;
    let state = watch::State::now(project)?;
    build::build(project, Build::Quick)?;
    let listener = match port {
        Some(port) => TcpListener::bind((Ipv4Addr::LOCALHOST, port))
            .with_context(|| format!("port {port} can't be had")),
        None => first_free(),
    }?;
    let address = start(listener, Site::of_source(project))?;
    println!("The notebook is served here until you press Ctrl+C:");
    println!("http://{address}/");
    println!(
        "A change of a script or a style shows with the next reload; a change of the Rust source is built first."
    );
    watch::for_ever(project, state)
}

fn asked_port(arguments: &[String]) -> Result<Option<u16>> {
    match arguments {
        [] => Ok(None),
        [flag, port] if flag == "--port" => {
            port.parse().map(Some).with_context(|| format!("{port:?} is not a port: a number up to 65535"))
        }
        _ => bail!("serve takes nothing but --port N"),
    }
}

fn first_free() -> Result<TcpListener> {
    (FIRST_PORT..FIRST_PORT + PORTS)
        .find_map(|port| TcpListener::bind((Ipv4Addr::LOCALHOST, port)).ok())
        .with_context(|| format!("no port from {FIRST_PORT} on is free; choose one with --port"))
}

/// Serves a folder on any free port, in threads of its own, as long as the program runs.
///
/// # Errors
/// When there is no free port.
pub fn in_background(folder: PathBuf) -> Result<SocketAddr> {
    start(TcpListener::bind((Ipv4Addr::LOCALHOST, 0))?, Site::of(vec![("", folder)]))
}

/// What is served.
struct Site {
    /// Folders, with the folder of the site in which their files appear.
    folders: Vec<(&'static str, PathBuf)>,
    /// What was compressed already, by path.
    compressed: Mutex<HashMap<PathBuf, Compressed>>,
}

/// The bytes of a file after gzip.
struct Compressed {
    /// The tag of the state in which they were made.
    tag: String,
    bytes: Arc<[u8]>,
}

impl Site {
    fn of(folders: Vec<(&'static str, PathBuf)>) -> Self {
        Self { folders, compressed: Mutex::default() }
    }

    /// The page's source with each wasm and its glue beside it.
    fn of_source(project: &Project) -> Self {
        let bound = WASMS.iter().map(|wasm| ("", project.bound(wasm, Build::Quick)));
        let source =
            [("", project.page()), ("demo/", project.root.join("demo")), ("fluent/", project.fluent())];
        Self::of(source.into_iter().chain(bound).collect())
    }

    fn answer(&self, request: Request) -> std::io::Result<()> {
        if !matches!(request.method(), Method::Get | Method::Head) {
            return request.respond(Response::from_string("only GET and HEAD\n").with_status_code(405));
        }
        let Some((path, bytes, tag)) = self.find(request.url()) else {
            return request.respond(Response::from_string("there is no such file\n").with_status_code(404));
        };
        let header = |name: &'static str| {
            request
                .headers()
                .iter()
                .find(|header| header.field.equiv(name))
                .map(|header| header.value.as_str())
        };
        let seen = header("If-None-Match").is_some_and(|known| known == tag);
        let squeezed = header("Accept-Encoding").is_some_and(|ways| ways.contains("gzip")) && shrinks(&path);
        let headers = [
            ("Content-Type", media_type(&path)),
            ("Cache-Control", "no-cache"),
            ("ETag", &tag),
            ("Vary", "Accept-Encoding"),
            ("X-Content-Type-Options", "nosniff"),
            ("Content-Encoding", if squeezed { "gzip" } else { "identity" }),
        ];
        let headers = headers.iter().filter_map(|(name, value)| Header::from_bytes(*name, *value).ok());
        if seen {
            let response = Response::empty(StatusCode(304));
            return request.respond(headers.fold(response, Response::with_header));
        }
        let bytes = if squeezed { self.compressed(path, &bytes, &tag)?.to_vec() } else { bytes };
        request.respond(headers.fold(Response::from_data(bytes), Response::with_header))
    }

    /// The file a request is for, what it holds, and the tag of its state.
    fn find(&self, url: &str) -> Option<(PathBuf, Vec<u8>, String)> {
        let path = inside(url)?;
        self.folders.iter().find_map(|(place, folder)| read_inside(folder, path.strip_prefix(place).ok()?))
    }

    /// The bytes of a file after gzip, made once for each of its states.
    fn compressed(&self, path: PathBuf, bytes: &[u8], tag: &str) -> std::io::Result<Arc<[u8]>> {
        // A thread that came to a bad end leaves at most a file uncompressed.
        let mut known = self.compressed.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(made) = known.get(&path).filter(|made| made.tag == tag) {
            return Ok(Arc::clone(&made.bytes));
        }
        let mut encoder = GzEncoder::new(Vec::new(), Compression::default());
        encoder.write_all(bytes)?;
        let bytes: Arc<[u8]> = encoder.finish()?.into();
        known.insert(path, Compressed { tag: tag.to_owned(), bytes: Arc::clone(&bytes) });
        Ok(bytes)
    }
}

/// Serves a site in threads of its own, as long as the program runs.
fn start(listener: TcpListener, site: Site) -> Result<SocketAddr> {
    let address = listener.local_addr()?;
    let server = Server::from_listener(listener, None)
        .map_err(|error| anyhow!("the server does not start: {error}"))?;
    let (server, site) = (Arc::new(server), Arc::new(site));
    for _ in 0..THREADS {
        let (server, site) = (Arc::clone(&server), Arc::clone(&site));
        thread::spawn(move || {
            for request in server.incoming_requests() {
                // A browser that hangs up before it has its answer is no concern of ours.
                let _ = site.answer(request);
            }
        });
    }
    Ok(address)
}

/// A file of a folder, what it holds, and the tag of its state.
fn read_inside(folder: &Path, path: &Path) -> Option<(PathBuf, Vec<u8>, String)> {
    let path = folder.join(path);
    // A link may lead out where the name does not.
    if !fs::canonicalize(&path).ok()?.starts_with(fs::canonicalize(folder).ok()?) {
        return None;
    }
    let facts = fs::metadata(&path).ok().filter(fs::Metadata::is_file)?;
    let changed = facts.modified().ok()?.duration_since(UNIX_EPOCH).ok()?.as_nanos();
    let bytes = fs::read(&path).ok()?;
    Some((path, bytes, format!("\"{:x}-{changed:x}\"", facts.len())))
}

/// Whether a file becomes smaller by compression; pictures and zips are compressed already.
fn shrinks(path: &Path) -> bool {
    path.extension()
        .is_some_and(|end| ["html", "js", "css", "json", "wasm", "svg"].iter().any(|each| end == *each))
}

/// The path inside the folder that a request names; nothing when it is not a plain path downwards.
fn inside(url: &str) -> Option<PathBuf> {
    let path = decode(url.split(['?', '#']).next()?.strip_prefix('/')?)?;
    let path = if path.is_empty() || path.ends_with('/') { format!("{path}index.html") } else { path };
    let plain = |part: &str| !part.is_empty() && !part.starts_with('.') && !part.contains(['\\', ':', '\0']);
    path.split('/').all(plain).then(|| path.into())
}

/// Undoes percent-encoding.
fn decode(text: &str) -> Option<String> {
    let mut parts = text.split('%');
    let mut bytes = parts.next()?.as_bytes().to_vec();
    for part in parts {
        bytes.push(u8::from_str_radix(part.get(..2)?, 16).ok()?);
        bytes.extend(part.get(2..)?.bytes());
    }
    String::from_utf8(bytes).ok()
}

fn media_type(path: &Path) -> &'static str {
    match path.extension().and_then(|extension| extension.to_str()).unwrap_or_default() {
        "html" => "text/html; charset=utf-8",
        "js" => "text/javascript; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "json" => "application/json",
        "wasm" => "application/wasm",
        "svg" => "image/svg+xml",
        "webmanifest" => "application/manifest+json",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
#[path = "serve_test.rs"]
mod tests;
