//! What this machine is and has, and installing what is missing where that can be done unasked: as root on
//! Debian, with `apt-get`. Everywhere else a command says in one line what to install.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::Once;

use anyhow::{Context, Result, bail};

use crate::shell;

/// Debian, or a system made from it, with its package tool.
pub fn is_debian() -> bool {
    Path::new("/etc/debian_version").exists() && shell::on_path("apt-get").is_some()
}

/// Whether packages can be installed without asking anybody.
pub fn can_install() -> bool {
    is_debian() && shell::answer(Command::new("id").arg("-u")).is_some_and(|id| id == "0")
}

/// Whether a Debian package is installed.
fn is_installed(package: &str) -> bool {
    shell::answer(Command::new("dpkg-query").args(["-W", "-f=${db:Status-Status}", package]))
        .is_some_and(|status| status == "installed")
}

/// Sees to it that Debian packages are installed; nothing is run when they are.
///
/// # Errors
/// When `apt-get` fails.
pub fn apt_install(packages: &[&str]) -> Result<()> {
    static UPDATE: Once = Once::new();
    let missing: Vec<&str> = packages.iter().copied().filter(|package| !is_installed(package)).collect();
    if missing.is_empty() {
        return Ok(());
    }
    println!("installing with apt-get: {}", missing.join(" "));
    UPDATE.call_once(|| {
        // Old package lists may still do, so a failure here is left for the installation to judge.
        if shell::run(apt_get().args(["-q=2", "update"])).is_err() {
            eprintln!("the package lists could not be brought up to date; going on with those present");
        }
    });
    shell::run(apt_get().args(["-q=2", "install", "--yes", "--no-install-recommends"]).args(&missing))
        .with_context(|| format!("could not install {}", missing.join(" ")))
}

fn apt_get() -> Command {
    let mut command = Command::new("apt-get");
    command.env("DEBIAN_FRONTEND", "noninteractive").env_remove("LD_LIBRARY_PATH");
    command
}

/// A headless browser and the program that drives it.
pub struct Browser {
    /// Chromium, or a browser made from it.
    pub chromium: PathBuf,
    /// The program that drives it by the `WebDriver` protocol.
    pub driver: PathBuf,
}

impl Browser {
    /// The browser of this machine, installed first where that can be done.
    ///
    /// # Errors
    /// When there is none; the message says what to install.
    pub fn get() -> Result<Self> {
        if let Some(browser) = Self::look() {
            return Ok(browser);
        }
        if can_install() {
            apt_install(&["chromium", "chromium-driver"])?;
        }
        Self::look().context(
            "no Chromium with its driver was found: install both (Debian: apt-get install chromium chromium-driver), \
             or set CHROMIUM and CHROMEDRIVER to their paths",
        )
    }

    fn look() -> Option<Self> {
        let named = |variable: &str, programs: &[&str]| {
            std::env::var_os(variable)
                .map(PathBuf::from)
                .or_else(|| programs.iter().find_map(|program| shell::on_path(program)))
        };
        Some(Self {
            chromium: named("CHROMIUM", &["chromium", "chromium-browser", "google-chrome"])?,
            driver: named("CHROMEDRIVER", &["chromedriver"])?,
        })
    }

    /// Capabilities for a session that keeps to itself: no window, no outside calls. `--no-sandbox` is needed
    /// where the tests run as root.
    pub fn capabilities(&self) -> serde_json::Value {
        serde_json::json!({ "goog:chromeOptions": {
            "binary": self.chromium,
            "args": [
                "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
                "--disable-background-networking", "--disable-component-update", "--disable-sync",
            ],
        }})
    }
}

/// Sees to it that Node and npm are there: the type check of the page runs on them.
///
/// # Errors
/// When they are missing and can't be installed; the message says what to install.
pub fn need_npm() -> Result<()> {
    let present = || shell::on_path("node").is_some() && shell::on_path("npm").is_some();
    if !present() && can_install() {
        apt_install(&["nodejs", "npm"])?;
    }
    if !present() {
        bail!("Node was not found: install it with npm (Debian: apt-get install nodejs npm)");
    }
    Ok(())
}

/// Sees to LaTeX, where that can be done: the report in LaTeX is tried with it. Without it that trial is skipped, and
/// says so.
pub fn wish_latex() {
    if shell::on_path("pdflatex").is_none()
        && can_install()
        && let Err(error) = apt_install(&["texlive-latex-base"])
    {
        eprintln!("going on without LaTeX: {error:#}");
    }
}
