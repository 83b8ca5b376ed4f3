//! A survey: what a layout does for many bodies from a table.

use cushion::{Length, Mass, Pressure, Size};

use crate::{Sides, Spread};

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

/// What became of one body.
#[derive(Clone, Debug, PartialEq)]
pub enum SurveyOutcome {
    /// No made size suits, for this reason.
    NoSize(String),
    /// A plan within all limits.
    Planned(SurveyedPlan),
    /// No plan within the limits, with the first reason.
    NotSafe(SurveyedPlan, String),
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

/// One row of a survey.
#[derive(Clone, Debug, PartialEq)]
pub struct SurveyRow {
    /// The body.
    pub body: SurveyedBody,
    /// What became of it.
    pub outcome: SurveyOutcome,
}
