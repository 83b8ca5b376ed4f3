//! Why work on a case ends early: whose move it is, what, what to do, and where.

use std::fmt;
use std::ops::Range;

use case::text::TextFinding;
use case::{LayoutError, LayoutErrorBy, PluginFault, PluginFaultKind};
use files::{Remark, Severity};

use crate::file_remarks::FileRemarks;
use crate::shelf::{Doing, NoFile, ShelfError, Why};

/// Whose move it is next.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Whose {
    /// That of the person who asked.
    Asker,
    /// That of whoever wrote a file.
    Writer,
    /// That of the author of a source of layouts.
    SourceAuthor,
    /// The clinician's: it is not safely possible.
    Clinician,
    /// That of whoever looks after the disk or the folder, or of whoever changed a file meanwhile.
    Keeper,
    /// Ours: a fault of the program.
    Ours,
}

/// Why work on a case ends early.
#[derive(Clone, Debug)]
pub struct WorkError {
    /// Whose move it is.
    pub whose: Whose,
    /// What is wrong, in a sentence without a full stop.
    pub message: String,
    /// What to do.
    pub hint: Option<String>,
    /// The file that it is about, with places.
    pub file: Option<Box<FileRemarks>>,
}

impl WorkError {
    /// An error that is somebody's move, in a sentence without a full stop.
    pub fn new(whose: Whose, message: impl Into<String>) -> Self {
        Self { whose, message: message.into(), hint: None, file: None }
    }

    /// What was asked cannot be answered.
    pub fn asked(message: impl Into<String>) -> Self {
        Self::new(Whose::Asker, message)
    }

    /// A file is wrong as a whole.
    pub fn file(message: impl Into<String>) -> Self {
        Self::new(Whose::Writer, message)
    }

    /// A file is wrong at the places that the remarks point at.
    #[must_use]
    pub fn wrong_file(file: FileRemarks) -> Self {
        let message = format!("{} cannot be used: {}", file.shown(), file.count());
        Self { file: Some(Box::new(file)), ..Self::file(message) }
    }

    /// Adds what to do.
    #[must_use]
    pub fn hint(self, hint: impl Into<String>) -> Self {
        Self { hint: Some(hint.into()), ..self }
    }

    /// Shows the remarks on a text before the message.
    #[must_use]
    pub fn about(self, file: FileRemarks) -> Self {
        Self { file: Some(Box::new(file)), ..self }
    }

    /// Points at the words of a client's file that named what cannot be had; what is wrong
    /// within another file stays as it is.
    #[must_use]
    pub fn named_in(self, client: &FileRemarks, table: &str, key: &str) -> Self {
        if self.file.is_some() {
            return self;
        }
        let place = files::place_of_value(&client.text, table, key);
        let remark = self.as_remark(place.unwrap_or_else(|| client.first_line()));
        Self::wrong_file(FileRemarks { remarks: vec![remark], ..client.clone() })
    }

    /// The same as a remark on a text.
    #[must_use]
    pub fn as_remark(&self, span: Range<usize>) -> Remark {
        let finding = TextFinding::Said { message: self.message.clone(), hint: self.hint.clone() };
        // What is not safe for one client is no fault of the file.
        let severity =
            if self.whose == Whose::Clinician { Severity::Remark } else { Severity::Error };
        Remark { severity, span, finding }
    }
}

impl fmt::Display for WorkError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.message)
    }
}

impl std::error::Error for WorkError {}

/// The most remarks on a drawn layout that are shown: one mistake often has many places.
const MOST_REMARKS: usize = 5;

impl From<LayoutError> for WorkError {
    fn from(error: LayoutError) -> Self {
        let whose = match error.by() {
            LayoutErrorBy::Asker => Whose::Asker,
            LayoutErrorBy::Source => Whose::SourceAuthor,
            LayoutErrorBy::System => Whose::Ours,
        };
        let said = words::ENGLISH.no_layout(&error);
        let plain = Self { hint: said.hint, ..Self::new(whose, said.message) };
        match error {
            LayoutError::Plugin(PluginFault {
                plugin,
                kind: PluginFaultKind::BadLayout { text, mut remarks },
            }) => {
                remarks.truncate(MOST_REMARKS);
                let path = format!("answer of the plugin {plugin}");
                plain.about(FileRemarks { path, text, remarks })
            }
            _ => plain,
        }
    }
}

