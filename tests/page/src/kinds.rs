//! Uncertainties typed as limits or as standard uncertainties: chosen beside the number, with what follows.

use anyhow::{Result, ensure};
use serde_json::{Value, json};

use crate::access;
use crate::bench;
use crate::names;
use crate::page::{Page, eventually};
use crate::stage::Stage;

/// What the page says under a field, by the end of the field's id.
fn below(field: &str) -> String {
    format!("[id$=\"{field}-if-empty\"]")
}

/// The kind that is chosen beside a field, as it says it, by the end of the field's id.
fn kind(page: &Page, field: &str) -> Result<Value> {
    let script = "return document.querySelector(arguments[0]).selectedOptions[0].textContent";
    page.browser.run(script, vec![json!(format!("[id$=\"{field}-kind\"]"))])
}

/// Each field of an uncertainty says as what it is meant, takes either, and shows the standard uncertainty that follows
/// from a limit: a ÷ √3 (JCGM 100:2008, 4.3.7). Choosing is one step to undo, and is stored.
///
/// # Errors
/// When it is otherwise.
pub fn an_uncertainty_is_a_limit_or_a_standard_one(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    bench::fill(&page)?;
    let (limit, standard) = ("limit ±a", "standard uncertainty u");
    for (field, usual) in [
        ("-reading_uncertainty", standard),
        ("-scale_uncertainty", standard),
        ("-splice-uncertainty", standard),
        ("bench-edge_half_width", limit),
        ("bench-time_base_uncertainty", standard),
    ] {
        ensure!(kind(&page, field)? == json!(usual), "{field} is usually meant as something else");
    }
    // 5/√3 = 2.887, 1/√3 = 0.577.
    let air = below("bench-temperature");
    page.sees(&air, "Default: 20, limit ±5 °C, so u = a ÷ √3 = 2.9 °C")?;
    page.fill("Air temperature", "21.5")?;
    page.sees(&air, "No uncertainty after ±: default limit ±1 °C, so u = a ÷ √3 = 0.58 °C")?;
    page.fill("Air temperature", "21.5 ± 0.3")?;
    page.sees(&air, "Standard uncertainty u = 0.30 °C")?;
    let before = page.result()?;
    // 0.5/√3 = 0.2887.
    page.fill("Uncertainty of a ruler reading", "0.5")?;
    ensure!(page.text(&below("-reading_uncertainty"))?.is_empty(), "u stands in the box itself");
    let typed_as = "Uncertainty of a ruler reading: typed as";
    page.choose(typed_as, limit)?;
    page.sees(&below("-reading_uncertainty"), "u = a ÷ √3 = 0.29 mm")?;
    page.fill("Uncertainty of a ruler reading", "5 cm")?;
    page.sees(&below("-reading_uncertainty"), "u = a ÷ √3 = 2.9 cm")?;
    let wide = page.result()?;
    ensure!(wide != before, "five centimetres change nothing: {wide:?}");
    page.choose(typed_as, standard)?;
    eventually("the other kind has another result", || page.result(), |result| *result != wide)?;
    page.click("Undo")?;
    page.sees(names::RESULT, &wide)?;
    ensure!(kind(&page, "-reading_uncertainty")? == json!(limit), "undo leaves the kind");
    page.is_saved()?;
    page.reload()?;
    page.sees(names::RESULT, &wide)?;
    page.sees(&below("-reading_uncertainty"), "u = a ÷ √3 = 2.9 cm")?;
    access::load_checker(&page)?;
    for scheme in ["light", "dark"] {
        page.wear(scheme)?;
        access::unbroken(&page)?;
    }
    page.is_silent()
}

