//! One step of Newton's method with some nodes held, and further ones by the same factorisation.

use crate::linear::{Bordered, Solved};

use super::bow::Bowing;
use super::energy::{Forces, PatchForces};
use super::equations::{Equations, Known, free_modes, right_of_border};
use super::problem::{Hold, Holds, RestProblem, SheetAndPose};
use super::turning::PoseStiffness;

/// A change of sheet and pose.
#[derive(Clone, Debug)]
pub(super) struct Change {
    /// Of the sheet at the nodes, m.
    pub(super) sheet: Vec<f64>,
    /// Of the nodes' unknowns: the same but where walls bow, along whose edge it goes. Empty where
    /// none do.
    pub(super) along: Vec<f64>,
    /// Of what walls sweep, m2.
    pub(super) walls: Vec<f64>,
    /// Of the pose.
    pub(super) pose: [f64; 3],
}

/// A load on the sheet at the nodes, N, on what walls sweep, Pa m, and on the pose, N and N m.
#[derive(Clone, Debug)]
pub(super) struct AppliedForces {
    pub(super) nodes: Vec<f64>,
    pub(super) walls: Vec<f64>,
    pub(super) pose: [f64; 3],
}

impl AppliedForces {
    /// What balances the slopes of an energy.
    pub(super) fn against(forces: &Forces) -> Self {
        Self {
            nodes: forces.nodes.iter().map(|force| -force).collect(),
            walls: forces.walls.iter().map(|force| -force).collect(),
            pose: forces.pose.map(|force| -force),
        }
    }
}

/// What a step is made at.
pub(super) struct StepPoint<'a> {
    pub(super) problem: &'a RestProblem<'a>,
    pub(super) state: &'a SheetAndPose,
    pub(super) forces: &'a Forces,
    pub(super) holds: &'a Holds,
    /// How walls take part, where not as what is held says.
    pub(super) bowing: Option<&'a Bowing>,
    /// Further springs at the nodes; see [`Springs`].
    pub(super) springs: Option<&'a Springs>,
}

/// Springs at the nodes, N/m.
pub(super) struct Springs {
    /// Between sheet and body.
    pub(super) to_body: Vec<f64>,
    /// Between sheet and ground.
    pub(super) to_ground: Vec<f64>,
}

/// Changes under loads, and the equations that gave them.
pub(super) struct Step {
    /// For each load.
    pub(super) changes: Vec<Change>,
    pub(super) factored: Factored,
}

/// Equations that are factored.
#[derive(Clone, Debug)]
pub(super) struct Factored {
    pub(super) bordered: Bordered,
    pub(super) modes: Vec<usize>,
    pub(super) ranks: Vec<(usize, bool)>,
    pub(super) holds: Holds,
    pub(super) bowing: Bowing,
    /// Stiffness at the nodes that is not the sheet's tension, N/m.
    springs: Vec<f64>,
    /// Tension, its slope, and stiffness of the fill of each compartment.
    patches: Vec<[f64; 3]>,
    /// Stiffness of the pose when all else follows.
    pub(super) turning: PoseStiffness,
    /// Whether the body stands, trunk and all. Where it does not, the trunk is left out of the
    /// equations, so that a step goes down.
    pub(super) stands: bool,
}

impl StepPoint<'_> {
    /// Factors the equations and solves for each load. None where they are singular.
    pub(super) fn step(&self, loads: &[AppliedForces]) -> Option<Step> {
        let level = self.problem.level;
        let equations = Equations::new(self);
        let (border, rights) = equations.border(loads);
        let (entries, free) = (equations.entries(), &equations.free);
        let mut bordered = Bordered::new(&level.symbolic, &entries, free, border).ok()?;
        let turning = PoseStiffness::of(&bordered.schur, &equations.modes)?;
        let trunk = trunk(self.problem);
        let stands = turning.stands(trunk);
        if stands {
            for (at, mode) in equations.modes.iter().enumerate() {
                bordered.schur[[at, at]] -= trunk[*mode];
            }
        }
        let factored = Factored {
            turning,
            stands,
            bordered,
            modes: equations.modes,
            ranks: equations.ranks,
            holds: self.holds.clone(),
            bowing: equations.bowing,
            springs: equations.springs.sums(),
            patches: self.forces.patches.iter().map(stiffnesses).collect(),
        };
        let solved = factored.bordered.solve(&rights)?;
        let changes = solved
            .iter()
            .zip(loads)
            .map(|(solved, load)| factored.change_of(self.problem, &factored.bowing, load, solved));
        Some(Step { changes: changes.collect(), factored })
    }
}

fn trunk(problem: &RestProblem<'_>) -> [f64; 3] {
    problem.body.as_ref().map_or([0.0; 3], |body| body.trunk())
}

/// Tension, its slope, and stiffness of the fill.
fn stiffnesses(patch_forces: &PatchForces) -> [f64; 3] {
    [patch_forces.tension, patch_forces.tension_slope, patch_forces.stiffness]
}

