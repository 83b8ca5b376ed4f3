//! What the program says of its own doing: what was written, what a plugin is, why a call is not
//! one. Only a terminal shows it.

mod contour;
mod done;
mod faults;

pub use contour::{ContourNumber, ContourSaid};
pub use done::{Begun, Done, Told};
pub use faults::{
    Advice, CallFault, FileFault, OutputFault, PageFault, ProgramFault, SupplierFault,
};

use case::{FileKind, Said};

/// How grave something is that is said beside an answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Level {
    /// Why the program did not do what it was asked.
    Error,
    /// What whoever reads an answer should know first.
    Warning,
    /// What somebody should look at in a file that can be used.
    Remark,
    /// What to do.
    Hint,
}

impl Level {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Error, Self::Warning, Self::Remark, Self::Hint];
}

/// What the program says of its own doing.
pub trait ProgramWords {
    /// What was done, or is to be known of an answer: lines without an end.
    fn told(&self, told: &Told<'_>) -> String;

    /// What was begun or written for somebody who goes on with it: lines without an end.
    fn begun(&self, begun: &Begun<'_>) -> String;

    /// What is recorded of a client, and what is not.
    fn done(&self, done: &Done<'_>) -> String;

    /// The virtual test of a supplier's jig: lines without an end.
    fn contour(&self, said: &ContourSaid<'_>) -> String;

    /// What a number of that test is.
    fn contour_number(&self, number: ContourNumber) -> String;

    /// What stands before something that is said beside an answer: a word.
    fn level(&self, level: Level) -> &'static str;

    /// The kind of a file, as a noun.
    fn file_kind(&self, kind: FileKind) -> &'static str;

    /// Why a call is not one, and what to do.
    fn call_fault(&self, fault: &CallFault<'_>) -> Said;

    /// Why an output cannot be one, and what to do.
    fn output_fault(&self, fault: &OutputFault<'_>) -> Said;

    /// Why what a supplier asks for is not had, and what to do.
    fn supplier_fault(&self, fault: &SupplierFault<'_>) -> Said;

    /// Why files end a command, and what to do.
    fn file_fault(&self, fault: &FileFault<'_>) -> Said;

    /// What is the program's own fault, and what to do.
    fn program_fault(&self, fault: &ProgramFault<'_>) -> Said;

    /// Why the page beside the chair is not served, and what to do.
    fn page_fault(&self, fault: &PageFault<'_>) -> Said;

    /// What to do where why is said elsewhere: a clause.
    fn advice(&self, advice: &Advice<'_>) -> String;
}
