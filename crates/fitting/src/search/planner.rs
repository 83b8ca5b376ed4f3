//! The planner: goals and limits to whole counts, found on a coarse mesh, verified on a fine one.

use case::BodyError;
use case::{BrokenLimit, GoalNumber, GoalOutcome, Mirror, Partners, Prediction, Shortfall, Want};
use cushion::{Length, Mass, Side};
use mechanics::Stop;

use case::Client;

use crate::goals::aims::{Aim, Filling, Quantity, Slopes};
use crate::goals::limits::{broken, limits, needed};
use crate::goals::needs::Needs;
use crate::goals::wanted::{GoalReader, Wanted};
use crate::image::{left_first, side_of_limit};
use crate::prediction::assumptions::assumptions_of;
use crate::prediction::client_on_cushion::{Answer, SearchMeshes};
use crate::prediction::predictor::{AlreadySolved, Ends, Predictor};
use crate::prediction::prepared::PreparedCushion;
use crate::prediction::unknowns::Assumptions;
use crate::search::progress::{PlanStep, Progress};
use crate::search::steps::Search;

/// Clearance that the search keeps above the limit, m: what whole cells and a coarse mesh lose.
const SPARE: f64 = 0.5e-3;
/// By how much the clearance of a side that was pinched or felt is to grow at least in the model,
/// m: so that it does not get less in truth.
const NOT_LESS: f64 = 1e-3;
/// How far off an aim may be, as a share of its tolerance, before cells are moved for it.
const LET_BE: f64 = 0.5;
/// How much nearer to an aim a move must bring it, as a share of its tolerance.
const WORTH: f64 = 0.3;
/// One tolerance of the clearance under a bone that was pinched or felt, m: far finer than of any
/// limit, so that it comes before them.
const HELD_UNIT: f64 = 0.2e-3;
/// How near to the limit a clearance must be for it to be why a goal is missed, m: what the search
/// keeps spare, and what whole cells step by.
const AT_THE_LIMIT: f64 = 2e-3;
/// The share of the stock fill's cells that may be elsewhere for counts to be near it: a practice
/// judgement, about what lies between the stock counts of two cells that differ by their tolerance.
const NEAR_STOCK: f64 = 0.05;
/// Times that a plan which a fine mesh finds too low is looked for again.
const AGAIN: u8 = 2;

/// Counts with what they are expected to do.
#[derive(Clone, Debug)]
pub(crate) struct FoundPlan {
    pub(crate) counts: Vec<u32>,
    pub(crate) goals: Vec<GoalOutcome>,
    pub(crate) prediction: Prediction,
    pub(crate) not_safe: Vec<BrokenLimit>,
}

