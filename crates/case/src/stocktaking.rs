//! Where the cells are, by the record: what lies in the cushion now, what is meant to lie in it,
//! and what is left in the spare bag.
//!
//! What lies in it is what was recorded last of a fill, a recount, moves or a return. A plan is a
//! proposal. Only where nobody ever recorded what was done is the last plan taken to have been
//! carried out, as in files from before there were such entries.

use std::collections::BTreeMap;

use cushion::Size;

use crate::{
    Check, CheckOutcome, Client, CushionChoice, Date, Entry, Move, Place, RecordedPlan, Recount,
    in_force,
};

/// Cells by the number of the compartment.
pub type Cells = BTreeMap<u8, u32>;

/// What lay in a cushion before its latest plan, and how that is known.
#[derive(Clone, Debug, PartialEq)]
pub struct Before {
    /// How it is known.
    pub from: CountedFrom,
    /// Cells, in the order of the plan's counts.
    pub counts: Vec<u32>,
}

/// How counts are known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CountedFrom {
    /// Nothing was recorded: the cushion as supplied.
    Stock,
    /// By the plan of that day, which is taken to have been carried out.
    Plan(Date),
    /// By what was put in on that day.
    Filled(Date),
    /// By what came in the cushion, as it was counted on that day.
    Incoming(Date),
    /// By the recount of that day, and what was there before where not all was counted.
    Recount(Date),
    /// By the moves of that day.
    Moved(Date),
    /// By earlier counts, put in again on that day.
    Returned(Date),
}

impl CountedFrom {
    /// How reports call it.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Stock => "stock",
            Self::Plan(_) => "plan",
            Self::Filled(_) => "filled",
            Self::Incoming(_) => "incoming check",
            Self::Recount(_) => "recount",
            Self::Moved(_) => "moved",
            Self::Returned(_) => "returned",
        }
    }

    /// The day; none of a cushion as supplied.
    #[must_use]
    pub fn on(self) -> Option<Date> {
        match self {
            Self::Stock => None,
            Self::Plan(on)
            | Self::Filled(on)
            | Self::Incoming(on)
            | Self::Recount(on)
            | Self::Moved(on)
            | Self::Returned(on) => Some(on),
        }
    }

    /// Whether somebody recorded what was done, and it is not only believed.
    #[must_use]
    pub fn is_told(self) -> bool {
        !matches!(self, Self::Stock | Self::Plan(_))
    }
}

/// What is in a cushion.
#[derive(Clone, Debug, PartialEq)]
pub struct CushionNow {
    /// The layout and the size of the cushion, as far as the record says them.
    pub cushion: Option<(String, Size)>,
    /// Cells in each compartment.
    pub counts: Cells,
    /// How they are known.
    pub from: CountedFrom,
    /// Cells that are meant to be in each: those that were put in last, whatever a recount found.
    pub meant: Cells,
    /// Cells in the spare bag; below zero where more were taken out of it than there were.
    pub bag: i64,
}

impl CushionNow {
    /// Whether it is in the cushion that a file names, as far as the record says in which.
    #[must_use]
    pub fn is_in(&self, chosen: &CushionChoice) -> bool {
        self.cushion.as_ref().is_none_or(|(layout, size)| {
            *layout == chosen.layout.to_string() && size.to_string() == chosen.size.to_string()
        })
    }

    /// Whether each count is that of a plan.
    #[must_use]
    pub fn is_as_planned(&self, plan: &RecordedPlan) -> bool {
        are_planned(&self.counts, plan)
    }

    /// Cells in the whole cushion.
    #[must_use]
    pub fn total(&self) -> u32 {
        self.counts.values().sum()
    }

    /// Whether what was counted is what is meant, but for what handling explains.
    #[must_use]
    pub fn is_as_meant(&self) -> bool {
        let counted = |number: &u8| self.counts.get(number).copied().unwrap_or(0);
        let mut all = self.meant.iter();
        all.all(|(number, cells)| explained_by_handling(*cells, counted(number)))
    }

    /// What is missing or too much for what is meant, by compartment: positive where cells are to
    /// be put back.
    #[must_use]
    pub fn to_put_back(&self) -> Vec<(u8, i64)> {
        let of = |number: &u8| i64::from(self.counts.get(number).copied().unwrap_or(0));
        let differences = self.meant.iter().map(|(number, cells)| {
            let by = i64::from(*cells) - of(number);
            (*number, by)
        });
        differences.filter(|own| own.1 != 0).collect()
    }
}

