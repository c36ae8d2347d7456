//! What can be seen: dark and light, on a phone, drawings that are drawn.

use anyhow::{Context, Result, ensure};
use serde_json::{Value, json};

use crate::names;
use crate::opening::nothing_slipped;
use crate::page::{Page, eventually};
use crate::stage::Stage;

/// Shades of the background, and how much is drawn, in the drawing at a place.
const LOOK: &str = "
    const canvas = document.querySelector(arguments[0]);
    const copy = new OffscreenCanvas(canvas.width, canvas.height).getContext('2d', { willReadFrequently: true });
    copy.drawImage(canvas, 0, 0);
    const { data, width, height } = copy.getImageData(0, 0, canvas.width, canvas.height);
    const counts = new Map();
    const words = new Uint32Array(data.buffer);
    for (const word of words) counts.set(word, (counts.get(word) ?? 0) + 1);
    const most = Math.max(...counts.values());
    return { shades: counts.size, inked: words.length - most, width, height };";

/// The beginnings of texts that are seen in part alone: a box around one ends before it does, and can't be scrolled. Such as end
/// in dots on purpose, and such as are there for the ear alone, are none.
const CUT: &str = "
    /** How far letters may reach out of their box, in CSS pixels: along the line, and across it, where lines are narrow. */
    const [ALONG, ACROSS] = [1, 4];
    const ends = (clip, { left, right, top, bottom }) => {
        const { overflowX, overflowY, contain } = getComputedStyle(clip);
        const box = clip.getBoundingClientRect();
        const isHard = (overflow) => /hidden|clip/.test(overflow) || /paint|strict|content/.test(contain);
        return (isHard(overflowX) && (left < box.left - ALONG || right > box.right + ALONG))
            || (isHard(overflowY) && (top < box.top - ACROSS || bottom > box.bottom + ACROSS));
    };
    const isMeant = ({ overflowX, overflowY, clipPath, textOverflow }) => (
        /auto|scroll/.test(overflowX + overflowY) || clipPath !== 'none' || textOverflow === 'ellipsis');
    const isCut = (text) => {
        const range = document.createRange();
        range.selectNodeContents(text);
        const place = range.getBoundingClientRect();
        if (place.width <= 1) return false;
        for (let clip = text.parentElement; clip && clip !== document.body; clip = clip.parentElement) {
            if (isMeant(getComputedStyle(clip))) return false;
            if (ends(clip, place)) return true;
        }
        return false;
    };
    const found = [];
    const all = document.createTreeWalker(document.querySelector('dialog[open]') ?? document.body, NodeFilter.SHOW_TEXT);
    for (let text = all.nextNode(); text; text = all.nextNode()) {
        const isSeen = text.data.trim() !== '' && text.parentElement.checkVisibility({ visibilityProperty: true });
        if (isSeen && isCut(text)) found.push(text.data.trim().slice(0, 40));
    }
    return found;";

/// How light a colour of the page is, from 0 to 1 (the mean of its channels).
const LIGHTNESS: &str = "
    const colour = getComputedStyle(document.body)[arguments[0]].match(/[\\d.]+/g).map(Number);
    return (colour[0] + colour[1] + colour[2]) / 765;";

/// Wide and narrow (320 px: WCAG 2.2, 1.4.10), dark and light, everything fits and every drawing is drawn.
///
/// # Errors
/// When something is not.
pub fn dark_light_and_narrow(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    for (width, height) in [(1280, 900), (320, 640)] {
        let size = json!({ "width": width, "height": height, "deviceScaleFactor": 2, "mobile": false });
        page.browser.debug("Emulation.setDeviceMetricsOverride", &size)?;
        for scheme in ["light", "dark"] {
            page.wear(scheme)?;
            let place = format!("{width} px wide and {scheme}");
            page.on_each_leaf(|| {
                fits(&page, width)?;
                nothing_slipped(&page)
            })
            .context(place.clone())?;
            is_of(&page, scheme).context(place.clone())?;
            for drawing in names::DRAWINGS {
                is_drawn(&page, drawing).context(place.clone())?;
            }
        }
    }
    page.is_silent()
}

/// That nothing makes the page wider than the window.
///
/// # Errors
/// When something does.
pub fn fits(page: &Page, width: u64) -> Result<()> {
    let widths = || page.browser.run("return [innerWidth, document.documentElement.scrollWidth]", vec![]);
    let fit =
        |widths: &Value| widths[0] == json!(width) && widths[1].as_u64().is_some_and(|all| all <= width);
    eventually(&format!("the page is no wider than {width} px"), widths, fit)?;
    Ok(())
}

