//! The plane of a screen beside general libraries and a published closed form.
//!
//! `reference/homography.json` holds what OpenCV and scikit-image say of four marks, and what OpenCV and
//! scipy.optimize.least_squares say of more; `reference/make_homography.py` how they were asked. OpenCV stops its search
//! of the least squares early, some 10⁻⁶ off, as the file says; with four marks nothing is searched.
#![expect(clippy::unwrap_used, clippy::panic, reason = "tests")]

use serde_json::Value;
use slope_evidence::photo::{Corner, PixelPoint, Plane};

use crate::reference::{assert_close, number, numbers, read, rows};

fn pairs(list: &Value) -> Vec<[f64; 2]> {
    rows(list).iter().map(|pair| numbers(pair).try_into().unwrap()).collect()
}

fn corners(crossings: &[[f64; 2]], marks: &[[f64; 2]]) -> Vec<Corner> {
    let of = |([column, row], [x, y]): (&[f64; 2], &[f64; 2])| Corner {
        at: PixelPoint { x: *x, y: *y },
        column: *column,
        row: *row,
    };
    crossings.iter().zip(marks).map(of).collect()
}

fn assert_matrix(plane: &Plane, expected: &Value, relative: f64, place: &str) {
    for (row, (found, expected)) in plane.matrix().iter().zip(rows(expected)).enumerate() {
        for (column, (found, expected)) in found.iter().zip(numbers(expected)).enumerate() {
            assert_close(*found, expected, relative, format!("{place}, element {row} {column}"));
        }
    }
}

#[test]
fn as_general_libraries_find_it() {
    let file = read("homography.json");
    let cases = rows(&file["cases"]);
    assert_eq!(cases.len(), 24);
    for (index, case) in cases.iter().enumerate() {
        let (crossings, marks) = (pairs(&case["crossings"]), pairs(&case["marks"]));
        let plane = Plane::fit(&corners(&crossings, &marks), 1.0).unwrap_or_else(|e| panic!("{index}: {e}"));
        if crossings.len() == 4 {
            assert_matrix(&plane, &case["opencv"], 1e-9, &format!("{index}, OpenCV"));
            assert_matrix(&plane, &case["scikit_image"], 1e-9, &format!("{index}, scikit-image"));
            for residual in plane.residuals() {
                assert!(residual.pixels.iter().all(|r| r.abs() < 1e-8), "{index}: {residual:?}");
            }
        } else {
            assert_matrix(&plane, &case["least_squares"], 1e-9, &format!("{index}, least squares"));
            assert_matrix(&plane, &case["opencv"], 1e-5, &format!("{index}, OpenCV"));
            let places = &case["places"];
            for (q, p) in pairs(&places["divisions"]).into_iter().zip(pairs(&places["pixels"])) {
                let at = plane.pixel(q);
                assert_close(at.x, p[0], 1e-10, index);
                assert_close(at.y, p[1], 1e-10, index);
                let back = plane.divisions(PixelPoint { x: p[0], y: p[1] });
                assert_close(back[0], q[0], 1e-10, index);
                assert_close(back[1], q[1], 1e-10, index);
            }
        }
    }
    let off = number(&file["largest_relative_difference"], "opencv_and_scikit_image");
    assert!(off < 1e-11, "the libraries agree with each other to {off:e}");
}

/// The unit square onto a quadrilateral in closed form: P. S. Heckbert, Fundamentals of Texture Mapping and Image
/// Warping, Master's thesis, University of California at Berkeley 1989, section 2.2.3 (from memory). With corners
/// (x_k, y_k) of (0,0), (1,0), (1,1), (0,1): Δx₁ = x₁ − x₂, Δx₂ = x₃ − x₂, Σx = x₀ − x₁ + x₂ − x₃ and so in y;
/// g = |Σ Δ₂|/|Δ₁ Δ₂|, h = |Δ₁ Σ|/|Δ₁ Δ₂|, a = x₁ − x₀ + g x₁, b = x₃ − x₀ + h x₃, c = x₀.
///
/// Worked by hand for (0,0), (4,0), (3,3), (0,2): Δ₁ = (1, −3), Δ₂ = (−3, −1), Σ = (−1, 1), |Δ₁ Δ₂| = −10,
/// |Σ Δ₂| = 4, |Δ₁ Σ| = −2: g = −2/5, h = 1/5; a = 4 − 8/5 = 12/5, b = 0, d = 0, e = 2 + 2/5 = 12/5. The middle of the
/// square, (1/2, 1/2), goes to (6/5, 6/5)/(9/10) = (4/3, 4/3), where the diagonals y = x and y = 2 − x/2 cross.
#[test]
fn heckbert_1989_square_to_quadrilateral() {
    let square = [[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 1.0]];
    let plane =
        Plane::fit(&corners(&square, &[[0.0, 0.0], [4.0, 0.0], [3.0, 3.0], [0.0, 2.0]]), 0.5).unwrap();
    let expected = [[2.4, 0.0, 0.0], [0.0, 2.4, 0.0], [-0.4, 0.2, 1.0]];
    for (found, expected) in plane.matrix().iter().flatten().zip(expected.iter().flatten()) {
        assert!((found - expected).abs() < 1e-13, "{found} {expected}");
    }
    let middle = plane.pixel([0.5, 0.5]);
    assert_close(middle.x, 4.0 / 3.0, 1e-13, "x of the middle");
    assert_close(middle.y, 4.0 / 3.0, 1e-13, "y of the middle");
}
