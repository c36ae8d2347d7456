//! The two edges on a picture: q_B − q_A in divisions along the time axis, with its uncertainty in parts.
//!
//! An edge stands where its trace crosses half of its own height, or where marks of its ends say (`height`). Only its column
//! matters. Several marks on one edge
//! are repeats: their mean counts.
//!
//! u² = marks + corners + lens:
//! - marks: u_mark² (|g_A|²/n_A + |g_B|²/n_B), g = ∂column/∂(x, y) at the edge, n its number of marks;
//! - corners: the corner marks move both edges together, so it is the variance of the *difference* under the full
//!   covariance of the plane (JCGM 100:2008, 5.2.2);
//! - lens: by as much as marks that should fit the plane lie off it, beyond what their marking explains, either edge
//!   may be off: 2·(mean excess).

use serde::{Deserialize, Serialize};

use super::error::SeparationError;
use super::mark::PixelPoint;
use super::plane::{Check, Plane};

/// How well an edge can be marked.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Marking {
    /// A standard uncertainty of one mark along the time axis, pixels.
    Stated(f64),
    /// The scatter of this picture's own repeats.
    Repeats,
    /// A scatter pooled over pictures.
    Pooled(MarkScatter),
}

/// Scatter of one mark along the time axis.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct MarkScatter {
    /// Standard deviation of one mark, pixels.
    pub pixels: f64,
    /// Degrees of freedom it is known with.
    pub degrees_of_freedom: usize,
}

impl MarkScatter {
    /// The scatter of several pictures as one (JCGM 100:2008, H.3.6); none where no picture has repeats.
    pub fn pool(parts: impl IntoIterator<Item = Self>) -> Option<Self> {
        let (mut squares, mut degrees_of_freedom) = (0.0, 0);
        for part in parts {
            squares += part.pixels * part.pixels * part.degrees_of_freedom as f64;
            degrees_of_freedom += part.degrees_of_freedom;
        }
        (degrees_of_freedom > 0)
            .then(|| Self { pixels: libm::sqrt(squares / degrees_of_freedom as f64), degrees_of_freedom })
    }
}

/// One edge.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct MarkedEdge {
    /// Mean column of its marks, divisions.
    pub column: f64,
    /// Mean row of its marks, divisions.
    pub row: f64,
    /// That place in the picture.
    pub at: PixelPoint,
    /// Number of marks.
    pub marks: usize,
    /// Divisions per pixel along the time axis, at its mean: what a stated uncertainty of a mark is multiplied with.
    pub scale: f64,
}

/// q_B − q_A and what its uncertainty is made of, all in divisions.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Separation {
    /// q_B − q_A.
    pub value: f64,
    /// Combined standard uncertainty.
    pub uncertainty: f64,
    /// Part from marking the edges.
    pub marks: f64,
    /// Degrees of freedom of that part, where it is a scatter.
    pub marks_degrees_of_freedom: Option<usize>,
    /// Part from marking the corners. Pictures that share the corner marks share it: [`Plane::shifts_between`].
    pub corners: f64,
    /// Part from the lens.
    pub lens: f64,
    /// Part from where the levels lie at which the edges are timed; 0 where their ends are not marked.
    pub levels: f64,
    /// Edge A.
    pub a: MarkedEdge,
    /// Edge B.
    pub b: MarkedEdge,
    /// The scatter of the repeats on this picture, where there are any.
    pub scatter: Option<MarkScatter>,
}

impl Separation {
    /// Degrees of freedom of the whole (Welch–Satterthwaite, JCGM 100:2008, G.4.1); none where nothing was estimated
    /// from repeats.
    pub fn degrees_of_freedom(&self) -> Option<f64> {
        let nu = self.marks_degrees_of_freedom? as f64;
        let share = self.marks / self.uncertainty;
        (share > 0.0).then(|| nu / (share * share * share * share))
    }
}

/// Marks of one edge on the plane.
struct Marks {
    edge: MarkedEdge,
    /// Σ of squared deviations along the time axis, pixels².
    squares: f64,
}

