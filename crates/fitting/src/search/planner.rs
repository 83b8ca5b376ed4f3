//! The planner: goals and limits to whole counts, found on a coarse mesh, verified on a fine one.

use case::{
    BodyError, BrokenLimit, Client, Costs, GoalOutcome, Mirror, Partners, Prediction, Shortfall,
    ToldFrom,
};
use cushion::{CompartmentIx, Mass, Side};
use mechanics::Stop;

use crate::goals::aims::{Aim, Filling, Quantity, Slopes, real};
use crate::goals::limits::{broken, needed};
use crate::goals::needs::Needs;
use crate::goals::wanted::{GoalReader, Wanted};
use crate::image::limits_in_order;
use crate::prediction::assumptions::assumptions_of;
use crate::prediction::client_on_cushion::{Answer, SearchMeshes};
use crate::prediction::predictor::{AlreadySolved, Ends, Near, Predictor};
use crate::prediction::prepared::PreparedCushion;
use crate::prediction::unknowns::Assumptions;
use crate::search::decision::{farthest_unmet, groups};
use crate::search::progress::{PlanStep, Progress};
use crate::search::side_by_side::both;
use crate::search::steps::{OnBothMeshes, Search};
use crate::search::task::{Adjusting, Task};

/// Clearance that the search keeps above the limit, m: what whole cells and a coarse mesh lose.
pub(crate) const SPARE: f64 = 0.5e-3;
/// By how much the clearance of a side that was pinched or felt is to grow at least in the model,
/// m: so that it does not get less in truth.
const NOT_LESS: f64 = 1e-3;
/// One tolerance of the clearance under a bone that was pinched or felt, m: far finer than of any
/// limit, so that it comes before them.
const HELD_UNIT: f64 = 0.2e-3;
/// A clearance that is missing by so little is not out of reach, m: what limits take from each other.
const LITTLE: f64 = 1e-3;
/// Times that a plan which a finer mesh finds too low, or to keep less, is looked for again.
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
            not_safe: limits_in_order(self.not_safe.mirrored(partners)),
            costs: self.costs.as_ref().map(|costs| costs.mirrored(partners)),
        }
    }
}

/// Of which counts the spread is looked for.
#[derive(Clone, Debug)]
pub(crate) enum SpreadOf {
    /// Of those of the plan, the lean with it.
    Plan,
    /// Of the stock fill, and of all but the lean: for a plan of which nobody asks for the lean, and
    /// from which clearances and pressures may lie as from the stock fill. What a plan without goals
    /// changes, it changes by less than 3 %; it is half of the work. The other half is saved where the
    /// spread is known.
    Stock(Option<Box<Ends>>),
}

/// What a plan is looked for with.
pub(crate) struct Planner<'a> {
    pub(super) cushion: &'a PreparedCushion,
    pub(super) needs: Needs,
    pub(super) assumptions: Assumptions,
    /// The counts that are departed from as little as can be.
    pub(super) home: Vec<f64>,
    /// The counts against which harm is measured.
    pub(super) reference: Vec<f64>,
    /// What those are.
    pub(super) told_from: ToldFrom,
    /// The last counts on which a check was passed.
    pub(super) passed: Option<Vec<f64>>,
    /// Compartments whose counts are fixed.
    pub(super) fixed: Vec<bool>,
    /// Compartments that change alike, each in one group.
    pub(super) groups: Vec<Vec<usize>>,
    /// What an adjustment adds.
    pub(super) adjusting: Option<Adjusting>,
    /// Of which counts the spread is looked for.
    pub(super) spread_of: SpreadOf,
    /// Whether to stop.
    pub(super) stop: Stop<'a>,
}

