//! Checks by hand: large answers; what was expected is shown after the answer.

use axum::response::Response;
use case::{Check, Client, Doubt, Entry, RecordNote, SiteName, SkinAnswer, Verdict};
use casework::{
    Adjusted, Done, Draft, OpenCase, Stop, TypedLength, adjustment_stands, record_done,
};
use cushion::Side;
use maud::{Markup, html};

use super::followed::{followed, looks};
use super::{Place, found, grown, mends, nobody_sits, signed_by};
use crate::answers::whole;
use crate::errors::{Failed, said};
use crate::form::Sent;
use crate::frame::{OfClient, Screen};
use crate::steps::Step;

/// Shows the checks.
pub(crate) fn show(place: &Place<'_>, draft: &Draft) -> Result<Response, Failed> {
    screen(place, draft, None)
}

fn screen(place: &Place<'_>, draft: &Draft, told: Option<Markup>) -> Result<Response, Failed> {
    let house = place.house;
    let texts = &house.language().page().checks;
    let case = place.open()?;
    let standing = case.standing(house.today());
    let entries = case.client.value.record.len();
    let before = found::so_far(&case.client.value);
    let is_filled = case.client.value.cushion_now().is_some_and(|now| now.from.is_told());
    let body = html! {
        (told.unwrap_or_default())
        @if let Some(own) = case.client.value.filling_so_far() {
            div class="box heavy" {
                p { (house.language().record_note(&RecordNote::Filling(own))) }
                a class="button less" href=(place.to(Step::Fill)) { (texts.to_fill) }
            }
        }
        @if is_filled {
            @let way = mends(place, &case, standing);
            (nobody_sits(place, standing, &html! { @if let Some((to, words)) = way { a class="button less" href=(to) { (words) } } }))
            p class="lead" { (texts.lead) }
            @if !before.is_empty() {
                section class="box" {
                    h2 { (texts.found_before) }
                    (found::list(house.language().with_lengths_in(case.client.value.lengths), &before))
                    p class="hint" { (texts.only_anew) }
                }
            }
            form id="checks" method="post" action=(place.to(Step::Checks)) class="stack" novalidate {
                input type="hidden" name="entries" value=(entries);
                (bones(place, house.typed_in(draft).lengths))
                (lower(place, house.typed_in(draft).lengths))
                (skin(place, &case))
                (more(place, &case))
                (signed_by(place, "checks"))
                div class="row buttons" { button class="button" { (texts.what_follows) } }
            }
        } @else {
            (fill_first(place, &case.client.value))
        }
    };
    let of = OfClient {
        address: &place.ask.address,
        draft,
        step: Step::Checks,
        standing: Some(standing),
    };
    Ok(Screen { title: texts.title, of: Some(of), body }.answer(house))
}

/// What is in the cushion comes first. Where it was checked after its plan, it was filled once, and
/// that may be recorded as it was.
fn fill_first(place: &Place<'_>, client: &Client) -> Markup {
    let language = place.house.language();
    let texts = &language.page().checks;
    let after_plan = client.record.iter().rev().take_while(|own| !matches!(own, Entry::Plan(_)));
    let is_check = |own: &Entry| {
        matches!(own, Entry::FittingCheck(_) | Entry::Adjustment(_) | Entry::Checked(_))
    };
    let believed = client
        .record_notes()
        .into_iter()
        .find(|own| matches!(own, RecordNote::Believed(_)) && after_plan.clone().any(is_check));
    html! {
        @if let Some(own) = believed {
            form class="box" method="post" action=(place.to(Step::Fill)) {
                p { (language.record_note(&own)) }
                p class="hint" { (texts.as_planned_hint) }
                input type="hidden" name="entries" value=(client.record.len());
                (signed_by(place, "as-planned"))
                button class="button less" name="as-planned" value="yes" { (texts.as_planned) }
            }
        } @else {
            div class="box" { p { (texts.fill_first) } }
        }
        a class="button" href=(place.to(Step::Fill)) { (texts.to_fill) }
    }
}

