use super::*;
use crate::analysis::{C0, analyse};
use crate::notebook::{
    ActsOn, Beam, BenchField, Edit, Effect, ErrorShape, Estimator, Path, RailField, Sense, SharedError,
    Splice, read as open, write,
};
use crate::simulated::demo;
use crate::words::in_english;

type Outcome = Result<(), Box<dyn std::error::Error>>;

/// The notebook of a rehearsal by the page's own plan.
pub(crate) fn rehearsed(page: &NotebookState, seed: u32) -> Result<Notebook, Box<dyn std::error::Error>> {
    let edit = rehearsal(page, String::new(), page.plan.clone(), seed).map_err(|refusal| refusal.id)?;
    let mut notebook = Notebook::new();
    notebook.apply(edit, "")?;
    Ok(notebook)
}

/// The bench of the demo with everything that can err: a mirror, a beam, a time base of some per cent, a free step.
fn rich() -> Result<Notebook, Box<dyn std::error::Error>> {
    let mut notebook = demo::typed_readings()?.0;
    notebook.apply(Edit::SetPath(Path::Mirror), "")?;
    let bench = [(BenchField::BeamAngle, "8"), (BenchField::TimeBaseUncertainty, "0.4 %")];
    for (field, text) in bench {
        notebook.apply(Edit::SetBench { field, text: text.into() }, "")?;
    }
    notebook.apply(Edit::SetSplice { rail: 3, splice: Splice::Free { mark: "0".into() } }, "")?;
    let jitter = SharedError {
        id: 900,
        name: "jitter".into(),
        acts_on: ActsOn::Delays,
        effect: Effect::Noise,
        rows: Scope::All,
        uncertainty: "0.03".into(),
        shape: ErrorShape::Normal,
        degrees_of_freedom: String::new(),
    };
    notebook.apply(Edit::SetShared(jitter), "")?;
    Ok(notebook)
}

/// The same seed gives the same readings, another one others; what is made opens again as any notebook does.
#[test]
fn a_seed_is_a_rehearsal() -> Outcome {
    let bench = rich()?;
    let (one, same, other) =
        (rehearsed(bench.state(), 7)?, rehearsed(bench.state(), 7)?, rehearsed(bench.state(), 8)?);
    assert_eq!(one, same);
    assert_ne!(one.state().rows, other.state().rows);
    assert_eq!(open(&write(&one))?, one);
    assert_eq!(one.state().rehearsal, Some(7));
    assert!(truth(&one).is_some() && truth(&bench).is_none());
    Ok(())
}

/// Over many seeds c misses c₀ by its stated uncertainty in the root mean square, and χ² is as large as its degrees of
/// freedom: what is drawn is what the budget lists.
#[test]
fn what_is_drawn_is_what_is_listed() -> Outcome {
    let bench = rich()?;
    let runs = 400;
    let (mut squares, mut chi, mut nu) = (0.0, 0.0, 0.0);
    for seed in 0..runs {
        let analysis = analyse(&rehearsed(bench.state(), seed)?);
        let speed = analysis.speed.map_err(|refusal| refusal.id)?;
        squares += ((speed.c - C0) / speed.u_c()).powi(2);
        let fit = analysis.line.map_err(|refusal| refusal.id)?.fit.clone();
        chi += fit.chi_square;
        nu += fit.degrees_of_freedom as f64;
    }
    // 400 squares of about one have a standard error of √(2/400) = 0.07; four of them are allowed. The air's own
    // uncertainty, in u(c) but not drawn, is of no account.
    let mean = squares / f64::from(runs);
    assert!((mean - 1.0).abs() < 0.28, "{mean}");
    // ν is about 20 a run: √(2/8000) = 0.016, four of them; edges typed to a thousandth add a little.
    assert!((chi / nu - 1.0).abs() < 0.07, "{}", chi / nu);
    Ok(())
}

/// A data set on the demo's bench, and what is really so in it.
fn drawn_from(secret: &str, form: SetForm) -> Result<(Notebook, DataSet), Box<dyn std::error::Error>> {
    let bench = demo::typed_readings()?.0;
    let set =
        data_set(bench.state(), String::new(), Vec::new(), secret, form).map_err(|refusal| refusal.id)?;
    let mut notebook = Notebook::new();
    notebook.apply(set.edit.clone(), "")?;
    Ok((notebook, set))
}

/// Two secrets share no reading and no truth; and the notebook is not known for a rehearsal, nor for anybody's.
#[test]
fn a_secret_is_a_data_set() -> Outcome {
    let ((one, so), (other, not_so)) =
        (drawn_from("one", SetForm::Typed)?, drawn_from("other", SetForm::Typed)?);
    assert_eq!((&one, &so), (&drawn_from("one", SetForm::Typed)?.0, &drawn_from("one", SetForm::Typed)?.1));
    let cells = |notebook: &Notebook| -> Vec<[String; 3]> {
        let read = [Cell::Reading, Cell::EdgeA, Cell::EdgeB];
        notebook.state().rows.iter().map(|row| read.map(|cell| row.text(cell).to_owned())).collect()
    };
    let shared = cells(&one).iter().zip(&cells(&other)).filter(|(one, other)| one == other).count();
    assert_eq!((shared, cells(&one).len() > 5), (0, true));
    assert!(so.truth != not_so.truth && so.rows != not_so.rows);
    assert_eq!((truth(&one), one.state().text(BenchField::People)), (None, ""));
    Ok(())
}

