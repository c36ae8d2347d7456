//! Delays taken out of simulated traces with planted delays: unbiased, and within their stated uncertainties as often as
//! these say, for noise from 1 to 20 % of the height of the weaker pulse.
//!
//! Each estimator claims a range of noise:
//! - fixed level (on pulses of equal heights, where it does not walk), constant fraction, and cross-correlation by least
//!   squares: 1 to 20 %;
//! - cross-correlation by parabola: 1 to 10 %, beyond which the curve is too rough for a parabola;
//! - the line through the edge: 1 to 5 %, beyond which the ends of the edge are found too unsurely for it. An uncertainty
//!   above a tenth of the rise is flagged as rough, for every estimator.
//!
//! With 1,000 traces and a true coverage of 95 %, the share found has a standard deviation of 0.7 % (binomial
//! distribution): the limits of 93 % and 97 % stand three of them off. A mean off by less than 4 of its standard errors is
//! taken as unbiased.
#![expect(clippy::unwrap_used, reason = "tests")]

use std::fmt::Write as _;

use slope_bench::chance::Chance;
use slope_bench::record::{Bench, Digitiser};
use slope_evidence::trace::{
    Channel, Delay, DelayMethod, Detector, Flag, Recording, Waveform, delay, read, recognise,
};

const TRACES: u32 = 1_000;

/// Bench with rises of 4 ns, 40 samples; the far pulse is weaker, and the noise is a share of its height.
fn bench(noise: f64, light: f64, change: impl Fn(&mut Bench)) -> Bench {
    let mut bench = Bench::default();
    bench.digitiser.full_scale = 4.0;
    change(&mut bench);
    let height =
        (-400..400).map(|time| bench.b.level(f64::from(time) * 0.05, light).abs()).fold(0.0, f64::max);
    bench.digitiser.noise = noise * height;
    bench
}

struct Found {
    given: u32,
    coverage: f64,
    /// Mean error over its standard error.
    bias: f64,
    rough: u32,
}

fn run(bench: &Bench, light: f64, seed: u64, method: DelayMethod) -> Found {
    run_of(seed, method, |truth, chance| bench.record(truth, light, chance))
}

/// The same of recordings of whatever make, each of a true delay, ns.
fn run_of(seed: u64, method: DelayMethod, recorded: impl Fn(f64, &mut Chance) -> Recording) -> Found {
    let mut chance = Chance::seeded(seed);
    let (mut given, mut covered, mut rough, mut sum, mut squares) = (0, 0, 0, 0.0, 0.0);
    for _ in 0..TRACES {
        let truth = 3.0 + 20.0 * chance.unit();
        let recording = recorded(truth, &mut chance);
        let wave = |channel: usize| Waveform {
            start: recording.start,
            step: recording.step,
            uneven: recording.uneven,
            samples: &recording.channels[channel].samples,
        };
        let Ok(Delay { delay, uncertainty, edges }) = delay(&wave(0), &wave(1), method) else { continue };
        given += 1;
        covered += u32::from((delay - truth).abs() <= 1.96 * uncertainty);
        rough += u32::from(edges.iter().any(|edge| edge.flags.contains(&Flag::Rough)));
        sum += delay - truth;
        squares += (delay - truth) * (delay - truth);
    }
    let count = f64::from(given);
    let mean = sum / count;
    let bias = mean / ((squares / count - mean * mean) / count).sqrt();
    Found { given, coverage: f64::from(covered) / count, bias, rough }
}

#[track_caller]
fn holds(bench: &Bench, light: f64, noise: f64, method: DelayMethod) {
    is_right(&run(bench, light, 20, method), noise, method);
}

#[track_caller]
fn is_right(found: &Found, noise: f64, method: DelayMethod) {
    let &Found { given, coverage, bias, rough } = found;
    println!(
        "{method:?} at {noise}: coverage {coverage:.3}, bias {bias:+.1} standard errors, {given} given, {rough} rough"
    );
    assert!(given >= TRACES - TRACES / 50, "{method:?} at {noise}: {given} given");
    assert!((0.93..=0.97).contains(&coverage), "{method:?} at {noise}: coverage {coverage}");
    assert!(bias.abs() < 4.0, "{method:?} at {noise}: bias of {bias} standard errors");
}

