//! The next moves, one at a time, from below.

use axum::response::Response;
use case::{Check, Entry, Move, NextStep, Standing, State, TopAnswer};
use casework::{Done, Draft, OpenCase, Stop, record_done};
use maud::{Markup, PreEscaped, html};

use super::followed::skin_first;
use super::{Place, count_boxes, found, grown, lead, nobody_sits, part, signed_by};
use crate::errors::{Failed, said};
use crate::frame::{OfClient, Screen};
use crate::screens::plan_parts;
use crate::steps::Step;

/// Shows the next move, or what all of them do, which takes longer.
pub(crate) fn show(place: &Place<'_>, draft: &Draft) -> Result<Response, Failed> {
    if place.ask.page.as_deref() == Some("costs") {
        return costs(place).map_err(Failed::in_part);
    }
    screen(place, draft, None)
}

fn screen(place: &Place<'_>, draft: &Draft, told: Option<Markup>) -> Result<Response, Failed> {
    let house = place.house;
    let texts = &house.language().page().moves;
    let case = place.open()?;
    let standing = case.standing(house.today());
    let moves = case.proposed_moves();
    let body = html! {
        (told.unwrap_or_default())
        (nobody_sits(place, standing, &html! {}))
        @match moves.first() {
            Some(own) => { (one(place, &case, own, moves.len())) }
            None => {
                (without_moves(place, &case, standing))
            }
        }
        (leave(place, &case))
        (put_back(place, &case))
        (something_else(place, &case))
    };
    let of = OfClient {
        address: &place.ask.address,
        draft,
        step: Step::Moves,
        standing: Some(standing),
    };
    Ok(Screen { title: texts.title, of: Some(of), body }.answer(house))
}

/// Where it goes on where no move is proposed: cells that are not safe, or that hands found wrong, are
/// not checked again first.
fn without_moves(place: &Place<'_>, case: &OpenCase, standing: Standing<'_>) -> Markup {
    let page = place.house.language().page();
    let found = found::so_far(&case.client.value);
    let is_wrong = found.iter().any(Check::speaks_against);
    if !is_wrong && !matches!(standing.state, State::NotSafe(_)) {
        return html! {
            div class="box" { p { (page.moves.none) } }
            div class="row buttons" { a class="button" href=(place.to(Step::Checks)) { (page.moves.check_again) } }
        };
    }
    html! {
        div class="box heavy" { p { (if is_wrong { page.moves.none_is_right } else { page.moves.none }) } }
        div class="row buttons" {
            a class="button" href=(place.to(Step::Plan)) { (page.review.plan_again) }
            a class="button less" href=(place.to(Step::Cushion)) { (page.review.another_cushion) }
            a class="button less" href=(place.to(Step::Checks)) { (page.moves.check_again) }
        }
    }
}

/// How many moves of this round were made already.
fn made(case: &OpenCase) -> Vec<&Move> {
    let record = case.client.value.record.iter().rev();
    let moved = record.take_while(|own| matches!(own, Entry::Moved(_)));
    let mut moves: Vec<&Move> = moved
        .flat_map(|own| match own {
            Entry::Moved(own) => own.moves.iter().rev().collect::<Vec<_>>(),
            _ => Vec::new(),
        })
        .collect();
    moves.reverse();
    moves
}

/// One move, drawn from below, with its reason and what all moves do.
fn one(place: &Place<'_>, case: &OpenCase, own: &Move, left: usize) -> Markup {
    let language = place.house.language().with_lengths_in(case.client.value.lengths);
    let texts = &language.page().moves;
    let done = made(case).len();
    let picture = sheets::move_picture(language, &case.pattern, own.from, own.to, own.cells);
    html! {
        p class="soft" { (language.move_of(done + 1, done + left)) }
        p class="order" { (language.a_move(own)) }
        @if done == 0 && !checks_before(case).is_empty() {
            (skin_first(language, &found::so_far(&case.client.value)))
        }
        @if is_for_held_fingers(case) { p class="asks" { (language.next_step(NextStep::TakeOutIfStillHeld)) } }
        @if let Some(own) = case.too_few_spares_for_proposed() { p class="asks" { (language.caution(&own)) } }
        div class="panes" {
            @if let Ok(own) = &picture {
                figure class="drawing" { (PreEscaped(sheets::fragment(own))) figcaption { (texts.from_below) } }
            }
            div class="stack" {
                form method="post" action=(place.page("done")) class="stack" {
                    (hidden(case, own))
                    (signed_by(place, "done"))
                    div class="row buttons" { button class="button" { (texts.done) } }
                }
                (why(language, case))
                div hx-get=(place.page("costs")) hx-trigger="load" hx-swap="outerHTML" {
                    p class="soft" { (language.page().plan.looking) }
                    noscript { a href=(place.page("costs")) { (texts.what_they_do) } }
                }
            }
        }
    }
}

