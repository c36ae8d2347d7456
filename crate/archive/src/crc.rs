//! The checksum of a zip's entries.
//!
//! Its tables are made where they are needed: in the worker's wasm they would take as much room as a whole part of it, since
//! nothing packs them.

/// The polynomial of the CRC-32, its highest power in the lowest bit (RFC 1952, section 8).
const POLYNOMIAL: u32 = 0xedb8_8320;
/// Bytes that are taken at once.
const GROUP: usize = 8;

/// CRC-32 of bytes (PKWARE APPNOTE 6.3.10, 4.4.7; byte by byte it is the code of RFC 1952, section 8).
pub fn crc32(bytes: &[u8]) -> u32 {
    let tables = remainders();
    let (groups, singles) = bytes.as_chunks::<GROUP>();
    let in_groups = groups.iter().fold(!0, |rest: u32, group| {
        let sum = u64::from_le_bytes(*group) ^ u64::from(rest);
        let ahead = tables.iter().rev().zip(sum.to_le_bytes());
        ahead.fold(0, |rest, (table, byte)| rest ^ table[usize::from(byte)])
    });
    !singles.iter().fold(in_groups, |rest, byte| after(&tables[0], rest ^ u32::from(*byte)))
}

/// What is left of each byte with so many more bytes behind it.
fn remainders() -> [[u32; 256]; GROUP] {
    let mut table = [0; 256];
    for (remainder, byte) in table.iter_mut().zip(0..) {
        *remainder = (0..8).fold(byte, |rest, _| (rest >> 1) ^ ((rest & 1) * POLYNOMIAL));
    }
    let mut tables = [table; GROUP];
    for behind in 1..GROUP {
        tables[behind] = tables[behind - 1].map(|rest| after(&table, rest));
    }
    tables
}

/// What is left when one more byte is taken.
fn after(table: &[u32; 256], rest: u32) -> u32 {
    let [byte, ..] = rest.to_le_bytes();
    table[usize::from(byte)] ^ (rest >> 8)
}

#[cfg(test)]
#[path = "crc_test.rs"]
mod tests;
