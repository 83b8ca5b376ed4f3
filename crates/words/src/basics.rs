//! Parts of what is said: sides, places, numbers with their nouns.

use case::{Move, PredictedOutcome, SiteName};
use cushion::Side;

/// Parts of what is said.
pub trait BasicWords {
    /// The client's side, within a sentence.
    fn side(&self, side: Side) -> &'static str;

    /// A place on the body, without an article.
    fn site(&self, site: SiteName) -> &'static str;

    /// A number with so many decimals.
    fn decimal(&self, number: f64, decimals: usize) -> String;

    /// A number with as many decimals as it has.
    fn number(&self, number: f64) -> String;

    /// A number of cells.
    fn cells(&self, cells: u32) -> String;

    /// Which side of the pelvis is lower at the seat bones, and by how much, in whole mm: a clause.
    fn lower(&self, side: Option<Side>, by: cushion::Length) -> String;

    /// A handful of cells that is moved: a sentence.
    fn a_move(&self, own: &Move) -> String;

    /// How a prediction ended, in a word or two.
    fn outcome(&self, outcome: PredictedOutcome) -> &'static str;
}
