//! A layout while it is written: drawn anew as its file changes, with remarks beside its lines.

use axum::response::Response;
use casework::{DrawnLayout, WrittenLayout};
use cushion::Size;
use maud::{Markup, PreEscaped, html};
use sheets::{Picture, View};

use super::part;
use crate::errors::{Failed, numbered_remarks};
use crate::following;
use crate::form::Sent;
use crate::frame::Screen;
use crate::house::House;

/// Shows a layout at a size, or only what changes of it.
pub(crate) fn show(
    house: &House,
    address: &str,
    sent: &Sent,
    only_part: bool,
) -> Result<Response, Failed> {
    let name = house.name_at(address).ok_or(Failed::NotThere)?;
    let texts = &house.language().page().layout;
    // Before it is read: what is written meanwhile is seen as a change.
    let seen = following::mark(house, &name).unwrap_or_default();
    let own = casework::written_layout(house.surroundings(), &name, sent.number("at").unwrap_or(0));
    let own = own?;
    let drawn = drawn(house, &own);
    if only_part {
        return Ok(part(drawn));
    }
    let last = own.sizes.len().saturating_sub(1);
    let body = html! {
        p class="lead" { (texts.lead) }
        form id="size" method="get" action=(format!("/layout/{address}")) {
            label for="at" { (texts.size) }
            input id="at" name="at" type="range" min="0" max=(last) value=(own.at)
                hx-get=(format!("/layout/{address}")) hx-trigger="input changed delay:60ms" hx-target="#drawn";
            noscript { button class="button less" { (texts.show) } }
        }
        div id="drawn" class="panes" data-follow=(format!("/layout/{address}/changed")) data-seen=(seen)
            hx-get=(format!("/layout/{address}")) hx-include="#at" hx-trigger="saved" { (drawn) }
        p { a class="button less" href="/" { (house.language().page().trouble.to_all_clients) } }
    };
    Ok(Screen { title: texts.title, of: None, body }.answer(house))
}

fn drawn(house: &House, own: &WrittenLayout) -> Markup {
    let language = house.language();
    let size = own.sizes.get(own.at).map(|size: &Size| language.size(*size));
    let title = own.title.as_deref().map(|title| language.text_of_layout(title));
    html! {
        @if let Some(picture) = picture(house, own) {
            div class="drawing whole" { (PreEscaped(sheets::fragment(&picture))) }
        }
        section class="stack" {
            h2 { (own.file.path) @if let Some(title) = title { ": " (title) } }
            @if let Some(size) = size { p { b { (size) } } }
            @if own.file.remarks.is_empty() { p { (language.page().layout.no_remarks) } }
            @else { (numbered_remarks(house, &own.file)) }
        }
    }
}

/// The layout from above, or what can be drawn of it.
fn picture(house: &House, own: &WrittenLayout) -> Option<Picture> {
    let language = house.language();
    match own.drawn.as_ref()? {
        DrawnLayout::Whole(pattern) => {
            let number = |ix: cushion::CompartmentIx| (pattern[ix].number.to_string(), None);
            sheets::pattern_picture(language, pattern, View::Above, number).ok()
        }
        DrawnLayout::Refused(sketch, numbers) => {
            sheets::faulty_picture(language, sketch, numbers).ok()
        }
    }
}
