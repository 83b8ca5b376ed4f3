//! Walls that bow: cloth under a seam that hangs slack gives way to the fuller side.
//!
//! A wall of height h is cloth that does not stretch. Where the seam above it stands at the height
//! u, it may bow as an arc, which sweeps the area x for each length of wall: the compartment on one
//! side gains `int x` of room and the other loses it. What can be is
//!
//! ```text
//! ((u - c)+ / (h - c))^2 + (x / (g A))^2 <= 1        c = 2 h/pi,  A = h^2/(2 pi)
//! ```
//!
//! which is within 8 % of the arc of a cloth of this length, and convex. A is the area of half a
//! circle on a chord c, whose arc is as long as the wall is high. g is the share of the give that
//! is used. `u <= h` is a part of it.
//!
//! On its edge u and x go together: `u = c + (h - c) cos t, x = g A sin t`. A node that is held
//! there has t for its unknown, so that neither end of the edge is steep.

use std::f64::consts::{FRAC_PI_2, PI, TAU};
use std::ops::Range;

use super::energy::Forces;
use super::level::Station;
use super::newton::SearchEnd;
use super::problem::{Hold, Holds, RestProblem, SheetAndPose};
use super::step::{AppliedForces, Change};

/// The difference of pressure at which a slack wall has bowed as far as it can, Pa: a twentieth of
/// the cover's weight. It makes one answer of all the ways in which the length of a wall could
/// share what it sweeps.
const EASY: f64 = 2.0;
/// How near to the edge of what can be a node counts as on it, m: rounding.
const ON_EDGE: f64 = 1e-12;
/// The share of its limit from which a wall that is pressed against that counts as at it.
const FULL: f64 = 1.0 - 1e-9;
/// Where node and wall are both pushed to the edge and near it, they go along it: a step that were
/// clipped at it would lead up. Bertsekas (see [`super::newton`]) has such a margin for bounds. A
/// node is near that would come to the edge by itself against its stiffness, some 500 N/m; a wall
/// that has used this share.
const NEAR_PUSH: f64 = 1e3;
const NEARLY_FULL: f64 = 0.9;
/// The turn below which a wall stands upright but for rounding: its seam is lower by a share of
/// 1e-14.
const UPRIGHT: f64 = 1e-7;
/// The turn from which a node that is pulled down may still go along the edge: nearer to upright the
/// edge is so flat that the pull would not show.
const NEARLY_UPRIGHT: f64 = 1e-3;
/// The least stiffness of a node on the edge, N/m: where nothing pushes it there.
const LEAST: f64 = 1e-3;

/// How walls take part in the equations of a step.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Bowing {
    /// By node: how far the sheet rises for a unit of the node's unknown. Empty where no wall bows.
    pub(super) scale: Vec<f64>,
    /// By node: further stiffness against its unknown, N/m.
    pub(super) springs: Vec<f64>,
    /// By station.
    pub(super) stations: Vec<Response>,
}

/// How the area that a wall sweeps follows.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Response {
    /// For a unit of its node's unknown, m.
    pub(super) by_node: f64,
    /// For a unit of force on it, m2 for a Pa m.
    pub(super) compliance: f64,
}

impl Bowing {
    /// Whether walls take part in much the same way.
    pub(super) fn is_like(&self, other: &Self, share: f64) -> bool {
        let near = |(one, other): (f64, f64)| (one - other).abs() <= share * one.abs();
        let pairs = |one: &[f64], other: &[f64]| {
            one.len() == other.len() && one.iter().copied().zip(other.iter().copied()).all(near)
        };
        let stations = self.stations.iter().zip(&other.stations);
        pairs(&self.scale, &other.scale)
            && pairs(&self.springs, &other.springs)
            && stations.into_iter().all(|(one, other)| {
                near((one.by_node, other.by_node)) && one.compliance == other.compliance
            })
    }

    /// How far the sheet rises for a unit of a node's unknown.
    #[inline]
    pub(super) fn scale(&self, node: usize) -> f64 {
        if self.scale.is_empty() { 1.0 } else { self.scale[node] }
    }
}

impl Station {
    /// The compartments that gain and lose, with signs.
    pub(super) fn signed_sides(&self) -> impl Iterator<Item = (usize, f64)> {
        let [gains, loses] = self.sides.map(|side| side.map(|side| side as usize));
        gains.map(|side| (side, 1.0)).into_iter().chain(loses.map(|side| (side, -1.0)))
    }

