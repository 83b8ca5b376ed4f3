//! The fill: from below, one compartment at a time, two counts each. How far it is stands in the
//! client's file, and nowhere else.

use axum::response::Response;
use case::question::{Kind, Question};
use case::{Filling, FillingCount, RecordNote, RecordedPlan};
use casework::{Counted, Done, Draft, OpenCase, Stop, record_done};
use maud::{Markup, PreEscaped, html};
use sheets::View;
use words::page::FillTexts;

use super::{Place, grown, lead, signed_as, signed_by};
use crate::errors::{Failed, said};
use crate::form::Sent;
use crate::frame::{OfClient, Screen};
use crate::screens::plan_parts;
use crate::steps::Step;

/// Where the compartment stands that is to be filled now.
const NOW: &str = "now";

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
    // What does not go on is said before the first compartment.
    let is_begun = case.client.value.filling_goes_on().is_some();
    let body = html! {
        (told.unwrap_or_default())
        @match case.fillable_plan() {
            None => {
                div class="box" { p { (texts.nothing_planned) } }
                a class="button" href=(place.to(Step::Plan)) { (texts.to_plan) }
            }
            // What is full is not filled again by the way.
            Some(plan) if !is_begun && case.is_filled() => {
                (is_full(place, &case))
                details class="entry" open[refused.is_some()] {
                    summary { (texts.fill_anew) }
                    (by_compartment(place, &case, plan, refused))
                }
            }
            Some(plan) => { (by_compartment(place, &case, plan, refused)) }
        }
        @if is_begun || case.fillable_plan().is_none() { (so_far(place, &case)) }
        (give_up(place, &case, texts))
    };
    let of =
        OfClient { address: &place.ask.address, draft, step: Step::Fill, standing: Some(standing) };
    Ok(Screen { title: texts.title, of: Some(of), body }.answer(house))
}

/// The compartments one after the other, and the record at their end.
fn by_compartment(
    place: &Place<'_>,
    case: &OpenCase,
    plan: &RecordedPlan,
    refused: Option<&Sent>,
) -> Markup {
    let texts = &place.house.language().page().fill;
    let (counts, put) = (to_fill(place, case, plan), put_so_far(case));
    let is_begun = case.client.value.filling_goes_on().is_some();
    html! {
        p class="lead" { (texts.lead) }
        p class="hint" { (texts.kept_at_once) }
        @if !is_begun { (so_far(place, case)) }
        form id=(NOW) method="post" action=(place.to(Step::Fill)) class="panes" novalidate {
            input type="hidden" name="entries" value=(case.client.value.record.len());
            input type="hidden" name="at" value=(put.len());
            @match counts.iter().position(|own| own.put.is_none()) {
                Some(at) => { (one(place, case, &counts, at, refused)) }
                None => { (all(place, case, &counts)) }
            }
        }
    }
}

/// That the cushion is full, since when, and where the work goes on.
fn is_full(place: &Place<'_>, case: &OpenCase) -> Markup {
    let language = place.house.language();
    let texts = &language.page().fill;
    let goes_on = match case.proposed_moves().is_empty() {
        true => (Step::Checks, language.page().review.check),
        false => (Step::Moves, language.page().checks.to_moves),
    };
    html! {
        @if let Some(now) = case.client.value.cushion_now() {
            div class="box" {
                p { b { (texts.is_full) } }
                p { (language.counts(&now.counts.iter().map(|own| (*own.0, *own.1)).collect::<Vec<_>>())) ", " (language.counted_from(now.from)) "." }
            }
            div class="row buttons" { a class="button" href=(place.to(goes_on.0)) { (goes_on.1) } }
        }
    }
}

/// What was counted so far and by whom, or why nothing of it is used.
fn so_far(place: &Place<'_>, case: &OpenCase) -> Markup {
    let language = place.house.language();
    let texts = &language.page().fill;
    let client = &case.client.value;
    let counted = client.filling.as_ref().map(Filling::put).unwrap_or_default();
    html! {
        @if let Some(own) = client.filling_so_far() {
            @let class = if own.stale.is_some() { "box heavy" } else { "box" };
            section class=(class) id="so-far" {
                h2 { (texts.so_far) }
                form method="post" action=(place.to(Step::Fill)) {
                    input type="hidden" name="entries" value=(client.record.len());
                    input type="hidden" name="at" value=(counted.len());
                    ul class="row counted" {
                        @for (number, cells) in &counted {
                            li {
                                span class="disc" { (number) } " " (language.cells(*cells)) " "
                                @if own.stale.is_none() {
                                    button class="button less" name="again" value=(number) { (texts.count_again) span class="vh" { " " (number) } }
                                }
                            }
                        }
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
    let before = at.checked_sub(1).map(|before| counts[before].number).filter(|_| is_begun);
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
                @if let Some(before) = before { (one_back(texts, before)) }
            }
        }
    }
}

/// Leads to the compartment before, whose count is given anew.
fn one_back(texts: &FillTexts, before: u8) -> Markup {
    html! { button class="button plain" name="again" value=(before) { (texts.one_back) } }
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
                @if let Some(own) = counts.last() { (one_back(texts, own.number)) }
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
    } else if let Some(number) = sent.number::<u8>("again") {
        case.count_again(shelf, number)?;
    } else {
        return count(place, &draft, &case);
    }
    Ok(lead(place.ask, &place.to(Step::Fill)))
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
        // Straight to the compartment: whoever fills has read what stands above.
        Ok(true) => Ok(lead(place.ask, &format!("{}#{NOW}", place.to(Step::Fill)))),
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
    let to_checks = || Ok(lead(place.ask, &place.to(Step::Checks)));
    // Neither what hands found right on these cells, nor what was planned and told then, is judged anew.
    let after = place.open()?;
    let (now, plan) = (after.client.value.cushion_now(), after.fillable_plan());
    let is_as_planned = now.zip(plan).is_some_and(|(now, plan)| now.is_as_planned(plan));
    if is_as_planned || after.standing(house.today()).fitted().is_some() {
        return to_checks();
    }
    let counts: Vec<u32> = put.iter().map(|own| own.1).collect();
    // What is in the cushion is a fact, safe or not; that it is not is said at once.
    let judged = case.judged(&counts, house.today(), Stop::never());
    let Some(plan) = judged.ok().filter(|plan| !plan.not_safe.is_empty()) else {
        return to_checks();
    };
    let language = house.language().with_lengths_in(case.client.value.lengths);
    let told = html! {
        div class="box heavy" role="alert" {
            p { b { (language.page().fill.not_safe) } }
            (plan_parts::reasons(language, case, &plan))
        }
    };
    screen(place, &place.draft()?, Some(told), None)
}
