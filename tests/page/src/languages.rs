//! The second language: chosen in the settings or by the browser, in every section and state, and for a report alone.
//!
//! What is of which language is told by the tables of words, not by a dictionary.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;

use anyhow::{Context, Result, bail, ensure};
use fantoccini::key::Key;
use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement};
use fluent_syntax::parser;
use serde_json::{Value, json};

use crate::access::{load_checker, unbroken};
use crate::looks::fits;
use crate::page::{Page, eventually};
use crate::stage::Stage;
use crate::{bench, names, traces};

/// The text that names a language in itself, on a page in whatever language.
const OWN_NAME: &str = "language-name";

/// The language of a page that is open with all its sections.
const LANGUAGE: &str =
    "return document.body?.dataset.complete === 'true' ? document.documentElement.lang : null";

/// Which of some whole texts, and of some pieces of texts, stand anywhere in the page, in sight or not, in what it holds
/// behind a shadow root too. What is marked as of a language of its own is meant to be.
const FOUND: &str = "
    const [whole, pieces] = [new Set(arguments[0]), arguments[1]];
    const spoken = ['aria-label', 'aria-description', 'aria-valuetext', 'title', 'alt', 'placeholder'];
    const inside = [...document.querySelectorAll('*')].flatMap(({ shadowRoot }) => shadowRoot ?? []);
    const isMarked = (node) => ![document.documentElement, null].includes(node.parentElement?.closest('[lang]') ?? null);
    const texts = [];
    for (const root of [document.body, ...inside]) {
        for (const name of spoken) {
            for (const named of root.querySelectorAll(`[${name}]`)) texts.push(named.getAttribute(name));
        }
        const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
        while (walker.nextNode()) if (!isMarked(walker.currentNode)) texts.push(walker.currentNode.data);
    }
    const all = texts.join('\\n');
    const alone = new Set(texts.map((text) => text.trim()).filter((text) => whole.has(text)));
    return [...alone, ...pieces.filter((piece) => all.includes(piece))];";

/// The tables of words that this visit loaded, by the names of their files.
const TABLES_LOADED: &str = "return performance.getEntriesByType('resource')
    .map(({ name }) => name.split('/words/')[1]).filter((name) => name !== undefined)";

/// Opens everything that can be opened in place.
pub(crate) const OPEN_ALL: &str = "for (const each of document.querySelectorAll('details')) each.open = true";

/// Chooses an option of a list by the id of the list and the value of the option, whatever they are called.
pub(crate) const CHOOSE: &str = "
    const list = document.getElementById(arguments[0]);
    list.value = arguments[1];
    list.dispatchEvent(new Event('change', { bubbles: true }));";

/// What a table of words says.
pub(crate) struct Texts {
    /// Texts that are filled with nothing, by their identifier.
    plain: BTreeMap<String, String>,
    /// The pieces between what the other texts are filled with, in all their forms.
    pieces: Vec<String>,
}

impl Texts {
    /// Those of a language in the packed page.
    ///
    /// # Errors
    /// When they can't be read.
    pub(crate) fn of(stage: &Stage, language: &str) -> Result<Self> {
        let part = |ending: &str| {
            let file = stage.dist.join("words").join(format!("{language}{ending}.ftl"));
            fs::read_to_string(&file).with_context(|| format!("reading {}", file.display()))
        };
        let text = part("")? + &part("-late")?;
        let Ok(resource) = parser::parse(text.as_str()) else {
            bail!("the table of {language} can't be read")
        };
        let mut table = Self { plain: BTreeMap::new(), pieces: vec![] };
        let messages = resource.body.into_iter().filter_map(|entry| match entry {
            Entry::Message(message) => message.value.map(|value| (message.id.name, value)),
            _ => None,
        });
        for (id, value) in messages.filter(|(id, _)| *id != OWN_NAME) {
            match value.elements.as_slice() {
                [PatternElement::TextElement { value }] => {
                    table.plain.insert(id.to_owned(), (*value).to_owned());
                }
                _ => collect(&value, &mut table.pieces),
            }
        }
        Ok(table)
    }

