//! What stands beside questions: how a measure is taken, and what an answer means.

use case::MeasuredAt;
use case::question::{Drawing, Group};
use casework::Draft;
use maud::{Markup, PreEscaped, html};

use crate::house::House;
use crate::steps::{Page, Part};

/// A drawing of each measure of a page that has one, once.
pub(crate) fn drawings(house: &House, draft: &Draft, page: &Page) -> Markup {
    let language = house.language();
    let mut shown: Vec<Drawing> = Vec::new();
    for question in page.parts.iter().flat_map(Part::questions) {
        if let Some(own) = question.row().drawing
            && !shown.contains(&own)
        {
            shown.push(own);
        }
    }
    let oblique = draft.client().and_then(|own| own.posture.obliquity);
    let mut pictures: Vec<sheets::Picture> = Vec::new();
    for own in shown {
        let made = match own {
            Drawing::Obliquity => sheets::pelvis_picture(
                language,
                oblique.map(|own| own.lower),
                oblique.map(|own| own.by),
            ),
            own => sheets::measure_picture(language, own),
        };
        // A drawing that cannot be set leaves its words, which say the same.
        pictures.extend(made.ok());
    }
    html! {
        @if !pictures.is_empty() {
            div class="drawings" {
                @for own in &pictures { figure { (PreEscaped(sheets::fragment(own))) } }
            }
        }
    }
}

/// What the answers of a page mean.
pub(crate) fn means(house: &House, draft: &Draft, page: &Page) -> Markup {
    let asks = page.parts.iter().any(|own| own.group() == Group::Obliquity);
    let oblique = draft.client().and_then(|own| own.posture.obliquity).filter(|_| asks);
    let spacing = draft.client().and_then(|own| own.measures.seat_bone_spacing);
    html! {
        @if let Some(own) = oblique {
            section class="box pale" {
                h2 { (house.language().page().fields.what_it_means) }
                @let ends = casework::at_seat_bones(own.by, own.at, spacing);
                p { (house.language().obliquity_means(own.lower, ends)) }
                @if own.at == MeasuredAt::Asis { p { (house.language().page().fields.feel_seat_bones) } }
            }
        }
    }
}
