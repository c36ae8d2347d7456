//! A camera before the screen: a pinhole with a lens that bends, blur, vignetting, exposure and noise.

use serde::{Deserialize, Serialize};
use slope_evidence::photo::{Corner, PixelPoint};

use super::drawing::Screen;
use crate::chance::Chance;

/// Where the camera stands and how it sees. Angles in radians.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Camera {
    /// Width of the picture, pixels.
    pub width: usize,
    /// Height of the picture, pixels.
    pub height: usize,
    /// Focal length, in widths of the picture.
    pub focal: f64,
    /// Share of the width that the grid would fill, seen straight.
    pub fill: f64,
    /// Where the grid's middle lies, off the middle of the picture, divisions to the right and downwards.
    pub aim: [f64; 2],
    /// Turn of the screen about its upright middle line.
    pub yaw: f64,
    /// Turn of the screen about its level middle line.
    pub pitch: f64,
    /// Turn of the camera about its axis.
    pub roll: f64,
    /// Radial distortion: a point at a share ρ of half the diagonal from the middle is moved outwards by k1·ρ³.
    pub k1: f64,
    /// Standard deviation of the blur, pixels.
    pub blur: f64,
    /// Standard deviation of the noise, of 255.
    pub noise: f64,
    /// Share of the light lost in the corners of the picture.
    pub vignetting: f64,
    /// Factor on the light.
    pub exposure: f64,
    /// A lamp mirrored in the screen, above its middle: light added at its brightest place, as a share of white.
    pub glare: f64,
}

impl Default for Camera {
    /// Straight before the screen, and faultless.
    fn default() -> Self {
        Self {
            width: 1600,
            height: 1200,
            focal: 1.1,
            fill: 0.75,
            aim: [0.0; 2],
            yaw: 0.0,
            pitch: 0.0,
            roll: 0.0,
            k1: 0.0,
            blur: 0.0,
            noise: 0.0,
            vignetting: 0.0,
            exposure: 1.0,
            glare: 0.0,
        }
    }
}

/// Pixels: red, green, blue and opacity, row by row from the top.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Picture {
    /// Pixels to the right.
    pub width: usize,
    /// Pixels downwards.
    pub height: usize,
    /// Four bytes a pixel.
    pub rgba: Vec<u8>,
}

/// What is true of a picture.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PictureTruth {
    /// The grid's corners: from the top left along the time axis, and round.
    pub corners: [Corner; 4],
    /// The crossing at the grid's middle, or next to it.
    pub centre: Corner,
    /// The middles of the left and of the right side, or next to them.
    pub sides: [Corner; 2],
    /// Where the edges of A and of B stand in the picture.
    pub edges: [PixelPoint; 2],
    /// q_B − q_A, divisions.
    pub separation: f64,
}

/// The camera made ready for one screen: the 3 × 3 matrix from divisions to an ideal picture, and its adjugate.
struct ScreenView<'a> {
    camera: &'a Camera,
    forth: [[f64; 3]; 3],
    back: [[f64; 3]; 3],
}

fn apply(m: &[[f64; 3]; 3], [x, y]: [f64; 2]) -> [f64; 2] {
    let [a, b, c] = m.map(|row| row[0] * x + row[1] * y + row[2]);
    [a / c, b / c]
}

fn adjugate(m: &[[f64; 3]; 3]) -> [[f64; 3]; 3] {
    let minor = |i: usize, j: usize| {
        let (a, b, c, d) = ((i + 1) % 3, (i + 2) % 3, (j + 1) % 3, (j + 2) % 3);
        m[a][c] * m[b][d] - m[a][d] * m[b][c]
    };
    [0, 1, 2].map(|i| [0, 1, 2].map(|j| minor(j, i)))
}

