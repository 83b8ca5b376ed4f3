//! The code on a card as a short text that checks itself, and back.
//!
//! ```text
//! SW1/ROW-SIX/1B4AAD5605/PILLOW-25/F83BB34848/440X400/44-47-30-30-31-31/2/7GES/SW-0142//9B430437
//! ```
//!
//! Twelve parts between slashes, in the signs that a QR code packs most tightly (ISO/IEC 18004,
//! alphanumeric mode), without the space and `$*+`, which get lost or mean something elsewhere:
//! format and version; layout and the head of its digest; cell and the head of its digest; size in
//! millimetres; counts in the order of the numbers; number of the plan; check word; serial of the
//! cushion; code of the client; and the CRC-32 of all that stands before the last slash. The two
//! before the last may be empty. Names are written in capitals. Any other byte of a text stands as
//! `%` with two hexadecimal digits, as in RFC 3986; of names that is also a capital, of serials and
//! client codes a small letter. A code has one text only: what would be written otherwise is
//! refused.

use case::{CardCode, CardCodeFault, ClientCode, DigestHead, NoCardCode, PlanMark};
use cushion::Name;

/// The most signs of a text. A QR code of version 8 holds 157 at error correction level Q
/// (ISO/IEC 18004:2015, table 7), and is read from paper as small as a stamp.
pub const MOST_SIGNS: usize = 150;

/// The format and its version.
const BEGINS: &str = "SW1";
/// How every version begins.
const ANY_VERSION: &str = "SW";
/// How many parts a text has.
const PARTS: usize = 12;
/// How a source calls layouts that a plugin draws.
const OF_PLUGIN: &str = "plugin:";

/// Writes the code of a card.
///
/// # Errors
///
/// Fails where it would have more than [`MOST_SIGNS`].
pub fn card_text(code: &CardCode) -> Result<String, NoCardCode> {
    let text = written(code);
    let signs = text.len();
    if signs > MOST_SIGNS { Err(NoCardCode { signs, most: MOST_SIGNS }) } else { Ok(text) }
}

/// Reads the code of a card. Spaces and line breaks are not counted: who copies a text adds some.
///
/// # Errors
///
/// Fails where the text is not exactly what was printed.
pub fn read_card_text(text: &str) -> Result<CardCode, CardCodeFault> {
    let signs: Vec<char> = text.chars().filter(|sign| !sign.is_whitespace()).collect();
    let plain: String = signs.iter().collect();
    let head = plain.split('/').next().unwrap_or_default();
    let version = head.strip_prefix(ANY_VERSION).filter(|rest| !rest.is_empty());
    let is_number = version.is_some_and(|own| own.bytes().all(|byte| byte.is_ascii_digit()));
    if !is_number || !plain.contains('/') {
        return Err(CardCodeFault::NotOne);
    }
    if head != BEGINS {
        return Err(CardCodeFault::OtherVersion);
    }
    if let Some(at) = signs.iter().position(|sign| !is_sign(*sign)) {
        return Err(CardCodeFault::Sign { sign: signs[at], at: at + 1 });
    }
    if signs.len() > MOST_SIGNS {
        return Err(CardCodeFault::TooLong { signs: signs.len() });
    }
    let (body, sum) = plain.rsplit_once('/').ok_or(CardCodeFault::Mistyped)?;
    if sum != checksum(body) {
        return Err(CardCodeFault::Mistyped);
    }
    let code = parted(&plain).filter(|code| written(code) == plain);
    code.ok_or(CardCodeFault::Unreadable)
}

/// Whether a text has this sign.
fn is_sign(sign: char) -> bool {
    matches!(sign, '0'..='9' | 'A'..='Z' | '%' | '-' | '.' | '/' | ':')
}

/// The text, however long.
fn written(code: &CardCode) -> String {
    let counts: Vec<String> = code.counts.iter().map(ToString::to_string).collect();
    let serial = code.serial.as_deref().unwrap_or_default();
    let client = code.client.as_ref().map_or("", ClientCode::as_str);
    let parts = [
        BEGINS.to_owned(),
        name(&code.layout),
        name(code.layout_digest.as_str()),
        name(&code.cell),
        name(code.cell_digest.as_str()),
        name(&code.size.to_string()),
        counts.join("-"),
        code.mark.number.to_string(),
        code.mark.word.clone(),
        capitals(serial),
        capitals(client),
    ];
    let body = parts.join("/");
    let sum = checksum(&body);
    format!("{body}/{sum}")
}

