//! Files of the simulated bench, with the delay known from its making.

#![expect(clippy::unwrap_used, reason = "tests")]

use slope_bench::chance::Chance;
use slope_bench::record::{Bench, Style, Units, as_text, both_as_text};
use slope_evidence::message;
use slope_evidence::stored::{Estimator, LevelOf, Remark, Traces};
use slope_evidence::trace::{ColumnUnit, DecimalMark, Detector, Flag, Layout, Role, recognise};
use slope_evidence::words::{Message, Value};

use super::{Reading, ReadingError, Wanted};

const TRUE: f64 = 6.5;

fn files() -> [String; 3] {
    let recording = Bench::default().record(TRUE, 1.0, &mut Chance::seeded(7));
    let style = Style::default();
    [as_text(&recording, 0, &style), as_text(&recording, 1, &style), both_as_text(&recording, &style)]
}

fn layout_of(text: &str) -> Layout {
    recognise("both.csv", text.as_bytes()).unwrap()
}

#[test]
fn two_files_and_one_give_the_same() {
    let [a, b, both] = files();
    let mut two = Reading::default();
    two.add("a.csv", a.as_bytes(), None, "").unwrap();
    two.add("b.csv", b.as_bytes(), None, "").unwrap();
    let mut one = Reading::default();
    let layout = one.add("both.csv", both.as_bytes(), None, "").unwrap();
    let mut again = Reading::default();
    again.add("both.csv", both.as_bytes(), Some(layout), "").unwrap();
    let mut open = Reading::default();
    let left = Layout { first_line: 0, ..layout_of(&both) };
    open.add("both.csv", both.as_bytes(), Some(left), "").unwrap();
    let measured = two.measure(&Wanted::default()).unwrap();
    for other in [&one, &again, &open] {
        let other = other.measure(&Wanted::default()).unwrap();
        assert_eq!((&measured.outcomes, &measured.walk), (&other.outcomes, &other.walk));
    }
    for outcome in &measured.outcomes {
        let delay = outcome.delay.as_ref().unwrap();
        assert!((delay.delay - TRUE).abs() < 0.3, "{:?}: {}", outcome.method, delay.delay);
    }
}

/// What a person stated of a file goes with what was measured by it, so that it is measured so again wherever that is.
#[test]
fn a_layout_that_was_stated_is_kept() {
    let [a, b, both] = files();
    let evidence = |reading: &Reading| reading.measure(&Wanted::default()).unwrap().evidence.unwrap();
    let mut recognised = Reading::default();
    recognised.add("both.csv", both.as_bytes(), None, "").unwrap();
    assert_eq!(evidence(&recognised).layouts, Vec::<String>::new());

    let mut stated = Layout { first_line: 0, ..layout_of(&both) };
    for column in stated.columns.iter_mut().filter(|column| column.role != Role::Time) {
        (column.unit, column.unit_stated) = (ColumnUnit::Millivolt, true);
    }
    let mut reading = Reading::default();
    reading.add("both.csv", both.as_bytes(), Some(stated.clone()), "").unwrap();
    let kept = evidence(&reading);
    assert_ne!(kept, evidence(&recognised));
    let layout: Layout = serde_json::from_str(&kept.layouts[0]).unwrap();
    assert_eq!(layout, Layout { settings: vec![], ..stated });
    let text = serde_json::to_string(&kept).unwrap();
    assert_eq!(serde_json::from_str::<Traces>(&text).unwrap(), kept);
    let mut again = Reading::default();
    again.add("both.csv", both.as_bytes(), Some(layout), "").unwrap();
    assert_eq!(evidence(&again), kept);

    // Of two files one may be stated.
    let mut two = Reading::default();
    two.add("a.csv", a.as_bytes(), None, "").unwrap();
    two.add("b.csv", b.as_bytes(), Some(layout_of(&b)), "").unwrap();
    let layouts = evidence(&two).layouts;
    assert_eq!((layouts.len(), layouts[0].as_str(), layouts[1].is_empty()), (2, "", false));
}

#[test]
fn a_closer_look_takes_no_reading() {
    let [.., both] = files();
    let mut reading = Reading::default();
    reading.add("both.csv", both.as_bytes(), None, "").unwrap();
    let measured = reading.measure(&Wanted::default()).unwrap();
    let [from, to] = measured.sides[1].drawn.unwrap().region;
    let whole = reading.envelope(Detector::B, from, to, 1000).unwrap();
    assert_eq!(Some(whole), measured.sides[1].envelope);
    let closer = reading.envelope(Detector::B, from, 0.5 * (from + to), 1000).unwrap();
    assert!(closer.least.len() <= 1000 && closer.step <= measured.sides[1].envelope.as_ref().unwrap().step);
}

