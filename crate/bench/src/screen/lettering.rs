//! A few letters of strokes, for the time base written under the grid.

/// A stroke's two ends, divisions.
pub type Stroke = [[f64; 2]; 2];

/// Height of a figure, divisions.
const HEIGHT: f64 = 0.2;

/// Strokes from x, y to x, y on a field 2 wide and 4 high, counted from the top left.
const LETTERS: [(char, &str); 17] = [
    ('0', "0020 2024 2404 0400"),
    ('1', "0110 1014 0424"),
    ('2', "0020 2022 2202 0204 0424"),
    ('3', "0020 2024 2404 0222"),
    ('4', "0002 0222 2024"),
    ('5', "2000 0002 0222 2224 2404"),
    ('6', "2000 0004 0424 2422 2202"),
    ('7', "0020 2014"),
    ('8', "0020 2024 2404 0400 0222"),
    ('9', "2404 2420 2000 0002 0222"),
    ('.', "1314"),
    ('n', "0204 0222 2224"),
    ('s', "2101 0102 0223 2324 2404"),
    ('/', "0420"),
    ('d', "2024 2404 0402 0222"),
    ('i', "1214 1011"),
    ('v', "0214 1422"),
];

/// A line of writing that ends at a column, its head at a row.
pub fn written(text: &str, end: f64, head: f64) -> Vec<Stroke> {
    let unit = HEIGHT / 4.0;
    let advance = 3.2 * unit;
    let start = end - advance * text.chars().count() as f64;
    let mut strokes = Vec::new();
    for (place, letter) in text.chars().enumerate() {
        let Some((_, lines)) = LETTERS.iter().find(|(known, _)| *known == letter) else { continue };
        for line in lines.split(' ') {
            let mut ends = line.bytes().map(|digit| f64::from(digit - b'0'));
            if let (Some(a), Some(b), Some(c), Some(d)) = (ends.next(), ends.next(), ends.next(), ends.next())
            {
                let at = |x: f64, y: f64| [start + place as f64 * advance + x * unit, head + y * unit];
                strokes.push([at(a, b), at(c, d)]);
            }
        }
    }
    strokes
}

/// Distance of a place from the nearest stroke.
pub fn distance(strokes: &[Stroke], [column, row]: [f64; 2]) -> f64 {
    let mut least = f64::INFINITY;
    for [[ax, ay], [bx, by]] in strokes {
        let (dx, dy) = (bx - ax, by - ay);
        let along = (((column - ax) * dx + (row - ay) * dy) / (dx * dx + dy * dy)).clamp(0.0, 1.0);
        let (ox, oy) = (column - ax - along * dx, row - ay - along * dy);
        least = least.min(ox * ox + oy * oy);
    }
    libm::sqrt(least)
}
