//! What follows from checks: what was expected beside what was found, moves, and the way on.

use axum::response::Response;
use case::{Check, CheckPart, LEAST_UNDER, MeasuredAt, Move, NextStep, UnderAnswer, Verdict};
use casework::{Adjusted, Draft, OpenCase};
use cushion::Side;
use maud::{Markup, html};
use words::Language;

use super::{Place, found};
use crate::frame::{OfClient, Screen, step_name};
use crate::house::House;
use crate::screens::plan_parts;
use crate::steps::Step;

/// Where to look in the set-up.
pub(super) fn looks(language: &dyn Language, adjusted: &Adjusted) -> Markup {
    html! {
        @if !adjusted.look_at.is_empty() {
            h2 { (language.lines().look_at_these) }
            ol { @for own in &adjusted.look_at { li { (language.look_at(*own)) } } }
        }
    }
}

/// What was expected beside what was found, and what follows.
pub(super) fn followed(
    place: &Place<'_>,
    draft: &Draft,
    (before, after): (&OpenCase, &OpenCase),
    checks: &[Check],
    adjusted: &Adjusted,
) -> Response {
    let house = place.house;
    let language = house.language().with_lengths_in(before.client.value.lengths);
    let texts = &language.page().checks;
    let moves = !adjusted.moves.is_empty();
    let proposed = after.proposed_moves();
    let mut next = still_asked(&found::so_far(&before.client.value), adjusted);
    if moves && proposed.is_empty() {
        // What comes after moves comes after none that are not made.
        next.retain(|own| !matches!(own, NextStep::CheckAgain | NextStep::FeelSmallMoves));
    }
    let found = found::so_far(&after.client.value);
    let is_right = adjusted.not_safe.is_empty() && !found.iter().any(Check::speaks_against);
    let stays = adjusted.verdict == Verdict::Stay && is_right;
    if stays {
        // Where nothing speaks against the cells, to look again is no condition.
        next.retain(|own| *own != NextStep::CheckAgain);
    }
    // Nobody is told to leave what nobody may sit on.
    let is_left_alone = adjusted.verdict == Verdict::Stay && checks.iter().any(Check::ends_sitting);
    let rest_stands = adjusted.verdict == Verdict::AsPlannedSoFar && next.is_empty();
    let is_all = (rest_stands || stays && next.is_empty()) && is_right;
    let body = html! {
        (too_little(language, checks))
        (expected(language, before, checks))
        section class="part" {
            @if rest_stands { p class="verdict" { (texts.rest_stands) } }
            @else if let Some(verdict) = language.verdict(adjusted.verdict, moves).filter(|_| !is_left_alone) { p class="verdict" { (verdict) } }
            @for own in &adjusted.not_safe { div class="box heavy" { p { (language.not_safe_yet(own)) } } }
            @if !proposed.is_empty() { (skin_first(language, &found)) }
            (moves_of(house, language, &proposed, adjusted))
            ul { @for own in &next { li { (language.next_step(*own)) } } }
            (looks(language, adjusted))
            @for own in adjusted.goals.iter().filter(|own| !own.met) { p class="asks" { (language.goal_outcome(own)) } }
            @for own in &adjusted.left_out { p { (language.left_out(own)) } }
            @if let Some(own) = before.too_few_spares(adjusted).filter(|_| moves) { p class="asks" { (language.caution(&own)) } }
            @if let Some(costs) = adjusted.costs.as_ref().filter(|_| moves) {
                (plan_parts::cost_lines(language, costs))
            }
            p class="soft" { (language.lines().estimate) }
        }
        @if rest_stands || is_all {
            section class="part" {
                h2 { (language.page().sign_off.found) }
                (found::list(language, &found))
                (still_to_look_at(language, &found))
            }
        }
        (ways_on(place, adjusted, &proposed, is_all))
    };
    let standing = Some(after.standing(house.today()));
    let of = OfClient { address: &place.ask.address, draft, step: Step::Checks, standing };
    Screen { title: texts.title_after, of: Some(of), body }.answer(house)
}

/// That the skin comes before any move, where nobody looked at it yet.
pub(super) fn skin_first(language: &dyn Language, found: &[Check]) -> Markup {
    let is_skin = |own: &Check| matches!(own, Check::Skin { .. });
    html! {
        @if !found.iter().any(is_skin) { p class="asks" { (language.page().checks.skin_before_moves) } }
    }
}

/// The moves that are proposed, or the nearest ones where none is.
fn moves_of(
    house: &House,
    language: &dyn Language,
    proposed: &[Move],
    adjusted: &Adjusted,
) -> Markup {
    let texts = &language.page().checks;
    html! {
        @if !proposed.is_empty() {
            h2 { (step_name(house, Step::Moves)) }
            ol { @for own in proposed { li { (language.a_move(own)) } } }
        } @else if !adjusted.moves.is_empty() {
            h2 { (texts.nearest_moves) }
            p { (texts.nearest_moves_hint) }
            ol { @for own in &adjusted.moves { li { (language.a_move(own)) } } }
        }
    }
}

