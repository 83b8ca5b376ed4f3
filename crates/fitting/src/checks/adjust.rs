//! From what was found on the filled cushion to the next moves.
//!
//! What is not known of body, load, cover and cells is estimated from all checks so far; then the
//! goals are planned anew from the counts as they are. Alarms come before any estimate, and answers
//! as the plan expected move nothing. A contradiction is questioned and not obeyed: nothing is moved
//! until it is clear, but for a single doubtful word, which is left out. Pinched can mean bottomed or
//! overfilled: no move takes cells from that side before an under check has told which, and none
//! lowers a bone that was pinched or felt.

use case::{
    AdjustRefusal, Alarm, BodyError, BrokenLimit, Check, Client, CushionIdentity, Date, Doubt,
    GoalOutcome, Likeness, LookAt, Mirror, Move, NextStep, Partners, Prediction, SiteName,
    TopAnswer, UnderAnswer, Verdict,
};
use cushion::{Length, Pattern, Side};
use mechanics::Stop;

use crate::advice::small_moves::small_moves;
use crate::checks::alarms::{ENOUGH_FELT, after};
use crate::checks::estimate::{Estimate, Round, estimate};
use crate::checks::expected::{Expected, felt_under, missing};
use crate::image::{answered_by_its_image, left_first, side_of_limit, side_of_step};
use crate::prediction::assumptions::assumptions_of;
use crate::prediction::client_on_cushion::{ClientOnCushion, index_of};
use crate::prediction::prepared::PreparedCushion;
use crate::prediction::unknowns::Assumptions;
use crate::search::moves::moves;
use crate::search::planner::{Adjusting, Planner};
use crate::search::progress::Progress;

/// The most by which one round changes a compartment, as a share of its cells: small steps, and
/// the body adapts.
const ONE_ROUND: f64 = 0.35;
/// The same for small compartments, in cells.
const ONE_ROUND_CELLS: f64 = 9.0;
/// Standard deviations by which more clearance is kept than the limit.
const SURE: f64 = 1.2;
/// The part of the greatest effect on a clearance from which the sign of an effect can be relied
/// on: a cell on the other side lifts the whole pelvis and turns it back, and either may win.
const SURELY: f64 = 0.5;
/// Earlier rounds that are learnt from, the newest: those of some visits. A body changes over the
/// months, and each round costs solves.
const MOST_EARLIER: usize = 12;
/// Misfit from which an answer is questioned, in units of how finely it can be told.
const QUESTIONED: f64 = 5.0;

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
            not_safe: left_first(self.not_safe.mirrored(partners), side_of_limit),
            prediction: self.prediction.mirrored(partners),
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
        let missing = missing(input.checks);
        let so_far = !missing.is_empty();
        let verdict = if so_far { Verdict::AsPlannedSoFar } else { Verdict::AsPlanned };
        expected.answer(verdict, None, &[], missing)?
    } else {
        planned_anew(input, &rounds, &usual)?
    };
    if let Some(rating) = pattern.max_user_weight().filter(|rating| weighing.weight > *rating) {
        adjusted.not_safe.push(BrokenLimit::TooHeavy { weight: weighing.weight, rating });
    }
    if small_moves(input.cushion, &adjusted.moves).is_some() {
        adjusted.next.push(NextStep::FeelSmallMoves);
    }
    adjusted.doubts.extend(contradictions);
    adjusted.alarms = alarms;
    Ok(adjusted)
}

/// The goals planned anew from the counts as they are, for a client as the checks say they sit.
fn planned_anew(
    input: &AdjustInput<'_>,
    rounds: &[Round],
    usual: &Assumptions,
) -> Result<Adjusted, AdjustRefusal> {
    let pattern = input.cushion.pattern();
    let learnt = estimate(input.cushion.coarse(), pattern, usual, rounds, input.stop)?;
    let now: Vec<f64> = input.now.iter().map(|count| f64::from(*count)).collect();
    let doubts: Vec<Doubt> =
        doubted(&learnt, rounds.len(), false).into_iter().map(Doubt::Misfit).collect();
    let mut adjusting = adjusting(pattern, input.checks, &learnt, &now);
    hold(input, &learnt, &now, &mut adjusting)?;
    let next = next_steps(input.checks, &adjusting);
    // A doubted word weighs next to nothing, and the moves follow from the rest.
    let left_out = doubted(&learnt, rounds.len(), true);
    let assumptions = learnt.assumptions.clone();
    let planner =
        Planner::adjusting(input.cushion, input.client, assumptions, &now, adjusting, input.stop);
    let found = planner.find(Progress::none())?;
    let counts = if doubts.is_empty() { found.counts } else { input.now.to_vec() };
    let moves = moves(pattern, input.now, &counts);
    let verdict = match (doubts.is_empty(), moves.is_empty()) {
        (false, _) => Verdict::Asked,
        (true, true) => Verdict::Stay,
        (true, false) => Verdict::Move,
    };
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
    })
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
        let of = |compartment: &cushion::Compartment| found.cells.get(&compartment.number);
        let counts: Option<Vec<f64>> = (pattern.compartments().iter())
            .map(|compartment| of(compartment).map(|count| f64::from(*count)))
            .collect();
        // What is felt on another cushion teaches nothing about this one.
        let same = input.identity.likeness(found.plan) == Likeness::Same;
        if let Some(counts) = counts.filter(|_| same)
            && found.checks.iter().all(|check| can_be_made(pattern, check).is_ok())
        {
            rounds.push(Round { counts, checks: found.checks.to_vec() });
        }
    }
    rounds.drain(..rounds.len().saturating_sub(MOST_EARLIER));
    let now = input.now.iter().map(|count| f64::from(*count)).collect();
    rounds.push(Round { counts: now, checks: input.checks.to_vec() });
    rounds
}

