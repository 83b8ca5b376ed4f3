//! The fill: from below, one compartment at a time, two counts each.

use axum::response::Response;
use case::{Likeness, RecordedPlan};
use casework::{Counted, Done, Draft, OpenCase, Stop, plan_stands, record_done};
use maud::{Markup, PreEscaped, html};
use sheets::View;
use words::page::FillTexts;

use super::{Place, grown, lead, signed_by};
use crate::errors::{Failed, said};
use crate::form::Sent;
use crate::frame::{OfClient, Screen};
use crate::screens::plan_parts;
use crate::steps::Step;

/// What was put in so far: the number of each compartment with its cells, in the order of filling.
type Put = Vec<(u8, u32)>;

/// Shows the next compartment.
pub(crate) fn show(place: &Place<'_>, draft: &Draft) -> Result<Response, Failed> {
    let entries = draft.client().map_or(0, |client| client.record.len());
    screen(place, draft, &place.house.put_so_far(&place.name, entries), None)
}

fn planned(case: &OpenCase) -> Option<&RecordedPlan> {
    let plan = case.client.value.latest_plan()?;
    let here = matches!(case.identity().likeness(plan), Likeness::Same | Likeness::Edited { .. });
    here.then_some(plan)
}

fn screen(
    place: &Place<'_>,
    draft: &Draft,
    put: &Put,
    told: Option<Markup>,
) -> Result<Response, Failed> {
    let house = place.house;
    let language = house.language();
    let texts = &language.page().fill;
    let case = place.open()?;
    let standing = case.standing(house.today());
    let entries = case.client.value.record.len();
    let body = html! {
        (told.unwrap_or_default())
        @match planned(&case) {
            None => {
                div class="box" { p { (texts.nothing_planned) } }
                a class="button" href=(place.to(Step::Plan)) { (texts.to_plan) }
            }
            Some(plan) => {
                p class="lead" { (texts.lead) }
                p class="hint" { (texts.kept_until) }
                form method="post" action=(place.to(Step::Fill)) class="panes" novalidate {
                    input type="hidden" name="entries" value=(entries);
                    @for (number, cells) in put { input type="hidden" name=(format!("put.{number}")) value=(cells); }
                    @match plan.counts.get(put.len()) {
                        Some(next) => { (one(place, &case, plan, put.len(), (next.number, next.planned))) }
                        None => { (all(place, &case, plan, put)) }
                    }
                }
            }
        }
    };
    let of =
        OfClient { address: &place.ask.address, draft, step: Step::Fill, standing: Some(standing) };
    Ok(Screen { title: texts.title, of: Some(of), body }.answer(house))
}

/// One compartment, from below, with its count.
fn one(
    place: &Place<'_>,
    case: &OpenCase,
    plan: &RecordedPlan,
    at: usize,
    (number, cells): (u8, u32),
) -> Markup {
    let language = place.house.language();
    let texts = &language.page().fill;
    let label = |ix: cushion::CompartmentIx| {
        let own = &case.pattern[ix];
        (own.number.to_string(), (own.number == number).then(|| cells.to_string()))
    };
    let picture = sheets::pattern_picture(language, &case.pattern, View::Below, label);
    let words = case.pattern.compartments().iter().find(|own| own.number == number);
    html! {
        @if let Ok(own) = &picture {
            figure class="drawing" { (PreEscaped(sheets::fragment(own))) figcaption { (texts.from_below) } }
        }
        div class="stack" {
            p class="soft" { (language.compartment_of(at + 1, plan.counts.len())) }
            h2 class="order" { span class="disc" { (number) } " " (language.put_in(cells, number)) }
            @if let Some(own) = words { p { (language.compartment(own)) } }
            label class="answer" { input type="checkbox" name="first" value="yes"; span { (texts.first_count) } }
            label class="answer" { input type="checkbox" name="second" value="yes"; span { (texts.second_count) } }
            div class="field" {
                label for="other" { (texts.other_count) }
                p class="hint" id="other-hint" { (texts.other_hint) }
                input class="narrow" id="other" name="other" inputmode="numeric" autocomplete="off" aria-describedby="other-hint";
            }
            input type="hidden" name="number" value=(number);
            input type="hidden" name="planned" value=(cells);
            div class="row buttons" {
                button class="button" { (texts.next) }
                @if at > 0 { (one_back(texts)) }
            }
        }
    }
}

/// Leads to the compartment before, whose count is given anew.
fn one_back(texts: &FillTexts) -> Markup {
    html! { button class="button plain" name="back" value="yes" { (texts.one_back) } }
}

