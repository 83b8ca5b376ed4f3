//! What else is to be said: the size, cautions, altitude, counting, when to look again, and what
//! works without the program.

pub mod altitude;
pub(crate) mod cautions;
pub(crate) mod code_group;
pub(crate) mod comparison;
pub mod counting;
pub(crate) mod drift;
pub(crate) mod review;
pub(crate) mod setup_card;
pub(crate) mod sizing;
pub(crate) mod small_moves;
pub(crate) mod spread_grid;
pub(crate) mod survey;
