//! English: the setup card.

use super::shared;
use crate::{CheckTexts, SetupCardTexts};

const TOP_ANSWERS: &str = "safe / tight / pinched";
const UNDER_ANSWERS: &str = "____ mm / bone-felt";
const PRESS_ANSWERS: &str = "slack / like / tight";

pub(super) const TEXTS: &SetupCardTexts = &SetupCardTexts {
    title: "Setup card",
    subject: "Counts and checks of one cushion, for the therapist",
    from_above: "From above, as the client sits: number and cells",
    from_below: "From below: numbers only",
    take_care: "Take care",
    cautions: &[
        "Pat every compartment level before each check.",
        "Pinched can mean bottomed out or overfilled. Do the under check before you take cells out of that side.",
        "One change at a time. Then check both sides again.",
    ],
    counts: "Counts",
    count_columns: [
        "No.",
        "Compartment",
        "Stock",
        "Change",
        "Planned",
        "As found",
        "On sitting",
        "After 30 min",
    ],
    checks: "Checks by hand: real cover on, brakes on, rings off, client's consent. Ring the word.",
    check_columns: ["Check", "As found", "On sitting", "After 30 min"],
    check_rows: &[
        CheckTexts { check: "Top check, client's left seat bone", answers: TOP_ANSWERS },
        CheckTexts { check: "Top check, client's right seat bone", answers: TOP_ANSWERS },
        CheckTexts { check: "Under check, client's left", answers: UNDER_ANSWERS },
        CheckTexts { check: "Under check, client's right", answers: UNDER_ANSWERS },
        CheckTexts {
            check: "Side of the pelvis that is lower, the client's",
            answers: "left / level / right",
        },
        CheckTexts { check: "Lower by", answers: "____ mm" },
        CheckTexts {
            check: "Press check at the edge, No. ____ against ____",
            answers: PRESS_ANSWERS,
        },
        CheckTexts {
            check: "Press check at the edge, No. ____ against ____",
            answers: PRESS_ANSWERS,
        },
    ],
    order_of_a_fitting: "Fill, pat level, client fully back, wait 5 to 10 minutes, check both sides, change one thing, check again after 30 minutes. Look at the skin when the client comes off. Slack at an edge: ask first whether the client leans the other way.",
    goals: "Goals, the most important first",
    if_then: "If you find ..., then ...",
    if_then_columns: ["If you find", "then", "and expect elsewhere"],
    if_then_note: "Estimated for these counts. One line at a time: move, pat level, seat the client, wait, check again on both sides. Where two findings go against each other, check again first. What happens to pressures is known to a fifth of itself at best; heights may change by half or by twice as much, since nobody knows how far walls give way.",
    moves_from_below: "From below, as the openings face you: cells more (+) or fewer (\u{2212}) in each numbered compartment.",
    moves_drawing: "The cushion from below, front edge up, with how many cells more or fewer each compartment gets. The client's left is on the right of the drawing.",
    clinician_decides: shared::CARD_DEFERS,
};
