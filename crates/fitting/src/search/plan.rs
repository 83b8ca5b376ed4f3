//! A plan from the stock fill and the wanted changes.

use std::fmt;

use case::{Amount, Change, Client, Date, Plan, PlannedCount};
use cushion::{CompartmentIx, Length, Mass, Name, Pattern};
use mechanics::{BodyError, Stop};

use crate::advice::cautions::cautions;
use crate::prediction::prepared::PreparedCushion;
use crate::search::moves::moves;
use crate::search::planner::Planner;
use crate::search::progress::{PlanStep, Progress};

/// The reason of a count that the planner chose.
pub const FOR_THE_GOALS: &str = "for the goals";

/// What a plan is made from.
#[derive(Clone, Copy)]
pub struct PlanInput<'a> {
    /// The client and what is wanted for them.
    pub client: &'a Client,
    /// The cushion at the client's size.
    pub cushion: &'a PreparedCushion,
    /// The day for which the plan is made.
    pub on: Date,
    /// Whether to stop.
    pub stop: Stop<'a>,
    /// Who is told how far the plan is.
    pub progress: Progress<'a>,
}

/// Why no plan is made. Nothing is planned halfway.
#[derive(Clone, Debug, PartialEq)]
pub struct Refusal {
    /// The compartment that it is about, where it is about one.
    pub compartment: Option<Name>,
    /// Why.
    pub kind: RefusalKind,
}

/// The reasons for which no plan is made.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum RefusalKind {
    /// The pattern has no compartment of this id; these are there.
    UnknownCompartment {
        /// The ids of the pattern.
        known: Vec<Name>,
    },
    /// Two changes are wanted for one compartment.
    TwoChanges,
    /// The change takes more cells than there are.
    FewerThanNone {
        /// Cells as supplied.
        stock: u32,
        /// The change in cells.
        change: i32,
    },
    /// No count gives the wanted crown.
    NoSuchCrown {
        /// The crown that would be needed.
        crown: Length,
    },
    /// The change is more than doubling the cells.
    MoreThanTwice {
        /// Cells as supplied.
        stock: u32,
        /// Cells that would be planned.
        planned: u32,
    },
    /// The client's measures make no body.
    NoBody {
        /// Which, and why.
        error: BodyError,
    },
    /// The client is heavier than the cushion is rated for.
    TooHeavy {
        /// The client's weight.
        weight: Mass,
        /// The rating.
        rating: Mass,
    },
}

impl RefusalKind {
    /// Whether the file is right and the wish is unsafe, rather than the file being wrong.
    #[must_use]
    pub fn is_unsafe(&self) -> bool {
        matches!(self, Self::TooHeavy { .. })
    }

    /// Returns what to do about it.
    #[must_use]
    pub fn advice(&self) -> String {
        match self {
            Self::UnknownCompartment { known } => {
                let known: Vec<String> = known.iter().map(|id| format!("`{id}`")).collect();
                format!("this pattern has {}", known.join(", "))
            }
            Self::TwoChanges => "put both into one change, with one reason".to_owned(),
            Self::FewerThanNone { .. } => "take fewer cells".to_owned(),
            Self::NoSuchCrown { .. } => "ask for a change in cells, or a smaller one".to_owned(),
            Self::MoreThanTwice { .. } => {
                "check the number; such a change needs another layout or wall height".to_owned()
            }
            Self::NoBody { .. } => "check that measure, and those near it".to_owned(),
            Self::TooHeavy { .. } => {
                "take a size or a layout that is rated for this client".to_owned()
            }
        }
    }
}

impl fmt::Display for RefusalKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::UnknownCompartment { .. } => write!(f, "the pattern has no such compartment"),
            Self::TwoChanges => write!(f, "two changes are wanted for this compartment"),
            Self::FewerThanNone { stock, change } => {
                write!(
                    f,
                    "a change of {change:+} takes more than the {stock} cells of the stock fill"
                )
            }
            Self::NoSuchCrown { crown } => {
                write!(f, "no count of this cell gives a crown of {:.0} mm", crown.to_mm())
            }
            Self::MoreThanTwice { stock, planned } => {
                write!(f, "{planned} cells are more than twice the {stock} of the stock fill")
            }
            Self::NoBody { error } => write!(f, "the client's measures make no body: {error}"),
            Self::TooHeavy { weight, rating } => write!(
                f,
                "the client weighs {:.1} kg and this cushion is rated for {:.1} kg",
                weight.to_kg(),
                rating.to_kg()
            ),
        }
    }
}

