//! Reports on predictions and on the contour test.

use case::{
    Costs, Finding, PredictedCompartment, PredictedSeat, PredictedSite, Prediction, Sides, Spread,
};
use cushion::{Length, Pressure, Side};
use schemars::JsonSchema;
use serde::Serialize;

use super::costs::CostsBody;
use super::finding::{FindingBody, Say};
use super::{json, rounded};

/// A prediction as reports have it: what stands in every report that has one.
#[derive(Serialize, JsonSchema)]
pub(super) struct PredictionBody<'a> {
    outcome: &'static str,
    residual: f64,
    #[serde(flatten)]
    seated: Option<SeatBody<'a>>,
}

#[derive(Serialize, JsonSchema)]
struct SeatBody<'a> {
    roll_deg: f64,
    roll_spread_deg: [f64; 2],
    pitch_deg: f64,
    pitch_spread_deg: [f64; 2],
    lower_side: &'static str,
    lower_mm: f64,
    clearance_mm: SidesBody,
    clearance_low_mm: SidesBody,
    clearance_high_mm: SidesBody,
    immersion_mm: SidesBody,
    contact_area_cm2: f64,
    mean_surface_kpa: f64,
    mean_surface_spread_kpa: [f64; 2],
    greatest_surface_kpa: f64,
    greatest_surface_spread_kpa: [f64; 2],
    pelvis_load_n: SidesBody,
    thigh_load_n: SidesBody,
    compartments: Vec<CompartmentBody<'a>>,
    sites: Vec<SiteBody>,
    stiffness: StiffnessBody,
}

#[derive(Serialize, JsonSchema)]
struct SidesBody {
    left: f64,
    right: f64,
}

#[derive(Serialize, JsonSchema)]
struct CompartmentBody<'a> {
    id: &'a str,
    number: u8,
    cells: u32,
    fill_kpa: f64,
    fill_spread_kpa: [f64; 2],
    load_n: f64,
    slack: bool,
    bottomed: bool,
}

#[derive(Serialize, JsonSchema)]
struct SiteBody {
    id: &'static str,
    surface_kpa: f64,
    surface_mmhg: f64,
    low: f64,
    high: f64,
    height_mm: f64,
    height_low_mm: f64,
    height_high_mm: f64,
}

#[derive(Serialize, JsonSchema)]
struct StiffnessBody {
    roll_nm_per_deg: f64,
    trunk_nm_per_deg: f64,
}

impl<'a> From<&'a Prediction> for PredictionBody<'a> {
    fn from(prediction: &'a Prediction) -> Self {
        Self {
            outcome: prediction.outcome.id(),
            residual: prediction.residual,
            seated: prediction.seated.as_ref().map(SeatBody::from),
        }
    }
}

fn both<T: Copy>(sides: &Sides<T>, of: impl Fn(T) -> f64) -> SidesBody {
    SidesBody { left: rounded(of(sides.left)), right: rounded(of(sides.right)) }
}

fn ends(spread: &Spread<Pressure>) -> [f64; 2] {
    [rounded(spread.low.to_kpa()), rounded(spread.high.to_kpa())]
}

impl<'a> From<&'a PredictedSeat> for SeatBody<'a> {
    fn from(seat: &'a PredictedSeat) -> Self {
        let mm = Length::to_mm;
        Self {
            roll_deg: rounded(seat.roll_deg.central),
            roll_spread_deg: [rounded(seat.roll_deg.low), rounded(seat.roll_deg.high)],
            pitch_deg: rounded(seat.pitch_deg.central),
            pitch_spread_deg: [rounded(seat.pitch_deg.low), rounded(seat.pitch_deg.high)],
            lower_side: seat.lower_side.map_or("level", Side::words),
            lower_mm: rounded(seat.lower_by.to_mm()),
            clearance_mm: both(&seat.clearance, |spread| spread.central.to_mm()),
            clearance_low_mm: both(&seat.clearance, |spread| spread.low.to_mm()),
            clearance_high_mm: both(&seat.clearance, |spread| spread.high.to_mm()),
            immersion_mm: both(&seat.immersion, mm),
            contact_area_cm2: rounded(seat.contact_area.to_cm2()),
            mean_surface_kpa: rounded(seat.mean_surface.central.to_kpa()),
            mean_surface_spread_kpa: ends(&seat.mean_surface),
            greatest_surface_kpa: rounded(seat.greatest_surface.central.to_kpa()),
            greatest_surface_spread_kpa: ends(&seat.greatest_surface),
            pelvis_load_n: both(&seat.pelvis_load, |load| load.to_n()),
            thigh_load_n: both(&seat.thigh_load, |load| load.to_n()),
            compartments: seat.compartments.iter().map(CompartmentBody::from).collect(),
            sites: seat.sites.iter().map(SiteBody::from).collect(),
            stiffness: StiffnessBody {
                roll_nm_per_deg: rounded(seat.roll_stiffness),
                trunk_nm_per_deg: rounded(seat.trunk_stiffness),
            },
        }
    }
}

impl<'a> From<&'a PredictedCompartment> for CompartmentBody<'a> {
    fn from(own: &'a PredictedCompartment) -> Self {
        Self {
            id: own.id.as_str(),
            number: own.number,
            cells: own.cells,
            fill_kpa: rounded(own.fill.central.to_kpa()),
            fill_spread_kpa: ends(&own.fill),
            load_n: rounded(own.load.to_n()),
            slack: own.slack,
            bottomed: own.bottomed,
        }
    }
}

