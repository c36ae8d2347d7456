//! An entry out of range marks its field, says what is expected there, and is named where the result is missed or
//! rests on something else.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::super::{Analysis, Section, analyse};
use super::*;
use crate::analysis::read::Reader;
use crate::notebook::UncertaintyKind;
use crate::notebook::{
    ActsOn, Cell, Edit, Effect, ErrorShape, Notebook, OverlapPair, Scope, Setting, SharedError,
};
use crate::quantity::{DecimalMark, Unit};
use crate::words::in_english;

/// Two rails joined by meeting marks, six rows on each that give their delay directly.
fn sound() -> Notebook {
    let mut notebook = Notebook::new();
    let mut put = |edit| notebook.apply(edit, "").unwrap();
    for rail in [1, 2] {
        put(Edit::AddRail(rail));
        for (field, text) in [(RailField::From, "0"), (RailField::To, "200")] {
            put(Edit::SetRail { rail, field, text: text.into() });
        }
    }
    put(Edit::SetSplice {
        rail: 1,
        splice: Splice::AtSplitter { mark: "0".into(), uncertainty: "0.1".into() },
    });
    put(Edit::SetSplice { rail: 2, splice: joined("0", "0.2") });
    for row in 1..=12 {
        let (rail, reading) = if row <= 6 { ("1", 30 * row) } else { ("2", 30 * (row - 6)) };
        let distance = f64::from(reading) / 100.0 + if row <= 6 { 0.0 } else { 2.0 };
        let wobble = f64::from(row * 7 % 5) * 0.02;
        let cells = [
            (Cell::Rail, rail.to_owned()),
            (Cell::Reading, reading.to_string()),
            (Cell::Delay, format!("{:.3}", 2.0 + 3.3356 * distance + wobble)),
            (Cell::DelayUncertainty, "0.04".to_owned()),
        ];
        put(Edit::AddRow { row, after: None, cells: cells.into_iter().collect() });
    }
    notebook
}

fn joined(gap: &str, uncertainty: &str) -> Splice {
    Splice::Joined {
        mark: "0".into(),
        mark_before: "200".into(),
        gap: gap.into(),
        uncertainty: uncertainty.into(),
    }
}

/// The analysis of the sound notebook with one thing done to it.
fn with(edit: Edit) -> Analysis {
    let mut notebook = sound();
    notebook.apply(edit, "").unwrap();
    analyse(&notebook)
}

/// A field of the bench, a text out of its range, and what is said there of the range.
const BENCH: &[(BenchField, &str, &str)] = &[
    (BenchField::Wavelength, "0", "from 300\u{a0}nm to 1690\u{a0}nm"),
    (BenchField::Wavelength, "650 m", "unit"),
    (BenchField::PulseRate, "0", "above zero"),
    (BenchField::LeastRows, "0", "above zero"),
    (BenchField::SmallDivisions, "0", "above zero"),
    (BenchField::EdgeHalfWidth, "-0.1", "zero or more"),
    (BenchField::ScreenWidth, "0", "above zero"),
    (BenchField::TimeBaseUncertainty, "80", "50\u{a0}%"),
    (BenchField::TimeBaseUncertainty, "-1", "zero or more"),
    (BenchField::Temperature, "-300", "from −40\u{a0}°C to 100\u{a0}°C"),
    (BenchField::Pressure, "0", "from 100\u{a0}hPa to 1400\u{a0}hPa"),
    (BenchField::Humidity, "120", "from 0\u{a0}% to 100\u{a0}%"),
    (BenchField::CarbonDioxide, "-1", "from 0\u{a0}ppm to 2000\u{a0}ppm"),
    (BenchField::BeamAngle, "700", "500\u{a0}mrad"),
    (BenchField::BeamAngle, "-1", "zero or more"),
    (BenchField::Coverage, "120", "below 100\u{a0}%"),
    (BenchField::Coverage, "0", "at least 50\u{a0}%"),
    (BenchField::MarkUncertainty, "-1", "zero or more"),
    (BenchField::TraceLevel, "0", "above zero"),
    (BenchField::TraceFraction, "95", "10\u{a0}% to 90\u{a0}%"),
];

