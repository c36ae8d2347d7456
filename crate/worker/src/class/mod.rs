//! How the notebooks of a class compare: what their results come to together, how far each lies from that, which were read
//! from the same readings, and where on the bench all lie off their lines. In numbers as the page hands them over, and back
//! in digits.

mod scale;
mod stored;
mod given;
mod alike;
mod rows;
mod places;
mod residuals;
mod budgets;

use serde::Serialize;
use slope_archive::sha256_hex;
use slope_engine::consensus::{Allowing, Consensus, ConsensusError, Estimate, consensus};
use slope_evidence::decimal::{fixed, p_equation, p_text, plain, short_form};
use slope_evidence::message;
use slope_evidence::trace::DecimalMark;
use slope_evidence::words::{Message, Value};

use crate::key::{C0, Key, KeySet};
pub use alike::Alike;
use alike::alike;
pub use budgets::same_with_either_mark;
use budgets::{Lost, lost};
pub use given::{Given, GivenPart};
use residuals::{Residuals, residuals};
use scale::{Bar, ResultScale, Tick};
pub use stored::GivenFigure;

/// Coverage factor of the consensus, for about 95 %.
const COVERAGE_FACTOR: f64 = 2.0;

impl Given {
    /// Its result, if it has one that is not sealed.
    fn result(&self) -> Option<ClassResult> {
        let c = self.figure("c").filter(|_| !self.sealed)?;
        let u = c.uncertainty?;
        Some(ClassResult { c: c.value, u, expanded: self.value("expanded"), z: self.value("z") })
    }

    /// Whether its intervals cover what is really so in its data set: c ± U, and the intercept with the same coverage factor.
    fn covers(&self, set: &KeySet) -> Covered {
        let result = self.result();
        let k = self.value("coverage_factor").unwrap_or(COVERAGE_FACTOR);
        let t0 = self.figure("intercept").filter(|_| !self.sealed);
        Covered {
            c: result.map(|it| (it.c - C0).abs() <= it.reach()),
            t0: t0.and_then(|t0| Some((t0.value - set.truth.t0()?).abs() <= k * t0.uncertainty?)),
        }
    }

    /// How well its line fits, if something was stated.
    fn fit(&self) -> Option<ClassFit> {
        Some(ClassFit {
            chi_square: self.value("chi_square")?,
            degrees_of_freedom: self.value("degrees_of_freedom")?,
            p_value: self.value("p_value"),
        })
    }
}

/// A result of a class. Speeds in m/s.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct ClassResult {
    /// c.
    pub c: f64,
    /// Its standard uncertainty.
    pub u: f64,
    /// Its expanded uncertainty, if it has one.
    pub expanded: Option<f64>,
    /// (c − c₀)/u.
    pub z: Option<f64>,
}

impl ClassResult {
    /// Its expanded uncertainty; the standard uncertainty doubled where there is none.
    fn reach(self) -> f64 {
        self.expanded.unwrap_or(COVERAGE_FACTOR * self.u)
    }
}

/// How well a line fits.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct ClassFit {
    /// χ².
    pub chi_square: f64,
    /// Its degrees of freedom.
    pub degrees_of_freedom: f64,
    /// Its p-value, if it has one.
    pub p_value: Option<f64>,
}

/// A class.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Class {
    /// Each notebook, in the order given.
    pub notebooks: Vec<Compared>,
    /// What the results come to together; empty where nothing can be said.
    pub figures: Vec<ClassFigure>,
    /// Why nothing can be said of them together.
    pub refusal: Option<Message>,
    /// Their mean with its expanded uncertainty among them; none where there is none.
    pub mean: Option<Bar>,
    /// Marks of the scale on which they stand.
    pub ticks: Vec<Tick>,
    /// The residuals of all by position; none where there is none.
    pub residuals: Option<Residuals>,
    /// The components of all budgets, the one with the largest share in the middle first.
    pub lost: Vec<Lost>,
    /// How many budgets there are.
    pub budgets: usize,
}

