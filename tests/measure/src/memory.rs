//! What the page holds once a notebook has many pictures.

use std::fs;
use std::path::{Path, PathBuf};
use std::thread::sleep;
use std::time::{Duration, Instant};

use anyhow::{Context, Result, bail, ensure};
use page_tests::driver::Skipped;
use page_tests::home::Home;
use page_tests::page::Page;
use serde_json::json;
use tempfile::TempDir;

use crate::effort::Effort;
use crate::photo::{encoded, picture};
use crate::stage::stage;

/// Pictures attached.
const PICTURES: usize = 100;
/// Side of the patch by which they differ, pixels.
const PATCH: usize = 64;
/// How long they may take to be taken in.
const PATIENCE: Duration = Duration::from_mins(4);
/// How long nothing is done before what is held counts as held at rest, for a figure.
const REST: Duration = Duration::from_secs(20);
/// What keeps a processor busy in the page, so that its process is told from the others.
const BUSY: &str = "const end = performance.now() + 500; while (performance.now() < end);";

/// Memory of the page at rest, with a notebook of 100 rows that have a picture of 12 megapixels each, chosen as files in
/// the section Delays, and one of them open with its marks proposed; MB.
///
/// Counted is the proportional set (Linux's `smaps_rollup`: what a process has for itself, and of what it shares its share)
/// of the one process that renders the page and runs its workers, after a garbage collection and 20 s in which nothing
/// was done. Chromium's processes that have no part in the page are not counted, nor are the browser's own. On standard
/// error: the same of an empty page, before the first picture, at most while they were taken in, and with the pictures
/// scrolled out of sight; each with what it is made of, and with all renderers of the browser added up.
///
/// # Errors
/// When the page does not take them, or the system does not tell.
pub fn of_100_pictures(effort: Effort) -> Result<f64> {
    if !Path::new("/proc").is_dir() {
        bail!(Skipped("what a process holds is told only where the system has /proc"));
    }
    let stage = stage()?;
    let folder = TempDir::new()?;
    let profile = folder.path().join("profile");
    let browser = stage.driver.browser(&profile, &folder.path().join("downloads"))?;
    let page = Page { browser, home: Home::new()? };
    let gauge = Gauge { page: &page, profile, rest: effort.of(REST, Duration::from_secs(1)) };
    page.browser.go("about:blank")?;
    gauge.at_rest()?.tell("an empty page");
    page.go(&stage.address)?;
    page.list_notebooks()?;
    page.click("New blank notebook")?;
    gauge.at_rest()?.tell("before the first picture");
    let most = attach(&gauge, &files(&page.home, effort)?)?;
    most.tell("at most, every quarter of a second, while they are taken in");
    let rest = gauge.at_rest()?;
    rest.tell("with 100 pictures, at rest");
    page.browser.run("scrollTo(0, 0)", vec![])?;
    gauge.at_rest()?.tell("with 100 pictures, at rest and out of sight");
    Ok(rest.page.whole)
}

/// Pictures that differ a little, named by readings.
fn files(home: &Home, effort: Effort) -> Result<Vec<PathBuf>> {
    let (mut drawn, _) = picture()?;
    let name = |place: usize| format!("{} mm.jpg", 500 + 10 * place);
    let file = |place: usize| {
        for row in drawn.rgba.chunks_exact_mut(4 * drawn.width).take(PATCH) {
            row.iter_mut()
                .take(4 * PATCH)
                .for_each(|part| *part = u8::try_from(2 * place).unwrap_or(u8::MAX));
        }
        home.write(&name(place), &encoded(&drawn)?)
    };
    (0..effort.of(PICTURES, 2)).map(file).collect()
}

/// Has the page take them in; gives the most that it held meanwhile.
fn attach(gauge: &Gauge<'_>, files: &[PathBuf]) -> Result<Held> {
    let Gauge { page, .. } = gauge;
    let own = gauge.own()?;
    let input = page.browser.element("return document.querySelector('#picture-files')", vec![])?;
    let paths: Vec<_> = files.iter().map(|file| file.to_string_lossy().into_owned()).collect();
    let begun = Instant::now();
    page.browser.choose_file(&input.context("no input for pictures")?, Path::new(&paths.join("\n")))?;
    // All have a row, and the first is open.
    let done = "const count = document.querySelector('#picture-count');
        const found = document.querySelector('.spot.a:is(.proposed, .doubted)');
        return Boolean(found && count.textContent.includes(`of ${arguments[0]}`))";
    let mut most = gauge.held(own)?;
    while page.browser.run(done, vec![json!(files.len())])? != json!(true) {
        ensure!(
            begun.elapsed() < PATIENCE,
            "the pictures are not taken in: {}",
            page.text("#picture-refused")?
        );
        sleep(Duration::from_millis(250));
        let now = gauge.held(own)?;
        if now.page.whole > most.page.whole {
            most = now;
        }
    }
    eprintln!("  {} pictures taken in after {:.0} s", files.len(), begun.elapsed().as_secs_f64());
    Ok(most)
}

