//! What is said of a finding, whichever it is.

use case::Finding;

use crate::{BasicWords, CardWords, CautionWords, CheckWords, GoalWords, RecordWords};

/// What is said of a case.
///
/// A *clause* begins with a small letter and has no full stop, so that it can stand in a list or
/// after a colon; *sentences* are whole.
pub trait FindingWords:
    BasicWords + GoalWords + CautionWords + CheckWords + CardWords + RecordWords
{
    /// A finding, as a clause or as sentences, whichever it is said in.
    fn finding(&self, finding: &Finding) -> String {
        match finding {
            Finding::Alarm(own) => self.alarm(own),
            Finding::Limit(own) => self.limit(own),
            Finding::Goal(own) => self.goal_outcome(own),
            Finding::Shortfall(own) => self.shortfall(*own),
            Finding::Caution(own) => self.caution(own),
            Finding::SizingRule(own) => self.sizing_rule(own),
            Finding::SizeMargin(own) => self.size_margin(own),
            Finding::SizeMisfit(own) => self.size_misfit(own),
            Finding::SizeToMake(own) => self.size_to_make(own),
            Finding::NoSizeToMake(own) => self.no_size_to_make(own),
            Finding::Height(own) => self.height_effect(own),
            Finding::LookAt(own) => self.look_at(*own).to_owned(),
            Finding::Doubt(own) => self.doubt(own),
            Finding::Next(own) => self.next_step(*own),
            Finding::Mistake(own) => self.mistake(own),
            Finding::LeftOut(own) => self.left_out(own),
            Finding::ReCheck(own) => self.why_re_check(own),
            Finding::Since(own) => self.since_recorded(own),
            Finding::Record(own) => self.record_note(own),
            Finding::OtherPapers(own) => self.other_papers(own),
            Finding::Restored(own) => self.restored(own),
            Finding::NoCardCode(own) => self.no_card_code(*own),
            Finding::Source(own) => self.source(*own).to_owned(),
        }
    }
}

impl<T: BasicWords + GoalWords + CautionWords + CheckWords + CardWords + RecordWords> FindingWords
    for T
{
}
