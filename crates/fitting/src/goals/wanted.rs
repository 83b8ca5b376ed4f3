//! From goals to aims, with the gates that refuse what would harm.

use case::{FrontSides, Shortfall, SiteName, Want};
use cushion::{CompartmentIx, Purpose, Side};

use crate::goals::aims::{Aim, Filling, Quantity};
use crate::goals::needs::Needs;
use crate::prediction::client_on_cushion::{ClientOnCushion, SearchMeshes};
use cushion::Pattern;

/// Off-loading counts as reached from this share of what was wanted: a practice judgement.
const ENOUGH: f64 = 0.8;

/// The part of off-loading that soft tissue leaves: the model's body is rigid, and a body whose tissue
/// gives way by 0.5 MPa/m keeps about two thirds of the change, half of the bodies 0.5 to 0.75 (the
/// audit of plans). What is told as reached is so much less than what the model says.
pub(crate) const LEFT_BY_TISSUE: f64 = 0.65;
/// How near the pelvis is brought to the height that is wanted, m; with the unit below 3 mm count
/// as reached.
const LEVEL_FREE: f64 = 0.3e-3;
/// One tolerance of that.
const LEVEL_UNIT: f64 = 2.7e-3;

/// How near a height is brought to what is wanted, m: less is nothing that a hand
/// tells, a practice judgement.
const HEIGHT_FREE: f64 = 1e-3;
/// One tolerance of a step between tops: with what is free, 5 mm less count as
/// reached, where that is not more than half.
const STEP_UNIT: f64 = 4e-3;
/// One tolerance of a top that is lowered: with what is free, 3 mm count as
/// reached, where that is not more than half.
const TOP_UNIT: f64 = 2e-3;
/// The most that may be missing of a height for it to count as reached, and what is nothing, as shares
/// of what was asked: half of a small height is there, whatever a hand tells.
const MISSED_PART: f64 = 0.5;
const FREE_PART: f64 = 0.1;
/// The share of a step that its own compartments are to supply: what is made by lowering the seat is
/// no support.
const OWN_PART: f64 = 0.5;
/// The same of a shelf, which is made by lowering what is behind it too, as far as the clearance
/// lets it.
const OWN_PART_OF_SHELF: f64 = 0.25;
/// How far the tops beside a support may fall for nothing, m; with one tolerance 3 mm.
const FALLS_FREE: f64 = 2e-3;
/// One tolerance of both, m.
const OWN_UNIT: f64 = 1e-3;
/// The share of the stock fill's cells that may be elsewhere for counts to be near it: a practice
/// judgement, about what lies between the stock counts of two cells that differ by their tolerance.
pub(crate) const NEAR_STOCK: f64 = 0.05;
/// The share by which two seat bones of different height may be loaded unevenly for nothing, and
/// one tolerance of it: practice judgements.
const UNEVEN_FREE: f64 = 0.25;
const UNEVEN_UNIT: f64 = 0.10;
/// The share by which a compartment may be firmer than the mean for nothing, and one tolerance of
/// it: together half of what two fingers tell apart.
const FIRMNESS_FREE: f64 = 0.05;
const FIRMNESS_UNIT: f64 = 0.05;
/// Surface pressure from which there is something to take away, Pa, about 2 mmHg: a practice
/// judgement.
const NEXT_TO_NOTHING: f64 = 300.0;
/// The share of the mean load from which a compartment carries: others have no firmness to match.
const CARRIES: f64 = 0.05;
/// How far in front of the seat bones a shelf begins, m: a practice judgement.
const SHELF_FORWARD: f64 = 0.070;
/// How far behind the front edge a thigh lies on the front compartments, m: a practice judgement.
const FROM_FRONT: f64 = 0.030;
/// Radius of the disc of a site, m: as that over which surface pressure is taken.
const RIM: f64 = 0.015;