/// Cells by which a recount of a compartment may be off without saying anything: one, or two in a
/// hundred. Hands miscount by that, and it changes the height by less than hands find.
#[must_use]
pub fn explained_by_handling(meant: u32, counted: u32) -> bool {
    meant.abs_diff(counted) <= (meant / 50).max(1)
}

/// Returns what is in the cushion after all entries of a record, and what is left of so many spare
/// cells that came with it; none where nothing was recorded that says so.
#[must_use]
pub fn cushion_now(record: &[Entry], supplied: u32) -> Option<CushionNow> {
    let mut cells = Stocktaking::new(supplied);
    in_force(record).into_iter().for_each(|entry| cells.follow(entry));
    cells.now
}

impl Client {
    /// Returns what is in the cushion, by the record; none where nothing was recorded that says so.
    #[must_use]
    pub fn cushion_now(&self) -> Option<CushionNow> {
        cushion_now(&self.record, self.cushion.spare_cells)
    }

    /// Returns how many cells would be in the spare bag after moves: below zero where it holds too few.
    #[must_use]
    pub fn bag_after(&self, moves: &[Move]) -> i64 {
        let now = self.cushion_now().filter(|now| now.is_in(&self.cushion));
        let bag = now.map_or(i64::from(self.cushion.spare_cells), |now| now.bag);
        let change = |own: &Move| match (own.from, own.to) {
            (Place::Spare, _) => -i64::from(own.cells),
            (_, Place::Spare) => i64::from(own.cells),
            _ => 0,
        };
        bag + moves.iter().map(change).sum::<i64>()
    }

    /// Returns what was in the cushion after so many entries of the record, by what is known of
    /// them now: what was withdrawn later counts for nothing.
    #[must_use]
    pub fn cushion_after(&self, entries: usize) -> Option<CushionNow> {
        let withdrawn = crate::withdrawn(&self.record);
        let mut cells = Stocktaking::new(self.cushion.spare_cells);
        for (entry, withdrawn) in self.record.iter().zip(withdrawn).take(entries) {
            if !withdrawn {
                cells.follow(entry);
            }
        }
        cells.now
    }

    /// Returns the counts that belong on paper: those of the latest plan, or what was put into the
    /// cushion after it.
    #[must_use]
    pub fn counts_on_paper(&self) -> Option<RecordedPlan> {
        let mut plan = self.latest_plan()?.clone();
        let cells = self.followed();
        let (Some(now), false) = (&cells.now, cells.proposes()) else { return Some(plan) };
        let numbers: Vec<u8> = plan.counts.iter().map(|own| own.number).collect();
        if !numbers.iter().eq(now.meant.keys()) {
            return Some(plan);
        }
        // Cells that were put in as planned are the plan, on whatever day they were.
        if plan.counts.iter().all(|count| count.planned == now.meant[&count.number]) {
            return Some(plan);
        }
        for count in &mut plan.counts {
            count.planned = now.meant[&count.number];
        }
        plan.on = cells.meant_on.unwrap_or(plan.on);
        Some(plan)
    }

    /// Whether the latest plan is not carried out yet.
    #[must_use]
    pub fn plan_is_proposed(&self) -> bool {
        self.followed().proposes()
    }

    /// Whether the latest plan is not carried out yet, or only some of the moves to it were made and
    /// nothing was felt since.
    #[must_use]
    pub fn moves_are_left(&self) -> bool {
        let cells = self.followed();
        cells.pending || cells.begun
    }

    /// Returns what somebody recorded to be in the cushion, where it is nothing that was ever planned
    /// and no plan waits to be carried out: nobody judged those counts. Nor by what is known now, where
    /// earlier ones were put in again.
    #[must_use]
    pub fn unplanned_counts(&self) -> Option<CushionNow> {
        let now = self.cushion_now().filter(|now| now.from.is_told())?;
        let is_planned = |entry: &Entry| match entry {
            Entry::Plan(own) => now.is_as_planned(own),
            _ => false,
        };
        let is_again = matches!(now.from, CountedFrom::Returned(_));
        let is_known = !is_again && self.record.iter().any(is_planned);
        let unplanned = !self.plan_is_proposed() && !is_known;
        unplanned.then_some(now)
    }

