//! Goals: what the cushion is to do, in order.

use axum::response::Response;
use case::question::{Group, Kind, Question};
use case::text::{Remark, TextFinding, WishFinding};
use case::{Goal, Shortfall};
use casework::{Blank, Draft, Stop, Typed, WorkError};
use maud::{Markup, html};

use super::{Place, lead, part};
use crate::answers::{Said, Taken, taken};
use crate::errors::Failed;
use crate::fields::{Fields, capital};
use crate::form::Sent;
use crate::frame::{OfClient, Screen};
use crate::steps::Step;

/// Shows the goals.
pub(crate) fn show(place: &Place<'_>, draft: &Draft) -> Result<Response, Failed> {
    if place.ask.page.as_deref() == Some("look") {
        return look(place, draft).map_err(Failed::in_part);
    }
    Ok(screen(place, draft, &[]))
}

fn screen(place: &Place<'_>, draft: &Draft, refused: &[Said]) -> Response {
    let texts = &place.house.language().page().goals;
    let known = known(place, draft);
    // What can be asked for depends on the cushion, so nothing is said before one is chosen.
    // Nor beside a goal that is refused here.
    let can_look = draft.client().is_some() && !refused.iter().any(Said::is_refused);
    let goals = known.unwrap_or_else(|| as_written(place, draft));
    let body = html! {
        p class="lead" { (texts.lead) }
        div class="panes" {
            section {
                h2 { (texts.in_order) }
                @if goals.is_empty() { p { (texts.none_yet) } }
                ol class="goals" data-order=(place.page("order")) {
                    @for (at, goal) in goals.iter().enumerate() { (one(place, at + 1, goals.len(), goal)) }
                }
                div id="look" aria-live="polite" {
                    @if can_look && !goals.is_empty() {
                        div hx-get=(place.page("look")) hx-trigger="load" hx-swap="outerHTML" {
                            p class="soft" { (texts.looking) }
                            noscript { a href=(place.page("look")) { (texts.look) } }
                        }
                    }
                }
            }
            (add(place, draft, refused))
        }
        // A goal that is begun here goes along.
        div class="row buttons" { button class="button" form="add-goal" name="then" value="next" { (texts.next) } }
    };
    let of = OfClient { address: &place.ask.address, draft, step: Step::Goals, standing: None };
    Screen { title: texts.title, of: Some(of), body }.answer(place.house)
}

/// A goal in words, with its reason.
struct Told {
    said: String,
    because: Option<String>,
}

/// The goals of a file that is right, or would be with a cushion; none of another.
fn known(place: &Place<'_>, draft: &Draft) -> Option<Vec<Told>> {
    let language = place.house.language().with_lengths_in(draft.lengths());
    let told = |goal: &Goal| Told {
        said: capital(&language.goal(&goal.want)),
        because: goal.because.clone(),
    };
    if let Some(client) = draft.client() {
        return Some(client.goals.iter().map(told).collect());
    }
    let case = place.house.with_any_cushion(draft).ok()?;
    Some(case.client.value.goals.iter().map(told).collect())
}

/// The goals of a file that lacks other answers: what is wanted, as it is written.
fn as_written(place: &Place<'_>, draft: &Draft) -> Vec<Told> {
    let language = place.house.language();
    let told = |entry: usize| {
        let answer = |question| draft.answer(&Blank::in_entry(question, entry));
        let want = answer(Question::GoalWant).unwrap_or_default();
        let Kind::Choice(words) = Question::GoalWant.row().kind else { return want };
        let known = words.iter().find(|own| **own == want);
        known.map_or(want, |own| language.word_on_form(Question::GoalWant, own).to_owned())
    };
    let because = |entry| draft.answer(&Blank::in_entry(Question::GoalBecause, entry));
    let all = 1..=draft.entries(Group::Goal);
    all.map(|entry| Told { said: capital(&told(entry)), because: because(entry) }).collect()
}

fn one(place: &Place<'_>, at: usize, of: usize, Told { said, because }: &Told) -> Markup {
    let texts = &place.house.language().page().goals;
    html! {
        li class="goal" draggable="true" data-at=(at) {
            span class="rank" aria-hidden="true" { (at) }
            div {
                p class="what" { b { (said) } }
                @if let Some(because) = because { p { (because) } }
                form method="post" action=(place.page("order")) class="row" {
                    input type="hidden" name="entry" value=(at);
                    @if at > 1 { button class="button less" name="to" value=(at - 1) { (texts.earlier) span class="vh" { ": " (said) } } }
                    @if at < of { button class="button less" name="to" value=(at + 1) { (texts.later) span class="vh" { ": " (said) } } }
                    button class="button less" name="without" value=(at) { (texts.take_away) span class="vh" { ": " (said) } }
                }
            }
        }
    }
}

/// Room for one more goal: what is wanted first, then what that asks.
fn add(place: &Place<'_>, draft: &Draft, refused: &[Said]) -> Markup {
    let house = place.house;
    let texts = &house.language().page().goals;
    let entry = draft.entries(Group::Goal) + 1;
    let keep_at = place.page("nothing");
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
        form class="box" id="add-goal" method="post" action=(place.page("add")) novalidate data-needs="goal" {
            h2 { (if entry == 1 { texts.add_first } else { texts.add }) }
            @for own in refused.iter().filter(|own| own.is_refused()) { p class="error" { span class="mark" aria-hidden="true" { "!" } span { (own.message) } } }
            @for question in Question::of(Group::Goal) {
                div class="needs" data-question=(question.row().key) { (fields.question(question, Some(entry))) }
            }
            button class="button" { (texts.add_button) }
        }
    }
}

