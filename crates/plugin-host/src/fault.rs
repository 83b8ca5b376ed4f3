//! What can go wrong with a plugin, in one sentence that names it.

use std::fmt;
use std::time::Duration;

use cushion::BodyMeasure;
use files::{Finding, Remark};

use crate::places::Distrust;

/// A plugin that cannot be used, and why.
#[derive(Clone, Debug, PartialEq)]
pub struct Fault {
    /// The plugin: its name where it is known, otherwise its file.
    pub plugin: String,
    /// Why.
    pub kind: FaultKind,
}

/// Whose move it is next.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Whose {
    /// That of the person who asked: another name, another value, a measure.
    Asker,
    /// That of the plugin's author.
    Author,
    /// That of whoever looks after this computer.
    System,
}

/// The ways in which a plugin can fail.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum FaultKind {
    /// No plugin of this name is in the places where plugins are looked for.
    NotFound {
        /// The places.
        looked_in: Vec<String>,
    },
    /// There is no such file.
    NoFile,
    /// The file is no library, or needs something that is not there.
    NotALibrary(String),
    /// The library does not export the one function.
    NoEntry,
    /// It was built for another version of the contract.
    OtherVersion {
        /// The version.
        found: u32,
    },
    /// The description breaks the contract: a null pointer, a wrong size, a bad name or range.
    BadDescription(&'static str),
    /// It describes itself by another name than the one it was asked for.
    OtherName {
        /// The name.
        found: String,
    },
    /// The process was ended by a signal: a crash.
    Crashed {
        /// What the signal means.
        signal: String,
    },
    /// The process ended by itself.
    Ended,
    /// It did not answer in time.
    TooSlow(Duration),
    /// It answered, with something that cannot be read in time.
    NotReadInTime(Duration),
    /// It answered more than is taken.
    TooLong {
        /// The most bytes that are taken.
        most: usize,
    },
    /// It printed more than is let pass.
    TooMuchPrinted {
        /// The most bytes.
        most: usize,
    },
    /// The answer is not text in UTF-8, or it is null.
    NotText,
    /// It failed, and said this.
    Failed(String),
    /// It refused the request, and said this.
    Refused(String),
    /// The answer is a layout of another name: what is drawn from it would pass for that one.
    OtherLayout {
        /// The name.
        found: String,
    },
    /// The only plugin of this name lies where others can put one.
    NotTrusted {
        /// The file or folder.
        path: String,
        /// Why.
        why: Distrust,
    },
    /// The answer is for another size.
    OtherSize {
        /// What was asked for.
        asked: String,
        /// The sizes in the answer.
        answered: String,
    },
    /// The answer is no right layout.
    BadLayout {
        /// The answer.
        text: String,
        /// What is wrong with it.
        remarks: Vec<Remark>,
    },
    /// A parameter is not one of the plugin's.
    UnknownParameter {
        /// The name that was given.
        given: String,
        /// The plugin's parameters.
        known: Vec<String>,
    },
    /// A value is outside the range of its parameter.
    OutOfRange {
        /// The parameter.
        parameter: String,
        /// The value.
        value: f64,
        /// The least.
        least: f64,
        /// The greatest.
        greatest: f64,
    },
    /// A parameter must be given or measured, and was not.
    NotGiven {
        /// The parameter.
        parameter: String,
        /// What it means.
        words: String,
        /// The client's measure by which it may be set.
        measure: Option<BodyMeasure>,
    },
    /// The child could not be started.
    NoChild(String),
}

impl FaultKind {
    /// Whose move it is next.
    #[must_use]
    pub fn whose(&self) -> Whose {
        match self {
            Self::NotFound { .. }
            | Self::NoFile
            | Self::NotTrusted { .. }
            | Self::Refused(_)
            | Self::UnknownParameter { .. }
            | Self::OutOfRange { .. }
            | Self::NotGiven { .. } => Whose::Asker,
            Self::NoChild(_) => Whose::System,
            _ => Whose::Author,
        }
    }

    /// The same, with what foreign code said cut to one line that a terminal can show.
    pub(crate) fn tidied(self) -> Self {
        match self {
            Self::NotALibrary(said) => Self::NotALibrary(one_line(&said)),
            Self::Failed(said) => Self::Failed(one_line(&said)),
            Self::Refused(said) => Self::Refused(one_line(&said)),
            other => other,
        }
    }

