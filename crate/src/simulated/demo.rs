//! The demo: three rails on three tables of a laboratory, typed readings, in each language.
//!
//! An invented bench. A near rail, its ruler counting outwards from the splitter; a middle rail, carried over the other
//! way round, its ruler counting back towards the splitter; a far rail on the table at the end wall, whose place was
//! measured with a tape. The joints are known to about a centimetre, and edges are read between the lines of the screen
//! to a fifth of a small division. In one row an edge was read at the wrong line, and the row is struck out.

use slope_bench::rails::{Joint, Rail, Rig, Stop, Truth};

use super::described::{Described, Ruler};
use crate::analysis::C0;
use crate::notebook::{BenchField, Cell, Edit, EditError, Notebook, RowId, RulerUnit};
use crate::quantity::{DecimalMark, Unit, parse_alone};

/// The seed of the demo notebook.
pub const SEED: u64 = 2_042;

/// The row that is struck out.
pub const STRUCK: RowId = 9;

/// Edges are read to within this, and written to it, divisions: a fifth of a small division, of which there are four.
const STEP: f64 = 0.05;

/// What the invented person wrote, in one language.
#[derive(Clone, Copy, Debug)]
pub struct Notes {
    /// The language, as its table of words is called.
    pub language: &'static str,
    mark: DecimalMark,
    title: &'static str,
    people: &'static str,
    place: &'static str,
    edge_reason: &'static str,
    aim: &'static str,
    method: &'static str,
    rails: [&'static str; 3],
    struck: &'static str,
}

/// The demo in English, which tests and programs take.
pub const ENGLISH: Notes = Notes {
    language: "en",
    mark: DecimalMark::Point,
    title: "Three rails in the laboratory",
    people: "Bench 4",
    place: "Optics laboratory, door closed",
    edge_reason: "read between the lines, to a fifth of a small division",
    aim: "To find the speed of light from the delay of a pulse over rails of known length.",
    method: "The light of a pulsed violet diode was split between the fixed detector A and detector B on the carriage. Both edges were read at half of their own height.",
    rails: ["near", "middle", "far"],
    struck: "edge B was read at the wrong line of the screen",
};

/// The demo in French.
pub const FRENCH: Notes = Notes {
    language: "fr",
    mark: DecimalMark::Comma,
    title: "Trois rails au laboratoire",
    people: "Poste 4",
    place: "Laboratoire d’optique, porte fermée",
    edge_reason: "lecture entre les traits, au cinquième d’une petite division",
    aim: "Déterminer la vitesse de la lumière à partir du retard d’une impulsion le long de rails de longueur connue.",
    method: "Une lame séparatrice a partagé la lumière d’une diode violette pulsée entre le détecteur A, fixe, et le détecteur B, sur le chariot. Les deux fronts ont été lus à la moitié de leur propre hauteur.",
    rails: ["proche", "central", "éloigné"],
    struck: "le front B a été lu sur le mauvais trait de l’écran",
};

/// The demo in every language that has one.
pub const ALL: [Notes; 2] = [ENGLISH, FRENCH];

/// The bench of the demo.
pub fn bench() -> Described {
    described(&ENGLISH)
}

fn described(notes: &Notes) -> Described {
    let number = |text: &str| match notes.mark {
        DecimalMark::Point => text.to_owned(),
        DecimalMark::Comma => text.replace('.', ","),
    };
    let texts = [
        (BenchField::People, notes.people.to_owned()),
        (BenchField::Place, notes.place.to_owned()),
        (BenchField::Wavelength, "405 nm".to_owned()),
        (BenchField::PulseRate, "2 MHz".to_owned()),
        (BenchField::SmallDivisions, "4".to_owned()),
        (BenchField::EdgeHalfWidth, number("0.05")),
        (BenchField::EdgeReason, notes.edge_reason.to_owned()),
        (BenchField::ScreenWidth, "10".to_owned()),
        (BenchField::TimeBaseUncertainty, "50 ppm".to_owned()),
        (BenchField::Temperature, number("21.5")),
        (BenchField::Pressure, "1008".to_owned()),
        (BenchField::Humidity, "45".to_owned()),
        (BenchField::Aim, notes.aim.to_owned()),
        (BenchField::Method, notes.method.to_owned()),
    ];
    Described {
        title: notes.title.to_owned(),
        mark: notes.mark,
        edge_place: -2,
        texts: texts.into(),
        rig: Rig {
            rails: rails(notes.rails),
            c: C0,
            group_index: GROUP_INDEX,
            t0: 1.8,
            half_width: STEP,
            step: Some(STEP),
            u_time_base: 50e-6,
            u_walk: 0.0,
            stops: stops(),
        },
    }
}

/// Group index of the demo's air, as its own notebook computes it.
const GROUP_INDEX: f64 = 1.000_295;

fn rails([near, middle, far]: [&'static str; 3]) -> Vec<Rail<Ruler>> {
    vec![
        Rail {
            label: Ruler { name: near, unit: RulerUnit::Centimetre },
            grows: true,
            span: (0.05, 2.0),
            u_reading: 0.0003,
            u_scale: 0.0002,
            mark: 0.125,
            believed: 0.0,
            joint: Joint::AtSplitter(0.001),
        },
        Rail {
            label: Ruler { name: middle, unit: RulerUnit::Millimetre },
            grows: false,
            span: (0.0, 2.0),
            u_reading: 0.0003,
            u_scale: 0.0002,
            mark: 2.0,
            believed: 1.9,
            joint: Joint::Meeting { gap: 0.025, u: 0.012 },
        },
        Rail {
            label: Ruler { name: far, unit: RulerUnit::Centimetre },
            grows: true,
            span: (0.0, 2.5),
            u_reading: 0.0005,
            u_scale: 0.0003,
            mark: 0.1,
            believed: 4.35,
            joint: Joint::Stated(0.015),
        },
    ]
}

/// Eight stops on each rail; the screen is set slower for the last two, whose edges would leave it.
fn stops() -> Vec<Stop> {
    let near = [0.20, 0.42, 0.65, 0.87, 1.10, 1.32, 1.55, 1.78];
    let middle = [1.89, 1.64, 1.40, 1.15, 0.90, 0.65, 0.40, 0.15];
    let far = [0.15, 0.42, 0.77, 1.03, 1.36, 1.62, 1.98, 2.35];
    let on = |(rail, aims): (usize, [f64; 8])| aims.map(|aim| Stop { rail, aim, time_base: 2.5 });
    let mut stops = [(0, near), (1, middle), (2, far)].map(on).concat();
    for last in stops.iter_mut().rev().take(2) {
        last.time_base = 5.0;
    }
    stops
}

/// The demo notebook, and what was really so.
///
/// # Errors
/// None in practice: see [`Described::run`].
pub fn typed_readings() -> Result<(Notebook, Truth), EditError> {
    typed_readings_in(&ENGLISH)
}

/// The same in a language: other words and decimal marks, the same readings.
///
/// # Errors
/// None in practice: see [`Described::run`].
pub fn typed_readings_in(notes: &Notes) -> Result<(Notebook, Truth), EditError> {
    let described = described(notes);
    let (mut notebook, truth) = described.run(SEED)?;
    let read = notebook.state().row(STRUCK).map(|row| row.text(Cell::EdgeB));
    if let Some(Ok(number)) = read.map(|text| parse_alone(text, notes.mark, Unit::DIVISION)) {
        // Read at a line half a division too far.
        let text = described.edge(number + 0.5);
        notebook.apply(Edit::SetCell { row: STRUCK, cell: Cell::EdgeB, text }, "")?;
        notebook.apply(Edit::StrikeRow { row: STRUCK, reason: notes.struck.to_owned() }, "")?;
    }
    Ok((notebook, truth))
}

#[cfg(test)]
#[path = "demo_test.rs"]
mod tests;
