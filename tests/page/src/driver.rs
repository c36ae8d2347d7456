//! The driver and the browsers it starts: the `WebDriver` protocol (W3C) and, where that says nothing, the
//! browser's own debugging protocol. Everything waits for its answer, so that a test reads from top to bottom.

use std::cell::Cell;
use std::error::Error;
use std::fmt;
use std::fs;
use std::future::Future;
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::thread::sleep;
use std::time::{Duration, Instant};

use anyhow::{Context, Result, bail, ensure};
use fantoccini::actions::{
    InputSource, KeyAction, KeyActions, MOUSE_BUTTON_LEFT, MouseActions, PointerAction,
};
use fantoccini::elements::{Element, ElementRef};
use fantoccini::wd::{Capabilities, WebDriverCompatibleCommand, WindowHandle};
use fantoccini::{Client, ClientBuilder};
use http::Method;
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::{Value, json};
use tokio::runtime::{Builder, Runtime};
use url::{ParseError, Url};

use crate::engine::{Engine, Installed, StoresData};

/// The longest that one command may take.
const PATIENCE: Duration = Duration::from_mins(1);

/// How long a new window may take to be there.
const OPENING: Duration = Duration::from_secs(20);

/// How long a window may take to have another size.
const RESIZING: Duration = Duration::from_secs(5);

/// Why a test can't be made on this system: it is skipped, neither passed nor failed.
#[derive(Debug)]
pub struct Skipped(pub &'static str);

impl fmt::Display for Skipped {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.0)
    }
}

impl Error for Skipped {}

/// Where the system lists its processes; Linux alone does.
const PROCESSES: &str = "/proc";

/// Starts browsers.
pub struct Driver {
    installed: Installed,
    runtime: Runtime,
}

impl Driver {
    /// What starts browsers of a kind.
    ///
    /// # Errors
    /// When the system gives no means to wait for their answers.
    pub fn start(installed: Installed) -> Result<Self> {
        Ok(Self { installed, runtime: Builder::new_current_thread().enable_all().build()? })
    }

    /// Starts a browser that keeps what it keeps in `profile`, and puts what it downloads into `downloads`.
    ///
    /// # Errors
    /// When it does not start.
    pub fn browser(&self, profile: &Path, downloads: &Path) -> Result<Browser<'_>> {
        self.browser_that(StoresData::Always, profile, downloads)
    }

    /// Starts a browser that stores data of pages or does not.
    ///
    /// # Errors
    /// When it does not start.
    pub fn browser_that(&self, stores: StoresData, profile: &Path, downloads: &Path) -> Result<Browser<'_>> {
        fs::create_dir_all(downloads)?;
        // Firefox makes no folder for what it is told to keep.
        fs::create_dir_all(profile)?;
        let data = self.installed.profile_argument(profile);
        let capabilities = self.installed.capabilities(stores, &data, downloads);
        let capabilities: Capabilities = serde_json::from_value(capabilities)?;
        let program = Program::start(&self.installed, downloads)?;
        let mut connector = ClientBuilder::new(HttpConnector::new());
        let client = self
            .wait(connector.capabilities(capabilities).connect(&program.address))
            .context("could not start the browser")?;
        let browser = Browser { driver: self, _program: program, client, data, killed: Cell::new(false) };
        if browser.engine() == Engine::WebKit {
            // The others are started with this size.
            browser.resize(1280, 900)?;
        }
        Ok(browser)
    }

    fn wait<T, E: std::error::Error + Send + Sync + 'static>(
        &self,
        work: impl Future<Output = Result<T, E>>,
    ) -> Result<T> {
        let answer = self.runtime.block_on(async { tokio::time::timeout(PATIENCE, work).await });
        Ok(answer.context("the browser did not answer in time")??)
    }
}

/// A running driver program. A browser has one of its own: that of Firefox drives no two at a time.
struct Program {
    process: Child,
    address: String,
}

impl Program {
    /// Starts it on a free port of this machine.
    fn start(installed: &Installed, downloads: &Path) -> Result<Self> {
        let port = TcpListener::bind((Ipv4Addr::LOCALHOST, 0))?.local_addr()?.port();
        let process = Command::new(&installed.driver)
            .args(installed.driver_arguments(port))
            .envs(installed.environment(downloads)?)
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .with_context(|| format!("could not start {}", installed.driver.display()))?;
        let started = Self { process, address: format!("http://127.0.0.1:{port}") };
        let begun = Instant::now();
        while TcpStream::connect((Ipv4Addr::LOCALHOST, port)).is_err() {
            ensure!(begun.elapsed() < PATIENCE, "the driver does not answer on port {port}");
            sleep(Duration::from_millis(20));
        }
        Ok(started)
    }
}

