//! What is drawn of a notebook: from what was analysed to the pictures that [`chart`] draws, for the page's canvases
//! and, as SVG or in LaTeX, for the report and the bundle.

use crate::analysis::read::ruler_unit;
use crate::analysis::trials::{DensityCurve, TrialsResult};
use crate::analysis::{
    Analysis, BudgetComponent, DrawnLine, LineAnalysis, MeasuredValue, RailStand, RowReading, WalkAnalysis,
    WalkRow,
};
use crate::chart::{
    self, Band, BenchPicture, BenchRail, BenchSplice, Carriage, Drawing, FittedLine, HistogramPicture,
    LinePicture, PlotWindow, PlottedRow, Share, SharesPicture, Theme, TracesPicture, Upright,
};
use crate::distribution::{
    normal_cdf, normal_density, normal_quantile, student_t_cdf, student_t_density, t_coverage_factor,
};
use crate::message;
use crate::notebook::{NotebookState, Rail, RowId, Sense};
use crate::quantity::{Decimal, DecimalMark, in_unit, plain};
use crate::view::ComponentView;
use crate::view::budget::{budget_view, ordered};
use crate::words::{Message, Value, Words};

/// Coverage probability of the band.
const COVERAGE: f64 = 0.95;

/// Size of a drawing on paper, pixels: across a page its letters are as large as the text.
const PAPER: (u32, u32) = (760, 245);

/// Height on paper of drawings that are read along their length: residuals and trials.
const STRIP: u32 = 140;

/// The least share of the budget that is drawn on paper; its table has all.
const DRAWN_SHARE: f64 = 0.01;

/// What the charts of a notebook are written in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ChartForm {
    /// An SVG element.
    Svg,
    /// A picture of LaTeX: [`mod@chart::latex`].
    Latex,
}

/// The charts of a notebook, in one form, of this program's own making.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Charts {
    /// The line; empty where there is none.
    pub line: String,
    /// The residuals; empty where there are none.
    pub residuals: String,
    /// The shares of the budget; empty where there is none.
    pub budget: String,
    /// The trials; empty where none were made.
    pub trials: String,
    /// The bench, to scale; empty where there is no rail.
    pub bench: String,
}

impl Charts {
    /// Those that are not empty, each with its name.
    pub fn named(&self) -> impl Iterator<Item = (&'static str, &str)> {
        let all = [
            ("line", &*self.line),
            ("residuals", &*self.residuals),
            ("bench", &*self.bench),
            ("budget", &*self.budget),
            ("trials", &*self.trials),
        ];
        all.into_iter().filter(|(_, drawn)| !drawn.is_empty())
    }
}

/// The readings and the line through them.
pub fn line_picture(page: &NotebookState, analysis: &Analysis) -> LinePicture {
    let line = analysis.line.as_deref().ok();
    let mut series: Vec<Value> = analysis.rails.iter().map(|rail| rail.name.as_str().into()).collect();
    if analysis.rows.iter().any(|row| row.rail.is_none() && row.distance.is_some()) {
        series.push(message!("chart-typed").into());
    }
    LinePicture {
        marks: analysis.rows.iter().filter_map(|row| mark(row, analysis, line)).collect(),
        line: line.zip(analysis.drawn.as_ref()).map(|(line, drawn)| fitted(line, drawn)),
        series,
        decimal_mark: page.decimal_mark,
        upright: Upright::Delay,
        window: PlotWindow::default(),
    }
}

/// Walk against distance, with the line through it.
pub fn walk_picture(page: &NotebookState, walk: &WalkAnalysis) -> LinePicture {
    let number = |id: RowId| page.rows.iter().position(|row| row.id == id).map_or(0, |place| place + 1);
    let mark = |one: &WalkRow| PlottedRow {
        number: number(one.row),
        distance: one.distance,
        delay: one.difference,
        u_delay: Some(one.u),
        ..PlottedRow::default()
    };
    LinePicture {
        marks: walk.rows.iter().map(mark).collect(),
        line: Some(FittedLine { slope: walk.line.slope, intercept: walk.line.intercept, band: None }),
        series: vec![message!("chart-walk-series").into()],
        decimal_mark: page.decimal_mark,
        upright: Upright::Walk,
        window: PlotWindow::default(),
    }
}

