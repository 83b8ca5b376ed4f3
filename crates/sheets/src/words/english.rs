//! The sentences in English.
//!
//! For carers: US grade 6 or below, short sentences, digits for counts. Left and right are
//! always named as the client's.

use case::{CountedFrom, Date, Lapse, Standing};
use cushion::Size;

pub(crate) const LANGUAGE: &str = "en";

// Shared.
pub(crate) const FRONT_EDGE: &str = "FRONT EDGE (knees)";
pub(crate) const REAR_EDGE: &str = "REAR EDGE (back)";
pub(crate) const CLIENTS_LEFT: &str = "CLIENT'S LEFT";
pub(crate) const CLIENTS_RIGHT: &str = "CLIENT'S RIGHT";
pub(crate) const CLIENTS_LEFT_SHORT: &str = "Client's left";
pub(crate) const CLIENTS_RIGHT_SHORT: &str = "Client's right";
pub(crate) const FRONT: &str = "FRONT";
pub(crate) const TOP: &str = "TOP";
pub(crate) const OPENINGS: &str = "OPENINGS";
pub(crate) const CLIENT: &str = "Client";
pub(crate) const LAYOUT: &str = "Layout";
pub(crate) const SIZE: &str = "Width x depth";
pub(crate) const CELL: &str = "Cell";
pub(crate) const CELLS_IN_ALL: &str = "Cells in all";
pub(crate) const SPARE_CELLS: &str = "Spare cells";
pub(crate) const RECORDED: &str = "Plan recorded";
pub(crate) const PRINTED: &str = "Printed";
pub(crate) const PRINTED_ON: &str = "printed";
pub(crate) const TOTAL: &str = "Total";
pub(crate) const PLAN_OF: &str = "Plan of";
pub(crate) const LAYOUT_DIGEST: &str = "layout";
pub(crate) const CELL_DIGEST: &str = "cell";
pub(crate) const DRAWN_BY: &str = "Pattern drawn by the plugin";
pub(crate) const ESTIMATE_UNTIL_CHECKED: &str = "ESTIMATE until checked";
pub(crate) const ESTIMATE_UNTIL_COUNTED: &str = "ESTIMATE until counted";
pub(crate) const FIRST_FILL: &str = "ESTIMATE: first fill";
pub(crate) const DEFER: &str = "The treating clinician decides; local rules come first. This card does not replace an assessment.";
pub(crate) const DEFER_SUPPLIER: &str =
    "The treating clinician decides on any change; local rules come first.";
pub(crate) const DEFER_FORM: &str = "The treating clinician decides; local rules come first. This form does not replace an assessment.";
pub(crate) const BELOW_ALT: &str = "The cushion from below, front edge up, with the numbers of the compartments. The client's left is on the right of the drawing.";

pub(crate) fn size(size: Size) -> String {
    let text = size.to_string().replace('x', " x ");
    format!("{text}\u{a0}mm")
}

pub(crate) fn cells(count: u32) -> String {
    format!("{count}\u{a0}cells")
}

pub(crate) fn cells_within(count: u32, tolerance: u32) -> String {
    if tolerance == 0 { count.to_string() } else { format!("{count} ± {tolerance}") }
}

pub(crate) fn change(change: i64) -> String {
    if change == 0 { "0".to_owned() } else { format!("{change:+}").replace('-', "–") }
}

pub(crate) fn checked_on(on: Date, by: &str) -> String {
    format!("Checked on {on} by {by}")
}

// The setup card.
pub(crate) const SETUP_CARD: &str = "Setup card";
pub(crate) const SETUP_CARD_SUBJECT: &str = "Counts and checks of one cushion, for the therapist";
pub(crate) const FROM_ABOVE: &str = "From above, as the client sits: number and cells";
pub(crate) const FROM_BELOW: &str = "From below: numbers only";
pub(crate) const CAUTIONS: &str = "Take care";
pub(crate) const COUNTS: &str = "Counts";
pub(crate) const CHECKS: &str =
    "Checks by hand: real cover on, brakes on, rings off, client's consent. Ring the word.";
