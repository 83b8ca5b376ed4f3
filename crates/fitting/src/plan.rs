//! A plan from the stock fill and the wanted changes.

use std::fmt;

use case::{Amount, Change, Client, Date, Plan, PlannedCount};
use cushion::{CompartmentIx, Length, Mass, Name, Pattern, StockFill};

use crate::cautions::cautions;

/// What a plan is made from.
pub struct PlanInput<'a> {
    /// The client and what is wanted for them.
    pub client: &'a Client,
    /// The cushion's pattern at the client's size.
    pub pattern: &'a Pattern,
    /// Its stock fill.
    pub stock: &'a StockFill,
    /// Finds the count at which a compartment's unloaded crown is so high; none where no count
    /// of this cell makes it.
    pub count_at_crown: &'a dyn Fn(CompartmentIx, Length) -> Option<u32>,
    /// The day for which the plan is made.
    pub on: Date,
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
            Self::TooHeavy { weight, rating } => write!(
                f,
                "the client weighs {:.1} kg and this cushion is rated for {:.1} kg",
                weight.to_kg(),
                rating.to_kg()
            ),
        }
    }
}

/// Plans the counts for a client: the stock fill, with each wanted change made.
///
/// # Errors
///
/// Returns every reason for which no plan is made.
pub fn plan(input: &PlanInput<'_>) -> Result<Plan, Vec<Refusal>> {
    let mut refusals = refused_changes(&input.client.changes, input.pattern);
    refusals.extend(too_heavy(input));
    let mut counts = Vec::new();
    for ix in input.pattern.indices() {
        let compartment = &input.pattern[ix];
        let change = input.client.changes.iter().find(|wish| wish.compartment == compartment.id);
        let stock = input.stock[ix].cells.stock;
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
    if !refusals.is_empty() {
        return Err(refusals);
    }
    let cautions = cautions(input, &counts);
    Ok(Plan { counts, cautions })
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
    let weight = input.client.weighing.as_ref()?.weight;
    let rating = input.pattern.max_user_weight()?;
    (weight > rating)
        .then_some(Refusal { compartment: None, kind: RefusalKind::TooHeavy { weight, rating } })
}

/// The count of a compartment with its change made.
fn changed(input: &PlanInput<'_>, ix: CompartmentIx, change: &Change) -> Result<u32, RefusalKind> {
    let fill = &input.stock[ix];
    let stock = fill.cells.stock;
    let planned = match change.amount {
        Amount::Cells(more) => stock
            .checked_add_signed(more)
            .ok_or(RefusalKind::FewerThanNone { stock, change: more })?,
        Amount::Crown(more) => {
            let crown = fill.crown + more;
            (input.count_at_crown)(ix, crown).ok_or(RefusalKind::NoSuchCrown { crown })?
        }
    };
    if planned > 2 * stock {
        return Err(RefusalKind::MoreThanTwice { stock, planned });
    }
    Ok(planned)
}