    /// Whether somebody recorded what is in the cushion, and it is all that is meant to be there.
    #[must_use]
    pub fn nothing_is_left_to_move(&self) -> bool {
        self.followed().is_done()
    }

    /// Returns the plan whose counts are meant to lie in the cushion, the last of such.
    #[must_use]
    pub fn plan_carried_out(&self) -> Option<&RecordedPlan> {
        let now = self.cushion_now()?;
        self.in_force().into_iter().rev().find_map(|entry| match entry {
            Entry::Plan(plan) => Some(plan).filter(|plan| are_planned(&now.meant, plan)),
            _ => None,
        })
    }

    /// Returns what hands found on such cells for which nobody may sit on them, the oldest first.
    #[must_use]
    pub fn found_against(&self, cells: &Cells) -> Vec<Check> {
        let rounds = self.rounds_found().into_iter().filter(|own| own.cells == *cells);
        rounds.flat_map(|own| own.checks.iter().copied()).filter(Check::ends_sitting).collect()
    }

    /// Returns what lies in the cushion, or lay there, before the counts on paper are carried out;
    /// none where somebody recorded that they are.
    #[must_use]
    pub fn before_latest_plan(&self) -> Option<Before> {
        let plan = self.latest_plan()?;
        let cells = self.followed();
        let now = cells.now.as_ref().filter(|_| !cells.is_done())?;
        let there = cells.pending || cells.begun || !now.to_put_back().is_empty();
        let (from, counts) = match &cells.before {
            Some(before) if !there => (before.0, &before.1),
            _ => (now.from, &now.counts),
        };
        let of = |own: &crate::RecordedCount| counts.get(&own.number).copied().unwrap_or(0);
        Some(Before { from, counts: plan.counts.iter().map(of).collect() })
    }

    /// Returns how many cells are in the spare bag once the latest plan is carried out: those
    /// that came with the cushion as supplied, less what was put in, and more what was taken out.
    /// Below zero where more are needed than there are. Cells that a recount no longer found are
    /// lost, not in the bag.
    #[must_use]
    pub fn spare_cells_left(&self) -> i64 {
        let cells = self.followed();
        let Some(now) = &cells.now else { return i64::from(self.cushion.spare_cells) };
        let proposed = self.latest_plan().filter(|_| cells.proposes());
        now.bag + proposed.map_or(0, |plan| i64::from(now.total()) - i64::from(plan.total()))
    }