impl From<ShelfError> for WorkError {
    fn from(error: ShelfError) -> Self {
        if error.doing == Doing::Read { unread(&error) } else { unwritten(&error) }
    }
}

/// Why a file was not read.
fn unread(error: &ShelfError) -> WorkError {
    let shown = format!("`{}`", error.name);
    match &error.why {
        Why::NotFound | Why::LinkToNothing => WorkError::asked(format!("there is no file {shown}")),
        Why::NotAllowed => WorkError::asked(format!("{shown} may not be read by this user")),
        Why::NotAFile(NoFile::Folder) => {
            WorkError::asked(format!("{shown} is a folder, not a file"))
        }
        Why::NotAFile(_) => {
            WorkError::asked(format!("{shown} is no ordinary file, so it was not read"))
        }
        Why::TooLarge { .. } => WorkError::file(format!(
            "{shown} is larger than 1 MB, so it was not read"
        ))
        .hint("layout, cell and client files have a few thousand bytes; is this the right file?"),
        why => WorkError::asked(format!("{shown} cannot be read: {}", reason(why))),
    }
}

/// Why files were not written.
fn unwritten(error: &ShelfError) -> WorkError {
    let shown = format!("`{}`", error.name);
    let keeper = |message: String| WorkError::new(Whose::Keeper, message);
    let failed = match &error.why {
        Why::Changed | Why::Gone => keeper(format!(
            "{shown} was changed by somebody else meanwhile; nothing was written"
        ))
        .hint("look at what was changed, then give the command again"),
        Why::ThereAlready => keeper(format!("{shown} is there already and was left as it is"))
            .hint("choose another name, or move that file away first"),
        Why::ReadOnlyFile => keeper(format!("cannot write {shown}: the file is read-only"))
            .hint("whoever set it so wants it kept; make it writable, or take a copy"),
        Why::OtherOwner => keeper(format!("cannot write {shown}: the file belongs to somebody else"))
            .hint("let its owner do it: written by you it would become yours"),
        Why::HardLinked { names } => keeper(format!(
            "cannot write {shown}: the file has {names} names, and the others would keep the old text"
        ))
        .hint("remove the other names, or take a copy"),
        why => keeper(format!("cannot write {shown}: {}", reason(why))),
    };
    if error.not_undone.is_empty() {
        return failed;
    }
    let changed = error.not_undone.join("`, `");
    WorkError {
        message: format!("{}; changed all the same: `{changed}`", failed.message),
        ..failed
    }
}

/// Says in plain words why a shelf refuses.
fn reason(why: &Why) -> String {
    match why {
        Why::NotFound => "there is no such folder".to_owned(),
        Why::NotAllowed => "this user may not write there".to_owned(),
        Why::NotOfThisShelf => "it lies outside the folder of the clients".to_owned(),
        Why::TooLarge { .. } | Why::TooLargeHere => {
            "the file becomes larger than is allowed here".to_owned()
        }
        Why::NotAFile(NoFile::Folder) => "a folder has that name".to_owned(),
        Why::NotAFile(_) => "that name is no ordinary file's".to_owned(),
        Why::NotAFolder => "a part of the path is not a folder".to_owned(),
        Why::LinkToNothing => "it is a link to a file that is not there".to_owned(),
        Why::Changed | Why::Gone => "it was changed meanwhile".to_owned(),
        Why::ThereAlready => "a file has that name already".to_owned(),
        Why::Twice => "two outputs would have this name".to_owned(),
        Why::ReadOnlyFile => "the file is read-only".to_owned(),
        Why::OtherOwner => "the file belongs to somebody else".to_owned(),
        Why::HardLinked { .. } => "the file has other names".to_owned(),
        Why::ReadOnlyDisk => "the disk is read-only".to_owned(),
        Why::DiskFull => "the disk is full".to_owned(),
        Why::Locked => "another program keeps the folder locked".to_owned(),
        Why::System(words) => words.clone(),
    }
}