impl Factored {
    /// Whether they have the unknowns of a problem.
    pub(super) fn are_of(&self, problem: &RestProblem<'_>) -> bool {
        self.modes == free_modes(problem)
            && self.holds.nodes.len() == problem.level.len()
            && self.bowing.stations.len() == problem.stations().len()
    }

    /// Whether the body of a like problem stands by them too, trunk and all.
    pub(super) fn stands_in(&self, problem: &RestProblem<'_>) -> bool {
        self.stands && self.turning.stands(trunk(problem))
    }

    /// How walls take part at a state of which the equations are these but for a share of the
    /// compartments' stiffness, and twenty times that of a node's at a wall; none where they are
    /// others.
    pub(super) fn alike(&self, at: &StepPoint<'_>, share: f64) -> Option<Bowing> {
        let near = |(known, forces): (&[f64; 3], &PatchForces)| {
            let both = known.iter().zip(stiffnesses(forces));
            both.into_iter().all(|(known, now)| (now - known).abs() <= share * known)
        };
        if &self.holds != at.holds || !self.patches.iter().zip(&at.forces.patches).all(near) {
            return None;
        }
        let bowing = at.problem.bowing(at.state, at.forces, at.holds);
        let is_like = self.bowing.is_like(&bowing, 20.0 * share)
            && self.springs == Springs::of(at.problem, at.state).sums();
        is_like.then_some(bowing)
    }

    /// The change under another load at a state where walls take part like this.
    ///
    /// What is not balanced there is taken along the edges as they run there: along those of before,
    /// walls and nodes that balance each other would seem not to, and the step before would be made
    /// again.
    pub(super) fn change(
        &self,
        problem: &RestProblem<'_>,
        bowing: &Bowing,
        load: &AppliedForces,
    ) -> Option<Change> {
        let symbolic = &problem.level.symbolic;
        let mut nodes = vec![0.0; symbolic.len()];
        let forces = problem.on_unknowns(load, bowing);
        for (node, force) in forces.iter().enumerate() {
            nodes[symbolic.place(node as u32)] = *force;
        }
        let right = self.right_of_border(problem, bowing, load, &forces);
        let solved = self.bordered.solve_for(nodes, &right)?;
        Some(self.change_of(problem, bowing, load, &solved))
    }

    /// A load on the border, of which `forces` is that on the nodes' unknowns.
    pub(super) fn right_of_border(
        &self,
        problem: &RestProblem<'_>,
        bowing: &Bowing,
        load: &AppliedForces,
        forces: &[f64],
    ) -> Vec<f64> {
        let known = Known { modes: &self.modes, ranks: &self.ranks, scale: self.bordered.scale() };
        right_of_border(problem, &self.holds, bowing, load, forces, &known)
    }

    /// The change of sheet, walls and pose that a solution means.
    pub(super) fn change_of(
        &self,
        problem: &RestProblem<'_>,
        bowing: &Bowing,
        load: &AppliedForces,
        solved: &Solved,
    ) -> Change {
        let level = problem.level;
        let mut pose = [0.0; 3];
        for (value, mode) in solved.border.iter().zip(&self.modes) {
            pose[*mode] = *value;
        }
        let of = |(node, hold): (usize, &Hold)| match hold {
            Hold::Free | Hold::Bowed => solved.nodes[level.symbolic.place(node as u32)],
            Hold::Wall => 0.0,
            Hold::Body => problem.body.as_ref().map_or(0.0, |body| {
                body.modes(level.places[node]).iter().zip(pose).map(|(mode, by)| mode * by).sum()
            }),
        };
        let mut sheet: Vec<f64> = self.holds.nodes.iter().enumerate().map(of).collect();
        if bowing.scale.is_empty() {
            return Change { sheet, along: Vec::new(), walls: Vec::new(), pose };
        }
        let along = sheet.clone();
        sheet.iter_mut().zip(&bowing.scale).for_each(|(value, scale)| *value *= scale);
        let fallen = self.fallen(problem, &solved.border);
        let stations = problem.stations().iter().zip(&bowing.stations).zip(&load.walls);
        let swept = stations.map(|((station, response), force)| {
            let pressed = force - station.length * station.across(|side| fallen[side]);
            response.by_node * along[station.node as usize] + response.compliance * pressed
        });
        let walls = swept.collect();
        Change { sheet, along, walls, pose }
    }

    /// How far the pressure of each compartment falls by a border's solution, Pa.
    pub(super) fn fallen(&self, problem: &RestProblem<'_>, border: &[f64]) -> Vec<f64> {
        let mut fallen = vec![0.0; problem.level.patches.len()];
        for ((compartment, is_tension), value) in self.ranks.iter().zip(&border[self.modes.len()..])
        {
            if !is_tension {
                fallen[*compartment] = *value;
            }
        }
        fallen
    }
}
