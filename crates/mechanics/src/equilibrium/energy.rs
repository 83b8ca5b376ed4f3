//! The energy and its slopes at one state.

use super::problem::{Hold, Holds, RestProblem, SheetAndPose, WALL_SPRING};

/// Energy and slopes.
#[derive(Clone, Debug)]
pub(super) struct Forces {
    /// E, J.
    pub(super) energy: f64,
    /// dE/du at the nodes, N: what pushes the sheet down. Where the sheet is held, minus the
    /// force of the sheet on what holds it.
    pub(super) nodes: Vec<f64>,
    /// dE/dx of what walls sweep, by station, Pa m.
    pub(super) walls: Vec<f64>,
    /// dE/dq with the sheet at rest: N, N m, N m.
    pub(super) pose: [f64; 3],
    /// One for each compartment.
    pub(super) patches: Vec<PatchForces>,
}

/// What is known of a compartment at one state.
#[derive(Clone, Debug)]
pub(super) struct PatchForces {
    /// T, N/m.
    pub(super) tension: f64,
    /// dT/da, N/m3.
    pub(super) tension_slope: f64,
    /// V, m3.
    pub(super) volume: f64,
    /// p, Pa.
    pub(super) pressure: f64,
    /// -dp/dV, Pa/m3; not negative.
    pub(super) stiffness: f64,
    /// da/du at the patch's nodes, m.
    pub(super) bent: Vec<f64>,
}

impl Forces {
    /// Fill pressures of the compartments, Pa.
    pub(super) fn pressures(&self) -> Vec<f64> {
        self.patches.iter().map(|patch| patch.pressure).collect()
    }
}

