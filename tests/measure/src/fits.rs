//! One fit of a line beside the same fit by a general library, in one run.
//!
//! Ours is timed as [`timing::microseconds`] says, before and after the peer; the peer's one fit 200 times over
//! (`peers.py`). The row is the ratio of the medians, peer to ours; the least times stand on standard error.

use std::collections::BTreeMap;

use anyhow::{Context, Result, bail};
use measured::lines::{fit_many, rows_24, rows_200_shared};
use slope_of_light::line::Data;

use crate::effort::Effort;
use crate::peers::{Peer, Peers};
use crate::timing::{self, Times};

/// Errors in both variables, 24 independent rows, beside the quickest way of scipy.odr.
///
/// # Errors
/// When a fit fails, or the slopes differ.
pub fn of_24_rows(peers: &Peers, effort: Effort) -> Result<f64> {
    beside(
        effort,
        &rows_24(),
        |data| peers.fit("odr", data),
        |ways| ways.into_values().min_by(|a, b| a.median_us.total_cmp(&b.median_us)),
    )
}

/// Errors in both variables, 200 rows with three shared errors: ours keeps the shared columns, the peer has three
/// full covariance matrices.
///
/// # Errors
/// When a fit fails, or the slopes differ.
pub fn of_200_rows(peers: &Peers, effort: Effort) -> Result<f64> {
    beside(effort, &rows_200_shared(), |data| peers.fit("dense", data), |mut ways| ways.remove("both"))
}

fn beside(
    effort: Effort,
    data: &Data,
    peer: impl Fn(&Data) -> Result<BTreeMap<String, Peer>>,
    choose: impl Fn(BTreeMap<String, Peer>) -> Option<Peer>,
) -> Result<f64> {
    let before = ours(data, effort);
    let ways = peer(data)?;
    let after = ours(data, effort);
    for (name, way) in &ways {
        eprintln!("  peer {name}: median {:.1} µs, least {:.1} µs", way.median_us, way.least_us);
    }
    let chosen = choose(ways).context("the peer fitted nothing")?;
    agree(fit_many(data, 1), chosen.slope)?;
    let median = f64::midpoint(before.median(), after.median());
    let least = before.least().min(after.least());
    eprintln!(
        "  ours: median {median:.2} µs, least {least:.2} µs; ratio of the least times {:.1}",
        chosen.least_us / least
    );
    Ok(chosen.median_us / median)
}

/// Time of one of our fits, µs.
fn ours(data: &Data, effort: Effort) -> Times {
    timing::microseconds(effort, |many| {
        std::hint::black_box(fit_many(data, many));
    })
}

/// Work is compared only where it gives the same answer. The peers stop at changes of 10⁻⁸ or so.
fn agree(ours: f64, theirs: f64) -> Result<()> {
    if (ours - theirs).abs() > 1e-6 * ours.abs() {
        bail!("the slopes differ: {ours} by ours, {theirs} by the peer");
    }
    Ok(())
}
