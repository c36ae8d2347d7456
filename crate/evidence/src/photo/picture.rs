//! Pixels as a browser decodes them, and the smaller copy in which lines and traces are looked for.

use crate::words::Message;
use crate::{errors_as_data, message};
use serde::{Deserialize, Serialize};

/// Pixels of a copy to look at, at most.
pub const ENOUGH: usize = 800_000;

/// Why bytes are no picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub enum PictureError {
    /// The number of bytes is not 1 or 4 a pixel.
    Bytes {
        /// Bytes given.
        bytes: usize,
        /// Width, pixels.
        width: usize,
        /// Height, pixels.
        height: usize,
    },
    /// Too few pixels for a grid.
    TooSmall {
        /// Width, pixels.
        width: usize,
        /// Height, pixels.
        height: usize,
    },
}

errors_as_data!(PictureError);

impl PictureError {
    /// What is wrong, and what to do.
    pub fn message(self) -> Message {
        match self {
            Self::Bytes { width, height, .. } => {
                message!("picture-bytes", width = width.to_string(), height = height.to_string())
            }
            Self::TooSmall { width, height } => {
                message!("picture-too_small", width = width.to_string(), height = height.to_string())
            }
        }
    }
}

/// A picture as decoded: 4 bytes a pixel (red, green, blue, opacity) or 1 (grey), row by row from the top.
#[derive(Clone, Copy, Debug)]
pub struct Pixels<'a> {
    /// The bytes.
    pub bytes: &'a [u8],
    /// Pixels to the right.
    pub width: usize,
    /// Pixels downwards.
    pub height: usize,
}

/// A copy of a picture, each of its pixels the mean of a square of the picture's.
#[derive(Clone, Debug, PartialEq)]
pub struct Reduced {
    /// Pixels to the right.
    pub width: usize,
    /// Pixels downwards.
    pub height: usize,
    /// Pixels of the picture to one of the copy, either way.
    pub scale: f64,
    /// Red, green and blue, 0 to 255, row by row; all three the same of a picture in grey.
    pub rgb: Vec<[f32; 3]>,
}

impl<'a> Pixels<'a> {
    /// A picture.
    pub fn of(bytes: &'a [u8], width: usize, height: usize) -> Self {
        Self { bytes, width, height }
    }

    /// Copies the picture down to at most `pixels` pixels.
    ///
    /// Columns and rows that don't fill a last pixel of the copy are left out.
    ///
    /// # Errors
    /// [`PictureError`] where the bytes don't fit the size.
    pub fn shrink(self, pixels: usize) -> Result<Reduced, PictureError> {
        let Self { bytes, width, height } = self;
        let area = width.saturating_mul(height);
        let channels = match bytes.len() {
            0 => 0,
            length if length == area => 1,
            length if Some(length) == area.checked_mul(4) => 4,
            _ => 0,
        };
        if channels == 0 {
            return Err(PictureError::Bytes { bytes: bytes.len(), width, height });
        }
        let factor = factor(width, height, pixels);
        let (small_width, small_height) = (width / factor, height / factor);
        let rgb = if channels == 1 {
            means(bytes.as_chunks::<1>().0, width, small_width, small_height, factor)
        } else {
            means(bytes.as_chunks::<4>().0, width, small_width, small_height, factor)
        };
        Ok(Reduced { width: small_width, height: small_height, scale: factor as f64, rgb })
    }
}

/// How many pixels stand for one of a copy, either way, that has at most `pixels`.
fn factor(width: usize, height: usize, pixels: usize) -> usize {
    let mut factor = 1;
    while (width / factor).saturating_mul(height / factor) > pixels.max(1) {
        factor += 1;
    }
    factor
}

/// A copy that is made out of one band of a picture after the other, from the top, so that the whole of it need not be at
/// hand. It is what [`Pixels::shrink`] makes of the whole.
#[derive(Clone, Debug)]
pub struct Shrinking {
    /// Size of the picture, pixels.
    size: [usize; 2],
    factor: usize,
    /// What there is of it.
    copy: Reduced,
}

