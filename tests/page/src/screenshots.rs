//! Screenshots of every leaf and state in every window, light and dark, for eyes to look at; what needs no eyes is held on the
//! way: nothing is wider than its window, no text is cut off, no rule of accessibility is broken in the narrowest and the widest.
//!
//! They go to `screenshots/` beside the sources, a folder that the repository does not keep; those of the run before are
//! removed first.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result, bail, ensure};
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use serde_json::{Value, json};

use crate::access::{load_checker, unbroken};
use crate::bench;
use crate::home::Home;
use crate::looks::{fits, is_drawn, is_uncut};
use crate::names;
use crate::page::{Page, eventually};
use crate::sight::resize;
use crate::stage::Stage;

/// The windows, in CSS pixels: a phone, a tablet upright, a laptop, a large screen.
const WINDOWS: [(u32, u32); 4] = [(360, 740), (768, 1024), (1366, 768), (1920, 1080)];

/// The widths in which rules of accessibility are checked: both ends; `access.rs` checks one between.
const CHECKED: [u32; 2] = [360, 1920];

/// Of the WebP files, in per cent: letters stay sharp.
const QUALITY: u32 = 50;

/// A page that is scrolled more often than this has no end.
const MOST: usize = 60;

/// A look of the page: its name, and the wish of the person for it (W3C, *Media Queries Level 5*, section 12).
type Look = (&'static str, &'static str, &'static str);

const LIGHT: Look = ("light", "prefers-color-scheme", "light");
const DARK: Look = ("dark", "prefers-color-scheme", "dark");
const CONTRAST: Look = ("contrast", "prefers-contrast", "more");
const FORCED: Look = ("forced", "forced-colors", "active");

/// Demos with evidence, and where theirs stands once they are open.
const EVIDENCE: [(&str, &str); 2] = [("photographs", "#pictures .board"), ("traces", "#traces-plot")];

/// To the head of what is in sight.
const TO_HEAD: &str = "scrollTo(0, 0); document.querySelector('#beside')?.scrollTo(0, 0)";

/// Scrolls on what can be scrolled by those who look: a dialog, the right page where it lies over the left one, else both. Tells
/// whether something moved.
const FURTHER: &str = "
    const beside = document.querySelector('#beside');
    const isOver = document.body.classList.contains('over') && document.querySelector('#turn-over')?.checkVisibility();
    const dialog = document.querySelector('dialog[open]');
    const places = dialog ? [dialog] : isOver ? [beside] : [document.scrollingElement, beside];
    const moved = places.filter((place) => place && getComputedStyle(place).overflowY !== 'hidden').map((place) => {
        const before = place.scrollTop;
        place.scrollTop += 0.7 * place.clientHeight;
        return place.scrollTop > before + 1;
    });
    return moved.includes(true)";

/// Two frames.
const FRAMES: &str =
    "return new Promise((done) => { requestAnimationFrame(() => requestAnimationFrame(() => done(true))); })";

/// The leaf that is turned up, and whether its right page lies over it.
const PLACE: &str = "
    const isOver = document.body.classList.contains('over') && document.querySelector('#turn-over').checkVisibility();
    return document.body.dataset.at + (isOver ? '-right' : '')";

/// Every leaf of the demo and of a blank notebook, dialogs, wall view, seal, evidence and mistakes.
///
/// # Errors
/// When a state does not come, something is wider than its window, or a text is cut off.
pub fn every_leaf_and_state_is_shot(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    let shots = Shots::of(&page, "page")?;
    shots.leaves("demo")?;
    for (open, close) in names::DIALOGS {
        page.click(open)?;
        page.is_asked()?;
        shots.state(&open.to_lowercase().replace(' ', "-"))?;
        page.click(close)?;
    }
    shots.wall()?;
    page.click("Seal the result")?;
    page.click("Seal it now")?;
    shots.state("sealed")?;
    for (demo, place) in EVIDENCE {
        page.open_file(&stage.dist.join(format!("demo/{demo}.en.zip")))?;
        let shown = || {
            if page.count(place)? > 0 {
                page.turn_to(place)?;
            }
            page.browser
                .run("return document.querySelector(arguments[0])?.clientHeight ?? 0", vec![json!(place)])
        };
        eventually(&format!("the {demo} are shown"), shown, |height| height.as_f64() > Some(100.0))?;
        shots.state(demo)?;
    }
    page.list_notebooks()?;
    page.click("New blank notebook")?;
    page.sees(names::ROWS_USED, &names::rows_used(0, 0))?;
    shots.leaves("blank")?;
    bench::fill(&page)?;
    page.put_in_cell("Edge B", 2, "late")?;
    page.put_in_cell("Edge B", 4, "1.67")?;
    page.reads("#readings-table .problem", "late")?;
    shots.state("mistakes")?;
    page.is_silent()
}

/// The style guide is made of the page's own pieces: each is there, in every look no rule of accessibility is broken by one,
/// and drawings are drawn.
///
/// # Errors
/// When it is otherwise.
pub fn the_style_guide_shows_the_pieces(stage: &Stage) -> Result<()> {
    /// A part of each piece by which it is known, and how many there are at least.
    const PIECES: [(&str, usize); 13] = [
        ("#guide code", 20),
        ("button.main", 1),
        ("button.quiet", 1),
        (".field input", 5),
        (".field textarea", 1),
        (".field select.kind", 1),
        (".problem:not([hidden])", 1),
        ("input[type=radio]", 3),
        ("#guide-figures .figure", 3),
        (".notice.grave", 1),
        (".notice.look", 1),
        (".notice.know", 1),
        ("#budget-table input[type=range]", 3),
    ];
    let parts = stage.parts.as_deref().context("SLOPE_PARTS says where the page's modules are served")?;
    let page = stage.page_at(&format!("{parts}style-guide.html"), Home::new()?)?;
    for (piece, least) in PIECES {
        let count = page.count(piece)?;
        ensure!(count >= least, "{count} of “{piece}”, not {least}");
    }
    page.reads("#banner", "bundle")?;
    for drawing in ["#line-plot", "#residual-plot"] {
        is_drawn(&page, drawing)?;
    }
    let shots = Shots::of(&page, "style-guide")?;
    load_checker(&page)?;
    for look in [LIGHT, DARK, CONTRAST, FORCED] {
        shots.wear(look)?;
        // Forced colours are the system's own: the checker goes by those that the page would have.
        if look != FORCED {
            unbroken(&page).with_context(|| format!("in the look “{}”", look.0))?;
        }
        shots.in_windows("guide", look)?;
    }
    page.is_silent()
}

/// Screenshots of one page.
struct Shots<'p> {
    page: &'p Page<'p>,
    folder: PathBuf,
}

