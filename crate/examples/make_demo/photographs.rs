//! The demo with photographs: two rails in a laboratory, a screen with its own camera on a shelf.
//!
//! An invented bench. The camera stands a little to the left of the screen and below it, and is not moved. Each picture
//! is drawn, kept as a JPEG, and marked as a person does by hand, who is off by half a pixel or so.

use std::error::Error;

use jpeg_encoder::{ColorType, Encoder};
use serde_json::json;
use slope_bench::chance::Chance;
use slope_bench::rails::{Joint, Rail, Rig, Stop};
use slope_bench::screen::{Shot, demo_series};
use slope_of_light::analysis::C0;
use slope_of_light::bundle::{Entry, sha256_hex};
use slope_of_light::notebook::{
    BenchField, Cell, Edit, Evidence, Grid, GridCheck, Picture, RulerUnit, Spot, StoredFile,
};
use slope_of_light::photo::{Corner, Hint, PixelPoint, Pixels, Proposal, propose};
use slope_of_light::quantity::DecimalMark;
use slope_of_light::simulated::described::{Described, Ruler};
use zune_jpeg::JpegDecoder;
use zune_jpeg::zune_core::bytestream::ZCursor;
use zune_jpeg::zune_core::colorspace::ColorSpace;
use zune_jpeg::zune_core::options::DecoderOptions;

use crate::set::{Case, Notes, Set, WithEvidence};

const SEED: u64 = 4_051;
/// Of the JPEGs, of 100.
const QUALITY: u8 = 60;

/// What the invented person wrote.
const ALL: [Notes; 2] = [
    Notes {
        language: "en",
        mark: DecimalMark::Point,
        title: "Photos of the screen",
        people: "Bench 7",
        place: "Teaching laboratory, door closed",
        aim: "To find the speed of light from photos of the screen, each taken at one position of the carriage.",
        method: "A camera on a shelf took one photo of the screen at each position. The corners of the grid and both edges were marked by hand under the magnifier, to about half a pixel.",
        rails: ["lower", "upper"],
    },
    Notes {
        language: "fr",
        mark: DecimalMark::Comma,
        title: "Photos de l’écran",
        people: "Poste 7",
        place: "Salle de travaux pratiques, porte fermée",
        aim: "Déterminer la vitesse de la lumière à partir de photos de l’écran, une à chaque position du chariot.",
        method: "Un appareil posé sur une étagère a photographié l’écran à chaque position. Les coins de la grille et les deux fronts ont été marqués à la main sous la loupe, à un demi-pixel près environ.",
        rails: ["inférieur", "supérieur"],
    },
];

fn bench(notes: &Notes) -> Described {
    let mark_uncertainty = if notes.mark == DecimalMark::Comma { "0,5" } else { "0.5" };
    let texts = [
        (BenchField::People, notes.people),
        (BenchField::Place, notes.place),
        (BenchField::Wavelength, "650 nm"),
        (BenchField::PulseRate, "1 MHz"),
        (BenchField::ScreenWidth, "10"),
        (BenchField::SmallDivisions, "4"),
        (BenchField::MarkUncertainty, mark_uncertainty),
        (BenchField::TimeBaseUncertainty, "100 ppm"),
        (BenchField::Temperature, "19"),
        (BenchField::Pressure, "1002"),
        (BenchField::Humidity, "55"),
        (BenchField::Aim, notes.aim),
        (BenchField::Method, notes.method),
    ];
    let [lower, upper] = notes.rails;
    let rail = |name, grows, span, mark, believed, joint| Rail {
        label: Ruler { name, unit: RulerUnit::Centimetre },
        grows,
        span,
        u_reading: 0.0004,
        u_scale: 0.0002,
        mark,
        believed,
        joint,
    };
    let stops = [0.15, 0.70, 1.30, 1.90, 2.45].map(|aim| Stop { rail: 0, aim, time_base: 2.5 });
    let beyond = [2.90, 2.35, 1.80, 1.20, 0.65, 0.10].map(|aim| Stop { rail: 1, aim, time_base: 5.0 });
    Described {
        title: notes.title.into(),
        mark: notes.mark,
        edge_place: -2,
        texts: texts.into_iter().map(|(field, text)| (field, text.to_owned())).collect(),
        rig: Rig {
            rails: vec![
                rail(lower, true, (0.0, 2.55), 0.05, 0.0, Joint::AtSplitter(0.001)),
                rail(upper, false, (0.0, 3.0), 3.0, 2.5, Joint::Meeting { gap: 0.02, u: 0.004 }),
            ],
            c: C0,
            group_index: 1.000_280,
            t0: 2.4,
            half_width: 0.05,
            step: None,
            u_time_base: 1e-4,
            u_walk: 0.0,
            stops: stops.into_iter().chain(beyond).collect(),
        },
    }
}

