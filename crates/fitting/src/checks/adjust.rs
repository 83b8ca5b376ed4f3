//! From what was found on the filled cushion to the next moves.
//!
//! What is not known of body, load, cover and cells is estimated from all checks so far; then the
//! goals are planned anew from the counts as they are. Alarms come before any estimate, and answers
//! as the plan expected move nothing. A contradiction is questioned and not obeyed: nothing is moved
//! until it is clear, but for a single doubtful word, which is left out. Pinched can mean bottomed or
//! overfilled: no move takes cells from that side before an under check has told which, and none
//! lowers a bone that was pinched or felt.

use case::{
    AdjustRefusal, Alarm, BrokenLimit, Check, Client, Costs, CushionIdentity, Date, Doubt,
    GoalOutcome, Likeness, LookAt, Mirror, Move, NextStep, Partners, Prediction, TopAnswer,
    UnderAnswer, Verdict,
};
use cushion::{Length, Pattern, Side};
use mechanics::{Parameters, Stop};

use crate::advice::small_moves::small_moves;
use crate::checks::alarms::after;
use crate::checks::contradictions::contradictions;
use crate::checks::estimate::{Estimate, EstimateMeshes, Round, estimate};
use crate::checks::expected::{Expected, missing};
use crate::checks::passed::{in_order, passed_counts};
use crate::goals::aims::real;
use crate::image::{
    answered_by_its_image, evened, is_its_own_image, left_first, limits_in_order, side_of_step,
};
use crate::prediction::assumptions::assumptions_of;
use crate::prediction::prepared::PreparedCushion;
use crate::search::moves::moves;
use crate::search::planner::Planner;
use crate::search::progress::Progress;
use crate::search::task::Adjusting;

/// The most by which one round changes a compartment, as a share of its cells: small steps, and
/// the body adapts.
const ONE_ROUND: f64 = 0.35;
/// The same for small compartments, in cells.
const ONE_ROUND_CELLS: f64 = 9.0;
/// Standard deviations of the clearance that are to be left above what bottoms: with
/// [`RISE_OF_LIMIT`], the limit is 25 mm or 10 mm and two standard deviations, whichever is more; the
/// same as a plan's, whose spread is that of two.
const SURE: f64 = 2.0;
/// The limit above what bottoms, m: 25 mm less 10 mm.
const RISE_OF_LIMIT: f64 = 15e-3;
/// Readings from underneath, at least and below, at which a single one moves nothing: at the limit,
/// within one notch and what a hand tells.
const EDGE: [Length; 2] = [Length::from_mm(20.0), Length::from_mm(28.0)];
/// Standard deviations by which an estimate near the limit must be above it: nineteen in twenty.
const NINETEEN_IN_TWENTY: f64 = 1.64;
/// Earlier rounds that are learnt from, the newest: those of some visits. A body changes over the
/// months, and each round costs solves.
pub(crate) const MOST_EARLIER: usize = 12;
/// Misfit from which an answer is questioned, in units of how finely it can be told.
const QUESTIONED: f64 = 5.0;

/// What stays unknown of a clearance however often it is felt, m: hands answer in notches of 5 mm, and
/// what lies within one of them, as likely here as there, has this standard deviation.
const BETWEEN_NOTCHES: f64 = 1.5e-3;

/// What an adjustment is made from.
#[derive(Clone, Copy)]
pub struct AdjustInput<'a> {
    /// The client, with the record of earlier checks.
    pub client: &'a Client,
    /// The cushion.
    pub cushion: &'a PreparedCushion,
    /// The day.
    pub on: Date,
    /// What is in the cushion, in the pattern's order.
    pub now: &'a [u32],
    /// What was found.
    pub checks: &'a [Check],
    /// By which the cushion is known again: checks that were recorded on another one teach nothing
    /// about this one.
    pub identity: &'a CushionIdentity,
    /// Whether to stop.
    pub stop: Stop<'a>,
}

/// What follows from checks.
#[derive(Clone, Debug)]
pub struct Adjusted {
    /// What it comes to.
    pub verdict: Verdict,
    /// What brings the client off the cushion.
    pub alarms: Vec<Alarm>,
    /// Where to look in the set-up, after an alarm or a pinch.
    pub look_at: Vec<LookAt>,
    /// Answers that do not go together; nothing is moved until they are asked again.
    pub doubts: Vec<Doubt>,
    /// Answers that were left out, since a single word does not go with what else is known.
    pub left_out: Vec<Check>,
    /// The counts after the moves, in the pattern's order.
    pub counts: Vec<u32>,
    /// The moves.
    pub moves: Vec<Move>,
    /// What is to be checked next, and what was held back.
    pub next: Vec<NextStep>,
    /// What becomes of the goals.
    pub goals: Vec<GoalOutcome>,
    /// Limits that are not kept.
    pub not_safe: Vec<BrokenLimit>,
    /// What is expected after the moves.
    pub prediction: Prediction,
    /// What the moves change; none where the client does not come to rest.
    pub costs: Option<Costs>,
}

