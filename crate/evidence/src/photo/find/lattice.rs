//! The plane of the grid, fitted to every stretch of line between two crossings.

use super::super::mark::{Corner, PixelPoint};
use super::super::picture::Reduced;
use super::super::plane::Plane;
use super::pencil::{horizon, pencil};
use super::ridge::{Family, Ridges, noise, ridges};

/// Lines of both families, of one kind: brighter than the ground, or darker.
pub struct Lines {
    upright: Ridges,
    level: Ridges,
}

/// A grid found in a copy of a picture, all in the copy's pixels.
pub struct Lattice {
    /// Its plane; column 0 and row 0 at the top left.
    pub plane: Plane,
    /// Share of its stretches of line that are seen.
    pub seen: f64,
    /// Where crossings were seen, by the plane or not: what a bent lens does to them too.
    pub crossings: Vec<Corner>,
}

impl Lattice {
    /// Where a crossing was seen; none where it was not, or farther than a share of a division from where `plane` puts it.
    pub fn seen_near(&self, plane: &Plane, [column, row]: [f64; 2], reach: f64) -> Option<PixelPoint> {
        let near = |c: &&Corner| {
            let [q, r] = plane.divisions(c.at);
            c.column == column && c.row == row && libm::hypot(q - column, r - row) < reach
        };
        self.crossings.iter().find(near).map(|c| c.at)
    }

    /// The same grid with its crossings named otherwise; none where the names fix no plane.
    pub fn renamed(&self, name: impl Fn([f64; 2]) -> [f64; 2]) -> Option<Self> {
        let renamed = |c: &Corner| {
            let [column, row] = name([c.column, c.row]);
            Corner { column, row, ..*c }
        };
        let crossings: Vec<Corner> = self.crossings.iter().map(renamed).collect();
        let corners: Vec<Corner> = self.plane.corners().iter().map(renamed).collect();
        Some(Self { plane: Plane::fit_found(&corners)?, seen: self.seen, crossings })
    }
}

/// What is seen of a line.
struct LineSeen {
    /// Share of its stretches.
    seen: f64,
    /// How strongly, in the mean of all its stretches, 0 to 1.
    strength: f64,
}

/// A stretch of line: how far beside its predicted place it is seen, and how strongly.
#[derive(Clone, Copy)]
struct LineStretch {
    /// Pixels along the normal.
    offset: f64,
    /// Unit vector across the line.
    normal: [f64; 2],
    /// 0 to 1.
    strength: f64,
    /// Whether it is a line at all.
    seen: bool,
}

/// A stretch weaker than this is not seen, nor one that stands out less from what is beside it.
const SEEN: f64 = 0.08;
const STANDS_OUT: f64 = 4.0;

/// An outer line is seen if this share of its stretches is; the one next to it if more than this share is, and that as
/// strongly as this share of the outer one.
const OF_LINE: f64 = 0.5;
const OF_NEXT: f64 = 0.6;
const OF_OUTER: f64 = 0.6;

impl Lines {
    /// The bright lines in a copy of a picture, and the dark ones.
    pub fn of(copy: &Reduced) -> [Self; 2] {
        let noise = noise(copy);
        let [upright, dark] = ridges(copy, Family::Upright, noise);
        let [level, dark_level] = ridges(copy, Family::Level, noise);
        [Self { upright, level }, Self { upright: dark, level: dark_level }]
    }

    /// A first plane from the two pencils, and how good it looks; none without two families of even lines.
    fn first(&self, columns: u32, rows: u32) -> Option<(Plane, f64)> {
        let upright = pencil(&self.upright, Family::Upright)?;
        let level = pencil(&self.level, Family::Level)?;
        let [g_upright, g_level] = horizon(&upright, &level)?;
        let across = upright.comb(g_upright, columns + 1)?;
        let down = level.comb(g_level, rows + 1)?;
        let score = across.score.min(down.score);
        let crossing = |column: u32, row: u32| {
            let (column, row) = (f64::from(column), f64::from(row));
            let (c, d) = (across.line(column), down.line(row));
            let (m, n) = (upright.alpha + upright.beta * c, level.alpha + level.beta * d);
            // x = c + m·y and y = d + n·x.
            let x = (c + m * d) / (1.0 - m * n);
            let y = d + n * x;
            let middle = [self.upright.width as f64 / 2.0, self.upright.height as f64 / 2.0];
            Corner { at: PixelPoint { x: x + middle[0], y: y + middle[1] }, column, row }
        };
        let corners = [crossing(0, 0), crossing(columns, 0), crossing(columns, rows), crossing(0, rows)];
        Some((Plane::fit(&corners, 0.0).ok()?, score))
    }

