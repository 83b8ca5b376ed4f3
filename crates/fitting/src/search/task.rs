//! What is to be done where a client sits already: nothing, mend what is broken, or pursue goals; and
//! whether that is worth its cells.

use case::{BodyError, SiteName};
use cushion::Side;

use crate::checks::meaning::HAND;
use crate::goals::aims::{Aim, Filling, Quantity};
use crate::goals::limits::{Reference, limits};
use crate::goals::wanted::{GoalReader, Wanted};
use crate::prediction::client_on_cushion::SearchMeshes;
use crate::search::planner::{Planner, SPARE};
use crate::search::steps::Search;

/// Tolerances from which a limit counts as broken: below, two meshes differ.
pub(crate) const BROKEN: f64 = 0.05;
/// Tolerances by which a goal must be farther off than it was accepted for it to be taken up again: what
/// hands cannot tell.
const REOPENED: f64 = 0.5;
/// The share of what it is off to which a goal that fell short as was told must come at most for it to be
/// taken up again, where it is not met.
const MUCH_NEARER: f64 = 0.5;
/// Standard deviations below which a normal number is with a chance of four in five.
const FOUR_IN_FIVE: f64 = 0.84;
/// By how many tolerances a goal must come nearer for any cells to be moved, and for each cell of an
/// adult's compartment beside.
const WORTH: f64 = 0.25;
const WORTH_OF_A_CELL: f64 = 0.05;
/// And for each earlier round whose moves mended no limit and should have brought the goal nearer by
/// [`WORTH`] and near enough: what those did not bring is more likely what hands cannot tell, which is about
/// a tolerance.
const WORTH_AFTER_MOVES: f64 = 1.0;
/// Cells of an adult's compartment, of which those of a child's are counted as the same share.
const ADULT_COMPARTMENT: f64 = 60.0;

/// The least by which a clearance that is only doubted must grow for cells to be moved, m: a third of
/// what a hand tells.
const WORTH_CONFIRMING: f64 = 1e-3;

/// What each goal that is not refused is about, without what only goes with it.
pub(super) fn goals<'w>(
    wanted: impl IntoIterator<Item = &'w Wanted>,
) -> impl Iterator<Item = Vec<&'w Aim>> {
    let all = wanted.into_iter().filter_map(|goal| goal.aims.as_ref().ok());
    all.map(|aims| aims.iter().filter(|aim| !aim.goes_with()).collect())
}

/// What is to be done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Task {
    /// The goals are pursued, in their order.
    Pursue,
    /// What is broken is mended, and goals may not get worse.
    Repair,
    /// The same where nothing is broken by the estimate, but so little was felt that it is doubted.
    Confirm,
    /// Nothing.
    Stay,
}

/// What an adjustment adds to a plan.
#[derive(Clone, Debug)]
pub(crate) struct Adjusting {
    /// The cushion as it was expected before these answers; none where the client did not come to rest, or
    /// nothing was expected.
    pub(crate) expected: Option<Filling>,
    /// How much more clearance is kept under each seat bone than the limit, m: how unsure it is.
    pub(crate) unsure: [f64; 2],
    /// How much more than the limit there must be under each seat bone by the estimate where hands felt
    /// so little that it is doubted, m; nothing elsewhere.
    pub(crate) doubted: [f64; 2],
    /// How much more than the limit would be sure under each seat bone, m: no goal brings the clearance
    /// below that.
    pub(crate) sure: [f64; 2],
    /// How unsure the surface pressure at each seat bone is, Pa, and the height of the right one over
    /// the left, m, each as a standard deviation.
    pub(crate) surface_sd: [f64; 2],
    pub(crate) higher_sd: f64,
    /// The least and the most cells of each compartment in this round.
    pub(crate) bounds: Vec<[f64; 2]>,
    /// Sides on which the clearance must not get less.
    pub(crate) held: Vec<Side>,
    /// The counts before and after each time that cells were moved after checks that are learnt from.
    pub(crate) earlier: Vec<[Vec<f64>; 2]>,
    /// The last counts on which a check was passed.
    pub(crate) passed: Option<Vec<f64>>,
    /// Whether client and answers are the same left and right.
    pub(crate) symmetric: bool,
}