/// What goals are turned into aims with.
pub(crate) struct GoalReader<'a> {
    pub(crate) needs: &'a Needs,
    pub(crate) pattern: &'a Pattern,
    pub(crate) meshes: &'a SearchMeshes<'a>,
    /// The stock fill under the client, from which changes are counted.
    pub(crate) stock: &'a Filling,
}

/// Tolerances within which a goal is brought before anything is spared: one counts as met, and the tenth
/// is for what whole cells and a finer mesh differ by.
pub(crate) const MET: f64 = 0.9;
/// Tolerances within which it is brought where that costs nothing of what is spared.
const CLOSER: f64 = 0.5;

/// One goal's aims, or why it has none.
#[derive(Clone, Debug)]
pub(crate) struct Wanted {
    pub(crate) want: Want,
    /// The aims; or why the goal is refused.
    pub(crate) aims: Result<Vec<Aim>, Shortfall>,
}

impl Wanted {
    /// What is pursued of it: that it is met, and after what is spared, that it is met closer; nothing of
    /// a goal that is refused.
    pub(crate) fn pursued(&self, needs: &Needs) -> Vec<Aim> {
        let both = |aim: &Aim| {
            let closer = Needs::closer(aim.rank, needs.spared_rank());
            [aim.clone().within(MET), Aim { rank: closer, ..aim.clone() }.within(CLOSER)]
        };
        self.aims.iter().flatten().flat_map(both).collect()
    }
}

