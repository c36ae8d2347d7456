//! What the page's processes hold once a notebook has many pictures.

use std::fs;
use std::path::Path;

use anyhow::{Context, Result, ensure};
use page_tests::page::{Home, Page};
use serde_json::json;
use tempfile::TempDir;

use crate::photo::hand_over;
use crate::stage::parts;

/// Pictures kept.
const PICTURES: usize = 100;
/// Pictures that are shrunk in one go.
const AT_ONCE: usize = 4;

/// Memory that the page's renderers hold to themselves (their proportional set, Linux's `smaps_rollup`) after 100
/// pictures of 12 megapixels were shrunk, looked at and put into the attic, garbage collected; MB. What they held before
/// the first picture stands on standard error.
///
/// # Errors
/// When the page does not keep them, or the system does not tell.
pub fn of_100_pictures() -> Result<f64> {
    let stage = parts()?;
    let folder = TempDir::new()?;
    let profile = folder.path().join("profile");
    let browser = stage.driver.browser(&profile, &folder.path().join("downloads"))?;
    let page = Page { browser, home: Home::new()? };
    page.go(&stage.address)?;
    hand_over(&page)?;
    let before = held(&page, &profile)?;
    let script = "
        const [from, to] = arguments;
        const [file] = document.querySelector('#measured').files;
        return import('/attic.js').then(async ({ keepFile }) => {
          let lasting = true;
          for (let place = from; place < to; place += 1) {
            const { blob, sha256 } = await window.evidence.shrinkPicture(file);
            await window.evidence.propose(blob, 10, 8);
            lasting &&= await keepFile(`${sha256}-${place}`, { blob, name: `${place}.jpg` });
          }
          return lasting;
        });";
    for from in (0..PICTURES).step_by(AT_ONCE) {
        let kept = page.browser.run(script, vec![json!(from), json!((from + AT_ONCE).min(PICTURES))])?;
        ensure!(kept == json!(true), "the pictures are not kept");
    }
    let after = held(&page, &profile)?;
    eprintln!("  before the first picture {before:.0} MB, after {PICTURES} {after:.0} MB");
    Ok(after)
}

/// What the renderers of the browser with a profile hold, MB.
fn held(page: &Page, profile: &Path) -> Result<f64> {
    page.browser.debug("HeapProfiler.enable", &json!({}))?;
    page.browser.debug("HeapProfiler.collectGarbage", &json!({}))?;
    let data = format!("--user-data-dir={}", profile.display());
    let mut kilobytes = 0.0;
    for entry in fs::read_dir("/proc").context("the system does not tell what processes hold")? {
        let path = entry?.path();
        // What is no process, or has ended meanwhile, has neither.
        let (Ok(line), Ok(held)) =
            (fs::read_to_string(path.join("cmdline")), fs::read_to_string(path.join("smaps_rollup")))
        else {
            continue;
        };
        if line.contains(&data) && line.contains("--type=renderer") {
            let share = held.lines().find_map(|line| line.strip_prefix("Pss:")?.trim().strip_suffix(" kB"));
            kilobytes += share.context("no Pss in smaps_rollup")?.trim().parse::<f64>()?;
        }
    }
    ensure!(kilobytes > 0.0, "no renderer of the browser is to be found");
    Ok(kilobytes * 1024.0 / 1e6)
}