    /// A text that is filled with nothing.
    ///
    /// # Errors
    /// When there is none of that identifier.
    pub(crate) fn says(&self, id: &str) -> Result<&str> {
        self.plain.get(id).map(String::as_str).with_context(|| format!("no plain text “{id}”"))
    }

    /// What another language never says: texts that it has not by themselves, pieces of two words and more that stand
    /// in none of its texts.
    fn own(&self, other: &Self) -> Own {
        let alike: BTreeSet<&String> = other.plain.values().collect();
        let said: Vec<&String> = other.plain.values().chain(&other.pieces).collect();
        let telling = |piece: &&String| {
            piece.split_whitespace().filter(|word| word.chars().any(char::is_alphabetic)).count() > 1
                && !said.iter().any(|text| text.contains(piece.as_str()))
        };
        Own {
            whole: self.plain.values().filter(|text| !alike.contains(text)).cloned().collect(),
            pieces: self.pieces.iter().filter(telling).cloned().collect(),
        }
    }
}

/// What tells a language from another.
struct Own {
    whole: Vec<String>,
    pieces: Vec<String>,
}

impl Own {
    fn found(&self, page: &Page) -> Result<Vec<String>> {
        let sought = vec![json!(self.whole), json!(self.pieces)];
        Ok(serde_json::from_value(page.browser.run(FOUND, sought)?)?)
    }
}

/// Adds the texts of a pattern between what it is filled with.
fn collect(pattern: &Pattern<&str>, pieces: &mut Vec<String>) {
    for element in &pattern.elements {
        match element {
            PatternElement::TextElement { value } => pieces.push(value.trim().to_owned()),
            PatternElement::Placeable { expression: Expression::Select { variants, .. } } => {
                for variant in variants {
                    collect(&variant.value, pieces);
                }
            }
            PatternElement::Placeable {
                expression: Expression::Inline(InlineExpression::Placeable { .. }),
            } => pieces.push("a text inside braces inside braces, which this does not read".to_owned()),
            PatternElement::Placeable { .. } => {}
        }
    }
}

/// The tables of both languages, and what only one of them says.
pub(crate) struct Tables {
    pub(crate) french: Texts,
    only_english: Own,
    only_french: Own,
}

impl Tables {
    /// Those of the packed page.
    ///
    /// # Errors
    /// When they can't be read.
    pub(crate) fn of(stage: &Stage) -> Result<Self> {
        let (english, french) = (Texts::of(stage, "en")?, Texts::of(stage, "fr")?);
        let (only_english, only_french) = (english.own(&french), french.own(&english));
        Ok(Self { french, only_english, only_french })
    }

    /// That nothing on the page is English, and much of it French; and that all of it fits a phone.
    ///
    /// # Errors
    /// When it is otherwise.
    pub(crate) fn are_french(&self, page: &Page, state: &str) -> Result<()> {
        self.is_french(page, state)?;
        // Under an open dialog the leaves can't be turned, and are checked without it.
        let under = page.count("dialog[open]")? > 0;
        at_each_width(page, state, |checked| if under { checked() } else { page.on_each_leaf(checked) })
    }

    /// The same of a state that shows in one place: what else is on the leaves is not looked at again.
    ///
    /// # Errors
    /// When it is otherwise.
    pub(crate) fn are_french_at(&self, page: &Page, state: &str, place: &str) -> Result<()> {
        self.is_french(page, state)?;
        at_each_width(page, state, |checked| page.turn_to(place).and_then(|()| checked()))
    }

    /// That nothing on the page is English.
    ///
    /// # Errors
    /// When something is.
    pub(crate) fn has_no_english(&self, page: &Page, state: &str) -> Result<()> {
        let left = self.only_english.found(page)?;
        ensure!(left.is_empty(), "{state}: still in English: {left:?}");
        Ok(())
    }

