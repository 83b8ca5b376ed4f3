//! What of a client's file the goals and their gates look at.

use case::{Client, Flexibility, Goal, Healing, MeasuredAt, SiteName, Tilt, Want};
use cushion::{Length, Side};
use mechanics::{ASIS_SPACING, SeatedClient};

use crate::goals::limits::{A_LITTLE_MORE, NO_MORE};

/// An obliquity, as high as it is at the seat bones.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Oblique {
    /// The side that is lower.
    pub(crate) lower: Side,
    /// By how much.
    pub(crate) by: Length,
    /// How much of it can be taken away.
    pub(crate) reducible: Length,
}

impl Oblique {
    /// How much higher the right seat bone is by this, m; by what is left of it where only the
    /// reducible part is taken away.
    pub(crate) fn right_higher(&self, corrected: bool) -> f64 {
        let by = if corrected { self.by - self.reducible } else { self.by };
        match self.lower {
            Side::Left => by.to_m(),
            Side::Right => -by.to_m(),
        }
    }
}

/// What goals and gates look at.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Needs {
    /// The goals, the most important first.
    pub(crate) goals: Vec<Goal>,
    /// The obliquity, where there is one.
    pub(crate) oblique: Option<Oblique>,
    /// Sites with an injury, open or healing.
    pub(crate) injured: Vec<SiteName>,
    /// Sites with a healed injury.
    pub(crate) healed: Vec<SiteName>,
    /// Sites with a healed injury, and those that feel nothing.
    pub(crate) at_risk: Vec<SiteName>,
    /// Whether the pelvis tends to slide forward: it is tilted back.
    pub(crate) slides: bool,
    /// Whether the pelvis is fixed in posterior tilt.
    pub(crate) fixed_posterior_tilt: bool,
    /// Whether a hip bends less than 90 degrees.
    pub(crate) stiff_hip: bool,
}

impl Needs {
    /// Reads them from a client.
    pub(crate) fn of(client: &Client) -> Self {
        let posture = &client.posture;
        let posterior = posture.tilt.filter(|tilt| tilt.direction == Tilt::Posterior);
        let hips = [posture.hip_flexion.left, posture.hip_flexion.right];
        Self {
            goals: client.goals.clone(),
            oblique: oblique(client),
            injured: client.skin.unhealed(),
            healed: healed(client),
            at_risk: at_risk(client),
            slides: posterior.is_some(),
            fixed_posterior_tilt: posterior.is_some_and(|tilt| tilt.fixed),
            stiff_hip: hips.into_iter().flatten().any(|degrees| degrees < RIGHT_ANGLE),
        }
    }
}

impl Needs {
    /// Sites of which the pressure may rise by little, each with the share: those with an injury, and
    /// those at risk. Under the coccyx of a client who slides it is as if it were injured.
    pub(crate) fn careful(&self) -> Vec<(SiteName, f64)> {
        let share = |site: &SiteName| {
            let sliding = self.slides && *site == SiteName::Coccyx;
            if self.injured.contains(site) || sliding {
                Some((*site, NO_MORE))
            } else {
                self.at_risk.contains(site).then_some((*site, A_LITTLE_MORE))
            }
        };
        SiteName::ALL.iter().filter_map(share).collect()
    }

    /// Sites of which every change is told, however small: those with an injury, healed or not, and
    /// the coccyx of a client who slides.
    pub(crate) fn told_always(&self) -> Vec<SiteName> {
        let told = |site: &SiteName| {
            let injury = self.injured.contains(site) || self.healed.contains(site);
            injury || (self.slides && *site == SiteName::Coccyx)
        };
        SiteName::ALL.into_iter().filter(told).collect()
    }

    /// Sites that a goal takes load off.
    pub(crate) fn relieved(&self) -> impl Iterator<Item = SiteName> + '_ {
        self.goals.iter().filter_map(|goal| match goal.want {
            Want::OffLoad { site, .. } => Some(site),
            _ => None,
        })
    }

    /// Whether a goal turns the pelvis to a side.
    pub(crate) fn turns_the_pelvis(&self) -> bool {
        let turns = |want| matches!(want, Want::CorrectObliquity | Want::AccommodateObliquity);
        self.goals.iter().any(|goal| turns(goal.want))
    }

    /// Whether a goal lowers the front.
    pub(crate) fn lowers_the_front(&self) -> bool {
        self.goals.iter().any(|goal| matches!(goal.want, Want::LowerFront { .. }))
    }

    /// The rank of a goal: what it is about, and what goes with it, which comes after. Limits have
    /// none.
    pub(crate) fn rank(goal: usize, goes_with: bool) -> usize {
        2 * goal + 1 + usize::from(goes_with)
    }

    /// The rank in which a goal of that rank is met closer than it must be: in the same order, after the
    /// ranks that are firm, of which there are so many, and what is spared.
    pub(crate) fn closer(rank: usize, firm: usize) -> usize {
        firm + rank
    }

    /// The rank of what is spared, after all goals.
    pub(crate) fn spared_rank(&self) -> usize {
        Self::rank(self.goals.len(), false)
    }
}

/// Sites with a healed injury, and those where nothing is felt.
fn at_risk(client: &Client) -> Vec<SiteName> {
    let healed = healed(client);
    let at_risk = |site: &SiteName| healed.contains(site) || client.skin.is_numb_at(*site);
    SiteName::ALL.into_iter().filter(at_risk).collect()
}

fn healed(client: &Client) -> Vec<SiteName> {
    let healed = client.skin.injuries.iter().filter(|own| own.state == Healing::Healed);
    healed.map(|own| own.site).collect()
}

/// Degrees to which a hip must bend for a shelf: a right angle.
const RIGHT_ANGLE: f64 = 90.0;

/// The obliquity at the seat bones: the pelvis turns as a whole, so heights go with the distance
/// between the points where they are measured.
pub(crate) fn oblique(client: &Client) -> Option<Oblique> {
    let measured = client.posture.obliquity?;
    let spacing = client.measures.seat_bone_spacing.unwrap_or(SeatedClient::SEAT_BONE_SPACING);
    let scale = match measured.at {
        MeasuredAt::SeatBones => 1.0,
        MeasuredAt::Asis => spacing / ASIS_SPACING,
    };
    let reducible = match measured.flexibility {
        Flexibility::Fixed => Length::ZERO,
        Flexibility::Flexible => measured.by,
        Flexibility::Partly { reducible } => reducible,
    };
    Some(Oblique { lower: measured.lower, by: measured.by * scale, reducible: reducible * scale })
}
