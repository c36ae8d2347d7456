//! Random numbers: each shape against its moments and tails in closed form, the ziggurat against the normal
//! distribution, and streams against each other.
//!
//! Seeds are fixed, so no test fails by chance; limits are of four standard deviations, or of a probability of
//! 10⁻⁴, so that an error in the numbers is seen.
#![expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "tests")]

use std::collections::HashSet;
use std::f64::consts::PI;

use slope_of_light::budget::{Random, Shape};
use slope_of_light::distribution::{chi_square_sf, normal_cdf, normal_sf, student_t_sf};

const DRAWS: usize = 200_000;

fn drawn(shape: Shape, stream: u64, n: usize) -> Vec<f64> {
    let mut random = Random::new(2026, stream);
    (0..n).map(|_| shape.draw(&mut random)).collect()
}

/// A share of `n` is within four standard deviations of the binomial distribution.
#[track_caller]
fn assert_share(count: usize, n: usize, expected: f64, place: &str) {
    let (found, n) = (count as f64 / n as f64, n as f64);
    let allowed = 4.0 * (expected * (1.0 - expected) / n).sqrt();
    assert!((found - expected).abs() <= allowed, "{place}: found {found}, expected {expected} ± {allowed}");
}

/// Both tails beyond each point hold what the closed form says.
fn check_tails(shape: Shape, stream: u64, points: &[f64], tail: impl Fn(f64) -> f64) {
    let values = drawn(shape, stream, DRAWS);
    for point in points {
        let place = format!("{shape:?} beyond {point}");
        assert_share(values.iter().filter(|x| **x > *point).count(), DRAWS, tail(*point), &place);
        assert_share(values.iter().filter(|x| **x < -point).count(), DRAWS, tail(*point), &place);
    }
}

/// Mean 0, standard deviation 1, and the kurtosis β = E x⁴ of the shape, whose own scatter needs the moment
/// `eighth` = E x⁸. Moments follow by integrating the densities of JCGM 101, 6.4.
fn check_moments(shape: Shape, stream: u64, variance: f64, kurtosis: f64, eighth: f64) {
    let values = drawn(shape, stream, DRAWS);
    let n = DRAWS as f64;
    let moment = |power: i32| values.iter().map(|x| x.powi(power)).sum::<f64>() / n;
    let cases = [
        ("mean", moment(1), 0.0, variance),
        ("variance", moment(2), variance, kurtosis - variance * variance),
        ("fourth moment", moment(4), kurtosis, eighth - kurtosis * kurtosis),
    ];
    for (name, found, expected, scatter) in cases {
        let allowed = 4.0 * (scatter / n).sqrt();
        assert!(
            (found - expected).abs() <= allowed,
            "{shape:?}, {name}: found {found}, expected {expected} ± {allowed}"
        );
    }
}

#[test]
fn moments_of_the_shapes() {
    check_moments(Shape::Normal, 0, 1.0, 3.0, 105.0);
    check_moments(Shape::Rectangular, 1, 1.0, 9.0 / 5.0, 9.0);
    // E x^k = 2·6^(k/2)/((k + 1)(k + 2)).
    check_moments(Shape::Triangular, 2, 1.0, 12.0 / 5.0, 2.0 * 1296.0 / 90.0);
    // E x^k = 2^(k/2) · binomial(k, k/2)/2^k.
    check_moments(Shape::Arcsine, 3, 1.0, 3.0 / 2.0, 16.0 * 70.0 / 256.0);
    // With ν = 12: ν/(ν − 2), 3ν²/((ν − 2)(ν − 4)), 105ν⁴/((ν − 2)(ν − 4)(ν − 6)(ν − 8)).
    let nu = 12.0_f64;
    let fourth = 3.0 * nu * nu / ((nu - 2.0) * (nu - 4.0));
    let eighth = 105.0 * nu.powi(4) / ((nu - 2.0) * (nu - 4.0) * (nu - 6.0) * (nu - 8.0));
    check_moments(Shape::Student(nu), 4, nu / (nu - 2.0), fourth, eighth);
}