/// All compartments are filled: who, and how many are in the bag.
fn all(place: &Place<'_>, case: &OpenCase, plan: &RecordedPlan, put: &Put) -> Markup {
    let language = place.house.language();
    let texts = &language.page().fill;
    let others: Vec<String> = (plan.counts.iter().zip(put))
        .filter(|(own, put)| own.planned != put.1)
        .map(|(own, put)| language.other_than_planned(own.number, own.planned, put.1))
        .collect();
    html! {
        div class="stack" {
            h2 { (texts.all_filled) }
            p { (language.counts(put)) }
            @for own in &others { p class="asks" { (own) } }
            div class="field" {
                label for="spare" { (texts.spare) }
                input class="narrow" id="spare" name="spare" inputmode="numeric" autocomplete="off";
            }
            div class="field" {
                label for="serial" { (texts.serial) }
                input id="serial" name="serial" autocomplete="off" value=(case.client.value.cushion.serial.clone().unwrap_or_default());
            }
            div class="field" {
                label for="batch" { (texts.batch) }
                input id="batch" name="batch" autocomplete="off";
            }
            (signed_by(place, "fill"))
            div class="row buttons" {
                button class="button" name="record" value="yes" { (texts.record) }
                (one_back(texts))
            }
        }
    }
}

/// What the form says was put in so far.
fn put_so_far(case: &OpenCase, sent: &Sent) -> Put {
    let order = planned(case).map(|plan| plan.counts.as_slice()).unwrap_or_default();
    let each = order
        .iter()
        .map_while(|own| Some((own.number, sent.number(&format!("put.{}", own.number))?)));
    each.collect()
}

/// Takes one compartment, or records the whole fill.
pub(crate) fn take(place: &Place<'_>) -> Result<Response, Failed> {
    let (draft, case) = (place.draft()?, place.open()?);
    let sent = &place.ask.sent;
    let texts = &place.house.language().page().fill;
    let mut put = put_so_far(&case, sent);
    let entries = case.client.value.record.len();
    if place.has_grown(entries) {
        return screen(place, &draft, &Vec::new(), Some(grown(place, entries)));
    }
    if sent.get("back").is_some() {
        put.pop();
        place.house.keep_put(&place.name, entries, &put);
        return screen(place, &draft, &put, None);
    }
    if let (Some(plan), true) = (planned(&case), sent.get("as-planned").is_some()) {
        let put = plan.counts.iter().map(|own| (own.number, own.planned)).collect();
        return record(place, &draft, &case, &put);
    }
    if sent.get("record").is_some() {
        return record(place, &draft, &case, &put);
    }
    let wrong = |words: &str| Some(html! { div class="box heavy" role="alert" { p { (words) } } });
    let number = sent.number::<u8>("number").ok_or(Failed::NotThere)?;
    let typed = sent.or_nothing("other").trim();
    let cells = if typed.is_empty() { sent.number("planned") } else { typed.parse::<u32>().ok() };
    let Some(cells) = cells else { return screen(place, &draft, &put, wrong(texts.whole_number)) };
    if sent.get("first").is_none() || sent.get("second").is_none() {
        return screen(place, &draft, &put, wrong(texts.count_twice));
    }
    if planned(&case)
        .and_then(|plan| plan.counts.get(put.len()))
        .is_some_and(|own| own.number == number)
    {
        put.push((number, cells));
        place.house.keep_put(&place.name, entries, &put);
    }
    screen(place, &draft, &put, None)
}

fn record(
    place: &Place<'_>,
    draft: &Draft,
    case: &OpenCase,
    put: &Put,
) -> Result<Response, Failed> {
    let house = place.house;
    let sent = &place.ask.sent;
    let words = |name: &str| {
        let own = sent.or_nothing(name).trim();
        (!own.is_empty()).then(|| own.to_owned())
    };
    let spare = match words("spare").map(|own| own.parse::<u32>()) {
        None => None,
        Some(Ok(spare)) => Some(spare),
        Some(Err(_)) => {
            let told = html! { div class="box heavy" role="alert" { p { (house.language().page().fill.whole_number) } } };
            return screen(place, draft, put, Some(told));
        }
    };
    let counted = Counted {
        counts: Some(put.clone()),
        spare,
        batch: words("batch"),
        serial: words("serial"),
    };
    let recorder = place.recorder(sent.or_nothing("by"), None);
    let done = record_done(house.surroundings(), &place.name, &Done::Filled(counted), &recorder);
    if let Err(error) = done {
        return screen(place, draft, put, Some(said(house, &error)));
    }
    // What hands found right on these cells is no estimate any more.
    if place.open()?.standing(house.today()).fitted().is_some() {
        return Ok(lead(place.ask, &place.to(Step::Checks)));
    }
    let counts: Vec<u32> = put.iter().map(|own| own.1).collect();
    // What is in the cushion is a fact, safe or not; that it is not is said at once.
    let judged = case.judged(&counts, house.today(), Stop::never());
    if let Ok(plan) = judged
        && !plan_stands(&plan, &case.client.value, false)
    {
        let told = html! {
            div class="box heavy" role="alert" {
                p { b { (house.language().page().fill.not_safe) } }
                @let language = house.language().with_lengths_in(case.client.value.lengths);
                (plan_parts::reasons(language, case, &plan))
            }
        };
        let after = place.draft()?;
        return screen(place, &after, &Vec::new(), Some(told));
    }
    Ok(lead(place.ask, &place.to(Step::Checks)))
}
