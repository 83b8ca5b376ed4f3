//! The screens, each a file. Showing one changes nothing.

pub(crate) mod beside;
pub(crate) mod checks;
pub(crate) mod clients;
pub(crate) mod cushion;
pub(crate) mod fill;
mod followed;
mod found;
pub(crate) mod goals;
pub(crate) mod layout;
mod lost;
pub(crate) mod moves;
pub(crate) mod papers;
pub(crate) mod plan;
pub(crate) mod plan_parts;
pub(crate) mod questions;
pub(crate) mod review;
pub(crate) mod sign_off;

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use axum::http::{HeaderValue, StatusCode};
use axum::response::{Html, IntoResponse as _, Redirect, Response};
use case::{Standing, State};
use casework::{Draft, OpenCase, Recorder};
use maud::{Markup, html};

use crate::errors::Failed;
use crate::fields::capital;
use crate::form::Sent;
use crate::house::House;
use crate::steps::Step;

/// What is asked of a screen of a client.
pub(crate) struct Ask {
    pub(crate) address: String,
    pub(crate) step: String,
    pub(crate) page: Option<String>,
    pub(crate) sent: Sent,
    /// Whether a part of a screen is asked for.
    pub(crate) fragment: bool,
    /// The name of the control that asks.
    pub(crate) trigger: Option<String>,
    /// Whether whoever asked has left, and nobody waits for the answer.
    pub(crate) left: Arc<AtomicBool>,
}

impl Ask {
    /// Whether nobody waits for the answer any more.
    pub(crate) fn is_left(&self) -> bool {
        self.left.load(Ordering::SeqCst)
    }
}

/// A client's file, on the way to a screen of a step.
pub(crate) struct Place<'a> {
    pub(crate) house: &'a House,
    pub(crate) ask: &'a Ask,
    pub(crate) step: Step,
    pub(crate) name: String,
}

impl<'a> Place<'a> {
    fn of(house: &'a House, ask: &'a Ask) -> Result<Self, Failed> {
        let name = house.name_at(&ask.address).ok_or(Failed::NotThere)?;
        let step = Step::of(&ask.step).ok_or(Failed::NotThere)?;
        Ok(Self { house, ask, step, name })
    }

    /// The file, right or not yet.
    pub(crate) fn draft(&self) -> Result<Draft, Failed> {
        Ok(Draft::open(self.house.surroundings(), &self.name)?)
    }

    /// The case.
    pub(crate) fn open(&self) -> Result<OpenCase, Failed> {
        Ok(self.house.open(&self.name)?)
    }

    /// The address of a step of this client.
    pub(crate) fn to(&self, step: Step) -> String {
        format!("/c/{}/{}", self.ask.address, step.word())
    }

    /// The address of a page of this step.
    pub(crate) fn page(&self, page: &str) -> String {
        format!("{}/{page}", self.to(self.step))
    }

    /// Who records, as the form says.
    pub(crate) fn recorder<'b>(&'b self, by: &'b str, because: Option<&'b str>) -> Recorder<'b> {
        self.house.set_by(by);
        Recorder { by, because, on: self.house.today(), language: self.house.language() }
    }

    /// Whether the record has other entries than the form was shown with.
    pub(crate) fn has_grown(&self, entries: usize) -> bool {
        self.ask.sent.number::<usize>("entries").is_some_and(|seen| seen != entries)
    }
}

/// Shows a screen.
pub(crate) fn show(house: &House, ask: &Ask) -> Result<Response, Failed> {
    let place = Place::of(house, ask)?;
    let draft = place.draft()?;
    // What needs a whole file leads to what is missing in it.
    let needs_all =
        !matches!(place.step, Step::Goals | Step::Cushion) && place.step.pages().is_empty();
    if needs_all && draft.client().is_none() {
        return Ok(questions::missing(&place, &draft));
    }
    match place.step {
        Step::Goals => goals::show(&place, &draft),
        Step::Cushion => cushion::show(&place, &draft),
        Step::Plan => plan::show(&place, &draft),
        Step::Fill => fill::show(&place, &draft),
        Step::Checks => checks::show(&place, &draft),
        Step::Moves => moves::show(&place, &draft),
        Step::SignOff => sign_off::show(&place, &draft),
        Step::Papers => papers::show(&place, &draft),
        Step::Review => review::show(&place, &draft),
        _ => questions::show(&place, &draft, &[]),
    }
}

