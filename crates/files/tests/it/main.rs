//! What texts are read as, and what is said of wrong ones.

mod appending;
mod broken;
mod remarks;
mod right;
