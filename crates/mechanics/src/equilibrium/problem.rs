//! What is minimised: one cushion, one fill and, where loaded, one body, on one mesh.
//!
//! ```text
//! E = sum_i [ Phi_i(a_i) + Psi_i(V_i) ] + w int u + sum_i k_i/2 int_i (u-u0)^2 + k_b/2 int (-u)_+^2
//!     + W (z + roll x_W + pitch (y_W - y_c)) - W H roll^2/2
//! subject to   u <= b = b0 + z + roll x + pitch (y - y_c)      and   u <= h on every seam
//! ```
//!
//! The pivot is put under the load: y_c = y_W. With soft tissue the body is a spring instead:
//! k_t/2 int (u - b)_+^2 is what `u <= b + s, s >= 0, k_t/2 int s^2` comes to. Integrals of what
//! is not linear in u are sums over the nodes with their areas.

use crate::cover::Cover;
use crate::fill::FillLaw;
use crate::parameters::Parameters;

use super::level::{Patch, SolverMesh};

/// One fill and body on one mesh.
#[derive(Clone)]
pub(super) struct RestProblem<'a> {
    pub(super) level: &'a SolverMesh,
    pub(super) parameters: &'a Parameters,
    /// Height of the seams, m.
    pub(super) wall: f64,
    /// The cells of each compartment.
    pub(super) laws: &'a [FillLaw],
    /// How cells resist being moved; none in the unloaded cushion.
    pub(super) migration: Option<Migration<'a>>,
    pub(super) body: Option<BodyOverMesh<'a>>,
    /// Seam nodes whose wall gives way a little, in rising order: see [`WALL_SPRING`].
    pub(super) yielding: Vec<u32>,
}

/// Stiffness of a wall at a node that wall and body hold at once, N/m.
///
/// There the least of the two bounds has a kink in the pose: with the node on the wall the body
/// sinks below it, with the node on the body it rises above, and the active set goes to and fro
/// between the two for ever. A wall that gives way under the force on one node, some tenths of a
/// newton, by less than a micrometre has no kink.
pub(super) const WALL_SPRING: f64 = 1e6;

/// Cells do not flow like water: they push back where the sheet leaves its unloaded shape.
#[derive(Clone)]
pub(super) struct Migration<'a> {
    /// k_i, Pa/m.
    pub(super) stiffness: Vec<f64>,
    /// u0, m.
    pub(super) unloaded: &'a [f64],
}

/// The body on the cushion.
#[derive(Clone, Copy)]
pub(super) struct BodyOverMesh<'a> {
    /// b0 at the nodes, m; infinite where there is no body.
    pub(super) underside: &'a [f64],
    /// k_t, Pa/m; then b0 is the skin without load. None where the body is rigid.
    pub(super) tissue: Option<f64>,
    /// W, N.
    pub(super) weight: f64,
    /// x_W and y_W, m.
    pub(super) line: [f64; 2],
    /// H, m.
    pub(super) lean: f64,
    /// See [`crate::Load::own_roll_stiffness`], N m per radian.
    pub(super) own_roll: f64,
    /// See [`crate::Load::roll_at_ease`].
    pub(super) at_ease: f64,
    /// Which of sink, roll and pitch are held.
    pub(super) held: [bool; 3],
}

/// Where the sheet and the body are.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct SheetAndPose {
    /// Height of the sheet at the nodes, m.
    pub(super) sheet: Vec<f64>,
    /// What walls that bow sweep for each length of them, by station, m2; empty where none bow.
    pub(super) walls: Vec<f64>,
    /// Height of the body's reference point in m, roll and pitch as slopes.
    pub(super) pose: [f64; 3],
}

/// What holds a node of the sheet down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Hold {
    /// Nothing.
    Free,
    /// The wall under a seam.
    Wall,
    /// A wall that bows: the node is at the edge of what its walls let it.
    Bowed,
    /// The body.
    Body,
}

impl Hold {
    /// Whether the node has an unknown of its own.
    pub(super) fn is_unknown(self) -> bool {
        matches!(self, Self::Free | Self::Bowed)
    }
}

