//! Laws on asymmetric cushions and bodies with an emptied and with a bottomed compartment.

use cushion::Side;
use testkit::assert_near;

use super::super::effects::effects_of_a_cell;
use super::super::rest::{Cells, come_to_rest, come_to_rest_slowly};
use super::super::results::{Outcome, Rest, Resting};
use super::Numbers;
use super::scenes::{BOTTOMED, EMPTIED, HARD, Scene, giving, hard_cases};
use crate::{SiteName, Stop};

impl Scene {
    pub(super) fn rest(&self, cells: &[Cells], near: Option<&Resting>) -> Rest {
        come_to_rest(&self.model, cells, &self.seated, &self.parameters, near, Stop::never())
    }

    pub(super) fn answer(&self) -> Resting {
        self.rest(&self.cells, None).resting.expect("it comes to rest")
    }

    /// All counts times a factor.
    fn filled(&self, factor: f64) -> Vec<Cells> {
        self.cells.iter().map(|own| Cells { count: factor * own.count, ..*own }).collect()
    }
}

fn clearances(resting: &Resting) -> [f64; 2] {
    [Side::Left, Side::Right].map(|side| {
        let of_side = resting.sites.iter().find(|own| own.site.name == SiteName::SeatBone(side));
        of_side.expect("a body has seat bones").clearance.to_mm()
    })
}

/// Two ends of a search agree: forces are left of a billionth of the load, over a stiffness of at
/// least 1 kN/m or 50 N m is a nanometre or some 1e-8; pressures are 1 MPa/m of that.
#[track_caller]
fn assert_same(one: &Resting, other: &Resting) {
    one.pose.iter().zip(other.pose).for_each(|(one, other)| assert_near(*one, other, 1e-8));
    for (one, other) in one.compartments.iter().zip(&other.compartments) {
        assert_near(one.pressure.to_pa(), other.pressure.to_pa(), 1e-2);
        assert_near(one.load.to_n(), other.load.to_n(), 1e-4);
    }
    for (one, other) in one.sheet.iter().zip(&other.sheet) {
        assert_near(*one, *other, 1e-7);
    }
}

#[test]
fn the_cases_are_what_they_are_called() {
    let outcomes = HARD.each_ref().map(|case| {
        let scene = case.scene(Side::Left);
        scene.rest(&scene.cells, None)
    });
    let [stock, emptied, bottomed] = outcomes;
    assert_eq!(stock.outcome, Outcome::AtRest);
    let stock = stock.resting.expect("it has numbers");
    assert!(stock.pose[1].to_degrees().abs() > 1.0, "it leans: {:?}", stock.pose);
    let emptied = emptied.resting.expect("it has numbers");
    assert!(emptied.compartments[EMPTIED].slack);
    assert!(emptied.compartments[EMPTIED].load.to_n() > 1.0, "its cover is sat on");
    assert_eq!(bottomed.outcome, Outcome::Bottomed);
    let bottomed = bottomed.resting.expect("it has numbers");
    assert!(bottomed.compartments[BOTTOMED].bottomed);
    assert!(bottomed.sheet.iter().any(|height| *height < 0.0), "the base carries too");
}

#[test]
fn forces_and_moments_balance() {
    for (at, scene) in hard_cases().iter().enumerate() {
        let found = scene.answer();
        let load = scene.seated.body().load();
        let weight = load.weight.to_n();
        let mut sums = [-weight, 0.0, 0.0];
        for (force, [x, y]) in found.reactions.iter().zip(scene.model.places()) {
            assert!(*force >= 0.0, "{at}: the body pulls");
            sums[0] += force;
            sums[1] += force * (x - load.at[0]);
            sums[2] += force * (y - load.at[1]);
        }
        // A millionth of the load, and of the load times a metre.
        sums.iter().for_each(|sum| assert_near(*sum, 0.0, 1e-6 * weight));
        let shares: f64 = found.compartments.iter().map(|own| own.load.to_n()).sum();
        assert_near(shares, weight, 1e-6 * weight);
    }
}

#[test]
fn mirror_image_in_mirror_image_out() {
    for (case, give) in HARD.iter().flat_map(|case| [(case, 0.0), (case, 0.5)]) {
        let one = case.scene_with(Side::Left, giving(give)).answer();
        let mut image = case.scene_with(Side::Right, giving(give)).answer();
        image.pose[1] = -image.pose[1];
        one.pose.iter().zip(image.pose).for_each(|(one, image)| assert_near(*one, image, 1e-8));
        for (at, own) in one.compartments.iter().enumerate() {
            let other = &image.compartments[at ^ 1];
            // As two ends of one search, and places that are rounded apart.
            assert_near(own.pressure.to_pa(), other.pressure.to_pa(), 1e-2);
            assert_near(own.load.to_n(), other.load.to_n(), 1e-4);
            assert_eq!((own.slack, own.bottomed), (other.slack, other.bottomed));
        }
        let (own, [left, right]) = (clearances(&one), clearances(&image));
        assert_near(own[0], right, 1e-5);
        assert_near(own[1], left, 1e-5);
    }
}

