//! Pictures for a screen: as wide as a small one, with print that is read there.

mod pattern;

pub use self::pattern::{ControlPlace, pattern_picture, places};

use super::views::Letters;

/// How wide pictures are, in millimetres: on a screen of 320 dots a millimetre is nearly four of
/// them.
const WIDTH: f64 = 84.0;
/// Size of numbers in discs and of the names of edges.
const LETTERS: Letters = Letters { numbers: 11.5, edges: 9.5 };
