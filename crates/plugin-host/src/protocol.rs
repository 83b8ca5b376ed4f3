//! What parent and child say to each other: a word, the length of a text, the text.
//!
//! The child begins with its description, and ends with an empty frame once it has read its own
//! answer. The one request is a line, `WIDTH DEPTH VALUE...`; numbers
//! are written as the bits of a 64-bit float in hexadecimal, so that none is lost. Answers are
//! frames: `WORD LENGTH\n` and so many bytes. A description is itself lines of fields parted by
//! tabs.

use std::io::{self, BufRead, Read, Write};

use cushion::Name;

use crate::FaultKind;
use crate::description::{Description, Parameter, measure_code, measure_of_code};

/// The word of the empty frame after an answer, once the child could read it itself.
pub(crate) const READ: &str = "read";

/// An answer of the child.
#[derive(Debug, PartialEq)]
pub(crate) struct Frame {
    /// What the text is: `ok`, or the kind of fault.
    pub(crate) word: String,
    pub(crate) text: String,
}

pub(crate) fn write_frame(out: &mut impl Write, word: &str, text: &str) -> io::Result<()> {
    writeln!(out, "{word} {}", text.len())?;
    out.write_all(text.as_bytes())?;
    out.flush()
}

/// Reads a frame; none at the end, or where it is no frame of at most `most` bytes.
pub(crate) fn read_frame(input: &mut impl BufRead, most: usize) -> Option<Frame> {
    let mut head = String::new();
    input.take(64).read_line(&mut head).ok()?;
    let (word, length) = head.strip_suffix('\n')?.split_once(' ')?;
    let length: usize = length.parse().ok().filter(|length| *length <= most)?;
    let mut text = vec![0; length];
    input.read_exact(&mut text).ok()?;
    Some(Frame { word: word.to_owned(), text: String::from_utf8(text).ok()? })
}

pub(crate) fn number(value: f64) -> String {
    format!("{:016x}", value.to_bits())
}

pub(crate) fn parse_number(text: &str) -> Option<f64> {
    u64::from_str_radix(text, 16).ok().map(f64::from_bits)
}

pub(crate) fn write_description(description: &Description) -> String {
    let mut text =
        format!("{}\t{}\t{}\n", description.name, description.version, description.about);
    for parameter in &description.parameters {
        let fields = [
            parameter.name.to_string(),
            parameter.words.clone(),
            parameter.unit.clone(),
            number(parameter.least),
            number(parameter.greatest),
            number(parameter.standard),
            measure_code(parameter.measure).to_string(),
            u8::from(parameter.must_be_given).to_string(),
        ];
        text += &fields.join("\t");
        text.push('\n');
    }
    text
}

pub(crate) fn parse_description(text: &str) -> Option<Description> {
    let mut lines = text.lines().map(|line| line.split('\t').collect::<Vec<_>>());
    let [name, version, about] = lines.next()?[..] else { return None };
    let parameters = lines.map(|fields| {
        let [name, words, unit, least, greatest, standard, measure, must] = fields[..] else {
            return None;
        };
        Some(Parameter {
            name: Name::new(name)?,
            words: words.to_owned(),
            unit: unit.to_owned(),
            least: parse_number(least)?,
            greatest: parse_number(greatest)?,
            standard: parse_number(standard)?,
            measure: measure_of_code(measure.parse().ok()?)?,
            must_be_given: must == "1",
        })
    });
    Some(Description {
        name: Name::new(name)?,
        version: version.to_owned(),
        about: about.to_owned(),
        parameters: parameters.collect::<Option<_>>()?,
    })
}

/// The word and the text by which a fault goes from child to parent.
pub(crate) fn fault_words(fault: &FaultKind) -> (&'static str, String) {
    match fault {
        FaultKind::NotALibrary(why) => ("not-a-library", why.clone()),
        FaultKind::NoEntry => ("no-entry", String::new()),
        FaultKind::OtherVersion { found } => ("other-version", found.to_string()),
        FaultKind::BadDescription(what) => ("bad-description", (*what).to_owned()),
        FaultKind::TooLong { most } => ("too-long", most.to_string()),
        FaultKind::NotText => ("not-text", String::new()),
        FaultKind::Refused(said) => ("refused", said.clone()),
        FaultKind::Failed(said) => ("failed", said.clone()),
        other => ("failed", other.to_string()),
    }
}

/// The fault that a frame stands for.
pub(crate) fn parse_fault(frame: Frame) -> FaultKind {
    match frame.word.as_str() {
        "not-a-library" => FaultKind::NotALibrary(frame.text),
        "no-entry" => FaultKind::NoEntry,
        "other-version" => FaultKind::OtherVersion { found: frame.text.parse().unwrap_or(0) },
        "bad-description" => FaultKind::BadDescription(known(&frame.text)),
        "too-long" => FaultKind::TooLong { most: frame.text.parse().unwrap_or(0) },
        "not-text" => FaultKind::NotText,
        "no-child" => FaultKind::NoChild(frame.text),
        "refused" => FaultKind::Refused(frame.text),
        _ => FaultKind::Failed(frame.text),
    }
}

/// The words of a broken description, which are a few that we know.
fn known(text: &str) -> &'static str {
    const ALL: [&str; 10] = [
        "it is null, so it cannot describe itself",
        "its size is wrong",
        "a function is null",
        "it has too many parameters",
        "its parameters are null",
        "the size of a parameter is wrong",
        "its name is not a name",
        "its version is not a version",
        "what it says about itself is not a text",
        "a parameter is not right",
    ];
    ALL.into_iter().find(|known| *known == text).unwrap_or("it is not right")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn frames_and_descriptions_come_through() {
        let description = Description {
            name: Name::new("rings").expect("a name"),
            version: "1.0".into(),
            about: "For tests.".into(),
            parameters: vec![Parameter {
                name: Name::new("spacing").expect("a name"),
                words: "between the seat bones".into(),
                unit: "mm".into(),
                least: 0.1,
                greatest: 180.0,
                standard: 118.0,
                measure: Some(cushion::BodyMeasure::SeatBoneSpacing),
                must_be_given: true,
            }],
        };
        let mut pipe = Vec::new();
        write_frame(&mut pipe, "ok", &write_description(&description)).expect("memory is writable");
        let frame = read_frame(&mut &pipe[..], 1000).expect("it is a frame");
        assert_eq!(parse_description(&frame.text), Some(description));
        assert_eq!(read_frame(&mut &pipe[..], 10), None);
        assert_eq!(read_frame(&mut &b"garbage"[..], 10), None);
    }
}
