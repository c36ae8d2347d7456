//! The distribution of an error, and numbers drawn from it.

use core::f64::consts::SQRT_2;

use super::Random;

/// How an error is distributed about nought.
///
/// JCGM 101, table 1, says which shape belongs to which knowledge: a standard uncertainty alone gives the normal
/// distribution, limits the rectangular, a sum of two like rectangular errors the triangular, an oscillation
/// between limits the arcsine, a few repeated readings the t distribution.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Shape {
    /// Normal (JCGM 101, 6.4.7).
    Normal,
    /// Equally likely anywhere between limits (JCGM 101, 6.4.2).
    Rectangular,
    /// Most likely in the middle, falling in straight lines to the limits (JCGM 101, 6.4.5).
    Triangular,
    /// Most likely near the limits, as a sine wave is (JCGM 101, 6.4.6).
    Arcsine,
    /// Student's t with so many degrees of freedom ν, any real number above 0 (JCGM 101, 6.4.9).
    Student(f64),
}

impl Shape {
    /// A number with mean 0 and standard deviation 1, to be multiplied by the standard uncertainty u.
    ///
    /// For [`Student`](Self::Student) it is t_ν itself, so that u is the scale of the distribution, s/√n of n
    /// readings, as in JCGM 101, 6.4.9: the standard deviation of what is drawn is √(ν/(ν − 2)) times larger, and
    /// infinite for ν ≤ 2. Not a number when ν is not above 0.
    pub fn draw(self, random: &mut Random) -> f64 {
        match self {
            Self::Normal => random.normal(),
            Self::Rectangular => 3.0_f64.sqrt() * (2.0 * random.unit() - 1.0),
            Self::Triangular => 6.0_f64.sqrt() * (random.unit() + random.unit() - 1.0),
            Self::Arcsine => arcsine(random),
            Self::Student(nu) => student(nu, random),
        }
    }
}

/// √2 cos 2φ, with φ the angle of a point even over the unit disc: (a² − b²)/(a² + b²) needs no cosine (J. von Neumann,
/// NBS Appl. Math. Ser. 12 (1951) 36; from memory).
fn arcsine(random: &mut Random) -> f64 {
    loop {
        let (a, b) = (2.0 * random.unit() - 1.0, 2.0 * random.unit() - 1.0);
        let (a, b) = (a * a, b * b);
        if a + b > 0.0 && a + b < 1.0 {
            return SQRT_2 * ((a - b) / (a + b));
        }
    }
}

/// t_ν by the polar method of R. W. Bailey, Math. Comp. 62 (1994) 779: with (a, b) even over the unit disc and
/// w = a² + b², the number a √(ν (w^(−2/ν) − 1)/w). Any real ν above 0; as ν grows it becomes the normal number of
/// Marsaglia's polar method.
fn student(nu: f64, random: &mut Random) -> f64 {
    if nu.is_nan() || nu <= 0.0 {
        return f64::NAN;
    }
    if nu.is_infinite() {
        return random.normal();
    }
    loop {
        let (a, b) = (2.0 * random.unit() - 1.0, 2.0 * random.unit() - 1.0);
        let w = a * a + b * b;
        if w > 0.0 && w < 1.0 {
            let square = nu * libm::expm1(-2.0 / nu * libm::log(w));
            return a / w.sqrt() * square.sqrt();
        }
    }
}
