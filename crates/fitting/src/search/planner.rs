//! The planner: goals and limits to whole counts, found on a coarse mesh, verified on a fine one.

use case::{
    BodyError, BrokenLimit, Client, Costs, GoalOutcome, Mirror, Partners, Prediction, Shortfall,
    SiteName, ToldFrom,
};
use cushion::{CompartmentIx, Mass, Pattern, Side};
use mechanics::Stop;

use crate::goals::aims::{Aim, Filling, Quantity, Slopes};
use crate::goals::harm::{harm, spared};
use crate::goals::limits::{Reference, broken, limits, needed};
use crate::goals::needs::Needs;
use crate::goals::wanted::{GoalReader, Wanted};
use crate::image::{left_first, side_of_limit};
use crate::prediction::assumptions::assumptions_of;
use crate::prediction::client_on_cushion::{Answer, SearchMeshes};
use crate::prediction::costs::Compared;
use crate::prediction::predictor::{AlreadySolved, Ends, Predictor};
use crate::prediction::prepared::PreparedCushion;
use crate::prediction::unknowns::Assumptions;
use crate::search::judge::{Judge, refused};
use crate::search::progress::{PlanStep, Progress};
use crate::search::steps::Search;

/// Clearance that the search keeps above the limit, m: what whole cells and a coarse mesh lose.
const SPARE: f64 = 0.5e-3;
/// By how much the clearance of a side that was pinched or felt is to grow at least in the model,
/// m: so that it does not get less in truth.
const NOT_LESS: f64 = 1e-3;
/// One tolerance of the clearance under a bone that was pinched or felt, m: far finer than of any
/// limit, so that it comes before them.
const HELD_UNIT: f64 = 0.2e-3;
/// Tolerances from which a limit counts as broken: below, two meshes differ.
const BROKEN: f64 = 0.05;
/// Tolerances from which a goal that was met is taken up again: one, and what hands cannot tell.
const REOPENED: f64 = 1.5;
/// Standard deviations below which a normal number is with a chance of four in five.
const FOUR_IN_FIVE: f64 = 0.84;
/// By how many tolerances a goal must come nearer for any cells to be moved, and for each cell of an
/// adult's compartment beside.
const WORTH: f64 = 0.25;
const WORTH_OF_A_CELL: f64 = 0.05;
/// Cells of an adult's compartment, of which those of a child's are counted as the same share.
const ADULT_COMPARTMENT: f64 = 60.0;
/// Times that a plan which a fine mesh finds too low is looked for again.
const AGAIN: u8 = 2;

/// Counts with what they are expected to do.
#[derive(Clone, Debug)]
pub(crate) struct FoundPlan {
    pub(crate) counts: Vec<u32>,
    pub(crate) goals: Vec<GoalOutcome>,
    pub(crate) prediction: Prediction,
    pub(crate) not_safe: Vec<BrokenLimit>,
    /// What they change; none where the client does not come to rest.
    pub(crate) costs: Option<Costs>,
}

impl Mirror for FoundPlan {
    fn mirrored(&self, partners: &Partners) -> Self {
        Self {
            counts: partners.swapped(&self.counts),
            goals: self.goals.mirrored(partners),
            prediction: self.prediction.mirrored(partners),
            not_safe: left_first(self.not_safe.mirrored(partners), side_of_limit),
            costs: self.costs.as_ref().map(|costs| costs.mirrored(partners)),
        }
    }
}

/// What a plan is looked for with.
pub(crate) struct Planner<'a> {
    cushion: &'a PreparedCushion,
    needs: Needs,
    assumptions: Assumptions,
    /// The counts that are departed from as little as can be.
    home: Vec<f64>,
    /// The counts against which harm is measured.
    reference: Vec<f64>,
    /// What those are.
    told_from: ToldFrom,
    /// The last counts on which a check was passed.
    passed: Option<Vec<f64>>,
    /// Compartments whose counts are fixed.
    fixed: Vec<bool>,
    /// Compartments that change alike, each in one group.
    groups: Vec<Vec<usize>>,
    /// What an adjustment adds.
    adjusting: Option<Adjusting>,
    /// Whether to stop.
    stop: Stop<'a>,
}