fn mark(row: &RowReading, analysis: &Analysis, line: Option<&LineAnalysis>) -> Option<PlottedRow> {
    let (distance, delay) = (row.distance?, row.delay?);
    let place = line.and_then(|line| line.rows.iter().position(|id| *id == row.id));
    let residual =
        line.zip(place).and_then(|(line, place)| line.fit.rows.get(place)).and_then(|fit| fit.normalised);
    let shown = |u: Option<f64>| u.filter(|u| *u > 0.0);
    (row.part.is_used() || row.part.is_struck()).then(|| PlottedRow {
        number: row.number,
        distance: distance.value,
        delay: delay.value,
        u_distance: shown(distance.uncertainty),
        u_delay: shown(delay.uncertainty),
        series: rail_place(row, analysis).unwrap_or(analysis.rails.len()),
        struck: row.part.is_struck(),
        residual,
    })
}

fn rail_place(row: &RowReading, analysis: &Analysis) -> Option<usize> {
    analysis.rails.iter().position(|rail| Some(rail.id) == row.rail)
}

fn fitted(line: &LineAnalysis, drawn: &DrawnLine) -> FittedLine {
    let coverage_factor = if line.stated {
        normal_quantile(0.5 + COVERAGE / 2.0)
    } else {
        t_coverage_factor(COVERAGE, line.fit.degrees_of_freedom as f64)
    };
    FittedLine {
        slope: drawn.slope,
        intercept: drawn.intercept,
        band: drawn.uncertainty.map(|u| Band {
            centre: u.centre,
            u_at_centre: u.at_centre,
            u_slope: u.slope,
            coverage_factor,
        }),
    }
}

/// The bench seen from above.
pub fn bench_picture(page: &NotebookState, analysis: &Analysis) -> BenchPicture {
    let described: Vec<(usize, Option<BenchRail>)> = page
        .rails
        .iter()
        .zip(&analysis.rails)
        .map(|(rail, stand)| bench_rail(rail, stand, page.decimal_mark))
        .enumerate()
        .collect();
    // Rails whose place is not known are named, not drawn: carriages count only the drawn ones.
    let drawn: Vec<usize> =
        described.iter().filter(|(_, rail)| rail.is_some()).map(|(place, _)| *place).collect();
    let unplaced = described.iter().filter(|(_, rail)| rail.is_none());
    let carriages = analysis.rows.iter().filter_map(|row| {
        let rail = rail_place(row, analysis);
        Some(Carriage {
            number: row.number,
            distance: row.distance?.value,
            rail: rail.and_then(|rail| drawn.iter().position(|place| *place == rail)),
            struck: row.part.is_struck(),
        })
    });
    BenchPicture {
        unplaced: unplaced
            .filter_map(|(place, _)| analysis.rails.get(*place))
            .map(|r| r.name.clone())
            .collect(),
        carriages: carriages.collect(),
        rails: described.into_iter().filter_map(|(_, rail)| rail).collect(),
        decimal_mark: page.decimal_mark,
    }
}

fn bench_rail(rail: &Rail, stand: &RailStand, decimal: DecimalMark) -> Option<BenchRail> {
    let (near, far, (mark, place)) = (stand.near?, stand.far?, stand.mark?);
    let unit = ruler_unit(rail.unit);
    let reading = |distance: f64| {
        let shown = mark + rail.sense.sign() * (distance - place.value);
        // A nanometre of ruler is rounding.
        let shown = if shown.abs() < 1e-9 { 0.0 } else { shown };
        let rounded = Decimal::significant(unit.from_base(shown), 5);
        let shortest = rounded.map_or(shown, |rounded| rounded.to_f64());
        in_unit(unit.to_base(shortest), unit, decimal)
    };
    Some(BenchRail {
        name: stand.name.clone(),
        near,
        far,
        near_reading: reading(near),
        far_reading: reading(far),
        grows: rail.sense == Sense::Grows,
        splice: Some(BenchSplice { distance: place.value, note: splice_note(stand, &place, decimal) }),
    })
}

fn splice_note(stand: &RailStand, place: &MeasuredValue, decimal: DecimalMark) -> Value {
    match place.uncertainty {
        _ if stand.free => message!("chart-step-fitted").into(),
        Some(u) if u > 0.0 => format!("u = {} mm", plain(u * 1000.0, 2, decimal)).into(),
        _ => Value::default(),
    }
}

/// The shares of the budget, the largest first.
pub fn shares_picture(page: &NotebookState, analysis: &Analysis) -> SharesPicture {
    let Ok(speed) = &analysis.speed else { return SharesPicture::default() };
    let shares = ordered(&speed.budget).into_iter().zip(budget_view(page, analysis).components);
    let share = |(part, view): (&BudgetComponent, ComponentView)| Share {
        label: view.name,
        share: part.share,
        text: view.share_text,
    };
    SharesPicture { shares: shares.map(share).collect() }
}

