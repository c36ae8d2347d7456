//! A hand-out: what its rules fix is reached by no edit and by no undo, and no later entry can claim to be the teacher's.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::super::*;
use crate::words::in_english;

const AT: &str = "2026-01-01T10:00:00Z";

fn add(row: RowId, reading: &str) -> Edit {
    Edit::AddRow { row, after: None, cells: [(Cell::Reading, reading.to_owned())].into_iter().collect() }
}

fn set(field: BenchField, text: &str) -> Edit {
    Edit::SetBench { field, text: text.into() }
}

fn fix(piece: Piece) -> Edit {
    Edit::SetPiece(piece, Rule::Fixed)
}

fn task(id: TaskId, asks: Asks) -> Edit {
    Edit::SetTask(id, Piece::Line, asks, "Why?".into())
}

fn cell(row: RowId, cell: Cell) -> Edit {
    Edit::SetCell { row, cell, text: "9".into() }
}

#[expect(clippy::unnecessary_wraps, reason = "as an edit holds it")]
fn picture(sha256: &str) -> Option<Evidence> {
    let file = StoredFile { sha256: sha256.into(), ..StoredFile::default() };
    Some(Evidence::Picture(Picture {
        file,
        width: 8,
        height: 8,
        grid: 0,
        a: vec![],
        b: vec![],
        heights: None,
    }))
}

fn notebook(edits: impl IntoIterator<Item = Edit>) -> Notebook {
    let mut notebook = Notebook::new();
    for edit in edits {
        notebook.apply(edit, AT).unwrap();
    }
    notebook
}

/// A bench with a rail, a row with a picture, a row of readings, all that can be fixed.
fn prepared() -> Notebook {
    notebook([
        Edit::AddRail(1),
        add(2, "10"),
        Edit::SetEvidence { row: 2, evidence: picture("aa") },
        add(3, "20"),
        set(BenchField::Aim, "Find c."),
        set(BenchField::People, "A. Teacher"),
        task(4, Asks::Words),
        task(5, Asks::Nothing),
        Edit::ReadCautions("A. Teacher".into()),
    ])
}

/// Each edit that a rule stands in the way of, with the piece that refuses it; all of them are taken where nothing is fixed.
fn reaching() -> Vec<(Edit, Piece)> {
    let setting = Setting { id: 9, time_per_division: "5".into(), uncertainty: "1".into() };
    vec![
        (Edit::SetTitle("mine".into()), Piece::Title),
        (Edit::SetPath(Path::Mirror), Piece::Source),
        (set(BenchField::PulseRate, "1"), Piece::Source),
        (set(BenchField::Instruments, "mine"), Piece::Instruments),
        (Edit::SetPhoto(None), Piece::Instruments),
        (set(BenchField::EdgeFraction, "the top"), Piece::Instruments),
        (Edit::AddRail(8), Piece::Rails),
        (Edit::RenameRail { rail: 1, name: "A".into() }, Piece::Rails),
        (Edit::SetSense { rail: 1, sense: Sense::Falls }, Piece::Rails),
        (Edit::SetSplice { rail: 1, splice: Splice::default() }, Piece::Rails),
        (Edit::SetKind { of: UncertaintyOf::RulerScale(1), kind: UncertaintyKind::Limit }, Piece::Rails),
        (Edit::RemoveRail(1), Piece::Rails),
        (set(BenchField::EdgeHalfWidth, "1"), Piece::Screen),
        (Edit::SetKind { of: UncertaintyOf::Edge, kind: UncertaintyKind::Standard }, Piece::Screen),
        (Edit::SetEstimator(Estimator::default()), Piece::Screen),
        (Edit::SetSetting(setting), Piece::TimeBases),
        (cell(3, Cell::TimeBase), Piece::TimeBases),
        (set(BenchField::Pressure, "900"), Piece::Air),
        (cell(3, Cell::Reading), Piece::Positions),
        (Edit::SetPosition(PlannedPosition { id: 10, ..PlannedPosition::default() }), Piece::Positions),
        (Edit::SetEvidence { row: 2, evidence: picture("bb") }, Piece::Evidence),
        (Edit::SetEvidence { row: 2, evidence: None }, Piece::Evidence),
        (Edit::RemoveCovariance(CovarianceOf::Delays), Piece::Uncertainty),
        (Edit::SetKind { of: UncertaintyOf::Shared(9), kind: UncertaintyKind::Limit }, Piece::Uncertainty),
        (cell(3, Cell::EdgeB), Piece::Readings),
        (Edit::SetEvidence { row: 3, evidence: picture("cc") }, Piece::Readings),
        (add(11, "30"), Piece::Readings),
        (Edit::SetClaim(Claim { basis: Basis::Scatter, reason: "so".into() }), Piece::Result),
        (set(BenchField::Coverage, "50"), Piece::Result),
        (Edit::StrikeRow { row: 3, reason: "so".into() }, Piece::Line),
        (set(BenchField::Aim, "Find lunch."), Piece::Aim),
        (set(BenchField::Method, "None."), Piece::Method),
        (set(BenchField::Discussion, "None."), Piece::Discussion),
        (set(BenchField::People, "B. Student"), Piece::People),
        (set(BenchField::StudentNumber, "7"), Piece::StudentNumber),
        (set(BenchField::Group, "B2"), Piece::Group),
        (set(BenchField::Date, "today"), Piece::Date),
        (Edit::Answer(4, "So.".into()), Piece::Answers),
    ]
}

