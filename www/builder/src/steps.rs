//! Saying what is being done, and for how long, so that nobody thinks that it hangs.

use std::sync::mpsc::{RecvTimeoutError, channel};
use std::thread;
use std::time::{Duration, Instant};

use anyhow::Result;

/// How often it is said that a step still lasts.
const EVERY: Duration = Duration::from_secs(30);

/// Does a step of the work: says what it is and how long it usually takes, that it still lasts, and how long it took.
///
/// # Errors
/// Those of the work.
pub fn step<T>(what: &str, usually: &str, work: impl FnOnce() -> Result<T>) -> Result<T> {
    println!("{what} ({usually}) …");
    let begun = Instant::now();
    let done = thread::scope(|scope| {
        let (ended, end) = channel::<()>();
        scope.spawn(move || {
            while end.recv_timeout(EVERY) == Err(RecvTimeoutError::Timeout) {
                println!("{what}: {} s so far …", begun.elapsed().as_secs());
            }
        });
        let done = work();
        drop(ended);
        done
    })?;
    println!("{what}: done in {:.1} s", begun.elapsed().as_secs_f64());
    Ok(done)
}
