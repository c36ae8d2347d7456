#![expect(clippy::unwrap_used, reason = "tests")]

use super::super::sample::{english, french, view_of};
use super::*;
use crate::analysis::analyse;
use crate::drawings::Charts;
use crate::notebook::{
    ActsOn, BenchField, Cell, Edit, Effect, ErrorShape, Imprint, Notebook, RailField, Scope, SharedError,
    UncertaintyKind, UncertaintyOf,
};
use crate::view::{RowState, TrialsView, View, view};
use crate::words::Words;

const HOSTILE: &str =
    "</p></td></title></style><script>alert(1)</script><img src=x onerror='a()'>\" onload=\"b() &lt;";

fn charts() -> Charts {
    let svg = |name: &str| format!("<svg class=\"{name}\"></svg>");
    Charts {
        line: svg("line"),
        residuals: svg("residuals"),
        bench: svg("bench"),
        budget: svg("budget"),
        trials: svg("trials"),
    }
}

fn html(view: &View, charts: &Charts, trials: Option<&TrialsView>, words: &dyn Words) -> String {
    Document::of(view, charts, trials, &Imprint::default(), words).html()
}

/// The tags of a document, each with its attributes, in order.
fn tags(html: &str) -> Vec<&str> {
    html.split('<').skip(1).filter_map(|rest| rest.split('>').next()).collect()
}

#[test]
fn no_text_of_a_notebook_becomes_markup() {
    let plain = html(&view_of("plain"), &charts(), None, &english());
    let hostile = html(&view_of(HOSTILE), &charts(), None, &english());
    assert_eq!(tags(&plain), tags(&hostile));
    assert!(hostile.contains("&lt;script&gt;alert(1)&lt;/script&gt;"));
}

#[test]
fn it_runs_nothing_and_loads_nothing() {
    let report = html(&view_of("plain"), &charts(), None, &english());
    // W3C, "Content Security Policy Level 3", 3.3: the policy of a document in its meta element, before what it
    // is to govern.
    let policy = "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; ";
    assert!(report.find(policy) < report.find("<style>"));
    assert!(report.contains(policy));
    for tag in tags(&report) {
        let name = tag.split([' ', '\n']).next().unwrap_or_default();
        assert!(
            !["script", "link", "img", "iframe", "object", "embed", "a", "base", "form"].contains(&name),
            "{tag}"
        );
    }
    assert!(!report.contains("@import") && !report.contains("url("));
}

#[test]
fn every_element_that_opens_closes_in_order() {
    const VOID: [&str; 2] = ["meta", "!DOCTYPE"];
    let report = html(&view_of(HOSTILE), &charts(), None, &english());
    let mut open = Vec::new();
    for tag in tags(&report) {
        let name = tag.split([' ', '\n']).next().unwrap_or_default();
        match name.strip_prefix('/') {
            Some(name) => assert_eq!(open.pop(), Some(name)),
            None if VOID.contains(&name) => {}
            None => open.push(name),
        }
    }
    assert!(open.is_empty(), "{open:?}");
}

#[test]
fn all_parts_are_there() {
    let report = html(&view_of("plain"), &charts(), None, &english());
    let headings = [
        "Cautions",
        "Bench",
        "Aim",
        "Method",
        "Apparatus",
        "Readings",
        "Line",
        "Result",
        "Notices",
        "Discussion",
        "History",
    ];
    let places: Vec<Option<usize>> =
        headings.iter().map(|name| report.find(&format!("<h2>{name}</h2>"))).collect();
    assert!(places.iter().all(Option::is_some), "{places:?}");
    assert!(places.is_sorted());
    for chart in ["line", "residuals", "bench"] {
        assert!(report.contains(&format!("<svg class=\"{chart}\">")));
    }
    assert!(
        report.contains("</dl>\n<p class=\"summary\">") || report.contains("</h1>\n<p class=\"summary\">")
    );
    assert!(report.contains("struck out"));
    assert!(report.contains("Rows 1 and 2."));
    assert!(report.contains("holds 12 entries"));
    assert!(report.contains("your laser safety officer"));
}

#[test]
fn an_empty_notebook_has_a_report_that_says_so() {
    let mut view = view_of("");
    view.rows.clear();
    view.rails.clear();
    view.notices.clear();
    view.line.refusal = Some(crate::message!("refusal-all_positions_equal"));
    view.result.refusal = Some(crate::message!("plan-too_few"));
    let report = html(&view, &Charts::default(), None, &english());
    assert!(report.contains("<h1>Untitled notebook</h1>"));
    assert!(report.contains("All rows have the same distance"));
    assert!(report.contains("Plan two or more positions"));
    assert!(!report.contains("<svg"));
}

/// What keeps the line from being drawn keeps the budget and the result from it too: it is said once, at the line.
#[test]
fn a_refusal_stands_once() {
    let mut view = view_of("");
    let refusal = || Some(crate::message!("refusal-all_positions_equal"));
    (view.line.refusal, view.budget.refusal, view.result.refusal) = (refusal(), refusal(), refusal());
    let report = html(&view, &Charts::default(), None, &english());
    assert_eq!(report.matches("All rows have the same distance").count(), 1);
    assert_eq!(report.matches("see the section “Line”").count(), 2);
}

