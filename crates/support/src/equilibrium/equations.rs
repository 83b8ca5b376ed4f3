//! The equations of one step of Newton's method before they are factored: matrix and border.
//!
//! Held nodes go with what holds them, so the unknowns are the heights of the free nodes and the
//! pose. The matrix is that of a sheet of the present tensions. Each compartment adds two terms
//! of rank one, for its pressure and its tension; these and the pose are the border, so one
//! factorisation does for all.

use crate::linear::{Border, Entries, Free, SmallMatrix};

use super::problem::{Hold, Problem, WALL_SPRING};
use super::step::{At, Load};

/// Stiffness against sinking, rolling and pitching that a body has which touches nothing, so that
/// it is no error, N/m: far below that of a cushion, which is some 10 kN/m.
const LOOSE: f64 = 1e-4;
/// Stiffness of the sheet against moving as a whole, where cells do not resist it, Pa/m. Where no
/// seam holds it, it is its fill that does, which comes later by the border. The more, the slower
/// Newton's method; 1000 is that of the slackest cover over the largest cushion.
const LOOSE_SHEET: f64 = 0.1;

pub(super) struct Equations<'a> {
    at: &'a At<'a>,
    pub(super) free: Free,
    /// The unknown modes of the pose.
    pub(super) modes: Vec<usize>,
    /// Stiffness at the nodes that is not the sheet's tension, N/m.
    pub(super) local: Vec<f64>,
    /// Springs between sheet and body at the nodes, N/m.
    to_body: Vec<f64>,
    /// The compartments that add a term of rank one, and whether it is the tension's.
    ranks: Vec<(usize, bool)>,
}

impl<'a> Equations<'a> {
    pub(super) fn new(at: &'a At<'a>) -> Self {
        let mut ranks = Vec::new();
        for (compartment, own) in at.forces.patches.iter().enumerate() {
            if own.stiffness > 0.0 {
                ranks.push((compartment, false));
            }
            if own.tension_slope > 0.0 {
                ranks.push((compartment, true));
            }
        }
        let symbolic = &at.problem.level.symbolic;
        let mut free = vec![false; symbolic.len()];
        for (node, hold) in at.holds.iter().enumerate() {
            free[symbolic.place(node as u32)] = *hold == Hold::Free;
        }
        let free = Free::new(free.into_iter());
        let to_body = at.springs_to_body();
        let local = at.local_stiffness();
        Self { at, free, modes: free_modes(at.problem), local, to_body, ranks }
    }

    /// The matrix of sheet and local stiffness, by place.
    pub(super) fn entries(&self) -> Entries {
        let tensions = self.at.forces.patches.iter().map(|own| own.tension);
        self.at.problem.level.stiffness(tensions, &self.local)
    }

    /// For each node where its row begins in a border so wide; nothing for one that is not free.
    fn rows(&self, width: usize) -> Vec<usize> {
        let symbolic = &self.at.problem.level.symbolic;
        let row = |(node, hold): (usize, &Hold)| match hold {
            Hold::Free => self.free.row(symbolic.place(node as u32)) * width,
            Hold::Wall | Hold::Body => usize::MAX,
        };
        self.at.holds.iter().enumerate().map(row).collect()
    }