/// What is to be done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Task {
    /// The goals are pursued, in their order.
    Pursue,
    /// What is broken is mended, and goals may not get worse.
    Repair,
    /// Nothing.
    Stay,
}

/// What an adjustment adds to a plan.
#[derive(Clone, Debug)]
pub(crate) struct Adjusting {
    /// How much more clearance is kept under each seat bone than the limit, m: how unsure it is.
    pub(crate) unsure: [f64; 2],
    /// How unsure the surface pressure at each seat bone is, Pa, and the height of the right one over
    /// the left, m, each as a standard deviation.
    pub(crate) surface_sd: [f64; 2],
    pub(crate) higher_sd: f64,
    /// The least and the most cells of each compartment in this round.
    pub(crate) bounds: Vec<[f64; 2]>,
    /// Sides on which the clearance must not get less.
    pub(crate) held: Vec<Side>,
    /// How often cells were moved before after checks that are learnt from.
    pub(crate) earlier: usize,
    /// The last counts on which a check was passed.
    pub(crate) passed: Option<Vec<f64>>,
    /// Whether client and answers are the same left and right.
    pub(crate) symmetric: bool,
}

/// The counts that a plan begins from and is measured against.
#[derive(Clone, Debug)]
pub(crate) struct PlanStart {
    /// What is departed from as little as can be, a count for each compartment.
    pub(crate) home: Vec<u32>,
    /// Whether each count stays.
    pub(crate) fixed: Vec<bool>,
    /// The last counts on which a check was passed; the stock fill is the reference where there are
    /// none.
    pub(crate) passed: Option<Vec<u32>>,
    /// Whether the client is the same left and right.
    pub(crate) symmetric: bool,
}

fn real(counts: &[u32]) -> Vec<f64> {
    counts.iter().map(|count| f64::from(*count)).collect()
}

/// Pairs, where compartments change alike left and right; else each by itself.
fn groups(pattern: &Pattern, symmetric: bool) -> Vec<Vec<usize>> {
    let partner = |ix| pattern.partner(ix).filter(|_| symmetric);
    let group = |ix: CompartmentIx| match partner(ix) {
        Some(other) if other < ix => None,
        Some(other) if other != ix => Some(vec![ix.index(), other.index()]),
        _ => Some(vec![ix.index()]),
    };
    pattern.indices().filter_map(group).collect()
}

impl<'a> Planner<'a> {
    /// Prepares to plan for a client who weighs so much.
    pub(crate) fn new(
        cushion: &'a PreparedCushion,
        client: &Client,
        weight: Mass,
        start: &PlanStart,
        stop: Stop<'a>,
    ) -> Result<Self, BodyError> {
        let assumptions = assumptions_of(client, cushion, weight, stop)?;
        Ok(Self::knowing(cushion, client, assumptions, start, stop))
    }

    /// Prepares to plan for a client who sits as is assumed.
    pub(crate) fn knowing(
        cushion: &'a PreparedCushion,
        client: &Client,
        assumptions: Assumptions,
        start: &PlanStart,
        stop: Stop<'a>,
    ) -> Self {
        let passed = start.passed.as_deref().map(real);
        Self {
            cushion,
            needs: Needs::of(client),
            assumptions,
            home: real(&start.home),
            reference: passed.clone().unwrap_or_else(|| stock_counts(cushion)),
            told_from: if passed.is_some() { ToldFrom::Passed } else { ToldFrom::Stock },
            passed,
            groups: groups(cushion.pattern(), start.symmetric),
            fixed: start.fixed.clone(),
            adjusting: None,
            stop,
        }
    }

