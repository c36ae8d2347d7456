//! The Monte Carlo trials in words and digits.

use super::figures::{degrees_of_freedom, figure, per_cent};
use super::math::{Formula, bracket, equation, number, op, over, power, root, row, symbol, times};
use super::types::{Field, ProgressView, TrialPlanView, TrialsView};
use crate::analysis::Analysis;
use crate::analysis::trials::{MOST, Outcome, Tally, TrialsError, Verdict, trial_settings};
use crate::notebook::NotebookState;
use crate::quantity::{DecimalMark, plain, plus_minus};

/// The trials as they are to be drawn.
pub fn trial_plan_view(page: &NotebookState, analysis: &Analysis) -> TrialPlanView {
    let problem = trial_settings(page).map_or_else(|error| error.to_string(), |_| String::new());
    let refusal = match &analysis.speed {
        Err(refusal) => refusal.message.clone(),
        Ok(_) => problem.clone(),
    };
    TrialPlanView {
        seed: if page.trials.seed.trim().is_empty() { "1".into() } else { page.trials.seed.clone() },
        wanted: Field {
            meant: None,
            text: page.trials.wanted.clone(),
            problem,
            default: format!("as many as it takes to be steady, at most {}", count(MOST)),
            unit: String::new(),
        },
        refusal,
    }
}

/// How far the trials have come.
pub fn progress(tally: &Tally) -> ProgressView {
    let (done, most) = (tally.done(), tally.most());
    ProgressView { done, most, text: format!("{} of at most {} trials", count(done), count(most)) }
}

/// What the trials gave.
pub fn trials_view(page: &NotebookState, outcome: &Result<Outcome, TrialsError>) -> TrialsView {
    let mark = page.decimal_mark;
    match outcome {
        Err(why) => TrialsView { refusal: why.to_string(), ..TrialsView::default() },
        Ok(outcome) => TrialsView {
            refusal: String::new(),
            figures: figures(outcome, mark),
            verdict: verdict(outcome, mark),
            summary: summary(outcome, mark),
        },
    }
}

/// An interval to the place that the uncertainty's second digit has.
fn interval((low, high): (f64, f64), u: f64, mark: DecimalMark) -> String {
    let place = last_place(u);
    let digits = |end: f64| usize::try_from(exponent(end) - place + 1).unwrap_or(1);
    format!("{} to {} m/s", plain(low, digits(low), mark), plain(high, digits(high), mark))
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
    all.join("\u{2009}")
}

fn figures(outcome: &Outcome, mark: DecimalMark) -> Vec<super::types::Figure> {
    let summary = &outcome.summary;
    let p = per_cent(outcome.probability, mark);
    let all = || number(count(summary.trials));
    vec![
        figure(
            "trials",
            "trials",
            "M",
            format!("{} (seed {})", count(summary.trials), outcome.seed),
            match outcome.steady {
                Some(true) => "Made until mean, uncertainty and both ends of the interval were steady to two digits of the uncertainty.",
                Some(false) => "The most that are made. The figures are not steady yet to two digits of the uncertainty.",
                None => "As many as were asked for, or made until they were stopped. The same seed gives the same digits.",
            },
        )
        .by(tolerance(summary.u, mark))
        .from("JCGM 101:2008, 7.9.4; two standard deviations of the mean of what the blocks of trials give are to stay below δ"),
        figure(
            "trials_mean",
            "mean of the trials",
            "c",
            plus_minus(summary.mean, Some(summary.u), "m/s", mark),
            if outcome.no_deviation {
                "With two degrees of freedom or fewer no finite standard deviation exists: quote an interval."
            } else {
                "With the standard deviation of the trials as its standard uncertainty."
            },
        )
        .by(equation(
            symbol("u"),
            deviation(symbol("M")),
            deviation(all()),
            plain(summary.u, 3, mark) + " m/s",
        ))
        .from("JCGM 101:2008, 7.6; c̄ is the mean of the M results c_r"),
        figure(
            "trials_symmetric",
            &format!("probabilistically symmetric {p} coverage interval"),
            "",
            interval(summary.symmetric, summary.u, mark),
            "As many trials lie below it as above it.",
        )
        .by(ends(outcome))
        .from("JCGM 101:2008, 7.7.2; from the r-th to the (r + q)-th of the trials in order of size, q = p·M"),
        figure(
            "trials_shortest",
            &format!("shortest {p} interval"),
            "",
            interval(summary.shortest, summary.u, mark),
            "Of all intervals with that share of the trials, the shortest. It differs from the one above where the trials lean to one side.",
        )
        .by(equation(
            symbol("q"),
            times(symbol("p"), symbol("M")),
            times(number(p.clone()), all()),
            count(summary.covered),
        ))
        .from("JCGM 101:2008, 7.7.3; the shortest from the r-th to the (r + q)-th trial over all r"),
    ]
}