/// Finds the next moves: alarms come first, then contradictions, then whether all is as planned.
///
/// # Errors
///
/// Returns why nothing can be said: a check that nobody can make, or a client of whom too little
/// is known.
pub fn adjust(input: &AdjustInput<'_>) -> Result<Adjusted, AdjustRefusal> {
    let own = (input.client.clone(), input.now.to_vec(), input.checks.to_vec());
    let image = |partners: &Partners| {
        let (client, now, checks) = &own;
        (client.mirrored(partners), partners.swapped(now), checks.mirrored(partners))
    };
    match answered_by_its_image(input.cushion.pattern(), &own, image) {
        None => answered(input),
        Some(partners) => {
            // What is refused is refused for what was asked, not for its image.
            checked_rounds(input)?;
            let (client, now, checks) = image(&partners);
            let mirrored = AdjustInput { client: &client, now: &now, checks: &checks, ..*input };
            answered(&mirrored).map(|adjusted| adjusted.mirrored(&partners))
        }
    }
}

impl Mirror for Adjusted {
    fn mirrored(&self, partners: &Partners) -> Self {
        Self {
            verdict: self.verdict,
            alarms: self.alarms.mirrored(partners),
            look_at: self.look_at.clone(),
            doubts: self.doubts.mirrored(partners),
            left_out: self.left_out.mirrored(partners),
            counts: partners.swapped(&self.counts),
            moves: self.moves.mirrored(partners),
            next: left_first(self.next.mirrored(partners), side_of_step),
            goals: self.goals.mirrored(partners),
            not_safe: limits_in_order(self.not_safe.mirrored(partners)),
            prediction: self.prediction.mirrored(partners),
            costs: self.costs.as_ref().map(|costs| costs.mirrored(partners)),
        }
    }
}

/// Finds the next moves for the question as it is.
fn answered(input: &AdjustInput<'_>) -> Result<Adjusted, AdjustRefusal> {
    let pattern = input.cushion.pattern();
    let rounds = checked_rounds(input)?;
    let weighing = input.client.latest_weighing().ok_or(AdjustRefusal::NoWeight)?;
    let usual = assumptions_of(input.client, input.cushion, weighing.weight, input.stop)?;
    let expected = Expected::new(input, &usual, &rounds)?;
    let meshes = EstimateMeshes::of(input.cushion);
    let learn = |rounds: &[Round]| estimate(meshes, pattern, &usual, rounds, input.stop);
    let contradictions = contradictions(pattern, input.checks);
    let alarms = expected.alarms();
    let mut adjusted = if !alarms.is_empty() {
        let counts = expected.lifted(&alarms);
        // Answers that do not go together say nothing about cells.
        let counts = counts.filter(|_| contradictions.is_empty());
        let next = after(&alarms, counts.is_some());
        expected.answer(Verdict::ClientOff, counts, &LookAt::AFTER_AN_ALARM, next)?
    } else if !contradictions.is_empty() {
        expected.answer(Verdict::Asked, None, &[], Vec::new())?
    } else if let Some(pinched) = expected.pinched() {
        let next = pinched.next;
        let verdict = if pinched.counts.is_some() { Verdict::Move } else { Verdict::Pinched };
        expected.answer(verdict, pinched.counts, pinched.look_at, next)?
    } else if expected.is_as_planned() {
        let mut next = missing(input.checks);
        let verdict = if next.is_empty() { Verdict::AsPlanned } else { Verdict::AsPlannedSoFar };
        if !next.is_empty() {
            next.splice(0..0, learn(&rounds)?.tells_most(input.client, input.checks));
        }
        expected.as_planned(verdict, next)?
    } else if input.checks.iter().all(says_nothing_of_cells) {
        let mut next = missing(input.checks);
        next.splice(0..0, learn(&rounds)?.tells_most(input.client, input.checks));
        expected.answer(Verdict::Stay, None, &[], next)?
    } else if let Some(side) = expected.unchanged(&rounds) {
        let next = vec![NextStep::SetUpBeforeMoving(side)];
        expected.answer(Verdict::Asked, None, &LookAt::AFTER_AN_ALARM, next)?
    } else {
        let learnt = learn(&rounds)?;
        decided(input, &rounds, &expected, &learnt)?
    };
    if let Some(rating) = pattern.max_user_weight().filter(|rating| weighing.weight > *rating) {
        adjusted.not_safe.push(BrokenLimit::TooHeavy { weight: weighing.weight, rating });
    }
    // Where a limit is not kept, nobody is told that all is as planned.
    if adjusted.verdict == Verdict::AsPlanned && !adjusted.not_safe.is_empty() {
        adjusted.verdict = Verdict::Stay;
    }
    if small_moves(input.cushion, &adjusted.moves).is_some() {
        adjusted.next.push(NextStep::FeelSmallMoves);
    }
    adjusted.doubts.extend(contradictions);
    adjusted.alarms = alarms;
    Ok(adjusted)
}

