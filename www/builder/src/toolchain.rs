//! Which compiler makes wasm on this machine.
//!
//! In this order: (1) the active toolchain, when it has the target already; (2) Debian's own toolchain with the
//! source of its standard library, installed first where that can be done; (3) `rustup target add`, said before
//! it is run. `SLOPE_WASM_TOOLCHAIN` set to `present`, `debian` or `rustup` forces one.

use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result, bail};

use crate::project::Project;
use crate::{machine, shell};

/// The target the page is compiled for.
pub const TARGET: &str = "wasm32-unknown-unknown";
const DEBIAN_RUSTC: &str = "/usr/bin/rustc";
const DEBIAN_CARGO: &str = "/usr/bin/cargo";
const DEBIAN_STD: &str = "/usr/lib/rustlib/src/rust/library/std/Cargo.toml";
/// What of the standard library is built for the page, and for tests.
const DEBIAN_PARTS: &str = "build-std=std,panic_abort";
const DEBIAN_TEST_PARTS: &str = "build-std=std,panic_abort,test";
/// Small code rather than fast where the standard library has the choice (its sorts above all), and no back traces,
/// which a browser could not show.
const DEBIAN_FEATURES: &str = "build-std-features=panic-unwind,optimize_for_size";
/// Two numbers at a time where the link step makes that of a loop, which it does at its level 3 alone (`Cargo.toml` says where;
/// every browser engine has had it for years; it changes no digit), and hashes by a loop rather than unrolled.
const WASM_FLAGS: &str = "-Ctarget-feature=+simd128 --cfg=sha2_backend_soft=\"compact\"";
/// The page stops where it would panic, with no words made up for it: a twentieth of its code. Tests keep theirs.
const DEBIAN_PAGE_FLAGS: &str = "-Zunstable-options -Cpanic=immediate-abort";
const RUSTFLAGS: &str = "CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS";
const DEBIAN_PACKAGES: [&str; 3] = ["rustc-web", "cargo-web", "rust-web-src"];

/// A compiler that makes wasm.
pub enum Toolchain {
    /// The active one, which has the target.
    Active,
    /// Debian's, which builds the standard library along and links with the lld of its LLVM.
    Debian {
        /// `wasm-ld-N`.
        linker: PathBuf,
    },
}

impl Toolchain {
    /// Finds a toolchain, or gets one.
    ///
    /// # Errors
    /// When there is none and none can be had; the message says what to do.
    pub fn get() -> Result<Self> {
        match std::env::var("SLOPE_WASM_TOOLCHAIN").ok().as_deref() {
            Some("present") => Self::present().with_context(|| {
                format!("the active toolchain has no target {TARGET}, as SLOPE_WASM_TOOLCHAIN asks")
            }),
            Some("debian") => Self::debian(),
            Some("rustup") => Self::rustup(),
            Some(other) => bail!("SLOPE_WASM_TOOLCHAIN is {other:?}; it can be present, debian or rustup"),
            None => Self::first_that_serves(),
        }
    }

    fn first_that_serves() -> Result<Self> {
        if let Some(present) = Self::present() {
            Ok(present)
        } else if machine::can_install() || Self::debian_installed().is_some() {
            Self::debian()
        } else {
            Self::rustup()
        }
    }

    /// The active toolchain, when the target's library lies beside it.
    fn present() -> Option<Self> {
        let libraries =
            shell::answer(Command::new("rustc").args(["--print", "target-libdir", "--target", TARGET]))?;
        let mut entries = std::fs::read_dir(libraries).ok()?.flatten();
        entries
            .any(|entry| entry.file_name().to_string_lossy().starts_with("libstd-"))
            .then_some(Self::Active)
    }

    /// Debian's toolchain, when all of it is installed.
    fn debian_installed() -> Option<Self> {
        let complete = Path::new(DEBIAN_STD).exists() && Path::new(DEBIAN_CARGO).exists();
        let linker = PathBuf::from(format!("/usr/bin/wasm-ld-{}", debian_llvm()?));
        (complete && linker.exists()).then_some(Self::Debian { linker })
    }

    /// Debian's toolchain, installed when it is not there. The linker comes after the compiler, which tells its
    /// LLVM.
    fn debian() -> Result<Self> {
        if let Some(installed) = Self::debian_installed() {
            return Ok(installed);
        }
        if !machine::can_install() {
            bail!(
                "Debian's wasm toolchain is not complete: as root, apt-get install {} and the lld of its LLVM",
                DEBIAN_PACKAGES.join(" ")
            );
        }
        machine::apt_install(&DEBIAN_PACKAGES)?;
        let llvm = debian_llvm().with_context(|| format!("{DEBIAN_RUSTC} does not tell its LLVM version"))?;
        machine::apt_install(&[&format!("lld-{llvm}")])?;
        Self::debian_installed().context(
            "Debian's wasm toolchain is still not complete after its installation; install the target another way \
             and set SLOPE_WASM_TOOLCHAIN=present",
        )
    }

    fn rustup() -> Result<Self> {
        let mut add = Command::new("rustup");
        add.args(["target", "add", TARGET]);
        println!("getting the wasm target: {}", shell::shown(&add));
        shell::run(&mut add).with_context(|| {
            format!("the Rust toolchain in use needs the target {TARGET}: install it, then start again")
        })?;
        Self::present().with_context(|| format!("the target {TARGET} is not there after its installation"))
    }

    /// This toolchain's cargo with a subcommand, for the wasm target.
    pub fn cargo(&self, project: &Project, subcommand: &str) -> Command {
        let mut command = match self {
            Self::Active => {
                let mut command = shell::cargo(project);
                command.arg(subcommand).env(RUSTFLAGS, WASM_FLAGS);
                command
            }
            Self::Debian { linker } => {
                let mut command = shell::cargo_at(project, DEBIAN_CARGO);
                // What the active toolchain left in the environment would lead Debian's astray.
                for name in ["CARGO", "RUSTDOC", "RUSTUP_TOOLCHAIN", "RUSTUP_HOME", "LD_LIBRARY_PATH"] {
                    command.env_remove(name);
                }
                let page = subcommand == "rustc";
                let parts = if page { DEBIAN_PARTS } else { DEBIAN_TEST_PARTS };
                command
                    .env("RUSTC", DEBIAN_RUSTC)
                    .env("RUSTC_BOOTSTRAP", "1")
                    .env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_LINKER", linker)
                    .args([subcommand, "-Z", parts, "-Z", DEBIAN_FEATURES]);
                command.env(
                    RUSTFLAGS,
                    if page { format!("{DEBIAN_PAGE_FLAGS} {WASM_FLAGS}") } else { WASM_FLAGS.into() },
                );
                command
            }
        };
        command.args(["--target", TARGET]);
        command
    }
}

/// Major version of the LLVM in Debian's compiler.
fn debian_llvm() -> Option<String> {
    let version = shell::answer(Command::new(DEBIAN_RUSTC).arg("-vV").env_remove("LD_LIBRARY_PATH"))?;
    llvm_major(&version).map(str::to_owned)
}

/// The major version in what `rustc -vV` prints.
fn llvm_major(version: &str) -> Option<&str> {
    let number = version.lines().find_map(|line| line.strip_prefix("LLVM version: "))?;
    number.split('.').next()
}

#[cfg(test)]
#[path = "toolchain_test.rs"]
mod tests;
