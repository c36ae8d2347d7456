//! Small dense algebra: eight equations, solved by Cholesky.

/// Unknowns of a plane.
pub const N: usize = 8;

/// Eight numbers.
pub type Eight = [f64; N];

/// Normal equations Σ rows, of least squares in eight unknowns.
#[derive(Clone, Debug, Default)]
pub struct Normal {
    matrix: [Eight; N],
    right: Eight,
}

impl Normal {
    /// Takes in one equation `row`·h = `value`.
    pub fn add(&mut self, row: &Eight, value: f64) {
        for (i, a) in row.iter().enumerate() {
            self.right[i] += a * value;
            for (sum, b) in self.matrix[i].iter_mut().zip(row) {
                *sum += a * b;
            }
        }
    }

    /// The solution, and the factor that gives it; none where the rows leave an unknown open.
    pub fn solve(&self) -> Option<(Eight, Factor)> {
        let factor = Factor::of(&self.matrix)?;
        Some((factor.solve(&self.right), factor))
    }
}

/// The lower factor L of L·Lᵀ.
#[derive(Clone, Debug)]
pub struct Factor([Eight; N]);

impl Factor {
    /// Factors a symmetric matrix; none where it is singular to within a few roundings, or not finite.
    fn of(matrix: &[Eight; N]) -> Option<Self> {
        let mut l = [[0.0; N]; N];
        for i in 0..N {
            for j in 0..=i {
                let rest: f64 = matrix[i][j] - (0..j).map(|k| l[i][k] * l[j][k]).sum::<f64>();
                if i > j {
                    l[i][j] = rest / l[j][j];
                } else if rest > 1e-13 * matrix[i][i] {
                    l[i][i] = libm::sqrt(rest);
                } else {
                    return None;
                }
            }
        }
        Some(Self(l))
    }

    /// x of L·Lᵀ·x = right.
    pub fn solve(&self, right: &Eight) -> Eight {
        let (l, mut x) = (&self.0, self.half(right));
        for i in (0..N).rev() {
            let known: f64 = (i + 1..N).map(|k| l[k][i] * x[k]).sum();
            x[i] = (x[i] - known) / l[i][i];
        }
        x
    }

    /// y of L·y = right: its square is right·(L·Lᵀ)⁻¹·right.
    pub fn half(&self, right: &Eight) -> Eight {
        let (l, mut y) = (&self.0, *right);
        for i in 0..N {
            let known: f64 = (0..i).map(|k| l[i][k] * y[k]).sum();
            y[i] = (y[i] - known) / l[i][i];
        }
        y
    }
}

/// Σ a·b.
pub fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}
