//! Building again what changed of the Rust source while the page is served.

use std::collections::hash_map::DefaultHasher;
use std::hash::{Hash as _, Hasher as _};
use std::thread;
use std::time::Duration;

use anyhow::Result;

use crate::build;
use crate::files::files_below;
use crate::project::{Build, Project};

/// How often the source is looked at. A few hundred files are a few milliseconds.
const EVERY: Duration = Duration::from_millis(700);

/// What the Rust source was at some time: another one where a file was written, made or removed.
#[derive(Clone, Copy, PartialEq)]
pub struct State(u64);

impl State {
    /// As it is now.
    ///
    /// # Errors
    /// When a folder can't be read.
    pub fn now(project: &Project) -> Result<Self> {
        let mut hash = DefaultHasher::new();
        for file in files_below(&project.root.join("crate"))? {
            let source = file.extension().is_some_and(|end| end == "rs" || end == "toml" || end == "css");
            // An editor may have taken a file away between the two looks: the next one tells.
            if let Some(written) = file.metadata().and_then(|facts| facts.modified()).ok().filter(|_| source)
            {
                (file, written).hash(&mut hash);
            }
        }
        Ok(Self(hash.finish()))
    }
}

/// Builds again whenever the source is another one than `built`, until the program is stopped. What does not compile is
/// said, and what was built last goes on being served.
///
/// # Errors
/// When a folder can't be read.
pub fn for_ever(project: &Project, mut built: State) -> Result<()> {
    loop {
        thread::sleep(EVERY);
        let now = State::now(project)?;
        if now == built {
            continue;
        }
        built = now;
        println!("\nThe Rust source has changed.");
        match build::build(project, Build::Quick) {
            Ok(()) => println!("Built. Reload the page to see it."),
            Err(error) => eprintln!("error: {error:#}\nThe page goes on being served as it was built last."),
        }
    }
}

#[cfg(test)]
#[path = "watch_test.rs"]
mod tests;
