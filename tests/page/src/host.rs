//! A static host of the packed page that can be brought up to date and switched off.

use std::fs;
use std::io::{BufRead as _, BufReader, Write as _};
use std::net::{Ipv4Addr, SocketAddr, TcpListener, TcpStream};
use std::path::Path;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread;

use anyhow::{Context, Result};
use tempfile::TempDir;

/// A host with its own copy of a site.
pub struct Host {
    folder: TempDir,
    address: SocketAddr,
    is_on: Arc<AtomicBool>,
}

impl Host {
    /// Serves a copy of a folder.
    ///
    /// # Errors
    /// When it can't be copied, or no port is free.
    pub fn of(site: &Path) -> Result<Self> {
        let folder = tempfile::Builder::new().prefix("slope-of-light-host-").tempdir()?;
        copy(site, folder.path())?;
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, 0))?;
        let host = Self { address: listener.local_addr()?, is_on: Arc::new(AtomicBool::new(true)), folder };
        let (root, is_on) = (host.folder.path().to_path_buf(), Arc::clone(&host.is_on));
        thread::spawn(move || {
            for stream in listener.incoming().flatten() {
                // Switched off, it takes no request: what has connected is let go.
                if is_on.load(Ordering::SeqCst) {
                    let root = root.clone();
                    thread::spawn(move || drop(answer(stream, &root)));
                }
            }
        });
        Ok(host)
    }

    /// Where it is.
    pub fn address(&self) -> String {
        format!("http://{}/", self.address)
    }

    /// Has it answer nothing from now on.
    pub fn switch_off(&self) {
        self.is_on.store(false, Ordering::SeqCst);
    }

    /// Changes a file of its site.
    ///
    /// # Errors
    /// When there is no such file.
    pub fn change(&self, name: &str, how: impl FnOnce(String) -> String) -> Result<()> {
        let path = self.folder.path().join(name);
        let text = fs::read_to_string(&path).with_context(|| format!("no file {name}"))?;
        Ok(fs::write(path, how(text))?)
    }

    /// Puts a file on its site.
    ///
    /// # Errors
    /// When it can't be written.
    pub fn add(&self, name: &str, bytes: &[u8]) -> Result<()> {
        Ok(fs::write(self.folder.path().join(name), bytes)?)
    }

    /// Takes a file off its site, and gives what it held.
    ///
    /// # Errors
    /// When there is no such file.
    pub fn take_away(&self, name: &str) -> Result<Vec<u8>> {
        let bytes = self.bytes(name)?;
        fs::remove_file(self.folder.path().join(name))?;
        Ok(bytes)
    }

    /// What a file of its site holds.
    ///
    /// # Errors
    /// When there is no such file.
    pub fn bytes(&self, name: &str) -> Result<Vec<u8>> {
        fs::read(self.folder.path().join(name)).with_context(|| format!("no file {name}"))
    }
}

fn copy(from: &Path, to: &Path) -> Result<()> {
    fs::create_dir_all(to)?;
    for entry in fs::read_dir(from)? {
        let path = entry?.path();
        let target = to.join(path.file_name().context("a name")?);
        if path.is_dir() {
            copy(&path, &target)?;
        } else {
            fs::copy(&path, &target)?;
        }
    }
    Ok(())
}

/// Answers one request by HTTP/1.1 (RFC 9112) and hangs up.
fn answer(mut stream: TcpStream, root: &Path) -> Result<()> {
    let mut reader = BufReader::new(stream.try_clone()?);
    let mut first = String::new();
    reader.read_line(&mut first)?;
    let mut line = String::new();
    while reader.read_line(&mut line)? > 2 {
        line.clear();
    }
    let path = first.split(' ').nth(1).context("a request names a path")?;
    let path = path.split('?').next().unwrap_or_default().trim_start_matches('/');
    let file = root.join(if path.is_empty() { "index.html" } else { path });
    let (state, bytes) = match fs::read(&file) {
        Ok(bytes) => ("200 OK", bytes),
        Err(_) => ("404 Not Found", Vec::new()),
    };
    let (kind, length) = (kind(&file), bytes.len());
    write!(
        stream,
        "HTTP/1.1 {state}\r\nContent-Type: {kind}\r\nContent-Length: {length}\r\nCache-Control: no-cache\r\nConnection: close\r\n\r\n"
    )?;
    Ok(stream.write_all(&bytes)?)
}

fn kind(file: &Path) -> &'static str {
    match file.extension().and_then(|end| end.to_str()) {
        Some("html") => "text/html; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("wasm") => "application/wasm",
        Some("svg") => "image/svg+xml",
        Some("webp") => "image/webp",
        _ => "application/octet-stream",
    }
}
