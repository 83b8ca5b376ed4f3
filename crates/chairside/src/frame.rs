//! The frame of every screen: head, steps, foot; and what of a client stands in it.

use axum::http::StatusCode;
use axum::response::{Html, IntoResponse as _, Response};
use case::Standing;
use casework::{Draft, FileRemarks};
use maud::{DOCTYPE, Markup, html};

use crate::errors::remarks;
use crate::house::House;
use crate::steps::Step;

/// A screen about one client.
pub(crate) struct OfClient<'a> {
    /// The address of the client's file.
    pub(crate) address: &'a str,
    /// The file.
    pub(crate) draft: &'a Draft,
    /// The step that it is of.
    pub(crate) step: Step,
    /// How the fitting stands, where that is known.
    pub(crate) standing: Option<Standing<'a>>,
}

/// A screen.
pub(crate) struct Screen<'a> {
    /// What it is called. Never whose it is: titles stay in a browser's memory.
    pub(crate) title: &'a str,
    /// Of which client it is, where it is of one.
    pub(crate) of: Option<OfClient<'a>>,
    /// What is on it.
    pub(crate) body: Markup,
}

impl Screen<'_> {
    /// The whole page.
    pub(crate) fn page(&self, house: &House) -> Markup {
        let language = house.language();
        let texts = &language.page().frame;
        html! {
            (DOCTYPE)
            html lang=(language.tag()) {
                head {
                    meta charset="utf-8";
                    meta name="viewport" content="width=device-width, initial-scale=1";
                    meta name="htmx-config" content=r#"{"allowEval":false,"includeIndicatorStyles":false,"historyEnabled":false,"defaultSettleDelay":0,"selfRequestsOnly":true}"#;
                    title { (self.title) " - Seatwright" }
                    link rel="icon" type="image/svg+xml" href="/own/icon.svg";
                    link rel="stylesheet" href="/own/page.css";
                    script src="/own/htmx.js" defer {}
                    script src="/own/page.js" type="module" {}
                }
                body {
                    a class="skip" href="#main" { (texts.skip) }
                    (self.top(house))
                    main id="main" {
                        (self.head(house))
                        (self.wrong(house))
                        (self.body)
                    }
                    footer {
                        p { (texts.estimate) " " (texts.clinician_decides) }
                        @if let Some(words) = language.unreviewed() { p { (words) } }
                        @if self.is_invented(house) { p { (texts.invented_client) } }
                    }
                }
            }
        }
    }

    /// The page as an answer.
    pub(crate) fn answer(&self, house: &House) -> Response {
        self.answer_with(house, StatusCode::OK)
    }

    /// The page as an answer of a status.
    pub(crate) fn answer_with(&self, house: &House, status: StatusCode) -> Response {
        (status, Html(self.page(house).into_string())).into_response()
    }

    fn is_invented(&self, house: &House) -> bool {
        let code = self.of.as_ref().map(|own| own.draft.code());
        house.settings.demos.iter().any(|demo| Some(demo.code) == code.as_deref())
    }

    fn top(&self, house: &House) -> Markup {
        let texts = &house.language().page().frame;
        html! {
            header class="top" {
                @if let Some(own) = &self.of {
                    a class="home" href="/" { (texts.all_clients) }
                    details class="steps" {
                        summary { (self.where_we_are(house, own.step)) }
                        nav aria-label=(texts.steps) { (steps(house, own)) }
                    }
                } @else {
                    p class="brand" { "Seatwright" span { (texts.beside_the_chair) } }
                }
            }
        }
    }

    fn where_we_are(&self, house: &House, step: Step) -> String {
        let at = Step::ALL.iter().position(|own| *own == step).map_or(0, |at| at + 1);
        house.language().step_of(step_name(house, step), at, Step::ALL.len())
    }

    fn head(&self, house: &House) -> Markup {
        let language = house.language();
        let texts = &language.page().frame;
        html! {
            div class="head" {
                h1 { (self.title) }
                @if let Some(own) = &self.of {
                    dl class="identity" {
                        div { dt { (texts.client) } dd { (own.draft.code()) } }
                        @if let Some(client) = own.draft.client() {
                            @if let Some(weighing) = client.latest_weighing() {
                                div { dt { (texts.weight) } dd { (language.body_weight(weighing.weight, in_pounds(house, own.draft))) } }
                            }
                            div { dt { (texts.cushion) } dd { (client.cushion.layout.to_string()) ", " (language.size(client.cushion.size)) } }
                        }
                    }
                    @if let Some(standing) = own.standing { (stamp(house, standing)) }
                }
            }
        }
    }
}

