//! The triangle L of a covariance matrix V = L Lᵀ (A.-L. Cholesky's method, column by column), and the rows of a matrix
//! that has none.

/// A row that keeps less of its variance beside the rows before it is a mixture of those: a rounding of the matrix in its
/// last place would move what is left in its ninth digit.
const SINGULAR: f64 = 1e-7;
/// Less than nothing by so much may be rounding.
const ROUNDING: f64 = 1e-10;

/// L of a matrix of n × n, column after column, zeros above the diagonal.
#[derive(Debug, Clone)]
pub(super) struct Triangle {
    n: usize,
    l: Vec<f64>,
    /// Standard deviation of each row.
    deviations: Vec<f64>,
    /// The share of each row's variance that is left beside the rows before it; −∞ where those leave it none, but it varies
    /// together with rows behind it.
    shares: Vec<f64>,
}

impl Triangle {
    /// Of a symmetric matrix. A row that is a mixture of those before it has a column of zeros.
    pub fn of(matrix: Vec<f64>, n: usize) -> Self {
        let deviations = (0..n).map(|i| matrix[i * n + i].abs().sqrt()).collect();
        let mut triangle = Triangle { n, l: matrix, deviations, shares: vec![0.0; n] };
        for row in 0..n {
            triangle.shares[row] = triangle.eliminate(row);
        }
        triangle
    }

    /// Turns column `row` of the matrix into that of L; gives the share left of the row's variance.
    fn eliminate(&mut self, row: usize) -> f64 {
        /// Covariances beside which no variance is left, in units of the standard deviations.
        const TOGETHER: f64 = 1e-5;
        let (done, rest) = self.l.split_at_mut(row * self.n);
        let (above, column) = rest[..self.n].split_at_mut(row);
        above.fill(0.0);
        let variance = column[0];
        for known in done.chunks_exact(self.n) {
            let known = &known[row..];
            let by = known[0];
            if by != 0.0 {
                for (entry, known) in column.iter_mut().zip(known) {
                    *entry -= by * known;
                }
            }
        }
        let left = column[0];
        let share = if variance == 0.0 { left } else { left / variance.abs() };
        if share > ROUNDING {
            let root = left.sqrt();
            for entry in column {
                *entry /= root;
            }
            return share;
        }
        let own = self.deviations[row];
        let together = column[1..]
            .iter()
            .zip(&self.deviations[row + 1..])
            .any(|(entry, deviation)| entry.abs() > TOGETHER * own * deviation);
        column.fill(0.0);
        if together { f64::NEG_INFINITY } else { share }
    }

    /// L's columns.
    pub fn columns(&self) -> impl Iterator<Item = &[f64]> {
        self.l.chunks_exact(self.n)
    }

    /// L's entries in column `j` from the diagonal down.
    fn column(&self, j: usize) -> &[f64] {
        &self.l[j * self.n + j..(j + 1) * self.n]
    }

    /// The rows of a combination that has a negative variance, if there is one.
    pub fn indefinite(&self) -> Option<Vec<usize>> {
        self.shares.iter().position(|share| *share < -ROUNDING).map(|row| self.combination(row))
    }

    /// The rows of a combination that has no variance to speak of, if there is one.
    pub fn singular(&self) -> Option<Vec<usize>> {
        let row = self.shares.iter().position(|share| share.is_nan() || *share <= SINGULAR);
        row.map(|row| self.combination(row))
    }

    /// What a row is against the best mixture of those before it: the rows with a large part in that.
    fn combination(&self, row: usize) -> Vec<usize> {
        /// A row with less than this share of the largest part is not named.
        const NAMED: f64 = 0.1;
        let mut parts = vec![0.0; self.n];
        parts[row] = 1.0;
        for j in (0..row).rev() {
            let column = self.column(j);
            let known: f64 = column.iter().zip(&parts[j..]).skip(1).map(|(l, part)| l * part).sum();
            parts[j] = if column[0] > 0.0 { -known / column[0] } else { 0.0 };
        }
        parts.iter_mut().zip(&self.deviations).for_each(|(part, deviation)| *part *= deviation);
        let largest = parts.iter().fold(0.0, |largest: f64, part| largest.max(part.abs()));
        let mut rows: Vec<usize> = (0..row).filter(|place| parts[*place].abs() > NAMED * largest).collect();
        rows.push(row);
        rows
    }

    /// Multiplies a list by L⁻¹.
    pub fn whiten(&self, list: &mut [f64]) {
        for j in 0..self.n {
            let column = self.column(j);
            let (head, tail) = list[j..].split_at_mut(1);
            head[0] /= column[0];
            if head[0] != 0.0 {
                for (value, below) in tail.iter_mut().zip(&column[1..]) {
                    *value -= below * head[0];
                }
            }
        }
    }

    /// Gives L⁻ᵀ of a list.
    pub fn weigh(&self, whitened: &[f64], out: &mut [f64]) {
        for j in (0..self.n).rev() {
            let column = self.column(j);
            let known: f64 = column.iter().zip(&out[j..]).skip(1).map(|(below, value)| below * value).sum();
            out[j] = (whitened[j] - known) / column[0];
        }
    }

    /// The rows of L⁻¹, each up to the diagonal.
    pub fn inverse(&self) -> Vec<Vec<f64>> {
        let mut rows: Vec<Vec<f64>> = (1..=self.n).map(|len| vec![0.0; len]).collect();
        for j in 0..self.n {
            let mut column = vec![0.0; self.n];
            column[j] = 1.0;
            self.whiten(&mut column);
            for i in j..self.n {
                rows[i][j] = column[i];
            }
        }
        rows
    }

    /// The diagonal of V.
    pub fn variances(&self) -> Vec<f64> {
        self.deviations.iter().map(|deviation| deviation * deviation).collect()
    }
}

#[cfg(test)]
#[path = "triangle_test.rs"]
mod tests;
