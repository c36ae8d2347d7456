//! The demo with traces: two rails in a basement laboratory, a recorder with two channels, and light that weakens on the way.
//!
//! An invented bench. A fixed level walks on it, and by how much follows from the pulses' shape; the notebook times the
//! edges by a constant fraction.

use std::error::Error;

use serde_json::json;
use slope_bench::chance::Chance;
use slope_bench::rails::{Joint, Rail, Rig, Stop};
use slope_bench::record::{Bench, DetectorResponse, Digitiser, SettingsPlace, Style, Units, both_as_text};
use slope_evidence::stored::{LevelOf, common_level};
use slope_of_light::analysis::C0;
use slope_of_light::bundle::{Entry, sha256_hex};
use slope_of_light::notebook::{BenchField, Cell, Edit, Evidence, Row, RulerUnit, StoredFile, Traces};
use slope_of_light::quantity;
use slope_of_light::simulated::described::{Described, Ruler};
use slope_of_light::trace::{Asked, ColumnUnit, DecimalMark, Delimiter, Measured, measure, read, recognise};

use crate::set::{Case, Notes, Set, WithEvidence};

const SEED: u64 = 7_310;

/// What the invented person wrote.
const ALL: [Notes; 2] = [
    Notes {
        language: "en",
        mark: quantity::DecimalMark::Point,
        title: "Traces of a pulse that weakens",
        people: "Bench 2",
        place: "Basement laboratory, door closed",
        aim: "To find the speed of light from recorded traces, and to see what a fixed threshold would have made of it.",
        method: "Both detectors were recorded at each position of the carriage. The light weakens on the way, so the edges were timed at half of their own amplitude.",
        rails: ["first", "second"],
    },
    Notes {
        language: "fr",
        mark: quantity::DecimalMark::Comma,
        title: "Traces d’une impulsion qui faiblit",
        people: "Poste 2",
        place: "Laboratoire du sous-sol, porte fermée",
        aim: "Déterminer la vitesse de la lumière à partir de traces enregistrées, et voir ce qu’un seuil fixe en aurait fait.",
        method: "Les deux détecteurs ont été enregistrés à chaque position du chariot. La lumière faiblit en chemin : les fronts ont donc été datés à la moitié de leur propre amplitude.",
        rails: ["premier", "second"],
    },
];

fn bench(notes: &Notes) -> Described {
    let texts = [
        (BenchField::People, notes.people),
        (BenchField::Place, notes.place),
        (BenchField::Wavelength, "520 nm"),
        (BenchField::PulseRate, "500 kHz"),
        (BenchField::TimeBaseUncertainty, "25 ppm"),
        (BenchField::Temperature, "16"),
        (BenchField::Pressure, "1015"),
        (BenchField::Humidity, "60"),
        (BenchField::TraceFraction, "50"),
        (BenchField::Aim, notes.aim),
        (BenchField::Method, notes.method),
    ];
    let [nearer, farther] = notes.rails;
    let rail = |name, believed, joint| Rail {
        label: Ruler { name, unit: RulerUnit::Millimetre },
        grows: true,
        span: (0.0, 3.0),
        u_reading: 0.0003,
        u_scale: 0.0002,
        mark: 0.0,
        believed,
        joint,
    };
    let first = [0.10, 0.45, 0.80, 1.20, 1.55, 1.90, 2.30, 2.70].map(|aim| (0, aim));
    let second = [0.15, 0.50, 0.90, 1.25, 1.60, 2.00, 2.40, 2.80].map(|aim| (1, aim));
    let stops = first.into_iter().chain(second).map(|(rail, aim)| Stop { rail, aim, time_base: 2.5 });
    Described {
        title: notes.title.into(),
        mark: notes.mark,
        edge_place: -2,
        texts: texts.into_iter().map(|(field, text)| (field, text.to_owned())).collect(),
        rig: Rig {
            rails: vec![
                rail(nearer, 0.0, Joint::AtSplitter(0.001)),
                rail(farther, 3.05, Joint::Meeting { gap: 0.05, u: 0.003 }),
            ],
            c: C0,
            group_index: 1.000_275,
            t0: 3.1,
            half_width: 0.05,
            step: None,
            u_time_base: 25e-6,
            u_walk: 0.0,
            stops: stops.collect(),
        },
    }
}

fn detectors() -> Bench {
    let detector = DetectorResponse { rise: 2.6, decay: 16.0, ..DetectorResponse::default() };
    let digitiser = Digitiser {
        step: 0.25,
        samples: 560,
        start: -50.0,
        bits: 10,
        full_scale: 1.0,
        noise: 0.004,
        time_base: 12e-6,
        ..Digitiser::default()
    };
    Bench { a: detector, b: detector, digitiser, fall_off: 9.0 }
}

/// As the recorder of this bench writes: settings above the samples, decimal commas.
fn style() -> Style {
    Style {
        delimiter: Delimiter::Semicolon,
        decimal: DecimalMark::Comma,
        units: Units::InLabels,
        settings: SettingsPlace::Above,
        time: ColumnUnit::Nanosecond,
        volts: ColumnUnit::Volt,
        powers: 0,
        ..Style::default()
    }
}

/// The set in each language: the same traces.
pub fn sets() -> [Set; 2] {
    ALL.map(|notes| Set { name: "traces", language: notes.language, seed: SEED, bench: bench(&notes), take })
}

/// Records both detectors at each row, and measures them: a first time for the level that suits the whole run.
fn take(cases: &[Case]) -> Result<WithEvidence, Box<dyn Error>> {
    let detectors = detectors();
    let mut chance = Chance::stream(SEED, 1);
    let record = |case: &Case| {
        let recording = detectors.record(case.delay, detectors.light(case.distance), &mut chance);
        (name_of(case.row), both_as_text(&recording, &style()))
    };
    let recorded: Vec<(String, String)> = cases.iter().map(record).collect();
    let each = |level| recorded.iter().map(move |(name, text)| measured(name, text, level)).collect();
    let first: Result<Vec<Measured>, Box<dyn Error>> = each(None);
    let levels: Vec<f64> = first?.iter().filter_map(|found| found.level).collect();
    let level = common_level(&levels);
    let found: Result<Vec<Measured>, Box<dyn Error>> = each(level);

    let (mut edits, mut files) = (Vec::new(), Vec::new());
    for ((case, (name, text)), found) in cases.iter().zip(&recorded).zip(&found?) {
        let row = case.row.id;
        let sha256 = sha256_hex(text.as_bytes());
        let file =
            StoredFile { sha256: sha256.clone(), name: name.clone(), bytes: u32::try_from(text.len())? };
        let traces = Traces::of(&[file], found, LevelOf::Run).ok_or_else(|| format!("{name}: no delay"))?;
        edits.push(Edit::SetCell { row, cell: Cell::TimeBase, text: String::new() });
        edits.push(Edit::SetEvidence { row, evidence: Some(Evidence::Traces(traces)) });
        files.push(Entry { name: format!("traces/{sha256}.txt"), bytes: text.clone().into_bytes() });
    }
    Ok(WithEvidence { edits: vec![Edit::Together(edits)], files, told: ("fixed_level_v", json!(level)) })
}

fn name_of(row: &Row) -> String {
    format!("{} {} mm.csv", row.text(Cell::Rail), row.text(Cell::Reading))
}

fn measured(name: &str, text: &str, level: Option<f64>) -> Result<Measured, Box<dyn Error>> {
    let layout = recognise(name, text.as_bytes())?;
    let recording = read(name, text.as_bytes(), &layout)?;
    Ok(measure(&recording, &recording, &Asked { level, fraction: 0.5, points: 0 }))
}
