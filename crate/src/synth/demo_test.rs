#![expect(clippy::unwrap_used, reason = "tests")]

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use super::files;

/// The folder `demo/` holds what `cargo demo` writes and nothing else, byte for byte.
#[test]
fn the_folder_holds_what_is_made() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../demo");
    let on_disk: BTreeMap<String, Vec<u8>> = fs::read_dir(folder)
        .unwrap()
        .map(|file| file.unwrap())
        .map(|file| (file.file_name().into_string().unwrap(), fs::read(file.path()).unwrap()))
        .collect();
    let made: BTreeMap<String, Vec<u8>> =
        files().unwrap().into_iter().map(|(name, text)| (name.to_owned(), text.into_bytes())).collect();
    assert!(on_disk == made, "demo/ is not what is made: run `cargo demo`");
}
