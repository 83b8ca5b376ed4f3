//! What is said of the record: entries, what is in the cushion, how the fitting stands.

use case::{
    CardCode, CheckOutcome, CheckPart, CountedFrom, Entry, Expected, NoCardCode, OtherCushion,
    OtherPapers, PartsChecked, RecordNote, Restored, Standing,
};

/// What is said of the record.
pub trait RecordWords {
    /// How the fitting stands and when the client is looked at again: sentences.
    fn standing(&self, standing: Standing<'_>) -> String;

    /// How counts are known: a clause, such as "recount of 2026-03-01".
    fn counted_from(&self, from: CountedFrom) -> String;

    /// From what is in the cushion an answer begins: a clause.
    fn begins_from(&self, from: CountedFrom) -> String;

    /// A part of a fitting check, within a sentence.
    fn check_part(&self, part: CheckPart) -> &'static str;

    /// What a fitting check comes to: a word or two.
    fn check_outcome(&self, outcome: CheckOutcome) -> &'static str;

    /// What a fitting check in parts comes to, and what it lacks: a sentence.
    fn checked(&self, check: &PartsChecked) -> String;

    /// How many cells are in the spare bag, or how many more were taken out than it held: a
    /// sentence.
    fn bag(&self, cells: i64) -> String;

    /// How many cells would be in the spare bag after proposed moves: a sentence.
    fn bag_after(&self, cells: i64) -> String;

    /// What is in the cushion, by number: a line.
    fn counts(&self, counts: &[(u8, u32)]) -> String;

    /// How many entries a record has: a clause.
    fn entries(&self, count: usize) -> String;

    /// An entry of the record: a line, without its day and its author.
    fn entry(&self, entry: &Entry) -> String;

    /// What a plan was expected to do: a clause.
    fn expected(&self, expected: &Expected) -> String;

    /// What the record says that whoever works on the cushion should know: a sentence.
    fn record_note(&self, note: &RecordNote) -> String;

    /// That papers of other counts lie in the folder into which papers are written: a clause.
    fn other_papers(&self, papers: &OtherPapers) -> String;

    /// The text that lies in such a folder: which of the papers are of which plan, and which hold.
    fn which_papers_hold(&self, papers: &OtherPapers) -> String;

    /// What was found again by the code on a card, and that it is an estimate until it is checked:
    /// sentences.
    fn restored(&self, restored: &Restored) -> String;

    /// The same in the record, why its counts are there: a sentence.
    fn restored_from(&self, code: &CardCode) -> String;

    /// Who signs for counts that nobody but a code has told.
    fn restored_by(&self) -> &'static str;

    /// At the head of a file that was restored: what it is, and what it is not; lines.
    fn restored_head(&self, code: &CardCode) -> String;

    /// Why papers have no code: a clause.
    fn no_card_code(&self, why: NoCardCode) -> String;

    /// That a plan or moves are proposed, and that what is done is recorded after it was done: a
    /// sentence.
    fn is_proposed(&self) -> &'static str;

    /// A cushion that the client sat on before, or sits on beside this one, and this one: its cells in
    /// all and what is expected of them. A heading and indented lines.
    fn beside_the_other(&self, other: &OtherCushion, here: (u32, Option<&Expected>))
    -> Vec<String>;

    /// How long the client may sit: a sentence.
    fn sit_at_most(&self, minutes: u32, times: u32) -> String;
}
