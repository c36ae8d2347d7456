//! How inputs are tried: drawn by a seed, each within a time and a memory, and kept where one fails.

use std::alloc::System;
use std::cell::Cell;
use std::fmt::Debug;
use std::fs;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::PathBuf;
use std::sync::Mutex;
use std::time::{Duration, Instant, SystemTime, UNIX_EPOCH};

use cap::Cap;
use proptest::strategy::Strategy;
use proptest::test_runner::{Config, RngAlgorithm, TestCaseError, TestError, TestRng, TestRunner};
use slope_of_light::bundle::sha256_hex;

use crate::samples::root;

/// Where more than this is asked for, the program ends with "memory allocation failed", and the input is not kept.
const MEMORY: usize = 512 << 20;
/// No input takes longer; none that is sound takes a hundredth of it on a slow machine.
const TIME: Duration = Duration::from_secs(20);
/// How many seconds each reader is tried, where that is asked for.
const SECONDS: &str = "SLOPE_FUZZ_SECONDS";
/// With how many inputs each reader is tried, where that is asked for.
const INPUTS: &str = "SLOPE_FUZZ_INPUTS";
/// Inputs between two looks at the clock.
const ROUND: u32 = 500;

#[global_allocator]
static MEMORY_IN_USE: Cap<System> = Cap::new(System, usize::MAX);

/// Readers are tried one after another, so that memory is that of one alone.
static ALONE: Mutex<()> = Mutex::new(());

/// How long a reader is tried with inputs that are others at every run.
enum Extent {
    Seconds(u64),
    Inputs(u32),
}

impl Extent {
    /// What is asked for: a number of inputs before a time, which `cargo fuzz-all` always sets.
    fn asked() -> Option<Self> {
        let asked = |name| std::env::var(name).ok();
        let inputs = asked(INPUTS).map(|text| Self::Inputs(text.parse().expect("a number of inputs")));
        let seconds = asked(SECONDS).map(|text| Self::Seconds(text.parse().expect("a number of seconds")));
        inputs.or(seconds)
    }

    fn goes_on(&self, begun: Instant, tried: u32) -> bool {
        match self {
            Self::Seconds(seconds) => begun.elapsed() < Duration::from_secs(*seconds),
            Self::Inputs(inputs) => tried < *inputs,
        }
    }
}

/// Tries a reader with `cases` inputs that are always the same, or for as long as is asked for with others. `bytes`
/// makes the input of what was drawn; `read` says whether the reader took it. Where it takes none, only its first check
/// was tried.
pub fn try_all<S: Strategy>(
    reader: &str,
    cases: u32,
    drawn: &S,
    bytes: impl Fn(&S::Value) -> Vec<u8>,
    read: impl Fn(&[u8]) -> bool,
) where
    S::Value: Debug,
{
    let is_any_taken = Cell::new(false);
    let read = |input: &[u8]| is_any_taken.set(read(input) || is_any_taken.get());
    let alone = ALONE.lock().unwrap_or_else(std::sync::PoisonError::into_inner);
    MEMORY_IN_USE.set_limit(MEMORY_IN_USE.allocated() + MEMORY).expect("a limit");
    for path in found(reader) {
        let input = fs::read(&path).expect("an input found before");
        read_in_time(&input, &read).unwrap_or_else(|why| panic!("{} fails: {why}", path.display()));
    }
    let one = |value: &S::Value| read_in_time(&bytes(value), &read);
    let begun = Instant::now();
    let tried = match Extent::asked() {
        None => try_round(reader, 0, cases, drawn, &bytes, &one),
        Some(extent) => {
            let mut tried = 0;
            let first = SystemTime::now().duration_since(UNIX_EPOCH).map_or(1, |time| time.as_secs()) << 24;
            while extent.goes_on(begun, tried) {
                tried += try_round(reader, first + u64::from(tried), ROUND, drawn, &bytes, &one);
            }
            tried
        }
    };
    eprintln!("{reader}: {tried} inputs in {} s", begun.elapsed().as_secs());
    MEMORY_IN_USE.set_limit(usize::MAX).expect("no limit");
    drop(alone);
    assert!(is_any_taken.get(), "{reader} took none of its inputs");
}

/// Tries a reader with one input, within the same time and memory.
pub fn try_one(reader: &str, input: &[u8], read: impl Fn(&[u8])) {
    let alone = ALONE.lock().unwrap_or_else(std::sync::PoisonError::into_inner);
    MEMORY_IN_USE.set_limit(MEMORY_IN_USE.allocated() + MEMORY).expect("a limit");
    read_in_time(input, &read).unwrap_or_else(|why| panic!("{reader}: {why}"));
    MEMORY_IN_USE.set_limit(usize::MAX).expect("no limit");
    drop(alone);
}

/// So many inputs from a seed. The smallest that fails is kept.
fn try_round<S: Strategy>(
    reader: &str,
    seed: u64,
    cases: u32,
    drawn: &S,
    bytes: &impl Fn(&S::Value) -> Vec<u8>,
    one: &impl Fn(&S::Value) -> Result<(), String>,
) -> u32
where
    S::Value: Debug,
{
    let mut whole = [0; 32];
    whole[..8].copy_from_slice(&seed.to_le_bytes());
    let rng = TestRng::from_seed(RngAlgorithm::ChaCha, &whole);
    let config = Config { cases, failure_persistence: None, max_shrink_iters: 500, ..Config::default() };
    let outcome =
        TestRunner::new_with_rng(config, rng).run(drawn, |value| one(&value).map_err(TestCaseError::fail));
    match outcome {
        Ok(()) => cases,
        Err(TestError::Fail(why, value)) => {
            let kept = keep(reader, &bytes(&value));
            panic!("{reader}: {why}; the input is kept as {}", kept.display())
        }
        Err(TestError::Abort(why)) => panic!("{reader}: {why}"),
    }
}

fn read_in_time(input: &[u8], read: &impl Fn(&[u8])) -> Result<(), String> {
    let begun = Instant::now();
    catch_unwind(AssertUnwindSafe(|| read(input))).map_err(|panic| {
        let text = panic.downcast_ref::<String>().map(String::as_str);
        format!("it panics: {}", text.or(panic.downcast_ref::<&str>().copied()).unwrap_or("without a word"))
    })?;
    let took = begun.elapsed();
    if took > TIME { Err(format!("it takes {} s", took.as_secs())) } else { Ok(()) }
}

fn folder(reader: &str) -> PathBuf {
    root().join("tests/fuzz/found").join(reader)
}

/// The inputs that failed once.
fn found(reader: &str) -> Vec<PathBuf> {
    let Ok(entries) = fs::read_dir(folder(reader)) else { return Vec::new() };
    entries.map(|entry| entry.expect("an entry").path()).collect()
}

fn keep(reader: &str, input: &[u8]) -> PathBuf {
    fs::create_dir_all(folder(reader)).expect("a folder");
    let path = folder(reader).join(&sha256_hex(input)[..16]);
    fs::write(&path, input).expect("a file");
    path
}
