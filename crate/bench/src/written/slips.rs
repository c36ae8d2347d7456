//! Mistakes, one at a time: of what is written down, and of how the bench was run.

use super::drawn::{Needs, pick};
use super::{Sheet, SheetRow};
use crate::chance::Chance;
use crate::rails::ReadJoint;

/// A mistake.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[expect(missing_docs, reason = "each is said by `Slip::name`")]
pub enum Slip {
    RestartUntold,
    RestartInSmallSteps,
    SenseTurned,
    SpliceOffByCentimetre,
    SpliceOffByTen,
    SpliceOffByMetre,
    OverlapTurned,
    MirrorUntold,
    MirrorWronglyTold,
    EdgesSwappedInRow,
    EdgesSwappedInAll,
    OutlierAtEnd,
    OutlierInMiddle,
    EdgeSlipped,
    RowsExchanged,
    DecimalSlipped,
    UnitInRow,
    UnitOnRail,
    TimeBaseInRow,
    TimeBaseFromRow,
    TimeBaseScale,
    RulerScale,
    Drift,
    Walk,
    Curvature,
    PeriodTooMany,
    PeaksRead,
    RowsCopied,
    EdgesRounded,
    ZeroRow,
    TooSmallUncertainties,
    TooLargeUncertainties,
    DefaultsLeft,
    OneComponent,
    TooFewDigits,
    TooManyDigits,
}

/// Where a mistake was put.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Planted {
    /// The rows that are wrong, from 0; empty where it is not about rows.
    pub rows: Vec<usize>,
}

use Slip::{
    Curvature, DecimalSlipped, DefaultsLeft, Drift, EdgeSlipped, EdgesRounded, EdgesSwappedInAll,
    EdgesSwappedInRow, MirrorUntold, MirrorWronglyTold, OneComponent, OutlierAtEnd, OutlierInMiddle,
    OverlapTurned, PeaksRead, PeriodTooMany, RestartInSmallSteps, RestartUntold, RowsCopied, RowsExchanged,
    RulerScale, SenseTurned, SpliceOffByCentimetre, SpliceOffByMetre, SpliceOffByTen, TimeBaseFromRow,
    TimeBaseInRow, TimeBaseScale, TooFewDigits, TooLargeUncertainties, TooManyDigits, TooSmallUncertainties,
    UnitInRow, UnitOnRail, Walk, ZeroRow,
};

impl Slip {
    /// All of them, and what they are.
    pub const ALL: [(Slip, &'static str); 36] = [
        (RestartUntold, "restarted ruler not told"),
        (RestartInSmallSteps, "the same in steps of 10 cm at 1 ns/div"),
        (SenseTurned, "sense of a ruler turned"),
        (SpliceOffByCentimetre, "splice off by 1 cm"),
        (SpliceOffByTen, "splice off by 10 cm"),
        (SpliceOffByMetre, "splice off by 100 cm"),
        (OverlapTurned, "overlap pairs on the wrong rails"),
        (MirrorUntold, "mirror taken for a detector"),
        (MirrorWronglyTold, "detector taken for a mirror"),
        (EdgesSwappedInRow, "A and B swapped in one row"),
        (EdgesSwappedInAll, "A and B swapped in all rows"),
        (OutlierAtEnd, "gross outlier at the end"),
        (OutlierInMiddle, "gross outlier in the middle"),
        (EdgeSlipped, "an edge one division off"),
        (RowsExchanged, "two rows exchanged"),
        (DecimalSlipped, "a slipped decimal"),
        (UnitInRow, "cm for mm in one row"),
        (UnitOnRail, "cm for mm on one rail"),
        (TimeBaseInRow, "wrong time base in one row"),
        (TimeBaseFromRow, "wrong time base from one row on"),
        (TimeBaseScale, "time base off by 3 %"),
        (RulerScale, "scale of one ruler off by 1 %"),
        (Drift, "drift of t₀ over the run"),
        (Walk, "walk"),
        (Curvature, "curvature"),
        (PeriodTooMany, "a pulse period too many"),
        (PeaksRead, "peaks read instead of edges"),
        (RowsCopied, "copied rows"),
        (EdgesRounded, "rounded to small divisions"),
        (ZeroRow, "a row typed for (0, 0)"),
        (TooSmallUncertainties, "uncertainties ten times too small"),
        (TooLargeUncertainties, "uncertainties ten times too large"),
        (DefaultsLeft, "reading limits left at defaults"),
        (OneComponent, "one component over 80 %"),
        (TooFewDigits, "too few digits"),
        (TooManyDigits, "too many digits"),
    ];

    /// What it is.
    pub fn name(self) -> &'static str {
        Self::ALL.iter().find(|(slip, _)| *slip == self).map_or("", |(_, name)| name)
    }

