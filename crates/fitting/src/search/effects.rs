//! What a cell more in each compartment does, over moves as large as a hand makes.
//!
//! Walls that give swallow the first cells that are moved across them: there one cell says nothing
//! of eight. So each compartment is tried with some cells more and with as many less. From one
//! filling to the next the effects are corrected by what was found there, as Broyden does
//! (Mathematics of Computation 19, 577, 1965): that costs nothing.

use case::Sides;
use cushion::{Force, Side};
use mechanics::{CellEffect, Resting};

use crate::goals::aims::{Filling, Slopes, tops};
use crate::search::side_by_side::side_by_side;
use crate::search::steps::Search;

/// Cells by which a compartment is tried: a hand moves 4 to 8 at once, and so many come out of the
/// range in which a wall of 60 by 190 mm swallows them.
const MOVED: f64 = 8.0;
/// The same of a small compartment, as a share of its cells.
const MOVED_SHARE: f64 = 0.10;
/// The least cells that are tried.
const LEAST_MOVED: f64 = 2.0;

/// Cells by which a compartment with so many is tried.
fn tried(count: f64) -> f64 {
    (MOVED_SHARE * count).clamp(LEAST_MOVED, MOVED)
}

impl Search<'_> {
    /// What each cell more in each compartment does around a filling. None where the client does
    /// not come to rest there.
    pub(crate) fn slopes(&self, filling: &Filling) -> Option<Slopes> {
        Some(Slopes { effects: self.effects(filling)?, tops: self.top_slopes(filling) })
    }

    /// The same under the client alone.
    pub(crate) fn effects(&self, filling: &Filling) -> Option<Vec<CellEffect>> {
        let counts = &filling.counts;
        let there;
        let here = if std::ptr::eq(self.solved_on, self.tried_on) {
            &filling.resting
        } else {
            there = self.tried_on.rest_to_compare(counts, None);
            there.resting()?
        };
        let found = side_by_side(&self.groups, |group| self.effect(counts, here, group));
        let mut effects = vec![None; counts.len()];
        for (group, effect) in self.groups.iter().zip(found) {
            group.iter().for_each(|at| effects[*at].clone_from(&effect));
        }
        effects.into_iter().collect()
    }

    /// What each cell does on average between so many less and so many more in each compartment of a
    /// group, which change alike; on one side where the other has no answer.
    fn effect(&self, counts: &[f64], here: &Resting, group: &[usize]) -> Option<CellEffect> {
        let by = tried(counts[group[0]]);
        let with = |more: f64| {
            let mut counts = counts.to_vec();
            group.iter().for_each(|at| counts[*at] += more);
            if group.iter().any(|at| counts[*at] < 0.0) {
                return None;
            }
            self.tried_on.rest_beside(&counts, here).rest.resting
        };
        let all = by * group.len() as f64;
        match (with(-by), with(by)) {
            (Some(fewer), Some(more)) => Some(CellEffect::between(&fewer, &more, 2.0 * all)),
            (None, Some(more)) => Some(CellEffect::between(here, &more, all)),
            (Some(fewer), None) => Some(CellEffect::between(&fewer, here, all)),
            (None, None) => None,
        }
    }

    fn top_slopes(&self, filling: &Filling) -> Vec<f64> {
        let more: Vec<f64> = filling.counts.iter().map(|count| count + 1.0).collect();
        let raised = tops(self.pattern, self.unloaded, &more);
        raised.iter().zip(&filling.tops).map(|(more, now)| more - now).collect()
    }

    /// Slopes corrected by what was found at another filling, to be used around `around`.
    pub(crate) fn corrected(
        &self,
        slopes: &Slopes,
        [from, to]: [&Filling; 2],
        around: &Filling,
    ) -> Slopes {
        let moved: Vec<f64> =
            to.counts.iter().zip(&from.counts).map(|(to, from)| to - from).collect();
        let length: f64 = moved.iter().map(|by| by * by).sum();
        let mut effects = slopes.effects.clone();
        if length > 0.0 {
            let found = CellEffect::between(&from.resting, &to.resting, 1.0);
            for quantity in quantities(&found) {
                let foreseen: f64 = effects
                    .iter()
                    .zip(&moved)
                    .map(|(effect, by)| quantity.value(effect) * by)
                    .sum();
                let missing = (quantity.value(&found) - foreseen) / length;
                for (effect, by) in effects.iter_mut().zip(&moved) {
                    quantity.add(effect, missing * by);
                }
            }
        }
        Slopes { effects, tops: self.top_slopes(around) }
    }
}

/// One number among those of an effect.
#[derive(Clone, Copy)]
enum Number {
    Clearance(usize),
    SurfacePressure(usize),
    FillPressure(usize),
    Pose(usize),
    Pelvis(Side),
    Thighs(Side),
}

impl Number {
    /// The number, m, slopes, Pa or N.
    fn value(self, effect: &CellEffect) -> f64 {
        match self {
            Self::Clearance(at) => effect.clearance[at],
            Self::SurfacePressure(at) => effect.surface_pressure[at],
            Self::FillPressure(at) => effect.fill_pressure[at],
            Self::Pose(at) => effect.pose[at],
            Self::Pelvis(side) => effect.regions.pelvis[side].to_n(),
            Self::Thighs(side) => effect.regions.thighs[side].to_n(),
        }
    }

    fn add(self, effect: &mut CellEffect, by: f64) {
        match self {
            Self::Clearance(at) => effect.clearance[at] += by,
            Self::SurfacePressure(at) => effect.surface_pressure[at] += by,
            Self::FillPressure(at) => effect.fill_pressure[at] += by,
            Self::Pose(at) => effect.pose[at] += by,
            Self::Pelvis(side) => add(&mut effect.regions.pelvis, side, by),
            Self::Thighs(side) => add(&mut effect.regions.thighs, side, by),
        }
    }
}

fn add(forces: &mut Sides<Force>, side: Side, newtons: f64) {
    let force = match side {
        Side::Left => &mut forces.left,
        Side::Right => &mut forces.right,
    };
    *force += Force::from_n(newtons);
}

/// The numbers of effects that aims look at.
fn quantities(effect: &CellEffect) -> Vec<Number> {
    let sites = 0..effect.clearance.len();
    let compartments = 0..effect.fill_pressure.len();
    let at_site = |at| [Number::Clearance(at), Number::SurfacePressure(at)];
    let sides = [Side::Left, Side::Right];
    (sites.flat_map(at_site))
        .chain(compartments.map(Number::FillPressure))
        .chain((0..3).map(Number::Pose))
        .chain(sides.map(Number::Pelvis))
        .chain(sides.map(Number::Thighs))
        .collect()
}