#[test]
fn constant_fraction_covers_from_1_to_20_per_cent() {
    for noise in [0.01, 0.05, 0.1, 0.2] {
        holds(&bench(noise, 0.8, |_| ()), 0.8, noise, DelayMethod::ConstantFraction { fraction: 0.5 });
    }
    holds(&bench(0.03, 0.8, |_| ()), 0.8, 0.03, DelayMethod::ConstantFraction { fraction: 0.3 });
    holds(&bench(0.03, 0.8, |_| ()), 0.8, 0.03, DelayMethod::ConstantFraction { fraction: 0.7 });
}

#[test]
fn fixed_level_covers_on_equal_heights_from_1_to_20_per_cent() {
    for noise in [0.01, 0.05, 0.2] {
        holds(&bench(noise, 1.0, |_| ()), 1.0, noise, DelayMethod::FixedLevel { volts: 0.3 });
    }
}

#[test]
fn cross_correlation_covers_from_1_to_20_per_cent() {
    for noise in [0.01, 0.05, 0.1, 0.2] {
        holds(&bench(noise, 0.8, |_| ()), 0.8, noise, DelayMethod::CrossCorrelation { refined: true });
    }
    for noise in [0.01, 0.1] {
        holds(&bench(noise, 0.8, |_| ()), 0.8, noise, DelayMethod::CrossCorrelation { refined: false });
    }
}

#[test]
fn the_edges_line_covers_from_1_to_5_per_cent() {
    for noise in [0.01, 0.03, 0.05] {
        holds(&bench(noise, 0.8, |_| ()), 0.8, noise, DelayMethod::EdgeLine);
    }
}

/// Beyond what it claims, an estimate says that it is rough, or is refused.
#[test]
fn rough_estimates_say_so() {
    let found = run(&bench(0.2, 0.8, |_| ()), 0.8, 20, DelayMethod::EdgeLine);
    assert!(found.rough > found.given * 8 / 10, "{} rough of {}", found.rough, found.given);
    assert!(found.given < TRACES * 95 / 100);
}

/// A pulse of height 1 at a time, ns, that rises from 10 to 90 % in 4 ns.
type Shape = fn(f64) -> f64;

/// Shapes that circuits make, written from their formulas (textbooks; no source): a Gaussian pulse, one of four equal
/// low-passes, one that charges and discharges through two resistors, a step through one low-pass, a logistic step.
const SHAPES: [(&str, Shape); 5] = [
    ("Gaussian", |time| libm::exp(-0.5 * (time / 2.371) * (time / 2.371))),
    ("four low-passes", |time| {
        let x = (time / 7.747).max(0.0);
        libm::pow(x * libm::exp(1.0 - x), 4.0)
    }),
    ("two exponentials", |time| {
        let time = time.max(0.0);
        (libm::exp(-time / 21.8) - libm::exp(-time / 1.818)) / 0.731_3
    }),
    ("one low-pass", |time| 1.0 - libm::exp(-time.max(0.0) / 1.82)),
    ("logistic", |time| 1.0 / (1.0 + libm::exp(-time / 0.91))),
];

/// Edges that bend at half their height are covered too, where the noise of A is half a hundredth of its height and B has two
/// fifths of that. By constant fraction that is least often so where the pulse begins at once, since the window reaches that
/// corner. Cross-correlation goes by the heights as a whole: without what the place of the top puts into these, it covered 82
/// of 100 behind one low-pass.
#[test]
fn edges_of_other_shapes_are_covered_too() {
    for (name, shape) in SHAPES {
        for noise in [0.005, 0.02] {
            let recorded = |truth: f64, chance: &mut Chance| {
                let (start, step) = (-60.0, 0.2);
                let phase = step * chance.unit();
                let mut channel = |detector, late: f64, height: f64| {
                    let at = |index: i32| start + step * f64::from(index) + phase - late;
                    let samples = (0..1_000).map(|index| height * shape(at(index)) + chance.normal(noise));
                    Channel { detector: Some(detector), label: String::new(), samples: samples.collect() }
                };
                let channels = vec![channel(Detector::A, 0.0, 1.0), channel(Detector::B, truth, 0.4)];
                Recording {
                    start,
                    is_start_told: true,
                    is_unit_supposed: false,
                    step,
                    uneven: 0.0,
                    channels,
                    settings: Vec::new(),
                }
            };
            for method in [
                DelayMethod::ConstantFraction { fraction: 0.5 },
                DelayMethod::CrossCorrelation { refined: true },
                DelayMethod::CrossCorrelation { refined: false },
            ] {
                let Found { given, coverage, bias, .. } = run_of(20, method, recorded);
                let place = format!("{name} at {noise} by {method:?}");
                println!("{place}: coverage {coverage:.3}, bias {bias:+.1} standard errors, {given} given");
                assert!(given >= TRACES - TRACES / 50, "{place}: {given} given");
                assert!((0.9..=0.99).contains(&coverage), "{place}: coverage {coverage}");
            }
        }
    }
}