    /// Returns what hands found so far, each on the cells that lay in the cushion then, the oldest
    /// first. What was found before any plan, nobody knows on which cushion. Where the cells were counted
    /// again on the day of a check, and touched no more between, they lay there at the check.
    #[must_use]
    pub fn rounds_found(&self) -> Vec<RoundFound<'_>> {
        let mut cells = Stocktaking::new(self.cushion.spare_cells);
        let mut rounds: Vec<RoundFound<'_>> = Vec::new();
        // From where on the rounds are of this day, and of the cells that are there now.
        let (mut day, mut first) = (None, 0);
        for entry in self.in_force() {
            let before = cells.now.as_ref().map(|now| now.counts.clone());
            cells.follow(entry);
            let Some(now) = &cells.now else { continue };
            let is_recount = matches!(entry, Entry::Recount(_)) && day == Some(entry.on());
            if is_recount {
                rounds[first..].iter_mut().for_each(|own| own.cells = now.counts.clone());
            } else if before.as_ref() != Some(&now.counts) || day != Some(entry.on()) {
                (day, first) = (Some(entry.on()), rounds.len());
            }
            let checks = match entry {
                Entry::Adjustment(own) => own.checks.as_slice(),
                Entry::Checked(own) => &own.found,
                _ => continue,
            };
            if let Some(plan) = cells.plan {
                rounds.push(RoundFound { checks, cells: now.counts.clone(), plan });
            }
        }
        rounds
    }

    /// Returns the serial of the cushion: the one that was recorded last, else the file's.
    #[must_use]
    pub fn serial(&self) -> Option<&str> {
        let cells = self.followed();
        let here = cells.now.as_ref().is_some_and(|now| now.is_in(&self.cushion));
        cells.serial.filter(|_| here).or(self.cushion.serial.as_deref())
    }

    /// Returns the recounts by which a loss of cells is told, the oldest first, and the day on which
    /// all was right before them: the counts on paper were put in, or a check passed.
    #[must_use]
    pub fn recounts_since_right(&self) -> Option<(Date, Vec<&Recount>)> {
        let mut cells = Stocktaking::new(self.cushion.spare_cells);
        let (mut right, mut recounts) = (None, Vec::new());
        for entry in self.in_force() {
            let before = cells.meant_on;
            cells.follow(entry);
            let passed = cells.outcome(entry) == Some(CheckOutcome::Passed);
            match entry {
                Entry::Recount(own) => {
                    right = right.or(cells.meant_on);
                    recounts.push(own);
                }
                Entry::Filled(_) | Entry::Incoming(_) | Entry::Moved(_) | Entry::Returned(_) => {
                    (right, recounts) = (cells.meant_on, Vec::new());
                }
                _ if passed && !recounts.is_empty() => {
                    (right, recounts) = (Some(entry.on()), Vec::new());
                }
                _ if cells.meant_on != before => (right, recounts) = (cells.meant_on, Vec::new()),
                _ => {}
            }
        }
        Some((right?, recounts))
    }

    /// Returns the fitting checks so far, each of the cells that were meant to lie in the cushion
    /// then, the oldest first.
    #[must_use]
    pub fn fittings_checked(&self) -> Vec<FittingChecked<'_>> {
        let mut cells = Stocktaking::new(self.cushion.spare_cells);
        let mut fittings = Vec::new();
        for entry in self.in_force() {
            cells.follow(entry);
            let outcome = cells.outcome(entry);
            if let (Some(outcome), Some(plan), Some(now)) = (outcome, cells.plan, &cells.now) {
                fittings.push(FittingChecked { outcome, cells: now.meant.clone(), plan });
            }
        }
        fittings
    }

    fn followed(&self) -> Stocktaking<'_> {
        let mut cells = Stocktaking::new(self.cushion.spare_cells);
        self.in_force().into_iter().for_each(|entry| cells.follow(entry));
        cells
    }
}

/// Whether each count of cells is that of a plan.
fn are_planned(cells: &Cells, plan: &RecordedPlan) -> bool {
    let is_there = |own: &crate::RecordedCount| cells.get(&own.number) == Some(&own.planned);
    plan.counts.len() == cells.len() && plan.counts.iter().all(is_there)
}

/// What hands found once.
#[derive(Clone, Debug, PartialEq)]
pub struct RoundFound<'a> {
    /// What they found.
    pub checks: &'a [Check],
    /// What lay in the cushion.
    pub cells: Cells,
    /// The plan that was recorded last, by which the cushion is known again.
    pub plan: &'a RecordedPlan,
}

/// A fitting check, and of what it was.
#[derive(Clone, Debug, PartialEq)]
pub struct FittingChecked<'a> {
    /// What it came to.
    pub outcome: CheckOutcome,
    /// What lay in the cushion.
    pub cells: Cells,
    /// The plan that was recorded last, by which the cushion is known again.
    pub plan: &'a RecordedPlan,
}

/// Where the cells are at one point of the record.
pub(crate) struct Stocktaking<'a> {
    /// Cells that came in the bag.
    supplied: u32,
    /// The serial of the cushion, where the record says it.
    serial: Option<&'a str>,
    /// The plan that was recorded last.
    plan: Option<&'a RecordedPlan>,
    /// Whether somebody recorded what was put into this cushion, so that plans are proposals.
    puts_told: bool,
    pub(crate) now: Option<CushionNow>,
    /// What lay in it before what is meant was put in.
    before: Option<(CountedFrom, Cells)>,
    /// The day on which what is meant was put in.
    pub(crate) meant_on: Option<Date>,
    /// Whether the last plan came after what is meant, and is not taken to have been carried out.
    pending: bool,
    /// Whether moves lead from what was there to the last plan, and some are still to be made.
    begun: bool,
}

impl<'a> Stocktaking<'a> {
    pub(crate) fn new(supplied: u32) -> Self {
        Self {
            supplied,
            serial: None,
            plan: None,
            puts_told: false,
            now: None,
            before: None,
            meant_on: None,
            pending: false,
            begun: false,
        }
    }

    /// Whether the last plan is a proposal that nothing was done about yet.
    pub(crate) fn proposes(&self) -> bool {
        self.pending
    }

