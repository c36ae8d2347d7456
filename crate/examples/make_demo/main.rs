//! Writes the demo sets into a folder, byte for byte the same each time: typed readings, photographs of a screen, and
//! recorded traces; beside each what was really so.
//!
//! ```text
//! cargo run -p slope-of-light --example make_demo -- demo
//! ```

mod photographs;
mod traces;

use std::error::Error;
use std::fs;
use std::path::PathBuf;

use slope_of_light::analysis::analyse;
use slope_of_light::bundle::{self, BundleError, Entry};
use slope_of_light::notebook::{BenchField, Cell, Edit, EditError, Notebook};
use slope_of_light::report::pictures::charts;
use slope_of_light::synth::demo;
use slope_of_light::view::view;

/// A file: its name, and its bytes.
type Made = (String, Vec<u8>);

fn main() -> Result<(), Box<dyn Error>> {
    let folder = PathBuf::from(std::env::args().nth(1).ok_or("name the folder to write into")?);
    fs::create_dir_all(&folder)?;
    for (name, bytes) in files()? {
        fs::write(folder.join(name), bytes)?;
    }
    Ok(())
}

/// All files of the demo sets.
fn files() -> Result<Vec<Made>, Box<dyn Error>> {
    let typed = demo::files()?.into_iter().map(|(name, text)| (name.to_owned(), text.into_bytes()));
    Ok(typed.chain(photographs::files()?).chain(traces::files()?).collect())
}

/// The bundle of a notebook with its files.
fn bundled(notebook: &Notebook, files: Vec<Entry>) -> Result<Vec<u8>, BundleError> {
    let analysis = analyse(notebook);
    let charts = charts(notebook.page(), &analysis, None);
    bundle::of(notebook, &analysis, &view(notebook, &analysis), &charts, None, files)
}

/// The same notebook, with nothing read on the screen.
fn without_edges(typed: &Notebook) -> Result<Notebook, EditError> {
    let mut notebook = Notebook::new();
    for entry in typed.log() {
        let edit = match entry.edit.clone() {
            Edit::AddRow { row, after, mut cells } => {
                cells.remove(&Cell::EdgeA);
                cells.remove(&Cell::EdgeB);
                Edit::AddRow { row, after, cells }
            }
            // What is read on a screen by eye has no place here.
            Edit::SetBench { field: BenchField::EdgeHalfWidth, .. } => continue,
            other => other,
        };
        notebook.apply(edit, "")?;
    }
    Ok(notebook)
}

#[cfg(test)]
mod tests {
    #![expect(clippy::unwrap_used, reason = "tests")]

    use std::collections::BTreeMap;
    use std::fs;
    use std::path::Path;

    /// The folder `demo/` holds what `cargo demo` writes and nothing else, byte for byte.
    #[test]
    fn the_folder_holds_what_is_made() {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../demo");
        let on_disk: BTreeMap<String, Vec<u8>> = fs::read_dir(folder)
            .unwrap()
            .map(|file| file.unwrap())
            .map(|file| (file.file_name().into_string().unwrap(), fs::read(file.path()).unwrap()))
            .collect();
        let made: BTreeMap<String, Vec<u8>> = super::files().unwrap().into_iter().collect();
        assert!(on_disk == made, "demo/ is not what is made: run `cargo demo`");
    }
}
