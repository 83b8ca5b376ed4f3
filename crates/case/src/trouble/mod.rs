//! Why work on a case ends early, as values.

mod cushions;
mod done;
mod papers;
mod restoring;
mod shelf;
mod tables;

use cushion::{FaultKind, Size};

pub use self::cushions::{BatchError, MeshError, StockError};
pub use self::done::NotDone;
pub use self::papers::{Drawn, NoPicture, NotDrawn};
pub use self::restoring::{CodePart, NotRestored};
pub use self::shelf::{Doing, NoFile, ShelfError, Why};
pub use self::tables::{NotAppended, TableFault};
use crate::text::EditError;
use crate::{AdjustRefusal, BodyError, Date, FileKind, LayoutError, WhyNoPlan};

/// Why work on a case ends early. Files are named as the user knows them.
#[derive(Clone, Debug, PartialEq)]
pub enum Trouble {
    /// A file was not read, or files were not written.
    Shelf(ShelfError),
    /// A file is not text in UTF-8.
    NotUtf8 {
        /// The file.
        file: String,
        /// The line of the first byte that does not belong there, from 1.
        line: usize,
        /// The byte.
        byte: u8,
    },
    /// A file is wrong where the remarks on it say.
    WrongFile {
        /// The file.
        file: String,
        /// How many of the remarks are errors.
        errors: usize,
        /// How many are none.
        remarks: usize,
    },
    /// There is no layout.
    Layout(LayoutError),
    /// A file that was named as one of ours does not say that it is. Its lines are nobody's to
    /// show.
    NotOurs {
        /// The file.
        file: String,
        /// As what it was named.
        kind: FileKind,
    },
    /// No cell is called so.
    UnknownCell {
        /// As written.
        name: String,
        /// The names that are.
        known: Vec<String>,
    },
    /// A file is not edited.
    Edit {
        /// The file.
        file: String,
        /// Why.
        error: EditError,
    },
    /// The plan recorded last has other compartments than the layout.
    OtherCompartments {
        /// The client's file.
        file: String,
    },
    /// A file names itself as that of the client's first cushion.
    FirstFileIsItself {
        /// The client's file.
        file: String,
    },
    /// The plan recorded last is for another cushion than the file now names.
    OtherCushion {
        /// The client's file.
        file: String,
        /// The day of the plan.
        on: Date,
        /// The layout and the size of the plan.
        was: (String, Size),
        /// Those that the file now names.
        now: (String, Size),
    },
    /// The client was not weighed.
    NoWeight {
        /// The client's file.
        file: String,
    },
    /// The client's measures make no body.
    NoBody {
        /// The client's file.
        file: String,
        /// Why.
        error: BodyError,
    },
    /// The wish is unsafe.
    NotSafe(WhyNoPlan),
    /// No plan is made of the client's file.
    NoPlan(WhyNoPlan),
    /// No plan is recorded, and only recorded counts are printed.
    NothingRecorded {
        /// The client's file.
        file: String,
    },
    /// Nothing is appended to the record.
    NotAppended {
        /// The client's file.
        file: String,
        /// Why.
        why: NotAppended,
    },
    /// Nobody signs what is to be recorded, or the reason says nothing in one line.
    NotSigned,
    /// What was done is not recorded.
    NotDone {
        /// The client's file.
        file: String,
        /// Why.
        why: NotDone,
    },
    /// No client's file is made of the code on a card.
    NotRestored(NotRestored),
    /// No check is given.
    NoCheck,
    /// Nothing can be said about checks.
    Checks {
        /// Why.
        why: AdjustRefusal,
        /// The numbers of the compartments.
        numbers: Vec<u8>,
    },
    /// Something cannot be put on paper, or drawn.
    NotDrawn {
        /// What.
        what: Drawn,
        /// Why.
        why: NotDrawn,
    },
    /// A page is not drawn as a picture.
    NoPicture(NoPicture),
    /// A layout has no stock fill in a size.
    NoStock {
        /// The layout's file.
        file: String,
        /// The size.
        size: Size,
        /// Why.
        error: StockError,
    },
    /// A layout cannot be made in a size.
    NotMade {
        /// The layout's file.
        file: String,
        /// The size.
        size: Size,
        /// What is wrong there.
        fault: Option<FaultKind>,
    },
    /// A layout has no sizes.
    NoSizes {
        /// The layout's file.
        file: String,
    },
    /// The counts are not one for each compartment.
    OtherCounts {
        /// How many were given.
        given: usize,
        /// How many compartments there are.
        wanted: usize,
    },
    /// Cells cannot be counted by weight.
    Batch(BatchError),
    /// A table cannot be read.
    Table {
        /// The file.
        file: String,
        /// The line, from 1.
        line: u64,
        /// What is wrong there.
        fault: TableFault,
    },
    /// Two tables are of different surveys: of another layout, cell, table or options.
    PartsOfOtherSurveys {
        /// The one.
        file: String,
        /// The other.
        first: String,
    },
    /// A part of a survey is there twice.
    PartTwice {
        /// The one.
        file: String,
        /// The other.
        first: String,
        /// Which part.
        part: usize,
    },
    /// Parts of a survey are missing.
    PartsMissing {
        /// Which.
        missing: Vec<usize>,
        /// Of how many.
        of: usize,
    },
    /// A part of a survey has no rows.
    EmptyPart {
        /// Its file.
        file: String,
    },
    /// What an earlier run left, or an earlier survey, is of another survey than this one.
    OtherSurvey {
        /// The file.
        file: String,
    },
    /// A body is in two parts of a survey.
    BodyTwice {
        /// Its row.
        row: u32,
    },
    /// There is nothing in the parts of a survey.
    NoParts,
    /// It was told to stop.
    Stopped,
    /// No thread is left; in the words of the system.
    NoThread(String),
}

crate::text::ids! {
    Trouble {
        Shelf => "trouble-shelf",
        NotUtf8 => "trouble-not-utf-8",
        WrongFile => "trouble-wrong-file",
        Layout => "trouble-no-layout",
        NotOurs => "trouble-not-ours",
        UnknownCell => "trouble-unknown-cell",
        Edit => "trouble-not-edited",
        OtherCompartments => "trouble-other-compartments",
        FirstFileIsItself => "trouble-first-file-is-itself",
        OtherCushion => "trouble-other-cushion",
        NoWeight => "trouble-no-weight",
        NoBody => "trouble-no-body",
        NotSafe => "trouble-not-safe",
        NoPlan => "trouble-no-plan",
        NothingRecorded => "trouble-nothing-recorded",
        NotAppended => "trouble-not-appended",
        NotSigned => "trouble-not-signed",
        NotDone => "trouble-not-done",
        NotRestored => "trouble-not-restored",
        NoCheck => "trouble-no-check",
        Checks => "trouble-checks",
        NotDrawn => "trouble-not-drawn",
        NoPicture => "trouble-no-picture",
        NoStock => "trouble-no-stock-fill",
        NotMade => "trouble-not-made",
        NoSizes => "trouble-no-sizes",
        OtherCounts => "trouble-other-counts",
        Batch => "trouble-batch",
        Table => "trouble-table",
        PartsOfOtherSurveys => "trouble-parts-of-other-surveys",
        PartTwice => "trouble-part-twice",
        PartsMissing => "trouble-parts-missing",
        EmptyPart => "trouble-empty-part",
        OtherSurvey => "trouble-other-survey",
        BodyTwice => "trouble-body-twice",
        NoParts => "trouble-no-parts",
        Stopped => "trouble-stopped",
        NoThread => "trouble-no-thread",
    }
}
