#![expect(clippy::unwrap_used, reason = "tests")]

use crate::message;
use crate::words::Message;

use super::super::{MarkScatter, Marking, PlaneError, SeparationError, scatter, separation};
use super::*;

fn corner(x: f64, y: f64, column: f64, row: f64) -> Corner {
    Corner { at: PixelPoint { x, y }, column, row }
}

/// A tilted screen of 10 × 8 divisions.
fn tilted() -> [Corner; 4] {
    [
        corner(210.0, 130.0, 0.0, 0.0),
        corner(1340.0, 205.0, 10.0, 0.0),
        corner(1395.0, 960.0, 10.0, 8.0),
        corner(160.0, 1090.0, 0.0, 8.0),
    ]
}

fn message(corners: &[Corner]) -> Message {
    Plane::fit(corners, 1.0).unwrap_err().message()
}

/// Mark `n`, counted from 1, for the crossing of a column and a row.
fn mark(n: usize, column: &str, row: &str) -> Message {
    message!("plane-mark", n = n, column = column, row = row)
}

#[test]
fn there_and_back() {
    let plane = Plane::fit(&tilted(), 1.0).unwrap();
    for corner in tilted() {
        let at = plane.pixel([corner.column, corner.row]);
        assert!((at.x - corner.at.x).abs() < 1e-9 && (at.y - corner.at.y).abs() < 1e-9, "{corner:?} {at:?}");
    }
    for q in [[0.3, 7.7], [5.0, 4.0], [9.9, 0.2]] {
        let [column, row] = plane.divisions(plane.pixel(q));
        assert!((column - q[0]).abs() < 1e-11 && (row - q[1]).abs() < 1e-11, "{q:?} {column} {row}");
    }
    let grid = plane.grid(10, 8);
    assert_eq!(grid.len(), 11 + 9);
    assert!((grid[0][0].x - 210.0).abs() < 1e-9 && (grid[0][1].x - 160.0).abs() < 1e-9);
}

/// Derivatives by central differences of the whole.
#[test]
fn derivatives_are_those_of_the_whole() {
    const STEP: f64 = 1e-3;
    let mut marks = tilted().to_vec();
    let middle = Plane::fit(&marks, 1.0).unwrap().pixel([5.0, 4.0]);
    marks.push(corner(middle.x + 2.0, middle.y - 1.0, 5.0, 4.0));
    let plane = Plane::fit(&marks, 1.0).unwrap();
    let at = PixelPoint { x: 500.0, y: 700.0 };
    let by_pixel = plane.by_pixel(at);
    let by_corners = plane.by_corners(at);
    for axis in 0..2 {
        let moved = |point: PixelPoint, by: f64| {
            if axis == 0 {
                PixelPoint { x: point.x + by, ..point }
            } else {
                PixelPoint { y: point.y + by, ..point }
            }
        };
        let (after, before) = (plane.divisions(moved(at, STEP)), plane.divisions(moved(at, -STEP)));
        for i in 0..2 {
            let slope = (after[i] - before[i]) / (2.0 * STEP);
            assert!((slope - by_pixel[i][axis]).abs() < 1e-9, "{i} {axis}");
        }
        for index in 0..marks.len() {
            let with = |by: f64| {
                let mut marks = marks.clone();
                marks[index].at = moved(marks[index].at, by);
                Plane::fit(&marks, 1.0).unwrap().divisions(at)
            };
            let (after, before) = (with(STEP), with(-STEP));
            for i in 0..2 {
                let slope = (after[i] - before[i]) / (2.0 * STEP);
                // Gauss–Newton leaves out the second derivatives, a share of residual over size of the picture.
                let allowed = 1e-2 * slope.abs().max(1e-4);
                assert!((slope - by_corners[index][i][axis]).abs() < allowed, "{index} {i} {axis}");
            }
        }
    }
}

#[test]
fn corners_move_both_edges_together() {
    let plane = Plane::fit(&tilted(), 0.8).unwrap();
    let (a, b) = (PixelPoint { x: 500.0, y: 500.0 }, PixelPoint { x: 560.0, y: 640.0 });
    let rows = plane.by_corners(a).into_iter().zip(plane.by_corners(b));
    let shifts = plane.shifts_between(a, b);
    assert_eq!(shifts.len(), 8);
    let by_shifts: f64 = shifts.iter().map(|x| x * x).sum();
    let by_rows: f64 =
        rows.flat_map(|([a, _], [b, _])| [(b[0] - a[0]) * 0.8, (b[1] - a[1]) * 0.8]).map(|x| x * x).sum();
    let variance = plane.variance_between(a, b);
    assert!((variance / by_rows - 1.0).abs() < 1e-10 && (variance / by_shifts - 1.0).abs() < 1e-10);
    // Near each other, the edges move nearly as one.
    let alone: f64 = plane.by_corners(a).iter().flat_map(|[a, _]| a).map(|x| x * x * 0.64).sum();
    assert!(variance < alone / 10.0);
    assert_eq!(plane.variance_between(a, a), 0.0);
}