/// δ, to which figures of two digits are steady.
fn tolerance(u: f64, mark: DecimalMark) -> Formula {
    let place = last_place(u);
    let half =
        |exponent: &str| row(vec![over(number("1"), number("2")), op("·"), power(number("10"), exponent)]);
    equation(
        symbol("δ"),
        half("ℓ"),
        half(&place.to_string()),
        plain(0.5 * libm::pow(10.0, f64::from(place)), 1, mark) + " m/s",
    )
}

/// The standard deviation of so many trials.
fn deviation(trials: Formula) -> Formula {
    let apart = bracket(row(vec![symbol("c_r"), op("−"), symbol("c̄")]));
    root(over(row(vec![op("Σ"), power(apart, "2")]), row(vec![trials, op("−"), number("1")])))
}

/// Which of the sorted trials are the ends of the symmetric interval.
fn ends(outcome: &Outcome) -> Formula {
    let (all, covered) = (outcome.summary.trials, outcome.summary.covered);
    let first = all.saturating_sub(covered).div_ceil(2);
    let half = |all, covered| over(row(vec![all, op("−"), covered]), number("2"));
    equation(
        symbol("r"),
        half(symbol("M"), symbol("q")),
        half(number(count(all)), number(count(covered))),
        count(first),
    )
}

fn verdict(outcome: &Outcome, mark: DecimalMark) -> String {
    match &outcome.validation {
        Err(why) => format!("There is no interval of the budget to hold beside the trials: {why}."),
        Ok(found) => {
            let apart = format!(
                "its ends lie {} and {} m/s from those of the trials, where {} m/s are allowed (JCGM 101:2008, 8.1)",
                plain(found.low, 2, mark),
                plain(found.high, 2, mark),
                plain(found.tolerance, 1, mark)
            );
            match outcome.verdict() {
                Some(Verdict::Holds) => {
                    format!("The budget’s interval is validated: {apart}. It may be quoted.")
                }
                Some(Verdict::Fails) => {
                    format!("The budget’s interval does not hold: {apart}. Quote the interval of the trials.")
                }
                Some(Verdict::Undecided) | None => format!(
                    "The trials are too few to judge the budget’s interval: {apart}, and each end is known to no better than {} m/s. Make more of them.",
                    plain(outcome.u_end, 2, mark)
                ),
            }
        }
    }
}

fn summary(outcome: &Outcome, mark: DecimalMark) -> String {
    let (c, u, nu) = outcome.curve;
    let curve = match nu {
        None => "normal curve".to_owned(),
        Some(_) => format!("curve of Student’s t with {} degrees of freedom", degrees_of_freedom(nu, mark)),
    };
    format!(
        "Histogram of {} trials about {}; over it the budget’s {curve} about {}.",
        count(outcome.summary.trials),
        plus_minus(outcome.summary.mean, Some(outcome.summary.u), "m/s", mark),
        plus_minus(c, Some(u), "m/s", mark)
    )
}

#[cfg(test)]
#[path = "trials_test.rs"]
mod tests;
