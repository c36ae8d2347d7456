//! Photographs of a screen: pixels to divisions by a projective transform.
//!
//! Four grid crossings (or more) whose division coordinates are known fix the plane of the screen in the picture, so
//! a tilted camera does no harm. The difference of two edges on it is carried with its uncertainty: marking the edges,
//! marking the corners (which move both edges together), what the lens bends, and where on an edge its level lies.
//!
//! Two frames:
//! - *pixels* ([`PixelPoint`]): x to the right, y downwards, the middle of the first pixel at (0.5, 0.5), so that the
//!   picture spans 0 to its width and 0 to its height;
//! - *divisions*: `column` along the time axis, growing with time (to the right on an upright screen), and `row`
//!   growing *downwards* on the screen, so that a picture that is not mirrored keeps its sense of turning.
//!
//! Sources: R. Hartley and A. Zisserman, Multiple View Geometry in Computer Vision, 2nd ed. 2004, chapter 4 (direct
//! linear transform, normalised coordinates, reprojection error) and 5.2 (covariance of the transform); JCGM 100:2008,
//! 5.2 (correlated inputs).

mod dense;
mod mark;
mod error;
mod picture;
mod shape;
mod plane;
mod find;
mod proposed;
mod doubt;
mod order;
mod propose;
mod standing;
mod lens;
mod separation;
mod height;

pub use doubt::Doubt;
pub use error::{PlaneError, SeparationError};
pub use height::{LevelReading, MarkedHeight};
pub use lens::{LensChecks, follow, lens_checks};
pub use mark::{Corner, Mark, PixelPoint};
pub use order::MarkedBefore;
pub use picture::{PictureError, Pixels, Reduced, Shrinking};
pub use plane::{Check, Plane, Residual};
pub use propose::{Hint, Proposal, ProposeError, propose, propose_on};
pub use proposed::ProposedEdge;
pub use separation::{MarkScatter, MarkedEdge, Marking, Separation, scatter, separation};
pub use standing::{Standing, check_series, check_series_on};
