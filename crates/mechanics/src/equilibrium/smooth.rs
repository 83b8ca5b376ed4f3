//! A start from a coarser mesh, smoothed: where the sheet comes off the body is then known to
//! about a node, which saves a step of Newton's method.
//!
//! Between the nodes of the coarser mesh the sheet is straight, which leaves forces that differ
//! from node to node. A few steps in which each node gives way by itself (Jacobi's method, damped)
//! take these away and hardly anything else.

use super::problem::{RestProblem, SheetAndPose};
use super::step::Springs;

/// Steps: the third gains little.
const SWEEPS: u32 = 2;
/// Share of its own way that each node goes, so that neighbours do not overshoot together.
const DAMPED: f64 = 0.7;

/// Smooths the sheet under the bounds. The pose stays.
pub(super) fn smooth(problem: &RestProblem<'_>, state: &mut SheetAndPose) {
    problem.keep(state);
    for _ in 0..SWEEPS {
        let Some(forces) = problem.forces(state) else { return };
        let mut stiffness = Springs::of(problem, state).sums();
        for (patch, patch_forces) in problem.level.patches.iter().zip(&forces.patches) {
            for (node, diagonal) in patch.nodes.iter().zip(&patch.diagonal) {
                stiffness[*node as usize] += patch_forces.tension * diagonal;
            }
        }
        for ((height, force), own) in state.sheet.iter_mut().zip(&forces.nodes).zip(&stiffness) {
            *height -= DAMPED * force / own;
        }
        problem.keep(state);
    }
}
