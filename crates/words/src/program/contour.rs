//! The virtual loaded-contour and overload test, as it is told.

use cushion::{Length, Mass, Size};

/// A part of what the test tells.
#[derive(Clone, Copy, Debug)]
pub enum ContourSaid<'a> {
    /// What is told, of which layout at which size.
    Title {
        /// The title of the layout.
        title: &'a str,
        /// The size of the cushion.
        size: Size,
    },
    /// What came of the jig with a step; none where it does not come to rest.
    Step {
        /// How much lower the cylinders are than the buttons.
        step: Length,
        /// Whether the buttons touch under the first load, what is left under the cylinders, and how
        /// much further the overload sinks.
        found: Option<(bool, Length, Length)>,
    },
    /// An experiment with a stiff board, which somebody with a ruler can repeat.
    Board {
        /// Its width and depth.
        board: [Length; 2],
        /// Its middle in front of the rear edge.
        forward: Length,
        /// What the board and what lies on its middle weigh.
        load: Mass,
        /// The numbers of the compartments from which and to which cells are moved.
        compartments: [u8; 2],
    },
    /// How much higher the board's right edge is for some cells, with walls that give a share of
    /// what they could; none where it tips.
    Tilts {
        /// The share, from 0 to 1.
        give: f64,
        /// Cells that are moved, and how much higher the edge is for them.
        tilts: &'a [(u32, Option<Length>)],
    },
    /// Above the numbers that the test is made with: what the marks beside them are.
    MadeWith,
    /// Whence a number is: a source was seen, or it is from memory.
    Mark {
        /// Whether a source was seen.
        seen: bool,
    },
    /// What the test does not claim.
    Claims,
}

/// A number that the test is made with.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ContourNumber {
    /// How far the cylinders are apart.
    CylindersApart,
    /// How far the buttons are apart.
    ButtonsApart,
    /// How far they grow with the width of the cushion: the value of the two above, in millimetres.
    GrowingWithWidth(u16),
    /// The steps from cylinders to buttons.
    Steps,
    /// The values of the steps, in millimetres.
    StepsAre([u16; 2]),
    /// How far the parts are in front of the rear edge.
    LineOfParts,
    /// The first load.
    FirstLoad,
    /// The overload.
    Overload,
    /// The reserve that the overload should leave.
    Reserve,
    /// The value of the reserve, in millimetres.
    FurtherSink(u16),
}
