//! Questions of the form, one group a page.

use axum::http::StatusCode;
use axum::response::{IntoResponse as _, Redirect, Response};
use case::question::{Group, Question};
use case::text::Remark;
use casework::{Blank, Draft, TypedLength, WorkError};
use cushion::Side;
use maud::{Markup, html};

use super::{Ask, Place, lead, part};
use crate::answers::{Said, Taken, blank_of, says_which_stands, taken, whole};
use crate::errors::Failed;
use crate::fields::{Fields, about_id, capital, id_of, is_length};
use crate::form::Sent;
use crate::frame::{OfClient, Screen, only_by_editor, step_name};
use crate::house::House;
use crate::screens::beside;
use crate::steps::{Page, Part, Step};

/// Which page of a step is asked for.
fn page_of(place: &Place<'_>) -> Result<(usize, &'static Page), Failed> {
    let pages = place.step.pages();
    match &place.ask.page {
        None => pages.first().map(|page| (0, page)).ok_or(Failed::NotThere),
        Some(word) => {
            let at = pages.iter().position(|page| page.word == word).ok_or(Failed::NotThere)?;
            Ok((at, &pages[at]))
        }
    }
}

/// Shows a page of questions, with what was typed and not written.
pub(crate) fn show(place: &Place<'_>, draft: &Draft, refused: &[Said]) -> Result<Response, Failed> {
    let (at, page) = page_of(place)?;
    let house = place.house;
    let language = house.language();
    let action = place.page(page.word);
    let keep_at = format!("{action}?keep");
    let remarks = draft.remarks(house.today());
    let fields = Fields {
        language,
        draft,
        refused,
        typed_in: house.typed_in(draft),
        remarks: &remarks,
        keep_at: &keep_at,
    };
    let name = language.page().steps.pages.iter().find(|own| own.0 == page.word);
    let title = name.map_or_else(|| step_name(house, place.step), |own| own.1);
    let body = html! {
        (summary(house, refused))
        div class="panes questions" {
            (beside::pelvis(house, draft, page))
            div class="stack" {
                @if asks_lengths(page) { (units(house, draft, &action)) }
                form method="post" action=(action) novalidate class="stack" {
                    // What the enter key presses: else it would be the first button, which may take an entry away.
                    button class="vh" tabindex="-1" aria-hidden="true" { (language.page().fields.next) }
                    @for own in page.parts { (part_of(&fields, house, page, own)) }
                    (beside::means(house, draft, page))
                    (buttons(place, at))
                }
            }
        }
    };
    let of = OfClient { address: &place.ask.address, draft, step: place.step, standing: None };
    let screen = Screen { title, of: Some(of), body };
    let status = if refused.is_empty() { StatusCode::OK } else { StatusCode::UNPROCESSABLE_ENTITY };
    Ok(screen.answer_with(house, status))
}

fn asks_lengths(page: &Page) -> bool {
    page.parts
        .iter()
        .flat_map(Part::questions)
        .any(|own| is_length(own) || own == Question::WeightKg)
}

fn part_of(fields: &Fields<'_>, house: &House, page: &Page, part: &Part) -> Markup {
    let language = fields.language;
    let group = part.group();
    let heading = language.group_heading(group);
    let comment = language.group_comment_on_form(group);
    if let Part::List(_) = part {
        return list_of(fields, group, heading, comment);
    }
    html! {
        section class="part" {
            @if !matches!(group, Group::Client) { h2 { (heading) } }
            @if !comment.is_empty() { p class="hint" { (capital(comment)) } }
            @for question in part.questions() {
                @if question != Question::WeightLb {
                    @match beside::drawing(house, page, question) {
                        Some(own) => { div class="measured" { (own) div { (fields.question(question, None)) } } }
                        None => { (fields.question(question, None)) }
                    }
                }
            }
        }
    }
}

/// Each entry of a list, and room for one more.
fn list_of(fields: &Fields<'_>, group: Group, heading: &str, comment: &str) -> Markup {
    let language = fields.language;
    let texts = &language.page().fields;
    let there = fields.draft.entries(group);
    html! {
        section class="part" {
            h2 { (heading) }
            @if !comment.is_empty() { p class="hint" { (capital(comment)) } }
            @for at in 1..=there {
                fieldset class="entry" {
                    legend { (language.entry_of_list(heading, at)) }
                    @for question in Question::of(group) { (fields.question(question, Some(at))) }
                    button class="button less" name="without" value=(format!("{}.{at}", group.path())) {
                        (texts.take_away)
                    }
                }
            }
            details class="entry" open[fields.refused.iter().any(|own| own.blank.entry == Some(there + 1))] {
                summary { (texts.add) }
                @for question in Question::of(group) { (fields.question(question, Some(there + 1))) }
                button class="button less" name="more" value="yes" { (texts.keep_and_add) }
            }
        }
    }
}

