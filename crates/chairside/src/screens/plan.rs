//! The plan: the cushion from above with its counts, and what they do.

use std::sync::Arc;

use axum::response::Response;
use case::{Client, Goal, Plan, RecordNote, Trouble, WhyNoPlan};
use casework::{Draft, OpenCase, Stop, WorkError, plan_stands};
use maud::{Markup, html};

use super::plan_parts::{self, Seen};
use super::{Place, grown, lead, part, signed_by};
use crate::errors::{Failed, said};
use crate::form::Sent;
use crate::frame::{OfClient, Screen, step_name};
use crate::house::House;
use crate::lot;
use crate::steps::Step;
use crate::windows::{Told, Window};

/// Shows the plan, or a part of it that comes later.
pub(crate) fn show(place: &Place<'_>, draft: &Draft) -> Result<Response, Failed> {
    match place.ask.page.as_deref() {
        None => screen(place, draft, None, None),
        Some("making") => Ok(part(plan_parts::making(place, true))),
        Some("made") => made(place, draft),
        Some("spread") => spread(place).map_err(Failed::in_part),
        Some("judged") => judged(place).map_err(Failed::in_part),
        Some("sections") => sections(place).map_err(Failed::in_part),
        Some(_) => Err(Failed::NotThere),
    }
}

/// Which counts a screen begins with: those that were tried, or what is in the cushion by the
/// record, or the stock fill.
fn begin_with(case: &OpenCase, tried: Option<&[u32]>) -> Vec<u32> {
    let recorded = case.recorded_now();
    tried.map(<[u32]>::to_vec).or(recorded).unwrap_or_else(|| stock(case))
}

pub(crate) fn stock(case: &OpenCase) -> Vec<u32> {
    case.cushion.stock().compartments.iter().map(|own| own.cells.stock).collect()
}

/// The window of a form, where it is of this client; else a new one.
///
/// A window that made room for others is opened again under the id that its page has: else every touch
/// of that page would open one more.
fn window(place: &Place<'_>) -> Result<(String, Arc<Window>), Failed> {
    let id = place.ask.sent.or_nothing("window");
    let known = place.house.windows.get(id);
    let id = match known {
        Some(known) if known.name == place.name => return Ok((id.to_owned(), known)),
        None if lot::is_word(id) => id.to_owned(),
        Some(_) | None => lot::word().ok_or(Failed::NotThere)?,
    };
    let window = Window::open(&place.name, place.open()?, &place.house.turns)?;
    let window = place.house.windows.put(id.clone(), window);
    Ok((id, window))
}

/// Counts that are on the screen and in no file.
#[derive(Clone, Copy)]
struct Tried<'a> {
    counts: &'a [u32],
    /// What is known of them already.
    plan: Option<&'a Plan>,
}

fn screen(
    place: &Place<'_>,
    draft: &Draft,
    tried: Option<Tried<'_>>,
    told: Option<Markup>,
) -> Result<Response, Failed> {
    let house = place.house;
    let texts = &house.language().page().plan;
    let (id, window) = window(place)?;
    let case = &window.case;
    let counts = begin_with(case, tried.map(|own| own.counts));
    let known = tried.and_then(|own| own.plan);
    let (on, entries) = (house.today(), case.client.value.record.len());
    let standing = case.standing(on);
    let wants_plan = tried.is_none() && case.client.value.latest_plan().is_none();
    let seen = Seen { place, case, window: &id };
    let body = html! {
        div id="told" { (told.unwrap_or_default()) }
        (in_cushion_now(house, &case.client.value))
        form id="counts" method="post" action=(place.page("touch")) data-touches=(window.last_touch()) {
            input type="hidden" name="window" value=(id);
            input type="hidden" name="entries" value=(entries);
            div class="panes plan" {
                (plan_parts::cushion(&seen, &counts))
                div id="verdict" aria-live="polite" {
                    @if let Some(plan) = known { (plan_parts::whole(&seen, plan)) }
                    @else if wants_plan { (plan_parts::making(place, false)) }
                    @else { (plan_parts::loading(&seen, &counts)) }
                }
            }
            @if let Some(plan) = known { (plan_parts::plan_in_short(&seen, plan)) }
            @else { p id="in-short" class="in-short" aria-hidden="true" {} }
        }
        (make(place, draft))
        (take_box(place, case, &counts, (&id, wants_plan)))
    };
    let of =
        OfClient { address: &place.ask.address, draft, step: Step::Plan, standing: Some(standing) };
    Ok(Screen { title: texts.title, of: Some(of), body }.answer(house))
}

