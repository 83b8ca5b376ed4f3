//! Filling the cushion and sitting on it: the verb of this module.

use std::sync::Arc;

use cushion::Volume;

use crate::body::Body;
use crate::fill::FillLaw;
use crate::parameters::Parameters;
use crate::stop::Stop;

use super::model::SheetModel;
use super::nested::{FilledModel, FinestEnd, Searches};
use super::newton::{Begin, End, Limits};
use super::problem::{BodyOverMesh, RestProblem, SheetAndPose};
use super::results::{Evidence, Outcome, Rest, Resting};
use super::unloaded::Unloaded;

/// Unbalanced force at which the search ends, as a share of the load.
const ENOUGH: f64 = 1e-9;
/// The same for the unloaded sheet, as a share of what the cells press up with at a pascal.
pub(super) const ENOUGH_PRESSURE: f64 = 1e-6;
/// How many times as much is enough for differences: some thirtieth of a newton under an adult. With a
/// tenth of the cells more or less it puts clearances off by 3 micrometres at the most, and surface
/// pressures by 1 Pa; with twice as much some node was off by more than ten micrometres.
const DIFFERENCES: f64 = 5e4;
/// What is enough for differences of the sheet without a body where what walls take is a guess, Pa over
/// the whole sheet: a thousandth of what cells press with. With a tenth of the cells more or less it puts
/// clearances off by 15 micrometres at the most, where the guess is off by 0.3 mm.
const ENOUGH_BESIDE: f64 = 1.0;
/// Steps on one mesh after which the active set has failed; some five do.
pub(super) const MOST_STEPS: u32 = 40;
/// Roll or pitch from which a result has no numbers: ten degrees, far beyond small slopes.
const TIPPING: f64 = 0.176;

/// The cells in one compartment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cells {
    /// How many; need not be whole. Not negative.
    pub count: f64,
    /// Volume of one, taut.
    pub each: Volume,
    /// Share of the room that unpressed cells fill.
    pub packing: f64,
}

impl Cells {
    pub(super) fn law(&self, parameters: &Parameters) -> FillLaw {
        FillLaw::of_volume(self.count * self.each.to_m3(), self.packing, parameters)
    }
}

/// A body over the nodes of a [`SheetModel`].
#[derive(Clone, Debug)]
pub struct SeatedBody {
    pub(super) body: Body,
    /// Height of the underside at the nodes of the finest mesh, m.
    pub(super) underside: Vec<f64>,
    /// Which of sink, roll and pitch are held.
    pub(super) held: [bool; 3],
}

impl SeatedBody {
    /// Puts a body over a cushion, free to sink, roll and pitch.
    #[must_use]
    pub fn new(model: &SheetModel, body: Body) -> Self {
        let underside = model.places().iter().map(|[x, y]| body.height(*x, *y)).collect();
        Self { body, underside, held: [false; 3] }
    }

    /// The same with the pelvis held level from side to side, for questions only: nobody is held
    /// so. The result has the moment that it takes.
    #[must_use]
    pub fn held_level(self) -> Self {
        Self { held: [false, true, false], ..self }
    }

    /// The same guided straight down, as a test jig is: it sinks, and neither rolls nor pitches.
    #[must_use]
    pub fn guided(self) -> Self {
        Self { held: [false, true, true], ..self }
    }

    /// The same body over the same cushion under another load.
    #[must_use]
    pub fn with_load(self, load: crate::Load) -> Self {
        Self { body: self.body.with_load(load), ..self }
    }

    /// The body.
    #[must_use]
    pub fn body(&self) -> &Body {
        &self.body
    }

    /// Returns the height of the body's underside at the nodes of the finest mesh in a pose, m.
    #[must_use]
    pub fn skin(&self, model: &SheetModel, pose: [f64; 3]) -> Vec<f64> {
        let body = self.over_mesh();
        let rise = |at: [f64; 2]| -> f64 {
            body.modes(at).iter().zip(pose).map(|(mode, by)| mode * by).sum()
        };
        self.underside.iter().zip(model.places()).map(|(own, at)| own + rise(*at)).collect()
    }

