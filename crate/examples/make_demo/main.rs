//! Writes the demo sets into a folder, byte for byte the same each time: typed readings, photographs of a screen, and
//! recorded traces; beside each what was really so.
//!
//! ```text
//! cargo run -p slope-of-light --example make_demo -- demo
//! ```

mod set;
mod photographs;
mod traces;

use std::error::Error;
use std::fs;
use std::path::PathBuf;

use slope_of_light::notebook::write;
use slope_of_light::simulated::demo;

use set::{Made, told};

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
    let mut files = Vec::new();
    for notes in demo::ALL {
        let (notebook, truth) = demo::typed_readings_in(&notes)?;
        files.push((format!("typed-readings.{}.json", notes.language), write(&notebook).into_bytes()));
        // The same truth in every language.
        files.push(told("typed-readings", demo::SEED, &truth, None));
    }
    for set in photographs::sets().into_iter().chain(traces::sets()) {
        files.extend(set.files()?);
    }
    Ok(files)
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