/// How it is known what is in the cushion, and in which, where that is not the one that is planned.
fn in_cushion_now(house: &House, client: &Client) -> Markup {
    let language = house.language();
    let page = language.page();
    let Some(now) = client.cushion_now() else { return html! {} };
    if !now.from.is_told() {
        // A plan is not yet a cushion: nobody said that it was carried out.
        let notes = client.record_notes();
        let believed = notes.iter().find(|own| matches!(own, RecordNote::Believed(_)));
        return html! { @if let Some(own) = believed { p class="lead" { (language.record_note(own)) } } };
    }
    let from = language.counted_from(now.from);
    html! {
        p class="lead" {
            @match now.cushion.as_ref().filter(|_| !now.is_in(&client.cushion)) {
                Some((layout, size)) => {
                    (page.cushion.another_cushion) ", " (layout) ", " (language.size(*size)) ": " (from) "."
                }
                None => { (page.plan.in_cushion_now) " " (from) "." }
            }
        }
    }
}

/// The goals, and a plan made for them.
fn make(place: &Place<'_>, draft: &Draft) -> Markup {
    let language = place.house.language().with_lengths_in(draft.lengths());
    let texts = &language.page().plan;
    let goals: &[Goal] = draft.client().map(|own| own.goals.as_slice()).unwrap_or_default();
    html! {
        section class="part" {
            h2 { (texts.goals) }
            ol { @for goal in goals { li { (crate::fields::capital(&language.goal(&goal.want))) } } }
            @if goals.is_empty() { p { (texts.no_goals) } }
            a class="button less" href=(place.page("made")) hx-get=(place.page("making"))
                hx-target="#verdict" hx-swap="innerHTML show:#verdict:top" { (texts.work_out) }
            p class="hint" { (texts.work_out_hint) }
        }
    }
}

fn take_box(
    place: &Place<'_>,
    case: &OpenCase,
    counts: &[u32],
    (window, is_awaited): (&str, bool),
) -> Markup {
    let texts = &place.house.language().page().plan;
    html! {
        form class="box" id="take" method="post" action=(place.page("take")) data-counts-of="counts" {
            h2 { (texts.take) }
            p { (texts.take_hint) }
            input type="hidden" name="window" value=(window);
            input type="hidden" name="entries" value=(case.client.value.record.len());
            div id="taken-counts" {
                (hidden_counts(case, counts, false))
                // Until the first plan is there, what stands here are no counts that anybody chose.
                span id="awaited" { @if is_awaited { input type="hidden" name="awaited" value="yes"; } }
            }
            (signed_by(place, "take"))
            div class="field" {
                label for="because" { (texts.because) }
                p class="hint" id="because-hint" { (texts.because_hint) }
                input id="because" name="because" value=(place.ask.sent.or_nothing("because")) maxlength="200" autocomplete="off" aria-describedby="because-hint";
            }
            button class="button" { (texts.take) }
        }
    }
}

/// The counts that would be taken, for a form; as a part that replaces that of a screen.
pub(crate) fn hidden_counts(case: &OpenCase, counts: &[u32], again: bool) -> Markup {
    let numbers = case.pattern.compartments().iter().map(|own| own.number);
    html! {
        span id="counts-to-take" hx-swap-oob=[again.then_some("true")] {
            @for (number, count) in numbers.zip(counts) {
                input type="hidden" name=(format!("cells.{number}")) value=(count);
            }
        }
    }
}

/// The counts of a form, in the pattern's order.
pub(crate) fn counts_of(case: &OpenCase, sent: &Sent) -> Option<Vec<u32>> {
    let numbers = case.pattern.compartments().iter().map(|own| own.number);
    numbers.map(|number| sent.number(&format!("cells.{number}"))).collect()
}

/// Works a plan out for the goals, and shows its counts.
fn made(place: &Place<'_>, draft: &Draft) -> Result<Response, Failed> {
    let (id, window) = window(place)?;
    let left = || place.ask.is_left();
    let plan = window.case.plan(place.house.today(), Stop::when(&left));
    let plan = match plan {
        Ok(plan) => Arc::new(plan),
        Err(error) if place.ask.fragment => return Ok(part(no_plan(place, &error))),
        Err(error) => {
            let counts = stock(&window.case);
            let tried = Tried { counts: &counts, plan: None };
            return screen(place, draft, Some(tried), Some(no_plan(place, &error)));
        }
    };
    let counts: Vec<u32> = plan.counts.iter().map(|own| own.planned).collect();
    window.set_plan(Arc::clone(&plan));
    let texts = &place.house.language().page().plan;
    let is_there = window.case.recorded_now().as_ref() == Some(&counts);
    let told =
        html! { p class="verdict" { (if is_there { texts.made_is_there } else { texts.made }) } };
    if !place.ask.fragment {
        let tried = Tried { counts: &counts, plan: Some(&plan) };
        return screen(place, draft, Some(tried), Some(told));
    }
    let seen = Seen { place, case: &window.case, window: &id };
    Ok(part(html! {
        (told)
        (plan_parts::whole(&seen, &plan))
        (plan_parts::plan_in_short(&seen, &plan))
        div id="told" hx-swap-oob="true" {}
        (plan_parts::cushion_again(&seen, &counts))
        (hidden_counts(&window.case, &counts, true))
        span id="awaited" hx-swap-oob="true" {}
    }))
}

