//! What the notebook says first of a mistake: sheets of `slope-bench` as notebooks, and what is counted as right.
//!
//! A mistake *matters* where it moves v by more than the u(v) of the same notebook without it. What is right is what a
//! careful teacher would call right: the cause, or what can be seen of it where two causes look alike (see [`right`]).
//! A notice that names a row which is sound is wrong, whatever else it says.

use std::collections::BTreeMap;

use litemap::LiteMap;
use slope_bench::rails::ReadJoint;
use slope_bench::written::drawn::{Needs, Ranges, sheet};
use slope_bench::written::slips::{Planted, Slip};
use slope_bench::written::{Sheet, SheetRail, SheetRow};
use slope_of_light::analysis::{Analysis, Weight, analyse};
use slope_of_light::notebook::{
    ActsOn, BenchField, Cell, Edit, EditError, Effect, ErrorShape, Notebook, OverlapPair, Path, RailField,
    RulerUnit, Scope, Sense, SharedError, Splice,
};

/// The notices that are right for each mistake. A stretch that all rows share, and a drift in rows taken in the order of
/// their distance, leave a straight line: only c tells (`scale_off`, `faster_than_light`). A row that is off may be named as
/// that, without the reason.
fn right(slip: Slip) -> &'static [&'static str] {
    match slip {
        Slip::RestartUntold | Slip::RestartInSmallSteps => &["ruler_restarts"],
        Slip::SenseTurned => &["wrong_sense", "delay_falls"],
        Slip::SpliceOffByCentimetre | Slip::SpliceOffByTen | Slip::SpliceOffByMetre => {
            &["step_at_splice", "scale_off", "faster_than_light"]
        }
        Slip::OverlapTurned => &["overlap_turned", "step_at_splice"],
        Slip::MirrorUntold | Slip::MirrorWronglyTold => &["path_factor"],
        Slip::EdgesSwappedInRow => &["edges_swapped", "row_off"],
        Slip::EdgesSwappedInAll => &["edges_swapped", "delay_falls"],
        Slip::OutlierAtEnd | Slip::OutlierInMiddle | Slip::EdgeSlipped => &["row_off"],
        Slip::RowsExchanged => &["rows_exchanged"],
        Slip::DecimalSlipped | Slip::UnitInRow => &["slipped_decimal", "row_off"],
        Slip::UnitOnRail => &["rail_unit", "scale_off", "faster_than_light"],
        Slip::TimeBaseInRow => &["time_base_slip", "row_off"],
        Slip::TimeBaseFromRow => &["time_base_slip"],
        Slip::TimeBaseScale => &["scale_off", "faster_than_light"],
        Slip::RulerScale => &["ruler_scale", "scale_off", "faster_than_light"],
        Slip::Drift => &["drift", "scale_off", "faster_than_light"],
        Slip::Walk | Slip::PeaksRead => &["curvature", "scale_off", "faster_than_light"],
        Slip::Curvature => &["curvature"],
        Slip::PeriodTooMany => &["beyond_a_period"],
        Slip::RowsCopied => &["copied_rows", "row_off"],
        Slip::EdgesRounded => &["edges_rounded"],
        Slip::ZeroRow => &["forced_zero", "row_off"],
        Slip::TooSmallUncertainties => &["scatter_too_large"],
        Slip::TooLargeUncertainties => &["scatter_too_small", "vague_splice"],
        Slip::DefaultsLeft => &["defaults_only"],
        Slip::OneComponent => &["dominant_component"],
        Slip::TooFewDigits => &["coarse_figures", "edges_rounded"],
        Slip::TooManyDigits => &["fine_figures"],
    }
}

/// Notices that say how things are, not that something is wrong.
const FACTS: [&str; 5] = ["treated_as_exact", "dominant_component", "few_rows", "short_span", "rehearsal"];