/// That hands felt less under a seat bone than anybody may sit on.
fn too_little(language: &dyn Language, checks: &[Check]) -> Markup {
    let low = checks.iter().filter(|own| own.ends_sitting()).filter_map(|own| match own {
        Check::Under { side, answer: UnderAnswer::Felt(_) } => Some(*side),
        _ => None,
    });
    html! {
        @for side in low {
            div class="box heavy" role="alert" { p { b { (language.too_little_felt(side, LEAST_UNDER)) } } }
        }
    }
}

/// What hands or eyes have still to look at before the check can pass.
fn still_to_look_at(language: &dyn Language, found: &[Check]) -> Markup {
    let missing = CheckPart::missing(found, true, true);
    let parts: Vec<&str> = missing.iter().map(|own| language.check_part(*own)).collect();
    html! { @if !parts.is_empty() { p class="hint" { (language.check_lacks(&parts)) } } }
}

/// What is asked for next, less the checks that were made before on the same cells, and less what
/// would tell most where nothing else is asked.
fn still_asked(before: &[Check], adjusted: &Adjusted) -> Vec<NextStep> {
    let asked = adjusted.next.iter().copied();
    let asked: Vec<NextStep> = asked.filter(|own| !found::was_made(before, *own)).collect();
    let so_far = adjusted.verdict == Verdict::AsPlannedSoFar;
    if so_far && asked.iter().all(|own| matches!(own, NextStep::TellsMost(_))) {
        return Vec::new();
    }
    asked
}

/// Whether hands are asked to feel what they did not feel yet, or felt once alone.
fn feels_more(next: &[NextStep]) -> bool {
    next.iter().any(|step| {
        matches!(
            step,
            NextStep::CheckUnder(_)
                | NextStep::FeelBeforeMoving(_)
                | NextStep::FeelBeforeTaking(_)
                | NextStep::FeelAgain(_)
        )
    })
}

/// Where it goes on after checks.
fn ways_on(place: &Place<'_>, adjusted: &Adjusted, proposed: &[Move], is_all: bool) -> Markup {
    let language = place.house.language();
    let (texts, review) = (&language.page().checks, &language.page().review);
    // Where nothing more can be moved, other ways lead on.
    let is_safe = adjusted.not_safe.is_empty();
    let counts_first = adjusted
        .next
        .iter()
        .any(|own| matches!(own, NextStep::CountBeforeMoving | NextStep::SetUpBeforeMoving(_)));
    let first = if counts_first { "button less" } else { "button" };
    html! {
        div class="row buttons" {
            @if counts_first { a class="button" href=(format!("{}/recount", place.to(Step::Review))) { (review.recount) } }
            @if !proposed.is_empty() {
                a class=(first) href=(place.to(Step::Moves)) { (texts.to_moves) }
            } @else if adjusted.verdict == Verdict::AsPlanned || is_all {
                a class="button" href=(place.to(Step::Carers)) { (texts.to_sign_off) }
            } @else if !is_safe && !feels_more(&adjusted.next) {
                // The same check would find the same: other counts, or another cushion, come first.
                a class=(first) href=(place.to(Step::Plan)) { (review.plan_again) }
                a class="button less" href=(place.to(Step::Cushion)) { (review.another_cushion) }
                @if !adjusted.moves.is_empty() { a class="button less" href=(place.to(Step::Moves)) { (texts.to_moves) } }
                a class="button less" href=(place.to(Step::Checks)) { (texts.check_again) }
            } @else {
                a class=(first) href=(place.to(Step::Checks)) { (texts.check_again) }
                @if !is_safe {
                    a class="button less" href=(place.to(Step::Plan)) { (review.plan_again) }
                    a class="button less" href=(place.to(Step::Cushion)) { (review.another_cushion) }
                }
            }
        }
    }
}

/// What was expected, after the answers.
fn expected(language: &dyn Language, case: &OpenCase, checks: &[Check]) -> Markup {
    // A plan that was never carried out expects nothing of these cells.
    let expected = case.client.value.plan_carried_out().and_then(|own| own.expected.as_ref());
    let felt = |side: Side| {
        checks.iter().find_map(|own| match own {
            Check::Under { side: at, answer: UnderAnswer::Felt(felt) } if *at == side => {
                Some(*felt)
            }
            _ => None,
        })
    };
    html! {
        @if let Some(own) = expected {
            section class="part" {
                h2 { (language.page().checks.expected) }
                ul {
                    @for side in [Side::Left, Side::Right] {
                        li { (language.expected_and_found(side, own.under[side], felt(side))) }
                    }
                    @let (lower, by) = own.lower.map_or((None, cushion::Length::ZERO), |own| (Some(own.0), own.1));
                    li { (language.expected_lower(lower, by)) " " (lower_found(language, case, checks)) }
                }
            }
        }
    }
}

/// Which side was found lower, and what that is at the seat bones.
fn lower_found(language: &dyn Language, case: &OpenCase, checks: &[Check]) -> String {
    let Some(found) = checks.iter().find(|own| matches!(own, Check::Lower { .. })) else {
        return String::new();
    };
    let said = language.check_said(found);
    match found {
        Check::Lower { lower: Some(side), by, at: MeasuredAt::Asis } => {
            let spacing = case.client.value.measures.seat_bone_spacing;
            let ends = casework::at_seat_bones(*by, MeasuredAt::Asis, spacing);
            format!("{said} {}", language.obliquity_means(*side, ends))
        }
        _ => said,
    }
}
