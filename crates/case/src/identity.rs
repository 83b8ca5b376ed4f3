//! Whether a record is for this cushion: one answer, for paper, for checks and for counts.

use cushion::{Name, Size};

use crate::{Digest, RecordedPlan};

/// By which a filled cushion is known again: what was drawn, how large, with which cell.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CushionIdentity {
    /// The layout, as the client's file names it.
    pub layout: String,
    /// The digest of the layout's text.
    pub layout_digest: Digest,
    /// The digest of the cell's text.
    pub cell_digest: Digest,
    /// The size.
    pub size: Size,
    /// Id and number of each compartment, in the order of the numbers.
    pub compartments: Vec<(Name, u8)>,
}

/// How a recorded plan's cushion is like another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Likeness {
    /// It is the same.
    Same,
    /// Size and compartments are the same, but the text of the layout or of the cell was changed:
    /// the counts can be put in, but what was found on them says nothing.
    Edited {
        /// Whether that of the layout was.
        layout: bool,
        /// Whether that of the cell was.
        cell: bool,
    },
    /// The layout was changed, and has other compartments.
    OtherCompartments,
    /// It is another layout, or another size.
    Other,
}

impl CushionIdentity {
    /// Compares with the cushion that a plan was recorded for.
    #[must_use]
    pub fn likeness(&self, plan: &RecordedPlan) -> Likeness {
        let layout = self.layout_digest != plan.layout_digest;
        let cell = self.cell_digest != plan.cell_digest;
        let counted = plan.counts.iter().map(|count| (&count.id, count.number));
        let there = self.compartments.iter().map(|(id, number)| (id, *number));
        if self.size != plan.size || layout && self.layout != plan.layout {
            Likeness::Other
        } else if !counted.eq(there) {
            Likeness::OtherCompartments
        } else if layout || cell {
            Likeness::Edited { layout, cell }
        } else {
            Likeness::Same
        }
    }
}
