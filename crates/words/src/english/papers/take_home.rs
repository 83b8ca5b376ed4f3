//! English: the take-home sheet.

use crate::{PassageTexts, TakeHomeTexts};

pub(super) const TEXTS: &TakeHomeTexts = &TakeHomeTexts {
    title: "Take-home sheet",
    second_title: "Take-home sheet, page 2",
    subject: "How to use, check and refill one cushion, for carers",
    heading: "Your cushion, each day",
    second_heading: "Washing, travel and repair",
    name: "Name:",
    stop: "Do not sit on it if",
    stop_rules: &[
        "you can feel a seat bone with your hand under the cushion;",
        "a mark on the skin is still there after 30 minutes;",
        "the skin is open, wet, black, hot, hard or swollen;",
        "a pocket is open or flat, or the cushion was not filled by this sheet.",
    ],
    stop_then: "Come off it, lie down, and call. No one answers? Stay in bed.",
    right_way_round: PassageTexts {
        heading: "Right way round",
        sentences: &[
            "The TOP faces up. The FRONT goes to the knees.",
            "The tag is on the underside.",
            "Put no pad, towel or sling on it unless your therapist said so.",
        ],
    },
    pat_level: PassageTexts {
        heading: "Pat it level",
        sentences: &[
            "Before you sit, pat each pocket flat with both hands.",
            "Sit all the way back.",
        ],
    },
    check_from_below: PassageTexts {
        heading: "Check from below",
        sentences: &[
            "Brakes on, rings off. Sit for 10 minutes.",
            "Slide a flat hand under the cushion, below each seat bone.",
            "You need a thumb of cushion between hand and bone, left and right.",
        ],
    },
    look_at_the_skin: PassageTexts {
        heading: "Look at the skin",
        sentences: &[
            "Look each time you come off. Look again after 30 minutes.",
            "On dark skin, feel for heat, swelling, or a hard or soft spot.",
        ],
    },
    half_an_hour: "30 min",
    right_way_round_picture: "The cushion from above: the top faces up, the front is away.",
    pat_level_picture: "Two flat hands pat the cushion level.",
    check_from_below_picture: "A flat hand slides under the cushion, below a seat bone.",
    look_at_the_skin_picture: "A mirror shows a mark on the skin, and again after 30 minutes.",
    notes_for_you: "For you",
    meanwhile: "If you cannot use it, sit on:",
    ask_how_long: "Do not sit until your nurse says how long.",
    call: "Call",
    who_and_phone: "Who and phone:",
    get_help_now: "Get help now",
    emergency_signs: &[
        "The skin is broken or black, smells bad, or there is a fever.",
        "Spine injury at T6 or above: a pounding headache, sweat or a red face.",
    ],
    washing: "Washing",
    washing_steps: &[
        "Wash the outer cover only. Dry it. Put it back the right way round.",
        "Wet in a pocket? Turn the cushion over sideways, like a page. The front stays away from you.",
        "Open one pocket at a time. Put its cells in a bag with its number. Wipe and dry them.",
        "Count the cells back in by this sheet. One more person counts too.",
        "Shut it. Pat level. Check from below.",
    ],
    cells_in_each_pocket: "Cells in each pocket",
    openings_up: "From below, openings up:",
    pocket: "Pocket",
    cells: "Cells",
    counts_are_an_estimate: "An estimate until checked.",
    beside_counts: &[
        PassageTexts {
            heading: "The first day, or after a change",
            sentences: &[
                "Look at the skin after 30 minutes, 1 hour and 2 hours.",
                "Sit longer only if it is clear.",
            ],
        },
        PassageTexts {
            heading: "A burst cell",
            sentences: &[
                "Put 1 spare in the same pocket for each burst cell.",
                "More than 3? Call.",
            ],
        },
        PassageTexts {
            heading: "Flying, heat and cold",
            sentences: &[
                "On a plane, change nothing. Check from below in the air and after you land.",
                "Keep it out of hot or cold cars. Let it warm up to the room before you sit.",
                "Moving to the hills, or down? Call first.",
            ],
        },
    ],
    call_the_same_day: PassageTexts {
        heading: "Call the same day",
        sentences: &[
            "Call for new marks, a new lean, a fall, a new chair, or much more or less weight.",
            "Does your care team say something else? Do what they say.",
        ],
    },
};
