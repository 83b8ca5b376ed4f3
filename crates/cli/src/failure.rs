//! Failure: the one place that turns errors into words, hints and exit codes.

use std::process::ExitCode;

use case::Said;
use casework::{PROGRAM, ShelfError, Whose, WorkError};

use crate::exit_codes;
use crate::remarks;
use crate::say;
use crate::terminal::Terminal;

/// The word for whose move it is, in JSON.
fn words(whose: Whose) -> &'static str {
    match whose {
        Whose::Asker => "wrong call",
        Whose::Writer => "wrong file",
        Whose::SourceAuthor => "plugin",
        Whose::Clinician => "not safely possible",
        Whose::Keeper => "cannot write",
        Whose::Ours => "fault of the program",
    }
}

/// Returns the exit code.
fn code(whose: Whose) -> u8 {
    match whose {
        Whose::Asker => exit_codes::WRONG_CALL,
        Whose::Writer => exit_codes::WRONG_FILE,
        Whose::SourceAuthor => exit_codes::PLUGIN,
        Whose::Clinician => exit_codes::NOT_SAFE,
        Whose::Keeper => exit_codes::CANNOT_WRITE,
        Whose::Ours => exit_codes::OURS,
    }
}

/// Why the program stops.
#[derive(Debug)]
pub(crate) struct Failure {
    error: WorkError,
    told: bool,
    /// Whoever read our answer has seen enough of it: then nobody is told anything.
    reader_left: bool,
}

impl From<WorkError> for Failure {
    fn from(error: WorkError) -> Self {
        Self { error, told: false, reader_left: false }
    }
}

impl From<ShelfError> for Failure {
    fn from(error: ShelfError) -> Self {
        WorkError::from(error).into()
    }
}

impl Failure {
    /// A failure that is somebody's move, in a sentence without a full stop.
    pub(crate) fn new(whose: Whose, message: impl Into<String>) -> Self {
        WorkError::new(whose, message).into()
    }

    /// The command was called in a wrong way.
    pub(crate) fn call(message: impl Into<String>) -> Self {
        Self::new(Whose::Asker, message)
    }

    /// A file is wrong as a whole.
    pub(crate) fn file(message: impl Into<String>) -> Self {
        Self::new(Whose::Writer, message)
    }

    /// An output could not be written.
    pub(crate) fn write(what: &str, error: &std::io::Error) -> Self {
        let message = format!("cannot write {what}: {}", reason(error));
        let reader_left = error.kind() == std::io::ErrorKind::BrokenPipe;
        Self { reader_left, ..Self::new(Whose::Keeper, message) }
    }

    /// Adds what to do.
    pub(crate) fn hint(self, hint: impl Into<String>) -> Self {
        Self { error: self.error.hint(hint), ..self }
    }

    /// Says that everything has been told already, and only the exit code is left.
    pub(crate) fn told(self) -> Self {
        Self { told: true, ..self }
    }

    /// What it is about.
    pub(crate) fn error(&self) -> &WorkError {
        &self.error
    }

    /// Says it, in words on stderr or as a report in JSON on stdout, and returns the exit code.
    pub(crate) fn tell(&self, terminal: Terminal) -> ExitCode {
        if self.reader_left {
            return ExitCode::from(exit_codes::DONE);
        }
        if !self.told {
            if terminal.is_json() {
                // There is nobody left to tell where stdout cannot be written.
                let _ = terminal.answer(&self.to_json());
            } else {
                terminal.say(|color| self.to_words(color));
            }
        }
        ExitCode::from(code(self.error.whose))
    }

    /// The same in JSON; `kind` says whose move it is.
    fn to_json(&self) -> String {
        let own = &self.error;
        let file = own.file.as_ref().map(|file| (&*file.text, &*file.remarks));
        let said = Said { message: own.message.clone(), hint: own.hint.clone() };
        files::report::error(PROGRAM, words(own.whose), &said, file, &say::text)
    }

    /// Remarks with their places, then the message and its hint.
    pub(crate) fn to_words(&self, color: bool) -> String {
        let own = &self.error;
        let file = own.file.as_ref();
        let mut words = file.map_or_else(String::new, |file| remarks::to_words(file, color));
        words.push_str(&remarks::sentence(&own.message, own.hint.as_deref(), color));
        words
    }
}

/// A call that the argument parser does not understand.
impl From<clap::Error> for Failure {
    fn from(error: clap::Error) -> Self {
        let words = error.render().to_string();
        let (words, _) = words.split_once("\nFor more information").unwrap_or((&words, ""));
        let (message, usage) = words.split_once("\nUsage:").unwrap_or((words, ""));
        let message = message.trim_start_matches("error:").split_whitespace().collect::<Vec<_>>();
        let usage = usage.lines().next().unwrap_or_default().trim();
        let failure = Self::call(message.join(" "));
        match usage {
            "" => failure.hint("`seatwright --help` tells how it is called"),
            usage => failure.hint(format!("call it as `{usage}`; --help tells more")),
        }
    }
}

/// Says in plain words why the operating system refuses.
fn reason(error: &std::io::Error) -> String {
    use std::io::ErrorKind;
    match error.kind() {
        ErrorKind::PermissionDenied => "this user may not write there".to_owned(),
        ErrorKind::StorageFull | ErrorKind::QuotaExceeded => "the disk is full".to_owned(),
        ErrorKind::FileTooLarge => "the file becomes larger than is allowed here".to_owned(),
        ErrorKind::ReadOnlyFilesystem => "the disk is read-only".to_owned(),
        ErrorKind::NotADirectory => "a part of the path is not a folder".to_owned(),
        ErrorKind::IsADirectory => "a folder has that name".to_owned(),
        ErrorKind::AlreadyExists => "a file has that name already".to_owned(),
        _ => error.to_string(),
    }
}
