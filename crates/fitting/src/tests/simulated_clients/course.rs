//! One simulated client from the plan until an adjustment stops.

use case::{BrokenLimit, Check, Date, Entry, NextStep, TopAnswer, UnderAnswer, Verdict};
use cushion::Side;
use mechanics::{Parameters, Stop};

use crate::checks::adjust::{AdjustInput, Adjusted, adjust};
use crate::checks::meaning::Number;
use crate::search::plan::{PlanInput, plan};
use crate::search::progress::Progress;
use crate::tests::dice::Dice;
use crate::tests::simulated_clients::client::{Case, Cushions, Truth};
use crate::tests::simulated_clients::knower::{
    can_settle, is_safe, leaves_a_goal_open, misses_a_tolerance, reached,
};

/// Rounds of moves after which a client is to be settled.
pub(super) const ROUNDS: usize = 3;
/// Times that hands do within one round what they are asked to do again.
const AGAIN: usize = 2;
const DAY: Date = Date::constant(2026, 3, 1);

/// What became of one client.
#[derive(Clone, Debug, Default)]
pub(super) struct Outcome {
    /// Whether somebody who knows the truth can settle the client.
    pub(super) can_be_settled: bool,
    /// The round, from 0, in which an adjustment stopped.
    pub(super) stopped: Option<usize>,
    /// Whether that was with less than the limit in truth.
    pub(super) unsafe_then: bool,
    /// Whether a goal was open then that somebody who knows the truth would have pursued.
    pub(super) open_goal: bool,
    /// Whether a goal was off by more than its tolerance then that can be met.
    pub(super) off_by_a_tolerance: bool,
    /// Whether a move lowered a bone that was pinched or felt.
    pub(super) harmed: bool,
    /// Whether an answer took a client whom hands had checked to fall from those counts.
    pub(super) taken_to_fall: bool,
    /// What happened.
    pub(super) story: String,
}

impl Outcome {
    /// Whether the client is settled after so many rounds.
    pub(super) fn is_settled_by(&self, round: usize) -> bool {
        self.stopped.is_some_and(|at| at <= round) && !self.unsafe_then && !self.open_goal
    }
}

/// From the plan until an adjustment stops.
pub(super) fn run(cushions: &Cushions, seed: u64) -> Outcome {
    let mut case = Case::new(cushions, seed);
    let planned = planned(&case);
    let mut outcome = Outcome::default();
    if case.truth(&case.filled(&planned)).is_none() {
        "does not come to rest on the plan".clone_into(&mut outcome.story);
        return outcome;
    }
    let reached = reached(&case, &planned, ROUNDS);
    outcome.can_be_settled = can_settle(&reached);
    let mut counts = planned;
    for round in 0..=ROUNDS {
        case.record(&counts);
        case.dice = Dice(mechanics::mixed(seed ^ ((round as u64 + 1) << 32)));
        let truth = case.truth(&case.filled(&counts));
        outcome.story += &format!("\n   {round}: {truth:.4?}");
        let (checks, next) = answered(&mut case, &counts, &mut outcome.story);
        outcome.harmed |= harmed(&case, &checks, &counts, &next.counts);
        outcome.taken_to_fall |= !checks.is_empty() && falls(&next);
        if is_a_stop(&next) {
            outcome.stopped = Some(round);
            outcome.unsafe_then = !truth.as_ref().is_some_and(is_safe);
            let misses = |how: &dyn Fn(&Truth) -> bool| truth.as_ref().is_none_or(how);
            outcome.off_by_a_tolerance = misses(&|truth| misses_a_tolerance(truth, &reached));
            outcome.open_goal = !outcome.unsafe_then
                && misses(&|truth| leaves_a_goal_open(&case, &counts, truth, &reached));
            break;
        }
        case.client.record.push(Entry::Adjustment(case::Adjustment {
            on: DAY,
            by: "OT".to_owned(),
            checks,
            moves: next.moves.clone(),
            why: None,
        }));
        counts = next.counts;
    }
    outcome
}