/// How edges are timed on traces is the bench's, which a hand-out may fix.
#[test]
fn a_data_set_is_timed_as_its_bench_is() -> Outcome {
    let mut bench = demo::typed_readings()?.0;
    bench.apply(Edit::SetEstimator(Estimator::FixedLevel), "")?;
    let set = data_set(bench.state(), String::new(), Vec::new(), "one", SetForm::Traces)
        .map_err(|refusal| refusal.id)?;
    let mut notebook = Notebook::new();
    notebook.apply(set.edit, "")?;
    assert_eq!(notebook.state().estimator, Estimator::FixedLevel);
    Ok(())
}

/// Rows whose delays are yet to be taken from pictures or traces stand at the same places, and say nothing of a delay; what is
/// really so at them is t₀ and the slope, with the errors that are told: nothing of reading a screen.
#[test]
fn pictures_and_traces_are_yet_to_be_read() -> Outcome {
    let (typed, so_typed) = drawn_from("one", SetForm::Typed)?;
    for (form, screen) in [(SetForm::Photographs, true), (SetForm::Traces, false)] {
        let (notebook, so) = drawn_from("one", form)?;
        assert_eq!((so.rows.len(), so.truth.t0), (so_typed.rows.len(), so_typed.truth.t0));
        for (row, as_typed) in notebook.state().rows.iter().zip(&typed.state().rows) {
            for cell in [Cell::Rail, Cell::Reading] {
                assert_eq!(row.text(cell), as_typed.text(cell), "{form:?}");
            }
            assert_eq!(row.text(Cell::TimeBase).is_empty(), !screen, "{form:?}");
            assert!([Cell::EdgeA, Cell::EdgeB, Cell::Delay].iter().all(|cell| row.text(*cell).is_empty()));
            assert!(row.evidence.is_none(), "{form:?}");
        }
    }
    // One clock for all rows by a recorder; each time base of a screen has its own.
    let clocks = |set: &DataSet| {
        set.truth.errors.iter().filter(|error| matches!(error.origin, Origin::TimeBase { .. })).count()
    };
    let recorded = drawn_from("one", SetForm::Traces)?.1;
    assert_eq!((clocks(&recorded), clocks(&so_typed) > 1), (1, true));
    // The screen is read to ± 0.05 divisions and typed to a thousandth; the true delay is within that.
    for (row, so) in typed.state().rows.iter().zip(&so_typed.rows) {
        let edge = |cell| row.text(cell).parse::<f64>();
        let read = (edge(Cell::EdgeB)? - edge(Cell::EdgeA)?) * so.time_base;
        let half_width = prepare(typed.state(), None).context.bench.half_width;
        assert!((read - so.delay).abs() <= (2.0 * half_width + 0.002) * so.time_base, "{so:?}: {read}");
    }
    Ok(())
}

/// Neither the secret nor what was drawn from it stands in the notebook, in digits or in hexadecimal.
#[test]
fn a_notebook_holds_neither_secret_nor_truth() -> Outcome {
    let secret = "6b927a6875bb4d69800fc2e9a9300f2366e2a16bfc0edcaf71b5059e58c5224a";
    let (notebook, DataSet { truth: told, .. }) = drawn_from(secret, SetForm::Typed)?;
    let text = write(&notebook).to_lowercase();
    assert!((0..=secret.len() - 8).all(|from| !text.contains(&secret[from..from + 8])));
    assert!(told.errors.len() > 3, "{told:?}");
    for value in told.errors.iter().map(|error| error.size).chain([told.t0]) {
        let digits: String =
            format!("{:.8e}", value.abs()).chars().filter(char::is_ascii_digit).take(5).collect();
        let bits = value.to_bits();
        for sought in [digits, format!("{:.5}", value.abs()), format!("{bits:x}"), bits.to_string()] {
            assert!(!text.contains(sought.as_str()), "{sought} stands in the notebook");
        }
    }
    Ok(())
}

/// Of 200 data sets, about 95 % of the intervals with k = 2 hold c and t₀, and about 68 % of those with k = 1. Binomial:
/// σ = √(200·0.954·0.046) = 3.0 and √(200·0.683·0.317) = 6.6; four of each are allowed.
#[test]
fn intervals_cover_the_truth_as_often_as_they_say() -> Outcome {
    let (mut once, mut twice) = ([0, 0], [0, 0]);
    for number in 0..200 {
        let secret = format!("set {number}");
        let (notebook, DataSet { truth: so, .. }) = drawn_from(&secret, SetForm::Typed)?;
        let analysis = analyse(&notebook);
        let speed = analysis.speed.map_err(|refusal| refusal.id)?;
        let fit = analysis.line.map_err(|refusal| refusal.id)?.fit.clone();
        let u_t0 = fit.uncertainty.ok_or("no uncertainty")?.intercept;
        let off = [(speed.c - C0) / speed.u_c(), (fit.intercept - so.t0) / u_t0];
        for (which, off) in off.iter().enumerate() {
            once[which] += usize::from(off.abs() <= 1.0);
            twice[which] += usize::from(off.abs() <= 2.0);
        }
    }
    assert!(once.iter().all(|held| (111..=163).contains(held)), "{once:?} of 200 with k = 1");
    assert!(twice.iter().all(|held| (179..=200).contains(held)), "{twice:?} of 200 with k = 2");
    Ok(())
}

