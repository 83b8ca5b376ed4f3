//! Aims: numbers that a filling is to have, each in a range, the most important first.
//!
//! Limits and goals are both made of aims. How far a filling is off an aim is counted in the
//! aim's own tolerance, so that millimetres and pascals can be added within one rank.

use cushion::{CompartmentIx, Pattern, Side};
use mechanics::{CellEffect, Resting, SiteName, UnloadedCushion};

/// A number of a filling.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Quantity {
    /// Cushion left under a seat bone, m.
    Clearance(Side),
    /// How much higher the right seat bone is than the left one, m.
    RightHigher,
    /// Mean surface pressure at a site, Pa.
    Surface(SiteName),
    /// Surface pressure at the right seat bone over that at the left one, less one.
    Uneven,
    /// Fill pressure of a compartment, Pa.
    Fill(CompartmentIx),
    /// Fill pressure of a compartment over the mean of these, less one.
    FillOverMean(CompartmentIx, Vec<CompartmentIx>),
    /// Unloaded top of some compartments above that of others, mean over mean, m.
    Step {
        /// The higher ones.
        of: Vec<CompartmentIx>,
        /// The lower ones.
        over: Vec<CompartmentIx>,
    },
    /// Unloaded top of a compartment above its walls, m.
    Top(CompartmentIx),
    /// Degrees by which the right side is turned up from how the client sits by themselves.
    Roll,
    /// Degrees by which the front is turned up.
    Pitch,
    /// The share of the load on the left side.
    LeftShare,
    /// The share of the load under the thighs.
    ThighShare,
    /// Cells in a compartment.
    Count(CompartmentIx),
}

/// A quantity with the range in which it is to be.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Aim {
    /// Zero for limits, then the goals in order, what is spared, and the goals closer.
    pub(crate) rank: usize,
    /// The number.
    pub(crate) quantity: Quantity,
    /// The least that will do.
    pub(crate) least: f64,
    /// The most that will do.
    pub(crate) most: f64,
    /// What counts as one tolerance off.
    pub(crate) unit: f64,
}

impl Aim {
    /// Whether the aim only goes with a goal, which is reached without it too: a load that is
    /// shared as far as an obliquity lets it.
    pub(crate) fn goes_with(&self) -> bool {
        self.quantity == Quantity::Uneven
    }

    /// The aim that is kept within so many tolerances.
    pub(crate) fn within(mut self, tolerances: f64) -> Self {
        self.least -= tolerances * self.unit;
        self.most += tolerances * self.unit;
        self
    }

    /// The aim that a value does not get worse.
    pub(crate) fn held_at(mut self, value: f64) -> Self {
        (self.least, self.most) = (self.least.min(value), self.most.max(value));
        self
    }

    /// How many tolerances a filling is off, either way; nothing where the body lacks the site.
    pub(crate) fn misses(&self, filling: &Filling) -> f64 {
        self.quantity.value(filling).map_or(0.0, |value| self.off(value).abs())
    }

    /// How far a value is off, in tolerances; negative where it is too little.
    pub(crate) fn off(&self, value: f64) -> f64 {
        ((value - self.most).max(0.0) - (self.least - value).max(0.0)) / self.unit
    }
}

/// One filling with all that aims ask for.
#[derive(Clone, Debug)]
pub(crate) struct Filling {
    pub(crate) counts: Vec<f64>,
    pub(crate) resting: Resting,
    /// Unloaded top of each compartment above its walls, m.
    pub(crate) tops: Vec<f64>,
}

/// Whole counts as numbers.
pub(crate) fn real(counts: &[u32]) -> Vec<f64> {
    counts.iter().map(|count| f64::from(*count)).collect()
}

/// The unloaded tops of counts, m.
pub(crate) fn tops(pattern: &Pattern, unloaded: &UnloadedCushion, counts: &[f64]) -> Vec<f64> {
    let pairs = pattern.indices().zip(counts);
    pairs.map(|(ix, count)| unloaded.at_count(ix, *count).crown.to_m()).collect()
}

impl Quantity {
    /// The value for a filling; none where the body lacks the site.
    pub(crate) fn value(&self, filling: &Filling) -> Option<f64> {
        let site = |name| filling.resting.sites.iter().find(|rest| rest.site.name == name);
        let clearance = |side| Some(site(SiteName::SeatBone(side))?.clearance.to_m());
        let surface = |name| Some(site(name)?.pressure.to_pa());
        let fill = |ix: CompartmentIx| filling.resting.compartments[ix.index()].pressure.to_pa();
        Some(match self {
            Self::Clearance(side) => clearance(*side)?,
            Self::RightHigher => clearance(Side::Right)? - clearance(Side::Left)?,
            Self::Surface(name) => surface(*name)?,
            Self::Uneven => {
                let left = surface(SiteName::SeatBone(Side::Left))?;
                surface(SiteName::SeatBone(Side::Right))? / left.max(1.0) - 1.0
            }
            Self::Fill(at) => fill(*at),
            Self::FillOverMean(at, all) => fill(*at) / mean(all, fill).max(1.0) - 1.0,
            Self::Step { of, over } => {
                let top = |ix: CompartmentIx| filling.tops[ix.index()];
                mean(of, top) - mean(over, top)
            }
            Self::Top(ix) => filling.tops[ix.index()],
            Self::Roll => libm::atan(filling.resting.pose[1]).to_degrees(),
            Self::Pitch => libm::atan(filling.resting.pose[2]).to_degrees(),
            Self::LeftShare => {
                let regions = &filling.resting.regions;
                regions.side(Side::Left) / regions.total()
            }
            Self::ThighShare => {
                let regions = &filling.resting.regions;
                regions.under_thighs() / regions.total()
            }
            Self::Count(ix) => filling.counts[ix.index()],
        })
    }

