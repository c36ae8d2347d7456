//! `cargo verify [PART…]`: every test, in parts.
//!
//! Each part prints what its runner prints; at the end stands a line a part and then the sum, alone on the last
//! line. A part whose test does not exist fails.

use std::path::PathBuf;
use std::process::{Command, ExitCode};

use anyhow::{Context, Result, bail};

use crate::machine::Browser;
use crate::project::Project;
use crate::summary::Count;
use crate::{compile, npm, pack, serve, shell, tidy};

type Part = fn(&Project) -> Result<Count>;

/// The parts, in the order in which they run: what fails soonest first.
const PARTS: [(&str, &str, Part); 6] = [
    ("style", "order, formatting, lints, documentation", style),
    ("native", "the crates' own tests", native),
    ("peers", "fitted lines beside ODRPACK's, if it can be had", peers),
    ("types", "the page's scripts against their declared types", types),
    ("wasm", "the same digits in a browser as natively", wasm),
    ("page", "the real page in a real browser", page),
];

/// Runs the parts named, or all.
///
/// # Errors
/// When a name is of no part.
pub fn command(project: &Project, names: &[String]) -> Result<ExitCode> {
    if let Some(stranger) = names.iter().find(|name| PARTS.iter().all(|(part, ..)| part != name)) {
        let parts = PARTS.map(|(part, ..)| part).join(", ");
        bail!("there is no part {stranger:?}; there are {parts}");
    }
    let chosen = PARTS.iter().filter(|(part, ..)| names.is_empty() || names.iter().any(|name| name == part));
    let mut lines = Vec::new();
    let mut sum = Count::default();
    for (name, what, run) in chosen {
        println!("\n== {name}: {what}");
        let count = run(project).unwrap_or_else(|error| {
            println!("{name} did not run: {error:#}");
            Count::one(false)
        });
        lines.push(format!("{name}: {count}"));
        sum += count;
    }
    println!("\n{}\n{sum}", lines.join("\n"));
    Ok(if sum.failed == 0 { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}

fn style(project: &Project) -> Result<Count> {
    let mut sum = tidy::check(project)?;
    let checks: [(&str, &[&str], &[&str]); 2] = [
        ("rustfmt", &["fmt", "--all", "--check"], &["fmt", "--version"]),
        (
            "clippy",
            &["clippy", "--workspace", "--all-targets", "--", "-D", "warnings"],
            &["clippy", "--version"],
        ),
    ];
    for (component, check, probe) in checks {
        if shell::succeeds(shell::cargo(project).args(probe)) {
            sum += check_passes(shell::cargo(project).args(check))?;
        } else {
            println!("skipped: this toolchain has no {component}");
        }
    }
    let mut document = shell::cargo(project);
    document
        .args(["doc", "--workspace", "--no-deps", "--document-private-items"])
        .env("RUSTDOCFLAGS", "-D warnings");
    sum += check_passes(&mut document)?;
    Ok(sum)
}

/// One check that passes when a program succeeds.
fn check_passes(command: &mut Command) -> Result<Count> {
    let passed = shell::overhear(command)?.success;
    println!("{}: {}", if passed { "passed" } else { "FAILED" }, shell::shown(command));
    Ok(Count::one(passed))
}

fn native(project: &Project) -> Result<Count> {
    let heard = shell::overhear(shell::cargo(project).args(["test", "--workspace", "--no-fail-fast"]))?;
    Ok(Count::heard(&heard))
}

/// Has a general library fit the lines of `tests/numbers/odrpack.rs` anew. It needs Python, and PyPI once; without them
/// the part says so and counts nothing, since its answers of another day are compared in any case.
fn peers(project: &Project) -> Result<Count> {
    shell::run(shell::cargo(project).args(["build", "--quiet", "-p", "measure"]))?;
    let mut asked = shell::cargo(project);
    asked.args(["run", "--quiet", "-p", "measure", "--", "--python"]);
    let Some(python) = shell::answer(&mut asked) else {
        println!("skipped: ODRPACK needs python3 with its module venv, and numpy and scipy from PyPI");
        return Ok(Count::default());
    };
    let reference = project.root.join("tests/numbers/reference");
    let mut script = Command::new(python);
    script.arg(reference.join("make_odrpack.py")).arg(reference.join("odrpack-200.json"));
    let answers = shell::answer(&mut script).context("make_odrpack.py failed")?;
    let live = keep(project, "odrpack-live.json", answers.as_bytes())?;
    let mut test = shell::cargo(project);
    test.args(["test", "--quiet", "-p", "slope-of-light", "--test", "numbers", "odrpack_fits_them_now"]);
    Ok(Count::heard(&shell::overhear(test.args(["--", "--nocapture"]).env("SLOPE_ODRPACK_LIVE", live))?))
}

/// Type-checks the page with the TypeScript compiler that `tests/page/package-lock.json` pins.
fn types(project: &Project) -> Result<Count> {
    pack::pack(project)?;
    let folder = project.page_tests();
    npm::install(&folder)?;
    let compiler = folder.join("node_modules/typescript/bin/tsc");
    check_passes(Command::new("node").arg(compiler).arg("-p").arg(&folder).current_dir(&project.root))
}

/// Works out digests natively, then lets the same code in a browser compare its own with them.
fn wasm(project: &Project) -> Result<Count> {
    let browser = Browser::get()?;
    let digests = keep(project, "native-digests.json", &compile::example_output(project, "digests")?)?;
    let test = compile::browser_test(project, "same_digits", &[("NATIVE_DIGESTS", digests)])?;
    let capabilities = keep(project, "webdriver.json", browser.capabilities().to_string().as_bytes())?;
    let mut runner = shell::cargo(project);
    runner.args(["run", "--quiet", "-p", "wasm-test-runner", "--"]).arg(test);
    for driver in ["GECKODRIVER", "SAFARIDRIVER", "MSEDGEDRIVER", "CHROMEDRIVER"] {
        runner.env_remove(driver).env_remove(format!("{driver}_REMOTE"));
    }
    runner
        .env("CHROMEDRIVER", &browser.driver)
        .env("WASM_BINDGEN_TEST_WEBDRIVER_JSON", capabilities)
        // Seconds; the default of 20 is short for a busy machine.
        .env("WASM_BINDGEN_TEST_TIMEOUT", "300");
    Ok(Count::heard(&shell::overhear(&mut runner)?))
}

/// Writes a file into the target folder, when it is not there with the same content.
fn keep(project: &Project, name: &str, bytes: &[u8]) -> Result<PathBuf> {
    let path = project.target.join(name);
    pack::write_if_changed(&path, bytes)?;
    Ok(path)
}

fn page(project: &Project) -> Result<Count> {
    let browser = Browser::get()?;
    pack::pack(project)?;
    npm::install(&project.page_tests())?;
    let mut suite = page_suite(project, "page-tests", &browser)?;
    Ok(Count::heard(&shell::overhear(&mut suite)?))
}

/// A package of tests or measurements that drives the packed page, told where that is and by what to drive it.
///
/// # Errors
/// When the page can't be served.
pub fn page_suite(project: &Project, package: &str, browser: &Browser) -> Result<Command> {
    let address = serve::in_background(project.dist())?;
    let mut suite = shell::cargo(project);
    suite
        .args(["run", "--quiet", "-p", package])
        .env("SLOPE_DIST", project.dist())
        .env("SLOPE_URL", format!("http://{address}/"))
        .env("CHROMIUM", &browser.chromium)
        .env("CHROMEDRIVER", &browser.driver);
    Ok(suite)
}
