//! What is said of the record: entries, what is in the cushion, how the fitting stands.

use case::{CheckOutcome, CheckPart, CountedFrom, Date, Entry, Expected, PartsChecked, Standing};

/// What is said of the record.
pub trait RecordWords {
    /// How the fitting stands and when the client is looked at again: sentences.
    fn standing(&self, standing: Standing<'_>) -> String;

    /// How counts are known: a clause, such as "recount of 2026-03-01".
    fn counted_from(&self, from: CountedFrom) -> String;

    /// A part of a fitting check, within a sentence.
    fn check_part(&self, part: CheckPart) -> &'static str;

    /// What a fitting check comes to: a word or two.
    fn check_outcome(&self, outcome: CheckOutcome) -> &'static str;

    /// What a fitting check in parts comes to, and what it lacks: a sentence.
    fn checked(&self, check: &PartsChecked) -> String;

    /// What is to be put back into a compartment, or taken out where it is negative: a sentence.
    fn put_back(&self, number: u8, cells: i64) -> String;

    /// How many cells are in the spare bag, or how many more were taken out than it held: a
    /// sentence.
    fn bag(&self, cells: i64) -> String;

    /// What is in the cushion, by number: a line.
    fn counts(&self, counts: &[(u8, u32)]) -> String;

    /// An entry of the record: a line, without its day and its author.
    fn entry(&self, entry: &Entry) -> String;

    /// What a plan was expected to do: a clause.
    fn expected(&self, expected: &Expected) -> String;

    /// That a plan or moves are proposed, and that what is done is recorded after it was done: a
    /// sentence.
    fn is_proposed(&self) -> &'static str;

    /// That nobody recorded what is in the cushion, and that a plan is taken to have been carried
    /// out: a sentence.
    fn is_believed(&self, plan: Date) -> String;

    /// How long the client may sit: a sentence.
    fn sit_at_most(&self, minutes: u32, times: u32) -> String;
}