/// Texts that state an uncertainty where a number stands alone: at each the place is marked.
#[test]
fn an_uncertainty_without_effect_is_refused_where_it_is_typed() {
    let bench = |field, text: &str| (Edit::SetBench { field, text: text.into() }, Place::Bench { field });
    let rail = |field, text: &str| {
        (Edit::SetRail { rail: 2, field, text: text.into() }, Place::Rail { rail: 2, field })
    };
    let splice = |splice, part| (Edit::SetSplice { rail: 2, splice }, Place::Splice { rail: 2, part });
    let at_mark =
        Splice::AtDistance { mark: "0 ± 1".into(), distance: "200".into(), uncertainty: String::new() };
    let elsewhere = "Other uncertainty components";
    let itself = "this field is an uncertainty itself";
    let cases = [
        (bench(BenchField::SmallDivisions, "5 ± 2"), elsewhere),
        (bench(BenchField::TimeBaseUncertainty, "1 ± 0.5"), itself),
        (bench(BenchField::EdgeHalfWidth, "0.1(1)"), itself),
        (bench(BenchField::ScreenWidth, "10 ± 0"), elsewhere),
        (bench(BenchField::Coverage, "95 ± 1"), elsewhere),
        (bench(BenchField::TraceFraction, "50 ± 1"), elsewhere),
        (rail(RailField::From, "0 ± 5"), elsewhere),
        (rail(RailField::ReadingUncertainty, "0.3 ± 0.2"), itself),
        (rail(RailField::ScaleUncertainty, "0.01 ± 0.001"), itself),
        (splice(joined("0", "12 ± 5 mm"), SplicePart::Uncertainty), itself),
        (splice(joined("3(1)", "0.2"), SplicePart::Gap), elsewhere),
        (splice(at_mark, SplicePart::Mark), elsewhere),
    ];
    for ((edit, place), told) in cases {
        let analysis = with(edit);
        let problem = analysis.problems.iter().find(|problem| problem.place == place);
        let problem = problem.unwrap_or_else(|| unreachable!("{place:?} is not marked"));
        let message = in_english(&problem.message);
        assert!(message.contains("without ±") && message.contains(told), "{message}");
    }
    // Where an uncertainty has an effect it stays.
    let honoured = [
        Edit::SetBench { field: BenchField::Temperature, text: "21.5 ± 0.3".into() },
        // A limit may have its sign.
        Edit::SetBench { field: BenchField::EdgeHalfWidth, text: "±0.05".into() },
        Edit::SetCell { row: 3, cell: Cell::Reading, text: "90 ± 5".into() },
    ];
    for edit in honoured {
        assert_eq!(with(edit).problems, vec![]);
    }
}

#[test]
fn an_uncertainty_behind_an_edge_is_refused_and_the_row_is_left_out() {
    for text in ["3.990 ± 5", "3.990(900)", "3.98; 3.99 ± 0.01"] {
        let mut notebook = sound();
        for (cell, text) in [
            (Cell::Delay, ""),
            (Cell::DelayUncertainty, ""),
            (Cell::TimeBase, "2"),
            (Cell::EdgeA, "1.2"),
            (Cell::EdgeB, text),
        ] {
            notebook.apply(Edit::SetCell { row: 3, cell, text: text.into() }, "").unwrap();
        }
        let analysis = analyse(&notebook);
        let place = Place::Cell { row: 3, cell: Cell::EdgeB };
        let problem = analysis.problems.iter().find(|problem| problem.place == place);
        let problem = problem.unwrap_or_else(|| unreachable!("“{text}” is not marked"));
        let message = in_english(&problem.message);
        assert!(message.contains(text) && message.contains("“Uncertainty of one edge reading”"), "{message}");
        assert!(!analysis.line.is_ok_and(|line| line.rows.contains(&3)));
    }
}

