//! Failure: the one place that turns errors into words, hints and exit codes.

use std::path::Path;
use std::process::ExitCode;

use case::text::EditError;
use case::{CodePart, Doing, LayoutError, NotRestored, PluginFaultKind, Said, Trouble};
use casework::{FileRemarks, PROGRAM, ShelfError, Whose, WorkError};
use files::report;
use words::{Advice, CallFault, OutputFault, SupplierFault};

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
    let advice = match trouble {
        Trouble::Edit { error: EditError::Unreadable(_), .. } => Advice::CheckSaysWhere,
        Trouble::Layout(LayoutError::NotSettable { given, .. }) => {
            Advice::TakeSettingAway { given: given.as_str() }
        }
        Trouble::NotRestored(
            NotRestored::Needed { part, name, .. } | NotRestored::OtherText { part, name, .. },
        ) => match part {
            CodePart::Layout if name.starts_with(plugin_host::PREFIX) => Advice::NamePluginOfCode,
            CodePart::Layout => Advice::NameLayoutOfCode,
            CodePart::Cell => Advice::NameCellOfCode,
        },
        Trouble::Layout(LayoutError::Plugin(fault)) => match &fault.kind {
            PluginFaultKind::NotFound { .. } | PluginFaultKind::NotTrusted { .. } => {
                Advice::NamePlugin
            }
            PluginFaultKind::NotGiven { parameter, .. } => {
                Advice::GiveSetting { parameter: parameter.as_str() }
            }
            _ => return None,
        },
        _ => return None,
    };
    Some(say::language().advice(&advice))
}

impl Failure {
    /// A failure that is somebody's move: why, in a sentence without a full stop, and what to do.
    pub(crate) fn new(whose: Whose, said: Said) -> Self {
        Self { whose, said, id: None, file: None, told: false, reader_left: false }
    }

    /// The command was called in a wrong way.
    pub(crate) fn call(fault: &CallFault<'_>) -> Self {
        Self::new(Whose::Asker, say::language().call_fault(fault))
    }

    /// What a supplier asks for is not had.
    pub(crate) fn supplier(fault: &SupplierFault<'_>) -> Self {
        Self::new(Whose::Asker, say::language().supplier_fault(fault))
    }

    /// An output cannot be one.
    pub(crate) fn output(fault: &OutputFault<'_>) -> Self {
        Self::new(Whose::Asker, say::language().output_fault(fault))
    }

    /// The answer could not be written.
    pub(crate) fn answer(error: &std::io::Error) -> Self {
        let said =
            say::language().output_fault(&OutputFault::TheAnswer { why: &shelf::why(error) });
        let reader_left = error.kind() == std::io::ErrorKind::BrokenPipe;
        Self { reader_left, ..Self::new(Whose::Keeper, said) }
    }

    /// An output could not be written.
    pub(crate) fn write(path: &Path, error: &std::io::Error) -> Self {
        let reader_left = error.kind() == std::io::ErrorKind::BrokenPipe;
        let error = ShelfError::new(Doing::Write, path.display().to_string(), shelf::why(error));
        Self { reader_left, ..Self::from(error) }
    }

    /// Says what to do.
    pub(crate) fn hint(mut self, hint: impl Into<String>) -> Self {
        self.said.hint = Some(hint.into());
        self
    }

    /// Says what to do.
    pub(crate) fn advise(self, advice: &Advice<'_>) -> Self {
        self.hint(say::language().advice(advice))
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
        let message = in_one_line(message.trim_start_matches("error:"));
        let failure = Self::new(Whose::Asker, Said { message, hint: None });
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