    /// That nothing on the page is English, and much of it French.
    ///
    /// # Errors
    /// When it is otherwise.
    pub(crate) fn is_french(&self, page: &Page, state: &str) -> Result<()> {
        self.has_no_english(page, state)?;
        let said = self.only_french.found(page)?.len();
        ensure!(said > 100, "{state}: only {said} French texts are found");
        Ok(())
    }

    /// Which of some texts only English says.
    pub(crate) fn english_of<'t>(&self, texts: impl Iterator<Item = &'t str>) -> Vec<&'t str> {
        texts.filter(|text| self.only_english.whole.iter().any(|whole| whole == text)).collect()
    }
}

/// How wide a phone is, in pixels: there each part is alone in sight.
const PHONE: u64 = 360;

/// That what stands on the page fits a phone and a laptop, and holds the rules of accessibility on the phone; on a laptop the
/// same parts stand side by side, which is checked in English. `over` goes through all that there is to see.
///
/// # Errors
/// When it is otherwise.
pub(crate) fn at_each_width(
    page: &Page,
    state: &str,
    over: impl Fn(&dyn Fn() -> Result<()>) -> Result<()>,
) -> Result<()> {
    for width in [PHONE, 1280] {
        let size = json!({ "width": width, "height": 800, "deviceScaleFactor": 1, "mobile": false });
        page.browser.debug("Emulation.setDeviceMetricsOverride", &size)?;
        load_checker(page)?;
        let checked = || {
            fits(page, width)?;
            if width == PHONE { unbroken(page) } else { Ok(()) }
        };
        over(&checked).with_context(|| format!("{state}, {width} px wide"))?;
    }
    Ok(())
}

/// Has the page speak a language, by the settings that are kept.
///
/// # Errors
/// When it does not.
pub fn speak(page: &Page, language: &str) -> Result<()> {
    let choose = "document.querySelector(`#settings-dialog input[value=\"${arguments[0]}\"]`).click()";
    page.browser.run(choose, vec![json!(language)])?;
    is_in(page, language)
}

/// Waits until the page is open in a language.
///
/// # Errors
/// When it is not.
pub fn is_in(page: &Page, language: &str) -> Result<()> {
    // While it is loaded anew the page may not answer.
    let now = || Ok(page.browser.run(LANGUAGE, vec![]).unwrap_or(Value::Null));
    eventually(&format!("the page is in “{language}”"), now, |now| *now == json!(language))?;
    Ok(())
}

/// Has the browser ask for pages in French, from the next one on.
///
/// # Errors
/// When it does not take it.
pub(crate) fn prefer_french(page: &Page) -> Result<()> {
    let user_agent = page.browser.run("return navigator.userAgent", vec![])?;
    let french_first = json!({ "userAgent": user_agent, "acceptLanguage": "fr-CH,fr,en" });
    page.browser.debug("Emulation.setUserAgentOverride", &french_first)?;
    Ok(())
}

/// Presses what has an id, whatever its name is in the language in use.
///
/// # Errors
/// When there is nothing of that id.
pub(crate) fn press(page: &Page, id: &str) -> Result<()> {
    page.browser.run("document.getElementById(arguments[0]).click()", vec![json!(id)])?;
    Ok(())
}