/// One answer of some, each large, ticked where it was sent before.
fn one_of(
    place: &Place<'_>,
    name: &str,
    legend: &str,
    left: bool,
    answers: &[(&str, &str)],
) -> Markup {
    let sent = place.ask.sent.or_nothing(name);
    let texts = &place.house.language().page().checks;
    html! {
        fieldset class=(if left { "choice is-left" } else { "choice" }) {
            legend { (legend) }
            div class="answers" {
                @for (value, words) in answers {
                    label class="answer" { input type="radio" name=(name) value=(value) checked[sent == *value]; span { (words) } }
                }
                label class="answer blank" { input type="radio" name=(name) value="" checked[sent.is_empty()]; span { (texts.not_yet) } }
            }
        }
    }
}

fn both_sides(place: &Place<'_>, of: impl Fn(Side, &str) -> Markup) -> Markup {
    let shared = place.house.language().shared();
    html! {
        div class="abreast" {
            (of(Side::Left, shared.clients_left_short))
            (of(Side::Right, shared.clients_right_short))
        }
    }
}

/// Under and on top of the seat bones.
fn bones(place: &Place<'_>, lengths: TypedLength) -> Markup {
    let texts = &place.house.language().page().checks;
    let under = |side: Side, words: &str| {
        let name = format!("under.{}", side.words());
        let felt = format!("felt.{}", side.words());
        html! {
            div {
                (one_of(place, &name, words, side == Side::Left, &[("felt", texts.felt), ("bone-felt", texts.bone_felt), ("not-found", texts.not_found)]))
                div class="field" {
                    label for=(felt) { (texts.how_much) span class="vh" { ", " (words) } }
                    div class="box-line" {
                        input class="narrow" id=(felt) name=(felt) inputmode="decimal" autocomplete="off" value=(place.ask.sent.or_nothing(&felt));
                        span class="unit" { (lengths.words()) }
                    }
                }
            }
        }
    };
    let top = |side: Side, words: &str| {
        let name = format!("top.{}", side.words());
        one_of(
            place,
            &name,
            words,
            side == Side::Left,
            &[("safe", texts.safe), ("tight", texts.tight), ("pinched", texts.pinched)],
        )
    };
    html! {
        section class="part" { h2 { (texts.under) } p class="hint" { (texts.under_hint) } (both_sides(place, under)) }
        section class="part" { h2 { (texts.top) } p class="hint" { (texts.top_hint) } (both_sides(place, top)) }
    }
}

/// Which side of the pelvis is lower.
fn lower(place: &Place<'_>, lengths: TypedLength) -> Markup {
    let language = place.house.language();
    let texts = &language.page().checks;
    let shared = language.shared();
    html! {
        section class="part" {
            h2 { (texts.lower) }
            (one_of(place, "lower", texts.lower_hint, false, &[("left", shared.clients_left_short), ("level", texts.level), ("right", shared.clients_right_short)]))
            div class="field" {
                label for="lower-by" { (texts.lower_by) }
                div class="box-line" {
                    input class="narrow" id="lower-by" name="lower-by" inputmode="decimal" autocomplete="off" value=(place.ask.sent.or_nothing("lower-by"));
                    span class="unit" { (lengths.words()) }
                }
            }
            (one_of(place, "lower-at", texts.lower_at, false, &[("seat-bones", texts.at_seat_bones), ("asis", texts.at_front)]))
        }
    }
}

/// The sites whose skin is looked at: seat bones, and where an injury is known.
fn sites(case: &OpenCase) -> Vec<SiteName> {
    let known = case.client.value.skin.injuries.iter().map(|own| own.site);
    let mut sites =
        vec![SiteName::SeatBone(Side::Left), SiteName::SeatBone(Side::Right), SiteName::Coccyx];
    for site in known {
        if !sites.contains(&site) {
            sites.push(site);
        }
    }
    sites
}

