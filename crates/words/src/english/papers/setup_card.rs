//! English: the setup card.

use cushion::Side;

use super::shared;
use crate::{CheckTexts, DefinedCheckTexts, Foretold, SetupCardTexts};

const TOP_ANSWERS: &str = "safe / tight / pinched";
const PRESS_ANSWERS: &str = "slack / like / tight";
const SKIN_ANSWERS: &str = "clear / fades / stays";
const PRESS: &str = "Press check, ___ against ___";

const fn row(
    check: &'static str,
    side: Option<Side>,
    foretold: Foretold,
    answers: &'static str,
) -> CheckTexts {
    CheckTexts { check, side, foretold, answers }
}

const LEFT: Option<Side> = Some(Side::Left);
const RIGHT: Option<Side> = Some(Side::Right);

/// The rows, with room for lengths in a unit.
const fn rows(under: &'static str, lower: &'static str) -> [CheckTexts; 9] {
    [
        row("Top check, client's LEFT", LEFT, Foretold::Nothing, TOP_ANSWERS),
        row("Top check, client's RIGHT", RIGHT, Foretold::Nothing, TOP_ANSWERS),
        row("Under check, client's LEFT", LEFT, Foretold::LeftUnder(Side::Left), under),
        row("Under check, client's RIGHT", RIGHT, Foretold::LeftUnder(Side::Right), under),
        row("Lower side of the pelvis", None, Foretold::LowerSide, lower),
        row(PRESS, None, Foretold::Nothing, PRESS_ANSWERS),
        row(PRESS, None, Foretold::Nothing, PRESS_ANSWERS),
        row("Skin, LEFT seat bone", LEFT, Foretold::Nothing, SKIN_ANSWERS),
        row("Skin, RIGHT seat bone", RIGHT, Foretold::Nothing, SKIN_ANSWERS),
    ]
}

/// For whoever measures in millimetres.
pub(super) const TEXTS: &SetupCardTexts = &SetupCardTexts {
    title: "Setup card",
    subject: "Counts and checks of one cushion, for the therapist",
    parts: ["Set", "Check and change", "Move"],

    from_above: "From above, as the client sits",
    the_client: "The client",
    name: "Name",
    nothing_known: "Nothing is written down of posture, skin and function.",
    goals: "Goals, the most important first",
    take_care: "Take care",
    cautions: &[
        "Pat every compartment level before each check.",
        "Pinched can mean bottomed out or overfilled. Do the under check before you take cells out of that side.",
        "One change at a time. Then check both sides again.",
    ],
    counts: "Counts",
    count_columns: ["No.", "Compartment", "Stock", "Change", "Set to", "Counted"],
    bone_columns: ["Under the seat bones", "CLIENT'S LEFT", "CLIENT'S RIGHT"],
    expected_under_bones: "Cushion under the bone, expected",
    found: "What the fitting found",
    nothing_found: "Nothing is recorded for these counts yet.",
    code_is_for: "File lost? This code brings the counts back, to be checked again.",

    how_to_check: "Real cover on, brakes on, rings off, client agrees. Pat level, client fully back, wait 5 to 10 minutes. Both sides.",
    defined: &[
        DefinedCheckTexts {
            name: "Top check",
            how: "Slide your fingers between seat bone and cushion.",
            words: "safe: fingertips move up and down; tight: they only slide out; pinched: they are held",
        },
        DefinedCheckTexts {
            name: "Under check",
            how: "Slide a flat hand under the cushion, below the lowest bone. A thumb's width is about 25 mm.",
            words: "how much cushion remains between hand and bone; bone-felt: stop, client off",
        },
        DefinedCheckTexts {
            name: "Press check",
            how: "Press two fingers into the edge of a compartment, then into its partner on the other side.",
            words: "against its partner: slack, like, tight",
        },
        DefinedCheckTexts {
            name: "Skin",
            how: "Look when the client comes off, and again after 30 minutes.",
            words: "clear: as before; fades: gone after 30 minutes; stays: still there, client off, no cells",
        },
    ],
    checks: "What you find: ring the word, write the number",
    check_columns: ["Check", "Expected", "As found", "On sitting", "After 30 min"],
    signed: "Date, initials",
    check_rows: &rows("____ mm / bone-felt", "L / level / R, ____ mm"),
    order_of_a_fitting: "Fill, check both sides, change one thing, check again after 30 minutes. Slack: does the client lean the other way?",
    if_then: "If you find ..., then ...",
    if_then_columns: ["If you find", "then", "and expect elsewhere"],
    if_then_note: "Estimated for these counts. One line at a time: move, pat level, seat the client, wait, check again on both sides. Where two findings go against each other, check again first. What happens to pressures is known to a fifth of itself at best; heights may change by half or by twice as much, since nobody knows how far walls give way.",

    all_moved: "Nothing remains to be moved: the record says that these cells are in the cushion.",
    moves_from_below: "From below, as the openings face you: cells more (+) or fewer (–) in each numbered compartment.",
    moves_drawing: "The cushion from below, front edge up, with how many cells more or fewer each compartment gets. The client's left is on the right of the drawing.",
    moves: "Moves, one line at a time",
    move_columns: ["Take", "from", "to", "Done"],
    bag: "bag",
    while_you_move: "While you move",
    move_steps: &[
        "Turn it over sideways, like a page. The client's LEFT is now on your RIGHT. Go by the numbers.",
        "One compartment open at a time. Count into your hand, count out again, shut it.",
        "Other counts inside than here? Stop and recount.",
        "Last: top up, pat level, check both sides.",
    ],
    spare_bag: "The spare bag",
    bag_rows: ["Before", "Change", "After", "Counted"],
    move_fields: &[&["Moved by, date", "Counted again by, date"]],
    clinician_decides: shared::CARD_DEFERS,
};

/// For whoever measures in inches.
pub(super) const TEXTS_IN_INCHES: &SetupCardTexts = &SetupCardTexts {
    check_rows: &rows("____ in / bone-felt", "L / level / R, ____ in"),
    ..*TEXTS
};
