//! English: what is said of the record.

use case::{
    CardCode, Check, CheckOutcome, CheckPart, CountedFrom, Entry, Expected, Filled, FillingSoFar,
    Lapse, Move, NoCardCode, OtherCushion, OtherPapers, PartsChecked, Place, RecordNote, Restored,
    Review, StaleFilling, Standing, State,
};
use cushion::Side;

use super::English;
use super::folder;
use super::parts::cells;
use super::restoring;
use crate::{BasicWords as _, RecordWords};

impl RecordWords for English {
    fn standing(&self, standing: Standing<'_>) -> String {
        let state = match standing.state {
            State::ToMeasure => {
                "State: TO MEASURE. Hip width and weight are needed first.".to_owned()
            }
            State::ToPlan => "State: TO PLAN. Nothing was planned and nothing put in.".to_owned(),
            State::Estimate => {
                "State: ESTIMATE. No finished check of these counts was recorded.".to_owned()
            }
            State::NotSafe(on) => format!(
                "State: NOT SAFE. What was put in on {on} is expected to break a limit. Mend it before the client sits on it."
            ),
            State::Fitted(looked) => {
                format!("State: FITTED. Checked on {} by {}.", looked.on, looked.by)
            }
            State::Failed(looked) => format!(
                "State: FAILED. The check of {} by {} found it not right.",
                looked.on, looked.by
            ),
            State::Lapsed(looked, lapse) => {
                format!("State: LAPSED. Checked on {}, but {}.", looked.on, self.lapse(lapse))
            }
        };
        match standing.review {
            Review::None => state,
            Review::Due(by) => format!("{state} Look again by {by}."),
            Review::Overdue(by) => format!("{state} Review OVERDUE since {by}."),
        }
    }

    fn counted_from(&self, from: CountedFrom) -> String {
        match from {
            CountedFrom::Stock => "as supplied".to_owned(),
            CountedFrom::Plan(on) => format!("plan of {on}"),
            CountedFrom::Filled(on) => format!("filled on {on}"),
            CountedFrom::Incoming(on) => format!("incoming check of {on}"),
            CountedFrom::Recount(on) => format!("recount of {on}"),
            CountedFrom::Moved(on) => format!("moves of {on}"),
            CountedFrom::Returned(on) => format!("returned to on {on}"),
        }
    }

    fn begins_from(&self, from: CountedFrom) -> String {
        match from.on().filter(|_| !from.is_told()) {
            Some(on) => format!("counts recorded on {on}"),
            None => format!("counts now in the cushion ({})", self.counted_from(from)),
        }
    }

