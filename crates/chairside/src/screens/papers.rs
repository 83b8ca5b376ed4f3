//! Papers: each to be looked at, printed and kept; the take-home sheet only after the sign-off.

use axum::http::header::{CONTENT_DISPOSITION, CONTENT_SECURITY_POLICY, CONTENT_TYPE};
use axum::response::{IntoResponse as _, Response};
use case::State;
use casework::{Change, Draft, OpenCase};
use maud::{Markup, html};

use super::{Place, part};
use crate::errors::{Failed, said};
use crate::frame::{OfClient, Screen};
use crate::gate::POLICY_OF_DRAWINGS;
use crate::papers::Made;
use crate::steps::Step;

/// Papers that go home, and are handed over only where the fitting holds.
const GO_HOME: [&str; 2] = ["take-home", "wash-day"];
/// The page of the papers themselves.
const LIST: &str = "list";
/// The folder of papers, beside the clients' files.
pub(super) const FOLDER: &str = "papers";

/// Shows the papers, or one of their files.
pub(crate) fn show(place: &Place<'_>, draft: &Draft) -> Result<Response, Failed> {
    match place.ask.page.as_deref() {
        None => later(place, draft),
        Some(LIST) if place.ask.fragment => {
            let case = place.open().map_err(Failed::in_part)?;
            Ok(part(list(place, &case)))
        }
        Some(LIST) => screen(place, draft, None),
        Some(name) => file(place, name),
    }
}

/// Shows the screen at once; the papers, which take their time, follow.
fn later(place: &Place<'_>, draft: &Draft) -> Result<Response, Failed> {
    let texts = &place.house.language().page().papers;
    let case = place.open()?;
    let list = place.page(LIST);
    let body = html! {
        div hx-get=(list) hx-trigger="load" hx-target="this" hx-swap="outerHTML" {
            p class="soft" { (texts.making) }
            noscript { a class="button" href=(list) { (texts.title) } }
        }
    };
    Ok(framed(place, draft, &case, body))
}

/// Whether a file of this name goes home.
fn goes_home(name: &str) -> bool {
    GO_HOME.iter().any(|own| name.contains(own))
}

fn screen(place: &Place<'_>, draft: &Draft, told: Option<Markup>) -> Result<Response, Failed> {
    let case = place.open()?;
    let body = html! { (told.unwrap_or_default()) (list(place, &case)) };
    Ok(framed(place, draft, &case, body))
}

/// The papers, each to be looked at.
fn list(place: &Place<'_>, case: &OpenCase) -> Markup {
    let house = place.house;
    let language = house.language();
    let texts = &language.page().papers;
    let standing = case.standing(house.today());
    let held_back = match (standing.fitted(), standing.state) {
        (Some(_), _) => None,
        (None, State::Fitted(_)) => Some(texts.not_while_overdue),
        (None, _) => Some(texts.not_before_sign_off),
    };
    let made = house.papers.of(house, case, house.today());
    html! {
        @match &made {
            Err(error) => { (said(house, error)) }
            Ok(made) => {
                p class="lead" { (language.plan_in_short(&made.mark)) }
                @for own in &made.since { p class="asks" { (crate::fields::capital(&language.since_recorded(own))) "." } }
                @for own in &made.not_made { (said(house, own)) }
                (superseded(place, case, made))
                ul class="papers" { @for (key, title) in texts.names { (one(place, made, (key, title), held_back)) } }
                form method="post" action=(place.page("keep")) class="box" {
                    h2 { (texts.keep) }
                    p { (texts.keep_hint) }
                    button class="button less" { (texts.keep) }
                }
            }
        }
        div class="row buttons" { a class="button less" href=(place.to(Step::Review)) { (texts.to_review) } }
    }
}

fn framed(place: &Place<'_>, draft: &Draft, case: &OpenCase, body: Markup) -> Response {
    let house = place.house;
    let of = OfClient {
        address: &place.ask.address,
        draft,
        step: Step::Papers,
        standing: Some(case.standing(house.today())),
    };
    let title = house.language().page().papers.title;
    Screen { title, of: Some(of), body }.answer(house)
}

