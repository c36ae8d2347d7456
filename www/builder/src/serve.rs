//! `cargo serve`: the packed page on the loopback address, for this machine alone.
//!
//! A browser asks for each file again (`no-cache`) and is told when it has not changed (`ETag`), so a reload
//! always shows the last build. Sources: RFC 9110 (conditional requests), RFC 3986 section 2.1 (percent-encoding).

use std::fs::{self, File};
use std::net::{Ipv4Addr, SocketAddr, TcpListener};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::thread;
use std::time::UNIX_EPOCH;

use anyhow::{Context, Result, anyhow, bail};
use tiny_http::{Header, Method, Request, Response, Server, StatusCode};

use crate::pack;
use crate::project::Project;

/// Where the search for a free port starts.
const FIRST_PORT: u16 = 8731;
/// How many ports are tried.
const PORTS: u16 = 100;
/// A page asks for a few files at a time.
const THREADS: usize = 4;

/// `cargo serve [--port N]`: builds, serves, and goes on until it is stopped.
///
/// # Errors
/// When the build fails, or the port is taken.
pub fn command(project: &Project, arguments: &[String]) -> Result<()> {
    let port = asked_port(arguments)?;
    pack::pack(project)?;
    let listener = match port {
        Some(port) => TcpListener::bind((Ipv4Addr::LOCALHOST, port))
            .with_context(|| format!("port {port} can't be had")),
        None => first_free(),
    }?;
    let (address, threads) = start(listener, project.dist())?;
    println!("The notebook is served here until you press Ctrl+C:");
    println!("http://{address}/");
    for thread in threads {
        thread.join().map_err(|_| anyhow!("a thread of the server came to a bad end"))?;
    }
    Ok(())
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
    Ok(start(TcpListener::bind((Ipv4Addr::LOCALHOST, 0))?, folder)?.0)
}

fn start(listener: TcpListener, folder: PathBuf) -> Result<(SocketAddr, Vec<thread::JoinHandle<()>>)> {
    let address = listener.local_addr()?;
    let server = Server::from_listener(listener, None)
        .map_err(|error| anyhow!("the server does not start: {error}"))?;
    let (server, folder) = (Arc::new(server), Arc::new(folder));
    let threads = (0..THREADS).map(|_| {
        let (server, folder) = (Arc::clone(&server), Arc::clone(&folder));
        thread::spawn(move || {
            for request in server.incoming_requests() {
                // A browser that hangs up before it has its answer is no concern of ours.
                let _ = answer(&folder, request);
            }
        })
    });
    Ok((address, threads.collect()))
}

fn answer(folder: &Path, request: Request) -> std::io::Result<()> {
    if !matches!(request.method(), Method::Get | Method::Head) {
        return request.respond(Response::from_string("only GET and HEAD\n").with_status_code(405));
    }
    let Some((path, file, tag)) = find(folder, request.url()) else {
        return request.respond(Response::from_string("there is no such file\n").with_status_code(404));
    };
    let seen =
        request.headers().iter().any(|header| header.field.equiv("If-None-Match") && header.value == *tag);
    let headers = [
        ("Content-Type", media_type(&path)),
        ("Cache-Control", "no-cache"),
        ("ETag", &tag),
        ("X-Content-Type-Options", "nosniff"),
    ];
    let headers = headers.iter().filter_map(|(name, value)| Header::from_bytes(*name, *value).ok());
    if seen {
        let response = Response::empty(StatusCode(304));
        return request.respond(headers.fold(response, Response::with_header));
    }
    request.respond(headers.fold(Response::from_file(file), Response::with_header))
}

/// The file a request is for, and the tag of its state.
fn find(folder: &Path, url: &str) -> Option<(PathBuf, File, String)> {
    let path = folder.join(inside(url)?);
    // A link may lead out where the name does not.
    if !fs::canonicalize(&path).ok()?.starts_with(fs::canonicalize(folder).ok()?) {
        return None;
    }
    let file = File::open(&path).ok()?;
    let facts = file.metadata().ok().filter(fs::Metadata::is_file)?;
    let changed = facts.modified().ok()?.duration_since(UNIX_EPOCH).ok()?.as_nanos();
    Some((path, file, format!("\"{:x}-{changed:x}\"", facts.len())))
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
