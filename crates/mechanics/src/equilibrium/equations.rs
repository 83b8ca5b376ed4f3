//! The equations of one step of Newton's method before they are factored: matrix and border.
//!
//! Held nodes go with what holds them, so the unknowns are the heights of the free nodes and the
//! pose. The matrix is that of a sheet of the present tensions. Each compartment adds two terms
//! of rank one, for its pressure and its tension; these and the pose are the border, so one
//! factorisation does for all.

use std::borrow::Cow;

use crate::linear::{Border, Entries, Free};
use crate::numerics::SmallMatrix;

use super::bow::Bowing;
use super::level::{Patch, Tangent};
use super::problem::{Hold, Holds, RestProblem, SheetAndPose, WALL_SPRING};
use super::step::{AppliedForces, Springs, StepPoint};

/// Stiffness against sinking, rolling and pitching that a body has which touches nothing, so that
/// it is no error, N/m: far below that of a cushion, which is some 10 kN/m.
const LOOSE: f64 = 1e-4;
/// Stiffness of the sheet against moving as a whole, where cells do not resist it, Pa/m. Where no
/// seam holds it, it is its fill that does, which comes later by the border. The more, the slower
/// Newton's method; 1000 is that of the slackest cover over the largest cushion.
const LOOSE_SHEET: f64 = 0.1;

/// The equations, before they are written down by place.
pub(super) struct Equations<'a> {
    at: &'a StepPoint<'a>,
    pub(super) free: Free,
    /// The unknown modes of the pose.
    pub(super) modes: Vec<usize>,
    /// Stiffness at the nodes that is not the sheet's tension.
    pub(super) springs: Springs,
    /// How walls take part.
    pub(super) bowing: Bowing,
    tangents: Vec<Cow<'a, Tangent>>,
    /// The compartments that add a term of rank one, and whether it is the tension's.
    pub(super) ranks: Vec<(usize, bool)>,
}

impl<'a> Equations<'a> {
    pub(super) fn new(at: &'a StepPoint<'a>) -> Self {
        let mut ranks = Vec::new();
        for (compartment, patch_forces) in at.forces.patches.iter().enumerate() {
            if patch_forces.stiffness > 0.0 {
                ranks.push((compartment, false));
            }
            if patch_forces.tension_slope > 0.0 {
                ranks.push((compartment, true));
            }
        }
        let free = at.problem.level.symbolic.free(|node| at.holds.nodes[node].is_unknown());
        let own = Springs::of(at.problem, at.state);
        let springs = if let Some(more) = at.springs { own.with(more) } else { own };
        let bowing = match at.bowing {
            Some(bowing) => bowing.clone(),
            None => at.problem.bowing(at.state, at.forces, at.holds),
        };
        let tangents = at.problem.tangents(at.state);
        Self { at, free, modes: free_modes(at.problem), springs, bowing, tangents, ranks }
    }

    /// The matrix of sheet and local stiffness, by place.
    pub(super) fn entries(&self) -> Entries {
        let level = self.at.problem.level;
        let tensions = self.at.forces.patches.iter().map(|patch_forces| patch_forces.tension);
        let tangents = self.tangents.iter().map(Cow::as_ref);
        let mut entries = level.stiffness(tensions.zip(tangents), &self.springs.sums());
        if !self.bowing.scale.is_empty() {
            level.symbolic.scale(&mut entries, &self.bowing.scale);
            for (node, stiffness) in self.bowing.springs.iter().enumerate() {
                entries.diagonal[level.symbolic.place(node as u32)] += stiffness;
            }
        }
        entries
    }

    /// For each node where its row begins in a border so wide; nothing for one that is not free.
    fn rows(&self, width: usize) -> Vec<usize> {
        let symbolic = &self.at.problem.level.symbolic;
        let row = |(node, hold): (usize, &Hold)| match hold {
            Hold::Free | Hold::Bowed => self.free.row(symbolic.place(node as u32)) * width,
            Hold::Wall | Hold::Body => usize::MAX,
        };
        self.at.holds.nodes.iter().enumerate().map(row).collect()
    }

