//! Rails with other names in a partner's notebook: whichever rails a person chooses, each row stays with the rail that it was
//! read on, or is named.

use super::super::super::*;
use super::{add, cell, confirmed, handed_out, readings, set, with, without_clash};

fn rename(rail: RailId, name: &str) -> Edit {
    Edit::RenameRail { rail, name: name.into() }
}

/// A row with its rail.
fn row(row: RowId, reading: &str, rail: &str) -> [Edit; 2] {
    [add(row, reading), cell(row, Cell::Rail, rail)]
}

fn position(id: PositionId, rail: &str) -> Edit {
    Edit::SetPosition(PlannedPosition { id, rail: rail.into(), ..PlannedPosition::default() })
}

/// Both notebooks as they parted: rails “A” and “B”, and the first of the rows that were handed out on “A”.
fn begun() -> Notebook {
    with(&handed_out(), [Edit::AddRail(5), rename(1, "A"), rename(5, "B")])
}

/// Ours: a row and a planned position on each rail, an edge in the row on “A” that was handed out, and something of a rail
/// that the partner has otherwise.
fn ours() -> Notebook {
    let falls = Edit::SetSense { rail: 1, sense: Sense::Falls };
    let edits = [row(6, "30", "A"), row(7, "40", "b")].concat();
    with(&begun(), edits.into_iter().chain([position(8, "B"), cell(2, Cell::EdgeA, "1"), falls]))
}

fn theirs(edits: impl IntoIterator<Item = Edit>) -> Notebook {
    with(&begun(), edits)
}

/// What rows and then planned positions call their rails.
fn called(notebook: &Notebook) -> Vec<&str> {
    let page = notebook.state();
    let rows = page.rows.iter().map(|row| row.text(Cell::Rail));
    rows.chain(page.plan.iter().map(|position| position.rail.as_str())).collect()
}

fn names(notebook: &Notebook) -> Vec<String> {
    notebook.state().rails.iter().enumerate().map(|(place, rail)| rail.name_or_number(place)).collect()
}

/// The merge where the one clash, about the rails, is settled for us, and for the partner.
fn settled(ours: &Notebook, theirs: &Notebook) -> [Notebook; 2] {
    assert_eq!(ours.merge(theirs).unwrap().clashes.len(), 1);
    [confirmed(ours, theirs, |_| vec![]), confirmed(ours, theirs, |clash| clash.theirs.clone())]
}

#[test]
fn rows_follow_rails_that_the_partner_gave_each_others_names() {
    let swapped = [rename(1, "B"), rename(5, "A")].into_iter().chain(row(6, "50", "A"));
    let theirs = theirs(swapped);
    let [kept, taken] = settled(&ours(), &theirs);
    assert_eq!((names(&kept), called(&kept)), (names(&begun()), vec!["A", "", "A", "b", "B", "B"]));
    assert_eq!((names(&taken), called(&taken)), (names(&theirs), vec!["B", "", "B", "A", "A", "A"]));
    for merged in [&kept, &taken] {
        assert_eq!(readings(merged), ["10", "20", "30", "40", "50"]);
        assert_eq!(
            merged.state().rows[0].text(Cell::EdgeA),
            "1",
            "our edge in a row whose rail has another name"
        );
        assert_eq!(merged.merge(&theirs), Err(MergeError::NothingNew));
    }
    assert_eq!((kept.state().rails[0].sense, taken.state().rails[0].sense), (Sense::Falls, Sense::Grows));
    // The partner takes ours.
    let ours = ours();
    let [kept, taken] = settled(&theirs, &ours);
    assert_eq!((names(&kept), called(&kept)), (names(&theirs), vec!["B", "", "A", "B", "A", "A"]));
    assert_eq!((names(&taken), called(&taken)), (names(&ours), vec!["A", "", "B", "A", "B", "B"]));
}

#[test]
fn rows_follow_a_rail_that_the_partner_renamed() {
    let theirs = theirs([rename(1, "North")].into_iter().chain(row(6, "50", "North")));
    let [kept, taken] = settled(&ours(), &theirs);
    assert_eq!(called(&kept), ["A", "", "A", "b", "A", "B"]);
    assert_eq!(called(&taken), ["North", "", "North", "b", "North", "B"]);
}

