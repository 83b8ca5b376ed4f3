//! Walls that bow: against the exact arc of a cloth that does not stretch, and laws.

use std::f64::consts::{FRAC_PI_2, PI};

use cushion::Side;

use super::super::level::SolverMesh;
use super::super::nested::{FilledModel, Searches};
use super::super::newton::{self, End, SearchEnd};
use super::super::problem::{Hold, RestProblem};
use super::super::rest::{Cells, laws};
use super::super::step::{AppliedForces, Change, StepPoint};
use super::scenes::{HARD, LIMITS, Scene, giving, scenes, solved, upright};
use crate::{Parameters, SiteName, Stop, come_to_rest};

/// Two rooms side by side under one sheet, 200 mm each from left to right and 60 mm from rear to
/// front, on squares of 5 mm cut in two.
fn rooms() -> SolverMesh {
    let (columns, rows, step) = (81, 13, 0.005);
    let at = |x: usize, y: usize| (y * columns + x) as u32;
    let (mut triangles, mut walls) = (Vec::new(), Vec::new());
    for y in 0..rows - 1 {
        for x in 0..columns - 1 {
            let room = u32::from(x >= columns / 2);
            triangles.push(([at(x, y), at(x + 1, y), at(x + 1, y + 1)], room));
            triangles.push(([at(x, y), at(x + 1, y + 1), at(x, y + 1)], room));
        }
        walls.push(([at(columns / 2, y), at(columns / 2, y + 1)], [Some(0), Some(1)]));
    }
    let nodes = 0..columns * rows;
    let ends = [0, columns / 2, columns - 1];
    SolverMesh::new(super::super::level::Sheet {
        places: nodes
            .clone()
            .map(|at| [(at % columns) as f64, (at / columns) as f64])
            .map(|place| place.map(|at| at * step))
            .collect(),
        seam: nodes.map(|at| ends.contains(&(at % columns))).collect(),
        triangles,
        compartments: 2,
        walls,
    })
}

const WALL: f64 = 0.060;

/// The unloaded sheet over both rooms with so many cells each.
fn blown_up(counts: [f64; 2], give: f64) -> (SolverMesh, SearchEnd, Vec<[f64; 4]>) {
    let level = rooms();
    let parameters = Parameters { inner_give: give, ..upright() };
    let laws = counts.map(|count| crate::fill::FillLaw::of_volume(count * 25e-6, 0.6, &parameters));
    let problem = RestProblem {
        level: &level,
        parameters: &parameters,
        wall: WALL,
        laws: &laws,
        migration: None,
        body: None,
        yielding: Vec::new(),
    };
    let unit = vec![0.0; level.len()];
    let found = newton::search(&problem, problem.held_by_seams(&unit), LIMITS);
    let found = found.expect("there is room for the cells");
    assert_eq!(found.end, End::AtRest);
    let mut walls = Vec::new();
    for (at, station) in level.walls.iter().enumerate() {
        let node = station.node as usize;
        let push = -found.forces.nodes[node] / station.length;
        let across = station.across(|side| found.forces.patches[side].pressure);
        let swept = found.state.walls.get(at).copied().unwrap_or(0.0);
        walls.push([found.state.sheet[node], swept, push, across]);
    }
    (level, found, walls)
}

/// A cloth of the wall's height, held at the base and pulled up at the seam with a force for each
/// length of it, between rooms of two pressures: height of the seam and area swept.
///
/// Closed form: an arc of radius R over twice the angle t is as long as the wall is high, so
/// R = h/(2 t); its chord is 2 R sin t and the area between R^2 (t - sin t cos t). The cloth pulls
/// with the difference of pressure times R, up with cos t of that.
fn arc(push: f64, across: f64) -> [f64; 2] {
    let pull = |t: f64| across * WALL / (2.0 * t) * t.cos();
    // The pull falls with the angle, to nothing at half a circle.
    let (mut low, mut high) = (1e-9, FRAC_PI_2);
    for _ in 0..200 {
        let t = f64::midpoint(low, high);
        if pull(t) > push { low = t } else { high = t }
    }
    let radius = WALL / (2.0 * low);
    [2.0 * radius * low.sin(), radius * radius * (low - low.sin() * low.cos())]
}

