//! The fill: from below, one compartment at a time, two counts each. How far it is stands in the
//! client's file, and nowhere else.

use axum::response::Response;
use case::question::{Kind, Question};
use case::{Filling, FillingCount, RecordNote, RecordedPlan};
use casework::{Counted, Done, Draft, OpenCase, Stop, plan_stands, record_done};
use maud::{Markup, PreEscaped, html};
use sheets::View;
use words::page::FillTexts;

use super::{Place, grown, lead, signed_as, signed_by};
use crate::errors::{Failed, said};
use crate::form::Sent;
use crate::frame::{OfClient, Screen};
use crate::screens::plan_parts;
use crate::steps::Step;

/// Number and cells of each compartment that is filled, in the order of filling.
type Put = Vec<(u8, u32)>;

/// Shows the next compartment.
pub(crate) fn show(place: &Place<'_>, draft: &Draft) -> Result<Response, Failed> {
    screen(place, draft, None, None)
}

/// What was put in so far, of a fill that goes on.
fn put_so_far(case: &OpenCase) -> Put {
    case.client.value.filling_goes_on().map(Filling::put).unwrap_or_default()
}

/// All compartments of the fill: of the one that goes on, or of one that would begin now.
fn to_fill(place: &Place<'_>, case: &OpenCase, plan: &RecordedPlan) -> Vec<FillingCount> {
    let client = &case.client.value;
    let begun = client.filling_goes_on().cloned();
    begun.unwrap_or_else(|| Filling::of(plan, place.house.today(), String::new(), 0)).counts
}

/// The screen; `refused` is a form that was not taken, whose answers stay as they were given.
fn screen(
    place: &Place<'_>,
    draft: &Draft,
    told: Option<Markup>,
    refused: Option<&Sent>,
) -> Result<Response, Failed> {
    let house = place.house;
    let texts = &house.language().page().fill;
    let case = place.open()?;
    let standing = case.standing(house.today());
    let entries = case.client.value.record.len();
    // What does not go on is said before the first compartment.
    let is_begun = case.client.value.filling_goes_on().is_some();
    let body = html! {
        (told.unwrap_or_default())
        @match case.fillable_plan() {
            None => {
                div class="box" { p { (texts.nothing_planned) } }
                a class="button" href=(place.to(Step::Plan)) { (texts.to_plan) }
            }
            Some(plan) => {
                @let counts = to_fill(place, &case, plan);
                @let put = put_so_far(&case);
                p class="lead" { (texts.lead) }
                p class="hint" { (texts.kept_at_once) }
                @if !is_begun { (so_far(place, &case)) }
                form method="post" action=(place.to(Step::Fill)) class="panes" novalidate {
                    input type="hidden" name="entries" value=(entries);
                    input type="hidden" name="at" value=(put.len());
                    @match counts.iter().position(|own| own.put.is_none()) {
                        Some(at) => { (one(place, &case, &counts, at, refused)) }
                        None => { (all(place, &case, &counts)) }
                    }
                }
            }
        }
        @if is_begun || case.fillable_plan().is_none() { (so_far(place, &case)) }
        (give_up(place, &case, texts))
    };
    let of =
        OfClient { address: &place.ask.address, draft, step: Step::Fill, standing: Some(standing) };
    Ok(Screen { title: texts.title, of: Some(of), body }.answer(house))
}

/// What was counted so far and by whom, or why nothing of it is used.
fn so_far(place: &Place<'_>, case: &OpenCase) -> Markup {
    let language = place.house.language();
    let client = &case.client.value;
    let counted = client.filling.as_ref().map(Filling::put).unwrap_or_default();
    html! {
        @if let Some(own) = client.filling_so_far() {
            @let class = if own.stale.is_some() { "box heavy" } else { "box" };
            section class=(class) id="so-far" {
                h2 { (language.page().fill.so_far) }
                ul class="row counted" {
                    @for (number, cells) in &counted {
                        li { span class="disc" { (number) } " " (language.cells(*cells)) }
                    }
                }
                p { (language.record_note(&RecordNote::Filling(own))) }
            }
        }
    }
}

/// Folded, so that no slip takes counts away.
fn give_up(place: &Place<'_>, case: &OpenCase, texts: &FillTexts) -> Markup {
    html! {
        @if case.client.value.filling.is_some() {
            details {
                summary { (texts.give_up) }
                form method="post" action=(place.to(Step::Fill)) class="stack" {
                    input type="hidden" name="entries" value=(case.client.value.record.len());
                    input type="hidden" name="at" value=(put_so_far(case).len());
                    p { (texts.give_up_hint) }
                    button class="button plain" name="give-up" value="yes" { (texts.give_up) }
                }
            }
        }
    }
}