/// An uncertainty with no value beside it is told where it stands, and changes nothing.
#[test]
fn an_uncertainty_that_has_no_effect_is_marked() {
    let result = |notebook: &Notebook| analyse(notebook).speed.unwrap().c;
    for (cell, typed) in [
        (Cell::DistanceUncertainty, "±0.5 mm"),
        (Cell::DistanceUncertainty, "abc"),
        (Cell::DistanceUncertainty, "-1"),
        (Cell::DelayUncertainty, "-1"),
    ] {
        let mut notebook = sound();
        let mut set = |cell, text: &str| {
            notebook.apply(Edit::SetCell { row: 3, cell, text: text.into() }, "").unwrap();
        };
        if cell == Cell::DelayUncertainty {
            let edges = [
                (Cell::Delay, ""),
                (cell, ""),
                (Cell::TimeBase, "5"),
                (Cell::EdgeA, "1"),
                (Cell::EdgeB, "2"),
            ];
            for (cell, text) in edges {
                set(cell, text);
            }
        }
        let before = result(&notebook);
        notebook.apply(Edit::SetCell { row: 3, cell, text: typed.into() }, "").unwrap();
        let analysis = analyse(&notebook);
        let place = Place::Cell { row: 3, cell };
        let problem = analysis.problems.iter().find(|problem| problem.place == place);
        let problem = problem.unwrap_or_else(|| unreachable!("“{typed}” is not marked"));
        assert!(in_english(&problem.message).contains("no effect"), "{}", in_english(&problem.message));
        assert_eq!(result(&notebook).to_bits(), before.to_bits());
    }
}

/// Fields of words, in which nothing is out of range.
const WORDS: &[BenchField] = &[
    BenchField::People,
    BenchField::StudentNumber,
    BenchField::Group,
    BenchField::Date,
    BenchField::Place,
    BenchField::LocalRules,
    BenchField::LocalContact,
    BenchField::Instruments,
    BenchField::Cables,
    BenchField::FixedArm,
    BenchField::Trigger,
    BenchField::EdgeFraction,
    BenchField::EdgeReason,
    BenchField::Aim,
    BenchField::Method,
    BenchField::Discussion,
];

#[test]
fn a_sound_notebook_has_no_marked_field() {
    let analysis = analyse(&sound());
    assert_eq!(analysis.problems, vec![]);
    assert!(analysis.speed.is_ok());
    assert!(!analysis.notices.iter().any(|notice| notice.id == "entry_replaced"));
}

#[test]
fn every_field_of_the_bench_is_marked_when_out_of_range() {
    // Those that the view shows are all there are.
    let view = crate::view::view(&sound(), &analyse(&sound()));
    let shown: Vec<BenchField> = view.bench.iter().map(|(field, _)| *field).collect();
    for field in shown {
        assert!(
            WORDS.contains(&field) || BENCH.iter().any(|(tried, ..)| *tried == field),
            "{field:?} is not tried"
        );
    }
    for (field, text, expected) in BENCH {
        let analysis = with(Edit::SetBench { field: *field, text: (*text).into() });
        let problem =
            analysis.problems.iter().find(|problem| problem.place == Place::Bench { field: *field });
        let problem = problem.unwrap_or_else(|| unreachable!("{field:?} “{text}” is not marked"));
        let message = in_english(&problem.message);
        assert!(message.contains(expected), "{field:?} “{text}”: {message}");
        told(&analysis, &in_english(&bench_field(*field)));
    }
}

/// A field has one name: the page finds it by what the field is called in stored notebooks.
#[test]
fn fields_are_called_as_on_the_page() {
    for (field, _) in crate::view::view(&sound(), &analyse(&sound())).bench {
        assert_eq!(bench_field(field).id, format!("fields-{}", id_of(&field)));
    }
    let fields = [RailField::Name, RailField::From, RailField::To, RailField::ReadingUncertainty];
    for field in fields.into_iter().chain([RailField::ScaleUncertainty]) {
        assert_eq!(rail_field(field).id, format!("rails-fields-{}", id_of(&field)));
    }
}

/// What a field is called in stored notebooks.
fn id_of(field: &impl serde::Serialize) -> String {
    serde_json::to_value(field).unwrap().as_str().unwrap_or_default().to_owned()
}

