//! χ² of rows whose scatter comes from few repeats: the distribution that holds there against printed values, and how often
//! a sound bench is called poor, and its interval holds the truth.

#![expect(clippy::unwrap_used, reason = "tests")]

use slope_bench::chance::Chance;
use slope_of_light::analysis::checks::checks;
use slope_of_light::analysis::{analyse, analyse_line, line_fit, prepare};
use slope_of_light::distribution::{chi_square_sf, f_sf};
use slope_of_light::notebook::{BenchField, Cell, Edit, Notebook};

use crate::reference::assert_close;

/// Upper critical values with three decimals, as tables print them, by another program (scipy 1.17, `scipy.stats.f.isf`): the
/// probability asked for lies between those of the neighbours of the last digit.
#[test]
fn tabulated_critical_values() {
    let tabulated = [
        (0.05, 161.448, 1.0, 1.0),
        (0.05, 4.965, 1.0, 10.0),
        (0.05, 6.591, 3.0, 4.0),
        (0.05, 6.388, 4.0, 4.0),
        (0.05, 3.326, 5.0, 10.0),
        (0.05, 2.348, 10.0, 20.0),
        (0.01, 5.636, 5.0, 10.0),
        (0.01, 3.368, 10.0, 20.0),
    ];
    for (q, critical, nu, below) in tabulated {
        let at = |value| f_sf(value, nu, below);
        assert!(at(critical + 5e-4) < q && q < at(critical - 5e-4), "{critical}: {}", at(critical));
    }
}

/// The regularised incomplete beta function with 60 digits (mpmath), to the accuracy that the distributions promise.
#[test]
fn sixty_digits() {
    let computed = [
        (0.25, 3.0, 2.5, 0.857_500_615_123_717_8),
        (1.0, 6.0, 16.0, 0.458_605_521_827_382_73),
        (2.5, 18.0, 7.0, 0.110_072_583_376_860_72),
        (4.0, 10.0, 12.75, 0.011_569_383_206_782_606),
        (1.5, 598.0, 40.0, 0.056_373_766_638_312_97),
        (12.0, 5.0, 1000.0, 2.656_230_826_485_252_8e-11),
        (0.05, 40.0, 3.0, 0.999_999_955_537_272_6),
        (30.0, 10.0, 24.0, 3.742_077_316_722_486e-11),
    ];
    for (f, nu, below, expected) in computed {
        assert_close(f_sf(f, nu, below), expected, 1e-12, format!("F = {f}, {nu} and {below}"));
    }
}

const BENCHES: u64 = 4_000;

/// A bench: rows, repeats of each, and the standard deviation of its distances in units of what one repeat scatters.
struct Bench(usize, usize, f64);

/// Standard deviation of one repeat, divisions; at 5 ns per division light goes 7.5 cm meanwhile.
const SCATTER: f64 = 0.05;
const NS_PER_DIVISION: f64 = 5.0;
const NS_PER_METRE: f64 = 3.336;

impl Bench {
    /// What a person writes of it: all uncertainties stated are true, or come from the repeats.
    fn run(&self, chance: &mut Chance) -> Notebook {
        let Self(rows, repeats, known) = *self;
        let u_distance = known * SCATTER * NS_PER_DIVISION / NS_PER_METRE;
        let mut edits = vec![Edit::SetBench { field: BenchField::EdgeHalfWidth, text: "1e-9".into() }];
        for (place, row) in (0..rows).zip(1..) {
            let distance = 0.5 + 3.5 * place as f64 / (rows - 1) as f64;
            let true_edge = (1.0 + NS_PER_METRE * distance) / NS_PER_DIVISION;
            let edges: Vec<String> =
                (0..repeats).map(|_| format!("{:.6}", true_edge + chance.normal(SCATTER))).collect();
            let mut cells = vec![
                (Cell::Distance, format!("{:.6}", distance + chance.normal(u_distance))),
                (Cell::TimeBase, NS_PER_DIVISION.to_string()),
                (Cell::EdgeA, "0".to_owned()),
                (Cell::EdgeB, edges.join("; ")),
            ];
            if known > 0.0 {
                cells.push((Cell::DistanceUncertainty, format!("{u_distance:.9}")));
            }
            edits.push(Edit::AddRow { row, after: None, cells: cells.into_iter().collect() });
        }
        let mut notebook = Notebook::new();
        notebook.apply(Edit::Together(edits), "").unwrap();
        notebook
    }

