//! A slower search that does not depend on guessing which nodes are held.
//!
//! Bounds are kept by a barrier: `mu int ln(1/(b - u))`, and the same on walls; on those that bow
//! also `mu ln(1/(1 - s^2 - (x/(g A))^2))`, s being the seam's height over the slack one as a share. For each mu the
//! energy is smooth and, without the trunk's term, convex, so that Newton's method with a search
//! along the step always goes down and ends; then mu is lowered. What is left when it ends is at
//! most mu times the area, in energy. See Nesterov and Nemirovskii, Interior-Point Polynomial
//! Algorithms in Convex Programming (1994).

use super::energy::Forces;
use super::newton::{self, End, Limits, SearchEnd};
use super::problem::{Hold, Holds, RestProblem, SheetAndPose};
use super::step::{AppliedForces, Change, Springs, StepPoint};

/// The first barrier, Pa m: some pressure under the body times a gap of millimetres.
const FIRST: f64 = 10.0;
/// By how much it is lowered. A greater share takes fewer barriers with more steps each.
const LOWERED: f64 = 0.15;
/// The last barrier: at the pressures under a body the gap is a nanometre.
const LAST: f64 = 3e-6;
/// Steps for one barrier; some five do, save for the first.
const MOST_STEPS: u32 = 60;
/// A step is let go when the fall foreseen is less than this share of the barrier's own.
const ENOUGH: f64 = 1e-4;
/// The share of the way to a bound that one step may go: nearer, and the next steps are short.
const SHY: f64 = 0.95;
/// Times that a step is halved: after so many nothing of it is left but rounding.
const MOST_HALVINGS: u32 = 60;
/// How far below all bounds the search begins, m: some of the first barrier's own gaps.
const BELOW: f64 = 1e-3;
/// Share of the foreseen fall that a step must make. A step of Newton's method makes half of it.
const FALL: f64 = 0.1;
/// What counts as at its bound when the search ends, as a share of the root of the barrier in m:
/// far above the gap that the last barrier leaves under a pressure, and far below a gap without.
const AT_BOUND: f64 = 1e-2;

/// Searches for the least energy. None where the start has no room for the cells.
pub(super) fn search(
    problem: &RestProblem<'_>,
    start: SheetAndPose,
    limits: Limits<'_>,
) -> Option<SearchEnd> {
    let mut inner = Inner { problem, state: inside(problem, start), mu: FIRST };
    let mut forces = problem.forces(&inner.state)?;
    let mut steps = 0;
    while inner.mu > LAST {
        for _ in 0..MOST_STEPS {
            if limits.stop.is_wanted() {
                return Some(SearchEnd::unfinished(End::Stopped, inner.state, forces, steps));
            }
            steps += 1;
            match inner.advance(&forces) {
                Some((state, new)) => (inner.state, forces) = (state, new),
                None => break,
            }
            if newton::is_toppled(&inner.state) {
                let state = inner.state;
                return Some(SearchEnd::unfinished(End::Toppled, state, forces, steps));
            }
        }
        inner.mu *= LOWERED;
    }
    // The nodes whose gap is less than their force would leave are held; the rest is one or two
    // steps of the active set.
    let state = inner.snapped(&forces);
    // A state that was snapped to its bounds may have no room for the cells any more.
    let found = newton::search(problem, state, limits).filter(|found| found.end != End::GaveUp);
    let mut found =
        found.unwrap_or_else(|| SearchEnd::unfinished(End::GaveUp, inner.state, forces, 0));
    found.steps += steps;
    Some(found)
}

/// A state strictly below all bounds.
fn inside(problem: &RestProblem<'_>, mut state: SheetAndPose) -> SheetAndPose {
    for (node, height) in state.sheet.iter_mut().enumerate() {
        let bound = problem.bound(node, &state.pose).0;
        *height = height.min(bound - BELOW);
    }
    state.walls = vec![0.0; problem.stations().len()];
    state
}

struct Inner<'a> {
    problem: &'a RestProblem<'a>,
    state: SheetAndPose,
    /// The barrier, Pa m.
    mu: f64,
}

/// The gaps of a state, m: to the body and to the wall; infinite where there is none.
fn gaps(problem: &RestProblem<'_>, state: &SheetAndPose) -> Vec<[f64; 2]> {
    let rigid = problem.tissue().is_none();
    let gap = |(node, height): (usize, &f64)| {
        let skin = if rigid { problem.skin(node, &state.pose) } else { f64::INFINITY };
        let wall = if problem.level.seam[node] { problem.wall } else { f64::INFINITY };
        [skin - height, wall - height]
    };
    state.sheet.iter().enumerate().map(gap).collect()
}

