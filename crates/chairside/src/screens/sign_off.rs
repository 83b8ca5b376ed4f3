//! The sign-off: all that a fitting check needs, by whom.

use axum::response::Response;
use case::question::Question;
use case::{Check, CheckOutcome, CheckPart, Entry};
use casework::{Done, Draft, record_done};
use maud::{Markup, html};

use super::{Place, checks, found, grown, lead, signed_by};
use crate::answers::{Said, Taken, says_which_stands, taken};
use crate::errors::{Failed, said};
use crate::fields::Fields;
use crate::frame::{OfClient, Screen};
use crate::steps::Step;

/// Shows what is needed.
pub(crate) fn show(place: &Place<'_>, draft: &Draft) -> Result<Response, Failed> {
    screen(place, draft, None, &[])
}

/// The screen; of the day of the next look it shows what was refused.
fn screen(
    place: &Place<'_>,
    draft: &Draft,
    told: Option<Markup>,
    refused: &[Said],
) -> Result<Response, Failed> {
    let house = place.house;
    let language = house.language();
    let texts = &language.page().sign_off;
    let case = place.open()?;
    let standing = case.standing(house.today());
    let found = found::so_far(&case.client.value);
    let sent = &place.ask.sent;
    let ticked = |name: &str, value: &str| sent.get(name) == Some(value);
    // What was ticked of other answers than those that are listed now is no tick of these.
    let still = ticked("still", "yes") && !place.has_grown(case.client.value.record.len());
    let body = html! {
        (told.unwrap_or_default())
        @if standing.fitted().is_some() {
            div class="box" { p { b { (language.standing(standing)) } } }
            div class="row buttons" { a class="button" href=(place.to(Step::Papers)) { (texts.to_papers) } }
        }
        p class="lead" { (texts.lead) }
        form method="post" action=(place.to(Step::SignOff)) class="stack" novalidate {
            input type="hidden" name="entries" value=(case.client.value.record.len());
            section class="part" {
                h2 { (texts.found) }
                @if found.is_empty() {
                    p { (texts.nothing_found) }
                } @else {
                    (found::list(language.with_lengths_in(case.client.value.lengths), &found))
                    label class="answer" { input type="checkbox" name="still" value="yes" checked[still]; span { (texts.still_so) } }
                }
                a class="button less" href=(place.to(Step::Checks)) { (texts.to_checks) }
            }
            section class="part" {
                h2 { (texts.tried) }
                label class="answer" { input type="checkbox" name="transfer" value="yes" checked[ticked("transfer", "yes")]; span { (texts.transfer) } }
                label class="answer" { input type="checkbox" name="reach" value="yes" checked[ticked("reach", "yes")]; span { (texts.reach) } }
            }
            (verdict(place))
            (next_look(place, draft, refused))
            div class="field" {
                label for="because" { (texts.note) }
                input id="because" name="because" maxlength="200" autocomplete="off" value=(sent.or_nothing("because"));
            }
            (signed_by(place, "sign-off"))
            div class="row buttons" { button class="button" { (texts.sign) } }
        }
        p class="soft" { (texts.only_then) }
    };
    let of = OfClient {
        address: &place.ask.address,
        draft,
        step: Step::SignOff,
        standing: Some(standing),
    };
    Ok(Screen { title: texts.title, of: Some(of), body }.answer(house))
}

/// Whether what was found and tried is right, with what was ticked before.
fn verdict(place: &Place<'_>) -> Markup {
    let texts = &place.house.language().page().sign_off;
    let said = place.ask.sent.get("passed");
    html! {
        fieldset class="choice" {
            legend { (texts.verdict) }
            div class="answers" {
                @for (value, words) in [("yes", texts.passed), ("no", texts.failed)] {
                    label class="answer" { input type="radio" name="passed" value=(value) checked[said == Some(value)]; span { (words) } }
                }
            }
        }
    }
}

/// The day of the next look, without which a sign-off soon holds no more.
fn next_look(place: &Place<'_>, draft: &Draft, refused: &[Said]) -> Markup {
    let house = place.house;
    let page = Step::asking(Question::NextReview).and_then(|own| Some((own.0, own.1?.word)));
    let keep_at =
        page.map_or_else(String::new, |own| format!("{}/{}?keep", place.to(own.0), own.1));
    let remarks = draft.remarks(house.today());
    let fields = Fields {
        language: house.language(),
        draft,
        refused,
        typed_in: house.typed_in(draft),
        remarks: &remarks,
        keep_at: &keep_at,
    };
    html! {
        section class="part" {
            h2 { (house.language().page().sign_off.next_look) }
            (fields.question(Question::NextReview, None))
        }
    }
}

