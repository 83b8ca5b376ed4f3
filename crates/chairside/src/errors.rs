//! What went wrong, as a screen that says what to do.

use axum::http::{HeaderValue, StatusCode};
use axum::response::{Html, IntoResponse as _, Response};
use casework::{FileRemarks, Whose, WorkError};
use maud::{Markup, html};

use crate::answers::whole;
use crate::frame::{Screen, step_name};
use crate::house::House;
use crate::steps::Step;

/// Why a screen is not shown.
#[derive(Debug)]
pub(crate) enum Failed {
    /// There is nothing at that address.
    NotThere,
    /// The program is at fault.
    Ours,
    /// It is not to be shown before the sign-off.
    NotYet,
    /// The work ended early.
    Work(Box<WorkError>),
    /// The same, within a part of a screen.
    Part(Box<WorkError>),
}

impl From<WorkError> for Failed {
    fn from(error: WorkError) -> Self {
        Self::Work(Box::new(error))
    }
}

impl Failed {
    /// As told in a part of a screen.
    pub(crate) fn in_part(self) -> Self {
        match self {
            Self::Work(error) => Self::Part(error),
            other => other,
        }
    }
}

/// The answer to a request that failed.
pub(crate) fn told(house: &House, failed: Failed) -> Response {
    let texts = &house.language().page().trouble;
    match failed {
        Failed::NotThere => {
            plain(house, StatusCode::NOT_FOUND, texts.title_not_there, texts.not_there)
        }
        Failed::Ours => {
            plain(house, StatusCode::INTERNAL_SERVER_ERROR, texts.title_ours, texts.ours)
        }
        Failed::NotYet => {
            let papers = &house.language().page().papers;
            plain(house, StatusCode::FORBIDDEN, papers.title, papers.not_before_sign_off)
        }
        Failed::Work(error) => of_work(house, &error, None),
        Failed::Part(error) => {
            let mut response = Html(said(house, &error).into_string()).into_response();
            response.headers_mut().insert("hx-reswap", HeaderValue::from_static("innerHTML"));
            response
        }
    }
}

/// Why work ended early, and the ways on; of a client's screen the steps that may mend it, where the
/// address is that of the client's file.
pub(crate) fn of_work(house: &House, error: &WorkError, address: Option<&str>) -> Response {
    let texts = &house.language().page().trouble;
    let body = html! {
        (said(house, error))
        div class="row buttons" {
            @if let Some(address) = address {
                @for step in [Step::Cushion, Step::Measure, Step::Review] {
                    a class="button less" href=(format!("/c/{address}/{}", step.word())) { (step_name(house, step)) }
                }
            }
            a class="button" href="/" { (texts.to_all_clients) }
        }
    };
    Screen { title: title(house, error), of: None, body }.answer_with(house, status(error))
}

/// A sentence, and the way back.
fn plain(house: &House, status: StatusCode, title: &str, words: &str) -> Response {
    let back = house.language().page().trouble.to_all_clients;
    let body = html! {
        div class="box heavy" role="alert" { p { (words) } }
        p { a class="button" href="/" { (back) } }
    };
    Screen { title, of: None, body }.answer_with(house, status)
}

fn title(house: &House, error: &WorkError) -> &'static str {
    let texts = &house.language().page().trouble;
    match error.whose {
        Whose::Clinician => texts.title_not_safe,
        Whose::Keeper => texts.title_not_kept,
        _ => texts.title,
    }
}

fn status(error: &WorkError) -> StatusCode {
    match error.whose {
        Whose::Keeper => StatusCode::CONFLICT,
        Whose::Ours => StatusCode::INTERNAL_SERVER_ERROR,
        _ => StatusCode::UNPROCESSABLE_ENTITY,
    }
}

/// An error in words, with the places that it points at.
pub(crate) fn said(house: &House, error: &WorkError) -> Markup {
    let language = house.language();
    let said = language.trouble(&error.what);
    html! {
        div class="box heavy" role="alert" {
            p { b { (whole(&said.message, None)) } }
            @if let Some(hint) = &said.hint { p { (whole(hint, None)) } }
            @if let Some(file) = &error.file { (remarks(house, file)) }
        }
    }
}

/// The remarks on a text, each with its line.
pub(crate) fn remarks(house: &House, file: &FileRemarks) -> Markup {
    html! { ul class="remarks" { (each_remark(house, file)) } }
}

/// The same with the number of each, by which a drawing calls it.
pub(crate) fn numbered_remarks(house: &House, file: &FileRemarks) -> Markup {
    html! { ol class="remarks" { (each_remark(house, file)) } }
}

fn each_remark(house: &House, file: &FileRemarks) -> Markup {
    let language = house.language();
    html! {
        @for remark in &file.remarks {
            @let said = language.about_text(&remark.finding);
            @let (line, words) = file.line_of(remark);
            li {
                b { (language.line_of_file(line)) } " "
                (whole(&said.message, said.hint.as_deref()))
                @if !words.is_empty() { code { (words) } }
            }
        }
    }
}