    /// The shares of benches with p < 0.05: as the notebook has it, of its test for curvature, and as χ² would have it.
    fn shares(&self) -> [f64; 3] {
        let mut chance = Chance::seeded(20);
        let mut below = [0_u32; 3];
        for _ in 0..BENCHES {
            let notebook = self.run(&mut chance);
            let page = notebook.state();
            let prepared = prepare(page, None);
            let (points, setup) = (&prepared.rows.points, prepared.setup.as_ref().unwrap());
            let line = line_fit::fit(page, points, setup).unwrap();
            let bend = checks(page, points, setup, &line.fit).quadratic.unwrap();
            let alone = chi_square_sf(line.fit.chi_square, line.fit.degrees_of_freedom as f64);
            for (count, p) in below.iter_mut().zip([line.p_value.unwrap(), bend.p_value, alone]) {
                *count += u32::from(p < 0.05);
            }
        }
        below.map(|count| f64::from(count) / BENCHES as f64)
    }
}

/// A share of 5 % of 4,000 benches has a standard deviation of 0.34 % (binomial distribution): the bounds stand three
/// and a half of them off. By chi-square alone far more of the same benches would be called poor.
#[test]
fn p_is_below_a_twentieth_in_a_twentieth_of_benches_with_repeats_alone() {
    for bench in [Bench(8, 2, 0.0), Bench(12, 3, 0.0)] {
        let [p, bend, chi_square] = bench.shares();
        assert!((0.038..=0.062).contains(&p), "{} rows, {} repeats: {p}", bench.0, bench.1);
        assert!((0.038..=0.062).contains(&bend), "{} rows, {} repeats: curvature {bend}", bench.0, bench.1);
        assert!(chi_square > 0.08, "{} rows, {} repeats: χ² alone {chi_square}", bench.0, bench.1);
    }
}

/// Beside known uncertainties of the distances ν₂ is an approximation: up to 6 % in 20,000 benches simulated elsewhere with
/// as few repeats as there can be, and three and a half standard deviations (1.3 %) more here.
#[test]
fn beside_known_uncertainties_the_share_stays_near() {
    for bench in [Bench(12, 2, 0.3), Bench(8, 3, 0.3)] {
        let [p, bend, chi_square] = bench.shares();
        assert!((0.038..=0.073).contains(&p), "{} rows, {} repeats: {p}", bench.0, bench.1);
        assert!((0.038..=0.073).contains(&bend), "{} rows, {} repeats: curvature {bend}", bench.0, bench.1);
        assert!(chi_square > p, "{} rows, {} repeats: χ² alone {chi_square}", bench.0, bench.1);
    }
}

/// c ± U holds the truth as often as it says, where k comes from few repeats (JCGM 100:2008, G.4). Of 4,000 benches the
/// share has a standard deviation of 0.34 %: the limits stand four of them off.
#[test]
fn intervals_from_few_repeats_cover() {
    let before = analyse(&Notebook::new());
    for bench in [Bench(5, 2, 0.0), Bench(8, 2, 0.3)] {
        let mut chance = Chance::seeded(21);
        let held = (0..BENCHES).filter(|_| {
            let speed = analyse_line(bench.run(&mut chance).state(), &before).speed.unwrap();
            let truth = speed.group_index * 1e9 / NS_PER_METRE;
            (speed.c - truth).abs() <= speed.expanded().unwrap()
        });
        let coverage = held.count() as f64 / BENCHES as f64;
        assert!((0.935..=0.965).contains(&coverage), "{} rows, {} repeats: {coverage}", bench.0, bench.1);
    }
}
