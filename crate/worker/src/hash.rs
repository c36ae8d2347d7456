//! The hash by which the notebook knows a file, where the browser keeps its own, faster one from a page: when that came
//! over a connection that is not secure.

use sha2::{Digest, Sha256};

/// SHA-256 (FIPS 180-4) in small hexadecimal digits.
///
/// # Example
/// ```
/// // FIPS 180-4's example of one block, from memory.
/// let hash = slope_worker::hash::sha256(b"abc");
/// assert_eq!(hash, "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
/// ```
pub fn sha256(bytes: &[u8]) -> String {
    let digit = |nibble: u8| char::from_digit(u32::from(nibble), 16).unwrap_or('0');
    Sha256::digest(bytes).iter().flat_map(|byte| [digit(byte >> 4), digit(byte & 15)]).collect()
}