    /// The grid in the lines that look more like one, the bright ones or the dark ones; with those lines.
    pub fn most_promising(both: &[Self; 2], columns: u32, rows: u32) -> Option<(&Self, Lattice)> {
        let found = both.iter().filter_map(|lines| {
            let (plane, score) = lines.first(columns, rows)?;
            Some((lines, plane, score))
        });
        let (lines, plane, _) = found.max_by(|a, b| a.2.total_cmp(&b.2))?;
        Some((lines, lines.lattice(&plane, columns, rows)?))
    }

    /// The grid of columns × rows divisions, from a first plane.
    fn lattice(&self, first: &Plane, columns: u32, rows: u32) -> Option<Lattice> {
        let mut plane = self.fitted(first, columns, rows, 0.25)?.plane;
        plane = self.fitted(&plane, columns, rows, 0.15)?.plane;
        // The comb may have begun a line too early or too late.
        for _ in 0..3 {
            let step = self.best_step(&plane, columns, rows);
            if step == [0, 0] {
                break;
            }
            plane = moved(&plane, step)?;
            plane = self.fitted(&plane, columns, rows, 0.2)?.plane;
        }
        self.fitted(&plane, columns, rows, 0.12)
    }

    /// The grid near a plane where it was seen before; none where it has moved by a third of a division or more.
    pub fn nearby(&self, plane: &Plane, columns: u32, rows: u32) -> Option<Lattice> {
        let near = self.fitted(plane, columns, rows, 0.33)?;
        let found = self.fitted(&near.plane, columns, rows, 0.12)?;
        (self.best_step(&found.plane, columns, rows) == [0, 0]).then_some(found)
    }

    /// The plane fitted anew to what is seen within `reach` of a division of its lines.
    pub fn fitted(&self, plane: &Plane, columns: u32, rows: u32, reach: f64) -> Option<Lattice> {
        let crossings = self.crossings(plane, columns, rows, reach);
        let mut kept = crossings.clone();
        let mut fit = Plane::fit_found(&kept)?;
        // Where a trace was taken for a line, the crossing lies off: out with it, as long as enough are left.
        for _ in 0..4 {
            let off = |c: &Corner| {
                let at = fit.pixel([c.column, c.row]);
                libm::hypot(at.x - c.at.x, at.y - c.at.y)
            };
            let mut sizes: Vec<f64> = kept.iter().map(off).collect();
            sizes.sort_by(f64::total_cmp);
            let allowed = (2.5 * sizes.get(sizes.len() / 2).copied()?).max(0.5);
            let fewer: Vec<Corner> = kept.iter().filter(|c| off(c) <= allowed).copied().collect();
            if fewer.len() == kept.len() || fewer.len() < 8 {
                break;
            }
            kept = fewer;
            fit = Plane::fit_found(&kept)?;
        }
        Some(Lattice { seen: self.seen(&fit, columns, rows), plane: fit, crossings })
    }

    /// Where the crossings are seen, near where a plane puts them.
    fn crossings(&self, plane: &Plane, columns: u32, rows: u32, reach: f64) -> Vec<Corner> {
        let up = |c: u32, r: u32| {
            let at = |r: u32| plane.pixel([f64::from(c), f64::from(r)]);
            stretch(&self.upright, at(r), at(r + 1), reach * spacing(plane, [c, r].map(f64::from)))
        };
        let across = |c: u32, r: u32| {
            let at = |c: u32| plane.pixel([f64::from(c), f64::from(r)]);
            stretch(&self.level, at(c), at(c + 1), reach * spacing(plane, [c, r].map(f64::from)))
        };
        let upright: Vec<Vec<LineStretch>> =
            (0..=columns).map(|c| (0..rows).map(|r| up(c, r)).collect()).collect();
        let level: Vec<Vec<LineStretch>> =
            (0..=rows).map(|r| (0..columns).map(|c| across(c, r)).collect()).collect();
        let mut found = Vec::new();
        for (c, upright) in upright.iter().enumerate() {
            for (r, level) in level.iter().enumerate() {
                let (Some((u, n)), Some((v, m))) = (between(upright, r), between(level, c)) else { continue };
                // d·n = u and d·m = v.
                let det = n[0] * m[1] - n[1] * m[0];
                let (column, row) = (c as f64, r as f64);
                let at = plane.pixel([column, row]);
                let at = PixelPoint {
                    x: at.x + (u * m[1] - v * n[1]) / det,
                    y: at.y + (v * n[0] - u * m[0]) / det,
                };
                found.push(Corner { at, column, row });
            }
        }
        found
    }

