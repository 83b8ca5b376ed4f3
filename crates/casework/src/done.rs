//! What was done, added to a client's file after it was done: fills, checks, counts, moves, weights,
//! the skin. Facts are recorded as they are; what cannot have been is questioned first.

use std::collections::BTreeSet;

use case::{
    Check, Cleaned, Client, CushionNow, Date, Entry, Filled, Move, Moved, NotDone, PartsChecked,
    Place, Recount, Returned, SiteName, SkinAnswer, SkinSeen, Trouble, Weighed, Withdrawn,
};
use cushion::{Mass, Pattern};

use crate::error::WorkError;
use crate::recording::Recorder;
use crate::shelf::Change;
use crate::sourced::{Sourced, client_text, pattern};
use crate::surroundings::Surroundings;

/// What was done, or found.
#[derive(Clone, Debug, PartialEq)]
pub enum Done {
    /// Cells were put in.
    Filled(Counted),
    /// The cushion came filled, and was counted against its fill card.
    Incoming(Counted),
    /// A fitting check was made; the day and the person come with the recording.
    Checked {
        /// What hands found.
        found: Vec<Check>,
        /// Whether a transfer was tried.
        transfer: bool,
        /// Whether reaching was tried.
        reach: bool,
        /// Whether it was found right, where somebody says.
        passed: Option<bool>,
    },
    /// Some compartments, or the bag, were counted again.
    Recount {
        /// Number and cells.
        counts: Vec<(u8, u32)>,
        /// Cells in the bag.
        spare: Option<u32>,
    },
    /// The client was weighed.
    Weighed(Mass),
    /// Cells were moved; none where they were moved as proposed.
    Moved(Option<Vec<Move>>),
    /// The skin was seen.
    Skin(Vec<(SiteName, SkinAnswer)>),
    /// An entry was a mistake.
    Withdrawn(usize),
    /// The counts after an earlier entry were put in again.
    Returned(usize),
    /// The cushion was cleaned.
    Cleaned,
}

/// What is in a cushion, as somebody counted it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Counted {
    /// Number and cells of each compartment; none where it is as planned.
    pub counts: Option<Vec<(u8, u32)>>,
    /// Cells in the bag.
    pub spare: Option<u32>,
    /// The batch of the cells.
    pub batch: Option<String>,
    /// The serial of the cushion.
    pub serial: Option<String>,
}

/// What was recorded.
#[derive(Clone, Debug)]
pub struct Recorded {
    /// The client's file with it.
    pub client: Sourced<Client>,
    /// How many entries were there before.
    pub before: usize,
}

impl Recorded {
    /// The entries that were added, each with its number.
    pub fn entries(&self) -> impl Iterator<Item = (usize, &Entry)> {
        let all = self.client.value.record.iter().enumerate().skip(self.before);
        all.map(|(at, entry)| (at + 1, entry))
    }
}

/// Adds what was done to the end of a client's file.
///
/// # Errors
///
/// Fails where nobody signs it, where it cannot have been done by what the record knows, or the
/// file cannot be written or was changed since it was read; nothing is written then.
pub fn record_done(
    surroundings: Surroundings<'_>,
    name: &str,
    done: &Done,
    recorder: &Recorder<'_>,
) -> Result<Recorded, WorkError> {
    recorder.signed()?;
    let client = surroundings.client(name)?;
    let doing = Doing { surroundings, client: &client, recorder };
    let entries = doing.entries(done)?;
    if entries.is_empty() {
        return Err(doing.refused(NotDone::Nothing));
    }
    let mut text = client.file.text.clone();
    for entry in &entries {
        text = files::append_entry(&text, entry).map_err(|why| {
            WorkError::file(Trouble::NotAppended { file: client.file.path.clone(), why })
        })?;
    }
    if entries.iter().any(ends_a_fill) {
        text = files::with_filling(&text, None).map_err(|why| {
            WorkError::file(Trouble::NotAppended { file: client.file.path.clone(), why })
        })?;
    }
    let after = client_text(client.file.path.clone(), text)?;
    let bytes = after.file.text.clone().into_bytes();
    surroundings.shelf.put(&[Change::of(name, client.file.text.as_bytes(), bytes)])?;
    Ok(Recorded { before: client.value.record.len(), client: after })
}

/// Whether an entry says what is in every compartment, so that no fill goes on after it.
fn ends_a_fill(entry: &Entry) -> bool {
    matches!(entry, Entry::Filled(_) | Entry::Incoming(_) | Entry::Returned(_))
}

/// Something that is being recorded.
struct Doing<'a> {
    surroundings: Surroundings<'a>,
    client: &'a Sourced<Client>,
    recorder: &'a Recorder<'a>,
}