impl From<&PredictedSite> for SiteBody {
    fn from(site: &PredictedSite) -> Self {
        let [low, high] = ends(&site.surface);
        Self {
            id: site.site.id(),
            surface_kpa: rounded(site.surface.central.to_kpa()),
            surface_mmhg: rounded(site.surface.central.to_mmhg()),
            low,
            high,
            height_mm: rounded(site.clearance.central.to_mm()),
            height_low_mm: rounded(site.clearance.low.to_mm()),
            height_high_mm: rounded(site.clearance.high.to_mm()),
        }
    }
}

/// A prediction.
#[derive(Serialize, JsonSchema)]
pub(super) struct PredictReport<'a> {
    client: &'a str,
    #[serde(flatten)]
    prediction: PredictionBody<'a>,
    costs: Option<CostsBody>,
}

/// Returns the report on a prediction. Pressures are in kPa where not said otherwise; `low` and
/// `high` are the ends of a site's spread.
#[must_use]
pub fn predict(
    program: &str,
    client: &str,
    prediction: &Prediction,
    costs: Option<&Costs>,
    warnings: &[Finding],
    say: Say<'_>,
) -> String {
    let warnings = FindingBody::all(warnings, say);
    let costs = costs.map(CostsBody::from);
    json(
        "predict",
        program,
        warnings,
        PredictReport { client, prediction: prediction.into(), costs },
    )
}

/// One step of the contour test.
#[derive(Clone, Copy, Debug)]
pub struct ContourStep {
    /// From the cylinders' ends up to the buttons'.
    pub step: Length,
    /// Whether the buttons touch under the first load; none where the jig does not rest.
    pub buttons_touch: Option<bool>,
    /// Cushion left under the cylinders under the first load.
    pub left_under: Option<Length>,
    /// How much further the jig sinks under the overload.
    pub further: Option<Length>,
}

/// What a stiff board over the rear would do when cells are moved from left to right.
#[derive(Clone, Debug)]
pub struct BoardExperiment {
    /// Its width and depth.
    pub size: [Length; 2],
    /// From the rear edge to its middle.
    pub forward: Length,
    /// What lies on it, board and all, kg.
    pub kilograms: f64,
    /// Numbers of the compartments that cells are taken from and go to.
    pub compartments: [u8; 2],
    /// How it tilts.
    pub tilts: Vec<BoardTilt>,
}

/// How a board tilts when so many cells are moved.
#[derive(Clone, Copy, Debug)]
pub struct BoardTilt {
    /// Share of the give of walls.
    pub give: f64,
    /// Cells moved.
    pub moved: u32,
    /// How much higher the right edge gets; none where the board does not rest.
    pub higher: Option<Length>,
}

/// One number that the contour test uses.
#[derive(Clone, Debug)]
pub struct ContourParameter {
    /// What it is.
    pub what: String,
    /// Its value, with the unit.
    pub value: String,
    /// Whether a source for it was seen: `seen`, or `unverified`.
    pub mark: &'static str,
}

/// A contour test.
#[derive(Serialize, JsonSchema)]
pub(super) struct ContourReport<'a> {
    layout: &'a str,
    size: &'a str,
    claims: &'a str,
    parameters: Vec<ParameterBody<'a>>,
    steps: Vec<StepBody>,
    board: Option<BoardBody>,
}

#[derive(Serialize, JsonSchema)]
struct BoardBody {
    width_mm: f64,
    depth_mm: f64,
    middle_forward_mm: f64,
    kilograms: f64,
    from_compartment: u8,
    to_compartment: u8,
    tilts: Vec<TiltBody>,
}

#[derive(Serialize, JsonSchema)]
struct TiltBody {
    give_of_walls: f64,
    cells_moved: u32,
    right_edge_higher_mm: Option<f64>,
}

impl From<&BoardExperiment> for BoardBody {
    fn from(board: &BoardExperiment) -> Self {
        let tilt = |tilt: &BoardTilt| TiltBody {
            give_of_walls: tilt.give,
            cells_moved: tilt.moved,
            right_edge_higher_mm: tilt.higher.map(|higher| rounded(higher.to_mm())),
        };
        Self {
            width_mm: rounded(board.size[0].to_mm()),
            depth_mm: rounded(board.size[1].to_mm()),
            middle_forward_mm: rounded(board.forward.to_mm()),
            kilograms: board.kilograms,
            from_compartment: board.compartments[0],
            to_compartment: board.compartments[1],
            tilts: board.tilts.iter().map(tilt).collect(),
        }
    }
}

#[derive(Serialize, JsonSchema)]
struct ParameterBody<'a> {
    what: &'a str,
    value: &'a str,
    mark: &'a str,
}

#[derive(Serialize, JsonSchema)]
struct StepBody {
    step_mm: f64,
    buttons_touch: Option<bool>,
    left_under_cylinders_mm: Option<f64>,
    overload_deflection_mm: Option<f64>,
}

/// Returns the report on a contour test of a layout at a size.
#[must_use]
pub fn contour_test(
    program: &str,
    (layout, size): (&str, &str),
    claims: &str,
    parameters: &[ContourParameter],
    steps: &[ContourStep],
    board: Option<&BoardExperiment>,
) -> String {
    let report = ContourReport {
        layout,
        size,
        claims,
        parameters: parameters
            .iter()
            .map(|own| ParameterBody { what: &own.what, value: &own.value, mark: own.mark })
            .collect(),
        steps: steps
            .iter()
            .map(|own| StepBody {
                step_mm: rounded(own.step.to_mm()),
                buttons_touch: own.buttons_touch,
                left_under_cylinders_mm: own.left_under.map(|length| rounded(length.to_mm())),
                overload_deflection_mm: own.further.map(|length| rounded(length.to_mm())),
            })
            .collect(),
        board: board.map(BoardBody::from),
    };
    json("contour-test", program, Vec::new(), report)
}