    /// The border, and its rows of the loads.
    pub(super) fn border(&self, loads: &[AppliedForces]) -> (Border, Vec<Vec<f64>>) {
        let count = self.modes.len() + self.ranks.len();
        let width = count + loads.len();
        let mut border = Border {
            vectors: self.at.problem.level.symbolic.zero_border(self.free.count, width),
            width,
            scale: vec![1.0; count],
            corner: SmallMatrix::zeros(count),
        };
        let rows = self.rows(width);
        self.add_pose(&rows, &mut border);
        for column in self.modes.len()..count {
            self.add_rank(column, &rows, &mut border);
        }
        for (at, load) in loads.iter().enumerate() {
            let forces = self.at.problem.on_unknowns(load, &self.bowing);
            for ((force, row), hold) in forces.iter().zip(&rows).zip(&self.at.holds.nodes) {
                if hold.is_unknown() {
                    border.vectors[row + count + at] = *force;
                }
            }
        }
        let right = |load: &AppliedForces| {
            let forces = self.at.problem.on_unknowns(load, &self.bowing);
            let known = Known { modes: &self.modes, ranks: &self.ranks, scale: &border.scale };
            right_of_border(self.at.problem, self.at.holds, &self.bowing, load, &forces, &known)
        };
        let rights = loads.iter().map(right).collect();
        (border, rights)
    }

    fn modes_at(&self, node: usize) -> [f64; 3] {
        let problem = self.at.problem;
        problem.body.as_ref().map_or([0.0; 3], |body| body.modes(problem.level.places[node]))
    }

    /// Columns and rows of the pose: what the free nodes and the body feel when the body moves, and
    /// the nodes that it holds with it.
    fn add_pose(&self, rows: &[usize], border: &mut Border) {
        if self.at.problem.body.is_none() {
            return;
        }
        let mut pose = PoseColumns { corner: [[0.0; 3]; 3], modes: &self.modes, border };
        let Springs { to_body, to_ground } = &self.springs;
        let holds = &self.at.holds.nodes;
        let row =
            |node: usize| holds[node].is_unknown().then(|| (rows[node], self.bowing.scale(node)));
        let bowed = |node: usize| self.bowing.springs.get(node).copied().unwrap_or(0.0);
        for (node, hold) in holds.iter().enumerate() {
            match hold {
                // Its springs to the body go with it.
                Hold::Body => {
                    pose.add_spring(to_ground[node] + bowed(node), self.modes_at(node), None);
                }
                Hold::Free | Hold::Bowed if to_body[node] > 0.0 => {
                    pose.add_spring(to_body[node], self.modes_at(node), row(node));
                }
                Hold::Free | Hold::Bowed | Hold::Wall => {}
            }
        }
        let patches = self.at.problem.level.patches.iter().zip(&self.tangents);
        for ((patch, tangent), patch_forces) in patches.zip(&self.at.forces.patches) {
            for ([a, b], unit) in patch.springs(tangent) {
                let stiffness = patch_forces.tension * unit;
                match [a, b].map(|node| holds[node] == Hold::Body) {
                    [true, true] => {
                        let (from, to) = (self.modes_at(a), self.modes_at(b));
                        let by = [0, 1, 2].map(|mode| to[mode] - from[mode]);
                        pose.add_spring(stiffness, by, None);
                    }
                    [true, false] => pose.add_spring(stiffness, self.modes_at(a), row(b)),
                    [false, true] => pose.add_spring(stiffness, self.modes_at(b), row(a)),
                    [false, false] => {}
                }
            }
        }
        let corner = pose.corner;
        for (column, mode) in self.modes.iter().enumerate() {
            for (row, other) in self.modes.iter().enumerate() {
                border.corner[[row, column]] += corner[*other][*mode];
            }
            border.corner[[column, column]] += LOOSE;
        }
    }