/// Tells what the renderers of a browser hold.
struct Gauge<'p> {
    page: &'p Page<'p>,
    profile: PathBuf,
    /// How long nothing is done before what is held counts as held at rest.
    rest: Duration,
}

/// What a process holds, MB.
#[derive(Clone, Copy, Default)]
struct Share {
    whole: f64,
    /// Of that, what is in no file: heaps, code that was compiled, pixels.
    anonymous: f64,
    /// Of that, what is shared with the process that puts pixels on the screen.
    shared: f64,
}

/// What the page's renderer holds, and all of the browser's together, MB.
struct Held {
    page: Share,
    all: f64,
}

impl Held {
    fn tell(&self, when: &str) {
        let Self { page: Share { whole, anonymous, shared }, all } = self;
        let files = whole - anonymous - shared;
        eprintln!(
            "  {when}: {whole:.0} MB (its own {anonymous:.0}, pixels shared {shared:.0}, files {files:.0}); all renderers {all:.0}"
        );
    }
}

impl Gauge<'_> {
    /// What is held once nothing has been done for a while, garbage collected.
    fn at_rest(&self) -> Result<Held> {
        let own = self.own()?;
        sleep(self.rest);
        self.page.browser.debug("HeapProfiler.enable", &json!({}))?;
        self.page.browser.debug("HeapProfiler.collectGarbage", &json!({}))?;
        self.held(own)
    }

    /// The process of the page: the one that works when the page does.
    fn own(&self) -> Result<u32> {
        let before = self.processes()?;
        let worked = |id: u32| Some(ticks(id)? - before.iter().find(|(other, _)| *other == id)?.1);
        self.page.browser.run(BUSY, vec![])?;
        let own = before.iter().filter_map(|(id, _)| Some((worked(*id)?, *id))).max();
        own.map(|(_, id)| id).context("no renderer of the browser is to be found")
    }

    fn held(&self, own: u32) -> Result<Held> {
        let mut held = Held { page: Share::default(), all: 0.0 };
        for (id, _) in self.processes()? {
            // What has ended meanwhile holds nothing.
            let Ok(text) = fs::read_to_string(format!("/proc/{id}/smaps_rollup")) else { continue };
            let part = |name: &str| {
                let line = text.lines().find_map(|line| line.strip_prefix(name)?.trim().strip_suffix(" kB"));
                let kilobytes: f64 = line.with_context(|| format!("no {name} in smaps_rollup"))?.parse()?;
                anyhow::Ok(kilobytes * 1024.0 / 1e6)
            };
            held.all += part("Pss:")?;
            if id == own {
                held.page = Share {
                    whole: part("Pss:")?,
                    anonymous: part("Pss_Anon:")?,
                    shared: part("Pss_Shmem:")?,
                };
            }
        }
        ensure!(held.page.whole > 0.0, "the page has another process now");
        Ok(held)
    }

    /// The renderers of the browser with this profile, and how long each has worked, ticks of the system's clock.
    fn processes(&self) -> Result<Vec<(u32, u64)>> {
        let data = format!("--user-data-dir={}", self.profile.display());
        let mut found = Vec::new();
        for entry in fs::read_dir("/proc").context("the system does not tell what processes hold")? {
            let path = entry?.path();
            // What is no process, or has ended meanwhile, has no such file.
            let Ok(line) = fs::read_to_string(path.join("cmdline")) else { continue };
            let id = path.file_name().and_then(|name| name.to_str()?.parse().ok());
            if let Some(id) = id.filter(|_| line.contains(&data) && line.contains("--type=renderer")) {
                found.extend(ticks(id).map(|ticks| (id, ticks)));
            }
        }
        Ok(found)
    }
}

/// How long a process has worked for itself, ticks; the 14th field of its `stat` (`proc_pid_stat(5)`).
fn ticks(id: u32) -> Option<u64> {
    let stat = fs::read_to_string(format!("/proc/{id}/stat")).ok()?;
    // Its name, the second field, may hold anything up to the last bracket.
    stat.rsplit_once(')')?.1.split_whitespace().nth(11)?.parse().ok()
}