#[test]
fn what_is_fixed_refuses_each_edit_that_reaches_it_and_names_itself() {
    for (edit, piece) in reaching() {
        let mut open = prepared().clone().hand_out("").unwrap();
        assert_eq!(open.apply(edit.clone(), AT), Ok(()), "{edit:?} where nothing is fixed");
        let mut teacher = prepared();
        teacher.apply(fix(piece), AT).unwrap();
        let mut fixed = teacher.clone().hand_out("").unwrap();
        let before = fixed.clone();
        let refused = EditError::Fixed { piece };
        assert_eq!(fixed.apply(edit.clone(), AT), Err(refused.clone()), "{edit:?}");
        assert!(fixed.apply(Edit::Together(vec![add(12, "1"), edit]), AT).is_err(), "in a group");
        assert_eq!(fixed, before, "a refused edit changes nothing");
        let said = in_english(&refused.message());
        assert!(
            said.contains("fixed by the hand-out") && !said.contains("This part"),
            "{piece:?} is named: {said}"
        );
    }
}

#[test]
fn what_a_student_adds_stays_theirs_beside_what_is_fixed() {
    let mut teacher = prepared();
    for piece in [Piece::Positions, Piece::TimeBases, Piece::Evidence] {
        teacher.apply(fix(piece), AT).unwrap();
    }
    let mut student = teacher.clone().hand_out("").unwrap();
    let theirs = [
        add(11, "30"),
        cell(11, Cell::Reading),
        cell(11, Cell::TimeBase),
        cell(3, Cell::EdgeB),
        cell(3, Cell::Remark),
        Edit::SetEvidence { row: 2, evidence: picture("aa") },
        Edit::StrikeRow { row: 3, reason: "bumped".into() },
        Edit::ReadCautions("B. Student".into()),
    ];
    for edit in theirs {
        assert_eq!(student.apply(edit.clone(), AT), Ok(()), "{edit:?}");
    }
}