    /// Share of the grid's stretches that are seen where a plane puts them.
    fn seen(&self, plane: &Plane, columns: u32, rows: u32) -> f64 {
        let (across, down) = (f64::from(columns), f64::from(rows));
        let seen = |family, line, stretches| self.line(plane, family, f64::from(line), stretches).seen;
        let upright: f64 = (0..=columns).map(|column| seen(Family::Upright, column, rows)).sum();
        let level: f64 = (0..=rows).map(|row| seen(Family::Level, row, columns)).sum();
        (upright * down + level * across) / ((across + 1.0) * down + (down + 1.0) * across)
    }

    /// Whether each of the grid's outer lines is seen, and none goes on beyond them.
    pub fn ends(&self, plane: &Plane, columns: u32, rows: u32) -> bool {
        let ends = |family, line: u32, beyond: f64, stretches| {
            let outer = self.line(plane, family, f64::from(line), stretches);
            let next = self.line(plane, family, f64::from(line) + beyond, stretches);
            // What is beyond may be a frame, or what packing made of one: a line of the grid is as strong as another.
            outer.seen >= OF_LINE && (next.seen <= OF_NEXT || next.strength < OF_OUTER * outer.strength)
        };
        [(0, -1.0), (columns, 1.0)]
            .into_iter()
            .all(|(line, beyond)| ends(Family::Upright, line, beyond, rows))
            && [(0, -1.0), (rows, 1.0)]
                .into_iter()
                .all(|(line, beyond)| ends(Family::Level, line, beyond, columns))
    }

    /// What is seen of a line where a plane puts it: of the one at a column, or at a row.
    fn line(&self, plane: &Plane, family: Family, line: f64, stretches: u32) -> LineSeen {
        let (ridges, place): (_, fn(f64, f64) -> [f64; 2]) = match family {
            Family::Upright => (&self.upright, |line, along| [line, along]),
            Family::Level => (&self.level, |line, along| [along, line]),
        };
        let (mut seen, mut strength) = (0.0, 0.0);
        for along in (0..stretches).map(f64::from) {
            let (from, to) = (plane.pixel(place(line, along)), plane.pixel(place(line, along + 1.0)));
            if !(plane.sees(from) && plane.sees(to)) {
                continue;
            }
            let found = stretch(ridges, from, to, 0.2 * spacing(plane, place(line, along)));
            if found.seen && found.offset.abs() <= 2.5 {
                seen += 1.0;
                strength += found.strength;
            }
        }
        let count = f64::from(stretches.max(1));
        LineSeen { seen: seen / count, strength: strength / count }
    }

    /// By how many columns and rows the grid fits better elsewhere.
    fn best_step(&self, plane: &Plane, columns: u32, rows: u32) -> [i32; 2] {
        const FAR: i32 = 2;
        let (columns, rows) = (columns.cast_signed(), rows.cast_signed());
        let at = |c: i32, r: i32| plane.pixel([f64::from(c), f64::from(r)]);
        let strength = |ridges: &Ridges, from: PixelPoint, to: PixelPoint| {
            if plane.sees(from) && plane.sees(to) { stretch(ridges, from, to, 2.0).strength } else { 0.0 }
        };
        // Strength of each stretch, the grid widened to all sides.
        let line = |c: i32| -> Vec<f64> {
            (-FAR..rows + FAR).map(|r| strength(&self.upright, at(c, r), at(c, r + 1))).collect()
        };
        let upright: Vec<Vec<f64>> = (-FAR..=columns + FAR).map(line).collect();
        let line = |r: i32| -> Vec<f64> {
            (-FAR..columns + FAR).map(|c| strength(&self.level, at(c, r), at(c + 1, r))).collect()
        };
        let level: Vec<Vec<f64>> = (-FAR..=rows + FAR).map(line).collect();
        let sum = |lines: &[Vec<f64>], skip: i32, take: i32, inner_skip: i32, inner_take: i32| -> f64 {
            let of = |x: i32| usize::try_from(x).unwrap_or(0);
            let inner = |line: &Vec<f64>| -> f64 {
                line.iter().skip(of(inner_skip)).take(of(inner_take)).map(|s| s.min(0.6)).sum()
            };
            lines.iter().skip(of(skip)).take(of(take)).map(inner).sum()
        };
        let score = |i: i32, j: i32| {
            sum(&upright, FAR + i, columns + 1, FAR + j, rows)
                + sum(&level, FAR + j, rows + 1, FAR + i, columns)
        };
        let mut best = (score(0, 0) * 1.01, [0, 0]);
        for i in -FAR..=FAR {
            for j in -FAR..=FAR {
                let score = score(i, j);
                if score > best.0 {
                    best = (score, [i, j]);
                }
            }
        }
        best.1
    }
}