    /// Whether somebody recorded what is there, and nothing is proposed or to be put back.
    fn is_done(&self) -> bool {
        let as_meant = |now: &CushionNow| now.from.is_told() && now.to_put_back().is_empty();
        !self.pending && !self.begun && self.now.as_ref().is_some_and(as_meant)
    }

    pub(crate) fn follow(&mut self, entry: &'a Entry) {
        match entry {
            Entry::Plan(plan) => self.planned(plan),
            Entry::Recount(own) => self.counted(own),
            Entry::Filled(own) => self.filled(own, CountedFrom::Filled(own.on)),
            Entry::Incoming(own) => self.filled(own, CountedFrom::Incoming(own.on)),
            Entry::Moved(own) => self.moved(&own.moves, own.on),
            Entry::Returned(own) => {
                let counts = own.counts.iter().copied().collect();
                self.put_in(counts, CountedFrom::Returned(own.on));
            }
            Entry::FittingCheck(_) => {
                self.felt();
                self.seen();
            }
            Entry::Adjustment(_) => self.felt(),
            Entry::Checked(_) => {
                self.begun = false;
                self.seen();
            }
            Entry::Weighed(_) | Entry::Skin(_) | Entry::Cleaned(_) | Entry::Withdrawn(_) => {}
        }
    }

    /// Without a word on what was put in, what is felt is felt on what was planned.
    fn felt(&mut self) {
        self.begun = false;
        if let (true, false, Some(plan)) = (self.pending, self.puts_told, self.plan) {
            self.carried_out(plan);
        }
    }

    /// What was counted before a check, the check has seen: it is meant from then on.
    fn seen(&mut self) {
        if let Some(now) = &mut self.now
            && !now.is_as_meant()
        {
            now.meant = now.counts.clone();
            self.meant_on = now.from.on();
        }
    }

    /// What an entry that was followed comes to, where it is a fitting check. Of counts that nobody
    /// recorded it is not known which ones were checked in parts.
    pub(crate) fn outcome(&self, entry: &Entry) -> Option<CheckOutcome> {
        let told = self.now.as_ref().is_some_and(|now| now.from.is_told());
        match (entry, entry.check_outcome()?) {
            (Entry::Checked(_), CheckOutcome::Passed) if !told => Some(CheckOutcome::NotFinished),
            (_, outcome) => Some(outcome),
        }
    }

    fn planned(&mut self, plan: &'a RecordedPlan) {
        if self.now.is_some() && !self.is_of(plan) {
            *self = Self::new(self.supplied);
        }
        (self.plan, self.begun) = (Some(plan), false);
        let told = self.now.as_ref().is_some_and(|now| now.from.is_told());
        if self.puts_told || told {
            self.pending = true;
        } else {
            self.carried_out(plan);
        }
    }

    /// Whether a plan is for the cushion that is followed.
    fn is_of(&self, plan: &RecordedPlan) -> bool {
        match (self.plan, &self.now) {
            (Some(last), _) => same_cushion(last, plan),
            (None, Some(now)) => {
                let numbers = plan.counts.iter().map(|own| &own.number);
                let same = |(layout, size): &(String, Size)| {
                    *layout == plan.layout && size.to_string() == plan.size.to_string()
                };
                now.counts.keys().eq(numbers) && now.cushion.as_ref().is_none_or(same)
            }
            (None, None) => true,
        }
    }

    fn carried_out(&mut self, plan: &RecordedPlan) {
        let counts = plan.counts.iter().map(|own| (own.number, own.planned)).collect();
        self.put_in(counts, CountedFrom::Plan(plan.on));
    }

    fn filled(&mut self, own: &'a crate::Filled, from: CountedFrom) {
        let other = |(layout, size): &(String, Size)| {
            let known = self.now.as_ref().and_then(|now| now.cushion.as_ref());
            known.is_some_and(|known| (&known.0, known.1.to_string()) != (layout, size.to_string()))
        };
        if own.cushion.as_ref().is_some_and(other) {
            *self = Self::new(self.supplied);
        }
        let mut counts = self.now.as_ref().map_or_else(Cells::new, |now| now.counts.clone());
        counts.extend(own.counts.iter().copied());
        self.puts_told = true;
        self.serial = own.serial.as_deref().or(self.serial);
        self.put_in(counts, from);
        if let Some(now) = &mut self.now {
            now.cushion = own.cushion.clone().or(now.cushion.take());
            now.bag = own.spare.map_or(now.bag, i64::from);
        }
    }