fn skin(place: &Place<'_>, case: &OpenCase) -> Markup {
    let language = place.house.language();
    let texts = &language.page().checks;
    let answers = [
        ("clear", texts.clear),
        ("fades", texts.fades),
        ("stays", texts.stays),
        ("open", texts.open),
        ("worse", texts.worse),
    ];
    html! {
        section class="part" {
            h2 { (texts.skin) }
            p class="hint" { (texts.skin_hint) }
            @for site in sites(case) {
                (one_of(place, &format!("skin.{}", site.id()), &crate::fields::capital(language.site(site)), false, &answers))
            }
        }
    }
}

/// Press checks and readings, where somebody makes them.
fn more(place: &Place<'_>, case: &OpenCase) -> Markup {
    let language = place.house.language();
    let texts = &language.page().checks;
    let answers = [("slack", texts.slack), ("like", texts.like), ("tight", texts.tighter)];
    html! {
        details class="entry" {
            summary { (texts.more) }
            p class="hint" { (texts.press_hint) }
            @for own in case.pattern.compartments() {
                @if own.has_partner {
                    (one_of(place, &format!("press.{}", own.number), &format!("{} {}", own.number, language.compartment(own)), own.side == Some(Side::Left), &answers))
                }
            }
            p class="hint" { (texts.reading_hint) }
            @for site in SiteName::ALL {
                @let name = format!("reading.{}", site.id());
                div class="field" {
                    label for=(name) { (crate::fields::capital(language.site(site))) }
                    div class="box-line" {
                        input class="narrow" id=(name) name=(name) inputmode="decimal" autocomplete="off" value=(place.ask.sent.or_nothing(&name));
                        span class="unit" { "mmHg" }
                    }
                }
            }
        }
    }
}

/// The checks that a form sent, each as hands write it; or what is wrong with one.
pub(crate) fn found(place: &Place<'_>, draft: &Draft, sent: &Sent) -> Result<Vec<Check>, String> {
    let language = place.house.language();
    let lengths = place.house.typed_in(draft).lengths;
    let texts = &language.page().checks;
    let mut written: Vec<(String, String)> = Vec::new();
    // In the order in which the command line has them, so that files are the same.
    for (site, answer) in sent.after("skin.") {
        written.push(("skin".to_owned(), format!("{site}={answer}")));
    }
    for side in [Side::Left, Side::Right].map(Side::words) {
        let top = sent.or_nothing(&format!("top.{side}")).to_owned();
        written.push(("top".to_owned(), format!("{side}={top}")));
    }
    for side in [Side::Left, Side::Right].map(Side::words) {
        let felt = sent.or_nothing(&format!("felt.{side}")).trim();
        let length =
            || casework::length_typed(felt, lengths).ok_or_else(|| texts.no_length.to_owned());
        let under = match sent.or_nothing(&format!("under.{side}")) {
            "felt" if felt.is_empty() => return Err(texts.how_much_missing.to_owned()),
            "felt" => length()?,
            "" if !felt.is_empty() => length()?,
            _ if !felt.is_empty() => return Err(texts.felt_and_not.to_owned()),
            other => other.to_owned(),
        };
        written.push(("under".to_owned(), format!("{side}={under}")));
    }
    for (number, answer) in sent.after("press.") {
        written.push(("press".to_owned(), format!("{number}={answer}")));
    }
    let by = sent.or_nothing("lower-by").trim();
    match sent.or_nothing("lower") {
        "" if !by.is_empty() => return Err(texts.which_side_missing.to_owned()),
        "" => {}
        "level" => written.push(("lower".to_owned(), "level".to_owned())),
        _ if by.is_empty() => return Err(texts.lower_by_missing.to_owned()),
        side => {
            let at = sent.or_nothing("lower-at");
            let at = if at.is_empty() { "seat-bones" } else { at };
            let by =
                casework::length_typed(by, lengths).ok_or_else(|| texts.no_length.to_owned())?;
            written.push(("lower".to_owned(), format!("{side}={by}@{at}")));
        }
    }
    for (site, reading) in sent.after("reading.").filter(|own| !own.1.trim().is_empty()) {
        let reading = reading.trim().replace(',', ".");
        written.push(("reading".to_owned(), format!("{site}={reading}mmHg")));
    }
    let answered = written.iter().filter(|own| !own.1.ends_with('='));
    let read = answered.map(|(kind, text)| Check::read(kind, text));
    read.collect::<Result<Vec<Check>, _>>().map_err(|error| {
        let said = language.no_check(&error);
        whole(&said.message, said.hint.as_deref())
    })
}

