//! Style, script, faces and icon, as files of the page.

use axum::extract::Path;
use axum::http::StatusCode;
use axum::http::header::{CACHE_CONTROL, CONTENT_TYPE};
use axum::response::{IntoResponse as _, Response};
use sheets::Weight;

/// The style sheet.
const STYLE: &str = include_str!("../assets/page.css");
/// Our own script.
const SCRIPT: &str = include_str!("../assets/page.js");
/// htmx, as it is published; its licence and checksum stand beside it.
const HTMX: &str = include_str!("../assets/htmx.min.js");

/// A cushion of four compartments, with the bar at the client's left.
const ICON: &str = include_str!("../assets/icon.svg");

/// The icon, where browsers look for it if no page names it, as beside a PDF.
pub(crate) async fn icon() -> Response {
    asset(Path("icon.svg".to_owned())).await
}

/// One file of the page.
pub(crate) async fn asset(Path(name): Path<String>) -> Response {
    let (kind, bytes): (&str, &'static [u8]) = match name.as_str() {
        "page.css" => ("text/css; charset=utf-8", STYLE.as_bytes()),
        "page.js" => ("text/javascript; charset=utf-8", SCRIPT.as_bytes()),
        "htmx.js" => ("text/javascript; charset=utf-8", HTMX.as_bytes()),
        "icon.svg" => ("image/svg+xml", ICON.as_bytes()),
        "regular.ttf" => ("font/ttf", sheets::font_file(Weight::Regular)),
        "semibold.ttf" => ("font/ttf", sheets::font_file(Weight::SemiBold)),
        "bold.ttf" => ("font/ttf", sheets::font_file(Weight::Bold)),
        _ => return StatusCode::NOT_FOUND.into_response(),
    };
    let headers = [(CONTENT_TYPE, kind), (CACHE_CONTROL, "private, max-age=3600")];
    (headers, bytes).into_response()
}