impl GoalReader<'_> {
    /// All goals in order.
    pub(crate) fn wanted(&self) -> Vec<Wanted> {
        let goals = self.needs.goals.iter().enumerate();
        goals
            .map(|(at, goal)| {
                let aims = self.refusal(goal.want).map_or_else(|| self.aims(goal.want), Err);
                // What a goal is about comes before what goes with it.
                let ranked = |aim: Aim| Aim { rank: Needs::rank(at, aim.goes_with()), ..aim };
                let aims = aims.map(|aims| aims.into_iter().map(ranked).collect());
                Wanted { want: goal.want, aims }
            })
            .collect()
    }

    /// Why a goal would harm this client.
    fn refusal(&self, want: Want) -> Option<Shortfall> {
        let needs = self.needs;
        match want {
            Want::CorrectObliquity => {
                let oblique = needs.oblique?;
                if oblique.reducible <= cushion::Length::ZERO {
                    return Some(Shortfall::FixedObliquity);
                }
                let injured = needs.injured.contains(&SiteName::SeatBone(oblique.lower));
                injured.then_some(Shortfall::InjuredLowSide(oblique.lower))
            }
            Want::Shelf { .. } if needs.fixed_posterior_tilt => Some(Shortfall::FixedPosteriorTilt),
            Want::Shelf { .. } if needs.stiff_hip => Some(Shortfall::StiffHip),
            _ => None,
        }
    }

    fn aims(&self, want: Want) -> Result<Vec<Aim>, Shortfall> {
        match want {
            Want::CorrectObliquity => {
                let oblique = self.needs.oblique.ok_or(Shortfall::NoObliquity)?;
                let wanted = oblique.right_higher(true);
                Ok(vec![near(Quantity::RightHigher, wanted, LEVEL_FREE, LEVEL_UNIT)])
            }
            Want::AccommodateObliquity => {
                let oblique = self.needs.oblique.ok_or(Shortfall::NoObliquity)?;
                // As it was measured, so that the trunk does not lean; and the load shared, as far
                // as two seat bones of different height can.
                let wanted = oblique.right_higher(false);
                Ok(vec![
                    near(Quantity::RightHigher, wanted, LEVEL_FREE, LEVEL_UNIT),
                    near(Quantity::Uneven, 0.0, UNEVEN_FREE, UNEVEN_UNIT),
                ])
            }
            Want::OffLoad { site, share } => self.relieved(site, share),
            Want::Shelf { height } => {
                let (of, over) = (self.shelf()?, self.under_seat_bones());
                let own: Vec<Aim> = of
                    .iter()
                    .map(|ix| self.risen(*ix, OWN_PART_OF_SHELF * height.to_m()))
                    .collect();
                let step = Quantity::Step { of, over };
                let step = high(step, height.to_m(), height.to_m(), STEP_UNIT);
                Ok(std::iter::once(step).chain(own).collect())
            }
            Want::LowerFront { sides, by } => {
                let lowered = |ix: CompartmentIx| {
                    let wanted = self.stock.tops[ix.index()] - by.to_m();
                    high(Quantity::Top(ix), wanted, by.to_m(), TOP_UNIT)
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
                let all = self.carrying();
                let aim = |ix: &CompartmentIx| {
                    let quantity = Quantity::FillOverMean(*ix, all.clone());
                    near(quantity, 0.0, FIRMNESS_FREE, FIRMNESS_UNIT)
                };
                Ok(all.iter().map(aim).collect())
            }
            Want::NearStock => {
                let near_stock = |ix: CompartmentIx| {
                    let stock = self.stock.counts[ix.index()];
                    near(Quantity::Count(ix), stock, 0.0, (NEAR_STOCK * stock).max(0.5))
                };
                Ok(self.pattern.indices().map(near_stock).collect())
            }
        }
    }

    /// Less surface pressure at a site by a share of that at stock.
    fn relieved(&self, site: SiteName, share: f64) -> Result<Vec<Aim>, Shortfall> {
        let quantity = Quantity::Surface(site);
        let stock = quantity.value(self.stock).unwrap_or(0.0);
        if stock < NEXT_TO_NOTHING {
            return Err(Shortfall::NothingToTake(site));
        }
        let rigid = share / LEFT_BY_TISSUE;
        let unit = (1.0 - ENOUGH) * rigid * stock;
        let most = (1.0 - rigid) * stock;
        Ok(vec![Aim { rank: 0, quantity, least: f64::NEG_INFINITY, most, unit }])
    }

    fn with(&self, keep: impl Fn(CompartmentIx) -> bool) -> Vec<CompartmentIx> {
        self.pattern.indices().filter(|ix| keep(*ix)).collect()
    }

    /// Compartments that carry a twentieth of the mean or more at the stock fill.
    fn carrying(&self) -> Vec<CompartmentIx> {
        let all = &self.stock.resting.compartments;
        let mean =
            all.iter().map(|compartment| compartment.load.to_n()).sum::<f64>() / all.len() as f64;
        self.with(|ix| all[ix.index()].load.to_n() > CARRIES * mean)
    }

    /// The compartment under a place that is so far from a site, m.
    fn under(&self, site: SiteName, forward: f64) -> Option<CompartmentIx> {
        let [x, y] = self.meshes.coarse.body().site(site)?.at;
        compartment_at(self.pattern, &self.meshes.coarse, [x, y + forward])
    }

    /// The compartments under the disc of a site.
    pub(crate) fn under_site(&self, site: SiteName) -> Vec<CompartmentIx> {
        under_site(self.pattern, &self.meshes.coarse, site)
    }

    fn both(&self, of: impl Fn(Side) -> Option<CompartmentIx>) -> Vec<CompartmentIx> {
        let both = [Side::Left, Side::Right].into_iter();
        let mut both: Vec<CompartmentIx> = both.filter_map(of).collect();
        both.dedup();
        both
    }

    fn under_seat_bones(&self) -> Vec<CompartmentIx> {
        self.both(|side| self.under(SiteName::SeatBone(side), 0.0))
    }

    /// The compartments of a shelf: those made for it, or those some 70 mm in front of the seat
    /// bones.
    fn shelf(&self) -> Result<Vec<CompartmentIx>, Shortfall> {
        let made = self.with(|ix| self.pattern[ix].purpose == Purpose::PreIschialShelf);
        if !made.is_empty() {
            return Ok(made);
        }
        let bones = self.under_seat_bones();
        let mut front = self.both(|side| self.under(SiteName::SeatBone(side), SHELF_FORWARD));
        front.retain(|at| !bones.contains(at));
        if front.is_empty() {
            return Err(Shortfall::NoSeamForShelf);
        }
        Ok(front)
    }

    /// The compartments at the front edge under the thighs.
    fn front(&self, sides: FrontSides) -> Result<Vec<CompartmentIx>, Shortfall> {
        let depth = self.pattern.size().depth().to_m();
        let edge = |side: Side| {
            let [x, _] = self.meshes.coarse.body().site(SiteName::Thigh(side))?.at;
            compartment_at(self.pattern, &self.meshes.coarse, [x, depth - FROM_FRONT])
        };
        let wanted = match sides {
            FrontSides::One(side) => {
                let compartment =
                    edge(side).filter(|compartment| edge(side.other()) != Some(*compartment));
                compartment.map(|compartment| vec![compartment])
            }
            FrontSides::Both => Some(self.both(edge)).filter(|both| !both.is_empty()),
        };
        wanted.ok_or(Shortfall::NoFront)
    }

    /// Aims for compartments of some purposes to be higher than all others.
    fn raised(&self, purposes: &[Purpose], height: f64) -> Result<Vec<Aim>, Shortfall> {
        let of = self.with(|ix| purposes.contains(&self.pattern[ix].purpose));
        if of.is_empty() {
            return Err(Shortfall::NoCompartments);
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
            return Err(Shortfall::NothingBeside);
        }
        let step = |ix: &CompartmentIx| {
            let quantity = Quantity::Step { of: vec![*ix], over: over.clone() };
            high(quantity, height, height, STEP_UNIT)
        };
        let steps: Vec<Aim> = of.iter().map(step).collect();
        let own = of.iter().map(|ix| self.risen(*ix, OWN_PART * height));
        let others = over.iter().map(|ix| {
            let least = self.stock.tops[ix.index()] - FALLS_FREE;
            at_least(Quantity::Top(*ix), least, OWN_UNIT)
        });
        Ok(steps.into_iter().chain(own).chain(others).collect())
    }

    /// That a compartment supplies so much of a step itself; one tolerance less counts as reached.
    fn risen(&self, ix: CompartmentIx, part: f64) -> Aim {
        let least = self.stock.tops[ix.index()] + part + OWN_UNIT;
        at_least(Quantity::Top(ix), least, OWN_UNIT)
    }
}