#[test]
fn tails_of_the_shapes() {
    check_tails(Shape::Normal, 5, &[0.0, 0.3, 1.0, 2.0, 3.0, 3.6, 3.7, 4.0], normal_sf);
    check_tails(Shape::Rectangular, 6, &[0.0, 0.5, 1.0, 1.7], |x| 0.5 * (1.0 - x / 3.0_f64.sqrt()));
    check_tails(Shape::Triangular, 7, &[0.0, 0.5, 1.0, 2.0, 2.4], |x| {
        0.5 * (1.0 - x / 6.0_f64.sqrt()).powi(2)
    });
    check_tails(Shape::Arcsine, 8, &[0.0, 0.5, 1.0, 1.4], |x| (x / 2.0_f64.sqrt()).acos() / PI);
    for nu in [0.5, 1.0, 2.0, 3.7, 30.0, 1e9, f64::INFINITY] {
        check_tails(Shape::Student(nu), 9, &[0.0, 0.5, 1.0, 2.0, 3.0, 5.0], |x| student_t_sf(x, nu));
    }
}

/// Nothing beyond the limits, and the half-width is what JCGM 101, 6.4, says: a = u over the factor.
#[test]
fn limits_of_the_shapes() {
    let factors = [
        (Shape::Rectangular, 0.577_350_269_189_625_8),
        (Shape::Triangular, 0.408_248_290_463_863),
        (Shape::Arcsine, 0.707_106_781_186_547_5),
    ];
    for (shape, factor) in factors {
        let largest = drawn(shape, 10, DRAWS).into_iter().map(f64::abs).fold(0.0, f64::max);
        assert!(largest * factor <= 1.0 + 1e-15, "{shape:?} reaches {largest}");
        // The triangle has the least probability near its limits: 10⁻⁴ of it in the last hundredth.
        assert!(largest * factor > 0.99, "{shape:?} ends at {largest}");
    }
    for nu in [0.0, -1.0, f64::NAN] {
        assert!(Shape::Student(nu).draw(&mut Random::new(1, 1)).is_nan(), "ν = {nu}");
    }
}

/// A million numbers in 500 equally likely cells, by chi-square; and the largest distance between their
/// distribution and the normal one, by Kolmogorov's limit: √n·D > 2.225 has a probability of 10⁻⁴.
#[test]
fn the_ziggurat_is_normal() {
    let n = 1_000_000;
    let mut values = drawn(Shape::Normal, 11, n);
    values.sort_unstable_by(f64::total_cmp);
    let below: Vec<f64> = values.iter().map(|x| normal_cdf(*x)).collect();
    let mut counts = [0_u32; 500];
    for p in &below {
        counts[(p * 500.0) as usize] += 1;
    }
    let expected = n as f64 / 500.0;
    let chi_square: f64 = counts.iter().map(|count| (f64::from(*count) - expected).powi(2) / expected).sum();
    let p = chi_square_sf(chi_square, 499.0);
    assert!((1e-4..1.0 - 1e-4).contains(&p), "chi-square {chi_square}, p {p}");
    let steps = below.iter().enumerate().map(|(i, p)| {
        let (before, after) = (i as f64 / n as f64, (i + 1) as f64 / n as f64);
        (p - before).abs().max((after - p).abs())
    });
    let distance = steps.fold(0.0, f64::max) * (n as f64).sqrt();
    assert!((0.3..2.225).contains(&distance), "√n·D = {distance}");
    // The sign and the size come from bits of their own: the sign is even in each layer of sizes.
    for size in [0.01, 0.5, 1.5, 2.5, 3.66] {
        let in_layer = || values.iter().filter(|x| (x.abs() - size).abs() < 0.1);
        assert_share(in_layer().filter(|x| **x > 0.0).count(), in_layer().count(), 0.5, "sign");
    }
}