/// A limit and a standard uncertainty are told apart (JCGM 100:2008, 4.3.7: u = a/√3), typed or taken; zero is said to be
/// taken as exact.
#[test]
fn an_uncertainty_says_as_what_it_is_meant() {
    let report_of = |edits: &[Edit]| {
        let mut notebook = Notebook::new();
        notebook.apply(Edit::AddRail(1), "").unwrap();
        // A row read on the screen, on whose edges their uncertainty bears.
        let cells = [(Cell::EdgeA, "1.0".to_owned())].into_iter().collect();
        notebook.apply(Edit::AddRow { row: 1, after: None, cells }, "").unwrap();
        for edit in edits {
            notebook.apply(edit.clone(), "").unwrap();
        }
        html(&view(&notebook, &analyse(&notebook)), &Charts::default(), None, &english())
    };
    let limit = |of| Edit::SetKind { of, kind: UncertaintyKind::Limit };
    let reading =
        |text: &str| Edit::SetRail { rail: 1, field: RailField::ReadingUncertainty, text: text.into() };
    let (ruler, edge) = (UncertaintyOf::RulerReading(1), UncertaintyOf::Edge);
    let own = Edit::SetShared(SharedError {
        id: 40,
        name: "Trigger".into(),
        acts_on: ActsOn::Delays,
        effect: Effect::Offset,
        rows: Scope::All,
        uncertainty: "0.2".into(),
        shape: ErrorShape::Triangular,
        degrees_of_freedom: String::new(),
    });
    let cases: [(&[Edit], &str, &str); 11] = [
        (&[], "Uncertainty of a ruler reading", "u = 0.029 cm (default)"),
        (&[limit(ruler)], "Uncertainty of a ruler reading", "limit ±0.05 cm, u = 0.029 cm (default)"),
        (&[reading("0.5 mm")], "Uncertainty of a ruler reading", "u = 0.5 mm"),
        (&[reading("0.5 mm"), limit(ruler)], "Uncertainty of a ruler reading", "limit ±0.5 mm, u = 0.29 mm"),
        (&[reading("half"), limit(ruler)], "Uncertainty of a ruler reading", "half (can’t be used)"),
        (&[], "Uncertainty of one edge reading", "limit ±0.1 div, u = 0.058 div (default)"),
        (
            &[Edit::SetKind { of: edge, kind: UncertaintyKind::Standard }],
            "Uncertainty of one edge reading",
            "u = 0.058 div (default)",
        ),
        (
            &[limit(UncertaintyOf::TimeBase)],
            "Time base: relative uncertainty",
            "0 %, treated as exact (default)",
        ),
        (&[], "Relative uncertainty of the scale", "0 %, treated as exact (default)"),
        (std::slice::from_ref(&own), "Trigger", "delays: common offset, u = 0.2 ns"),
        (
            &[own.clone(), limit(UncertaintyOf::Shared(40))],
            "Trigger",
            "delays: common offset, limit ±0.2 ns, u = 0.082 ns",
        ),
    ];
    for (edits, name, told) in cases {
        let item = format!("<dt>{name}</dt><dd>{told}</dd>");
        let of_the_rail = format!("<tr><td>{name}</td><td>{told}</td></tr>");
        let report = report_of(edits).replace('\u{a0}', " ");
        assert!(report.contains(&item) || report.contains(&of_the_rail), "{item}");
    }
}

/// What is stated of the air, or taken, has its unit, and says how uncertain it is: a limit divided by √3 where none is
/// typed behind it (JCGM 100:2008, 4.3.7: 5/√3 = 2.887).
#[test]
fn the_air_says_how_well_it_is_known() {
    let report_of = |edits: &[(BenchField, &str)]| {
        let mut notebook = Notebook::new();
        for (field, text) in edits {
            notebook.apply(Edit::SetBench { field: *field, text: (*text).into() }, "").unwrap();
        }
        html(&view(&notebook, &analyse(&notebook)), &Charts::default(), None, &english())
            .replace('\u{a0}', " ")
    };
    let empty = report_of(&[]);
    let typed = report_of(&[(BenchField::Temperature, "21.5"), (BenchField::Pressure, "990 ± 3")]);
    for (report, name, told) in [
        (&empty, "Wavelength in vacuum", "650 nm (default), default limit ±10 nm, u = 5.8 nm"),
        (&empty, "Air temperature", "20 °C (default), default limit ±5 °C, u = 2.9 °C"),
        (&empty, "Air pressure", "1013.25 hPa (default), default limit ±30 hPa, u = 17 hPa"),
        (&empty, "Relative humidity", "50 % (default), default limit ±40 %, u = 23 %"),
        (&empty, "Carbon dioxide", "450 ppm (default), default limit ±150 ppm, u = 87 ppm"),
        (&typed, "Air temperature", "21.5 °C, default limit ±1 °C, u = 0.58 °C"),
        (&typed, "Air pressure", "990 ± 3 hPa, u = 3.0 hPa"),
    ] {
        let item = format!("<dt>{name}</dt><dd>{told}</dd>");
        assert!(report.contains(&item), "{item}");
    }
}

