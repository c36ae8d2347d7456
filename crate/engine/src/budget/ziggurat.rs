//! The layers of the ziggurat over f(x) = exp(−x²/2): G. Marsaglia and W. W. Tsang, "The ziggurat method for
//! generating random variables", J. Stat. Softw. 5 (2000) 8, with 256 layers of equal area.
//!
//! Layer i > 0 is the rectangle |x| ≤ x_i between the heights f(x_i) and f(x_{i+1}); the base, i = 0, is the
//! rectangle below f(x_1) together with the tails beyond x_1. Within |x| < x_{i+1} a layer lies wholly under the
//! curve, and nothing need be computed: so it is 99 times in 100.
//!
//! Why our own: the general crate of distributions takes its logarithm and exponential from whatever another crate
//! in the build has switched on, the platform's in ours; then the same seed would not give the same bits everywhere.

use std::sync::LazyLock;

/// A byte chooses the layer.
pub(super) const N_LAYERS: usize = 256;

/// x₁ for 256 layers: where the tail begins (Marsaglia and Tsang; solved again with 40-digit arithmetic). With it the
/// topmost layer ends at f(0) = 1, which a test checks.
pub(super) const TAIL: f64 = 3.654_152_885_361_009;

/// Half the number of places across a layer.
const HALF: f64 = 4_503_599_627_370_496.0;

/// One layer.
#[derive(Clone, Copy, Debug)]
pub(super) struct Layer {
    /// Places nearer to the middle than this lie under the curve.
    pub inside: u64,
    /// The distance from one place to the next.
    pub step: f64,
    /// f(x_i); nought for the base.
    pub foot: f64,
    /// f(x_{i+1}).
    pub top: f64,
}

impl Layer {
    /// Whether this is the layer that holds the tails.
    pub(super) fn is_base(&self) -> bool {
        self.foot <= 0.0
    }
}

/// All layers, from the base up, made at the first use.
pub(super) static LAYERS: LazyLock<[Layer; N_LAYERS]> = LazyLock::new(layers);

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "from 0 to 2⁵²")]
fn layers() -> [Layer; N_LAYERS] {
    let area = area();
    let foot_of_first = libm::exp(-0.5 * TAIL * TAIL);
    // The base is as wide as a rectangle of its height and area would be.
    let (mut width, mut foot) = (area / foot_of_first, 0.0);
    let mut next = TAIL;
    let mut n_made = 0;
    [(); N_LAYERS].map(|()| {
        n_made += 1;
        let top = if n_made == 1 { foot_of_first } else { foot + area / width };
        if n_made > 1 {
            next = if n_made < N_LAYERS { (-2.0 * libm::log(top)).sqrt() } else { 0.0 };
        }
        let layer = Layer { inside: (HALF * (next / width)) as u64, step: width / HALF, foot, top };
        (width, foot) = (next, top);
        layer
    })
}

/// The area of each layer on one side: x₁ f(x₁) and the tail beyond x₁.
fn area() -> f64 {
    let tail = (core::f64::consts::PI / 2.0).sqrt() * libm::erfc(TAIL * core::f64::consts::FRAC_1_SQRT_2);
    TAIL * libm::exp(-0.5 * TAIL * TAIL) + tail
}

#[cfg(test)]
#[path = "ziggurat_test.rs"]
mod tests;
