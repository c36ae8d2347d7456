//! The page for everyone: names for those who do not see it, by the browser's own accessibility tree, and the
//! rules of the Web Content Accessibility Guidelines (W3C, WCAG 2.2) that a program can check, by axe-core.

use std::fs;
use std::path::Path;
use std::thread::sleep;
use std::time::Duration;

use anyhow::{Context, Result, ensure};
use fantoccini::key::Key;
use serde_json::{Value, json};

use crate::names;
use crate::page::{Page, eventually};
use crate::stage::Stage;
use crate::traces;
use crate::uncertainty;

/// What must have a name: everything that can be used, and every picture.
const NAMED: [&str; 11] = [
    "button",
    "textbox",
    "combobox",
    "checkbox",
    "radio",
    "slider",
    "progressbar",
    "link",
    "listbox",
    "image",
    "dialog",
];

/// Everything on the page that can be used has a name, in the dialogs too.
///
/// # Errors
/// When something has none.
pub fn everything_has_a_name(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    page.browser.debug("Accessibility.enable", &json!({}))?;
    page.turn_to("#class")?;
    eventually("the class is there", || page.count("#class-choices > *"), |count| *count > 0)?;
    page.turn_to("#rails").context("the bench unfolded")?;
    let counts = names::LEAVES.map(|leaf| {
        page.turn_to(&format!("[data-leaf={leaf}]"))?;
        all_named(&page, 10).with_context(|| format!("on the leaf “{leaf}”"))
    });
    let count: usize = counts.into_iter().sum::<Result<usize>>()?;
    ensure!(count >= 240, "only {count} things can be used");
    for (open, close) in names::DIALOGS {
        page.click(open)?;
        page.is_asked()?;
        all_named(&page, 4).with_context(|| format!("after “{open}”"))?;
        page.click(close)?;
    }
    Ok(())
}

/// Checks what is in sight: how many rules hold, and a line for each that is broken.
const CHECK: &str = "
    return axe.run(document).then(({ passes, violations }) => [passes.length, violations
        .map(({ id, help, nodes }) => `${id} (${help}): ${nodes.slice(0, 3).map((node) => node.target).join(', ')}`
            + ` [${nodes.length} in all]`)]);";

/// A line for each thing in sight that is too small to hit, or too near to another (WCAG 2.2, 2.5.8), but for what has to stand
/// where it stands: marks on a picture and planned positions. The checker leaves this rule out unless it is asked for. It takes
/// what has been scrolled below the head for small, so nothing has.
const SMALL: &str = "
    scrollTo(0, 0);
    const hasToBeThere = ({ target }) => document.querySelector(target[0])?.matches('.spot, .handle');
    return axe.run(document, { runOnly: ['target-size'], resultTypes: ['violations'] }).then(({ violations }) => violations
        .flatMap(({ nodes }) => nodes).filter((node) => !hasToBeThere(node)).map(({ target }) => target.join(' ')));";

/// Everything that is pressed is at least 24 px large or far enough from the next, with the demo, on a phone and a laptop.
///
/// # Errors
/// When something is not.
pub fn targets_are_large_enough(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    load_checker(&page)?;
    for (width, height) in [(360, 740), (1366, 768)] {
        let size = json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": false });
        page.browser.debug("Emulation.setDeviceMetricsOverride", &size)?;
        page.on_each_leaf(|| {
            let small = page.browser.run(SMALL, vec![])?;
            ensure!(small == json!([]), "too small: {small}");
            Ok(())
        })
        .with_context(|| format!("{width} px wide"))?;
    }
    Ok(())
}

/// What is touched often is 44 px large on a phone, either way (WCAG 2.2, 2.5.5): leaves, cells, what stands at the head, the
/// page behind, the plots' buttons; and all leaves stand side by side.
///
/// # Errors
/// When it is not.
pub fn frequent_targets_are_large(stage: &Stage) -> Result<()> {
    const OFTEN: &str = "#outline a, #readings-table :is(input, .strike), .strip-tools button, #turn-over, .plot-tools button";
    const SMALL: &str = "const small = [...document.querySelectorAll(arguments[0])].filter((node) => {
            const { width, height } = node.getBoundingClientRect();
            return node.checkVisibility() && Math.min(width, height) < 44;
        });
        const { scrollWidth, clientWidth } = document.getElementById('outline-list');
        return [...new Set(small.map((node) => node.ariaLabel ?? node.textContent)), ...(scrollWidth > clientWidth ? ['leaves beyond the window'] : [])]";
    let page = stage.page()?;
    let size = json!({ "width": 360, "height": 740, "deviceScaleFactor": 2, "mobile": true });
    page.browser.debug("Emulation.setDeviceMetricsOverride", &size)?;
    page.browser.debug("Emulation.setTouchEmulationEnabled", &json!({ "enabled": true }))?;
    page.turn_to("#readings")?;
    let small = || page.browser.run(SMALL, vec![json!(OFTEN)]);
    eventually("what is touched often is large", small, |small| *small == json!([]))?;
    page.turn_to("#line-plot")?;
    eventually("the plots have their buttons", || page.count(".plot-tools"), |count| *count == 2)?;
    eventually("it is so over the plots", small, |small| *small == json!([]))?;
    Ok(())
}