#[test]
fn rows_follow_three_rails_that_changed_names_in_a_round() {
    let begun = with(&begun(), [Edit::AddRail(6), rename(6, "C")]);
    let rows = |first: RowId| -> Vec<Edit> {
        (first..).zip(["A", "B", "C"]).flat_map(|(id, rail)| row(id, rail, rail)).collect()
    };
    let falls = Edit::SetSense { rail: 6, sense: Sense::Falls };
    let ours = with(&begun, rows(7).into_iter().chain([falls]));
    let round = [rename(1, "x"), rename(6, "A"), rename(5, "C"), rename(1, "B")];
    let theirs = with(&begun, round.into_iter().chain(rows(7)));
    let [kept, taken] = settled(&ours, &theirs);
    assert_eq!(called(&kept), ["A", "", "A", "B", "C", "C", "A", "B"]);
    assert_eq!(called(&taken), ["B", "", "B", "C", "A", "A", "B", "C"]);
}

/// Where the partner alone changed the rails, a row that both know follows too: an edge that we typed in it is no other reading.
#[test]
fn rails_of_the_partner_that_nobody_changed_here_take_rows_along() {
    let ours = with(&begun(), [cell(2, Cell::EdgeA, "1"), cell(3, Cell::Rail, "B")]);
    let theirs = theirs([rename(1, "B"), rename(5, "A"), cell(3, Cell::EdgeA, "2")]);
    let merge = ours.merge(&theirs).unwrap();
    let [Clash { ours: here, theirs: there, .. }] = merge.clashes.as_slice() else { panic!("{merge:?}") };
    // By the partner's names, which the rails have by then.
    assert_eq!(*here, [cell(3, Cell::Rail, "A"), cell(3, Cell::EdgeA, "")]);
    assert_eq!(*there, [cell(3, Cell::Rail, ""), cell(3, Cell::EdgeA, "2")]);
    let kept = confirmed(&ours, &theirs, |_| vec![]);
    assert_eq!((names(&kept), called(&kept)), (names(&theirs), vec!["B", "A"]));
    assert_eq!(kept.state().rows[0].text(Cell::EdgeA), "1");
}

/// What a hand-out fixes of a row does not keep it from following.
#[test]
fn rows_with_fixed_positions_follow() {
    let fixed =
        [Edit::SetPiece(Piece::Positions, Rule::Fixed), Edit::AddRail(1), rename(1, "A"), add(2, "10")];
    let begun = with(&Notebook::new(), fixed.into_iter().chain([cell(2, Cell::Rail, "A"), Edit::HandOut]));
    let ours = with(&begun, [cell(2, Cell::EdgeA, "1")]);
    let theirs = with(&begun, [rename(1, "North"), add(3, "20")]);
    assert_eq!(called(&without_clash(&ours, &theirs)), ["North", "North"]);
    assert_eq!(called(&without_clash(&theirs, &ours)), ["North", ""]);
}

/// A row that states no rail goes on with the row before it, or with the only rail: it names that where the partner has another
/// rail, or has that row on another one.
#[test]
fn rows_that_state_no_rail_name_it_before_another_one_could_be_meant() {
    let ours = with(&begun(), [add(6, "30")]);
    let moved = [cell(2, Cell::Rail, "B"), rename(1, "North")];
    assert_eq!(called(&without_clash(&ours, &theirs(moved))), ["B", "", "North"]);
    assert_eq!(called(&without_clash(&ours, &theirs([cell(3, Cell::EdgeA, "2")]))), ["A", "", ""]);
    let begun = with(&Notebook::new(), [Edit::AddRail(1), Edit::HandOut]);
    let ours = with(&begun, [add(2, "30")]);
    let theirs = with(&begun, [Edit::AddRail(2), add(3, "40"), cell(3, Cell::Rail, "2")]);
    assert_eq!(called(&without_clash(&ours, &theirs)), ["1", "2"]);
    assert_eq!(called(&without_clash(&theirs, &ours)), ["2", "1"]);
    // The only rail is meant, whatever the row before it calls one that is not there.
    let gone = with(&begun, [add(2, "30"), cell(2, Cell::Rail, "far"), add(3, "40")]);
    let theirs = with(&begun, [Edit::AddRail(2), rename(2, "far")]);
    assert_eq!(called(&without_clash(&gone, &theirs)), ["far", "1"]);
}

