//! The take-home sheet, for carers.

/// The take-home sheet: a page for the wall, the steps of each day, what to do with the cells, a
/// page to write on.
#[derive(Clone, Copy, Debug)]
pub struct TakeHomeTexts {
    pub title: &'static str,
    pub subject: &'static str,
    pub name: &'static str,
    /// On each page of the same sheet in the therapist's language: what it is for.
    pub same_for_therapist: &'static str,

    pub heading: &'static str,
    pub stop: &'static str,
    /// Where no sore is known: of a mark, and of the skin.
    pub stop_marks: &'static [&'static str],
    /// Where one is: of other marks and other skin.
    pub stop_new_marks: &'static [&'static str],
    pub stop_bone: &'static str,
    pub stop_pockets: &'static str,
    pub stop_then: &'static str,
    pub get_help_now: &'static str,
    /// Before the line for the number, where the file has none.
    pub number_to_call: &'static str,
    pub emergency_signs: &'static [&'static str],
    pub call: &'static str,
    pub who_and_phone: &'static str,
    pub call_the_same_day: PassageTexts,
    pub notes_for_you: &'static str,
    /// Where an injury is not healed and no clinician said how long the client may sit.
    pub ask_how_long: &'static str,
    /// How long the client may sit, filled in by hand: what stands before and after the room.
    pub sit_for: [&'static str; 2],
    /// How load is taken off in between, filled in by hand: what stands before each room.
    pub relief_every: [&'static str; 2],
    pub blank_lines: &'static str,
    pub meanwhile: &'static str,
    pub care_team: &'static str,

    pub steps_heading: &'static str,
    /// Which steps, and when; none where nobody can say it for all.
    pub how_often: [(&'static str, Option<&'static str>); 3],
    pub you: &'static str,
    pub helper: &'static str,
    pub steps: [StepTexts; 8],
    pub thumb: &'static str,
    pub after_the_hand: &'static str,
    pub dark_skin: &'static str,
    pub half_an_hour: &'static str,
    /// The action that is left out where something was allowed on the cushion.
    pub nothing_on_it: &'static str,
    pub before_the_steps: PassageTexts,
    pub after_the_steps: PassageTexts,

    pub cells_heading: &'static str,
    pub cells_in_each_pocket: &'static str,
    pub openings_up: &'static str,
    pub pocket: &'static str,
    pub cells: &'static str,
    pub counts_are_an_estimate: &'static str,
    pub washing: &'static str,
    pub washing_steps: &'static [&'static str],
    pub about_cells: &'static [PassageTexts],

    /// Tables to write in: a heading, and the heads of columns.
    pub tables: &'static [WrittenTableTexts],
    pub shown: &'static str,
    pub signed: &'static [&'static [&'static str]],
    /// What the code is for: a line.
    pub code_is_for: &'static str,
}

/// A heading with its sentences.
#[derive(Clone, Copy, Debug)]
pub struct PassageTexts {
    pub heading: &'static str,
    pub sentences: &'static [&'static str],
}

/// A step of each day.
#[derive(Clone, Copy, Debug)]
pub struct StepTexts {
    pub heading: &'static str,
    /// Whether a helper makes it.
    pub is_for_a_helper: bool,
    /// What its picture shows.
    pub picture: &'static str,
    /// One action each.
    pub actions: &'static [&'static str],
}

/// A table to write in.
#[derive(Clone, Copy, Debug)]
pub struct WrittenTableTexts {
    pub heading: &'static str,
    pub columns: &'static [&'static str],
}
