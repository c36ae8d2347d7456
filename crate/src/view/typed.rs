//! Numbers typed beside the notebook, such as how a trace file is laid out: read by the notebook's own decimal mark, and
//! written by it.

use serde::Serialize;

use crate::message;
use crate::quantity::{DecimalMark, Unit, exact, parse_alone};
use crate::words::Message;

/// A number as read.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct TypedNumber {
    /// Its value; none where it can't be read or used.
    pub value: Option<f64>,
    /// What is wrong and what to do; none if nothing is.
    pub problem: Option<Message>,
}

impl TypedNumber {
    fn refused(problem: Message) -> Self {
        Self { value: None, problem: Some(problem) }
    }
}

/// A time above zero, ns; a unit may be typed.
pub fn time(text: &str, mark: DecimalMark) -> TypedNumber {
    match parse_alone(text, mark, Unit::NANOSECOND) {
        Ok(time) if time > 0.0 => TypedNumber { value: Some(time), ..Default::default() },
        Ok(_) => TypedNumber::refused(message!("number-not_positive", found = text)),
        Err(error) => TypedNumber::refused(error.message()),
    }
}

/// A whole number from `least` to `most`: a count, so digits alone.
pub fn whole_number(text: &str, least: u32, most: u32) -> TypedNumber {
    match text.trim().parse::<u32>() {
        Ok(number) if (least..=most).contains(&number) => {
            TypedNumber { value: Some(f64::from(number)), ..Default::default() }
        }
        _ => TypedNumber::refused(message!(
            "number-not_whole",
            found = text,
            least = least.to_string(),
            most = most.to_string()
        )),
    }
}

/// A number as it would be typed.
pub fn number_text(value: f64, mark: DecimalMark) -> String {
    exact(value).replace('.', &mark.char().to_string())
}

#[cfg(test)]
#[path = "typed_test.rs"]
mod tests;
