//! Delays from photographs: unbiased, and covered as often as their uncertainty says.
//!
//! A thousand views by chance, tilted up to 25° in any direction, fixed seeds. Marks are where corners and edges truly
//! lie in the picture, each with an error of its own in x and in y of the stated standard deviation: the pictures
//! themselves need not be drawn for that. Drawn, blurred, noisy and packed as JPEG they are in `photo_proposals`.
//!
//! With 1,000 pictures and a true coverage of 95 %, the share found has a standard deviation of 0.69 %: the limits of
//! 93 % and 97 % stand nearly three of them off (binomial distribution).
#![expect(clippy::unwrap_used, reason = "tests")]

use slope_bench::chance::Chance;
use slope_bench::screen::{Camera, PictureTruth, random_view};
use slope_evidence::photo::{Check, Corner, Marking, PixelPoint, Plane, Separation, separation};
use slope_of_light::distribution::student_t_quantile;

const PICTURES: u64 = 1_000;

/// ns per division.
const TIME_BASE: f64 = 5.0;

/// How a person marks.
struct Person {
    /// Standard deviation of a mark in x and in y, pixels.
    u: f64,
    /// Marks on each edge.
    repeats: usize,
    /// Whether the scatter of the marks is taken, not what was stated.
    by_scatter: bool,
    /// Which crossings are marked to check the lens.
    checks: fn(&PictureTruth) -> Vec<Corner>,
}

fn none(_: &PictureTruth) -> Vec<Corner> {
    Vec::new()
}

fn shaken(chance: &mut Chance, at: PixelPoint, u: f64) -> PixelPoint {
    PixelPoint { x: at.x + chance.normal(u), y: at.y + chance.normal(u) }
}

/// One picture: the separation found, and the true one.
fn marked(seed: u64, k1: f64, person: &Person) -> (Separation, f64) {
    let (screen, camera) = random_view(seed, 25.0);
    let truth = Camera { k1, ..camera }.truth(&screen);
    let mut chance = Chance::stream(20_251, seed);
    let mut corner = |c: Corner| Corner { at: shaken(&mut chance, c.at, person.u), ..c };
    let plane = Plane::fit(&truth.corners.map(&mut corner), person.u).unwrap();
    let checks: Vec<Check> = (person.checks)(&truth).into_iter().map(|c| plane.check(&corner(c))).collect();
    let [a, b] = truth.edges.map(|edge| -> Vec<PixelPoint> {
        (0..person.repeats).map(|_| shaken(&mut chance, edge, person.u)).collect()
    });
    let marking = if person.by_scatter { Marking::Repeats } else { Marking::Stated(person.u) };
    (separation(&plane, &a, &b, marking, &checks).unwrap(), truth.separation)
}

struct Outcome {
    /// Share of the delays covered at 95 %.
    coverage: f64,
    /// Mean error in units of its standard deviation.
    bias: f64,
    /// Root mean square of error over stated uncertainty.
    spread: f64,
}

fn outcome(k1: impl Fn(u64) -> f64, person: &Person) -> Outcome {
    let (mut held, mut sum, mut squares) = (0.0, 0.0, 0.0);
    for seed in 0..PICTURES {
        let (found, truth) = marked(seed, k1(seed), person);
        let (delay, u) = (found.value * TIME_BASE, found.uncertainty * TIME_BASE);
        let k = student_t_quantile(0.975, found.degrees_of_freedom().unwrap_or(1e9));
        let off = (delay - truth * TIME_BASE) / u;
        held += f64::from(off.abs() <= k);
        sum += off;
        squares += off * off;
    }
    let count = PICTURES as f64;
    let outcome =
        Outcome { coverage: held / count, bias: sum / squares.sqrt(), spread: (squares / count).sqrt() };
    println!("coverage {:.3}, bias {:.2} σ, spread {:.3}", outcome.coverage, outcome.bias, outcome.spread);
    outcome
}

fn assert_covers(person: &Person) {
    let Outcome { coverage, bias, .. } = outcome(|_| 0.0, person);
    assert!((0.93..=0.97).contains(&coverage), "coverage {coverage}");
    assert!(bias.abs() < 3.0, "bias of {bias} standard deviations of the mean");
}

#[test]
fn stated_marks_cover() {
    assert_covers(&Person { u: 1.5, repeats: 1, by_scatter: false, checks: none });
}

