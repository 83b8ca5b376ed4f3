//! The clients of the folder, and a new one.

use axum::response::{IntoResponse as _, Redirect, Response};
use case::text::LengthUnit;
use case::{Client, ClientCode, RecordNote, Review, State};
use casework::{Change, Draft, Listed};
use maud::{Markup, html};

use super::lost;
use crate::errors::{Failed, said};
use crate::form::Sent;
use crate::frame::{Screen, only_by_editor, stamp};
use crate::house::House;
use crate::steps::Step;

/// Shows all clients, or those whose code has what was looked for.
pub(crate) fn show(house: &House, sent: &Sent) -> Result<Response, Failed> {
    screen(house, sent.or_nothing("find"), None, None)
}

/// All clients, and the form for a lost file as it was sent and refused.
pub(super) fn with_lost(house: &House, lost: &lost::Refused<'_>) -> Result<Response, Failed> {
    screen(house, "", None, Some(lost))
}

fn screen(
    house: &House,
    find: &str,
    wrong: Option<Markup>,
    lost: Option<&lost::Refused<'_>>,
) -> Result<Response, Failed> {
    let on = house.today();
    let texts = &house.language().page().clients;
    let all = house.roster(on)?;
    let wanted = find.trim().to_lowercase();
    let found = |own: &&Listed| own.draft.code().to_lowercase().contains(&wanted);
    let mut listed: Vec<&Listed> = all.iter().filter(found).collect();
    // Who must be looked at comes first; else the order of the folder.
    listed.sort_by_key(|own| urgency(own, on));
    let body = html! {
        (wrong.unwrap_or_default())
        div class="panes main-first" {
            section {
                form class="find" role="search" method="get" action="/" {
                    label for="find" { (texts.find) }
                    div class="box-line" {
                        input id="find" name="find" type="search" value=(find) autocomplete="off" spellcheck="false";
                        button class="button less" { (texts.find_button) }
                    }
                }
                @if listed.is_empty() { p { (if wanted.is_empty() { texts.nobody_yet } else { texts.nobody }) } }
                ul class="clients" { @for own in &listed { (client(house, own)) } }
                (layouts(house))
            }
            div class="stack" { (new_client(house)) (lost::form(house, lost)) (learn(house, &all)) }
        }
    };
    Ok(Screen { title: texts.title, of: None, body }.answer(house))
}

/// What must be looked at first: 0; what is at work: 1; the rest: 2.
fn urgency(own: &Listed, on: case::Date) -> u8 {
    match own.standing(on) {
        None => 1,
        Some(standing) => match (standing.state, standing.review) {
            (State::NotSafe(_) | State::Failed(_) | State::Lapsed(..), _)
            | (_, Review::Overdue(_)) => 0,
            (State::Fitted(_), _) => 2,
            _ => 1,
        },
    }
}

/// Where a client with a plan goes on: at the moves that are left, or at the checks, once somebody
/// recorded what was put in.
fn after_a_plan(client: &Client) -> Step {
    let is_told = client.cushion_now().is_some_and(|now| now.from.is_told());
    match (is_told, client.moves_are_left()) {
        (true, true) => Step::Moves,
        (true, false) => Step::Checks,
        (false, _) => Step::Plan,
    }
}

fn client(house: &House, own: &Listed) -> Markup {
    let language = house.language();
    let texts = &language.page().clients;
    let address = house.address_of(&own.draft.name);
    let standing = own.standing(house.today());
    let filling = own.draft.client().and_then(Client::filling_so_far);
    let goes_on = filling.as_ref().is_some_and(|own| own.stale.is_none());
    let step = match standing.map(|own| own.state) {
        Some(_) if goes_on => Step::Fill,
        None | Some(State::ToMeasure) => Step::Measure,
        Some(State::ToPlan) => Step::Goals,
        Some(State::Estimate) => own.draft.client().map_or(Step::Plan, after_a_plan),
        Some(State::NotSafe(_)) => Step::Plan,
        Some(State::Fitted(_) | State::Failed(_) | State::Lapsed(..)) => Step::Review,
    };
    let invented = house.settings.demos.iter().any(|demo| demo.code == own.draft.code());
    html! {
        li {
            h2 class="code" {
                a href=(format!("/c/{address}/{}", step.word())) { (own.draft.code()) }
                @if invented { " " span class="invented" { (texts.invented) } }
            }
            @match standing {
                Some(standing) => {
                    (stamp(house, standing))
                    p class="what" { (language.standing(standing)) }
                    // When to look again is said with the state, where a day is set.
                    @if standing.review == Review::None {
                        p class="dates" { span { (language.review_in_short(standing)) } }
                    }
                }
                None => {
                    @if only_by_editor(&own.draft).is_some() {
                        p class="stamp dark" { (texts.not_readable) }
                        p class="what" { (own.draft.name) ": " (texts.unreadable) }
                    } @else {
                        p class="stamp" { (texts.not_complete) }
                        p class="what" { (language.still_missing(own.draft.missing().len())) }
                    }
                }
            }
            @if let Some(own) = filling { p class="what" { (language.record_note(&RecordNote::Filling(own))) } }
            @if let Some(day) = own.last_visit {
                p class="dates" { span { small { (texts.last_visit) } " " (language.day(day)) } }
            }
        }
    }
}

