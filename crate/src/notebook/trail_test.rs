//! Which entry gave a number, and how far two logs go the same way.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::super::*;
use super::{Givers, Lookup, Trail, chain, trail_steps};

fn log(edits: Vec<Edit>) -> Vec<LogEntry> {
    edits.into_iter().map(|edit| LogEntry { at: String::new(), edit }).collect()
}

fn title(text: &str) -> Edit {
    Edit::SetTitle(text.into())
}

#[test]
fn a_number_is_of_the_last_entry_that_gave_it() {
    let group = Edit::Together(vec![Edit::AddRail(2), Edit::AddRail(4)]);
    let edits =
        vec![Edit::AddRail(1), group, Edit::Undo, Edit::AddRail(2), title("a"), Edit::Undo, Edit::Redo];
    let log = log(edits);
    let steps = trail_steps(&log, &chain(&log));
    assert_eq!(steps.iter().map(|step| step.0).collect::<Vec<_>>(), [1, 4, 1, 2, 2, 2, 2]);
    let givers = Givers::on(Trail::whole(&steps));
    let given: Vec<usize> = [1, 2].into_iter().map(|number| givers.of(number).unwrap().before).collect();
    assert_eq!(given, [0, 3]);
    assert_eq!(givers.of(3), None, "it was taken back");
    let part = Givers::on(Trail { before: 2, steps: &steps[2..] });
    assert_eq!(part.of(2), givers.of(2), "a part of it tells the same");
    assert_eq!(Givers::on(Trail { before: 0, steps: &[] }).of(1), None);
}

#[test]
fn what_has_a_key_comes_in_the_order_in_which_it_was_handed_over() {
    let lookup = Lookup::of(vec![([2, 0, 0], 7), ([1, 0, 9], 8), ([2, 0, 0], 6), ([1, 0, 9], 8)]);
    assert_eq!(lookup.all([2, 0, 0]).collect::<Vec<_>>(), [7, 6]);
    assert_eq!(lookup.all([1, 0, 0]).count(), 0);
    assert_eq!(lookup.keys().collect::<Vec<_>>(), [[1, 0, 9], [2, 0, 0]]);
}

#[test]
fn a_trail_is_left_where_the_first_entry_is_another() {
    let stem = vec![Edit::AddRail(1), title("a")];
    let of = |edits: Vec<Edit>| {
        let log = log([stem.clone(), edits].concat());
        trail_steps(&log, &chain(&log))
    };
    let (one, other) =
        (of(vec![title("b"), title("c"), title("d")]), of(vec![title("b"), title("e"), title("d")]));
    let kept = Trail { before: 2, steps: &one[2..] };
    assert_eq!(kept.along(&other), 3);
    assert_eq!((kept.along(&one), kept.along(&one[..4])), (5, 4));
    assert_eq!(kept.along(&of(vec![title("x"), title("c")])), 0, "it never was on it");
    assert_eq!((kept.along(&one[..2]), kept.along(&[])), (0, 0));
    let merged = |entries: usize| MergedLog {
        entries: u32::try_from(entries).unwrap(),
        trail: one[2..entries].to_vec(),
        ..MergedLog::default()
    };
    assert!(kept.covers(&merged(5)) && kept.covers(&merged(3)));
    assert!(!kept.covers(&MergedLog { trail: other[2..].to_vec(), ..merged(5) }));
}