/// Why there is no plan, and where that may be mended.
fn no_plan(place: &Place<'_>, error: &WorkError) -> Markup {
    let texts = &place.house.language().page().plan;
    // No chair bears more than the cushion does.
    let too_heavy = matches!(
        &*error.what,
        Trouble::NotSafe(WhyNoPlan::TooHeavy { .. }) | Trouble::NoPlan(WhyNoPlan::TooHeavy { .. })
    );
    html! {
        (said(place.house, error))
        div class="row buttons" {
            @if !too_heavy { a class="button less" href=(place.to(Step::Chair)) { (texts.to_chair) } }
            @for step in [Step::Goals, Step::Cushion] {
                a class="button less" href=(place.to(step)) { (step_name(place.house, step)) }
            }
        }
    }
}

/// Takes a touch of plus or minus, or the counts.
pub(crate) fn take(place: &Place<'_>) -> Result<Response, Failed> {
    match place.ask.page.as_deref() {
        Some("touch") => touch(place),
        Some("take") => record(place),
        _ => Err(Failed::NotThere),
    }
}

/// The counts after a touch.
fn touched(case: &OpenCase, sent: &Sent) -> Option<Vec<u32>> {
    let mut counts = counts_of(case, sent)?;
    let change = |name: &str| sent.number::<u8>(name);
    let at = |number: u8| case.pattern.compartments().iter().position(|own| own.number == number);
    if let Some(at) = change("more").and_then(at) {
        counts[at] = counts[at].saturating_add(1);
    }
    if let Some(at) = change("fewer").and_then(at) {
        counts[at] = counts[at].saturating_sub(1);
    }
    Some(counts)
}

/// The compartments of a list such as `1,4`.
fn numbers(list: &str) -> Vec<u8> {
    list.split(',').filter_map(|own| own.parse().ok()).collect()
}

fn touch(place: &Place<'_>) -> Result<Response, Failed> {
    let (id, window) = window(place)?;
    let counts = touched(&window.case, &place.ask.sent).ok_or(Failed::NotThere)?;
    if !place.ask.fragment {
        let draft = place.draft()?;
        return screen(place, &draft, Some(Tried { counts: &counts, plan: None }), None);
    }
    let seen = Seen { place, case: &window.case, window: &id };
    // Without scripts touches have no numbers, and come one after the other.
    let touch = place.ask.sent.number("touch").unwrap_or_else(|| window.last_touch());
    let Some(revision) = window.ask_in_order(&counts, touch)? else { return Ok(nothing()) };
    match window.wait(revision.number(), false) {
        Told::Answer(answer) => Ok(part(html! {
            (plan_parts::central(&seen, &answer, &counts))
            // What was said of the counts before says nothing of these.
            div id="told" hx-swap-oob="true" {}
            @match place.ask.sent.get("touched") {
                // The page has counted by itself.
                Some(touched) => { (plan_parts::changed(&seen, &numbers(touched), &counts)) }
                None => {
                    (plan_parts::cushion_again(&seen, &counts))
                    (hidden_counts(&window.case, &counts, true))
                }
            }
        })),
        Told::Overtaken => Ok(nothing()),
        Told::Ended => Ok(part(html! { p { (place.house.language().page().plan.no_answer) } })),
    }
}

/// No answer: newer counts were asked about, or too many wait.
fn nothing() -> Response {
    let mut response = Response::default();
    *response.status_mut() = axum::http::StatusCode::NO_CONTENT;
    response
}

/// The numbers of counts with their ranges, and the limits.
fn spread(place: &Place<'_>) -> Result<Response, Failed> {
    let (id, window) = window(place)?;
    let seen = Seen { place, case: &window.case, window: &id };
    let counts = counts_of(&window.case, &place.ask.sent).ok_or(Failed::NotThere)?;
    let revision = match place.ask.sent.number("revision") {
        Some(revision) => revision,
        None => window.ask(&counts)?.number(),
    };
    let told = window.told(revision, true).or_else(|| {
        let _waits = place.house.waiting.one_more()?;
        Some(window.wait(revision, true))
    });
    // The page asks again.
    let Some(told) = told else { return Ok(nothing()) };
    match told {
        Told::Answer(answer) => Ok(part(plan_parts::with_spread(&seen, &answer, &counts))),
        Told::Overtaken => Ok(nothing()),
        Told::Ended => Ok(part(html! { p { (place.house.language().page().plan.no_answer) } })),
    }
}