impl Marks {
    fn of(plane: &Plane, marks: &[PixelPoint], name: char) -> Result<Self, SeparationError> {
        if marks.is_empty() {
            return Err(SeparationError::NoMark { edge: name });
        }
        if let Some(index) = marks.iter().position(|at| !plane.sees(*at)) {
            return Err(SeparationError::OffPlane { edge: name, index });
        }
        let count = marks.len() as f64;
        let places: Vec<[f64; 2]> = marks.iter().map(|at| plane.divisions(*at)).collect();
        let [column, row] = [0, 1].map(|i| places.iter().map(|place| place[i]).sum::<f64>() / count);
        let at = plane.pixel([column, row]);
        let [gx, gy] = plane.by_pixel(at)[0];
        let scale = libm::hypot(gx, gy);
        let squares = places.iter().map(|[q, _]| (q - column) * (q - column)).sum::<f64>() / (scale * scale);
        Ok(Self { edge: MarkedEdge { column, row, at, marks: marks.len(), scale }, squares })
    }
}

/// The scatter of repeated marks along the time axis, pooled over both edges; none without repeats.
///
/// # Errors
/// [`SeparationError`], naming the edge.
pub fn scatter(
    plane: &Plane,
    a: &[PixelPoint],
    b: &[PixelPoint],
) -> Result<Option<MarkScatter>, SeparationError> {
    Ok(pooled(&Marks::of(plane, a, 'A')?, &Marks::of(plane, b, 'B')?))
}

fn pooled(a: &Marks, b: &Marks) -> Option<MarkScatter> {
    let degrees_of_freedom = a.edge.marks + b.edge.marks - 2;
    (degrees_of_freedom > 0).then(|| {
        let pixels = libm::sqrt((a.squares + b.squares) / degrees_of_freedom as f64);
        MarkScatter { pixels, degrees_of_freedom }
    })
}

/// q_B − q_A from the marks on edge A and on edge B.
///
/// `checks` are marks held against the plane ([`Plane::check`]); none where the lens is taken as true.
///
/// # Errors
/// [`SeparationError`], naming the edge.
pub fn separation(
    plane: &Plane,
    a: &[PixelPoint],
    b: &[PixelPoint],
    marking: Marking,
    checks: &[Check],
) -> Result<Separation, SeparationError> {
    let (a, b) = (Marks::of(plane, a, 'A')?, Marks::of(plane, b, 'B')?);
    let scatter = pooled(&a, &b);
    let (pixels, marks_degrees_of_freedom) = match marking {
        Marking::Stated(pixels) => (pixels, None),
        Marking::Repeats => {
            let scatter = scatter.ok_or(SeparationError::NoRepeats)?;
            (scatter.pixels, Some(scatter.degrees_of_freedom))
        }
        Marking::Pooled(scatter) => (scatter.pixels, Some(scatter.degrees_of_freedom)),
    };
    if !(pixels.is_finite() && pixels >= 0.0) {
        return Err(SeparationError::Uncertainty);
    }
    let of = |marks: &Marks| marks.edge.scale * marks.edge.scale / marks.edge.marks as f64;
    let marks = pixels * libm::sqrt(of(&a) + of(&b));
    let corners = libm::sqrt(plane.variance_between(a.edge.at, b.edge.at));
    let lens = lens(checks);
    Ok(Separation {
        value: b.edge.column - a.edge.column,
        uncertainty: libm::sqrt(marks * marks + corners * corners + lens * lens),
        marks,
        marks_degrees_of_freedom,
        corners,
        lens,
        levels: 0.0,
        a: a.edge,
        b: b.edge,
        scatter,
    })
}

/// Standard uncertainty of a difference from the lens, divisions.
fn lens(checks: &[Check]) -> f64 {
    let excess = |check: &Check| -> f64 {
        let pairs = check.residual.divisions.iter().zip(check.uncertainty);
        pairs.map(|(residual, u)| residual * residual - u * u).sum()
    };
    let mean = checks.iter().map(excess).sum::<f64>() / checks.len().max(1) as f64;
    libm::sqrt(2.0 * mean.max(0.0))
}
