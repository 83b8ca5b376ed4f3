//! What is known when the search ends.

use std::sync::Arc;

use cushion::{Area, Force, Length, Pressure};

use super::level::{Patch, SolverMesh};
use super::newton::SearchEnd;
use super::problem::RestProblem;
use super::regions::Regions;
use super::rest::SeatedBody;
use super::step::{Factored, StepPoint};
use super::unloaded::Unloaded;

/// Radius of the disc over which surface pressure is averaged, m: about the tip of a seat bone,
/// and several nodes of the mesh. What a single node carries is no result.
pub(super) const DISC: f64 = 0.015;

/// Share of a compartment's stiffness by which equations may differ from those of the answer, for
/// the stiffness against turning to be taken from them: far below what the model can tell.
const SAME: f64 = 1e-3;

/// How the search ended, and what it found.
#[derive(Clone, Debug)]
pub struct Rest {
    /// In a word.
    pub outcome: Outcome,
    /// How far it can be trusted.
    pub evidence: Evidence,
    /// The numbers; none where the body tips or leans away, or the search did not end.
    pub resting: Option<Resting>,
}

/// The ways in which it can end.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// In balance.
    AtRest,
    /// In balance, but over some compartments the body is nearer to the base than the least
    /// clearance.
    Bottomed,
    /// The trunk leans with the pelvis, and the cushion does not resist enough: weight times
    /// height is at or above its stiffness.
    LeansAway,
    /// The load turns the body by more than ten degrees.
    Tipping,
    /// The search did not end. Not known to happen.
    OutOfSteps,
    /// The search was told to stop.
    Stopped,
}

impl Rest {
    /// A search that was told to stop after so many steps.
    pub(super) fn stopped(unloaded_steps: u32, steps: u32) -> Self {
        Self::without_numbers(Outcome::Stopped, unloaded_steps, steps)
    }

    /// A body over no cells at all, or over so few that the sheet has no room for them under it: it
    /// is on the base, and there is nothing to search.
    pub(super) fn on_the_base() -> Self {
        Self::without_numbers(Outcome::Bottomed, 0, 0)
    }

    fn without_numbers(outcome: Outcome, unloaded_steps: u32, steps: u32) -> Self {
        let evidence = Evidence {
            unloaded_steps,
            steps,
            by_barrier: false,
            sheet_residual: f64::INFINITY,
            pose_residual: [f64::INFINITY; 3],
            energy: f64::INFINITY,
        };
        Self { outcome, evidence, resting: None }
    }
}

/// What the search leaves behind. Of one that was told to stop, what it did not find is infinite.
#[derive(Clone, Debug, PartialEq)]
pub struct Evidence {
    /// Steps for the unloaded cushion; none where every seam holds the sheet.
    pub unloaded_steps: u32,
    /// Steps for the loaded one, on all meshes.
    pub steps: u32,
    /// Whether the slower search was needed.
    pub by_barrier: bool,
    /// Unbalanced forces on the sheet, their sizes summed, N.
    pub sheet_residual: f64,
    /// Unbalanced force on the body in N, and moments in roll and pitch in N m.
    pub pose_residual: [f64; 3],
    /// The energy, J.
    pub energy: f64,
}

/// Sheet and body in balance.
#[derive(Clone, Debug)]
pub struct Resting {
    /// Height of the body's reference point in m (below the load, where its underside would be
    /// lowest), roll and pitch as slopes: right side up, front up.
    pub pose: [f64; 3],
    /// Height of the sheet at the nodes of the finest mesh, m.
    pub sheet: Vec<f64>,
    /// The same unloaded.
    pub unloaded: Vec<f64>,
    /// What walls that bow sweep for each length of them, m2; empty where none bow.
    pub(super) walls: Vec<f64>,
    /// The cushion without the body, from which that of a like fill is found.
    pub(super) bare: Arc<Unloaded>,
    /// The equations there, from which that for a like fill is foretold.
    pub(super) equations: Arc<Factored>,
    /// What the body carries on each node, N; not negative.
    pub reactions: Vec<f64>,
    /// One for each compartment.
    pub compartments: Vec<CompartmentRest>,
    /// The body's named sites, in its order.
    pub sites: Vec<SiteRest>,
    /// What is carried on each side, under the pelvis and under the thighs.
    pub regions: Regions,
    /// Area of skin that touches.
    pub contact_area: Area,
    /// The highest point of the sheet, loaded.
    pub greatest_height: Length,
    /// The highest point of the sheet, unloaded.
    pub unloaded_height: Length,
    /// How the cushion resists turning.
    pub stiffness: TurnStiffness,
    /// What it takes to hold the pose where it is held: N, N m, N m; zero where it is free.
    pub holding: [f64; 3],
}

