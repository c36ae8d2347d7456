#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;

#[test]
fn means_of_squares() {
    // Two by two squares of a picture of 5 × 4, of which the last column is left out.
    let grey: Vec<u8> = (0..20).map(|i| i * 10).collect();
    let small = Pixels::of(&grey, 5, 4).shrink(4).unwrap();
    assert_eq!((small.width, small.height, small.scale), (2, 2, 2.0));
    assert_eq!(small.rgb[0], [30.0; 3]);
    assert_eq!(small.rgb[3], [150.0; 3]);
    let colours: Vec<u8> = grey.iter().flat_map(|g| [*g, 1, 2, 255]).collect();
    let small = Pixels::of(&colours, 5, 4).shrink(4).unwrap();
    assert_eq!(small.rgb[0], [30.0, 1.0, 2.0]);
    assert_eq!(Pixels::of(&colours, 5, 4).shrink(100).unwrap().scale, 1.0);
}

#[test]
fn a_copy_made_of_bands_is_that_of_the_whole() {
    // Neither side is a multiple of what stands for one pixel of the copy.
    let (width, height) = (2399, 1001);
    let bytes: Vec<u8> = (0..=250).chain((0..=249).rev()).cycle().take(4 * width * height).collect();
    let whole = Pixels::of(&bytes, width, height).shrink(ENOUGH).unwrap();
    for multiple in [1, 7, 1000] {
        let mut bands = Shrinking::of(width, height);
        assert_eq!(bands.rows() as f64, whole.scale);
        assert!(bands.copy().is_err());
        for band in bytes.chunks(4 * width * multiple * bands.rows()) {
            bands.add(band);
        }
        // What is too much is not taken.
        bands.add(&bytes);
        assert_eq!(bands.copy().unwrap(), (&whole, [width, height]));
    }
    for (width, height) in [(0, 0), (0, 5), (7, 0)] {
        let mut bands = Shrinking::of(width, height);
        bands.add(&[1, 2, 3, 4]);
        assert!(bands.copy().is_err());
    }
}

#[test]
fn between_pixels() {
    let small = Pixels::of(&[0, 100, 200, 40], 2, 2).shrink(4).unwrap();
    assert_eq!(small.at(0.5, 0.5), [0.0; 3]);
    assert_eq!(small.at(1.0, 0.5), [50.0; 3]);
    assert_eq!(small.at(1.0, 1.0), [85.0; 3]);
    assert_eq!(small.at(-9.0, 99.0), [200.0; 3]);
}

#[test]
fn bytes_that_are_no_picture() {
    let refused = Pixels::of(&[0; 7], 2, 3).shrink(100).unwrap_err();
    assert_eq!(refused, PictureError::Bytes { bytes: 7, width: 2, height: 3 });
    assert_eq!(refused.message(), message!("picture-bytes", width = "2", height = "3"));
    for (width, height) in [(0, 0), (0, 5), (usize::MAX, 2), (usize::MAX, usize::MAX)] {
        assert!(Pixels::of(&[], width, height).shrink(100).is_err());
        assert!(Pixels::of(&[1, 2, 3], width, height).shrink(0).is_err());
    }
}