#[test]
fn a_struck_row_is_struck_through_but_not_its_reason() {
    let mut view = view_of("7");
    view.rows[1].struck = "bumped".into();
    let report = html(&view, &charts(), None, &english());
    assert!(report.contains("td.struck { text-decoration: line-through; }"));
    let row = |number: &str| {
        let cells = report.lines().find(|line| line.starts_with("<tr><td") && line.contains(number));
        cells.unwrap_or_default()
    };
    let struck = row(">2</td>");
    assert!(
        struck.starts_with("<tr><td class=\"number struck\">2</td><td class=\"struck\">7</td>"),
        "{struck}"
    );
    assert!(
        struck.ends_with("<td class=\"said\">struck out: bumped</td><td class=\"said\">7</td></tr>"),
        "{struck}"
    );
    assert!(!row(">1</td>").contains("struck"));
}

#[test]
fn rows_that_hold_nothing_are_left_out() {
    let mut view = view_of("plain");
    for row in &mut view.rows {
        row.state = RowState::Empty;
    }
    view.notes.clear();
    let report = html(&view, &charts(), None, &english());
    assert!(!report.contains("<caption>Readings</caption>"));
}

/// What users of pulsed lasers are told (IEC TR 60825-14: controls for users; the bench's own hazards from common
/// practice), before anything else of the report.
#[test]
fn the_cautions_stand_first_and_are_whole() {
    begins_with(
        &english(),
        "Cautions",
        &[
            "laser safety officer",
            "local rules",
            "into the beam or along the rail",
            "Close the shutter before you bend",
            "Seated and shorter people",
            "Metal rulers, carriages, tools",
            "both the wavelength and the pulses",
            "Eyewear is never permission to look into the beam",
            "harms the skin",
            "Only trained people align the beam, at the lowest power",
            "bias supplies of detectors are at high voltage, and so are their cables",
            "Only authorised service staff open a housing",
            "cylinders must be secured and the room ventilated",
            "ozone",
            "trip hazards",
            "escape routes",
            "Close the door, put up the warning sign, and keep bystanders out",
            "Know how to stop before you start",
            "report it at once, and have it examined by a doctor",
            "IEC TR 60825-14 and your national rules",
        ],
    );
    begins_with(
        &french(),
        "Précautions",
        &[
            "responsable de la sécurité laser",
            "règles locales",
            "dans le faisceau ni le long du rail",
            "Fermez l’obturateur avant de vous pencher",
            "personnes assises ou plus petites",
            "règles métalliques, les chariots, les outils",
            "à la fois pour la longueur d’onde et pour les impulsions",
            "Porter des lunettes n’autorise jamais à regarder dans le faisceau",
            "nuit aussi à la peau",
            "personnes formées alignent le faisceau, à la puissance la plus basse",
            "polarisation des détecteurs sont sous haute tension, et leurs câbles aussi",
            "Seul le personnel habilité ouvre les boîtiers",
            "bouteilles doivent être arrimées et la salle ventilée",
            "ozone",
            "trébucher sur les rails",
            "issues de secours",
            "Fermez la porte, affichez le panneau d’avertissement et tenez à l’écart",
            "Sachez comment arrêter avant de commencer",
            "signalez-la aussitôt et faites-vous examiner par un médecin",
            "60825-14 et vos règles nationales",
        ],
    );
}

fn begins_with(words: &crate::words::WordTable, title: &str, told: &[&str]) {
    let report = html(&view_of("plain"), &charts(), None, words);
    let begin = report.find(&format!("<h2>{title}</h2>")).unwrap();
    assert_eq!(report.find("<h2>"), Some(begin), "the cautions stand first");
    let end = begin + 4 + report[begin + 4..].find("<h2>").unwrap();
    let places: Vec<_> = told.iter().map(|words| report[begin..end].find(words)).collect();
    assert!(places.iter().all(Option::is_some), "{told:?} {places:?}");
    assert!(places.is_sorted(), "in the order in which they are read: {places:?}");
}

/// A teacher's rules and contact stand above ours; who read them, below.
#[test]
fn local_rules_stand_above_the_cautions() {
    let report = html(&view_of("Door 3 stays shut"), &charts(), None, &english());
    let places: Vec<_> = [
        "<h2>Cautions</h2>",
        "<h3>Rules of this laboratory</h3>\n<p class=\"typed\">Door 3 stays shut</p>",
        "<dt>Contact</dt><dd>Door 3 stays shut</dd>",
        "laser safety officer",
        "<li>Cautions read: Door 3 stays shut. This is no permission.</li>",
        "<h2>Aim</h2>",
    ]
    .map(|part| report.find(part))
    .into();
    assert!(places.iter().all(Option::is_some) && places.is_sorted(), "{places:?}");
    let mut view = view_of("");
    view.cautions.read.clear();
    let bare = html(&view, &charts(), None, &english());
    assert!(!bare.contains("Rules of this laboratory"));
    assert!(bare.contains("Nobody has stated in this notebook that these cautions were read."));
}