pub(crate) const COUNT_COLUMNS: [&str; 8] =
    ["No.", "Compartment", "Stock", "Change", "Planned", "As found", "On sitting", "After 30 min"];
pub(crate) const CHECK_COLUMNS: [&str; 4] = ["Check", "As found", "On sitting", "After 30 min"];
/// Each check, with the answers of which one is ringed.
pub(crate) const CHECK_ROWS: [(&str, &str); 8] = [
    ("Top check, client's left seat bone", TOP_ANSWERS),
    ("Top check, client's right seat bone", TOP_ANSWERS),
    ("Under check, client's left", UNDER_ANSWERS),
    ("Under check, client's right", UNDER_ANSWERS),
    ("Side of the pelvis that is lower, the client's", "left / level / right"),
    ("Lower by", "____ mm"),
    ("Press check at the edge, No. ____ against ____", PRESS_ANSWERS),
    ("Press check at the edge, No. ____ against ____", PRESS_ANSWERS),
];
const TOP_ANSWERS: &str = "safe / tight / pinched";
const UNDER_ANSWERS: &str = "____ mm / bone-felt";
const PRESS_ANSWERS: &str = "slack / like / tight";
pub(crate) const SETUP_CAUTIONS: [&str; 3] = [
    "Pat every compartment level before each check.",
    "Pinched can mean bottomed out or overfilled. Do the under check before you take cells out of that side.",
    "One change at a time. Then check both sides again.",
];

/// Why the counts of some compartments differ from the stock fill.
pub(crate) fn reason(numbers: &[u8], by: i64, reason: &str) -> String {
    let numbers = numbers.iter().map(u8::to_string).collect::<Vec<_>>().join(" and ");
    format!("No. {numbers}, {}: {}", change(by), reason.trim_end_matches('.'))
}

pub(crate) const ORDER_OF_A_FITTING: &str = "Fill, pat level, client fully back, wait 5 to 10 minutes, check both sides, change one thing, check again after 30 minutes. Look at the skin when the client comes off. Slack at an edge: ask first whether the client leans the other way.";

pub(crate) fn above_alt(compartments: usize) -> String {
    format!(
        "The cushion from above, front edge up, with {compartments} compartments, each with its number and count. The client's left is on the left of the drawing."
    )
}

// The fill card.
pub(crate) const FILL_CARD_ORDER: &str = "Fill card for one client";
pub(crate) const FILL_CARD_STOCK: &str = "Fill card, stock fill";
pub(crate) const FILL_CARD_SUBJECT: &str = "Counts to fill into the cover, drawn from below";
pub(crate) const FROM_BELOW_FILL: &str = "From below, as you fill it: number and cells";
pub(crate) const FROM_ABOVE_SMALL: &str = "From above, numbers only";
pub(crate) const ABOVE_SMALL_ALT: &str = "The cushion from above, front edge up, with numbers only. The client's left is on the left of the drawing.";
pub(crate) const TURN_IT: &str = "Turn the cover over";
pub(crate) const TURNING_STEPS: [&str; 3] = [
    "Lay it top up, front edge away from you.",
    "Turn it over sideways, like a page. The front edge stays away from you.",
    "The openings face you. The client's LEFT is now on your RIGHT. Go by the numbers.",
];
pub(crate) const TURNING_BAR: &str = "Thick bar: the client's left";
pub(crate) const TURNING_ALT: &str = "The cover lies top up with its front away from you and the client's left on your left; it is turned over sideways; the openings face you, the front is still away from you and the client's left is on your right.";
pub(crate) const FILL_COLUMNS: [&str; 7] = [
    "No.",
    "Compartment",
    "Cells",
    "First count, initials",
    "Second count, initials",
    "Shut",
    "Height after patting, mm",
];
pub(crate) const COUNT_DO_NOT_MEASURE: &str = "Count cells, never measure them by volume. A second person counts again. Leave out a cell that is soft.";
pub(crate) const HOW_TO_FINISH: &str = "Shut each opening when its second count is right. Pat all compartments level with the top up, then take the heights.";
pub(crate) const FILL_FIELDS: [&[&str]; 3] = [
    &["Batch of cells", "Sealed on", "Altitude of sealing, m"],
    &["Mass when finished, g", "Spare cells packed", "All openings shut"],
    &["Filled by, date", "Counted again by, date"],
];