/// One compartment under the body.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CompartmentRest {
    /// Fill pressure.
    pub pressure: Pressure,
    /// Fill pressure without the body.
    pub unloaded_pressure: Pressure,
    /// Tension of the cover, N/m.
    pub tension: f64,
    /// Tension of the cover without the body, N/m.
    pub unloaded_tension: f64,
    /// Room under the sheet, m3.
    pub volume: f64,
    /// What the compartment carries of the body.
    pub load: Force,
    /// Whether the cells lie loose.
    pub slack: bool,
    /// Least height of the skin above the base where it touches; none where it does not.
    pub least_height: Option<Length>,
    /// Whether that is less than the least clearance.
    pub bottomed: bool,
}

/// One site of the body.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SiteRest {
    /// Which.
    pub site: crate::Site,
    /// Cushion left under it: height of the skin above the base; below zero where the base gives
    /// way.
    pub clearance: Length,
    /// How far it is below the highest point of the unloaded sheet.
    pub immersion: Length,
    /// Mean surface pressure on a disc of 15 mm radius.
    pub pressure: Pressure,
}

/// How the cushion resists turning, with sheet and fill following and the body free otherwise.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TurnStiffness {
    /// In roll, N m per radian, without the trunk; zero where roll is held.
    pub roll: f64,
    /// In pitch.
    pub pitch: f64,
    /// What the leaning trunk takes from that in roll: weight times height, N m per radian.
    pub trunk: f64,
}

impl Resting {
    /// None where the trunk's lean takes more than all stiffness.
    pub(super) fn new(
        problem: &RestProblem<'_>,
        seated: &SeatedBody,
        unloaded: &Arc<Unloaded>,
        found: &SearchEnd,
        for_differences: bool,
    ) -> Option<Self> {
        let equations = equations_at(problem, found, for_differences)?;
        let stiffness = turn_stiffness(problem, &equations)?;
        let reactions = reactions(problem, found);
        let heights = least_heights(problem, found, &reactions);
        let highest = |sheet: &[f64]| sheet.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let unloaded_height = highest(&unloaded.sheet);
        let compartments = compartments(problem, unloaded, found, &reactions, &heights);
        let areas = problem.level.areas.iter().zip(&reactions);
        let contact: f64 = areas.filter(|(_, force)| **force > 0.0).map(|(area, _)| area).sum();
        Some(Self {
            pose: found.state.pose,
            sites: sites(problem, seated, found, &reactions, unloaded_height),
            compartments,
            regions: Regions::of(&problem.level.places, &reactions, seated.seat_bones()),
            contact_area: Area::from_m2(contact),
            greatest_height: Length::from_m(highest(&found.state.sheet)),
            unloaded_height: Length::from_m(unloaded_height),
            stiffness,
            holding: holding(problem, found, &reactions),
            sheet: found.state.sheet.clone(),
            unloaded: unloaded.sheet.clone(),
            bare: Arc::clone(unloaded),
            equations,
            walls: found.state.walls.clone(),
            reactions,
        })
    }
}

/// The equations where a search ended; for differences, which leave out how stiff they are, those of
/// its last step, where the body stands by them: whether one tips is not left to another's.
fn equations_at(
    problem: &RestProblem<'_>,
    found: &SearchEnd,
    for_differences: bool,
) -> Option<Arc<Factored>> {
    let (state, forces, holds) = (&found.state, &found.forces, &found.holds);
    let at = StepPoint { problem, state, forces, holds, bowing: None, springs: None };
    match &found.factored {
        Some(known)
            if for_differences && known.stands_in(problem) || known.alike(&at, SAME).is_some() =>
        {
            Some(Arc::clone(known))
        }
        _ => Some(Arc::new(at.step(&[])?.factored)),
    }
}

/// The stiffness against turning; none where the trunk's lean takes more than that.
fn turn_stiffness(problem: &RestProblem<'_>, factored: &Factored) -> Option<TurnStiffness> {
    let body = problem.body.as_ref()?;
    if !factored.stands {
        return None;
    }
    let of = |mode: usize| if body.held[mode] { 0.0 } else { factored.turning.alone(mode) };
    Some(TurnStiffness { roll: of(1), pitch: of(2), trunk: body.weight * body.lean })
}

/// What the body carries on each node, N.
fn reactions(problem: &RestProblem<'_>, found: &SearchEnd) -> Vec<f64> {
    let tissue = problem.tissue();
    let felt = problem.on_body(&found.state, &found.forces, &found.holds);
    let reaction = |node: usize| match tissue {
        Some(stiffness) => {
            let pressed = found.state.sheet[node] - problem.skin(node, &found.state.pose);
            stiffness * problem.level.areas[node] * pressed.max(0.0)
        }
        None => felt[node],
    };
    (0..problem.level.len()).map(reaction).collect()
}

