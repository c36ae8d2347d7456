//! Two notebooks of one hand-out, merged: what is taken, what clashes, what is refused, and that merging both ways ends alike.
#![expect(clippy::unwrap_used, clippy::panic, reason = "tests")]

use proptest::prelude::*;

use super::super::sorting::write_out;
use super::super::*;
use super::chain;

#[path = "merge_again_test.rs"]
mod again;
#[path = "merge_rails_test.rs"]
mod rails;

const AT: &str = "2026-01-01T10:00:00Z";

fn add(row: RowId, reading: &str) -> Edit {
    Edit::AddRow { row, after: None, cells: [(Cell::Reading, reading.to_owned())].into_iter().collect() }
}

fn cell(row: RowId, cell: Cell, text: &str) -> Edit {
    Edit::SetCell { row, cell, text: text.into() }
}

fn set(field: BenchField, text: &str) -> Edit {
    Edit::SetBench { field, text: text.into() }
}

fn shared(id: SharedId, uncertainty: &str) -> Edit {
    Edit::SetShared(SharedError {
        id,
        name: "Table".into(),
        acts_on: ActsOn::Distances,
        effect: Effect::Offset,
        rows: Scope::Rows(vec![2]),
        uncertainty: uncertainty.into(),
        shape: ErrorShape::default(),
        degrees_of_freedom: String::new(),
    })
}

fn strike(row: RowId) -> Edit {
    Edit::StrikeRow { row, reason: "bumped".into() }
}

fn picture(grid: GridId) -> Evidence {
    let marks = || vec![Spot(1, 1)];
    Evidence::Picture(Picture {
        file: StoredFile::default(),
        width: 8,
        height: 8,
        grid,
        a: marks(),
        b: marks(),
        heights: None,
    })
}

fn grid(id: GridId, columns: u32) -> Edit {
    Edit::SetGrid(Grid { id, columns, rows: 8, corners: [Spot(1, 1); 4], checks: vec![] })
}

/// A hand-out: a rail, two rows, a question, its title fixed; sealed.
fn handed_out() -> Notebook {
    let mut notebook = Notebook::new();
    for edit in [
        Edit::SetTitle("Light".into()),
        Edit::AddRail(1),
        add(2, "10"),
        cell(2, Cell::Rail, "1"),
        cell(2, Cell::TimeBase, "5"),
        add(3, "20"),
        Edit::SetTask(4, Piece::Line, Asks::Words, "Why?".into()),
        Edit::SetPiece(Piece::Title, Rule::Fixed),
    ] {
        notebook.apply(edit, AT).unwrap();
    }
    notebook.hand_out("salt").unwrap()
}

/// A notebook that went on with such edits.
fn with(notebook: &Notebook, edits: impl IntoIterator<Item = Edit>) -> Notebook {
    let mut notebook = notebook.clone();
    for edit in edits {
        notebook.apply(edit, AT).unwrap();
    }
    notebook
}

/// A hand-out worked on by one who did such edits; told from the other by what they wrote first.
fn of(name: &str, edits: impl IntoIterator<Item = Edit>) -> Notebook {
    with(&with(&handed_out(), [set(BenchField::Place, name), set(BenchField::Place, "")]), edits)
}

fn confirmed(ours: &Notebook, theirs: &Notebook, choose: impl Fn(&Clash) -> Vec<Edit>) -> Notebook {
    let Merge { log, kept, taken, clashes, .. } = ours.merge(theirs).unwrap();
    let chosen = clashes.iter().flat_map(choose);
    let edits = kept.into_iter().chain(taken).chain(chosen).chain([Edit::Merged(log)]);
    with(ours, [Edit::Together(edits.collect())])
}

fn without_clash(ours: &Notebook, theirs: &Notebook) -> Notebook {
    confirmed(ours, theirs, |clash| panic!("{clash:?}"))
}

fn readings(notebook: &Notebook) -> Vec<&str> {
    notebook.state().rows.iter().map(|row| row.text(Cell::Reading)).collect()
}

