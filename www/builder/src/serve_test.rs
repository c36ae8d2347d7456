//! The server: which requests name a file of the folder, and what it answers.

#![expect(clippy::unwrap_used, reason = "tests")]

use std::fs;
use std::io::{Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::path::Path;
use std::time::Duration;

use super::{Site, in_background, inside};

#[test]
fn plain_paths_lead_inside() {
    assert_eq!(inside("/").as_deref(), Some(Path::new("index.html")));
    assert_eq!(inside("/demo/a%20b.json").as_deref(), Some(Path::new("demo/a b.json")));
}

#[test]
fn paths_that_climb_are_refused() {
    for url in [
        "/../a",
        "/a/../../b",
        "/%2e%2e/a",
        "/..%2fa",
        "/a%5c..%5cb",
        "//etc/hosts",
        "/%2fetc/hosts",
        "/./a",
        "/c:/a",
        "/a%00",
        "/%",
        "/%zz",
        "/.git/config",
        "a",
    ] {
        assert_eq!(inside(url), None, "{url}");
    }
}

fn ask(address: SocketAddr, head: &str) -> String {
    let mut stream = TcpStream::connect(address).unwrap();
    write!(stream, "{head}\r\nHost: localhost\r\nConnection: close\r\n\r\n").unwrap();
    let mut answer = Vec::new();
    stream.read_to_end(&mut answer).unwrap();
    String::from_utf8_lossy(&answer).into_owned()
}

#[test]
fn answers_name_the_type_and_know_what_has_not_changed() {
    let folder = std::env::temp_dir().join(format!("slope-serve-{}", std::process::id()));
    fs::create_dir_all(&folder).unwrap();
    fs::write(folder.join("a.wasm"), "\0asm").unwrap();
    let address = in_background(folder.clone()).unwrap();
    let first = ask(address, "GET /a.wasm HTTP/1.1");
    assert!(
        first.starts_with("HTTP/1.1 200") && first.contains("application/wasm") && first.contains("no-cache")
    );
    let tag = first.lines().find_map(|line| line.strip_prefix("etag: ")).unwrap();
    assert!(
        ask(address, &format!("GET /a.wasm HTTP/1.1\r\nIf-None-Match: {tag}")).starts_with("HTTP/1.1 304")
    );
    let squeezed = ask(address, "GET /a.wasm HTTP/1.1\r\nAccept-Encoding: gzip, br");
    assert!(squeezed.contains("content-encoding: gzip") && !squeezed.contains("\0asm"), "{squeezed}");
    fs::write(folder.join("a.wasm"), "\0asm, changed").unwrap();
    let changed = ask(address, &format!("GET /a.wasm HTTP/1.1\r\nIf-None-Match: {tag}"));
    assert!(changed.starts_with("HTTP/1.1 200") && changed.ends_with("changed"), "{changed}");
    assert!(ask(address, "GET /a.wasm?open=demo HTTP/1.1").ends_with("changed"));
    assert!(ask(address, "HEAD /a.wasm HTTP/1.1").contains("content-length: 13"));
    assert!(ask(address, "GET /b.wasm HTTP/1.1").starts_with("HTTP/1.1 404"));
    assert!(ask(address, "POST /a.wasm HTTP/1.1").starts_with("HTTP/1.1 405"));
    fs::remove_dir_all(&folder).unwrap();
}

/// A browser opens several connections in one moment and keeps them; none of them may wait for another to end.
#[test]
fn connections_that_stay_open_are_all_answered() {
    let folder = std::env::temp_dir().join(format!("slope-open-{}", std::process::id()));
    fs::create_dir_all(&folder).unwrap();
    fs::write(folder.join("a.txt"), "here").unwrap();
    let address = in_background(folder.clone()).unwrap();
    let begun: Vec<TcpStream> = (0..24)
        .map(|_| {
            let mut stream = TcpStream::connect(address).unwrap();
            // Long for an answer, short for a person who waits for the page.
            stream.set_read_timeout(Some(Duration::from_secs(10))).unwrap();
            stream.write_all(b"GET /a.txt HTTP/1.1\r\nHost: localhost\r\n\r\n").unwrap();
            stream
        })
        .collect();
    for (place, mut stream) in begun.iter().enumerate() {
        let mut head = [0; 12];
        let answer = stream.read_exact(&mut head);
        assert!(answer.is_ok(), "connection {place} waits while others are open: {answer:?}");
        assert_eq!(&head, b"HTTP/1.1 200");
    }
    fs::remove_dir_all(&folder).unwrap();
}

#[test]
fn several_folders_are_one_site() {
    let root = std::env::temp_dir().join(format!("slope-site-{}", std::process::id()));
    for (folder, name) in [("page", "index.html"), ("bound", "glue.js"), ("demo", "set.zip")] {
        fs::create_dir_all(root.join(folder)).unwrap();
        fs::write(root.join(folder).join(name), folder).unwrap();
    }
    let folder = |name: &str| root.join(name);
    let site = Site::of(vec![("", folder("page")), ("demo/", folder("demo")), ("", folder("bound"))]);
    let holds = |url: &str| site.find(url).map(|(_, bytes, _)| String::from_utf8(bytes).unwrap());
    assert_eq!(holds("/").as_deref(), Some("page"));
    assert_eq!(holds("/glue.js").as_deref(), Some("bound"));
    assert_eq!(holds("/demo/set.zip").as_deref(), Some("demo"));
    assert_eq!(holds("/set.zip"), None);
    fs::remove_dir_all(&root).unwrap();
}