/// Takes the checks, records them, and says what follows.
pub(crate) fn take(place: &Place<'_>) -> Result<Response, Failed> {
    let house = place.house;
    let (draft, case) = (place.draft()?, place.open()?);
    let entries = case.client.value.record.len();
    let wrong = |words: &str| html! { div class="box heavy" role="alert" { p { (words) } } };
    if place.has_grown(entries) {
        return screen(place, &draft, Some(grown(place, entries)));
    }
    let checks = match found(place, &draft, &place.ask.sent) {
        Ok(checks) => checks,
        Err(words) => return screen(place, &draft, Some(wrong(&words))),
    };
    let by = place.ask.sent.or_nothing("by").to_owned();
    let recorder = place.recorder(&by, None);
    if let Some(seen) = skin_alone(&case, &checks) {
        return skin_looked_at(place, &draft, seen);
    }
    // A bone that was felt or a mark stands before all other questions.
    let adjusted = case
        .counts_now(house.today(), Stop::never())
        .and_then(|now| case.adjust(&now, &checks, house.today(), Stop::never()));
    let adjusted = match adjusted {
        Ok(adjusted) => adjusted,
        Err(error) => return screen(place, &draft, Some(said(house, &error))),
    };
    let weighed = place.ask.sent.get("nearest-safe");
    if loads_an_injury(&adjusted) && weighed.is_none() {
        return screen(place, &draft, Some(to_be_weighed(place, &case, &adjusted)));
    }
    let taken = weighed == Some("take");
    let recorded = case.record_adjustment(house.shelf(), &checks, &adjusted, taken, &recorder);
    let not_kept = recorded.err().map(|error| said(house, &error));
    if !adjusted.alarms.is_empty() {
        return Ok(stop(place, &draft, &adjusted, not_kept));
    }
    if let Some(told) = not_kept {
        return screen(place, &draft, Some(told));
    }
    if !adjusted.doubts.is_empty() {
        return screen(place, &draft, Some(doubts(place, &adjusted)));
    }
    let after = place.open()?;
    Ok(followed(place, &draft, (&case, &after), &checks, &adjusted))
}

/// The skin where nothing else was looked at, hands found the rest before on the same cells, and no
/// answer brings the client off: that is no matter of cells.
fn skin_alone(case: &OpenCase, checks: &[Check]) -> Option<Vec<(SiteName, SkinAnswer)>> {
    let seen = |own: &Check| match own {
        Check::Skin { site, answer } if !answer.is_alarm() => Some((*site, *answer)),
        _ => None,
    };
    let seen: Vec<_> = checks.iter().map(seen).collect::<Option<_>>()?;
    let felt = |own: &Check| matches!(own, Check::Under { .. } | Check::Top { .. });
    let before = found::so_far(&case.client.value);
    (!seen.is_empty() && before.iter().any(felt)).then_some(seen)
}

