//! Digests by which two builds of the program can be seen to give the same digits.

use slope_of_light::analysis::analyse;
use slope_of_light::analysis::trials::Trials;
use slope_of_light::bundle::sha256_hex;
use slope_of_light::notebook::{ActsOn, Edit, EditError, Effect, ErrorShape, Notebook, Scope, SharedError};
use slope_of_light::simulated::{demo, random};

/// How many random notebooks are looked at beside the demo.
pub const RANDOM_NOTEBOOKS: u64 = 200;

/// The SHA-256, in hexadecimal, of the analysis of the demo and of each random notebook, and at the end the number
/// and the SHA-256 of the results of some Monte Carlo trials. Numbers enter with the
/// digits that read back to the same double, so that one differing bit gives another digest.
///
/// # Errors
/// None in practice: the benches are sound.
pub fn digests() -> Result<Vec<String>, EditError> {
    let mut all = vec![digest(&demo::typed_readings()?.0)];
    for seed in 0..RANDOM_NOTEBOOKS {
        all.push(digest(&random::bench(seed).run(seed)?.0));
    }
    all.push(trials()?);
    Ok(all)
}

/// The digest of a block of Monte Carlo trials on the demo with an error of each shape beside its own.
fn trials() -> Result<String, EditError> {
    let (mut notebook, _) = demo::typed_readings()?;
    let shapes = [
        ErrorShape::Normal,
        ErrorShape::Rectangular,
        ErrorShape::Triangular,
        ErrorShape::Arcsine,
        ErrorShape::Student,
    ];
    for (id, shape) in (900..).zip(shapes) {
        let error = |id, effect| SharedError {
            id,
            name: String::new(),
            acts_on: ActsOn::Delays,
            effect,
            rows: Scope::All,
            uncertainty: "0.1 %".into(),
            shape,
            degrees_of_freedom: "4.5".into(),
        };
        notebook.apply(Edit::SetShared(error(id, Effect::Scale)), "")?;
        let noise = SharedError { uncertainty: "0.05".into(), ..error(id + 10, Effect::Noise) };
        notebook.apply(Edit::SetShared(noise), "")?;
    }
    let speeds = Trials::of(notebook.state()).map(|mut trials| trials.run(3)).unwrap_or_default();
    let bits: Vec<u8> = speeds.iter().flat_map(|c| c.to_bits().to_le_bytes()).collect();
    Ok(format!("{} {}", speeds.len(), sha256_hex(&bits)))
}

fn digest(notebook: &Notebook) -> String {
    // The analysis holds strings, numbers, lists and records only, which always have a JSON form.
    let json = serde_json::to_string(&analyse(notebook)).unwrap_or_default();
    sha256_hex(json.as_bytes())
}