impl Doing<'_> {
    fn refused(&self, why: NotDone) -> WorkError {
        WorkError::asked(Trouble::NotDone { file: self.client.file.path.clone(), why })
    }

    /// The day, who, and why.
    fn signed(&self) -> (Date, String, Option<String>) {
        let because = self.recorder.because.map(|why| why.trim().to_owned());
        (self.recorder.on, self.recorder.by.trim().to_owned(), because)
    }

    fn entries(&self, done: &Done) -> Result<Vec<Entry>, WorkError> {
        let (on, by, why) = self.signed();
        let one = match done {
            Done::Filled(own) => Entry::Filled(self.filled(own)?),
            Done::Incoming(own) => Entry::Incoming(self.filled(own)?),
            Done::Checked { found, transfer, reach, passed } => {
                let (transfer, reach, passed) = (*transfer, *reach, *passed);
                let found = found.clone();
                let check = PartsChecked { on, by, found, transfer, reach, passed, why };
                self.can_be_checked(&check)?;
                Entry::Checked(check)
            }
            Done::Recount { counts, spare } => self.recount(counts, *spare)?,
            Done::Weighed(weight) => Entry::Weighed(Weighed { on, by, weight: *weight }),
            Done::Moved(moves) => {
                let moves = self.moves(moves.as_deref())?;
                Entry::Moved(Moved { on, by, moves, why })
            }
            Done::Skin(seen) => {
                let entry = |(site, answer): &(SiteName, SkinAnswer)| {
                    let (site, answer) = (*site, *answer);
                    Entry::Skin(SkinSeen { on, by: by.clone(), site, answer })
                };
                return Ok(seen.iter().map(entry).collect());
            }
            Done::Withdrawn(entry) => self.withdrawn(*entry)?,
            Done::Returned(entry) => {
                let counts = self.counts_after(*entry)?;
                Entry::Returned(Returned { on, by, entry: *entry, counts, why })
            }
            Done::Cleaned => Entry::Cleaned(Cleaned { on, by, why }),
        };
        Ok(vec![one])
    }

    /// The numbers of the compartments.
    fn numbers(&self) -> Result<Vec<u8>, WorkError> {
        Ok(self.pattern()?.compartments().iter().map(|own| own.number).collect())
    }

    fn pattern(&self) -> Result<Pattern, WorkError> {
        let mut layout = self.surroundings.layout_of(self.client)?;
        let cell = self.surroundings.cell_of(self.client)?;
        pattern(&mut layout, self.client.value.cushion.size, &cell.value)
    }

    /// Refuses counts of compartments that are not there, or counted twice.
    fn are_there(&self, counts: &[(u8, u32)]) -> Result<Vec<u8>, WorkError> {
        let known = self.numbers()?;
        let mut seen = BTreeSet::new();
        for (number, _) in counts {
            if !known.contains(number) {
                let known = known.clone();
                return Err(self.refused(NotDone::NoSuchNumber { number: *number, known }));
            }
            if !seen.insert(*number) {
                return Err(self.refused(NotDone::CountedTwice(*number)));
            }
        }
        Ok(known)
    }

    fn filled(&self, own: &Counted) -> Result<Filled, WorkError> {
        let chosen = &self.client.value.cushion;
        let mut counts = match &own.counts {
            Some(counts) => counts.clone(),
            None => self.as_planned()?,
        };
        let known = self.are_there(&counts)?;
        let missing: Vec<u8> =
            known.into_iter().filter(|number| !counts.iter().any(|it| it.0 == *number)).collect();
        if !missing.is_empty() {
            return Err(self.refused(NotDone::NoCountFor(missing)));
        }
        counts.sort_unstable();
        let (on, by, why) = self.signed();
        Ok(Filled {
            on,
            by,
            cushion: Some((chosen.layout.to_string(), chosen.size)),
            counts,
            spare: own.spare,
            batch: own.batch.clone(),
            serial: own.serial.clone().or_else(|| chosen.serial.clone()),
            why,
        })
    }

    /// The counts of the plan that was recorded last, where it is for this cushion.
    fn as_planned(&self) -> Result<Vec<(u8, u32)>, WorkError> {
        let (client, chosen) = (&self.client.value, &self.client.value.cushion);
        let plan = client.latest_plan().filter(|plan| {
            plan.layout == chosen.layout.to_string()
                && plan.size.to_string() == chosen.size.to_string()
        });
        let plan = plan.ok_or_else(|| self.refused(NotDone::NothingPlanned))?;
        Ok(plan.counts.iter().map(|own| (own.number, own.planned)).collect())
    }

    /// What somebody recorded is in the cushion; refused where it is only believed.
    fn told(&self) -> Result<CushionNow, WorkError> {
        let client = &self.client.value;
        let now =
            client.cushion_now().filter(|now| now.from.is_told() && now.is_in(&client.cushion));
        now.ok_or_else(|| self.refused(NotDone::NothingPutIn))
    }

    /// A check can only pass of counts that somebody recorded, at compartments that are there, and
    /// not while the cushion is being filled.
    fn can_be_checked(&self, check: &PartsChecked) -> Result<(), WorkError> {
        if check.passed == Some(true) {
            if let Some(own) = self.client.value.filling_so_far() {
                let (counted, of) = (own.counted, own.of);
                return Err(self.refused(NotDone::FillGoesOn { counted, of }));
            }
            self.told()?;
        }
        let pressed: Vec<(u8, u32)> = (check.found.iter())
            .filter_map(|own| match own {
                Check::Press { number, .. } => Some((*number, 0)),
                _ => None,
            })
            .collect();
        if check.found.is_empty() && check.passed.is_none() {
            return Err(self.refused(NotDone::Nothing));
        }
        if pressed.is_empty() { Ok(()) } else { self.are_there(&pressed).map(drop) }
    }

    fn recount(&self, counts: &[(u8, u32)], spare: Option<u32>) -> Result<Entry, WorkError> {
        if counts.is_empty() && spare.is_none() {
            return Err(self.refused(NotDone::Nothing));
        }
        let known = self.are_there(counts)?;
        let in_this = |now: &CushionNow| now.is_in(&self.client.value.cushion);
        if self.client.value.cushion_now().filter(in_this).is_none() {
            let counted = |number: &u8| counts.iter().any(|own| own.0 == *number);
            let missing: Vec<u8> = known.into_iter().filter(|number| !counted(number)).collect();
            if !missing.is_empty() {
                return Err(self.refused(NotDone::NoCountFor(missing)));
            }
        }
        let mut counts = counts.to_vec();
        counts.sort_unstable();
        let (on, by, _) = self.signed();
        Ok(Entry::Recount(Recount { on, by, counts, spare }))
    }

    /// The moves as they were made, or as they follow from the plan that is proposed.
    fn moves(&self, moves: Option<&[Move]>) -> Result<Vec<Move>, WorkError> {
        let now = self.told()?;
        let Some(moves) = moves else { return self.proposed(&now) };
        if moves.iter().all(|own| own.cells == 0) {
            return Err(self.refused(NotDone::Nothing));
        }
        let places = moves.iter().flat_map(|own| [own.from, own.to]);
        let numbers: BTreeSet<u8> = places
            .filter_map(|place| match place {
                Place::Compartment(number) => Some(number),
                Place::Spare => None,
            })
            .collect();
        let numbers: Vec<(u8, u32)> = numbers.into_iter().map(|number| (number, 0)).collect();
        self.are_there(&numbers)?;
        self.are_enough(&now, moves)?;
        Ok(moves.to_vec())
    }

    /// Refuses to take more out of a compartment than is in it, one move after the other.
    fn are_enough(&self, now: &CushionNow, moves: &[Move]) -> Result<(), WorkError> {
        let mut cells = now.counts.clone();
        for own in moves {
            if let Place::Compartment(number) = own.from {
                let there = cells.get(&number).copied().unwrap_or(0);
                let moved = own.cells;
                let left = there.checked_sub(moved);
                let left =
                    left.ok_or_else(|| self.refused(NotDone::TooMany { number, there, moved }))?;
                cells.insert(number, left);
            }
            if let Place::Compartment(number) = own.to {
                *cells.entry(number).or_default() += own.cells;
            }
        }
        Ok(())
    }

    fn proposed(&self, now: &CushionNow) -> Result<Vec<Move>, WorkError> {
        let client = &self.client.value;
        let planned = self.as_planned()?;
        let pattern = self.pattern()?;
        let of = |number: u8| now.counts.get(&number).copied().unwrap_or(0);
        let before: Vec<u32> = planned.iter().map(|own| of(own.0)).collect();
        let after: Vec<u32> = planned.iter().map(|own| own.1).collect();
        let moves = fitting::moves(&pattern, &before, &after);
        if moves.is_empty() || !client.moves_are_left() && now.to_put_back().is_empty() {
            return Err(self.refused(NotDone::NothingProposed));
        }
        Ok(moves)
    }

    /// An entry of the record that was not withdrawn.
    fn entry(&self, entry: usize) -> Result<&Entry, WorkError> {
        let record = &self.client.value.record;
        let there = record.len();
        let own = entry.checked_sub(1).and_then(|at| record.get(at));
        let own = own.ok_or_else(|| self.refused(NotDone::NoSuchEntry { entry, there }))?;
        if case::withdrawn(record)[entry - 1] {
            return Err(self.refused(NotDone::IsWithdrawn(entry)));
        }
        Ok(own)
    }

    fn withdrawn(&self, entry: usize) -> Result<Entry, WorkError> {
        self.entry(entry)?;
        let (on, by, why) = self.signed();
        let because = why.ok_or_else(|| self.refused(NotDone::NoReason))?;
        Ok(Entry::Withdrawn(Withdrawn { on, by, entry, because }))
    }

    /// The counts that were in this cushion after an entry; of a plan, those that it planned.
    fn counts_after(&self, entry: usize) -> Result<Vec<(u8, u32)>, WorkError> {
        let client = &self.client.value;
        let counts: Vec<(u8, u32)> = match self.entry(entry)? {
            Entry::Plan(plan) => plan.counts.iter().map(|own| (own.number, own.planned)).collect(),
            _ => {
                let then = client.cushion_after(entry).filter(|then| then.is_in(&client.cushion));
                let then = then.ok_or_else(|| self.refused(NotDone::HasNoCounts(entry)))?;
                then.counts.into_iter().collect()
            }
        };
        let numbers = self.numbers()?;
        if !numbers.iter().eq(counts.iter().map(|own| &own.0)) {
            return Err(self.refused(NotDone::HasNoCounts(entry)));
        }
        Ok(counts)
    }
}
