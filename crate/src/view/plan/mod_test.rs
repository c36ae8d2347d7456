use super::*;
use crate::analysis::analyse;
use crate::notebook::{Edit, PlannedPosition};
use crate::plan::rehearsal::tests::rehearsed;
use crate::simulated::demo;
use crate::words::Value;

type Outcome = Result<(), Box<dyn std::error::Error>>;

fn seen(notebook: &Notebook) -> PlanView {
    plan_view(notebook.state(), &analyse(notebook))
}

/// What fills the first of these sentences, by its name.
fn filled(said: &[Message], name: &str) -> Result<Value, String> {
    let value = said.first().and_then(|message| message.values.get(name));
    value.cloned().ok_or(format!("{said:?} has no {name}"))
}

/// Plans what is proposed.
fn planned(notebook: &mut Notebook, proposed: &ProposedView) -> Outcome {
    for (id, (place, rows)) in (1..).zip(&proposed.places) {
        let PlaceView { rail, reading, time_base, .. } = place.clone();
        let position = PlannedPosition { id, rail, reading, time_base, repeats: rows.to_string() };
        notebook.apply(Edit::SetPosition(position), "")?;
    }
    Ok(())
}

/// What is proposed, planned, is expected to give what was said of it.
#[test]
fn proposals_keep_their_word() -> Outcome {
    let (notebook, _) = demo::typed_readings()?;
    let first = seen(&notebook);
    assert!(first.lacks.is_some() && first.offers.len() == 2 && first.next.len() == 2);
    for offer in &first.offers {
        let mut notebook = notebook.clone();
        planned(&mut notebook, offer)?;
        let view = seen(&notebook);
        let promised = offer.said.as_slice();
        for name in ["u", "rows"] {
            assert_eq!(filled(&view.expected, name)?, filled(promised, name)?);
        }
        assert_eq!(filled(&view.compared, "taken")?, 23_usize.into());
        assert!(view.lacks.is_none());
        // Asked for as many rows as are planned, the proposal stays what it was.
        let again = view.offers.first().and_then(|offer| offer.said.clone());
        assert_eq!(filled(again.as_slice(), "rows")?, filled(promised, "rows")?);
    }
    Ok(())
}

/// Tracks lie to scale between the splitter and the farthest end, and handles on them.
#[test]
fn lanes_are_to_scale() -> Outcome {
    let (mut notebook, _) = demo::typed_readings()?;
    let typed = PlannedPosition { id: 1, rail: "far".into(), reading: "135".into(), ..Default::default() };
    notebook.apply(Edit::SetPosition(typed), "")?;
    let view = seen(&notebook);
    let share = |text: &str| -> Result<f64, Box<dyn std::error::Error>> {
        Ok(text.strip_suffix('%').ok_or("no share")?.parse::<f64>()?)
    };
    let [near, .., far] = view.tracks.as_slice() else { return Err("no tracks".into()) };
    assert!(share(&near.from)?.abs() < 1e-9);
    assert_eq!(far.ends, ["0\u{a0}cm", "4.25\u{a0}m", "250\u{a0}cm", "6.75\u{a0}m"]);
    assert!((share(&far.from)? + share(&far.length)? - 100.0).abs() < 0.02);
    // The near rail is 190 cm long, the far one 250 cm.
    assert!((share(&near.length)? / share(&far.length)? - 195.0 / 250.0).abs() < 1e-3);
    assert_eq!(view.tracks.iter().map(|track| track.taken.len()).sum::<usize>(), 23);
    let place = view.positions.first().and_then(|position| position.place.clone()).ok_or("no place")?;
    assert_eq!((place.at.as_str(), place.thousandths.as_str()), ("54.00%", "540"));
    assert_eq!((place.shown.as_str(), place.rail.as_str()), ("135\u{a0}cm", "far"));
    let moving = move_view(notebook.state(), 1, To::Share(0.2));
    assert_eq!(moving.places.first().map(|(place, _)| place.reading.as_str()), Some("50"));
    assert!(moving.lacks.as_ref().is_some_and(|lacks| lacks.id == "plan-too_few"), "{moving:?}");
    Ok(())
}

#[test]
fn an_empty_notebook_says_what_to_do() {
    let view = seen(&Notebook::new());
    assert_eq!(view.refusal, Some(crate::message!("plan-no_rails")));
    assert_eq!(move_view(Notebook::new().state(), 1, To::Steps(1.0)), ProposedView::default());
}

/// The truth of a rehearsal is told when asked, and nowhere else in what the page shows.
#[test]
fn the_truth_is_told_when_asked() -> Outcome {
    let (notebook, _) = demo::typed_readings()?;
    let rehearsal = rehearsed(notebook.state(), 5)?;
    assert!(seen(&rehearsal).rehearsal && !seen(&notebook).rehearsal);
    let told = truth_view(&rehearsal);
    assert!(told.len() > 5 && truth_view(&notebook).is_empty());
    let shown = serde_json::to_string(&seen(&rehearsal))?;
    let error = told.iter().find(|error| error.id.starts_with("splice")).ok_or("no splice")?;
    let Value::Message(stated) = &error.value else { return Err("no stated uncertainty".into()) };
    let Value::Text(value) = filled(std::slice::from_ref(stated), "value")? else {
        return Err("no value".into());
    };
    assert!(!shown.contains(&value));
    Ok(())
}
