//! What parent and child say to each other: a word, the length of a text, the text.
//!
//! The child begins with its description, and ends with an empty frame once it has read its own
//! answer. The one request is a line, `WIDTH DEPTH VALUE...`; numbers
//! are written as the bits of a 64-bit float in hexadecimal, so that none is lost. Answers are
//! frames: `WORD LENGTH\n` and so many bytes. A description is itself lines of fields parted by
//! tabs.

use std::io::{self, BufRead, Read, Write};

use case::{BadDescription, PluginFaultKind};
use cushion::Name;

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
pub(crate) fn fault_words(fault: PluginFaultKind) -> (&'static str, String) {
    match fault {
        PluginFaultKind::NotALibrary(why) => ("not-a-library", why.unwrap_or_default()),
        PluginFaultKind::NoEntry => ("no-entry", String::new()),
        PluginFaultKind::OtherVersion { found } => ("other-version", found.to_string()),
        PluginFaultKind::BadDescription(bad) => {
            let known = BadDescription::ALL.iter().find(|(own, _)| *own == bad);
            ("bad-description", known.map_or("", |(_, word)| word).to_owned())
        }
        PluginFaultKind::TooLong { most } => ("too-long", most.to_string()),
        PluginFaultKind::NotText => ("not-text", String::new()),
        PluginFaultKind::Refused(said) => ("refused", said.unwrap_or_default()),
        PluginFaultKind::Failed(said) => ("failed", said.unwrap_or_default()),
        PluginFaultKind::NoLimits(why) => ("no-limits", why),
        // Nothing else is found in a child.
        _ => ("failed", String::new()),
    }
}

/// The fault that a frame stands for.
pub(crate) fn parse_fault(frame: Frame) -> PluginFaultKind {
    let Frame { word, text } = frame;
    match word.as_str() {
        "not-a-library" => PluginFaultKind::NotALibrary(Some(text)),
        "no-entry" => PluginFaultKind::NoEntry,
        "other-version" => PluginFaultKind::OtherVersion { found: text.parse().unwrap_or(0) },
        "bad-description" => {
            let known = BadDescription::ALL.iter().find(|(_, word)| *word == text);
            PluginFaultKind::BadDescription(known.map_or(BadDescription::Unreadable, |own| own.0))
        }
        "too-long" => PluginFaultKind::TooLong { most: text.parse().unwrap_or(0) },
        "not-text" => PluginFaultKind::NotText,
        "no-limits" => PluginFaultKind::NoLimits(text),
        "refused" => PluginFaultKind::Refused(Some(text)),
        _ => PluginFaultKind::Failed(Some(text)),
    }
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
                measure: Some(case::BodyMeasure::SeatBoneSpacing),
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
    #[test]
    fn faults_come_through() {
        let mut faults = vec![
            PluginFaultKind::NotALibrary(Some("no such symbol".into())),
            PluginFaultKind::NoEntry,
            PluginFaultKind::OtherVersion { found: 7 },
            PluginFaultKind::TooLong { most: 12 },
            PluginFaultKind::NotText,
            PluginFaultKind::Refused(Some("no room".into())),
            PluginFaultKind::Failed(Some("no idea".into())),
            PluginFaultKind::NoLimits("not allowed".into()),
        ];
        faults.extend(BadDescription::ALL.map(|(bad, _)| PluginFaultKind::BadDescription(bad)));
        for fault in faults {
            let (word, text) = fault_words(fault.clone());
            assert_eq!(parse_fault(Frame { word: word.to_owned(), text }), fault);
        }
    }
}