fn planned(case: &Case<'_>) -> Vec<u32> {
    let known = case.known;
    let input = PlanInput {
        client: &case.client,
        passed: None,
        cushion: known,
        on: DAY,
        stop: Stop::never(),
        progress: Progress::none(),
    };
    let stock: Vec<u32> =
        known.pattern().indices().map(|ix| known.stock()[ix].cells.stock).collect();
    let plan = plan(&input, &stock).expect("a plan");
    plan.counts.iter().map(|count| count.planned).collect()
}

/// One round: all checks, and what is asked to be felt again while the client sits there.
fn answered(case: &mut Case<'_>, counts: &[u32], story: &mut String) -> (Vec<Check>, Adjusted) {
    let mut checks = case.checks(counts);
    let client = case.client.clone();
    let (identity, cushion) = (case.identity(), case.known);
    let ask = |checks: &[Check], story: &mut String| {
        let next = adjust(&AdjustInput {
            identity: &identity,
            client: &client,
            cushion,
            on: DAY,
            now: counts,
            checks,
            stop: Stop::never(),
        })
        .expect("an adjustment");
        *story += &format!("\n      {} -> {}", said(checks), told(&next));
        next
    };
    let mut next = ask(&checks, story);
    for _ in 0..AGAIN {
        if next.next.contains(&NextStep::PatFirst) {
            // Cells are taken out only where fingers are held still.
            if case.tops_again(counts, &mut checks) {
                break;
            }
        } else {
            let again = case.felt_again(counts, &next.next);
            if again.is_empty() {
                break;
            }
            checks.extend(again);
        }
        next = ask(&checks, story);
    }
    (checks, next)
}

fn said(checks: &[Check]) -> String {
    let said: Vec<String> = checks.iter().map(ToString::to_string).collect();
    said.join(", ")
}

fn told(next: &Adjusted) -> String {
    let steps: Vec<&str> = next.next.iter().map(|step| step.id()).collect();
    let cells: u32 = next.moves.iter().map(|own| own.cells).sum();
    format!("{} {steps:?} {cells} cells {:?} {:?}", next.verdict.id(), next.not_safe, next.doubts)
}

/// Whether an answer stops: nothing is moved, doubted or asked, and nothing is said not to be safe.
fn is_a_stop(next: &Adjusted) -> bool {
    // To look again after a while is said of every answer.
    let asks = next.next.iter().any(|step| !matches!(step, NextStep::CheckAgain));
    matches!(next.verdict, Verdict::AsPlanned | Verdict::Stay)
        && next.moves.is_empty()
        && next.doubts.is_empty()
        && next.not_safe.is_empty()
        && !asks
}

/// Whether an answer that moves nothing says that the client does not come to rest.
fn falls(next: &Adjusted) -> bool {
    let falls = |limit: &BrokenLimit| {
        matches!(limit, BrokenLimit::Tips | BrokenLimit::LeansAway | BrokenLimit::NoRest)
    };
    next.moves.is_empty() && next.not_safe.iter().any(falls)
}

/// Whether moves harm in the truth: a bone that was felt is lowered, or one that was pinched is
/// lowered below the limit. Few cells may go from under a pinched bone with much cushion under it.
fn harmed(case: &Case<'_>, checks: &[Check], before: &[u32], after: &[u32]) -> bool {
    if before == after {
        return false;
    }
    let clearance = |counts: &[u32], side| {
        case.rests(&case.filled(counts)).and_then(|resting| Number::Clearance(side).of(&resting))
    };
    let limit = Parameters::default().clearance_limit;
    [Side::Left, Side::Right].into_iter().any(|side| {
        let felt = checks.contains(&Check::Under { side, answer: UnderAnswer::BoneFelt });
        let pinched = checks.contains(&Check::Top { side, answer: TopAnswer::Pinched });
        let Some((before, after)) = clearance(before, side).zip(clearance(after, side)) else {
            return felt || pinched;
        };
        // Rounding of the solver, and nothing more.
        let lowered = after < before - 1e-7;
        lowered && (felt || pinched && after < limit)
    })
}
