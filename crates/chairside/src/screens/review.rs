//! The review: what was done, a recount, weight and skin, and the way back to earlier counts.

use axum::response::Response;
use case::text::LengthUnit;
use case::{Check, Date, Entry, Moment, SiteName};
use casework::{Done, Draft, OpenCase, Stop, record_done};
use maud::{Markup, html};

use super::moves::counted;
use super::{Place, count_boxes, found, grown, lead, mends, signed_by};
use crate::errors::{Failed, said};
use crate::fields::capital;
use crate::frame::{OfClient, Screen, in_pounds};
use crate::screens::plan_parts;
use crate::steps::Step;

/// Shows the record and what may be added to it.
pub(crate) fn show(place: &Place<'_>, draft: &Draft) -> Result<Response, Failed> {
    screen(place, draft, None)
}

fn screen(place: &Place<'_>, draft: &Draft, told: Option<Markup>) -> Result<Response, Failed> {
    let house = place.house;
    let language = house.language();
    let texts = &language.page().review;
    let case = place.open()?;
    let standing = case.standing(house.today());
    let client = &case.client.value;
    let notes = client.record_notes();
    let body = html! {
        (told.unwrap_or_default())
        p class="lead" { (language.standing(standing)) }
        @for own in &notes { p class="asks" { (language.record_note(own)) } }
        @if let Some(now) = client.cushion_now() {
            section class="part" {
                @match now.cushion.as_ref().filter(|_| !now.is_in(&client.cushion)) {
                    Some((layout, size)) => {
                        h2 { (language.page().cushion.another_cushion) }
                        p { b { (layout) ", " (language.size(*size)) } }
                    }
                    None => { h2 { (texts.in_cushion) } }
                }
                @let counts: Vec<(u8, u32)> = now.counts.iter().map(|own| (*own.0, *own.1)).collect();
                p { (language.counts(&counts)) ", " (language.counted_from(now.from)) ". " (language.bag(now.bag)) }
                @for (number, cells) in now.to_put_back() {
                    p class="asks" { (language.to_put_back(number, cells)) }
                }
            }
        }
        div class="panes" {
            div class="stack" { (recount(place, &case)) (weight(place, &case, in_pounds(house, draft))) (skin(place, &case)) }
            (history(place, &case, in_pounds(house, draft)))
        }
        div class="row buttons" {
            @let mends = mends(place, &case, standing);
            @if let Some((to, words)) = &mends { a class="button" href=(to) { (words) } }
            a class=(if mends.is_some() { "button less" } else { "button" }) href=(place.to(Step::Checks)) { (texts.check) }
            @if mends.as_ref().is_none_or(|own| own.1 != texts.plan_again) {
                a class="button less" href=(place.to(Step::Plan)) { (texts.plan_again) }
            }
            a class="button less" href=(place.to(Step::Cushion)) { (texts.another_cushion) }
        }
    };
    let of = OfClient {
        address: &place.ask.address,
        draft,
        step: Step::Review,
        standing: Some(standing),
    };
    Ok(Screen { title: texts.title, of: Some(of), body }.answer(house))
}

fn form(
    place: &Place<'_>,
    case: &OpenCase,
    page: &str,
    heading: &str,
    inner: &Markup,
    button: &str,
) -> Markup {
    html! {
        // What was typed and not recorded stays there to be seen.
        details class="entry" open[place.ask.page.as_deref() == Some(page)] {
            summary { (heading) }
            form method="post" action=(place.page(page)) class="stack" novalidate {
                input type="hidden" name="entries" value=(case.client.value.record.len());
                (inner)
                (signed_by(place, page))
                button class="button less" { (button) }
            }
        }
    }
}

fn recount(place: &Place<'_>, case: &OpenCase) -> Markup {
    let language = place.house.language();
    let texts = &language.page().review;
    let inner = html! {
        p class="hint" { (texts.recount_hint) }
        (count_boxes(place, case))
    };
    form(place, case, "recount", texts.recount, &inner, texts.record)
}

