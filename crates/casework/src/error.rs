//! Why work on a case ends early: whose move it is, what, what to do, and where.

use std::fmt;
use std::ops::Range;

use case::text::TextFinding;
use case::{
    Doing, LayoutError, LayoutErrorBy, PluginFault, PluginFaultKind, ShelfError, Trouble, Why,
};
use files::{Remark, Severity};

use crate::file_remarks::FileRemarks;

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
    /// That of whoever set the goals: one falls short, where none was to.
    GoalSetter,
    /// That of whoever makes or chooses the cushion: no made size suits.
    Chooser,
    /// That of whoever looks after the disk or the folder, or of whoever changed a file meanwhile.
    Keeper,
    /// Ours: a fault of the program.
    Ours,
}

/// Why work on a case ends early.
#[derive(Clone, Debug, PartialEq)]
pub struct WorkError {
    /// Whose move it is.
    pub whose: Whose,
    /// What is the matter.
    pub what: Box<Trouble>,
    /// The file that it is about, with places.
    pub file: Option<Box<FileRemarks>>,
}

impl WorkError {
    /// An error that is somebody's move.
    #[must_use]
    pub fn new(whose: Whose, what: Trouble) -> Self {
        Self { whose, what: Box::new(what), file: None }
    }

    /// What was asked cannot be answered.
    #[must_use]
    pub fn asked(what: Trouble) -> Self {
        Self::new(Whose::Asker, what)
    }

    /// A file is wrong as a whole.
    #[must_use]
    pub fn file(what: Trouble) -> Self {
        Self::new(Whose::Writer, what)
    }

    /// A file is wrong at the places that the remarks point at.
    #[must_use]
    pub fn wrong_file(file: FileRemarks) -> Self {
        let (errors, remarks) = file.counts();
        let what = Trouble::WrongFile { file: file.path.clone(), errors, remarks };
        Self { file: Some(Box::new(file)), ..Self::file(what) }
    }

    /// Shows the remarks on a text before the message.
    #[must_use]
    pub fn about(self, file: FileRemarks) -> Self {
        Self { file: Some(Box::new(file)), ..self }
    }

    /// Points at the words of a client's file that named what cannot be had; what is wrong
    /// within another file stays as it is, and so does what is wrong with the question alone.
    #[must_use]
    pub fn named_in(self, client: &FileRemarks, table: &str, key: &str) -> Self {
        if self.file.is_some() || self.is_of_a_setting() {
            return self;
        }
        let place = files::place_of_value(&client.text, table, key);
        let remark = self.as_remark(place.unwrap_or_else(|| client.first_line()));
        Self::wrong_file(FileRemarks { remarks: vec![remark], ..client.clone() })
    }

    /// Whether it is about a setting that was given beside the client's file, which is then not
    /// wrong.
    #[must_use]
    pub fn is_of_a_setting(&self) -> bool {
        matches!(*self.what, Trouble::Layout(LayoutError::NotSettable { .. }))
    }

    /// The same as a remark on a text.
    #[must_use]
    pub fn as_remark(&self, span: Range<usize>) -> Remark {
        let finding = TextFinding::Trouble(self.what.clone());
        // What is not safe for one client is no fault of the file.
        let severity =
            if self.whose == Whose::Clinician { Severity::Remark } else { Severity::Error };
        Remark { severity, span, finding }
    }
}

/// Says the values for a developer; sentences for the user are made elsewhere.
impl fmt::Display for WorkError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:?}: {:?}", self.whose, self.what)
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
        let answer = match &error {
            LayoutError::Plugin(PluginFault {
                plugin,
                kind: PluginFaultKind::BadLayout { text, remarks },
            }) => Some(FileRemarks {
                path: format!("answer of the plugin {plugin}"),
                text: text.clone(),
                remarks: remarks.iter().take(MOST_REMARKS).cloned().collect(),
            }),
            _ => None,
        };
        Self { file: answer.map(Box::new), ..Self::new(whose, Trouble::Layout(error)) }
    }
}

impl From<ShelfError> for WorkError {
    fn from(error: ShelfError) -> Self {
        let whose = match (error.doing, &error.why) {
            (Doing::Read, Why::TooLarge { .. }) => Whose::Writer,
            (Doing::Read, _) => Whose::Asker,
            _ => Whose::Keeper,
        };
        Self::new(whose, Trouble::Shelf(error))
    }
}
