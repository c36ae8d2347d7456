//! The program behind `cargo serve`, `verify`, `pack`, `measure`, `demo` and `pictures` (aliases in `.cargo/config.toml`).
//!
//! The modules, in the order in which work flows:
//!
//! - `project`, `files`: where things are. `shell`: starting other programs. `steps`: saying how long it takes.
//! - `machine`: what is installed, and installing. `toolchain`: which compiler makes wasm here.
//! - `compile`: wasm by cargo. `bind`: its JavaScript glue. `build`: both, for all there is.
//! - `npm`, `bundle`: scripts and styles, joined and shrunk. `html`, `onefile`: the whole page as one file. `words`, `messages`, `help`: texts. `script`, `prose`: words that stand in code.
//! - `pack`: `www/dist/`. `watch`: building again what changed. `serve`: on loopback.
//! - `summary`, `native`, `verify`, `measure`: tests and figures.
//! - `sources`, `exports`, `tidy`: the order in which modules and scripts stand, and the types that exports name.

mod project;
mod files;
mod shell;
mod summary;
mod messages;
mod words;
mod script;
mod prose;
mod help;
mod steps;
mod machine;
mod toolchain;
mod compile;
mod bind;
mod npm;
mod build;
mod bundle;
mod html;
mod onefile;
mod pack;
mod watch;
mod serve;
mod sources;
mod exports;
mod tidy;
mod native;
mod verify;
mod measure;

use std::process::ExitCode;

use anyhow::{Result, bail};
use project::Project;

const USAGE: &str = "\
cargo serve [--port N]     build, then serve the notebook on this machine alone
cargo verify [PART…]       run the tests (parts: style native peers types wasm measure page; when named, long, firefox and webkit)
cargo pack                 make www/dist/ and www/dist/slope-of-light.html
cargo measure [NAME…]      print figures, a row each: name, value, unit
cargo demo                 remake demo/ from its seeds
cargo pictures             take the pictures of help and README anew";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    match run(&arguments) {
        Ok(code) => code,
        Err(error) => {
            eprintln!("error: {error:#}");
            ExitCode::FAILURE
        }
    }
}

fn run(arguments: &[String]) -> Result<ExitCode> {
    let project = Project::find();
    let Some((command, rest)) = arguments.split_first() else { bail!("which command?\n{USAGE}") };
    match command.as_str() {
        "serve" => serve::command(&project, rest)?,
        "pack" => pack::command(&project)?,
        "verify" => return verify::command(&project, rest),
        "measure" => measure::command(&project, rest)?,
        "pictures" => verify::pictures(&project)?,
        "demo" => compile::example(&project, &["--profile", "tool"], "make_demo", &["demo"])?,
        "help" | "--help" | "-h" => println!("{USAGE}"),
        other => bail!("there is no command {other:?}\n{USAGE}"),
    }
    Ok(ExitCode::SUCCESS)
}