/// That no text in sight is cut off.
///
/// # Errors
/// When one is.
pub fn is_uncut(page: &Page) -> Result<()> {
    let cut = || page.browser.run(CUT, vec![]);
    eventually("no text is cut off", cut, |cut| *cut == json!([]))?;
    Ok(())
}

/// Enlarged to 200 % on a laptop and to 400 % on a large screen (WCAG 2.2, 1.4.4 and 1.4.10: 1366 × 768 and 1280 × 1024 CSS
/// pixels become so many fewer), no text is cut off, and nothing needs to be scrolled both ways.
///
/// # Errors
/// When it is otherwise.
pub fn nothing_is_cut_off_when_enlarged(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    for (width, height, times) in [(683, 384, 2), (320, 256, 4)] {
        let size = json!({ "width": width, "height": height, "deviceScaleFactor": times, "mobile": false });
        page.browser.debug("Emulation.setDeviceMetricsOverride", &size)?;
        page.on_each_leaf(|| {
            fits(&page, width)?;
            is_uncut(&page)
        })
        .with_context(|| format!("{times} times as large"))?;
    }
    page.is_silent()
}

fn is_of(page: &Page, scheme: &str) -> Result<()> {
    let lightness = |of: &str| page.browser.run(LIGHTNESS, vec![json!(of)])?.as_f64().context("a number");
    let (ground, ink) = (lightness("backgroundColor")?, lightness("color")?);
    let right = if scheme == "dark" { ink - ground > 0.4 } else { ground - ink > 0.4 };
    ensure!(right, "the ground's lightness is {ground}, the text's {ink}");
    Ok(())
}

/// That the drawing at a place is drawn.
///
/// # Errors
/// When it is not.
pub fn is_drawn(page: &Page, drawing: &str) -> Result<()> {
    page.turn_to(drawing)?;
    let look = || page.browser.run(LOOK, vec![json!(drawing)]);
    // Axes, marks and letters with their smoothed edges: far more than a few shades, on a thousandth and more.
    let drawn = |look: &Value| {
        let number = |name: &str| look[name].as_f64().unwrap_or(0.0);
        number("shades") > 20.0 && number("inked") > 0.002 * number("width") * number("height")
    };
    eventually(&format!("{drawing} is drawn"), look, drawn)?;
    Ok(())
}

/// Where a person wishes for less motion nothing moves by itself: no style of any leaf or dialog has anything glide, and a
/// place that is led to is there at once.
///
/// # Errors
/// When something moves.
pub fn nothing_moves_by_itself(stage: &Stage) -> Result<()> {
    /// What is animated, glides from one look to the next, or scrolls smoothly, in what stands behind a shadow root too.
    const MOVING: &str = "const inside = [...document.querySelectorAll('*')].flatMap(({ shadowRoot }) => shadowRoot ?? []);
        const all = [document, ...inside].flatMap((root) => [...root.querySelectorAll('*')]);
        const moves = (node) => [undefined, '::before', '::after', '::backdrop'].some((part) => {
            const { animationName, transitionDuration, scrollBehavior } = getComputedStyle(node, part);
            return animationName !== 'none' || /[1-9]/.test(transitionDuration) || scrollBehavior === 'smooth';
        });
        return [...all.filter(moves).map((node) => node.outerHTML.slice(0, 60)), ...document.getAnimations().map(String)]";
    /// How far the page is scrolled a frame after it was led to a place, and half a second later.
    const LED: &str = "location.hash = arguments[0];
        const frame = () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
        return frame().then(async () => {
            const at = scrollY;
            await new Promise((done) => setTimeout(done, 500));
            return [at, scrollY];
        })";
    let page = stage.page()?;
    let media = json!({ "features": [{ "name": "prefers-reduced-motion", "value": "reduce" }] });
    page.browser.debug("Emulation.setEmulatedMedia", &media)?;
    let is_still = || {
        let moving = page.browser.run(MOVING, vec![])?;
        ensure!(moving == json!([]), "what moves: {moving}");
        Ok(())
    };
    page.on_each_leaf(is_still)?;
    for dialog in ["Replay", "History", "Settings"] {
        page.click(dialog)?;
        page.is_asked()?;
        is_still().with_context(|| format!("in the dialog “{dialog}”"))?;
        page.browser.run("document.querySelector('dialog[open]').close()", vec![])?;
    }
    page.turn_to("#readings")?;
    page.browser.run("scrollTo(0, 0)", vec![])?;
    let [at, later]: [f64; 2] = serde_json::from_value(page.browser.run(LED, vec![json!("row-24")])?)?;
    ensure!(at > 0.0, "the address of a row leads nowhere");
    ensure!((at - later).abs() < 1.0, "led to a row, the page stands at {at}, and later at {later}");
    page.is_silent()
}
