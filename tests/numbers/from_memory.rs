//! What is given from memory stands in `from_memory.md`, with what would settle it, and nothing else does.
#![expect(clippy::unwrap_used, reason = "tests")]

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

/// The project's folder.
const ROOT: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/..");
/// Where sources are named.
const FOLDERS: [&str; 5] = ["crate", "tests/numbers", "tests/page/src", "www/builder/src", "www/page/help"];
/// Endings of files that name them.
const ENDINGS: [&str; 4] = ["rs", "json", "py", "html"];

fn gather(folder: &Path, files: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            gather(&path, files);
        } else if path.extension().is_some_and(|own| ENDINGS.iter().any(|ending| own == *ending)) {
            files.push(path);
        }
    }
}

#[test]
fn what_is_from_memory_is_listed() {
    let root = Path::new(ROOT);
    let table = fs::read_to_string(root.join("tests/numbers/from_memory.md")).unwrap();
    let listed: BTreeSet<String> = table
        .lines()
        .filter_map(|line| line.strip_prefix("| `")?.split('`').next())
        .map(str::to_owned)
        .collect();
    let mut files = Vec::new();
    for folder in FOLDERS {
        gather(&root.join(folder), &mut files);
    }
    // The words may stand at the end of one line of a comment and at the beginning of the next.
    let in_one_line = |text: &str| {
        let words: Vec<&str> = text.split_whitespace().filter(|word| !word.starts_with("//")).collect();
        words.join(" ").to_lowercase()
    };
    let says = |path: &PathBuf| {
        let own = path.ends_with("numbers/from_memory.rs");
        !own && fs::read_to_string(path).is_ok_and(|text| in_one_line(&text).contains("from memory"))
    };
    let name = |path: PathBuf| path.strip_prefix(root).unwrap().to_string_lossy().replace('\\', "/");
    let said: BTreeSet<String> = files.into_iter().filter(says).map(name).collect();
    assert!(said.len() > 30, "{said:?}");
    assert_eq!(said, listed);
}