pub(crate) fn below_alt(compartments: usize) -> String {
    format!(
        "The cushion from below, front edge up, with {compartments} compartments, each with its number and count. The client's left is on the right of the drawing."
    )
}

pub(crate) fn pack_spares(spares: u32) -> String {
    format!("Pack {spares} spare cells in a closed bag with the client's code on it.")
}

// The sewn-in tag.
pub(crate) const TAG: &str = "Cushion tag";
pub(crate) const TAG_SUBJECT: &str = "Which way round, and the numbers of the compartments";
pub(crate) const TAG_ALT: &str = "The cushion from below, front edge up, with the numbers of its compartments. The client's left is on the right of the drawing.";
pub(crate) const THIS_SIDE_DOWN: &str = "This side DOWN. The other side is the TOP.";
pub(crate) const TAG_SIDES: &str =
    "Seen from below: the client's left is on the right of this drawing.";
pub(crate) const FILL_BY_THE_CARD: &str = "If this cushion has a setup card, fill by the card.";

// The take-home sheet.
pub(crate) const TAKE_HOME: &str = "Take-home sheet";
pub(crate) const TAKE_HOME_2: &str = "Take-home sheet, page 2";
pub(crate) const TAKE_HOME_SUBJECT: &str = "How to use, check and refill one cushion, for carers";
pub(crate) const WALL_TITLE: &str = "Your cushion, each day";
pub(crate) const SECOND_TITLE: &str = "Washing, travel and repair";
pub(crate) const NOT_FITTED_YET: &str = "NOT FITTED YET. DO NOT HAND OVER.";
pub(crate) const NAME: &str = "Name:";
pub(crate) const CODE: &str = "Code";
pub(crate) const STOP: &str = "Do not sit on it if";
pub(crate) const STOP_RULES: [&str; 4] = [
    "you can feel a seat bone with your hand under the cushion;",
    "a mark on the skin is still there after 30 minutes;",
    "the skin is open, wet, black, hot, hard or swollen;",
    "a pocket is open or flat, or the cushion was not filled by this sheet.",
];
pub(crate) const STOP_THEN: &str = "Come off it, lie down, and call. No one answers? Stay in bed.";
pub(crate) const WALL_STEPS: [(&str, &[&str]); 4] = [
    (
        "Right way round",
        &[
            "The TOP faces up. The FRONT goes to the knees.",
            "The tag is on the underside.",
            "Put no pad, towel or sling on it unless your therapist said so.",
        ],
    ),
    (
        "Pat it level",
        &["Before you sit, pat each pocket flat with both hands.", "Sit all the way back."],
    ),
    (
        "Check from below",
        &[
            "Brakes on, rings off. Sit for 10 minutes.",
            "Slide a flat hand under the cushion, below each seat bone.",
            "You need a thumb of cushion between hand and bone, left and right.",
        ],
    ),
    (
        "Look at the skin",
        &[
            "Look each time you come off. Look again after 30 minutes.",
            "On dark skin, feel for heat, swelling, or a hard or soft spot.",
        ],
    ),
];
pub(crate) const EMERGENCY: &str = "Get help now";
pub(crate) const EMERGENCY_SIGNS: [&str; 2] = [
    "The skin is broken or black, smells bad, or there is a fever.",
    "Spine injury at T6 or above: a pounding headache, sweat or a red face.",
];
pub(crate) const OWN_NOTES: &str = "For you";
pub(crate) const HALF_AN_HOUR: &str = "30 min";
pub(crate) const MEANWHILE: &str = "If you cannot use it, sit on:";
pub(crate) const CALL: &str = "Call";
pub(crate) const WHO_AND_PHONE: &str = "Who and phone:";
pub(crate) const WAY_ROUND_ALT: &str =
    "The cushion from above: the top faces up, the front is away.";
pub(crate) const PAT_LEVEL_ALT: &str = "Two flat hands pat the cushion level.";
pub(crate) const UNDER_CHECK_ALT: &str = "A flat hand slides under the cushion, below a seat bone.";
pub(crate) const SKIN_CHECK_ALT: &str =
    "A mirror shows a mark on the skin, and again after 30 minutes.";