impl<'p> Shots<'p> {
    /// Into a folder of their own, emptied.
    fn of(page: &'p Page<'p>, name: &str) -> Result<Self> {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("screenshots").join(name);
        if folder.exists() {
            fs::remove_dir_all(&folder).with_context(|| format!("could not clear {}", folder.display()))?;
        }
        fs::create_dir_all(&folder).with_context(|| format!("could not make {}", folder.display()))?;
        page.browser.debug("Emulation.setScrollbarsHidden", &json!({ "hidden": true }))?;
        Ok(Self { page, folder })
    }

    /// What is in sight, in every window, light and dark.
    fn state(&self, state: &str) -> Result<()> {
        for look in [LIGHT, DARK] {
            self.wear(look)?;
            self.in_windows(state, look)?;
        }
        Ok(())
    }

    /// Every leaf of the notebook that is open, in every window, light and dark.
    fn leaves(&self, state: &str) -> Result<()> {
        for look in [LIGHT, DARK] {
            self.wear(look)?;
            for window in WINDOWS {
                resize(self.page, window.0, window.1)?;
                self.page.on_each_leaf(|| {
                    let place = self.page.browser.run(PLACE, vec![])?;
                    self.shoot(&format!("{state}-{}", place.as_str().context("a leaf")?), window, look)
                })?;
            }
        }
        Ok(())
    }

    /// The pages of the wall view, which is drawn by the first window, and so in the look of that one.
    fn wall(&self) -> Result<()> {
        let browser = &self.page.browser;
        let first = browser.tab()?;
        let wall = browser.tab_opened_by(|| self.page.click("Wall view"))?;
        for look in [LIGHT, DARK] {
            browser.switch_to(&first)?;
            self.wear(look)?;
            browser.switch_to(&wall)?;
            self.wear(look)?;
            for page in ["Bench", "Result", "Line"] {
                self.page.click(page)?;
                self.in_windows(&format!("wall-{}", page.to_lowercase()), look)?;
            }
        }
        browser.close_tab()?;
        browser.switch_to(&first)
    }

    fn in_windows(&self, state: &str, look: Look) -> Result<()> {
        for window in WINDOWS {
            resize(self.page, window.0, window.1)?;
            self.shoot(state, window, look)?;
        }
        Ok(())
    }

    fn wear(&self, (_, name, value): Look) -> Result<()> {
        let media = json!({ "features": [{ "name": name, "value": value }] });
        self.page.browser.debug("Emulation.setEmulatedMedia", &media)?;
        // Colours are those of the new look once a frame was drawn.
        self.page.browser.run(FRAMES, vec![]).map(drop)
    }

    /// What is in sight, and what comes into sight as it is scrolled to its end.
    fn shoot(&self, state: &str, (width, _): (u32, u32), (look, ..): Look) -> Result<()> {
        let name = format!("{state}-{width}-{look}");
        let browser = &self.page.browser;
        browser.run(TO_HEAD, vec![])?;
        fits(self.page, width.into()).and_then(|()| is_uncut(self.page)).with_context(|| name.clone())?;
        if look == LIGHT.0 && CHECKED.contains(&width) {
            load_checker(self.page).and_then(|()| unbroken(self.page)).with_context(|| name.clone())?;
        }
        for part in 1..=MOST {
            browser.run(names::TWO_FRAMES, vec![])?;
            let asked = json!({ "format": "webp", "quality": QUALITY });
            let answer = browser.debug("Page.captureScreenshot", &asked)?;
            let picture = STANDARD.decode(answer["data"].as_str().context("no picture came back")?)?;
            let file = self.folder.join(format!("{name}-{part}.webp"));
            fs::write(&file, picture).with_context(|| format!("could not write {}", file.display()))?;
            if browser.run(FURTHER, vec![])? == Value::Bool(false) {
                return Ok(());
            }
        }
        bail!("{name} is scrolled on and on")
    }
}