/// What came of the notebooks with one mistake.
#[derive(Clone, Debug, Default)]
pub struct Tally {
    /// Notebooks.
    pub planted: usize,
    /// Those where it matters.
    pub matter: usize,
    /// Those of them with the right notice first.
    pub first: usize,
    /// Those of them with it anywhere.
    pub listed: usize,
    /// Those of all with it first.
    pub first_of_all: usize,
    /// What else was said first where it matters, how often.
    pub instead: BTreeMap<&'static str, usize>,
}

/// What came of sound notebooks.
#[derive(Clone, Debug, Default)]
pub struct Sound {
    /// Notebooks.
    pub drawn: usize,
    /// Those with a serious notice.
    pub serious: usize,
    /// Those with any notice of something wrong.
    pub warned: usize,
    /// How often each was there.
    pub said: BTreeMap<&'static str, usize>,
}

/// Both halves of the study.
pub struct Study {
    /// Each mistake.
    pub mistakes: Vec<(Slip, Tally)>,
    /// No mistake.
    pub sound: Sound,
}

impl Study {
    /// The share of right notices that stand first, of all notebooks in which the mistake matters.
    pub fn right_first(&self) -> f64 {
        let sum = |of: fn(&Tally) -> usize| self.mistakes.iter().map(|(_, tally)| of(tally)).sum::<usize>();
        sum(|tally| tally.first) as f64 / sum(|tally| tally.matter).max(1) as f64
    }

    /// The share of sound notebooks that are warned of something.
    pub fn false_alarms(&self) -> f64 {
        self.sound.warned as f64 / self.sound.drawn.max(1) as f64
    }

    /// The share of sound notebooks with a serious notice.
    pub fn serious(&self) -> f64 {
        self.sound.serious as f64 / self.sound.drawn.max(1) as f64
    }

    /// Planted against said, a line each, and the sums.
    pub fn table(&self) -> String {
        let heads = "| planted | notebooks | right first | it matters in | right first | right at all | first instead |";
        let mut lines = vec![heads.to_owned(), "| --- | --- | --- | --- | --- | --- | --- |".to_owned()];
        lines.extend(self.mistakes.iter().map(|(slip, tally)| line(*slip, tally)));
        let said: Vec<String> = self.sound.said.iter().map(|(id, n)| format!("{id} {n}")).collect();
        lines.push(format!(
            "right first {:.4}; of {} sound ones serious {:.4}, warned {:.4}: {}",
            self.right_first(),
            self.sound.drawn,
            self.serious(),
            self.false_alarms(),
            said.join(", ")
        ));
        lines.join("\n")
    }
}

fn line(slip: Slip, tally: &Tally) -> String {
    let Tally { planted, matter, first, listed, first_of_all, instead } = tally;
    let mut instead: Vec<_> = instead.iter().collect();
    instead.sort_by_key(|(_, count)| std::cmp::Reverse(**count));
    let instead: Vec<String> = instead.iter().take(3).map(|(id, n)| format!("{id} {n}")).collect();
    let instead = instead.join(", ");
    format!("| {} | {planted} | {first_of_all} | {matter} | {first} | {listed} | {instead} |", slip.name())
}

/// Draws so many notebooks for each mistake, and so many sound ones.
///
/// # Errors
/// When a sheet makes no notebook.
pub fn study(ranges: &'static Ranges, each: u64, sound: u64, seed: u64) -> Result<Study, EditError> {
    let half = Slip::ALL.len() / 2;
    let planted = |slips: &'static [(Slip, &str)]| {
        slips
            .iter()
            .map(|(slip, _)| Ok((*slip, of_slip(*slip, ranges, each, seed)?)))
            .collect::<Result<Vec<_>, EditError>>()
    };
    let lost = || std::panic::resume_unwind(Box::new("a part of the study was lost"));
    std::thread::scope(|scope| {
        let later = scope.spawn(move || planted(&Slip::ALL[half..]));
        let mut mistakes = planted(&Slip::ALL[..half])?;
        let sound = of_sound(ranges, sound, seed)?;
        mistakes.extend(later.join().unwrap_or_else(|_| lost())?);
        Ok(Study { mistakes, sound })
    })
}

