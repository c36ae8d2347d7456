//! Which entry gave a number, and how far two logs go the same way.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::super::*;
use super::{Trail, chain, steps};

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
    let steps = steps(&log, &chain(&log));
    assert_eq!(steps.iter().map(|step| step.0).collect::<Vec<_>>(), [1, 4, 1, 2, 2, 2, 2]);
    let trail = Trail::whole(&steps);
    let given: Vec<usize> = [1, 2].into_iter().map(|number| trail.origin(number).unwrap().before).collect();
    assert_eq!(given, [0, 3]);
    assert_eq!(trail.origin(3), None, "it was taken back");
    assert_eq!(
        Trail { before: 2, steps: &steps[2..] }.origin(2),
        trail.origin(2),
        "a part of it tells the same"
    );
}

#[test]
fn a_trail_is_left_where_the_first_entry_is_another() {
    let stem = vec![Edit::AddRail(1), title("a")];
    let of = |edits: Vec<Edit>| {
        let log = log([stem.clone(), edits].concat());
        steps(&log, &chain(&log))
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
