//! What counts change for a client, wanted or not, from other counts.
//!
//! Both are solved on the mesh that is searched on, since differences need less; what is told after
//! the change are the numbers of the fine mesh, and before it those less the difference.

use case::{
    BeforeAfter, Costs, GoalChange, GoalNumber, GoalOutcome, PredictedSeat, Sides, SiteChange,
    SiteName, ToldFrom,
};
use cushion::{Length, Pressure, Side};

use crate::goals::aims::{Filling, Quantity};
use crate::goals::harm::{LITTLE, SITE};
use crate::goals::needs::Needs;

/// The share from which a rise is told: a tenth, from which it counts as harm.
const TOLD: f64 = SITE[0];

/// The numbers of two fillings that are compared.
pub(crate) struct Compared<'a> {
    pub(crate) before: &'a Filling,
    pub(crate) after: &'a Filling,
    /// The goals on each.
    pub(crate) goals: [&'a [GoalOutcome]; 2],
}

impl Compared<'_> {
    /// All that changes; `seat` are the numbers after it on the fine mesh.
    pub(crate) fn costs(&self, from: ToldFrom, needs: &Needs, seat: &PredictedSeat) -> Costs {
        let careful = needs.told_always();
        let sites: Vec<SiteChange> =
            SiteName::ALL.into_iter().filter_map(|site| self.site(seat, site)).collect();
        let mut risen: Vec<SiteChange> = (sites.iter().copied())
            .filter(|change| !careful.contains(&change.site))
            .filter(|change| change.rise() > TOLD && change.surface.after.to_pa() > LITTLE)
            .collect();
        risen.sort_by(|a, b| b.rise().total_cmp(&a.rise()).then(a.site.cmp(&b.site)));
        let turn = |quantity: Quantity, after: f64| self.lessened(&quantity, after);
        Costs {
            from,
            goals: self.goals(),
            careful: sites.iter().copied().filter(|own| careful.contains(&own.site)).collect(),
            clearance: self.clearance(seat),
            roll_deg: turn(Quantity::Roll, seat.roll_deg.central),
            pitch_deg: turn(Quantity::Pitch, seat.pitch_deg.central),
            side_share: self.side_share(seat),
            thigh_share: turn(Quantity::ThighShare, thigh_share(seat)),
            risen,
            sites,
        }
    }

    /// A number after the change, and before it.
    fn lessened(&self, quantity: &Quantity, after: f64) -> BeforeAfter<f64> {
        let values = quantity.value(self.before).zip(quantity.value(self.after));
        let change = values.map_or(0.0, |(before, after)| after - before);
        BeforeAfter { before: after - change, after }
    }

    fn clearance(&self, seat: &PredictedSeat) -> BeforeAfter<Sides<Length>> {
        let under = |side: Side| {
            let after = seat.clearance[side].central.to_m();
            self.lessened(&Quantity::Clearance(side), after).map(Length::from_m)
        };
        let (left, right) = (under(Side::Left), under(Side::Right));
        BeforeAfter {
            before: Sides { left: left.before, right: right.before },
            after: Sides { left: left.after, right: right.after },
        }
    }

    fn side_share(&self, seat: &PredictedSeat) -> BeforeAfter<Sides<f64>> {
        let left = self.lessened(&Quantity::LeftShare, left_share(seat));
        left.map(|left| Sides { left, right: 1.0 - left })
    }

    fn site(&self, seat: &PredictedSeat, site: SiteName) -> Option<SiteChange> {
        let after = seat.sites.iter().find(|own| own.site == site)?.surface.central;
        let surface = Quantity::Surface(site);
        let (was, is) = surface.value(self.before).zip(surface.value(self.after))?;
        // Pressures differ between meshes by a share rather than by a sum.
        let before = if is > 0.0 { after * (was / is) } else { Pressure::from_pa(was) };
        Some(SiteChange { site, surface: BeforeAfter { before, after } })
    }

    fn goals(&self) -> Vec<GoalChange> {
        let number = |goal: &GoalOutcome| -> Option<GoalNumber> { goal.reached };
        let [before, after] = self.goals;
        let pairs = before.iter().zip(after);
        pairs
            .map(|(before, after)| GoalChange {
                want: after.want,
                number: BeforeAfter { before: number(before), after: number(after) },
            })
            .collect()
    }
}

fn left_share(seat: &PredictedSeat) -> f64 {
    let side = |side| seat.pelvis_load[side] + seat.thigh_load[side];
    side(Side::Left) / (side(Side::Left) + side(Side::Right))
}

fn thigh_share(seat: &PredictedSeat) -> f64 {
    let both = |load: &Sides<cushion::Force>| load.left + load.right;
    both(&seat.thigh_load) / (both(&seat.thigh_load) + both(&seat.pelvis_load))
}
