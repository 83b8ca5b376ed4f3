//! English: the fill cards.

use crate::FillCardTexts;

pub(super) const TEXTS: &FillCardTexts = &FillCardTexts {
    title_for_one_client: "Fill card for one client",
    title_as_supplied: "Fill card, stock fill",
    subject: "Counts to fill into the cover, drawn from below",
    estimate_until_counted: "ESTIMATE until counted",
    printed: "Printed",
    from_below: "From below, as you fill it",
    turn_it_over: "Turn the cover over",
    turning_steps: &[
        "Lay it top up, front edge away from you.",
        "Turn it over sideways, like a page. The front edge stays away from you.",
        "The openings face you. The client's LEFT is now on your RIGHT. Go by the numbers.",
    ],
    openings: "OPENINGS",
    turning_pictures: "The cover lies top up with its front away from you and the client's left on your left; it is turned over sideways; the openings face you, the front is still away from you and the client's left is on your right.",
    columns: [
        "No.",
        "Compartment",
        "Cells",
        "First count, initials",
        "Second count, initials",
        "Shut",
        "Height after patting, mm",
    ],
    count_do_not_measure: "Count cells, never measure them by volume. A second person counts again. Leave out a cell that is soft.",
    how_to_finish: "Shut each opening when its second count is right. Pat all compartments level with the top up, then take the heights.",
    fields: &[
        &["Batch of cells", "Sealed on", "Altitude of sealing, m"],
        &["Mass when finished, g", "Spare cells packed", "All openings shut"],
        &["Filled by, date", "Counted again by, date"],
    ],
    clinician_decides: "The treating clinician decides on any change; local rules come first.",
};