/// The first language of the browser is spoken, and it alone loaded, until one is chosen in the settings; what was typed
/// just before is kept; the notebook is not changed; a new one begins with the decimal mark of French; and English comes back.
///
/// # Errors
/// When it is otherwise.
pub fn the_language_is_chosen(stage: &Stage) -> Result<()> {
    let tables = Tables::of(stage)?;
    let page = stage.page()?;
    is_in(&page, "en")?;
    let shown = tables.only_english.found(&page)?.len();
    ensure!(shown > 100, "only {shown} English texts are found on the English page");
    let result = page.result()?;
    prefer_french(&page)?;
    page.reload()?;
    is_in(&page, "fr")?;
    let loaded: Vec<String> = serde_json::from_value(page.browser.run(TABLES_LOADED, vec![])?)?;
    ensure!(!loaded.is_empty() && loaded.iter().all(|name| name.starts_with("fr")), "loaded: {loaded:?}");
    page.click(tables.french.says("strip-settings")?)?;
    page.click("English")?;
    is_in(&page, "en")?;
    page.write_over("Title of the notebook", "Mardi")?;
    page.click("Settings")?;
    page.click("français")?;
    is_in(&page, "fr")?;
    ensure!(page.value(tables.french.says("strip-title")?)? == "Mardi", "the title typed before is lost");
    ensure!(page.result()? == result, "the result changed with the language");
    page.reload()?;
    is_in(&page, "fr")?;
    page.click(tables.french.says("strip-notebooks")?)?;
    page.is_asked()?;
    page.click(tables.french.says("notebooks-blank")?)?;
    page.sees(names::RESULT, tables.french.says("strip-no-c")?)?;
    page.click(tables.french.says("strip-settings")?)?;
    let comma = page.count("#settings-dialog input[name=decimal-mark][value=comma]:checked")?;
    ensure!(comma == 1, "a notebook begun in French does not begin with the decimal comma");
    page.click("English")?;
    is_in(&page, "en")?;
    let left = tables.only_french.found(&page)?;
    ensure!(left.is_empty(), "still in French: {left:?}");
    page.is_silent()
}

/// In French no section and no state of the typed demo has an English word; all fits a phone and breaks no rule.
///
/// # Errors
/// When one has.
pub fn the_page_speaks_french(stage: &Stage) -> Result<()> {
    let tables = Tables::of(stage)?;
    let page = stage.page()?;
    speak(&page, "fr")?;
    // How it fits is looked at once all of it is open.
    tables.is_french(&page, "the demo")?;
    the_tour_is_french(&page, &tables)?;
    page.fill(tables.french.says("trials-wanted")?, "20000")?;
    press(&page, "trials-start")?;
    page.sees("#trials-state", tables.french.says("trials-done")?)?;
    page.browser.run(OPEN_ALL, vec![])?;
    tables.are_french(&page, "trials, and all details open")?;
    for (opened_by, dialog) in [("open-notebooks", "notebooks-dialog"), ("open-settings", "settings-dialog")]
    {
        press(&page, opened_by)?;
        page.is_asked()?;
        tables.are_french(&page, dialog)?;
        page.press(Key::Escape)?;
    }
    press(&page, "put-seal")?;
    tables.are_french_at(&page, "a sealed result", "#result")
}

/// That no step of the tour is English, each on a phone.
fn the_tour_is_french(page: &Page, tables: &Tables) -> Result<()> {
    let size = json!({ "width": PHONE, "height": 740, "deviceScaleFactor": 1, "mobile": false });
    page.browser.debug("Emulation.setDeviceMetricsOverride", &size)?;
    press(page, "open-notebooks")?;
    page.is_asked()?;
    page.click(tables.french.says("tour")?)?;
    eventually("the tour has begun", || page.count("#tour"), |begun| *begun == 1)?;
    load_checker(page)?;
    for step in 1..=8 {
        page.reads("#tour", &format!("{step} sur 8"))?;
        let state = format!("step {step} of the tour");
        tables.has_no_english(page, &state)?;
        fits(page, PHONE).and_then(|()| unbroken(page)).context(state)?;
        page.press(Key::Enter)?;
    }
    page.browser.debug("Emulation.clearDeviceMetricsOverride", &json!({}))?;
    Ok(())
}