#[test]
fn more_marks_show_residuals() {
    let plane = Plane::fit(&tilted(), 1.0).unwrap();
    let middle = plane.pixel([5.0, 4.0]);
    let off = corner(middle.x + 3.0, middle.y - 1.0, 5.0, 4.0);
    let check = plane.check(&off);
    assert!((check.residual.pixels[0] - 3.0).abs() < 1e-9 && (check.residual.pixels[1] + 1.0).abs() < 1e-9);
    let [[per_x, per_y], _] = plane.by_pixel(middle);
    assert!((check.residual.divisions[0] - (3.0 * per_x - per_y)).abs() < 1e-4);
    let mut all = tilted().to_vec();
    all.push(off);
    let fitted = Plane::fit(&all, 1.0).unwrap();
    let squares = |plane: &Plane| -> f64 {
        let of = |c: &Corner| {
            let at = plane.pixel([c.column, c.row]);
            (at.x - c.at.x) * (at.x - c.at.x) + (at.y - c.at.y) * (at.y - c.at.y)
        };
        all.iter().map(of).sum()
    };
    assert!(squares(&fitted) < 0.8 * squares(&plane));
}

#[test]
fn marks_that_fix_no_plane_are_named() {
    let good = tilted();
    assert_eq!(message(&good[..3]), message!("plane-too_few", got = 3_usize));
    let mut crossed = good;
    (crossed[2].at, crossed[3].at) = (good[3].at, good[2].at);
    assert_eq!(
        message(&crossed),
        message!("plane-crossed", first = mark(3, "10", "8"), second = mark(4, "0", "8"))
    );
    let mut line = good;
    line[2].at = PixelPoint { x: 775.0, y: 167.5 };
    assert_eq!(
        message(&line),
        message!(
            "plane-on_one_line",
            marks = vec![mark(1, "0", "0"), mark(2, "10", "0"), mark(3, "10", "8")]
        )
    );
    let mut same = good;
    same[1].at = same[0].at;
    assert!(matches!(Plane::fit(&same, 1.0), Err(PlaneError::SamePlace { first, second })
        if first.index == 0 && second.index == 1));
    let mut twice = good;
    (twice[1].column, twice[1].row) = (0.0, 0.0);
    assert!(matches!(Plane::fit(&twice, 1.0), Err(PlaneError::SameCrossing { .. })));
    let mut level = good;
    (level[2].column, level[2].row) = (5.0, 0.0);
    assert!(matches!(Plane::fit(&level, 1.0), Err(PlaneError::CrossingsOnOneLine { .. })));
    // The fourth mark inside the triangle of the others.
    let mut inside = good;
    inside[3].at = PixelPoint { x: 1100.0, y: 400.0 };
    assert_eq!(message(&inside), message!("plane-out_of_place", mark = mark(4, "0", "8")));
    let mirrored = [0, 3, 2, 1].map(|i: usize| Corner { at: good[i].at, ..good[(4 - i) % 4] });
    assert_eq!(Plane::fit(&mirrored.map(|c| Corner { column: c.row, row: c.column, ..c }), 1.0).err(), None);
    let wrong = good.map(|c| Corner { column: 10.0 - c.column, ..c });
    assert_eq!(Plane::fit(&wrong, 1.0).unwrap_err(), PlaneError::Mirrored);
    let mut nan = good;
    nan[0].at.x = f64::NAN;
    assert!(matches!(Plane::fit(&nan, 1.0), Err(PlaneError::NotFinite { mark }) if mark.index == 0));
    assert_eq!(Plane::fit(&good, -1.0).unwrap_err(), PlaneError::Uncertainty);
    assert_eq!(Plane::fit(&good, f64::NAN).unwrap_err(), PlaneError::Uncertainty);
}

/// A quarter turn of the camera is no mirror.
#[test]
fn a_turned_picture_is_fine() {
    let turned = tilted().map(|c| corner(1200.0 - c.at.y, c.at.x, c.column, c.row));
    assert!(Plane::fit(&turned, 1.0).is_ok());
}

