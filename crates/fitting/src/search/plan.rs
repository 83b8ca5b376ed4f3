//! A plan from the stock fill and the wanted changes.

use case::{
    Amount, Base, BodyError, ByHand, Caution, Change, Client, CountReason, Date, Goal, LossLevel,
    Mirror, Partners, Plan, PlanRefusal, PlannedCount, SiteName, Want, WhyNoPlan,
};
use cushion::{CompartmentIx, Length, Mass, Pattern};
use mechanics::Stop;

use crate::advice::cautions::cautions;
use crate::advice::small_moves::small_moves;
use crate::goals::needs::Needs;
use crate::image::{answered_by_its_image, evened, is_its_own_image};
use crate::prediction::prepared::PreparedCushion;
use crate::search::moves::moves;
use crate::search::planner::{FoundPlan, PlanStart, Planner, SpreadOf};
use crate::search::progress::{PlanStep, Progress};

/// What a plan is made from.
#[derive(Clone, Copy)]
pub struct PlanInput<'a> {
    /// The client and what is wanted for them.
    pub client: &'a Client,
    /// The cushion at the client's size.
    pub cushion: &'a PreparedCushion,
    /// The last counts on which a fitting check was passed, in the pattern's order, where there are
    /// some on this cushion: then what is passed is what may not get worse, and what cells are moved
    /// from. Never counts that failed.
    pub passed: Option<&'a [u32]>,
    /// The day for which the plan is made.
    pub on: Date,
    /// Whether to stop.
    pub stop: Stop<'a>,
    /// Who is told how far the plan is.
    pub progress: Progress<'a>,
}

/// Returns the stock fill with each wanted change made, and nothing else: what a plan begins from.
///
/// # Errors
///
/// Returns every reason for which no plan is made.
pub fn with_changes(input: &PlanInput<'_>) -> Result<Vec<PlannedCount>, Vec<PlanRefusal>> {
    let pattern = input.cushion.pattern();
    let mut refusals = refused_changes(&input.client.changes, pattern);
    refusals.extend(too_heavy(input));
    let by_hand = |why| PlanRefusal { compartment: None, why: WhyNoPlan::ByHand(why) };
    refusals.extend(assessed_by_hand(input.client).into_iter().map(by_hand));
    let mut counts = Vec::new();
    for ix in pattern.indices() {
        let compartment = &pattern[ix];
        let change = input.client.changes.iter().find(|wish| wish.compartment == compartment.id);
        let stock = input.cushion.stock()[ix].cells.stock;
        let planned = change.map_or(Ok(stock), |change| changed(input, ix, change));
        match planned {
            Ok(planned) => counts.push(PlannedCount {
                id: compartment.id.clone(),
                number: compartment.number,
                stock,
                planned,
                reason: change.map(|change| CountReason::Wish(change.reason.clone())),
            }),
            Err(why) => {
                refusals.push(PlanRefusal { compartment: Some(compartment.id.clone()), why });
            }
        }
    }
    if refusals.is_empty() { Ok(counts) } else { Err(refusals) }
}

/// Plans the counts for a client: the stock fill with each wanted change made, and from there the
/// counts that keep the limits and reach the goals, the most important first.
///
/// `now` is what is in the cushion, in the pattern's order, from which cells are moved.
///
/// Without the client's weight nothing is known of how they sit: the plan is the stock fill with
/// its changes, and no goal is met.
///
/// # Errors
///
/// Returns every reason for which no plan is made.
pub fn plan(input: &PlanInput<'_>, now: &[u32]) -> Result<Plan, Vec<PlanRefusal>> {
    planned(input, now, SpreadOf::Plan)
}

/// As [`plan`], with the spread of some counts.
pub(crate) fn planned(
    input: &PlanInput<'_>,
    now: &[u32],
    spread_of: SpreadOf,
) -> Result<Plan, Vec<PlanRefusal>> {
    let mut counts = with_changes(input)?;
    let mut plan = Plan {
        counts: Vec::new(),
        goals: Vec::new(),
        not_safe: Vec::new(),
        prediction: None,
        costs: None,
        moves: Vec::new(),
        cautions: Vec::new(),
    };
    if let Some(weighing) = input.client.latest_weighing() {
        input.progress.tell(PlanStep::Stock);
        let found = found(input, weighing.weight, &counts, spread_of).map_err(|error| {
            vec![PlanRefusal { compartment: None, why: WhyNoPlan::NoBody(error) }]
        })?;
        for (count, planned) in counts.iter_mut().zip(&found.counts) {
            if count.planned != *planned {
                count.planned = *planned;
                count.reason = Some(CountReason::Goals);
            }
        }
        plan.goals = found.goals;
        plan.not_safe = found.not_safe;
        plan.prediction = Some(found.prediction);
        plan.costs = found.costs;
    }
    plan.cautions = cautions(input, &counts);
    let wanted: Vec<u32> = counts.iter().map(|count| count.planned).collect();
    plan.moves = moves(input.cushion.pattern(), now, &wanted);
    let small = small_moves(input.cushion, &plan.moves);
    plan.cautions.extend(small.map(|cells| Caution::SmallMoves { cells }));
    plan.counts = counts;
    Ok(plan)
}