/// What is asked of a planner, with what is known before counts are looked for.
pub(super) struct Asked<'r> {
    predictor: &'r Predictor<'r>,
    pub(super) reader: GoalReader<'r>,
    pub(super) wanted: Vec<Wanted>,
    /// The spread of the stock fill, where it was looked for.
    of_stock: Option<Ends>,
    /// Who is told how far the search is.
    progress: Progress<'r>,
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
            spread_of: SpreadOf::Plan,
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
            spread_of: SpreadOf::Plan,
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
            spread_of: SpreadOf::Plan,
            stop,
        }
    }

    /// The same with the spread of other counts.
    pub(crate) fn with_spread_of(self, spread_of: SpreadOf) -> Self {
        Self { spread_of, ..self }
    }

    /// Looks for the best counts, and tells how far it is.
    pub(crate) fn find(&self, progress: Progress<'_>) -> Result<FoundPlan, BodyError> {
        let assumptions = &self.assumptions;
        let stock_counts = stock_counts(self.cushion);
        let on_stock = || -> Result<_, BodyError> {
            let meshes = SearchMeshes::new(self.cushion, assumptions, self.stop)?;
            let stock = self.stock_filled(&meshes, &stock_counts);
            Ok((meshes, stock))
        };
        let (on_stock, needed) = both(on_stock, || self.needed_clearance(&stock_counts));
        let ((meshes, stock), (needed, of_stock)) = (on_stock?, needed?);
        let predictor = Predictor::new(self.cushion, assumptions, self.stop)?;
        let Some(stock) = stock else {
            progress.tell(PlanStep::Prediction);
            return Ok(self.as_it_is(&predictor));
        };
        let (needs, pattern) = (&self.needs, self.cushion.pattern());
        let reader = GoalReader { needs, pattern, meshes: &meshes, stock: &stock };
        let wanted = reader.wanted();
        let task = self.task(&reader, &wanted, needed);
        let asked = Asked { predictor: &predictor, reader, wanted, of_stock, progress };
        std::thread::scope(|scope| {
            if !self.cushion.is_coarse() {
                // It is needed at the end, and one processor is idle at times.
                scope.spawn(|| self.cushion.fine());
            }
            self.best_of_levels(&asked, task, needed)
        })
    }

    /// The stock fill under the client, on both meshes where the search begins there.
    fn stock_filled(&self, meshes: &SearchMeshes<'_>, stock_counts: &[f64]) -> Option<Filling> {
        let search = self.search(meshes, Vec::new());
        if self.home == stock_counts {
            return search.on_both_meshes(stock_counts, None).map(|both| both.here);
        }
        search.filled(stock_counts, None)
    }

    /// The best counts that leave so much clearance under each seat bone, m, with what they do.
    pub(super) fn found_for(
        &self,
        asked: &Asked<'_>,
        task: Task,
        needed: [f64; 2],
    ) -> Result<FoundPlan, BodyError> {
        let Asked { predictor, reader, wanted, of_stock, progress } = asked;
        let mut spare = SPARE;
        let mut counts = self.home.clone();
        let (mut verified, mut known) = (self.given(of_stock.as_ref()), None);
        let times = if task == Task::Stay { 0 } else { AGAIN + 1 };
        for time in 1..=times {
            progress.tell(PlanStep::Search { time });
            let asked = needed.map(|clearance| clearance + spare);
            let searched = self.searched(reader, wanted, task, asked, known.take());
            let Some((found, slopes)) = searched else { break };
            known = slopes;
            let is_worth_it = match task {
                Task::Pursue => self.is_worth_it(reader, wanted, &found),
                Task::Confirm => self.confirms(reader, &found),
                Task::Repair | Task::Stay => true,
            };
            if !is_worth_it {
                break;
            }
            counts.clone_from(&found.counts);
            progress.tell(PlanStep::Verification);
            // Where the fine mesh is the coarse one, the answer is nearly known.
            let fine = self.cushion.is_coarse().then_some(&found.resting);
            let rough = reader.meshes.known_roughly.nearest(&counts, None);
            let near = Near { fine, rough: rough.as_ref().map(|near| &near.resting) };
            verified = self.verified(predictor, &counts, near, of_stock.as_ref());
            let fine = verified.answer.as_ref();
            match fine.and_then(|fine| self.missing(predictor, fine, needed)) {
                Some(missing) if self.is_asked_again(&found, needed, missing) => {
                    spare += missing + SPARE;
                }
                _ => break,
            }
        }
        let counts: Vec<u32> = counts.iter().map(|count| *count as u32).collect();
        progress.tell(PlanStep::Prediction);
        let (prediction, _) = predictor.predict(self.cushion.pattern(), &counts, verified);
        let goals = self.outcomes(reader, &counts);
        let (not_safe, costs) = self.weighed(reader, &counts, &goals, &prediction);
        Ok(FoundPlan { counts, goals, prediction, not_safe, costs })
    }

    /// The clearance that is needed under each seat bone, m: by the spread of the stock fill, or by what
    /// is known after checks. Returns the spread of all but the lean with it, where it was looked for and
    /// is as good as that of a plan.
    fn needed_clearance(&self, stock: &[f64]) -> Result<([f64; 2], Option<Ends>), BodyError> {
        if self.adjusting.is_some() {
            return Ok((self.enough(), None));
        }
        let (cushion, assumptions) = (self.cushion, &self.assumptions);
        let ends = match &self.spread_of {
            SpreadOf::Stock(Some(known)) => Ends::clone(known),
            SpreadOf::Stock(None) | SpreadOf::Plan => {
                let roughest = cushion.roughest();
                Predictor::spreading_on(roughest, cushion, assumptions, self.stop)?
                    .spread_but_lean(stock)
            }
        };
        let below = [Side::Left, Side::Right].map(|side| ends.clearance_below(side));
        let is_as_good =
            cushion.spreads_on_roughest() || matches!(self.spread_of, SpreadOf::Stock(_));
        Ok((needed(below), is_as_good.then_some(ends)))
    }

    /// What is taken as known of all counts: the spread, where that of the stock fill stands for it.
    fn given(&self, of_stock: Option<&Ends>) -> AlreadySolved {
        let ends = of_stock.filter(|_| matches!(self.spread_of, SpreadOf::Stock(_))).cloned();
        AlreadySolved { answer: None, ends }
    }

    /// The answer on the fine mesh and the spread of counts.
    fn verified(
        &self,
        predictor: &Predictor<'_>,
        counts: &[f64],
        near: Near<'_>,
        of_stock: Option<&Ends>,
    ) -> AlreadySolved {
        match self.given(of_stock) {
            AlreadySolved { ends: Some(ends), .. } => {
                let answer = predictor.fine().rest(counts, near.fine);
                AlreadySolved { answer: Some(answer), ends: Some(ends) }
            }
            _ => predictor.verified(counts, near, of_stock),
        }
    }

    /// The best whole counts for these goals; with the slopes that were found on the way, where any
    /// were needed.
    fn searched(
        &self,
        reader: &GoalReader<'_>,
        wanted: &[Wanted],
        task: Task,
        needed: [f64; 2],
        known: Option<Slopes>,
    ) -> Option<(Filling, Option<Slopes>)> {
        let mut search = self.decision(reader, wanted, task, needed)?;
        let start = search.filled(&self.home, Some(reader.stock))?;
        if search.score(&start).is_perfect() {
            return Some((start, None));
        }
        let OnBothMeshes { mut rough, there, .. } = search.filling_on_both_meshes(&start);
        let (mut best, mut slopes) = rough.best(there, known)?;
        loop {
            // The farthest first: what seemed beyond reach beside it may be reached without it.
            while let Some(goal) = farthest_unmet(&rough, wanted, &best) {
                rough.weigh(goal);
                search.weigh(goal);
                (best, slopes) = rough.best(best, Some(slopes))?;
            }
            let (found, learnt) = self.whole(&search, reader.stock, &best.counts, slopes)?;
            let Some(goal) = farthest_unmet(&search, wanted, &found) else {
                return Some((found, Some(learnt)));
            };
            // Whole cells do not meet it: it is not to cost what only a goal that is met may.
            rough.weigh(goal);
            search.weigh(goal);
            (best, slopes) = rough.best(best, Some(learnt))?;
        }
    }

    /// The best whole counts around others: looked for on the rough mesh, with aims that allow for what
    /// the meshes differ by there, and anew around what was found where the coarse mesh says that it
    /// keeps less; then nearer to home.
    fn whole(
        &self,
        search: &Search<'_>,
        stock: &Filling,
        counts: &[f64],
        mut slopes: Slopes,
    ) -> Option<(Filling, Slopes)> {
        let mut around = search.on_both_meshes(counts, Some(stock))?;
        let mut chosen: Option<Filling> = None;
        for _ in 0..=AGAIN {
            let (found, learnt) = around.rough.best_whole_counts(&around.there, slopes)?;
            slopes = learnt;
            let whole = search.on_both_meshes(&found.counts, Some(stock))?;
            let kept = search.score(&whole.here).ranks <= around.rough.score(&whole.there).ranks;
            let is_better = |best: &Filling| search.score(&whole.here) < search.score(best);
            if chosen.as_ref().is_none_or(is_better) {
                chosen = Some(whole.here.clone());
            }
            if kept {
                break;
            }
            around = whole;
        }
        let chosen = chosen?;
        Some((self.smaller(search, &chosen).unwrap_or(chosen), slopes))
    }

    /// Counts nearer to home that do as well on both meshes; none where there are none.
    fn smaller(&self, search: &Search<'_>, chosen: &Filling) -> Option<Filling> {
        let OnBothMeshes { rough, there, .. } = search.filling_on_both_meshes(chosen);
        let found = rough.smaller(&there)?;
        let found = search.filled(&found.counts, Some(chosen))?;
        let is_less = search.score(&found).rest < search.score(chosen).rest;
        (is_less && search.does_as_well(&search.offs(chosen), &found)).then_some(found)
    }

    pub(super) fn search<'s>(&'s self, meshes: &'s SearchMeshes<'s>, aims: Vec<Aim>) -> Search<'s> {
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
            known: Some(&meshes.known),
            known_roughly: Some(&meshes.known_roughly),
            solved_on: &meshes.coarse,
            tried_on: &meshes.rough,
            pattern,
            unloaded: self.cushion.unloaded(),
            firm: 1,
            aims,
            harm: Vec::new(),
            bounds: pattern.indices().enumerate().zip(&self.fixed).map(bound).collect(),
            home: self.home.clone(),
            groups: self.groups.clone(),
        }
    }

    /// That the clearance does not get less on sides that were found pinched or felt.
    pub(super) fn held(&self, meshes: &SearchMeshes<'_>) -> Vec<Aim> {
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

    /// Whether counts are looked for again with as much more clearance as is missing, m. What the meshes
    /// differ by is asked for beside, and what is missing of the limit itself by little, which another limit
    /// took. What the search could not reach is not reached by asking for more: that costs more of all else.
    fn is_asked_again(&self, found: &Filling, needed: [f64; 2], missing: f64) -> bool {
        let limit = self.adjusting.as_ref().map_or(needed, |_| self.least());
        let is_limit = [0, 1].into_iter().all(|at| needed[at] <= limit[at]);
        missing > 0.0 && (leaves(found, needed) || is_limit && missing <= LITTLE)
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
}

/// Whether a filling leaves so much clearance under each seat bone, m.
fn leaves(filling: &Filling, needed: [f64; 2]) -> bool {
    let keeps = |(side, needed): (Side, f64)| {
        Quantity::Clearance(side).value(filling).is_none_or(|clearance| clearance >= needed)
    };
    [Side::Left, Side::Right].into_iter().zip(needed).all(keeps)
}

/// The stock fill of a cushion, in the pattern's order.
pub(crate) fn stock_counts(cushion: &PreparedCushion) -> Vec<f64> {
    let (pattern, stock) = (cushion.pattern(), cushion.stock());
    pattern.indices().map(|ix| f64::from(stock[ix].cells.stock)).collect()
}