impl Camera {
    fn before(&self, screen: &Screen) -> ScreenView<'_> {
        let (columns, rows) = (f64::from(screen.columns), f64::from(screen.rows));
        let width = self.width as f64;
        let focal = self.focal * width;
        let away = focal * columns / (self.fill * width);
        let [sy, sp, sr] = [self.yaw, self.pitch, self.roll].map(libm::sin);
        let [cy, cp, cr] = [self.yaw, self.pitch, self.roll].map(libm::cos);
        // Yaw, then pitch, then roll, of a place (x, y, 0) counted from the grid's middle.
        let across = [cy, sp * sy, -cp * sy];
        let down = [0.0, cp, sp];
        let roll = |[x, y, z]: [f64; 3]| [cr * x - sr * y, sr * x + cr * y, z];
        let (across, down) = (roll(across), roll(down));
        let origin = [self.aim[0], self.aim[1], away];
        let [cx, cz] = [width / 2.0, self.height as f64 / 2.0];
        let space = [0, 1, 2]
            .map(|i| [across[i], down[i], origin[i] - across[i] * columns / 2.0 - down[i] * rows / 2.0]);
        let picture = |i: usize, centre: f64| [0, 1, 2].map(|j| focal * space[i][j] + centre * space[2][j]);
        let forth = [picture(0, cx), picture(1, cz), space[2]];
        ScreenView { camera: self, forth, back: adjugate(&forth) }
    }

    /// What is true of the picture of a screen.
    pub fn truth(&self, screen: &Screen) -> PictureTruth {
        let sight = self.before(screen);
        let (columns, rows) = (f64::from(screen.columns), f64::from(screen.rows));
        let (middle, centre) = (f64::from(screen.columns / 2), f64::from(screen.rows / 2));
        let corner = |column, row| Corner { at: sight.seen([column, row]), column, row };
        let [a, b] = screen.pulses;
        PictureTruth {
            corners: [corner(0.0, 0.0), corner(columns, 0.0), corner(columns, rows), corner(0.0, rows)],
            centre: corner(middle, centre),
            sides: [corner(0.0, centre), corner(columns, centre)],
            edges: [a, b].map(|p| sight.seen([p.edge, f64::midpoint(p.base, p.peak)])),
            separation: b.edge - a.edge,
        }
    }

    /// Takes the picture; the same seed gives the same noise.
    pub fn photograph(&self, screen: &Screen, seed: u64) -> Picture {
        self.photograph_by(screen, &mut Chance::stream(seed, 1))
    }

    /// The same, with noise from a source.
    pub fn photograph_by(&self, screen: &Screen, chance: &mut Chance) -> Picture {
        let (sight, drawing) = (self.before(screen), screen.ready());
        let (width, height) = (self.width, self.height);
        let mut light = Vec::with_capacity(width * height * 3);
        for y in 0..height {
            let at = |x: usize| sight.screen(PixelPoint { x: x as f64 + 0.5, y: y as f64 + 0.5 });
            let mut next = at(0);
            for x in 0..width {
                let here = next;
                next = at(x + 1);
                let pixel = libm::hypot(next[0] - here[0], next[1] - here[1]);
                let dim = self.exposure * (1.0 - self.vignetting * sight.radius(x, y));
                let lamp = if self.glare > 0.0 { 255.0 * self.glare * drawing.lamp(here) } else { 0.0 };
                light.extend(drawing.colour(here, pixel).map(|c| c * dim + lamp));
            }
        }
        blur(&mut light, width, self.blur);
        let mut rgba = Vec::with_capacity(width * height * 4);
        for pixel in light.chunks_exact(3) {
            for value in pixel {
                #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped")]
                rgba.push((value + chance.normal(self.noise) + 0.5).clamp(0.0, 255.0) as u8);
            }
            rgba.push(255);
        }
        Picture { width, height, rgba }
    }
}

impl ScreenView<'_> {
    /// Where the lens moves a place to: off the middle by a factor 1 + k1·ρ².
    fn seen(&self, place: [f64; 2]) -> PixelPoint {
        let [x, y] = apply(&self.forth, place);
        let (cx, cy, reach) = self.middle();
        let (dx, dy) = (x - cx, y - cy);
        let factor = 1.0 + self.camera.k1 * (dx * dx + dy * dy) / reach;
        PixelPoint { x: cx + dx * factor, y: cy + dy * factor }
    }

    /// Where on the screen a pixel looks.
    fn screen(&self, at: PixelPoint) -> [f64; 2] {
        let (cx, cy, reach) = self.middle();
        let (dx, dy) = (at.x - cx, at.y - cy);
        let mut factor = 1.0;
        if self.camera.k1 != 0.0 {
            for _ in 0..12 {
                factor = 1.0 / (1.0 + self.camera.k1 * factor * factor * (dx * dx + dy * dy) / reach);
            }
        }
        apply(&self.back, [cx + dx * factor, cy + dy * factor])
    }

    /// The picture's middle, and the square of half its diagonal.
    fn middle(&self) -> (f64, f64, f64) {
        let (cx, cy) = (self.camera.width as f64 / 2.0, self.camera.height as f64 / 2.0);
        (cx, cy, cx * cx + cy * cy)
    }

    /// The square of a pixel's share of half the diagonal.
    fn radius(&self, x: usize, y: usize) -> f64 {
        let (cx, cy, reach) = self.middle();
        ((x as f64 - cx) * (x as f64 - cx) + (y as f64 - cy) * (y as f64 - cy)) / reach
    }
}

/// Blurs by a Gaussian, along rows and then along columns; what lies beyond the border is as the border.
fn blur(light: &mut [f64], width: usize, sigma: f64) {
    if sigma <= 0.0 || width == 0 {
        return;
    }
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few pixels")]
    let reach = libm::ceil(3.0 * sigma) as usize;
    let weight = |i: usize| libm::exp(-0.5 * (i as f64 / sigma) * (i as f64 / sigma));
    let side: Vec<f64> = (0..=reach).map(weight).collect();
    let whole = side[0] + 2.0 * side[1..].iter().sum::<f64>();
    // Groups of `size` numbers, each blurred with those before and after it: pixels of a row, then rows.
    let along = |light: &mut [f64], size: usize| {
        let count = light.len() / size;
        let from = light.to_vec();
        let group = |i: usize| &from[i * size..(i + 1) * size];
        for (i, out) in light.chunks_exact_mut(size).enumerate() {
            for x in out.iter_mut() {
                *x *= side[0] / whole;
            }
            for (k, weight) in side.iter().enumerate().skip(1) {
                let (before, after) = (group(i.saturating_sub(k)), group((i + k).min(count - 1)));
                for (out, (a, b)) in out.iter_mut().zip(before.iter().zip(after)) {
                    *out += (a + b) * (weight / whole);
                }
            }
        }
    };
    for line in light.chunks_exact_mut(3 * width) {
        along(line, 3);
    }
    along(light, 3 * width);
}