/// The parts of a text as values; none where one of them cannot be read.
fn parted(text: &str) -> Option<CardCode> {
    let parts: [&str; PARTS] = text.split('/').collect::<Vec<_>>().try_into().ok()?;
    let [_, layout, layout_head, cell, cell_head, size, counts, number, word, serial, client, _] =
        parts;
    let counts = counts.split('-').map(|count| count.parse().ok());
    let word = case::is_check_word(word).then(|| word.to_owned())?;
    let serial = unescaped(serial, false)?;
    let client = unescaped(client, false)?;
    Some(CardCode {
        layout: unescaped(layout, true).filter(|own| is_layout(own))?,
        layout_digest: DigestHead::new(&unescaped(layout_head, true)?)?,
        cell: unescaped(cell, true).filter(|own| Name::new(own).is_some())?,
        cell_digest: DigestHead::new(&unescaped(cell_head, true)?)?,
        size: unescaped(size, true)?.parse().ok()?,
        counts: counts.collect::<Option<Vec<u32>>>()?,
        mark: PlanMark { number: number.parse().ok()?, word },
        serial: (!serial.is_empty()).then_some(serial),
        client: if client.is_empty() { None } else { Some(ClientCode::new(&client)?) },
    })
}

/// Whether a layout is called so: never a path, which could lead anywhere.
fn is_layout(words: &str) -> bool {
    Name::new(words.strip_prefix(OF_PLUGIN).unwrap_or(words)).is_some()
}

/// What is written in small letters, in capitals.
fn name(text: &str) -> String {
    escaped(text, |byte| byte.is_ascii_lowercase())
}

/// What is written in capitals.
fn capitals(text: &str) -> String {
    escaped(text, |byte| byte.is_ascii_uppercase())
}

/// A text in the signs of codes; the letters that are usual in it stand as they are, in capitals.
fn escaped(text: &str, is_usual: impl Fn(u8) -> bool) -> String {
    let sign = |byte: u8| match byte {
        _ if is_usual(byte) => char::from(byte.to_ascii_uppercase()).to_string(),
        b'0'..=b'9' | b'-' | b'.' | b':' => char::from(byte).to_string(),
        _ => format!("%{byte:02X}"),
    };
    text.bytes().map(sign).collect()
}

/// The text that stands so in a code; none where it is none, or has control characters.
fn unescaped(part: &str, small: bool) -> Option<String> {
    let mut bytes = part.bytes();
    let mut text = Vec::new();
    while let Some(byte) = bytes.next() {
        text.push(match byte {
            b'%' => {
                let [high, low] = [bytes.next()?, bytes.next()?].map(char::from);
                u8::try_from(high.to_digit(16)? * 16 + low.to_digit(16)?).ok()?
            }
            _ if small => byte.to_ascii_lowercase(),
            _ => byte,
        });
    }
    let text = String::from_utf8(text).ok()?;
    (!text.contains(char::is_control)).then_some(text)
}

