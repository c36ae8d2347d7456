//! The checksum of a zip's entries.

use crc::{CRC_32_ISO_HDLC, Crc, Table};

/// CRC-32 of bytes (PKWARE APPNOTE 6.3.10, 4.4.7), with one small table: the reader of zips has sixteen of its own, which in
/// the worker's wasm take as much room as a whole part of it, since nothing packs them.
pub fn crc32(bytes: &[u8]) -> u32 {
    const CODE: Crc<u32, Table<1>> = Crc::<u32, Table<1>>::new(&CRC_32_ISO_HDLC);
    CODE.checksum(bytes)
}

#[cfg(test)]
#[path = "crc_test.rs"]
mod tests;