/// One notebook beside the others. Texts are empty where there is nothing to tell.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Compared {
    /// Its result, if it has one that is not sealed.
    pub result: Option<ClassResult>,
    /// How well its line fits.
    pub fit: Option<ClassFit>,
    /// c with its standard uncertainty and unit.
    pub c: String,
    /// Expanded uncertainty, m/s.
    pub expanded: String,
    /// Distance from c₀ in standard uncertainties.
    pub z: String,
    /// Distance from the mean of the class in standard uncertainties.
    pub apart: String,
    /// The same as a number.
    pub apart_value: Option<f64>,
    /// χ² with its degrees of freedom: "18.3/21".
    pub chi_square: String,
    /// Its p-value.
    pub p_value: String,
    /// Its result with its expanded uncertainty among the others.
    pub bar: Option<Bar>,
    /// The figures that came with it and are not those computed here.
    pub differs: Vec<String>,
    /// The notebooks with which it shares readings.
    pub alike: Vec<Alike>,
    /// Whether its intervals cover the truth, by the key in which its data set is; none where it is in none.
    pub key: Option<Covered>,
}

/// Whether intervals cover what is really so in a data set.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Covered {
    /// That of c, where there is a result that is not sealed.
    pub c: Option<bool>,
    /// That of the delay at zero distance.
    pub t0: Option<bool>,
}

/// A figure of the class.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct ClassFigure {
    /// Identifier, stable.
    pub id: &'static str,
    /// What it is called.
    pub name: Message,
    /// Its symbol; empty where it has none.
    pub symbol: &'static str,
    /// Its value.
    pub value: Value,
    /// What it is, and what to look at.
    pub meaning: Message,
    /// Where it is laid down.
    pub source: &'static str,
}

/// Compares the notebooks of a class, and holds them against the keys to their data sets; numbers are written with a decimal
/// mark.
pub fn class(all: &[Given], keys: &[Key], mark: DecimalMark) -> Class {
    let results: Vec<Estimate> = all.iter().filter_map(Given::result).map(estimate).collect();
    let together = consensus(&results);
    let mean = together.as_ref().ok().map(|found| found.mandel_paule.mean);
    let mut apart = together.as_ref().map_or_else(|_| Vec::new(), |found| found.apart(&results)).into_iter();
    let scale = ResultScale::of(
        &all.iter().filter_map(Given::result).map(|it| (it.c, it.reach())).collect::<Vec<_>>(),
    );
    let alike = alike(all);
    let residuals = residuals(all, &alike, mark);
    let (lost, budgets) = lost(all, mark);
    let notebooks = all.iter().zip(alike).map(|(one, alike)| {
        let apart = one.result().and_then(|_| apart.next());
        let key = set_of(one, keys).map(|set| one.covers(set));
        Compared { alike, key, ..compared(one, apart, scale, mark) }
    });
    Class {
        notebooks: notebooks.collect(),
        mean: mean.zip(scale).map(|(mean, scale)| scale.bar(mean.value, COVERAGE_FACTOR * mean.u)),
        ticks: scale.map_or_else(Vec::new, |scale| scale.ticks(mark)),
        refusal: together.as_ref().err().map(|error| refusal(*error)),
        figures: together.map_or_else(|_| Vec::new(), |found| figures(&found, results.len(), mark)),
        residuals,
        lost,
        budgets,
    }
}

fn estimate(result: ClassResult) -> Estimate {
    Estimate { value: result.c, u: result.u }
}

fn refusal(error: ConsensusError) -> Message {
    match error {
        ConsensusError::TooFew { got } => message!("class-too_few", n = got),
        ConsensusError::NotPositive { .. } | ConsensusError::OutOfRange => message!("class-out_of_range"),
    }
}