fn one(
    place: &Place<'_>,
    made: &Made,
    (key, title): (&str, &str),
    held_back: Option<&str>,
) -> Markup {
    let language = place.house.language();
    let texts = &language.page().papers;
    let of_paper = |ending: &str| {
        let ending = ending.to_owned();
        made.files.iter().enumerate().filter(move |own| {
            own.1.name.contains(&format!("-{key}")) && own.1.name.ends_with(&ending)
        })
    };
    let pages: Vec<usize> = of_paper(".svg").map(|own| own.0).collect();
    let pdf = of_paper(".pdf").map(|own| own.0).next();
    let held_back = held_back.filter(|_| goes_home(key));
    html! {
        @if let Some(pdf) = pdf {
            li {
                h2 { (title) }
                @if let Some(why) = held_back {
                    p class="box heavy" { (why) }
                    a class="button less" href=(place.to(Step::SignOff)) { (language.page().sign_off.title) }
                }
                @else {
                    div class="row" {
                        a class="button less" href=(place.page(&format!("{pdf}.pdf"))) target="_blank" rel="noopener" { (texts.open) span class="vh" { ": " (title) } }
                        a class="button less" href=(place.page(&format!("{pdf}.pdf"))) download { (texts.download) span class="vh" { ": " (title) } }
                    }
                    details {
                        summary { (texts.look) span class="vh" { ": " (title) } }
                        @for (at, page) in pages.iter().enumerate() {
                            img class="paper" loading="lazy" src=(place.page(&format!("{page}.svg"))) alt=(language.page_of_paper(title, at + 1, pages.len()));
                        }
                    }
                }
            }
        }
    }
}

/// Papers of other counts in the folder.
fn superseded(place: &Place<'_>, case: &OpenCase, made: &Made) -> Markup {
    let house = place.house;
    let of = (&case.client.value.code, &made.mark);
    let others = casework::other_papers(house.shelf(), FOLDER, of, house.language());
    html! {
        @if let Ok((others, _)) = others
            && !others.others.is_empty()
        {
            div class="box heavy" { p { (crate::fields::capital(&house.language().other_papers(&others))) "." } }
        }
    }
}

/// One file of the papers, by its place; its name says whose it is, and stands in no address.
fn file(place: &Place<'_>, name: &str) -> Result<Response, Failed> {
    let house = place.house;
    let case = place.open()?;
    let made = house.papers.of(house, &case, house.today())?;
    let (at, ending) = name.split_once('.').ok_or(Failed::NotThere)?;
    let own = at.parse::<usize>().ok().and_then(|at| made.files.get(at)).ok_or(Failed::NotThere)?;
    if !own.name.ends_with(&format!(".{ending}")) {
        return Err(Failed::NotThere);
    }
    if goes_home(&own.name) && case.standing(house.today()).fitted().is_none() {
        return Err(Failed::NotYet);
    }
    let kind = match ending {
        "pdf" => "application/pdf",
        "svg" => "image/svg+xml",
        _ => return Err(Failed::NotThere),
    };
    let disposition = format!("inline; filename=\"{}\"", own.name);
    let headers = [
        (CONTENT_TYPE, kind.to_owned()),
        (CONTENT_DISPOSITION, disposition),
        (CONTENT_SECURITY_POLICY, POLICY_OF_DRAWINGS.to_owned()),
    ];
    Ok((headers, own.bytes.clone()).into_response())
}

/// Keeps the papers in a folder beside the clients' files.
pub(crate) fn take(place: &Place<'_>) -> Result<Response, Failed> {
    let house = place.house;
    let (draft, case) = (place.draft()?, place.open()?);
    let made = house.papers.of(house, &case, house.today())?;
    let fitted = case.standing(house.today()).fitted().is_some();
    let of = (&case.client.value.code, &made.mark);
    let note = casework::other_papers(house.shelf(), FOLDER, of, house.language());
    let note = note.map_err(casework::WorkError::from)?.1;
    let may_be_kept = |own: &&casework::Exported| fitted || !goes_home(&own.name);
    let files = made.files.iter().filter(may_be_kept);
    let changes: Vec<Change> = (note.iter().chain(files))
        .map(|own| Change::output(format!("{FOLDER}/{}", own.name), own.bytes.clone()))
        .collect();
    let kept = || {
        let names = changes.iter().map(|own| own.name.as_str()).filter(|own| own.ends_with(".pdf"));
        html! {
            div class="box" role="status" {
                p { b { (house.language().page().papers.are_kept) } }
                ul { @for name in names { li { code { (name) } } } }
            }
        }
    };
    match house.shelf().put(&changes) {
        Ok(()) => screen(place, &draft, Some(kept())),
        Err(error) => screen(place, &draft, Some(said(house, &error.into()))),
    }
}