/// What of the goals is refused, and why; what does not go together.
fn look(place: &Place<'_>, draft: &Draft) -> Result<Response, Failed> {
    let house = place.house;
    let language = house.language().with_lengths_in(draft.lengths());
    let texts = &language.page().goals;
    let case = house.with_any_cushion(draft)?;
    let stock: Vec<u32> =
        case.cushion.stock().compartments.iter().map(|own| own.cells.stock).collect();
    if case.weight().is_err() {
        return Ok(part(html! { p class="asks" { (texts.weight_first) } }));
    }
    let judged = case.judged(&stock, house.today(), Stop::never())?;
    let refused = judged.goals.iter().enumerate().filter(|own| own.1.why.is_some_and(is_refusal));
    let mut said: Vec<String> =
        refused.map(|(at, own)| language.ranked_goal(at + 1, own)).collect();
    let wants: Vec<_> = case.client.value.goals.iter().map(|own| own.want).collect();
    if wants.iter().any(|own| matches!(own, case::Want::CorrectObliquity))
        && wants.iter().any(|own| matches!(own, case::Want::AccommodateObliquity))
    {
        said.push(texts.correct_and_accommodate.to_owned());
    }
    let asked = asked_sides(language, &draft.remarks(house.today()));
    Ok(part(html! {
        @if said.is_empty() && asked.is_empty() { p { (texts.nothing_refused) } }
        @for own in &said { div class="box heavy" { p { (own) } } }
        @for own in &asked { p class="asks" { (own) } }
    }))
}

/// What is asked about the sides of goals: another than that of an injury, or of a leg that is there.
fn asked_sides(language: &dyn words::Language, remarks: &[Remark]) -> Vec<String> {
    let is_of_sides = |own: &&Remark| {
        matches!(
            own.finding,
            TextFinding::Wish(WishFinding::OtherSide { .. } | WishFinding::FrontOfLostLeg(_))
        )
    };
    let said = remarks.iter().filter(is_of_sides).map(|own| language.about_text(&own.finding));
    said.map(|own| crate::answers::whole(&own.message, own.hint.as_deref())).collect()
}

/// Whether a goal is refused, and not only out of reach with the counts that were looked at.
fn is_refusal(why: Shortfall) -> bool {
    !matches!(
        why,
        Shortfall::Clearance(_)
            | Shortfall::Full(_)
            | Shortfall::Rank
            | Shortfall::OtherGoals
            | Shortfall::OutOfReach
            | Shortfall::TheseCounts
            | Shortfall::SeatWouldFall
            | Shortfall::NoRest
    )
}

/// Takes a new goal, another order, or one goal less.
pub(crate) fn take(place: &Place<'_>) -> Result<Response, Failed> {
    let draft = place.draft()?;
    let sent = &place.ask.sent;
    let edit = |error| WorkError::asked(case::Trouble::Edit { file: draft.name.clone(), error });
    match place.ask.page.as_deref() {
        Some("nothing") => return Ok(part(html! {})),
        Some("order") => {
            let at = sent.number::<usize>("without");
            let after = match at {
                Some(at) => draft.without_entry(Group::Goal, at).map_err(edit)?,
                None => {
                    let (entry, to) = (sent.number("entry"), sent.number("to"));
                    let (entry, to) = entry.zip(to).ok_or(Failed::NotThere)?;
                    draft.with_entry_at(Group::Goal, entry, to).map_err(edit)?
                }
            };
            draft.keep(place.house.shelf(), &after)?;
        }
        Some("add") => return added(place, &draft, sent),
        _ => return Err(Failed::NotThere),
    }
    Ok(lead(place.ask, &place.to(Step::Goals)))
}

/// A new goal is written as a whole, or not at all.
fn added(place: &Place<'_>, draft: &Draft, sent: &Sent) -> Result<Response, Failed> {
    let entry = draft.entries(Group::Goal) + 1;
    let goes_on = sent.get("then").is_some();
    let new = format!("goal.{entry}.");
    if goes_on && sent.after(&new).all(|own| own.1.trim().is_empty()) {
        return Ok(lead(place.ask, &place.to(Step::Cushion)));
    }
    let Taken { draft: after, refused, .. } =
        taken(place.house.language(), draft, sent, place.house.typed_in(draft));
    let nothing = Typed {
        blank: Blank::in_entry(Question::GoalWant, entry),
        words: String::new(),
        seen: None,
    };
    let begun = after.entries(Group::Goal) == entry;
    // What the new goal still lacks was not lacking before.
    let before = draft.missing();
    let is_new = |own: &Remark| before.iter().all(|other| other.finding != own.finding);
    let lacks = after.missing().into_iter().find(is_new);
    if !refused.is_empty() || lacks.is_some() || !begun {
        let mut refused = refused;
        if refused.is_empty() {
            let message = match &lacks {
                Some(remark) => place.house.language().about_text(&remark.finding).message,
                None => place.house.language().page().goals.choose_first.to_owned(),
            };
            let message = crate::answers::whole(&message, None);
            refused.push(Said {
                blank: nothing.blank,
                seen: None,
                is_overtaken: false,
                typed: sent.or_nothing(&nothing.blank.key()).to_owned(),
                message,
            });
        }
        for (key, words) in sent.all() {
            let known =
                Blank::from_key(key).filter(|own| !refused.iter().any(|said| said.blank == *own));
            if let Some(blank) = known.filter(|_| !words.is_empty()) {
                refused.push(Said {
                    blank,
                    typed: words.to_owned(),
                    seen: None,
                    is_overtaken: false,
                    message: String::new(),
                });
            }
        }
        return Ok(screen(place, draft, &refused));
    }
    draft.keep(place.house.shelf(), &after)?;
    Ok(lead(place.ask, &place.to(if goes_on { Step::Cushion } else { Step::Goals })))
}