    /// Cells for what was in the cushion: the difference comes out of the bag, or goes into it.
    fn put_in(&mut self, counts: Cells, from: CountedFrom) {
        let stock = || self.plan.map(stock_of);
        let before = match &self.now {
            Some(now) => Some((now.from, now.counts.clone())),
            None => stock().map(|stock| (CountedFrom::Stock, stock)),
        };
        let sum = |cells: &Cells| cells.values().copied().map(i64::from).sum::<i64>();
        let bag = self.now.as_ref().map_or(i64::from(self.supplied), |now| now.bag);
        let freed = before.as_ref().map_or(0, |before| sum(&before.1) - sum(&counts));
        let of_plan = self.plan.map(|plan| (plan.layout.clone(), plan.size));
        let cushion = self.now.take().and_then(|now| now.cushion).or(of_plan);
        let meant = counts.clone();
        self.now = Some(CushionNow { cushion, counts, from, meant, bag: bag + freed });
        self.before = before;
        self.meant_on = from.on();
        (self.pending, self.begun) = (false, false);
        // The plan's own cells are not a word on what was put in.
        self.puts_told |= from.is_told();
    }

    fn counted(&mut self, own: &Recount) {
        let Some(now) = &mut self.now else { return self.counted_first(own) };
        now.counts.extend(own.counts.iter().copied());
        now.from = CountedFrom::Recount(own.on);
        now.bag = own.spare.map_or(now.bag, i64::from);
    }

    /// A count of what nobody recorded: that is what is in it.
    fn counted_first(&mut self, own: &Recount) {
        let counts = own.counts.iter().copied().collect();
        self.put_in(counts, CountedFrom::Recount(own.on));
        if let Some(now) = &mut self.now {
            now.bag = own.spare.map_or(now.bag, i64::from);
        }
    }

    fn moved(&mut self, moves: &[Move], on: Date) {
        let Some(now) = &self.now else { return };
        let (mut counts, mut bag) = (now.counts.clone(), now.bag);
        for step in moves {
            let cells = step.cells;
            match step.from {
                Place::Spare => bag -= i64::from(cells),
                // What was moved was there, whatever was known to be.
                Place::Compartment(from) => {
                    let left = counts.get(&from).map_or(0, |own| own.saturating_sub(cells));
                    counts.insert(from, left);
                }
            }
            match step.to {
                Place::Spare => bag += i64::from(cells),
                Place::Compartment(to) => *counts.entry(to).or_default() += cells,
            }
        }
        let (before, cushion) = ((now.from, now.counts.clone()), now.cushion.clone());
        let (meant, from) = (counts.clone(), CountedFrom::Moved(on));
        self.now = Some(CushionNow { cushion, counts, from, meant, bag });
        self.begun = (self.pending || self.begun) && self.leads_on(&before.1);
        self.before = Some(before);
        (self.meant_on, self.pending, self.puts_told) = (Some(on), false, true);
    }

    /// Whether what is there now lies between what was there and the last plan, in each compartment,
    /// and is not the plan yet.
    fn leads_on(&self, before: &Cells) -> bool {
        let (Some(plan), Some(now)) = (self.plan, &self.now) else { return false };
        let of = |cells: &Cells, number: u8| cells.get(&number).copied().unwrap_or(0);
        let between = |own: &crate::RecordedCount| {
            let (from, to) = (of(before, own.number), own.planned);
            (from.min(to)..=from.max(to)).contains(&of(&now.counts, own.number))
        };
        let reached = |own: &crate::RecordedCount| of(&now.counts, own.number) == own.planned;
        plan.counts.iter().all(between) && !plan.counts.iter().all(reached)
    }
}

/// The stock fill that a plan begins from.
fn stock_of(plan: &RecordedPlan) -> Cells {
    plan.counts.iter().map(|own| (own.number, own.stock)).collect()
}

/// Whether two plans are for the same compartments.
fn same_cushion(a: &RecordedPlan, b: &RecordedPlan) -> bool {
    let places = |plan: &RecordedPlan| -> Vec<_> {
        plan.counts.iter().map(|own| (own.id.clone(), own.number)).collect()
    };
    a.size.to_string() == b.size.to_string() && places(a) == places(b)
}
