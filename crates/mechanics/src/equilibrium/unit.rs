//! The unloaded sheet where every seam holds it.
//!
//! Then each compartment is on its own: with the unit solution phi (curvature -1, zero on the
//! seams) the sheet stands at `h + c phi`, its tension follows from `a = c^2/2 int phi`, its
//! volume is `A h + c int phi`, and only c is left to find. Where a seam lets go of the sheet, or
//! the base is touched, this is a first guess.

use crate::fill::FillLaw;

use super::problem::{RestProblem, SheetAndPose};

/// Share of the bracket to which c is found: near rounding.
const NEAR: f64 = 1e-14;
/// What presses where the sheet would leave no room, Pa: more than cells ever do.
const NO_ROOM: f64 = 1e12;

impl RestProblem<'_> {
    /// The unloaded sheet as though every seam held it.
    pub(super) fn held_by_seams(&self, unit: &[f64]) -> SheetAndPose {
        let mut sheet = vec![self.wall; unit.len()];
        for (compartment, law) in self.laws.iter().enumerate() {
            let steepness = self.steepness(compartment, law, unit);
            for node in &self.level.patches[compartment].nodes {
                if !self.level.seam[*node as usize] {
                    sheet[*node as usize] += steepness * unit[*node as usize];
                }
            }
        }
        SheetAndPose { sheet, pose: [0.0; 3] }
    }

    /// The c of a compartment, 1/m.
    fn steepness(&self, compartment: usize, law: &FillLaw, unit: &[f64]) -> f64 {
        let patch = &self.level.patches[compartment];
        let unit_volume = crate::linear::dot(&patch.gather(unit), &patch.areas);
        let cover = self.cover(patch);
        // Tension less what presses, which rises with c: its root is sought.
        let left = |steepness: f64| {
            let volume = patch.area * self.wall + steepness * unit_volume;
            if volume <= 0.0 {
                return -NO_ROOM;
            }
            let (tension, _) = cover.tension(0.5 * steepness * steepness * unit_volume);
            steepness * tension + self.parameters.cover_weight - law.pressure(volume).pressure
        };
        let low = -self.parameters.cover_weight.abs() / self.parameters.tension_slack;
        let mut high = 1.0;
        while left(high) < 0.0 {
            high *= 2.0;
        }
        // The ITP method with the constants that its authors advise (Oliveira and Takahashi, ACM
        // Trans. Math. Softw. 47, 2020).
        let (near, k1) = (NEAR * (high - low), 0.2 / (high - low));
        kurbo::common::solve_itp(left, low, high, near, 1, k1, left(low), left(high))
    }
}
