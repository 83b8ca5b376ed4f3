//! What counts change for a client, in reports.

use case::{BeforeAfter, Costs, GoalChange, SiteChange};
use schemars::JsonSchema;
use serde::Serialize;

use super::finding::{Facts, goal_number};
use super::rounded;

/// What counts change, from others.
#[derive(Serialize, JsonSchema)]
pub(super) struct CostsBody {
    from: &'static str,
    goals: Vec<GoalBody>,
    careful_sites: Vec<SiteBody>,
    risen_sites: Vec<SiteBody>,
    sites: Vec<SiteBody>,
    left_under_mm: [f64; 2],
    right_under_mm: [f64; 2],
    roll_deg: [f64; 2],
    pitch_deg: [f64; 2],
    left_share: [f64; 2],
    right_share: [f64; 2],
    thigh_share: [f64; 2],
}

#[derive(Serialize, JsonSchema)]
struct GoalBody {
    goal: String,
    before: Option<Facts>,
    after: Option<Facts>,
}

#[derive(Serialize, JsonSchema)]
struct SiteBody {
    id: &'static str,
    surface_kpa: [f64; 2],
    rise: f64,
}

fn both<T: Copy>(own: &BeforeAfter<T>, of: impl Fn(T) -> f64) -> [f64; 2] {
    [rounded(of(own.before)), rounded(of(own.after))]
}

impl From<&Costs> for CostsBody {
    fn from(costs: &Costs) -> Self {
        let sites = |own: &[SiteChange]| own.iter().map(SiteBody::from).collect();
        Self {
            from: costs.from.id(),
            goals: costs.goals.iter().map(GoalBody::from).collect(),
            careful_sites: sites(&costs.careful),
            risen_sites: sites(&costs.risen),
            sites: sites(&costs.sites),
            left_under_mm: both(&costs.clearance, |under| under.left.to_mm()),
            right_under_mm: both(&costs.clearance, |under| under.right.to_mm()),
            roll_deg: both(&costs.roll_deg, |degrees| degrees),
            pitch_deg: both(&costs.pitch_deg, |degrees| degrees),
            left_share: both(&costs.side_share, |share| share.left),
            right_share: both(&costs.side_share, |share| share.right),
            thigh_share: both(&costs.thigh_share, |share| share),
        }
    }
}

impl From<&GoalChange> for GoalBody {
    fn from(own: &GoalChange) -> Self {
        Self {
            goal: own.want.id(),
            before: own.number.before.as_ref().map(goal_number),
            after: own.number.after.as_ref().map(goal_number),
        }
    }
}

impl From<&SiteChange> for SiteBody {
    fn from(own: &SiteChange) -> Self {
        Self {
            id: own.site.id(),
            surface_kpa: both(&own.surface, |pressure| pressure.to_kpa()),
            rise: rounded(own.rise()),
        }
    }
}
