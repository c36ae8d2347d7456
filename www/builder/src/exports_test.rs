//! Exports whose types are named as they are made, and the same with a slip in each.

use super::misnamed_in;

const EXPORTS: &str = r#"
#[wasm_bindgen]
impl Desk {
    /// A view.
    #[wasm_bindgen(unchecked_return_type = "Types.View")]
    pub fn view(&self) -> JsValue {
        if self.is_blank() {
            return to_js::<View>(&View::default());
        }
        to_js::<View>(&view(self))
    }

    /// Rows.
    #[wasm_bindgen(unchecked_return_type = "Types.Row[]")]
    pub fn rows(
        &self,
        #[wasm_bindgen(unchecked_param_type = "Types.Filter | undefined")] filter: JsValue,
        #[wasm_bindgen(unchecked_param_type = "(message: Types.Message) => string")] say: &Function,
    ) -> Result<JsValue, JsValue> {
        let filter = from_js::<Option<Filter>>(filter, "asked")?;
        Ok(to_js::<Vec<Row>>(&rows(self, filter, say)))
    }
}

/// What is known of a row.
#[wasm_bindgen(unchecked_return_type = "Types.Known | null")]
pub fn known(row: u32) -> JsValue {
    to_js::<Option<Known>>(&known_of(row))
}

/// Files by their names.
#[wasm_bindgen(unchecked_return_type = "[name: string, file: Types.File][]")]
pub fn files() -> JsValue {
    to_js(&kept().collect::<Vec<(&String, &File)>>())
}
"#;

#[test]
fn what_is_made_as_it_is_named_is_no_fault() {
    assert_eq!(misnamed_in("web.rs", EXPORTS), Vec::<String>::new());
}

#[test]
fn a_type_a_list_or_none_that_is_made_otherwise_is_named() {
    for (right, wrong, named) in [
        ("to_js::<View>(", "to_js::<News>(", "Types.View"),
        ("to_js::<View>(", "to_js(", "Types.View"),
        ("to_js::<Vec<Row>>(", "to_js::<Row>(", "Types.Row[]"),
        ("from_js::<Option<Filter>>(", "from_js::<Filter>(", "Types.Filter | undefined"),
        ("to_js::<Option<Known>>(", "to_js::<Known>(", "Types.Known | null"),
        ("&File)>>(", "&Row)>>(", "Types.File]"),
    ] {
        let faults = misnamed_in("web.rs", &EXPORTS.replace(right, wrong));
        assert_eq!(faults.len(), 1, "{faults:?}");
        assert!(faults[0].contains(named), "{faults:?}");
    }
}
