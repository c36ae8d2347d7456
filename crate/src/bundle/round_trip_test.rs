//! Whatever was done in a notebook, its bundle gives it back byte for byte.
#![expect(clippy::unwrap_used, reason = "tests")]

use proptest::prelude::*;
use proptest::sample::Index;

use super::*;
use crate::analysis::analyse;
use crate::drawings::{ChartForm, charts};
use crate::notebook::{
    ActsOn, Asks, Basis, Beam, BenchField, Cell, Claim, CovarianceOf, Edit, Effect, ErrorShape, Estimator,
    Grid, MergedLog, Note, Path, Picture, Piece, PlannedPosition, RailField, Rule, RulerUnit, Scope, Sense,
    Setting, SharedError, Splice, Spot, StatedCovariance, TrialPlan, UncertaintyKind, UncertaintyOf,
};
use crate::quantity::DecimalMark;
use crate::report::sample::english;
use crate::simulated::demo;
use crate::view::view;

const AT: &str = "2031-05-06T10:00:00Z";

/// A file that holds its own name.
fn file(name: &str) -> StoredFile {
    let bytes = name.len().try_into().unwrap();
    StoredFile { sha256: sha256_hex(name.as_bytes()), name: name.into(), bytes }
}

/// An edit of every kind, on things of two numbers, with a text wherever one goes in.
fn every_kind(text: &str, one: u32, other: u32) -> Vec<Edit> {
    let text = || text.to_owned();
    let splice = Splice::Joined { mark: text(), mark_before: text(), gap: text(), uncertainty: text() };
    let shared = SharedError {
        id: one,
        name: text(),
        acts_on: ActsOn::Delays,
        effect: Effect::Offset,
        rows: Scope::Rows(vec![other]),
        uncertainty: text(),
        shape: ErrorShape::Normal,
        degrees_of_freedom: text(),
    };
    let (rows, matrix) = (vec![one, other], vec![vec![text(); 2]; 2]);
    let position =
        PlannedPosition { id: one, rail: text(), reading: text(), time_base: text(), repeats: text() };
    let corners = [Spot(0, 0), Spot(80_000, 0), Spot(80_000, 60_000), Spot(0, 60_000)];
    let (a, b) = (vec![Spot(100, 30_000)], vec![Spot(40_000, 30_000)]);
    let picture = Picture { file: file(&text()), width: 800, height: 600, grid: other, a, b, heights: None };
    let mut all = vec![
        Edit::SetTitle(text()),
        Edit::SetDecimalMark(DecimalMark::Comma),
        Edit::ReadCautions(text()),
        Edit::Copied(text()),
        Edit::SetPath(Path::Mirror),
        Edit::SetBeam(Beam::Followed),
        Edit::AddRail(one),
        Edit::SetRail { rail: one, field: RailField::Name, text: text() },
        Edit::RenameRail { rail: one, name: text() },
        Edit::SetRulerUnit { rail: one, unit: RulerUnit::default() },
        Edit::SetSense { rail: one, sense: Sense::Falls },
        Edit::SetSplice { rail: one, splice },
        Edit::RemoveRail(one),
        Edit::SetSetting(Setting { id: one, time_per_division: text(), uncertainty: text() }),
        Edit::RemoveSetting(one),
        Edit::SetKind { of: UncertaintyOf::RulerScale(one), kind: UncertaintyKind::Limit },
        Edit::SetShared(shared),
        Edit::RemoveShared(one),
        Edit::SetCovariance(StatedCovariance { acts_on: CovarianceOf::Delays, rows, matrix }),
        Edit::RemoveCovariance(CovarianceOf::Delays),
        Edit::SetPosition(position),
        Edit::RemovePosition(one),
        Edit::SetRehearsal(other),
        Edit::StrikeRow { row: one, reason: text() },
        Edit::RestoreRow(one),
        Edit::SetPhoto(Some(file(&text()))),
        Edit::SetPhoto(None),
        Edit::SetNote(Note { id: one, after: Some(other), text: text(), at: String::new() }),
        Edit::RemoveNote(one),
        Edit::SetGrid(Grid { id: one, columns: 10, rows: 8, corners, checks: vec![] }),
        Edit::SetEvidence { row: one, evidence: Some(Evidence::Picture(picture)) },
        Edit::SetEvidence { row: one, evidence: None },
        Edit::SetEstimator(Estimator::default()),
        Edit::SetClaim(Claim { basis: Basis::Scatter, reason: text() }),
        Edit::SetTrials(TrialPlan { seed: text(), wanted: text() }),
        Edit::Seal(text()),
        Edit::OpenSeal,
        Edit::SetPiece(Piece::Rails, Rule::Fixed),
        Edit::SetTask(one, Piece::Line, Asks::Words, text()),
        Edit::RemoveTask(one),
        Edit::Answer(one, text()),
        Edit::HandOut,
        Edit::Merged(MergedLog { people: text(), ..MergedLog::default() }),
        Edit::Together(vec![Edit::SetTitle(text()), Edit::AddRail(one)]),
        Edit::Undo,
        Edit::Redo,
    ];
    let cells = [Cell::Rail, Cell::Reading, Cell::TimeBase, Cell::EdgeA, Cell::EdgeB, Cell::Remark];
    let begun = cells.into_iter().map(|cell| (cell, text())).collect();
    all.push(Edit::AddRow { row: one, after: None, cells: begun });
    all.extend(cells.map(|cell| Edit::SetCell { row: one, cell, text: text() }));
    let fields = [BenchField::Aim, BenchField::Discussion, BenchField::People, BenchField::Temperature];
    all.extend(fields.map(|field| Edit::SetBench { field, text: text() }));
    all
}

