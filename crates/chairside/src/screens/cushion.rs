//! Which cushion: all layouts and sizes, which suit, and why others do not.

use axum::response::Response;
use case::question::{Group, Question};
use casework::{Blank, Draft, OpenCase, Sizing, Typed};
use cushion::Size;
use maud::{Markup, html};
use words::Language;

use super::{Place, lead};
use crate::answers::{Said, says_which_stands};
use crate::errors::{Failed, remarks, said};
use crate::fields::Fields;
use crate::frame::{OfClient, Screen};
use crate::screens::questions;
use crate::steps::Step;

/// Shows all layouts with their sizes.
pub(crate) fn show(place: &Place<'_>, draft: &Draft) -> Result<Response, Failed> {
    screen(place, draft, &[])
}

fn screen(place: &Place<'_>, draft: &Draft, refused: &[Said]) -> Result<Response, Failed> {
    let house = place.house;
    let texts = &house.language().page().cushion;
    let (case, not_had) = match house.with_any_cushion(draft) {
        Ok(case) => (case, None),
        Err(_) if draft.client().is_none() => return Ok(questions::missing(place, draft)),
        // Here another one is chosen.
        Err(error) => match house.with_another_cushion(draft) {
            Ok(case) => (case, Some(error)),
            Err(_) => return Err(error.into()),
        },
    };
    let body = html! {
        @if let Some(error) = &not_had { (said(house, error)) }
        p class="lead" { (texts.lead) }
        @if let Some(lost) = casework::thigh_not_counted(&case.client.value) {
            p { (house.language().depth_goes_by(lost.other())) }
        }
        form method="post" action=(place.to(Step::Cushion)) class="stack" novalidate {
            (layouts(place, draft, &case))
            @if not_had.is_none() { (beside(place, draft, &case)) }
            section class="part" {
                h2 { (texts.also) }
                (more(place, draft, refused))
            }
            p class="soft" { (house.language().lines().sizing_defers) }
            div class="row buttons" { button class="button" { (texts.take) } }
        }
    };
    let of = OfClient { address: &place.ask.address, draft, step: Step::Cushion, standing: None };
    Ok(Screen { title: texts.title, of: Some(of), body }.answer(house))
}

fn more(place: &Place<'_>, draft: &Draft, refused: &[Said]) -> Markup {
    let house = place.house;
    let keep_at = place.page("nothing");
    let asked = draft.remarks(house.today());
    let fields = Fields {
        language: house.language(),
        draft,
        refused,
        typed_in: house.typed_in(draft),
        remarks: &asked,
        keep_at: &keep_at,
    };
    html! {
        @for question in [Question::SpareCells, Question::SerialOfCushion, Question::CellOfCushion] {
            (fields.question(question, None))
        }
    }
}

/// Each layout with its sizes, and what would have to be made where none suits.
fn layouts(place: &Place<'_>, draft: &Draft, case: &OpenCase) -> Markup {
    let house = place.house;
    let language = house.language().with_lengths_in(draft.lengths());
    let files = casework::layout_files(house.surroundings());
    let all = case.all_sizings(house.surroundings(), &files);
    html! {
        @for own in &all.layouts {
            fieldset class="layout box" {
                legend { (own.name) }
                @if let Some(about) = &own.about { (about_layout(language, about)) }
                @if let Some(file) = &own.not_drawn { div class="box heavy" { (remarks(house, file)) } }
                @match &own.sizing {
                    Err(error) => { (said(house, error)) }
                    Ok(sizing) => { (sizes(language, draft, &own.name, sizing)) }
                }
            }
        }
        @if let Some(to_make) = &all.to_make {
            div class="box heavy" {
                @match to_make {
                    Ok(own) => { p { (language.size_to_make(own)) } }
                    Err(whys) => { @for own in whys { p { (language.no_size_to_make(own)) } } }
                }
            }
        }
    }
}