/// The same plane with column and row counted from another crossing.
fn moved(plane: &Plane, [columns, rows]: [i32; 2]) -> Option<Plane> {
    let (i, j) = (f64::from(columns), f64::from(rows));
    let corner = |c: &Corner| Corner { at: plane.pixel([c.column + i, c.row + j]), ..*c };
    let corners: Vec<Corner> = plane.corners().iter().map(corner).collect();
    Plane::fit_found(&corners)
}

/// Pixels in a division around a crossing: the smaller of the two ways.
fn spacing(plane: &Plane, [c, r]: [f64; 2]) -> f64 {
    let (here, right, below) = (plane.pixel([c, r]), plane.pixel([c + 1.0, r]), plane.pixel([c, r + 1.0]));
    let far = |there: PixelPoint| libm::hypot(there.x - here.x, there.y - here.y);
    far(right).min(far(below))
}

/// Offset and normal at a crossing, from the stretches before and after it that are seen; none where neither is.
fn between(line: &[LineStretch], crossing: usize) -> Option<(f64, [f64; 2])> {
    let before = crossing.checked_sub(1).and_then(|i| line.get(i));
    let seen = || before.into_iter().chain(line.get(crossing)).filter(|s| s.seen);
    let weight: f64 = seen().map(|s| s.strength).sum();
    let normal = seen().next()?.normal;
    Some((seen().map(|s| s.strength * s.offset).sum::<f64>() / weight, normal))
}

/// Looks for a line beside the stretch from one crossing to the next, at most `reach` pixels away.
fn stretch(ridges: &Ridges, from: PixelPoint, to: PixelPoint, reach: f64) -> LineStretch {
    const SAMPLES: u32 = 24;
    let (dx, dy) = (to.x - from.x, to.y - from.y);
    let length = libm::hypot(dx, dy).max(1e-9);
    let normal = [-dy / length, dx / length];
    let steps = libm::ceil(reach.clamp(1.0, 60.0));
    let mut best = (0.0, 0.0);
    let mut profile = Vec::new();
    let mut offset = -steps;
    while offset <= steps {
        let mut sum = 0.0;
        for i in 0..SAMPLES {
            // Away from the crossings, where the other family disturbs.
            let along = 0.12 + 0.76 * (f64::from(i) + 0.5) / f64::from(SAMPLES);
            let (x, y) = (from.x + along * dx + offset * normal[0], from.y + along * dy + offset * normal[1]);
            sum += f64::from(ridges.at(x, y));
        }
        let strength = sum / f64::from(SAMPLES);
        if strength > best.1 {
            best = (offset, strength);
        }
        profile.push((offset, strength));
        offset += 0.5;
    }
    // The middle of the peak.
    let near = profile.iter().filter(|(o, _)| (o - best.0).abs() <= 1.5);
    let (mut weight, mut moment) = (0.0, 0.0);
    for (offset, strength) in near {
        weight += strength;
        moment += strength * offset;
    }
    let mut strengths: Vec<f64> = profile.iter().map(|(_, strength)| *strength).collect();
    strengths.sort_by(f64::total_cmp);
    let beside = strengths.get(strengths.len() / 3).copied().unwrap_or(0.0);
    LineStretch {
        offset: if weight > 0.0 { moment / weight } else { 0.0 },
        normal,
        strength: best.1,
        seen: best.1 > SEEN && best.1 > STANDS_OUT * beside,
    }
}
