//! Newton's method with an active set: which nodes are held is found anew at every step.
//!
//! A node is held where it is at its bound and pressed against it. The step is made with all of
//! those held, and the sheet is pressed down to where it may be. Where the energy does not fall, the
//! whole step is tried with slack walls that stop at their limits (see [`super::stopped_walls`]), and
//! then it is shortened until the energy falls. See Hintermüller, Ito and Kunisch, The primal-dual
//! active set strategy as a semismooth Newton method, SIAM J. Optim. 13 (2002), and for the projected
//! search Bertsekas, SIAM J. Control Optim. 20 (1982). Near the end, where the same nodes stay held
//! and stiffness hardly changes, a step takes the factorisation of the one before; and a search that
//! begins at the answer to a like problem makes its first step with the equations there.

use std::sync::Arc;

use crate::stop::Stop;

use super::energy::Forces;
use super::problem::{Hold, Holds, RestProblem, SheetAndPose};
use super::step::{AppliedForces, Change, Factored, StepPoint};

/// The greatest change of sink in m, and of roll and pitch, in one step: as far as contact can be
/// foreseen.
const STRIDE: [f64; 3] = [0.01, 0.06, 0.06];
/// Share of the foreseen fall of the energy that a step must make.
const ENOUGH_FALL: f64 = 1e-4;
/// A fall of the energy below this share of it is rounding.
const ROUNDING: f64 = 1e-13;
/// Share of a compartment's stiffness by which equations may have changed to be used again. Each
/// step then leaves about that share of the residual.
const ALIKE: f64 = 0.01;
/// A step by equations of before must leave no more than this share of the residual: a step with
/// its own costs some five times as much, and leaves nearly nothing.
const WORTH: f64 = 0.1;
/// Times that a step is halved before it is given up.
const MOST_HALVINGS: u32 = 30;
/// What walls may lack of their limit, as a share, to be held where a step finds no way down:
/// holding a wall closes that gap at once, so the smallest is tried first.
const BLOCKED: [f64; 4] = [1e-9, 1e-7, 1e-5, 1e-3];
/// Roll or pitch beyond which the search ends: well past the 10 degrees at which a result has no
/// numbers.
const TOPPLED: f64 = 0.35;

/// When a search ends.
#[derive(Clone, Copy, Debug)]
pub(super) struct Limits<'a> {
    /// Unbalanced force that is small enough, N; times a metre for moments.
    pub(super) residual: f64,
    /// Steps after which it is given up.
    pub(super) steps: u32,
    /// Whether to stop, asked before each step.
    pub(super) stop: Stop<'a>,
}

/// Where a search begins.
#[derive(Clone, Debug)]
pub(super) struct Begin {
    pub(super) state: SheetAndPose,
    /// Where that is an answer for a like problem on the same mesh, the equations there.
    pub(super) equations: Option<Arc<Factored>>,
}

impl From<SheetAndPose> for Begin {
    fn from(state: SheetAndPose) -> Self {
        Self { state, equations: None }
    }
}

/// How a search ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum End {
    /// In balance.
    AtRest,
    /// The body turned so far that nothing more is to be learnt.
    Toppled,
    /// Not in balance after all steps, or no step lowers the energy.
    GaveUp,
    /// It was told to stop.
    Stopped,
}

/// Where a search ended.
#[derive(Clone, Debug)]
pub(super) struct SearchEnd {
    pub(super) end: End,
    pub(super) state: SheetAndPose,
    pub(super) forces: Forces,
    pub(super) holds: Holds,
    /// The equations of the last step that had its own, or of the answer that it began from.
    pub(super) factored: Option<Arc<Factored>>,
    pub(super) steps: u32,
}

impl SearchEnd {
    /// A search that ended where nothing is held.
    pub(super) fn unfinished(end: End, state: SheetAndPose, forces: Forces, steps: u32) -> Self {
        let nodes = vec![Hold::Free; state.sheet.len()];
        let holds = Holds { nodes, walls: vec![0.0; state.walls.len()] };
        Self { end, state, forces, holds, factored: None, steps }
    }

    /// Sum of unbalanced forces on the sheet, N, and on the pose, N and N m.
    pub(super) fn residuals(&self, problem: &RestProblem<'_>) -> (f64, [f64; 3]) {
        let sheet = problem.sheet_residual(&self.state, &self.forces, &self.holds);
        (sheet, problem.pose_residual(&self.state, &self.forces, &self.holds))
    }

    /// To begin at it.
    pub(super) fn begin(&self) -> Begin {
        Begin { state: self.state.clone(), equations: self.factored.clone() }
    }