impl Planner<'_> {
    /// What is to be done. A plan pursues its goals; an adjustment only what is off.
    pub(super) fn task(
        &self,
        reader: &GoalReader<'_>,
        wanted: &[Wanted],
        needed: [f64; 2],
    ) -> Task {
        if self.adjusting.is_none() {
            return Task::Pursue;
        }
        let search = self.search(reader.meshes, Vec::new());
        let Some(home) = search.filled(&self.home, Some(reader.stock)) else { return Task::Repair };
        let passed = self.passed.as_ref();
        let passed = passed.and_then(|passed| search.filled(passed, Some(&home)));
        let reference = Reference { now: &home, passed: passed.as_ref() };
        let is_broken = |needed: [f64; 2]| {
            let broken = limits(&self.needs, reader.pattern, reference, needed);
            broken.iter().any(|aim| aim.misses(&home) > BROKEN)
        };
        if is_broken(self.least()) {
            return Task::Repair;
        }
        if is_broken(needed) {
            return Task::Confirm;
        }
        let is_off = |aims: Vec<&Aim>| self.is_off_by_more(&aims, &home, 1.0);
        if goals(wanted).any(is_off) { Task::Pursue } else { Task::Stay }
    }

    /// Whether a goal with these aims is off by more than so many tolerances and by more than hands may
    /// be wrong by.
    fn is_off_by_more(&self, aims: &[&Aim], filling: &Filling, tolerances: f64) -> bool {
        let off = |aim: &&Aim| aim.misses(filling) > tolerances + REOPENED.max(self.unsure(aim));
        aims.iter().any(off)
    }

    /// How many tolerances a goal with these aims may be off as it is: one, or what it was expected to
    /// fall short by. That was told when the counts were chosen, and answers that say the same again are
    /// a reason to move cells only where that meets it, or half of it. Where the last moves mended a
    /// limit, the counts were not chosen for a goal, and what those left of it is not accepted.
    fn accepted(&self, search: &Search<'_>, aims: &[&Aim], home: &Filling) -> f64 {
        if self.is_mended(search, home) {
            return 1.0;
        }
        let expected = self.adjusting.as_ref().and_then(|own| own.expected.as_ref());
        let misses = aims.iter().filter_map(|aim| Some(aim.misses(expected?)));
        misses.fold(1.0, f64::max)
    }

    /// Whether the last moves mended a clearance.
    fn is_mended(&self, search: &Search<'_>, home: &Filling) -> bool {
        let earlier = self.adjusting.as_ref().and_then(|own| own.earlier.last());
        let last = earlier.filter(|[_, after]| *after == self.home);
        last.is_some_and(|[before, _]| {
            self.leaves_too_little(search.filled(before, Some(home)).as_ref())
        })
    }

    /// Whether counts leave too little clearance by what is known now, so that moves from them mended it.
    fn leaves_too_little(&self, before: Option<&Filling>) -> bool {
        let is_low = |(side, enough): (Side, f64)| {
            let clearance = before.and_then(|own| Quantity::Clearance(side).value(own));
            clearance.is_none_or(|clearance| clearance < enough)
        };
        [Side::Left, Side::Right].into_iter().zip(self.enough()).any(is_low)
    }

    /// How many tolerances the number of an aim may be off by what is not known, with a chance of four
    /// in five that it is not more.
    pub(crate) fn unsure(&self, aim: &Aim) -> f64 {
        let Some(adjusting) = &self.adjusting else { return 0.0 };
        let sd = match aim.quantity {
            Quantity::RightHigher => adjusting.higher_sd,
            Quantity::Surface(SiteName::SeatBone(Side::Left)) => adjusting.surface_sd[0],
            Quantity::Surface(SiteName::SeatBone(Side::Right)) => adjusting.surface_sd[1],
            // No hand feels there: as little is known as of the seat bone of which less is.
            Quantity::Surface(_) => f64::max(adjusting.surface_sd[0], adjusting.surface_sd[1]),
            // Tops, counts and firmness are as sure as the counts.
            _ => 0.0,
        };
        FOUR_IN_FIVE * sd / aim.unit
    }

    /// The least clearance under each seat bone by the estimate, m.
    pub(super) fn least(&self) -> [f64; 2] {
        let limit = self.assumptions.parameters.clearance_limit;
        let unsure = self.adjusting.as_ref().map_or([0.0; 2], |adjusting| adjusting.unsure);
        unsure.map(|unsure| limit + unsure)
    }

    /// Whether a clearance that is doubted grows by something on a side that is too low.
    pub(super) fn confirms(&self, reader: &GoalReader<'_>, found: &Filling) -> bool {
        let search = self.search(reader.meshes, Vec::new());
        let Some(home) = search.filled(&self.home, Some(found)) else { return true };
        let grows = |(side, needed): (Side, f64)| {
            let clearance = |filling| Quantity::Clearance(side).value(filling);
            clearance(&home)
                .zip(clearance(found))
                .is_some_and(|(now, then)| now < needed && then - now >= WORTH_CONFIRMING)
        };
        [Side::Left, Side::Right].into_iter().zip(self.enough()).any(grows)
    }

    /// The clearance under each seat bone, m, from which an adjustment leaves it as it is.
    pub(super) fn enough(&self) -> [f64; 2] {
        let limit = self.assumptions.parameters.clearance_limit;
        let doubted = self.adjusting.as_ref().map_or([0.0; 2], |adjusting| adjusting.doubted);
        let least = self.least();
        [0, 1].map(|side| least[side].max(limit + doubted[side]))
    }

    /// The clearance that is aimed at under each seat bone, m, for what is to be done. What is too low is
    /// mended by what a hand tells above what is enough, so that the next reading confirms it. What is
    /// sure to be enough is not brought to where it is doubted; and what is enough without being sure is
    /// kept as it is, and costs no goal to be more.
    pub(crate) fn aimed_at(
        &self,
        reader: &GoalReader<'_>,
        task: Task,
        needed: [f64; 2],
    ) -> [f64; 2] {
        let Some(adjusting) = &self.adjusting else { return needed };
        let search = self.search(reader.meshes, Vec::new());
        let Some(home) = search.filled(&self.home, Some(reader.stock)) else { return needed };
        let limit = self.assumptions.parameters.clearance_limit;
        let aimed_at = |at: usize, side: Side| {
            let needed = needed[at];
            let Some(now) = Quantity::Clearance(side).value(&home) else { return needed };
            match task {
                Task::Stay => needed,
                Task::Repair | Task::Confirm if now < needed => needed.max(limit + HAND),
                // What is sure has room for what the search keeps spare beside.
                _ => needed.max(limit + adjusting.sure[at] - SPARE).min(now - SPARE),
            }
        };
        [aimed_at(0, Side::Left), aimed_at(1, Side::Right)]
    }

    /// The sides on which the counts as they are leave too little.
    pub(crate) fn too_low(&self) -> Result<Vec<Side>, BodyError> {
        let meshes = SearchMeshes::new(self.cushion, &self.assumptions, self.stop)?;
        let Some(home) = self.search(&meshes, Vec::new()).filled(&self.home, None) else {
            return Ok(Vec::new());
        };
        let needed = self.enough();
        let low = |(side, needed): (Side, f64)| {
            let clearance = Quantity::Clearance(side).value(&home)?;
            (clearance < needed).then_some(side)
        };
        Ok([Side::Left, Side::Right].into_iter().zip(needed).filter_map(low).collect())
    }

    /// Whether goals come so much nearer that cells are to be moved for it, where a client sits
    /// already: what the next checks say is mostly how finely hands can tell.
    pub(crate) fn is_worth_it(
        &self,
        reader: &GoalReader<'_>,
        wanted: &[Wanted],
        found: &Filling,
    ) -> bool {
        if self.adjusting.is_none() {
            return true;
        }
        let search = self.search(reader.meshes, Vec::new());
        let Some(home) = search.filled(&self.home, Some(found)) else { return true };
        let cells: f64 = (found.counts.iter().zip(&self.home))
            .map(|(count, home)| ADULT_COMPARTMENT * (count - home).abs() / home.max(1.0))
            .sum();
        let is_worth_it = |aims: Vec<&Aim>| {
            let gain = self.gain(&search, &aims, &home, found);
            let least = WORTH + WORTH_OF_A_CELL * cells;
            gain >= least
                && gain >= least + WORTH_AFTER_MOVES * self.tries(&search, &aims, &home) as f64
        };
        goals(wanted).any(is_worth_it)
    }

    /// Earlier rounds whose moves were for the goals and should have brought one with these aims nearer. The
    /// last one is none where its moves were expected to leave the goal off: more was to come.
    fn tries(&self, search: &Search<'_>, aims: &[&Aim], home: &Filling) -> usize {
        let Some(Adjusting { earlier, expected, .. }) = &self.adjusting else { return 0 };
        let falls_short = expected.as_ref().is_some_and(|own| self.is_off_by_more(aims, own, 1.0));
        let counted = earlier.len().saturating_sub(usize::from(falls_short));
        let tried = |[before, after]: &&[Vec<f64>; 2]| {
            let [before, after] = [before, after].map(|counts| search.filled(counts, Some(home)));
            let is_for_goals = !self.leaves_too_little(before.as_ref());
            let gain = |(before, after)| misses(aims, &before) - misses(aims, &after);
            is_for_goals && before.zip(after).is_none_or(|both| gain(both) >= WORTH)
        };
        earlier[..counted].iter().filter(tried).count()
    }

    /// How many tolerances a goal with these aims comes nearer; nothing where it is not taken up again.
    fn gain(&self, search: &Search<'_>, aims: &[&Aim], home: &Filling, found: &Filling) -> f64 {
        let [was, is] = [home, found].map(|filling| misses(aims, filling));
        let is_off = self.is_off_by_more(aims, home, 1.0);
        let is_farther_off = self.is_off_by_more(aims, home, self.accepted(search, aims, home));
        let is_taken_up = is_farther_off || is_off && is <= f64::max(1.0, MUCH_NEARER * was);
        if is_taken_up { was - is } else { 0.0 }
    }
}

/// How many tolerances a goal with these aims is off.
pub(super) fn misses(aims: &[&Aim], filling: &Filling) -> f64 {
    aims.iter().map(|aim| aim.misses(filling)).fold(0.0, f64::max)
}
