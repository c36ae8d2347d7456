//! Edits as the first builds wrote them, put into the form that has been written since.
//!
//! The very first named an edit, and the way a rail is joined, by a field beside what it carries:
//! `{"do": "set_title", "text": "Tuesday"}`. Those after it had the name hold all fields, also where there is only one:
//! `{"set_title": {"text": "Tuesday"}}`. Both called themselves format 1, so it is the form that tells. It is changed
//! as text, for a reader of each form's own types would weigh several times as much; and it is looked at only where a
//! text can't be read as it is.
//!
//! They also took the uncertainty of the mark at the splitter in metres where it was bare, as that of the other joints.

use std::mem::take;

use litemap::LiteMap;
use serde_json::value::RawValue;

use super::edit::Edit;
use super::log::LogEntry;
use super::splice::{Splice, with_metres};

/// The edits that hold one value, with the field that it stood in.
const HELD: [(&str, &str); 13] = [
    ("add_rail", "rail"),
    ("remove_covariance", "acts_on"),
    ("remove_rail", "rail"),
    ("remove_setting", "setting"),
    ("remove_shared", "shared"),
    ("restore_row", "row"),
    ("set_claim", "claim"),
    ("set_covariance", "covariance"),
    ("set_decimal_mark", "mark"),
    ("set_path", "path"),
    ("set_setting", "setting"),
    ("set_shared", "shared"),
    ("set_title", "text"),
];

/// The text of a notebook file with today's edits; none where no edit of it has an old form.
pub(super) fn file_now(text: &str) -> Option<String> {
    within(text, "log", |log| list_now(log, entry_now))
}

/// The text of an entry of a log with today's edit; none where its edit has no old form.
pub(super) fn entry_now(text: &str) -> Option<String> {
    within(text, "edit", edit_now)
}

/// An entry of the first builds with its unit where it was metres without saying so.
pub(super) fn in_metres(entry: &mut LogEntry) {
    if let Edit::SetSplice { splice: Splice::AtSplitter { uncertainty, .. }, .. } = &mut entry.edit {
        *uncertainty = with_metres(take(uncertainty));
    }
}

fn edit_now(edit: &str) -> Option<String> {
    let named = named(edit, "do");
    let text = named.as_deref().unwrap_or(edit);
    let group = held(text, "together", "edits");
    // Groups were never written inside groups, and are not looked for there: a file can't nest them without end.
    let group = group.map(|edits| list_now(edits, single_now).unwrap_or_else(|| edits.to_owned()));
    group.map(|edits| format!("{{\"together\":{edits}}}")).or_else(|| single_now(text)).or(named)
}

fn single_now(edit: &str) -> Option<String> {
    let named = named(edit, "do");
    let text = named.as_deref().unwrap_or(edit);
    let bare = HELD
        .iter()
        .find_map(|(name, field)| held(text, name, field).map(|value| format!("{{\"{name}\":{value}}}")));
    bare.or_else(|| {
        within(text, "set_splice", |held| within(held, "splice", |splice| self::named(splice, "kind")))
    })
    .or(named)
}

type Object<'a> = LiteMap<&'a str, &'a RawValue>;

fn object(text: &str) -> Option<Object<'_>> {
    serde_json::from_str(text).ok()
}

fn written(object: &Object) -> String {
    let fields: Vec<String> = object.iter().map(|(name, value)| format!("\"{name}\":{value}")).collect();
    format!("{{{}}}", fields.join(","))
}

/// What names itself by the field `tag`: its name, holding the other fields if there are any.
fn named(text: &str, tag: &str) -> Option<String> {
    let mut fields = object(text)?;
    let name = fields.remove(tag)?;
    Some(if fields.is_empty() { name.to_string() } else { format!("{{{name}:{}}}", written(&fields)) })
}

/// The value of the one field that the one name of an object holds.
fn held<'a>(text: &'a str, name: &str, field: &str) -> Option<&'a str> {
    let only = |text: &'a str, name| {
        object(text).filter(|object| object.len() == 1)?.get(name).map(|value| value.get())
    };
    only(only(text, name)?, field)
}

/// An object with what stands under `name` put into today's form.
fn within(text: &str, name: &str, now: impl Fn(&str) -> Option<String>) -> Option<String> {
    let mut fields = object(text)?;
    let changed = RawValue::from_string(now(fields.get(name)?.get())?).ok()?;
    fields.insert(name, &changed);
    Some(written(&fields))
}

/// A list, one of which a line, with what has an old form put into today's; none where nothing has.
fn list_now(list: &str, now: impl Fn(&str) -> Option<String>) -> Option<String> {
    let list: Vec<&RawValue> = serde_json::from_str(list).ok()?;
    let mut changed = false;
    let lines = list.iter().map(|one| {
        let now = now(one.get());
        changed |= now.is_some();
        now.unwrap_or_else(|| one.get().to_owned())
    });
    let lines: Vec<String> = lines.collect();
    changed.then(|| format!("[\n{}\n]", lines.join(",\n")))
}