/// Whether an answer says nothing of how the cushion carries the client: of the skin alone no cells
/// move, and a bone that was not found is a check that is missing.
fn says_nothing_of_cells(check: &Check) -> bool {
    matches!(check, Check::Skin { .. } | Check::Under { answer: UnderAnswer::NotFound, .. })
}

/// What is decided for a client as the checks say they sit, from the counts as they are: nothing where
/// no limit is broken and no goal is off; else what is broken is mended with all else held; else the
/// goals are pursued where that is worth its cells.
fn decided(
    input: &AdjustInput<'_>,
    rounds: &[Round],
    expected: &Expected<'_>,
    learnt: &Estimate,
) -> Result<Adjusted, AdjustRefusal> {
    let pattern = input.cushion.pattern();
    let doubts: Vec<Doubt> =
        doubted(learnt, rounds.len(), false).into_iter().map(Doubt::Misfit).collect();
    // A doubted word weighs next to nothing, and the moves follow from the rest.
    let left_out = doubted(learnt, rounds.len(), true);
    let adjusting = adjusting(input, rounds, expected, learnt);
    let mut next = next_steps(input.checks, &adjusting);
    let now = real(input.now);
    let assumptions = learnt.assumptions.clone();
    let planner =
        Planner::adjusting(input.cushion, input.client, assumptions, &now, adjusting, input.stop);
    let too_low = planner.too_low()?;
    let again = if doubts.is_empty() { felt_again(rounds, expected, &too_low) } else { Vec::new() };
    if !again.is_empty() {
        return Ok(expected.answer(Verdict::Asked, None, &[], again)?);
    }
    let found = planner.find(Progress::none())?;
    let counts = if doubts.is_empty() { found.counts } else { input.now.to_vec() };
    let moves = moves(pattern, input.now, &counts);
    let verdict = match (doubts.is_empty(), moves.is_empty()) {
        (false, _) => Verdict::Asked,
        (true, true) => Verdict::Stay,
        (true, false) => Verdict::Move,
    };
    let low = if verdict == Verdict::Stay { felt_too_low(rounds) } else { Vec::new() };
    if !low.is_empty() {
        return Ok(expected.answer(Verdict::Asked, None, &[], low)?);
    }
    if verdict == Verdict::Stay {
        next.splice(0..0, learnt.tells_most(input.client, input.checks));
        // No cells bring what would be sure to be enough.
        next.extend((!too_low.is_empty()).then_some(NextStep::AnotherCushion));
    }
    Ok(Adjusted {
        verdict,
        alarms: Vec::new(),
        look_at: Vec::new(),
        doubts,
        left_out,
        moves,
        counts,
        next,
        goals: found.goals,
        not_safe: found.not_safe,
        prediction: found.prediction,
        costs: found.costs,
    })
}

/// What is felt once more before cells move for it: each seat bone that hands found too low only once,
/// or, where none is too low, lower than anybody would expect.
fn felt_again(rounds: &[Round], expected: &Expected<'_>, too_low: &[Side]) -> Vec<NextStep> {
    let mut low = too_low.to_vec();
    if low.is_empty() {
        low = expected.surprisingly_low();
        low.retain(|side| felt_below(rounds, *side, EDGE[1]));
    }
    felt_once(rounds, &low).into_iter().map(NextStep::FeelAgain).collect()
}

