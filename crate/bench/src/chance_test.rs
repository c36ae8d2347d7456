use super::*;

#[test]
fn seeds_and_streams_are_told_apart() {
    let first = |mut chance: Chance| chance.unit();
    assert_eq!(first(Chance::seeded(3)), first(Chance::seeded(3)));
    assert_eq!(first(Chance::seeded(3)), first(Chance::stream(3, 0)));
    assert_ne!(first(Chance::seeded(3)), first(Chance::seeded(4)));
    assert_ne!(first(Chance::stream(3, 1)), first(Chance::stream(3, 2)));
    assert_eq!(first(Chance::keyed([7; 32])), first(Chance::keyed([7; 32])));
    assert_ne!(first(Chance::keyed([7; 32])), first(Chance::keyed([8; 32])));
}

/// Of n numbers the mean has a standard error of σ/√n, and the mean square one of √(μ₄ − σ⁴)/√n: limits of four of them.
#[test]
fn numbers_have_the_moments_of_their_distribution() {
    const N: u32 = 100_000;
    let root = f64::from(N).sqrt();
    let moments = |draw: &mut dyn FnMut() -> f64| {
        let (mut sum, mut squares) = (0.0, 0.0);
        for _ in 0..N {
            let x = draw();
            sum += x;
            squares += x * x;
        }
        (sum / f64::from(N), squares / f64::from(N))
    };
    let mut chance = Chance::seeded(12);
    // Even in [−2, 2): variance 4/3, fourth moment 16/5.
    let (mean, square) = moments(&mut || chance.uniform(2.0));
    let variance = 4.0_f64 / 3.0;
    assert!(mean.abs() < 4.0 * variance.sqrt() / root, "{mean}");
    assert!((square - variance).abs() < 4.0 * (3.2 - variance * variance).sqrt() / root, "{square}");
    // Normal: fourth moment 3.
    let (mean, square) = moments(&mut || chance.normal(1.0));
    assert!(mean.abs() < 4.0 / root, "{mean}");
    assert!((square - 1.0).abs() < 4.0 * 2.0_f64.sqrt() / root, "{square}");
}