#[test]
fn coarse_marks_cover() {
    assert_covers(&Person { u: 6.0, repeats: 1, by_scatter: false, checks: none });
}

/// The corners weigh more, once the edges' marks are averaged.
#[test]
fn repeated_marks_cover() {
    assert_covers(&Person { u: 1.5, repeats: 4, by_scatter: true, checks: none });
    assert_covers(&Person { u: 1.5, repeats: 10, by_scatter: false, checks: none });
}

/// Two pictures of a fixed camera share their corner marks, so their delays are wrong together. The difference of the
/// two delays is covered by the marks of both and by what each corner mark does to both at once.
#[test]
fn two_pictures_with_one_set_of_corner_marks_cover() {
    let (mut held, mut held_apart) = (0.0, 0.0);
    let u = 1.5;
    for seed in 0..PICTURES {
        let (screen, camera) = random_view(seed, 25.0);
        let mut chance = Chance::stream(31, seed);
        let mut other = screen.clone();
        // A little later on the same screen: most of what the corners do is common.
        other.pulses[1].edge += 0.7;
        let truths = [camera.truth(&screen), camera.truth(&other)];
        let corners = truths[0].corners.map(|c| Corner { at: shaken(&mut chance, c.at, u), ..c });
        let plane = Plane::fit(&corners, u).unwrap();
        let [one, two] = truths.clone().map(|truth| {
            let [a, b] = truth
                .edges
                .map(|edge| -> Vec<PixelPoint> { (0..20).map(|_| shaken(&mut chance, edge, u)).collect() });
            separation(&plane, &a, &b, Marking::Stated(u), &[]).unwrap()
        });
        let off = two.value - one.value - (truths[1].separation - truths[0].separation);
        let shifts = [&one, &two].map(|found| plane.shifts_between(found.a.at, found.b.at));
        let together: f64 = shifts[0].iter().zip(&shifts[1]).map(|(x, y)| (y - x) * (y - x)).sum();
        let marks = one.marks * one.marks + two.marks * two.marks;
        let apart = marks + one.corners * one.corners + two.corners * two.corners;
        held += f64::from(off.abs() <= 1.96 * (marks + together).sqrt());
        held_apart += f64::from(off.abs() <= 1.96 * apart.sqrt());
    }
    let (coverage, apart) = (held / PICTURES as f64, held_apart / PICTURES as f64);
    assert!((0.93..=0.97).contains(&coverage), "coverage {coverage}");
    assert!(apart > 0.985, "coverage {apart}: the marks would not matter in common");
}

#[test]
fn corners_left_out_would_not_cover() {
    let person = Person { u: 1.5, repeats: 10, by_scatter: false, checks: none };
    let held = (0..PICTURES).filter(|seed| {
        let (found, truth) = marked(*seed, 0.0, &person);
        (found.value - truth).abs() <= 1.96 * found.marks
    });
    let coverage = held.count() as f64 / PICTURES as f64;
    assert!(coverage < 0.85, "coverage {coverage}: the corners would not matter");
}

/// Checks that show nothing but their own marking leave the coverage about where it is.
#[test]
fn checks_of_a_true_lens_cost_little() {
    let person =
        Person { u: 1.5, repeats: 1, by_scatter: false, checks: |t| vec![t.centre, t.sides[0], t.sides[1]] };
    let Outcome { coverage, spread, .. } = outcome(|_| 0.0, &person);
    assert!((0.93..=0.99).contains(&coverage), "coverage {coverage}");
    assert!(spread > 0.75, "uncertainty too large by {spread}");
}

/// A lens that bends by up to 3 % at the picture's corners, either way.
#[test]
fn a_bent_lens_is_covered_where_the_sides_are_checked() {
    let bent = |seed: u64| Chance::stream(99, seed).uniform(0.03);
    let person = |checks| Person { u: 1.5, repeats: 1, by_scatter: false, checks };
    let sides = outcome(bent, &person(|t| vec![t.centre, t.sides[0], t.sides[1]]));
    assert!(sides.coverage >= 0.93, "coverage {}", sides.coverage);
    // The middle of the picture hides what a lens does around it.
    let centre = outcome(bent, &person(|t| vec![t.centre]));
    let unchecked = outcome(bent, &person(none));
    assert!(unchecked.coverage < centre.coverage && centre.coverage < sides.coverage);
}