/// How much cushion hands felt under a seat bone in a round.
fn readings(round: &Round, side: Side) -> Vec<Length> {
    let felt = |check: &Check| match check {
        Check::Under { side: at, answer: UnderAnswer::Felt(felt) } if *at == side => Some(*felt),
        _ => None,
    };
    round.checks.iter().filter_map(felt).collect()
}

/// How much cushion hands felt under a seat bone on the counts as they are, in this round and before.
fn all_readings(rounds: &[Round], side: Side) -> Vec<Length> {
    let Some((now, earlier)) = rounds.split_last() else { return Vec::new() };
    let before = earlier.iter().filter(|round| round.counts == now.counts);
    before.chain([now]).flat_map(|round| readings(round, side)).collect()
}

/// What is asked where hands feel less than the limit of every plan and nothing that is known explains
/// it, so that no cells would be moved: it is felt again, and what was felt again is no matter of
/// cells. Never that all may stay as it is.
fn felt_too_low(rounds: &[Round]) -> Vec<NextStep> {
    let limit = Length::from_m(Parameters::default().clearance_limit);
    let Some((now, _)) = rounds.split_last() else { return Vec::new() };
    let asked = |side: Side| {
        let all = all_readings(rounds, side);
        let sum: f64 = all.iter().map(|felt| felt.to_m()).sum();
        let low = sum < (limit.to_m() - 1e-9) * all.len() as f64;
        (low && !readings(now, side).is_empty()).then_some(if all.len() > 1 {
            NextStep::CountBeforeMoving
        } else {
            NextStep::FeelAgain(side)
        })
    };
    let mut asked: Vec<NextStep> =
        [Side::Left, Side::Right].into_iter().filter_map(asked).collect();
    asked.dedup();
    asked
}

/// Whether hands felt less than this under a seat bone in this round.
fn felt_below(rounds: &[Round], side: Side, below: Length) -> bool {
    rounds.last().is_some_and(|now| readings(now, side).into_iter().any(|felt| felt < below))
}

/// The sides that are too low by one reading near the limit and by nothing else: it is felt again
/// before cells are moved. None where another side is too low beyond doubt.
fn felt_once(rounds: &[Round], too_low: &[Side]) -> Vec<Side> {
    let Some(now) = rounds.last() else { return Vec::new() };
    let once = |side: &Side| match all_readings(rounds, *side)[..] {
        [felt] => felt >= EDGE[0],
        _ => false,
    };
    // A side that was not felt is low by what the other one's reading makes of it.
    let mut felt = too_low.to_vec();
    felt.retain(|side| !readings(now, *side).is_empty());
    if felt.iter().all(once) { felt } else { Vec::new() }
}

/// All that was found so far, where all of it can be found on this cushion.
pub(crate) fn checked_rounds(input: &AdjustInput<'_>) -> Result<Vec<Round>, AdjustRefusal> {
    let pattern = input.cushion.pattern();
    for check in input.checks {
        can_be_made(pattern, check)?;
    }
    Ok(rounds(input, pattern))
}

/// Refuses checks that nobody can make on this cushion.
pub(crate) fn can_be_made(pattern: &Pattern, check: &Check) -> Result<(), AdjustRefusal> {
    let Check::Press { number, .. } = *check else { return Ok(()) };
    let ix = pattern.by_number(number).ok_or(AdjustRefusal::NoSuchCompartment(number))?;
    let outer = |ring: &cushion::Ring| {
        ring.steps.iter().any(|(edge, _)| pattern.edges()[edge.index()].is_outer())
    };
    if !outer(&pattern[ix].outer) {
        return Err(AdjustRefusal::Unreachable(number));
    }
    pattern.partner(ix).map(|_| ()).ok_or(AdjustRefusal::NoPartner(number))
}

/// What was found so far, each on the counts of its time and the newest last, and what was found
/// now.
fn rounds(input: &AdjustInput<'_>, pattern: &Pattern) -> Vec<Round> {
    let mut rounds = Vec::new();
    for found in input.client.rounds_found() {
        let counts = in_order(&found.cells, pattern).map(|counts| real(&counts));
        // What is felt on another cushion teaches nothing about this one.
        let same = input.identity.likeness(found.plan) == Likeness::Same;
        if let Some(counts) = counts.filter(|_| same)
            && found.checks.iter().all(|check| can_be_made(pattern, check).is_ok())
        {
            // Answers that could not both be true were asked again, and teach nothing.
            let doubts = contradictions(pattern, found.checks);
            let doubted = |check: &Check| {
                doubts.iter().any(|doubt| match doubt {
                    Doubt::Contradiction(one, other) => one == check || other == check,
                    Doubt::Misfit(_) => false,
                })
            };
            let checks = found.checks.iter().filter(|check| !doubted(check)).copied().collect();
            rounds.push(Round { counts, checks });
        }
    }
    rounds.drain(..rounds.len().saturating_sub(MOST_EARLIER));
    let now = real(input.now);
    rounds.push(Round { counts: now, checks: input.checks.to_vec() });
    rounds
}