/// No rule is broken, dark or light, or in high contrast, on the page with all its details open; nor,
/// dark or light, in a dialog.
///
/// # Errors
/// When one is.
pub fn no_rule_is_broken(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    load_checker(&page)?;
    page.fill("Number of trials", "20000")?;
    uncertainty::run(&page)?;
    unbroken(&page).context("beside the trials")?;
    page.click("Seal the result")?;
    page.click("Seal it now")?;
    page.browser.run("for (const each of document.querySelectorAll('details')) each.open = true", vec![])?;
    for scheme in ["light", "dark"] {
        page.wear(scheme)?;
        page.on_each_leaf(|| unbroken(&page)).with_context(|| format!("on the {scheme} page"))?;
        for (open, close) in names::DIALOGS.into_iter().chain([("Open the seal…", "Keep it sealed")]) {
            page.click(open)?;
            page.is_asked()?;
            unbroken(&page).with_context(|| format!("after “{open}”, {scheme}"))?;
            page.click(close)?;
        }
    }
    // The checker knows nothing of colours that are forced upon a page: see below.
    let media = json!({ "features": [{ "name": "prefers-contrast", "value": "more" }] });
    page.browser.debug("Emulation.setEmulatedMedia", &media)?;
    page.on_each_leaf(|| unbroken(&page)).context("where more contrast is asked for")?;
    Ok(())
}

/// More contrast is had by the settings too, light and dark, and when the page is loaded anew; no rule is broken then.
///
/// # Errors
/// When it is not, or one is.
pub fn contrast_is_chosen(stage: &Stage) -> Result<()> {
    const COLOURS: &str =
        "const { color, backgroundColor } = getComputedStyle(document.getElementById('strip'));
        return [color, backgroundColor]";
    /// A pixel at the corner of a plot: its paper.
    const PAPER: &str = "const canvas = document.getElementById('line-plot');
        const copy = new OffscreenCanvas(canvas.width || 1, canvas.height || 1).getContext('2d', { willReadFrequently: true });
        copy.drawImage(canvas, 0, 0);
        return [...copy.getImageData(1, 1, 1, 1).data]";
    const BLACK: &str = "rgb(0, 0, 0)";
    const WHITE: &str = "rgb(255, 255, 255)";
    let page = stage.page()?;
    page.wear("light")?;
    let colours = || page.browser.run(COLOURS, vec![]);
    let soft = colours()?;
    page.click("Settings")?;
    page.click("more contrast")?;
    page.click("Close")?;
    eventually("black is on white", colours, |now| *now == json!([BLACK, WHITE]))?;
    page.turn_to("#line-plot")?;
    let paper = || page.browser.run(PAPER, vec![]);
    eventually("the plot is drawn on white", paper, |now| *now == json!([255, 255, 255, 255]))?;
    page.reload()?;
    eventually("it is so again", colours, |now| *now == json!([BLACK, WHITE]))?;
    load_checker(&page)?;
    page.on_each_leaf(|| unbroken(&page)).context("with more contrast, light")?;
    page.wear("dark")?;
    eventually("white is on black", colours, |now| *now == json!([WHITE, BLACK]))?;
    page.turn_to("#line-plot")?;
    eventually("the plot is drawn on black", paper, |now| *now == json!([0, 0, 0, 255]))?;
    page.on_each_leaf(|| unbroken(&page)).context("with more contrast, dark")?;
    page.wear("light")?;
    page.click("Settings")?;
    page.click("as the system asks")?;
    page.click("Close")?;
    eventually("it is as before", colours, |now| *now == soft)?;
    page.is_silent()
}

/// Gathers what a screen reader would say by itself from now on: each change of a live region that is there for it, with the
/// text that it then holds (W3C, WAI-ARIA 1.2, aria-live, and the roles that imply it).
const LISTEN: &str = "window.heard = [];
    const LIVE = '[role=status], [role=alert], [role=log], output, [aria-live]';
    new MutationObserver((changes) => {
        const regions = new Set(changes.map(({ target }) => (target instanceof Element ? target : target.parentElement)?.closest(LIVE)));
        for (const region of regions) {
            const isHeard = region?.checkVisibility() && region.getAttribute('aria-live') !== 'off' && region.textContent;
            if (isHeard) window.heard.push(region.textContent);
        }
    }).observe(document.body, { subtree: true, childList: true, characterData: true });";

