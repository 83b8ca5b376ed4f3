//! Walls that come to their limit within a step.
//!
//! A slack wall bows to the full under a difference of pressure that is small beside what a step
//! changes. A straight line foresees that it sweeps far more than it can, and wrong pressures with
//! that; then so little of the step leads down that it brings nothing. What such walls sweep is
//! known from the changes of pressure, and moves along no node: so a step is found with each of them
//! between its limits, from the border's small equations alone, which have a kink for each.
//!
//! These are monotone, and Newton's method for them falls in every row, at least for a share of its
//! step: see Pang, Newton's method for B-differentiable equations, Math. Oper. Res. 15 (1990).

use crate::numerics::SmallMatrix;

use super::problem::{Hold, RestProblem, SheetAndPose};
use super::step::{AppliedForces, Change, Factored, StepPoint};

/// What a wall may go beyond its limit, as a share: rounding.
const BEYOND: f64 = 1e-9;
/// Times that the small equations are solved before it is given up, and the step shortened instead.
const MOST_TRIES: u32 = 40;
/// Times that a step of theirs is halved before it is given up.
const MOST_HALVINGS: u32 = 40;
/// The least fall of what is left, as a share of what a whole step were to make.
const ENOUGH_FALL: f64 = 1e-3;

/// Equations of the border for walls that sweep what they do at some border.
struct Piece {
    matrix: SmallMatrix,
    right: Vec<f64>,
    /// The walls beyond their limits, and what each sweeps till there, m2.
    stopped: Vec<(usize, f64)>,
}

/// A step with its walls, before they stop.
struct Loose<'a> {
    factored: &'a Factored,
    at: &'a StepPoint<'a>,
    load: &'a AppliedForces,
    right: &'a [f64],
    limits: Vec<f64>,
}

impl Factored {
    /// The change under the load that came with the equations, with walls that stop at their limits.
    /// None where none comes to its limit, or it is not found.
    pub(super) fn change_to_limits(
        &self,
        at: &StepPoint<'_>,
        load: &AppliedForces,
    ) -> Option<Change> {
        let forces = at.problem.on_unknowns(load, &self.bowing);
        let right = self.right_of_border(at.problem, &self.bowing, load, &forces);
        let limits = at.problem.wall_limits(at.state, &at.holds.nodes);
        let loose = Loose { factored: self, at, load, right: &right, limits };
        let (border, Piece { stopped, .. }) = loose.settled()?;
        if stopped.is_empty() {
            return None;
        }
        let solved = self.bordered.solved(0, border);
        let mut change = self.change_of(at.problem, &self.bowing, load, &solved);
        stopped.into_iter().for_each(|(station, by)| change.walls[station] = by);
        Some(change)
    }
}

impl Loose<'_> {
    /// The border with which every wall is between its limits, and the equations there. None where it
    /// is not found.
    fn settled(&self) -> Option<(Vec<f64>, Piece)> {
        let mut border = vec![0.0; self.right.len()];
        let mut piece = self.piece(&border);
        for _ in 0..MOST_TRIES {
            let to = piece.matrix.solve(std::slice::from_ref(&piece.right))?.swap_remove(0);
            let ahead = self.piece(&to);
            if ahead.stopped == piece.stopped {
                return Some((to, piece));
            }
            (border, piece) = self.nearer(&border, &piece, &to)?;
        }
        None
    }

    /// A border on the way to another, of which less is left, and the equations there. None where there
    /// is none.
    fn nearer(&self, border: &[f64], piece: &Piece, to: &[f64]) -> Option<(Vec<f64>, Piece)> {
        let left = self.left(piece, border);
        let mut share = 1.0;
        (0..MOST_HALVINGS).find_map(|_| {
            let on_the_way = border.iter().zip(to).map(|(from, to)| from + share * (to - from));
            let next: Vec<f64> = on_the_way.collect();
            let ahead = self.piece(&next);
            let is_nearer = self.left(&ahead, &next) <= (1.0 - ENOUGH_FALL * share) * left;
            share *= 0.5;
            is_nearer.then_some((next, ahead))
        })
    }

    /// What is left of the compartments' equations at a border, as a sum of squares, Pa2.
    fn left(&self, piece: &Piece, border: &[f64]) -> f64 {
        let first = self.factored.modes.len();
        let product = |row: usize| -> f64 {
            border
                .iter()
                .enumerate()
                .map(|(column, value)| piece.matrix[[row, column]] * value)
                .sum()
        };
        (first..border.len()).map(|row| (product(row) - piece.right[row]).powi(2)).sum()
    }

    /// The walls that a border takes beyond their limits, and what each sweeps till there.
    fn beyond(&self, border: &[f64]) -> Vec<(usize, f64)> {
        let fallen = self.factored.fallen(self.at.problem, border);
        let stations = self.at.problem.stations().iter().zip(&self.factored.bowing.stations);
        let loose = stations.enumerate().filter(|(_, (_, response))| response.compliance > 0.0);
        let beyond = loose.filter_map(|(own, (station, response))| {
            let pressed =
                self.load.walls[own] - station.length * station.across(|side| fallen[side]);
            let swept = self.at.state.walls[own];
            let (to, limit) = (swept + response.compliance * pressed, self.limits[own]);
            (to.abs() > limit * (1.0 + BEYOND)).then(|| (own, limit.copysign(to) - swept))
        });
        beyond.collect()
    }

    /// The equations at a border: straight until another wall comes to a limit.
    fn piece(&self, border: &[f64]) -> Piece {
        let Factored { bordered, modes, ranks, bowing, .. } = self.factored;
        let stopped = self.beyond(border);
        let (mut matrix, mut right) = (bordered.schur.clone(), self.right.to_vec());
        let row =
            |side: usize| Some(modes.len() + ranks.iter().position(|rank| *rank == (side, false))?);
        for (own, by) in &stopped {
            let station = &self.at.problem.stations()[*own];
            let compliance = bowing.stations[*own].compliance;
            for (to, sign) in station.signed_sides() {
                let Some(to) = row(to) else { continue };
                let scale = bordered.scale()[to] * sign * station.length;
                right[to] += scale * (compliance * self.load.walls[*own] - by);
                for (from, sign) in station.signed_sides() {
                    if let Some(from) = row(from) {
                        matrix[[to, from]] += scale * sign * station.length * compliance;
                    }
                }
            }
        }
        Piece { matrix, right: bordered.known(0, &right), stopped }
    }
}

impl RestProblem<'_> {
    /// The greatest area that each wall can sweep under its seam as it stands, m2.
    pub(super) fn wall_limits(&self, state: &SheetAndPose, holds: &[Hold]) -> Vec<f64> {
        let mut limits = vec![0.0; self.stations().len()];
        for (node, stations) in self.wall_nodes() {
            let room = match holds[node] {
                Hold::Bowed => self.turn(&stations, &state.walls)[0].abs(),
                Hold::Free | Hold::Wall | Hold::Body => self.room(state.sheet[node]),
            };
            for at in stations {
                limits[at] = room * self.reach(&self.level.walls[at]);
            }
        }
        limits
    }
}
