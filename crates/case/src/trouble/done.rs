//! Why what was done is not recorded.

/// Why what was done is not recorded.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NotDone {
    /// A compartment has no count, where each needs one.
    NoCountFor(Vec<u8>),
    /// A compartment is counted twice.
    CountedTwice(u8),
    /// The cushion has no compartment of that number.
    NoSuchNumber {
        /// As written.
        number: u8,
        /// Those that there are.
        known: Vec<u8>,
    },
    /// Nothing was planned, so nothing can be as planned.
    NothingPlanned,
    /// Nothing is proposed that was not done yet.
    NothingProposed,
    /// A fill was begun and is not recorded, so nobody knows what was checked.
    FillGoesOn {
        /// Compartments that were filled and counted.
        counted: usize,
        /// Compartments in all.
        of: usize,
    },
    /// Nobody recorded what is in the cushion.
    NothingPutIn,
    /// More cells were moved out of a compartment than the record knows in it.
    TooMany {
        /// Its number.
        number: u8,
        /// Cells that are in it, by the record.
        there: u32,
        /// Cells that were moved.
        moved: u32,
    },
    /// Nothing is said to have been done.
    Nothing,
    /// The record has no such entry.
    NoSuchEntry {
        /// As written, from 1.
        entry: usize,
        /// How many there are.
        there: usize,
    },
    /// The entry was withdrawn.
    IsWithdrawn(usize),
    /// The entry says nothing about what is in the cushion.
    HasNoCounts(usize),
    /// An entry is withdrawn without a reason.
    NoReason,
}