#[test]
fn undo_stops_at_the_hand_out_and_says_so() {
    let mut student = prepared().clone().hand_out("").unwrap();
    let handed = student.state().clone();
    assert!(!student.can_undo());
    assert_eq!(student.apply(Edit::Undo, AT), Err(EditError::UndoStops));
    student.apply(set(BenchField::Discussion, "Well."), AT).unwrap();
    student.apply(Edit::Undo, AT).unwrap();
    assert_eq!(student.state(), &handed);
    assert_eq!(student.apply(Edit::Undo, AT), Err(EditError::UndoStops));
    let said = in_english(&EditError::UndoStops.message());
    assert!(said.contains("hand-out"), "{said}");
}

#[test]
fn a_file_that_claims_a_teachers_layer_is_refused_with_the_entry_that_does() {
    let student = prepared().clone().hand_out("").unwrap();
    let claims = [
        Edit::HandOut,
        Edit::SetPiece(Piece::Rails, Rule::Open),
        task(6, Asks::Words),
        Edit::RemoveTask(4),
        set(BenchField::LeastRows, "0"),
        set(BenchField::LocalRules, ""),
        set(BenchField::LocalContact, ""),
        Edit::SetRehearsal(1),
        Edit::SetDecimalMark(crate::quantity::DecimalMark::Comma),
    ];
    let text = write(&student);
    for claim in claims {
        let entry = serde_json::to_string(&LogEntry { at: AT.into(), edit: claim }).unwrap();
        let claimed = text.replace("\n]}", &format!(",\n{entry}\n]}}"));
        let refused = FileError::BadEntry { entry: student.log().len() + 1, reason: EditError::HandedOut };
        assert_eq!(read(&claimed), Err(refused), "{entry}");
    }
    // Nor can what came before be taken back by a file that no page wrote.
    let undone = text.replace("\n]}", ",\n{\"edit\":\"undo\"}\n]}");
    let refused = FileError::BadEntry { entry: student.log().len() + 1, reason: EditError::UndoStops };
    assert_eq!(read(&undone), Err(refused));
}

#[test]
fn a_hand_out_stands_alone_and_not_inside_a_group() {
    let mut notebook = prepared();
    assert_eq!(notebook.apply(Edit::Together(vec![Edit::HandOut]), AT), Err(EditError::NotInGroup));
    let student = notebook.clone().hand_out("").unwrap();
    assert_eq!(
        student.clone().hand_out(""),
        Err(EditError::HandedOut),
        "nobody hands out what was handed to them"
    );
}

#[test]
fn what_is_handed_out_is_what_holds_without_the_teachers_own() {
    let mut teacher = prepared();
    teacher.apply(set(BenchField::Method, "a slip"), AT).unwrap();
    teacher.apply(Edit::Undo, AT).unwrap();
    teacher.apply(Edit::Seal("0123".into()), AT).unwrap();
    teacher.apply(Edit::OpenSeal, AT).unwrap();
    let open = teacher.clone().hand_out("").unwrap();
    assert_eq!(open.handed_out(), open.log().len());
    let text = write(&open);
    for gone in ["a slip", "A. Teacher", "undo", "seal"] {
        assert!(!text.contains(gone), "{gone} in {text}");
    }
    assert_eq!(open.state().text(BenchField::Aim), "Find c.");
    assert_eq!(read(&text).unwrap(), open, "it reads back the same");
    let sealed = teacher.clone().hand_out("4567").unwrap();
    assert_eq!(sealed.state().seal, Some(Seal { salt: "4567".into(), opened: false }));
    assert_eq!(teacher.handed_out(), 0, "the teacher's own goes on as it was");
    let log = MergedLog { entries: 1, people: "B. Teacher".into(), ..MergedLog::default() };
    let merged = vec![add(20, "30"), set(BenchField::People, "B. Teacher"), Edit::Merged(log)];
    teacher.apply(Edit::Together(merged), AT).unwrap();
    let merged = teacher.clone().hand_out("").unwrap();
    assert_eq!(merged.state().rows.last().map(|row| row.id), Some(20));
    assert!(!write(&merged).contains("B. Teacher"), "who merged stays behind");
    teacher.apply(Edit::Undo, AT).unwrap();
    teacher.apply(fix(Piece::People), AT).unwrap();
    assert_eq!(
        teacher.clone().hand_out("").unwrap().state().text(BenchField::People),
        "A. Teacher",
        "fixed on purpose"
    );
}