/// While a reading is typed, letter by letter and slowly, the result follows and nothing is said; once it is left, c is said, once.
/// So it is for what is taken back, and for the seal, beside which c stands twice, and which is said with it.
///
/// # Errors
/// When it is otherwise.
pub fn results_are_said_once(stage: &Stage) -> Result<()> {
    /// Longer than a letter waits to be sent, and than a result waits to be said.
    const SLOWLY: Duration = Duration::from_millis(1_500);
    let page = stage.page()?;
    eventually("the plots have their buttons", || page.count(".plot-tools"), |count| *count == 2)?;
    let heard = || -> Result<Vec<String>> {
        Ok(serde_json::from_value(page.browser.run("return window.heard", vec![])?)?)
    };
    page.click(&names::cell("Ruler reading", 3))?;
    page.browser.run(LISTEN, vec![])?;
    let mut before = page.result()?;
    page.browser.run("document.activeElement.select()", vec![])?;
    for letter in ["1", "2", "4"] {
        page.type_text(letter)?;
        eventually("the result follows", || page.result(), |result| *result != before)?;
        before = page.result()?;
        sleep(SLOWLY);
        ensure!(heard()?.is_empty(), "while one types it says {:?}", heard()?);
    }
    let said_once = |after: &str, mark: &str| -> Result<()> {
        let now = format!("c is now {}{mark}", page.result()?);
        let of_c = || {
            heard().map(|all| all.into_iter().filter(|text| text.starts_with("c is now")).collect::<Vec<_>>())
        };
        eventually(&format!("c is said after {after}"), of_c, |all| *all == [now.clone()])?;
        sleep(SLOWLY);
        ensure!(of_c()? == [now], "after {after} it says {:?}", heard()?);
        page.browser.run("window.heard = []", vec![]).map(drop)
    };
    page.press(Key::Tab)?;
    said_once("a reading", "")?;
    page.click("Undo")?;
    said_once("an undo", "")?;
    page.turn_to("#result-short")?;
    before = page.result()?;
    page.click("Seal the result")?;
    page.click("Seal it now")?;
    eventually("the result is sealed", || page.result(), |result| *result != before)?;
    said_once("a seal", ", sealed")?;
    page.is_silent()
}

/// What scripts reckon with colours by: how far one stands out from what lies behind it (WCAG 2.2, definition "contrast ratio"),
/// what lies behind an element, and what the system makes of one of its own colours (CSS Color, level 4, 6.2).
const RECKONING: &str = r"
    const over = (colour, ground) => {
        const [red, green, blue, alpha = 1] = colour.match(/[\d.]+/g).map(Number);
        return [red, green, blue].map((part, at) => alpha * part + (1 - alpha) * ground[at]);
    };
    const ground = (node) => (node ? over(getComputedStyle(node).backgroundColor, ground(node.parentElement)) : [255, 255, 255]);
    const luminance = (colour) => colour.map((part) => part / 255)
        .map((part) => (part <= .04045 ? part / 12.92 : ((part + .055) / 1.055) ** 2.4))
        .reduce((sum, part, at) => sum + part * [.2126, .7152, .0722][at], 0);
    const contrast = (colour, behind) => {
        const [one, other] = [luminance(over(colour, behind)), luminance(behind)];
        return (Math.max(one, other) + .05) / (Math.min(one, other) + .05);
    };
    const system = (colour) => {
        const probe = document.createElement('span');
        probe.style.color = colour;
        document.body.append(probe);
        const { color } = getComputedStyle(probe);
        probe.remove();
        return color;
    };";

/// How many things can be used that are in sight, and a line for each whose text stands out by less than 4.5 : 1, or whose
/// frame by less than 3 : 1 (WCAG 2.2, 1.4.3 and 1.4.11).
const FAINT: &str = r#"
    const isFramed = (node) => node.matches('button, select, textarea, input[type="text"], input[type="search"]');
    const fault = (node) => {
        const { color, borderBlockEndColor, borderBlockEndWidth } = getComputedStyle(node);
        if (contrast(color, ground(node)) < 4.5) return 'its text';
        const hasFrame = parseFloat(borderBlockEndWidth) >= 1 && contrast(borderBlockEndColor, ground(node.parentElement)) >= 3;
        return isFramed(node) && !hasFrame ? 'its frame' : '';
    };
    const seen = [...document.querySelectorAll('button, a[href], summary, input, select, textarea')]
        .filter((node) => node.checkVisibility() && !node.matches(':disabled, [aria-disabled="true"]'));
    return [seen.length, seen.filter((node) => fault(node)).map((node) => `${fault(node)}: ${node.outerHTML.slice(0, 90)}`)];"#;