fn at_least(quantity: Quantity, least: f64, unit: f64) -> Aim {
    Aim { rank: 0, quantity, least, most: f64::INFINITY, unit }
}

/// The compartment at a place, m.
fn compartment_at(
    pattern: &Pattern,
    seated: &ClientOnCushion<'_>,
    at: [f64; 2],
) -> Option<CompartmentIx> {
    pattern.indices().nth(seated.model().compartment_at(at)?)
}

/// The compartments under the disc of a site of a body.
pub(crate) fn under_site(
    pattern: &Pattern,
    seated: &ClientOnCushion<'_>,
    site: SiteName,
) -> Vec<CompartmentIx> {
    let Some(site) = seated.body().site(site) else { return Vec::new() };
    let [x, y] = site.at;
    let around = [[0.0, 0.0], [RIM, 0.0], [-RIM, 0.0], [0.0, RIM], [0.0, -RIM]];
    let places = around.iter().map(|[right, forward]| [x + right, y + forward]);
    let mut under: Vec<CompartmentIx> =
        places.filter_map(|at| compartment_at(pattern, seated, at)).collect();
    under.sort_unstable();
    under.dedup();
    under
}

/// An aim at a height that is so far from none, with a tolerance of at most `unit`.
fn high(quantity: Quantity, value: f64, asked: f64, unit: f64) -> Aim {
    let free = HEIGHT_FREE.min(FREE_PART * asked);
    near(quantity, value, free, unit.min(MISSED_PART * asked - free))
}

/// An aim at a value, within `free` of it for nothing and `unit` more for one tolerance.
fn near(quantity: Quantity, value: f64, free: f64, unit: f64) -> Aim {
    Aim { rank: 0, quantity, least: value - free, most: value + free, unit }
}