    /// What its bench must have.
    pub fn needs(self) -> Needs {
        Needs { small_steps: self == RestartInSmallSteps, overlaps: self == OverlapTurned }
    }

    /// Puts it into a sheet; none where the sheet has no place for it.
    pub fn plant(self, sheet: &mut Sheet, seed: u64) -> Option<Planted> {
        let chance = &mut Chance::stream(seed, 8);
        match self {
            RestartUntold | RestartInSmallSteps => restart(sheet),
            SenseTurned => sense(sheet, chance),
            SpliceOffByCentimetre => splice(sheet, 0.01, chance),
            SpliceOffByTen => splice(sheet, 0.1, chance),
            SpliceOffByMetre => splice(sheet, 1.0, chance),
            OverlapTurned => overlap(sheet, chance),
            MirrorUntold | MirrorWronglyTold => mirror(sheet, self == MirrorUntold),
            EdgesSwappedInRow => swapped(sheet, chance),
            EdgesSwappedInAll => {
                sheet.rows.iter_mut().for_each(swap);
                Some(in_all(sheet))
            }
            OutlierAtEnd | OutlierInMiddle | EdgeSlipped => outlier(self, sheet, chance),
            RowsExchanged => exchange(sheet, chance),
            DecimalSlipped => decimal(sheet, chance),
            UnitInRow => unit_in_row(sheet, chance),
            UnitOnRail => unit_on_rail(sheet, chance),
            TimeBaseInRow => time_base_in_row(sheet, chance),
            TimeBaseFromRow => time_base_from_row(sheet, chance),
            TimeBaseScale => {
                stretched(sheet, 1.0 + 0.03 * sign(chance));
                Some(in_all(sheet))
            }
            RulerScale => ruler_scale(sheet, chance),
            Drift | Walk | Curvature | PeaksRead => Some(bent(self, sheet, chance)),
            PeriodTooMany => period(sheet, chance),
            RowsCopied => copied(sheet, chance),
            EdgesRounded => rounded(sheet),
            ZeroRow => zero_row(sheet),
            TooSmallUncertainties => Some(uncertainties(sheet, 0.1)),
            TooLargeUncertainties => Some(uncertainties(sheet, 10.0)),
            DefaultsLeft => {
                sheet.stated = false;
                Some(Planted::default())
            }
            OneComponent => one_component(sheet, chance),
            TooFewDigits => few_digits(sheet, chance),
            TooManyDigits => Some(many_digits(sheet)),
        }
    }
}

fn sign(chance: &mut Chance) -> f64 {
    if chance.unit() < 0.5 { -1.0 } else { 1.0 }
}

fn ten(chance: &mut Chance) -> f64 {
    if chance.unit() < 0.5 { 10.0 } else { 0.1 }
}

fn swap(row: &mut SheetRow) {
    std::mem::swap(&mut row.a, &mut row.b);
}

/// A time base beside this one on the knob.
fn other_base(base: f64, chance: &mut Chance) -> f64 {
    base * [0.5, 2.0, 0.2, 5.0, 10.0, 0.1][pick(chance, 6)]
}

fn some_row(sheet: &Sheet, chance: &mut Chance, fits: impl Fn(&Sheet, &SheetRow) -> bool) -> Option<usize> {
    let rows: Vec<usize> = (0..sheet.rows.len()).filter(|row| fits(sheet, &sheet.rows[*row])).collect();
    (!rows.is_empty()).then(|| rows[pick(chance, rows.len())])
}

fn in_all(sheet: &Sheet) -> Planted {
    Planted { rows: (0..sheet.rows.len()).collect() }
}

fn on_rail(sheet: &Sheet, rail: usize) -> Planted {
    Planted { rows: (0..sheet.rows.len()).filter(|row| sheet.rows[*row].rail == rail).collect() }
}

/// A rail from `first` on that has rows, but not all of them beside others before it if it is a later one.
fn rail_with_rows(sheet: &Sheet, first: usize, chance: &mut Chance) -> Option<usize> {
    let used = |rail: &usize| sheet.rows.iter().any(|row| row.rail == *rail);
    let rails: Vec<usize> = (first..sheet.rails.len()).filter(used).collect();
    (!rails.is_empty()).then(|| rails[pick(chance, rails.len())])
}

