//! Literals found in a script.

use super::literals;

#[test]
fn literals_are_found_wherever_they_stand() {
    let source = "// 'in a remark'\n/* \"and here\" */ const a = b / 2 / c; // it's\n\
        say('plain', \"it's\", `of ${list['x'].map((one) => `<${one}>`)} and ${'}'}`); text.replace(/['\"/]+[/']/g, 'y\\'s');";
    let found: Vec<String> = literals(source).into_iter().map(|literal| literal.text).collect();
    assert_eq!(found, ["plain", "it's", "of ", "x", "<", ">", " and ", "}", "", "y\\'s"],);
    let line = literals("one();\nel('p', { class: 'two words' })");
    assert_eq!(line.last().map(|literal| literal.line_before.as_str()), Some("el('p', { class: "));
}
