//! Answers for differences: how far they may be off.

use super::super::rest::{Bare, Start, come_to_rest_from};
use super::super::results::Resting;
use super::scenes::scenes;
use crate::stop::Stop;

/// How far clearances may be off, m, and surface pressures, Pa: a tenth of what is printed of them, and
/// far less than what comes from not knowing the client.
const CLEARANCE: f64 = 1e-5;
const PRESSURE: f64 = 10.0;
/// The same beside an answer: a tenth of what the guess of what walls take may be off there.
const CLEARANCE_BESIDE: f64 = 3e-5;
const PRESSURE_BESIDE: f64 = 20.0;

/// By how much clearances, m, and surface pressures, Pa, of answers for differences are off, at the most:
/// with a handful more or less in each compartment of each scene.
fn off(bare: Bare<'_>) -> [f64; 2] {
    let mut off = [0.0f64; 2];
    for scene in scenes() {
        let near = scene.answer();
        for at in (0..scene.cells.len()).filter(|at| scene.cells[*at].count > 0.0) {
            for by in [0.9, 1.1] {
                let mut cells = scene.cells.clone();
                cells[at].count *= by;
                let rest = |for_differences| -> Resting {
                    let start = Start { near: Some(&near), bare, for_differences };
                    let (model, seated) = (&scene.model, &scene.seated);
                    let never = Stop::never();
                    come_to_rest_from(start, model, &cells, seated, &scene.parameters, never)
                        .resting
                        .expect("it comes to rest")
                };
                let (exact, rough) = (rest(false), rest(true));
                for (exact, rough) in exact.sites.iter().zip(&rough.sites) {
                    let apart = [
                        exact.clearance.to_m() - rough.clearance.to_m(),
                        exact.pressure.to_pa() - rough.pressure.to_pa(),
                    ];
                    off.iter_mut().zip(apart).for_each(|(most, own)| *most = most.max(own.abs()));
                }
            }
        }
    }
    off
}

#[test]
fn differences_are_right_to_a_hundredth_of_a_millimetre() {
    let [clearance, pressure] = off(Bare::Found);
    assert!(clearance <= CLEARANCE && pressure <= PRESSURE, "{clearance} m, {pressure} Pa");
}

#[test]
fn what_is_left_of_the_sheet_beside_another_is_less_than_what_is_guessed() {
    let [clearance, pressure] = off(Bare::AsNear);
    let is_little = clearance <= CLEARANCE_BESIDE && pressure <= PRESSURE_BESIDE;
    assert!(is_little, "{clearance} m, {pressure} Pa");
}
