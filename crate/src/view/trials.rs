//! The Monte Carlo trials in words and digits.

use super::figures::{degrees_of_freedom, figure, per_cent};
use super::math::{Formula, equation};
use super::types::{Field, ProgressView, TrialPlanView, TrialsView};
use crate::analysis::Analysis;
use crate::analysis::trials::{
    DensityCurve, MOST, Tally, TrialsError, TrialsResult, Verdict, trial_settings,
};
use crate::analysis::types::not_given;
use crate::message;
use crate::notebook::NotebookState;
use crate::quantity::{DecimalMark, plain, short_form};
use crate::words::Message;

/// The trials as they are to be drawn.
pub fn trial_plan_view(page: &NotebookState, analysis: &Analysis) -> TrialPlanView {
    let problem = trial_settings(page).err().map(|error| error.message(page.decimal_mark));
    let refusal = match &analysis.speed {
        Err(refusal) => Some(refusal.message.clone()),
        Ok(_) => problem.clone(),
    };
    TrialPlanView {
        seed: if page.trials.seed.trim().is_empty() { "1".into() } else { page.trials.seed.clone() },
        wanted: Field {
            meant: None,
            behind: None,
            text: page.trials.wanted.clone(),
            problem,
            default: message!("trials-default", most = count(MOST)).into(),
            unit: String::new(),
        },
        refusal,
    }
}

/// How far the trials have come.
pub fn progress(tally: &Tally) -> ProgressView {
    let (done, most) = (tally.done(), tally.most());
    ProgressView { done, most, text: message!("trials-drawn", done = count(done), most = count(most)) }
}

/// What the trials gave.
pub fn trials_view(page: &NotebookState, outcome: &Result<TrialsResult, TrialsError>) -> TrialsView {
    let mark = page.decimal_mark;
    match outcome {
        Err(why) => TrialsView { refusal: Some(why.message(mark)), ..TrialsView::default() },
        Ok(outcome) => TrialsView {
            refusal: None,
            figures: figures(outcome, mark),
            verdict: Some(verdict(outcome, mark)),
            summary: Some(summary(outcome, mark)),
        },
    }
}

/// An interval to the place that the uncertainty's second digit has.
fn interval((low, high): (f64, f64), u: f64, mark: DecimalMark) -> Message {
    let place = last_place(u);
    let digits = |end: f64| usize::try_from(exponent(end) - place + 1).unwrap_or(1);
    message!("trials-interval", low = plain(low, digits(low), mark), high = plain(high, digits(high), mark))
}

/// The power of ten of the second significant digit of `u`.
fn last_place(u: f64) -> i32 {
    exponent(u) - 1
}

/// The power of ten of the first digit.
fn exponent(value: f64) -> i32 {
    let exponent = libm::floor(libm::log10(value.abs().max(f64::MIN_POSITIVE)));
    #[expect(clippy::cast_possible_truncation, reason = "between −308 and 308")]
    let exponent = exponent as i32;
    exponent
}

/// A count in groups of three, thin spaces between them (SI Brochure, 9th edition, 5.4.4).
fn count(number: usize) -> String {
    let digits = number.to_string();
    let lead = digits.len() % 3;
    let (first, rest) = digits.split_at(lead);
    let groups = rest.as_bytes().chunks(3).map(|group| String::from_utf8_lossy(group).into_owned());
    let all: Vec<String> =
        Some(first.to_owned()).filter(|first| !first.is_empty()).into_iter().chain(groups).collect();
    all.join("\u{202f}")
}