impl Mirror for FoundPlan {
    fn mirrored(&self, partners: &Partners) -> Self {
        Self {
            counts: partners.swapped(&self.counts),
            goals: self.goals.mirrored(partners),
            prediction: self.prediction.mirrored(partners),
            not_safe: left_first(self.not_safe.mirrored(partners), side_of_limit),
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
    /// Compartments whose counts are fixed.
    fixed: Vec<bool>,
    /// What an adjustment adds.
    adjusting: Option<Adjusting>,
    /// Whether to stop.
    stop: Stop<'a>,
}

/// What an adjustment adds to a plan.
#[derive(Clone, Debug)]
pub(crate) struct Adjusting {
    /// How much more clearance is kept under each seat bone than the limit, m: how unsure it is.
    pub(crate) unsure: [f64; 2],
    /// The least and the most cells of each compartment in this round.
    pub(crate) bounds: Vec<[f64; 2]>,
    /// Sides on which the clearance must not get less.
    pub(crate) held: Vec<Side>,
}

impl<'a> Planner<'a> {
    /// Prepares to plan for a client who weighs so much; `home` has a count for each compartment,
    /// `fixed` whether it stays.
    pub(crate) fn new(
        cushion: &'a PreparedCushion,
        client: &Client,
        weight: Mass,
        home: &[u32],
        fixed: Vec<bool>,
        stop: Stop<'a>,
    ) -> Result<Self, BodyError> {
        Ok(Self {
            cushion,
            needs: Needs::of(client),
            assumptions: assumptions_of(client, cushion, weight, stop)?,
            home: home.iter().map(|count| f64::from(*count)).collect(),
            fixed,
            adjusting: None,
            stop,
        })
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
            fixed: vec![false; now.len()],
            adjusting: Some(adjusting),
            stop,
        }
    }

    /// Prepares to judge counts, without looking for others.
    pub(crate) fn judging(
        cushion: &'a PreparedCushion,
        client: &Client,
        assumptions: Assumptions,
        now: &[u32],
        stop: Stop<'a>,
    ) -> Self {
        let home: Vec<f64> = now.iter().map(|count| f64::from(*count)).collect();
        let fixed = vec![true; home.len()];
        Self { cushion, needs: Needs::of(client), assumptions, home, fixed, adjusting: None, stop }
    }

    /// What becomes of the goals on counts, and what is expected of them.
    pub(crate) fn seen(&self, counts: &[u32]) -> Result<(Vec<GoalOutcome>, Prediction), BodyError> {
        let pattern = self.cushion.pattern();
        let predictor = Predictor::new(
            self.cushion.fine(),
            self.cushion.rough(),
            &self.assumptions,
            self.stop,
        )?;
        let (prediction, _) = predictor.predict(pattern, counts, AlreadySolved::default());
        let meshes = SearchMeshes::new(self.cushion, &self.assumptions, self.stop)?;
        let stock = self.search(&meshes, Vec::new()).filled(&self.stock_counts(), None);
        let goals = match &stock {
            Some(stock) => {
                let reader = GoalReader { needs: &self.needs, pattern, meshes: &meshes, stock };
                self.outcomes(&reader, counts)
            }
            None => self.refused_all(Shortfall::NoRestOnStock),
        };
        Ok((goals, prediction))
    }

    /// Looks for the best counts, and tells how far it is.
    pub(crate) fn find(&self, progress: Progress<'_>) -> Result<FoundPlan, BodyError> {
        let assumptions = &self.assumptions;
        let predictor =
            Predictor::new(self.cushion.fine(), self.cushion.rough(), assumptions, self.stop)?;
        let meshes = SearchMeshes::new(self.cushion, assumptions, self.stop)?;
        let bare = self.search(&meshes, Vec::new());
        let stock_counts = self.stock_counts();
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
        for time in 1..=AGAIN + 1 {
            progress.tell(PlanStep::Search { time });
            let needed = needed.map(|clearance| clearance + spare);
            let Some((found, slopes)) = self.searched(&reader, &wanted, needed, known.take())
            else {
                break;
            };
            known = Some(slopes);
            counts = if self.is_worth_it(&reader, &wanted, &found) {
                found.counts
            } else {
                self.home.clone()
            };
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
        Ok(FoundPlan { counts, goals, prediction, not_safe })
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

    /// The best whole counts for these goals; from under a site only where building up around it
    /// does not do.
    fn searched(
        &self,
        reader: &GoalReader<'_>,
        wanted: &[Wanted],
        needed: [f64; 2],
        known: Option<Slopes>,
    ) -> Option<(Filling, Slopes)> {
        let mut aims = limits(&self.needs, reader.pattern, reader.stock, needed);
        aims.extend(self.held(reader.meshes));
        aims.extend(wanted.iter().filter_map(|goal| goal.aims.as_ref().ok()).flatten().cloned());
        let mut search = self.search(reader.meshes, aims);
        let under: Vec<cushion::CompartmentIx> = (wanted.iter())
            .flat_map(|goal| match goal.want {
                Want::OffLoad { site, .. } => reader.under_site(site),
                _ => Vec::new(),
            })
            .collect();
        let free = search.bounds.clone();
        for at in under.iter().map(|ix| ix.index()) {
            search.bounds[at][0] = self.home[at].min(search.bounds[at][1]);
        }
        let start = search.filled(&self.home, Some(reader.stock))?;
        let (mut rough, start) = search.roughly(&start)?;
        let (best, slopes) = rough.best(start, known)?;
        let whole = |search: &Search<'_>, found: &Filling, slopes| {
            search.best_whole_counts(&search.filled(&found.counts, Some(reader.stock))?, slopes)
        };
        let around = whole(&search, &best, slopes.clone());
        if under.is_empty() || around.as_ref().is_some_and(|found| search.is_met(&found.0)) {
            return around;
        }
        rough.bounds.clone_from(&free);
        search.bounds = free;
        let deeper = rough.best(best, Some(slopes));
        let deeper = deeper.and_then(|(best, slopes)| whole(&search, &best, slopes));
        let pairs = around.into_iter().chain(deeper);
        pairs.reduce(
            |first, next| {
                if search.score(&next.0) < search.score(&first.0) { next } else { first }
            },
        )
    }

    /// Whether a filling is so much better than that at home that cells are to be moved for it.
    /// Where a client sits well, what the next checks say is mostly how finely hands can tell.
    fn is_worth_it(&self, reader: &GoalReader<'_>, wanted: &[Wanted], found: &Filling) -> bool {
        let Some(adjusting) = &self.adjusting else { return true };
        let bare = self.search(reader.meshes, Vec::new());
        let Some(home) = bare.filled(&self.home, Some(found)) else { return true };
        let off = |aim: &Aim, filling: &Filling| {
            aim.quantity.value(filling).map_or(0.0, |value| aim.off(value).abs())
        };
        let limit = self.assumptions.parameters.clearance_limit;
        let least = adjusting.unsure.map(|unsure| limit + LET_BE * unsure);
        let limits = limits(&self.needs, reader.pattern, reader.stock, least);
        let goals = wanted.iter().filter_map(|goal| goal.aims.as_ref().ok()).flatten();
        limits.iter().any(|aim| off(aim, &home) > 0.0)
            || goals.filter(|aim| !aim.goes_with()).any(|aim| {
                let now = off(aim, &home);
                now > LET_BE && now - off(aim, found) > WORTH
            })
    }

    fn search<'s>(&'s self, meshes: &'s SearchMeshes<'s>, aims: Vec<Aim>) -> Search<'s> {
        let stock = self.cushion.stock();
        let bound = |((at, ix), fixed): ((usize, cushion::CompartmentIx), &bool)| {
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
            bounds: pattern.indices().enumerate().zip(&self.fixed).map(bound).collect(),
            home: self.home.clone(),
        }
    }