/// In what lengths and weights are typed.
fn units(house: &House, draft: &Draft, back: &str) -> Markup {
    let texts = &house.language().page().fields;
    let chosen = house.typed_in(draft);
    html! {
        form class="units" method="post" action="/unit" {
            input type="hidden" name="back" value=(back);
            span id="unit-label" { (texts.i_measure_in) }
            span class="row" role="group" aria-labelledby="unit-label" {
                @for (unit, word) in TypedLength::WORDS {
                    button class="toggle" name="lengths" value=(word) aria-pressed=(if chosen.lengths == unit { "true" } else { "false" }) { (word) }
                }
                @for (pounds, word) in [(false, "kg"), (true, "lb")] {
                    button class="toggle" name="weights" value=(word) aria-pressed=(if chosen.pounds == pounds { "true" } else { "false" }) { (word) }
                }
            }
            details { summary { (texts.what_may_i_type) } p { (texts.may_type) } }
        }
    }
}

/// Takes the units in which numbers are typed from now on.
pub(crate) fn set_unit(house: &House, sent: &Sent) -> Response {
    let lengths = sent.get("lengths");
    if let Some((unit, _)) = TypedLength::WORDS.into_iter().find(|own| Some(own.1) == lengths) {
        house.type_lengths_in(unit);
    }
    if let Some(word) = sent.get("weights") {
        house.type_weights_in(word == "lb");
    }
    let back = sent.or_nothing("back");
    // Only to a page of ours.
    let back = if back.starts_with("/c/") { back } else { "/" };
    Redirect::to(back).into_response()
}

fn summary(house: &House, refused: &[Said]) -> Markup {
    let language = house.language();
    let texts = &language.page().fields;
    html! {
        @if !refused.is_empty() {
            div class="box heavy" role="alert" tabindex="-1" id="summary" {
                h2 { (language.need_another_look(refused.len())) }
                p { (texts.still_there) }
                ul {
                    @for own in refused {
                        li { a href=(format!("#{}", id_of(&own.blank.key()))) {
                            (capital(&language.label_on_form(own.blank.question)))
                        } ": " (own.message) }
                    }
                }
            }
        }
    }
}

fn buttons(place: &Place<'_>, at: usize) -> Markup {
    let texts = &place.house.language().page().fields;
    let pages = place.step.pages();
    let back = match at.checked_sub(1) {
        Some(before) => Some(place.page(pages[before].word)),
        None => Step::ALL
            .iter()
            .position(|own| *own == place.step)
            .and_then(|own| own.checked_sub(1))
            .map(|own| place.to(Step::ALL[own])),
    };
    html! {
        div class="row buttons" {
            button class="button" { (texts.next) }
            @if let Some(back) = back { a class="button plain" href=(back) { (texts.back) } }
        }
    }
}

/// Takes the answers of a page: what can be written is written, at once.
pub(crate) fn take(place: &Place<'_>) -> Result<Response, Failed> {
    let (at, page) = page_of(place)?;
    let (house, ask) = (place.house, place.ask);
    let draft = place.draft()?;
    if let Some(entry) = ask.sent.get("without") {
        return without(place, &draft, entry);
    }
    let Taken { draft: after, mut refused, left_out } =
        taken(house.language(), &draft, &ask.sent, house.typed_in(&draft));
    if let Err(error) = draft.keep(house.shelf(), &after) {
        return not_kept(place, &draft, error);
    }
    if ask.fragment {
        // Whoever goes on to the next page has seen it, or changed the answer that it goes with.
        refused.extend(left_out);
        let kept = Kept { page, before: &draft, after: &after, refused: &refused };
        return Ok(kept_part(house, ask, &kept));
    }
    if !refused.is_empty() {
        return show(place, &after, &refused);
    }
    if ask.sent.get("more").is_some() || says_which_stands(&ask.sent) {
        return Ok(lead(ask, &place.page(page.word)));
    }
    let pages = place.step.pages();
    let to = match pages.get(at + 1) {
        Some(next) => place.page(next.word),
        None => place.step.next().map_or_else(|| place.to(place.step), |next| place.to(next)),
    };
    Ok(lead(ask, &to))
}

/// What is said where an answer could not be kept: under the box that was left, with what was typed,
/// and nothing taken for seen that was not.
fn not_kept(place: &Place<'_>, draft: &Draft, error: WorkError) -> Result<Response, Failed> {
    let (house, ask) = (place.house, place.ask);
    let blank = ask.trigger.as_deref().and_then(Blank::from_key).filter(|_| ask.fragment);
    let Some(blank) = blank else { return Err(error.into()) };
    let key = blank.key();
    let trouble = house.language().trouble(&error.what);
    let said = Said {
        blank,
        typed: ask.sent.or_nothing(&key).to_owned(),
        seen: ask.sent.get(&format!("was:{key}")).map(str::to_owned),
        is_overtaken: false,
        message: whole(&trouble.message, trouble.hint.as_deref()),
    };
    let (_, page) = page_of(place)?;
    let kept = Kept { page, before: draft, after: draft, refused: &[said] };
    Ok(kept_part(house, ask, &kept))
}

/// A page of which one answer was changed.
struct Kept<'a> {
    page: &'a Page,
    before: &'a Draft,
    after: &'a Draft,
    refused: &'a [Said],
}