    pub(super) fn over_mesh(&self) -> BodyOverMesh<'_> {
        let load = self.body.load();
        BodyOverMesh {
            underside: &self.underside,
            tissue: self.body.tissue_stiffness(),
            weight: load.weight.to_n(),
            line: load.at,
            lean: load.trunk_height.to_m(),
            own_roll: load.own_roll_stiffness,
            at_ease: load.roll_at_ease,
            held: self.held,
        }
    }
}

/// What a search begins from, and how far it goes. But for what is given up for speed, the answer
/// depends on it by rounding alone.
#[derive(Clone, Copy, Debug, Default)]
pub struct Start<'a> {
    /// An answer for a like fill and body on the same model.
    pub near: Option<&'a Resting>,
    /// Where the sheet without the body comes from.
    pub bare: Bare<'a>,
    /// Whether to end sooner, which is enough for differences: heights are within ten micrometres, and
    /// the stiffness against turning is that of a step before. Numbers that are given are not found so.
    pub for_differences: bool,
}

/// Where the sheet without the body comes from.
#[derive(Clone, Copy, Debug, Default)]
pub enum Bare<'a> {
    /// It is found.
    #[default]
    Found,
    /// It is known: of these cells under these parameters.
    Known(&'a BareSheet),
    /// What walls that bow and the true area take from it is as in the answer that the search begins
    /// from, which is for nearly these cells: a third of the work. With a tenth more cells in a
    /// compartment, clearances are off by some tenths of a millimetre at most. Where there is no
    /// such answer, it is found.
    AsNear,
}

/// The sheet over cells without a body, which is the same for all bodies.
#[derive(Clone, Debug)]
pub struct BareSheet(Arc<Unloaded>);

impl BareSheet {
    /// Whether it is that of these cells under these parameters.
    #[must_use]
    pub fn is_of(&self, cells: &[Cells], parameters: &Parameters) -> bool {
        let laws: Vec<FillLaw> = cells.iter().map(|cells| cells.law(parameters)).collect();
        self.0.is_of(&laws, parameters)
    }
}

/// Finds where a body comes to rest on a cushion with these cells, one entry for each compartment.
///
/// `near` is an answer for a like fill and body on the same model, from which the search begins;
/// the answer does not depend on it but for rounding. `stop` is asked once at first and once before
/// each step; an answer that it ends has no numbers.
///
/// # Panics
///
/// Panics unless there is one entry for each compartment, and `near` and `seated` are of this
/// model.
#[must_use]
#[track_caller]
pub fn come_to_rest(
    model: &SheetModel,
    cells: &[Cells],
    seated: &SeatedBody,
    parameters: &Parameters,
    near: Option<&Resting>,
    stop: Stop<'_>,
) -> Rest {
    let start = Start { near, ..Start::default() };
    come_to_rest_from(start, model, cells, seated, parameters, stop)
}

/// As [`come_to_rest`], from more that may be known.
///
/// # Panics
///
/// As [`come_to_rest`], and unless a sheet that is known is that of these cells and parameters.
#[must_use]
#[track_caller]
pub fn come_to_rest_from(
    start: Start<'_>,
    model: &SheetModel,
    cells: &[Cells],
    seated: &SeatedBody,
    parameters: &Parameters,
    stop: Stop<'_>,
) -> Rest {
    Question { model, cells, seated, parameters, stop }.answer(start, Searches::All)
}