    /// Prepares to adjust: for a client as they were found to sit, from the counts as they are.
    pub(crate) fn adjusting(
        cushion: &'a PreparedCushion,
        client: &Client,
        assumptions: Assumptions,
        now: &[f64],
        adjusting: Adjusting,
        stop: Stop<'a>,
    ) -> Self {
        Self {
            cushion,
            needs: Needs::of(client),
            assumptions,
            home: now.to_vec(),
            reference: now.to_vec(),
            told_from: ToldFrom::Present,
            passed: adjusting.passed.clone(),
            groups: groups(cushion.pattern(), adjusting.symmetric),
            fixed: vec![false; now.len()],
            adjusting: Some(adjusting),
            stop,
        }
    }

    /// Prepares to judge counts against others, without looking for any.
    pub(crate) fn judging(
        cushion: &'a PreparedCushion,
        client: &Client,
        assumptions: Assumptions,
        reference: Vec<f64>,
        told_from: ToldFrom,
        stop: Stop<'a>,
    ) -> Self {
        Self {
            cushion,
            needs: Needs::of(client),
            assumptions,
            home: reference.clone(),
            fixed: vec![true; reference.len()],
            reference,
            told_from,
            passed: None,
            groups: groups(cushion.pattern(), false),
            adjusting: None,
            stop,
        }
    }

    /// What is expected of counts, without looking for others.
    pub(crate) fn seen(&self, counts: &[u32]) -> Result<FoundPlan, BodyError> {
        let pattern = self.cushion.pattern();
        let predictor = Predictor::new(
            self.cushion.fine(),
            self.cushion.rough(),
            &self.assumptions,
            self.stop,
        )?;
        let (prediction, _) = predictor.predict(pattern, counts, AlreadySolved::default());
        let meshes = SearchMeshes::new(self.cushion, &self.assumptions, self.stop)?;
        let stock = self.search(&meshes, Vec::new()).filled(&stock_counts(self.cushion), None);
        let (goals, costs) = match &stock {
            Some(stock) => {
                let reader = GoalReader { needs: &self.needs, pattern, meshes: &meshes, stock };
                let goals = self.outcomes(&reader, counts);
                let costs = self.costs(&reader, counts, &goals, &prediction);
                (goals, costs)
            }
            None => (self.refused_all(Shortfall::NoRestOnStock), None),
        };
        let not_safe = broken(&prediction);
        Ok(FoundPlan { counts: counts.to_vec(), goals, prediction, not_safe, costs })
    }

    /// What counts change, from those that are told from.
    fn costs(
        &self,
        reader: &GoalReader<'_>,
        counts: &[u32],
        goals: &[GoalOutcome],
        prediction: &Prediction,
    ) -> Option<Costs> {
        let seat = prediction.seated.as_ref()?;
        let search = self.search(reader.meshes, Vec::new());
        let after = search.filled(&real(counts), Some(reader.stock))?;
        let before = search.filled(&self.reference, Some(reader.stock))?;
        let was = self.judged(reader, &before);
        let compared = Compared { before: &before, after: &after, goals: [&was, goals] };
        Some(compared.costs(self.told_from, &self.needs, seat))
    }