/// The tail beyond the base of the ziggurat, drawn by a method of its own: of ten million numbers about 2,580 lie in
/// it, and their shares beyond further points are those of the normal distribution.
#[test]
fn the_tail_of_the_ziggurat() {
    let n = 10_000_000;
    let mut random = Random::new(2026, 12);
    let tail: Vec<f64> = (0..n).map(|_| random.normal().abs()).filter(|x| *x > 3.6542).collect();
    assert_share(tail.len(), n, 2.0 * normal_sf(3.6542), "in the tail");
    for point in [3.7, 3.8, 3.9, 4.0, 4.3] {
        let count = tail.iter().filter(|x| **x > point).count();
        assert_share(count, tail.len(), normal_sf(point) / normal_sf(3.6542), &format!("beyond {point}"));
    }
}

/// Correlation of two lists that are uniform in [0, 1), in its own standard deviations 1/√n.
fn correlation(pairs: impl Iterator<Item = (f64, f64)>) -> f64 {
    let (sum, n) =
        pairs.fold((0.0, 0), |(sum, n): (f64, u32), (a, b)| (sum + 12.0 * (a - 0.5) * (b - 0.5), n + 1));
    sum / f64::from(n).sqrt()
}

#[test]
fn streams_are_independent() {
    let list = |seed, stream| {
        let mut random = Random::new(seed, stream);
        (0..100_000).map(|_| random.unit()).collect::<Vec<_>>()
    };
    let first = list(1, 0);
    assert_eq!(first, list(1, 0));
    for (seed, stream) in [(1, 1), (2, 0), (0, 1), (1, 1 << 63), (u64::MAX, u64::MAX), (0, 0)] {
        let other = list(seed, stream);
        for shift in [0, 1, 2] {
            let r = correlation(first.iter().copied().zip(other.iter().skip(shift).copied()));
            assert!(r.abs() < 4.0, "seed {seed}, stream {stream}, shift {shift}: {r}");
        }
    }
}

/// The starts of many streams are as good as one stream: uniform, and one does not tell the next.
#[test]
fn starts_of_streams_are_scattered() {
    for start in [|i| Random::new(7, i), |i| Random::new(i, 7)] {
        let starts: Vec<[f64; 3]> = (0..50_000)
            .map(|i| {
                let mut random = start(i);
                [random.unit(), random.unit(), random.unit()]
            })
            .collect();
        let distinct: HashSet<u64> = starts.iter().map(|start| start[0].to_bits()).collect();
        assert_eq!(distinct.len(), starts.len());
        for number in 0..3 {
            let mut counts = [0_u32; 100];
            for start in &starts {
                counts[(start[number] * 100.0) as usize] += 1;
            }
            let chi_square: f64 =
                counts.iter().map(|count| (f64::from(*count) - 500.0).powi(2) / 500.0).sum();
            let p = chi_square_sf(chi_square, 99.0);
            assert!((1e-4..1.0 - 1e-4).contains(&p), "number {number}: p {p}");
            let next = starts.iter().zip(&starts[1..]).map(|(a, b)| (a[number], b[number]));
            assert!(correlation(next).abs() < 4.0, "number {number}");
        }
    }
}

/// `unit` fills [0, 1) and never gives 1.
#[test]
fn units_lie_where_they_should() {
    let mut random = Random::new(3, 4);
    let values: Vec<f64> = (0..DRAWS).map(|_| random.unit()).collect();
    assert!(values.iter().all(|x| (0.0..1.0).contains(x)));
    assert!(values.iter().copied().fold(0.0, f64::max) > 0.9999);
    assert_share(values.iter().filter(|x| **x < 0.25).count(), DRAWS, 0.25, "the lowest quarter");
    // All 53 bits are in use: the last is set half the time.
    let odd = values.iter().filter(|x| ((*x * 9_007_199_254_740_992.0) as u64) % 2 == 1).count();
    assert_share(odd, DRAWS, 0.5, "the last bit");
}