/// Where there is no result, its refusal names the field; where there is one, a notice at the result does.
fn told(analysis: &Analysis, name: &str) {
    if let Err(refusal) = &analysis.speed {
        let text = in_english(&refusal.message);
        assert!(text.contains(name), "{name}: {text}");
        return;
    }
    let notice = analysis.notices.iter().find(|notice| notice.id == "entry_replaced");
    let notice = notice.unwrap_or_else(|| unreachable!("a result without a word of {name}"));
    let text = in_english(&notice.text);
    assert!(notice.section == Section::Result && text.contains(name), "{name}: {text}");
}

#[test]
fn too_much_vapour_marks_the_three_fields_it_comes_from() {
    let mut notebook = sound();
    for (field, text) in
        [(BenchField::Temperature, "90"), (BenchField::Pressure, "200"), (BenchField::Humidity, "100")]
    {
        notebook.apply(Edit::SetBench { field, text: text.into() }, "").unwrap();
    }
    assert_eq!(analyse(&notebook).problems.len(), 3);
}

#[test]
fn every_field_of_a_rail_is_marked_when_out_of_range() {
    for (field, text, expected) in [
        (RailField::To, "-5", "the smaller reading as the first mark"),
        (RailField::To, "0", "the smaller reading as the first mark"),
        (RailField::From, "300", "the smaller reading as the first mark"),
        (RailField::ReadingUncertainty, "-1", "zero or more"),
        (RailField::ScaleUncertainty, "60", "50\u{a0}%"),
    ] {
        let analysis = with(Edit::SetRail { rail: 2, field, text: text.into() });
        let [problem] = analysis.problems.as_slice() else {
            unreachable!("{field:?} “{text}”: {:?}", analysis.problems)
        };
        assert!(in_english(&problem.message).contains(expected), "{problem:?}");
        if !matches!(field, RailField::To | RailField::From) {
            told(&analysis, &in_english(&rail_field(field)));
        }
    }
}

#[test]
fn every_part_of_a_splice_is_marked_when_it_cannot_be_used() {
    let cases = [
        (joined("x", "0.2"), SplicePart::Gap, "“Gap between them” in the position of rail “2”"),
        (
            joined("0", "-1"),
            SplicePart::Uncertainty,
            "“Uncertainty of this position” in the position of rail “2”",
        ),
        (
            Splice::AtDistance { mark: "0".into(), distance: "far".into(), uncertainty: String::new() },
            SplicePart::Distance,
            "",
        ),
        (
            Splice::Overlap { pairs: vec![OverlapPair { here: "x".into(), before: "3".into() }] },
            SplicePart::PairHere(0),
            "",
        ),
        (Splice::Free { mark: "x".into() }, SplicePart::Mark, ""),
    ];
    for (splice, part, name) in cases {
        let analysis = with(Edit::SetSplice { rail: 2, splice });
        let place = Place::Splice { rail: 2, part };
        assert!(
            analysis.problems.iter().any(|problem| problem.place == place),
            "{part}: {:?}",
            analysis.problems
        );
        if !name.is_empty() {
            told(&analysis, name);
        }
    }
    // With no rail placed there is no row either, and the refusal names the mark.
    let mut notebook = sound();
    let nowhere = |rail| Edit::SetSplice {
        rail,
        splice: Splice::AtSplitter { mark: "x".into(), uncertainty: String::new() },
    };
    notebook.apply(Edit::Together(vec![nowhere(1), nowhere(2)]), "").unwrap();
    told(&analyse(&notebook), "“Mark on this rail” in the position of rail “1”");
}