    /// Looks for the best counts, and tells how far it is.
    pub(crate) fn find(&self, progress: Progress<'_>) -> Result<FoundPlan, BodyError> {
        let assumptions = &self.assumptions;
        let predictor =
            Predictor::new(self.cushion.fine(), self.cushion.rough(), assumptions, self.stop)?;
        let meshes = SearchMeshes::new(self.cushion, assumptions, self.stop)?;
        let bare = self.search(&meshes, Vec::new());
        let stock_counts = stock_counts(self.cushion);
        let Some(stock) = bare.filled(&stock_counts, None) else {
            progress.tell(PlanStep::Prediction);
            return Ok(self.as_it_is(&predictor));
        };
        let (needed, ends) = self.needed_clearance(&predictor, &stock_counts);
        let needs = &self.needs;
        let reader =
            GoalReader { needs, pattern: self.cushion.pattern(), meshes: &meshes, stock: &stock };
        let wanted = reader.wanted();
        let mut spare = SPARE;
        let mut counts = self.home.clone();
        let (mut answer, mut known) = (None, None);
        let task = self.task(&reader, &wanted, needed);
        let times = if task == Task::Stay { 0 } else { AGAIN + 1 };
        for time in 1..=times {
            progress.tell(PlanStep::Search { time });
            let needed = needed.map(|clearance| clearance + spare);
            let Some((found, slopes)) = self.searched(&reader, &wanted, task, needed, known.take())
            else {
                break;
            };
            known = Some(slopes);
            if task == Task::Pursue && !self.is_worth_it(&reader, &wanted, &found) {
                break;
            }
            counts = found.counts;
            progress.tell(PlanStep::Verification);
            let fine = predictor.fine().rest(&counts, None);
            let missing = self.missing(&predictor, &fine, needed);
            answer = Some(fine);
            match missing {
                Some(missing) if missing > 0.0 => spare += missing + SPARE,
                _ => break,
            }
        }
        let counts: Vec<u32> = counts.iter().map(|count| *count as u32).collect();
        progress.tell(PlanStep::Prediction);
        let (prediction, _) = {
            // The spread of the stock fill is that of the plan where it is the same.
            let same =
                counts.iter().zip(&stock_counts).all(|(count, stock)| f64::from(*count) == *stock);
            let known = AlreadySolved { answer, ends: ends.filter(|_| same) };
            predictor.predict(self.cushion.pattern(), &counts, known)
        };
        let goals = self.outcomes(&reader, &counts);
        let not_safe = broken(&prediction);
        let costs = self.costs(&reader, &counts, &goals, &prediction);
        Ok(FoundPlan { counts, goals, prediction, not_safe, costs })
    }

    /// The clearance that is needed under each seat bone, m; with the spread of the stock fill, where
    /// it took that to know.
    fn needed_clearance(
        &self,
        predictor: &Predictor<'_>,
        stock: &[f64],
    ) -> ([f64; 2], Option<Ends>) {
        let limit = self.assumptions.parameters.clearance_limit;
        if let Some(adjusting) = &self.adjusting {
            return (adjusting.unsure.map(|unsure| limit + unsure), None);
        }
        let ends = predictor.spread(stock);
        let below = [Side::Left, Side::Right].map(|side| ends.clearance_below(side));
        (needed(below), Some(ends))
    }

    /// The best whole counts for these goals.
    fn searched(
        &self,
        reader: &GoalReader<'_>,
        wanted: &[Wanted],
        task: Task,
        needed: [f64; 2],
        known: Option<Slopes>,
    ) -> Option<(Filling, Slopes)> {
        let mut search = self.decision(reader, wanted, task, needed)?;
        let start = search.filled(&self.home, Some(reader.stock))?;
        let (mut rough, start) = search.roughly(&start)?;
        let (mut best, mut slopes) = rough.best(start, known)?;
        let beyond = beyond_reach(&rough, wanted, &best);
        if !beyond.is_empty() {
            rough.weigh(&beyond);
            search.weigh(&beyond);
            (best, slopes) = rough.best(best, Some(slopes))?;
        }
        search.best_whole_counts(&search.filled(&best.counts, Some(reader.stock))?, slopes)
    }

