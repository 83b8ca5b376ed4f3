//! English: the page of a client's record.

use crate::HistoryTexts;

pub(super) const TEXTS: &HistoryTexts = &HistoryTexts {
    title: "History",
    subject: "What was planned, done and found on one cushion, oldest first",
    drawings: "Drawings are from above, the front edge up; the bar is at the client's left. They show the \
               cells after an entry, where they changed; a plan's are what it proposes.",
    expected: "Expected",
    weight: "Weight",
};
