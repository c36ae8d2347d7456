//! The site without a network: it works after the first visit, and a newer version takes over when a person says so.
//!
//! Source: W3C Service Workers.

use anyhow::{Context, Result, bail, ensure};
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use serde_json::json;
use sha2::{Digest, Sha256};

use crate::driver::Skipped;
use crate::engine::Engine;
use crate::home::Home;
use crate::host::Host;
use crate::names;
use crate::page::{Page, eventually};
use crate::stage::Stage;
use crate::uncertainty;

/// Whether the site is kept.
const KEPT: &str = "
    return navigator.serviceWorker.getRegistration().then((registration) => registration?.active?.state === 'activated')";

/// After one visit, the page opens, keeps what is typed, runs the trials and shows its help while its host is off.
///
/// # Errors
/// When it does not.
pub fn works_offline_after_the_first_visit(stage: &Stage) -> Result<()> {
    let host = Host::of(&stage.dist)?;
    let page = stage.page_at(&host.address(), Home::new()?)?;
    is_kept(&page)?;
    host.switch_off();
    page.reload()?;
    page.type_in_cell("Edge B", 1, "9.9")?;
    page.is_saved()?;
    page.reload()?;
    ensure!(page.cell("Edge B", 1)? == "9.9", "what was typed without a network is gone");
    page.fill("Number of trials", "20000")?;
    uncertainty::run(&page).context("trials without a network")?;
    page.browser.go(&format!("{}help/en.html#splices", host.address()))?;
    let title = page.browser.run("return document.title", vec![])?;
    ensure!(title == "Help: Slope of Light", "without a network the help is {title}");
    Ok(())
}

/// A newer version is fetched while the old one goes on, waits, is told, and takes over with all that was typed when it is
/// pressed for.
///
/// # Errors
/// When it does not.
pub fn a_newer_version_waits_until_it_is_taken(stage: &Stage) -> Result<()> {
    let host = Host::of(&stage.dist)?;
    let page = stage.page_at(&host.address(), Home::new()?)?;
    is_kept(&page)?;
    renew(&host)?;
    page.reload()?;
    page.reads(names::BANNER, "A newer version of this page is ready.")?;
    if page.browser.engine() == Engine::WebKit {
        bail!(Skipped("WebKit takes a newer version as soon as the only window is loaded anew"));
    }
    page.reload()?;
    ensure!(description(&page) != NEWER, "the newer version did not wait");
    page.reads(names::BANNER, "A newer version of this page is ready.")?;
    page.type_in_cell("Edge B", 1, "9.9")?;
    page.click("Use it now")?;
    eventually("the newer version is there", || Ok(description(&page)), |text| text == NEWER)?;
    page.is_ready()?;
    ensure!(page.cell("Edge B", 1)? == "9.9", "what was typed is gone with the old version");
    ensure!(page.text(names::BANNER)?.is_empty(), "the banner stays when the newer version is there");
    Ok(())
}

pub(crate) fn is_kept(page: &Page) -> Result<()> {
    let kept = || page.browser.run(KEPT, vec![]);
    eventually("the site is kept", kept, |kept| *kept == json!(true)).map(drop)
}

/// How the newer version describes itself.
const NEWER: &str = "A newer notebook.";

fn description(page: &Page) -> String {
    let script = "return document.querySelector('meta[name=description]')?.content ?? ''";
    // While it is loaded anew the page may not answer.
    let text = page.browser.run(script, vec![]).unwrap_or_default();
    text.as_str().unwrap_or_default().to_owned()
}

/// Brings the host up to date, as packing a changed page would.
pub(crate) fn renew(host: &Host) -> Result<()> {
    let digest = |bytes: &[u8]| STANDARD.encode(Sha256::digest(bytes));
    let old = digest(&host.bytes("index.html")?);
    host.change("index.html", |page| {
        page.replace("A lab notebook for the time-of-flight measurement of the speed of light.", NEWER)
    })?;
    let new = digest(&host.bytes("index.html")?);
    ensure!(old != new, "the page is described otherwise");
    host.change("service-worker.js", |script| {
        script.replace(&old, &new).replacen("\"version\":\"", "\"version\":\"newer ", 1)
    })
}