impl Inner<'_> {
    /// Energy with the barrier.
    fn energy(&self, state: &SheetAndPose, forces: &Forces, gaps: &[[f64; 2]]) -> f64 {
        let areas = &self.problem.level.areas;
        let barrier = |(gap, area): (&[f64; 2], &f64)| -> f64 {
            gap.iter().filter(|gap| gap.is_finite()).map(|gap| -area * libm::log(*gap)).sum()
        };
        let bounds: f64 = gaps.iter().zip(areas).map(barrier).sum();
        forces.energy + self.mu * (bounds + self.problem.wall_barrier(state))
    }

    /// One step down; none where no fall worth having is foreseen.
    fn advance(&self, forces: &Forces) -> Option<(SheetAndPose, Forces)> {
        let problem = self.problem;
        let gaps = gaps(problem, &self.state);
        let (mut load, springs) = self.pushed(forces, &gaps);
        let bowing = problem.barred_walls(&self.state, self.mu, &mut load);
        let nodes = vec![Hold::Free; problem.level.len()];
        let holds = Holds { nodes, walls: vec![0.0; self.state.walls.len()] };
        let bowing = Some(&bowing);
        let springs = Some(&springs);
        let at = StepPoint { problem, state: &self.state, forces, holds: &holds, bowing, springs };
        let step = at.step(std::slice::from_ref(&load))?;
        let change = &step.changes[0];
        let sheet: f64 = load.nodes.iter().zip(&change.sheet).map(|(a, b)| a * b).sum();
        let walls: f64 = load.walls.iter().zip(&change.walls).map(|(a, b)| a * b).sum();
        let fall =
            sheet + walls + load.pose.iter().zip(change.pose).map(|(a, b)| a * b).sum::<f64>();
        let enough = ENOUGH * self.mu * problem.level.areas.iter().sum::<f64>();
        if !(fall > enough) {
            return None;
        }
        let before = self.energy(&self.state, forces, &gaps);
        let mut share = self.room(&gaps, change);
        for _ in 0..MOST_HALVINGS {
            let state = self.moved(change, share);
            let gaps = self::gaps(problem, &state);
            let kept = gaps.iter().all(|gap| gap[0] > 0.0 && gap[1] > 0.0)
                && problem.wall_barrier(&state).is_finite();
            if kept
                && let Some(forces) = problem.forces(&state)
                && self.energy(&state, &forces, &gaps) <= before - FALL * share * fall
            {
                return Some((state, forces));
            }
            share *= 0.5;
        }
        None
    }

    /// Minus the slopes of energy and barrier, and the barrier's curvature as springs.
    fn pushed(&self, forces: &Forces, gaps: &[[f64; 2]]) -> (AppliedForces, Springs) {
        let level = self.problem.level;
        let mut load = AppliedForces::against(forces);
        let mut springs =
            Springs { to_body: vec![0.0; level.len()], to_ground: vec![0.0; level.len()] };
        for (node, [skin, wall]) in gaps.iter().enumerate() {
            let weight = self.mu * level.areas[node];
            load.nodes[node] -= weight / skin + weight / wall;
            springs.to_body[node] = weight / (skin * skin);
            springs.to_ground[node] = weight / (wall * wall);
            if let Some(body) = &self.problem.body {
                let modes = body.modes(level.places[node]);
                for (value, mode) in load.pose.iter_mut().zip(modes) {
                    *value += weight / skin * mode;
                }
            }
        }
        if let Some(body) = &self.problem.body {
            for (value, held) in load.pose.iter_mut().zip(body.held) {
                *value = if held { 0.0 } else { *value };
            }
        }
        (load, springs)
    }

    /// The greatest share of a change that keeps off the bounds, at most one.
    fn room(&self, gaps: &[[f64; 2]], change: &Change) -> f64 {
        let level = self.problem.level;
        let mut share: f64 = 1.0;
        for (node, [skin, wall]) in gaps.iter().enumerate() {
            let up = change.sheet[node];
            let rise: f64 = self.problem.body.as_ref().map_or(0.0, |body| {
                let modes = body.modes(level.places[node]);
                modes.iter().zip(change.pose).map(|(mode, by)| mode * by).sum()
            });
            if up > rise {
                share = share.min(SHY * skin / (up - rise));
            }
            if up > 0.0 {
                share = share.min(SHY * wall / up);
            }
        }
        share
    }

    fn moved(&self, change: &Change, share: f64) -> SheetAndPose {
        let mut state = self.state.clone();
        state.sheet.iter_mut().zip(&change.sheet).for_each(|(value, by)| *value += share * by);
        state.walls.iter_mut().zip(&change.walls).for_each(|(value, by)| *value += share * by);
        state.pose.iter_mut().zip(change.pose).for_each(|(value, by)| *value += share * by);
        state
    }

    /// The state with nodes put to their bounds that press on them.
    fn snapped(&self, forces: &Forces) -> SheetAndPose {
        let mut state = self.state.clone();
        for (node, height) in state.sheet.iter_mut().enumerate() {
            let bound = self.problem.bound(node, &state.pose).0;
            // The gap would be mu over the pressure.
            let gap = bound - *height;
            let pressure = -forces.nodes[node] / self.problem.level.areas[node];
            if gap.is_finite() && pressure * gap > 0.0 && gap < AT_BOUND * self.mu.sqrt() {
                *height = bound;
            }
        }
        self.problem.bow_to(&forces.pressures(), &mut state);
        state
    }
}
