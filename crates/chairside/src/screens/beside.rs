//! What stands beside questions: how a measure is taken, and what an answer means.

use case::MeasuredAt;
use case::question::{Drawing, Group, Question};
use casework::Draft;
use maud::{Markup, PreEscaped, html};

use crate::house::House;
use crate::steps::{Page, Part};

/// How a measure is taken, beside the first question of a page that has this drawing; nothing beside
/// others, and where several answers make one drawing, which stands beside them all.
pub(crate) fn drawing(house: &House, page: &Page, question: Question) -> Option<Markup> {
    let own = question.row().drawing.filter(|own| *own != Drawing::Obliquity)?;
    let mut all = page.parts.iter().flat_map(Part::questions);
    let first = all.find(|other| other.row().drawing == Some(own));
    // A drawing that cannot be set leaves its words, which say the same.
    let picture = sheets::measure_picture(house.language(), own).ok();
    let picture = picture.filter(|_| first == Some(question))?;
    Some(html! { figure class="drawing" { (PreEscaped(sheets::fragment(&picture))) } })
}

/// The pelvis as the answers of a page say that it is, where the page asks for that.
pub(crate) fn pelvis(house: &House, draft: &Draft, page: &Page) -> Markup {
    let asks = page.parts.iter().flat_map(Part::questions);
    let asks = asks.into_iter().any(|own| own.row().drawing == Some(Drawing::Obliquity));
    let oblique = draft.client().and_then(|own| own.posture.obliquity);
    let (lower, by) = (oblique.map(|own| own.lower), oblique.map(|own| own.by));
    let picture = asks.then(|| sheets::pelvis_picture(house.language(), lower, by).ok()).flatten();
    html! {
        @if let Some(own) = &picture {
            div class="drawings" { figure { (PreEscaped(sheets::fragment(own))) } }
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