    fn check_part(&self, part: CheckPart) -> &'static str {
        check_part(part)
    }

    fn check_outcome(&self, outcome: CheckOutcome) -> &'static str {
        match outcome {
            CheckOutcome::Passed => "passed",
            CheckOutcome::NotFinished => "not finished",
            CheckOutcome::Failed => "failed",
        }
    }

    fn checked(&self, check: &PartsChecked) -> String {
        let outcome = check.outcome();
        let missing = check.missing();
        match outcome {
            CheckOutcome::Passed => "The check passed.".to_owned(),
            CheckOutcome::Failed => "The check failed.".to_owned(),
            CheckOutcome::NotFinished => not_finished(&missing),
        }
    }

    fn bag(&self, left: i64) -> String {
        let count = cells(u32::try_from(left.unsigned_abs()).unwrap_or(u32::MAX));
        if left < 0 {
            format!("The spare bag is short of {count}: more were taken than it held. Count it.")
        } else {
            format!("The spare bag holds {count}.")
        }
    }

    fn bag_after(&self, left: i64) -> String {
        let count = cells(u32::try_from(left.unsigned_abs()).unwrap_or(u32::MAX));
        if left < 0 {
            format!("For these moves it is {count} short.")
        } else {
            format!("After these moves it holds {count}.")
        }
    }

    fn counts(&self, counts: &[(u8, u32)]) -> String {
        let counts = counts.iter().map(|(number, cells)| format!("{cells} in number {number}"));
        counts.collect::<Vec<_>>().join(", ")
    }

    fn entries(&self, count: usize) -> String {
        if count == 1 { "1 entry".to_owned() } else { format!("{count} entries") }
    }

    fn entry(&self, entry: &Entry) -> String {
        let why =
            |why: &Option<String>| why.as_ref().map_or(String::new(), |why| format!("; {why}"));
        match entry {
            Entry::Plan(own) => {
                let counts: Vec<(u8, u32)> =
                    own.counts.iter().map(|own| (own.number, own.planned)).collect();
                let counts = self.counts(&counts);
                format!("plan: {} ({counts}){}", cells(own.total()), why(&own.why))
            }
            Entry::FittingCheck(own) => {
                let outcome = match own.passed {
                    Some(true) => "passed",
                    Some(false) => "failed",
                    None => "not finished",
                };
                format!("fitting check: {outcome}{}", why(&own.found))
            }
            Entry::Adjustment(own) => format!(
                "checks: {}; {}{}",
                self.checks(&own.checks),
                self.moves(&own.moves, "nothing proposed"),
                why(&own.why)
            ),
            Entry::Recount(own) => match own.spare {
                Some(spare) if own.counts.is_empty() => {
                    format!("recount of the spare bag alone: {}", cells(spare))
                }
                spare => {
                    format!("recount: {}{}", self.counts(&own.counts), in_bag(spare))
                }
            },
            Entry::Weighed(own) => format!("weighed: {}", self.weight(own.weight)),
            Entry::Filled(own) => format!("filled: {}", self.filled(own)),
            Entry::Incoming(own) => format!("incoming check: {}", self.filled(own)),
            Entry::Checked(own) => {
                let outcome = self.check_outcome(own.outcome());
                let found = match own.found.as_slice() {
                    [] => String::new(),
                    found => format!("; {}", self.checks(found)),
                };
                format!("checked: {outcome}{found}{}", why(&own.why))
            }
            Entry::Moved(own) => {
                format!("moved: {}{}", self.moves(&own.moves, "nothing"), why(&own.why))
            }
            Entry::Returned(own) => format!(
                "returned to entry {}: {}{}",
                own.entry,
                self.counts(&own.counts),
                why(&own.why)
            ),
            Entry::Skin(own) => self.found(&Check::Skin { site: own.site, answer: own.answer }),
            Entry::Cleaned(own) => format!("cleaned{}", why(&own.why)),
            Entry::Withdrawn(own) => format!("withdraws entry {}; {}", own.entry, own.because),
        }
    }

    fn expected(&self, own: &Expected) -> String {
        let (side, by) =
            own.lower.map_or((None, cushion::Length::ZERO), |(side, by)| (Some(side), by));
        format!(
            "{} under the left seat bone and {} under the right, {}, at {}",
            self.length(own.under.left),
            self.length(own.under.right),
            self.lower(side, by),
            self.weight(own.weight)
        )
    }

    fn beside_the_other(
        &self,
        other: &OtherCushion,
        (total, here): (u32, Option<&Expected>),
    ) -> Vec<String> {
        let said = |own: &Expected| format!("expected {}", RecordWords::expected(self, own));
        let unknown = || "nothing was recorded of what was expected".to_owned();
        let there = other.expected.as_ref().map_or_else(unknown, said);
        let here = here.map_or_else(|| "of what is expected nothing is known".to_owned(), said);
        let taught = if other.taught {
            "What checks there taught of how the client sits is believed here to begin with."
        } else {
            "Nothing is learnt from it: no checks were recorded there, or its layout is not there \
             any more as it was."
        };
        vec![
            format!("Beside the other cushion, {} {} of {}:", other.layout, other.size, other.on),
            format!("  There: {}; {there}.", cells(other.cells)),
            format!("  Here: {}; {here}.", cells(total)),
            format!("  {taught} Its counts are not taken over."),
        ]
    }

    fn is_proposed(&self) -> &'static str {
        "This proposes. What is really put in or moved is recorded after it was done."
    }

    fn record_note(&self, note: &RecordNote) -> String {
        match note {
            RecordNote::Believed(plan) => format!(
                "Nobody recorded what was put in: the plan of {plan} is taken to have been carried \
                 out."
            ),
            RecordNote::PutBack { number, cells } => put_back(*number, *cells),
            RecordNote::BagShort { cells } => self.bag(-cells),
            RecordNote::NotFinished { missing } => not_finished(missing),
            RecordNote::Filling(own) => filling(own),
        }
    }

    fn other_papers(&self, papers: &OtherPapers) -> String {
        folder::warning(papers)
    }

    fn restored(&self, restored: &Restored) -> String {
        restoring::told(restored)
    }

    fn restored_from(&self, code: &CardCode) -> String {
        restoring::why(code)
    }

    fn restored_by(&self) -> &'static str {
        restoring::BY
    }

    fn restored_head(&self, code: &CardCode) -> String {
        restoring::head(code)
    }

    fn no_card_code(&self, why: NoCardCode) -> String {
        restoring::no_code(why)
    }

    fn which_papers_hold(&self, papers: &OtherPapers) -> String {
        folder::note(papers)
    }

    fn sit_at_most(&self, minutes: u32, times: u32) -> String {
        let times = match times {
            1 => "once a day".to_owned(),
            2 => "twice a day".to_owned(),
            times => format!("{times} times a day"),
        };
        format!("Sit at most {minutes} minutes at a time, {times}.")
    }
}

