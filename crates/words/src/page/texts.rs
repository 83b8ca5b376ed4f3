//! Texts of the page that are always the same, screen by screen.

/// All texts of the page.
#[derive(Clone, Copy, Debug)]
pub struct PageTexts {
    pub steps: StepNames,
    pub frame: FrameTexts,
    pub clients: ClientsTexts,
    pub fields: FieldsTexts,
    pub goals: GoalsTexts,
    pub cushion: CushionTexts,
    pub plan: PlanTexts,
    pub fill: FillTexts,
    pub checks: ChecksTexts,
    pub moves: MovesTexts,
    pub sign_off: SignOffTexts,
    pub papers: PapersTexts,
    pub review: ReviewTexts,
    pub lost: LostTexts,
    pub layout: LayoutTexts,
    pub trouble: TroubleTexts,
}

/// What the steps and their pages are called.
#[derive(Clone, Copy, Debug)]
pub struct StepNames {
    /// The steps, in their order.
    pub names: [&'static str; 15],
    /// The pages of questions, by their words.
    pub pages: &'static [(&'static str, &'static str)],
}

/// What is around every screen.
#[derive(Clone, Copy, Debug)]
pub struct FrameTexts {
    pub skip: &'static str,
    pub closed: &'static str,
    pub estimate: &'static str,
    pub clinician_decides: &'static str,
    pub invented_client: &'static str,
    pub all_clients: &'static str,
    pub steps: &'static str,
    pub beside_the_chair: &'static str,
    pub client: &'static str,
    pub weight: &'static str,
    pub cushion: &'static str,
    pub answered: &'static str,
}

/// The clients.
#[derive(Clone, Copy, Debug)]
pub struct ClientsTexts {
    pub title: &'static str,
    pub find: &'static str,
    pub find_button: &'static str,
    pub nobody: &'static str,
    pub nobody_yet: &'static str,
    pub invented: &'static str,
    pub not_complete: &'static str,
    pub not_readable: &'static str,
    pub unreadable: &'static str,
    pub last_visit: &'static str,
    pub new_client: &'static str,
    pub code: &'static str,
    pub code_hint: &'static str,
    pub not_a_code: &'static str,
    pub unit: &'static str,
    pub unit_hint: &'static str,
    pub millimetres: &'static str,
    pub inches: &'static str,
    pub begin: &'static str,
    pub learn: &'static str,
    pub learn_hint: &'static str,
    pub put_demos_here: &'static str,
    pub layouts: &'static str,
}

/// Questions and their boxes.
#[derive(Clone, Copy, Debug)]
pub struct FieldsTexts {
    pub yes: &'static str,
    pub no: &'static str,
    pub not_answered: &'static str,
    pub not_known: &'static str,
    pub by: &'static str,
    pub by_hint: &'static str,
    pub take_away: &'static str,
    pub add: &'static str,
    pub i_measure_in: &'static str,
    pub what_may_i_type: &'static str,
    pub may_type: &'static str,
    pub still_there: &'static str,
    pub next: &'static str,
    pub back: &'static str,
    pub kept: &'static str,
    pub complete_first: &'static str,
    pub needed: &'static str,
    /// The button that keeps what somebody else wrote.
    pub keep_theirs: &'static str,
    /// The button that writes one's own answer in its place.
    pub write_mine: &'static str,
    pub twice_at_front: &'static str,
    pub less_side: &'static str,
    pub less_side_hint: &'static str,
    pub both_sides: &'static str,
    pub keep_and_add: &'static str,
    pub what_it_means: &'static str,
    pub feel_seat_bones: &'static str,
}

/// The goals.
#[derive(Clone, Copy, Debug)]
pub struct GoalsTexts {
    pub title: &'static str,
    pub lead: &'static str,
    pub in_order: &'static str,
    pub none_yet: &'static str,
    pub earlier: &'static str,
    pub later: &'static str,
    pub take_away: &'static str,
    pub add: &'static str,
    pub add_first: &'static str,
    pub add_button: &'static str,
    pub choose_first: &'static str,
    pub looking: &'static str,
    pub look: &'static str,
    pub weight_first: &'static str,
    pub nothing_refused: &'static str,
    pub correct_and_accommodate: &'static str,
    pub next: &'static str,
}

/// Which cushion.
#[derive(Clone, Copy, Debug)]
pub struct CushionTexts {
    pub title: &'static str,
    pub lead: &'static str,
    pub suits_best: &'static str,
    pub suits_too: &'static str,
    pub none_suits: &'static str,
    pub why_not: &'static str,
    pub also: &'static str,
    pub take: &'static str,
    pub another_cushion: &'static str,
    pub what_is_kept: &'static str,
    pub height_means: &'static str,
}

/// The plan.
#[derive(Clone, Copy, Debug)]
pub struct PlanTexts {
    pub title: &'static str,
    pub in_cushion_now: &'static str,
    pub counts: &'static str,
    pub drawing_hint: &'static str,
    pub goals: &'static str,
    pub no_goals: &'static str,
    /// That the counts shown are those of a plan that was worked out.
    pub made: &'static str,
    /// The same where they are in the cushion already.
    pub made_is_there: &'static str,
    pub work_out: &'static str,
    pub work_out_hint: &'static str,
    pub making: &'static str,
    pub looking: &'static str,
    pub no_script: &'static str,
    pub what_they_do: &'static str,
    pub ranges_follow: &'static str,
    pub goals_follow: &'static str,
    pub no_answer: &'static str,
    pub limits_kept: &'static str,
    pub not_safe: &'static str,
    pub goals_met: &'static str,
    pub mind: &'static str,
    pub sections: &'static str,
    pub these_counts: &'static str,
    pub now: &'static str,
    /// Above the numbers of the counts before, by which they are.
    pub before_stock: &'static str,
    pub before_passed: &'static str,
    pub before_present: &'static str,
    pub under_left: &'static str,
    pub under_right: &'static str,
    pub pelvis: &'static str,
    pub lean: &'static str,
    pub slope: &'static str,
    pub load: &'static str,
    pub pressure: &'static str,
    pub change: &'static str,
    pub all_sites: &'static str,
    pub all_sites_hint: &'static str,
    pub take: &'static str,
    pub take_hint: &'static str,
    pub because: &'static str,
    pub because_hint: &'static str,
    pub not_taken: &'static str,
    pub not_taken_hint: &'static str,
    pub nearest_hint: &'static str,
    pub nearest_weighed: &'static str,
    pub take_nearest: &'static str,
    pub tissue_hint: &'static str,
    pub to_chair: &'static str,
}

/// The fill.
#[derive(Clone, Copy, Debug)]
pub struct FillTexts {
    pub title: &'static str,
    pub lead: &'static str,
    pub from_below: &'static str,
    pub nothing_planned: &'static str,
    pub to_plan: &'static str,
    pub first_count: &'static str,
    pub second_count: &'static str,
    pub other_count: &'static str,
    pub other_hint: &'static str,
    pub next: &'static str,
    pub whole_number: &'static str,
    pub count_twice: &'static str,
    pub all_filled: &'static str,
    pub spare: &'static str,
    pub serial: &'static str,
    pub batch: &'static str,
    pub record: &'static str,
    pub not_safe: &'static str,
    pub one_back: &'static str,
    /// The button that counts one compartment again.
    pub count_again: &'static str,
    /// That the cushion is full.
    pub is_full: &'static str,
    /// What unfolds the fill of a cushion that is full.
    pub fill_anew: &'static str,
    pub kept_at_once: &'static str,
    pub so_far: &'static str,
    pub give_up: &'static str,
    pub give_up_hint: &'static str,
    pub counted_meanwhile: &'static str,
}

/// The checks.
#[derive(Clone, Copy, Debug)]
pub struct ChecksTexts {
    pub title: &'static str,
    pub title_after: &'static str,
    pub lead: &'static str,
    pub fill_first: &'static str,
    pub as_planned: &'static str,
    pub as_planned_hint: &'static str,
    pub to_fill: &'static str,
    pub what_follows: &'static str,
    pub not_yet: &'static str,
    pub under: &'static str,
    pub under_hint: &'static str,
    pub felt: &'static str,
    pub bone_felt: &'static str,
    pub not_found: &'static str,
    pub how_much: &'static str,
    pub how_much_missing: &'static str,
    pub felt_and_not: &'static str,
    pub top: &'static str,
    pub top_hint: &'static str,
    pub safe: &'static str,
    pub tight: &'static str,
    pub pinched: &'static str,
    pub lower: &'static str,
    pub lower_hint: &'static str,
    pub level: &'static str,
    pub lower_by: &'static str,
    pub lower_by_missing: &'static str,
    pub which_side_missing: &'static str,
    pub lower_at: &'static str,
    pub at_seat_bones: &'static str,
    pub at_front: &'static str,
    pub skin: &'static str,
    pub skin_hint: &'static str,
    pub clear: &'static str,
    pub fades: &'static str,
    pub stays: &'static str,
    pub open: &'static str,
    pub worse: &'static str,
    pub more: &'static str,
    pub press_hint: &'static str,
    pub slack: &'static str,
    pub like: &'static str,
    pub tighter: &'static str,
    pub reading_hint: &'static str,
    pub look_at_set_up: &'static str,
    pub client_off: &'static str,
    pub to_record: &'static str,
    pub expected: &'static str,
    pub to_sign_off: &'static str,
    pub check_again: &'static str,
    pub to_moves: &'static str,
    pub found_before: &'static str,
    pub only_anew: &'static str,
    pub no_length: &'static str,
    pub loads_injury: &'static str,
    pub loads_least: &'static str,
    pub weighed_hint: &'static str,
    pub without_moves: &'static str,
    pub take_moves: &'static str,
    pub rest_stands: &'static str,
    pub skin_kept: &'static str,
    /// That the skin was not looked at yet, where cells are to be moved.
    pub skin_before_moves: &'static str,
    pub nearest_moves: &'static str,
    pub nearest_moves_hint: &'static str,
}

/// The moves.
#[derive(Clone, Copy, Debug)]
pub struct MovesTexts {
    pub title: &'static str,
    pub none: &'static str,
    pub none_is_right: &'static str,
    pub check_again: &'static str,
    pub from_below: &'static str,
    pub why: &'static str,
    pub what_they_do: &'static str,
    pub done: &'static str,
    pub put_back: &'static str,
    pub put_back_hint: &'static str,
    pub put_back_done: &'static str,
    pub put_back_record: &'static str,
    pub something_else: &'static str,
    pub something_else_hint: &'static str,
    pub in_bag: &'static str,
    pub record_counts: &'static str,
    pub leave: &'static str,
    pub leave_hint: &'static str,
    pub leave_because: &'static str,
    pub leave_record: &'static str,
}

/// The sign-off.
#[derive(Clone, Copy, Debug)]
pub struct SignOffTexts {
    pub title: &'static str,
    pub lead: &'static str,
    pub found: &'static str,
    pub nothing_found: &'static str,
    pub to_checks: &'static str,
    pub still_so: &'static str,
    pub tried: &'static str,
    pub transfer: &'static str,
    pub reach: &'static str,
    pub verdict: &'static str,
    pub passed: &'static str,
    pub failed: &'static str,
    pub note: &'static str,
    pub sign: &'static str,
    pub only_then: &'static str,
    pub say_which: &'static str,
    pub say_still: &'static str,
    pub speaks_against: &'static str,
    /// Above the day of the next look.
    pub next_look: &'static str,
    /// That the day of the next look has passed.
    pub look_is_over: &'static str,
    pub to_papers: &'static str,
}

/// The papers.
#[derive(Clone, Copy, Debug)]
pub struct PapersTexts {
    pub title: &'static str,
    /// While the papers are made.
    pub making: &'static str,
    pub open: &'static str,
    pub download: &'static str,
    pub look: &'static str,
    pub not_before_sign_off: &'static str,
    /// The same where it was signed, and the day of the next look has passed.
    pub not_while_overdue: &'static str,
    pub keep: &'static str,
    pub keep_hint: &'static str,
    /// That the papers lie in the folder.
    pub are_kept: &'static str,
    pub to_review: &'static str,
    /// The papers in their order, by their names, with their titles.
    pub names: [(&'static str, &'static str); 7],
}

/// A client whose file is lost.
#[derive(Clone, Copy, Debug)]
pub struct LostTexts {
    pub title: &'static str,
    pub lead: &'static str,
    pub text: &'static str,
    pub pdf: &'static str,
    pub pdf_hint: &'static str,
    pub no_pdf: &'static str,
    pub serial: &'static str,
    pub serial_hint: &'static str,
    pub bring_back: &'static str,
    pub back: &'static str,
}

/// The review.
#[derive(Clone, Copy, Debug)]
pub struct ReviewTexts {
    pub title: &'static str,
    pub in_cushion: &'static str,
    pub recount: &'static str,
    pub recount_hint: &'static str,
    pub record: &'static str,
    pub weight: &'static str,
    pub weight_now: &'static str,
    pub weight_hint: &'static str,
    pub skin: &'static str,
    pub history: &'static str,
    pub nothing: &'static str,
    pub change: &'static str,
    pub because: &'static str,
    /// Above the moves that lead to earlier counts.
    pub moves_back: &'static str,
    /// That earlier counts are not safe, and what that means.
    pub not_safe_again: &'static str,
    pub not_safe_again_hint: &'static str,
    pub check: &'static str,
    pub plan_again: &'static str,
    pub another_cushion: &'static str,
    pub not_a_number: &'static str,
}

/// A layout that is written.
#[derive(Clone, Copy, Debug)]
pub struct LayoutTexts {
    pub title: &'static str,
    pub lead: &'static str,
    pub size: &'static str,
    pub show: &'static str,
    pub no_remarks: &'static str,
}

/// What went wrong.
#[derive(Clone, Copy, Debug)]
pub struct TroubleTexts {
    pub title: &'static str,
    pub title_not_there: &'static str,
    pub title_not_safe: &'static str,
    pub title_not_kept: &'static str,
    pub not_there: &'static str,
    pub title_ours: &'static str,
    pub ours: &'static str,
    pub to_all_clients: &'static str,
}