/// The set in each language: the same photographs, marked alike.
pub fn sets() -> [Set; 2] {
    ALL.map(|notes| Set {
        name: "photographs",
        language: notes.language,
        seed: SEED,
        bench: bench(&notes),
        take,
    })
}

/// Draws a picture of each row's screen, on a time base that is off as its data sheet allows, and marks it. The grid is
/// marked on the first one.
fn take(cases: &[Case]) -> Result<WithEvidence, Box<dyn Error>> {
    let shot = |case: &Case| Shot { delay: case.delay, time_base: case.time_base };
    let series = demo_series(SEED, &cases.iter().map(shot).collect::<Vec<_>>());
    let (mut edits, mut files, mut separations) = (Vec::new(), Vec::new(), Vec::new());
    let mut marked: Option<Grid> = None;
    let mut chance = Chance::stream(SEED, 1);
    let mut by_hand = |at: PixelPoint| spot_by_hand(at, &mut chance);
    for ((case, (screen, camera, truth)), number) in cases.iter().zip(&series).zip(1..) {
        let drawn = camera.photograph(screen, SEED + number);
        let jpeg = encoded(&drawn.rgba, drawn.width, drawn.height)?;
        let proposal = proposed(&jpeg, drawn.width, drawn.height)?;
        let name = format!("{} {} cm.jpg", case.row.text(Cell::Rail), case.row.text(Cell::Reading));
        let mut of_row = Vec::new();
        let grid = marked.get_or_insert_with(|| {
            let grid = grid_of(&proposal, &mut by_hand);
            of_row.push(Edit::SetGrid(grid.clone()));
            grid
        });
        let mut edge = |which: usize| {
            let found = proposal.edges.get(which).and_then(Option::as_ref);
            found.map(|edge| vec![by_hand(edge.at)]).ok_or_else(|| format!("{name}: no edge was proposed"))
        };
        let sha256 = sha256_hex(&jpeg);
        let picture = Picture {
            file: StoredFile {
                sha256: sha256.clone(),
                name: name.clone(),
                bytes: u32::try_from(jpeg.len())?,
            },
            width: u32::try_from(drawn.width)?,
            height: u32::try_from(drawn.height)?,
            grid: grid.id,
            a: edge(0)?,
            b: edge(1)?,
            heights: None,
        };
        of_row.push(Edit::SetEvidence { row: case.row.id, evidence: Some(Evidence::Picture(picture)) });
        edits.push(Edit::Together(of_row));
        files.push(Entry { name: format!("pictures/{sha256}.jpg"), bytes: jpeg });
        separations.push(truth.separation);
    }
    Ok(WithEvidence { edits, files, told: ("row_separations_div", json!(separations)) })
}

fn encoded(rgba: &[u8], width: usize, height: usize) -> Result<Vec<u8>, Box<dyn Error>> {
    let mut bytes = Vec::new();
    let encoder = Encoder::new(&mut bytes, QUALITY);
    encoder.encode(rgba, u16::try_from(width)?, u16::try_from(height)?, ColorType::Rgba)?;
    Ok(bytes)
}

fn proposed(jpeg: &[u8], width: usize, height: usize) -> Result<Proposal, Box<dyn Error>> {
    let options = DecoderOptions::default().jpeg_set_out_colorspace(ColorSpace::RGBA);
    let rgba = JpegDecoder::new_with_options(ZCursor::new(jpeg), options).decode()?;
    Ok(propose(Pixels::of(&rgba, width, height), Hint { columns: 10, rows: 8 }, None)?)
}

/// Where a hand puts a mark: off by up to 0.8 px either way, and on the next half of a pixel; its standard uncertainty
/// is 0.8/√3 px with 0.25/√3 px, together 0.48 px.
fn spot_by_hand(at: PixelPoint, chance: &mut Chance) -> Spot {
    let mut half_pixels = |value: f64| {
        #[expect(clippy::cast_possible_truncation, reason = "a place on the picture")]
        let halves = (2.0 * (value + chance.uniform(0.8))).round() as i32;
        50 * halves
    };
    Spot(half_pixels(at.x), half_pixels(at.y))
}

fn grid_of(proposal: &Proposal, by_hand: &mut impl FnMut(PixelPoint) -> Spot) -> Grid {
    let half = |value: f64| {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few divisions")]
        let half = (2.0 * value).round() as u32;
        half
    };
    let corners = proposal.corners.map(|corner| by_hand(corner.at));
    let check = |corner: &Corner| GridCheck {
        half_columns: half(corner.column),
        half_rows: half(corner.row),
        at: by_hand(corner.at),
    };
    Grid {
        id: 1,
        columns: 10,
        rows: 8,
        corners,
        checks: std::iter::once(&proposal.centre).chain(&proposal.sides).map(check).collect(),
    }
}