/// Takes what a form sends.
pub(crate) fn take(house: &House, ask: &Ask) -> Result<Response, Failed> {
    let place = Place::of(house, ask)?;
    // Touches of plus and minus write nothing, and follow each other quickly.
    let is_touch = place.step == Step::Plan && ask.page.as_deref() == Some("touch");
    let _one = (!is_touch).then(|| house.one_at_a_time());
    match place.step {
        Step::Goals => goals::take(&place),
        Step::Cushion => cushion::take(&place),
        Step::Plan => plan::take(&place),
        Step::Fill => fill::take(&place),
        Step::Checks => checks::take(&place),
        Step::Moves => moves::take(&place),
        Step::SignOff => sign_off::take(&place),
        Step::Papers => papers::take(&place),
        Step::Review => review::take(&place),
        _ => questions::take(&place),
    }
}

/// Leads to another page; a part of a screen leads its whole window there.
pub(crate) fn lead(ask: &Ask, to: &str) -> Response {
    if !ask.fragment {
        return Redirect::to(to).into_response();
    }
    let mut response = StatusCode::OK.into_response();
    if let Ok(to) = HeaderValue::from_str(to) {
        response.headers_mut().insert("hx-redirect", to);
    }
    response
}

/// Where cells are mended that nobody may sit on: at the moves that are left, or with another plan; none
/// where nothing speaks against them.
pub(crate) fn mends(
    place: &Place<'_>,
    case: &OpenCase,
    standing: Standing<'_>,
) -> Option<(String, &'static str)> {
    let page = place.house.language().page();
    match standing.state {
        State::NotSafe(_) | State::Failed(_) if case.proposed_moves().is_empty() => {
            Some((place.to(Step::Plan), page.review.plan_again))
        }
        State::NotSafe(_) | State::Failed(_) => Some((place.to(Step::Moves), page.checks.to_moves)),
        _ => None,
    }
}

/// That nobody sits on the cells as they are, and why; nothing where nothing speaks against them. `then`
/// leads on.
pub(crate) fn nobody_sits(place: &Place<'_>, standing: Standing<'_>, then: &Markup) -> Markup {
    let language = place.house.language();
    html! {
        @if let State::NotSafe(_) | State::Failed(_) = standing.state {
            div class="box heavy" {
                p { b { (language.standing(standing)) } }
                p { (capital(language.lines().nobody_sits)) "." }
                (then)
            }
        }
    }
}

/// A part of a screen.
pub(crate) fn part(markup: Markup) -> Response {
    Html(markup.into_string()).into_response()
}

/// The box for who signs, with who signed last; a page has one for each of its forms, by a word.
pub(crate) fn signed_by(place: &Place<'_>, form: &str) -> Markup {
    signed_as(place, form, &place.house.by())
}

/// The same, with somebody in it.
fn signed_as(place: &Place<'_>, form: &str, by: &str) -> Markup {
    let texts = &place.house.language().page().fields;
    let id = format!("by-{form}");
    html! {
        div class="field" {
            label for=(id) { (texts.by) }
            p class="hint" id=(format!("{id}-hint")) { (texts.by_hint) }
            input id=(id) name="by" value=(by) required maxlength="80"
                autocomplete="off" aria-describedby=(format!("{id}-hint"));
        }
    }
}

/// A box for the cells that were counted in each compartment, and in the bag.
pub(crate) fn count_boxes(place: &Place<'_>, case: &OpenCase) -> Markup {
    let language = place.house.language();
    html! {
        div class="abreast" {
            @for own in case.pattern.compartments() {
                @let id = format!("counted.{}", own.number);
                div class="field" {
                    label for=(id) { span class="disc" { (own.number) } " " (language.compartment(own)) }
                    input class="narrow" id=(id) name=(id) inputmode="numeric" autocomplete="off" value=(place.ask.sent.or_nothing(&id));
                }
            }
            div class="field" {
                label for="counted.spare" { (language.page().moves.in_bag) }
                input class="narrow" id="counted.spare" name="counted.spare" inputmode="numeric" autocomplete="off" value=(place.ask.sent.or_nothing("counted.spare"));
            }
        }
    }
}

/// What is said where the record has grown since the form was shown: nothing was recorded.
pub(crate) fn grown(place: &Place<'_>, entries: usize) -> Markup {
    html! {
        div class="box heavy" role="alert" {
            p { (place.house.language().record_has_grown(entries)) }
        }
    }
}
