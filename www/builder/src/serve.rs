//! `cargo serve`: the page's source on the loopback address, for this machine alone, compressed as static hosts do.
//!
//! A browser asks for each file again (`no-cache`) and is told when it has not changed (`ETag`), so a reload always shows
//! what is there. Sources: RFC 9110 (conditional requests, content codings), RFC 3986 section 2.1 (percent-encoding).

use std::collections::HashMap;
use std::convert::Infallible;
use std::fs;
use std::net::{Ipv4Addr, SocketAddr, TcpListener};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};
use std::thread;
use std::time::UNIX_EPOCH;

use anyhow::{Context, Result, bail};
use flate2::Compression;
use http_body_util::Full;
use hyper::body::Bytes;
use hyper::header::{
    ACCEPT_ENCODING, CACHE_CONTROL, CONTENT_ENCODING, CONTENT_TYPE, ETAG, HeaderName, IF_NONE_MATCH, VARY,
    X_CONTENT_TYPE_OPTIONS,
};
use hyper::server::conn::http1;
use hyper::service::service_fn;
use hyper::{Method, Request, Response, StatusCode};
use hyper_util::rt::TokioIo;
use tokio::runtime::Builder;

use crate::project::{BORROWED, Build, Project, WASMS};
use crate::{build, files, watch};

/// Where the search for a free port starts.
const FIRST_PORT: u16 = 8731;
/// How many ports are tried.
const PORTS: u16 = 100;
/// A page asks for a few files at a time, and what is read or compressed holds its thread.
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
    bytes: Bytes,
}

impl Site {
    fn of(folders: Vec<(&'static str, PathBuf)>) -> Self {
        Self { folders, compressed: Mutex::default() }
    }

    /// The page's source with each wasm and its glue beside it.
    fn of_source(project: &Project) -> Self {
        let bound = WASMS.iter().map(|wasm| ("", project.bound(wasm, Build::Quick)));
        let source =
            [("", project.page()), ("demo/", project.root.join("demo")), ("", project.made_scripts())];
        let borrowed = BORROWED.iter().map(|scripts| (scripts.folder, project.borrowed(scripts)));
        Self::of(source.into_iter().chain(borrowed).chain(bound).collect())
    }

    fn answer<B>(&self, request: &Request<B>) -> Answer {
        self.answer_with(request)
            .unwrap_or_else(|error| plain(StatusCode::INTERNAL_SERVER_ERROR, &format!("{error:#}\n")))
    }

    fn answer_with<B>(&self, request: &Request<B>) -> Result<Answer> {
        if !matches!(*request.method(), Method::GET | Method::HEAD) {
            return Ok(plain(StatusCode::METHOD_NOT_ALLOWED, "only GET and HEAD\n"));
        }
        let Some((path, bytes, tag)) = self.find(request.uri().path()) else {
            return Ok(plain(StatusCode::NOT_FOUND, "there is no such file\n"));
        };
        let header = |name: HeaderName| request.headers().get(name).and_then(|value| value.to_str().ok());
        let known = header(IF_NONE_MATCH).is_some_and(|known| known == tag);
        let squeezed = header(ACCEPT_ENCODING).is_some_and(|ways| ways.contains("gzip")) && shrinks(&path);
        let headers = [
            (CONTENT_TYPE, media_type(&path)),
            (CACHE_CONTROL, "no-cache"),
            (ETAG, &tag),
            (VARY, "Accept-Encoding"),
            (X_CONTENT_TYPE_OPTIONS, "nosniff"),
            (CONTENT_ENCODING, if squeezed { "gzip" } else { "identity" }),
        ];
        let head =
            headers.into_iter().fold(Response::builder(), |head, (name, value)| head.header(name, value));
        if known {
            return Ok(head.status(StatusCode::NOT_MODIFIED).body(Full::default())?);
        }
        let bytes = if squeezed { self.compressed(path, &bytes, &tag)? } else { bytes.into() };
        Ok(head.body(Full::new(bytes))?)
    }

    /// The file a request is for, what it holds, and the tag of its state.
    fn find(&self, path: &str) -> Option<(PathBuf, Vec<u8>, String)> {
        let path = inside(path)?;
        self.folders.iter().find_map(|(place, folder)| read_inside(folder, path.strip_prefix(place).ok()?))
    }

    /// The bytes of a file after gzip, made once for each of its states.
    fn compressed(&self, path: PathBuf, bytes: &[u8], tag: &str) -> Result<Bytes> {
        // A thread that came to a bad end leaves at most a file that is compressed again.
        let mut known = self.compressed.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(made) = known.get(&path).filter(|made| made.tag == tag) {
            return Ok(made.bytes.clone());
        }
        let bytes = Bytes::from(files::gzipped(bytes, Compression::default())?);
        known.insert(path, Compressed { tag: tag.to_owned(), bytes: bytes.clone() });
        Ok(bytes)
    }
}

/// What a request is answered with.
type Answer = Response<Full<Bytes>>;

fn plain(status: StatusCode, text: &str) -> Answer {
    let mut answer = Response::new(Full::from(text.to_owned()));
    *answer.status_mut() = status;
    answer
}

/// Serves a site in threads of its own, as long as the program runs.
fn start(listener: TcpListener, site: Site) -> Result<SocketAddr> {
    let address = listener.local_addr()?;
    listener.set_nonblocking(true)?;
    let runtime = Builder::new_multi_thread().worker_threads(THREADS).enable_io().build()?;
    let listener = {
        let _within = runtime.enter();
        tokio::net::TcpListener::from_std(listener)?
    };
    thread::spawn(move || runtime.block_on(accept(&listener, &Arc::new(site))));
    Ok(address)
}

async fn accept(listener: &tokio::net::TcpListener, site: &Arc<Site>) {
    loop {
        // A connection that was gone before it was taken is no concern of ours.
        let Ok((stream, _)) = listener.accept().await else { continue };
        let site = Arc::clone(site);
        tokio::spawn(async move {
            let answers = service_fn(|request| {
                let answer = site.answer(&request);
                async { Ok::<_, Infallible>(answer) }
            });
            // Neither is a browser that hangs up before it has its answer.
            drop(http1::Builder::new().serve_connection(TokioIo::new(stream), answers).await);
        });
    }
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
    path.extension().is_some_and(|end| {
        ["html", "js", "css", "json", "ftl", "wasm", "svg"].iter().any(|each| end == *each)
    })
}

/// The path inside the folder that the path of a request names; nothing when it is not a plain path downwards.
fn inside(path: &str) -> Option<PathBuf> {
    let path = decode(path.strip_prefix('/')?)?;
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
        "ftl" => "text/plain; charset=utf-8",
        "wasm" => "application/wasm",
        "svg" => "image/svg+xml",
        "webp" => "image/webp",
        "webmanifest" => "application/manifest+json",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
#[path = "serve_test.rs"]
mod tests;