#[test]
fn what_is_missing_is_named() {
    let [a, b, both] = files();
    let mut reading = Reading::default();
    assert_eq!(reading.measure(&Wanted::default()), Err(ReadingError::None));
    reading.add("a.csv", a.as_bytes(), None, "").unwrap();
    assert_eq!(reading.measure(&Wanted::default()), Err(ReadingError::One { file: "a.csv".into() }));
    reading.add("b.csv", b.as_bytes(), None, "").unwrap();
    let third = reading.add("c.csv", both.as_bytes(), None, "");
    assert_eq!(third, Err(ReadingError::Third { file: "c.csv".into() }));
    let unreadable = Reading::default().add("d.csv", b"", None, "").unwrap_err().message(DecimalMark::Point);
    assert_eq!(unreadable, message!("read-file", file = "d.csv", why = message!("read-empty")));
}

/// One file with a column of times and one that only tells its interval begin at times that nothing compares: the delay would be
/// off by the whole of the first one's start. Two that tell neither are of one recorder if their steps are the same.
#[test]
fn two_files_must_tell_their_times_alike() {
    let recording = Bench::default().record(TRUE, 1.0, &mut Chance::seeded(7));
    let timed = |channel| as_text(&recording, channel, &Style::default());
    let untimed = |channel: usize, interval: &str| {
        let volts = recording.channels[channel].samples.iter().map(|volts| format!("{volts:.6}\n"));
        format!("Sample interval: {interval}\nVolts\n{}", volts.collect::<String>())
    };
    let measured = |a: &str, b: &str| {
        let mut reading = Reading::default();
        reading.add("near.csv", a.as_bytes(), None, "").unwrap();
        reading.add("far.csv", b.as_bytes(), None, "").unwrap();
        reading.measure(&Wanted::default())
    };
    let apart =
        |file: &str, other: &str| Err(ReadingError::Apart { file: file.to_owned(), other: other.to_owned() });
    assert_eq!(measured(&timed(0), &untimed(1, "0.1 ns")), apart("far.csv", "near.csv"));
    assert_eq!(measured(&untimed(0, "0.1 ns"), &timed(1)), apart("near.csv", "far.csv"));
    assert_eq!(measured(&untimed(0, "0.1 ns"), &untimed(1, "0.2 ns")), apart("near.csv", "far.csv"));
    let found = measured(&untimed(0, "0.1 ns"), &untimed(1, "0.1 ns")).unwrap();
    let delay = found.outcomes[1].delay.as_ref().unwrap().delay;
    assert!((delay - TRUE).abs() < 0.3, "{delay}");
}

/// A person who states the first line and the step says nothing of when the first sample was taken: the files do. B's begins
/// 5 ns later than A's.
#[test]
fn a_stated_step_leaves_the_start_to_the_file() {
    let recording = Bench::default().record(TRUE, 1.0, &mut Chance::seeded(7));
    let told = |channel: usize, left_out: usize| {
        let samples = recording.channels[channel].samples.iter().skip(left_out);
        let volts = samples.fold(String::new(), |text, volts| text + &format!("{volts:.6}\n"));
        let start = recording.start + left_out as f64 * recording.step;
        format!("Sample interval: {} ns\nX start: {start:.3} ns\nVolts\n{volts}", recording.step)
    };
    let mut reading = Reading::default();
    for (name, text) in [("near.csv", told(0, 0)), ("far.csv", told(1, 50))] {
        let found = layout_of(&text);
        assert!(found.start.is_some() && found.first_line == 4, "{found:?}");
        let stated = Layout { step: Some(recording.step), start: None, ..found };
        reading.add(name, text.as_bytes(), Some(stated), "").unwrap();
    }
    let found = reading.measure(&Wanted::default()).unwrap();
    let delay = found.outcomes[1].delay.as_ref().unwrap().delay;
    assert!((delay - TRUE).abs() < 0.3, "{delay}");
}

/// A trace saved twice has a delay of nought and a small uncertainty: it is no measurement.
#[test]
fn a_trace_that_is_there_twice_is_refused() {
    let [a, ..] = files();
    let mut reading = Reading::default();
    reading.add("a.csv", a.as_bytes(), None, "").unwrap();
    reading.add("b.csv", a.as_bytes(), None, "").unwrap();
    assert_eq!(reading.measure(&Wanted::default()), Err(ReadingError::Same { file: "b.csv".into() }));
}