/// The CRC-32 of a text as eight hexadecimal digits: any change within four neighbouring signs is
/// found for certain, any other but for one in four thousand millions.
///
/// ITU-T V.42, 8.1.1.6.2: the polynomial, least significant bit first, all ones at both ends.
fn checksum(text: &str) -> String {
    const POLYNOMIAL: u32 = 0xEDB8_8320;
    let step = |sum: u32, _| if sum & 1 == 1 { sum >> 1 ^ POLYNOMIAL } else { sum >> 1 };
    let sum = text.bytes().fold(!0, |sum: u32, byte| (0..8).fold(sum ^ u32::from(byte), step));
    format!("{:08X}", !sum)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn code() -> CardCode {
        CardCode {
            layout: "row-six".to_owned(),
            layout_digest: DigestHead::new("1b4aad5605").unwrap(),
            cell: "pillow-25".to_owned(),
            cell_digest: DigestHead::new("f83bb34848").unwrap(),
            size: "440x400".parse().unwrap(),
            counts: vec![44, 47, 30, 30, 31, 31],
            mark: PlanMark { number: 2, word: "7GES".to_owned() },
            serial: Some("SW-0142".to_owned()),
            client: None,
        }
    }

    #[test]
    fn the_last_part_is_the_checksum_that_everybody_knows() {
        // The check value of CRC-32 in the catalogues: that of the digits 1 to 9.
        assert_eq!(checksum("123456789"), "CBF43926");
    }

    /// The text that the page for developers shows; its checksum is that of Python's zlib.
    #[test]
    fn a_code_is_written_as_the_page_shows() {
        let shown = "SW1/ROW-SIX/1B4AAD5605/PILLOW-25/F83BB34848/440X400/44-47-30-30-31-31/2/7GES/\
            SW-0142//9B430437";
        assert_eq!(card_text(&code()).as_deref(), Ok(shown));
        assert!(include_str!("../../../DEVELOPERS.md").contains(shown));
    }

    #[test]
    fn a_code_is_read_as_it_was_written() {
        let mut others = vec![code()];
        let more: [fn(&mut CardCode); 6] = [
            |own| own.serial = None,
            |own| own.serial = Some("n° 7/b %".to_owned()),
            |own| own.client = ClientCode::new("K-17b"),
            |own| own.layout = "plugin:relief-rings".to_owned(),
            |own| own.size = "17x16in".parse().unwrap(),
            |own| own.counts = vec![0],
        ];
        others.extend(more.map(|change| {
            let mut own = code();
            change(&mut own);
            own
        }));
        for own in others {
            let text = card_text(&own).unwrap();
            assert_eq!(read_card_text(&text), Ok(own), "{text}");
            assert!(text.chars().all(is_sign), "{text}");
        }
    }

    #[test]
    fn what_was_copied_over_several_lines_is_read() {
        let text = card_text(&code()).unwrap();
        let (head, tail) = text.split_at(30);
        assert_eq!(read_card_text(&format!(" {head}\r\n  {tail}\n")), Ok(code()));
    }

    /// Whatever another sign is put in the place of one, or a sign is left out or doubled, or two
    /// neighbours change places.
    #[test]
    fn one_slip_anywhere_is_refused() {
        let text = card_text(&code()).unwrap();
        let signs: Vec<char> = text.chars().collect();
        let refused = |signs: Vec<char>| {
            let text: String = signs.into_iter().collect();
            assert!(read_card_text(&text).is_err(), "{text}");
        };
        for at in 0..signs.len() {
            for other in (' '..='~').chain(['\n', '\u{e9}', '\u{ff21}', '\0']) {
                if other != signs[at] {
                    let mut changed = signs.clone();
                    changed[at] = other;
                    refused(changed);
                }
            }
            let mut short = signs.clone();
            short.remove(at);
            refused(short);
            let mut long = signs.clone();
            long.insert(at, signs[at]);
            refused(long);
            if at > 0 && signs[at] != signs[at - 1] {
                let mut turned = signs.clone();
                turned.swap(at, at - 1);
                refused(turned);
            }
        }
    }

    #[test]
    fn a_slip_is_named() {
        let text = card_text(&code()).unwrap();
        let fault = |text: &str| read_card_text(text).unwrap_err();
        for none in
            ["", "SW", "SW1", "/", "K-17.toml", "HTTP://EXAMPLE.ORG/", "W1/ROW-SIX", "SWX/A"]
        {
            assert_eq!(fault(none), CardCodeFault::NotOne, "{none}");
        }
        assert_eq!(fault(&text.replace("SW1", "SW2")), CardCodeFault::OtherVersion);
        let small = text.replace("ROW", "ROw");
        assert_eq!(fault(&small), CardCodeFault::Sign { sign: 'w', at: 7 });
        assert_eq!(fault(&text.replace("44-47", "47-44")), CardCodeFault::Mistyped);
        let long = text.replace("SW-0142", &"9".repeat(90));
        assert_eq!(fault(&long), CardCodeFault::TooLong { signs: text.len() + 83 });
    }

    /// What has a checksum that goes with it, and is no code all the same.
    #[test]
    fn made_up_texts_are_refused() {
        let good = card_text(&code()).unwrap();
        let (body, _) = good.rsplit_once('/').unwrap();
        let with = |from: &str, to: &str| {
            let body = body.replace(from, to);
            format!("{body}/{}", checksum(&body))
        };
        assert_eq!(with("44", "44"), good);
        for (from, to) in [
            ("ROW-SIX", "..%2F..%2FETC%2FPASSWD"),
            ("ROW-SIX", "%2FETC%2FMINE.TOML"),
            ("ROW-SIX", ""),
            ("ROW-SIX", "%52OW-SIX"),
            ("ROW-SIX", "PLUGIN:"),
            ("PILLOW-25", "A.TOML"),
            ("1B4AAD5605", "1B4AAD560"),
            ("440X400", "NANXNAN"),
            ("440X400", "1E3X400"),
            ("440X400", "0440X400"),
            ("44-47", "044-47"),
            ("44-47", "44--47"),
            ("44-47", "4294967296-47"),
            ("/2/", "/02/"),
            ("/2/", "/-2/"),
            ("7GES", "7GE0"),
            ("SW-0142", "SW%0A0142"),
            ("SW-0142", "%53W-0142"),
            ("SW-0142", "%FF"),
            ("SW-0142", "%4"),
            ("SW-0142/", "SW-0142/MARIA"),
            ("SW-0142/", "SW-0142"),
            ("SW-0142/", "SW-0142//"),
        ] {
            let text = with(from, to);
            assert_eq!(read_card_text(&text), Err(CardCodeFault::Unreadable), "{text}");
        }
    }

    #[test]
    fn what_finds_no_room_has_no_code() {
        let mut own = code();
        own.counts = vec![30; 40];
        let NoCardCode { signs, most } = card_text(&own).unwrap_err();
        assert_eq!((signs, most), (written(&own).len(), MOST_SIGNS));
    }
}
