//! CRC-32, the checksum of a zip's entries (PKWARE APPNOTE 6.3.10, 4.4.7; ITU-T V.42, 8.1.1.6.2).
//!
//! Bit by bit: a table of remainders would be faster, and hardly shrink when the page is packed for delivery.

/// The generator polynomial, lowest bit first.
const POLYNOMIAL: u32 = 0xedb8_8320;

/// The CRC-32 of `bytes`.
pub(super) fn crc32(bytes: &[u8]) -> u32 {
    !bytes.iter().fold(u32::MAX, |crc, &byte| (0..8).fold(crc ^ u32::from(byte), |crc, _| shifted(crc)))
}

/// The remainder one bit further on.
fn shifted(crc: u32) -> u32 {
    let carry = if crc & 1 == 1 { POLYNOMIAL } else { 0 };
    (crc >> 1) ^ carry
}

#[cfg(test)]
#[path = "checksum_test.rs"]
mod tests;