#[test]
fn a_wall_between_two_rooms_bows_as_an_arc_does() {
    let greatest = WALL * WALL / (2.0 * PI);
    let mut swept_by = Vec::new();
    for counts in [[70.0, 69.0], [75.0, 65.0], [90.0, 40.0], [100.0, 15.0]] {
        let counts = counts.map(|count| count * 0.6 * 12_000.0 / (0.6 * 43_000.0));
        let (_, _, walls) = blown_up(counts, 1.0);
        for [height, swept, push, across] in walls {
            let [exact_height, exact_swept] = arc(push, across);
            // The ellipse stands within 8 % of the arc: of the whole reach, and of the wall.
            assert!((swept - exact_swept).abs() < 0.08 * greatest, "{swept} {exact_swept}");
            assert!((height - exact_height).abs() < 0.08 * WALL, "{height} {exact_height}");
            swept_by.push(swept / greatest);
        }
    }
    let least = swept_by.iter().copied().fold(f64::INFINITY, f64::min);
    let most = swept_by.iter().copied().fold(0.0, f64::max);
    assert!(least < 0.1 && most > 0.25, "from hardly to far bowed: {least} {most}");
}

#[test]
fn a_wall_bows_to_the_emptier_side_and_images_are_images() {
    let (_, _, walls) = blown_up([30.0, 22.0], 0.5);
    let (_, _, images) = blown_up([22.0, 30.0], 0.5);
    for (own, image) in walls.iter().zip(images) {
        assert!(own[1] > 0.0, "the fuller room gains");
        // The triangles are not their own mirror image: some thousandths of what is swept.
        assert!((own[1] + image[1]).abs() < 0.02 * own[1], "{own:?} {image:?}");
    }
}

#[test]
fn a_wall_that_hardly_gives_is_an_upright_one() {
    let (_, upright, _) = blown_up([30.0, 22.0], 0.0);
    let (_, hardly, _) = blown_up([30.0, 22.0], 1e-6);
    for (one, other) in upright.state.sheet.iter().zip(&hardly.state.sheet) {
        // A millionth of what walls can sweep is a few cubic millimetres.
        assert!((one - other).abs() < 1e-6);
    }
}

/// The clearance under the lower seat bone, m.
fn least_clearance(scene: &Scene, parameters: &Parameters) -> f64 {
    let Scene { model, cells, seated, .. } = scene;
    let rest = come_to_rest(model, cells, seated, parameters, None, Stop::never());
    let sites = rest.resting.expect("it rests").sites;
    let bones = [Side::Left, Side::Right].map(SiteName::SeatBone);
    let bones = sites.iter().filter(|own| bones.contains(&own.site.name));
    bones.map(|own| own.clearance.to_m()).fold(f64::INFINITY, f64::min)
}

#[test]
fn more_give_never_raises_the_clearance() {
    for scene in scenes().iter().take(2).chain(&[HARD[0].scene(Side::Left)]) {
        let clearances = [0.0, 0.2, 0.5, 1.0].map(|give| least_clearance(scene, &giving(give)));
        for pair in clearances.windows(2) {
            // Rounding of two searches.
            assert!(pair[1] < pair[0] + 1e-7, "{clearances:?}");
        }
        assert!(clearances[3] < clearances[0] - 1e-3, "{clearances:?}");
    }
}

#[test]
fn a_true_area_lets_the_body_lower_by_a_little() {
    for scene in scenes().iter().take(2) {
        let [small, full] = [true, false]
            .map(|small_slopes| least_clearance(scene, &Parameters { small_slopes, ..upright() }));
        // Source: an independent program, 0.1 to 1.4 mm lower; 3 mm under a sharp body.
        assert!((0.0..3e-3).contains(&(small - full)), "{small} {full}");
    }
}

/// With more give there is more that can be, so the least energy is no greater; with the same
/// unloaded sheet to depart from.
#[test]
fn the_energy_falls_with_more_give() {
    let scene = HARD[0].scene(Side::Left);
    solved(&scene, |_, unloaded, _, _| {
        let energies = [0.0, 0.3, 0.6, 1.0].map(|give| {
            let parameters = Parameters { inner_give: give, outer_give: give, ..upright() };
            let laws = laws(&scene.model, &scene.cells, &parameters);
            let fill = FilledModel::new(&scene.model, &parameters, &laws);
            let end = fill
                .cold(unloaded, scene.seated.over_mesh(), LIMITS, Searches::All)
                .expect("it has room");
            assert_eq!(end.found.end, End::AtRest);
            end.found.forces.energy
        });
        assert!(energies.windows(2).all(|pair| pair[1] < pair[0] - 1e-6), "{energies:?}");
    });
}

