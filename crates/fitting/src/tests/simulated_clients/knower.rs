//! Somebody who knows the truth, and decides and moves as an adjustment does: what they reach says who
//! can be settled at all.

use mechanics::{Parameters, Stop};

use crate::checks::meaning::{FINGERS, HAND, LOWER_SIDE};
use crate::goals::aims::Quantity;
use crate::search::planner::{PlanStart, Planner, stock_counts};
use crate::search::progress::Progress;
use crate::search::task::Adjusting;
use crate::tests::simulated_clients::client::{Case, Truth};

/// What the limit and half a notch come to, m: with less, hands that answer in notches of 5 mm say as
/// often as not what they say at 25 mm, and nobody can tell that it is enough.
const TOLD_FROM_THE_LIMIT: f64 = 27.5e-3;
/// The most by which one round changes a compartment, as an adjustment's: a share, and cells.
const ONE_ROUND: f64 = 0.35;
const ONE_ROUND_CELLS: f64 = 9.0;
/// Standard deviations below which a normal number is with a chance of four in five, as of goals that
/// an adjustment takes up again.
const FOUR_IN_FIVE: f64 = 0.84;
/// Tolerances by which a move that is for a goal brings it nearer at least.
const NEARER: f64 = 0.25;

/// Counts that somebody reaches who knows the truth, with what they do.
pub(super) struct Reached {
    truth: Truth,
    /// Whether fingers are free on top of both seat bones.
    free: bool,
}

/// What can be reached, from the stock fill as a plan, and from planned counts in so many rounds.
pub(super) fn reached(case: &Case<'_>, planned: &[u32], rounds: usize) -> Vec<Reached> {
    let home = stock_counts(case.truth).iter().map(|count| *count as u32).collect();
    let fixed = vec![false; case.truth.pattern().compartments().len()];
    let start = PlanStart { home, fixed, passed: None, symmetric: false };
    let hidden = case.hidden.clone();
    let planner = Planner::knowing(case.truth, &case.client, hidden, &start, Stop::never());
    let anew = planner.find(Progress::none()).expect("a body").counts;
    let mut now = planned.to_vec();
    for _ in 0..rounds {
        let next = next_counts(case, &now);
        if next == now {
            break;
        }
        now = next;
    }
    let look = |counts: Vec<u32>| {
        let contents = case.filled(&counts);
        let free = case.fingers_are_free(&contents);
        Some(Reached { truth: case.truth(&contents)?, free })
    };
    [case.counted(&anew), now].into_iter().filter_map(look).collect()
}

/// The counts after the next move of somebody who knows the truth; the same where nothing is worth it.
pub(super) fn next_counts(case: &Case<'_>, counts: &[u32]) -> Vec<u32> {
    let now = case.filled(counts);
    let bounds = now.iter().map(|count| {
        let most = (ONE_ROUND * count).max(ONE_ROUND_CELLS);
        [(count - most).max(0.0), count + most]
    });
    let adjusting = Adjusting {
        expected: None,
        unsure: [0.0; 2],
        doubted: [HAND; 2],
        sure: [HAND; 2],
        surface_sd: [FINGERS; 2],
        higher_sd: LOWER_SIDE,
        bounds: bounds.collect(),
        held: Vec::new(),
        earlier: Vec::new(),
        passed: None,
        symmetric: false,
    };
    let hidden = case.hidden.clone();
    let planner =
        Planner::adjusting(case.truth, &case.client, hidden, &now, adjusting, Stop::never());
    let found = planner.find(Progress::none()).expect("a body").counts;
    let stays = found.iter().zip(&now).all(|(found, now)| *found == *now as u32);
    if stays { counts.to_vec() } else { case.counted(&found) }
}

/// Whether somebody could settle a client, by hands: enough is left under both bones that hands tell it
/// from too little, and no fingers are held, which would always be questioned.
pub(super) fn can_settle(reached: &[Reached]) -> bool {
    let enough = |truth: &Truth| truth.clearance.iter().all(|own| *own >= TOLD_FROM_THE_LIMIT);
    reached.iter().any(|own| own.free && enough(&own.truth))
}

/// Whether both clearances keep the limit in truth.
pub(super) fn is_safe(truth: &Truth) -> bool {
    truth.clearance.iter().all(|own| *own >= Parameters::default().clearance_limit)
}

/// Whether a goal is open for somebody who knows the truth: it can be met, is off by more than a tolerance
/// and what hands can tell, and is brought nearer by their next move.
pub(super) fn leaves_a_goal_open(
    case: &Case<'_>,
    counts: &[u32],
    truth: &Truth,
    reached: &[Reached],
) -> bool {
    let told = |unit: f64, quantity: &Quantity| {
        let hands = match quantity {
            Quantity::RightHigher => LOWER_SIDE,
            Quantity::Surface(_) => FINGERS,
            // Tops and counts are as sure as the counts.
            _ => 0.0,
        };
        1.0 + FOUR_IN_FIVE * hands / unit
    };
    let open = missed(truth, reached, &told);
    if open.is_empty() {
        return false;
    }
    let next = next_counts(case, counts);
    let Some(then) = case.truth(&case.filled(&next)) else { return next != counts };
    // A move that mends a clearance is not for a goal, and changes it by the way.
    let off = |truth: &Truth, at: usize| truth.off[at].as_ref().map_or(0.0, |off| off.0);
    open.into_iter().any(|at| off(truth, at) - off(&then, at) >= NEARER)
}

/// Whether a goal that can be met is off by more than a tolerance, whatever hands can tell.
pub(super) fn misses_a_tolerance(truth: &Truth, reached: &[Reached]) -> bool {
    !missed(truth, reached, &|_, _| 1.0).is_empty()
}

/// The goals that can be met and are off by more than so much.
fn missed(truth: &Truth, reached: &[Reached], most: &dyn Fn(f64, &Quantity) -> f64) -> Vec<usize> {
    let is_missed = |at: &usize| {
        let met = |own: &Reached| own.truth.off[*at].as_ref().is_some_and(|off| off.0 <= 1.0);
        let could = reached.iter().any(|own| is_safe(&own.truth) && met(own));
        let off = truth.off[*at].as_ref();
        could && off.is_some_and(|(off, unit, what)| *off > most(*unit, what))
    };
    (0..truth.off.len()).filter(is_missed).collect()
}