fn compared(one: &Given, apart: Option<f64>, scale: Option<ResultScale>, mark: DecimalMark) -> Compared {
    let z = |value: Option<f64>| value.map_or_else(String::new, |value| fixed(value, -1, mark));
    let (result, fit) = (one.result(), one.fit());
    Compared {
        result,
        fit,
        c: result.map_or_else(String::new, |it| short_form(it.c, Some(it.u), "m/s", mark)),
        expanded: result
            .and_then(|it| it.expanded)
            .map_or_else(String::new, |it| format!("{}\u{a0}m/s", plain(it, 2, mark))),
        z: z(result.and_then(|it| it.z)),
        apart: z(apart),
        apart_value: apart,
        chi_square: fit.map_or_else(String::new, |fit| {
            format!("{}/{}", fixed(fit.chi_square, -1, mark), fit.degrees_of_freedom)
        }),
        p_value: fit.and_then(|fit| fit.p_value).map_or_else(String::new, |p| p_text(p, mark)),
        bar: result.zip(scale).map(|(it, scale)| scale.bar(it.c, it.reach())),
        differs: one.stored.as_deref().map_or_else(Vec::new, |table| stored::differing(table, &one.figures)),
        alike: Vec::new(),
        key: None,
    }
}

/// The data set from which a notebook was begun.
fn set_of<'a>(one: &Given, keys: &'a [Key]) -> Option<&'a KeySet> {
    if one.layer.is_empty() || keys.is_empty() {
        return None;
    }
    let digest = sha256_hex(one.layer.as_bytes());
    keys.iter().flat_map(|key| &key.sets).find(|set| set.digest == digest)
}

fn figures(found: &Consensus, results: usize, mark: DecimalMark) -> Vec<ClassFigure> {
    let Consensus { weighted, consistency, dersimonian_laird, mandel_paule } = found;
    let speed = |it: &Estimate| Value::from(short_form(it.value, Some(it.u), "m/s", mark));
    let figure =
        |id, name, symbol, value, meaning, source| ClassFigure { id, name, symbol, value, meaning, source };
    let allowing = |it: &Allowing| {
        let mean = speed(&it.mean);
        if it.between > 0.0 {
            let between = format!("{}\u{a0}m/s", plain(it.between, 2, mark));
            message!("class-between", mean = mean, between = between)
        } else {
            message!("class-none_between", mean = mean)
        }
    };
    let chi_square = message!(
        "class-chi_square-value",
        chi = fixed(consistency.chi_square, -1, mark),
        nu = results - 1,
        p = p_equation(consistency.p_value, mark)
    );
    vec![
        figure(
            "weighted",
            message!("class-weighted"),
            "",
            speed(weighted),
            message!("class-weighted-meaning"),
            "R. T. Birge, Phys. Rev. 40 (1932) 207",
        ),
        figure(
            "class_chi_square",
            message!("class-chi_square"),
            "χ²",
            chi_square.into(),
            message!("class-chi_square-meaning"),
            "M. G. Cox, Metrologia 39 (2002) 589",
        ),
        figure(
            "class_birge_ratio",
            message!("figures-birge_ratio"),
            "R_B",
            fixed(consistency.birge_ratio, -2, mark).into(),
            message!("figures-birge_ratio-meaning"),
            "R. T. Birge, Phys. Rev. 40 (1932) 207",
        ),
        figure(
            "mandel_paule",
            message!("class-mandel_paule"),
            "",
            allowing(mandel_paule).into(),
            message!("class-mandel_paule-meaning"),
            "R. C. Paule, J. Mandel, J. Res. Natl. Bur. Stand. 87 (1982) 377",
        ),
        figure(
            "dersimonian_laird",
            message!("class-dersimonian_laird"),
            "",
            allowing(dersimonian_laird).into(),
            message!("class-dersimonian_laird-meaning"),
            "R. DerSimonian, N. Laird, Controlled Clinical Trials 7 (1986) 177",
        ),
    ]
}

#[cfg(test)]
#[path = "mod_test.rs"]
mod tests;
