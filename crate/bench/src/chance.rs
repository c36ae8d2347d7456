//! Seeded random numbers, the same on every machine and in every browser.
//!
//! ChaCha with 8 rounds as the generator, whose key is the seed, or made of it, and whose nonce tells 2⁶⁴ streams apart (D. J. Bernstein,
//! "ChaCha, a variant of Salsa20", 2008); normal numbers by G. Marsaglia's polar method (G. Marsaglia and T. A.
//! Bray, SIAM Review 6 (1964) 260), with the logarithm of the `libm` crate so that all bits are the same.

use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};

/// A source of random numbers.
#[derive(Clone, Debug)]
pub struct Chance {
    generator: ChaCha8Rng,
    /// The second normal number of the last pair.
    spare: Option<f64>,
}

impl Chance {
    /// A source that always gives the same numbers for the same seed.
    pub fn seeded(seed: u64) -> Self {
        Self { generator: ChaCha8Rng::seed_from_u64(seed), spare: None }
    }

    /// A source of its own among those of one seed; stream 0 is the one of [`Chance::seeded`].
    pub fn stream(seed: u64, stream: u64) -> Self {
        let mut chance = Self::seeded(seed);
        chance.generator.set_stream(stream);
        chance
    }

    /// A source whose numbers nobody tells without its key: the generator has the security of its 256 bits.
    pub fn keyed(key: [u8; 32]) -> Self {
        Self { generator: ChaCha8Rng::from_seed(key), spare: None }
    }

    /// Uniform in [0, 1), with all 53 bits.
    pub fn unit(&mut self) -> f64 {
        const STEP: f64 = 1.0 / 9_007_199_254_740_992.0;
        (self.generator.next_u64() >> 11) as f64 * STEP
    }

    /// Uniform in [−half, half).
    pub fn uniform(&mut self, half: f64) -> f64 {
        (2.0 * self.unit() - 1.0) * half
    }

    /// Normal with mean 0 and the standard deviation `u`.
    pub fn normal(&mut self, u: f64) -> f64 {
        if let Some(spare) = self.spare.take() {
            return spare * u;
        }
        loop {
            let (a, b) = (self.uniform(1.0), self.uniform(1.0));
            let square = a * a + b * b;
            if square > 0.0 && square < 1.0 {
                let factor = (-2.0 * libm::log(square) / square).sqrt();
                self.spare = Some(b * factor);
                return a * factor * u;
            }
        }
    }
}

#[cfg(test)]
#[path = "chance_test.rs"]
mod tests;