/// Answers of the last round that do not go with all else: numbers, or words.
fn doubted(learnt: &Estimate, rounds: usize, words: bool) -> Vec<Check> {
    let last =
        learnt.misfits.iter().filter(|misfit| misfit.round + 1 == rounds && misfit.word == words);
    last.filter(|misfit| misfit.by.abs() > QUESTIONED).map(|misfit| misfit.check).collect()
}

/// By how much more than the limit an estimate must leave for nineteen in twenty, m.
pub(crate) fn sure(sd: f64) -> f64 {
    NINETEEN_IN_TWENTY * sd.max(BETWEEN_NOTCHES)
}

/// The same on sides that were felt and are near the limit by a reading or by the estimate; nothing on
/// others.
fn unsure_near_the_limit(rounds: &[Round], learnt: &Estimate) -> [f64; 2] {
    let unsure = |side: Side, at: usize| {
        let felt = all_readings(rounds, side);
        let low = felt.iter().any(|felt| *felt < EDGE[1]);
        let near = low || learnt.clearance[at] < EDGE[1].to_m();
        if near && !felt.is_empty() { sure(learnt.clearance_sd[at]) } else { 0.0 }
    };
    [unsure(Side::Left, 0), unsure(Side::Right, 1)]
}

/// What this round may do.
fn adjusting(
    input: &AdjustInput<'_>,
    rounds: &[Round],
    expected: &Expected<'_>,
    learnt: &Estimate,
) -> Adjusting {
    let (pattern, checks) = (input.cushion.pattern(), input.checks);
    let pinched =
        |side: &Side| checks.contains(&Check::Top { side: *side, answer: TopAnswer::Pinched });
    let held: Vec<Side> = [Side::Left, Side::Right].into_iter().filter(pinched).collect();
    let bounds = pattern.compartments().iter().zip(input.now).map(|(compartment, count)| {
        let count = f64::from(*count);
        let most = (ONE_ROUND * count).max(ONE_ROUND_CELLS).floor();
        // Nothing is taken from the side of a bone that was pinched.
        let kept = compartment.side.map_or(!held.is_empty(), |side| held.contains(&side));
        [if kept { count } else { (count - most).max(0.0) }, count + most]
    });
    let own = (evened(input.client), input.now.to_vec(), checks.to_vec());
    let image = |partners: &Partners| {
        let (client, now, checks) = &own;
        (client.mirrored(partners), partners.swapped(now), checks.mirrored(partners))
    };
    Adjusting {
        expected: expected.now.clone(),
        unsure: learnt.clearance_sd.map(|sd| (SURE * sd - RISE_OF_LIMIT).max(0.0)),
        doubted: unsure_near_the_limit(rounds, learnt),
        sure: learnt.clearance_sd.map(sure),
        surface_sd: learnt.surface_sd,
        higher_sd: learnt.higher_sd,
        bounds: bounds.collect(),
        held,
        earlier: moved(rounds),
        passed: passed_counts(input.client, pattern, input.identity).map(|passed| real(&passed)),
        symmetric: is_its_own_image(pattern, &own, image),
    }
}

/// The counts before and after each time that cells were moved.
fn moved(rounds: &[Round]) -> Vec<[Vec<f64>; 2]> {
    let pairs = rounds.windows(2).filter(|pair| pair[0].counts != pair[1].counts);
    pairs.map(|pair| [0, 1].map(|at| pair[at].counts.clone())).collect()
}

/// What is to be checked next, and what was held back.
fn next_steps(checks: &[Check], adjusting: &Adjusting) -> Vec<NextStep> {
    let looked = |side: Side| {
        checks.iter().any(|check| matches!(check, Check::Under { side: at, .. } if *at == side))
    };
    let unfelt = [Side::Left, Side::Right].into_iter().filter(|side| !looked(*side));
    let step = |side: Side| match adjusting.held.contains(&side) {
        true => NextStep::FeelBeforeTaking(side),
        false => NextStep::CheckUnder(side),
    };
    unfelt.map(step).chain([NextStep::CheckAgain]).collect()
}