/// The last rail is not told of: its rows are written on the rail before.
fn restart(sheet: &mut Sheet) -> Option<Planted> {
    let last = sheet.rails.len().checked_sub(1).filter(|last| *last > 0)?;
    let (gone, before) = (sheet.rails.get(last)?, sheet.rails.get(last - 1)?);
    if gone.grows != before.grows || gone.unit != before.unit {
        return None;
    }
    let planted = on_rail(sheet, last);
    let rest = sheet.rows.iter().any(|row| row.rail == last - 1);
    sheet.rails.pop();
    sheet.rows.iter_mut().filter(|row| row.rail == last).for_each(|row| row.rail = last - 1);
    (rest && !planted.rows.is_empty()).then_some(planted)
}

fn sense(sheet: &mut Sheet, chance: &mut Chance) -> Option<Planted> {
    let rail = rail_with_rows(sheet, 0, chance)?;
    sheet.rails[rail].grows ^= true;
    Some(on_rail(sheet, rail))
}

fn splice(sheet: &mut Sheet, by: f64, chance: &mut Chance) -> Option<Planted> {
    let rail = rail_with_rows(sheet, 1, chance)?;
    let by = by * sign(chance);
    match &mut sheet.rails[rail].joint {
        ReadJoint::Stated { distance, .. } => *distance += by,
        ReadJoint::Meeting { gap, .. } => *gap += by,
        ReadJoint::Overlap(pairs) => pairs.iter_mut().for_each(|(here, _)| *here += by),
        ReadJoint::AtSplitter(_) | ReadJoint::Free => return None,
    }
    sheet.rows.iter().any(|row| row.rail < rail).then(|| on_rail(sheet, rail))
}

fn overlap(sheet: &mut Sheet, chance: &mut Chance) -> Option<Planted> {
    let rail = rail_with_rows(sheet, 1, chance)?;
    let (unit, before) = (sheet.rails[rail].unit, sheet.rails[rail - 1].unit);
    let ReadJoint::Overlap(pairs) = &mut sheet.rails[rail].joint else { return None };
    // What was read on one ruler is written as read on the other: the same number, whatever its unit.
    for pair in pairs {
        *pair = (pair.1 / before * unit, pair.0 / unit * before);
    }
    Some(on_rail(sheet, rail))
}

fn mirror(sheet: &mut Sheet, untold: bool) -> Option<Planted> {
    let fits = sheet.mirror == untold;
    sheet.mirror ^= true;
    fits.then(|| in_all(sheet))
}

fn swapped(sheet: &mut Sheet, chance: &mut Chance) -> Option<Planted> {
    let row = some_row(sheet, chance, |sheet, row| row.delay().abs() > 8.0 * sheet.u_delay(row))?;
    swap(&mut sheet.rows[row]);
    Some(Planted { rows: vec![row] })
}

fn outlier(slip: Slip, sheet: &mut Sheet, chance: &mut Chance) -> Option<Planted> {
    let mut order: Vec<usize> = (0..sheet.rows.len()).collect();
    order.sort_by(|a, b| sheet.rows[*a].distance.total_cmp(&sheet.rows[*b].distance));
    let middle = order.len() / 2;
    let row = match slip {
        OutlierAtEnd => *if chance.unit() < 0.5 { order.first() } else { order.last() }?,
        OutlierInMiddle => *order.get(middle)?,
        _ => order[pick(chance, order.len())],
    };
    let size = match slip {
        EdgeSlipped => sheet.rows[row].time_base,
        _ if chance.unit() < 0.5 => 3.0,
        _ => 17.0 * sheet.u_delay(&sheet.rows[row]),
    };
    let by = size * sign(chance);
    sheet.rows[row].later(by);
    Some(Planted { rows: vec![row] })
}

/// The readings of two rows change places.
fn exchange(sheet: &mut Sheet, chance: &mut Chance) -> Option<Planted> {
    let rows = sheet.rows.len();
    let first = pick(chance, rows);
    let second = if chance.unit() < 0.5 { first + 1 } else { pick(chance, rows) };
    let (a, b) = (*sheet.rows.get(first)?, *sheet.rows.get(second)?);
    if (a.distance - b.distance).abs() * sheet.per_metre() < 8.0 * sheet.u_delay(&a) {
        return None;
    }
    for (row, from) in [(first, b), (second, a)] {
        let to = &mut sheet.rows[row];
        (to.rail, to.reading, to.reading_decimals) = (from.rail, from.reading, from.reading_decimals);
    }
    Some(Planted { rows: vec![first, second] })
}