impl RestProblem<'_> {
    /// Energy and slopes at a state; none where a compartment has no room for its cells.
    pub(super) fn forces(&self, state: &SheetAndPose) -> Option<Forces> {
        let count = self.level.len();
        let mut forces = Forces {
            energy: 0.0,
            nodes: vec![0.0; count],
            walls: Vec::new(),
            pose: [0.0; 3],
            patches: Vec::new(),
        };
        for (compartment, bowed) in self.bowed_volumes(&state.walls).into_iter().enumerate() {
            self.add_patch(compartment, bowed, state, &mut forces)?;
        }
        self.add_walls(&state.walls, &mut forces);
        let base = self.parameters.base_stiffness;
        let sheet = state.sheet.iter().zip(&self.level.areas).zip(&mut forces.nodes);
        for ((height, area), force) in sheet {
            if *height < 0.0 {
                forces.energy += 0.5 * base * area * height * height;
                *force += base * area * height;
            }
        }
        for node in &self.yielding {
            let by = self.stretched(*node, state);
            forces.energy += 0.5 * WALL_SPRING * by * by;
            forces.nodes[*node as usize] += WALL_SPRING * by;
        }
        self.add_body(state, &mut forces);
        Some(forces)
    }

    fn add_patch(
        &self,
        compartment: usize,
        bowed: f64,
        state: &SheetAndPose,
        forces: &mut Forces,
    ) -> Option<()> {
        let patch = &self.level.patches[compartment];
        let heights = patch.gather(&state.sheet);
        let (extra, bent) = patch.extra_area(&heights, self.parameters.small_slopes);
        let under = crate::linear::dot(&heights, &patch.areas);
        let volume = under + bowed;
        if !(volume > 0.0) {
            return None;
        }
        let cover = self.cover(patch);
        let (tension, tension_slope) = cover.tension(extra);
        let held = self.laws[compartment].pressure(volume);
        forces.energy += cover.energy(extra)
            + self.laws[compartment].energy_at(volume, held.pressure)
            + self.parameters.cover_weight * under;
        let net = self.parameters.cover_weight - held.pressure;
        for ((node, bent), area) in patch.nodes.iter().zip(&bent).zip(&patch.areas) {
            forces.nodes[*node as usize] += tension * bent + net * area;
        }
        if let Some(migration) = &self.migration {
            let stiffness = migration.stiffness[compartment];
            let mut moved = 0.0;
            for ((node, height), area) in patch.nodes.iter().zip(&heights).zip(&patch.areas) {
                let by = height - migration.unloaded[*node as usize];
                moved += area * by * by;
                forces.nodes[*node as usize] += stiffness * area * by;
            }
            forces.energy += 0.5 * stiffness * moved;
        }
        let (pressure, stiffness) = (held.pressure, -held.slope);
        let patch_forces =
            PatchForces { tension, tension_slope, volume, pressure, stiffness, bent };
        forces.patches.push(patch_forces);
        Some(())
    }

    fn add_body(&self, state: &SheetAndPose, forces: &mut Forces) {
        let Some(body) = &self.body else { return };
        let [sink, roll, _] = state.pose;
        let (trunk, eased) = (body.weight * body.lean, roll - body.at_ease);
        forces.energy += body.weight * (sink + roll * body.line[0]) - 0.5 * trunk * roll * roll;
        forces.energy += 0.5 * body.own_roll * eased * eased;
        forces.pose = [body.weight, body.roll_moment(roll), 0.0];
        let Some(tissue) = self.tissue() else { return };
        for (node, height) in state.sheet.iter().enumerate() {
            let pressed = height - self.skin(node, &state.pose);
            if pressed > 0.0 {
                let force = tissue * self.level.areas[node] * pressed;
                forces.energy += 0.5 * force * pressed;
                forces.nodes[node] += force;
                let modes = body.modes(self.level.places[node]);
                for (value, mode) in forces.pose.iter_mut().zip(modes) {
                    *value -= force * mode;
                }
            }
        }
    }

    /// What holds each node: at its bound, and pressed against it.
    pub(super) fn holds(&self, state: &SheetAndPose, forces: &Forces) -> Holds {
        let hold = |(node, height): (usize, &f64)| {
            let (bound, hold) = self.bound(node, &state.pose);
            let held = *height >= bound && forces.nodes[node] < 0.0;
            if held { hold } else { Hold::Free }
        };
        let nodes = state.sheet.iter().enumerate().map(hold).collect();
        let mut holds = Holds { nodes, walls: vec![0.0; state.walls.len()] };
        for (node, stations) in self.wall_nodes() {
            if !self.yields(node) {
                self.hold_at_walls(node, &stations, state, forces, &mut holds);
            }
        }
        holds
    }

    /// What a body feels of a node that it holds, N, with what walls pull there.
    pub(super) fn on_body(&self, state: &SheetAndPose, forces: &Forces, holds: &Holds) -> Vec<f64> {
        let mut felt = vec![0.0; state.sheet.len()];
        for (node, _) in holds.nodes.iter().enumerate().filter(|(_, hold)| **hold == Hold::Body) {
            felt[node] = -forces.nodes[node];
        }
        for (node, stations) in self.wall_nodes() {
            if holds.nodes[node] == Hold::Body {
                felt[node] = self.net_push(node, &stations, state, forces, holds);
            }
        }
        felt
    }

    /// dE/dq when the nodes that the body holds go with it: what is not balanced, N and N m; zero
    /// where the pose is held.
    pub(super) fn pose_residual(
        &self,
        state: &SheetAndPose,
        forces: &Forces,
        holds: &Holds,
    ) -> [f64; 3] {
        let Some(body) = &self.body else { return [0.0; 3] };
        let mut left = forces.pose;
        let felt = self.on_body(state, forces, holds);
        for (node, _) in holds.nodes.iter().enumerate().filter(|(_, hold)| **hold == Hold::Body) {
            let modes = body.modes(self.level.places[node]);
            for (value, mode) in left.iter_mut().zip(modes) {
                *value -= felt[node] * mode;
            }
        }
        [0, 1, 2].map(|at| if body.held[at] { 0.0 } else { left[at] })
    }

    /// The sum of the forces, without sign, on what nothing holds, N.
    pub(super) fn sheet_residual(
        &self,
        state: &SheetAndPose,
        forces: &Forces,
        holds: &Holds,
    ) -> f64 {
        let free = forces.nodes.iter().zip(&holds.nodes).filter(|(_, hold)| **hold == Hold::Free);
        let sheet: f64 = free.map(|(force, _)| force.abs()).sum();
        if state.walls.is_empty() {
            return sheet;
        }
        let bowing = self.bowing(state, forces, holds);
        let edge = |(node, stations): (usize, std::ops::Range<usize>)| {
            let loose = stations
                .clone()
                .filter(|at| holds.walls[*at] == 0.0)
                .map(|at| forces.walls[at].abs() * self.reach(&self.level.walls[at]) / self.span());
            let loose: f64 = if self.yields(node) { 0.0 } else { loose.sum() };
            let both = [&forces.nodes[..], &forces.walls[..]];
            let bowed = holds.nodes[node] == Hold::Bowed;
            loose
                + if bowed { self.unknown_force(node, stations, both, &bowing).abs() } else { 0.0 }
        };
        sheet + self.wall_nodes().map(edge).sum::<f64>()
    }
}