#[test]
fn what_the_partner_alone_changed_is_taken_in_one_step() {
    let ours = of("a", [cell(2, Cell::EdgeA, "1"), add(5, "30")]);
    let theirs = of(
        "b",
        [
            cell(3, Cell::EdgeA, "2"),
            strike(3),
            Edit::AddRail(5),
            set(BenchField::Temperature, "20"),
            shared(6, "1"),
            Edit::SetKind { of: UncertaintyOf::Shared(6), kind: UncertaintyKind::Limit },
            Edit::Answer(4, "Light is fast.".into()),
        ],
    );
    let merged = without_clash(&ours, &theirs);
    let page = merged.state();
    assert_eq!(page.rows[0].text(Cell::EdgeA), "1");
    assert_eq!((page.rows[1].text(Cell::EdgeA), page.rows[1].struck.as_deref()), ("2", Some("bumped")));
    assert_eq!(readings(&merged), ["10", "20", "30"]);
    assert_eq!(page.text(BenchField::Temperature), "20");
    assert_eq!(page.handout.tasks[0].answer, "Light is fast.");
    let (rail, error) = (page.rails[1].id, &page.shared[0]);
    assert!(rail > 5 && error.id > 5, "numbers of ours were given again: {rail}, {}", error.id);
    assert_eq!((page.shape(error), &error.rows), (ErrorShape::Rectangular, &Scope::Rows(vec![2])));
    let mut back = merged.clone();
    back.apply(Edit::Undo, AT).unwrap();
    assert_eq!(back.state(), ours.state());
}

#[test]
fn new_rows_of_both_stand_side_by_side_with_their_pictures() {
    let ours = of("a", [add(5, "30"), grid(6, 10), Edit::SetEvidence { row: 5, evidence: Some(picture(6)) }]);
    let theirs =
        of("b", [grid(5, 8), add(6, "40"), Edit::SetEvidence { row: 6, evidence: Some(picture(5)) }]);
    let merged = without_clash(&ours, &theirs);
    let page = merged.state();
    assert_eq!(readings(&merged), ["10", "20", "30", "40"]);
    for (row, columns) in [(2, 10), (3, 8)] {
        let Some(Evidence::Picture(picture)) = &page.rows[row].evidence else { panic!("no picture") };
        let grid = page.grids.iter().find(|grid| grid.id == picture.grid).unwrap();
        assert_eq!(grid.columns, columns);
    }
}

/// A row that states no rail goes on with the one before it, which is another one behind our rows.
#[test]
fn what_a_new_row_goes_on_with_is_written_out() {
    let ours = of("a", [add(5, "30"), cell(5, Cell::Rail, "2"), cell(5, Cell::TimeBase, "1")]);
    let theirs = of("b", [add(5, "40"), add(6, "50"), cell(6, Cell::TimeBase, "2")]);
    let merged = without_clash(&ours, &theirs);
    let stated = |row: usize| {
        let row = &merged.state().rows[row];
        (row.text(Cell::Reading), row.text(Cell::Rail), row.text(Cell::TimeBase))
    };
    assert_eq!((stated(3), stated(4)), (("40", "1", "5"), ("50", "1", "2")));
}

#[test]
fn what_both_changed_is_a_clash_with_both_values() {
    let ours =
        of("a", [set(BenchField::Method, "mine"), cell(2, Cell::EdgeA, "1"), set(BenchField::Aim, "c")]);
    let theirs =
        of("b", [set(BenchField::Method, "theirs"), cell(2, Cell::EdgeB, "2"), set(BenchField::Aim, "c")]);
    let Merge { taken, clashes, .. } = ours.merge(&theirs).unwrap();
    assert_eq!(taken, []);
    assert_eq!(clashes.len(), 2);
    let text = |text: &str| vec![set(BenchField::Method, text)];
    assert_eq!(clashes[0], Clash { ours: text("mine"), theirs: text("theirs"), both: vec![] });
    assert_eq!(clashes[1].ours, [cell(2, Cell::EdgeA, "1"), cell(2, Cell::EdgeB, "")]);
    assert_eq!(clashes[1].theirs, [cell(2, Cell::EdgeA, ""), cell(2, Cell::EdgeB, "2")]);

    let kept = confirmed(&ours, &theirs, |_| vec![]);
    assert_eq!(kept.state().rows, ours.state().rows);
    assert_eq!(kept.merge(&theirs), Err(MergeError::NothingNew), "a choice is not asked for again");
    let taken = confirmed(&ours, &theirs, |clash| clash.theirs.clone());
    assert_eq!(taken.state().rows, theirs.state().rows);
    assert_eq!(taken.state().text(BenchField::Method), "theirs");
    let both = confirmed(&ours, &theirs, |clash| clash.both.clone());
    assert_eq!(readings(&both), ["10", "20", "10"]);
    assert_eq!(both.state().rows[2].text(Cell::EdgeB), "2");
    assert_eq!(both.state().rows[2].text(Cell::EdgeA), "");
}