fn new_client(house: &House) -> Markup {
    let texts = &house.language().page().clients;
    html! {
        form class="box" method="post" action="/clients/new" {
            h2 { (texts.new_client) }
            div class="field" {
                label for="code" { (texts.code) }
                p class="hint" id="code-hint" { (texts.code_hint) }
                input id="code" name="code" required maxlength="24" autocomplete="off"
                    autocapitalize="characters" spellcheck="false" aria-describedby="code-hint";
            }
            fieldset class="choice" {
                legend { (texts.unit) }
                p class="hint" { (texts.unit_hint) }
                div class="answers" {
                    label class="answer" { input type="radio" name="unit" value="mm" checked; span { (texts.millimetres) } }
                    label class="answer" { input type="radio" name="unit" value="in"; span { (texts.inches) } }
                }
            }
            button class="button" { (texts.begin) }
        }
    }
}

fn learn(house: &House, all: &[Listed]) -> Markup {
    let texts = &house.language().page().clients;
    let codes: Vec<String> = all.iter().map(|own| own.draft.code()).collect();
    let missing =
        house.settings.demos.iter().any(|demo| !codes.iter().any(|code| code == demo.code));
    html! {
        @if missing {
            form class="box" method="post" action="/clients/demo" {
                h2 { (texts.learn) }
                p { (texts.learn_hint) }
                button class="button less" { (texts.put_demos_here) }
            }
        }
    }
}

/// Layout files of the folder, to be looked at while they are written.
fn layouts(house: &House) -> Markup {
    let texts = &house.language().page().clients;
    let names = casework::layout_files(house.surroundings());
    html! {
        @if !names.is_empty() {
            h2 { (texts.layouts) }
            ul class="plain" {
                @for name in &names {
                    li { a href=(format!("/layout/{}", house.address_of(name))) { (name) } }
                }
            }
        }
    }
}

/// Takes a new client, or puts the invented ones here.
pub(crate) fn take(house: &House, what: &str, sent: &Sent) -> Result<Response, Failed> {
    match what {
        "new" => begin(house, sent),
        "lost" => lost::take(house, sent),
        "demo" => {
            let listed = house.shelf().list("").map_err(casework::WorkError::from)?;
            let name = |demo: &crate::Demo| format!("{}.toml", demo.code);
            let new = house.settings.demos.iter().filter(|demo| !listed.contains(&name(demo)));
            let changes: Vec<Change> =
                new.map(|demo| Change::new(name(demo), demo.text.as_bytes())).collect();
            house.shelf().put(&changes).map_err(casework::WorkError::from)?;
            Ok(Redirect::to("/").into_response())
        }
        _ => Err(Failed::NotThere),
    }
}

/// Says how a code is written, where something else was typed.
pub(super) fn no_code(house: &House) -> Markup {
    let texts = &house.language().page().clients;
    html! {
        div class="box heavy" role="alert" { p { b { (texts.not_a_code) } } p { (texts.code_hint) } }
    }
}

fn begin(house: &House, sent: &Sent) -> Result<Response, Failed> {
    let Some(code) = ClientCode::new(sent.or_nothing("code").trim()) else {
        return screen(house, "", Some(no_code(house)), None);
    };
    let unit = match sent.get("unit") {
        Some("in") => LengthUnit::Inches,
        _ => LengthUnit::Millimetres,
    };
    match Draft::begin(house.shelf(), &code, unit, house.language()) {
        Ok(draft) => {
            let to = format!("/c/{}/{}", house.address_of(&draft.name), Step::Measure.word());
            Ok(Redirect::to(&to).into_response())
        }
        Err(error) => screen(house, "", Some(said(house, &error)), None),
    }
}