/// Numbers, and texts thick with what JSON, XML, CSV and zips set apart.
fn texts() -> impl Strategy<Value = String> {
    let apart: Vec<char> =
        "\"\\'<>&;,=\t\r\n\0\u{1b}\u{85}\u{2028}\u{202e}\u{feff}\u{fffe}".chars().collect();
    let letter = prop_oneof![prop::sample::select(apart), any::<char>()];
    prop_oneof!["[1-9][0-9]?(\\.[0-9])?", prop::collection::vec(letter, 0..12).prop_map(String::from_iter)]
}

/// Notebooks in which anything may have been done, from the beginning or in the demo.
fn notebooks() -> impl Strategy<Value = Notebook> {
    let step = (any::<Index>(), texts(), 1..40_u32, 1..40_u32);
    (any::<bool>(), prop::collection::vec(step, 0..40)).prop_map(|(is_demo, steps)| {
        let mut notebook = if is_demo { demo::typed_readings().unwrap().0 } else { Notebook::new() };
        for (kind, text, one, other) in steps {
            let mut kinds = every_kind(&text, one, other);
            let edit = kinds.swap_remove(kind.index(kinds.len()));
            // What the notebook refuses leaves it as it was.
            let _ = notebook.apply(edit, AT);
        }
        notebook
    })
}

fn packed(notebook: &Notebook, files: &[Entry]) -> Vec<u8> {
    let analysis = analyse(notebook);
    let charts = charts(notebook.state(), &analysis, None, ChartForm::Svg, &english());
    of(notebook, &analysis, &view(notebook, &analysis), &charts, None, &english(), files.to_vec()).unwrap()
}

proptest! {
    // Each makes all that follows from a notebook twice.
    #![proptest_config(ProptestConfig { cases: 64, ..ProptestConfig::default() })]

    #[test]
    fn any_notebook_comes_back_byte_for_byte(notebook in notebooks()) {
        let held = kept(notebook.state()).into_iter();
        let files: Vec<Entry> =
            held.map(|(name, file)| Entry { name, bytes: file.name.clone().into_bytes() }).collect();
        let bytes = packed(&notebook, &files);
        let back = read(&bytes).unwrap();
        prop_assert_eq!(&back.notebook_text, &notebook::write(&notebook));
        prop_assert_eq!(&back.notebook, &notebook);
        prop_assert_eq!(&back.kept, &files);
        prop_assert!(packed(&back.notebook, &back.kept) == bytes, "the same bundle again");
    }
}
