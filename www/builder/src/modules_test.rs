//! Joining of modules: each form that is taken, and each that is refused.

#![expect(clippy::unwrap_used, reason = "tests")]

use std::path::{Path, PathBuf};

use anyhow::Context as _;

use super::{Binding, Export, Form, Import, Module, gather, join_two, resolve};

fn joined(files: &[(&str, &str)], entry: &str) -> anyhow::Result<String> {
    joined_as(Form::Module, files, entry)
}

fn joined_as(form: Form, files: &[(&str, &str)], entry: &str) -> anyhow::Result<String> {
    let read = |path: &Path| {
        let found = files.iter().find(|(name, _)| Path::new(name) == path);
        found.map(|(_, text)| (*text).to_owned()).with_context(|| format!("no {}", path.display()))
    };
    gather(&read, Path::new(entry), form)
}

fn one(outer: &str, inner: &str) -> Binding {
    Binding::One { outer: outer.to_owned(), inner: inner.to_owned() }
}

fn export(inner: &str, outer: &str) -> Export {
    Export { outer: outer.to_owned(), inner: inner.to_owned() }
}

#[test]
fn every_form_of_import_is_read() {
    let source = "/** head, import { no } from './no.js' */\nimport './a.js';\nimport { b, c as d } from \"./b.js\"\n\
                  import * as e from './e.js';\nimport f, {\n  g,\n} from './f.js';\nimport h, * as i from './h.js';\n\
                  const x = import.meta.url;\n";
    let module = Module::parse(source).unwrap();
    let import = |bindings, from| Import { bindings, from };
    assert_eq!(
        module.imports,
        [
            import(vec![], "./a.js"),
            import(vec![one("b", "b"), one("c", "d")], "./b.js"),
            import(vec![Binding::All("e".to_owned())], "./e.js"),
            import(vec![one("default", "f"), one("g", "g")], "./f.js"),
            import(vec![one("default", "h"), Binding::All("i".to_owned())], "./h.js"),
        ]
    );
    assert_eq!(module.body.trim(), "const x = import.meta.url;");
}

#[test]
fn every_form_of_export_is_read() {
    let source = "export function a() { return 1; }\nexport async function b() {}\nexport class C {}\n\
                  export const d = `\nexport function no() {}\n`;\nconst e = 1, f = 2;\nexport { e, f as default };\n\
                  export function* g() {}\n";
    let module = Module::parse(source).unwrap();
    let exports = [
        export("a", "a"),
        export("b", "b"),
        export("C", "C"),
        export("d", "d"),
        export("e", "e"),
        export("f", "default"),
        export("g", "g"),
    ];
    assert_eq!(module.exports, exports);
    let body = "function a() { return 1; }\nasync function b() {}\nclass C {}\nconst d = `\nexport function no() {}\n`;\n\
                const e = 1, f = 2;\n\nfunction* g() {}\n";
    assert_eq!(module.body, body);
}

#[test]
fn forms_that_would_change_their_meaning_are_refused() {
    for source in [
        "export default 1;",
        "export let a = 1;",
        "export * from './a.js';",
        "export { a } from './a.js';",
        "export const { a } = b;",
        "const a = 1;\nimport { b } from './b.js';",
        "const a = await import('./b.js');",
        "import a b from './b.js';",
    ] {
        assert!(Module::parse(source).is_err(), "{source}");
    }
}

#[test]
fn words_that_only_look_like_imports_stay() {
    let source = "const a = 'import x';\n// import y\nb.import();\nconst important = { import: 1 };\n";
    assert_eq!(Module::parse(source).unwrap().body, source);
}

