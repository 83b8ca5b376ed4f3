//! The server: one port on this machine, and which screen answers which address.

use core::net::Ipv4Addr;
use std::future::Future;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use axum::Router;
use axum::extract::{DefaultBodyLimit, Path, RawQuery, State};
use axum::http::{HeaderMap, StatusCode};
use axum::middleware;
use axum::response::{IntoResponse as _, Redirect, Response};
use axum::routing::{get, post};
use tokio::net::TcpListener;

use crate::assets;
use crate::errors::{Failed, of_work, told};
use crate::following;
use crate::form::Sent;
use crate::gate::{self, Gate};
use crate::house::House;
use crate::screens::{self, Ask};
use crate::steps::Step;

/// The address of the page of clients.
const CLIENTS: &str = "/";
/// The most bytes that a form may send.
const LARGEST_FORM: usize = 64 * 1024;

/// Why nothing is served.
#[derive(Debug)]
pub enum NotServed {
    /// The port is taken, or may not be used.
    Port(std::io::Error),
    /// The system gives no random words, without which nobody can be kept out.
    NoLot,
    /// The server failed.
    Failed(std::io::Error),
}

/// A page that is ready to be served.
pub struct Chairside {
    listener: TcpListener,
    gate: Arc<Gate>,
    house: Arc<House>,
}

impl Chairside {
    /// Takes a port of this machine's loopback address; 0 takes any that is free.
    ///
    /// # Errors
    ///
    /// Fails where the port cannot be had, or nobody could be kept out.
    pub async fn at(port: u16, house: House) -> Result<Self, NotServed> {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, port)).await;
        let listener = listener.map_err(NotServed::Port)?;
        let port = listener.local_addr().map_err(NotServed::Port)?.port();
        let closed = house.language().page().frame.closed;
        let gate = Gate::new(port, closed).ok_or(NotServed::NoLot)?;
        Ok(Self { listener, gate: Arc::new(gate), house: Arc::new(house) })
    }

    /// The address that is to be opened in a browser; its key opens once.
    #[must_use]
    pub fn address(&self) -> String {
        self.gate.address()
    }

    /// Serves until `end` comes.
    ///
    /// # Errors
    ///
    /// Fails where the port fails.
    pub async fn serve(
        self,
        end: impl Future<Output = ()> + Send + 'static,
    ) -> Result<(), NotServed> {
        let routes = routes(self.house, self.gate);
        let served = axum::serve(self.listener, routes).with_graceful_shutdown(end);
        served.await.map_err(NotServed::Failed)
    }
}

fn routes(house: Arc<House>, gate: Arc<Gate>) -> Router {
    Router::new()
        .route(CLIENTS, get(clients))
        .route("/clients/{what}", post(of_clients))
        .route("/unit", post(unit))
        .route("/own/{name}", get(assets::asset))
        .route("/favicon.ico", get(assets::icon))
        .route("/layout/{address}", get(layout))
        .route("/layout/{address}/changed", get(layout_changed))
        .route("/c/{address}", get(first))
        .route("/c/{address}/{step}", get(show).post(take))
        .route("/c/{address}/{step}/{page}", get(show_page).post(take_page))
        .fallback(nothing_there)
        .layer(DefaultBodyLimit::max(LARGEST_FORM))
        .layer(middleware::from_fn_with_state(gate, gate::keep))
        .with_state(house)
}

/// Does work that takes its time beside the others.
async fn beside(
    house: Arc<House>,
    work: impl FnOnce(&House) -> Result<Response, Failed> + Send + 'static,
) -> Response {
    let own = Arc::clone(&house);
    let done = tokio::task::spawn_blocking(move || work(&own)).await;
    // What panicked is a fault of ours, and is said too.
    let done = done.unwrap_or(Err(Failed::Ours));
    done.unwrap_or_else(|failed| told(&house, failed))
}

async fn nothing_there(State(house): State<Arc<House>>) -> Response {
    beside(house, |_| Err(Failed::NotThere)).await
}

async fn clients(State(house): State<Arc<House>>, RawQuery(query): RawQuery) -> Response {
    let sent = Sent::read(query.unwrap_or_default().as_bytes());
    if let Some(reply) = reply(&house, CLIENTS, &sent) {
        return reply;
    }
    beside(house, move |house| screens::clients::show(house, &sent)).await
}

async fn of_clients(
    State(house): State<Arc<House>>,
    Path(what): Path<String>,
    sent: Sent,
) -> Response {
    let own = Arc::clone(&house);
    let response = beside(own, move |house| screens::clients::take(house, &what, &sent)).await;
    house.replies.led_to(CLIENTS.to_owned(), response).await
}

async fn unit(State(house): State<Arc<House>>, sent: Sent) -> Response {
    beside(house, move |house| Ok(screens::questions::set_unit(house, &sent))).await
}

