//! The colour space that the colours of a page are meant in, as an ICC profile.
//!
//! sRGB (IEC 61966-2-1) as a display profile of version 4.2 (ICC.1:2004-10): primaries adapted to
//! D50, the transfer curve as a formula. The numbers are those of the standard and of the ICC's
//! own profile of it (from memory); only they are in it.

/// D50, the white of the profile connection space (ICC.1:2004-10, 6.3.4.3).
const D50: [f64; 3] = [0.9642, 1.0, 0.8249];
/// The primaries under D50: red, green, blue.
const PRIMARIES: [[f64; 3]; 3] = [
    [0.436_07, 0.222_49, 0.013_92],
    [0.385_15, 0.716_87, 0.097_08],
    [0.143_07, 0.060_61, 0.714_10],
];
/// From D65 to D50 by the Bradford method, row by row.
const ADAPTED: [f64; 9] = [
    1.047_93, 0.022_947, -0.050_192, 0.029_628, 0.990_434, -0.017_074, -0.009_243, 0.015_055,
    0.751_874,
];
/// `y = (a x + b)^g` from d on, `y = c x` below: g, a, b, c, d.
const CURVE: [f64; 5] = [2.4, 1.0 / 1.055, 0.055 / 1.055, 1.0 / 12.92, 0.040_45];

/// What the profile is called, also in the output intent.
pub(super) const NAME: &str = "sRGB IEC61966-2.1";

/// Returns the profile's bytes.
pub(super) fn srgb() -> Vec<u8> {
    let curve = element("para", &[vec![0, 3, 0, 0], numbers(&CURVE)].concat());
    let elements = [
        (&["desc"][..], words(NAME)),
        (&["cprt"], words("Free to use")),
        (&["wtpt"], element("XYZ ", &numbers(&D50))),
        (&["chad"], element("sf32", &numbers(&ADAPTED))),
        (&["rXYZ"], element("XYZ ", &numbers(&PRIMARIES[0]))),
        (&["gXYZ"], element("XYZ ", &numbers(&PRIMARIES[1]))),
        (&["bXYZ"], element("XYZ ", &numbers(&PRIMARIES[2]))),
        (&["rTRC", "gTRC", "bTRC"], curve),
    ];
    let count: usize = elements.iter().map(|(tags, _)| tags.len()).sum();
    let mut place = HEADER + 4 + 12 * count;
    let (mut table, mut data) = ((count as u32).to_be_bytes().to_vec(), Vec::new());
    for (tags, bytes) in &elements {
        for tag in *tags {
            table.extend(tag.as_bytes());
            table.extend((place as u32).to_be_bytes());
            table.extend((bytes.len() as u32).to_be_bytes());
        }
        place += bytes.len();
        data.extend(bytes);
    }
    [header(place), table, data].concat()
}

const HEADER: usize = 128;

/// The header of a display profile of so many bytes (ICC.1:2004-10, 7.2).
fn header(size: usize) -> Vec<u8> {
    let mut header = vec![0; HEADER];
    let mut put = |at: usize, bytes: &[u8]| header[at..at + bytes.len()].copy_from_slice(bytes);
    put(0, &(size as u32).to_be_bytes());
    put(8, &[4, 0x20]);
    put(12, b"mntrRGB XYZ ");
    // Made on the first of January 2026.
    put(24, &[0x07, 0xEA, 0, 1, 0, 1]);
    put(36, b"acsp");
    put(68, &numbers(&D50));
    header
}

/// An element: its type, four bytes of nothing, and what it holds, to a multiple of four bytes.
fn element(kind: &str, held: &[u8]) -> Vec<u8> {
    let mut bytes = [kind.as_bytes(), &[0; 4], held].concat();
    bytes.resize(bytes.len().next_multiple_of(4), 0);
    bytes
}

/// A text in English.
fn words(text: &str) -> Vec<u8> {
    let units: Vec<u8> = text.encode_utf16().flat_map(u16::to_be_bytes).collect();
    // One record of 12 bytes, whose text begins 28 bytes into the element.
    let record = [1, 12].map(u32::to_be_bytes).concat();
    let place = [units.len() as u32, 28].map(u32::to_be_bytes).concat();
    element("mluc", &[record, b"enUS".to_vec(), place, units].concat())
}

/// Numbers with sixteen bits before and after the point.
fn numbers(values: &[f64]) -> Vec<u8> {
    values.iter().flat_map(|value| ((value * 65_536.0).round() as i32).to_be_bytes()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_primaries_make_white() {
        for axis in 0..3 {
            let sum: f64 = PRIMARIES.iter().map(|own| own[axis]).sum();
            // The standard's D65 is rounded to the fourth place, which comes out in blue.
            assert!((sum - D50[axis]).abs() < 3e-4, "{axis}: {sum}");
        }
    }

    #[test]
    fn every_element_lies_where_the_table_says() {
        let profile = srgb();
        let word = |at: usize| u32::from_be_bytes(profile[at..at + 4].try_into().unwrap()) as usize;
        assert_eq!(word(0), profile.len());
        assert_eq!(&profile[36..40], b"acsp");
        for row in 0..word(128) {
            let at = 132 + 12 * row;
            let (place, size) = (word(at + 4), word(at + 8));
            assert!(place % 4 == 0 && place + size <= profile.len());
            let kind = &profile[place..place + 4];
            assert!([&b"mluc"[..], b"XYZ ", b"sf32", b"para"].contains(&kind), "{kind:?}");
        }
    }
}