    /// The difference over the wall of values of the compartments; outside it is zero.
    pub(super) fn across(&self, values: impl Fn(usize) -> f64) -> f64 {
        self.signed_sides().map(|(side, sign)| sign * values(side)).sum()
    }
}

impl RestProblem<'_> {
    /// The walls that bow; none where none do.
    pub(super) fn stations(&self) -> &[Station] {
        if self.parameters.gives() { &self.level.walls } else { &[] }
    }

    /// The greatest area that a wall can sweep for each length of it, m2; 0 where it stays upright.
    pub(super) fn reach(&self, station: &Station) -> f64 {
        let inner = station.sides[1].is_some();
        let give = if inner { self.parameters.inner_give } else { self.parameters.outer_give };
        give * self.wall * self.wall / TAU
    }

    /// Force against bowing for a unit of area swept, for each length, Pa/m2.
    pub(super) fn upright(&self, reach: f64) -> f64 {
        EASY / reach
    }

    /// Height below which a wall is slack, m.
    fn slack_height(&self) -> f64 {
        2.0 / PI * self.wall
    }

    /// From there to the height of the wall, m.
    pub(super) fn span(&self) -> f64 {
        self.wall - self.slack_height()
    }

    /// Height over the slack one as a share of the span; zero where it is slack.
    pub(super) fn tautness(&self, height: f64) -> f64 {
        ((height - self.slack_height()) / self.span()).clamp(0.0, 1.0)
    }

    /// The share of its reach that a wall can sweep under a seam of a height.
    pub(super) fn room(&self, height: f64) -> f64 {
        let taut = self.tautness(height);
        (1.0 - taut * taut).sqrt()
    }

    /// The greatest height of a seam whose walls are turned on the edge by an angle of this cosine, m.
    fn top(&self, cosine: f64) -> f64 {
        self.slack_height() + self.span() * cosine
    }

    /// Sine and cosine of the angle by which the walls of a node are turned: by the one that has used
    /// most of its reach. The turn of a single wall has its sign, so that it may go through upright.
    pub(super) fn turn(&self, stations: &Range<usize>, walls: &[f64]) -> [f64; 2] {
        let used = |at: usize| {
            let reach = self.reach(&self.level.walls[at]);
            if reach > 0.0 { walls[at] / reach } else { 0.0 }
        };
        let sine = if stations.len() == 1 {
            used(stations.start).clamp(-1.0, 1.0)
        } else {
            stations.clone().map(|at| used(at).abs()).fold(0.0, f64::max).min(1.0)
        };
        // Written so that it is exact near both ends.
        [sine, ((1.0 - sine) * (1.0 + sine)).sqrt()]
    }

    /// The nodes of seams that have walls, with their stations.
    pub(super) fn wall_nodes(&self) -> impl Iterator<Item = (usize, Range<usize>)> {
        let mut first = 0;
        self.stations().chunk_by(|a, b| a.node == b.node).map(move |own| {
            let stations = first..first + own.len();
            first = stations.end;
            (own[0].node as usize, stations)
        })
    }

    /// Presses walls back to where they may be under the sheet.
    pub(super) fn keep_walls(&self, state: &mut SheetAndPose) {
        state.walls.resize(self.stations().len(), 0.0);
        for (node, stations) in self.wall_nodes() {
            let height = state.sheet[node];
            let [_, cosine] = self.turn(&stations, &state.walls);
            let over = height > self.top(cosine) + ON_EDGE;
            self.clip(node, stations, if over { self.room(height) } else { 1.0 }, state);
        }
    }

    fn clip(&self, node: usize, stations: Range<usize>, room: f64, state: &mut SheetAndPose) {
        let room = if self.yields(node) { 0.0 } else { room };
        for at in stations {
            let most = room * self.reach(&self.level.walls[at]);
            state.walls[at] = state.walls[at].clamp(-most, most);
        }
    }

    /// Lets walls bow as far as pressures ask for.
    pub(super) fn bow_to(&self, pressures: &[f64], state: &mut SheetAndPose) {
        state.walls = vec![0.0; self.stations().len()];
        for (node, stations) in self.wall_nodes() {
            for at in stations.clone() {
                let station = &self.level.walls[at];
                let reach = self.reach(station);
                state.walls[at] = reach / EASY * station.across(|side| pressures[side]);
            }
            self.clip(node, stations, self.room(state.sheet[node]), state);
        }
    }

    /// How much room each compartment gains by its walls, m3.
    pub(super) fn bowed_volumes(&self, walls: &[f64]) -> Vec<f64> {
        let mut volumes = vec![0.0; self.level.patches.len()];
        for (station, swept) in self.stations().iter().zip(walls) {
            for (side, sign) in station.signed_sides() {
                volumes[side] += sign * station.length * swept;
            }
        }
        volumes
    }

    /// Adds the energy of walls, and its slopes by what they sweep, to forces that have the
    /// compartments.
    pub(super) fn add_walls(&self, walls: &[f64], forces: &mut Forces) {
        for (station, swept) in self.stations().iter().zip(walls) {
            let reach = self.reach(station);
            let back = if reach > 0.0 { self.upright(reach) * swept } else { 0.0 };
            forces.energy += 0.5 * station.length * back * swept;
            let pressed = station.across(|side| forces.patches[side].pressure);
            forces.walls.push(if reach > 0.0 { station.length * (back - pressed) } else { 0.0 });
        }
    }

    /// What holds a node of a seam with walls, and which of its walls are at the edge of what can
    /// be and pressed against it: the way they are bowed, or 0.
    pub(super) fn hold_at_walls(
        &self,
        node: usize,
        stations: &Range<usize>,
        state: &SheetAndPose,
        forces: &Forces,
        holds: &mut Holds,
    ) {
        let (height, pushed) = (state.sheet[node], -forces.nodes[node]);
        let [sine, cosine] = self.turn(stations, &state.walls);
        let top = self.top(cosine);
        let taut = height >= self.slack_height() - ON_EDGE;
        let on_edge = taut && height >= top - ON_EDGE;
        let near = taut && pushed > NEAR_PUSH * (top - height);
        let (share, least) = match (on_edge, near) {
            (true, _) => (sine.abs(), FULL),
            (false, true) => (self.room(height), NEARLY_FULL),
            (false, false) => (self.room(height), FULL),
        };
        let mut full = false;
        for at in stations.clone() {
            let way = self.full_way(at, [share, least], state, forces);
            holds.walls[at] = way;
            full |= way != 0.0;
        }
        let skin =
            if self.tissue().is_some() { f64::INFINITY } else { self.skin(node, &state.pose) };
        holds.nodes[node] =
            if height >= skin && self.net_push(node, stations, state, forces, holds) > 0.0 {
                Hold::Body
            } else if !on_edge {
                if near && full { Hold::Bowed } else { Hold::Free }
            } else if cosine <= 1e-9 {
                // The walls have bowed to the full; lower they are slack.
                if pushed > 0.0 { Hold::Bowed } else { Hold::Free }
            } else if pushed <= 0.0 && sine.abs() < NEARLY_UPRIGHT {
                // Pulled down from a wall that hardly bows, along whose edge hardly anything pulls.
                Hold::Free
            } else if full || (pushed > 0.0 && (sine < UPRIGHT || stations.len() == 1)) {
                Hold::Bowed
            } else {
                Hold::Free
            };
        if holds.nodes[node] != Hold::Bowed {
            let loose = holds.nodes[node] == Hold::Free && self.tautness(height) > 0.0;
            for at in stations.clone() {
                // What a wall lacks of its limit is no step's to close but its own; under a node
                // that falls from the edge the limit is left.
                let way = self.full_way(at, [self.room(height), FULL], state, forces);
                holds.walls[at] = if loose { 0.0 } else { way };
            }
        }
        if stations.len() == 1 && holds.nodes[node] == Hold::Bowed {
            // Its turn has the sign.
            holds.walls[stations.start] = 1.0;
        }
    }

    /// The way in which a wall is bowed that has used this share of what it can, and is pressed on;
    /// 0 where it has not.
    fn full_way(
        &self,
        at: usize,
        [share, least]: [f64; 2],
        state: &SheetAndPose,
        forces: &Forces,
    ) -> f64 {
        let (swept, force) = (state.walls[at], -forces.walls[at]);
        let way = if share < UPRIGHT { force } else { swept };
        let reach = self.reach(&self.level.walls[at]);
        let is_full = swept.abs() >= least * share * reach && force * way > 0.0;
        if is_full { way.signum() } else { 0.0 }
    }

    /// What pushes a node of the sheet up, less what full walls pull it down with, N.
    pub(super) fn net_push(
        &self,
        node: usize,
        stations: &Range<usize>,
        state: &SheetAndPose,
        forces: &Forces,
        holds: &Holds,
    ) -> f64 {
        let taut = self.tautness(state.sheet[node]);
        let pull: f64 = stations
            .clone()
            .filter(|at| holds.walls[*at] != 0.0)
            .map(|at| forces.walls[at] * holds.walls[at] * self.drop(at, taut)[0])
            .sum();
        -forces.nodes[node] - pull
    }

    /// How the area swept by a full wall changes with the height of its seam, m, and the slope of
    /// that, for a wall that bows the positive way.
    fn drop(&self, station: usize, taut: f64) -> [f64; 2] {
        if taut <= 0.0 {
            return [0.0; 2];
        }
        let reach = self.reach(&self.level.walls[station]);
        // Nearer the top than this it is the edge that holds the node, and not the body.
        let room = (1.0 - taut * taut).sqrt().max(1e-6);
        let span = self.span();
        [-reach * taut / (room * span), -reach / (room.powi(3) * span * span)]
    }

    /// How walls take part in a step with these held.
    pub(super) fn bowing(&self, state: &SheetAndPose, forces: &Forces, holds: &Holds) -> Bowing {
        if self.stations().is_empty() {
            return Bowing::default();
        }
        let mut bowing = Bowing {
            scale: vec![1.0; self.level.len()],
            springs: vec![0.0; self.level.len()],
            stations: vec![Response::default(); self.stations().len()],
        };
        for (node, stations) in self.wall_nodes() {
            if !self.yields(node) {
                self.add_node(node, stations, state, forces, holds, &mut bowing);
            }
        }
        bowing
    }

    fn add_node(
        &self,
        node: usize,
        stations: Range<usize>,
        state: &SheetAndPose,
        forces: &Forces,
        holds: &Holds,
        bowing: &mut Bowing,
    ) {
        let span = self.span();
        let bowed = holds.nodes[node] == Hold::Bowed;
        let [sine, cosine] = if bowed { self.turn(&stations, &state.walls) } else { [0.0, 1.0] };
        let taut = self.tautness(state.sheet[node]);
        let mut spring = 0.0;
        if bowed {
            bowing.scale[node] = -sine;
            spring += LEAST + (-forces.nodes[node]).max(0.0) * cosine / span;
        }
        for at in stations {
            let station = &self.level.walls[at];
            let (reach, way) = (self.reach(station), holds.walls[at]);
            if reach <= 0.0 {
                continue;
            }
            let back = station.length * self.upright(reach);
            let response = &mut bowing.stations[at];
            if way == 0.0 {
                response.compliance = 1.0 / back;
                continue;
            }
            let [by_node, curved] = if bowed {
                [reach * cosine / span, -reach * sine / (span * span)]
            } else {
                self.drop(at, taut)
            };
            response.by_node = way * by_node;
            spring += (forces.walls[at] * way * curved).max(0.0) + back * by_node * by_node;
        }
        bowing.springs[node] = spring;
    }

    /// The force on a node's unknown, N: minus the slope of the energy.
    pub(super) fn unknown_force(
        &self,
        node: usize,
        stations: Range<usize>,
        [nodes, walls]: [&[f64]; 2],
        bowing: &Bowing,
    ) -> f64 {
        let swept = stations.map(|at| bowing.stations[at].by_node * walls[at]);
        bowing.scale(node) * nodes[node] + swept.sum::<f64>()
    }

    /// Moves walls by a share of a change, and the nodes that they hold along their edge, in a state
    /// in which all else has moved.
    pub(super) fn move_walls(
        &self,
        from: &SearchEnd,
        change: &Change,
        share: f64,
        state: &mut SheetAndPose,
    ) {
        for (node, stations) in self.wall_nodes() {
            let room = if from.holds.nodes[node] == Hold::Bowed {
                let turned = share * change.along[node] / self.span();
                let [sine, cosine] = self.turn(&stations, &from.state.walls);
                let before = libm::asin(sine);
                let least = if stations.len() == 1 { -FRAC_PI_2 } else { 0.0 };
                let turn = (before + turned).clamp(least, FRAC_PI_2);
                // A node near the edge comes onto it with the whole step.
                let short = (1.0 - share) * (self.top(cosine) - from.state.sheet[node]).max(0.0);
                let rigid = self.tissue().is_none();
                let skin = if rigid { self.skin(node, &state.pose) } else { f64::INFINITY };
                let height = self.top(libm::cos(turn)) - short;
                state.sheet[node] = height.min(skin);
                let sine = libm::sin(turn);
                let outward = |at: usize| from.holds.walls[at] * sine;
                let pressed = stations.clone().any(|at| -from.forces.walls[at] * outward(at) > 0.0);
                // Where the body is in the way of the edge, it is the walls that come to it.
                if height > skin && pressed { sine.signum() * self.room(skin) } else { sine }
            } else {
                if from.holds.nodes[node] == Hold::Free
                    && stations.clone().any(|at| from.holds.walls[at] != 0.0)
                {
                    // Walls that are full and slack stay so: up to where the edge begins.
                    state.sheet[node] = state.sheet[node].min(self.slack_height());
                }
                self.room(state.sheet[node])
            };
            for at in stations.clone() {
                let most = room * self.reach(&self.level.walls[at]);
                state.walls[at] = match from.holds.walls[at] {
                    0.0 => from.state.walls[at] + share * change.walls[at],
                    way => way * most,
                };
            }
            self.clip(node, stations, room.abs(), state);
        }
    }

    /// Holds the walls that a change takes beyond their limit, of which they lack no more than a
    /// share, or nothing but rounding where they are pressed back.
    pub(super) fn hold_blocked_walls(&self, found: &mut SearchEnd, change: &Change, lacking: f64) {
        for (node, stations) in self.wall_nodes() {
            if found.holds.nodes[node] == Hold::Bowed || self.yields(node) {
                continue;
            }
            let room = self.room(found.state.sheet[node]);
            for at in stations {
                let swept = found.state.walls[at];
                let limit = room * self.reach(&self.level.walls[at]);
                let outward = swept * found.forces.walls[at] < 0.0;
                let least = if outward { 1.0 - lacking } else { FULL };
                if swept.abs() >= least * limit && swept * change.walls[at] > 0.0 {
                    found.holds.walls[at] = swept.signum();
                }
            }
        }
    }

    /// The barrier of walls that bow, for each Pa m of it; infinite where one is beyond what can be.
    pub(super) fn wall_barrier(&self, state: &SheetAndPose) -> f64 {
        let barrier = |(station, swept): (&Station, &f64)| -> f64 {
            let reach = self.reach(station);
            if reach <= 0.0 {
                return 0.0;
            }
            let left = self.left(state.sheet[station.node as usize], swept / reach);
            if left > 0.0 { -self.weight(station) * libm::log(left) } else { f64::INFINITY }
        };
        self.stations().iter().zip(&state.walls).map(barrier).sum()
    }

    /// How far a wall is from the edge of what can be, as a share.
    fn left(&self, height: f64, bowed: f64) -> f64 {
        let taut = self.tautness(height);
        1.0 - taut * taut - bowed * bowed
    }

    /// The weight of a station's barrier, m2.
    fn weight(&self, station: &Station) -> f64 {
        station.length * self.span()
    }

    /// How walls take part in a step under the barrier, which adds to the load.
    pub(super) fn barred_walls(
        &self,
        state: &SheetAndPose,
        mu: f64,
        load: &mut AppliedForces,
    ) -> Bowing {
        if self.stations().is_empty() {
            return Bowing::default();
        }
        let mut bowing = Bowing {
            scale: vec![1.0; self.level.len()],
            springs: vec![0.0; self.level.len()],
            stations: vec![Response::default(); self.stations().len()],
        };
        let span = self.span();
        for (at, station) in self.stations().iter().enumerate() {
            let (node, reach) = (station.node as usize, self.reach(station));
            if reach <= 0.0 {
                continue;
            }
            let (taut, bowed) = (self.tautness(state.sheet[node]), state.walls[at] / reach);
            let left = self.left(state.sheet[node], bowed);
            let weight = mu * self.weight(station) / left;
            // Slopes of what is left, by height and by what is swept.
            let (by_height, by_swept) = (-2.0 * taut / span, -2.0 * bowed / reach);
            load.nodes[node] += weight * by_height;
            load.walls[at] += weight * by_swept;
            let curved = if taut > 0.0 { 2.0 / (span * span) } else { 0.0 };
            let height = weight * (by_height * by_height / left + curved);
            let both = weight * by_height * by_swept / left;
            let swept = weight * (by_swept * by_swept / left + 2.0 / (reach * reach))
                + station.length * self.upright(reach);
            bowing.springs[node] += height - both * both / swept;
            bowing.stations[at] = Response { by_node: -both / swept, compliance: 1.0 / swept };
        }
        bowing
    }
}