    fn is_at_rest(&self, problem: &RestProblem<'_>, limits: Limits<'_>) -> bool {
        greatest_residual(problem, &self.state, &self.forces, &self.holds) <= limits.residual
    }
}

/// The greatest of all residuals, N and N m; of the sheet, the sum.
fn greatest_residual(
    problem: &RestProblem<'_>,
    state: &SheetAndPose,
    forces: &Forces,
    holds: &Holds,
) -> f64 {
    let [sink, roll, pitch] = problem.pose_residual(state, forces, holds).map(f64::abs);
    let all = [sink, roll, pitch, problem.sheet_residual(state, forces, holds)];
    // In this order NaN is the greatest.
    all.into_iter().max_by(f64::total_cmp).unwrap_or(f64::INFINITY)
}

/// Height within which wall and body are taken to hold one node at once, m.
const KINK: f64 = 2e-5;

/// Searches for the least energy from a state. None where the state has no room for the cells.
///
/// Where the search goes to and fro over a kink, it is smoothed; see
/// [`super::problem::WALL_SPRING`].
pub(super) fn search(
    problem: &RestProblem<'_>,
    start: impl Into<Begin>,
    limits: Limits,
) -> Option<SearchEnd> {
    let found = straight(problem, start.into(), limits)?;
    if found.end != End::GaveUp {
        return Some(found);
    }
    let Some(smooth) = problem.with_yielding_kinks(&found.state, KINK) else {
        return Some(found);
    };
    let again = straight(&smooth, found.state.clone().into(), limits);
    let again = again.map(|again| SearchEnd { steps: again.steps + found.steps, ..again });
    let ended = |again: &SearchEnd| matches!(again.end, End::AtRest | End::Stopped);
    Some(again.filter(ended).unwrap_or(found))
}

/// Searches without smoothing.
fn straight(problem: &RestProblem<'_>, start: Begin, limits: Limits<'_>) -> Option<SearchEnd> {
    let Begin { mut state, mut equations } = start;
    problem.keep(&mut state);
    let forces = problem.forces(&state)?;
    let holds = problem.holds(&state, &forces);
    let mut found = SearchEnd { end: End::GaveUp, state, forces, holds, factored: None, steps: 0 };
    while found.steps < limits.steps {
        if found.is_at_rest(problem, limits) {
            found.end = End::AtRest;
            break;
        }
        if is_toppled(&found.state) {
            found.end = End::Toppled;
            break;
        }
        if limits.stop.is_wanted() {
            found.end = End::Stopped;
            break;
        }
        found.steps += 1;
        let foretold = equations.take().is_some_and(|own| foretell(problem, &mut found, own));
        if !foretold && !advance(problem, &mut found) {
            break;
        }
    }
    Some(found)
}

/// Whether roll or pitch is beyond where the search goes on.
pub(super) fn is_toppled(state: &SheetAndPose) -> bool {
    state.pose[1..].iter().any(|slope| slope.abs() > TOPPLED)
}

/// Goes to where the equations of a like answer, at which the search begins, see this one: what was
/// held there is held. It costs a fifth of a step. `false` where that leads up.
pub(super) fn foretell(
    problem: &RestProblem<'_>,
    found: &mut SearchEnd,
    equations: Arc<Factored>,
) -> bool {
    if !equations.are_of(problem) {
        return false;
    }
    let holds = std::mem::replace(&mut found.holds, equations.holds.clone());
    let bowing = problem.bowing(&found.state, &found.forces, &found.holds);
    let load = AppliedForces::against(&found.forces);
    let change = equations.change(problem, &bowing, &load);
    let next = change.and_then(|change| lowered(problem, found, &change, stride(&change.pose)));
    let is_lower = next.is_some();
    found.holds = match next {
        Some((state, forces)) => {
            let holds = problem.holds(&state, &forces);
            (found.state, found.forces) = (state, forces);
            holds
        }
        None => holds,
    };
    found.factored = Some(equations);
    is_lower
}

/// Makes one step; `false` where none lowers the energy.
fn advance(problem: &RestProblem<'_>, found: &mut SearchEnd) -> bool {
    let load = AppliedForces::against(&found.forces);
    if advance_cheaply(problem, found, &load) {
        return true;
    }
    for lacking in BLOCKED {
        let (state, forces, holds) = (&found.state, &found.forces, &found.holds);
        let at = StepPoint { problem, state, forces, holds, bowing: None, springs: None };
        let Some(step) = at.step(std::slice::from_ref(&load)) else { return false };
        let change = &step.changes[0];
        let next = lowered(problem, found, change, stride(&change.pose))
            .or_else(|| with_stopped_walls(&at, found, &step.factored, &load))
            .or_else(|| shortened(problem, found, change));
        if let Some((state, forces)) = next {
            found.holds = problem.holds(&state, &forces);
            (found.state, found.forces) = (state, forces);
            found.factored = Some(Arc::new(step.factored));
            return true;
        }
        // A wall that a step were to take beyond its limit is stopped there, and for want of what
        // it was to sweep the step leads up: it is made again with that wall held.
        problem.hold_blocked_walls(found, change, lacking);
    }
    false
}