#[test]
fn what_one_removed_and_the_other_changed_is_a_clash() {
    let both = with(&handed_out(), [shared(5, "1"), cell(3, Cell::EdgeA, "3")]);
    let ours = with(&both, [Edit::RemoveShared(5), strike(3)]);
    let theirs = with(&both, [shared(5, "2"), cell(3, Cell::EdgeA, "4")]);
    let clashes = ours.merge(&theirs).unwrap().clashes;
    assert_eq!(clashes.len(), 2);
    assert_eq!((&clashes[0].ours, &clashes[0].theirs), (&vec![Edit::RemoveShared(5)], &vec![shared(5, "2")]));
    assert_eq!(clashes[1].ours, [cell(3, Cell::EdgeA, "3"), strike(3)]);
    let clashes = theirs.merge(&ours).unwrap().clashes;
    assert_eq!(clashes[0].theirs, [Edit::RemoveShared(5)]);
    let taken = confirmed(&theirs, &ours, |clash| clash.theirs.clone());
    assert_eq!(taken.state().shared, []);
    assert!(taken.state().rows[1].struck.is_some());
}

/// A row that was begun before the logs parted, and taken back here.
#[test]
fn a_row_taken_back_here_and_changed_there_is_a_clash() {
    let both = with(&Notebook::new(), [add(1, "10"), add(2, "20")]);
    let ours = with(&both, [Edit::Undo]);
    let theirs = with(&both, [cell(2, Cell::EdgeA, "4")]);
    let clashes = ours.merge(&theirs).unwrap().clashes;
    assert_eq!((clashes.len(), &clashes[0].ours), (1, &vec![]));
    let taken = confirmed(&ours, &theirs, |clash| clash.theirs.clone());
    assert_eq!(taken.state().rows, theirs.state().rows);
    let untouched = with(&both, [set(BenchField::Aim, "c")]);
    assert_eq!(readings(&without_clash(&ours, &untouched)), ["10"]);
}

/// Which rails meet follows from their order, so all of them are one.
#[test]
fn rails_are_one_and_keep_the_order_of_whom_they_are_taken_from() {
    let name = |rail, name: &str| Edit::SetRail { rail, field: RailField::Name, text: name.into() };
    let both = with(&handed_out(), [Edit::AddRail(5), name(5, "five")]);
    let ours = with(&both, [Edit::RemoveRail(5), Edit::AddRail(6), name(6, "six")]);
    let theirs = with(&both, [name(1, "one"), Edit::AddRail(6), name(6, "other")]);
    let names = |notebook: &Notebook| -> Vec<String> {
        notebook.state().rails.iter().enumerate().map(|(place, rail)| rail.name_or_number(place)).collect()
    };
    assert_eq!(ours.merge(&theirs).unwrap().clashes.len(), 1);
    let taken = confirmed(&ours, &theirs, |clash| clash.theirs.clone());
    assert_eq!(names(&taken), ["one", "five", "other"]);
    assert_eq!(names(&confirmed(&ours, &theirs, |_| vec![])), names(&ours));
}

/// The partner's rows call a rail by the name that it was given there: so do those that are here alone.
#[test]
fn rows_that_the_partner_has_not_follow_a_rail_that_was_renamed() {
    let both = with(&handed_out(), [Edit::AddRail(5)]);
    let position = |rail: &str| PlannedPosition { id: 8, rail: rail.into(), ..PlannedPosition::default() };
    let ours =
        with(&both, [add(6, "30"), cell(6, Cell::Rail, "2"), add(7, "40"), cell(7, Cell::Rail, "far")]);
    let ours = with(&ours, [Edit::SetPosition(position("2"))]);
    // Each gets the other's name, so that a row that stays behind would be read on the other rail.
    let name = |rail, name: &str| Edit::RenameRail { rail, name: name.into() };
    let theirs = with(&both, [name(1, "x"), name(5, "1"), name(1, "2"), set(BenchField::Aim, "b")]);
    let merged = without_clash(&ours, &theirs);
    let rails: Vec<_> = merged.state().rows.iter().map(|row| row.text(Cell::Rail)).collect();
    assert_eq!(rails, ["2", "", "1", "far"]);
    assert_eq!(merged.state().plan, [position("1")]);
}