pub(crate) const WASHING: &str = "Washing";
pub(crate) const WASHING_STEPS: [&str; 5] = [
    "Wash the outer cover only. Dry it. Put it back the right way round.",
    "Wet in a pocket? Turn the cushion over sideways, like a page. The front stays away from you.",
    "Open one pocket at a time. Put its cells in a bag with its number. Wipe and dry them.",
    "Count the cells back in by this sheet. One more person counts too.",
    "Shut it. Pat level. Check from below.",
];
pub(crate) const CELLS_IN_EACH_POCKET: &str = "Cells in each pocket";
pub(crate) const OPENINGS_UP: &str = "From below, openings up:";
pub(crate) const POCKET: &str = "Pocket";
pub(crate) const CELLS: &str = "Cells";
pub(crate) const COUNTS_ARE_AN_ESTIMATE: &str = "An estimate until checked.";
/// What stands below the washing, beside the counts.
pub(crate) const BESIDE_COUNTS: [(&str, &[&str]); 3] = [
    (
        "The first day, or after a change",
        &[
            "Look at the skin after 30 minutes, 1 hour and 2 hours.",
            "Sit longer only if it is clear.",
        ],
    ),
    (
        "A burst cell",
        &["Put 1 spare in the same pocket for each burst cell.", "More than 3? Call."],
    ),
    (
        "Flying, heat and cold",
        &[
            "On a plane, change nothing. Check from below in the air and after you land.",
            "Keep it out of hot or cold cars. Let it warm up to the room before you sit.",
            "Moving to the hills, or down? Call first.",
        ],
    ),
];
pub(crate) const CALL_SAME_DAY: (&str, &[&str]) = (
    "Call the same day",
    &[
        "Call for new marks, a new lean, a fall, a new chair, or much more or less weight.",
        "Does your care team say something else? Do what they say.",
    ],
);

/// The state of a fitting, for carers.
pub(crate) fn sheet_state(standing: Standing<'_>) -> String {
    match standing {
        Standing::NotFitted => NOT_FITTED_YET.to_owned(),
        Standing::Fitted(check) => {
            format!("Checked on {} by {}. Do not change it.", day(check.on), check.by)
        }
        Standing::Lapsed(_, Lapse::Counts(_)) => "CELLS HAVE CHANGED. FIT IT AGAIN.".to_owned(),
        Standing::Lapsed(_, Lapse::Weight(_)) => "WEIGHT HAS CHANGED. FIT IT AGAIN.".to_owned(),
        Standing::Lapsed(_, Lapse::Review(due)) => {
            format!("LOOK AGAIN: OVERDUE SINCE {}.", day(due).to_uppercase())
        }
    }
}

/// The state of a fitting, for therapists and fillers; `estimate` where nobody found it right yet.
pub(crate) fn card_state(standing: Standing<'_>, estimate: &str) -> String {
    match standing {
        Standing::NotFitted => estimate.to_owned(),
        Standing::Fitted(check) => checked_on(check.on, &check.by),
        Standing::Lapsed(_, Lapse::Counts(on)) => format!("LAPSED: counts changed, {on}"),
        Standing::Lapsed(_, Lapse::Weight(on)) => format!("LAPSED: weight of {on}"),
        Standing::Lapsed(_, Lapse::Review(due)) => format!("OVERDUE: review was due {due}"),
    }
}

pub(crate) fn sit_meanwhile(what: &str) -> String {
    format!(
        "If you cannot use it, sit on: {}. Never on the bare chair.",
        what.trim_end_matches('.')
    )
}

pub(crate) fn all_cells(total: u32) -> String {
    format!("All pockets: {total} cells.")
}

pub(crate) fn spare_bag(spares: u32) -> String {
    format!("Keep the bag of {spares} spare cells.")
}

pub(crate) fn next_look(on: Date) -> String {
    format!("Your therapist looks at it again by {}.", day(on))
}

pub(crate) fn sheet_of(recorded: Date, printed: Date, page: usize, of: usize) -> String {
    format!(
        "Page {page} of {of}. Plan of {}, sheet of {}. Throw older sheets away.",
        day(recorded),
        day(printed)
    )
}

