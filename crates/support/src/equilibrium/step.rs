//! The equations of one step of Newton's method, with some nodes held.
//!
//! Held nodes go with what holds them, so the unknowns are the heights of the free nodes and the
//! pose. The matrix is that of a sheet of the present tensions. Each compartment adds two terms
//! of rank one, for its pressure and its tension; these and the pose are the border, so one
//! factorisation does for all.

use crate::linear::{Border, Bordered, Entries, Factor, SmallMatrix};

use super::energy::Forces;
use super::problem::{Hold, Problem, State, WALL_SPRING};

/// Stiffness against sinking, rolling and pitching that a body has which touches nothing, so that
/// it is no error, N/m: far below that of a cushion, which is some 10 kN/m.
const LOOSE: f64 = 1e-4;
/// Stiffness of the sheet against moving as a whole, where cells do not resist it, Pa/m. Where no
/// seam holds it, it is its fill that does, which comes later by the border. The more, the slower
/// Newton's method; 1000 is that of the slackest cover over the largest cushion.
const LOOSE_SHEET: f64 = 0.1;

/// A change of sheet and pose.
#[derive(Clone, Debug)]
pub(super) struct Change {
    /// Of the sheet at the nodes, m.
    pub(super) sheet: Vec<f64>,
    /// Of the pose.
    pub(super) pose: [f64; 3],
}

/// A load on the sheet at the nodes, N, and on the pose, N and N m.
#[derive(Clone, Debug)]
pub(super) struct Load {
    pub(super) nodes: Vec<f64>,
    pub(super) pose: [f64; 3],
}

/// What a step is made at.
pub(super) struct At<'a> {
    pub(super) problem: &'a Problem<'a>,
    pub(super) state: &'a State,
    pub(super) forces: &'a Forces,
    pub(super) holds: &'a [Hold],
    /// Further springs at the nodes; see [`Springs`].
    pub(super) springs: Option<&'a Springs>,
    /// Whether the term of the trunk is in, without which the energy is convex.
    pub(super) lean: bool,
}

/// Springs at the nodes, N/m.
pub(super) struct Springs {
    /// Between sheet and body.
    pub(super) to_body: Vec<f64>,
    /// Between sheet and ground.
    pub(super) to_ground: Vec<f64>,
}

/// Equations that are factored, with the changes under their loads.
pub(super) struct Step {
    /// For each load.
    pub(super) changes: Vec<Change>,
    /// Stiffness of the pose's unknown modes when all else follows.
    pub(super) pose_stiffness: PoseStiffness,
}

/// The stiffness of the body's pose when sheet and fill follow.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct PoseStiffness {
    /// What each of sink, roll and pitch does under unit loads on each, if not held; columns by
    /// load. None where nothing resists.
    pub(super) compliance: Option<[[f64; 3]; 3]>,
}

impl At<'_> {
    /// Factors the equations and solves for each load. None where they are singular or the energy
    /// is not convex there.
    pub(super) fn step(&self, loads: &[Load]) -> Option<Step> {
        let level = self.problem.level;
        let equations = Equations::new(self);
        let mut free = vec![false; level.len()];
        for (node, hold) in self.holds.iter().enumerate() {
            free[level.symbolic.place(node as u32)] = *hold == Hold::Free;
        }
        let factor = Factor::new(&level.symbolic, &equations.entries(), &free).ok()?;
        let (border, rights) = equations.border(loads);
        let bordered = Bordered::new(factor, border);
        let solved = bordered.solve(&rights)?;
        let changes = solved
            .nodes
            .iter()
            .zip(&solved.border)
            .map(|(nodes, border)| equations.change(nodes, border))
            .collect();
        let pose_stiffness = equations.pose_stiffness(&bordered);
        (!self.lean || pose_stiffness.is_stable()).then_some(Step { changes, pose_stiffness })
    }
}

impl PoseStiffness {
    /// Whether every small turn is resisted.
    pub(super) fn is_stable(&self) -> bool {
        let Some(c) = &self.compliance else { return false };
        // A symmetric matrix is positive where its leading minors are, which also holds for
        // modes that are held, once they are given any compliance.
        let c = |row: usize, column: usize| {
            let held = c[row][row] == 0.0 || c[column][column] == 0.0;
            if !held { c[row][column] } else { f64::from(u8::from(row == column)) }
        };
        let two = |a: usize, b: usize| c(a, a) * c(b, b) - c(a, b) * c(b, a);
        let three = c(0, 0) * two(1, 2) - c(0, 1) * (c(1, 0) * c(2, 2) - c(1, 2) * c(2, 0))
            + c(0, 2) * (c(1, 0) * c(2, 1) - c(1, 1) * c(2, 0));
        c(0, 0) > 0.0 && two(0, 1) > 0.0 && three > 0.0
    }
}