    /// Column and row of a compartment's pressure or tension: its own unknown is the change of
    /// that.
    fn add_rank(&self, column: usize, rows: &[usize], border: &mut Border) {
        let level = self.at.problem.level;
        let (compartment, is_tension) = self.ranks[column - self.modes.len()];
        let (patch, patch_forces) =
            (&level.patches[compartment], &self.at.forces.patches[compartment]);
        let (values, scale) = if is_tension {
            (&patch_forces.bent, patch_forces.tension_slope)
        } else {
            (&patch.areas, patch_forces.stiffness)
        };
        border.scale[column] = scale;
        border.corner[[column, column]] = -1.0;
        let mut moved = [0.0; 3];
        let mut add = |node: usize, value: f64, by_node: f64| match self.at.holds.nodes[node] {
            Hold::Free | Hold::Bowed => {
                border.vectors[rows[node] + column] += value * self.bowing.scale(node) + by_node;
            }
            Hold::Body => {
                let modes = self.modes_at(node);
                moved
                    .iter_mut()
                    .zip(modes)
                    .for_each(|(sum, mode)| *sum += (value + by_node) * mode);
            }
            Hold::Wall => {}
        };
        for (node, value) in patch.nodes.iter().zip(values) {
            add(*node as usize, *value, 0.0);
        }
        if !is_tension {
            let stations = self.at.problem.stations().iter().zip(&self.bowing.stations);
            for (station, response) in stations {
                let sides = station.signed_sides().filter(|(side, _)| *side == compartment);
                sides.for_each(|(_, sign)| {
                    let swept = sign * station.length * response.by_node;
                    add(station.node as usize, 0.0, swept);
                });
            }
            self.add_compliance(column, border);
        }
        for (row, mode) in self.modes.iter().enumerate() {
            border.corner[[row, column]] += moved[*mode];
            border.corner[[column, row]] += scale * moved[*mode];
        }
    }
}

impl Equations<'_> {
    /// How the pressures of neighbours move the walls between that can bow.
    fn add_compliance(&self, column: usize, border: &mut Border) {
        let (first, compartment) = (self.modes.len(), self.ranks[column - self.modes.len()].0);
        let stations = self.at.problem.stations().iter().zip(&self.bowing.stations);
        for (station, response) in stations.filter(|(_, response)| response.compliance > 0.0) {
            let own = station.signed_sides().find(|(side, _)| *side == compartment);
            let Some((_, own)) = own else { continue };
            let softer = station.length * station.length * response.compliance;
            for (side, sign) in station.signed_sides() {
                if let Some(at) = self.ranks.iter().position(|rank| *rank == (side, false)) {
                    border.corner[[column, first + at]] -=
                        border.scale[column] * own * sign * softer;
                }
            }
        }
    }
}

/// The columns of the pose while they are gathered.
struct PoseColumns<'a> {
    /// What the body feels, by modes.
    corner: [[f64; 3]; 3],
    modes: &'a [usize],
    border: &'a mut Border,
}

impl PoseColumns<'_> {
    /// Adds a spring of which one end goes with the body in each mode, or both do and this is the
    /// difference; the other end is the free node of which the row is given, if one is free.
    #[inline]
    fn add_spring(&mut self, stiffness: f64, by: [f64; 3], free: Option<(usize, f64)>) {
        for (row, one) in self.corner.iter_mut().zip(by) {
            row.iter_mut().zip(by).for_each(|(value, other)| *value += stiffness * one * other);
        }
        if let Some((row, scale)) = free {
            let entries = self.border.vectors[row..].iter_mut().zip(self.modes);
            entries.for_each(|(value, mode)| *value -= scale * stiffness * by[*mode]);
        }
    }
}

/// The modes of the pose that are not held.
pub(super) fn free_modes(problem: &RestProblem<'_>) -> Vec<usize> {
    let held = problem.body.as_ref().map_or([true; 3], |body| body.held);
    (0..3).filter(|mode| !held[*mode]).collect()
}

/// The unknowns of the border.
pub(super) struct Known<'a> {
    pub(super) modes: &'a [usize],
    pub(super) ranks: &'a [(usize, bool)],
    pub(super) scale: &'a [f64],
}