async fn layout(
    State(house): State<Arc<House>>,
    Path(address): Path<String>,
    RawQuery(query): RawQuery,
    headers: HeaderMap,
) -> Response {
    let sent = Sent::read(query.unwrap_or_default().as_bytes());
    let part = headers.contains_key("hx-request");
    beside(house, move |house| screens::layout::show(house, &address, &sent, part)).await
}

/// Answers when a layout's file is another than was seen, or with nothing after a while.
pub(crate) async fn layout_changed(
    State(house): State<Arc<House>>,
    Path(address): Path<String>,
    RawQuery(query): RawQuery,
) -> Response {
    let sent = Sent::read(query.unwrap_or_default().as_bytes());
    let Some(name) = house.name_at(&address) else {
        return beside(house, |_| Err(Failed::NotThere)).await;
    };
    let seen = sent.or_nothing("seen").to_owned();
    let own = Arc::clone(&house);
    let Some(_waits) = own.following.one_more() else {
        // The page asks again after a while.
        let now = following::changed_by_now(house, name, &seen).await;
        return match now {
            Some(now) => now.into_response(),
            None => StatusCode::SERVICE_UNAVAILABLE.into_response(),
        };
    };
    match following::changed(house, name, seen).await {
        Some(now) => now.into_response(),
        None => StatusCode::NO_CONTENT.into_response(),
    }
}

async fn first(Path(address): Path<String>) -> Redirect {
    Redirect::to(&format!("/c/{address}/{}", Step::Measure.word()))
}

/// Answers what is asked of a screen of a client. Where whoever asked leaves before, the work is told.
pub(crate) async fn answered(
    house: Arc<House>,
    ask: Ask,
    answer: fn(&House, &Ask) -> Result<Response, Failed>,
) -> Response {
    let _leaves = Leaves(Arc::clone(&ask.left));
    let answer = move |house: &House| match answer(house, &ask) {
        Err(Failed::Work(error)) => Ok(of_work(house, &error, Some(&ask.address))),
        other => other,
    };
    beside(house, answer).await
}

/// Notes when a connection is dropped, or its answer is there.
struct Leaves(Arc<AtomicBool>);

impl Drop for Leaves {
    fn drop(&mut self) {
        self.0.store(true, Ordering::SeqCst);
    }
}

/// What is asked of a screen of a client.
fn ask(
    (address, step, page): (String, String, Option<String>),
    sent: Sent,
    headers: &HeaderMap,
) -> Ask {
    let header =
        |name: &str| headers.get(name).and_then(|own| own.to_str().ok()).map(str::to_owned);
    let (fragment, trigger) = (header("hx-request").is_some(), header("hx-trigger-name"));
    Ask { address, step, page, sent, fragment, trigger, left: Arc::default() }
}

async fn show(
    State(house): State<Arc<House>>,
    Path((address, step)): Path<(String, String)>,
    RawQuery(query): RawQuery,
    headers: HeaderMap,
) -> Response {
    let sent = Sent::read(query.unwrap_or_default().as_bytes());
    if let Some(reply) = reply(&house, &screen(&address, &step), &sent) {
        return reply;
    }
    let ask = ask((address, step, None), sent, &headers);
    answered(house, ask, screens::show).await
}

async fn show_page(
    State(house): State<Arc<House>>,
    Path((address, step, page)): Path<(String, String, String)>,
    RawQuery(query): RawQuery,
    headers: HeaderMap,
) -> Response {
    let sent = Sent::read(query.unwrap_or_default().as_bytes());
    let ask = ask((address, step, Some(page)), sent, &headers);
    answered(house, ask, screens::show).await
}

/// What a form of a screen was answered with, where that is asked for and still kept.
fn reply(house: &House, of: &str, sent: &Sent) -> Option<Response> {
    house.replies.at(of, sent.get("answer")?)
}

/// The address of a screen.
fn screen(address: &str, step: &str) -> String {
    format!("/c/{address}/{step}")
}

/// Takes a form. What a whole screen is answered with is led to.
async fn taken(house: Arc<House>, ask: Ask) -> Response {
    let (of, is_part) = (screen(&ask.address, &ask.step), ask.fragment);
    let response = answered(Arc::clone(&house), ask, screens::take).await;
    if is_part { response } else { house.replies.led_to(of, response).await }
}

async fn take(
    State(house): State<Arc<House>>,
    Path((address, step)): Path<(String, String)>,
    headers: HeaderMap,
    sent: Sent,
) -> Response {
    let ask = ask((address, step, None), sent, &headers);
    taken(house, ask).await
}

async fn take_page(
    State(house): State<Arc<House>>,
    Path((address, step, page)): Path<(String, String, String)>,
    headers: HeaderMap,
    sent: Sent,
) -> Response {
    let ask = ask((address, step, Some(page)), sent, &headers);
    taken(house, ask).await
}