/// What colours alone would tell, and nothing tells where they are forced: what can't be pressed, the leaf that is up, the
/// focus.
const UNTOLD: &str = r#"
    const look = (node) => getComputedStyle(node);
    const off = look(document.querySelector('#strip button[aria-disabled="true"]'));
    const up = look(document.querySelector('#outline li a[aria-current]'));
    const down = look(document.querySelector('#outline li a:not([aria-current])'));
    const { outlineStyle, outlineWidth, outlineColor } = look(document.activeElement);
    const told = {
        off: off.color === system('GrayText') && off.opacity === '1',
        up: up.borderBlockStartColor === system('Highlight') && parseFloat(up.borderBlockStartWidth) >= 3,
        down: down.borderBlockStartColor === system('Canvas'),
        focus: document.activeElement !== document.body && outlineStyle === 'solid' && parseFloat(outlineWidth) >= 2
            && contrast(outlineColor, ground(document.activeElement.parentElement)) >= 3,
    };
    return Object.keys(told).filter((name) => !told[name]);"#;

/// Where the system forces its own colours upon the page, all that can be used stands out, and what the page's colours told
/// is told.
///
/// # Errors
/// When it is otherwise.
pub fn forced_colours_are_told_apart(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    let media = json!({ "features": [{ "name": "forced-colors", "value": "active" }] });
    page.browser.debug("Emulation.setEmulatedMedia", &media)?;
    let forced = || page.browser.run("return matchMedia('(forced-colors: active)').matches", vec![]);
    eventually("colours are forced", forced, |forced| *forced == json!(true))?;
    page.browser.run("for (const each of document.querySelectorAll('details')) each.open = true", vec![])?;
    page.on_each_leaf(|| {
        let found = page.browser.run(&format!("{RECKONING}{FAINT}"), vec![])?;
        let (seen, faint): (usize, Vec<String>) = serde_json::from_value(found)?;
        ensure!(seen >= 10, "only {seen} things are in sight");
        ensure!(faint.is_empty(), "{}", faint.join("; "));
        Ok(())
    })?;
    page.press(Key::Tab)?;
    let untold = page.browser.run(&format!("{RECKONING}{UNTOLD}"), vec![])?;
    ensure!(untold == json!([]), "nothing tells {untold}");
    Ok(())
}

/// No rule is broken beside traces, when their layout is shown and when they are measured.
///
/// # Errors
/// When one is.
pub fn no_rule_is_broken_by_traces(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    traces::offer(&page, 5)?;
    load_checker(&page)?;
    unbroken(&page).context("beside the layout")?;
    traces::measure(&page, 5)?;
    page.click("Show the traces of row 2")?;
    page.reads("#traces-summary", "Trace B")?;
    page.browser
        .run("for (const each of document.querySelectorAll('#delays details')) each.open = true", vec![])?;
    for scheme in ["light", "dark"] {
        page.wear(scheme)?;
        unbroken(&page).with_context(|| format!("on the {scheme} page"))?;
    }
    Ok(())
}

/// Loads the checker of rules into the page.
///
/// # Errors
/// When it is not installed.
pub fn load_checker(page: &Page) -> Result<()> {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("node_modules/axe-core/axe.min.js");
    let checker = fs::read_to_string(&file)
        .with_context(|| format!("{} is not there: `cargo verify types` installs it", file.display()))?;
    page.browser.run(&checker, vec![])?;
    Ok(())
}

/// That no rule is broken by what is in sight; the checker is loaded first.
///
/// # Errors
/// When one is.
pub fn unbroken(page: &Page) -> Result<()> {
    let (hold, violations): (usize, Vec<String>) = serde_json::from_value(page.browser.run(CHECK, vec![])?)?;
    ensure!(hold >= 10, "only {hold} rules were checked");
    ensure!(violations.is_empty(), "{}", violations.join("; "));
    Ok(())
}

fn all_named(page: &Page, at_least: usize) -> Result<usize> {
    let tree = page.browser.debug("Accessibility.getFullAXTree", &json!({}))?;
    let nodes = tree["nodes"].as_array().context("a tree")?;
    let role = |node: &Value| node["role"]["value"].as_str().unwrap_or_default().to_owned();
    let used =
        nodes.iter().filter(|node| node["ignored"] == json!(false) && NAMED.contains(&role(node).as_str()));
    let mut count = 0;
    for node in used {
        count += 1;
        let name = node["name"]["value"].as_str().unwrap_or_default();
        ensure!(!name.trim().is_empty(), "a {} has no name: {node}", role(node));
    }
    ensure!(count >= at_least, "only {count} things can be used");
    Ok(count)
}