/// The state after a whole step in which walls stop at their limits, where some do and that lowers the
/// energy as foreseen.
fn with_stopped_walls(
    at: &StepPoint<'_>,
    found: &SearchEnd,
    factored: &Factored,
    load: &AppliedForces,
) -> Option<(SheetAndPose, Forces)> {
    let change = factored.change_to_limits(at, load)?;
    lowered(at.problem, found, &change, stride(&change.pose))
}

/// The state after the greatest share of a step that lowers the energy as foreseen, of those that
/// halving it gives.
fn shortened(
    problem: &RestProblem<'_>,
    found: &SearchEnd,
    change: &Change,
) -> Option<(SheetAndPose, Forces)> {
    let mut share = stride(&change.pose);
    (1..MOST_HALVINGS).find_map(|_| {
        share *= 0.5;
        lowered(problem, found, change, share)
    })
}

/// Makes one step by the equations of a step before, where they have hardly changed; `false` where
/// they have, or where that does not bring much.
fn advance_cheaply(problem: &RestProblem<'_>, found: &mut SearchEnd, load: &AppliedForces) -> bool {
    let Some(factored) = &found.factored else { return false };
    let (state, forces, holds) = (&found.state, &found.forces, &found.holds);
    let at = StepPoint { problem, state, forces, holds, bowing: None, springs: None };
    let Some(bowing) = factored.alike(&at, ALIKE) else { return false };
    let Some(change) = factored.change(problem, &bowing, load) else { return false };
    if stride(&change.pose) < 1.0 {
        return false;
    }
    let Some((state, forces)) = lowered(problem, found, &change, 1.0) else { return false };
    let before = greatest_residual(problem, &found.state, &found.forces, &found.holds);
    let holds = problem.holds(&state, &forces);
    let is_worth = greatest_residual(problem, &state, &forces, &holds) <= WORTH * before;
    if is_worth {
        (found.state, found.forces, found.holds) = (state, forces, holds);
    }
    is_worth
}

/// The state after a share of a change, where that lowers the energy as foreseen.
fn lowered(
    problem: &RestProblem<'_>,
    found: &SearchEnd,
    change: &Change,
    share: f64,
) -> Option<(SheetAndPose, Forces)> {
    // The foreseen change of the energy for a whole step.
    let sheet: f64 = found.forces.nodes.iter().zip(&change.sheet).map(|(a, b)| a * b).sum();
    let pose: f64 = found.forces.pose.iter().zip(change.pose).map(|(a, b)| a * b).sum();
    let rounding = ROUNDING * (found.forces.energy.abs() + 1.0);
    let state = moved(problem, found, change, share);
    // What walls can sweep is bounded, and far less than a straight line foresees.
    let swept = state.walls.iter().zip(&found.state.walls).zip(&found.forces.walls);
    let walls: f64 = swept.map(|((after, before), force)| (after - before) * force).sum();
    let fall = ENOUGH_FALL * (share * (sheet + pose) + walls).min(0.0);
    let forces = problem.forces(&state)?;
    (forces.energy <= found.forces.energy + fall + rounding).then_some((state, forces))
}

/// The share of a step that stays within the greatest change of the pose.
fn stride(pose: &[f64; 3]) -> f64 {
    pose.iter().zip(STRIDE).fold(1.0, |share: f64, (by, most)| share.min(most / by.abs()))
}

/// The state after a share of a change, with held nodes kept at their bounds.
fn moved(
    problem: &RestProblem<'_>,
    found: &SearchEnd,
    change: &Change,
    share: f64,
) -> SheetAndPose {
    let mut pose = found.state.pose;
    pose.iter_mut().zip(change.pose).for_each(|(value, by)| *value += share * by);
    let sheet = found.state.sheet.iter().zip(&change.sheet).zip(&found.holds.nodes).enumerate();
    let sheet = sheet
        .map(|(node, ((height, by), hold))| {
            let bound = problem.bound(node, &pose).0;
            if hold.is_unknown() { (height + share * by).min(bound) } else { bound }
        })
        .collect();
    let mut state = SheetAndPose { sheet, walls: found.state.walls.clone(), pose };
    problem.move_walls(found, change, share, &mut state);
    state
}
