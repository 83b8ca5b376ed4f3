//! A survey: what a layout does for many bodies from a table.

use cushion::{Length, Mass, Pressure, Size};

use crate::{BrokenLimit, Digest, Sides, Spread};

/// One body from a table of measures.
#[derive(Clone, Debug, PartialEq)]
pub struct SurveyedBody {
    /// Its row in the table, from 1.
    pub row: u32,
    /// What the table says of the sex; empty where it says nothing.
    pub sex: String,
    /// Body weight.
    pub weight: Mass,
    /// Hip width, sitting.
    pub hip_width: Length,
    /// Buttock to the back of the knee.
    pub thigh_depth: Length,
}

/// Why no made size suits a body.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoSize {
    /// It is heavier than the sizes that suit its measures are rated for.
    TooHeavy,
    /// None suits its measures.
    Measures,
}

impl NoSize {
    /// All, with how tables call them.
    pub const IDS: [(Self, &str); 2] =
        [(Self::TooHeavy, "too-heavy-for-fitting-sizes"), (Self::Measures, "no-fitting-size")];
}

/// Why a body has no safe plan, in a word.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SurveyFault {
    /// A limit of the clearance is not kept.
    Clearance,
    /// It bottoms out.
    BottomsOut,
    /// It tips, leans away, or does not come to rest.
    NoRest,
    /// A site with an injury gets more.
    InjuredSite,
    /// No plan is made: the measures make no body, or it is too heavy.
    Refused,
}

impl SurveyFault {
    /// All, with how tables call them.
    pub const IDS: [(Self, &str); 5] = [
        (Self::Clearance, "too-little-clearance"),
        (Self::BottomsOut, "bottoms-out"),
        (Self::NoRest, "no-rest"),
        (Self::InjuredSite, "injured-site"),
        (Self::Refused, "refused"),
    ];
}

impl From<&BrokenLimit> for SurveyFault {
    fn from(limit: &BrokenLimit) -> Self {
        match limit {
            BrokenLimit::Clearance { .. } | BrokenLimit::LowClearance { .. } => Self::Clearance,
            BrokenLimit::BottomsOut(_) => Self::BottomsOut,
            BrokenLimit::Tips
            | BrokenLimit::LeansAway
            | BrokenLimit::NoRest
            | BrokenLimit::NoRestOnStock => Self::NoRest,
            BrokenLimit::InjuredSite { .. } => Self::InjuredSite,
            BrokenLimit::TooHeavy { .. } => Self::Refused,
        }
    }
}

/// What became of one body.
#[derive(Clone, Debug, PartialEq)]
pub enum SurveyOutcome {
    /// No made size suits, for this reason.
    NoSize(NoSize),
    /// A plan within all limits.
    Planned(SurveyedPlan),
    /// No plan within the limits, with the first reason.
    NotSafe(SurveyedPlan, SurveyFault),
}

/// The numbers of a body's plan.
#[derive(Clone, Debug, PartialEq)]
pub struct SurveyedPlan {
    /// The size.
    pub size: Size,
    /// Cells in all.
    pub cells: u32,
    /// Cells that differ from the stock fill.
    pub changed: u32,
    /// Clearance under the seat bones, where the body rests.
    pub clearance: Option<Sides<Spread<Length>>>,
    /// Surface pressure under the left seat bone.
    pub surface: Option<Spread<Pressure>>,
    /// Mean surface pressure.
    pub mean_surface: Option<Pressure>,
}

/// By which the rows of one survey are known to belong together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SurveyPart {
    /// The name of the layout.
    pub layout: String,
    /// The digest of all that the numbers depend on: the texts of layout, cell and table, and the
    /// options.
    pub survey: Digest,
    /// Which part it is, from 1.
    pub part: usize,
    /// Of how many parts.
    pub of: usize,
}

/// One row of a survey.
#[derive(Clone, Debug, PartialEq)]
pub struct SurveyRow {
    /// The body.
    pub body: SurveyedBody,
    /// What became of it.
    pub outcome: SurveyOutcome,
}

/// What came out of a survey, counted.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct SurveySummary {
    /// Bodies in all.
    pub bodies: usize,
    /// Bodies for which a size is made.
    pub sized: usize,
    /// Bodies with a plan within all limits.
    pub planned: usize,
    /// Why no size is made for the others, with how many there are.
    pub without_size: Vec<(NoSize, usize)>,
    /// Why there is no safe plan, with how many there are.
    pub not_safe: Vec<(SurveyFault, usize)>,
}

impl SurveySummary {
    /// Counts rows.
    #[must_use]
    pub fn of(rows: &[SurveyRow]) -> Self {
        let count = |of: &dyn Fn(&SurveyOutcome) -> bool| {
            rows.iter().filter(|row| of(&row.outcome)).count()
        };
        let without = |why| count(&|own| *own == SurveyOutcome::NoSize(why));
        let unsafe_for =
            |why| count(&|own| matches!(own, SurveyOutcome::NotSafe(_, fault) if *fault == why));
        let without_size = NoSize::IDS.map(|(why, _)| (why, without(why)));
        let not_safe = SurveyFault::IDS.map(|(why, _)| (why, unsafe_for(why)));
        Self {
            bodies: rows.len(),
            sized: count(&|own| !matches!(own, SurveyOutcome::NoSize(_))),
            planned: count(&|own| matches!(own, SurveyOutcome::Planned(_))),
            without_size: without_size.into_iter().filter(|own| own.1 > 0).collect(),
            not_safe: not_safe.into_iter().filter(|own| own.1 > 0).collect(),
        }
    }
}