/// Cells that are moved across a wall that can bow do hardly anything at first, and then again
/// what they do across an upright one.
#[test]
fn there_is_a_dead_zone_and_an_end_to_it() {
    let scene = HARD[0].scene(Side::Left);
    let roll = |parameters: &Parameters, moved: f64| {
        let mut cells: Vec<Cells> = scene.cells.clone();
        cells[0].count -= moved;
        cells[1].count += moved;
        let Scene { model, seated, .. } = &scene;
        let rest = come_to_rest(model, &cells, seated, parameters, None, Stop::never());
        rest.resting.expect("it rests").pose[1]
    };
    let slope = |parameters: &Parameters, from: f64, to: f64| {
        (roll(parameters, to) - roll(parameters, from)) / (to - from)
    };
    let without = slope(&upright(), 0.0, 4.0);
    let parameters = Parameters { inner_give: 0.5, ..upright() };
    // Where the fuller side is decided the slope is that of upright walls to a fifth: what they
    // sweep still changes with the seam's height.
    let outside = slope(&parameters, 12.0, 16.0);
    assert!((outside / without - 1.0).abs() < 0.3, "{outside} {without}");
    let slopes: Vec<f64> =
        (-8..8).map(|at| slope(&parameters, f64::from(at), f64::from(at + 1))).collect();
    let least = slopes.iter().copied().fold(f64::INFINITY, f64::min);
    assert!(least < 0.3 * without, "{slopes:?} {without}");
}

#[test]
fn nodes_at_the_edge_are_there() {
    let scene = HARD[0].scene_with(Side::Left, giving(0.5));
    solved(&scene, |_, _, problem, found| {
        let (mut bowed, mut full) = (0, 0);
        for (node, stations) in problem.wall_nodes() {
            let taut = problem.tautness(found.state.sheet[node]);
            for at in stations {
                let reach = problem.reach(&problem.level.walls[at]);
                let share = found.state.walls[at].abs() / reach;
                assert!(taut * taut + share * share <= 1.0 + 1e-9, "{taut} {share}");
                full += u32::from(found.holds.walls[at] != 0.0);
                let pressed = found.state.walls[at] * -found.forces.walls[at];
                assert!(found.holds.walls[at] == 0.0 || pressed > -1e-12, "pressed");
            }
            bowed += u32::from(found.holds.nodes[node] == Hold::Bowed);
        }
        assert!(bowed > 100 && full > 100, "{bowed} {full}");
    });
}

/// What a step makes of the walls that can bow: how far each is taken, its limit, and where it would
/// go by itself under the pressures that the step leaves, all as shares of its reach.
fn taken(at: &StepPoint<'_>, load: &AppliedForces, change: &Change) -> Vec<[f64; 3]> {
    let StepPoint { problem, state, forces, holds, .. } = at;
    let mut gained: Vec<f64> = problem
        .level
        .patches
        .iter()
        .map(|patch| {
            patch
                .nodes
                .iter()
                .zip(&patch.areas)
                .map(|(node, area)| area * change.sheet[*node as usize])
                .sum()
        })
        .collect();
    for (station, swept) in problem.stations().iter().zip(&change.walls) {
        station
            .signed_sides()
            .for_each(|(side, sign)| gained[side] += sign * station.length * swept);
    }
    let fallen: Vec<f64> =
        gained.iter().zip(&forces.patches).map(|(more, own)| own.stiffness * more).collect();
    let limits = problem.wall_limits(state, &holds.nodes);
    let responses = problem.bowing(state, forces, holds).stations;
    let stations = problem.stations().iter().zip(responses).enumerate();
    let loose = stations.filter(|(_, (_, response))| response.compliance > 0.0);
    let shares = loose.map(|(own, (station, response))| {
        let pressed = load.walls[own] - station.length * station.across(|side| fallen[side]);
        let reach = problem.reach(station);
        let to = state.walls[own] + response.compliance * pressed;
        [(state.walls[own] + change.walls[own]) / reach, limits[own] / reach, to / reach]
    });
    shares.collect()
}

