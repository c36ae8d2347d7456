//! Files that are merged again: by two, by three in whatever order, where somebody went on from an older one, and what the
//! first builds kept of a merge.

use proptest::prelude::*;

use super::super::super::*;
use super::{add, cell, chain, confirmed, of, readings, set, with, without_clash};

#[test]
fn a_partner_who_went_on_brings_only_what_is_new() {
    let ours = of("a", [add(5, "30")]);
    let first = of("b", [add(5, "40"), set(BenchField::Method, "before")]);
    let merged = without_clash(&ours, &first);
    assert_eq!(merged.merge(&first), Err(MergeError::NothingNew));
    let later = with(&first, [cell(5, Cell::EdgeA, "4"), add(6, "50"), set(BenchField::Method, "after")]);
    let again = without_clash(&merged, &later);
    assert_eq!(readings(&again), ["10", "20", "30", "40", "50"]);
    assert_eq!(again.state().rows[3].text(Cell::EdgeA), "4");
    assert_eq!(again.state().text(BenchField::Method), "after");
    // What an older file of it holds is here.
    assert_eq!(again.merge(&first), Err(MergeError::NothingNew));
    // One of its entries is another one now: what was begun after it is told apart from what was merged, and that is said.
    let mut log = later.log().to_vec();
    let place = first.log().len() - 1;
    log[place].edit = set(BenchField::Method, "never");
    let changed = Notebook::from_log(log).unwrap();
    let merge = again.merge(&changed).unwrap();
    assert_eq!(merge.parted, Some(u32::try_from(place).unwrap()));
    assert!(matches!(merge.taken.as_slice(), [Edit::AddRow { .. }]), "{:?}", merge.taken);
    // What was merged here stands in the partner's log as ours does.
    let theirs = without_clash(&later, &again);
    assert_eq!(again.merge(&theirs), Err(MergeError::NothingNew));
    // An older file of ours gets what was done in the later one by way of the partner.
    let ours = with(&ours, [add(6, "60")]);
    let merge = ours.merge(&theirs).unwrap();
    assert_eq!((merge.parted, merge.behind), (None, Some(u32::try_from(ours.log().len() - 1).unwrap())));
    assert_eq!(readings(&without_clash(&ours, &theirs)), ["10", "20", "30", "60", "40", "50"]);
}

/// What the first builds wrote of a merge is completed from the log that was merged, or refused.
#[test]
fn a_merge_of_the_first_builds_is_completed_or_refused() {
    let early = |notebook: &Notebook| {
        let mut log = notebook.log().to_vec();
        let Some(Edit::Together(edits)) = log.last_mut().map(|entry| &mut entry.edit) else {
            panic!("no merge")
        };
        for edit in edits {
            if let Edit::Merged(log) = edit {
                log.trail.clear();
            }
        }
        Notebook::from_log(log).unwrap()
    };
    let (a, b, c) = (of("a", [add(5, "a")]), of("b", [add(5, "b")]), of("c", [add(5, "c")]));
    let merged = early(&without_clash(&a, &b));
    assert!(!write(&merged).contains("trail"), "as it was written then");
    assert_eq!(read(&write(&merged)).unwrap(), merged);
    let more = with(&b, [add(6, "more")]);
    assert_eq!(readings(&without_clash(&merged, &more)), ["10", "20", "a", "b", "more"]);
    assert_eq!(merged.merge(&c), Err(MergeError::Early));
    assert_eq!(c.merge(&merged), Err(MergeError::Early));
    let gone = Notebook::from_log(b.log()[..b.log().len() - 1].to_vec()).unwrap();
    assert_eq!(
        merged.merge(&with(&gone, [add(5, "x")])),
        Err(MergeError::Early),
        "it left the log that was merged"
    );
}

