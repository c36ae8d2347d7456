use super::*;
use crate::analysis::analyse;
use crate::notebook::{Cell, Edit, Notebook, Path};
use crate::simulated::demo;
use crate::words::Value;

fn sealed(salt: &str) -> Seal {
    Seal { salt: salt.into(), opened: false }
}

#[test]
fn factors_fill_the_range_and_no_more() {
    let factors: Vec<f64> = (0..1000).filter_map(|n| factor(Some(&sealed(&format!("{n}"))))).collect();
    assert_eq!(factors.len(), 1000);
    assert!(factors.iter().all(|f| (f - 1.0).abs() <= LARGEST));
    let mean = factors.iter().sum::<f64>() / 1000.0;
    // Four standard errors of the mean of an even spread over ±8 %.
    assert!((mean - 1.0).abs() < 4.0 * LARGEST / 3.0_f64.sqrt() / 1000.0_f64.sqrt());
    assert!(factors.iter().any(|f| *f < 0.93) && factors.iter().any(|f| *f > 1.07));
}

#[test]
fn a_closed_seal_covers_the_speed_alike_everywhere_and_an_open_one_nothing()
-> Result<(), Box<dyn std::error::Error>> {
    let (mut notebook, _) = demo::typed_readings()?;
    let bare = analyse(&notebook).speed.map_err(|refusal| refusal.id)?;
    notebook.apply(Edit::Seal("5f1c".into()), "")?;
    let analysis = analyse(&notebook);
    let hidden = factor(notebook.state().seal.as_ref()).ok_or("nothing hidden")?;
    assert!(analysis.sealed);
    let covered = analysis.speed.map_err(|refusal| refusal.id)?;
    assert!(covered.sealed && covered.comparison.is_none());
    assert!((covered.c / bare.c - hidden).abs() < 1e-15 && (covered.v / bare.v - hidden).abs() < 1e-15);
    assert_eq!(covered.relative, bare.relative);
    let shown = analysis.line.map_err(|refusal| refusal.id)?;
    // The slope shown and the v shown belong together: v·b is the path factor, 1 (and 1e9 from ns to s).
    assert!((shown.fit.slope * covered.v / 1e9 - 1.0).abs() < 1e-14);
    assert_eq!(analyse(&notebook).notices.iter().filter(|n| n.id == "faster_than_light").count(), 0);

    assert!(!notebook.can_undo(), "a seal can't be taken back");
    notebook.apply(Edit::OpenSeal, "")?;
    assert!(!notebook.can_undo(), "nor can its opening");
    assert_eq!(analyse(&notebook).speed.map_err(|refusal| refusal.id)?, bare);
    assert!(notebook.apply(Edit::Seal("again".into()), "").is_err());
    Ok(())
}

/// What c would be with a mistake mended is covered by the same factor as c, and no side of c₀ is told.
#[test]
fn a_closed_seal_covers_what_is_said_of_mistakes() -> Result<(), Box<dyn std::error::Error>> {
    let (mut notebook, _) = demo::typed_readings()?;
    notebook.apply(Edit::SetCell { row: 24, cell: Cell::EdgeB, text: "14".into() }, "")?;
    notebook.apply(Edit::SetPath(Path::Mirror), "")?;
    let mended = |notebook: &Notebook| -> Result<f64, Box<dyn std::error::Error>> {
        let analysis = analyse(notebook);
        let first = analysis.notices.first().ok_or("nothing is said")?;
        let Some(Value::Text(c)) = first.text.values.get("c") else { return Err("no c".into()) };
        Ok(c.parse::<f64>()? * 1e8 / analysis.speed.map_err(|refusal| refusal.id)?.c)
    };
    let beside_c0 = |notebook: &Notebook| {
        let of_c0 = ["notice-path_factor", "notice-faster_than_light", "notice-scale_off"];
        let notices = analyse(notebook).notices;
        let mut said = notices.iter().flat_map(|notice| notice.signs.iter().chain([&notice.text]));
        said.any(|text| of_c0.contains(&text.id))
    };
    let bare = mended(&notebook)?;
    assert!((bare - 1.0).abs() > 0.01);
    assert!(beside_c0(&notebook));
    notebook.apply(Edit::Seal("5f1c".into()), "")?;
    // Both are written with four digits.
    assert!((mended(&notebook)? / bare - 1.0).abs() < 1e-3);
    assert!(!beside_c0(&notebook));
    Ok(())
}
