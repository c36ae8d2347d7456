//! The browsers that the page is driven in, and how each is asked to keep to itself.

use std::ffi::OsString;
use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};
use serde_json::{Value, json};

/// An address of this machine that no browser takes for it: a page from there comes over plain HTTP and is no secure context.
/// It is 127.0.0.1 as IPv6 writes it (RFC 4291, section 2.5.5.2), which is not among the addresses of one's own machine that
/// are trusted (W3C, Secure Contexts, section 3.1).
pub const PLAIN_HOST: &str = "[::ffff:127.0.0.1]";

/// What Chromium is started with: no window, no outside calls; `--no-sandbox` is needed where the tests run as root.
const FLAGS: [&str; 10] = [
    "--headless",
    "--accept-lang=en",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--window-size=1280,900",
];

/// A browser's engine.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Engine {
    /// Chromium, or a browser made from it.
    Chromium,
    /// Firefox, which speaks no debugging protocol of Chromium's and keeps no log for its driver.
    Firefox,
    /// WebKit, as the small browser has it that comes with its library for GTK: a session keeps nothing once it ends.
    WebKit,
}

/// A browser of this machine with its driver.
pub struct Installed {
    /// Its engine.
    pub engine: Engine,
    /// The browser, where its driver has to be told of it: that of WebKit has one of its own.
    pub browser: Option<PathBuf>,
    /// The program that drives it.
    pub driver: PathBuf,
}

/// Whether a browser's settings let pages store data.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StoresData {
    /// They do.
    Always,
    /// Site data is switched off.
    Never,
}

impl Installed {
    /// The browser that variables tell of: `FIREFOX` with `GECKODRIVER`, or `WEBKITDRIVER` alone, else
    /// `CHROMIUM` with `CHROMEDRIVER`.
    ///
    /// # Errors
    /// When one of a pair is not set.
    pub fn told(variable: impl Fn(&str) -> Option<OsString>) -> Result<Self> {
        let path =
            |name: &str| variable(name).map(PathBuf::from).with_context(|| format!("{name} is not set"));
        Ok(if variable("FIREFOX").is_some() {
            Self { engine: Engine::Firefox, browser: Some(path("FIREFOX")?), driver: path("GECKODRIVER")? }
        } else if variable("WEBKITDRIVER").is_some() {
            Self { engine: Engine::WebKit, browser: None, driver: path("WEBKITDRIVER")? }
        } else {
            Self { engine: Engine::Chromium, browser: Some(path("CHROMIUM")?), driver: path("CHROMEDRIVER")? }
        })
    }

    /// What the driver is started with.
    pub fn driver_arguments(&self, port: u16) -> Vec<String> {
        let own: &[&str] = match self.engine {
            Engine::Chromium => &["--allowed-ips=127.0.0.1", "--silent"],
            Engine::Firefox => &["--log=fatal"],
            Engine::WebKit => &[],
        };
        [format!("--port={port}")]
            .into_iter()
            .chain(own.iter().map(|&argument| argument.to_owned()))
            .collect()
    }

    /// The variables that the driver is started with and hands on: WebKit finds by them where downloads go (`user-dirs.dirs` of
    /// the XDG user directories), and its language.
    ///
    /// # Errors
    /// When a file beside the folder for downloads can't be written.
    pub fn environment(&self, downloads: &Path) -> Result<Vec<(&'static str, PathBuf)>> {
        if self.engine != Engine::WebKit {
            return Ok(Vec::new());
        }
        let settings = downloads.with_file_name("settings");
        fs::create_dir_all(&settings)?;
        let line = format!("XDG_DOWNLOAD_DIR=\"{}\"\n", downloads.display());
        fs::write(settings.join("user-dirs.dirs"), line)?;
        Ok(vec![("XDG_CONFIG_HOME", settings), ("LANG", "en_US.UTF-8".into())])
    }

    /// The argument that tells the browser where it keeps what it keeps, by which its processes are known.
    pub fn profile_argument(&self, profile: &Path) -> String {
        match self.engine {
            Engine::Chromium => format!("--user-data-dir={}", profile.display()),
            Engine::Firefox | Engine::WebKit => profile.display().to_string(),
        }
    }

    /// Capabilities of a session whose browser keeps what it keeps as `profile` says, and puts downloads into a folder.
    pub fn capabilities(&self, stores: StoresData, profile: &str, downloads: &Path) -> Value {
        match self.engine {
            Engine::Chromium => self.of_chromium(stores, profile, downloads),
            Engine::Firefox => self.of_firefox(stores, profile, downloads),
            Engine::WebKit => json!({}),
        }
    }

    fn of_chromium(&self, stores: StoresData, profile: &str, downloads: &Path) -> Value {
        let flags: Vec<&str> = FLAGS.into_iter().chain([profile]).collect();
        json!({
            "goog:loggingPrefs": { "browser": "ALL" },
            "goog:chromeOptions": { "binary": self.browser, "args": flags, "prefs": {
                "download.default_directory": downloads,
                "download.prompt_for_download": false,
                // Of Chromium's content settings, 1 allows and 2 blocks; "cookies" means all data of a site.
                "profile.default_content_setting_values.cookies": match stores { StoresData::Always => 1, StoresData::Never => 2 },
            }},
        })
    }

    fn of_firefox(&self, stores: StoresData, profile: &str, downloads: &Path) -> Value {
        json!({ "moz:firefoxOptions": {
            "binary": self.browser,
            "args": ["-headless", "-profile", profile, "--width=1280", "--height=900"],
            "prefs": {
                "browser.download.folderList": 2,
                "browser.download.dir": downloads,
                "intl.accept_languages": "en",
                // 2 blocks all data of a site.
                "network.cookie.cookieBehavior": match stores { StoresData::Always => 5, StoresData::Never => 2 },
                "app.update.enabled": false,
                "datareporting.policy.dataSubmissionEnabled": false,
            },
        }})
    }
}