/// What a file claims of merges is looked through in time, however much it is: by looking through all of it for each thing it
/// would take 2·10¹⁰ steps, some tens of seconds.
#[test]
fn a_file_that_claims_much_is_merged_in_time() {
    let many = 200_000;
    let log = MergedLog {
        entries: many,
        digest: "d".repeat(64),
        own: "0".repeat(64),
        people: String::new(),
        numbers: (1..=many).map(|there| (there, 5)).collect(),
        trail: (0..many).map(|place| (place, place)).collect(),
    };
    let (ours, theirs) = (of("a", [add(5, "30")]), of("b", [add(5, "40"), Edit::Merged(log)]));
    let begun = std::time::Instant::now();
    let merged = without_clash(&ours, &theirs);
    assert_eq!(readings(&merged), ["10", "20", "30", "40"]);
    assert_eq!(merged.merge(&theirs), Err(MergeError::NothingNew));
    assert!(begun.elapsed().as_secs() < 10, "it took {:?}", begun.elapsed());
}

/// Nor are logs completed without end, which would fill the memory.
#[test]
fn a_file_that_claims_many_merges_of_the_first_builds_is_refused() {
    let ours = of("a", [add(5, "30")]);
    let digests = chain(ours.log());
    let claimed = |stem: usize| MergedLog {
        entries: u32::try_from(digests.len()).unwrap(),
        digest: digests.last().cloned().unwrap_or_default(),
        own: digests[stem].clone(),
        ..MergedLog::default()
    };
    let stem = super::handed_out().log().len();
    let theirs = |claims: usize| {
        let claims = vec![Edit::Merged(claimed(stem)); claims];
        of("b", [add(5, "40"), Edit::Together(claims)])
    };
    assert_eq!(readings(&without_clash(&ours, &theirs(2))), ["10", "20", "30", "40"]);
    assert_eq!(ours.merge(&theirs(30_000)), Err(MergeError::Early));
}

/// Where both merged what the other had at the same time, the partner has ours of then.
#[test]
fn what_was_taken_back_since_does_not_come_back_unasked() {
    let air = |text| set(BenchField::Temperature, text);
    let (a, b) = (of("a", [air("20")]), of("b", []));
    let (ours, theirs) = (with(&a, [add(5, "30")]), with(&b, [add(5, "40")]));
    let (ours, theirs) = (without_clash(&ours, &theirs), without_clash(&theirs, &ours));
    let merge = with(&ours, [air("")]).merge(&theirs).unwrap();
    assert_eq!(merge.clashes, [Clash { ours: vec![air("")], theirs: vec![air("20")], both: vec![] }]);
}

#[test]
fn a_third_notebook_that_both_merged_does_not_come_twice() {
    let [a, b, c] = ["a", "b", "c"].map(|name| of(name, [add(5, name)]));
    let (ab, cb) = (without_clash(&a, &b), without_clash(&c, &b));
    let all = without_clash(&ab, &cb);
    assert_eq!(readings(&all), ["10", "20", "a", "b", "c"]);
    assert_eq!(all.merge(&b), Err(MergeError::NothingNew));
    // What came by way of another is known, too.
    let by_way = without_clash(&a, &cb);
    assert_eq!(by_way.merge(&b), Err(MergeError::NothingNew));
    // `cb` goes on from it.
    assert_eq!(by_way.merge(&c), Err(MergeError::NothingNew));
}

/// A third person opens an older file of a partner's and goes on in it.
#[test]
fn who_went_on_from_an_older_file_is_merged_too() {
    let method = |text| set(BenchField::Method, text);
    let begun = of("b", [add(5, "b"), method("begun")]);
    let later = with(&begun, [add(6, "later"), method("later")]);
    let other = with(&begun, [add(6, "other"), set(BenchField::Aim, "c")]);
    let ours = without_clash(&of("a", [add(5, "a")]), &later);
    let merge = ours.merge(&other).unwrap();
    assert_eq!((merge.parted, merge.clashes), (Some(u32::try_from(begun.log().len()).unwrap()), vec![]));
    let all = without_clash(&ours, &other);
    assert_eq!(readings(&all), ["10", "20", "a", "b", "later", "other"]);
    let page = all.state();
    assert_eq!((page.text(BenchField::Method), page.text(BenchField::Aim)), ("later", "c"));
    for known in [&begun, &later, &other, &ours] {
        assert_eq!(all.merge(known), Err(MergeError::NothingNew));
    }
    // The one who went on gets the others' by way of all, and neither their own nor what they began with twice.
    let back = without_clash(&other, &all);
    assert_eq!(readings(&back), ["10", "20", "b", "other", "a", "later"]);
    let again = without_clash(&later, &back);
    assert_eq!(readings(&again), ["10", "20", "b", "later", "other", "a"]);
}

