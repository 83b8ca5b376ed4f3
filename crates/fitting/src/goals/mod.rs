//! What is wanted: goals and limits as numbers with ranges.

pub(crate) mod aims;
pub(crate) mod harm;
pub(crate) mod known;
pub(crate) mod limits;
pub(crate) mod needs;
pub(crate) mod wanted;
