//! From goals to aims, with the gates that refuse what would harm.

use case::{FrontSides, SiteName, Want};
use cushion::{CompartmentIx, Purpose, Side};

use crate::aims::{Aim, Quantity, State};
use crate::needs::Needs;
use crate::seated::Seated;
use cushion::Pattern;

/// Off-loading counts as reached from this share of what was wanted: a practice judgement.
const ENOUGH: f64 = 0.8;

/// How far beyond what is wanted off-loading is aimed: soft tissue, which is left out, takes a third
/// of the change of pressure, and half of it where the site itself is left as it is.
const BEYOND: f64 = 1.6;
/// How near the pelvis is brought to the height that is wanted, m; with the unit below 3 mm count
/// as reached.
const LEVEL_FREE: f64 = 0.3e-3;
/// One tolerance of that.
const LEVEL_UNIT: f64 = 2.7e-3;

/// What goals are turned into aims with.
pub(crate) struct Ground<'a> {
    pub(crate) needs: &'a Needs,
    pub(crate) pattern: &'a Pattern,
    pub(crate) seated: &'a Seated<'a>,
    /// The stock fill under the client, from which changes are counted.
    pub(crate) stock: &'a State,
}

/// One goal's aims, or why it has none.
#[derive(Clone, Debug)]
pub(crate) struct Wanted {
    pub(crate) want: Want,
    /// The aims; or why the goal is refused.
    pub(crate) aims: Result<Vec<Aim>, String>,
}