#[test]
fn what_is_of_one_person_stays() {
    let ours = of("a", []);
    let theirs = of(
        "b",
        [
            set(BenchField::StudentNumber, "7"),
            Edit::ReadCautions("B. Student".into()),
            Edit::OpenSeal,
            add(5, "30"),
        ],
    );
    let merged = without_clash(&ours, &theirs);
    let page = merged.state();
    assert_eq!(page.text(BenchField::StudentNumber), "");
    assert!(page.cautions_read.is_empty());
    assert_eq!(
        page.seal,
        Some(Seal { salt: "salt".into(), opened: false }),
        "a partner's opened seal opens no other"
    );
    assert_eq!(readings(&merged), ["10", "20", "30"]);
}

/// Nobody's name takes another's place by itself.
#[test]
fn who_measured_is_chosen() {
    let (ours, theirs) = (of("a", []), of("b", [set(BenchField::People, "Ben Red"), add(5, "30")]));
    let Merge { clashes, .. } = ours.merge(&theirs).unwrap();
    let names = |name: &str| vec![set(BenchField::People, name)];
    assert_eq!(clashes, [Clash { ours: names(""), theirs: names("Ben Red"), both: vec![] }]);
    let kept = confirmed(&ours, &theirs, |_| vec![]);
    assert_eq!((readings(&kept), kept.state().text(BenchField::People)), (vec!["10", "20", "30"], ""));
    assert_eq!(kept.state().merged[0].people, "Ben Red");
    assert_eq!(kept.merge(&theirs), Err(MergeError::NothingNew));
}

#[test]
fn only_a_notebook_of_the_same_hand_out_is_merged() {
    let ours = of("a", [add(5, "30")]);
    let other = with(&Notebook::new(), [Edit::SetTitle("Sound".into()), Edit::HandOut, add(5, "1")]);
    assert_eq!(ours.merge(&other), Err(MergeError::OtherHandout));
    assert_eq!(ours.merge(&with(&Notebook::new(), [add(1, "1")])), Err(MergeError::OtherHandout));
    assert_eq!(Notebook::new().merge(&ours), Err(MergeError::OtherHandout));
    // Prepared as this one was, and handed out anew.
    let layer = handed_out().log().len();
    let unfinished = Notebook::from_log(ours.log()[..layer - 1].to_vec()).unwrap();
    assert_eq!(ours.merge(&with(&unfinished, [add(5, "1")])), Err(MergeError::OtherHandout));
    // Taken from it, with one of the teacher's entries changed.
    let mut log = of("b", [add(5, "40")]).log().to_vec();
    log[2].edit = add(2, "11");
    let changed = Notebook::from_log(log).unwrap();
    assert_eq!(ours.merge(&changed), Err(MergeError::Changed { entries: layer }));
    let point = of("b", [add(5, "1")]);
    assert_eq!(ours.merge(&ours), Err(MergeError::NothingNew));
    assert_eq!(point.merge(&handed_out()), Err(MergeError::NothingNew));
    let marked =
        |mark| with(&with(&Notebook::new(), [add(1, "1")]), [Edit::SetDecimalMark(mark), add(2, "2")]);
    let (comma, dot) =
        (marked(crate::quantity::DecimalMark::Comma), marked(crate::quantity::DecimalMark::Point));
    assert_eq!(comma.merge(&dot), Err(MergeError::DecimalMark));
}