    /// What one cell more in each compartment does to the value, from its effects and from the
    /// slopes of the unloaded tops.
    pub(crate) fn slope(&self, filling: &Filling, slopes: &Slopes) -> Vec<f64> {
        let at_site = |name| filling.resting.sites.iter().position(|rest| rest.site.name == name);
        let each = |of: &dyn Fn(&CellEffect) -> f64| slopes.effects.iter().map(of).collect();
        let clearance = |side| at_site(SiteName::SeatBone(side));
        match self {
            Self::Clearance(side) => {
                let at = clearance(*side);
                each(&|effect| at.map_or(0.0, |at| effect.clearance[at]))
            }
            Self::RightHigher => {
                let both = clearance(Side::Left).zip(clearance(Side::Right));
                each(&|effect| both.map_or(0.0, |(l, r)| effect.clearance[r] - effect.clearance[l]))
            }
            Self::Surface(name) => {
                let at = at_site(*name);
                each(&|effect| at.map_or(0.0, |at| effect.surface_pressure[at]))
            }
            Self::Uneven => uneven_slope(filling, slopes),
            Self::Fill(at) => each(&|effect| effect.fill_pressure[at.index()]),
            Self::FillOverMean(at, all) => {
                let fill =
                    |ix: CompartmentIx| filling.resting.compartments[ix.index()].pressure.to_pa();
                let middle = mean(all, fill).max(1.0);
                each(&|effect| {
                    let slope = |ix: CompartmentIx| effect.fill_pressure[ix.index()];
                    slope(*at) / middle - fill(*at) * mean(all, slope) / (middle * middle)
                })
            }
            Self::Step { of, over } => {
                let part = |list: &[CompartmentIx], at: usize| {
                    if list.iter().any(|ix| ix.index() == at) {
                        1.0 / list.len() as f64
                    } else {
                        0.0
                    }
                };
                let tops = slopes.tops.iter().enumerate();
                tops.map(|(at, top)| top * (part(of, at) - part(over, at))).collect()
            }
            Self::Top(of) => {
                let tops = slopes.tops.iter().enumerate();
                tops.map(|(at, top)| if at == of.index() { *top } else { 0.0 }).collect()
            }
            // Turns stay so small that the slope of the angle is that of its tangent.
            Self::Roll => each(&|effect| effect.pose[1].to_degrees()),
            Self::Pitch => each(&|effect| effect.pose[2].to_degrees()),
            Self::LeftShare => {
                let total = filling.resting.regions.total();
                each(&|effect| effect.regions.side(Side::Left) / total)
            }
            Self::ThighShare => {
                let total = filling.resting.regions.total();
                each(&|effect| effect.regions.under_thighs() / total)
            }
            Self::Count(of) => {
                let all = 0..slopes.effects.len();
                all.map(|at| f64::from(u8::from(at == of.index()))).collect()
            }
        }
    }
}

fn uneven_slope(filling: &Filling, slopes: &Slopes) -> Vec<f64> {
    let at = |side| {
        let sites = filling.resting.sites.iter();
        sites.clone().position(|rest| rest.site.name == SiteName::SeatBone(side))
    };
    let Some((left, right)) = at(Side::Left).zip(at(Side::Right)) else {
        return vec![0.0; slopes.effects.len()];
    };
    let pressure = |at: usize| filling.resting.sites[at].pressure.to_pa().max(1.0);
    let (low, high) = (pressure(left), pressure(right));
    let slope = |effect: &CellEffect| {
        effect.surface_pressure[right] / low - high * effect.surface_pressure[left] / (low * low)
    };
    slopes.effects.iter().map(slope).collect()
}

/// What one cell more does: under the body, and to the unloaded tops.
#[derive(Clone, Debug)]
pub(crate) struct Slopes {
    pub(crate) effects: Vec<CellEffect>,
    pub(crate) tops: Vec<f64>,
}

fn mean(all: &[CompartmentIx], of: impl Fn(CompartmentIx) -> f64) -> f64 {
    all.iter().map(|ix| of(*ix)).sum::<f64>() / all.len().max(1) as f64
}
