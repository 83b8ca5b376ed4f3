//! What the record says that whoever works on the cushion should know.

use crate::{CheckPart, Client, Date, FillingSoFar};

/// What the record says that whoever works on the cushion should know.
#[derive(Clone, Debug, PartialEq)]
pub enum RecordNote {
    /// Nobody recorded what was put in: that plan is taken to have been carried out.
    Believed(Date),
    /// Cells are to be put back into a compartment, or taken out of it where it is negative.
    PutBack {
        /// The number of the compartment.
        number: u8,
        /// How many.
        cells: i64,
    },
    /// More cells were taken out of the spare bag than it held.
    BagShort {
        /// How many more.
        cells: i64,
    },
    /// A check was recorded that is not finished.
    NotFinished {
        /// The parts that are missing; none where nobody says whether it passed.
        missing: Vec<CheckPart>,
    },
    /// A fill was begun and is not recorded: what is in the cushion is not what the record says.
    Filling(FillingSoFar),
}

impl RecordNote {
    /// How reports call it.
    #[must_use]
    pub fn id(&self) -> &'static str {
        match self {
            Self::Believed(_) => "believed",
            Self::PutBack { .. } => "put-back",
            Self::BagShort { .. } => "bag-short",
            Self::NotFinished { .. } => "check-not-finished",
            Self::Filling(_) => "fill-begun",
        }
    }
}

impl Client {
    /// Returns what the record says of the cells in cushion and bag that is not as it should be.
    #[must_use]
    pub fn record_notes(&self) -> Vec<RecordNote> {
        let mut notes: Vec<RecordNote> =
            self.filling_so_far().map(RecordNote::Filling).into_iter().collect();
        let Some(now) = self.cushion_now() else { return notes };
        if let (false, Some(plan)) = (now.from.is_told(), now.from.on()) {
            notes.push(RecordNote::Believed(plan));
        }
        if !self.plan_is_proposed() {
            let back = now.to_put_back().into_iter();
            notes.extend(back.map(|(number, cells)| RecordNote::PutBack { number, cells }));
        }
        if now.bag < 0 {
            notes.push(RecordNote::BagShort { cells: -now.bag });
        }
        notes
    }
}