impl Ground<'_> {
    /// All goals in order.
    pub(crate) fn wanted(&self) -> Vec<Wanted> {
        let goals = self.needs.goals.iter().enumerate();
        goals
            .map(|(at, goal)| {
                let aims = self.refusal(goal.want).map_or_else(|| self.aims(goal.want), Err);
                // What a goal is about comes before what goes with it.
                let ranked =
                    |aim: Aim| Aim { rank: 2 * at + 1 + usize::from(aim.goes_with()), ..aim };
                let aims = aims.map(|aims| aims.into_iter().map(ranked).collect());
                Wanted { want: goal.want, aims }
            })
            .collect()
    }

    /// Why a goal would harm this client.
    fn refusal(&self, want: Want) -> Option<String> {
        let needs = self.needs;
        match want {
            Want::CorrectObliquity => {
                let oblique = needs.oblique?;
                if oblique.reducible <= cushion::Length::ZERO {
                    return Some(
                        "the obliquity is fixed: accommodate it, a fixed pelvis is not forced level"
                            .to_owned(),
                    );
                }
                needs.injured.contains(&SiteName::SeatBone(oblique.lower)).then(|| {
                    format!(
                        "the {} seat bone is injured, and levelling would build up under it",
                        oblique.lower.words()
                    )
                })
            }
            Want::Shelf { .. } if needs.fixed_posterior_tilt => Some(
                "the pelvis is fixed in posterior tilt and would slide over a shelf".to_owned(),
            ),
            Want::Shelf { .. } if needs.stiff_hip => Some(
                "a hip bends less than 90 degrees, and a shelf would roll the pelvis back"
                    .to_owned(),
            ),
            _ => None,
        }
    }

    fn aims(&self, want: Want) -> Result<Vec<Aim>, String> {
        match want {
            Want::CorrectObliquity => {
                let oblique = self.needs.oblique;
                let oblique = oblique.ok_or("no obliquity is written down in the client's file")?;
                let wanted = oblique.right_higher(true);
                Ok(vec![near(Quantity::RightHigher, wanted, LEVEL_FREE, LEVEL_UNIT)])
            }
            Want::AccommodateObliquity => {
                let oblique = self.needs.oblique;
                let oblique = oblique.ok_or("no obliquity is written down in the client's file")?;
                // As it was measured, so that the trunk does not lean; and the load shared, as far
                // as two seat bones of different height can.
                let wanted = oblique.right_higher(false);
                Ok(vec![
                    near(Quantity::RightHigher, wanted, LEVEL_FREE, LEVEL_UNIT),
                    near(Quantity::Uneven, 0.0, 0.25, 0.10),
                ])
            }
            Want::OffLoad { site, share } => {
                let quantity = Quantity::Surface(site);
                let stock = quantity.value(self.stock).unwrap_or(0.0);
                if stock < 300.0 {
                    return Err(format!("the {} carries next to nothing already", site.words()));
                }
                let aimed = BEYOND * share;
                let unit = (aimed - ENOUGH * share) * stock;
                let most = (1.0 - aimed) * stock;
                Ok(vec![Aim { rank: 0, quantity, least: f64::NEG_INFINITY, most, unit }])
            }
            Want::Shelf { height } => {
                let (of, over) = (self.shelf()?, self.under_seat_bones());
                Ok(vec![near(Quantity::Step { of, over }, height.to_m(), 1e-3, 4e-3)])
            }
            Want::LowerFront { sides, by } => {
                let lowered = |at: usize| {
                    near(Quantity::Top(at), self.stock.tops[at] - by.to_m(), 1e-3, 2e-3)
                };
                Ok(self.front(sides)?.into_iter().map(lowered).collect())
            }
            Want::MedialSupport { height } => {
                self.raised(&[Purpose::MedialThighSupport], height.to_m())
            }
            Want::LateralSupport { height } => {
                let purposes = [Purpose::LateralThighSupport, Purpose::LateralPelvicSupport];
                self.raised(&purposes, height.to_m())
            }
            Want::EqualFirmness => {
                let all: Vec<usize> = self.carrying();
                let aim =
                    |at: &usize| near(Quantity::FillOverMean(*at, all.clone()), 0.0, 0.05, 0.05);
                Ok(all.iter().map(aim).collect())
            }
            Want::NearStock => Ok(Vec::new()),
        }
    }

    fn with(&self, keep: impl Fn(CompartmentIx) -> bool) -> Vec<usize> {
        self.pattern.indices().filter(|ix| keep(*ix)).map(CompartmentIx::index).collect()
    }

    /// Compartments that carry a twentieth of the mean or more at the stock fill.
    fn carrying(&self) -> Vec<usize> {
        let all = &self.stock.resting.compartments;
        let mean = all.iter().map(|own| own.load.to_n()).sum::<f64>() / all.len() as f64;
        (0..all.len()).filter(|at| all[*at].load.to_n() > 0.05 * mean).collect()
    }

    /// The compartment under a place that is so far from a site, m.
    fn under(&self, site: SiteName, forward: f64) -> Option<usize> {
        let [x, y] = self.seated.body().site(site)?.at;
        self.seated.model().compartment_at([x, y + forward])
    }

    /// The compartments under the disc of a site.
    pub(crate) fn under_site(&self, site: SiteName) -> Vec<usize> {
        under_site(self.seated, site)
    }

    fn both(&self, of: impl Fn(Side) -> Option<usize>) -> Vec<usize> {
        let mut both: Vec<usize> = [Side::Left, Side::Right].into_iter().filter_map(of).collect();
        both.dedup();
        both
    }

    fn under_seat_bones(&self) -> Vec<usize> {
        self.both(|side| self.under(SiteName::SeatBone(side), 0.0))
    }

    /// The compartments of a shelf: those made for it, or those some 70 mm in front of the seat
    /// bones.
    fn shelf(&self) -> Result<Vec<usize>, String> {
        let made = self.with(|ix| self.pattern[ix].purpose == Purpose::PreIschialShelf);
        if !made.is_empty() {
            return Ok(made);
        }
        let bones = self.under_seat_bones();
        let mut front = self.both(|side| self.under(SiteName::SeatBone(side), 0.070));
        front.retain(|at| !bones.contains(at));
        if front.is_empty() {
            return Err("this layout has no seam close in front of the seat bones; a shelf needs \
                        a layout with one"
                .to_owned());
        }
        Ok(front)
    }

    /// The compartments at the front edge under the thighs.
    fn front(&self, sides: FrontSides) -> Result<Vec<usize>, String> {
        let depth = self.pattern.size().depth().to_m();
        let edge = |side: Side| {
            let [x, _] = self.seated.body().site(SiteName::Thigh(side))?.at;
            self.seated.model().compartment_at([x, depth - 0.030])
        };
        let wanted = match sides {
            FrontSides::One(side) => {
                let own = edge(side).filter(|own| edge(side.other()) != Some(*own));
                own.map(|own| vec![own])
            }
            FrontSides::Both => Some(self.both(edge)).filter(|both| !both.is_empty()),
        };
        wanted.ok_or_else(|| "this layout has no compartment of its own there".to_owned())
    }

    /// Aims for compartments of some purposes to be higher than all others.
    fn raised(&self, purposes: &[Purpose], height: f64) -> Result<Vec<Aim>, String> {
        let of = self.with(|ix| purposes.contains(&self.pattern[ix].purpose));
        if of.is_empty() {
            return Err("this layout has no compartments for it".to_owned());
        }
        let over = self.with(|ix| {
            let purpose = self.pattern[ix].purpose;
            !purposes.contains(&purpose)
                && matches!(
                    purpose,
                    Purpose::SeatBone | Purpose::Thigh | Purpose::FrontEdge | Purpose::General
                )
        });
        if over.is_empty() {
            return Err("this layout has nothing beside it to be higher than".to_owned());
        }
        let aim = |at: usize| {
            let quantity = Quantity::Step { of: vec![at], over: over.clone() };
            near(quantity, height, 1e-3, 4e-3)
        };
        Ok(of.into_iter().map(aim).collect())
    }
}

/// The compartments under the disc of a site of a body.
pub(crate) fn under_site(seated: &Seated<'_>, site: SiteName) -> Vec<usize> {
    let Some(site) = seated.body().site(site) else { return Vec::new() };
    let [x, y] = site.at;
    let around = [[0.0, 0.0], [0.015, 0.0], [-0.015, 0.0], [0.0, 0.015], [0.0, -0.015]];
    let places = around.iter().map(|[right, forward]| [x + right, y + forward]);
    let mut under: Vec<usize> = places.filter_map(|at| seated.model().compartment_at(at)).collect();
    under.sort_unstable();
    under.dedup();
    under
}

/// An aim at a value, within `free` of it for nothing and `unit` more for one tolerance.
fn near(quantity: Quantity, value: f64, free: f64, unit: f64) -> Aim {
    Aim { rank: 0, quantity, least: value - free, most: value + free, unit }
}
