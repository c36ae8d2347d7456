//! The JavaScript glue of the wasm, by the binder as a library: a module for browsers, its declarations for the
//! type check, and the wasm without the sections that only name things.

use std::fs;
use std::path::Path;

use anyhow::{Context, Result};
use sha2::{Digest, Sha256};
use wasm_bindgen_cli_support::Bindgen;

/// Changes with the settings below, so that old output is not taken for current.
const SETTINGS: &str = "web, no name and producers sections; 0.2.130";

/// Tells from what the folder was made.
const STAMP: &str = "stamp";

/// Binds the compiler's wasm into a folder, as `stem.js`, `stem.d.ts` and `stem_bg.wasm`, unless what stands there
/// was made from the very same bytes.
///
/// # Errors
/// When the wasm can't be read or bound, or the files not be written.
pub fn bind(wasm: &Path, folder: &Path, stem: &str) -> Result<()> {
    let bytes = fs::read(wasm).with_context(|| format!("could not read {}", wasm.display()))?;
    let fingerprint = fingerprint(&bytes);
    if fs::read_to_string(folder.join(STAMP)).is_ok_and(|made_from| made_from == fingerprint) {
        return Ok(());
    }
    let fresh = folder.with_extension("fresh");
    clear(&fresh)?;
    Bindgen::new()
        .input_bytes(stem, bytes)
        .out_name(stem)
        .web(true)?
        .typescript(true)
        .remove_name_section(true)
        .remove_producers_section(true)
        .generate(&fresh)
        .context("could not bind the wasm")?;
    fs::write(fresh.join(STAMP), fingerprint).context("could not write the stamp")?;
    // What was there may be served meanwhile.
    clear(folder)?;
    fs::rename(&fresh, folder).with_context(|| format!("could not make {}", folder.display()))
}

fn clear(folder: &Path) -> Result<()> {
    if folder.exists() {
        fs::remove_dir_all(folder).with_context(|| format!("could not clear {}", folder.display()))?;
    }
    Ok(())
}

fn fingerprint(bytes: &[u8]) -> String {
    let hash = Sha256::new().chain_update(SETTINGS).chain_update(bytes).finalize();
    hash.iter().fold(String::new(), |text, byte| format!("{text}{byte:02x}"))
}