/// Where few samples lie on an edge, what lies between them enters the uncertainty: with noise of a thousandth of the height,
/// which hides nothing of it, the delay is covered at least as often as stated, less what 1,000 traces may miss by.
#[test]
fn few_samples_on_an_edge_are_covered_too() {
    let methods = [
        DelayMethod::ConstantFraction { fraction: 0.5 },
        DelayMethod::ConstantFraction { fraction: 0.2 },
        DelayMethod::FixedLevel { volts: 0.3 },
        DelayMethod::CrossCorrelation { refined: true },
        DelayMethod::CrossCorrelation { refined: false },
    ];
    for method in methods {
        for rise in [1.0, 1.5, 2.0, 2.8] {
            let few = |bench: &mut Bench| {
                (bench.a.rise, bench.b.rise) = (rise, rise);
                (bench.digitiser.step, bench.digitiser.samples, bench.digitiser.start) = (1.0, 400, -100.0);
            };
            let Found { given, coverage, .. } = run(&bench(0.001, 1.0, few), 1.0, 20, method);
            assert!(given == TRACES && coverage >= 0.93, "{method:?}, rise {rise}: {coverage} of {given}");
        }
    }
}

/// Steps instead of pulses, a converter of 8 bits, hum, pulses that go down, ten samples on the rise, noise that
/// neighbours share.
#[test]
fn other_benches_are_covered_too() {
    let fraction = DelayMethod::ConstantFraction { fraction: 0.5 };
    let refined = DelayMethod::CrossCorrelation { refined: true };
    let steps = |bench: &mut Bench| (bench.a.decay, bench.b.decay) = (f64::INFINITY, f64::INFINITY);
    let bits = |bench: &mut Bench| (bench.digitiser.bits, bench.digitiser.full_scale) = (8, 1.0);
    let down = |bench: &mut Bench| (bench.a.gain, bench.b.gain) = (-0.8, -0.8);
    let fast = |bench: &mut Bench| (bench.a.rise, bench.b.rise) = (1.0, 1.0);
    let slow_input = |bench: &mut Bench| bench.digitiser.memory = 0.6;
    for method in [fraction, refined] {
        holds(&bench(0.05, 0.7, steps), 0.7, 0.05, method);
        holds(&bench(0.02, 0.7, bits), 0.7, 0.02, method);
        holds(&bench(0.05, 0.7, down), 0.7, 0.05, method);
        holds(&bench(0.05, 0.7, fast), 0.7, 0.05, method);
        holds(&bench(0.02, 0.7, slow_input), 0.7, 0.02, method);
    }
}

/// A file of both traces of a bench at one row of times, up to a fifth of a step to either side of equal ones.
fn jittered(bench: &Bench, truth: f64, light: f64, chance: &mut Chance) -> String {
    let Digitiser { start, step, samples, noise, .. } = bench.digitiser;
    let mut text = String::from("Time (ns),A (V),B (V)\n");
    let begin = start + chance.unit() * step;
    for index in 0..samples {
        let time = begin + index as f64 * step + chance.uniform(0.2 * step);
        let a = bench.a.level(time, 1.0) + chance.normal(noise);
        let b = bench.b.level(time - truth, light) + chance.normal(noise);
        writeln!(text, "{time:.5},{a:.6},{b:.6}").unwrap();
    }
    text
}