#[test]
fn the_same_preparation_gives_the_same_hand_out() {
    let mut teacher = prepared();
    let first = write(&teacher.clone().hand_out("4567").unwrap());
    let later = "2026-02-02T10:00:00Z";
    teacher.apply(set(BenchField::Method, "a slip"), later).unwrap();
    assert_ne!(write(&teacher.clone().hand_out("4567").unwrap()), first);
    teacher.apply(Edit::Undo, later).unwrap();
    assert_eq!(write(&teacher.hand_out("4567").unwrap()), first, "whenever it is asked for");
}

#[test]
fn an_answer_needs_its_question() {
    let mut student = prepared().clone().hand_out("").unwrap();
    let answer = |task, text: &str| Edit::Answer(task, text.into());
    for task in [5, 99] {
        assert_eq!(
            student.apply(answer(task, "So."), AT),
            Err(EditError::NoTask { task }),
            "read only, or unknown"
        );
    }
    student.apply(answer(4, "Because."), AT).unwrap();
    assert_eq!(student.state().handout.tasks[0].answer, "Because.");
    student.apply(answer(4, ""), AT).unwrap();
    assert_eq!(student.state().handout.tasks[0].answer, "", "an empty answer is none");
}

/// Keys that a script might mistake for a prototype are a later version's names to a reader, and texts as typed where a
/// text may stand (RFC 8259 gives them no meaning).
#[test]
fn polluting_keys_are_refused_or_are_mere_texts() {
    let text = write(&prepared());
    for key in ["__proto__", "constructor"] {
        let named = text.replacen("\"aim\"", &format!("\"{key}\""), 1);
        assert_ne!(named, text);
        assert_eq!(read(&named), Err(FileError::LaterName { name: key.into() }));
    }
    let task = Edit::SetTask(20, Piece::Result, Asks::Words, "__proto__ <script>".into());
    let handed = notebook([task]).clone().hand_out("").unwrap();
    assert_eq!(read(&write(&handed)).unwrap().state().handout.tasks[0].text, "__proto__ <script>");
}

/// Of a title, texts, notes and questions that were worded otherwise before, only what stands now is handed on, in its order.
#[test]
fn what_was_worded_otherwise_before_is_not_handed_on() {
    let asked = |id, text: &str| Edit::SetTask(id, Piece::Line, Asks::Words, text.into());
    let mut teacher = prepared();
    for edit in [
        Edit::SetTitle("Forty-two".into()),
        Edit::Together(vec![set(BenchField::Discussion, "It is Forty-two.")]),
        asked(4, "Is it Forty-two?"),
        asked(6, "Not Forty-two?"),
        Edit::RemoveTask(6),
        Edit::SetNote(Note { id: 7, after: None, text: "Forty-two here.".into(), at: String::new() }),
        Edit::RemoveNote(7),
        Edit::SetCell { row: 2, cell: Cell::Remark, text: "Forty-two, I think.".into() },
        cell(2, Cell::Remark),
        Edit::SetTitle("Week 3".into()),
        set(BenchField::Discussion, ""),
        asked(4, "Why so?"),
    ] {
        teacher.apply(edit, AT).unwrap();
    }
    let student = teacher.clone().hand_out("").unwrap();
    assert!(!write(&student).contains("Forty-two"), "{}", write(&student));
    let page = student.state();
    assert_eq!((page.title.as_str(), page.text(BenchField::Aim)), ("Week 3", "Find c."));
    assert_eq!(page.handout.tasks, teacher.state().handout.tasks);
    assert_eq!((page.notes.len(), page.row(2).unwrap().text(Cell::Remark)), (0, "9"));
}