    /// The one decision of plan and adjust: limits, then goals in their order, then what is spared,
    /// then harm and cells.
    fn decision<'s>(
        &'s self,
        reader: &GoalReader<'s>,
        wanted: &[Wanted],
        task: Task,
        needed: [f64; 2],
    ) -> Option<Search<'s>> {
        let mut search = self.search(reader.meshes, Vec::new());
        let filled = |counts: &[f64]| search.filled(counts, Some(reader.stock));
        let now = filled(&self.reference)?;
        let passed = self.passed.as_ref().and_then(|passed| filled(passed));
        let reference = Reference { now: &now, passed: passed.as_ref() };
        let home = if task == Task::Repair { Some(filled(&self.home)?) } else { None };
        let pursued = |aim: &Aim| {
            // A goal that is not pursued may not get worse.
            let aim = aim.clone().pursued();
            match home.as_ref().and_then(|home| aim.quantity.value(home)) {
                Some(value) => aim.held_at(value),
                None => aim,
            }
        };
        let mut aims = limits(&self.needs, reader.pattern, reference, needed);
        aims.extend(self.held(reader.meshes));
        aims.extend(
            wanted.iter().filter_map(|goal| goal.aims.as_ref().ok()).flatten().map(pursued),
        );
        aims.extend(spared(&self.needs, reader.pattern, self.cushion.stock(), &now));
        search.harm = harm(&self.needs, &now);
        search.aims = aims;
        Some(search)
    }

    /// What is to be done. A plan pursues its goals; an adjustment only what is off.
    fn task(&self, reader: &GoalReader<'_>, wanted: &[Wanted], needed: [f64; 2]) -> Task {
        if self.adjusting.is_none() {
            return Task::Pursue;
        }
        let search = self.search(reader.meshes, Vec::new());
        let Some(home) = search.filled(&self.home, Some(reader.stock)) else { return Task::Repair };
        let passed = self.passed.as_ref();
        let passed = passed.and_then(|passed| search.filled(passed, Some(&home)));
        let reference = Reference { now: &home, passed: passed.as_ref() };
        let broken = limits(&self.needs, reader.pattern, reference, needed);
        if broken.iter().any(|aim| off(aim, &home) > BROKEN) {
            return Task::Repair;
        }
        let goals = wanted.iter().filter_map(|goal| goal.aims.as_ref().ok()).flatten();
        let reopened = goals
            .filter(|aim| !aim.goes_with())
            .any(|aim| off(aim, &home) > REOPENED.max(1.0 + self.unsure(aim)));
        if reopened { Task::Pursue } else { Task::Stay }
    }

    /// How many tolerances the number of an aim may be off by what is not known, with a chance of four
    /// in five that it is not more.
    fn unsure(&self, aim: &Aim) -> f64 {
        let Some(adjusting) = &self.adjusting else { return 0.0 };
        let sd = match aim.quantity {
            Quantity::RightHigher => adjusting.higher_sd,
            Quantity::Surface(SiteName::SeatBone(Side::Left)) => adjusting.surface_sd[0],
            Quantity::Surface(SiteName::SeatBone(Side::Right)) => adjusting.surface_sd[1],
            // Tops, counts and firmness are as sure as the counts.
            _ => 0.0,
        };
        FOUR_IN_FIVE * sd / aim.unit
    }

    /// The sides on which the counts as they are leave too little.
    pub(crate) fn too_low(&self) -> Result<Vec<Side>, BodyError> {
        let meshes = SearchMeshes::new(self.cushion, &self.assumptions, self.stop)?;
        let Some(home) = self.search(&meshes, Vec::new()).filled(&self.home, None) else {
            return Ok(Vec::new());
        };
        let limit = self.assumptions.parameters.clearance_limit;
        let unsure = self.adjusting.as_ref().map_or([0.0; 2], |adjusting| adjusting.unsure);
        let low = |(side, unsure): (Side, f64)| {
            let clearance = Quantity::Clearance(side).value(&home)?;
            (clearance < limit + unsure).then_some(side)
        };
        Ok([Side::Left, Side::Right].into_iter().zip(unsure).filter_map(low).collect())
    }

    /// Whether goals come so much nearer that cells are to be moved for it, where a client sits
    /// already: what the next checks say is mostly how finely hands can tell.
    fn is_worth_it(&self, reader: &GoalReader<'_>, wanted: &[Wanted], found: &Filling) -> bool {
        let Some(adjusting) = &self.adjusting else { return true };
        let search = self.search(reader.meshes, Vec::new());
        let Some(home) = search.filled(&self.home, Some(found)) else { return true };
        let goals = wanted.iter().filter_map(|goal| goal.aims.as_ref().ok());
        let gains = goals.map(|aims| {
            let most = |filling| {
                let own = aims.iter().filter(|aim| !aim.goes_with());
                own.map(|aim| off(aim, filling)).fold(0.0, f64::max)
            };
            most(&home) - most(found)
        });
        let cells: f64 = (found.counts.iter().zip(&self.home))
            .map(|(count, home)| ADULT_COMPARTMENT * (count - home).abs() / home.max(1.0))
            .sum();
        // What earlier moves should have brought and did not is more likely what hands cannot tell.
        let times = 1.0 + adjusting.earlier as f64;
        gains.fold(0.0, f64::max) >= times * (WORTH + WORTH_OF_A_CELL * cells)
    }

    fn search<'s>(&'s self, meshes: &'s SearchMeshes<'s>, aims: Vec<Aim>) -> Search<'s> {
        let stock = self.cushion.stock();
        let bound = |((at, ix), fixed): ((usize, CompartmentIx), &bool)| {
            let (cells, home) = (stock[ix].cells, self.home[at]);
            if *fixed {
                return [home, home];
            }
            let least = (f64::from(cells.low) / 2.0).ceil().min(home);
            let most = f64::from(cells.high.max(cells.stock)).max(home);
            match &self.adjusting {
                Some(adjusting) => {
                    [least.max(adjusting.bounds[at][0]), most.min(adjusting.bounds[at][1])]
                }
                None => [least, most],
            }
        };
        let pattern = self.cushion.pattern();
        Search {
            solved_on: &meshes.coarse,
            tried_on: &meshes.rough,
            pattern,
            unloaded: self.cushion.unloaded(),
            aims,
            harm: Vec::new(),
            bounds: pattern.indices().enumerate().zip(&self.fixed).map(bound).collect(),
            home: self.home.clone(),
            groups: self.groups.clone(),
        }
    }

    /// That the clearance does not get less on sides that were found pinched or felt.
    fn held(&self, meshes: &SearchMeshes<'_>) -> Vec<Aim> {
        let Some(adjusting) =
            self.adjusting.as_ref().filter(|adjusting| !adjusting.held.is_empty())
        else {
            return Vec::new();
        };
        let search = self.search(meshes, Vec::new());
        let Some(now) = search.filled(&self.home, None) else { return Vec::new() };
        let aim = |side: &Side| {
            let quantity = Quantity::Clearance(*side);
            let least = quantity.value(&now)? + NOT_LESS;
            Some(Aim { rank: 0, quantity, least, most: f64::INFINITY, unit: HELD_UNIT })
        };
        adjusting.held.iter().filter_map(aim).collect()
    }

    /// By how much the clearance of an answer misses what is needed, m; negative where it keeps it.
    fn missing(&self, predictor: &Predictor<'_>, answer: &Answer, needed: [f64; 2]) -> Option<f64> {
        let resting = answer.resting()?;
        let clearance =
            |side| crate::prediction::predictor::clearance(predictor.fine(), resting, side);
        let missing = [needed[0] - clearance(Side::Left), needed[1] - clearance(Side::Right)];
        Some(missing[0].max(missing[1]))
    }

    /// The home counts with what they do, where nothing can be searched.
    fn as_it_is(&self, predictor: &Predictor<'_>) -> FoundPlan {
        let counts: Vec<u32> = self.home.iter().map(|count| *count as u32).collect();
        let (prediction, _) =
            predictor.predict(self.cushion.pattern(), &counts, AlreadySolved::default());
        let goals = self.refused_all(Shortfall::NoRestOnStock);
        let mut not_safe = broken(&prediction);
        if not_safe.is_empty() {
            not_safe.push(BrokenLimit::NoRestOnStock);
        }
        FoundPlan { counts, goals, prediction, not_safe, costs: None }
    }

    /// What became of the goals: on the coarse mesh, as the stock fill that they are counted from.
    fn outcomes(&self, reader: &GoalReader<'_>, counts: &[u32]) -> Vec<GoalOutcome> {
        let real: Vec<f64> = counts.iter().map(|count| f64::from(*count)).collect();
        let search = self.search(reader.meshes, Vec::new());
        match search.filled(&real, Some(reader.stock)) {
            Some(filling) => self.judged(reader, &filling),
            None => self.refused_all(Shortfall::NoRest),
        }
    }

    fn refused_all(&self, why: Shortfall) -> Vec<GoalOutcome> {
        self.needs.goals.iter().map(|goal| refused(goal.want, why)).collect()
    }

    /// What becomes of the goals on a filling.
    pub(crate) fn judged(&self, reader: &GoalReader<'_>, filling: &Filling) -> Vec<GoalOutcome> {
        let (needs, cushion, fixed) = (&self.needs, self.cushion, self.fixed.as_slice());
        let judge = Judge { needs, cushion, fixed, stock: reader.stock, filling };
        reader.wanted().iter().map(|goal| judge.outcome(goal)).collect()
    }
}

