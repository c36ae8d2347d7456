//! When the source counts as changed.

#![expect(clippy::unwrap_used, reason = "tests")]

use std::fs;

use super::State;
use crate::project::Project;

#[test]
fn a_file_written_made_or_removed_is_a_change() {
    let root = std::env::temp_dir().join(format!("slope-watch-{}", std::process::id()));
    let project = Project { target: root.join("target"), root: root.clone() };
    let source = root.join("crate/src");
    fs::create_dir_all(&source).unwrap();
    let state = || State::now(&project).unwrap();
    let write = |name: &str| fs::write(source.join(name), name).unwrap();
    write("lib.rs");
    let first = state();
    assert!(state() == first, "nothing has changed");
    write("notes.txt");
    assert!(state() == first, "what is no source does not count");
    write("more.rs");
    let second = state();
    assert!(second != first, "a file more");
    let later = std::time::SystemTime::now() + std::time::Duration::from_secs(5);
    fs::File::options().write(true).open(source.join("lib.rs")).unwrap().set_modified(later).unwrap();
    let third = state();
    assert!(third != second, "a file written anew");
    fs::remove_file(source.join("more.rs")).unwrap();
    assert!(state() != third, "a file less");
    fs::remove_dir_all(&root).unwrap();
}