#[test]
fn settings_and_shared_errors_are_marked_when_out_of_range() {
    let setting = |time: &str, uncertainty: &str| {
        Edit::SetSetting(Setting { id: 9, time_per_division: time.into(), uncertainty: uncertainty.into() })
    };
    for edit in [setting("0", "1"), setting("5", "90"), setting("5", "-1")] {
        let analysis = with(edit);
        assert!(matches!(analysis.problems.as_slice(), [EntryProblem { place: Place::Setting { .. }, .. }]));
        told(&analysis, "time-base setting 1");
    }
    let shared = |effect, uncertainty: &str, shape, degrees_of_freedom: &str| {
        Edit::SetShared(SharedError {
            id: 9,
            name: "drift".into(),
            acts_on: ActsOn::Delays,
            effect,
            rows: Scope::All,
            uncertainty: uncertainty.into(),
            shape,
            degrees_of_freedom: degrees_of_freedom.into(),
        })
    };
    for edit in [
        shared(Effect::Offset, "-1", ErrorShape::Normal, ""),
        shared(Effect::Scale, "60", ErrorShape::Normal, ""),
        shared(Effect::Offset, "1e10", ErrorShape::Normal, ""),
        shared(Effect::Offset, "1", ErrorShape::Student, ""),
        shared(Effect::Offset, "1", ErrorShape::Normal, "0"),
    ] {
        let analysis = with(edit);
        assert!(matches!(analysis.problems.first(), Some(EntryProblem { place: Place::Shared { .. }, .. })));
        told(&analysis, "other uncertainty component 1");
    }
}

/// A row with a marked cell waits, and is marked itself: nothing stands in for what it says.
#[test]
fn every_cell_is_marked_when_out_of_range() {
    let cases = [
        (Cell::Rail, "attic"),
        (Cell::Reading, "x"),
        (Cell::TimeBase, "0"),
        (Cell::EdgeA, "x"),
        (Cell::EdgeB, "x"),
        (Cell::Distance, "x"),
        (Cell::DistanceUncertainty, "-1"),
        (Cell::Delay, "x"),
        (Cell::DelayUncertainty, "-1"),
    ];
    for (cell, text) in cases {
        let mut notebook = sound();
        let mut row = std::collections::BTreeMap::from([(Cell::Rail, "1"), (Cell::Reading, "30")]);
        match cell {
            Cell::TimeBase | Cell::EdgeA | Cell::EdgeB => {
                row.extend([(Cell::TimeBase, "2"), (Cell::EdgeA, "1"), (Cell::EdgeB, "3")]);
            }
            Cell::Distance | Cell::DistanceUncertainty => {
                row = [(Cell::Distance, "1"), (Cell::Delay, "5")].into();
            }
            _ => row.extend([(Cell::Delay, "5")]),
        }
        row.insert(cell, text);
        let cells = row.into_iter().map(|(cell, text)| (cell, text.to_owned())).collect();
        notebook.apply(Edit::AddRow { row: 99, after: None, cells }, "").unwrap();
        let analysis = analyse(&notebook);
        let place = Place::Cell { row: 99, cell };
        assert!(
            analysis.problems.iter().any(|problem| problem.place == place),
            "{cell:?} “{text}” is not marked"
        );
        assert!(!analysis.line.unwrap().rows.contains(&99), "{cell:?} “{text}” is in the line");
    }
}

/// An uncertainty written with the sign of a limit is one where the field holds a limit, and refused where it does not.
#[test]
fn a_sign_of_a_limit_agrees_with_the_field() {
    let place = Place::Bench { field: BenchField::EdgeHalfWidth };
    let read = |text: &str, kind| {
        let mut reader = Reader::new(DecimalMark::Point);
        let u = reader.uncertainty(place.clone(), text, Unit::DIVISION, kind);
        (u, reader.problems)
    };
    for text in ["±0.05", "+-0.05", "0.05"] {
        assert_eq!(read(text, UncertaintyKind::Limit), (Some(0.05 / 3.0_f64.sqrt()), Vec::new()), "{text}");
    }
    assert_eq!(read("0.05", UncertaintyKind::Standard), (Some(0.05), Vec::new()));
    let (None, problems) = read("±0.05", UncertaintyKind::Standard) else { unreachable!("it was read") };
    let [problem] = problems.as_slice() else { unreachable!("{problems:?}") };
    assert!(in_english(&problem.message).contains("Choose “limit ±a”"), "{problem:?}");
    let mut reader = Reader::new(DecimalMark::Point);
    assert_eq!(reader.ratio(place.clone(), "±3 %", UncertaintyKind::Limit), Some(0.03 / 3.0_f64.sqrt()));
    assert_eq!(reader.ratio(place.clone(), "±3 %", UncertaintyKind::Standard), None);
}
