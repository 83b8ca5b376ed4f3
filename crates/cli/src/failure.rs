//! Failure: the one place that turns errors into words, hints and exit codes.

use std::ops::Range;
use std::process::ExitCode;

use files::{Finding, Remark, Severity};

use crate::exit_codes;
use crate::remarks::{self, FileRemarks};
use crate::run::PROGRAM;
use crate::terminal::Terminal;

/// Whose move it is next.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Kind {
    /// The caller's.
    Call,
    /// That of whoever wrote a file.
    File,
    /// That of a plugin's author.
    Plugin,
    /// The clinician's.
    NotSafe,
    /// That of whoever looks after the disk or the folder.
    CannotWrite,
    /// Ours.
    Ours,
    /// Nobody's: whoever read our answer has seen enough of it.
    ReaderLeft,
}

impl Kind {
    /// The word for it in JSON.
    fn words(self) -> &'static str {
        match self {
            Self::Call => "wrong call",
            Self::File => "wrong file",
            Self::Plugin => "plugin",
            Self::NotSafe => "not safely possible",
            Self::CannotWrite => "cannot write",
            Self::Ours => "fault of the program",
            Self::ReaderLeft => "reader left",
        }
    }

    /// Returns the exit code.
    fn code(self) -> u8 {
        match self {
            Self::Call => exit_codes::WRONG_CALL,
            Self::File => exit_codes::WRONG_FILE,
            Self::Plugin => exit_codes::PLUGIN,
            Self::NotSafe => exit_codes::NOT_SAFE,
            Self::CannotWrite => exit_codes::CANNOT_WRITE,
            Self::Ours => exit_codes::OURS,
            Self::ReaderLeft => exit_codes::DONE,
        }
    }
}

/// Why the program stops.
#[derive(Debug)]
pub(crate) struct Failure {
    kind: Kind,
    message: String,
    hint: Option<String>,
    file: Option<Box<FileRemarks>>,
    told: bool,
}

impl Failure {
    /// A failure that is `kind`'s move, in a sentence without a full stop.
    pub(crate) fn new(kind: Kind, message: impl Into<String>) -> Self {
        Self { kind, message: message.into(), hint: None, file: None, told: false }
    }

    /// The command was called in a wrong way.
    pub(crate) fn call(message: impl Into<String>) -> Self {
        Self::new(Kind::Call, message)
    }

    /// A file is wrong as a whole.
    pub(crate) fn file(message: impl Into<String>) -> Self {
        Self::new(Kind::File, message)
    }

    /// A file is wrong at the places that the remarks point at.
    pub(crate) fn wrong_file(file: FileRemarks) -> Self {
        let message = format!("{} cannot be used: {}", file.shown(), file.count());
        Self { file: Some(Box::new(file)), ..Self::new(Kind::File, message) }
    }

    /// An output could not be written.
    pub(crate) fn write(what: &str, error: &std::io::Error) -> Self {
        if error.kind() == std::io::ErrorKind::BrokenPipe {
            return Self::new(Kind::ReaderLeft, "whoever read the answer has gone");
        }
        Self::new(Kind::CannotWrite, format!("cannot write {what}: {}", reason(error)))
    }

    /// Adds what to do.
    pub(crate) fn hint(self, hint: impl Into<String>) -> Self {
        Self { hint: Some(hint.into()), ..self }
    }

    /// Shows the remarks on a text before the message.
    pub(crate) fn about(self, file: FileRemarks) -> Self {
        Self { file: Some(Box::new(file)), ..self }
    }

    /// Points at the words of a client's file that named what cannot be had; what is wrong
    /// within another file stays as it is.
    pub(crate) fn named_in(self, client: &FileRemarks, table: &str, key: &str) -> Self {
        if self.file.is_some() {
            return self;
        }
        let place = files::place_of_value(&client.text, table, key);
        let remark = self.as_remark(place.unwrap_or_else(|| client.first_line()));
        Self::wrong_file(FileRemarks { remarks: vec![remark], ..client.clone() })
    }

    /// Says that everything has been told already, and only the exit code is left.
    pub(crate) fn told(self) -> Self {
        Self { told: true, ..self }
    }

    /// Whose move it is.
    pub(crate) fn kind(&self) -> Kind {
        self.kind
    }

    /// The file that is wrong, with its remarks.
    pub(crate) fn file_remarks(&self) -> Option<&FileRemarks> {
        self.file.as_deref()
    }

    /// The same as a remark on a text.
    pub(crate) fn as_remark(&self, span: Range<usize>) -> Remark {
        let finding = Finding::Said { message: self.message.clone(), hint: self.hint.clone() };
        // What is not safe for one client is no fault of the file.
        let severity = if self.kind == Kind::NotSafe { Severity::Remark } else { Severity::Error };
        Remark { severity, span, finding }
    }

    /// Says it on stderr, as JSON or in words, and returns the exit code.
    pub(crate) fn tell(&self, json: bool, terminal: Terminal) -> ExitCode {
        if self.kind != Kind::ReaderLeft && !self.told {
            terminal.say(|color| if json { self.to_json() } else { self.to_words(color) });
        }
        ExitCode::from(self.kind.code())
    }

    /// The same in JSON; `kind` says whose move it is.
    fn to_json(&self) -> String {
        let file = self.file.as_ref().map(|file| (&*file.text, &*file.remarks));
        let (kind, hint) = (self.kind.words(), self.hint.as_deref());
        files::report::error(PROGRAM, kind, &self.message, hint, file)
    }

    /// Remarks with their places, then the message and its hint.
    pub(crate) fn to_words(&self, color: bool) -> String {
        let mut words = self.file.as_ref().map_or_else(String::new, |file| file.to_words(color));
        words.push_str(&remarks::sentence(&self.message, self.hint.as_deref(), color));
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