fn of_slip(slip: Slip, ranges: &Ranges, each: u64, seed: u64) -> Result<Tally, EditError> {
    let mut tally = Tally::default();
    let mut bench = seed;
    while (tally.planted as u64) < each && bench < seed + 200 * each {
        bench += 1;
        let sound = sheet(ranges, slip.needs(), bench);
        let mut wrong = sound.clone();
        let Some(planted) = slip.plant(&mut wrong, bench) else { continue };
        let (sound, wrong) = (analyse(&notebook(&sound)?), analyse(&notebook(&wrong)?));
        tally.planted += 1;
        let hit: Vec<bool> = wrong
            .notices
            .iter()
            .map(|notice| right(slip).contains(&notice.id) && names_no_sound_row(&notice.rows, &planted))
            .collect();
        let is_first = hit.first() == Some(&true);
        tally.first_of_all += usize::from(is_first);
        if !matters(&sound, &wrong) {
            continue;
        }
        tally.matter += 1;
        tally.listed += usize::from(hit.contains(&true));
        if is_first {
            tally.first += 1;
        } else {
            let said = wrong.notices.first().map_or("nothing", |notice| notice.id);
            *tally.instead.entry(said).or_default() += 1;
            if std::env::var("SLOPE_SHOW").is_ok_and(|name| slip.name() == name) {
                let rows: Vec<usize> = planted.rows.iter().map(|row| row + 1).collect();
                let said: Vec<_> = wrong.notices.iter().map(|notice| (notice.id, &notice.rows)).collect();
                println!("bench {bench}: {} rows, planted {rows:?}, said {said:?}", wrong.rows.len());
            }
        }
    }
    Ok(tally)
}

fn names_no_sound_row(rows: &[u32], planted: &Planted) -> bool {
    let faulty = |row: &u32| planted.rows.is_empty() || planted.rows.contains(&(*row as usize - 1));
    rows.iter().all(faulty)
}

/// Whether v moved by more than its u, or there is none any more.
fn matters(sound: &Analysis, wrong: &Analysis) -> bool {
    match (&sound.speed, &wrong.speed) {
        (Ok(sound), Ok(wrong)) => (wrong.v - sound.v).abs() > sound.u_v(),
        (Ok(_), Err(_)) => true,
        (Err(_), _) => false,
    }
}

fn of_sound(ranges: &Ranges, count: u64, seed: u64) -> Result<Sound, EditError> {
    let mut all = Sound::default();
    for bench in seed..seed + count {
        // Seeds of their own: none of these is the twin of a notebook with a mistake.
        let said = analyse(&notebook(&sheet(ranges, Needs::default(), 1_000_000 + bench))?).notices;
        all.drawn += 1;
        all.serious += usize::from(said.iter().any(|notice| notice.weight == Weight::Grave));
        all.warned += usize::from(said.iter().any(|notice| !FACTS.contains(&notice.id)));
        for notice in &said {
            *all.said.entry(notice.id).or_default() += 1;
        }
    }
    Ok(all)
}