fn decimal(sheet: &mut Sheet, chance: &mut Chance) -> Option<Planted> {
    let row = some_row(sheet, chance, |_, row| row.reading.abs() > 1e-9 && row.b.abs() > 0.5)?;
    let factor = ten(chance);
    let slipped = &mut sheet.rows[row];
    if chance.unit() < 0.5 {
        slipped.reading *= factor;
    } else {
        slipped.b *= factor;
    }
    Some(Planted { rows: vec![row] })
}

fn unit_in_row(sheet: &mut Sheet, chance: &mut Chance) -> Option<Planted> {
    let row = some_row(sheet, chance, |_, row| row.reading.abs() > 1e-9)?;
    sheet.rows[row].reading *= ten(chance);
    Some(Planted { rows: vec![row] })
}

/// Readings on one rail in the other unit; or the rail's unit written wrong.
fn unit_on_rail(sheet: &mut Sheet, chance: &mut Chance) -> Option<Planted> {
    let rail = rail_with_rows(sheet, 0, chance)?;
    let factor = match sheet.rails[rail].unit {
        0.01 => 10.0,
        0.001 => 0.1,
        _ => return None,
    };
    if chance.unit() < 0.5 {
        sheet.rows.iter_mut().filter(|row| row.rail == rail).for_each(|row| row.reading *= factor);
    } else {
        sheet.rails[rail].unit_written = if factor > 1.0 { 0.001 } else { 0.01 };
    }
    Some(on_rail(sheet, rail))
}

fn time_base_in_row(sheet: &mut Sheet, chance: &mut Chance) -> Option<Planted> {
    let row = some_row(sheet, chance, |sheet, row| row.delay().abs() > 16.0 * sheet.u_delay(row))?;
    sheet.rows[row].time_base = other_base(sheet.rows[row].time_base, chance);
    Some(Planted { rows: vec![row] })
}

fn time_base_from_row(sheet: &mut Sheet, chance: &mut Chance) -> Option<Planted> {
    let rows = sheet.rows.len();
    let from = rows / 5 + pick(chance, rows * 3 / 5 + 1);
    let factor = if chance.unit() < 0.5 { 2.0 } else { 0.5 };
    sheet.rows.iter_mut().skip(from).for_each(|row| row.time_base *= factor);
    (from > 0).then(|| Planted { rows: (from..rows).collect() })
}

/// Every delay is so many times as long.
fn stretched(sheet: &mut Sheet, factor: f64) {
    sheet.rows.iter_mut().for_each(|row| row.b = row.a + (row.b - row.a) * factor);
}

fn ruler_scale(sheet: &mut Sheet, chance: &mut Chance) -> Option<Planted> {
    let rail = rail_with_rows(sheet, 0, chance)?;
    let factor = 1.0 + 0.01 * sign(chance);
    let mark = sheet.rails[rail].mark / sheet.rails[rail].unit;
    let rows = sheet.rows.iter_mut().filter(|row| row.rail == rail);
    rows.for_each(|row| row.reading = mark + (row.reading - mark) * factor);
    Some(on_rail(sheet, rail))
}

/// Delays that grow with the time, or with the distance.
fn bent(slip: Slip, sheet: &mut Sheet, chance: &mut Chance) -> Planted {
    let size = (0.3 + 1.2 * chance.unit()) * if slip == PeaksRead { 1.0 } else { sign(chance) };
    let places = sheet.rows.iter().map(|row| row.distance);
    let (low, high) = places.fold((f64::MAX, f64::MIN), |(low, high), d| (low.min(d), high.max(d)));
    let last = (sheet.rows.len() - 1).max(1) as f64;
    for (index, row) in sheet.rows.iter_mut().enumerate() {
        let out = (row.distance - low) / (high - low);
        row.later(match slip {
            Drift => size * index as f64 / last,
            Walk => size.abs() * libm::pow(out, 1.2),
            Curvature => size * 4.0 * (out - 0.5) * (out - 0.5),
            // The light's height falls as 1/(1 + d/2 m) twice over; a peak lags by what is lost of it.
            _ => 2.0 * size * (1.0 - 1.0 / ((1.0 + row.distance / 2.0) * (1.0 + row.distance / 2.0))),
        });
    }
    in_all(sheet)
}

