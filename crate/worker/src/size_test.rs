//! Headers written by hand, byte by byte as the specifications lay them out (see `size`).

use super::{Size, SizeError, is_picture, is_whole, size};

const fn of(width: u32, height: u32) -> Size {
    Size { width, height }
}

/// W3C PNG, 5.2 (signature), 11.2.1 (IHDR).
fn png(width: u32, height: u32) -> Vec<u8> {
    let mut bytes = b"\x89PNG\r\n\x1a\n\0\0\0\x0dIHDR".to_vec();
    bytes.extend(width.to_be_bytes());
    bytes.extend(height.to_be_bytes());
    bytes.extend(b"\x08\x06\0\0\0\0\0\0\0");
    bytes
}

/// ITU-T T.81, B.2.2: a segment, then a frame header of marker `sof`.
fn jpeg(sof: u8, width: u16, height: u16) -> Vec<u8> {
    let mut bytes = b"\xff\xd8\xff\xe1\0\x08Exif\0\0\xff\xff\xc4\0\x04\x11\x22".to_vec();
    bytes.extend([0xff, sof, 0, 11, 8]);
    bytes.extend(height.to_be_bytes());
    bytes.extend(width.to_be_bytes());
    bytes.extend([1, 1, 0x11, 0]);
    bytes
}

/// RFC 9649, 2.4: the container; a chunk with its length.
fn webp(kind: &[u8], data: &[u8]) -> Vec<u8> {
    let mut bytes = b"RIFF\x40\0\0\0WEBP".to_vec();
    bytes.extend(kind);
    bytes.extend(u32::try_from(data.len()).unwrap_or(0).to_le_bytes());
    bytes.extend(data);
    bytes
}

/// GIF89a, sections 18 to 20: screen, a table of two colours, an extension, an image.
fn gif(screen: [u16; 2], image: [u16; 4]) -> Vec<u8> {
    let mut bytes = b"GIF89a".to_vec();
    bytes.extend(screen.iter().flat_map(|side| side.to_le_bytes()));
    bytes.extend(b"\x80\0\0\0\0\0\xff\xff\xff\x21\xf9\x04\0\0\0\0\0\x2c");
    bytes.extend(image.iter().flat_map(|side| side.to_le_bytes()));
    bytes
}

fn all() -> Vec<Vec<u8>> {
    vec![
        png(4000, 3000),
        jpeg(0xc0, 4000, 3000),
        // 4000 is 0x0fa0 and 3000 is 0x0bb8; the two bits above ask for scaling.
        webp(b"VP8 ", b"\x10\0\0\x9d\x01\x2a\xa0\x4f\xb8\x8b"),
        // 3999 | 2999 << 14 is 0x02edcf9f.
        webp(b"VP8L", b"\x2f\x9f\xcf\xed\x02"),
        webp(b"VP8X", b"\x08\0\0\0\x9f\x0f\0\xb7\x0b\0"),
        gif([4000, 3000], [0, 0, 4000, 3000]),
    ]
}

#[test]
fn each_kind_tells_its_size() {
    for bytes in all() {
        assert_eq!(size(&bytes), Ok(of(4000, 3000)), "{bytes:x?}");
    }
}

#[test]
fn every_frame_header_of_a_jpeg_counts_and_no_table_does() {
    for sof in 0xc0..=0xcf_u8 {
        let expected = match sof {
            0xc4 | 0xc8 | 0xcc => Err(SizeError::Cut),
            _ => Ok(of(640, 480)),
        };
        assert_eq!(size(&jpeg(sof, 640, 480)), expected, "{sof:x}");
    }
}

#[test]
fn cut_off_anywhere_it_is_said_to_be_cut_or_to_be_no_picture() {
    for bytes in all() {
        for length in 0..bytes.len() {
            let short = size(&bytes[..length]);
            let told =
                matches!(short, Err(SizeError::Cut | SizeError::Unknown)) || short == Ok(of(4000, 3000));
            assert!(told, "{length}: {short:?}");
        }
        assert_eq!(size(&bytes[..bytes.len() / 2]), Err(SizeError::Cut));
    }
}