impl Drop for Program {
    fn drop(&mut self) {
        // It may be gone already; then there is nothing to end.
        drop(self.process.kill());
        drop(self.process.wait());
    }
}

/// One browser. It is closed when it is dropped.
pub struct Browser<'d> {
    driver: &'d Driver,
    /// Ends with it.
    _program: Program,
    client: Client,
    /// The argument by which its processes are known.
    data: String,
    killed: Cell<bool>,
}

impl Browser<'_> {
    /// Goes to an address.
    ///
    /// # Errors
    /// When the browser can't.
    pub fn go(&self, address: &str) -> Result<()> {
        self.driver.wait(self.client.goto(address))
    }

    /// Loads the page again.
    ///
    /// # Errors
    /// When the browser can't.
    pub fn reload(&self) -> Result<()> {
        match self.engine() {
            Engine::Chromium => self.driver.wait(self.client.refresh()),
            Engine::Firefox | Engine::WebKit => self.reload_from_inside(),
        }
    }

    /// As a person has it loaded again: the driver of Firefox goes past the service worker.
    fn reload_from_inside(&self) -> Result<()> {
        self.run("window.before = true; setTimeout(() => location.reload())", vec![])?;
        let begun = Instant::now();
        // While it is being loaded the page may not answer.
        while self.run("return window.before ?? null", vec![]).map_or(true, |before| !before.is_null()) {
            ensure!(begun.elapsed() < PATIENCE, "the page is not loaded again");
            sleep(Duration::from_millis(50));
        }
        Ok(())
    }

    /// Runs a script in the page and gives what it returns.
    ///
    /// # Errors
    /// When the script throws.
    pub fn run(&self, script: &str, arguments: Vec<Value>) -> Result<Value> {
        self.driver.wait(self.client.execute(script, arguments))
    }

    /// Has the page find one core from now on, so that what runs beside it lasts as long on any machine as on a small one.
    ///
    /// # Errors
    /// When the browser does not answer.
    pub fn finds_one_core(&self) -> Result<()> {
        self.run("Object.defineProperty(navigator, 'hardwareConcurrency', { value: 1 })", vec![]).map(drop)
    }

    /// The element that a script returns, if it returns one.
    ///
    /// # Errors
    /// When the script throws.
    pub fn element(&self, script: &str, arguments: Vec<Value>) -> Result<Option<Element>> {
        let value = self.run(script, arguments)?;
        let id = value.as_object().and_then(|object| object.values().next()).and_then(Value::as_str);
        Ok(id.map(|id| Element::from_element_id(self.client.clone(), ElementRef::from(id.to_owned()))))
    }

    /// Clicks an element.
    ///
    /// # Errors
    /// When it can't be clicked, for example because something lies over it.
    pub fn click(&self, element: &Element) -> Result<()> {
        self.driver.wait(element.click())
    }

    /// Chooses a file in a file input.
    ///
    /// # Errors
    /// When the element is none.
    pub fn choose_file(&self, element: &Element, file: &Path) -> Result<()> {
        self.driver.wait(element.send_keys(&file.to_string_lossy()))
    }

    /// Presses keys one after the other, `held` being held down meanwhile.
    ///
    /// # Errors
    /// When the browser takes none.
    pub fn press(&self, held: &[char], keys: impl IntoIterator<Item = char>) -> Result<()> {
        let down = |value| KeyAction::Down { value };
        let up = |value| KeyAction::Up { value };
        let actions = held
            .iter()
            .map(|&key| down(key))
            .chain(keys.into_iter().flat_map(|key| [down(key), up(key)]))
            .chain(held.iter().rev().map(|&key| up(key)))
            .fold(KeyActions::new("keyboard".into()), KeyActions::then);
        self.driver.wait(self.client.perform_actions(actions))
    }

    /// Where Tab led out of the page to the browser's own bars, goes on at the page's beginning, as Tab does from the last of
    /// them: the driver of Firefox presses no keys in bars.
    ///
    /// # Errors
    /// When the browser does not answer.
    pub fn comes_round(&self) -> Result<()> {
        const ROUND: &str = "
            if (document.hasFocus()) return;
            const place = document.querySelector('dialog[open]') ?? document;
            const stops = [...place.querySelectorAll('a, button, input, select, textarea, summary')];
            window.focus();
            stops.find((node) => node.checkVisibility())?.focus();";
        match self.engine() {
            Engine::Chromium => Ok(()),
            Engine::Firefox | Engine::WebKit => self.run(ROUND, vec![]).map(drop),
        }
    }

    /// Presses keys one after the other without a rest longer than a pause.
    ///
    /// # Errors
    /// When the browser takes none.
    pub fn press_steadily(&self, keys: impl IntoIterator<Item = char>, pause: Duration) -> Result<()> {
        let actions = keys
            .into_iter()
            .flat_map(|value| {
                [KeyAction::Down { value }, KeyAction::Up { value }, KeyAction::Pause { duration: pause }]
            })
            .fold(KeyActions::new("keyboard".into()), KeyActions::then);
        self.driver.wait(self.client.perform_actions(actions))
    }

    /// Presses and lets go the mouse's first button at a place in the window.
    ///
    /// # Errors
    /// When there is no such place.
    pub fn press_at(&self, [x, y]: [f64; 2]) -> Result<()> {
        let button = MOUSE_BUTTON_LEFT;
        let actions = MouseActions::new("mouse".into())
            .then(PointerAction::MoveTo { duration: None, x: x.round(), y: y.round() })
            .then(PointerAction::Down { button })
            .then(PointerAction::Up { button });
        self.driver.wait(self.client.perform_actions(actions))
    }

    /// Gives the page a window of so many CSS pixels; a narrow one is a phone's.
    ///
    /// # Errors
    /// When the browser does not take it: [`Skipped`] where it makes no window of that size.
    pub fn resize(&self, width: u32, height: u32) -> Result<()> {
        const BARS: &str = "return [outerWidth - innerWidth, outerHeight - innerHeight]";
        const SIZE: &str = "return [innerWidth, innerHeight]";
        if self.engine() == Engine::Chromium {
            let size =
                json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": width < 500 });
            return self.debug("Emulation.setDeviceMetricsOverride", &size).map(drop);
        }
        let begun = Instant::now();
        while self.run(SIZE, vec![])? != json!([width, height]) {
            if begun.elapsed() > RESIZING {
                bail!(Skipped("it needs a window of a size that the browser makes none of"));
            }
            let [across, down]: [u32; 2] = serde_json::from_value(self.run(BARS, vec![])?)?;
            self.driver.wait(self.client.set_window_size(width + across, height + down))?;
            sleep(Duration::from_millis(50));
        }
        Ok(())
    }

    /// The engine of this browser.
    pub fn engine(&self) -> Engine {
        self.driver.installed.engine
    }

    /// Goes on in Chromium alone.
    ///
    /// # Errors
    /// [`Skipped`] in others, with why.
    pub fn is_chromium_or(&self, why_not: &'static str) -> Result<()> {
        match self.engine() {
            Engine::Chromium => Ok(()),
            Engine::Firefox | Engine::WebKit => bail!(Skipped(why_not)),
        }
    }

    /// A command of the browser's debugging protocol.
    ///
    /// # Errors
    /// When the browser refuses it: [`Skipped`] where it has no such protocol.
    pub fn debug(&self, command: &str, parameters: &Value) -> Result<Value> {
        self.is_chromium_or("it needs the debugging protocol of Chromium")?;
        self.post("goog/cdp/execute", json!({ "cmd": command, "params": parameters }))
    }

    /// What the page's console, its network and its content policy said since this was last asked; of others than Chromium
    /// nothing, whose drivers keep no log.
    ///
    /// # Errors
    /// When the driver does not answer.
    pub fn log(&self) -> Result<Vec<String>> {
        if self.engine() != Engine::Chromium {
            return Ok(Vec::new());
        }
        let entries = self.post("se/log", json!({ "type": "browser" }))?;
        let entry = |entry: &Value| format!("{} {}: {}", entry["level"], entry["source"], entry["message"]);
        Ok(entries.as_array().into_iter().flatten().map(entry).collect())
    }

    fn post(&self, path: &'static str, body: Value) -> Result<Value> {
        self.driver.wait(self.client.issue_cmd(PostCommand { path, body }))
    }

    /// Opens another tab and goes to it.
    ///
    /// # Errors
    /// When the browser can't.
    pub fn open_tab(&self) -> Result<WindowHandle> {
        let tab = self.driver.wait(self.client.new_window(true))?.handle;
        self.switch_to(&tab)?;
        Ok(tab)
    }

    /// The tab that something opens.
    ///
    /// # Errors
    /// When it opens none.
    pub fn tab_opened_by(&self, work: impl FnOnce() -> Result<()>) -> Result<WindowHandle> {
        let before = self.driver.wait(self.client.windows())?;
        work()?;
        let begun = Instant::now();
        loop {
            let tabs = self.driver.wait(self.client.windows())?;
            if let Some(tab) = tabs.into_iter().find(|tab| !before.contains(tab)) {
                return Ok(tab);
            }
            ensure!(begun.elapsed() < OPENING, "no window was opened");
            sleep(Duration::from_millis(50));
        }
    }

    /// The tab that commands go to.
    ///
    /// # Errors
    /// When it was closed.
    pub fn tab(&self) -> Result<WindowHandle> {
        self.driver.wait(self.client.window())
    }

    /// Sends the commands that follow to another tab.
    ///
    /// # Errors
    /// When there is no such tab.
    pub fn switch_to(&self, tab: &WindowHandle) -> Result<()> {
        self.driver.wait(self.client.switch_to_window(tab.clone()))
    }

    /// Closes the tab that commands go to; they must be sent to another one then.
    ///
    /// # Errors
    /// When the browser can't.
    pub fn close_tab(&self) -> Result<()> {
        self.driver.wait(self.client.close_window())
    }

    /// Kills the browser with SIGKILL, so that it can write nothing more, and waits until it is gone.
    ///
    /// # Errors
    /// When it can't be killed, or is not found: [`Skipped`] where the system lists no processes.
    pub fn kill(&self) -> Result<()> {
        if self.engine() == Engine::WebKit {
            bail!(Skipped("WebKit’s sessions under a driver keep nothing once they end"));
        }
        if !Path::new(PROCESSES).is_dir() {
            bail!(Skipped("it kills the browser, which it can find only where the system has /proc"));
        }
        let begun = Instant::now();
        let mut found = false;
        loop {
            let processes = self.processes()?;
            if processes.is_empty() {
                ensure!(found, "the browser is not found, so it can't be killed");
                break;
            }
            if begun.elapsed() > PATIENCE {
                bail!("the browser can't be killed");
            }
            found = true;
            // One of them may have ended since they were listed: the next look tells.
            Command::new("kill").arg("-KILL").args(&processes).stderr(Stdio::null()).status()?;
            sleep(Duration::from_millis(20));
        }
        self.killed.set(true);
        Ok(())
    }

    /// The numbers of this browser's processes: those that were given its profile.
    fn processes(&self) -> Result<Vec<String>> {
        let mut found = Vec::new();
        for entry in fs::read_dir(PROCESSES)? {
            let path = entry?.path();
            // What is no process has no command line, and a process that ended meanwhile has none either.
            let Ok(line) = fs::read(path.join("cmdline")) else { continue };
            let name = path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
            let ours = line.split(|&byte| byte == 0).any(|argument| argument == self.data.as_bytes());
            if ours && name.bytes().all(|byte| byte.is_ascii_digit()) {
                found.push(name);
            }
        }
        Ok(found)
    }
}

impl Drop for Browser<'_> {
    fn drop(&mut self) {
        // A browser that was killed has nothing to close; its driver notices and says so.
        drop(self.driver.wait(self.client.clone().close()));
        if !self.killed.get() {
            drop(self.kill());
        }
    }
}

/// A command that the client does not know.
#[derive(Debug)]
struct PostCommand {
    path: &'static str,
    body: Value,
}

impl WebDriverCompatibleCommand for PostCommand {
    fn endpoint(&self, base: &Url, session: Option<&str>) -> Result<Url, ParseError> {
        base.join(&format!("session/{}/{}", session.unwrap_or_default(), self.path))
    }

    fn method_and_body(&self, _: &Url) -> (Method, Option<String>) {
        (Method::POST, Some(self.body.to_string()))
    }
}
