use super::crc32;

/// The usual check of a CRC is that of the digits 1 to 9: R. N. Williams, "A Painless Guide to CRC Error Detection
/// Algorithms" (1993), gives it for CRC-32. The others are known values of the same checksum. From memory.
#[test]
fn known_checksums() {
    for (text, crc) in [
        ("123456789", 0xcbf4_3926),
        ("", 0),
        ("a", 0xe8b7_be43),
        ("The quick brown fox jumps over the lazy dog", 0x414f_a339),
    ] {
        assert_eq!(crc32(text.as_bytes()), crc, "{text}");
    }
}