/// Both laid a third rail and called it alike: whether it is the same one nobody can tell, so its rows are named.
#[test]
fn rows_on_a_rail_of_one_partner_alone_are_named_where_the_other_has_one_called_so() {
    let laid = |who: &str, last: [Edit; 2]| {
        let begins = [set(BenchField::Place, who), Edit::AddRail(6), rename(6, "C")].into_iter();
        with(&begun(), begins.chain(row(7, "30", "C")).chain(last).chain([set(BenchField::Place, "")]))
    };
    let (ours, theirs) = (laid("a", row(8, "40", "A")), laid("b", row(8, "50", "A")));
    let merge = ours.merge(&theirs).unwrap();
    let new = merge
        .taken
        .iter()
        .find_map(|edit| if let Edit::AddRow { row, .. } = edit { Some(*row) } else { None });
    assert_eq!(merge.astray.rows, [Some(7), new].into_iter().flatten().collect::<Vec<_>>());
    let [kept, taken] = settled(&ours, &theirs);
    for merged in [kept, taken] {
        assert_eq!(called(&merged), ["A", "", "C", "A", "C", "A"]);
    }
    let theirs = with(&begun(), [rename(1, "North")].into_iter().chain(row(7, "30", "B")));
    assert_eq!(ours.merge(&theirs).unwrap().astray, Astray::default(), "each follows its rail");
}

/// The partner called a rail otherwise, and laid another one by its name: rows of ours and of theirs that say the same are on
/// different rails.
#[test]
fn a_rail_of_the_partner_alone_keeps_its_rows_where_it_is_chosen() {
    let laid = [rename(5, "E"), Edit::AddRail(6), rename(6, "B")];
    let theirs = theirs(laid.into_iter().chain(row(7, "50", "B")));
    let merge = ours().merge(&theirs).unwrap();
    assert_eq!(merge.astray.rows.len(), 1, "should ours be kept, it may be read on our B: {merge:?}");
    let [_, taken] = settled(&ours(), &theirs);
    assert_eq!((names(&taken), called(&taken)), (names(&theirs), vec!["A", "", "A", "E", "B", "E"]));
}

/// So does a position that is planned on it. Where our rails are kept it may be planned on ours of that name, and is told.
#[test]
fn a_rail_of_the_partner_alone_keeps_its_positions_where_it_is_chosen() {
    let theirs = theirs([rename(5, "E"), Edit::AddRail(6), rename(6, "B"), position(7, "B")]);
    let told = ours().merge(&theirs).unwrap().astray;
    assert_eq!(told.rows, [] as [RowId; 0]);
    assert_eq!(told.positions.iter().map(|one| one.rail.as_str()).collect::<Vec<_>>(), ["B"]);
    let [kept, taken] = settled(&ours(), &theirs);
    assert_eq!(called(&kept), ["A", "", "A", "b", "B", "B"]);
    assert_eq!((names(&taken), called(&taken)), (names(&theirs), vec!["A", "", "A", "E", "E", "B"]));
    assert_eq!(taken.merge(&theirs), Err(MergeError::NothingNew));
}

/// So do a row and a position that both know, and that the partner alone moved to it.
#[test]
fn what_the_partner_moved_to_a_rail_of_theirs_alone_stays_there_where_it_is_chosen() {
    let begun = with(&begun(), [position(6, "A")]);
    let ours = with(&begun, [Edit::SetSense { rail: 1, sense: Sense::Falls }]);
    let laid = [rename(5, "E"), Edit::AddRail(7), rename(7, "B"), cell(3, Cell::Rail, "B"), position(6, "B")];
    let theirs = with(&begun, laid);
    let told = ours.merge(&theirs).unwrap().astray;
    assert_eq!((told.rows, told.positions), (vec![3], theirs.state().plan.clone()));
    let [_, taken] = settled(&ours, &theirs);
    assert_eq!((names(&taken), called(&taken)), (names(&theirs), vec!["A", "B", "B"]));
    assert_eq!(taken.merge(&theirs), Err(MergeError::NothingNew));
}

/// A position follows rails that were given each other's names, from whichever side it comes.
#[test]
fn positions_follow_rails_that_the_partner_gave_each_others_names() {
    let theirs = theirs([rename(1, "B"), rename(5, "A"), position(6, "A")]);
    let [kept, taken] = settled(&ours(), &theirs);
    assert_eq!((names(&kept), called(&kept)), (names(&begun()), vec!["A", "", "A", "b", "B", "B"]));
    assert_eq!((names(&taken), called(&taken)), (names(&theirs), vec!["B", "", "B", "A", "A", "A"]));
    assert_eq!(ours().merge(&theirs).unwrap().astray, Astray::default());
}
