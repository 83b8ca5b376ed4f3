//! What can go wrong with a plugin, as values.

use std::time::Duration;

use cushion::{Name, Size};

use super::{BodyMeasure, LayoutErrorBy};
use crate::text::Remark;

/// A plugin that cannot be used, and why.
#[derive(Clone, Debug, PartialEq)]
pub struct PluginFault {
    /// The plugin: its name where it is known, otherwise its file.
    pub plugin: String,
    /// Why.
    pub kind: PluginFaultKind,
}

/// The ways in which a plugin can fail.
#[derive(Clone, Debug, PartialEq)]
pub enum PluginFaultKind {
    /// What is written after `plugin:` is no name.
    NotAName,
    /// No plugin of this name is in the places where plugins are looked for.
    NotFound {
        /// The places.
        looked_in: Vec<String>,
    },
    /// There is no such file.
    NoFile,
    /// The file is no library, or needs something that is not there; in the words of the system.
    NotALibrary(Option<String>),
    /// The library does not export the one function.
    NoEntry,
    /// It was built for another version of the contract.
    OtherVersion {
        /// The version.
        found: u32,
    },
    /// The description breaks the contract.
    BadDescription(BadDescription),
    /// It describes itself by another name than the one it was asked for.
    OtherName {
        /// The name.
        found: Name,
    },
    /// The process was ended by a signal.
    Crashed(Crash),
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
    Failed(Option<String>),
    /// It refused the request, and said this.
    Refused(Option<String>),
    /// The answer is a layout of another name: what is drawn from it would pass for that one.
    OtherLayout {
        /// The name.
        found: Name,
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
        asked: Size,
        /// The sizes in the answer.
        answered: Vec<Size>,
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
        given: Name,
        /// The plugin's parameters.
        known: Vec<Name>,
    },
    /// A value is outside the range of its parameter, or is no number.
    OutOfRange {
        /// The parameter.
        parameter: Name,
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
        parameter: Name,
        /// What it means, in the plugin's words.
        words: String,
        /// The client's measure by which it may be set.
        measure: Option<BodyMeasure>,
    },
    /// The child could not be started; in the words of the system.
    NoChild(String),
    /// The child could not be given its limits; in the words of the system.
    NoLimits(String),
}

impl PluginFaultKind {
    /// Whose move it is next.
    #[must_use]
    pub fn by(&self) -> LayoutErrorBy {
        match self {
            Self::NotAName
            | Self::NotFound { .. }
            | Self::NoFile
            | Self::NotTrusted { .. }
            | Self::Refused(_)
            | Self::UnknownParameter { .. }
            | Self::OutOfRange { .. }
            | Self::NotGiven { .. } => LayoutErrorBy::Asker,
            Self::NoChild(_) | Self::NoLimits(_) => LayoutErrorBy::System,
            _ => LayoutErrorBy::Source,
        }
    }
}

/// Why what lies somewhere is not run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Distrust {
    /// It belongs to another user.
    OtherOwner,
    /// Everybody may write to it.
    WritableByAll,
}

/// How a plugin's description breaks the contract.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BadDescription {
    /// There is none.
    Null,
    /// Its size is not that of the version.
    Size,
    /// A function is null.
    NoFunction,
    /// More parameters than are taken.
    TooManyParameters,
    /// There are to be parameters, and none are there.
    NoParameters,
    /// The size of a parameter is not that of the version.
    ParameterSize,
    /// Its name is not a name.
    Name,
    /// Its version is not a version.
    Version,
    /// What it says about itself is not a text.
    About,
    /// A parameter is not right.
    Parameter,
    /// It came through broken.
    Unreadable,
}

impl BadDescription {
    /// All of them, with the words by which programs know them.
    pub const ALL: [(Self, &'static str); 11] = [
        (Self::Null, "null"),
        (Self::Size, "size"),
        (Self::NoFunction, "no-function"),
        (Self::TooManyParameters, "too-many-parameters"),
        (Self::NoParameters, "no-parameters"),
        (Self::ParameterSize, "parameter-size"),
        (Self::Name, "name"),
        (Self::Version, "version"),
        (Self::About, "about"),
        (Self::Parameter, "parameter"),
        (Self::Unreadable, "unreadable"),
    ];
}

/// What a signal that ended a process means.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Crash {
    /// It used memory that is not its own.
    OthersMemory,
    /// It used memory that is not there.
    NoMemory,
    /// It gave up: out of memory or stack, or by itself.
    GaveUp,
    /// It ran something that is no instruction.
    NoInstruction,
    /// It divided by zero.
    DividedByZero,
    /// It computed for too long.
    TooLong,
    /// It wrote to a file.
    WroteFile,
    /// It was killed.
    Killed,
    /// Another signal, by its number.
    Signal(i32),
}