/// Answers that do not go together.
fn contradictions(pattern: &Pattern, checks: &[Check]) -> Vec<Doubt> {
    let mut doubts = Vec::new();
    for (at, check) in checks.iter().enumerate() {
        let earlier = checks[..at].iter().filter(|other| contradict(pattern, check, other));
        doubts.extend(earlier.map(|other| Doubt::Contradiction(*other, *check)));
    }
    doubts
}

/// Answers of the last round that do not go with all else: numbers, or words.
fn doubted(learnt: &Estimate, rounds: usize, words: bool) -> Vec<Check> {
    let last =
        learnt.misfits.iter().filter(|misfit| misfit.round + 1 == rounds && misfit.word == words);
    last.filter(|misfit| misfit.by.abs() > QUESTIONED).map(|misfit| misfit.check).collect()
}

/// Whether so much was felt that a bone above it is far from the base.
fn enough(felt: Length) -> bool {
    felt >= ENOUGH_FELT
}

/// Whether two answers cannot both be true.
fn contradict(pattern: &Pattern, a: &Check, b: &Check) -> bool {
    match (a, b) {
        (Check::Top { side: x, answer: p }, Check::Top { side: y, answer: q }) => x == y && p != q,
        (Check::Under { side: x, answer: p }, Check::Under { side: y, answer: q }) => {
            x == y && p != q
        }
        (Check::Lower { lower: p, .. }, Check::Lower { lower: q, .. }) => p != q,
        (Check::Skin { site: x, answer: p }, Check::Skin { site: y, answer: q }) => {
            x == y && p != q
        }
        (Check::Press { number: x, answer: p }, Check::Press { number: y, answer: q }) => {
            let of = |number: u8| pattern.by_number(number);
            let partners = of(*x).and_then(|ix| pattern.partner(ix)) == of(*y);
            use case::PressAnswer::Like;
            // Of two partners one is firmer, or neither.
            x == y && p != q || partners && p == q && *p != Like
        }
        (Check::Top { side: x, answer: TopAnswer::Safe }, Check::Under { side: y, answer })
        | (Check::Under { side: y, answer }, Check::Top { side: x, answer: TopAnswer::Safe }) => {
            x == y && *answer == UnderAnswer::BoneFelt
        }
        _ => false,
    }
}

/// What this round may do.
fn adjusting(pattern: &Pattern, checks: &[Check], learnt: &Estimate, now: &[f64]) -> Adjusting {
    let pinched = |side: Side| checks.contains(&Check::Top { side, answer: TopAnswer::Pinched });
    let felt = |side: Side| checks.contains(&Check::Under { side, answer: UnderAnswer::BoneFelt });
    let looked = |side: Side| {
        checks.iter().any(|check| matches!(check, Check::Under { side: at, .. } if *at == side))
    };
    let both = [Side::Left, Side::Right];
    let held = both.into_iter().filter(|side| pinched(*side) || felt(*side)).collect();
    // Before an under check, or where the bone was felt, nothing is taken from that side.
    let kept = both.map(|side| felt(side) || (pinched(side) && !looked(side)));
    // Held fingers over much cushion mean too many cells rather than too few.
    let full = both.map(|side| pinched(side) && felt_under(checks, side).is_some_and(enough));
    let bounds = pattern.compartments().iter().zip(now).map(|(compartment, count)| {
        let most = (ONE_ROUND * count).max(ONE_ROUND_CELLS).floor();
        let on_its_side = |of: [bool; 2]| match compartment.side {
            Some(Side::Left) => of[0],
            Some(Side::Right) => of[1],
            None => of[0] || of[1],
        };
        let least = if on_its_side(kept) { *count } else { count - most };
        [least, if on_its_side(full) { *count } else { count + most }]
    });
    Adjusting { unsure: learnt.clearance_sd.map(|sd| SURE * sd), bounds: bounds.collect(), held }
}

/// Lets each compartment change only in the way in which it raises every bone that was pinched or
/// felt, so that no sum of changes lowers one, however wrong the sizes of the effects are.
fn hold(
    input: &AdjustInput<'_>,
    learnt: &Estimate,
    now: &[f64],
    adjusting: &mut Adjusting,
) -> Result<(), BodyError> {
    if adjusting.held.is_empty() {
        return Ok(());
    }
    let seated =
        ClientOnCushion::new(input.cushion.coarse(), learnt.assumptions.clone(), input.stop)?;
    let answer = seated.rest(now, None);
    let effects = answer.resting().and_then(|resting| seated.effects_at(now, resting));
    for side in &adjusting.held {
        let bone = index_of(seated.body(), SiteName::SeatBone(*side));
        let on_bone: Option<Vec<f64>> = effects
            .as_ref()
            .zip(bone)
            .map(|(all, bone)| all.iter().map(|effect| effect.clearance[bone]).collect());
        let greatest = on_bone.iter().flatten().fold(0.0f64, |most, effect| most.max(effect.abs()));
        for (at, bounds) in adjusting.bounds.iter_mut().enumerate() {
            match on_bone.as_ref().map(|all| all[at]) {
                Some(effect) if effect > SURELY * greatest => bounds[0] = now[at],
                Some(effect) if effect < -SURELY * greatest => bounds[1] = now[at],
                _ => *bounds = [now[at]; 2],
            }
        }
    }
    Ok(())
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