/// The stock fill of a cushion, in the pattern's order.
pub(crate) fn stock_counts(cushion: &PreparedCushion) -> Vec<f64> {
    let (pattern, stock) = (cushion.pattern(), cushion.stock());
    pattern.indices().map(|ix| f64::from(stock[ix].cells.stock)).collect()
}

/// What counts, of which so much is expected, change for a client: from `recorded`, or from the stock
/// fill where there are none. None where the client does not come to rest.
///
/// # Errors
///
/// Returns what in the client's measures is no body's.
pub fn costs(
    client: &Client,
    cushion: &PreparedCushion,
    weight: Mass,
    recorded: Option<&[u32]>,
    (counts, prediction): (&[u32], &Prediction),
    stop: Stop<'_>,
) -> Result<Option<Costs>, BodyError> {
    let assumptions = assumptions_of(client, cushion, weight, stop)?;
    let meshes = SearchMeshes::new(cushion, &assumptions, stop)?;
    let (reference, from) = match recorded {
        Some(recorded) => (real(recorded), ToldFrom::Present),
        None => (stock_counts(cushion), ToldFrom::Stock),
    };
    let planner = Planner::judging(cushion, client, assumptions, reference, from, stop);
    let Some(stock) = planner.search(&meshes, Vec::new()).filled(&stock_counts(cushion), None)
    else {
        return Ok(None);
    };
    let pattern = cushion.pattern();
    let reader = GoalReader { needs: &planner.needs, pattern, meshes: &meshes, stock: &stock };
    let goals = planner.outcomes(&reader, counts);
    Ok(planner.costs(&reader, counts, &goals, prediction))
}

/// The ranks of goals that are not met on the best filling, with what goes with them.
fn beyond_reach(search: &Search<'_>, wanted: &[Wanted], best: &Filling) -> Vec<usize> {
    let missed = |rank: usize| {
        // Aims are pursued to half a tolerance: half a one more is one off.
        let mut own = search.aims.iter().filter(move |aim| aim.rank == rank);
        own.any(|aim| off(aim, best) > 0.5)
    };
    let goals = 0..wanted.len();
    let missed = goals.filter(|goal| missed(Needs::rank(*goal, false)));
    missed.flat_map(|goal| [false, true].map(|goes_with| Needs::rank(goal, goes_with))).collect()
}

/// How many tolerances a filling is off an aim, either way.
fn off(aim: &Aim, filling: &Filling) -> f64 {
    aim.quantity.value(filling).map_or(0.0, |value| aim.off(value).abs())
}
