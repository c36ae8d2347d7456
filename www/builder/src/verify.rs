//! `cargo verify [PART…]`: every test, in parts.
//!
//! Each part prints what its runner prints; at the end stand a line a part with its time, the slowest tests, what was
//! skipped and why, and then the sum, alone on the last line. A part whose test does not exist fails.

use std::fs;
use std::path::PathBuf;
use std::process::{Command, ExitCode};
use std::time::Instant;

use anyhow::{Context, Result, bail};

use crate::machine::Browser;
use crate::project::Project;
use crate::summary::Tally;
use crate::{compile, files, help, machine, native, npm, pack, prose, serve, shell, tidy, words};

/// A part: its name, what it checks, and how.
type Part = (&'static str, &'static str, fn(&Project) -> Result<Tally>);

/// The parts, in the order in which they run: what fails soonest first.
const PARTS: [Part; 7] = [
    ("style", "order, formatting, lints, documentation", style),
    ("native", "the crates' own tests", native),
    ("peers", "fitted lines beside ODRPACK's, if it can be had", peers),
    ("types", "the page's scripts against their declared types", types),
    ("wasm", "the same digits in a browser as natively", wasm),
    ("measure", "each benchmark once, at its smallest", measure),
    ("page", "the real page in a real browser", page),
];

/// The parts that run only when they are named.
const NAMED: [Part; 3] = [
    ("long", "studies at full length, of which the other parts hold a sample", long),
    ("firefox", "the real page in Firefox, but for what asks for more than its driver can", firefox),
    ("webkit", "the real page in WebKit, but for what asks for more than its driver can", webkit),
];

/// What the tests that fit lines beside ODRPACK's fresh answers are called: they need these answers.
const LIVE: &str = "odrpack_fits_them_now";

/// The set of tests in which they are.
const NUMBERS: &str = "numbers";

/// How many of the slowest tests are named at the end.
const SLOWEST: usize = 10;

