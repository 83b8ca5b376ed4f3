//! English:  cautions, limits, goals, moves, what hands found and what follows.

use super::English;

impl crate::FindingWords for English {}