    fn stock_counts(&self) -> Vec<f64> {
        let (pattern, stock) = (self.cushion.pattern(), self.cushion.stock());
        pattern.indices().map(|ix| f64::from(stock[ix].cells.stock)).collect()
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
        FoundPlan { counts, goals, prediction, not_safe }
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
        let judge = Judge { planner: self, stock: reader.stock, filling };
        reader.wanted().iter().map(|goal| judge.outcome(goal)).collect()
    }
}

/// Looks at what a plan reaches.
struct Judge<'a> {
    planner: &'a Planner<'a>,
    stock: &'a Filling,
    filling: &'a Filling,
}

impl Judge<'_> {
    fn outcome(&self, wanted: &Wanted) -> GoalOutcome {
        let aims = match &wanted.aims {
            Ok(aims) => aims,
            Err(why) => return refused(wanted.want, *why),
        };
        let off =
            |aim: &Aim| aim.quantity.value(self.filling).map_or(0.0, |value| aim.off(value).abs());
        let met = match wanted.want {
            Want::NearStock => self.changed() <= NEAR_STOCK * self.stock.counts.iter().sum::<f64>(),
            _ => aims.iter().filter(|aim| !aim.goes_with()).all(|aim| off(aim) <= 1.0),
        };
        GoalOutcome {
            want: wanted.want,
            wanted: number(wanted.want, &self.planner.needs),
            reached: self.reached(wanted.want, aims),
            met,
            why: (!met).then(|| match wanted.want {
                Want::NearStock if self.planner.needs.goals.len() > 1 => Shortfall::OtherGoals,
                _ => self.why_not(aims),
            }),
        }
    }

    /// Cells by which the counts differ from the stock fill.
    fn changed(&self) -> f64 {
        let pairs = self.filling.counts.iter().zip(&self.stock.counts);
        pairs.map(|(count, stock)| (count - stock).abs()).sum()
    }

    /// The number that the plan reaches.
    fn reached(&self, want: Want, aims: &[Aim]) -> Option<GoalNumber> {
        let value = |quantity: &Quantity| quantity.value(self.filling);
        let of_all = aims.iter().filter_map(|aim| Some((aim, value(&aim.quantity)?)));
        Some(match want {
            Want::CorrectObliquity | Want::AccommodateObliquity => {
                lower(Length::from_m(value(&Quantity::RightHigher)?))
            }
            Want::OffLoad { site, .. } => {
                let quantity = Quantity::Surface(site);
                let stock = quantity.value(self.stock)?;
                GoalNumber::Relief(1.0 - value(&quantity)? / stock)
            }
            Want::LowerFront { .. } => {
                let by = |(aim, top): (&Aim, f64)| {
                    aim.quantity.value(self.stock).map_or(0.0, |stock| stock - top)
                };
                GoalNumber::FrontLower(Length::from_m(of_all.map(by).reduce(f64::min)?))
            }
            Want::Shelf { .. } | Want::MedialSupport { .. } | Want::LateralSupport { .. } => {
                let least = of_all.map(|(_, step)| step).reduce(f64::min)?;
                GoalNumber::Higher(Length::from_m(least))
            }
            Want::EqualFirmness => {
                GoalNumber::Apart(of_all.map(|(_, share)| share.abs()).reduce(f64::max)?)
            }
            Want::NearStock => GoalNumber::Changed(self.changed().round() as u32),
        })
    }

    /// The likeliest reason that more is not reached.
    fn why_not(&self, aims: &[Aim]) -> Shortfall {
        let parameters = &self.planner.assumptions.parameters;
        let limit = parameters.clearance_limit + AT_THE_LIMIT;
        for side in [Side::Left, Side::Right] {
            let clearance = Quantity::Clearance(side).value(self.filling);
            if clearance.is_some_and(|clearance| clearance < limit) {
                return Shortfall::Clearance(side);
            }
        }
        let stock = self.planner.cushion.stock();
        let pattern = self.planner.cushion.pattern();
        let full = pattern.indices().zip(&self.filling.counts).find(|(ix, count)| {
            **count >= f64::from(stock[*ix].cells.high) && !self.planner.fixed[ix.index()]
        });
        if let Some((ix, _)) = full {
            return Shortfall::Full(pattern[ix].number);
        }
        // The first goal has the ranks 1 and 2.
        if aims.iter().any(|aim| aim.rank > 2) { Shortfall::Rank } else { Shortfall::OutOfReach }
    }
}

