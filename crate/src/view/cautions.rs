//! The cautions that page and report begin with, their order and their groups, once for both; and who read them.

use serde::Serialize;

use crate::message;
use crate::notebook::{BenchField, CautionsRead, NotebookState};
use crate::quantity::{Unit, in_unit, parse};
use crate::words::Message;

/// Wavelengths that are seen, nm: the visible range of IEC 60825-1:2014.
const VISIBLE_NM: core::ops::RangeInclusive<f64> = 400.0..=700.0;

/// What is to be read before the beam is on.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct CautionsView {
    /// The cautions, in the order in which they are read.
    pub groups: Vec<CautionGroup>,
    /// Who said that they were read, and when; one message each.
    pub read: Vec<Message>,
}

/// Cautions that belong together.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct CautionGroup {
    /// What they are about.
    pub title: Message,
    /// Each of them.
    pub cautions: Vec<Message>,
}

/// The cautions for a notebook, and who read them.
pub fn cautions_view(page: &NotebookState) -> CautionsView {
    CautionsView {
        groups: invisible(page).into_iter().chain(standing()).collect(),
        read: page.cautions_read.iter().map(read_by).collect(),
    }
}

/// What stands first where the stated wavelength is that of an invisible beam.
fn invisible(page: &NotebookState) -> Option<CautionGroup> {
    let mark = page.decimal_mark;
    let wavelength = parse(page.text(BenchField::Wavelength), mark, Unit::NANOMETRE).ok()?.value;
    if VISIBLE_NM.contains(&wavelength) {
        return None;
    }
    let wavelength = in_unit(wavelength, Unit::NANOMETRE, mark);
    Some(CautionGroup {
        title: message!("cautions-group-invisible"),
        cautions: vec![message!("cautions-invisible", wavelength = wavelength), message!("cautions-find")],
    })
}

/// The cautions that hold on every bench. Controls for users: IEC TR 60825-14; to whom they defer stands above them
/// (`cautions-lead`).
fn standing() -> [CautionGroup; 5] {
    let group = |title, cautions: &[Message]| CautionGroup { title, cautions: cautions.to_vec() };
    [
        group(
            message!("cautions-group-beam"),
            &[message!("cautions-eyes"), message!("cautions-height"), message!("cautions-reflections")],
        ),
        group(
            message!("cautions-group-protection"),
            &[message!("cautions-eyewear"), message!("cautions-skin")],
        ),
        group(
            message!("cautions-group-trained"),
            &[message!("cautions-alignment"), message!("cautions-voltage"), message!("cautions-gas")],
        ),
        group(message!("cautions-group-room"), &[message!("cautions-room")]),
        group(
            message!("cautions-group-stop"),
            &[message!("cautions-stop"), message!("cautions-exposure"), message!("cautions-rules")],
        ),
    ]
}

fn read_by(read: &CautionsRead) -> Message {
    match to_the_minute(&read.at) {
        Some((date, time)) => {
            message!("cautions-read-by", name = &*read.name, date = date, time = time)
        }
        None => message!("cautions-read-by-undated", name = &*read.name),
    }
}

/// Date and time of day of a time as the page's clock says it: UTC, RFC 3339 ("2026-01-31T10:15:00.000Z").
pub fn to_the_minute(at: &str) -> Option<(&str, &str)> {
    let (date, time) = at.strip_suffix('Z')?.split_once('T')?;
    Some((date, time.get(..5)?))
}

#[cfg(test)]
#[path = "cautions_test.rs"]
mod tests;