impl Shrinking {
    /// Of a picture of a size, of which nothing is there yet.
    pub fn of(width: usize, height: usize) -> Self {
        let factor = factor(width, height, ENOUGH);
        let (small_width, small_height) = (width / factor, height / factor);
        let rgb = Vec::with_capacity(small_width.saturating_mul(small_height));
        let copy = Reduced { width: small_width, height: small_height, scale: factor as f64, rgb };
        Self { size: [width, height], factor, copy }
    }

    /// Rows of a band: a multiple of this, or all that are left.
    pub fn rows(&self) -> usize {
        self.factor
    }

    /// Takes the next band in, of 4 bytes a pixel.
    pub fn add(&mut self, band: &[u8]) {
        let Self { size: [width, _], factor, copy } = self;
        let lacking = copy.height - copy.rgb.len() / copy.width.max(1);
        copy.rgb.extend(means(band.as_chunks::<4>().0, *width, copy.width, lacking, *factor));
    }

    /// The copy, with the size of the picture.
    ///
    /// # Errors
    /// [`PictureError`] where not all of the picture was taken in.
    pub fn copy(&self) -> Result<(&Reduced, [usize; 2]), PictureError> {
        let Self { size: [width, height], copy, .. } = self;
        if copy.rgb.is_empty() || copy.rgb.len() != copy.width * copy.height {
            let bytes = copy.rgb.len().saturating_mul(4 * self.factor * self.factor);
            return Err(PictureError::Bytes { bytes, width: *width, height: *height });
        }
        Ok((copy, self.size))
    }
}

/// The mean of each square of `factor` × `factor` pixels: of the first three bytes of a pixel, or of its only one.
fn means<const BYTES: usize>(
    pixels: &[[u8; BYTES]],
    width: usize,
    small_width: usize,
    small_height: usize,
    factor: usize,
) -> Vec<[f32; 3]> {
    let scale = 1.0 / (factor * factor) as f32;
    let channels = [0, 1, 2].map(|i: usize| i.min(BYTES.saturating_sub(2)));
    let mut rgb = Vec::with_capacity(small_width * small_height);
    let mut sums = vec![[0_u32; 3]; small_width];
    for band in pixels.chunks_exact((width * factor).max(1)).take(small_height) {
        sums.fill([0; 3]);
        for row in band.chunks_exact(width.max(1)) {
            for (sum, block) in sums.iter_mut().zip(row.chunks_exact(factor)) {
                for pixel in block {
                    for (sum, channel) in sum.iter_mut().zip(channels) {
                        *sum += u32::from(pixel[channel]);
                    }
                }
            }
        }
        rgb.extend(sums.iter().map(|sum| sum.map(|sum| sum as f32 * scale)));
    }
    rgb
}

impl Reduced {
    /// The colour at a place in the copy's own pixels, between the four next; at the border that of the border.
    pub(super) fn at(&self, x: f64, y: f64) -> [f32; 3] {
        let (x, y) = (x - 0.5, y - 0.5);
        let (left, top, fx, fy) = split(x, y, self.width, self.height);
        let (right, below) = ((left + 1).min(self.width - 1), (top + 1).min(self.height - 1));
        let of = |x: usize, y: usize| self.rgb[y * self.width + x];
        let (a, b, c, d) = (of(left, top), of(right, top), of(left, below), of(right, below));
        [0, 1, 2].map(|i| {
            let (above, under) = (a[i] + (b[i] - a[i]) * fx, c[i] + (d[i] - c[i]) * fx);
            above + (under - above) * fy
        })
    }
}

/// The pixel at or before a place, and how far beyond it.
pub(super) fn split(x: f64, y: f64, width: usize, height: usize) -> (usize, usize, f32, f32) {
    let x = x.clamp(0.0, (width - 1) as f64);
    let y = y.clamp(0.0, (height - 1) as f64);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped")]
    let (left, top, whole) = (x as usize, y as usize, |part: f64| part as f32);
    (left, top, whole(x - left as f64), whole(y - top as f64))
}

#[cfg(test)]
#[path = "picture_test.rs"]
mod tests;