/// A client with the counts that are begun from, which of them stay, and those that were passed.
type Question = (Client, Vec<u32>, Vec<bool>, Option<Vec<u32>>);

fn image_of((client, home, fixed, passed): &Question, partners: &Partners) -> Question {
    (
        client.mirrored(partners),
        partners.swapped(home),
        partners.swapped(fixed),
        passed.as_ref().map(|passed| partners.swapped(passed)),
    )
}

/// The counts that are found from these, for the client or for the mirror image.
fn found(
    input: &PlanInput<'_>,
    weight: Mass,
    wished: &[PlannedCount],
    spread_of: SpreadOf,
) -> Result<FoundPlan, BodyError> {
    let fixed: Vec<bool> = wished.iter().map(|count| count.reason.is_some()).collect();
    let begun = |(at, count): (usize, &PlannedCount)| {
        let passed = input.passed.filter(|_| !fixed[at]);
        passed.map_or(count.planned, |passed| passed[at])
    };
    let home: Vec<u32> = wished.iter().enumerate().map(begun).collect();
    let passed = input.passed.map(<[u32]>::to_vec);
    let own: Question = (input.client.clone(), home, fixed, passed);
    let image = |partners: &Partners| image_of(&own, partners);
    let pattern = input.cushion.pattern();
    let even = (evened(&own.0), own.1.clone(), own.2.clone(), own.3.clone());
    let symmetric = is_its_own_image(pattern, &even, |partners| image_of(&even, partners));
    let find = |(client, home, fixed, passed): Question| {
        let start = PlanStart { home, fixed, passed, symmetric };
        let planner = Planner::new(input.cushion, &client, weight, &start, input.stop)?;
        planner.with_spread_of(spread_of.clone()).find(input.progress)
    };
    match answered_by_its_image(pattern, &own, image) {
        None => find(own),
        Some(partners) => find(image(&partners)).map(|found| found.mirrored(&partners)),
    }
}

/// Changes that name no compartment, or one that has a change already.
fn refused_changes(changes: &[Change], pattern: &Pattern) -> Vec<PlanRefusal> {
    let mut refusals = Vec::new();
    for (place, change) in changes.iter().enumerate() {
        let id = &change.compartment;
        let why = if pattern.by_id(id.as_str()).is_none() {
            let known = pattern.compartments().iter().map(|there| there.id.clone()).collect();
            WhyNoPlan::UnknownCompartment { known }
        } else if changes[..place].iter().any(|earlier| earlier.compartment == *id) {
            WhyNoPlan::TwoChanges
        } else {
            continue;
        };
        refusals.push(PlanRefusal { compartment: Some(id.clone()), why });
    }
    refusals
}

fn too_heavy(input: &PlanInput<'_>) -> Option<PlanRefusal> {
    let weight = input.client.latest_weighing()?.weight;
    let rating = input.cushion.pattern().max_user_weight()?;
    (weight > rating)
        .then_some(PlanRefusal { compartment: None, why: WhyNoPlan::TooHeavy { weight, rating } })
}

/// The sag from which goals about sides are left to hands: the heights that they are about, 10 to 15 mm,
/// are lost in it. A practice judgement.
const SAGGING: Length = Length::from_mm(15.0);

/// What the model has no body for.
fn assessed_by_hand(client: &Client) -> Vec<ByHand> {
    let lost = client.posture.limb_loss.iter().filter(|loss| loss.level == LossLevel::Hip);
    let mut all: Vec<ByHand> = lost.map(|loss| ByHand::HipLoss(loss.side)).collect();
    let needs = Needs::of(client);
    let on_coccyx = needs.fixed_posterior_tilt && needs.injured.contains(&SiteName::Coccyx);
    all.extend(on_coccyx.then_some(ByHand::FixedTiltOnCoccyx));
    let sags = client.chair.sling_sag.is_some_and(|sag| sag >= SAGGING);
    let sags = sags && client.chair.base != Some(Base::Solid);
    let of_a_side = |goal: &Goal| {
        matches!(
            goal.want,
            Want::CorrectObliquity
                | Want::AccommodateObliquity
                | Want::MedialSupport { .. }
                | Want::LateralSupport { .. }
        )
    };
    let side_goal = sags && client.goals.iter().any(of_a_side);
    all.extend(side_goal.then_some(ByHand::SideGoalOnSaggingSling));
    all
}

/// The count of a compartment with its change made.
fn changed(input: &PlanInput<'_>, ix: CompartmentIx, change: &Change) -> Result<u32, WhyNoPlan> {
    let fill = &input.cushion.stock()[ix];
    let stock = fill.cells.stock;
    let planned = match change.amount {
        Amount::Cells(more) => stock
            .checked_add_signed(more)
            .ok_or(WhyNoPlan::FewerThanNone { stock, change: more })?,
        Amount::Crown(more) => {
            let crown = fill.crown + more;
            let count = input.cushion.unloaded().count_at_crown(ix, crown);
            // Whole cells: the nearest count, which is never negative.
            count.ok_or(WhyNoPlan::NoSuchCrown { crown })?.round().max(0.0) as u32
        }
    };
    if planned > 2 * stock {
        return Err(WhyNoPlan::MoreThanTwice { stock, planned });
    }
    Ok(planned)
}