fn figures(outcome: &TrialsResult, mark: DecimalMark) -> Vec<super::types::Figure> {
    let summary = &outcome.summary;
    let p = per_cent(outcome.probability, mark);
    let all = count(summary.trials);
    vec![
        figure(
            "trials",
            message!("figures-trials"),
            "M",
            message!("figures-trials-value", n = all.clone(), seed = outcome.seed.to_string()),
        )
        .means(match outcome.steady {
            Some(true) => message!("figures-trials-steady"),
            Some(false) => message!("figures-trials-unsteady"),
            None => message!("figures-trials-asked"),
        })
        .by(tolerance(summary.u, mark))
        .from(message!("figures-trials-source")),
        figure(
            "trials_mean",
            message!("figures-trials_mean"),
            "c",
            short_form(summary.mean, Some(summary.u), "m/s", mark),
        )
        .means(if outcome.no_deviation {
            message!("figures-trials_mean-no_deviation")
        } else {
            message!("figures-trials_mean-meaning")
        })
        .by(equation(
            "u",
            "√{{Σ (c_r − c̄)^2}/{M − 1}}",
            "√{{Σ (c_r − c̄)^2}/{# − 1}}",
            vec![all.clone()],
            plain(summary.u, 3, mark) + " m/s",
        ))
        .from(message!("figures-trials_mean-source")),
        figure(
            "trials_symmetric",
            message!("figures-trials_symmetric", p = p.clone()),
            "",
            interval(summary.symmetric, summary.u, mark),
        )
        .means(message!("figures-trials_symmetric-meaning"))
        .by(ends(outcome))
        .from(message!("figures-trials_symmetric-source")),
        figure(
            "trials_shortest",
            message!("figures-trials_shortest", p = p.clone()),
            "",
            interval(summary.shortest, summary.u, mark),
        )
        .means(message!("figures-trials_shortest-meaning"))
        .by(equation("q", "p·M", "#·#", vec![p, all], count(summary.covered)))
        .from(message!("figures-trials_shortest-source")),
    ]
}

/// δ, to which figures of two digits are steady.
fn tolerance(u: f64, mark: DecimalMark) -> Formula {
    let place = last_place(u);
    let half = plain(0.5 * libm::pow(10.0, f64::from(place)), 1, mark) + " m/s";
    equation("δ", "1/2·10^ℓ", "1/2·10^#", vec![place.to_string()], half)
}

/// Which of the sorted trials are the ends of the symmetric interval.
fn ends(outcome: &TrialsResult) -> Formula {
    let (all, covered) = (outcome.summary.trials, outcome.summary.covered);
    let first = all.saturating_sub(covered).div_ceil(2);
    equation("r", "{M − q}/2", "{# − #}/2", vec![count(all), count(covered)], count(first))
}

fn verdict(outcome: &TrialsResult, mark: DecimalMark) -> Message {
    let found = match &outcome.validation {
        Err(why) => return message!("trials-verdict-none", why = not_given(why, mark)),
        Ok(found) => found,
    };
    let apart = message!(
        "trials-apart",
        low = plain(found.low, 2, mark),
        high = plain(found.high, 2, mark),
        tolerance = plain(found.tolerance, 1, mark)
    );
    match outcome.verdict() {
        Some(Verdict::Holds) => message!("trials-verdict-holds", apart = apart),
        Some(Verdict::Fails) => message!("trials-verdict-fails", apart = apart),
        Some(Verdict::Undecided) | None => {
            message!("trials-verdict-undecided", apart = apart, u = plain(outcome.u_end, 2, mark))
        }
    }
}

fn summary(outcome: &TrialsResult, mark: DecimalMark) -> Message {
    let DensityCurve { c, u, degrees_of_freedom: nu } = outcome.curve;
    let curve = if nu.is_none() {
        message!("trials-curve-normal")
    } else {
        message!("trials-curve-student", nu = degrees_of_freedom(nu, mark))
    };
    message!(
        "trials-summary",
        trials = count(outcome.summary.trials),
        mean = short_form(outcome.summary.mean, Some(outcome.summary.u), "m/s", mark),
        curve = curve,
        c = short_form(c, Some(u), "m/s", mark)
    )
}

#[cfg(test)]
#[path = "trials_test.rs"]
mod tests;