/// A day as people say it.
fn day(date: Date) -> String {
    const MONTHS: [&str; 12] = [
        "January",
        "February",
        "March",
        "April",
        "May",
        "June",
        "July",
        "August",
        "September",
        "October",
        "November",
        "December",
    ];
    let month = MONTHS[date.month().unsigned_abs() as usize - 1];
    format!("{}\u{a0}{month}\u{a0}{}", date.day(), date.year())
}

// The blank form.
pub(crate) const BLANK_FORM: &str = "Measuring form";
pub(crate) const BLANK_FORM_2: &str = "Measuring form, page 2";
pub(crate) const BLANK_FORM_SUBJECT: &str =
    "What is measured and decided, in the order of the client's file";
pub(crate) const SIDES_ARE_THE_CLIENTS: &str = "Left and right are the client's";
pub(crate) const FORM_FOOT: &str =
    "Copy the answers into the client's file: the order is the same.";
pub(crate) const FORM_CODE: &str = "Client's code (never a name)";
pub(crate) const FORM_DATE: &str = "Date";
pub(crate) const FORM_BY: &str = "Measured by";
pub(crate) const FORM_MEASURES: &str = "Body measures";
pub(crate) const FORM_UNITS: &str = "All lengths on this form in";
pub(crate) const FORM_POSTURE: &str = "Sitting, as upright as can be held, clothed as when using the cushion, shoes on. Write what you measure, not what you expect.";
pub(crate) const FORM_MEASURE: &str = "Measure";
pub(crate) const FORM_HOW: &str = "From where to where";
pub(crate) const FORM_MEASURE_ROWS: [(&str, &str); 6] = [
    ("Hip width", "greatest width of hips or thighs"),
    ("Trochanter width", "between the outsides of the trochanters"),
    ("Thigh depth", "back of the buttock to the back of the knee, each leg"),
    ("Lower leg length", "back of the knee to under the heel of the shoe, each leg"),
    ("External knee width", "between the outsides of the knees"),
    ("Seat bone spacing", "between the lowest points of the seat bones, only if measured"),
];
pub(crate) const FORM_FIGURE_ALT: &str = "A seated person from the side, with thigh depth and lower leg length, and from above, with hip width, trochanter width, knee width and the spacing of the seat bones.";
pub(crate) const FROM_THE_SIDE: &str = "From the side";
pub(crate) const FROM_ABOVE_KNEES_UP: &str = "From above, knees up";
pub(crate) const THIGH_DEPTH: &str = "thigh depth";
pub(crate) const LOWER_LEG: &str = "lower leg";
pub(crate) const HIPS: &str = "hip width";
pub(crate) const TROCHANTERS: &str = "trochanter width";
pub(crate) const KNEES: &str = "external knee width";
pub(crate) const SEAT_BONES: &str = "seat bone spacing";
pub(crate) const FORM_TWO_SIDED: [&str; 2] = ["Thigh depth", "Lower leg length"];
pub(crate) const FORM_WEIGHT: &str = "Body weight";
pub(crate) const FORM_WEIGHT_KG: &str = "Weight (write kg or lb)";
pub(crate) const FORM_WEIGHED_ON: &str = "Weighed on";
pub(crate) const FORM_CHAIR: &str = "Chair";
pub(crate) const FORM_INSIDE_WIDTH: &str = "Inside width";
pub(crate) const FORM_INSIDE_DEPTH: &str = "Inside depth";
pub(crate) const FORM_BASE: &str = "Seat base";
pub(crate) const SOLID: &str = "solid";
pub(crate) const SLING: &str = "sling";
pub(crate) const FORM_CHAIR_NOTES: &str = "Notes on the chair";
pub(crate) const FORM_CUSHION: &str = "Cushion";
pub(crate) const FORM_LAYOUT: &str = "Layout";
pub(crate) const FORM_SIZE: &str = "Size, width x depth";
pub(crate) const FORM_CELL: &str = "Cell";
pub(crate) const FORM_CHANGES: &str = "Wanted changes from the stock fill";
pub(crate) const FORM_CHANGE_COLUMNS: [&str; 4] =
    ["Compartment", "Cells, + or –", "or mm of crown", "Reason"];