/// The equations before they are factored.
struct Equations<'a> {
    at: &'a At<'a>,
    /// The unknown modes of the pose.
    modes: Vec<usize>,
    /// Stiffness at the nodes that is not the sheet's tension, N/m.
    local: Vec<f64>,
    /// Springs between sheet and body at the nodes, N/m.
    to_body: Vec<f64>,
    /// The compartments that add a term of rank one, and whether it is the tension's.
    ranks: Vec<(usize, bool)>,
}

impl<'a> Equations<'a> {
    fn new(at: &'a At<'a>) -> Self {
        let problem = at.problem;
        let modes = match &problem.body {
            Some(body) => (0..3).filter(|mode| !body.held[*mode]).collect(),
            None => Vec::new(),
        };
        let mut ranks = Vec::new();
        for (compartment, own) in at.forces.patches.iter().enumerate() {
            if own.stiffness > 0.0 {
                ranks.push((compartment, false));
            }
            if own.tension_slope > 0.0 {
                ranks.push((compartment, true));
            }
        }
        let to_body = at.springs_to_body();
        let local = at.local_stiffness(&to_body);
        Self { at, modes, local, to_body, ranks }
    }

    /// The matrix of sheet and local stiffness, by place.
    fn entries(&self) -> Entries {
        let level = self.at.problem.level;
        let mut entries = level.symbolic.zeros();
        for (node, stiffness) in self.local.iter().enumerate() {
            entries.diagonal[level.symbolic.place(node as u32)] = *stiffness;
        }
        for (patch, own) in level.patches.iter().zip(&self.at.forces.patches) {
            for (node, stiffness) in patch.nodes.iter().zip(&patch.diagonal) {
                entries.diagonal[level.symbolic.place(*node)] += own.tension * stiffness;
            }
            for triangle in &patch.triangles {
                for (entry, between) in triangle.entries.iter().zip(triangle.between) {
                    entries.below[*entry as usize] += own.tension * between;
                }
            }
        }
        entries
    }

    /// The border, and its rows of the loads.
    fn border(&self, loads: &[Load]) -> (Border, Vec<Vec<f64>>) {
        let level = self.at.problem.level;
        let count = self.modes.len() + self.ranks.len();
        let width = count + loads.len();
        let mut border = Border {
            vectors: vec![0.0; level.len() * width],
            width,
            scale: vec![1.0; count],
            corner: SmallMatrix::zeros(count),
        };
        self.add_pose(&mut border);
        for column in self.modes.len()..count {
            self.add_rank(column, &mut border);
        }
        let mut rights = Vec::with_capacity(loads.len());
        for (at, load) in loads.iter().enumerate() {
            let mut right = vec![0.0; count];
            for (node, hold) in self.at.holds.iter().enumerate() {
                match hold {
                    Hold::Free => {
                        let place = level.symbolic.place(node as u32) * width;
                        border.vectors[place + count + at] = load.nodes[node];
                    }
                    Hold::Body => {
                        let modes = self.modes_at(node);
                        for (own, mode) in right.iter_mut().zip(&self.modes) {
                            *own += load.nodes[node] * modes[*mode];
                        }
                    }
                    Hold::Wall => {}
                }
            }
            for (own, mode) in right.iter_mut().zip(&self.modes) {
                *own += load.pose[*mode];
            }
            rights.push(right);
        }
        (border, rights)
    }

    fn modes_at(&self, node: usize) -> [f64; 3] {
        let problem = self.at.problem;
        problem.body.as_ref().map_or([0.0; 3], |body| body.modes(problem.level.places[node]))
    }

