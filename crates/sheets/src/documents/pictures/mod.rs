//! Pictures for a screen: as wide as a small one, with print that is read there.

mod body;
mod chair;
mod faulty;
mod measure;
mod moved;
mod pattern;
mod pelvis;
mod seated;
mod section;
mod sketch;

pub use self::body::{BodyPicture, body_picture};
pub use self::faulty::faulty_picture;
pub use self::measure::measure_picture;
pub use self::moved::move_picture;
pub use self::pattern::{ControlPlace, pattern_picture, places};
pub use self::pelvis::pelvis_picture;
pub use self::section::section_picture;

use super::views::Letters;

/// How wide pictures are, in millimetres: on a screen of 320 dots a millimetre is nearly four of
/// them.
const WIDTH: f64 = 84.0;
/// Size of numbers in discs and of the names of edges.
const LETTERS: Letters = Letters { numbers: 11.5, edges: 9.5 };
