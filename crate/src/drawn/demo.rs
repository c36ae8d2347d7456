//! The demo: three rails on three tables, typed readings.
//!
//! An invented bench. A violet pulsed diode; a near rail that begins before the splitter; a middle rail laid the
//! other way round, its ruler counting back towards the splitter; a far rail in the next room, whose place was
//! measured with a tape. The joints are known to about a centimetre, which is what decides the uncertainty. One row
//! was read while the carriage still moved, and is struck out.

use slope_bench::rails::{Joint, Rail, Rig, Stop, Truth};

use super::described::{Described, Ruler};
use crate::analysis::C0;
use crate::notebook::{BenchField, Cell, Edit, EditError, Notebook, RowId, RulerUnit};

/// The seed of the demo notebook.
pub const SEED: u64 = 2_026;

/// The row that is struck out.
pub const STRUCK: RowId = 9;

/// The bench of the demo.
pub fn bench() -> Described {
    let texts = [
        (BenchField::People, "Bench 4"),
        (BenchField::Place, "Optics lab, long corridor"),
        (BenchField::Wavelength, "405 nm"),
        (BenchField::PulseRate, "2 MHz"),
        (BenchField::SmallDivisions, "5"),
        (BenchField::EdgeHalfWidth, "0.04"),
        (BenchField::EdgeReason, "read with a cursor line, one finger-width of trace"),
        (BenchField::ScreenWidth, "12"),
        (BenchField::TimeBaseUncertainty, "50 ppm"),
        (BenchField::Temperature, "21.5"),
        (BenchField::Pressure, "1008"),
        (BenchField::Humidity, "45"),
        (BenchField::Aim, "To find the speed of light from the delay of a pulse over rails of known length."),
        (
            BenchField::Method,
            "A pulsed violet diode, split to a fixed detector A and to detector B on the carriage. Both edges were read at half their own height.",
        ),
    ];
    Described {
        title: "Three rails in the corridor".into(),
        texts: texts.into_iter().map(|(field, text)| (field, text.to_owned())).collect(),
        rig: Rig {
            rails: rails(),
            c: C0,
            group_index: GROUP_INDEX,
            t0: 1.8,
            half_width: 0.04,
            step: None,
            u_time_base: 50e-6,
            u_walk: 0.0,
            stops: stops(),
        },
    }
}

/// Group index of the demo's air, as its own notebook computes it.
const GROUP_INDEX: f64 = 1.000_295;

fn rails() -> Vec<Rail<Ruler>> {
    vec![
        Rail {
            label: Ruler { name: "near", unit: RulerUnit::Centimetre },
            grows: true,
            span: (0.05, 1.95),
            u_reading: 0.0003,
            u_scale: 0.0002,
            mark: 0.125,
            believed: 0.0,
            joint: Joint::AtSplitter(0.001),
        },
        Rail {
            label: Ruler { name: "middle", unit: RulerUnit::Millimetre },
            grows: false,
            span: (0.02, 1.98),
            u_reading: 0.0003,
            u_scale: 0.0002,
            mark: 2.0,
            believed: 1.9,
            joint: Joint::Meeting { gap: 0.025, u: 0.012 },
        },
        Rail {
            label: Ruler { name: "far", unit: RulerUnit::Centimetre },
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

/// Eight stops on each rail; the screen is set slower once the edges would leave it.
fn stops() -> Vec<Stop> {
    let near = [0.20, 0.42, 0.65, 0.87, 1.10, 1.32, 1.55, 1.78];
    let middle = [1.89, 1.64, 1.40, 1.15, 0.90, 0.65, 0.40, 0.15];
    let far = [0.15, 0.45, 0.75, 1.05, 1.35, 1.65, 2.00, 2.35];
    let on = |rail, time_base, aims: [f64; 8]| aims.map(|aim| Stop { rail, aim, time_base });
    [on(0, 1.0, near), on(1, 2.5, middle), on(2, 2.5, far)].concat()
}

/// The demo notebook, and what was really so.
///
/// # Errors
/// None in practice: see [`Described::run`].
pub fn typed_readings() -> Result<(Notebook, Truth), EditError> {
    let (mut notebook, truth) = bench().run(SEED)?;
    let slipped =
        notebook.state().rows.iter().find(|row| row.id == STRUCK).map(|row| row.text(Cell::EdgeB).to_owned());
    if let Some(slipped) = slipped.and_then(|text| text.parse::<f64>().ok()) {
        // Read half a division too far while the carriage was still moving.
        notebook.apply(
            Edit::SetCell { row: STRUCK, cell: Cell::EdgeB, text: format!("{:.3}", slipped + 0.52) },
            "",
        )?;
        let reason = "the carriage was still moving when the edge was read".to_owned();
        notebook.apply(Edit::StrikeRow { row: STRUCK, reason }, "")?;
    }
    Ok((notebook, truth))
}
