//! Failure: the one place that turns errors into words, hints and exit codes.

use std::process::ExitCode;

use case::text::EditError;
use case::{CodePart, LayoutError, NotRestored, PluginFaultKind, Said, Trouble};
use casework::{FileRemarks, PROGRAM, ShelfError, Whose, WorkError};
use files::report;

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
        Whose::GoalSetter => "a goal falls short",
        Whose::Chooser => "no made size suits",
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
        Whose::GoalSetter => exit_codes::GOAL_SHORT,
        Whose::Chooser => exit_codes::NO_SIZE,
        Whose::Keeper => exit_codes::CANNOT_WRITE,
        Whose::Ours => exit_codes::OURS,
    }
}

/// Why the program stops.
#[derive(Debug)]
pub(crate) struct Failure {
    whose: Whose,
    said: Said,
    /// The word by which programs know it, where it is work that ended.
    id: Option<&'static str>,
    /// The file that it is about, with places.
    file: Option<Box<FileRemarks>>,
    told: bool,
    /// Whoever read our answer has seen enough of it: then nobody is told anything.
    reader_left: bool,
}

impl From<WorkError> for Failure {
    fn from(error: WorkError) -> Self {
        let WorkError { whose, what, file } = error;
        let Said { message, hint } = say::language().trouble(&what);
        let hints: Vec<String> = hint.into_iter().chain(by_command(&what)).collect();
        let hint = (!hints.is_empty()).then(|| hints.join("; "));
        let (said, id) = (Said { message, hint }, Some(what.id()));
        Self { whose, said, id, file, told: false, reader_left: false }
    }
}

impl From<ShelfError> for Failure {
    fn from(error: ShelfError) -> Self {
        WorkError::from(error).into()
    }
}

/// What to do by a command or an option, which only the command line has.
fn by_command(trouble: &Trouble) -> Option<String> {
    match trouble {
        Trouble::Edit { error: EditError::Unreadable(_), .. } => {
            Some("`seatwright check` says where".to_owned())
        }
        Trouble::Layout(LayoutError::NotSettable { given, .. }) => {
            Some(format!("take --set {given}=... away"))
        }
        Trouble::NotRestored(
            NotRestored::Needed { part, name, .. } | NotRestored::OtherText { part, name, .. },
        ) => Some(match part {
            CodePart::Layout if name.starts_with(plugin_host::PREFIX) => {
                "--plugin PATH names a plugin, --set NAME=NUMBER gives it what it was given then"
                    .to_owned()
            }
            CodePart::Layout => "--layout FILE takes it from a file".to_owned(),
            CodePart::Cell => "--cell FILE takes it from a file".to_owned(),
        }),
        Trouble::Layout(LayoutError::Plugin(fault)) => match &fault.kind {
            PluginFaultKind::NotFound { .. } | PluginFaultKind::NotTrusted { .. } => {
                Some("or name its file with --plugin PATH".to_owned())
            }
            PluginFaultKind::NotGiven { parameter, .. } => {
                Some(format!("--set {parameter}=... gives it"))
            }
            _ => None,
        },
        _ => None,
    }
}

impl Failure {
    /// A failure that is somebody's move, in a sentence without a full stop.
    pub(crate) fn new(whose: Whose, message: impl Into<String>) -> Self {
        let said = Said { message: message.into(), hint: None };
        Self { whose, said, id: None, file: None, told: false, reader_left: false }
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

    /// Says what to do.
    pub(crate) fn hint(mut self, hint: impl Into<String>) -> Self {
        self.said.hint = Some(hint.into());
        self
    }

    /// Says that everything has been told already, and only the exit code is left.
    pub(crate) fn told(self) -> Self {
        Self { told: true, ..self }
    }

    /// Whose move it is.
    pub(crate) fn whose(&self) -> Whose {
        self.whose
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
        ExitCode::from(code(self.whose))
    }

    /// The same in JSON; `kind` says whose move it is.
    fn to_json(&self) -> String {
        let file = self.file.as_ref().map(|file| (&*file.text, &*file.remarks));
        let error = report::Error { kind: words(self.whose), id: self.id, said: &self.said, file };
        report::error(PROGRAM, error, &say::text)
    }

    /// Remarks with their places, then the message and its hint.
    pub(crate) fn to_words(&self, color: bool) -> String {
        let file = self.file.as_ref();
        let mut words = file.map_or_else(String::new, |file| remarks::to_words(file, color));
        words.push_str(&remarks::sentence(&self.said.message, self.said.hint.as_deref(), color));
        words
    }
}

/// A call that the argument parser does not understand.
impl From<clap::Error> for Failure {
    fn from(error: clap::Error) -> Self {
        let words = error.render().to_string();
        let (words, _) = words.split_once("\nFor more information").unwrap_or((&words, ""));
        let (message, usage) = words.split_once("\nUsage:").unwrap_or((words, ""));
        let (message, tip) = message.split_once("\n  tip: ").unwrap_or((message, ""));
        let in_one_line = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
        let usage = usage.lines().next().unwrap_or_default().trim();
        let failure = Self::call(in_one_line(message.trim_start_matches("error:")));
        match (in_one_line(tip), usage) {
            (tip, "") if tip.is_empty() => {
                failure.hint("`seatwright --help` tells how it is called")
            }
            (tip, usage) if tip.is_empty() => {
                failure.hint(format!("call it as `{usage}`; --help tells more"))
            }
            (tip, _) => failure.hint(tip),
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
