//! What the plan expects of the checks, and whether hands found just that.

use case::{BodyError, BrokenLimit, Check, LookAt, NextStep, ToldFrom, UnderAnswer, Verdict};
use cushion::{Length, Side};
use mechanics::Parameters;

use crate::checks::adjust::{AdjustInput, Adjusted, sure};
use crate::checks::estimate::{EstimateMeshes, Round, UNSURE_OF_MOVES, estimate};
use crate::checks::meaning::{HAND, meaning};
use crate::goals::aims::{Filling, Quantity, real};
use crate::goals::limits::loads_more;
use crate::goals::needs::Needs;
use crate::prediction::client_on_cushion::SearchMeshes;
use crate::prediction::unknowns::Assumptions;
use crate::search::moves::moves;
use crate::search::planner::Planner;
use crate::search::steps::Search;

/// By how much less must be felt than was expected for it to be a surprise, m: once and a half what a
/// hand tells.
const SURPRISE: f64 = 4.5e-3;
/// Readings below which so much less than expected is no longer as expected where a notch of 5 mm
/// lies between, m: the limit and what a hand tells.
const NEAR_THE_LIMIT: f64 = 28e-3;
/// Half a notch, m.
const HALF_A_NOTCH: f64 = 2.5e-3;
/// A change of clearance that a hand cannot miss, m: some three times how finely it tells.
const SHOULD_BE_FELT: f64 = 8e-3;

/// What was felt under a bone, in this round.
pub(crate) fn felt_under(checks: &[Check], side: Side) -> Option<Length> {
    checks.iter().find_map(|check| match check {
        Check::Under { side: at, answer: UnderAnswer::Felt(felt) } if *at == side => Some(*felt),
        _ => None,
    })
}

/// What a fitting check needs and was not answered.
pub(crate) fn missing(checks: &[Check]) -> Vec<NextStep> {
    let both = [Side::Left, Side::Right];
    let under = both.into_iter().filter(|side| felt_under(checks, *side).is_none());
    let on_top = both.into_iter().filter(|side| {
        !checks.iter().any(|check| matches!(check, Check::Top { side: at, .. } if at == side))
    });
    under.map(NextStep::CheckUnder).chain(on_top.map(NextStep::CheckOnTop)).collect()
}

/// What is expected of the cushion as it is, under the client as far as earlier rounds tell.
pub(crate) struct Expected<'a> {
    pub(crate) input: AdjustInput<'a>,
    pub(crate) meshes: SearchMeshes<'a>,
    /// The cushion as it is; none where the client does not come to rest on it.
    pub(crate) now: Option<Filling>,
    /// How unsure what was felt in earlier rounds leaves the clearance under each seat bone, m; nothing
    /// where nothing was, and the plan's own limits count.
    unsure: [f64; 2],
}

impl<'a> Expected<'a> {
    /// Solves for the counts as they are. The last round is what was found now: nothing is
    /// expected from that.
    pub(crate) fn new(
        input: &AdjustInput<'a>,
        usual: &Assumptions,
        rounds: &[Round],
    ) -> Result<Self, BodyError> {
        let pattern = input.cushion.pattern();
        let earlier = &rounds[..rounds.len() - 1];
        let learnt = if earlier.iter().all(|round| round.checks.is_empty()) {
            None
        } else {
            let meshes = EstimateMeshes::of(input.cushion);
            Some(estimate(meshes, pattern, usual, earlier, input.stop)?)
        };
        let assumptions = learnt.as_ref().map_or(usual, |learnt| &learnt.assumptions);
        let meshes = SearchMeshes::new(input.cushion, assumptions, input.stop)?;
        let now = Search::solving_only(input.cushion, &meshes).filled(&real(input.now), None);
        let unsure = |at: usize, side| {
            let felt = earlier.iter().any(|round| felt_under(&round.checks, side).is_some());
            let expected = now.as_ref().and_then(|now| Quantity::Clearance(side).value(now));
            let known = learnt.as_ref().zip(expected).filter(|_| felt);
            known.map_or(0.0, |(learnt, expected)| {
                // What was moved since did so much, more or less.
                let moved = UNSURE_OF_MOVES * (expected - learnt.clearance[at]);
                sure(libm::hypot(learnt.clearance_sd[at], moved))
            })
        };
        let unsure = [unsure(0, Side::Left), unsure(1, Side::Right)];
        Ok(Self { input: *input, meshes, now, unsure })
    }

    /// The same client on other counts; none where they do not come to rest.
    pub(crate) fn on(&self, counts: &[u32]) -> Option<Filling> {
        Search::solving_only(self.input.cushion, &self.meshes)
            .filled(&real(counts), self.now.as_ref())
    }

    /// What the cushion is expected to leave under a seat bone, m.
    pub(crate) fn clearance(&self, side: Side) -> Option<f64> {
        Quantity::Clearance(side).value(self.now.as_ref()?)
    }

    /// Whether what is expected under a seat bone is what hands felt in earlier rounds.
    pub(crate) fn was_felt(&self, side: Side) -> bool {
        self.unsure[usize::from(side == Side::Right)] > 0.0
    }