    /// Columns and rows of the pose: what the sheet's nodes feel when held nodes go with it.
    fn add_pose(&self, border: &mut Border) {
        let problem = self.at.problem;
        let Some(body) = &problem.body else { return };
        let felt = self.felt();
        for (node, hold) in self.at.holds.iter().enumerate() {
            let modes = self.modes_at(node);
            let forces = match hold {
                Hold::Wall => continue,
                Hold::Body => felt[node],
                Hold::Free => {
                    let springs = modes.map(|mode| self.to_body[node] * mode);
                    let place = problem.level.symbolic.place(node as u32) * border.width;
                    for (column, mode) in self.modes.iter().enumerate() {
                        border.vectors[place + column] = felt[node][*mode] - springs[*mode];
                    }
                    springs
                }
            };
            for (column, mode) in self.modes.iter().enumerate() {
                for (row, other) in self.modes.iter().enumerate() {
                    border.corner[[row, column]] += forces[*mode] * modes[*other];
                }
            }
        }
        for (column, mode) in self.modes.iter().enumerate() {
            border.corner[[column, column]] += LOOSE;
            if self.at.lean && *mode > 0 {
                border.corner[[column, column]] -= body.weight * body.lean;
            }
        }
    }

    /// The forces of sheet and local springs at the nodes when the held nodes go with each mode.
    fn felt(&self) -> Vec<[f64; 3]> {
        let level = self.at.problem.level;
        let moved = |node: usize| match self.at.holds[node] {
            Hold::Body => self.modes_at(node),
            Hold::Free | Hold::Wall => [0.0; 3],
        };
        let local = self.local.iter().enumerate();
        let mut felt: Vec<[f64; 3]> =
            local.map(|(node, own)| moved(node).map(|by| own * by)).collect();
        for (patch, own) in level.patches.iter().zip(&self.at.forces.patches) {
            let by: Vec<[f64; 3]> = patch.nodes.iter().map(|node| moved(*node as usize)).collect();
            if by.iter().all(|by| by[0] == 0.0) {
                continue;
            }
            for (node, bent) in patch.nodes.iter().zip(patch.bend_each(&by)) {
                for (felt, bent) in felt[*node as usize].iter_mut().zip(bent) {
                    *felt += own.tension * bent;
                }
            }
        }
        felt
    }

    /// Column and row of a compartment's pressure or tension: its own unknown is the change of
    /// that.
    fn add_rank(&self, column: usize, border: &mut Border) {
        let level = self.at.problem.level;
        let (compartment, is_tension) = self.ranks[column - self.modes.len()];
        let (patch, own) = (&level.patches[compartment], &self.at.forces.patches[compartment]);
        let (values, scale) =
            if is_tension { (&own.bent, own.tension_slope) } else { (&patch.areas, own.stiffness) };
        border.scale[column] = scale;
        border.corner[[column, column]] = -1.0;
        for (node, value) in patch.nodes.iter().zip(values) {
            match self.at.holds[*node as usize] {
                Hold::Free => {
                    border.vectors[level.symbolic.place(*node) * border.width + column] = *value;
                }
                Hold::Body => {
                    let modes = self.modes_at(*node as usize);
                    for (row, mode) in self.modes.iter().enumerate() {
                        border.corner[[row, column]] += value * modes[*mode];
                        border.corner[[column, row]] += scale * value * modes[*mode];
                    }
                }
                Hold::Wall => {}
            }
        }
    }

    /// The change of sheet and pose that a solution means.
    fn change(&self, nodes: &[f64], border: &[f64]) -> Change {
        let level = self.at.problem.level;
        let mut pose = [0.0; 3];
        for (value, mode) in border.iter().zip(&self.modes) {
            pose[*mode] = *value;
        }
        let of = |(node, hold): (usize, &Hold)| match hold {
            Hold::Free => nodes[level.symbolic.place(node as u32)],
            Hold::Wall => 0.0,
            Hold::Body => self.modes_at(node).iter().zip(pose).map(|(mode, by)| mode * by).sum(),
        };
        Change { sheet: self.at.holds.iter().enumerate().map(of).collect(), pose }
    }

    fn pose_stiffness(&self, bordered: &Bordered) -> PoseStiffness {
        let schur = bordered.schur();
        let unit =
            |at: usize| (0..schur.size()).map(|row| f64::from(u8::from(row == at))).collect();
        let loads: Vec<Vec<f64>> = (0..self.modes.len()).map(unit).collect();
        let compliance = schur.solve(&loads).map(|columns| {
            let mut compliance = [[0.0; 3]; 3];
            for (values, column) in columns.iter().zip(&self.modes) {
                for (value, row) in values.iter().zip(&self.modes) {
                    compliance[*row][*column] = *value;
                }
            }
            compliance
        });
        PoseStiffness { compliance }
    }
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
    fn local_stiffness(&self, to_body: &[f64]) -> Vec<f64> {
        let problem = self.problem;
        let mut local = to_body.to_vec();
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
