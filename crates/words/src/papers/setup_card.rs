//! The setup card, for the therapist at the chair.

use cushion::Side;

/// The setup card: its three parts each begin a page.
#[derive(Clone, Copy, Debug)]
pub struct SetupCardTexts {
    pub title: &'static str,
    pub subject: &'static str,
    /// What the three parts are for.
    pub parts: [&'static str; 3],

    pub from_above: &'static str,
    pub the_client: &'static str,
    pub name: &'static str,
    /// Where the file says nothing of posture, skin and function.
    pub nothing_known: &'static str,
    pub goals: &'static str,
    pub take_care: &'static str,
    /// What is to be minded of every cushion.
    pub cautions: &'static [&'static str],
    pub counts: &'static str,
    /// Heads: number, compartment, stock, change, planned, room to write what was counted.
    pub count_columns: [&'static str; 6],
    /// Heads: what is told of each side, and the two sides.
    pub bone_columns: [&'static str; 3],
    pub expected_under_bones: &'static str,
    pub found: &'static str,
    pub nothing_found: &'static str,
    /// What the code is for: a line.
    pub code_is_for: &'static str,

    pub how_to_check: &'static str,
    /// The three checks: how each is made, and what its words mean.
    pub defined: &'static [DefinedCheckTexts],
    pub checks: &'static str,
    /// Heads: the check, what is expected, and three times what is found.
    pub check_columns: [&'static str; 5],
    /// The row in which whoever checks signs.
    pub signed: &'static str,
    pub check_rows: &'static [CheckTexts],
    pub order_of_a_fitting: &'static str,
    pub if_then: &'static str,
    /// Heads: what is found, what to do, what to expect elsewhere.
    pub if_then_columns: [&'static str; 3],
    pub if_then_note: &'static str,

    /// That somebody recorded these counts to lie in the cushion: a sentence.
    pub all_moved: &'static str,
    pub moves_from_below: &'static str,
    /// What the drawing of the moves shows.
    pub moves_drawing: &'static str,
    pub moves: &'static str,
    /// Heads: how many, from where, to where, a box.
    pub move_columns: [&'static str; 4],
    /// The spare bag, in a table of moves.
    pub bag: &'static str,
    pub while_you_move: &'static str,
    pub move_steps: &'static [&'static str],
    pub spare_bag: &'static str,
    /// Before the moves, by how many more or fewer, after them, room to write what was counted.
    pub bag_rows: [&'static str; 4],
    /// Rows of fields to write in.
    pub move_fields: &'static [&'static [&'static str]],
    pub clinician_decides: &'static str,
}

/// A check by hand, told once.
#[derive(Clone, Copy, Debug)]
pub struct DefinedCheckTexts {
    pub name: &'static str,
    pub how: &'static str,
    /// What each answer means.
    pub words: &'static str,
}

/// A check by hand, to be answered.
#[derive(Clone, Copy, Debug)]
pub struct CheckTexts {
    pub check: &'static str,
    /// Of which side it is.
    pub side: Option<Side>,
    /// What an estimate says of it beforehand.
    pub foretold: Foretold,
    /// The answers, of which one is ringed.
    pub answers: &'static str,
}

/// What an estimate says of a check beforehand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Foretold {
    /// Nothing.
    Nothing,
    /// How much cushion is left under the seat bone of a side.
    LeftUnder(Side),
    /// Which side of the pelvis is lower, and by how much.
    LowerSide,
}
