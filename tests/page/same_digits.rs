//! The same digits in a browser as natively, bit for bit: the analysis of the demo and of 200 random notebooks, and a
//! block of Monte Carlo trials.
//!
//! The native digests are written first (example `digests`) and handed in when this test is compiled.
#![cfg(target_arch = "wasm32")]
#![expect(clippy::expect_used, reason = "tests")]

mod sameness;

use sameness::{RANDOM_NOTEBOOKS, digests};
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

const NATIVE: &str = include_str!(env!("NATIVE_DIGESTS"));

#[wasm_bindgen_test]
fn the_browser_gives_the_native_digits() {
    let native: Vec<&str> = NATIVE.lines().collect();
    let here = digests().expect("the benches are sound");
    assert_eq!(native.len() as u64, RANDOM_NOTEBOOKS + 2);
    assert!(native.last().is_some_and(|trials| trials.starts_with("10000 ")), "trials were drawn");
    assert_eq!(native.len(), here.len());
    for (place, (native, here)) in native.iter().zip(&here).enumerate() {
        assert_eq!(native, here, "place {place}: 0 is the demo, the last is the trials");
    }
}