/// What is not told in the file is told with the delay: seconds were supposed, or nanoseconds, or neither.
#[test]
fn a_unit_that_was_supposed_is_told_with_the_delay() {
    let recording = Bench::default().record(TRUE, 1.0, &mut Chance::seeded(7));
    for (units, told) in [(Units::None, true), (Units::InLabels, false), (Units::Row, false)] {
        let mut reading = Reading::default();
        let text = both_as_text(&recording, &Style { units, ..Style::default() });
        reading.add("both.csv", text.as_bytes(), None, "").unwrap();
        for outcome in reading.measure(&Wanted::default()).unwrap().outcomes {
            let edges = outcome.delay.unwrap().edges;
            assert!(edges.iter().all(|edge| edge.flags.contains(&Flag::SupposedUnit) == told), "{units:?}");
        }
    }
}

#[test]
fn a_trace_without_a_pulse_is_refused_in_words() {
    let rows = (0..400).map(|i| format!("{i},{}", f64::from(i * 37 % 11) * 1e-4));
    let lines: Vec<_> = std::iter::once("time (ns),A (V)".to_owned()).chain(rows).collect();
    let flat = lines.join("\n");
    let [_, b, _] = files();
    let mut reading = Reading::default();
    reading.add("flat.csv", flat.as_bytes(), None, "").unwrap();
    reading.add("b.csv", b.as_bytes(), None, "").unwrap();
    let measured = reading.measure(&Wanted::default()).unwrap();
    let refused = measured.outcomes[1].refused.as_ref().unwrap();
    assert_eq!(refused.detector, Detector::A);
    assert_eq!(refused.message, refused.problem.message(DecimalMark::Point));
    assert_eq!(measured.sides[0].refused.as_ref(), Some(refused));
    assert!(measured.sides[1].refused.is_none());
}

/// One file with both traces, B's light weakened.
fn weakened(light: f64) -> Reading {
    let recording = Bench::default().record(TRUE, light, &mut Chance::seeded(11));
    let text = both_as_text(&recording, &Style::default());
    let mut reading = Reading::default();
    reading.add("a 0450mm.csv", text.as_bytes(), None, &"0".repeat(64)).unwrap();
    reading
}

#[test]
fn what_is_stored_reads_back() {
    let measured = weakened(0.5).measure(&Wanted { level_of: LevelOf::Run, ..Wanted::default() }).unwrap();
    let traces = measured.evidence.as_ref().unwrap();
    let stored: Traces = serde_json::from_str(&serde_json::to_string(traces).unwrap()).unwrap();
    assert_eq!(&stored, traces);
    assert_eq!(stored.files[0].name, "a 0450mm.csv");
    assert_eq!(stored.files[0].sha256.len(), 64);
    for estimator in Estimator::ALL {
        let found = stored.delays.iter().find(|delay| delay.estimator == estimator).unwrap();
        let time = found.delay.as_ref().unwrap();
        let value: f64 = time.value.parse().unwrap();
        assert!((value - TRUE).abs() < 2.0, "{estimator:?} gives {value}");
        assert!(measured.outcomes.iter().any(|outcome| outcome.delay.as_ref().unwrap().delay == value));
    }
    let fixed = stored.delays.iter().find(|delay| delay.estimator == Estimator::FixedLevel).unwrap();
    assert!(matches!(fixed.remarks[0], Remark::Level { of: LevelOf::Run, .. }), "{:?}", fixed.remarks);
    let walk: f64 = stored.walk.unwrap().value.parse().unwrap();
    assert_eq!(walk, measured.walk.unwrap().0);
    assert_eq!(measured.refusal, None);
}

#[test]
fn what_gives_no_delay_is_refused_with_file_trace_and_sample() {
    let measured = weakened(1e-6).measure(&Wanted::default()).unwrap();
    assert!(measured.evidence.is_none());
    let refusal = measured.refusal.unwrap();
    assert_eq!(refusal.id, "trace-refused");
    assert_eq!(refusal.values.get("file"), Some(&"a 0450mm.csv".into()));
    assert_eq!(refusal.values.get("trace"), Some(&"B".into()));
    let why = refusal.values.get("why");
    let is_told = |why: &Message| why.id == "trace-no_pulse" && why.values.contains_key("sample");
    assert!(matches!(why, Some(Value::Message(why)) if is_told(why)), "{why:?}");
}
