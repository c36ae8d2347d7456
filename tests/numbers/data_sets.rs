//! Data sets handed out as traces, on the whole road: drawn, recorded, handed out, measured by a student, analysed. What is
//! hidden in each is the reference: c is that of the SI Brochure (9th edition, 2.2), t₀ was drawn.

use slope_of_light::analysis::{C0, RowPart, analyse};
use slope_of_light::bundle::sha256_hex;
use slope_of_light::notebook::{
    Edit, EditError, Evidence, Notebook, Piece, Rule, StoredFile, Traces, read, write,
};
use slope_of_light::plan::rehearsal::{DataSet, SetForm, data_set};
use slope_of_light::simulated::demo;
use slope_of_light::trace::DecimalMark;
use slope_worker::key::secret;
use slope_worker::reading::{Reading, Wanted};
use slope_worker::set_evidence;

type Outcome<T> = Result<T, Box<dyn std::error::Error>>;

const SEED: &str = "9c1185a5c5e9fc54612808977ee8f548b2258d31f9c1185a5c5e9fc546128089";

/// A student's file, with the traces beside it by row, and what is really so in it.
struct Handed {
    notebook: Notebook,
    traces: Vec<(u32, String)>,
    secret: String,
    so: DataSet,
}

fn handed_out(number: u32) -> Outcome<Handed> {
    let bench = demo::typed_readings()?.0;
    let secret = secret(SEED, number);
    let so = data_set(bench.state(), "Week 3".into(), Vec::new(), &secret, SetForm::Traces)
        .map_err(|refusal| refusal.id)?;
    let mut notebook = Notebook::new();
    notebook.apply(so.edit.clone(), "")?;
    let mut traces = Vec::new();
    for row in &so.rows {
        let text = set_evidence::traces(&secret, row, DecimalMark::Point).map_err(|why| why.id)?;
        notebook.apply(
            taken_as(
                row.row,
                Traces { files: vec![file(&text)?], delays: Vec::new(), layouts: Vec::new(), walk: None },
            ),
            "",
        )?;
        traces.push((row.row, text));
    }
    for (piece, rule) in
        [(Piece::Evidence, Rule::Fixed), (Piece::Positions, Rule::Fixed), (Piece::Readings, Rule::Needed)]
    {
        notebook.apply(Edit::SetPiece(piece, rule), "")?;
    }
    Ok(Handed { notebook: notebook.hand_out("")?, traces, secret, so })
}

fn file(text: &str) -> Outcome<StoredFile> {
    let bytes = u32::try_from(text.len())?;
    Ok(StoredFile { sha256: sha256_hex(text.as_bytes()), name: "01.csv".into(), bytes })
}

fn taken_as(row: u32, traces: Traces) -> Edit {
    Edit::SetEvidence { row, evidence: Some(Evidence::Traces(traces)) }
}

/// Three students measure what they were given: nothing is in the line before, all rows are afterwards, and c and t₀ lie within
/// four standard uncertainties of what is really so (normal, six such intervals miss one once in 2600 times).
#[test]
fn three_students_measure_their_traces() -> Outcome<()> {
    for number in 1..=3 {
        let Handed { mut notebook, traces, so, .. } = handed_out(number)?;
        let used = |notebook: &Notebook| {
            analyse(notebook).rows.iter().filter(|row| row.part == RowPart::Used).count()
        };
        assert_eq!((used(&notebook), traces.len() > 5), (0, true));
        for (row, text) in &traces {
            let mut reading = Reading::new(DecimalMark::Point);
            let sha256 = sha256_hex(text.as_bytes());
            reading.add("01.csv", text.as_bytes(), None, &sha256).map_err(|why| why.to_string())?;
            let found = reading.measure(&Wanted::default()).map_err(|why| why.to_string())?;
            notebook.apply(taken_as(*row, found.evidence.ok_or("no delay")?), "")?;
        }
        assert_eq!(used(&notebook), traces.len());
        let analysis = analyse(&notebook);
        let speed = analysis.speed.map_err(|refusal| refusal.id)?;
        let fit = analysis.line.map_err(|refusal| refusal.id)?.fit.clone();
        let off_c = (speed.c - C0) / speed.u_c();
        let off_t0 = (fit.intercept - so.truth.t0) / fit.uncertainty.ok_or("no uncertainty")?.intercept;
        println!("student {number}: c off by {off_c:.2} u, t0 by {off_t0:.2} u, chi2 {:.1}", fit.chi_square);
        assert!(off_c.abs() < 4.0 && off_t0.abs() < 4.0, "student {number}: {off_c} u, {off_t0} u");
        // Nothing was drawn twice: with ν degrees of freedom χ² has the standard deviation √(2ν).
        let nu = fit.degrees_of_freedom as f64;
        assert!(fit.chi_square < nu + 5.0 * (2.0 * nu).sqrt(), "χ² {} of {nu}", fit.chi_square);
    }
    Ok(())
}

/// Which traces a row has is fixed; measuring them is not.
#[test]
fn the_traces_stay_those_that_were_given() -> Outcome<()> {
    let Handed { mut notebook, traces, .. } = handed_out(1)?;
    let (row, _) = traces.first().ok_or("no row")?;
    let refused = Err(EditError::Fixed { piece: Piece::Evidence });
    assert_eq!(notebook.apply(Edit::SetEvidence { row: *row, evidence: None }, ""), refused);
    let other = Traces { files: vec![file("other")?], delays: Vec::new(), layouts: Vec::new(), walk: None };
    assert_eq!(notebook.apply(taken_as(*row, other), ""), refused);
    assert_eq!(read(&write(&notebook))?, notebook);
    Ok(())
}

/// No file of a student holds the seed, the secret or what was drawn: neither as digits, nor as the bits of a double, nor as
/// hexadecimal digits of those; and no two students share a trace.
#[test]
fn no_file_holds_seed_or_truth() -> Outcome<()> {
    let mut seen: Vec<String> = Vec::new();
    for number in 1..=3 {
        let Handed { notebook, traces, secret, so } = handed_out(number)?;
        let mut files = vec![write(&notebook)];
        files.extend(traces.into_iter().map(|(_, text)| text));
        // Errors may be as small as parts in a million: to fewer digits they are nothing but zeros.
        let errors = so.truth.errors.iter().map(|error| (error.size, 9));
        let times = so.rows.iter().map(|row| row.delay).chain([so.truth.t0]).map(|time| (time, 5));
        let drawn: Vec<(f64, usize)> = errors.chain(times).collect();
        for text in &files {
            for key in [SEED, secret.as_str()] {
                assert!(
                    (0..=key.len() - 8).all(|from| !text.contains(&key[from..from + 8])),
                    "a part of {key}"
                );
            }
            for &(value, places) in &drawn {
                let bits = value.to_bits();
                let digits = [format!("{:.places$}", value.abs()), bits.to_string(), format!("{bits:x}")];
                assert!(digits.iter().all(|told| !text.contains(told)), "{value}");
                let bytes = [value.to_le_bytes(), value.to_be_bytes()];
                let held = |sought: &[u8; 8]| text.as_bytes().windows(8).any(|part| part == sought);
                assert!(!bytes.iter().any(held), "{value}");
            }
        }
        assert!(files.iter().all(|text| !seen.contains(text)));
        seen.append(&mut files);
    }
    Ok(())
}