/// What was so is told by the seed, whatever is stated afterwards.
#[test]
fn the_truth_stays_what_it_was() -> Outcome {
    let mut notebook = rehearsed(rich()?.state(), 3)?;
    let before = truth(&notebook).ok_or("no truth")?;
    assert!(before.steps.len() == 1 && before.errors.len() > 3, "{before:?}");
    notebook.apply(Edit::SetBench { field: BenchField::TimeBaseUncertainty, text: "5 %".into() }, "")?;
    notebook.apply(Edit::SetPath(Path::Detector), "")?;
    assert_eq!(truth(&notebook), Some(before));
    Ok(())
}

/// Without the errors told, the readings lie on the line of c₀: the truth is the whole truth.
#[test]
fn the_truth_explains_the_readings() -> Outcome {
    let mut bench = Notebook::new();
    bench.apply(Edit::AddRail(1), "")?;
    for (field, text) in
        [(RailField::From, "0"), (RailField::To, "300"), (RailField::ReadingUncertainty, "0.0001")]
    {
        bench.apply(Edit::SetRail { rail: 1, field, text: text.into() }, "")?;
    }
    bench.apply(Edit::SetRail { rail: 1, field: RailField::ScaleUncertainty, text: "3 %".into() }, "")?;
    bench.apply(Edit::SetSense { rail: 1, sense: Sense::Falls }, "")?;
    let splice = Splice::AtSplitter { mark: "300".into(), uncertainty: "2 cm".into() };
    bench.apply(Edit::SetSplice { rail: 1, splice }, "")?;
    bench.apply(Edit::SetBench { field: BenchField::EdgeHalfWidth, text: "0.0005".into() }, "")?;
    let notebook = rehearsed(bench.state(), 11)?;
    let told = truth(&notebook).ok_or("no truth")?;
    let scale = told.errors.iter().find(|error| error.origin == Origin::RulerScale { rail: 1 });
    let scale = scale.ok_or("no scale")?.size;
    let speed = analyse(&notebook).speed.map_err(|refusal| refusal.id)?;
    // A ruler whose readings are too long by the scale gives a speed too large by it. Edges are read to half a
    // thousandth of a division of some nanoseconds: about 10⁻⁴ of the slope.
    assert!((speed.c / C0 - 1.0 - scale).abs() < 1e-3, "{} against {scale}", speed.c / C0 - 1.0);
    Ok(())
}

/// A beam at an angle is drawn with the sense in which the budget corrects for it: over many seeds c is not off to either
/// side.
#[test]
fn a_beam_at_an_angle_leaves_c_where_it_is() -> Outcome {
    for beam in [Beam::Wide, Beam::Followed] {
        let mut bench = demo::typed_readings()?.0;
        bench.apply(Edit::SetBeam(beam), "")?;
        bench.apply(Edit::SetBench { field: BenchField::BeamAngle, text: "300 mrad".into() }, "")?;
        let runs = 40;
        let mut sum = 0.0;
        for seed in 0..runs {
            let speed = analyse(&rehearsed(bench.state(), seed)?).speed.map_err(|refusal| refusal.id)?;
            sum += speed.c / C0 - 1.0;
        }
        // Each is off by up to θ²/4 = 0.0225, evenly: 0.013/√40 = 0.002 in the mean, four of it, and the bench's own
        // 0.001. The other sense would be off by 0.045.
        let mean = sum / f64::from(runs);
        assert!(mean.abs() < 0.01, "{beam:?}: {mean}");
    }
    Ok(())
}

#[test]
fn a_bench_without_rails_is_refused() {
    assert!(
        run(&NotebookState::default(), Draws::Seed(1), SetForm::Typed)
            .is_err_and(|refusal| refusal.id == "no_rails")
    );
}

/// Rows on two rails of one name are no rows of the line: nothing is drawn for them, nor for others in their stead.
#[test]
fn a_bench_whose_rails_share_a_name_is_refused() -> Outcome {
    let mut bench = demo::typed_readings()?.0;
    for rail in [1, 2] {
        bench.apply(Edit::SetRail { rail, field: RailField::Name, text: "bench".into() }, "")?;
    }
    let page = with_rows(bench.state(), Vec::new(), Vec::new());
    let refusal = run(&page, Draws::Seed(1), SetForm::Typed).err().ok_or("rehearsed")?;
    assert_eq!(refusal.id, "row_not_read");
    let text = in_english(&refusal.message);
    assert!(text.contains("More than one rail has the name “bench”"), "{text}");
    Ok(())
}
