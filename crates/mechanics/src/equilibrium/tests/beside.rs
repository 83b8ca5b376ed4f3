//! Answers that are found beside another: those of the whole search, as far as they may differ.

use super::super::rest::{Bare, Start, come_to_rest_from};
use super::super::results::Resting;
use super::scenes::{Scene, scenes};
use crate::stop::Stop;
use crate::{Cells, effects_of_a_cell};

/// How far the clearance of an answer with a handful more may be off: a tenth of what they do to it, which
/// is what two meshes differ by, and 0.3 mm, m, which no hand tells and a search makes up for where it
/// solves what it found anew. The worst case here, with walls that give as far as they can, is 0.37 mm
/// of 1.59 mm.
const SHARE: f64 = 0.10;
const NOTHING: f64 = 3e-4;

fn beside(scene: &Scene, cells: &[Cells], near: &Resting) -> Resting {
    let Scene { model, seated, parameters, .. } = scene;
    let start = Start { near: Some(near), bare: Bare::AsNear, for_differences: true };
    let rest = come_to_rest_from(start, model, cells, seated, parameters, Stop::never());
    rest.resting.expect("it comes to rest")
}

fn clearances(resting: &Resting) -> Vec<f64> {
    resting.sites.iter().map(|site| site.clearance.to_m()).collect()
}

/// A handful more in a compartment: a tenth of its cells.
fn with_a_handful(scene: &Scene, at: usize) -> Vec<Cells> {
    let mut cells = scene.cells.clone();
    cells[at].count *= 1.1;
    cells
}

#[test]
fn the_same_cells_have_the_same_answer() {
    for scene in scenes() {
        let near = scene.answer();
        let pairs =
            clearances(&near).into_iter().zip(clearances(&beside(&scene, &scene.cells, &near)));
        for (whole, own) in pairs {
            // It begins at the answer, and what it ends at is no farther off.
            testkit::assert_near(own, whole, 1e-6);
        }
    }
}

#[test]
fn a_handful_does_what_the_whole_search_says() {
    for scene in scenes() {
        let near = scene.answer();
        for at in (0..scene.cells.len()).filter(|at| scene.cells[*at].count > 0.0) {
            let cells = with_a_handful(&scene, at);
            let whole = scene.rest(&cells, Some(&near)).resting.expect("it comes to rest");
            let own = beside(&scene, &cells, &near);
            let before = clearances(&near);
            for ((own, whole), before) in
                clearances(&own).iter().zip(clearances(&whole)).zip(before)
            {
                let change = (whole - before).abs();
                testkit::assert_near(*own, whole, SHARE * change + NOTHING);
            }
        }
    }
}

/// Effects are derivatives at an answer: one beside another has an unloaded sheet that is none.
#[test]
#[should_panic(expected = "not found beside another")]
fn an_answer_beside_another_has_no_effects() {
    let scene = scenes().into_iter().find(|scene| !scene.parameters.small_slopes);
    let scene = scene.expect("one has walls that give");
    let (near, cells) = (scene.answer(), with_a_handful(&scene, 0));
    let own = beside(&scene, &cells, &near);
    let Scene { model, seated, parameters, .. } = &scene;
    drop(effects_of_a_cell(model, &cells, seated, parameters, &own));
}
