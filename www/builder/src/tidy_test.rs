//! Small houses, each with one fault planted, beside the same house without it.

use std::collections::BTreeMap;

use super::{circles, heads, lengths, modules, paths, scripts};
use crate::sources::Sources;

const GUIDE: &str = "## The page's scripts, layer by layer\n\n| what | scripts |\n| --- | --- |\n\
    | ground | `dom.js` |\n| parts | `row.js`, `cell.js` |\n\nSee `src/low.rs`, `words/en.ftl` and `air/`.\n";

/// A sound house, with some of its files written anew.
fn house(changed: &[(&str, &str)]) -> Sources {
    let sound = [
        ("DEVELOPERS.md", GUIDE),
        ("a/src/lib.rs", "//! A.\nmod low;\nmod air;\nmod high;\npub use air::Ciddor;\n"),
        ("a/src/low.rs", "//! Low.\npub struct Low;\n"),
        ("a/src/air/mod.rs", "//! Air.\nmod index;\nmod humid;\npub use {index::Ciddor, humid::Humid};\n"),
        ("a/src/air/index.rs", "//! Index.\nuse crate::low::Low;\npub struct Ciddor(Low);\n"),
        ("a/src/air/humid.rs", "//! Humid.\npub struct Humid(super::Ciddor);\n"),
        ("a/src/high.rs", "//! High.\nuse crate::{air::{Humid, Ciddor as C}, low::Low};\n"),
        ("www/page/dom.js", "/** Elements. */\nexport const el = 1;\n"),
        ("www/page/row.js", "/** A row. */\nimport { el } from \"./dom.js\";\n"),
        ("www/page/cell.js", "/** A cell. */\nimport { el } from \"./dom.js\";\nimport \"./row.js\";\n"),
    ];
    let all = sound.iter().chain(changed).map(|(path, text)| ((*path).to_owned(), (*text).to_owned()));
    Sources(all.collect::<BTreeMap<_, _>>())
}

fn names(faults: &[String], places: &[&str]) {
    assert_eq!(faults.len(), 1, "{faults:?}");
    assert!(places.iter().all(|place| faults[0].contains(place)), "{faults:?}");
}

#[test]
fn a_sound_house_has_no_fault() {
    let sound = house(&[]);
    let exists =
        |path: &str| path.starts_with("www/page/") || ["src/low.rs", "crate/src/air/"].contains(&path);
    let faults = [
        modules(&sound),
        circles(&sound),
        scripts(&sound),
        heads(&sound),
        lengths(&sound),
        paths(&sound, exists),
    ];
    assert_eq!(faults.concat(), Vec::<String>::new());
}

#[test]
fn a_module_may_not_use_one_declared_below_it() {
    let faults = modules(&house(&[("a/src/low.rs", "//! Low.\nuse crate::high::Top;\n")]));
    names(&faults, &["a/src/low.rs uses a/src/high.rs", "a/src/lib.rs"]);
    let inside = "//! Index.\nfn wet() { super::humid::wet() }\n";
    names(
        &modules(&house(&[("a/src/air/index.rs", inside)])),
        &["a/src/air/index.rs uses a/src/air/humid.rs"],
    );
}

#[test]
fn a_name_that_a_face_hands_on_is_followed_to_its_file() {
    let faults = modules(&house(&[("a/src/air/index.rs", "//! Index.\nuse super::Humid;\n")]));
    names(&faults, &["a/src/air/index.rs uses a/src/air/humid.rs"]);
    let all = "//! Air.\nmod index;\nmod humid;\npub use humid::*;\n";
    let changed = [("a/src/air/mod.rs", all), ("a/src/air/index.rs", "//! Index.\nuse super::Humid;\n")];
    names(&modules(&house(&changed)), &["a/src/air/index.rs uses a/src/air/humid.rs"]);
}

#[test]
fn comments_and_tests_import_nothing() {
    let told = "//! Low, see `crate::high::Top`.\n// use crate::high::Top;\n";
    let sound = house(&[("a/src/low.rs", told), ("a/src/low_test.rs", "use crate::high::Top;\n")]);
    assert_eq!(modules(&sound), Vec::<String>::new());
}

#[test]
fn a_circle_is_named_with_its_files_alone() {
    let through = "//! A.\nmod low;\nmod air;\nmod high;\nuse high::Top;\npub struct House(Top);\n";
    let faults = circles(&house(&[
        ("a/src/lib.rs", through),
        ("a/src/high.rs", "//! High.\nuse crate::House;\npub struct Top;\n"),
    ]));
    names(&faults, &["a/src/high.rs, a/src/lib.rs"]);
    names(
        &circles(&house(&[("www/page/row.js", "/** A row. */\nimport \"./cell.js\";\n")])),
        &["www/page/cell.js, www/page/row.js"],
    );
    let late = "/** A row. */\nconst cell = await import('./cell.js');\n";
    names(&circles(&house(&[("www/page/row.js", late)])), &["www/page/cell.js, www/page/row.js"]);
}

#[test]
fn a_script_imports_from_no_layer_below_its_own() {
    let faults = scripts(&house(&[("www/page/dom.js", "/** Elements. */\nimport \"./row.js\";\n")]));
    names(&faults, &["www/page/dom.js imports www/page/row.js"]);
    names(&scripts(&house(&[("www/page/new.js", "/** New. */\n")])), &["www/page/new.js stands in no layer"]);
}

#[test]
fn each_module_begins_with_its_head() {
    names(&heads(&house(&[("a/src/low.rs", "use std::fmt;\n")])), &["a/src/low.rs", "//!"]);
    names(&heads(&house(&[("www/page/dom.js", "// Elements.\n")])), &["www/page/dom.js", "/**"]);
}

#[test]
fn a_file_of_more_than_500_lines_is_too_long() {
    let lines = |count: usize| format!("//! Low.\n{}", "// More.\n".repeat(count - 1));
    assert_eq!(lengths(&house(&[("a/src/low.rs", &lines(500))])), Vec::<String>::new());
    names(&lengths(&house(&[("a/src/low.rs", &lines(501))])), &["a/src/low.rs has 501 lines"]);
}

#[test]
fn the_guide_names_no_place_that_is_gone() {
    let all_but = |gone: &'static str| move |path: &str| !path.ends_with(gone);
    names(&paths(&house(&[]), all_but("src/low.rs")), &["src/low.rs"]);
    names(&paths(&house(&[]), all_but("air/")), &["air/"]);
    names(&paths(&house(&[]), all_but("words/en.ftl")), &["words/en.ftl"]);
}

#[test]
fn what_is_made_and_the_tables_of_any_language_are_no_places() {
    let guide = "The `www/dist/slope-of-light.html`, a `notebook.json`, and `www/page/words/XX.ftl`.\n";
    assert_eq!(paths(&house(&[("DEVELOPERS.md", guide)]), |_| false), Vec::<String>::new());
}