    /// Returns what to do about it, where there is something.
    #[must_use]
    pub fn advice(&self) -> Option<String> {
        match self {
            Self::NotFound { looked_in } if looked_in.is_empty() => {
                Some("name its file with --plugin PATH".to_owned())
            }
            Self::NotFound { looked_in } => Some(format!(
                "name its file with --plugin PATH, or put it into one of: {}",
                looked_in.join(", ")
            )),
            Self::UnknownParameter { known, .. } => Some(format!("it has: {}", known.join(", "))),
            Self::NotGiven { parameter, .. } => {
                Some(format!("measure it, or give `{parameter}` with --set {parameter}=..."))
            }
            Self::NoFile => Some("name the library's own path".to_owned()),
            Self::NotTrusted { .. } => Some(
                "let it belong to you or to root and be written to by nobody else, or name the plugin's file with --plugin PATH"
                    .to_owned(),
            ),
            Self::Refused(_) | Self::OutOfRange { .. } | Self::NoChild(_) => None,
            _ => Some("tell the plugin's author; nothing was written".to_owned()),
        }
    }
}

/// The longest sentence of a plugin that is shown, in characters.
const LONGEST: usize = 300;

/// What a plugin said, without line ends and other control characters, and not without end.
fn one_line(said: &str) -> String {
    let plain = |c: char| if c.is_control() { ' ' } else { c };
    let said: String = said.chars().take(4 * LONGEST).map(plain).collect();
    let said = said.split_whitespace().collect::<Vec<_>>().join(" ");
    match said.char_indices().nth(LONGEST) {
        Some((end, _)) => format!("{}...", &said[..end]),
        None if said.is_empty() => "it did not say why".to_owned(),
        None => said,
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "plugin `{}`: {}", self.plugin, self.kind)
    }
}

impl std::error::Error for Fault {}

impl fmt::Display for FaultKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotFound { .. } => write!(f, "no plugin of this name was found"),
            Self::NoFile => write!(f, "there is no such file"),
            Self::NotALibrary(why) => write!(f, "this file cannot be loaded: {why}"),
            Self::NoEntry => {
                write!(f, "this library is no plugin: it does not export `seatwright_plugin`")
            }
            Self::OtherVersion { found } => {
                write!(
                    f,
                    "it was built for version {found} of the contract; this program reads version 1"
                )
            }
            Self::BadDescription(what) => write!(f, "its description breaks the contract: {what}"),
            Self::OtherName { found } => write!(f, "it calls itself `{found}`"),
            Self::Crashed { signal } => write!(f, "it crashed ({signal})"),
            Self::Ended => write!(f, "it ended without an answer"),
            Self::TooSlow(limit) => write!(f, "it did not answer within {} s", limit.as_secs_f64()),
            Self::NotReadInTime(limit) => {
                write!(f, "its layout cannot be read within {} s", limit.as_secs_f64())
            }
            Self::OtherLayout { found } => {
                write!(f, "it answered with a layout that is called `{found}`")
            }
            Self::NotTrusted { path, why } => {
                write!(f, "it was not run, because `{path}` {why}")
            }
            Self::TooLong { most } => write!(f, "it answered more than {most} bytes"),
            Self::TooMuchPrinted { most } => write!(f, "it printed more than {most} bytes"),
            Self::NotText => write!(f, "its answer is not text"),
            Self::Failed(said) => write!(f, "it failed: {said}"),
            Self::Refused(said) => write!(f, "{said}"),
            Self::OtherSize { asked, answered } => {
                write!(f, "it was asked for {asked} and answered for {answered}")
            }
            Self::BadLayout { remarks, .. } => {
                // What is missing from a text that broke off is not what is wrong with it.
                let broken = |remark: &&Remark| matches!(remark.finding, Finding::Syntax(_));
                let first = remarks.iter().find(broken).or(remarks.first());
                let first = first.map_or("it cannot be read".to_owned(), Remark::message);
                write!(f, "its layout is wrong: {first}")
            }
            Self::UnknownParameter { given, .. } => write!(f, "it has no parameter `{given}`"),
            Self::OutOfRange { parameter, value, least, greatest } => {
                write!(f, "`{parameter}` is {value}, and lies between {least} and {greatest}")
            }
            Self::NotGiven { parameter, words, .. } => {
                write!(f, "`{parameter}` ({words}) must be measured or given; no default is taken")
            }
            Self::NoChild(why) => write!(f, "its process could not be started: {why}"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_a_plugin_says_is_one_line_of_plain_text() {
        assert_eq!(one_line("no\troom\r\n\x1b[31mhere "), "no room [31mhere");
        assert_eq!(one_line("\n"), "it did not say why");
        assert_eq!(one_line(&"é".repeat(2000)), "é".repeat(300) + "...");
    }
}
