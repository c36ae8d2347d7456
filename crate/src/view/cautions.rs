//! The cautions that page and report begin with: their order and their groups, once for both.

use serde::Serialize;

use crate::message;
use crate::words::Message;

/// Cautions that belong together.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct CautionGroup {
    /// What they are about.
    pub title: Message,
    /// Each of them.
    pub cautions: Vec<Message>,
}

/// All cautions, in the order in which they are read. Controls for users: IEC TR 60825-14; to whom they defer stands
/// above them (`cautions-lead`).
pub fn caution_groups() -> Vec<CautionGroup> {
    let group = |title, cautions: &[Message]| CautionGroup { title, cautions: cautions.to_vec() };
    vec![
        group(
            message!("cautions-group-beam"),
            &[message!("cautions-eyes"), message!("cautions-height"), message!("cautions-reflections")],
        ),
        group(
            message!("cautions-group-protection"),
            &[message!("cautions-eyewear"), message!("cautions-skin")],
        ),
        group(
            message!("cautions-group-trained"),
            &[message!("cautions-alignment"), message!("cautions-voltage"), message!("cautions-gas")],
        ),
        group(message!("cautions-group-room"), &[message!("cautions-room")]),
        group(
            message!("cautions-group-stop"),
            &[message!("cautions-stop"), message!("cautions-exposure"), message!("cautions-rules")],
        ),
    ]
}