/// What one of three does: adds a row, changes the first one, merges a file of another's, goes on from an older file of
/// their own, or from one of another's.
#[derive(Clone, Debug)]
enum Turn {
    Row(usize),
    Edge(usize, String),
    Merge(usize, usize, bool),
    Older(usize, usize),
}

fn turns() -> impl Strategy<Value = Vec<Turn>> {
    let turn = prop_oneof![
        3 => (0..3_usize).prop_map(Turn::Row),
        1 => (0..3_usize, "[0-9]").prop_map(|(who, text)| Turn::Edge(who, text)),
        4 => (0..3_usize, any::<usize>(), any::<bool>()).prop_map(|(who, file, take)| Turn::Merge(who, file, take)),
        1 => (0..3_usize, any::<usize>()).prop_map(|(who, file)| Turn::Older(who, file)),
    ];
    proptest::collection::vec(turn, 1..16)
}

/// Tells the entries of a turn from those of another, as the clock does: the same done at the same moment is one entry.
fn turn_of(notebook: &Notebook, place: usize) -> Notebook {
    with(notebook, [set(BenchField::Place, &place.to_string()), set(BenchField::Place, "")])
}

/// The remarks of all rows, by which these are told from one another; each is there once.
fn remarks(notebook: &Notebook) -> Vec<String> {
    let mut all: Vec<String> =
        notebook.state().rows.iter().map(|row| row.text(Cell::Remark).to_owned()).collect();
    all.sort();
    assert!(all.windows(2).all(|two| two[0].is_empty() || two[0] != two[1]), "{all:?} has a row twice");
    all
}

proptest! {
    /// Whoever of three merges whichever file of whom, in whatever order, and also where one went on from an older file:
    /// it is never refused, no row is lost and none comes twice, and what was merged is not new any more.
    #[test]
    fn three_merge_in_any_order(turns in turns()) {
        let mut people = ["a", "b", "c"].map(|name| of(name, []));
        let mut files: Vec<Notebook> = people.to_vec();
        for (place, turn) in turns.into_iter().enumerate() {
            let who = match turn {
                Turn::Row(who) => {
                    let row = people[who].state().new_number();
                    people[who] = turn_of(&people[who], place);
                    people[who] = with(&people[who], [add(row, "1"), cell(row, Cell::Remark, &format!("row {place}"))]);
                    who
                }
                Turn::Edge(who, text) => {
                    people[who] = with(&turn_of(&people[who], place), [cell(2, Cell::EdgeA, &text)]);
                    who
                }
                Turn::Older(who, file) => {
                    people[who] = files[file % files.len()].clone();
                    who
                }
                Turn::Merge(who, file, take) => {
                    let theirs = &files[file % files.len()];
                    let expected = [remarks(&people[who]), remarks(theirs)].concat();
                    match people[who].merge(theirs) {
                        Ok(_) => {
                            let choose = |clash: &Clash| if take { clash.theirs.clone() } else { vec![] };
                            people[who] = confirmed(&people[who], theirs, choose);
                        }
                        Err(why) => prop_assert_eq!(why, MergeError::NothingNew),
                    }
                    let held = remarks(&people[who]);
                    prop_assert!(expected.iter().all(|remark| held.contains(remark)), "{expected:?} in {held:?}");
                    prop_assert_eq!(people[who].merge(theirs), Err(MergeError::NothingNew));
                    who
                }
            };
            remarks(&people[who]);
            files.push(people[who].clone());
        }
    }
}
