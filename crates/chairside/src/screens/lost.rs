//! A client whose file is lost: brought back from the code on a card, as text or in its PDF.

use axum::response::Response;
use case::{ClientCode, Restored};
use casework::{Change, Draft, Lost, WorkError};
use maud::{Markup, html};

use super::clients;
use super::papers::FOLDER;
use crate::errors::{Failed, said};
use crate::form::Sent;
use crate::frame::{OfClient, Screen, step_name};
use crate::house::House;
use crate::steps::Step;

/// The PDFs that lie beside the clients' files, and among the papers there.
fn pdfs(house: &House) -> Vec<String> {
    let listed = |folder: &str| house.shelf().list(folder).unwrap_or_default();
    let all = listed("").into_iter().chain(listed(FOLDER));
    all.filter(|name| name.to_ascii_lowercase().ends_with(".pdf")).collect()
}

/// A form that was refused: what it sent, and why.
pub(super) struct Refused<'a> {
    sent: &'a Sent,
    why: Markup,
}

/// The form on the page of clients; open, with what was typed, where it was refused.
pub(super) fn form(house: &House, refused: Option<&Refused<'_>>) -> Markup {
    let language = house.language();
    let typed = |name: &str| refused.map_or("", |own| own.sent.or_nothing(name));
    let texts = &language.page().lost;
    let of_clients = &language.page().clients;
    let pdfs = pdfs(house);
    html! {
        details class="entry" open[refused.is_some()] {
            summary { (texts.title) }
            form class="stack" method="post" action="/clients/lost" {
                @if let Some(own) = refused { div id="summary" tabindex="-1" { (own.why) } }
                p { (texts.lead) }
                div class="field" {
                    label for="lost-text" { (texts.text) }
                    input id="lost-text" name="text" value=(typed("text")) maxlength="400" autocomplete="off"
                        autocapitalize="characters" spellcheck="false";
                }
                @if !pdfs.is_empty() {
                    div class="field" {
                        label for="lost-pdf" { (texts.pdf) }
                        p class="hint" id="lost-pdf-hint" { (texts.pdf_hint) }
                        select id="lost-pdf" name="pdf" aria-describedby="lost-pdf-hint" {
                            option value="" { (texts.no_pdf) }
                            @for name in &pdfs {
                                @let address = house.address_of(name);
                                option value=(address) selected[typed("pdf") == address] { (name) }
                            }
                        }
                    }
                }
                div class="field" {
                    label for="lost-code" { (of_clients.code) }
                    p class="hint" id="lost-code-hint" { (of_clients.code_hint) }
                    input id="lost-code" name="code" value=(typed("code")) required maxlength="24" autocomplete="off"
                        autocapitalize="characters" spellcheck="false" aria-describedby="lost-code-hint";
                }
                div class="field" {
                    label for="lost-serial" { (texts.serial) }
                    p class="hint" id="lost-serial-hint" { (texts.serial_hint) }
                    input id="lost-serial" name="serial" value=(typed("serial")) maxlength="60" autocomplete="off"
                        spellcheck="false" aria-describedby="lost-serial-hint";
                }
                button class="button less" { (texts.bring_back) }
            }
        }
    }
}

/// The text of the code: as it was typed, else that of the PDF that was chosen.
fn text_of(house: &House, sent: &Sent) -> Result<String, WorkError> {
    let typed = sent.or_nothing("text").trim();
    let chosen = house.name_at(sent.or_nothing("pdf")).filter(|name| pdfs(house).contains(name));
    match chosen {
        Some(name) if typed.is_empty() => casework::code_in_pdf(house.surroundings(), &name),
        _ => Ok(typed.to_owned()),
    }
}

/// Makes the file of a client anew; nothing is written where one is there.
pub(super) fn take(house: &House, sent: &Sent) -> Result<Response, Failed> {
    let refused = |why: Markup| clients::with_lost(house, &Refused { sent, why });
    let Some(code) = ClientCode::new(sent.or_nothing("code").trim()) else {
        return refused(clients::no_code(house));
    };
    let serial = Some(sent.or_nothing("serial").trim()).filter(|own| !own.is_empty());
    let name = format!("{code}.toml");
    let written = text_of(house, sent).and_then(|text| {
        let lost = Lost { text: &text, serial, client: Some(&code), ..Lost::default() };
        let edition = (house.today(), house.language());
        let made = casework::restored(house.surroundings(), &lost, &name, edition)?;
        let new = Change::new(&name, made.text.as_bytes());
        house.shelf().put(&[new])?;
        Ok(made.restored)
    });
    match written {
        Ok(restored) => back(house, &name, &restored),
        Err(error) => refused(said(house, &error)),
    }
}

/// What came back, what it is worth, and where it goes on.
fn back(house: &House, name: &str, restored: &Restored) -> Result<Response, Failed> {
    let language = house.language();
    let draft = Draft::open(house.surroundings(), name)?;
    let address = house.address_of(name);
    let to = format!("/c/{address}/{}", Step::Measure.word());
    let body = html! {
        div class="box heavy" role="status" {
            p { (language.restored(restored)) }
            p { (language.still_missing(draft.missing().len())) "." }
        }
        div class="row buttons" { a class="button" href=(to) { (step_name(house, Step::Measure)) } }
    };
    let of = OfClient { address: &address, draft: &draft, step: Step::Measure, standing: None };
    Ok(Screen { title: language.page().lost.back, of: Some(of), body }.answer(house))
}
