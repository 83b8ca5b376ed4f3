//! A few cells out from under seat bones over which fingers are held: as many as free them, leave enough
//! under both and load nothing that is spared.

use case::SiteName;
use cushion::{CompartmentIx, Side};

use crate::goals::aims::{Filling, Quantity};
use crate::goals::limits::loads_more;
use crate::goals::needs::Needs;
use crate::goals::wanted::under_site;
use crate::search::steps::Search;

/// Clearance that is left under a bone from under which cells are taken, m: the limit of 25 mm and how
/// finely a hand tells it.
pub(crate) const LEFT_OVER: f64 = 28e-3;
/// The most cells that are taken out at once: a few, and then felt again.
const A_FEW: u32 = 6;
/// The share of a compartment that is taken out at once at most.
const A_FEW_SHARE: f64 = 0.10;
/// The share of the surface pressure that is to go.
const EASED: f64 = 0.10;

/// A cushion that holds fingers.
pub(crate) struct FewOut<'a> {
    /// Solves for counts.
    pub(crate) search: &'a Search<'a>,
    pub(crate) needs: &'a Needs,
    /// The cushion as it is.
    pub(crate) now: &'a Filling,
    /// What is left under the left and the right seat bone, m: what a hand feels, or what the model says of
    /// earlier hands where that is less, or where none felt now.
    pub(crate) clearance: [f64; 2],
    /// The sides on which fingers are held.
    pub(crate) sides: &'a [Side],
}

impl FewOut<'_> {
    /// The cushion with a few cells less; none where that would harm, or does not ease each bone.
    pub(crate) fn found(&self) -> Option<Filling> {
        let mut found: Option<Filling> = None;
        for _ in 0..A_FEW {
            let filling = found.as_ref().unwrap_or(self.now);
            let mut counts = filling.counts.clone();
            for side in self.sides.iter().filter(|side| !self.is_eased(filling, **side)) {
                let at = self.fullest_under(*side)?;
                let most = (A_FEW_SHARE * self.now.counts[at]).floor();
                if self.now.counts[at] - counts[at] < most {
                    counts[at] -= 1.0;
                }
            }
            if counts == filling.counts {
                break;
            }
            let then = self.search.filled(&counts, Some(self.now))?;
            if !self.leaves_enough(&then) || self.loads_what_is_spared(&then) {
                break;
            }
            found = Some(then);
        }
        // Cells that ease a bone by what nobody can tell are left where they are.
        found.filter(|then| {
            self.sides.iter().all(|side| loads_more(SiteName::SeatBone(*side), then, self.now))
        })
    }

    /// The compartment under a seat bone that holds most cells.
    fn fullest_under(&self, side: Side) -> Option<usize> {
        let counts = &self.now.counts;
        let Search { pattern, solved_on, .. } = self.search;
        let under = under_site(pattern, solved_on, SiteName::SeatBone(side));
        let under = under.into_iter().map(CompartmentIx::index);
        under.max_by(|a, b| counts[*a].total_cmp(&counts[*b]).then(a.cmp(b)))
    }

    /// Whether a filling presses a seat bone so much less that fingers are free.
    fn is_eased(&self, then: &Filling, side: Side) -> bool {
        let surface = |filling| Quantity::Surface(SiteName::SeatBone(side)).value(filling);
        let both = surface(self.now).zip(surface(then));
        both.is_some_and(|(now, then)| then <= (1.0 - EASED) * now)
    }

    /// Whether enough is left under both bones.
    fn leaves_enough(&self, then: &Filling) -> bool {
        [Side::Left, Side::Right].into_iter().zip(self.clearance).all(|(side, left)| {
            let clearance = |filling| Quantity::Clearance(side).value(filling);
            let both = clearance(self.now).zip(clearance(then));
            both.is_some_and(|(now, then)| left + then - now >= LEFT_OVER)
        })
    }

    /// Whether a filling loads a site with an injury, or one that a goal takes load off.
    fn loads_what_is_spared(&self, then: &Filling) -> bool {
        let injured = self.needs.injured.iter().copied();
        let mut spared = injured.chain(self.needs.relieved());
        spared.any(|site| loads_more(site, self.now, then))
    }
}