    /// The border, and its rows of the loads.
    pub(super) fn border(&self, loads: &[Load]) -> (Border, Vec<Vec<f64>>) {
        let count = self.modes.len() + self.ranks.len();
        let width = count + loads.len();
        let mut border = Border {
            vectors: vec![0.0; self.free.count * width],
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
            for ((force, row), hold) in load.nodes.iter().zip(&rows).zip(self.at.holds) {
                if *hold == Hold::Free {
                    border.vectors[row + count + at] = *force;
                }
            }
        }
        let right = |load: &Load| {
            let mut right = right_of_pose(self.at.problem, self.at.holds, &self.modes, load);
            right.resize(count, 0.0);
            right
        };
        (border, loads.iter().map(right).collect())
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
        for (node, hold) in self.at.holds.iter().enumerate() {
            match hold {
                Hold::Body => pose.add_spring(self.local[node], self.modes_at(node), None),
                Hold::Free if self.to_body[node] > 0.0 => {
                    pose.add_spring(self.to_body[node], self.modes_at(node), Some(rows[node]));
                }
                Hold::Free | Hold::Wall => {}
            }
        }
        for (patch, own) in self.at.problem.level.patches.iter().zip(&self.at.forces.patches) {
            for ([a, b], unit) in patch.springs() {
                let stiffness = own.tension * unit;
                match [self.at.holds[a], self.at.holds[b]] {
                    [Hold::Body, Hold::Body] => {
                        let (from, to) = (self.modes_at(a), self.modes_at(b));
                        let by = [0.0, to[1] - from[1], to[2] - from[2]];
                        pose.add_spring(stiffness, by, None);
                    }
                    [Hold::Body, other] => {
                        let row = (other == Hold::Free).then(|| rows[b]);
                        pose.add_spring(stiffness, self.modes_at(a), row);
                    }
                    [other, Hold::Body] => {
                        let row = (other == Hold::Free).then(|| rows[a]);
                        pose.add_spring(stiffness, self.modes_at(b), row);
                    }
                    _ => {}
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
        let (patch, own) = (&level.patches[compartment], &self.at.forces.patches[compartment]);
        let (values, scale) =
            if is_tension { (&own.bent, own.tension_slope) } else { (&patch.areas, own.stiffness) };
        border.scale[column] = scale;
        border.corner[[column, column]] = -1.0;
        let mut moved = [0.0; 3];
        for (node, value) in patch.nodes.iter().zip(values) {
            let node = *node as usize;
            match self.at.holds[node] {
                Hold::Free => border.vectors[rows[node] + column] = *value,
                Hold::Body => {
                    let modes = self.modes_at(node);
                    moved.iter_mut().zip(modes).for_each(|(own, mode)| *own += value * mode);
                }
                Hold::Wall => {}
            }
        }
        for (row, mode) in self.modes.iter().enumerate() {
            border.corner[[row, column]] += moved[*mode];
            border.corner[[column, row]] += scale * moved[*mode];
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
    fn add_spring(&mut self, stiffness: f64, by: [f64; 3], free: Option<usize>) {
        for (row, one) in self.corner.iter_mut().zip(by) {
            row.iter_mut().zip(by).for_each(|(own, other)| *own += stiffness * one * other);
        }
        if let Some(row) = free {
            let own = self.border.vectors[row..].iter_mut().zip(self.modes);
            own.for_each(|(own, mode)| *own -= stiffness * by[*mode]);
        }
    }
}

/// The modes of the pose that are not held.
fn free_modes(problem: &Problem<'_>) -> Vec<usize> {
    let held = problem.body.as_ref().map_or([true; 3], |body| body.held);
    (0..3).filter(|mode| !held[*mode]).collect()
}

/// What a load is on each of the modes: on the body, and on the nodes that go with it.
pub(super) fn right_of_pose(
    problem: &Problem<'_>,
    holds: &[Hold],
    modes: &[usize],
    load: &Load,
) -> Vec<f64> {
    let mut whole = load.pose;
    if let Some(body) = &problem.body {
        for (node, _) in holds.iter().enumerate().filter(|(_, hold)| **hold == Hold::Body) {
            let by = body.modes(problem.level.places[node]);
            whole.iter_mut().zip(by).for_each(|(own, by)| *own += load.nodes[node] * by);
        }
    }
    modes.iter().map(|mode| whole[*mode]).collect()
}

impl At<'_> {
    /// Springs between sheet and body, N/m: of soft tissue that is pressed, and further ones.
    fn springs_to_body(&self) -> Vec<f64> {
        let problem = self.problem;
        let mut to_body = vec![0.0; problem.level.len()];
        if let (Some(tissue), Some(_)) = (problem.tissue(), &problem.body) {
            for (node, height) in self.state.sheet.iter().enumerate() {
                if *height > problem.skin(node, &self.state.pose) {
                    to_body[node] = tissue * problem.level.areas[node];
                }
            }
        }
        if let Some(springs) = self.springs {
            to_body.iter_mut().zip(&springs.to_body).for_each(|(own, more)| *own += more);
        }
        to_body
    }

    /// Stiffness at the nodes that is not the sheet's tension, N/m.
    pub(super) fn local_stiffness(&self) -> Vec<f64> {
        let problem = self.problem;
        let mut local = self.springs_to_body();
        for (node, height) in self.state.sheet.iter().enumerate() {
            if *height < 0.0 {
                local[node] += problem.parameters.base_stiffness * problem.level.areas[node];
            }
        }
        for node in &problem.yielding {
            if problem.stretched(*node, self.state) > 0.0 {
                local[*node as usize] += WALL_SPRING;
            }
        }
        if let Some(springs) = self.springs {
            local.iter_mut().zip(&springs.to_ground).for_each(|(own, more)| *own += more);
        }
        for (compartment, patch) in problem.level.patches.iter().enumerate() {
            let migration = problem.migration.as_ref();
            let stiffness = migration.map_or(0.0, |migration| migration.stiffness[compartment]);
            for (node, area) in patch.nodes.iter().zip(&patch.areas) {
                local[*node as usize] += stiffness.max(LOOSE_SHEET) * area;
            }
        }
        local
    }
}