/// A goal without aims.
fn refused(want: Want, why: Shortfall) -> GoalOutcome {
    let wanted = number(want, &Needs::default());
    GoalOutcome { want, wanted, reached: None, met: false, why: Some(why) }
}

/// Which side is lower, where the right seat bone is so much higher than the left one.
fn lower(right_higher: Length) -> GoalNumber {
    let side = match right_higher.to_m() {
        higher if higher > 0.0 => Some(Side::Left),
        higher if higher < 0.0 => Some(Side::Right),
        _ => None,
    };
    GoalNumber::Lower { side, by: right_higher.abs() }
}

/// The number that a goal wants.
fn number(want: Want, needs: &Needs) -> GoalNumber {
    let oblique = |corrected| needs.oblique.map_or(0.0, |oblique| oblique.right_higher(corrected));
    match want {
        Want::CorrectObliquity => lower(Length::from_m(oblique(true))),
        Want::AccommodateObliquity => lower(Length::from_m(oblique(false))),
        Want::OffLoad { share, .. } => GoalNumber::Relief(share),
        Want::Shelf { height }
        | Want::MedialSupport { height }
        | Want::LateralSupport { height } => GoalNumber::Higher(height),
        Want::LowerFront { by, .. } => GoalNumber::FrontLower(by),
        Want::EqualFirmness => GoalNumber::Apart(0.0),
        Want::NearStock => GoalNumber::Changed(0),
    }
}