#[test]
fn samples_at_jittered_times_are_covered_too() {
    let method = DelayMethod::ConstantFraction { fraction: 0.5 };
    for noise in [0.02, 0.1] {
        let bench = bench(noise, 0.8, |bench| bench.digitiser.samples = 1_300);
        let recorded = |truth: f64, chance: &mut Chance| {
            let text = jittered(&bench, truth, 0.8, chance);
            read("x", text.as_bytes(), &recognise("x", text.as_bytes()).unwrap()).unwrap()
        };
        is_right(&run_of(20, method, recorded), noise, method);
    }
}

/// Where few samples lie on the edge, the steps by which they were carried matter: at a fifth of the height, with rises of 2.8
/// steps, equal steps alone would cover less than 93 of 100 (tried beside the project in plain numbers).
#[test]
fn few_samples_at_jittered_times_are_covered_too() {
    for (rise, fraction) in [(1.5, 0.5), (2.0, 0.2), (2.8, 0.2), (2.8, 0.5)] {
        let few = |bench: &mut Bench| {
            (bench.a.rise, bench.b.rise) = (rise, rise);
            (bench.digitiser.step, bench.digitiser.samples, bench.digitiser.start) = (1.0, 400, -100.0);
        };
        let bench = bench(0.001, 1.0, few);
        let recorded = |truth: f64, chance: &mut Chance| {
            let text = jittered(&bench, truth, 1.0, chance);
            read("x", text.as_bytes(), &recognise("x", text.as_bytes()).unwrap()).unwrap()
        };
        let Found { given, coverage, .. } = run_of(20, DelayMethod::ConstantFraction { fraction }, recorded);
        // On some a step is so wide that the edge is hidden in it: these are refused.
        let is_right = given >= TRACES * 9 / 10 && coverage >= 0.93;
        assert!(is_right, "rise {rise} at {fraction}: {coverage} of {given}");
    }
}

/// What becomes of traces whose pulse A is recorded with so large a limit, over its height: the delay of how many is
/// refused, and of how many given with a word about the flat top.
fn at_limit(limit: f64, noise: f64, change: impl Fn(&mut Bench)) -> (u32, u32) {
    let mut bench = bench(noise, 1.0, change);
    let height = (-400..400).map(|time| bench.a.level(f64::from(time) * 0.05, 1.0)).fold(0.0, f64::max);
    bench.digitiser.full_scale = bench.a.offset + limit * height;
    let (mut chance, mut refused, mut flagged) = (Chance::seeded(20), 0, 0);
    for _ in 0..TRACES / 5 {
        let recording = bench.record(3.0 + 20.0 * chance.unit(), 0.5, &mut chance);
        let wave = |channel: usize| Waveform {
            start: recording.start,
            step: recording.step,
            uneven: recording.uneven,
            samples: &recording.channels[channel].samples,
        };
        match delay(&wave(0), &wave(1), DelayMethod::ConstantFraction { fraction: 0.5 }) {
            Ok(found) => {
                let word = |flag: &Flag| matches!(flag, Flag::FlatTop { .. });
                flagged += u32::from(found.edges.iter().any(|edge| edge.flags.iter().any(word)));
            }
            Err(_) => refused += 1,
        }
    }
    (refused, flagged)
}

/// A pulse that its converter cuts off at 80 % of its height is refused, or given with a word where its samples can't tell: at
/// least 97 of 100 (a limit set from what was found, 98 to 100). One that is recorded whole is refused in at most 3 of 100.
#[test]
fn clipped_pulses_are_refused_or_told() {
    for decay in [15.0, 40.0, f64::INFINITY] {
        for (step, count) in [(0.1, 2_000), (0.25, 800), (0.5, 400)] {
            for noise in [0.002, 0.008, 0.02] {
                for bits in [0, 8] {
                    let bench = |bench: &mut Bench| {
                        (bench.a.decay, bench.b.decay) = (decay, decay);
                        (bench.digitiser.step, bench.digitiser.samples) = (step, count);
                        bench.digitiser.bits = bits;
                    };
                    let place = format!("decay {decay}, step {step}, noise {noise}, {bits} bits");
                    let (refused, flagged) = at_limit(0.8, noise, bench);
                    assert!(refused + flagged >= 194, "{place}: {refused} refused, {flagged} told");
                    let (refused, _) = at_limit(1.2, noise, bench);
                    assert!(refused <= 6, "{place}: {refused} refused");
                }
            }
        }
    }
}