    /// Whether every answer is within its fineness of what was expected, with all limits kept.
    pub(crate) fn is_as_planned(&self) -> bool {
        let Some(now) = &self.now else { return false };
        let spacing = self.input.client.measures.seat_bone_spacing;
        let agrees = |check: &Check| match meaning(self.input.cushion.pattern(), spacing, check) {
            Some(meaning) => meaning
                .number
                .of(&now.resting)
                .is_some_and(|number| meaning.misfit(number).abs() <= 1.0),
            // Held fingers are never as planned; a bone that was not found is a missing check.
            None => !matches!(check, Check::Top { .. }),
        };
        let limit = Parameters::default().clearance_limit;
        let keeps = |side: Side| {
            let felt = felt_under(self.input.checks, side).map(Length::to_m);
            let expected = self.clearance(side);
            // Near the limit half a notch less than expected is looked at.
            let surprises = felt.zip(expected).is_some_and(|(felt, expected)| {
                felt < NEAR_THE_LIMIT && felt < expected - HALF_A_NOTCH
            });
            // What was felt before is weighed with what is felt now, where it left a doubt.
            let unsure = self.unsure[usize::from(side == Side::Right)];
            let doubted = unsure > 0.0 && expected.is_none_or(|left| left < limit + unsure);
            felt.or(expected).is_some_and(|left| left >= limit) && !surprises && !doubted
        };
        self.input.checks.iter().all(agrees) && [Side::Left, Side::Right].into_iter().all(keeps)
    }

    /// The sides on which much less was felt than was expected.
    pub(crate) fn surprisingly_low(&self) -> Vec<Side> {
        let low = |side: &Side| {
            let felt = felt_under(self.input.checks, *side).map(Length::to_m);
            let expected = self.clearance(*side);
            felt.zip(expected).is_some_and(|(felt, expected)| felt <= expected - SURPRISE)
        };
        [Side::Left, Side::Right].into_iter().filter(low).collect()
    }

    /// The side on which cells that were moved should have changed what is felt, and did not.
    pub(crate) fn unchanged(&self, rounds: &[Round]) -> Option<Side> {
        let (_, earlier) = rounds.split_last()?;
        [Side::Left, Side::Right].into_iter().find(|side| {
            let felt = felt_under(self.input.checks, *side);
            let before = earlier.iter().rev().find_map(|round| {
                felt_under(&round.checks, *side).map(|felt| (felt, &round.counts))
            });
            let (Some(felt), Some((then, counts))) = (felt, before) else { return false };
            let search = Search::solving_only(self.input.cushion, &self.meshes);
            let filling = search.filled(counts, self.now.as_ref());
            let clearance = filling.and_then(|then| Quantity::Clearance(*side).value(&then));
            let change = clearance.zip(self.clearance(*side)).map_or(0.0, |(then, now)| now - then);
            change.abs() >= SHOULD_BE_FELT && (felt - then).abs() <= Length::from_m(HAND)
        })
    }

    /// The answer in which the counts become these, or stay where there are none.
    pub(crate) fn answer(
        &self,
        verdict: Verdict,
        counts: Option<Vec<u32>>,
        look_at: &[LookAt],
        next: Vec<NextStep>,
    ) -> Result<Adjusted, BodyError> {
        let AdjustInput { client, cushion, now, stop, .. } = self.input;
        let counts = counts.unwrap_or_else(|| now.to_vec());
        let assumptions = self.meshes.coarse.assumptions.clone();
        let found =
            Planner::judging(cushion, client, assumptions, real(now), ToldFrom::Present, stop)
                .seen(&counts)?;
        Ok(Adjusted {
            verdict,
            alarms: Vec::new(),
            look_at: look_at.to_vec(),
            doubts: Vec::new(),
            left_out: Vec::new(),
            moves: moves(cushion.pattern(), now, &counts),
            counts,
            next,
            goals: found.goals,
            not_safe: found.not_safe,
            prediction: found.prediction,
            costs: found.costs,
        })
    }

    /// The answer where all is as planned. Where hands felt enough under a seat bone, an estimate
    /// of less, which is within a hand's fineness of it, is no limit that is broken.
    pub(crate) fn as_planned(
        &self,
        verdict: Verdict,
        next: Vec<NextStep>,
    ) -> Result<Adjusted, BodyError> {
        let mut answer = self.answer(verdict, None, &[], next)?;
        let enough = Length::from_m(Parameters::default().clearance_limit);
        answer.not_safe.retain(|limit| match limit {
            BrokenLimit::Clearance { side, .. } | BrokenLimit::LowClearance { side, .. } => {
                felt_under(self.input.checks, *side).is_none_or(|felt| felt < enough)
            }
            _ => true,
        });
        Ok(answer)
    }

    /// Whether a filling loads a site with an injury more than it is loaded now.
    pub(crate) fn loads_an_injury(&self, filling: &Filling) -> bool {
        let injured = Needs::of(self.input.client).injured;
        let more = |now| injured.iter().any(|site| loads_more(*site, now, filling));
        self.now.as_ref().is_some_and(more)
    }
}