/// From the answer for other cells: a straight line takes slack walls beyond their limits; where they
/// stop, each is where the pressures of the step take it, or at its limit on that side.
#[test]
fn walls_stop_at_their_limits_within_a_step() {
    let mut stopped = 0;
    for scene in scenes().iter().filter(|scene| scene.parameters.gives()) {
        stopped += solved(scene, |_, _, problem, found| {
            let mut stopped = 0;
            for fuller in 0..scene.cells.len() {
                let mut cells = scene.cells.clone();
                cells[fuller].count += 4.0;
                let laws = laws(&scene.model, &cells, &scene.parameters);
                let problem = RestProblem { laws: &laws, ..problem.clone() };
                let (state, forces) = (&found.state, problem.forces(&found.state).unwrap());
                let holds = problem.holds(state, &forces);
                let load = AppliedForces::against(&forces);
                let (forces, holds) = (&forces, &holds);
                let at = StepPoint {
                    problem: &problem,
                    state,
                    forces,
                    holds,
                    bowing: None,
                    springs: None,
                };
                let step = at.step(std::slice::from_ref(&load)).unwrap();
                let Some(change) = step.factored.change_to_limits(&at, &load) else { continue };
                let straight = taken(&at, &load, &step.changes[0]);
                assert!(straight.iter().any(|[to, limit, _]| to.abs() > *limit));
                for [to, limit, by_itself] in taken(&at, &load, &change) {
                    stopped += u32::from(to.abs() == limit);
                    // Rounding of a pressure, 1e-9 Pa, over 2 Pa.
                    assert!(
                        (to - by_itself.clamp(-limit, limit)).abs() < 1e-8,
                        "{to} {limit} {by_itself}"
                    );
                }
            }
            stopped
        });
    }
    assert!(stopped > 100, "{stopped}");
}

/// A seam that the body keeps from coming up to where its walls are full lets them out to where they
/// are: else every step would move them by what the body gives way, which is next to nothing.
#[test]
fn walls_come_to_the_edge_where_the_body_keeps_the_seam_below_it() {
    let mut kept = 0;
    let hard_skin =
        |scene: &&Scene| scene.parameters.gives() && scene.seated.over_mesh().tissue.is_none();
    for scene in scenes().iter().filter(hard_skin) {
        kept += solved(scene, |_, _, problem, found| {
            let change = Change {
                sheet: vec![0.0; problem.level.len()],
                along: vec![0.0; problem.level.len()],
                walls: vec![0.0; problem.stations().len()],
                pose: [0.0; 3],
            };
            let bowed = problem
                .wall_nodes()
                .filter(|(node, _)| found.holds.nodes[*node] == Hold::Bowed)
                .filter(|(_, own)| {
                    own.clone().all(|at| found.forces.walls[at] * found.state.walls[at] < 0.0)
                });
            let mut kept = 0;
            for (node, own) in bowed {
                // The body comes down to five micrometres below the edge; and the same with the walls
                // bowed the other way.
                for way in [1.0, -1.0] {
                    let mut pressed = found.clone();
                    let edge = found.state.sheet[node];
                    pressed.state.pose[0] += edge - 5e-6 - problem.skin(node, &found.state.pose);
                    pressed.state.sheet[node] = edge - 5e-6;
                    for at in own.clone() {
                        pressed.state.walls[at] *= way;
                        pressed.forces.walls[at] *= way;
                        // The turn of a single wall has the sign.
                        pressed.holds.walls[at] *= if own.len() == 1 { 1.0 } else { way };
                    }
                    let mut state = pressed.state.clone();
                    problem.move_walls(&pressed, &change, 1.0, &mut state);
                    assert_eq!(state.sheet[node], problem.skin(node, &state.pose).min(edge));
                    for at in own.clone().filter(|at| found.holds.walls[*at] != 0.0) {
                        let reach = problem.reach(&problem.level.walls[at]);
                        let full = problem.room(state.sheet[node]) * reach;
                        let before = way * found.state.walls[at];
                        assert_eq!(state.walls[at], full.copysign(before));
                        assert!(full > before.abs());
                        kept += 1;
                    }
                }
            }
            kept
        });
    }
    assert!(kept > 10, "{kept}");
}