/// What is said under the box that was changed, and under others where it makes a difference.
fn kept_part(house: &House, ask: &Ask, kept: &Kept<'_>) -> Response {
    let blank = ask.trigger.as_deref().and_then(Blank::from_key);
    let (language, typed_in, refused) =
        (house.language(), house.typed_in(kept.after), kept.refused);
    let said = [kept.before, kept.after].map(|draft| draft.remarks(house.today()));
    let of = |draft, remarks| Fields { language, draft, refused, typed_in, remarks, keep_at: "" };
    // What is refused stands under its box already: only what the file has makes a difference.
    let (before, after) = (of(kept.before, &said[0]), of(kept.after, &said[1]));
    let texts = &language.page().fields;
    part(html! {
        @if let Some(blank) = blank { (after.about(&blank)) }
        @if refused.iter().all(|own| blank.is_some_and(|blank| own.blank != blank)) { p class="kept" role="status" { (texts.kept) } }
        @for other in blank.iter().flat_map(|own| beside_it(kept.page, own)) {
            @let (was, now) = (before.about(&other), after.about(&other));
            // What was left out before, beside another answer, is known to the page alone.
            @let may_be_left_out = other.question.row().need.goes_with().is_some();
            @if was.0 != now.0 || may_be_left_out {
                div class="about" id=(about_id(&other.key())) aria-live="polite" hx-swap-oob="true" { (now) }
            }
        }
    })
}

/// The other blanks of a group on a page, which an answer may make needed or not.
fn beside_it(page: &Page, own: &Blank) -> Vec<Blank> {
    let group = own.question.row().group;
    let questions = page.parts.iter().flat_map(Part::questions);
    let alike = questions.filter(|other| other.row().group == group);
    alike.flat_map(|other| Blank::all(other, own.entry)).filter(|other| other != own).collect()
}

/// Takes an entry of a list away.
fn without(place: &Place<'_>, draft: &Draft, entry: &str) -> Result<Response, Failed> {
    let (list, at) = entry.rsplit_once('.').ok_or(Failed::NotThere)?;
    let group = Group::from_path(list).ok_or(Failed::NotThere)?;
    let at = at.parse::<usize>().map_err(|_| Failed::NotThere)?;
    let after = draft.without_entry(group, at).map_err(|error| {
        WorkError::asked(case::Trouble::Edit { file: draft.name.clone(), error })
    })?;
    draft.keep(place.house.shelf(), &after)?;
    let (_, page) = page_of(place)?;
    Ok(lead(place.ask, &place.page(page.word)))
}

/// What is missing or wrong in a file: of a blank, its name and the way to it.
fn lacking(place: &Place<'_>, remark: &Remark) -> Markup {
    let language = place.house.language();
    let Some((question, side)) = blank_of(remark) else {
        let said = language.about_text(&remark.finding);
        return html! { (whole(&said.message, None)) };
    };
    let (shared, label) = (language.shared(), capital(&language.label_on_form(question)));
    let heading = capital(language.group_heading(question.row().group));
    let words = match side {
        None => label,
        Some(Side::Left) => format!("{label}: {}", shared.clients_left_short),
        Some(Side::Right) => format!("{label}: {}", shared.clients_right_short),
    };
    let to = match Step::asking(question) {
        Some((step, Some(page))) => format!("{}/{}", place.to(step), page.word),
        Some((step, None)) => place.to(step),
        None => return html! { (heading) ": " (words) },
    };
    html! { a href=(to) { (heading) ": " (words) } }
}

/// What is missing before a step that needs the whole file. What is written wrongly stands above it,
/// and what this very step asks is answered here once the rest is there.
pub(crate) fn missing(place: &Place<'_>, draft: &Draft) -> Response {
    let house = place.house;
    let language = house.language();
    let texts = &language.page().fields;
    let wrong = only_by_editor(draft).map(|own| own.remarks).unwrap_or_default();
    let is_elsewhere = |remark: &Remark| match blank_of(remark) {
        Some((question, _)) => Step::asking(question).is_none_or(|(step, _)| step != place.step),
        None => !wrong.contains(remark),
    };
    let missing: Vec<Remark> = draft.missing().into_iter().filter(is_elsewhere).collect();
    let body = html! {
        @if !missing.is_empty() {
            div class="box heavy" {
                h2 { (language.still_missing(missing.len())) }
                ul {
                    @for remark in &missing { li { (lacking(place, remark)) } }
                }
                p { (texts.complete_first) }
                div class="row" {
                    a class="button" href=(place.to(Step::Measure)) { (step_name(house, Step::Measure)) }
                    @if place.step != Step::Cushion {
                        a class="button less" href=(place.to(Step::Cushion)) { (step_name(house, Step::Cushion)) }
                    }
                }
            }
        }
    };
    let of = OfClient { address: &place.ask.address, draft, step: place.step, standing: None };
    Screen { title: step_name(house, place.step), of: Some(of), body }.answer(house)
}
