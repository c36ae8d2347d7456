//! The layers close at the top of the curve, and are all of one area.

use super::*;

/// Where the tail begins is right only if the last layer ends at f(0) = 1. One unit in the last place of `TAIL` moves
/// that end by 1.2e-14, found with 40-digit arithmetic; the rounding of 255 steps by some 1e-14.
#[test]
fn the_last_layer_ends_at_the_top() {
    let last = LAYERS[N_LAYERS - 1];
    assert!((last.top - 1.0).abs() < 1e-13, "{:e}", last.top - 1.0);
    assert_eq!(last.inside, 0);
}

/// The condition of the last of 256 layers, solved with 40-digit arithmetic (mpmath), gives the area below and
/// 3.65415288536100877 for the tail.
#[test]
fn every_layer_has_the_area_that_closes_the_last() {
    assert!((area() / 0.004_928_673_233_974_655 - 1.0).abs() < 1e-14, "{:e}", area());
    for (index, layer) in LAYERS.iter().enumerate() {
        let width = layer.step * HALF;
        assert!((width * (layer.top - layer.foot) / area() - 1.0).abs() < 1e-12, "layer {index}");
    }
}

/// Each layer is inside the curve as far as the one above it is wide.
#[test]
fn layers_narrow_upwards() {
    assert!(LAYERS[0].is_base());
    for pair in LAYERS.windows(2) {
        let [below, above] = pair else { continue };
        let inside = below.inside as f64 * below.step;
        let above_width = above.step * HALF;
        assert!(inside <= above_width && above_width - inside <= 2.0 * below.step);
        assert!(above_width < below.step * HALF && !above.is_base());
        assert!((libm::exp(-0.5 * above_width * above_width) - above.foot).abs() < 1e-14);
    }
}
