//! One body of a survey: sized and planned.

use std::collections::BTreeMap;

use case::{
    Chair, Client, Date, Measures, NoSize, Sides, SiteName, SurveyFault, SurveyOutcome, SurveyRow,
    SurveyedBody, SurveyedPlan, Weighing,
};
use cushion::{Length, MadeSize, Mass, Side, Size};

use mechanics::Stop;

use crate::advice::sizing::sizing;
use crate::advice::spread_grid::SpreadGrid;
use crate::prediction::predictor::{Ends, spread_of_stock};
use crate::prediction::prepared::PreparedCushion;
use crate::search::plan::{PlanInput, planned};
use crate::search::planner::SpreadOf;
use crate::search::progress::Progress;

/// Steps of the grid on which spreads are looked for: of weight, kg, of hip width and of thigh depth, mm.
/// The spread of a clearance, some 13 mm, is within 0.8 mm of the body's own, as that on the rough mesh is
/// of that on a finer one, and that of a pressure within 2 % of its own; twice as far apart they are within
/// 1.1 mm and 4 %.
const STEPS: [f64; 3] = [20.0, 40.0, 80.0];

/// Cushions of one layout by size.
pub type Cushions = BTreeMap<Size, SurveyedCushion>;

/// A cushion of a survey: prepared, with the spreads that were found on it.
#[derive(Debug)]
pub struct SurveyedCushion {
    prepared: PreparedCushion,
    spreads: SpreadGrid,
}

impl SurveyedCushion {
    /// A cushion on which no spread was looked for.
    #[must_use]
    pub fn new(prepared: PreparedCushion) -> Self {
        Self { prepared, spreads: SpreadGrid::default() }
    }

    fn stock(&self) -> Vec<u32> {
        self.prepared.stock().compartments.iter().map(|own| own.cells.stock).collect()
    }

    /// The spread of the stock fill under a body, from bodies around it on the grid; none where one of
    /// those has none.
    fn spread(&self, body: &SurveyedBody, like: &Client, on: Date) -> Option<Ends> {
        let [kg, hip, depth] = STEPS;
        let (weight, hips) = (body.weight.to_kg(), body.hip_width.to_mm());
        let point = [weight / kg, hips / hip, body.thigh_depth.to_mm() / depth];
        self.spreads.at(point, |corner| {
            let around = SurveyedBody {
                weight: Mass::from_kg(corner[0] * kg),
                hip_width: Length::from_mm(corner[1] * hip),
                thigh_depth: Length::from_mm(corner[2] * depth),
                ..body.clone()
            };
            let client = client_of(&around, like, on);
            spread_of_stock(&self.prepared, &client, around.weight, Stop::never())
        })
    }
}

/// A client like another, with the measures of a body.
fn client_of(body: &SurveyedBody, like: &Client, on: Date) -> Client {
    let mut client = like.clone();
    client.measures = measures(body);
    client.weighing = Some(Weighing { weight: body.weight, on });
    client
}

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
/// comes nearest to it where it does not. The spread is that of the stock fill, and of all but the lean,
/// as it lies between bodies around this one.
///
/// `cushions` has every size of the layout; `like` is any client of this layout, for all that a table of
/// bodies does not say, the same for all bodies.
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
    let mut like = like.clone();
    like.cushion.size = size;
    let client = client_of(body, &like, on);
    let stock = cushion.stock();
    let (stop, progress) = (Stop::never(), Progress::none());
    let prepared = &cushion.prepared;
    let input = PlanInput { client: &client, cushion: prepared, passed: None, on, stop, progress };
    let spread = cushion.spread(body, &like, on);
    let outcome = match planned(&input, &stock, SpreadOf::Stock(spread.map(Box::new))) {
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