/// The second edge is a later pulse's: in one row, from one row on, or in all.
fn period(sheet: &mut Sheet, chance: &mut Chance) -> Option<Planted> {
    let n = sheet.rows.len();
    let rows: Vec<usize> = match pick(chance, 3) {
        0 => vec![pick(chance, n)],
        1 => (n / 4 + pick(chance, n / 2 + 1)..n).collect(),
        _ => (0..n).collect(),
    };
    let period = sheet.period;
    for row in &rows {
        sheet.rows[*row].later(period);
    }
    (!rows.is_empty()).then_some(Planted { rows })
}

/// Delays of one row stand in the next ones as well; or whole rows stand twice.
fn copied(sheet: &mut Sheet, chance: &mut Chance) -> Option<Planted> {
    let n = sheet.rows.len();
    let count = 1 + pick(chance, 3);
    let from = pick(chance, n);
    let whole = chance.unit() < 0.5;
    let mut rows = Vec::new();
    for index in from + 1..(from + 1 + count).min(n) {
        let original = sheet.rows[from];
        let row = &mut sheet.rows[index];
        if whole {
            *row = original;
        } else {
            (row.a, row.b, row.time_base) = (original.a, original.b, original.time_base);
        }
        rows.push(index);
    }
    (!rows.is_empty()).then_some(Planted { rows })
}

fn rounded(sheet: &mut Sheet) -> Option<Planted> {
    let step = 1.0 / sheet.small;
    for row in &mut sheet.rows {
        (row.a, row.b) = ((row.a / step).round() * step, (row.b / step).round() * step);
    }
    (sheet.half_width < 0.3 * step).then(Planted::default)
}

/// A row that nobody read: no distance, no delay.
fn zero_row(sheet: &mut Sheet) -> Option<Planted> {
    let first = *sheet.rows.first()?;
    let rail = sheet.rails.first()?;
    let zero = SheetRow {
        rail: 0,
        reading: rail.mark / rail.unit,
        reading_decimals: 2,
        time_base: first.time_base,
        a: 0.0,
        b: 0.0,
        edge_decimals: 1,
        distance: 0.0,
    };
    sheet.rows.insert(0, zero);
    Some(Planted { rows: vec![0] })
}

fn uncertainties(sheet: &mut Sheet, factor: f64) -> Planted {
    sheet.half_width *= factor;
    sheet.u_time_base *= factor;
    for rail in &mut sheet.rails {
        rail.u_reading *= factor;
        rail.u_scale *= factor;
        match &mut rail.joint {
            ReadJoint::AtSplitter(u) | ReadJoint::Stated { u, .. } | ReadJoint::Meeting { u, .. } => {
                *u *= factor;
            }
            ReadJoint::Overlap(_) | ReadJoint::Free => {}
        }
    }
    Planted::default()
}

/// The clock is known to 5 %, and is off by that; or there is hardly anything but the readings.
fn one_component(sheet: &mut Sheet, chance: &mut Chance) -> Option<Planted> {
    if chance.unit() < 0.5 {
        stretched(sheet, 1.0 + chance.normal(0.05));
        sheet.u_clock = Some(0.05);
        return Some(Planted::default());
    }
    (sheet.rails.len() == 1 && sheet.u_time_base < 5e-4).then(Planted::default)
}

/// Readings to a centimetre where they are said to be good to a millimetre; or edges to a fifth of a division.
fn few_digits(sheet: &mut Sheet, chance: &mut Chance) -> Option<Planted> {
    if chance.unit() < 0.5 {
        for row in &mut sheet.rows {
            let unit = sheet.rails.get(row.rail)?.unit;
            row.reading_decimals = usize::from(unit > 0.5);
            if unit < 0.005 {
                row.reading = (row.reading / 10.0).round() * 10.0;
            }
        }
        let coarse = sheet.rails.iter().all(|rail| rail.u_reading < 0.001 && rail.unit >= 0.01);
        return coarse.then(Planted::default);
    }
    sheet.rows.iter_mut().for_each(|row| row.edge_decimals = 0);
    (sheet.half_width < 0.3).then(Planted::default)
}

fn many_digits(sheet: &mut Sheet) -> Planted {
    for row in &mut sheet.rows {
        row.reading_decimals += 6;
        row.edge_decimals += 5;
    }
    Planted::default()
}