/// What holds the nodes, and which walls.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Holds {
    pub(super) nodes: Vec<Hold>,
    /// By station: the way in which a wall is bowed that cannot bow farther, 1 or -1; 0 where it
    /// can. That of the single wall of a node that goes along its edge is 1: its turn has the sign.
    pub(super) walls: Vec<f64>,
}

impl BodyOverMesh<'_> {
    /// What the leaning trunk takes from the stiffness in each mode, less what the body itself adds to
    /// it, N m per radian: see [`crate::Load::trunk_height`]; nothing where roll is held.
    pub(super) fn trunk(&self) -> [f64; 3] {
        [0.0, if self.held[1] { 0.0 } else { self.taken_from_roll() }, 0.0]
    }

    /// The same, whether roll is held or not.
    pub(super) fn taken_from_roll(&self) -> f64 {
        self.weight * self.lean - self.own_roll
    }

    /// The moment on the body in a roll, N m, by its weight, its trunk and itself: positive where it
    /// turns the right side down.
    pub(super) fn roll_moment(&self, roll: f64) -> f64 {
        self.weight * self.line[0] - self.taken_from_roll() * roll - self.own_roll * self.at_ease
    }

    /// How far the body rises at a place for each unit of sink, roll and pitch.
    pub(super) fn modes(&self, [x, y]: [f64; 2]) -> [f64; 3] {
        [1.0, x, y - self.line[1]]
    }
}

impl RestProblem<'_> {
    /// Whether the skin gives way, so that the body is no bound but a spring.
    pub(super) fn tissue(&self) -> Option<f64> {
        self.body.as_ref().and_then(|body| body.tissue)
    }

    /// Height of the body at a node; infinite where there is none.
    pub(super) fn skin(&self, node: usize, pose: &[f64; 3]) -> f64 {
        let Some(body) = &self.body else { return f64::INFINITY };
        let modes = body.modes(self.level.places[node]);
        body.underside[node] + pose[0] * modes[0] + pose[1] * modes[1] + pose[2] * modes[2]
    }

    /// How high the sheet may be at a node, and what holds it there.
    pub(super) fn bound(&self, node: usize, pose: &[f64; 3]) -> (f64, Hold) {
        let skin = if self.tissue().is_some() { f64::INFINITY } else { self.skin(node, pose) };
        if self.level.seam[node] && self.wall <= skin && !self.yields(node) {
            (self.wall, Hold::Wall)
        } else {
            (skin, Hold::Body)
        }
    }

    /// Whether the wall gives way at a node.
    pub(super) fn yields(&self, node: usize) -> bool {
        !self.yielding.is_empty() && self.yielding.binary_search(&(node as u32)).is_ok()
    }

    /// The same where the wall gives way at the seam nodes at which wall and body are as high, to
    /// `near`; none where there are no such nodes.
    pub(super) fn with_yielding_kinks(&self, state: &SheetAndPose, near: f64) -> Option<Self> {
        let kink = |node: &u32| {
            let node = *node as usize;
            let skin = self.skin(node, &state.pose);
            self.level.seam[node]
                && (skin - self.wall).abs() < near
                && state.sheet[node] > self.wall - near
        };
        let yielding: Vec<u32> = (0..self.level.len() as u32).filter(kink).collect();
        let rigid = self.tissue().is_none();
        (rigid && !yielding.is_empty()).then(|| Self { yielding, ..self.clone() })
    }

    /// How far a yielding wall is stretched at a node, m.
    pub(super) fn stretched(&self, node: u32, state: &SheetAndPose) -> f64 {
        (state.sheet[node as usize] - self.wall).max(0.0)
    }

    /// Presses the sheet down to where it may be.
    pub(super) fn keep(&self, state: &mut SheetAndPose) {
        for (node, height) in state.sheet.iter_mut().enumerate() {
            *height = height.min(self.bound(node, &state.pose).0);
        }
        self.keep_walls(state);
    }

    /// The cover over a patch.
    pub(super) fn cover(&self, patch: &Patch) -> Cover {
        Cover::over(patch.area, self.parameters)
    }
}