#[test]
fn a_separation_and_its_parts() {
    let square = [
        corner(100.0, 100.0, 0.0, 0.0),
        corner(1100.0, 100.0, 10.0, 0.0),
        corner(1100.0, 900.0, 10.0, 8.0),
        corner(100.0, 900.0, 0.0, 8.0),
    ];
    let plane = Plane::fit(&square, 0.0).unwrap();
    let at = |x: f64| PixelPoint { x, y: 420.0 };
    let found = separation(&plane, &[at(300.0)], &[at(550.0)], Marking::Stated(1.0), &[]).unwrap();
    assert!((found.value - 2.5).abs() < 1e-12);
    assert!((found.uncertainty - 0.01 * 2.0_f64.sqrt()).abs() < 1e-12);
    assert_eq!((found.corners, found.lens, found.scatter), (0.0, 0.0, None));
    assert_eq!(found.degrees_of_freedom(), None);

    // 299, 300, 301 and 549, 551: s² = (2 + 2)/3 pixels².
    let (a, b) = ([299.0, 300.0, 301.0].map(at), [549.0, 551.0].map(at));
    let found = separation(&plane, &a, &b, Marking::Repeats, &[]).unwrap();
    let s = (4.0_f64 / 3.0).sqrt();
    assert!((found.marks - 0.01 * s * (1.0 / 3.0 + 1.0 / 2.0_f64).sqrt()).abs() < 1e-12);
    assert!((found.degrees_of_freedom().unwrap() - 3.0).abs() < 1e-9);
    let alone = scatter(&plane, &a, &b).unwrap().unwrap();
    assert!((alone.pixels - s).abs() < 1e-10);
    let pooled = MarkScatter::pool([alone, MarkScatter { pixels: 0.0, degrees_of_freedom: 1 }]).unwrap();
    assert!((pooled.pixels - 1.0).abs() < 1e-10);
    assert_eq!(pooled.degrees_of_freedom, 4);

    let check = plane.check(&corner(600.0, 530.0, 5.0, 4.0));
    let found = separation(&plane, &[at(300.0)], &[at(550.0)], Marking::Stated(0.0), &[check]).unwrap();
    assert!((found.lens - 0.3 * 2.0_f64.sqrt()).abs() < 1e-9, "{found:?}");
}

#[test]
fn edges_that_give_no_difference_are_named() {
    let plane = Plane::fit(&tilted(), 1.0).unwrap();
    let at = PixelPoint { x: 500.0, y: 500.0 };
    let of =
        |a: &[PixelPoint], b: &[PixelPoint], marking| separation(&plane, a, b, marking, &[]).unwrap_err();
    assert_eq!(of(&[], &[at], Marking::Stated(1.0)), SeparationError::NoMark { edge: 'A' });
    assert_eq!(of(&[at], &[at], Marking::Repeats), SeparationError::NoRepeats);
    assert_eq!(of(&[at], &[at], Marking::Stated(-1.0)), SeparationError::Uncertainty);
    // Lines of the grid meet to the right; beyond there the picture shows no screen.
    let far = PixelPoint { x: 40_000.0, y: 500.0 };
    assert_eq!(
        of(&[at], &[at, far], Marking::Stated(1.0)),
        SeparationError::OffPlane { edge: 'B', index: 1 }
    );
    let none = PixelPoint { x: f64::NAN, y: 0.0 };
    assert_eq!(of(&[none], &[at], Marking::Stated(1.0)), SeparationError::OffPlane { edge: 'A', index: 0 });
}

/// Marks anywhere: a reason, or a plane that puts the marks where they are.
#[test]
fn marks_anywhere_give_a_reason_or_a_plane() {
    let mut state = 7_u32;
    let mut any = |size: u32| {
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        f64::from((state >> 8) % size)
    };
    let mut planes = 0;
    for round in 0..20_000 {
        // Small pictures have many marks on one line or at one place.
        let size = if round % 2 == 0 { 12 } else { 2000 };
        let marks: Vec<Corner> = (0..4 + round % 3)
            .map(|_| {
                let at = [any(size), any(size)];
                corner(at[0], at[1], any(5), any(5))
            })
            .collect();
        let Ok(plane) = Plane::fit(&marks, 1.0) else { continue };
        planes += 1;
        for (mark, residual) in marks.iter().zip(plane.residuals()) {
            assert!(plane.sees(mark.at) || marks.len() > 4, "{marks:?}");
            let off = residual.pixels.iter().fold(0.0_f64, |a, b| a.max(b.abs()));
            assert!(off < 1e-5 || marks.len() > 4, "{marks:?} {residual:?}");
            assert!(
                plane.by_corners(mark.at).iter().flatten().flatten().all(|x| x.is_finite())
                    || marks.len() > 4
            );
        }
    }
    assert!(planes > 200, "{planes}");
}
