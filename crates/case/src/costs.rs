//! What counts cost: all that a person should know to have changed, wanted or not.

use cushion::{Length, Pressure};

use crate::{GoalNumber, Mirror, Partners, Sides, SiteName, Want};

/// The counts that a change is told from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ToldFrom {
    /// The stock fill.
    Stock,
    /// The last counts on which a fitting check was passed.
    Passed,
    /// What is in the cushion.
    Present,
}

impl ToldFrom {
    /// How reports call it.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Stock => "stock-fill",
            Self::Passed => "passed-counts",
            Self::Present => "present-counts",
        }
    }
}

/// A number before and after.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BeforeAfter<T> {
    /// On the counts that are told from.
    pub before: T,
    /// On the counts that are told of.
    pub after: T,
}

/// A goal's number before and after; none where it has none.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GoalChange {
    /// The goal.
    pub want: Want,
    /// Its number.
    pub number: BeforeAfter<Option<GoalNumber>>,
}

/// Surface pressure at a site before and after.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SiteChange {
    /// The site.
    pub site: SiteName,
    /// Mean surface pressure on a disc of 15 mm radius.
    pub surface: BeforeAfter<Pressure>,
}

impl SiteChange {
    /// Whether a share says how it changes: from no pressure there is none.
    #[must_use]
    pub fn has_share(&self) -> bool {
        self.surface.before > Pressure::ZERO || self.surface.after <= Pressure::ZERO
    }

    /// The share by which it rises; negative where it falls.
    #[must_use]
    pub fn rise(&self) -> f64 {
        let BeforeAfter { before, after } = self.surface;
        if before > Pressure::ZERO { after / before - 1.0 } else { 0.0 }
    }
}

/// What counts change for the client, from other counts, as the model expects it.
#[derive(Clone, Debug, PartialEq)]
pub struct Costs {
    /// From which counts.
    pub from: ToldFrom,
    /// Each goal, in order.
    pub goals: Vec<GoalChange>,
    /// Each site with an injury, healed or not, and the coccyx of a client who slides.
    pub careful: Vec<SiteChange>,
    /// Cushion left under each seat bone.
    pub clearance: BeforeAfter<Sides<Length>>,
    /// Degrees by which the right side is turned up.
    pub roll_deg: BeforeAfter<f64>,
    /// Degrees by which the front is turned up.
    pub pitch_deg: BeforeAfter<f64>,
    /// The share of the load on each side.
    pub side_share: BeforeAfter<Sides<f64>>,
    /// The share of the load under the thighs.
    pub thigh_share: BeforeAfter<f64>,
    /// Every other site that gets more than a tenth more, the greatest rise first.
    pub risen: Vec<SiteChange>,
    /// Every site that has a pressure, those above among them, in the order of reports.
    pub sites: Vec<SiteChange>,
}

impl<T> BeforeAfter<T> {
    /// Both numbers changed alike.
    #[must_use]
    pub fn map<U>(self, of: impl Fn(T) -> U) -> BeforeAfter<U> {
        BeforeAfter { before: of(self.before), after: of(self.after) }
    }
}

impl Mirror for SiteChange {
    fn mirrored(&self, partners: &Partners) -> Self {
        Self { site: self.site.mirrored(partners), ..*self }
    }
}

impl Mirror for Costs {
    fn mirrored(&self, partners: &Partners) -> Self {
        let goal = |own: &GoalChange| GoalChange {
            want: own.want.mirrored(partners),
            number: own.number.map(|number| number.map(|number| number.mirrored(partners))),
        };
        // Told of the left first, as of any client.
        let mut careful = self.careful.mirrored(partners);
        careful.sort_by_key(|own| own.site);
        let mut sites = self.sites.mirrored(partners);
        sites.sort_by_key(|own| own.site);
        Self {
            from: self.from,
            goals: self.goals.iter().map(goal).collect(),
            careful,
            clearance: self.clearance.map(|own| Sides { left: own.right, right: own.left }),
            roll_deg: self.roll_deg.map(|degrees| 0.0 - degrees),
            pitch_deg: self.pitch_deg,
            side_share: self.side_share.map(|share| Sides { left: share.right, right: share.left }),
            thigh_share: self.thigh_share,
            risen: self.risen.mirrored(partners),
            sites,
        }
    }
}