#[test]
fn modules_stand_after_what_they_need_and_once() {
    let files = [
        ("app.js", "import { a } from './parts/a.js';\nimport { b } from './b.js';\nstart(a, b);"),
        ("parts/a.js", "import { b } from '../b.js';\nexport const a = b;"),
        ("b.js", "export const b = 1;"),
    ];
    let text = joined(&files, "app.js").unwrap();
    let place = |needle: &str| text.find(needle).unwrap();
    assert!(place("// b.js") < place("// parts/a.js") && place("// parts/a.js") < place("// app.js"));
    assert_eq!(text.matches("// b.js").count(), 1);
    assert!(text.contains("const b = $module0.b;\nconst a = b;\nreturn Object.freeze({ a: a });"));
    assert!(text.contains("const a = $module1.a;\nconst b = $module0.b;\nstart(a, b);"));
}

#[test]
fn a_classic_script_is_one_strict_function_without_forms_of_a_module() {
    let files = [
        ("worker.js", "import { b } from './b.js';\nonmessage = () => b('import.meta');"),
        ("b.js", "export async function b(a) { await a; }"),
    ];
    let text = joined_as(Form::Classic, &files, "worker.js").unwrap();
    let expected = "(() => {\n'use strict';\n\
                    // b.js\nconst $module0 = (() => {\nasync function b(a) { await a; }\n\
                    return Object.freeze({ b: b });\n})();\n\
                    // worker.js\nconst $module1 = (() => {\nconst b = $module0.b;\nonmessage = () => b('import.meta');\n\
                    return Object.freeze({  });\n})();\n})();\n";
    assert_eq!(text, expected);
    let own_address = [("a.js", "const x = import.meta.url;")];
    assert!(joined(&own_address, "a.js").is_ok());
    let refused = format!("{:#}", joined_as(Form::Classic, &own_address, "a.js").unwrap_err());
    assert!(refused.contains("a.js has an import.meta"), "{refused}");
}

#[test]
fn circles_and_strangers_are_refused_by_name() {
    let circle = [("a.js", "import './b.js';"), ("b.js", "import './a.js';")];
    assert!(format!("{:#}", joined(&circle, "a.js").unwrap_err()).contains("a.js is in a circle"));
    let missing = format!("{:#}", joined(&[("a.js", "import './c.js';")], "a.js").unwrap_err());
    assert!(missing.contains("no c.js"), "{missing}");
    let nothing = [("a.js", "import { x } from './b.js';"), ("b.js", "export const y = 1;")];
    assert!(format!("{:#}", joined(&nothing, "a.js").unwrap_err()).contains("a.js takes from b.js"));
}

#[test]
fn imports_are_relative_and_stay_in_the_folder() {
    assert_eq!(resolve(Path::new("parts/a.js"), "../b.js").unwrap(), PathBuf::from("b.js"));
    assert_eq!(resolve(Path::new("a.js"), "./parts/b.js").unwrap(), PathBuf::from("parts/b.js"));
    assert!(resolve(Path::new("a.js"), "../b.js").is_err());
    assert!(resolve(Path::new("a.js"), "b").is_err());
}

#[test]
fn a_later_script_shares_the_modules_of_the_first() {
    let folder = std::env::temp_dir().join(format!("slope-modules-{}", std::process::id()));
    std::fs::create_dir_all(&folder).unwrap();
    let files = [
        ("a.js", "import { x } from './x.js';\nx();\n"),
        ("b.js", "import { x } from './x.js';\nimport { y } from './y.js';\ny(x);\n"),
        ("x.js", "export function x() {}\n"),
        ("y.js", "export function y() {}\n"),
    ];
    for (name, text) in files {
        std::fs::write(folder.join(name), text).unwrap();
    }
    let [first, later] = join_two(&folder, Path::new("a.js"), Path::new("b.js")).unwrap();
    std::fs::remove_dir_all(&folder).unwrap();
    assert!(first.contains("globalThis.SLOPE_MODULES = {"), "{first}");
    assert!(first.contains("\"x.js\": $module0"), "{first}");
    assert!(later.contains("const x = globalThis.SLOPE_MODULES[\"x.js\"].x;"), "{later}");
    assert!(later.contains("function y() {}") && !later.contains("function x() {}"), "{later}");
}
