//! English: the take-home sheet.

use crate::{PassageTexts, StepTexts, TakeHomeTexts, WrittenTableTexts};

pub(super) const COUNT_TWICE: &str = "Count twice. Alone? Count, wait, count again.";
pub(super) const BURST: &str = "A burst cell";
pub(super) const BURST_CELL: [&str; 2] = [
    "One out, one in from the bag, same pocket.",
    "More than 3, or the bag is empty? Call: the clinic sends more.",
];

const NOTHING_ON_IT: &str = "Nothing on it but its cover.";

const WHERE: [&str; 2] = [
    "A seated person from behind. A helper's hand slides under the cushion, below the LEFT seat bone.",
    "A seated person from behind. A helper's hand slides under the cushion, below the RIGHT seat bone.",
];

const fn step(
    heading: &'static str,
    is_for_a_helper: bool,
    picture: &'static str,
    actions: &'static [&'static str],
) -> StepTexts {
    StepTexts { heading, is_for_a_helper, picture, actions }
}

const STEPS: [StepTexts; 8] = [
    step(
        "Right way round",
        true,
        "The cushion from above on a chair: the top faces up, the front is at the knees.",
        &["TOP up, tag down.", "FRONT to the knees.", NOTHING_ON_IT],
    ),
    step(
        "Pat it level",
        true,
        "Two hands of a helper pat the cushion on the chair.",
        &["Pat each pocket till it is smooth.", "No lumps, no gaps."],
    ),
    step(
        "Sit right back",
        false,
        "A person in a chair from the side, hips against the back.",
        &["Brakes on.", "Hips right back.", "Sit still for 10 minutes."],
    ),
    step(
        "Hand under",
        true,
        "From the side: a helper's flat hand reaches from behind under the cushion.",
        &["Rings off. Go behind the chair.", "Palm up, flat.", "Slide it in under the cushion."],
    ),
    step("LEFT seat bone", true, WHERE[0], &["Stop below the bone.", "A thumb's width, or more?"]),
    step("RIGHT seat bone", true, WHERE[1], &["Stop below the bone.", "A thumb's width, or more?"]),
    step(
        "Look at the skin",
        false,
        "A person from behind, and a mirror on a long handle that shows the skin over the seat bones.",
        &[
            "Look each time you come off.",
            "Look over both seat bones.",
            "Alone? Use a mirror on a handle.",
        ],
    ),
    step(
        "Look again",
        false,
        "A clock of 30 minutes, and a mark on the skin over a seat bone.",
        &["Stay off for 30 minutes.", "Mark still there? Do not sit.", "Call."],
    ),
];

pub(super) const TEXTS: &TakeHomeTexts = &TakeHomeTexts {
    title: "Take-home sheet",
    subject: "How to use, check and refill one cushion, for carers",
    name: "Name:",
    same_for_therapist: "For the therapist: the same in English. Not for the wall.",

    heading: "Your cushion, each day",
    stop: "Do not sit on it if",
    stop_bone: "you can feel a bone through the cushion",
    stop_marks: &[
        "a mark on the skin is still there after 30 minutes",
        "the skin is open, wet, hot, hard or swollen",
    ],
    stop_new_marks: &[
        "a new mark is still there after 30 minutes",
        "other skin is open, wet, hot, hard or swollen",
    ],
    stop_pockets: "a pocket is open, lumpy or empty, or not filled by this sheet",
    stop_then: "Come off. Lie down. Call. No one answers? Stay in bed.",
    get_help_now: "Get help now",
    number_to_call: "Number:",
    emergency_signs: &[
        "A black patch or crust",
        "A sore with fever or shaking",
        "Open skin that smells bad",
        "Spine injury, T6 or above: a pounding headache and sweat",
    ],
    call: "Call",
    who_and_phone: "Who and phone:",
    call_the_same_day: PassageTexts {
        heading: "Call the same day",
        sentences: &["A new mark or a new lean.", "A fall.", "A new chair or a new weight."],
    },
    notes_for_you: "For you",
    ask_how_long: "Do not sit until your nurse says how long.",
    sit_for: ["Sit for", "at most."],
    relief_every: ["Lift or lean every", "for"],
    blank_lines: "A line is blank? Ask before you sit.",
    meanwhile: "If you cannot use it, sit on:",
    care_team: "Does your care team say something else? Do what they say.",

    steps_heading: "Sit, feel, look",
    how_often: [
        ("1 2 3:", Some("each time")),
        ("4 5 6:", None),
        ("7 8:", Some("each time you come off")),
    ],
    you: "You",
    helper: "Helper",
    steps: STEPS,
    thumb: "This bar is 25 mm, a thumb's width. Lay your thumb on it.",
    after_the_hand: "Soft, and no bone: good. Thin, or a hard lump: come off and call.",
    dark_skin: "Dark skin: feel it too. Hot, hard, puffy or spongy is a mark. So is a purple or shiny patch.",
    half_an_hour: "30 min",
    nothing_on_it: NOTHING_ON_IT,
    before_the_steps: PassageTexts {
        heading: "The first day, or after a change",
        sentences: &[
            "Look at the skin after 30 minutes, 1 hour and 2 hours.",
            "Sit longer only if it is clear.",
        ],
    },
    after_the_steps: PassageTexts {
        heading: "Flying, heat and cold",
        sentences: &[
            "On a plane, change nothing. Feel from below in the air and after you land.",
            "Keep it out of hot or cold cars. Let it warm up to the room before you sit.",
            "Moving to the hills, or down? Call first.",
        ],
    },

    cells_heading: "Cells, washing and notes",
    cells_in_each_pocket: "Cells in each pocket",
    openings_up: "From below, openings up:",
    pocket: "Pocket",
    cells: "Cells",
    counts_are_an_estimate: "An estimate until checked.",
    washing: "Washing",
    washing_steps: &[
        "Cover off. Wash the cover only. Dry it for a day.",
        "Dry inside? Put the cover back, the right way round.",
        "Wet inside? Turn the cushion sideways, like a page.",
        "Open one pocket. Its cells go into a bag with its number.",
        "Wipe and dry the cells and the pocket. Count them back in. Shut it.",
        "Then the next pocket. Never two open.",
        "TOP up. Pat it level. Feel from below.",
    ],
    about_cells: &[
        PassageTexts {
            heading: "Count again",
            sentences: &["Count when a pocket feels low, and after a wash.", COUNT_TWICE],
        },
        PassageTexts {
            heading: BURST,
            sentences: &[
                BURST_CELL[0],
                BURST_CELL[1],
                "Cells are small. Keep them from children and pets: they can choke.",
            ],
        },
    ],

    tables: &[
        WrittenTableTexts {
            heading: "Marks on the skin",
            columns: &["Date", "Where, LEFT or RIGHT", "Gone in 30 min?", "Name"],
        },
        WrittenTableTexts {
            heading: "Cells out and in, and washes",
            columns: &["Date", "Pocket", "Out", "In", "In bag", "Wash", "Name"],
        },
    ],
    shown: "I was shown steps 1 to 8 and could do them myself.",
    signed: &[&["You or helper, date"], &["Therapist, date"]],
    code_is_for: "For the clinic: this code keeps your cell counts.",
};
