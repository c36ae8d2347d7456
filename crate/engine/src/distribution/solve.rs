//! Inverting a tail: the point beyond which a given probability lies.

/// A tail at one point: its probability, and the density (minus or plus its slope).
#[derive(Clone, Copy)]
pub(super) struct Tail {
    pub probability: f64,
    pub density: f64,
}

/// Which way the probability runs as the point grows.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum TailSide {
    /// It grows.
    Lower,
    /// It falls.
    Upper,
}

/// Steps of doubling or halving that cross the whole range of doubles.
const DOUBLINGS: usize = 2200;
const STEPS: usize = 200;

/// The point x > 0 at which `tail(x)` has probability `target`, with 0 < `target` < 1.
///
/// A bracket within a factor of two, then Newton on the logarithm of the probability (nearly a straight line
/// in the tails), with bisection where a step would leave the bracket.
pub(super) fn point(target: f64, start: f64, side: TailSide, tail: impl Fn(f64) -> Tail) -> f64 {
    let lies_above = |at: Tail| match side {
        TailSide::Lower => at.probability < target,
        TailSide::Upper => at.probability > target,
    };
    let (mut low, mut high) = bracket(start, |x| lies_above(tail(x)));
    let mut x = low + (high - low) / 2.0;
    for _ in 0..STEPS {
        let at = tail(x);
        if at.probability.total_cmp(&target).is_eq() {
            return x;
        }
        if lies_above(at) {
            low = x;
        } else {
            high = x;
        }
        let next = newton(x, at, target, side);
        let next = if next > low && next < high { next } else { low + (high - low) / 2.0 };
        if (next - x).abs() <= f64::EPSILON / 2.0 * x {
            return next;
        }
        x = next;
    }
    x
}

fn newton(x: f64, at: Tail, target: f64, side: TailSide) -> f64 {
    let excess = libm::log1p((at.probability - target) / target);
    let step = excess * at.probability / at.density;
    match side {
        TailSide::Lower => x - step,
        TailSide::Upper => x + step,
    }
}

/// Ends of a factor of two apart, or 0 and the smallest double.
fn bracket(start: f64, lies_above: impl Fn(f64) -> bool) -> (f64, f64) {
    if lies_above(start) {
        let mut low = start;
        for _ in 0..DOUBLINGS {
            let high = 2.0 * low;
            if !(high.is_finite() && lies_above(high)) {
                return (low, high.min(f64::MAX));
            }
            low = high;
        }
        return (low, f64::MAX);
    }
    let mut high = start;
    for _ in 0..DOUBLINGS {
        let low = high / 2.0;
        if low <= 0.0 || lies_above(low) {
            return (low, high);
        }
        high = low;
    }
    (0.0, high)
}