#[test]
fn sixty_four_million_pixels_and_no_more() {
    assert_eq!(size(&png(8000, 8000)), Ok(of(8000, 8000)));
    let refused = size(&png(8001, 8000));
    assert_eq!(refused, Err(SizeError::TooLarge { width: 8001, height: 8000 }));
    let told = refused.map_err(|error| error.message("wall.png"));
    let values = told.err().filter(|told| told.id == "size-too_large").map(|told| told.values);
    for (name, value) in [("file", "wall.png"), ("width", "8001"), ("height", "8000"), ("most", "64")] {
        assert_eq!(values.as_ref().and_then(|values| values.get(name)), Some(&value.into()), "{name}");
    }
    assert!(matches!(size(&png(u32::MAX, u32::MAX)), Err(SizeError::TooLarge { .. })));
}

#[test]
fn an_image_that_reaches_beyond_its_screen_counts() {
    assert_eq!(
        size(&gif([1, 1], [100, 10, 60_000, 60_000])),
        Err(SizeError::TooLarge { width: 60_100, height: 60_010 })
    );
}

/// ISO/IEC 14496-12, 4.3: a box of a size and the type `ftyp`, its major brand, a version, and compatible brands.
fn boxed(brand: [u8; 4]) -> Vec<u8> {
    [b"\0\0\0\x18ftyp".as_slice(), &brand, b"\0\0\0\0mif1heic\0\0\x0f\xa0meta"].concat()
}

#[test]
fn heif_is_refused_as_what_it_is() {
    for brand in [b"heic", b"heix", b"hevc", b"mif1", b"msf1"] {
        assert_eq!(size(&boxed(*brand)), Err(SizeError::Heif));
        assert_eq!(SizeError::Heif.message("IMG 1").id, "size-heif");
    }
    // A film, and a box cut off before its brand.
    assert_eq!(size(&boxed(*b"isom")), Err(SizeError::Unknown));
    assert_eq!(size(&boxed(*b"heic")[..10]), Err(SizeError::Unknown));
}

#[test]
fn a_picture_is_told_by_its_first_bytes() {
    for bytes in all().into_iter().chain([boxed(*b"heic")]) {
        assert!(is_picture(&bytes[..bytes.len().min(32)]), "{bytes:x?}");
    }
    for bytes in
        [b"".as_slice(), b"t (ns),A (V)\n0,0.01\n", b"PK\x03\x04", b"{\"kind\":", b"RIFF\x40\0\0\0WAVEfmt "]
    {
        assert!(!is_picture(bytes), "{bytes:x?}");
    }
}

/// ITU-T T.81, B.1.1.2 and B.1.1.5: in coded data FF stands before 00, or in a marker that restarts them (D0 to D7); B.2.1: a
/// second scan may follow, and EOI (FF D9) ends the picture. That of a small picture in a segment does not.
#[test]
fn a_jpeg_ends_where_its_end_is_marked() {
    let header = b"\xff\xd8\xff\xe1\0\x06\xff\xd8\xff\xd9\xff\xc0\0\x0b\x08\0\x08\0\x08\x01\x01\x11\0";
    let scan = b"\xff\xda\0\x08\x01\x01\0\0\x3f\0\x5a\xff\0\x5a\xff\xd0\x5a";
    let bytes = [header.as_slice(), scan, scan, b"\xff\xff\xd9"].concat();
    assert_eq!(size(&bytes), Ok(of(8, 8)));
    assert!(is_whole(&bytes));
    assert!(is_whole(&[bytes.as_slice(), b"what a camera adds"].concat()));
    for length in 3..bytes.len() {
        assert!(!is_whole(&bytes[..length]), "{length}");
    }
    assert!(all().iter().filter(|bytes| !bytes.starts_with(b"\xff\xd8")).all(|bytes| is_whole(bytes)));
}

#[test]
fn nonsense_is_refused() {
    assert_eq!(size(b""), Err(SizeError::Unknown));
    assert_eq!(size(b"<svg xmlns='http://www.w3.org/2000/svg'/>"), Err(SizeError::Unknown));
    assert_eq!(size(b"RIFF\x40\0\0\0WAVEfmt "), Err(SizeError::Unknown));
    assert_eq!(size(&png(0, 10)), Err(SizeError::Damaged));
    // ITU-T T.81, B.2.2 allows a height of 0 that is told later (DNL); browsers don't.
    assert_eq!(size(&jpeg(0xc0, 10, 0)), Err(SizeError::Damaged));
    assert_eq!(size(b"\xff\xd8\xff\xe1\0\x01"), Err(SizeError::Damaged));
    assert_eq!(size(b"\xff\xd8\xff\xda\0\x08"), Err(SizeError::Damaged));
    assert_eq!(size(&webp(b"JUNK", b"\0\0")), Err(SizeError::Damaged));
}