/// A component of one's own has its kind beside it, a limit by the distribution chosen: a ÷ √3, a ÷ √6 (JCGM 101:2008,
/// table 1). In a cell a sign makes a limit, and the row says what follows while one is in it.
///
/// # Errors
/// When it is otherwise.
pub fn a_component_and_a_cell_hold_a_limit(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    bench::fill(&page)?;
    page.click("Other uncertainty components")?;
    page.click("Add a component")?;
    page.fill("Uncertainty of this component", "0.2")?;
    let below = "[id^=\"shared-\"][id$=\"-uncertainty-if-empty\"]";
    ensure!(page.text(below)?.is_empty(), "{:?}", page.text(below)?);
    let offered = || page.text("[id^=\"shared-\"][id$=\"-shape\"]");
    ensure!(offered()?.contains("normal"), "{:?}", offered()?);
    page.choose("Uncertainty of this component: typed as", "limit ±a")?;
    // 0.2/√3 = 0.1155, 0.2/√6 = 0.0816.
    page.sees(below, "u = a ÷ √3 = 0.12 ns")?;
    ensure!(!offered()?.contains("normal"), "what is normal has no limits: {:?}", offered()?);
    page.choose("Distribution", "triangular")?;
    page.sees(below, "u = a ÷ √6 = 0.082 ns")?;
    page.click("Enter distance or delay directly")?;
    page.write_over(&names::new_cell("Distance, entered"), "1.5")?;
    page.fill(&names::cell("Distance, entered, u(d)", 6), "±0.5 mm")?;
    // 0.5/√3 = 0.2887.
    let told = "#readings-table tbody:focus-within .told";
    page.reads(told, "u(d): ±0.5 mm is read as a limit")?;
    page.reads(told, "u = a ÷ √3 = 0.29 mm")?;
    page.is_silent()
}

/// What is taken as zero and moves c one for one says so, and is noticed until it is stated.
///
/// # Errors
/// When it is otherwise.
pub fn what_is_treated_as_exact_is_told(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    bench::fill(&page)?;
    for field in ["bench-time_base_uncertainty", "-scale_uncertainty"] {
        page.sees(&below(field), "Default: 0, treated as exact")?;
    }
    page.reads("#apparatus-notices", "the time base and the scale of rail")?;
    let term = "return document.querySelector('#apparatus-notices .term').href";
    let term = page.browser.run(term, vec![])?;
    ensure!(term.as_str().is_some_and(|term| term.ends_with("#term-standard-uncertainty")), "{term}");
    page.fill("Time base: relative uncertainty", "0.01 %")?;
    let told = page.reads("#apparatus-notices", "an uncertainty of 0: the scale of rail")?;
    ensure!(!told.contains("time base"), "{told:?}");
    page.fill("Relative uncertainty of the scale", "0")?;
    let told = || page.text("#apparatus-notices");
    eventually("nothing is treated as exact unsaid", told, |told| !told.contains("Treated as exact"))?;
    page.is_silent()
}

/// A notebook of the time before a kind could be chosen opens with each field meant as it was then, and the same result.
///
/// # Errors
/// When it is otherwise.
pub fn an_old_notebook_keeps_what_it_meant(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    let old = include_str!("../../../crate/src/notebook/samples/format-2.json");
    page.open_file(&page.home.write("old.json", old.as_bytes())?)?;
    page.sees(names::ROWS_USED, &names::rows_used(23, 24))?;
    ensure!(kind(&page, "bench-edge_half_width")? == json!("limit ±a"), "the edge");
    ensure!(kind(&page, "bench-time_base_uncertainty")? == json!("standard uncertainty u"), "the time base");
    page.sees(names::RESULT, "3.0051(88) × 10⁸ m/s")?;
    page.is_silent()
}

/// How a beam at an angle reaches the carriage is asked once an angle is stated; c follows in the sense that the answer has,
/// by half of θ²/2 (here 0.01), and undo takes the answer back.
///
/// # Errors
/// When it is otherwise.
pub fn a_beam_at_an_angle_is_asked_for(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    bench::fill(&page)?;
    let asked = || page.browser.run("return document.querySelector('#beam').checkVisibility()", vec![]);
    page.turn_to("#bench")?;
    ensure!(asked()? == json!(false), "a beam along the rails is asked for");
    let c = || -> Result<f64> {
        let shown = page.result()?;
        let digits = shown.trim_start_matches(|letter: char| !letter.is_ascii_digit());
        Ok(digits
            .split(|letter: char| letter != '.' && !letter.is_ascii_digit())
            .next()
            .unwrap_or("")
            .parse()?)
    };
    let straight = c()?;
    page.fill("Largest possible angle between beam and rail", "200")?;
    eventually("it is asked for", asked, |seen| *seen == json!(true))?;
    let less = eventually("c is smaller", c, |c| *c < straight)?;
    page.click("thin, and the detector follows it across the rail: the light travels r ÷ cos θ")?;
    let more = eventually("c is larger", c, |c| *c > straight)?;
    // The digits shown are those of u(c), here a fiftieth of the change at most.
    ensure!(((more - less) / straight - 0.02).abs() < 0.002, "c is {less}, {straight} or {more}");
    access::load_checker(&page)?;
    access::unbroken(&page)?;
    page.click("Undo")?;
    eventually("the answer is taken back", c, |c| *c == less)?;
    page.is_silent()
}