/// The goals, limits and costs of counts, by the decision that plans are made with.
fn judged(place: &Place<'_>) -> Result<Response, Failed> {
    let (id, window) = window(place)?;
    let seen = Seen { place, case: &window.case, window: &id };
    let counts = counts_of(&window.case, &place.ask.sent).ok_or(Failed::NotThere)?;
    let revision = place.ask.sent.number::<u64>("revision").unwrap_or(u64::MAX);
    let unwanted = || window.is_overtaken(revision) || place.ask.is_left();
    let waits = place.house.waiting.one_more();
    if waits.is_none() && place.ask.fragment {
        // The page asks again.
        return Ok(nothing());
    }
    match judging(place.house, &window.case, &counts, &unwanted) {
        Some(plan) => {
            let plan = plan?;
            Ok(part(
                html! { (plan_parts::whole(&seen, &plan)) (plan_parts::plan_in_short(&seen, &plan)) },
            ))
        }
        None => Ok(nothing()),
    }
}

/// Judges counts when nothing goes before that, as long as it is wanted.
pub(crate) fn judging(
    house: &House,
    case: &OpenCase,
    counts: &[u32],
    unwanted: &(dyn Fn() -> bool + Sync),
) -> Option<Result<Plan, WorkError>> {
    let turns = &house.turns;
    let on = house.today();
    turns.after(unwanted, |gives_way| {
        let stops = || unwanted() || gives_way && turns.is_wanted_first();
        case.judged(counts, on, Stop::when(&stops))
    })
}

/// The sections through the cushion under the client, as these counts leave it.
fn sections(place: &Place<'_>) -> Result<Response, Failed> {
    let (_, window) = window(place)?;
    let counts = counts_of(&window.case, &place.ask.sent).ok_or(Failed::NotThere)?;
    let left = || place.ask.is_left();
    let (_, cuts) = window.case.predict(&counts, Stop::when(&left))?;
    Ok(part(plan_parts::sections(place, &window.case, &cuts)))
}

/// Records counts as the plan, where they keep the limits.
fn record(place: &Place<'_>) -> Result<Response, Failed> {
    let house = place.house;
    let (draft, case) = (place.draft()?, place.open()?);
    let entries = case.client.value.record.len();
    let sent = &place.ask.sent;
    let counts = counts_of(&case, sent).ok_or(Failed::NotThere)?;
    let tried = Tried { counts: &counts, plan: None };
    if place.has_grown(entries) {
        return screen(place, &draft, Some(tried), Some(grown(place, entries)));
    }
    if sent.get("awaited").is_some() {
        return screen(
            place,
            &draft,
            None,
            Some(html! { p class="asks" { (house.language().page().plan.making) } }),
        );
    }
    let (by, because) = (sent.or_nothing("by"), sent.or_nothing("because").trim());
    let recorder = place.recorder(by, (!because.is_empty()).then_some(because));
    let made = made_plan(place, &case, &counts);
    let plan = match &made {
        Some(made) => (**made).clone(),
        None => case.judged(&counts, house.today(), Stop::never())?,
    };
    // By name only what was found to be nearest to the goals, never counts of one's own.
    let by_name = made.is_some() && sent.get("nearest-safe").is_some();
    let refused = || plan_parts::refused(place, &case, &plan, made.is_some());
    let tried = Tried { plan: Some(&plan), ..tried };
    if !plan_stands(&plan, &case.client.value, by_name) {
        return screen(place, &draft, Some(tried), Some(refused()));
    }
    match case.record_plan(house.shelf(), &plan, by_name, &recorder) {
        Ok(true) => Ok(lead(place.ask, &place.to(Step::Fill))),
        Ok(false) => screen(place, &draft, Some(tried), Some(refused())),
        Err(error) => screen(place, &draft, Some(tried), Some(said(house, &error))),
    }
}

/// The plan that was made in this window for the goals, where it has these counts and is of the file
/// as it is now.
fn made_plan(place: &Place<'_>, case: &OpenCase, counts: &[u32]) -> Option<Arc<Plan>> {
    let window = place.house.windows.get(place.ask.sent.or_nothing("window"))?;
    let same = window.name == place.name && window.case.client.file.text == case.client.file.text;
    let plan = window.plan().filter(|_| same)?;
    plan.counts.iter().map(|own| own.planned).eq(counts.iter().copied()).then_some(plan)
}
