//! The notebooks kept in local storage, and the settings.
//!
//! Keys: `slope-of-light/list` (the list), `slope-of-light/notebook/ID` (a snapshot, as `notebook.json`),
//! `slope-of-light/setting/NAME`. A write that fails leaves what was stored before. Where the browser lets the page have
//! no local storage, all of it is held in memory, for this visit alone.

use std::cell::{OnceCell, RefCell};

use gloo_storage::errors::StorageError;
use gloo_storage::{LocalStorage, Storage};
use litemap::LiteMap;
use serde::Serialize;
use serde::de::DeserializeOwned;
use wasm_bindgen::prelude::*;

use super::{from_json, thrown, to_js};
use crate::message;
use crate::notebook::read;
use crate::view::StoredNotebook;

const LIST: &str = "slope-of-light/list";
/// What the keys of snapshots begin with.
const SNAPSHOT: &str = "slope-of-light/notebook/";

thread_local! {
    /// Whether there is a local storage.
    static STORED: OnceCell<bool> = const { OnceCell::new() };
    /// What is held where there is none, as JSON by its key.
    static HELD: RefCell<LiteMap<String, String>> = const { RefCell::new(LiteMap::new()) };
}

/// Whether notebooks and settings outlive the visit. Where a browser's settings forbid it, asking for the local storage
/// throws; other browsers give none (HTML Standard, 12.2.3).
#[wasm_bindgen]
pub fn shelf_outlives_visit() -> bool {
    let ask = || web_sys::window().and_then(|window| window.local_storage().ok().flatten()).is_some();
    STORED.with(|stored| *stored.get_or_init(ask))
}

fn get<T: DeserializeOwned>(key: &str) -> Option<T> {
    if shelf_outlives_visit() {
        return from_json(&LocalStorage::raw().get_item(key).ok()??).ok();
    }
    HELD.with_borrow(|held| from_json(held.get(key)?).ok())
}

fn set<T: Serialize>(key: &str, value: &T) -> Result<(), StorageError> {
    if shelf_outlives_visit() {
        return LocalStorage::set(key, value);
    }
    let text = serde_json::to_string(value)?;
    HELD.with_borrow_mut(|held| held.insert(key.to_owned(), text));
    Ok(())
}

fn delete(key: &str) {
    if shelf_outlives_visit() {
        LocalStorage::delete(key);
    } else {
        HELD.with_borrow_mut(|held| held.remove(key));
    }
}

fn notebook_key(id: &str) -> String {
    format!("{SNAPSHOT}{id}")
}

fn setting_key(name: &str) -> String {
    format!("slope-of-light/setting/{name}")
}

fn list() -> Vec<StoredNotebook> {
    get(LIST).unwrap_or_else(told_by_snapshots)
}

/// The list as the snapshots tell it, where there is none or it can't be read: one that lacked them would be written in its
/// place, and nothing would lead to them any more. Which were binned they don't tell.
fn told_by_snapshots() -> Vec<StoredNotebook> {
    if !shelf_outlives_visit() {
        return Vec::new();
    }
    let storage = LocalStorage::raw();
    let keys = (0..LocalStorage::length()).filter_map(|place| storage.key(place).ok()?);
    keys.filter_map(|key| Some(snapshot(key.strip_prefix(SNAPSHOT)?, &key))).collect()
}

/// What a snapshot tells of its notebook; one that can't be read still has its place.
fn snapshot(id: &str, key: &str) -> StoredNotebook {
    let notebook = get(key).and_then(|text: String| read(&text).ok()).unwrap_or_default();
    StoredNotebook {
        id: id.to_owned(),
        title: notebook.state().title.clone(),
        changed: notebook.log().last().map_or_else(String::new, |entry| entry.at.clone()),
        binned: false,
    }
}

fn refused(error: &StorageError) -> JsValue {
    // Web IDL, QuotaExceededError; older browsers have it with a prefix or a suffix.
    let quota = matches!(error, StorageError::JsError(js) if js.name.contains("Quota"));
    if quota { thrown("quota", message!("shelf-full")) } else { thrown("storage", message!("shelf-refused")) }
}

/// The notebooks on the shelf, the last changed first.
#[wasm_bindgen(unchecked_return_type = "Types.StoredNotebook[]")]
pub fn shelf_list() -> JsValue {
    let mut kept = list();
    kept.sort_by(|a, b| b.changed.cmp(&a.changed));
    to_js::<Vec<StoredNotebook>>(&kept)
}

/// The snapshot of a notebook.
#[wasm_bindgen]
pub fn shelf_read(id: &str) -> Option<String> {
    get(&notebook_key(id))
}

/// Writes the snapshot of a notebook and puts it on the list.
///
/// # Errors
/// `{kind: "quota" | "storage", message}`; nothing stored before is touched.
#[wasm_bindgen]
pub fn shelf_write(id: &str, title: &str, changed: &str, text: &str) -> Result<(), JsValue> {
    set(&notebook_key(id), &text).map_err(|e| refused(&e))?;
    let mut kept = list();
    let binned = kept.iter().find(|k| k.id == id).is_some_and(|k| k.binned);
    kept.retain(|k| k.id != id);
    kept.push(StoredNotebook {
        id: id.to_owned(),
        title: title.to_owned(),
        changed: changed.to_owned(),
        binned,
    });
    set(LIST, &kept).map_err(|e| refused(&e))
}

/// Puts a notebook into the bin, or takes it out again.
///
/// # Errors
/// `{kind, message}` if the list can't be written.
#[wasm_bindgen]
pub fn shelf_bin(id: &str, binned: bool) -> Result<(), JsValue> {
    let mut kept = list();
    for notebook in kept.iter_mut().filter(|k| k.id == id) {
        notebook.binned = binned;
    }
    set(LIST, &kept).map_err(|e| refused(&e))
}

/// Forgets a notebook for good.
///
/// # Errors
/// `{kind, message}` if the list can't be written.
#[wasm_bindgen]
pub fn shelf_forget(id: &str) -> Result<(), JsValue> {
    let mut kept = list();
    kept.retain(|k| k.id != id);
    delete(&notebook_key(id));
    set(LIST, &kept).map_err(|e| refused(&e))
}

/// A setting of the page.
#[wasm_bindgen]
pub fn setting_read(name: &str) -> Option<String> {
    get(&setting_key(name))
}

/// Writes a setting of the page; a full storage forgets it.
#[wasm_bindgen]
pub fn setting_write(name: &str, value: &str) {
    // A setting that can't be kept is asked for again: nothing of a notebook hangs on it.
    drop(set(&setting_key(name), &value));
}
