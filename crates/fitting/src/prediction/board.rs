//! A predicted experiment: a stiff board over the rear compartments, cells moved from the left one
//! to the right one.
//!
//! It tells with a ruler what is not known about walls: upright ones tilt the board from the first
//! cell on, walls that bow take up several cells first.

use cushion::{Force, Length, Mass, Side};
use mechanics::{Board, Body, GRAVITY, Load, Parameters, SeatedBody, Stop};

use crate::prediction::prepared::PreparedCushion;

/// Cells that are moved.
const MOVED: [u32; 3] = [2, 4, 8];
/// Shares of the give of walls that are told beside each other.
const GIVES: [f64; 3] = [0.0, 0.5, 1.0];
/// How much narrower the board is than the cushion, mm, so that it lies on no outer wall.
const NARROWER: f64 = 40.0;
/// Its depth, and where its middle is, as shares of the cushion's depth: over the rear.
const DEPTH: f64 = 0.5;
const FORWARD: f64 = 0.275;

/// The board and the compartments under it.
#[derive(Clone, Debug, PartialEq)]
pub struct BoardTest {
    /// From its left to its right edge.
    pub width: Length,
    /// From its rear to its front edge.
    pub depth: Length,
    /// From the cushion's rear edge to its middle.
    pub forward: Length,
    /// What lies on it, board and all.
    pub load: Mass,
    /// Number of the compartment that cells are taken from, on the left, and of that they go to.
    pub compartments: [u8; 2],
    /// One for each share of the walls' give and each number of cells.
    pub tilts: Vec<BoardTilt>,
}

/// How a board tilts where walls give so much and so many cells are moved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BoardTilt {
    /// Share of the give of walls between compartments: 0 for upright ones.
    pub give: f64,
    /// Cells moved from left to right.
    pub moved: u32,
    /// How much higher the right edge gets over the left one; none where the board does not come
    /// to rest.
    pub higher: Option<Length>,
}

impl BoardTest {
    /// Predicts what a board does on the stock fill. None where left and right under it are one
    /// compartment.
    #[must_use]
    pub fn run(cushion: &PreparedCushion) -> Option<Self> {
        let (pattern, model) = (cushion.pattern(), cushion.coarse().model());
        let size = pattern.size();
        let board = Board {
            width: size.width() - Length::from_mm(NARROWER),
            depth: size.depth() * DEPTH,
            forward: size.depth() * FORWARD,
        };
        let load = Mass::from_kg(30.0);
        let quarter = board.width.to_m() / 4.0;
        let under = |side: Side| {
            let x = if side == Side::Left { -quarter } else { quarter };
            model.compartment_at([x, board.forward.to_m()])
        };
        let (from, to) = (under(Side::Left)?, under(Side::Right)?);
        if from == to {
            return None;
        }
        let weight = Force::from_n(load.to_kg() * GRAVITY);
        let body = Body::board(board, Load::new(weight, [0.0, board.forward.to_m()]));
        let seated = SeatedBody::new(model, body);
        let mut tilts = Vec::new();
        for give in GIVES {
            let tilt = |moved: u32| BoardTilt {
                give,
                moved,
                higher: higher(cushion, &seated, [from, to], moved, give),
            };
            tilts.extend(MOVED.map(tilt));
        }
        Some(Self {
            width: board.width,
            depth: board.depth,
            forward: board.forward,
            load,
            compartments: [from, to].map(|at| pattern.compartments()[at].number),
            tilts,
        })
    }
}

/// How much higher the right edge is when so many cells are moved to the right than before.
fn higher(
    cushion: &PreparedCushion,
    seated: &SeatedBody,
    [from, to]: [usize; 2],
    moved: u32,
    give: f64,
) -> Option<Length> {
    let parameters = Parameters { inner_give: give, ..cushion.coarse().usual_parameters() };
    let (pattern, stock) = (cushion.pattern(), cushion.stock());
    let roll = |moved: f64| {
        let mut counts: Vec<f64> =
            pattern.indices().map(|ix| f64::from(stock[ix].cells.stock)).collect();
        counts[from] -= moved;
        counts[to] += moved;
        let rest = cushion.coarse().rest_under(seated, &counts, &parameters, Stop::never());
        rest.resting.map(|resting| resting.pose[1])
    };
    let width = pattern.size().width().to_m() - NARROWER * 1e-3;
    Some(Length::from_m((roll(f64::from(moved))? - roll(0.0)?) * width))
}