/// In French the photographs, traces and mistakes have no English word either.
///
/// # Errors
/// When one has.
pub fn other_states_speak_french(stage: &Stage) -> Result<()> {
    let tables = Tables::of(stage)?;
    for (demo, shown) in [("photographs.fr.zip", "#pictures .board"), ("traces.fr.zip", "#traces-plot")] {
        let page = stage.page()?;
        speak(&page, "fr")?;
        page.open_file(&stage.dist.join("demo").join(demo))?;
        let visible = "return document.querySelector(arguments[0])?.checkVisibility() ?? false";
        // Where the notebook comes after one has turned there, it is turned and scrolled anew.
        let seen = || {
            page.turn_to("#delays")?;
            page.browser.run(visible, vec![json!(shown)])
        };
        eventually(demo, seen, |seen| *seen == json!(true))?;
        page.browser.run(OPEN_ALL, vec![])?;
        tables.are_french(&page, demo)?;
    }
    let page = stage.blank_page()?;
    bench::describe_rail(&page)?;
    speak(&page, "fr")?;
    tables.are_french(&page, "a notebook with a rail and no rows")?;
    traces::choose_files(&page, 5)?;
    let offered = || page.text("#trace-status");
    eventually("the layout of the files is shown", offered, |status| status.contains("5 positions"))?;
    page.browser.run(OPEN_ALL, vec![])?;
    tables.are_french_at(&page, "the layout of trace files", "#trace-status")
}

/// That no text in English is left on a page in French, by the tables of words.
///
/// # Errors
/// When one is.
pub fn no_english_is_left(stage: &Stage, page: &Page, state: &str) -> Result<()> {
    Tables::of(stage)?.is_french(page, state)
}

/// In French mistakes and a sealed result have no English word.
///
/// # Errors
/// When one has.
pub fn mistakes_are_told_in_french(stage: &Stage) -> Result<()> {
    let tables = Tables::of(stage)?;
    let page = stage.blank_page()?;
    speak(&page, "fr")?;
    tables.are_french(&page, "a blank notebook")?;
    speak(&page, "en")?;
    bench::fill(&page)?;
    for (row, text) in ["2.x7", "1,234", "1e400", "NaN"].into_iter().enumerate() {
        page.write_over(&names::cell("Edge B", row + 1), text)?;
        page.press(Key::Tab)?;
    }
    page.write_over("Air temperature", "-300")?;
    page.press(Key::Tab)?;
    page.write_over("Uncertainty of one edge reading", "x")?;
    page.press(Key::Tab)?;
    page.is_saved()?;
    speak(&page, "fr")?;
    let told = || page.count(".problem:not([hidden])");
    eventually("all mistakes are told", told, |told| *told >= 6)?;
    tables.are_french(&page, "mistakes")?;
    page.press_with_control('z')?;
    page.press_with_control('z')?;
    press(&page, "put-seal")?;
    tables.are_french_at(&page, "a sealed result", "#result")
}

/// A report is opened in the language chosen beside its button, whatever that of the page; it has no word of the other, fits
/// a phone and breaks no rule.
///
/// # Errors
/// When it is not.
pub fn a_report_has_its_own_language(stage: &Stage) -> Result<()> {
    let tables = Tables::of(stage)?;
    let page = stage.page()?;
    let notebook = page.browser.tab()?;
    let languages = [
        ("français", "fr", &tables.only_french, &tables.only_english),
        ("English", "en", &tables.only_english, &tables.only_french),
    ];
    for (name, language, own, other) in languages {
        page.choose("Language of the report", name)?;
        let tab = page.browser.tab_opened_by(|| page.click("Open the report"))?;
        page.browser.switch_to(&tab)?;
        let state = format!("the report in “{language}”");
        let lang = || page.browser.run("return document.documentElement.lang", vec![]);
        eventually(&state, lang, |lang| *lang == json!(language))?;
        let left = other.found(&page)?;
        ensure!(left.is_empty(), "{state} says {left:?}");
        let said = own.found(&page)?.len();
        ensure!(said > 20, "{state} says only {said} texts of its language");
        at_each_width(&page, &state, |checked| checked())?;
        page.browser.switch_to(&notebook)?;
    }
    Ok(())
}
