//! The checksum against values that others give, and against what the reader of zips has of its own.

use super::crc32;

/// As zlib 1.2 gives them: that of the nine digits tells the usual codes apart.
#[test]
fn the_digits_have_the_checksum_of_zlib() {
    assert_eq!(crc32(b"123456789"), 0xcbf4_3926);
    assert_eq!(crc32(b""), 0);
}

#[test]
fn it_is_the_checksum_that_other_packers_write() {
    let bytes: Vec<u8> = (0..5000_u32).map(|place| (place * place % 251) as u8).collect();
    for length in [1, 2, 15, 16, 17, 255, 256, 5000] {
        assert_eq!(crc32(&bytes[..length]), rawzip::crc32(&bytes[..length]), "{length} bytes");
    }
}
