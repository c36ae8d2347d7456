//! Names of files, all invented.

use super::*;

#[track_caller]
fn told(name: &str, reading: Option<&str>, rail: Option<&str>, channel: Option<char>) {
    let named = rail_reading(name, &[]);
    assert_eq!(
        (named.reading.as_deref(), named.rail.as_deref(), named.channel),
        (reading, rail, channel),
        "{name}"
    );
}

#[test]
fn a_reading_is_written_with_the_mark_asked_for() {
    for (name, mark, written) in [
        ("B 12.5 cm.csv", DecimalMark::Comma, "12,5 cm"),
        ("B 12,5 cm.csv", DecimalMark::Comma, "12,5 cm"),
        ("B 12,5 cm.csv", DecimalMark::Point, "12.5 cm"),
    ] {
        assert_eq!(rail_reading(name, &[]).written(mark).reading.as_deref(), Some(written), "{name}");
    }
}

#[test]
fn a_reading_with_its_unit() {
    told("B 123.5 cm.csv", Some("123.5 cm"), Some("B"), None);
    told("run3_0450mm_A.txt", Some("450 mm"), None, Some('A'));
    told("rail 2 - 87,4cm - ch1.dat", Some("87,4 cm"), Some("2"), Some('A'));
    told("folder/1.25m_chB.csv", Some("1.25 m"), None, Some('B'));
    told("far rail C 0.50 m", Some("0.50 m"), Some("C"), None);
    told("12in.txt", Some("12 in"), None, None);
    told("0 mm channel 2.csv", Some("0 mm"), None, Some('B'));
    told("C:\\lab\\near 40 cm.txt", Some("40 cm"), None, None);
}

#[test]
fn a_rail_by_its_own_name() {
    let rails = ["lower", "far", "far left", "A", "2", "Über Eck"];
    let rail = |name: &str| rail_reading(name, &rails).rail;
    assert_eq!(rail("lower 69.98 cm.jpg").as_deref(), Some("lower"));
    assert_eq!(rail("20260304_LOWER-0450mm_A.csv").as_deref(), Some("lower"), "large letters or small");
    assert_eq!(rail("far left 10 cm.csv").as_deref(), Some("far left"), "the longer of two that stand there");
    assert_eq!(rail("far 10 cm.csv").as_deref(), Some("far"));
    assert_eq!(rail("über_eck 1 m.jpg").as_deref(), Some("Über Eck"));
    assert_eq!(rail("lower or far 10 cm.csv"), None, "two rails are none");
    assert_eq!(rail("slower 10 cm.csv"), None, "a part of a word is no name");
    assert_eq!(rail("10 cm A.csv"), None, "a letter behind the reading is a channel");
    assert_eq!(rail("run 2.csv"), None);
    assert_eq!(rail("rail 2 10 cm.csv").as_deref(), Some("2"));
}

#[test]
fn no_guess_without_a_unit_or_between_two() {
    told("run 12.csv", None, None, None);
    told("A.csv", None, None, Some('A'));
    told("120 cm to 140 cm.csv", None, None, None);
    told("trace.1.2.3 mm.csv", None, None, None);
    told("2024-11-05 5 mV.csv", None, None, None);
    told("", None, None, None);
    told("12 ms.csv", None, None, None);
}

#[test]
fn files_of_one_position_are_paired() {
    let names = ["10cm_A.csv", "10cm_B.csv", "20cm_B.csv", "both 30 cm.csv", "20cm_A.csv", "40cm_A.csv"];
    let pairs = pair(&names);
    let of = |a, b| Pair { a, b };
    assert_eq!(pairs, [of(0, Some(1)), of(4, Some(2)), of(3, None), of(5, None)]);
    // In other folders they are of other runs.
    assert_eq!(pair(&["x/1 cm A.csv", "y/1 cm B.csv"]), [of(0, None), of(1, None)]);
    assert_eq!(pair(&["ch1 5 mm", "ch2 5 mm"]), [of(0, Some(1))]);
    assert_eq!(pair(&["channel 2, 5 mm", "channel 1, 5 mm"]), [of(1, Some(0))]);
    assert_eq!(pair(&[]), []);
}
