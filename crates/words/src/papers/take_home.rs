//! The take-home sheet, for carers.

/// The take-home sheet: a part for the wall, and a part for the day of a wash.
#[derive(Clone, Copy, Debug)]
pub struct TakeHomeTexts {
    pub title: &'static str,
    pub second_title: &'static str,
    pub subject: &'static str,
    pub heading: &'static str,
    pub second_heading: &'static str,
    pub name: &'static str,
    pub stop: &'static str,
    pub stop_rules: &'static [&'static str],
    pub stop_then: &'static str,
    pub right_way_round: PassageTexts,
    pub pat_level: PassageTexts,
    pub check_from_below: PassageTexts,
    pub look_at_the_skin: PassageTexts,
    /// Under the picture of a clock.
    pub half_an_hour: &'static str,
    /// What the pictures show.
    pub right_way_round_picture: &'static str,
    pub pat_level_picture: &'static str,
    pub check_from_below_picture: &'static str,
    pub look_at_the_skin_picture: &'static str,
    pub notes_for_you: &'static str,
    pub meanwhile: &'static str,
    /// Where an injury is not healed and no clinician said how long the client may sit.
    pub ask_how_long: &'static str,
    pub call: &'static str,
    pub who_and_phone: &'static str,
    pub get_help_now: &'static str,
    pub emergency_signs: &'static [&'static str],
    pub washing: &'static str,
    pub washing_steps: &'static [&'static str],
    pub cells_in_each_pocket: &'static str,
    pub openings_up: &'static str,
    pub pocket: &'static str,
    pub cells: &'static str,
    pub counts_are_an_estimate: &'static str,
    /// What stands below the washing, beside the counts.
    pub beside_counts: &'static [PassageTexts],
    pub call_the_same_day: PassageTexts,
}

/// A heading with its sentences.
#[derive(Clone, Copy, Debug)]
pub struct PassageTexts {
    pub heading: &'static str,
    pub sentences: &'static [&'static str],
}
