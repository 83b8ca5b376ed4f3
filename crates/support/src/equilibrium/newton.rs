//! Newton's method with an active set: which nodes are held is found anew at every step.
//!
//! A node is held where it is at its bound and pressed against it. The step is made with all of
//! those held, the sheet is pressed down to where it may be, and the step is shortened until the
//! energy falls. See Hintermüller, Ito and Kunisch, The primal-dual active set strategy as a
//! semismooth Newton method, SIAM J. Optim. 13 (2002), and for the projected search Bertsekas,
//! SIAM J. Control Optim. 20 (1982).

use super::energy::Forces;
use super::problem::{Hold, Problem, State};
use super::step::{At, Change, Load};

/// The greatest change of sink in m, and of roll and pitch, in one step: as far as contact can be
/// foreseen.
const STRIDE: [f64; 3] = [0.01, 0.06, 0.06];
/// Share of the foreseen fall of the energy that a step must make.
const ENOUGH_FALL: f64 = 1e-4;
/// A fall of the energy below this share of it is rounding.
const ROUNDING: f64 = 1e-13;
/// Times that a step is halved before it is given up.
const MOST_HALVINGS: u32 = 30;
/// Roll or pitch beyond which the search ends: well past the 10 degrees at which a result has no
/// numbers.
const TOPPLED: f64 = 0.35;

/// When a search ends.
#[derive(Clone, Copy, Debug)]
pub(super) struct Limits {
    /// Unbalanced force that is small enough, N; times a metre for moments.
    pub(super) residual: f64,
    /// Steps after which it is given up.
    pub(super) steps: u32,
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
}

/// Where a search ended.
#[derive(Clone, Debug)]
pub(super) struct Found {
    pub(super) end: End,
    pub(super) state: State,
    pub(super) forces: Forces,
    pub(super) holds: Vec<Hold>,
    pub(super) steps: u32,
}

impl Found {
    /// Sum of unbalanced forces on the sheet, N, and on the pose, N and N m.
    pub(super) fn residuals(&self, problem: &Problem<'_>) -> (f64, [f64; 3]) {
        let sheet = problem.sheet_residual(&self.forces, &self.holds);
        (sheet, problem.pose_residual(&self.forces, &self.holds))
    }

    fn is_at_rest(&self, problem: &Problem<'_>, limits: Limits) -> bool {
        let (sheet, pose) = self.residuals(problem);
        sheet <= limits.residual && pose.iter().all(|left| left.abs() <= limits.residual)
    }
}

/// Height within which wall and body are taken to hold one node at once, m.
const KINK: f64 = 2e-5;

/// Searches for the least energy from a state. None where the state has no room for the cells.
///
/// Where the search goes to and fro over a kink, it is smoothed; see
/// [`super::problem::WALL_SPRING`].
pub(super) fn search(problem: &Problem<'_>, start: State, limits: Limits) -> Option<Found> {
    let found = straight(problem, start, limits)?;
    if found.end != End::GaveUp {
        return Some(found);
    }
    let Some(smooth) = problem.with_yielding_kinks(&found.state, KINK) else {
        return Some(found);
    };
    let again = straight(&smooth, found.state.clone(), limits);
    let again = again.map(|again| Found { steps: again.steps + found.steps, ..again });
    Some(again.filter(|again| again.end == End::AtRest).unwrap_or(found))
}

/// Searches without smoothing.
fn straight(problem: &Problem<'_>, start: State, limits: Limits) -> Option<Found> {
    let mut state = start;
    problem.keep(&mut state);
    let forces = problem.forces(&state)?;
    let holds = problem.holds(&state, &forces);
    let mut found = Found { end: End::GaveUp, state, forces, holds, steps: 0 };
    while found.steps < limits.steps {
        if found.is_at_rest(problem, limits) {
            found.end = End::AtRest;
            break;
        }
        if is_toppled(&found.state) {
            found.end = End::Toppled;
            break;
        }
        found.steps += 1;
        if !advance(problem, &mut found) {
            break;
        }
    }
    Some(found)
}

/// Whether roll or pitch is beyond where the search goes on.
pub(super) fn is_toppled(state: &State) -> bool {
    state.pose[1..].iter().any(|slope| slope.abs() > TOPPLED)
}

/// Makes one step; `false` where none lowers the energy.
fn advance(problem: &Problem<'_>, found: &mut Found) -> bool {
    let load = Load {
        nodes: found.forces.nodes.iter().map(|force| -force).collect(),
        pose: found.forces.pose.map(|force| -force),
    };
    let at = |lean| At {
        problem,
        state: &found.state,
        forces: &found.forces,
        holds: &found.holds,
        springs: None,
        lean,
    };
    let step = at(true).step(std::slice::from_ref(&load));
    let Some(step) = step.or_else(|| at(false).step(&[load])) else { return false };
    let change = &step.changes[0];
    // The foreseen change of the energy for a whole step.
    let sheet: f64 = found.forces.nodes.iter().zip(&change.sheet).map(|(a, b)| a * b).sum();
    let pose: f64 = found.forces.pose.iter().zip(change.pose).map(|(a, b)| a * b).sum();
    let slope = (sheet + pose).min(0.0);
    let mut share = stride(&change.pose);
    for _ in 0..MOST_HALVINGS {
        let state = moved(problem, found, change, share);
        if let Some(forces) = problem.forces(&state) {
            let rounding = ROUNDING * (found.forces.energy.abs() + 1.0);
            if forces.energy
                <= found.forces.energy + ENOUGH_FALL * share * slope.min(0.0) + rounding
            {
                found.holds = problem.holds(&state, &forces);
                (found.state, found.forces) = (state, forces);
                return true;
            }
        }
        share *= 0.5;
    }
    false
}

/// The share of a step that stays within the greatest change of the pose.
fn stride(pose: &[f64; 3]) -> f64 {
    pose.iter().zip(STRIDE).fold(1.0, |share: f64, (by, most)| share.min(most / by.abs()))
}

/// The state after a share of a change, with held nodes kept at their bounds.
fn moved(problem: &Problem<'_>, found: &Found, change: &Change, share: f64) -> State {
    let mut pose = found.state.pose;
    pose.iter_mut().zip(change.pose).for_each(|(own, by)| *own += share * by);
    let sheet = found.state.sheet.iter().zip(&change.sheet).zip(&found.holds).enumerate();
    let sheet = sheet
        .map(|(node, ((height, by), hold))| {
            let bound = problem.bound(node, &pose).0;
            if *hold == Hold::Free { (height + share * by).min(bound) } else { bound }
        })
        .collect();
    State { sheet, pose }
}