/// Monte Carlo trials in bins with the budget's curve, in 10⁶ m/s.
pub fn histogram_picture(outcome: &TrialsResult, decimal_mark: DecimalMark) -> HistogramPicture {
    const MEGA: f64 = 1e6;
    const POINTS: i32 = 120;
    let bins = &outcome.histogram;
    let (width, trials) = (bins.width / MEGA, outcome.summary.trials as f64);
    let DensityCurve { c, u, degrees_of_freedom: nu } = outcome.curve;
    let density = |z: f64| nu.map_or_else(|| normal_density(z), |nu| student_t_density(z, nu)) / (u / MEGA);
    let below = |bin: usize| {
        let z = (bins.from + bin as f64 * bins.width - c) / u;
        nu.map_or_else(|| normal_cdf(z), |nu| student_t_cdf(z, nu))
    };
    let reach = 5.0;
    let place = |step: i32| reach * (2.0 * f64::from(step) / f64::from(POINTS) - 1.0);
    HistogramPicture {
        from: bins.from / MEGA,
        width,
        densities: bins.counts.iter().map(|count| *count as f64 / trials / width).collect(),
        expected: (0..bins.counts.len()).map(|bin| below(bin + 1) - below(bin)).collect(),
        curve: (0..=POINTS).map(|step| ((c + place(step) * u) / MEGA, density(place(step)))).collect(),
        interval: [outcome.summary.symmetric.0 / MEGA, outcome.summary.symmetric.1 / MEGA],
        decimal_mark,
    }
}

/// A drawing as SVG on white paper, as wide as the report's charts; empty where there is no room for it.
fn on_paper(drawing: Drawing<'_>, height: u32, title: &Message, words: &dyn Words) -> String {
    chart::svg((PAPER.0, height), &words.say(title), drawing, &Theme::print(), words).unwrap_or_default()
}

/// Walk against distance as SVG, at the size of the report's charts.
pub fn walk_chart(page: &NotebookState, walk: &WalkAnalysis, words: &dyn Words) -> String {
    on_paper(Drawing::Line(&walk_picture(page, walk)), PAPER.1, &message!("traces-walk"), words)
}

/// Two traces as SVG, at the size of the report's charts.
pub fn traces_chart(picture: &TracesPicture, words: &dyn Words) -> String {
    on_paper(Drawing::Traces(picture), PAPER.1, &message!("traces-view"), words)
}

/// All charts in a form, on white paper, in the words of a table; empty where there is nothing to draw. That of the
/// trials is drawn where there is an outcome.
pub fn charts(
    page: &NotebookState,
    analysis: &Analysis,
    trials: Option<&TrialsResult>,
    form: ChartForm,
    words: &dyn Words,
) -> Charts {
    let theme = Theme::print();
    let (width, height) = PAPER;
    // A drawing of this size on a surface in memory has nothing that can fail; an empty one is left out.
    let drawn = |drawing, height, title: Message| match form {
        ChartForm::Svg => on_paper(drawing, height, &title, words),
        ChartForm::Latex => chart::latex((width, height), drawing, &theme, words).unwrap_or_default(),
    };
    let line = line_picture(page, analysis);
    let bench = bench_picture(page, analysis);
    let mut shares = shares_picture(page, analysis);
    let drawn_shares = shares.shares.iter().filter(|share| share.share >= DRAWN_SHARE).count();
    shares.shares.truncate(drawn_shares.max(1));
    let trials = trials.map(|outcome| histogram_picture(outcome, page.decimal_mark));
    let of_readings = |drawing, height, title| {
        if line.marks.is_empty() { String::new() } else { drawn(drawing, height, title) }
    };
    Charts {
        line: of_readings(Drawing::Line(&line), height, message!("line-plot")),
        residuals: of_readings(Drawing::Residuals(&line), STRIP, message!("line-residuals")),
        trials: trials.as_ref().map_or_else(String::new, |picture| {
            drawn(Drawing::Histogram(picture), STRIP, message!("trials-plot"))
        }),
        budget: if shares.shares.is_empty() {
            String::new()
        } else {
            let height = chart::shares_height(&shares, &theme);
            drawn(Drawing::Shares(&shares), height, message!("report-shares"))
        },
        bench: drawn(
            Drawing::Bench(&bench),
            chart::bench_height(width, &bench, &theme, words),
            message!("apparatus-drawing"),
        ),
    }
}
