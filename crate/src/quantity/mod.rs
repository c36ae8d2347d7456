//! (to come)
/// How decimal numbers are written.
#[derive(serde::Serialize, serde::Deserialize, Clone, Copy, PartialEq, Eq, Debug, Default)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub enum DecimalMark {
    /// 1.5
    #[default]
    Point,
    /// 1,5
    Comma,
}