/// The checks from which the plan followed; none where it did not follow from checks.
fn checks_before(case: &OpenCase) -> &[Check] {
    let record = &case.client.value.record;
    let planned = record.iter().rposition(|own| matches!(own, Entry::Plan(_)));
    let before = planned.and_then(|at| at.checked_sub(1)).and_then(|at| record.get(at));
    match before {
        Some(Entry::Adjustment(own)) => &own.checks,
        _ => &[],
    }
}

/// Whether cells are only to be taken out, under fingers that were held: then only where they still are.
fn is_for_held_fingers(case: &OpenCase) -> bool {
    let held = |own: &Check| matches!(own, Check::Top { answer: TopAnswer::Pinched, .. });
    let out = |own: &Move| own.to == case::Place::Spare;
    checks_before(case).iter().any(held) && case.proposed_moves().iter().all(out)
}

/// What was found, where the moves follow from checks; else what was written of the plan.
fn why(language: &dyn words::Language, case: &OpenCase) -> Markup {
    let checks = checks_before(case);
    let written = case.client.value.latest_plan().and_then(|own| own.why.as_ref());
    html! {
        @if !checks.is_empty() || written.is_some() { h2 { (language.page().moves.why) } }
        @if !checks.is_empty() {
            ul { @for own in checks { li { (language.check_said(own)) } } }
        } @else if let Some(written) = written { p { (written) } }
    }
}

/// What all proposed moves do, for goals and injured sites.
fn costs(place: &Place<'_>) -> Result<Response, Failed> {
    let case = place.open()?;
    let language = place.house.language().with_lengths_in(case.client.value.lengths);
    let left = || place.ask.is_left();
    Ok(part(html! {
        @if let Some(costs) = case.proposed_costs(Stop::when(&left)) {
            h2 { (language.page().moves.what_they_do) }
            (plan_parts::cost_lines(language, &costs))
            p class="soft" { (language.lines().estimate) }
        }
    }))
}

/// A move as the form sends it back.
fn hidden(case: &OpenCase, own: &Move) -> Markup {
    html! {
        input type="hidden" name="entries" value=(case.client.value.record.len());
        input type="hidden" name="from" value=(word(own.from));
        input type="hidden" name="to" value=(word(own.to));
        input type="hidden" name="cells" value=(own.cells);
    }
}

fn word(place: case::Place) -> String {
    match place {
        case::Place::Compartment(number) => number.to_string(),
        case::Place::Spare => "spare".to_owned(),
    }
}

fn place_of(word: &str) -> Option<case::Place> {
    match word {
        "spare" => Some(case::Place::Spare),
        number => number.parse().ok().map(case::Place::Compartment),
    }
}

/// The reverse of the moves that were made last.
fn put_back(place: &Place<'_>, case: &OpenCase) -> Markup {
    let language = place.house.language();
    let texts = &language.page().moves;
    let made = made(case);
    html! {
        @if !made.is_empty() {
            details class="entry" {
                summary { (texts.put_back) }
                p { (texts.put_back_hint) }
                ol { @for own in made.iter().rev() { li { (language.a_move(&reversed(own))) } } }
                form method="post" action=(place.page("put-back")) class="stack" {
                    input type="hidden" name="entries" value=(case.client.value.record.len());
                    label class="answer" { input type="checkbox" name="counted" value="yes" required; span { (texts.put_back_done) } }
                    (signed_by(place, "put-back"))
                    button class="button less" { (texts.put_back_record) }
                }
            }
        }
    }
}

fn reversed(own: &Move) -> Move {
    Move { from: own.to, to: own.from, cells: own.cells }
}

/// The entry of the plan whose moves are not all made, where an earlier plan stands behind it.
fn entry_to_leave(case: &OpenCase) -> Option<usize> {
    let client = &case.client.value;
    if !client.moves_are_left() {
        return None;
    }
    let kept = client.record.iter().zip(case::withdrawn(&client.record)).enumerate();
    let plans = kept.filter(|(_, own)| !own.1 && matches!(own.0, Entry::Plan(_)));
    let mut plans = plans.map(|(at, _)| at + 1);
    let (earlier, last) = (plans.next(), plans.next_back());
    earlier.and(last)
}

