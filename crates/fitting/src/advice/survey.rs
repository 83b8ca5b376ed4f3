//! One body of a survey: sized and planned.

use std::collections::BTreeMap;

use case::{
    Chair, Client, Date, Measures, NoSize, Sides, SiteName, SurveyFault, SurveyOutcome, SurveyRow,
    SurveyedBody, SurveyedPlan, Weighing,
};
use cushion::{MadeSize, Side, Size};

use mechanics::Stop;

use crate::advice::sizing::sizing;
use crate::prediction::prepared::PreparedCushion;
use crate::search::plan::{PlanInput, planned};
use crate::search::planner::SpreadOf;
use crate::search::progress::Progress;

/// Cushions of one layout by size, prepared.
pub type Cushions = BTreeMap<Size, PreparedCushion>;

/// Returns the size for a body; none where none suits.
#[must_use]
pub fn size_for(body: &SurveyedBody, sizes: &[MadeSize]) -> Option<Size> {
    sizing(&measures(body), Some(body.weight), &Chair::default(), sizes).chosen
}

/// Why no made size suits a body.
fn why_none(body: &SurveyedBody, sizes: &[MadeSize]) -> NoSize {
    let by_measures = sizing(&measures(body), None, &Chair::default(), sizes).chosen;
    if by_measures.is_some() { NoSize::TooHeavy } else { NoSize::Measures }
}

pub(crate) fn measures(body: &SurveyedBody) -> Measures {
    let depth = Some(body.thigh_depth);
    Measures {
        hip_width: Some(body.hip_width),
        thigh_depth: Sides { left: depth, right: depth },
        ..Measures::default()
    }
}

/// Sizes and plans for a body, without goals: the stock fill where it keeps the limits, and what
/// comes nearest to it where it does not. The spread is that of the stock fill, and of all but the lean.
///
/// `cushions` has every size of the layout;  `like` is any client of this layout, for
/// all that a table of bodies does not say.
///
/// # Panics
///
/// Panics where `cushions` lacks a size.
#[must_use]
pub fn survey(
    body: &SurveyedBody,
    sizes: &[MadeSize],
    cushions: &Cushions,
    like: &Client,
    on: Date,
) -> SurveyRow {
    let Some(size) = size_for(body, sizes) else {
        return SurveyRow {
            body: body.clone(),
            outcome: SurveyOutcome::NoSize(why_none(body, sizes)),
        };
    };
    let cushion = &cushions[&size];
    let mut client = like.clone();
    client.measures = measures(body);
    client.weighing = Some(Weighing { weight: body.weight, on });
    client.cushion.size = size;
    let stock: Vec<u32> =
        cushion.stock().compartments.iter().map(|compartment| compartment.cells.stock).collect();
    let (stop, progress) = (Stop::never(), Progress::none());
    let input = PlanInput { client: &client, cushion, passed: None, on, stop, progress };
    let outcome = match planned(&input, &stock, SpreadOf::Stock) {
        Ok(made) => {
            let seat = made.prediction.as_ref().and_then(|prediction| prediction.seated.as_ref());
            let bone = SiteName::SeatBone(Side::Left);
            let surface = seat.and_then(|seat| seat.sites.iter().find(|site| site.site == bone));
            let numbers = SurveyedPlan {
                size,
                cells: made.total_planned(),
                changed: made.counts.iter().map(|count| count.planned.abs_diff(count.stock)).sum(),
                clearance: seat.map(|seat| seat.clearance),
                surface: surface.map(|site| site.surface),
                mean_surface: seat.map(|seat| seat.mean_surface.central),
            };
            match made.not_safe.first() {
                None => SurveyOutcome::Planned(numbers),
                Some(limit) => SurveyOutcome::NotSafe(numbers, limit.into()),
            }
        }
        Err(_) => {
            let numbers = SurveyedPlan {
                size,
                cells: stock.iter().sum(),
                changed: 0,
                clearance: None,
                surface: None,
                mean_surface: None,
            };
            SurveyOutcome::NotSafe(numbers, SurveyFault::Refused)
        }
    };
    SurveyRow { body: body.clone(), outcome }
}