/// Records how the skin looked, and lists what was found in all.
fn skin_looked_at(
    place: &Place<'_>,
    draft: &Draft,
    seen: Vec<(SiteName, SkinAnswer)>,
) -> Result<Response, Failed> {
    let house = place.house;
    let recorder = place.recorder(place.ask.sent.or_nothing("by"), None);
    let done = record_done(house.surroundings(), &place.name, &Done::Skin(seen), &recorder);
    if let Err(error) = done {
        return screen(place, draft, Some(said(house, &error)));
    }
    let after = place.open()?;
    let language = house.language().with_lengths_in(after.client.value.lengths);
    let texts = &language.page().checks;
    let found = found::so_far(&after.client.value);
    let (proposed, against) =
        (!after.proposed_moves().is_empty(), found.iter().any(Check::speaks_against));
    let body = html! {
        p class="verdict" { (texts.skin_kept) }
        section class="part" {
            h2 { (language.page().sign_off.found) }
            (found::list(language, &found))
        }
        div class="row buttons" {
            @if proposed { a class="button" href=(place.to(Step::Moves)) { (texts.to_moves) } }
            @else if against { a class="button" href=(place.to(Step::Checks)) { (texts.check_again) } }
            @else { a class="button" href=(place.to(Step::Carers)) { (texts.to_sign_off) } }
        }
    };
    let of = OfClient { address: &place.ask.address, draft, step: Step::Checks, standing: None };
    Ok(Screen { title: texts.title_after, of: Some(of), body }.answer(house))
}

/// Whether all moves that keep the limits give an injury more, which a clinician may take by name.
fn loads_an_injury(adjusted: &Adjusted) -> bool {
    adjusted.alarms.is_empty()
        && adjusted.doubts.is_empty()
        && adjusted.verdict == Verdict::Move
        && !adjustment_stands(adjusted, false)
        && adjustment_stands(adjusted, true)
}

/// The moves that give an injury least more, and the question whether they are taken: nothing is
/// recorded before that is answered.
fn to_be_weighed(place: &Place<'_>, case: &OpenCase, adjusted: &Adjusted) -> Markup {
    let language = place.house.language().with_lengths_in(case.client.value.lengths);
    let texts = &language.page().checks;
    html! {
        div class="box heavy" role="alert" {
            p { b { (texts.loads_injury) } }
            ul { @for own in &adjusted.not_safe { li { (crate::fields::capital(&language.limit(own))) "." } } }
            p { (texts.loads_least) }
            ol { @for own in &adjusted.moves { li { (language.a_move(own)) } } }
            p { (texts.weighed_hint) }
            div class="row buttons" {
                button class="button less" form="checks" name="nearest-safe" value="leave" { (texts.without_moves) }
                button class="button less" form="checks" name="nearest-safe" value="take" { (texts.take_moves) }
            }
        }
    }
}

fn doubts(place: &Place<'_>, adjusted: &Adjusted) -> Markup {
    let language = place.house.language();
    let misfit = adjusted.doubts.iter().any(|own| matches!(own, Doubt::Misfit(_)));
    html! {
        div class="box heavy" role="alert" {
            p { b { (language.lines().clear_this_first) } }
            ul { @for own in &adjusted.doubts { li { (language.doubt(own)) } } }
            @if misfit { p { (language.page().checks.look_at_set_up) } }
        }
    }
}

/// The client comes off: nothing else is offered.
fn stop(
    place: &Place<'_>,
    draft: &Draft,
    adjusted: &Adjusted,
    not_kept: Option<Markup>,
) -> Response {
    let house = place.house;
    let language = house.language().with_lengths_in(draft.lengths());
    let lines = language.lines();
    let body = html! {
        div class="stop" role="alert" {
            p class="order" { (language.page().checks.client_off) }
            ul { @for own in &adjusted.alarms { li { (crate::fields::capital(&language.alarm(own))) "." } } }
            p { (crate::fields::capital(lines.nobody_sits)) "." }
        }
        (not_kept.unwrap_or_default())
        (looks(language, adjusted))
        @for own in &adjusted.next { p { (language.next_step(*own)) } }
        div class="row buttons" { a class="button less" href=(place.to(Step::Review)) { (language.page().checks.to_record) } }
    };
    let of = OfClient { address: &place.ask.address, draft, step: Step::Checks, standing: None };
    Screen { title: language.page().checks.client_off, of: Some(of), body }.answer(house)
}
