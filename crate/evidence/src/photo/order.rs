//! Which of two edges is A's: told by a picture of the run that a person has marked. The colours of the traces tell it
//! where they differ, their baselines where they do not.

use serde::{Deserialize, Serialize};

use super::find::curve::alike;
use super::mark::PixelPoint;
use super::proposed::ProposedEdge;

/// Baselines tell two traces apart where they fit one way better than the other by this, divisions.
const APART: f64 = 1.0;

/// A picture on which a person has marked both edges, with what was found on it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct MarkedBefore {
    /// The edges found.
    pub edges: [Option<ProposedEdge>; 2],
    /// A mark on edge A.
    pub a: PixelPoint,
    /// A mark on edge B.
    pub b: PixelPoint,
}

/// Which of two edges is A's.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Order {
    /// Whether it is the first of the two.
    pub a_is_first: bool,
    /// Whether it is the earlier one as on the picture before.
    pub as_before: bool,
}

impl MarkedBefore {
    /// A's edge and B's, as found there; none where the marks do not tell.
    fn named(&self) -> Option<[&ProposedEdge; 2]> {
        let [Some(first), Some(second)] = &self.edges else { return None };
        let far = |edge: &ProposedEdge, at: PixelPoint| libm::hypot(edge.at.x - at.x, edge.at.y - at.y);
        // Each mark far nearer to one edge than to the other.
        let on = |one: &ProposedEdge, other, at| far(one, at) < 0.5 * far(other, at);
        if on(first, second, self.a) && on(second, first, self.b) {
            Some([first, second])
        } else {
            (on(second, first, self.a) && on(first, second, self.b)).then_some([second, first])
        }
    }

    /// Which of two edges is A's; none where this picture does not tell.
    pub fn order(&self, first: &ProposedEdge, second: &ProposedEdge) -> Option<Order> {
        let [a, b] = self.named()?;
        let a_is_first = if alike(a.colour, b.colour) || alike(first.colour, second.colour) {
            let off = |x: &ProposedEdge, y: &ProposedEdge| (x.base - a.base).abs() + (y.base - b.base).abs();
            let (straight, crossed) = (off(first, second), off(second, first));
            ((straight - crossed).abs() >= APART).then_some(straight < crossed)?
        } else {
            let fits =
                |x: &ProposedEdge, y: &ProposedEdge| alike(x.colour, a.colour) && alike(y.colour, b.colour);
            match (fits(first, second), fits(second, first)) {
                (true, false) => true,
                (false, true) => false,
                _ => return None,
            }
        };
        let is_earlier = |x: &ProposedEdge, y: &ProposedEdge| x.divisions[0] <= y.divisions[0];
        let as_before = is_earlier(a, b) == (is_earlier(first, second) == a_is_first);
        Some(Order { a_is_first, as_before })
    }
}