/// For whom a layout is: of ours in the language of the page, of others in whatever language they
/// say it.
fn about_layout(language: &dyn Language, about: &str) -> Markup {
    html! { p class="hint" { (language.text_of_layout(about)) } }
}

/// The sizes of a layout: what suits, what else does, and why the rest does not.
fn sizes(language: &dyn Language, draft: &Draft, name: &str, sizing: &Sizing) -> Markup {
    let texts = &language.page().cushion;
    let layout = draft.answer(&Blank::of(Question::LayoutOfCushion));
    let size = draft.answer(&Blank::of(Question::SizeOfCushion));
    let is_chosen =
        |own: Size| layout.as_deref() == Some(name) && size.as_deref() == Some(&own.to_string());
    let one = |own: Size, said: Markup| {
        html! {
            label class="answer" {
                input type="radio" name="choice" value=(value(name, own)) checked[is_chosen(own)];
                span { (said) }
            }
        }
    };
    html! {
        @if let Some(best) = sizing.chosen {
            (one(best, html! { b { (language.size(best)) ", " (texts.suits_best) } small { (language.size_leaves(&sizing.margins)) } }))
        } @else if !sizing.why_not.is_empty() { p { b { (texts.none_suits) } } }
        @for other in &sizing.suit_too {
            (one(*other, html! { (language.size(*other)) ", " (texts.suits_too) }))
        }
        @if !sizing.why_not.is_empty() {
            details open[sizing.why_not.iter().any(|other| is_chosen(other.0))] {
                summary { (texts.why_not) }
                @for (other, misfits) in &sizing.why_not {
                    (one(*other, html! { (language.size_left(*other, misfits)) }))
                }
            }
        }
    }
}

fn value(name: &str, size: Size) -> String {
    format!("{size} {name}")
}

/// The cushion before this one, and this one; and what the height means.
fn beside(place: &Place<'_>, draft: &Draft, case: &OpenCase) -> Markup {
    let language = place.house.language().with_lengths_in(draft.lengths());
    let texts = &language.page().cushion;
    let chosen = draft.answer(&Blank::of(Question::LayoutOfCushion)).is_some();
    let here = case.cells_here();
    let old = case.other.as_ref().map(|other| language.beside_the_other(other, here));
    html! {
        @if let Some(lines) = &old {
            section class="box" {
                h2 { (texts.another_cushion) }
                @for line in lines { p { (line.trim()) } }
                p class="soft" { (texts.what_is_kept) }
            }
        }
        @if chosen {
            section class="part" {
                h2 { (texts.height_means) }
                ul { @for own in case.height_effects() { li { (language.height_effect(&own)) } } }
            }
        }
    }
}

/// Takes the cushion that was chosen.
pub(crate) fn take(place: &Place<'_>) -> Result<Response, Failed> {
    let house = place.house;
    let draft = place.draft()?;
    let sent = &place.ask.sent;
    if place.ask.page.as_deref() == Some("nothing") {
        return Ok(super::part(html! {}));
    }
    let mut typed = crate::answers::typed(sent);
    if let Some((size, layout)) = sent.get("choice").and_then(|own| own.split_once(' ')) {
        for (question, words) in
            [(Question::LayoutOfCushion, layout), (Question::SizeOfCushion, size)]
        {
            let blank = Blank::of(question);
            typed.push(Typed { blank, words: words.to_owned(), seen: None });
        }
    }
    typed.retain(|own| own.blank.question.row().group == Group::Cushion);
    let answered = draft.answered(&typed, house.typed_in(&draft));
    draft.keep(house.shelf(), &answered.draft)?;
    if says_which_stands(sent) {
        return Ok(lead(place.ask, &place.to(Step::Cushion)));
    }
    if answered.refused.is_empty() && answered.draft.client().is_some() {
        return Ok(lead(place.ask, &place.to(Step::Plan)));
    }
    let said = crate::answers::taken(house.language(), &draft, sent, house.typed_in(&draft));
    screen(place, &answered.draft, &said.refused)
}
