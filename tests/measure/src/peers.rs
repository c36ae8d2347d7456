//! General libraries doing the same work: numpy, scipy and pandas, of the versions in `requirements.txt`, in a virtual
//! environment of their own in the target folder.

use std::collections::BTreeMap;
use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::{env, fs};

use anyhow::{Context, Result, bail};
use serde::Deserialize;
use serde_json::{Value, json};
use slope_of_light::line::{Data, Noise, SharedColumn};

/// What a peer says of one way of fitting.
#[derive(Deserialize)]
pub struct Peer {
    /// The slope it finds.
    pub slope: f64,
    /// Median time of one fit, µs.
    pub median_us: f64,
    /// Least time of one fit, µs.
    pub least_us: f64,
}

/// How long a peer takes for all of its work.
#[derive(Deserialize)]
pub struct Took {
    /// Median time, ms.
    pub median_ms: f64,
    /// Least time, ms.
    pub least_ms: f64,
}

/// The delays that a peer finds, and how long each way of going about it takes.
#[derive(Deserialize)]
pub struct Delays {
    /// Times by the way's name.
    pub ways: BTreeMap<String, Took>,
    /// The delay of each pair.
    pub delays: Vec<f64>,
}

impl Delays {
    /// The quickest way, by its median.
    pub fn quickest(&self) -> Option<(&str, &Took)> {
        let ways = self.ways.iter().map(|(name, took)| (name.as_str(), took));
        ways.min_by(|(_, a), (_, b)| a.median_ms.total_cmp(&b.median_ms))
    }
}

/// What a class comes to by a peer, m/s.
#[derive(Deserialize)]
pub struct Class {
    /// How long it takes for all.
    pub took: Took,
    /// How many results it has.
    pub results: usize,
    /// Their weighted mean.
    pub mean: f64,
    /// Its standard uncertainty, with the scatter between the results.
    pub u: f64,
}

/// The Python that has the libraries.
pub struct Peers {
    python: PathBuf,
}

impl Peers {
    /// Makes the environment, if it is not there from before.
    ///
    /// # Errors
    /// When Python, its module venv or pip is missing, or the libraries can't be had.
    pub fn get() -> Result<Self> {
        let folder = target().join("peers");
        let python = folder.join("bin/python");
        let wanted = fs::read(here().join("requirements.txt"))?;
        let stamp = folder.join("installed-from");
        if fs::read(&stamp).ok().as_ref() != Some(&wanted) {
            eprintln!("installing numpy, scipy and pandas into {}", folder.display());
            run(Command::new("python3").args(["-m", "venv", "--clear"]).arg(&folder))?;
            run(Command::new(&python)
                .args([
                    "-m",
                    "pip",
                    "install",
                    "--quiet",
                    "--disable-pip-version-check",
                    "--retries",
                    "1",
                    "-r",
                ])
                .arg(here().join("requirements.txt")))?;
            fs::write(&stamp, wanted)?;
        }
        Ok(Self { python })
    }

    /// The Python of the environment.
    pub fn python(&self) -> &Path {
        &self.python
    }

    /// Has `peers.py` fit a line in each of its ways called `name`.
    ///
    /// # Errors
    /// When it fails.
    pub fn fit(&self, name: &str, data: &Data) -> Result<BTreeMap<String, Peer>> {
        Ok(serde_json::from_value(self.ask(&[name], &problem(data)?)?)?)
    }

    /// Has `peers.py` draw so many trials on so many threads, the line fitted again in each.
    ///
    /// # Errors
    /// When it fails.
    pub fn monte_carlo(&self, data: &Data, trials: u32, threads: usize) -> Result<Took> {
        let (trials, threads) = (trials.to_string(), threads.to_string());
        Ok(serde_json::from_value(self.ask(&["monte_carlo", &trials, &threads], &problem(data)?)?)?)
    }

    /// Has `peers.py` find the delays of traces: of files on so many threads or processes (`traces`), or of samples in
    /// memory on one thread (`correlation`).
    ///
    /// # Errors
    /// When it fails.
    pub fn delays(&self, name: &str, threads: usize, problem: &Value) -> Result<Delays> {
        Ok(serde_json::from_value(self.ask(&[name, &threads.to_string()], problem)?)?)
    }

    /// Has `peers.py` read the bundles of a class, fit each line and take the results together, in so many processes.
    ///
    /// # Errors
    /// When it fails.
    pub fn class(&self, processes: usize, problem: &Value) -> Result<Class> {
        Ok(serde_json::from_value(self.ask(&["class", &processes.to_string()], problem)?)?)
    }

    fn ask(&self, arguments: &[&str], problem: &Value) -> Result<Value> {
        let mut command = Command::new(&self.python);
        command.arg(here().join("peers.py")).args(arguments);
        // Set for some older numpy, these slow a current one down.
        command.env_remove("OPENBLAS_CORETYPE").env_remove("OPENBLAS_L2_SIZE");
        command.env("OPENBLAS_NUM_THREADS", "1").env("OMP_NUM_THREADS", "1");
        let mut child = command.stdin(Stdio::piped()).stdout(Stdio::piped()).spawn()?;
        let mut stdin = child.stdin.take().context("peers.py has no standard input")?;
        stdin.write_all(problem.to_string().as_bytes())?;
        drop(stdin);
        let output = child.wait_with_output()?;
        if !output.status.success() {
            bail!("peers.py {} ended with {}", arguments.join(" "), output.status);
        }
        Ok(serde_json::from_slice(&output.stdout)?)
    }
}

fn problem(data: &Data) -> Result<Value> {
    let Noise::Stated(stated) = &data.noise else { bail!("the peers fit stated uncertainties only") };
    let column = |column: &SharedColumn| json!({ "x": column.x, "y": column.y });
    let shared: Vec<Value> = stated.shared.iter().map(column).collect();
    Ok(json!({ "x": data.x, "y": data.y, "ux": stated.ux, "uy": stated.uy, "shared": shared }))
}

fn here() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn target() -> PathBuf {
    env::var_os("CARGO_TARGET_DIR").map_or_else(|| here().join("../../target"), PathBuf::from)
}

fn run(command: &mut Command) -> Result<()> {
    let program = command.get_program().to_owned();
    // What it prints goes to standard error: standard output holds the rows alone.
    let status = command
        .stdout(std::io::stderr())
        .status()
        .with_context(|| format!("could not start {}", program.display()))?;
    if !status.success() {
        bail!("{command:?} ended with {status}");
    }
    Ok(())
}