impl Screen<'_> {
    /// What is written wrongly in the client's file, on every screen of the client: no answer mends
    /// it.
    fn wrong(&self, house: &House) -> Markup {
        let wrong = self.of.as_ref().and_then(|own| only_by_editor(own.draft));
        html! {
            @if let Some(file) = &wrong {
                div class="box heavy" role="alert" {
                    h2 { (file.path) }
                    p { (house.language().page().clients.unreadable) }
                    (remarks(house, file))
                }
            }
        }
    }
}

/// What only a text editor mends in a client's file, since no page of questions has a box for it.
pub(crate) fn only_by_editor(draft: &Draft) -> Option<FileRemarks> {
    draft.wrong(|question| Step::asking(question).is_some_and(|(_, page)| page.is_some()))
}

/// Whether weights are shown in pounds: where they are typed so, or the file has it so.
pub(crate) fn in_pounds(house: &House, draft: &Draft) -> bool {
    house.typed_in(draft).pounds || draft.is_in_pounds()
}

/// How the fitting stands, in a box.
pub(crate) fn stamp(house: &House, standing: Standing<'_>) -> Markup {
    let fitted = standing.fitted().is_some();
    html! {
        p class=(if fitted { "stamp" } else { "stamp dark" }) {
            (house.language().state_in_short(standing))
        }
    }
}

/// What a step is called.
pub(crate) fn step_name(house: &House, step: Step) -> &'static str {
    let steps = &house.language().page().steps;
    let at = Step::ALL.iter().position(|own| *own == step).unwrap_or_default();
    steps.names[at]
}

fn steps(house: &House, own: &OfClient<'_>) -> Markup {
    let texts = &house.language().page().frame;
    html! {
        ol {
            @for (at, step) in Step::ALL.into_iter().enumerate() {
                li {
                    a href=(format!("/c/{}/{}", own.address, step.word()))
                        aria-current=[(step == own.step).then_some("step")] {
                        span class="number" { (at + 1) }
                        (step_name(house, step))
                        @if is_done(own.draft, step) { span class="tick" { (texts.answered) } }
                    }
                }
            }
        }
    }
}

/// Whether something stands in the file for a step.
fn is_done(draft: &Draft, step: Step) -> bool {
    use case::question::{Group, Question};
    let answered = |question| {
        let mut blanks = casework::Blank::all(question, None).into_iter();
        blanks.any(|blank| draft.answer(&blank).is_some())
    };
    let record = draft.client().map(|client| client.record.as_slice()).unwrap_or_default();
    let has = |wanted: fn(&case::Entry) -> bool| record.iter().any(wanted);
    match step {
        Step::Measure => {
            answered(Question::HipWidth)
                && (answered(Question::WeightKg) || answered(Question::WeightLb))
        }
        Step::Cushion => answered(Question::LayoutOfCushion) && answered(Question::SizeOfCushion),
        Step::Goals => draft.entries(Group::Goal) > 0,
        Step::Plan => has(|entry| matches!(entry, case::Entry::Plan(_))),
        Step::Fill => {
            has(|entry| matches!(entry, case::Entry::Filled(_) | case::Entry::Incoming(_)))
        }
        Step::Checks => has(|entry| matches!(entry, case::Entry::Adjustment(_))),
        Step::Moves => has(|entry| matches!(entry, case::Entry::Moved(_))),
        Step::SignOff => draft.client().is_some_and(|client| client.passed_check().is_some()),
        Step::Papers | Step::Review => false,
        _ => {
            let parts = step.pages().iter().flat_map(|page| page.parts);
            parts.into_iter().any(|part| match part {
                crate::steps::Part::List(group) => draft.entries(*group) > 0,
                own => own.questions().into_iter().any(&answered),
            })
        }
    }
}
