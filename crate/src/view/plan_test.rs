use super::*;
use crate::analysis::analyse;
use crate::notebook::BenchField;
use crate::plan::rehearsal::rehearse;
use crate::synth::demo;

type Outcome = Result<(), Box<dyn std::error::Error>>;

fn seen(notebook: &Notebook) -> PlanView {
    plan_view(notebook.page(), &analyse(notebook))
}

/// The edits that a view offers can be done, and do what they say.
#[test]
fn what_is_offered_can_be_done() -> Outcome {
    let (mut notebook, _) = demo::typed_readings()?;
    let rows = notebook.page().rows.len();
    let first = seen(&notebook);
    let spread = first.offers.iter().find(|offer| offer.id == "spread").ok_or("no offer")?;
    notebook.apply(spread.edit.clone().ok_or("no edit")?, "")?;
    let planned = seen(&notebook);
    assert!(planned.summary.starts_with("Expected: u(v)/v = "), "{}", planned.summary);
    assert!(planned.compared.contains("achieved"), "{}", planned.compared);
    // Asked for as many rows as are planned, the offer is the plan.
    let again = planned.offers.iter().find(|offer| offer.id == "spread").ok_or("no offer")?;
    let shown = planned.figures.iter().find(|figure| figure.id == "expected").ok_or("no figure")?;
    assert!(again.text.contains(&shown.value), "{} against {}", again.text, shown.value);

    let ends = planned.offers.iter().find(|offer| offer.id == "ends").ok_or("no offer")?;
    let mut at_ends = notebook.clone();
    at_ends.apply(ends.edit.clone().ok_or("no edit")?, "")?;
    assert_eq!(at_ends.page().plan.len(), 2);

    let positions = notebook.page().plan.len();
    notebook.apply(planned.take.ok_or("nothing to take")?, "")?;
    assert_eq!(notebook.page().rows.len(), rows + positions);
    for id in ["best", "honest"] {
        let next = seen(&notebook).next.into_iter().find(|next| next.id == id).ok_or("no next reading")?;
        notebook.apply(next.row.ok_or("no row")?, "")?;
    }
    assert_eq!(notebook.page().rows.len(), rows + positions + 2);
    let next = seen(&notebook).next;
    notebook.apply(next.first().and_then(|next| next.position.clone()).ok_or("no position")?, "")?;
    assert_eq!(notebook.page().plan.len(), positions + 1);
    notebook.apply(Edit::Undo, "")?;
    assert_eq!(notebook.page().plan.len(), positions);
    Ok(())
}

/// Lanes lie to scale between the splitter and the farthest end, and handles on them.
#[test]
fn lanes_are_to_scale() -> Outcome {
    let (mut notebook, _) = demo::typed_readings()?;
    let planned = PlannedPosition { id: 1, rail: "far".into(), reading: "135".into(), ..Default::default() };
    notebook.apply(Edit::SetPosition(planned), "")?;
    let view = seen(&notebook);
    let share = |text: &str| -> Result<f64, Box<dyn std::error::Error>> {
        Ok(text.strip_suffix('%').ok_or("no share")?.parse::<f64>()?)
    };
    let [near, .., far] = view.lanes.as_slice() else { return Err("no lanes".into()) };
    assert_eq!(share(&near.from)?, 0.0);
    assert!((share(&far.from)? + share(&far.length)? - 100.0).abs() < 0.02);
    // The near rail is 190 cm long, the far one 250 cm.
    assert!((share(&near.length)? / share(&far.length)? - 190.0 / 250.0).abs() < 1e-3);
    assert!(view.lanes.iter().map(|lane| lane.taken.len()).sum::<usize>() == 23);
    let position = view.positions.first().ok_or("no position")?;
    assert_eq!((position.at.as_str(), position.thousandths.as_str()), ("54.00%", "540"));
    assert!(position.spoken.starts_with("135 cm on rail far, "), "{}", position.spoken);
    let moving = move_view(notebook.page(), 1, To::Share(0.2));
    assert_eq!(moving.reading, "50");
    assert!(moving.expected.contains("two positions"), "{}", moving.expected);
    Ok(())
}

#[test]
fn an_empty_notebook_says_what_to_do() {
    let view = seen(&Notebook::new());
    assert!(view.refusal.contains("describe a rail"), "{}", view.refusal);
    assert_eq!(move_view(Notebook::new().page(), 1, To::Steps(1.0)), MoveView::default());
}

/// The truth of a rehearsal is told when asked, and nowhere else in what the page shows.
#[test]
fn the_truth_is_told_when_asked() -> Outcome {
    let (mut notebook, _) = demo::typed_readings()?;
    notebook.apply(Edit::SetBench { field: BenchField::PulseRate, text: String::new() }, "")?;
    let rehearsed = rehearse(notebook.page(), "Rehearsal", 5).map_err(|refusal| refusal.message)?;
    assert!(seen(&rehearsed).rehearsal && !seen(&notebook).rehearsal);
    let told = truth_view(&rehearsed);
    assert!(told.len() > 5 && truth_view(&notebook).is_empty());
    let shown = serde_json::to_string(&seen(&rehearsed))?;
    let error = told.iter().find(|figure| figure.id.starts_with("splice")).ok_or("no splice")?;
    assert!(!shown.contains(&error.value));
    Ok(())
}