fn weight(place: &Place<'_>, case: &OpenCase, in_pounds: bool) -> Markup {
    let texts = &place.house.language().page().review;
    let inner = html! {
        div class="field" {
            label for="weight" { (texts.weight_now) }
            p class="hint" id="weight-hint" {
                (texts.weight_hint)
                @if let Some(own) = case.client.value.latest_weighing() {
                    " " (last_time(place, own.on)) ": " (place.house.language().body_weight(own.weight, in_pounds)) "."
                }
            }
            input class="narrow" id="weight" name="weight" inputmode="decimal" autocomplete="off" aria-describedby="weight-hint" value=(place.ask.sent.or_nothing("weight"));
        }
    };
    form(place, case, "weighed", texts.weight, &inner, texts.record)
}

fn skin(place: &Place<'_>, case: &OpenCase) -> Markup {
    let language = place.house.language();
    let (texts, checks) = (&language.page().review, &language.page().checks);
    let answers = [
        ("clear", checks.clear),
        ("fades", checks.fades),
        ("stays", checks.stays),
        ("open", checks.open),
        ("worse", checks.worse),
    ];
    let inner = html! {
        @for site in SiteName::ALL {
            fieldset class="choice" {
                legend { (capital(language.site(site))) }
                @if let Some((on, answer)) = case.client.value.skin_last_seen(site) {
                    p class="hint" { (last_time(place, on)) ": " (language.check_said(&Check::Skin { site, answer })) }
                }
                div class="answers" {
                    @let name = format!("skin.{}", site.id());
                    @let sent = place.ask.sent.or_nothing(&name);
                    @for (value, words) in answers {
                        label class="answer" { input type="radio" name=(name) value=(value) checked[sent == value]; span { (words) } }
                    }
                    label class="answer blank" { input type="radio" name=(name) value="" checked[sent.is_empty()]; span { (checks.not_yet) } }
                }
            }
        }
    };
    form(place, case, "skin", texts.skin, &inner, texts.record)
}

/// When something was looked at last, against which it is looked at now.
fn last_time(place: &Place<'_>, on: Date) -> String {
    let language = place.house.language();
    format!("{}, {}", language.page().clients.last_visit, language.day(on))
}

/// All entries, the newest first.
fn history(place: &Place<'_>, case: &OpenCase, in_pounds: bool) -> Markup {
    let language = place.house.language();
    let texts = &language.page().review;
    let moments = case.client.value.history();
    html! {
        section {
            h2 { (texts.history) }
            @if moments.is_empty() { p { (texts.nothing) } }
            ol class="history" reversed {
                @for own in moments.iter().rev() { (moment(place, case, own, in_pounds)) }
            }
        }
    }
}

fn moment(place: &Place<'_>, case: &OpenCase, own: &Moment<'_>, in_pounds: bool) -> Markup {
    let language = place.house.language().with_lengths_in(case.client.value.lengths);
    let texts = &language.page().review;
    html! {
        li class=(if own.withdrawn { "withdrawn" } else { "" }) {
            p {
                b { (language.day(own.entry.on())) } ", " (own.entry.by()) ": "
                @if own.withdrawn { (language.lines().withdrawn) " " }
                (language.entry(own.entry))
                @let in_kg = case.client.value.lengths == LengthUnit::Millimetres;
                @if let (Entry::Weighed(weighed), true) = (own.entry, in_pounds && in_kg) {
                    " = " (language.body_weight(weighed.weight, true))
                }
            }
            @if !own.withdrawn {
                details {
                    summary { (texts.change) span class="vh" { " " (own.number) } }
                    form method="post" action=(place.page("entry")) class="stack" {
                        input type="hidden" name="entries" value=(case.client.value.record.len());
                        input type="hidden" name="entry" value=(own.number);
                        (signed_by(place, &format!("entry-{}", own.number)))
                        div class="field" {
                            label for=(format!("because-{}", own.number)) { (texts.because) }
                            input id=(format!("because-{}", own.number)) name="because" maxlength="200" autocomplete="off";
                        }
                        (moves_back(language, case, own))
                        div class="row" {
                            @if own.cells.is_some() { button class="button less" name="do" value="return" { (language.return_to(own.number)) } }
                            button class="button less" name="do" value="withdraw" { (language.withdraw(own.number)) }
                        }
                    }
                }
            }
        }
    }
}

/// The counts of a moment, in the pattern's order; none where they are of another cushion.
fn counts_of(case: &OpenCase, own: &Moment<'_>) -> Option<Vec<u32>> {
    let cells = own.cells.as_ref()?;
    let numbers = case.pattern.compartments().iter().map(|own| own.number);
    let counts: Vec<u32> = numbers.map(|own| cells.get(&own).copied()).collect::<Option<_>>()?;
    (counts.len() == cells.len()).then_some(counts)
}

