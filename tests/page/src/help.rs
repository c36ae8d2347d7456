//! The help: beside each section, and on pages of its own, served and in the one file.

use std::fs;
use std::path::PathBuf;

use anyhow::{Context, Result, ensure};
use fantoccini::key::Key;
use serde_json::{Value, json};

use crate::access::{load_checker, unbroken};
use crate::files::one_file;
use crate::languages::Tables;
use crate::page::{Page, eventually};
use crate::stage::Stage;

/// The links into the help, each once.
const LINKS: &str =
    "return [...new Set([...document.querySelectorAll('a[data-help]')].map((link) => link.href))]";

/// Whether the place that the address names is there and in sight.
const AT_ITS_PLACE: &str = "
    const place = document.getElementById(location.hash.slice(1));
    if (!place) return false;
    const { top, bottom } = place.getBoundingClientRect();
    return bottom > 0 && top < innerHeight;";

/// Which pictures are drawn, whether anything is wider than the window, and the colour of the ground.
const LOOK: &str = "
    const pictures = [...document.images];
    for (const picture of pictures) picture.loading = 'eager';
    return { pictures: pictures.length, drawn: pictures.filter((each) => each.complete && each.naturalWidth > 0).length,
        wide: document.documentElement.scrollWidth, window: innerWidth, ground: getComputedStyle(document.body).backgroundColor };";

/// Every link into the help leads to its place; in each language the help has its pictures, fits a phone, breaks no rule
/// and has no word of the page in another one.
///
/// # Errors
/// When it does not.
pub fn help_is_at_hand(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    page.click("How: Readings")?;
    page.reads("#readings > .how", "one row for each position")?;
    let links = page.browser.run(LINKS, vec![])?;
    let links: Vec<&str> = links.as_array().into_iter().flatten().filter_map(Value::as_str).collect();
    // A column of the budget, fields and a figure lead to their terms.
    for place in [
        "#splices",
        "#term-sensitivity",
        "#term-coverage-probability",
        "#term-coverage-factor",
        "#term-splice",
        "#term-limit",
        "#term-relative",
    ] {
        ensure!(links.iter().any(|link| link.ends_with(place)), "nothing leads to {place}: {links:?}");
    }
    for link in links {
        page.browser.go(link)?;
        is_at_its_place(&page).with_context(|| format!("where {link} leads"))?;
    }
    for language in languages(stage)? {
        page.browser.go(&format!("{}help/{language}.html", stage.address))?;
        if language == "fr" {
            Tables::of(stage)?.has_no_english(&page, "the help")?;
        }
        for (width, scheme) in [(1280, "light"), (320, "dark")] {
            let size = json!({ "width": width, "height": 700, "deviceScaleFactor": 1, "mobile": false });
            page.browser.debug("Emulation.setDeviceMetricsOverride", &size)?;
            page.wear(scheme)?;
            let state = || format!("in “{language}”, {width} px wide and {scheme}");
            is_whole(&page).with_context(state)?;
            load_checker(&page)?;
            unbroken(&page).with_context(state)?;
        }
    }
    page.is_silent()
}

/// The languages that the packed page has a help in.
fn languages(stage: &Stage) -> Result<Vec<String>> {
    let entries = fs::read_dir(stage.dist.join("help"))?.map(|entry| Ok(entry?.path()));
    let files = entries.collect::<Result<Vec<PathBuf>>>()?;
    let pages = files.iter().filter(|file| file.extension().is_some_and(|end| end == "html"));
    let languages: Vec<String> =
        pages.filter_map(|page| Some(page.file_stem()?.to_str()?.to_owned())).collect();
    ensure!(languages.len() > 1, "there is a help in {languages:?}");
    Ok(languages)
}

/// The one file opens its help from the disk, with style and pictures, by the keyboard.
///
/// # Errors
/// When it does not.
pub fn the_one_file_holds_its_help(stage: &Stage) -> Result<()> {
    let page = one_file(stage)?;
    page.browser.run("document.querySelector('#outline a[data-help]').focus()", vec![])?;
    let opened = page.browser.tab_opened_by(|| page.press(Key::Enter))?;
    page.browser.switch_to(&opened)?;
    let title = || page.browser.run("return document.title", vec![]);
    eventually("the help is open", title, |title| {
        title.as_str().is_some_and(|title| title.contains("Help"))
    })?;
    is_at_its_place(&page)?;
    is_whole(&page)
}

fn is_at_its_place(page: &Page) -> Result<()> {
    let at_its_place = || page.browser.run(AT_ITS_PLACE, vec![]);
    eventually("the place in the address is in sight", at_its_place, |there| *there == json!(true))?;
    Ok(())
}

/// That the help is styled, has its pictures, and fits the window.
fn is_whole(page: &Page) -> Result<()> {
    let look = || page.browser.run(LOOK, vec![]);
    let drawn = |look: &Value| look["drawn"] == look["pictures"] && look["pictures"].as_u64() > Some(4);
    let look = eventually("the pictures are drawn", look, drawn)?;
    ensure!(look["wide"].as_u64() <= look["window"].as_u64(), "it is wider than the window: {look}");
    ensure!(look["ground"] != "rgba(0, 0, 0, 0)", "it has no style: {look}");
    Ok(())
}

/// How fast texts are read, words a minute, and how long each step is looked at, s: common practice, no source.
const READING: usize = 200;
/// See [`READING`].
const LOOKING: usize = 5;

/// A newcomer is led through the demo by the keyboard, sees what each step speaks of, and can leave at any time; the tour
/// takes the two minutes that its button tells, and changes nothing.
///
/// # Errors
/// When it does not.
pub fn the_tour_leads_through_the_demo(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    let result = page.result()?;
    page.click("Take the tour (2 minutes)")?;
    load_checker(&page)?;
    page.sees("#tour .hint", "Tour, step 1 of 8")?;
    let mut seconds = 0;
    for step in 1..=8 {
        page.reads("#tour", &format!("step {step} of 8"))?;
        let words = page.text("#tour p:not(.hint, .actions)")?.split_whitespace().count();
        seconds += LOOKING + words * 60 / READING;
        let shown = || page.browser.run(SPOKEN_OF, vec![]);
        eventually("what the step speaks of is in sight", shown, |shown| *shown == json!(true))
            .with_context(|| format!("step {step}"))?;
        unbroken(&page).with_context(|| format!("step {step}"))?;
        page.press(Key::Enter)?;
    }
    let gone = || page.browser.run("return document.getElementById('tour') === null", vec![]);
    eventually("the tour has ended", gone, |gone| *gone == json!(true))?;
    ensure!(seconds < 120, "it takes {seconds} s");
    page.list_notebooks()?;
    page.click("Tour of the demo")?;
    let begun = || page.browser.run("return document.activeElement.closest('#tour') !== null", vec![]);
    eventually("the tour has begun", begun, |begun| *begun == json!(true))?;
    page.press(Key::Escape)?;
    eventually("the tour is left", gone, |gone| *gone == json!(true))?;
    ensure!(page.result()? == result, "the tour changed the result");
    page.is_silent()
}

/// Whether what the step speaks of begins in sight, and not under the tour itself.
const SPOKEN_OF: &str = "
    const { top } = document.querySelector('.toured').getBoundingClientRect();
    return top >= 0 && top < document.getElementById('tour').getBoundingClientRect().top - 40;";
