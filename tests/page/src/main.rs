//! The real page, packed and served, driven in a headless Chromium, one test after the other.
//!
//! Told by variables where things are: `SLOPE_URL` (the page), `SLOPE_DIST` (its folder), `CHROMIUM`,
//! `CHROMEDRIVER`. Arguments, if any, choose the tests whose names hold one of them. Prints a line a test, and
//! `N passed, N failed` alone on the last line.

mod driver;
mod names;
mod opening;
mod page;

use std::env;
use std::path::PathBuf;
use std::process::ExitCode;

use anyhow::{Context, Result};

use crate::driver::Driver;
use crate::page::Stage;

type Test = fn(&Stage) -> Result<()>;

const TESTS: [(&str, Test); 1] = [("opens_on_the_demo", opening::opens_on_the_demo)];

fn main() -> Result<ExitCode> {
    let stage = Stage {
        driver: Driver::start(&path("CHROMEDRIVER")?, path("CHROMIUM")?)?,
        address: env::var("SLOPE_URL").context("SLOPE_URL says where the page is served")?,
        dist: path("SLOPE_DIST")?,
    };
    let wanted: Vec<String> = env::args().skip(1).collect();
    let chosen = |name: &str| wanted.is_empty() || wanted.iter().any(|part| name.contains(part.as_str()));
    let (mut passed, mut failed) = (0, 0);
    for (name, test) in TESTS.into_iter().filter(|(name, _)| chosen(name)) {
        match test(&stage) {
            Ok(()) => {
                passed += 1;
                println!("test {name} ... ok");
            }
            Err(why) => {
                failed += 1;
                println!("test {name} ... FAILED ({why:#})");
            }
        }
    }
    println!("\n{passed} passed, {failed} failed");
    Ok(if failed == 0 { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}

fn path(variable: &str) -> Result<PathBuf> {
    env::var_os(variable).map(PathBuf::from).with_context(|| format!("{variable} is not set"))
}
