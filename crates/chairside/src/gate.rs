//! Who may ask: this machine's browser that was given the key, and nobody else.
//!
//! A page of another site can make a browser ask us, and a name of another site can be made to
//! lead here; so the name that was asked for, the page that asks and a cookie that no other site
//! can send are looked at before anything else.

use std::sync::atomic::{AtomicBool, Ordering};
use std::time::Duration;

use axum::body::Body;
use axum::extract::{Request, State};
use axum::http::header::{
    CACHE_CONTROL, CONTENT_SECURITY_POLICY, CONTENT_TYPE, COOKIE, HOST, HeaderMap, HeaderName,
    HeaderValue, LOCATION, ORIGIN, REFERRER_POLICY, SET_COOKIE, X_CONTENT_TYPE_OPTIONS,
};
use axum::http::{Method, StatusCode};
use axum::middleware::Next;
use axum::response::Response;

use crate::lot;

/// How long one answer may take.
const LONGEST: Duration = Duration::from_secs(60);

/// What a page of ours may do: show and ask what comes from here, and nothing else.
const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; \
    font-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; \
    frame-ancestors 'none'";

/// What a drawing of a paper may do, whose face and style are in it.
pub(crate) const POLICY_OF_DRAWINGS: &str =
    "default-src 'none'; style-src 'unsafe-inline'; font-src data:; sandbox";

/// The keeper of the gate.
pub(crate) struct Gate {
    /// The port that is served.
    port: u16,
    /// What the opened address has, once.
    key: String,
    used: AtomicBool,
    /// What the cookie has.
    pass: String,
    /// What is said to whoever is not let in.
    closed: &'static str,
}

impl Gate {
    /// A gate for a port; none where the system has no random words.
    pub(crate) fn new(port: u16, closed: &'static str) -> Option<Self> {
        let used = AtomicBool::new(false);
        Some(Self { port, key: lot::word()?, used, pass: lot::word()?, closed })
    }

    /// The address that is to be opened.
    pub(crate) fn address(&self) -> String {
        format!("http://127.0.0.1:{}/?key={}", self.port, self.key)
    }

    /// The name of the cookie: cookies know no ports, so two programs must not share one.
    fn cookie(&self) -> String {
        format!("seatwright-{}", self.port)
    }

    /// Whether a name, with its port, is this machine's own.
    fn is_ours(&self, host: &str) -> bool {
        let (name, port) = match host.rsplit_once(':') {
            Some((name, port)) if !port.contains(']') => (name, port),
            _ => (host, "80"),
        };
        let bare = name.strip_prefix('[').and_then(|name| name.strip_suffix(']'));
        let is_loopback = match bare {
            Some(inner) => inner.parse::<core::net::Ipv6Addr>().is_ok_and(|own| own.is_loopback()),
            None if name == "localhost" => true,
            None => name.parse::<core::net::Ipv4Addr>().is_ok_and(|own| own.is_loopback()),
        };
        is_loopback && port == self.port.to_string()
    }

    fn is_from_us(&self, headers: &HeaderMap) -> bool {
        let origin = one(headers, &ORIGIN);
        let host = one(headers, &HOST);
        origin
            .and_then(|own| own.strip_prefix("http://"))
            .is_some_and(|own| self.is_ours(own) && host == Some(own))
    }

    fn has_pass(&self, headers: &HeaderMap) -> bool {
        let name = self.cookie() + "=";
        let all = headers.get_all(COOKIE).iter().filter_map(|own| own.to_str().ok());
        let mut own = all
            .flat_map(|line| line.split(';'))
            .filter_map(|pair| pair.trim().strip_prefix(name.as_str()));
        own.any(|pass| lot::same(pass, &self.pass))
    }

    /// Whether the key is right, the first time that it is shown.
    fn takes_key(&self, request: &Request) -> bool {
        let query = request.uri().query().unwrap_or_default();
        let key = query.strip_prefix("key=").unwrap_or_default();
        let right = request.uri().path() == "/" && lot::same(key, &self.key);
        right && !self.used.swap(true, Ordering::SeqCst)
    }

    /// Why a request is refused; none where it may go on.
    fn refusal(&self, request: &Request) -> Option<StatusCode> {
        let headers = request.headers();
        if !one(headers, &HOST).is_some_and(|host| self.is_ours(host)) {
            return Some(StatusCode::MISDIRECTED_REQUEST);
        }
        let reads = matches!(*request.method(), Method::GET | Method::HEAD);
        if !reads && (request.method() != Method::POST || !self.is_from_us(headers)) {
            return Some(StatusCode::FORBIDDEN);
        }
        (!self.has_pass(headers)).then_some(StatusCode::UNAUTHORIZED)
    }
}

/// The one value of a header; none where there is none, or several.
fn one<'a>(headers: &'a HeaderMap, name: &HeaderName) -> Option<&'a str> {
    let mut all = headers.get_all(name).iter();
    let first = all.next()?;
    if all.next().is_some() { None } else { first.to_str().ok() }
}

/// Lets a request in, or not.
pub(crate) async fn keep(
    State(gate): State<std::sync::Arc<Gate>>,
    request: Request,
    next: Next,
) -> Response {
    let mut response = match gate.refusal(&request) {
        Some(StatusCode::UNAUTHORIZED) if gate.takes_key(&request) => gate.welcome(),
        Some(status) => said(status, gate.closed),
        // The key may still stand in the address of a browser that was let in.
        None if request.uri().query().is_some_and(|own| own.starts_with("key=")) => home(),
        None => match tokio::time::timeout(LONGEST, next.run(request)).await {
            Ok(response) => response,
            Err(_) => said(StatusCode::SERVICE_UNAVAILABLE, gate.closed),
        },
    };
    guard(response.headers_mut());
    response
}

