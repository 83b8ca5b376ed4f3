//! Laws of an answer that need the energy itself.

use super::super::nested::Searches;
use super::super::newton::{End, Limits};
use super::super::problem::{Hold, RestProblem, SheetAndPose};
use super::Numbers;
use super::scenes::{LIMITS, hard_cases, scenes, solved};

/// A state with smooth waves and single nodes moved, kept where it may be.
fn perturbed(
    problem: &RestProblem<'_>,
    state: &SheetAndPose,
    numbers: &mut Numbers,
    size: f64,
) -> SheetAndPose {
    let mut other = state.clone();
    let waves: Vec<[f64; 4]> = (0..4).map(|_| [0; 4].map(|_| numbers.next())).collect();
    let rough = numbers.next().max(0.0);
    for (height, [x, y]) in other.sheet.iter_mut().zip(&problem.level.places) {
        for [a, b, c, d] in &waves {
            *height += size * a * (60.0 * b * x + 60.0 * c * y + 6.0 * d).sin();
        }
        *height += size * rough * numbers.next();
    }
    other.walls.iter_mut().for_each(|swept| *swept += 0.01 * size * numbers.next());
    other.pose[0] += size * numbers.next();
    other.pose[1] += 4.0 * size * numbers.next();
    other.pose[2] += 4.0 * size * numbers.next();
    problem.keep(&mut other);
    other
}

#[test]
fn no_perturbation_lowers_the_energy() {
    for (which, scene) in scenes().into_iter().chain(hard_cases()).enumerate() {
        solved(&scene, |case, unloaded, problem, found| {
            let bare = case.upright_problem(case.finest());
            let [coarse_upright, coarse] = case.coarse_problems();
            let coarse = unloaded.coarse.iter().flatten().zip([&coarse_upright, &coarse]);
            let all = [(&unloaded.upright, &bare), (found, problem)].into_iter().chain(coarse);
            for (found, problem) in all {
                let mut numbers = Numbers(17);
                let mut higher = 0;
                for at in 0..200 {
                    let size = 10f64.powi(-2 - at % 5);
                    let state = perturbed(problem, &found.state, &mut numbers, size);
                    let Some(forces) = problem.forces(&state) else { continue };
                    // Rounding of sums of some ten joules.
                    assert!(
                        forces.energy >= found.forces.energy - 1e-12,
                        "scene {which}, size {size}: {}",
                        forces.energy - found.forces.energy
                    );
                    higher += u32::from(forces.energy > found.forces.energy + 1e-12);
                }
                // Those that are moved by a hair may not show.
                assert!(higher > 150, "{higher}");
            }
        });
    }
}

#[test]
fn the_body_presses_down_and_walls_hold_down() {
    for scene in scenes().into_iter().chain(hard_cases()) {
        solved(&scene, |_, _, problem, found| {
            let mut pressed = 0;
            for (node, hold) in found.holds.nodes.iter().enumerate() {
                let (bound, _) = problem.bound(node, &found.state.pose);
                assert!(found.state.sheet[node] <= bound);
                match hold {
                    Hold::Bowed => pressed += 1,
                    Hold::Free => assert!(found.forces.nodes[node].abs() <= LIMITS.residual),
                    Hold::Wall | Hold::Body => {
                        assert!(found.forces.nodes[node] < 0.0);
                        pressed += 1;
                    }
                }
            }
            assert!(pressed > 100, "{pressed}");
        });
    }
}

#[test]
fn random_starts_end_at_one_answer() {
    for (which, scene) in scenes().into_iter().chain(hard_cases()).enumerate() {
        solved(&scene, |case, unloaded, problem, found| {
            let mut numbers = Numbers(29);
            let mut ended = 0;
            for _ in 0..12 {
                let mut start = perturbed(problem, &unloaded.upright.state, &mut numbers, 0.01);
                // Sunk by up to 60 mm, or that far above; turned by up to eight degrees.
                start.pose = [
                    found.state.pose[0] + 0.06 * numbers.next(),
                    0.14 * numbers.next(),
                    0.14 * numbers.next(),
                ];
                problem.keep(&mut start);
                if problem.forces(&start).is_none() {
                    continue;
                }
                let start_walls = start.walls.clone();
                let body = scene.seated.over_mesh();
                let limits = Limits { steps: 400, ..LIMITS };
                let Some(other) = case.warm(unloaded, body, start, limits) else {
                    // With walls that bow a start may lead nowhere; then another search is made.
                    assert!(!start_walls.is_empty(), "it ends");
                    continue;
                };
                // What is left of the forces, over the least stiffness, which is some 10 kN/m;
                // moments over some 100 N m.
                for (one, other) in found.state.pose.iter().zip(other.state.pose) {
                    assert!((one - other).abs() < 1e-8, "{:?} {:?}", found.state.pose, other);
                }
                ended += 1;
            }
            // Where a start is so low that there is no room for the cells it is left out.
            assert!(
                ended >= if problem.stations().is_empty() { 6 } else { 4 },
                "scene {which}: {ended}"
            );
        });
    }
}

#[test]
fn the_barrier_finds_the_same_answer() {
    for scene in scenes().into_iter().chain(hard_cases()) {
        solved(&scene, |case, unloaded, _, found| {
            let body = scene.seated.over_mesh();
            let other =
                case.cold(unloaded, body, LIMITS, Searches::BarrierOnly).expect("it has room");
            assert!(other.by_barrier && other.found.end == End::AtRest);
            assert!((other.found.forces.energy - found.forces.energy).abs() < 1e-11);
            for (one, other) in found.state.sheet.iter().zip(&other.found.state.sheet) {
                // As from random starts.
                assert!((one - other).abs() < 1e-7);
            }
        });
    }
}

#[test]
fn the_barrier_is_used_when_the_active_set_gives_up() {
    for scene in scenes().into_iter().chain(hard_cases()) {
        solved(&scene, |case, unloaded, _, found| {
            let body = scene.seated.over_mesh();
            // Two steps are too few for any start.
            let limits = Limits { steps: 2, ..LIMITS };
            let other = case.cold(unloaded, body, limits, Searches::All).expect("it has room");
            assert!(other.by_barrier);
            // Two steps may be too few to finish off as well; then it still ends close by.
            for (one, other) in found.state.pose.iter().zip(other.found.state.pose) {
                assert!((one - other).abs() < 1e-6);
            }
        });
    }
}