/// The cells stay as they are, where hands find them right: the plan is withdrawn, with the reason.
fn leave(place: &Place<'_>, case: &OpenCase) -> Markup {
    let texts = &place.house.language().page().moves;
    html! {
        @if entry_to_leave(case).is_some() {
            details class="entry" {
                summary { (texts.leave) }
                p { (texts.leave_hint) }
                form method="post" action=(place.page("leave")) class="stack" {
                    input type="hidden" name="entries" value=(case.client.value.record.len());
                    div class="field" {
                        label for="because-leave" { (texts.leave_because) }
                        input id="because-leave" name="because" maxlength="200" required autocomplete="off";
                    }
                    (signed_by(place, "leave"))
                    button class="button less" { (texts.leave_record) }
                }
            }
        }
    }
}

/// What is in the cushion after something else was done: counted anew.
fn something_else(place: &Place<'_>, case: &OpenCase) -> Markup {
    let language = place.house.language();
    let texts = &language.page().moves;
    html! {
        details class="entry" {
            summary { (texts.something_else) }
            p { (texts.something_else_hint) }
            form method="post" action=(place.page("counted")) class="stack" novalidate {
                input type="hidden" name="entries" value=(case.client.value.record.len());
                (count_boxes(place, case))
                (signed_by(place, "counted"))
                button class="button less" { (texts.record_counts) }
            }
        }
    }
}

/// Takes a move that was made, or what else was done.
pub(crate) fn take(place: &Place<'_>) -> Result<Response, Failed> {
    let house = place.house;
    let (draft, case) = (place.draft()?, place.open()?);
    let (sent, entries) = (&place.ask.sent, case.client.value.record.len());
    if place.has_grown(entries) {
        return screen(place, &draft, Some(grown(place, entries)));
    }
    let done = match place.ask.page.as_deref() {
        Some("done") => {
            let (from, to) = (place_of(sent.or_nothing("from")), place_of(sent.or_nothing("to")));
            let own = from.zip(to).zip(sent.number("cells"));
            let ((from, to), cells) = own.ok_or(Failed::NotThere)?;
            vec![Done::Moved(Some(vec![Move { from, to, cells }]))]
        }
        Some("put-back") => {
            let back = made(&case).into_iter().rev().map(reversed);
            vec![Done::Moved(Some(back.collect()))]
        }
        Some("leave") => vec![Done::Withdrawn(entry_to_leave(&case).ok_or(Failed::NotThere)?)],
        Some("counted") => match counted(sent) {
            Some(counted) => moved_otherwise(&case, counted),
            None => {
                let words = house.language().page().fill.whole_number;
                let told = html! { div class="box heavy" role="alert" { p { (words) } } };
                return screen(place, &draft, Some(told));
            }
        },
        _ => return Err(Failed::NotThere),
    };
    let because = sent.or_nothing("because").trim();
    let recorder = place.recorder(sent.or_nothing("by"), (!because.is_empty()).then_some(because));
    for own in &done {
        if let Err(error) = record_done(house.surroundings(), &place.name, own, &recorder) {
            return screen(place, &draft, Some(said(house, &error)));
        }
    }
    let found = found::so_far(&case.client.value);
    let is_left = matches!(done.as_slice(), [Done::Withdrawn(_)]);
    let is_right = !found.is_empty() && !found.iter().any(Check::speaks_against);
    let to = if is_left && is_right { Step::Carers } else { Step::Moves };
    Ok(lead(place.ask, &place.to(to)))
}

/// What was counted after other moves than those that were proposed: the moves that lead there, and
/// the bag where it holds something else than is left of it. It is meant, and nothing to be put back.
fn moved_otherwise(case: &OpenCase, counted: Done) -> Vec<Done> {
    let Done::Recount { counts, spare } = &counted else { return vec![counted] };
    let there = |own: &cushion::Compartment| counts.iter().find(|count| count.0 == own.number);
    let now = case.recorded_now().into_iter().flatten();
    let after: Vec<u32> = (case.pattern.compartments().iter().zip(now))
        .map(|(own, now)| there(own).map_or(now, |count| count.1))
        .collect();
    let moves = case.moves_to(&after).filter(|own| !own.is_empty());
    let Some(moves) = moves else { return vec![counted] };
    let left = case.client.value.bag_after(&moves);
    let bag = spare.filter(|spare| i64::from(*spare) != left);
    let recount = bag.map(|_| Done::Recount { counts: Vec::new(), spare: bag });
    [Some(Done::Moved(Some(moves))), recount].into_iter().flatten().collect()
}

/// A recount of a form; none where something is no whole number.
pub(crate) fn counted(sent: &crate::form::Sent) -> Option<Done> {
    let mut counts = Vec::new();
    let mut spare = None;
    for (number, typed) in sent.after("counted.").filter(|own| !own.1.trim().is_empty()) {
        let cells = typed.trim().parse::<u32>().ok()?;
        match number {
            "spare" => spare = Some(cells),
            number => counts.push((number.parse().ok()?, cells)),
        }
    }
    Some(Done::Recount { counts, spare })
}
