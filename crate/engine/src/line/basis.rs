//! An orthonormal basis built column by column (modified Gram–Schmidt, repeated where a column loses most of
//! its length: the "twice is enough" rule of W. Kahan, in B. N. Parlett, *The Symmetric Eigenvalue Problem*,
//! section 6.9), with the triangle R of A = Q R.

/// Sum of products, in four fixed partial sums: the same bits everywhere, and quick.
pub(super) fn dot(a: &[f64], b: &[f64]) -> f64 {
    let mut sums = [0.0; 4];
    let (a_fours, a_rest) = a.as_chunks::<4>();
    let (b_fours, b_rest) = b.as_chunks::<4>();
    for (x, y) in a_fours.iter().zip(b_fours) {
        for lane in 0..4 {
            sums[lane] += x[lane] * y[lane];
        }
    }
    for (lane, (x, y)) in a_rest.iter().zip(b_rest).enumerate() {
        sums[lane] += x * y;
    }
    (sums[0] + sums[1]) + (sums[2] + sums[3])
}

/// The columns of Q and the triangle R, in storage that is used again for each slope tried.
#[derive(Debug, Clone)]
pub(super) struct OrthonormalBasis {
    rows: usize,
    /// How many leading columns are held by a prior.
    held: usize,
    len: usize,
    /// Q, column after column.
    q: Vec<f64>,
    /// R, column after column, each `stride` long; entries below the diagonal stay unused.
    r: Vec<f64>,
    stride: usize,
}

impl OrthonormalBasis {
    /// Storage for `columns` columns, of which the first `held` are held by a prior and so always determined.
    pub fn new(rows: usize, held: usize, columns: usize) -> Self {
        OrthonormalBasis {
            rows,
            held,
            len: 0,
            q: vec![0.0; rows * columns],
            r: vec![0.0; columns * columns],
            stride: columns,
        }
    }

    pub fn clear(&mut self) {
        self.len = 0;
    }

    pub fn len(&self) -> usize {
        self.len
    }

    /// R's entry in row `i` and column `j`, i ≤ j.
    pub fn r(&self, i: usize, j: usize) -> f64 {
        self.r[j * self.stride + i]
    }

    /// The columns of Q made so far.
    pub fn columns(&self) -> impl Iterator<Item = &[f64]> {
        self.q.chunks_exact(self.rows).take(self.len)
    }

    /// Adds a column, written by `fill` on zeroed storage. Gives the share of its length, 0 … 1, that the columns not
    /// held by a prior leave of it: a share near zero means that the column is a mixture of those.
    pub fn add(&mut self, fill: impl FnOnce(&mut [f64])) -> f64 {
        let (done, rest) = self.q.split_at_mut(self.len * self.rows);
        let column = &mut rest[..self.rows];
        column.fill(0.0);
        fill(column);
        let coefficients = &mut self.r[self.len * self.stride..];
        coefficients[..self.len].fill(0.0);
        let held = self.held.min(self.len);
        let before = remove(&done[..held * self.rows], self.rows, column, coefficients);
        let after = if self.len > held { remove(done, self.rows, column, coefficients) } else { before };
        let length = after.sqrt();
        coefficients[self.len] = length;
        if length > 0.0 {
            for value in column.iter_mut() {
                *value /= length;
            }
        }
        self.len += 1;
        share(after, before)
    }

    /// Takes from `vector` its part in the space of the basis, whose coordinates go to `coordinates`.
    pub fn project(&self, vector: &mut [f64], coordinates: &mut [f64]) -> Projected {
        coordinates.fill(0.0);
        let held = &self.q[..self.held.min(self.len) * self.rows];
        let before = remove(held, self.rows, vector, coordinates);
        let left = remove(&self.q[..self.len * self.rows], self.rows, vector, coordinates);
        Projected { left, share: share(left, before) }
    }

    /// Solves R θ = `coordinates` in place, for the first `coordinates.len()` columns.
    pub fn solve(&self, coordinates: &mut [f64]) {
        for j in (0..coordinates.len()).rev() {
            coordinates[j] /= self.r(j, j);
            let (above, from) = coordinates.split_at_mut(j);
            for (i, value) in above.iter_mut().enumerate() {
                *value -= self.r(i, j) * from[0];
            }
        }
    }

    /// Solves Rᵀ v = `values` in place.
    pub fn solve_transposed(&self, values: &mut [f64]) {
        for j in 0..values.len() {
            let (above, from) = values.split_at_mut(j);
            let known: f64 = above.iter().enumerate().map(|(i, value)| self.r(i, j) * value).sum();
            from[0] = (from[0] - known) / self.r(j, j);
        }
    }

    /// Row `i` of R⁻¹; zero before entry `i`.
    pub fn inverse_row(&self, i: usize) -> Vec<f64> {
        let mut row = vec![0.0; self.len];
        row[i] = 1.0;
        self.solve_transposed(&mut row);
        row
    }
}

/// What a projection leaves of a vector.
pub(super) struct Projected {
    /// Squared length.
    pub left: f64,
    /// The share of its length, as [`OrthonormalBasis::add`] gives it.
    pub share: f64,
}

fn share(after: f64, before: f64) -> f64 {
    if before > 0.0 { (after / before).sqrt() } else { 0.0 }
}

/// Takes the directions `q` out of `vector`, adds their coordinates to `coordinates`, gives the squared length left.
fn remove(q: &[f64], rows: usize, vector: &mut [f64], coordinates: &mut [f64]) -> f64 {
    /// Where less than this share of the squared length is left, rounding may have left some of the directions too.
    const KEPT: f64 = 0.25;
    let mut before = dot(vector, vector);
    if q.is_empty() {
        return before;
    }
    for _ in 0..3 {
        for (column, coordinate) in q.chunks_exact(rows).zip(coordinates.iter_mut()) {
            let share = dot(column, vector);
            *coordinate += share;
            for (value, direction) in vector.iter_mut().zip(column) {
                *value -= share * direction;
            }
        }
        let after = dot(vector, vector);
        if after > KEPT * before {
            return after;
        }
        before = after;
    }
    before
}
