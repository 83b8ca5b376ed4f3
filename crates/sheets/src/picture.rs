//! A drawing for a screen, as a value.

use crate::page::{Block, Mark, Role};

/// A drawing for a screen: no paper, no ground. Millimetres, x to the right, y down from the top
/// left corner.
#[derive(Clone, Debug, PartialEq)]
pub struct Picture {
    /// How wide it is, in millimetres, positive.
    pub width: f64,
    /// How high it is, in millimetres, positive.
    pub height: f64,
    /// What it shows, in whole sentences, for whoever does not see it.
    pub alt: String,
    /// What is drawn; later parts are drawn over earlier ones.
    pub parts: Vec<Part>,
}

/// Marks that belong together.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// The number of the compartment that it shows; none for what belongs to no single one.
    pub compartment: Option<u8>,
    /// What shows it; later marks are drawn over earlier ones.
    pub marks: Vec<Mark>,
}

impl Part {
    /// What was drawn into a block, of a compartment or of none.
    pub(crate) fn of(compartment: Option<u8>, block: Block) -> Self {
        Self { compartment, marks: block.marks }
    }
}

/// An empty block to draw into.
pub(crate) const fn blank() -> Block {
    Block { role: Role::Artifact, id: None, marks: Vec::new() }
}