impl Gate {
    /// The cookie, and an address without the key.
    fn welcome(&self) -> Response {
        let mut response = home();
        let (name, pass) = (self.cookie(), &self.pass);
        let cookie = format!("{name}={pass}; Path=/; HttpOnly; SameSite=Strict");
        if let Ok(cookie) = HeaderValue::from_str(&cookie) {
            response.headers_mut().insert(SET_COOKIE, cookie);
        }
        response
    }
}

fn home() -> Response {
    let mut response = plain(StatusCode::SEE_OTHER);
    response.headers_mut().insert(LOCATION, HeaderValue::from_static("/"));
    response
}

fn plain(status: StatusCode) -> Response {
    said(status, "")
}

/// A sentence and no more: whoever is not let in learns nothing else.
fn said(status: StatusCode, words: &'static str) -> Response {
    let mut response = Response::new(Body::from(words));
    *response.status_mut() = status;
    let kind = HeaderValue::from_static("text/plain; charset=utf-8");
    response.headers_mut().insert(CONTENT_TYPE, kind);
    response
}

/// The headers that every answer has.
fn guard(headers: &mut HeaderMap) {
    let same_origin = HeaderValue::from_static("same-origin");
    headers.entry(CONTENT_SECURITY_POLICY).or_insert(HeaderValue::from_static(POLICY));
    headers.insert(X_CONTENT_TYPE_OPTIONS, HeaderValue::from_static("nosniff"));
    // With no referrer at all, browsers would not say either which page a form is of.
    headers.insert(REFERRER_POLICY, same_origin.clone());
    headers.insert("cross-origin-opener-policy", same_origin.clone());
    headers.insert("cross-origin-resource-policy", same_origin);
    headers.entry(CACHE_CONTROL).or_insert(HeaderValue::from_static("no-store"));
}

#[cfg(test)]
mod tests {
    use super::*;

    fn gate() -> Gate {
        Gate::new(4321, "closed").unwrap()
    }

    #[test]
    fn only_exact_loopback_names_with_our_port_are_ours() {
        for ours in ["127.0.0.1:4321", "localhost:4321", "[::1]:4321", "127.0.0.2:4321"] {
            assert!(gate().is_ours(ours), "{ours}");
        }
        for other in [
            "127.0.0.1.example.org:4321",
            "localhost.example.org:4321",
            "127.0.0.1:4322",
            "127.0.0.1",
            "[::1]",
            "::1:4321",
            "[127.0.0.1]:4321",
            "0.0.0.0:4321",
            "example.org:4321",
            "127.1:4321",
            "localhost:4321 ",
            "LOCALHOST:04321",
            "",
        ] {
            assert!(!gate().is_ours(other), "{other}");
        }
    }

    fn request(method: Method, uri: &str, headers: &[(&str, &str)]) -> Request {
        let mut request = Request::builder().method(method).uri(uri);
        for (name, value) in headers {
            request = request.header(*name, *value);
        }
        request.body(Body::empty()).unwrap()
    }

    #[test]
    fn changes_come_from_our_own_page_with_the_cookie() {
        let gate = gate();
        let pass = format!("a=b; seatwright-4321={}", gate.pass);
        let host = ("host", "127.0.0.1:4321");
        let own = ("origin", "http://127.0.0.1:4321");
        let cookie = ("cookie", pass.as_str());
        let ask = |method: Method, headers: &[(&str, &str)]| {
            gate.refusal(&request(method, "/c/1", headers))
        };
        assert_eq!(ask(Method::GET, &[host, cookie]), None);
        assert_eq!(ask(Method::POST, &[host, own, cookie]), None);
        for (headers, why) in [
            (vec![host, own], StatusCode::UNAUTHORIZED),
            (vec![host, cookie], StatusCode::FORBIDDEN),
            (vec![host, ("origin", "null"), cookie], StatusCode::FORBIDDEN),
            (vec![host, ("origin", "http://localhost:4321"), cookie], StatusCode::FORBIDDEN),
            (vec![host, ("origin", "https://127.0.0.1:4321"), cookie], StatusCode::FORBIDDEN),
            (vec![host, own, own, cookie], StatusCode::FORBIDDEN),
            (vec![("host", "example.org:4321"), own, cookie], StatusCode::MISDIRECTED_REQUEST),
            (vec![host, host, own, cookie], StatusCode::MISDIRECTED_REQUEST),
        ] {
            assert_eq!(ask(Method::POST, &headers), Some(why), "{headers:?}");
        }
        assert_eq!(ask(Method::PUT, &[host, own, cookie]), Some(StatusCode::FORBIDDEN));
    }

    #[test]
    fn the_key_opens_once() {
        let gate = gate();
        let address = format!("/?key={}", gate.key);
        assert!(!gate.takes_key(&request(Method::GET, "/?key=", &[])));
        assert!(!gate.takes_key(&request(Method::GET, &format!("/c?key={}", gate.key), &[])));
        assert!(gate.takes_key(&request(Method::GET, &address, &[])));
        assert!(!gate.takes_key(&request(Method::GET, &address, &[])));
    }
}