/// The notebook of a sheet.
///
/// # Errors
/// When an edit can't be made.
pub fn notebook(sheet: &Sheet) -> Result<Notebook, EditError> {
    let mut notebook = Notebook::new();
    let mut put = |edit: Edit| notebook.apply(edit, "");
    put(Edit::SetPath(if sheet.mirror { Path::Mirror } else { Path::Detector }))?;
    let mut bench = vec![
        (BenchField::ScreenWidth, sheet.screen_width.to_string()),
        (BenchField::PulseRate, format!("{} kHz", 1e6 / sheet.period)),
    ];
    if sheet.stated {
        bench.push((BenchField::SmallDivisions, sheet.small.to_string()));
        bench.push((BenchField::EdgeHalfWidth, sheet.half_width.to_string()));
        bench.push((BenchField::TimeBaseUncertainty, format!("{} %", 100.0 * sheet.u_time_base)));
    }
    for (field, text) in bench {
        put(Edit::SetBench { field, text })?;
    }
    let mut before = 1.0;
    for (rail, id) in sheet.rails.iter().zip(1..) {
        for edit in rail_edits(id, rail, before, sheet.stated) {
            put(edit)?;
        }
        before = rail.unit;
    }
    if let Some(u) = sheet.u_clock {
        put(Edit::SetShared(SharedError {
            id: 900,
            name: "clock".into(),
            acts_on: ActsOn::Delays,
            effect: Effect::Scale,
            rows: Scope::All,
            uncertainty: format!("{} %", 100.0 * u),
            shape: ErrorShape::Normal,
            degrees_of_freedom: String::new(),
        }))?;
    }
    for (row, id) in sheet.rows.iter().zip(1..) {
        put(Edit::AddRow { row: id, after: None, cells: cells(row) })?;
    }
    Ok(notebook)
}

fn cells(row: &SheetRow) -> LiteMap<Cell, String> {
    let edge = |divisions: f64| format!("{divisions:.*}", row.edge_decimals);
    LiteMap::from_iter([
        (Cell::Rail, (row.rail + 1).to_string()),
        (Cell::Reading, format!("{:.*}", row.reading_decimals, row.reading)),
        (Cell::TimeBase, row.time_base.to_string()),
        (Cell::EdgeA, edge(row.a)),
        (Cell::EdgeB, edge(row.b)),
    ])
}

fn ruler(unit: f64) -> RulerUnit {
    match unit {
        0.001 => RulerUnit::Millimetre,
        0.01 => RulerUnit::Centimetre,
        0.0254 => RulerUnit::Inch,
        _ => RulerUnit::Metre,
    }
}

fn rail_edits(id: u32, rail: &SheetRail, before: f64, stated: bool) -> Vec<Edit> {
    let number = |metres: f64, unit: f64| format!("{:.6}", metres / unit);
    let marks = |metres: f64| number(metres, rail.unit);
    let write = |field, text: String| Edit::SetRail { rail: id, field, text };
    let mut edits = vec![
        Edit::AddRail(id),
        Edit::SetRulerUnit { rail: id, unit: ruler(rail.unit_written) },
        Edit::SetSense { rail: id, sense: if rail.grows { Sense::Grows } else { Sense::Falls } },
        write(RailField::From, marks(rail.span.0)),
        write(RailField::To, marks(rail.span.1)),
    ];
    if stated {
        edits.push(write(RailField::ReadingUncertainty, marks(rail.u_reading)));
        edits.push(write(RailField::ScaleUncertainty, format!("{} %", 100.0 * rail.u_scale)));
    }
    let uncertainty = |u: f64| if stated { format!("{:.4} mm", 1000.0 * u) } else { String::new() };
    let mark = marks(rail.mark);
    let splice = match &rail.joint {
        ReadJoint::AtSplitter(u) => Splice::AtSplitter { mark, uncertainty: uncertainty(*u) },
        ReadJoint::Stated { distance, u } => {
            Splice::AtDistance { mark, distance: format!("{distance:.4} m"), uncertainty: uncertainty(*u) }
        }
        ReadJoint::Meeting { before: met, gap, u } => Splice::Joined {
            mark,
            mark_before: number(*met, before),
            gap: format!("{gap:.4} m"),
            uncertainty: uncertainty(*u),
        },
        ReadJoint::Overlap(pairs) => Splice::Overlap {
            pairs: pairs
                .iter()
                .map(|(here, there)| OverlapPair { here: marks(*here), before: number(*there, before) })
                .collect(),
        },
        ReadJoint::Free => Splice::Free { mark },
    };
    edits.push(Edit::SetSplice { rail: id, splice });
    edits
}