/// What a load is on the border: on the body with the nodes that go with it, and what it makes
/// compartments gain by walls that can bow. `forces` is the load on the nodes' unknowns.
pub(super) fn right_of_border(
    problem: &RestProblem<'_>,
    holds: &Holds,
    bowing: &Bowing,
    load: &AppliedForces,
    forces: &[f64],
    known: &Known<'_>,
) -> Vec<f64> {
    let mut total = load.pose;
    if let Some(body) = &problem.body {
        for (node, _) in holds.nodes.iter().enumerate().filter(|(_, hold)| **hold == Hold::Body) {
            let by = body.modes(problem.level.places[node]);
            total.iter_mut().zip(by).for_each(|(value, by)| *value += forces[node] * by);
        }
    }
    let mut right: Vec<f64> = known.modes.iter().map(|mode| total[*mode]).collect();
    let mut gained = vec![0.0; problem.level.patches.len()];
    let stations = problem.stations().iter().zip(&bowing.stations).zip(&load.walls);
    for ((station, response), force) in stations {
        for (side, sign) in station.signed_sides() {
            gained[side] += sign * station.length * response.compliance * force;
        }
    }
    for (at, (compartment, is_tension)) in known.ranks.iter().enumerate() {
        let gained = if *is_tension { 0.0 } else { gained[*compartment] };
        right.push(-known.scale[known.modes.len() + at] * gained);
    }
    right
}

impl RestProblem<'_> {
    /// The stiffness of each compartment's sheet under unit tension.
    pub(super) fn tangents(&self, state: &SheetAndPose) -> Vec<Cow<'_, Tangent>> {
        let small = self.parameters.small_slopes;
        let of = |patch: &'_ Patch| patch.gather(&state.sheet);
        let patches = self.level.patches.iter();
        patches.map(|patch| patch.tangent(&of(patch), small)).collect()
    }

    /// A load on the nodes' unknowns, N.
    pub(super) fn on_unknowns<'l>(
        &self,
        load: &'l AppliedForces,
        bowing: &Bowing,
    ) -> Cow<'l, [f64]> {
        if bowing.scale.is_empty() {
            return Cow::Borrowed(&load.nodes);
        }
        let mut forces = load.nodes.clone();
        for (node, stations) in self.wall_nodes() {
            forces[node] = self.unknown_force(node, stations, [&load.nodes, &load.walls], bowing);
        }
        Cow::Owned(forces)
    }

    /// Springs between sheet and body, N/m: of soft tissue that is pressed.
    pub(super) fn springs_to_body(&self, state: &SheetAndPose) -> Vec<f64> {
        let mut to_body = vec![0.0; self.level.len()];
        if let (Some(tissue), Some(_)) = (self.tissue(), &self.body) {
            for (node, height) in state.sheet.iter().enumerate() {
                if *height > self.skin(node, &state.pose) {
                    to_body[node] = tissue * self.level.areas[node];
                }
            }
        }
        to_body
    }

    /// Stiffness at the nodes that is neither the sheet's tension nor between sheet and body, N/m.
    pub(super) fn springs_to_ground(&self, state: &SheetAndPose) -> Vec<f64> {
        let mut to_ground = vec![0.0; self.level.len()];
        for (node, height) in state.sheet.iter().enumerate() {
            if *height < 0.0 {
                to_ground[node] = self.parameters.base_stiffness * self.level.areas[node];
            }
        }
        for node in &self.yielding {
            if self.stretched(*node, state) > 0.0 {
                to_ground[*node as usize] += WALL_SPRING;
            }
        }
        for (compartment, patch) in self.level.patches.iter().enumerate() {
            let migration = self.migration.as_ref();
            let stiffness = migration.map_or(0.0, |migration| migration.stiffness[compartment]);
            for (node, area) in patch.nodes.iter().zip(&patch.areas) {
                to_ground[*node as usize] += stiffness.max(LOOSE_SHEET) * area;
            }
        }
        to_ground
    }
}

impl Springs {
    /// Those of a state.
    pub(super) fn of(problem: &RestProblem<'_>, state: &SheetAndPose) -> Self {
        Self {
            to_body: problem.springs_to_body(state),
            to_ground: problem.springs_to_ground(state),
        }
    }

    /// With further ones.
    fn with(mut self, more: &Self) -> Self {
        let add = |sums: &mut [f64], more: &[f64]| {
            sums.iter_mut().zip(more).for_each(|(value, more)| *value += more);
        };
        add(&mut self.to_body, &more.to_body);
        add(&mut self.to_ground, &more.to_ground);
        self
    }

    /// The stiffness of both kinds together at each node.
    pub(super) fn sums(&self) -> Vec<f64> {
        self.to_body.iter().zip(&self.to_ground).map(|(one, other)| one + other).collect()
    }
}