pub(crate) const FORM_CARER: &str = "For the carer's sheet";
pub(crate) const FORM_NOTES: &str = "Notes";
pub(crate) const FORM_WHO: &str = "Call";
pub(crate) const FORM_PHONE: &str = "Phone, hours";
pub(crate) const FORM_REVIEW: &str = "Next review";
pub(crate) const FORM_SKETCH: &str = "Sketch from above: sore places, where the client leans";
pub(crate) const PRINT_AT_FULL_SIZE: &str = "Print at 100 %, not fitted to the page. Each side of this square is then 100 mm. Measure it before you trust a drawing at full size.";
pub(crate) const SKETCH_NOTES: &str = "Notes";
pub(crate) const SQUARE_ALT: &str = "A square of 100 mm by 100 mm, to check the scale of the print and to sketch in. The front edge is up, the client's left on the left.";

// The drawing of a pattern.

pub(crate) fn pattern_alt(compartments: usize) -> String {
    format!(
        "The cushion from above, front edge up, with {compartments} compartments, each with its number. The client's left is on the left of the drawing."
    )
}

// Sections.
pub(crate) const SECTIONS: &str = "Sections through the cushion";
pub(crate) const SECTIONS_SUBJECT: &str =
    "How deep the client is expected to sit in the cushion, drawn from the side and from behind";
pub(crate) const SECTIONS_STATUS: &str = "ESTIMATE: CHECK BY HAND";
pub(crate) const SECTIONS_KEY: &str = "Hatched: the cushion under the client. Dashed: its top without the client. Heavy line: the client's underside. Upright lines: seams. Heights are not exaggerated, and pressures are not drawn.";
pub(crate) const SECTIONS_LIMITS: &str = "Computed by a model that was not compared with a measured cushion. It replaces no check by hand.";
pub(crate) const SECTION_ACROSS: &str =
    "From left to right through the seat bones, seen from behind";
pub(crate) const SCALE_BAR: &str = "100 mm";

pub(crate) fn section_along(side: cushion::Side) -> String {
    format!("From rear to front through the {} seat bone", side.words())
}

pub(crate) fn above_base(name: &str, height: f64) -> String {
    format!("{name}: {height:.0} mm of cushion")
}

pub(crate) fn section_alt(title: &str, sites: &[crate::documents::SectionSite]) -> String {
    let sites: Vec<String> = sites.iter().map(|site| above_base(&site.name, site.height)).collect();
    format!("{title}. {}.", sites.join("; "))
}

// What follows from goals and checks, on the setup card.
pub(crate) const GOALS: &str = "Goals, the most important first";
pub(crate) const IF_THEN: &str = "If you find ..., then ...";
pub(crate) const IF_THEN_NOTE: &str = "Estimated for these counts. One line at a time: move, pat level, seat the client, wait, check again on both sides. Where two findings go against each other, check again first. What happens to pressures is known to a fifth of itself at best.";
pub(crate) const IF_THEN_COLUMNS: [&str; 3] = ["If you find", "then", "and expect elsewhere"];
pub(crate) const MOVES_ALT: &str = "The cushion from below, front edge up, with how many cells more or fewer each compartment gets. The client's left is on the right of the drawing.";

/// What the moves to a plan go out from.
pub(crate) fn moves_from(from: CountedFrom) -> String {
    match from {
        CountedFrom::Stock => {
            "Moves to this plan, from STOCK only: the cushion as supplied, never changed".to_owned()
        }
        CountedFrom::Plan(on) => format!("Moves to this plan, from the plan of {}", day(on)),
        CountedFrom::Recount(on) => format!("Moves to this plan, from the recount of {}", day(on)),
    }
}

// The survey.
pub(crate) const ESTIMATE: &str = "ESTIMATE";
pub(crate) const SURVEY_SUBJECT: &str =
    "How a layout serves many bodies: sizes, counts, heights and pressures";
pub(crate) const SURVEY_LIMITS: &str = "Computed for bodies from a table, none of them a client. It says how the layout spreads, not what is right for anybody.";