impl English {
    fn lapse(&self, lapse: Lapse) -> String {
        match lapse {
            Lapse::OtherCushion => "the file now names another cushion".to_owned(),
            Lapse::Filling(on) => format!("a fill that was begun on {on} is not recorded"),
            Lapse::Counts(on) => format!("other counts were put in on {on}"),
            Lapse::Recount(on) => {
                format!("the recount of {on} is off by more than handling explains")
            }
            Lapse::Skin(on, site) => {
                format!("a mark was seen on the {} on {on}", self.site(site))
            }
            Lapse::Weight(on) => format!("at the weight of {on} a limit is broken"),
        }
    }

    /// What hands found: clauses.
    pub(super) fn checks(&self, checks: &[Check]) -> String {
        checks.iter().map(|check| self.found(check)).collect::<Vec<_>>().join("; ")
    }

    fn filled(&self, own: &Filled) -> String {
        let total = own.counts.iter().map(|own| own.1).sum();
        let mut said = format!("{} ({})", cells(total), self.counts(&own.counts));
        let more = [
            Some(in_bag(own.spare)),
            own.batch.as_ref().map(|batch| format!(", batch {batch}")),
            own.serial.as_ref().map(|serial| format!(", serial {serial}")),
            own.why.as_ref().map(|why| format!("; {why}")),
        ];
        said.extend(more.into_iter().flatten());
        said
    }

    fn moves(&self, moves: &[Move], none: &str) -> String {
        let place = |place| match place {
            Place::Compartment(number) => format!("number {number}"),
            Place::Spare => "the spare bag".to_owned(),
        };
        let one = |own: &Move| {
            format!("{} from {} to {}", cells(own.cells), place(own.from), place(own.to))
        };
        if moves.is_empty() {
            return none.to_owned();
        }
        moves.iter().map(one).collect::<Vec<_>>().join(", ")
    }
}

/// What was counted in the spare bag, after what was counted elsewhere.
fn in_bag(spare: Option<u32>) -> String {
    spare.map_or(String::new(), |spare| format!(", {spare} in the spare bag"))
}

/// Cells to be put back into a compartment, or taken out of it where it is negative.
fn put_back(number: u8, by: i64) -> String {
    let count = cells(u32::try_from(by.unsigned_abs()).unwrap_or(u32::MAX));
    if by > 0 {
        format!("Put back {count} in number {number}.")
    } else {
        format!("Take {count} out of number {number}.")
    }
}

/// What a check lacks that is not finished.
fn not_finished(missing: &[CheckPart]) -> String {
    if missing.is_empty() {
        return "The check is not finished: nobody says whether it passed.".to_owned();
    }
    format!("The check is not finished: {} not looked at.", list_of_parts(missing))
}

/// How far a fill is that was begun.
fn filling(own: &FillingSoFar) -> String {
    let FillingSoFar { on, by, counted, of, stale } = own;
    let begun = format!(
        "A fill was begun on {on} by {by}, with {counted} of {of} compartments filled and counted"
    );
    let then = match stale {
        None => {
            ", and is not recorded yet. Until then nobody sits on the cushion: what is in it is not what the record says."
        }
        Some(StaleFilling::OtherCounts) => {
            ". Other counts are planned now, so nothing of it is used. Empty what was filled, and begin anew."
        }
        Some(StaleFilling::Since) => {
            ". Something else was done with the cushion since and is in the record, so nothing of it is used."
        }
    };
    format!("{begun}{then}")
}

/// A part of a fitting check.
fn check_part(part: CheckPart) -> &'static str {
    match part {
        CheckPart::Top(Side::Left) => "fingers on top at the left",
        CheckPart::Top(Side::Right) => "fingers on top at the right",
        CheckPart::Under(Side::Left) => "a hand under the left",
        CheckPart::Under(Side::Right) => "a hand under the right",
        CheckPart::Skin => "the skin after 30 minutes",
        CheckPart::Transfer => "a transfer",
        CheckPart::Reach => "reaching",
    }
}

/// Parts of a check in a row, with the verb that goes before "not looked at".
pub(super) fn list_of_parts(parts: &[CheckPart]) -> String {
    let named: Vec<&str> = parts.iter().map(|part| check_part(*part)).collect();
    let verb = if named.len() == 1 { "was" } else { "were" };
    format!("{} {verb}", named.join(", "))
}
