//! What a person does on the page and sees there, in verbs.

use std::fmt::Debug;
use std::path::Path;
use std::thread::sleep;
use std::time::{Duration, Instant};

use anyhow::{Context, Result, bail, ensure};
use fantoccini::elements::Element;
use fantoccini::error::CmdError;
use fantoccini::key::Key;
use fantoccini::wd::WindowHandle;
use serde_json::{Value, json};

use crate::driver::Browser;
use crate::engine::Engine;
use crate::home::Home;
use crate::names;

/// How long something that should come to pass may take: longer than the page waits at most, half a minute, before it tries
/// again to store something.
const PATIENCE: Duration = Duration::from_secs(40);

/// How long the letters of an option may take to choose it. A list takes letters that come within a second of each other for
/// one word: after this long they begin another one.
const WORD: Duration = Duration::from_millis(1500);

/// How many presses of Tab may lie between two things on the page.
const FAR: usize = 400;

/// The page in its browser.
pub struct Page<'d> {
    /// The browser.
    pub browser: Browser<'d>,
    /// Its folder.
    pub home: Home,
}

impl Page<'_> {
    /// Goes to an address and waits until a notebook is open there.
    ///
    /// # Errors
    /// When none opens.
    pub fn go(&self, address: &str) -> Result<()> {
        self.browser.go(address)?;
        self.is_ready()
    }

    /// Loads the page again.
    ///
    /// # Errors
    /// When no notebook opens.
    pub fn reload(&self) -> Result<()> {
        self.browser.reload()?;
        self.is_ready()
    }

    /// Waits until a notebook is open.
    ///
    /// # Errors
    /// When none opens.
    pub fn is_ready(&self) -> Result<()> {
        // While it is being loaded the page may not answer.
        let ready = || Ok(self.browser.run(names::READY, vec![]).unwrap_or(Value::Null));
        eventually("a notebook is open", ready, |ready| *ready == json!(true))?;
        Ok(())
    }

    /// Kills the browser and leaves its folder for the next one.
    ///
    /// # Errors
    /// When it can't be killed.
    pub fn kill(self) -> Result<Home> {
        let Self { browser, home } = self;
        browser.kill()?;
        Ok(home)
    }

    /// What can be used under a name that is read out.
    ///
    /// # Errors
    /// When nothing of that name is in sight.
    pub fn named(&self, name: &str) -> Result<Element> {
        self.find(name)?.with_context(|| format!("nothing is named “{name}”"))
    }

    /// Whether something of a name is in sight.
    ///
    /// # Errors
    /// When the browser does not answer.
    pub fn has(&self, name: &str) -> Result<bool> {
        Ok(self.find(name)?.is_some())
    }

    fn find(&self, name: &str) -> Result<Option<Element>> {
        self.browser.element(&format!("{}{}", names::SEEN, names::BY_NAME), vec![json!(name)])
    }

    /// Clicks what has a name.
    ///
    /// # Errors
    /// When nothing of that name can be clicked.
    pub fn click(&self, name: &str) -> Result<()> {
        eventually(&format!("something is named “{name}”"), || self.clicked(name), |clicked| *clicked)
            .with_context(|| format!("clicking “{name}”"))?;
        Ok(())
    }

    /// Clicks what has a name, if it is there, and is not drawn anew before it is clicked; tells whether it was.
    fn clicked(&self, name: &str) -> Result<bool> {
        let Some(element) = self.find(name)? else { return Ok(false) };
        // The driver would take what lies under the strip at the top for being in sight.
        let turned = self.browser.run(names::TURN, vec![serde_json::to_value(&element)?]);
        match turned.and_then(|_| self.browser.click(&element)) {
            Err(why) if why.downcast_ref::<CmdError>().is_some_and(CmdError::is_stale_element_reference) => {
                Ok(false)
            }
            done => done.map(|()| true),
        }
    }

    /// Has the page open a window at an address, at a press, since WebKit lets no page open one by itself, and goes to it. The
    /// page knows it as `window.other`, so that one script can reach both.
    ///
    /// # Errors
    /// When none opens.
    pub fn open_from_page(&self, address: &str) -> Result<WindowHandle> {
        const BUTTON: &str = "
            const [address] = arguments;
            const button = document.createElement('button');
            button.style.cssText = 'position: fixed; inset: 0; z-index: 9';
            button.addEventListener('click', () => {
                button.remove();
                window.other = open(address);
            });
            document.body.append(button);
            return button;";
        let button = self.browser.element(BUTTON, vec![json!(address)])?.context("there is no button")?;
        let tab = self.browser.tab_opened_by(|| self.browser.click(&button))?;
        self.browser.switch_to(&tab)?;
        Ok(tab)
    }

    /// Opens the list of notebooks, and waits until it is there: it comes once what was typed is stored.
    ///
    /// # Errors
    /// When it does not come.
    pub fn list_notebooks(&self) -> Result<()> {
        self.click("Notebooks")?;
        self.is_asked()
    }

    /// Waits until a dialog lies over the page.
    ///
    /// # Errors
    /// When none comes.
    pub fn is_asked(&self) -> Result<()> {
        eventually("a dialog is open", || self.count("dialog[open]"), |open| *open == 1)?;
        Ok(())
    }

    /// Types text with the keyboard, into whatever has the focus.
    ///
    /// # Errors
    /// When the browser takes no keys.
    pub fn type_text(&self, text: &str) -> Result<()> {
        self.browser.press(&[], text.chars())
    }

    /// Presses a key.
    ///
    /// # Errors
    /// When the browser takes no keys.
    pub fn press(&self, key: Key) -> Result<()> {
        self.browser.press(&[], [key.into()])
    }

    /// Presses a key while Control is held.
    ///
    /// # Errors
    /// When the browser takes no keys.
    pub fn press_with_control(&self, key: char) -> Result<()> {
        self.browser.press(&[Key::Control.into()], [key])
    }

    /// Goes back to what comes before the focus.
    ///
    /// # Errors
    /// When the browser takes no keys.
    pub fn tab_back(&self) -> Result<()> {
        self.browser.press(&[Key::Shift.into()], [Key::Tab.into()])
    }

    /// Turns the leaves by keys to the one of what has a name, and presses Tab until that has the focus.
    ///
    /// # Errors
    /// When the keys do not get there.
    pub fn tab_to(&self, name: &str) -> Result<()> {
        for _ in names::LEAVES {
            if self.is_in_sight(name)? {
                break;
            }
            self.browser.press(&[Key::Alt.into()], [Key::PageDown.into()])?;
        }
        for _ in 0..FAR {
            if self.focused()? == name {
                return Ok(());
            }
            self.press(Key::Tab)?;
            self.browser.comes_round()?;
        }
        bail!("Tab does not get to “{name}”")
    }

    /// The name of what has the focus.
    ///
    /// # Errors
    /// When the browser does not answer.
    pub fn focused(&self) -> Result<String> {
        text_of(&self.browser.run(names::FOCUSED, vec![])?)
    }

    /// Waits until what has a name has the focus.
    ///
    /// # Errors
    /// When it does not get it.
    pub fn focuses(&self, name: &str) -> Result<()> {
        eventually(&format!("“{name}” has the focus"), || self.focused(), |focused| focused == name)?;
        Ok(())
    }

    /// Puts a text into the box of a name, in place of what stood there, and goes on to the next with Tab.
    ///
    /// # Errors
    /// When there is no such box.
    pub fn fill(&self, name: &str, text: &str) -> Result<()> {
        self.write_over(name, text)?;
        self.press(Key::Tab)
    }

    /// Puts a text into the box of a name, in place of what stood there, and stays.
    ///
    /// # Errors
    /// When there is no such box.
    pub fn write_over(&self, name: &str, text: &str) -> Result<()> {
        self.click(name)?;
        self.press_with_control('a')?;
        // The first letter takes the place of what is selected: an empty box in between would be sent where keys are slow.
        if text.is_empty() { self.press(Key::Delete) } else { self.type_text(text) }
    }

    /// Puts a text into a cell of a row at once, as a paste does, and Enter: however busy the browser is, it is one edit.
    ///
    /// # Errors
    /// When there is no such cell.
    pub fn put_in_cell(&self, column: &str, row: usize, text: &str) -> Result<()> {
        self.click(&names::cell(column, row))?;
        let put = "document.activeElement.value = arguments[0];
            document.activeElement.dispatchEvent(new InputEvent('input', { bubbles: true }))";
        self.browser.run(put, vec![json!(text)])?;
        self.press(Key::Enter)
    }

    /// Types a text into a cell of a row, and Enter.
    ///
    /// # Errors
    /// When there is no such cell.
    pub fn type_in_cell(&self, column: &str, row: usize, text: &str) -> Result<()> {
        self.write_over(&names::cell(column, row), text)?;
        self.press(Key::Enter)
    }

    /// What stands in the box of a name.
    ///
    /// # Errors
    /// When there is no such box.
    pub fn value(&self, name: &str) -> Result<String> {
        let script = format!(
            "{} const box = (function () {{ {} }})(arguments[0]); return box?.value ?? null",
            names::SEEN,
            names::BY_NAME
        );
        let value = self.browser.run(&script, vec![json!(name)])?;
        value.as_str().map(str::to_owned).with_context(|| format!("no box is named “{name}”"))
    }

    /// What stands in a cell of a row.
    ///
    /// # Errors
    /// When there is no such cell.
    pub fn cell(&self, column: &str, row: usize) -> Result<String> {
        self.value(&names::cell(column, row))
    }

    /// What stands in the box of a name, if there is one.
    ///
    /// # Errors
    /// When the browser does not answer.
    pub fn value_if_any(&self, name: &str) -> Result<Option<String>> {
        if self.has(name)? { self.value(name).map(Some) } else { Ok(None) }
    }

    /// Chooses an option of a list by what it says.
    ///
    /// # Errors
    /// When the list has no such option.
    pub fn choose(&self, name: &str, option: &str) -> Result<()> {
        self.click(name)?;
        self.press(Key::Escape)?;
        self.type_option(name, option)
    }

    /// Chooses an option of the list that has the focus, by what it says.
    ///
    /// # Errors
    /// When the list has no such option.
    pub fn type_option(&self, name: &str, option: &str) -> Result<()> {
        let chosen = || {
            let list = serde_json::to_value(self.named(name)?)?;
            text_of(&self.browser.run("return arguments[0].selectedOptions[0].textContent", vec![list])?)
        };
        let typed = || {
            self.type_text(option)?;
            let begun = Instant::now();
            loop {
                let shown = chosen()?;
                if shown == option || begun.elapsed() > WORD {
                    return Ok(shown);
                }
                sleep(Duration::from_millis(50));
            }
        };
        eventually(&format!("“{name}” is “{option}”"), typed, |shown| shown == option)?;
        Ok(())
    }

    /// Copies a text to the browser's clipboard and pastes it with the keyboard where the cell of a name is. Other drivers than
    /// Chromium's give no right to the clipboard: there it is copied by the keyboard, too, out of a box.
    ///
    /// # Errors
    /// When the browser does not let the page write to its clipboard, or there is no such cell.
    pub fn paste(&self, name: &str, text: &str) -> Result<()> {
        if self.browser.engine() == Engine::Chromium {
            let rights = json!({ "permissions": ["clipboardReadWrite", "clipboardSanitizedWrite"] });
            self.browser.debug("Browser.grantPermissions", &rights)?;
            self.browser.run("return navigator.clipboard.writeText(arguments[0])", vec![json!(text)])?;
        } else {
            self.browser.run(
                "const box = document.createElement('textarea');
                document.body.append(box);
                box.value = arguments[0];
                box.select();",
                vec![json!(text)],
            )?;
            self.press_with_control('c')?;
            self.browser.run("document.querySelector('body > textarea').remove()", vec![])?;
        }
        self.click(name)?;
        self.press_with_control('v')
    }

    /// Lets the system ask for a "light" or a "dark" page.
    ///
    /// # Errors
    /// When the browser does not take it.
    pub fn wear(&self, scheme: &str) -> Result<()> {
        let media = json!({ "features": [{ "name": "prefers-color-scheme", "value": scheme }] });
        self.browser.debug("Emulation.setEmulatedMedia", &media)?;
        Ok(())
    }

    /// The text to be seen in an element, on whatever leaf; empty when it is hidden there.
    ///
    /// # Errors
    /// When there is no such element.
    pub fn text(&self, selector: &str) -> Result<String> {
        self.text_if_any(selector)?.with_context(|| format!("there is no {selector}"))
    }

    /// The same; nothing where there is no such element yet.
    fn text_if_any(&self, selector: &str) -> Result<Option<String>> {
        let script = format!(
            "{} return onItsLeaf(document.querySelector(arguments[0]), (node) => \
                 node && (node.checkVisibility() ? node.value ?? node.innerText : ''))",
            names::SEEN
        );
        Ok(self.browser.run(&script, vec![json!(selector)])?.as_str().map(str::to_owned))
    }

    /// How many elements there are.
    ///
    /// # Errors
    /// When the browser does not answer.
    pub fn count(&self, selector: &str) -> Result<usize> {
        let count = self
            .browser
            .run("return document.querySelectorAll(arguments[0]).length", vec![json!(selector)])?;
        Ok(usize::try_from(count.as_u64().context("a count")?)?)
    }

    /// Waits until an element shows just this text.
    ///
    /// # Errors
    /// When it does not come to that.
    pub fn sees(&self, selector: &str, text: &str) -> Result<()> {
        let what = format!("{selector} shows “{text}”");
        let is_it = |shown: &Option<String>| shown.as_deref().map(plain) == Some(plain(text));
        eventually(&what, || self.text_if_any(selector), is_it)?;
        Ok(())
    }

    /// Waits until an element shows a text with these words in it, and gives it.
    ///
    /// # Errors
    /// When it does not come to that.
    pub fn reads(&self, selector: &str, part: &str) -> Result<String> {
        let what = format!("{selector} says “{part}”");
        let holds = |shown: &Option<String>| {
            shown.as_deref().is_some_and(|shown| plain(shown).contains(&plain(part)))
        };
        Ok(eventually(&what, || self.text_if_any(selector), holds)?.unwrap_or_default())
    }

    /// Waits until the page says that all is saved.
    ///
    /// # Errors
    /// When it does not.
    pub fn is_saved(&self) -> Result<()> {
        self.sees(names::SAVED, "Saved")
    }

    /// The result, once what was typed is stored and drawn.
    ///
    /// # Errors
    /// When it is not.
    pub fn result(&self) -> Result<String> {
        let saving = || self.text(names::SAVED);
        eventually("what was typed is stored", saving, |said| said != names::SAVING)?;
        // Of edits in one frame the later ones are drawn in the next.
        self.browser.run(names::TWO_FRAMES, vec![])?;
        self.text(names::RESULT)
    }

    /// Opens a file in the page.
    ///
    /// # Errors
    /// When the page has no place for it.
    pub fn open_file(&self, file: &Path) -> Result<()> {
        let script = "return document.querySelector(arguments[0])";
        let input = self.browser.element(script, vec![json!(names::FILE)])?.context("no input for a file")?;
        self.browser.choose_file(&input, file)
    }

    /// That nothing was complained of: no error, no refusal by the page's own policy.
    ///
    /// # Errors
    /// When something was, with what was said.
    pub fn is_silent(&self) -> Result<()> {
        let said = self.browser.log()?;
        ensure!(said.is_empty(), "the browser's log says: {}", said.join(" | "));
        Ok(())
    }
}

/// Asks again and again until the answer is as it should be, and gives it.
///
/// # Errors
/// When it never is: what should have come to pass, and the last answer.
pub fn eventually<T: Debug>(
    what: &str,
    ask: impl Fn() -> Result<T>,
    is_right: impl Fn(&T) -> bool,
) -> Result<T> {
    let begun = Instant::now();
    loop {
        let answer = ask()?;
        if is_right(&answer) {
            return Ok(answer);
        }
        ensure!(
            begun.elapsed() < PATIENCE,
            "it should come to pass that {what}, but the last answer was {answer:?}"
        );
        sleep(Duration::from_millis(50));
    }
}

/// A text with plain spaces, as one would write it in a test: whether a line may end there shows nowhere in it.
pub fn plain(text: &str) -> String {
    text.replace('\u{a0}', " ")
}

fn text_of(value: &Value) -> Result<String> {
    value.as_str().map(str::to_owned).with_context(|| format!("no text but {value}"))
}