/// For each compartment the least height of the skin where it touches.
fn least_heights(
    problem: &RestProblem<'_>,
    found: &SearchEnd,
    reactions: &[f64],
) -> Vec<Option<f64>> {
    // Soft tissue is pressed in to where the sheet is.
    let skin = |node: usize| match problem.tissue() {
        Some(_) => found.state.sheet[node],
        None => problem.skin(node, &found.state.pose),
    };
    let least = |patch: &Patch| {
        let touching = patch.nodes.iter().filter(|node| reactions[**node as usize] > 0.0);
        touching.map(|node| skin(*node as usize)).reduce(f64::min)
    };
    problem.level.patches.iter().map(least).collect()
}

fn compartments(
    problem: &RestProblem<'_>,
    unloaded: &Unloaded,
    found: &SearchEnd,
    reactions: &[f64],
    heights: &[Option<f64>],
) -> Vec<CompartmentRest> {
    let shares = patch_shares(problem.level, reactions);
    let both = unloaded.patches.iter().zip(&found.forces.patches);
    both.zip(shares)
        .zip(heights)
        .map(|(((before, after), load), height)| CompartmentRest {
            pressure: Pressure::from_pa(after.pressure),
            unloaded_pressure: Pressure::from_pa(before.pressure),
            tension: after.tension,
            unloaded_tension: before.tension,
            volume: after.volume,
            load: Force::from_n(load),
            slack: after.pressure <= 0.0,
            least_height: height.map(Length::from_m),
            bottomed: height.is_some_and(|height| height < problem.parameters.least_clearance),
        })
        .collect()
}

/// What each compartment carries: the reactions at nodes by area.
pub(super) fn patch_shares(level: &SolverMesh, reactions: &[f64]) -> Vec<f64> {
    let share = |patch: &Patch| -> f64 {
        let own = patch.nodes.iter().zip(&patch.areas);
        own.map(|(node, area)| reactions[*node as usize] * area / level.areas[*node as usize]).sum()
    };
    level.patches.iter().map(share).collect()
}

fn sites(
    problem: &RestProblem<'_>,
    seated: &SeatedBody,
    found: &SearchEnd,
    reactions: &[f64],
    unloaded_height: f64,
) -> Vec<SiteRest> {
    let body = seated.over_mesh();
    let rest = |site: &crate::Site| {
        let [x, y] = site.at;
        let rise: f64 =
            body.modes(site.at).iter().zip(found.state.pose).map(|(mode, by)| mode * by).sum();
        let pressure = disc_mean(problem.level, reactions, site.at);
        // Where soft tissue gives way, the cushion reaches up to the skin as it is pressed.
        let pressed = problem.tissue().map_or(0.0, |stiffness| pressure / stiffness);
        let clearance = seated.body.height(x, y) + rise + pressed;
        SiteRest {
            site: *site,
            clearance: Length::from_m(clearance),
            immersion: Length::from_m(unloaded_height - clearance),
            pressure: Pressure::from_pa(pressure),
        }
    };
    seated.body.sites().iter().map(rest).collect()
}

/// Mean over a disc of 15 mm radius, Pa: reactions over areas of the nodes in it; zero where there
/// is no node.
pub(super) fn disc_mean(level: &SolverMesh, reactions: &[f64], at: [f64; 2]) -> f64 {
    let (mut force, mut area) = (0.0, 0.0);
    for (node, [x, y]) in level.places.iter().enumerate() {
        if (x - at[0]).powi(2) + (y - at[1]).powi(2) <= DISC * DISC {
            force += reactions[node];
            area += level.areas[node];
        }
    }
    if area > 0.0 { force / area } else { 0.0 }
}

/// What it takes to hold the pose where it is held.
fn holding(problem: &RestProblem<'_>, found: &SearchEnd, reactions: &[f64]) -> [f64; 3] {
    let Some(body) = &problem.body else { return [0.0; 3] };
    let [_, roll, _] = found.state.pose;
    let mut left = [body.weight, body.roll_moment(roll), 0.0];
    for (node, force) in reactions.iter().enumerate().filter(|(_, force)| **force > 0.0) {
        let modes = body.modes(problem.level.places[node]);
        left.iter_mut().zip(modes).for_each(|(value, mode)| *value -= force * mode);
    }
    [0, 1, 2].map(|at| if body.held[at] { left[at] } else { 0.0 })
}