/// Finds the sheet over cells without a body, one entry for each compartment, from that of a like
/// fill where there is one. None where there are no cells, or the search was told to stop.
///
/// # Panics
///
/// Panics unless there is one entry for each compartment, and `near` is of this model.
#[must_use]
#[track_caller]
pub fn bare_sheet(
    model: &SheetModel,
    cells: &[Cells],
    parameters: &Parameters,
    near: Option<&BareSheet>,
    stop: Stop<'_>,
) -> Option<BareSheet> {
    if stop.is_wanted() || cells.iter().all(|cells| cells.count <= 0.0) {
        return None;
    }
    let laws = laws(model, cells, parameters);
    let fill = FilledModel::new(model, parameters, &laws);
    let beside = near.map(|near| &*near.0);
    let found = fill.unloaded(beside, enough(model, 1.0, stop), Searches::All);
    // Of those beside one many are kept, and searches begin at that one.
    let found = if near.is_some() { found.without_equations() } else { found };
    (found.end() == End::AtRest).then(|| BareSheet(Arc::new(found)))
}

/// As [`come_to_rest`], by the slower search alone, which does not depend on a good start. It is
/// what [`come_to_rest`] falls back on; this is for comparing the two.
///
/// # Panics
///
/// As [`come_to_rest`].
#[must_use]
#[track_caller]
pub fn come_to_rest_slowly(
    model: &SheetModel,
    cells: &[Cells],
    seated: &SeatedBody,
    parameters: &Parameters,
) -> Rest {
    let stop = Stop::never();
    Question { model, cells, seated, parameters, stop }
        .answer(Start::default(), Searches::BarrierOnly)
}

#[track_caller]
pub(super) fn laws(model: &SheetModel, cells: &[Cells], parameters: &Parameters) -> Vec<FillLaw> {
    assert_eq!(cells.len(), model.compartments(), "an entry for each compartment");
    cells.iter().map(|cells| cells.law(parameters)).collect()
}

/// When a search without a body ends.
fn enough<'a>(model: &SheetModel, times: f64, stop: Stop<'a>) -> Limits<'a> {
    Limits { residual: times * ENOUGH_PRESSURE * model.area(), steps: MOST_STEPS, stop }
}

/// What is asked: these cells under this body.
pub(super) struct Question<'a> {
    pub(super) model: &'a SheetModel,
    pub(super) cells: &'a [Cells],
    pub(super) seated: &'a SeatedBody,
    pub(super) parameters: &'a Parameters,
    pub(super) stop: Stop<'a>,
}

impl Question<'_> {
    #[track_caller]
    pub(super) fn answer(&self, start: Start<'_>, searches: Searches) -> Rest {
        let Self { model, parameters, seated, stop, .. } = *self;
        assert_eq!(seated.underside.len(), model.places().len(), "the body is over this cushion");
        if stop.is_wanted() {
            return Rest::stopped(0, 0);
        }
        if self.cells.iter().all(|cells| cells.count <= 0.0) {
            return Rest::on_the_base();
        }
        let laws = laws(model, self.cells, parameters);
        let fill = FilledModel::new(model, parameters, &laws);
        let times = if start.for_differences { DIFFERENCES } else { 1.0 };
        let unloaded = self.bare(&fill, &start, times, searches);
        if unloaded.end() == End::Stopped {
            return Rest::stopped(unloaded.steps(), 0);
        }
        let body = seated.over_mesh();
        let limits = Limits { residual: times * ENOUGH * body.weight, steps: MOST_STEPS, stop };
        let warm = start.near.and_then(|near| {
            assert_eq!(near.sheet.len(), model.places().len(), "an answer for this cushion");
            let (sheet, walls, pose) = (near.sheet.clone(), near.walls.clone(), near.pose);
            let state = SheetAndPose { sheet, walls, pose };
            let equations = Some(Arc::clone(&near.equations));
            fill.warm(&unloaded, body, Begin { state, equations }, limits)
        });
        let loaded = match warm {
            Some(found) => Some(FinestEnd { found, by_barrier: false }),
            None => fill.cold(&unloaded, body, limits, searches),
        };
        let Some(loaded) = loaded else { return Rest::on_the_base() };
        if loaded.found.end == End::Stopped {
            return Rest::stopped(unloaded.steps(), loaded.found.steps);
        }
        let problem = fill.loaded_problem(model.levels.len() - 1, &unloaded, body);
        let rest = summed_up(&problem, seated, &unloaded, &loaded, start.for_differences);
        if rest.outcome == Outcome::Tipping && body.lean > 0.0 {
            return leaning_or_tipping(rest, &fill, &unloaded, body, (limits, searches));
        }
        rest
    }

    /// The sheet without the body.
    #[track_caller]
    fn bare(
        &self,
        fill: &FilledModel<'_>,
        start: &Start<'_>,
        times: f64,
        searches: Searches,
    ) -> Arc<Unloaded> {
        let enough = enough(self.model, times, self.stop);
        match (start.bare, start.near) {
            (Bare::Known(BareSheet(known)), _) => {
                assert!(known.is_of(fill.laws, self.parameters), "a sheet over these cells");
                Arc::clone(known)
            }
            (Bare::AsNear, Some(near)) => {
                let rough = ENOUGH_BESIDE * self.model.area();
                let residual = if start.for_differences { rough } else { enough.residual };
                Arc::new(fill.unloaded_beside(&near.bare, Limits { residual, ..enough }))
            }
            (_, Some(near))
                if near.bare.is_of(fill.laws, self.parameters)
                    && near.bare.is_as_fine_as(enough) =>
            {
                Arc::clone(&near.bare)
            }
            (_, near) => Arc::new(fill.unloaded(near.map(|near| &*near.bare), enough, searches)),
        }
    }
}