/// Keeps the day of the next look, as the form has it.
fn keep_next_look(place: &Place<'_>, draft: &Draft) -> Result<Taken, Failed> {
    let house = place.house;
    let own = taken(house.language(), draft, &place.ask.sent, house.typed_in(draft));
    draft.keep(house.shelf(), &own.draft)?;
    Ok(own)
}

/// Records the check, where it can be one.
pub(crate) fn take(place: &Place<'_>) -> Result<Response, Failed> {
    let house = place.house;
    let language = house.language();
    let texts = &language.page().sign_off;
    let (draft, case) = (place.draft()?, place.open()?);
    let (sent, entries) = (&place.ask.sent, case.client.value.record.len());
    let told = |words: &str| Some(html! { div class="box heavy" role="alert" { p { (words) } } });
    if place.has_grown(entries) {
        return screen(place, &draft, Some(grown(place, entries)), &[]);
    }
    let Taken { draft, refused, .. } = keep_next_look(place, &draft)?;
    if let Some(why) = refused.first() {
        return screen(place, &draft, told(&why.message), &refused);
    }
    if says_which_stands(sent) {
        return screen(place, &draft, None, &[]);
    }
    let passed = match sent.get("passed") {
        Some("yes") => true,
        Some("no") => false,
        _ => return screen(place, &draft, told(texts.say_which), &[]),
    };
    let mut found = found::so_far(&case.client.value);
    if !found.is_empty() && sent.get("still").is_none() {
        return screen(place, &draft, told(texts.say_still), &[]);
    }
    found.extend(checks::found(place, &draft, sent).unwrap_or_default());
    found.sort_by_key(in_order);
    let (transfer, reach) = (sent.get("transfer").is_some(), sent.get("reach").is_some());
    if passed
        && let Some(words) = may_not_pass(
            language.with_lengths_in(case.client.value.lengths),
            &found,
            transfer,
            reach,
        )
    {
        return screen(place, &draft, told(&words), &[]);
    }
    let next_look = draft.client().and_then(|own| own.next_review);
    if passed && next_look.is_some_and(|day| day < house.today()) {
        return screen(place, &draft, told(texts.look_is_over), &[]);
    }
    let because = sent.or_nothing("because").trim();
    let recorder = place.recorder(sent.or_nothing("by"), (!because.is_empty()).then_some(because));
    let done = Done::Checked { found, transfer, reach, passed: Some(passed) };
    match record_done(house.surroundings(), &place.name, &done, &recorder) {
        Ok(recorded) => {
            let outcome = recorded.entries().find_map(|(_, entry)| match entry {
                Entry::Checked(own) => Some(own.outcome()),
                _ => None,
            });
            let to =
                if outcome == Some(CheckOutcome::Passed) { Step::Papers } else { Step::Review };
            Ok(lead(place.ask, &place.to(to)))
        }
        Err(error) => screen(place, &draft, Some(said(house, &error)), &[]),
    }
}

/// The place of a check in an entry, the same as where the command line writes it.
const fn in_order(check: &Check) -> u8 {
    match check {
        Check::Top { .. } => 0,
        Check::Under { .. } => 1,
        Check::Press { .. } => 2,
        Check::Lower { .. } => 3,
        Check::Reading { .. } => 4,
        Check::Skin { .. } => 5,
    }
}

/// Why a check does not pass, though it was said to: what is missing, or speaks against it.
fn may_not_pass(
    language: &dyn words::Language,
    found: &[Check],
    transfer: bool,
    reach: bool,
) -> Option<String> {
    let against: Vec<String> = found
        .iter()
        .filter(|own| own.speaks_against())
        .map(|own| language.check_said(own))
        .collect();
    if !against.is_empty() {
        return Some(format!("{} {}", language.page().sign_off.speaks_against, against.join(" ")));
    }
    let missing: Vec<CheckPart> = CheckPart::missing(found, transfer, reach);
    let parts: Vec<&str> = missing.iter().map(|own| language.check_part(*own)).collect();
    (!parts.is_empty()).then(|| language.check_lacks(&parts))
}