/// Runs the parts named, or all but those that must be.
///
/// # Errors
/// When a name is of no part.
pub fn command(project: &Project, names: &[String]) -> Result<ExitCode> {
    let known = || PARTS.iter().chain(&NAMED);
    if let Some(stranger) = names.iter().find(|name| known().all(|(part, ..)| part != name)) {
        let parts: Vec<&str> = known().map(|(part, ..)| *part).collect();
        bail!("there is no part {stranger:?}; there are {}", parts.join(", "));
    }
    let is_chosen = |part: &str| {
        if names.is_empty() {
            PARTS.iter().any(|(name, ..)| *name == part)
        } else {
            names.iter().any(|n| n == part)
        }
    };
    let mut lines = Vec::new();
    let mut sum = Tally::default();
    for (name, what, run) in known().filter(|(part, ..)| is_chosen(part)) {
        println!("\n== {name}: {what}");
        let begun = Instant::now();
        let tally = run(project).unwrap_or_else(|error| {
            println!("{name} did not run: {error:#}");
            Tally::one(false)
        });
        let seconds = begun.elapsed().as_secs_f64();
        lines.push(format!("{name}: {tally}, {} skipped in {seconds:.0} s", tally.skipped.len()));
        sum += tally.of(name);
    }
    println!("\n{}", lines.join("\n"));
    print_slowest(&sum);
    print_skipped(&sum);
    println!("{sum}");
    Ok(if sum.failed == 0 { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}

fn print_slowest(sum: &Tally) {
    let slowest = sum.slowest(SLOWEST);
    if !slowest.is_empty() {
        println!("\nthe slowest tests:");
    }
    for test in slowest {
        println!("{:8.1} s  {}", test.time.as_secs_f64(), test.name);
    }
}

fn print_skipped(sum: &Tally) {
    match sum.skipped.as_slice() {
        [] => println!("\nnothing was skipped"),
        all => println!("\n{} skipped:\n{}", all.len(), all.join("\n")),
    }
}

fn style(project: &Project) -> Result<Tally> {
    let mut sum = tidy::check(project)?;
    sum += words::check(project)?;
    sum += prose::check(project)?;
    sum += help::check(project)?;
    let checks: [(&str, &[&str], &[&str]); 2] = [
        ("rustfmt", &["fmt", "--all", "--check"], &["fmt", "--version"]),
        (
            "clippy",
            &["clippy", "--workspace", "--all-targets", "--", "-D", "warnings"],
            &["clippy", "--version"],
        ),
    ];
    for (component, check, probe) in checks {
        sum += if shell::succeeds(shell::cargo(project).args(probe)) {
            check_passes(shell::cargo(project).args(check))?
        } else {
            Tally::skipped(component, "this toolchain has none")
        };
    }
    let mut document = shell::cargo(project);
    document
        .args(["doc", "--workspace", "--no-deps", "--document-private-items"])
        .env("RUSTDOCFLAGS", "-D warnings");
    sum += check_passes(&mut document)?;
    Ok(sum)
}

/// One check that passes when a program succeeds.
fn check_passes(command: &mut Command) -> Result<Tally> {
    let passed = shell::overhear(command)?.success;
    println!("{}: {}", if passed { "passed" } else { "FAILED" }, shell::shown(command));
    Ok(Tally::one(passed))
}

fn native(project: &Project) -> Result<Tally> {
    machine::wish_latex();
    let mut sum = Tally::default();
    for suite in native::suites(project)? {
        if suite.count(&[])? > 0 {
            sum += suite.run(&[], &[])?;
        }
    }
    sum += native::documented(project)?;
    Ok(sum)
}

/// What is ignored elsewhere: the studies at full length.
fn long(project: &Project) -> Result<Tally> {
    let chosen = ["--ignored", "--skip", LIVE];
    let mut sum = Tally::default();
    for suite in native::suites(project)? {
        if suite.count(&chosen)? > 0 {
            sum += suite.run(&chosen, &[])?;
        }
    }
    sum += page_tests(project, &["--long"])?;
    Ok(sum)
}

/// Has a general library fit the lines of `tests/numbers/odrpack.rs` anew. It needs Python, and PyPI once; without them
/// the part is skipped, since its answers of another day are compared in any case.
fn peers(project: &Project) -> Result<Tally> {
    let mut asked = Command::new(compile::program(project, "bin", "measure")?);
    asked.arg("--python").env("CARGO_TARGET_DIR", &project.target);
    let Some(python) = shell::answer(&mut asked) else {
        let why = "it needs python3 with its module venv, and numpy and scipy from PyPI";
        return Ok(Tally::skipped("ODRPACK", why));
    };
    let reference = project.root.join("tests/numbers/reference");
    let mut script = Command::new(python);
    script.arg(reference.join("make_odrpack.py")).arg(reference.join("odrpack-200.json"));
    let answers = shell::answer(&mut script).context("make_odrpack.py failed")?;
    let live = keep(project, "odrpack-live.json", answers.as_bytes())?;
    let suites = native::suites(project)?;
    let numbers =
        suites.iter().find(|suite| suite.name == NUMBERS).context("there is no such set of tests")?;
    numbers.run(&[LIVE, "--ignored", "--nocapture"], &[("SLOPE_ODRPACK_LIVE", &live)])
}

/// Holds the declarations of what crosses against the Rust types, type-checks the page with the TypeScript compiler that
/// `tests/page/package-lock.json` pins, and has it list the texts that the scripts say: each of the table must be said.
fn types(project: &Project) -> Result<Tally> {
    let mut sum = Tally::default();
    for (package, example, file) in DECLARATIONS {
        sum += Tally::one(are_declarations_current(project, package, example, file)?);
    }
    pack::pack(project)?;
    let folder = project.page_tests();
    npm::install(&folder)?;
    let compiler = folder.join("node_modules/typescript/bin/tsc");
    sum +=
        check_passes(Command::new("node").arg(compiler).arg("-p").arg(&folder).current_dir(&project.root))?;
    let mut lister = Command::new("node");
    lister.arg(folder.join("said.mjs")).arg(folder.join("tsconfig.json")).current_dir(&project.root);
    sum += words::each_is_said(project, &shell::output(&mut lister)?)?;
    Ok(sum)
}

/// The declarations of what crosses: the package and its example that prints them, and where they are kept.
const DECLARATIONS: [(&str, &str, &str); 2] = [
    ("slope-of-light", "declarations", "www/page/types.d.ts"),
    ("slope-worker", "worker_declarations", "www/page/worker-types.d.ts"),
];

fn are_declarations_current(project: &Project, package: &str, example: &str, file: &str) -> Result<bool> {
    let made = compile::example_output(project, example)?;
    let kept = fs::read(project.root.join(file)).with_context(|| format!("could not read {file}"))?;
    if made == kept {
        println!("passed: {file} declares the Rust types as they are");
        return Ok(true);
    }
    println!("FAILED: {file} differs from the Rust types. Make it anew:");
    println!("    cargo run -p {package} --example {example} > {file}");
    Ok(false)
}

/// Works out digests natively, then lets the same code in a browser compare its own with them.
fn wasm(project: &Project) -> Result<Tally> {
    let browser = Browser::get()?;
    let digests = keep(project, "native-digests.json", &compile::example_output(project, "digests")?)?;
    let test = compile::browser_test(project, "same_digits", &[("NATIVE_DIGESTS", digests)])?;
    let capabilities = keep(project, "webdriver.json", browser.capabilities().to_string().as_bytes())?;
    let mut runner = Command::new(compile::program(project, "example", "wasm-test-runner")?);
    runner.arg(test).current_dir(&project.root);
    for driver in ["GECKODRIVER", "SAFARIDRIVER", "MSEDGEDRIVER", "CHROMEDRIVER"] {
        runner.env_remove(driver).env_remove(format!("{driver}_REMOTE"));
    }
    runner
        .env("CHROMEDRIVER", &browser.driver)
        .env("WASM_BINDGEN_TEST_WEBDRIVER_JSON", capabilities)
        // Seconds; the default of 20 is short for a busy machine.
        .env("WASM_BINDGEN_TEST_TIMEOUT", "300");
    Ok(Tally::heard(&shell::overhear(&mut runner)?))
}

/// Writes a file into the target folder, when it is not there with the same content.
fn keep(project: &Project, name: &str, bytes: &[u8]) -> Result<PathBuf> {
    let path = project.target.join(name);
    files::write_if_changed(&path, bytes)?;
    Ok(path)
}

/// Takes each benchmark once: its figures are none, but one that no longer finds its way about the page fails.
fn measure(project: &Project) -> Result<Tally> {
    let mut suite = on_the_page(project, "measure")?;
    suite.arg("--once").env("CARGO_TARGET_DIR", &project.target);
    Ok(Tally::heard(&shell::overhear(&mut suite)?))
}

fn page(project: &Project) -> Result<Tally> {
    page_tests(project, &[])
}

/// The page suite in another browser, where that is installed with its driver.
fn firefox(project: &Project) -> Result<Tally> {
    let browser = shell::on_path("firefox-esr").or_else(|| shell::on_path("firefox"));
    let (Some(browser), Some(driver)) = (browser, shell::on_path("geckodriver")) else {
        let why =
            "it needs both (Debian: apt-get install firefox-esr, and cargo install --locked geckodriver)";
        return Ok(Tally::skipped("Firefox with its driver", why));
    };
    let mut suite = page_suite(project)?;
    suite.env("FIREFOX", browser).env("GECKODRIVER", driver);
    Ok(Tally::heard(&shell::overhear(&mut suite)?))
}

/// The page suite in WebKit, where that is installed with its driver; it shows its window, so it needs a display.
fn webkit(project: &Project) -> Result<Tally> {
    let display = std::env::var_os("DISPLAY").or_else(|| std::env::var_os("WAYLAND_DISPLAY"));
    let (Some(driver), Some(_)) = (shell::on_path("WebKitWebDriver"), display) else {
        let why = "it needs its driver and a display (Debian: apt-get install webkit2gtk-driver xvfb xauth, \
                   then xvfb-run cargo verify webkit)";
        return Ok(Tally::skipped("WebKit with its driver", why));
    };
    let mut suite = page_suite(project)?;
    suite.env("WEBKITDRIVER", driver);
    Ok(Tally::heard(&shell::overhear(&mut suite)?))
}

/// The page suite with some arguments.
fn page_tests(project: &Project, arguments: &[&str]) -> Result<Tally> {
    let mut suite = page_suite(project)?;
    Ok(Tally::heard(&shell::overhear(suite.args(arguments))?))
}

/// The page suite on the page as it is packed.
fn page_suite(project: &Project) -> Result<Command> {
    npm::install(&project.page_tests())?;
    on_the_page(project, "page-tests")
}

/// A program of tests or measurements, told where the page is, packed and module by module.
fn on_the_page(project: &Project, program: &str) -> Result<Command> {
    let browser = Browser::get()?;
    pack::pack(project)?;
    let mut suite = Command::new(compile::program(project, "bin", program)?);
    on_the_packed_page(&mut suite, project, &browser)?;
    let parts = serve::in_background(pack::source(project)?)?;
    suite.env("SLOPE_PARTS", format!("http://{parts}/"));
    Ok(suite)
}

/// `cargo pictures`: takes the pictures of the help in every language, and that of the README.
///
/// # Errors
/// When the page does not build or does not open, or a picture can't be written.
pub fn pictures(project: &Project) -> Result<()> {
    let browser = Browser::get()?;
    pack::pack(project)?;
    let folder = project.page().join(help::FOLDER).join("pictures");
    let program = compile::program(project, "bin", "page-tests")?;
    for language in words::languages(project)? {
        let mut taking = Command::new(&program);
        taking.args(["--pictures", language.as_str()]).arg(&folder);
        on_the_packed_page(&mut taking, project, &browser)?;
        shell::run(&mut taking)?;
    }
    let mut taking = Command::new(&program);
    taking.arg("--open-notebook").arg(project.root.join("www/picture.png"));
    on_the_packed_page(&mut taking, project, &browser)?;
    shell::run(&mut taking)
}

/// Serves the packed page, and tells a program of tests or measurements that drives it where it is and by what to drive it.
///
/// # Errors
/// When the page can't be served.
pub fn on_the_packed_page(suite: &mut Command, project: &Project, browser: &Browser) -> Result<()> {
    let address = serve::in_background(project.dist())?;
    suite
        .current_dir(&project.root)
        .env("SLOPE_DIST", project.dist())
        .env("SLOPE_URL", format!("http://{address}/"))
        .env("CHROMIUM", &browser.chromium)
        .env("CHROMEDRIVER", &browser.driver);
    Ok(())
}