#[test]
fn the_answer_does_not_depend_on_the_start() {
    for case in &HARD {
        let scene = case.scene(Side::Left);
        let cold = scene.rest(&scene.cells, None);
        let found = cold.resting.expect("it comes to rest");
        let mut numbers = Numbers(41);
        let mut warm = 0;
        for _ in 0..8 {
            let mut near = found.clone();
            // Up to 40 mm up or down, and eight degrees; the sheet is rough by 10 mm.
            near.pose[0] += 0.04 * numbers.next();
            near.pose[1] += 0.14 * numbers.next();
            near.pose[2] += 0.14 * numbers.next();
            near.sheet.iter_mut().for_each(|height| *height += 0.01 * numbers.next());
            let other = scene.rest(&scene.cells, Some(&near));
            // A start that leads nowhere is left for the cold one, which takes its own steps.
            warm += u32::from(other.evidence.steps != cold.evidence.steps);
            assert_same(&found, &other.resting.expect("it comes to rest"));
        }
        assert!(warm >= 4, "{}: {warm}", case.name);
    }
}

#[test]
fn the_slow_search_agrees() {
    for scene in hard_cases() {
        let Scene { model, cells, seated, parameters, .. } = &scene;
        let slow = come_to_rest_slowly(model, cells, seated, parameters);
        assert!(slow.evidence.by_barrier);
        assert_same(&scene.answer(), &slow.resting.expect("it comes to rest"));
    }
}

#[test]
fn a_tenth_more_in_all_lifts_both_seat_bones() {
    for case in &HARD {
        let scene = case.scene(Side::Left);
        let before = clearances(&scene.answer());
        let more = scene.rest(&scene.filled(1.1), None).resting.expect("it comes to rest");
        let after = clearances(&more);
        // A tenth of the cells is some millimetres; of those that are bottomed it is less.
        assert!((0..2).all(|side| after[side] > before[side] + 0.5), "{before:?} {after:?}");
    }
}

/// No cells press up there: on its inner nodes the body rests on what hangs on the seams, tension
/// times slope all along them, less the weight of the cover.
#[test]
fn an_emptied_compartment_carries_no_fill_load() {
    let scene = HARD[1].scene(Side::Left);
    let found = scene.answer();
    let own = &found.compartments[EMPTIED];
    assert!(own.slack && own.pressure.to_pa() == 0.0 && own.unloaded_pressure.to_pa() == 0.0);
    let level = scene.model.finest();
    let patch = &level.patches[EMPTIED];
    let bent = patch.extra_area(&patch.gather(&found.sheet), true).1;
    let (mut carried, mut hung, mut inner) = (0.0, 0.0, 0.0);
    for ((node, bent), area) in patch.nodes.iter().zip(&bent).zip(&patch.areas) {
        let node = *node as usize;
        assert!(found.sheet[node] > 0.0, "off the base, which would carry a part");
        if level.seam[node] {
            hung += own.tension * bent;
        } else {
            carried += found.reactions[node];
            inner += area;
        }
    }
    assert!(carried > 1.0, "the cover carries something, or nothing is tested: {carried} N");
    // The forces left on free nodes are a billionth of the load.
    let weight = scene.seated.body().load().weight.to_n();
    assert_near(carried, hung - scene.parameters.cover_weight * inner, 1e-8 * weight);
    // A quarter: with its fill it carries some 38 N. Some 5 N hang on the seams, to which nodes
    // that are shared with filled neighbours add.
    let load = own.load.to_n();
    assert!(load < 0.25 * full_load(&scene), "{load} N");
}

/// What the emptied compartment carries with its stock fill.
fn full_load(emptied: &Scene) -> f64 {
    let mut cells = emptied.cells.clone();
    cells[EMPTIED].count = cells[EMPTIED ^ 1].count;
    let full = emptied.rest(&cells, None).resting.expect("it comes to rest");
    full.compartments[EMPTIED].load.to_n()
}

/// One cell more by implicit differentiation against a whole cell, half of it taken and half given.
#[test]
fn effects_of_a_cell_are_those_of_a_whole_cell() {
    check_effects(&HARD[0].scene(Side::Left), 0.5);
    // Walls that bow fill and empty within a few cells, node by node: within a twentieth of a cell
    // a straight line is off by 5 %.
    check_effects(&HARD[0].scene_with(Side::Left, giving(0.5)), 0.002);
}

#[track_caller]
fn check_effects(scene: &Scene, part: f64) {
    let Scene { model, cells, seated, parameters } = scene;
    let here = scene.answer();
    let effects =
        effects_of_a_cell(model, cells, seated, parameters, &here).expect("it is at rest");
    for (at, effect) in effects.iter().enumerate() {
        let [less, more] = [-part, part].map(|by| {
            let mut cells = scene.cells.clone();
            cells[at].count += by;
            scene.rest(&cells, Some(&here)).resting.expect("it comes to rest")
        });
        let quotient = |of: &dyn Fn(&Resting) -> f64| (of(&more) - of(&less)) / (2.0 * part);
        // A cell lets a node or two touch or part, of some hundred along the edge of contact, each
        // of which carries hardly anything there: a fiftieth. The floors are what is left of it
        // where the effect itself nearly vanishes: 5 micrometres, 2 Pa, a twentieth of a newton.
        for (site, clearance) in effect.clearance.iter().enumerate() {
            let found = quotient(&|own| own.sites[site].clearance.to_m());
            assert_near(*clearance, found, 0.02 * found.abs() + 5e-6);
        }
        for other in 0..effect.load.len() {
            let found = quotient(&|own| own.compartments[other].pressure.to_pa());
            assert_near(effect.fill_pressure[other], found, 0.02 * found.abs() + 2.0);
            let found = quotient(&|own| own.compartments[other].load.to_n());
            assert_near(effect.load[other], found, 0.02 * found.abs() + 0.05);
        }
        let found = quotient(&|own| own.pose[1]);
        assert_near(effect.pose[1], found, 0.02 * found.abs() + 2e-5);
    }
}