/// The moves that lead from what is in the cushion to the counts of a moment.
fn moves_back(language: &dyn words::Language, case: &OpenCase, own: &Moment<'_>) -> Markup {
    let moves = counts_of(case, own).and_then(|counts| case.moves_to(&counts)).unwrap_or_default();
    html! {
        @if !moves.is_empty() {
            p class="hint" { (language.page().review.moves_back) }
            ol { @for own in &moves { li { (language.a_move(own)) } } }
        }
    }
}

/// What speaks against the counts that are to be in the cushion again, and the question whether they are
/// in it all the same; none where nothing does.
fn not_safe_again(place: &Place<'_>, case: &OpenCase, entry: usize) -> Option<Markup> {
    let house = place.house;
    let moment = case.client.value.moment(entry)?;
    let counts = counts_of(case, &moment)?;
    let plan = case.judged(&counts, house.today(), Stop::never()).ok()?;
    let against = case.client.value.found_against(moment.cells.as_ref()?);
    if plan.not_safe.is_empty() && against.is_empty() {
        return None;
    }
    let language = house.language().with_lengths_in(case.client.value.lengths);
    let texts = &language.page().review;
    let sent = &place.ask.sent;
    Some(html! {
        div class="box heavy" role="alert" {
            p { b { (texts.not_safe_again) } }
            @if !against.is_empty() { (found::list(language, &against)) }
            @if !plan.not_safe.is_empty() { (plan_parts::reasons(language, case, &plan)) }
            p { (texts.not_safe_again_hint) }
            form method="post" action=(place.page("entry")) {
                @for name in ["entries", "entry", "do", "by", "because"] {
                    input type="hidden" name=(name) value=(sent.or_nothing(name));
                }
                button class="button less" name="sure" value="yes" { (language.return_to(entry)) }
            }
        }
    })
}

/// Takes what was done.
pub(crate) fn take(place: &Place<'_>) -> Result<Response, Failed> {
    let house = place.house;
    let (draft, case) = (place.draft()?, place.open()?);
    let (sent, entries) = (&place.ask.sent, case.client.value.record.len());
    if place.has_grown(entries) {
        return screen(place, &draft, Some(grown(place, entries)));
    }
    let entry = sent.number::<usize>("entry");
    let done = match (place.ask.page.as_deref(), sent.get("do"), entry) {
        (Some("recount"), ..) => counted(sent),
        (Some("weighed"), ..) => {
            casework::weight_typed(sent.or_nothing("weight"), house.typed_in(&draft))
                .map(Done::Weighed)
        }
        (Some("skin"), ..) => Some(Done::Skin(seen(sent))),
        (Some("entry"), Some("return"), Some(entry)) => Some(Done::Returned(entry)),
        (Some("entry"), Some("withdraw"), Some(entry)) => Some(Done::Withdrawn(entry)),
        _ => return Err(Failed::NotThere),
    };
    let Some(done) = done else {
        let words = house.language().page().review.not_a_number;
        let told = html! { div class="box heavy" role="alert" { p { (words) } } };
        return screen(place, &draft, Some(told));
    };
    if let (Done::Returned(entry), None) = (&done, sent.get("sure"))
        && let Some(told) = not_safe_again(place, &case, *entry)
    {
        return screen(place, &draft, Some(told));
    }
    let because = sent.or_nothing("because").trim();
    let recorder = place.recorder(sent.or_nothing("by"), (!because.is_empty()).then_some(because));
    match record_done(house.surroundings(), &place.name, &done, &recorder) {
        Ok(_) => Ok(lead(place.ask, &place.to(Step::Review))),
        Err(error) => screen(place, &draft, Some(said(house, &error))),
    }
}

fn seen(sent: &crate::form::Sent) -> Vec<(SiteName, case::SkinAnswer)> {
    let known = sent.after("skin.").filter_map(|(site, answer)| {
        let answers = case::SkinAnswer::ALL.into_iter();
        let answer = answers.filter(|own| own.1 == answer).map(|own| own.0).next()?;
        Some((SiteName::from_id(site)?, answer))
    });
    known.collect()
}