/// A file that claims edits of the teacher's is none: it is refused where it is read, as is what fixed pieces refuse.
#[test]
fn a_partner_can_not_claim_to_be_the_teacher() {
    let theirs = of("b", [add(5, "30")]);
    for claimed in [
        r#"{"set_title":"Mine"}"#,
        r#"{"set_piece":["title","open"]}"#,
        r#""hand_out""#,
        r#"{"together":[{"set_task":[4,"line","words","Easier?"]}]}"#,
    ] {
        let text = write(&theirs).replace("\n]}\n", &format!(",\n{{\"edit\":{claimed}}}\n]}}\n"));
        assert!(matches!(read(&text), Err(FileError::BadEntry { .. })), "{claimed} was taken");
    }
}

/// The only time base that there was stays the one by which a row is read that names none.
#[test]
fn a_second_time_base_changes_no_reading() {
    let setting = |id: SettingId, time: &str| {
        Edit::SetSetting(Setting { id, time_per_division: time.into(), uncertainty: String::new() })
    };
    let begun = with(&Notebook::new(), [setting(1, "10"), add(2, "10"), add(3, "20")]).hand_out("").unwrap();
    let ours = with(&begun, [cell(2, Cell::EdgeA, "1"), add(4, "30")]);
    let theirs = with(
        &begun,
        [cell(3, Cell::EdgeA, "2"), setting(4, "5"), add(5, "40"), cell(5, Cell::TimeBase, "5")],
    );
    let merged = without_clash(&ours, &theirs);
    let bases: Vec<&str> = merged.state().rows.iter().map(|row| row.text(Cell::TimeBase)).collect();
    assert_eq!(bases, ["10", "10", "10", "5"]);
    let back = without_clash(&theirs, &merged);
    let bases: Vec<&str> = back.state().rows.iter().map(|row| row.text(Cell::TimeBase)).collect();
    assert_eq!(bases, ["10", "10", "5", "10"]);
}

#[test]
fn undone_a_merge_can_be_done_again() {
    let (ours, theirs) = (of("a", [add(5, "30")]), of("b", [add(5, "40")]));
    let undone = with(&without_clash(&ours, &theirs), [Edit::Undo]);
    assert_eq!(readings(&without_clash(&undone, &theirs)), ["10", "20", "30", "40"]);
}

/// As the page's history has it: the digest before it, a line end, the entry.
#[test]
fn the_merge_names_the_last_digest_of_the_partner() {
    let theirs = of("b", [add(5, "30")]);
    let log = of("a", []).merge(&theirs).unwrap().log;
    let digest = theirs.log().iter().fold(String::new(), |before, entry| {
        let text = format!("{before}\n{}", serde_json::to_string(entry).unwrap());
        crate::bundle::sha256_hex(text.as_bytes())
    });
    assert_eq!((log.entries as usize, &log.digest), (theirs.log().len(), &digest));
    assert_eq!(chain(theirs.log()).last(), Some(&digest));
    assert_eq!(log.numbers, [(5, 5)]);
}

/// What a person does, on whatever stands there.
#[derive(Clone, Debug)]
enum Act {
    Row(String),
    Cell(usize, Cell, String),
    Strike(usize),
    Field(BenchField, String),
    Shared(Option<usize>, String),
    Unshare(usize),
    Rail,
    RailName(usize, String),
    Unrail(usize),
    Answer(String),
}

impl Act {
    /// The edit that does it; none where nothing of its kind stands there.
    fn edit(&self, page: &NotebookState) -> Option<Edit> {
        let pick = |ids: Vec<u32>, which: usize| ids.get(which.checked_rem(ids.len())?).copied();
        let row = |which| pick(page.rows.iter().skip(1).map(|row| row.id).collect(), which);
        let error = |which| pick(page.shared.iter().map(|error| error.id).collect(), which);
        let rail = |which| pick(page.rails.iter().map(|rail| rail.id).collect(), which);
        Some(match self {
            Self::Row(text) => add(page.new_number(), text),
            Self::Cell(which, of, text) => cell(row(*which)?, *of, text),
            Self::Strike(which) => strike(row(*which)?),
            Self::Field(field, text) => set(*field, text),
            Self::Shared(None, text) => shared(page.new_number(), text),
            Self::Shared(Some(which), text) => shared(error(*which)?, text),
            Self::Unshare(which) => Edit::RemoveShared(error(*which)?),
            Self::Rail => Edit::AddRail(page.new_number()),
            Self::RailName(which, text) => {
                Edit::SetRail { rail: rail(*which)?, field: RailField::Name, text: text.clone() }
            }
            Self::Unrail(which) => Edit::RemoveRail(rail(*which)?),
            Self::Answer(text) => Edit::Answer(4, text.clone()),
        })
    }
}

