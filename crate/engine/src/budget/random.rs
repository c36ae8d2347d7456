//! Seeded random numbers in many independent streams, fast enough for millions of Monte Carlo trials.
//!
//! The generator is xoshiro256++ (D. Blackman and S. Vigna, ACM Trans. Math. Softw. 47 (2021) 36), period 2²⁵⁶ − 1.
//!
//! Streams: the four words of state are mixed from seed and stream by the bijection of SplitMix64 (G. L. Steele,
//! D. Lea and C. H. Flood, OOPSLA 2014), so two streams of one seed never start alike, and no state is all zero
//! (each proven at `state`). Their starts are scattered over the period: that any two of n streams, each of L
//! numbers, overlap has a probability of about n²L/2²⁵⁶. For four thousand million streams of 2⁴⁰ numbers each
//! this is 2⁻¹⁵², so jumping to provably separate parts of the period would buy nothing, and cost a thousand steps
//! for each stream before it.

use rand_xoshiro::Xoshiro256PlusPlus;
use rand_xoshiro::rand_core::{Rng, SeedableRng};

use super::ziggurat::{LAYERS, Layer, N_LAYERS, TAIL};

/// A source of random numbers: one stream of one seed.
///
/// # Example
/// ```
/// use slope_engine::budget::Random;
/// let (mut one, mut same, mut other) = (Random::new(7, 0), Random::new(7, 0), Random::new(7, 1));
/// assert_eq!(one.normal(), same.normal());
/// assert_ne!(one.normal(), other.normal());
/// ```
#[derive(Clone, Debug)]
pub struct Random {
    generator: Xoshiro256PlusPlus,
    layers: &'static [Layer; N_LAYERS],
}

impl Random {
    /// A source that always gives the same numbers for the same seed and stream.
    pub fn new(seed: u64, stream: u64) -> Self {
        Self { generator: Xoshiro256PlusPlus::from_seed(state(seed, stream)), layers: &LAYERS }
    }

    /// Uniform in [0, 1), with all 53 bits.
    #[inline]
    pub fn unit(&mut self) -> f64 {
        const STEP: f64 = 1.0 / 9_007_199_254_740_992.0;
        (self.generator.next_u64() >> 11) as f64 * STEP
    }

    /// Normal with mean 0 and standard deviation 1, by the ziggurat.
    #[inline]
    pub fn normal(&mut self) -> f64 {
        let (layer, place) = self.throw();
        if place.unsigned_abs() < layer.inside {
            place as f64 * layer.step
        } else {
            self.outside(layer, place)
        }
    }

    /// χ² with `nu` degrees of freedom, any real number above 0; not a number otherwise. Twice a gamma number of shape
    /// ν/2, by the method of G. Marsaglia and W. W. Tsang, ACM Trans. Math. Softw. 26 (2000) 363.
    pub fn chi_square(&mut self, nu: f64) -> f64 {
        if nu.is_nan() || nu <= 0.0 {
            return f64::NAN;
        }
        let shape = nu / 2.0;
        if shape < 1.0 {
            // Γ(a) is Γ(a + 1) times a power of a uniform number (section 6 of the same).
            let lessened = libm::exp(libm::log(1.0 - self.unit()) / shape);
            return self.chi_square(nu + 2.0) * lessened;
        }
        let d = shape - 1.0 / 3.0;
        let c = 1.0 / (9.0 * d).sqrt();
        loop {
            let x = self.normal();
            let root = 1.0 + c * x;
            let v = root * root * root;
            // 1 − u lies above 0, where its logarithm is finite.
            if v > 0.0 && libm::log(1.0 - self.unit()) < 0.5 * x * x + d * (1.0 - v + libm::log(v)) {
                return 2.0 * d * v;
            }
        }
    }

    /// A layer, and a place in it from −2⁵² to 2⁵² − 1. The two share no bits: G. Marsaglia and W. W. Tsang let
    /// them, which J. A. Doornik ("An improved ziggurat method", 2005) showed to be seen in the numbers.
    #[inline]
    fn throw(&mut self) -> (&'static Layer, i64) {
        let bits = self.generator.next_u64();
        let [index, ..] = bits.to_le_bytes();
        (&self.layers[usize::from(index)], bits.cast_signed() >> 11)
    }

    /// The one throw in a hundred that is not inside the rectangle under the curve.
    #[cold]
    fn outside(&mut self, mut layer: &'static Layer, mut place: i64) -> f64 {
        loop {
            let x = place as f64 * layer.step;
            if place.unsigned_abs() < layer.inside {
                return x;
            }
            if layer.is_base() {
                return self.tail().copysign(x);
            }
            if layer.foot + self.unit() * (layer.top - layer.foot) < libm::exp(-0.5 * x * x) {
                return x;
            }
            (layer, place) = self.throw();
        }
    }

    /// The normal distribution beyond the base (G. Marsaglia, Technometrics 6 (1964) 101).
    fn tail(&mut self) -> f64 {
        loop {
            // 1 − unit lies in (0, 1], so each logarithm is finite.
            let beyond = -libm::log(1.0 - self.unit()) / TAIL;
            let height = -libm::log(1.0 - self.unit());
            if 2.0 * height > beyond * beyond {
                return TAIL + beyond;
            }
        }
    }
}

/// Word k of the state is mix(mix(seed + kγ) + γ·stream), k = 1 … 4.
///
/// γ is odd, so with one seed the first word already tells any two streams apart. All four words could only be
/// zero if mix(seed + kγ) were the same for all k, which a bijection does not allow.
fn state(seed: u64, stream: u64) -> [u8; 32] {
    let offset = stream.wrapping_mul(GAMMA);
    let mut words = [0; 32];
    let mut counter = seed;
    for word in words.chunks_exact_mut(8) {
        counter = counter.wrapping_add(GAMMA);
        word.copy_from_slice(&mix(mix(counter).wrapping_add(offset)).to_le_bytes());
    }
    words
}

/// 2⁶⁴ over the golden ratio, made odd: the step of SplitMix64.
const GAMMA: u64 = 0x9e37_79b9_7f4a_7c15;

/// The output function of SplitMix64: shifts folded in, and products with odd numbers, each of them a bijection.
const fn mix(word: u64) -> u64 {
    let word = (word ^ (word >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    let word = (word ^ (word >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    word ^ (word >> 31)
}