/// What tips, told apart by its cause: it is the trunk's doing where the same load on a fixed line
/// comes to rest.
fn leaning_or_tipping(
    tipping: Rest,
    fill: &FilledModel<'_>,
    unloaded: &Unloaded,
    body: BodyOverMesh<'_>,
    (limits, searches): (Limits<'_>, Searches),
) -> Rest {
    let fixed = BodyOverMesh { lean: 0.0, ..body };
    match fill.cold(unloaded, fixed, limits, searches).map(|own| own.found) {
        Some(own) if own.end == End::Stopped => Rest::stopped(unloaded.steps(), own.steps),
        Some(own) if own.end == End::AtRest && !is_tipping(&own.state) => {
            Rest { outcome: Outcome::LeansAway, ..tipping }
        }
        _ => tipping,
    }
}

/// Whether roll or pitch is beyond what has numbers.
fn is_tipping(state: &SheetAndPose) -> bool {
    state.pose[1..].iter().any(|slope| slope.abs() > TIPPING)
}

/// What the search found, in words and numbers.
fn summed_up(
    problem: &RestProblem<'_>,
    seated: &SeatedBody,
    unloaded: &Arc<Unloaded>,
    loaded: &FinestEnd,
    for_differences: bool,
) -> Rest {
    let found = &loaded.found;
    let (sheet, pose) = found.residuals(problem);
    let evidence = Evidence {
        unloaded_steps: unloaded.steps(),
        steps: found.steps,
        by_barrier: unloaded.by_barrier || loaded.by_barrier,
        sheet_residual: sheet,
        pose_residual: pose,
        energy: found.forces.energy,
    };
    let resting = (found.end == End::AtRest && !is_tipping(&found.state))
        .then(|| Resting::new(problem, seated, unloaded, found, for_differences))
        .flatten();
    let outcome = match &resting {
        _ if unloaded.end() != End::AtRest => Outcome::OutOfSteps,
        Some(resting) if resting.compartments.iter().any(|own| own.bottomed) => Outcome::Bottomed,
        Some(_) => Outcome::AtRest,
        None if found.end == End::GaveUp => Outcome::OutOfSteps,
        None => Outcome::Tipping,
    };
    let resting = if outcome == Outcome::OutOfSteps { None } else { resting };
    Rest { outcome, evidence, resting }
}