/// Returns the stock fill with each wanted change made, and nothing else: what a plan begins from.
///
/// # Errors
///
/// Returns every reason for which no plan is made.
pub fn with_changes(input: &PlanInput<'_>) -> Result<Vec<PlannedCount>, Vec<Refusal>> {
    let pattern = input.cushion.pattern();
    let mut refusals = refused_changes(&input.client.changes, pattern);
    refusals.extend(too_heavy(input));
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
                reason: change.map(|change| change.reason.clone()),
            }),
            Err(kind) => {
                refusals.push(Refusal { compartment: Some(compartment.id.clone()), kind });
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
pub fn plan(input: &PlanInput<'_>, now: &[u32]) -> Result<Plan, Vec<Refusal>> {
    let mut counts = with_changes(input)?;
    let mut plan = Plan {
        counts: Vec::new(),
        goals: Vec::new(),
        not_safe: Vec::new(),
        prediction: None,
        moves: Vec::new(),
        cautions: Vec::new(),
    };
    if let Some(weighing) = input.client.latest_weighing() {
        input.progress.tell(PlanStep::Stock);
        let home: Vec<u32> = counts.iter().map(|count| count.planned).collect();
        let fixed = counts.iter().map(|count| count.reason.is_some()).collect();
        let planner =
            Planner::new(input.cushion, input.client, weighing.weight, &home, fixed, input.stop);
        let found = planner.and_then(|planner| planner.find(input.progress)).map_err(|error| {
            vec![Refusal { compartment: None, kind: RefusalKind::NoBody { error } }]
        })?;
        for (count, planned) in counts.iter_mut().zip(&found.counts) {
            if count.planned != *planned {
                count.planned = *planned;
                count.reason = Some(FOR_THE_GOALS.to_owned());
            }
        }
        plan.goals = found.goals;
        plan.not_safe = found.not_safe;
        plan.prediction = Some(found.prediction);
    }
    plan.cautions = cautions(input, &counts);
    let wanted: Vec<u32> = counts.iter().map(|count| count.planned).collect();
    plan.moves = moves(input.cushion.pattern(), now, &wanted);
    plan.counts = counts;
    Ok(plan)
}

/// Changes that name no compartment, or one that has a change already.
fn refused_changes(changes: &[Change], pattern: &Pattern) -> Vec<Refusal> {
    let mut refusals = Vec::new();
    for (place, change) in changes.iter().enumerate() {
        let id = &change.compartment;
        let kind = if pattern.by_id(id.as_str()).is_none() {
            let known = pattern.compartments().iter().map(|there| there.id.clone()).collect();
            RefusalKind::UnknownCompartment { known }
        } else if changes[..place].iter().any(|earlier| earlier.compartment == *id) {
            RefusalKind::TwoChanges
        } else {
            continue;
        };
        refusals.push(Refusal { compartment: Some(id.clone()), kind });
    }
    refusals
}

fn too_heavy(input: &PlanInput<'_>) -> Option<Refusal> {
    let weight = input.client.latest_weighing()?.weight;
    let rating = input.cushion.pattern().max_user_weight()?;
    (weight > rating)
        .then_some(Refusal { compartment: None, kind: RefusalKind::TooHeavy { weight, rating } })
}

/// The count of a compartment with its change made.
fn changed(input: &PlanInput<'_>, ix: CompartmentIx, change: &Change) -> Result<u32, RefusalKind> {
    let fill = &input.cushion.stock()[ix];
    let stock = fill.cells.stock;
    let planned = match change.amount {
        Amount::Cells(more) => stock
            .checked_add_signed(more)
            .ok_or(RefusalKind::FewerThanNone { stock, change: more })?,
        Amount::Crown(more) => {
            let crown = fill.crown + more;
            let count = input.cushion.unloaded().count_at_crown(ix, crown);
            // Whole cells: the nearest count, which is never negative.
            count.ok_or(RefusalKind::NoSuchCrown { crown })?.round().max(0.0) as u32
        }
    };
    if planned > 2 * stock {
        return Err(RefusalKind::MoreThanTwice { stock, planned });
    }
    Ok(planned)
}