fn acts() -> impl Strategy<Value = Vec<Act>> {
    let text = || "[0-9]{1,2}";
    let field =
        prop_oneof![Just(BenchField::Aim), Just(BenchField::Temperature), Just(BenchField::EdgeHalfWidth)];
    let cells = prop_oneof![Just(Cell::Reading), Just(Cell::EdgeA), Just(Cell::Remark)];
    let act = prop_oneof![
        text().prop_map(Act::Row),
        (0..9_usize, cells, text()).prop_map(|(which, cell, text)| Act::Cell(which, cell, text)),
        (0..9_usize).prop_map(Act::Strike),
        (field, text()).prop_map(|(field, text)| Act::Field(field, text)),
        (proptest::option::of(0..9_usize), text()).prop_map(|(which, text)| Act::Shared(which, text)),
        (0..9_usize).prop_map(Act::Unshare),
        Just(Act::Rail),
        (0..9_usize, text()).prop_map(|(which, text)| Act::RailName(which, text)),
        (0..9_usize).prop_map(Act::Unrail),
        text().prop_map(Act::Answer),
    ];
    proptest::collection::vec(act, 0..9)
}

fn act(notebook: &mut Notebook, acts: &[Act]) {
    for act in acts {
        if let Some(edit) = act.edit(notebook.state()) {
            notebook.apply(edit, AT).unwrap();
        }
    }
}

/// Everything that was entered, with no number and in no order but that of rails.
fn entered(notebook: &Notebook) -> (Vec<String>, String) {
    let mut page = notebook.state().clone();
    write_out(&mut page, &NotebookState::default());
    let row = |row: &Row| format!("{:?} {:?} {:?}", row.cells, row.evidence, row.struck);
    let mut all: Vec<String> = page.rows.iter().map(row).collect();
    all.extend(page.shared.iter().map(|error| format!("{:?}", SharedError { id: 0, ..error.clone() })));
    all.sort();
    let rails: Vec<_> = page.rails.iter().map(|rail| &rail.texts).collect();
    (all, format!("{rails:?} {:?} {:?}", page.bench, page.handout.tasks))
}

proptest! {
    /// Each takes the other's, whatever both did and whichever side of a clash is chosen: then both have the same, and
    /// nothing is new in either.
    #[test]
    fn merging_both_ways_ends_alike(
        [mine, more, theirs, theirs_more] in [acts(), acts(), acts(), acts()],
        undo in any::<[bool; 2]>(),
        choice in any::<[bool; 2]>(),
    ) {
        let side = |name, acts: &[Act], undo: bool| {
            let mut notebook = of(name, []);
            act(&mut notebook, acts);
            if undo {
                notebook.apply(Edit::Undo, AT).unwrap();
            }
            notebook
        };
        let merge = |ours: &mut Notebook, theirs: &Notebook, take: Option<bool>| match ours.merge(theirs) {
            Ok(_) => *ours = confirmed(ours, theirs, |clash| match take {
                Some(true) => clash.theirs.clone(),
                Some(false) => vec![],
                None => panic!("{clash:?} was settled"),
            }),
            Err(why) => assert_eq!(why, MergeError::NothingNew),
        };
        let (mut a, mut b) = (side("a", &mine, undo[0]), side("b", &theirs, undo[1]));
        let held: usize = [&a, &b].map(|side| side.state().rows.len()).iter().sum();
        merge(&mut a, &b, Some(choice[0]));
        prop_assert_eq!(a.state().rows.len(), held - 2, "no row is lost, and none comes twice");
        act(&mut a, &more);
        act(&mut b, &theirs_more);
        merge(&mut b, &a, Some(choice[1]));
        merge(&mut a, &b, None);
        prop_assert_eq!(entered(&a), entered(&b));
        prop_assert_eq!(a.merge(&b), Err(MergeError::NothingNew));
        prop_assert_eq!(b.merge(&a), Err(MergeError::NothingNew));
        prop_assert_eq!(read(&write(&a)).unwrap(), a);
    }
}