/// One compartment, from below, with its count.
fn one(
    place: &Place<'_>,
    case: &OpenCase,
    counts: &[FillingCount],
    at: usize,
    refused: Option<&Sent>,
) -> Markup {
    let language = place.house.language();
    let texts = &language.page().fill;
    let FillingCount { number, planned: cells, .. } = counts[at];
    let label = |ix: cushion::CompartmentIx| {
        let own = &case.pattern[ix];
        (own.number.to_string(), (own.number == number).then(|| cells.to_string()))
    };
    let picture = sheets::pattern_picture(language, &case.pattern, View::Below, label);
    let words = case.pattern.compartments().iter().find(|own| own.number == number);
    let ticked = |name| refused.is_some_and(|sent| sent.get(name).is_some());
    let is_begun = case.client.value.filling_goes_on().is_some();
    html! {
        @if let Ok(own) = &picture {
            figure class="drawing" { (PreEscaped(sheets::fragment(own))) figcaption { (texts.from_below) } }
        }
        div class="stack" {
            p class="soft" { (language.compartment_of(at + 1, counts.len())) }
            h2 class="order" { span class="disc" { (number) } " " (language.put_in(cells, number)) }
            @if let Some(own) = words { p { (language.compartment(own)) } }
            label class="answer" { input type="checkbox" name="first" value="yes" checked[ticked("first")]; span { (texts.first_count) } }
            label class="answer" { input type="checkbox" name="second" value="yes" checked[ticked("second")]; span { (texts.second_count) } }
            div class="field" {
                label for="other" { (texts.other_count) }
                p class="hint" id="other-hint" { (texts.other_hint) }
                input class="narrow" id="other" name="other" inputmode="numeric" autocomplete="off"
                    value=[refused.map(|sent| sent.or_nothing("other"))] aria-describedby="other-hint";
            }
            @if !is_begun { (signed_by(place, "fill")) }
            input type="hidden" name="number" value=(number);
            input type="hidden" name="planned" value=(cells);
            div class="row buttons" {
                button class="button" { (texts.next) }
                @if is_begun { (one_back(texts)) }
            }
        }
    }
}

/// Leads to the compartment before, whose count is given anew.
fn one_back(texts: &FillTexts) -> Markup {
    html! { button class="button plain" name="back" value="yes" { (texts.one_back) } }
}

/// All compartments are filled: who, and how many are in the bag.
fn all(place: &Place<'_>, case: &OpenCase, counts: &[FillingCount]) -> Markup {
    let language = place.house.language();
    let texts = &language.page().fill;
    let others = counts.iter().filter_map(|own| {
        let put = own.put.filter(|put| *put != own.planned)?;
        Some(language.other_than_planned(own.number, own.planned, put))
    });
    let last = place.house.by();
    let began = case.client.value.filling.as_ref().map(|own| own.by.clone()).unwrap_or_default();
    html! {
        div class="stack" {
            h2 { (texts.all_filled) }
            @for own in others { p class="asks" { (own) } }
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
            (signed_as(place, "fill", if last.is_empty() { &began } else { &last }))
            div class="row buttons" {
                button class="button" name="record" value="yes" { (texts.record) }
                (one_back(texts))
            }
        }
    }
}

/// Takes one compartment, or records the whole fill.
pub(crate) fn take(place: &Place<'_>) -> Result<Response, Failed> {
    let (draft, case) = (place.draft()?, place.open()?);
    let sent = &place.ask.sent;
    let texts = &place.house.language().page().fill;
    let shelf = place.house.shelf();
    let entries = case.client.value.record.len();
    if place.has_grown(entries) {
        return screen(place, &draft, Some(grown(place, entries)), None);
    }
    if let (Some(plan), true) = (case.fillable_plan(), sent.get("as-planned").is_some()) {
        let put = plan.counts.iter().map(|own| (own.number, own.planned)).collect();
        return record(place, &draft, &case, &put);
    }
    let put = put_so_far(&case);
    if sent.number::<usize>("at").is_some_and(|seen| seen != put.len()) {
        return screen(place, &draft, heavy(texts.counted_meanwhile), None);
    }
    if sent.get("record").is_some() {
        return record(place, &draft, &case, &put);
    }
    if sent.get("give-up").is_some() {
        case.give_fill_up(shelf)?;
    } else if sent.get("back").is_some() {
        case.take_count_back(shelf)?;
    } else {
        return count(place, &draft, &case);
    }
    screen(place, &place.draft()?, None, None)
}

/// Whether a file takes so many cells for one compartment.
fn can_be(cells: u32) -> bool {
    match Question::FillingFirst.row().kind {
        Kind::Whole { least, most } => (least..=most).contains(&i64::from(cells)),
        _ => false,
    }
}

fn heavy(words: &str) -> Option<Markup> {
    Some(html! { div class="box heavy" role="alert" { p { (words) } } })
}

/// Keeps the count of one compartment, where both counts are ticked.
fn count(place: &Place<'_>, draft: &Draft, case: &OpenCase) -> Result<Response, Failed> {
    let sent = &place.ask.sent;
    let texts = &place.house.language().page().fill;
    let refused = |words| screen(place, draft, heavy(words), Some(sent));
    let number = sent.number::<u8>("number").ok_or(Failed::NotThere)?;
    let typed = sent.or_nothing("other").trim();
    let cells = if typed.is_empty() { sent.number("planned") } else { typed.parse::<u32>().ok() };
    let Some(cells) = cells.filter(|own| can_be(*own)) else {
        return refused(texts.whole_number);
    };
    if sent.get("first").is_none() || sent.get("second").is_none() {
        return refused(texts.count_twice);
    }
    let begun = case.client.value.filling_goes_on().map(|own| own.by.as_str());
    let recorder = place.recorder(begun.unwrap_or(sent.or_nothing("by")), None);
    match case.keep_counted(place.house.shelf(), number, cells, &recorder) {
        Ok(true) => screen(place, &place.draft()?, None, None),
        Ok(false) => screen(place, draft, heavy(texts.counted_meanwhile), None),
        Err(error) => screen(place, draft, Some(said(place.house, &error)), Some(sent)),
    }
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
            return screen(place, draft, heavy(house.language().page().fill.whole_number), None);
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
        return screen(place, draft, Some(said(house, &error)), None);
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
        return screen(place, &after, Some(told), None);
    }
    Ok(lead(place.ask, &place.to(Step::Checks)))
}
