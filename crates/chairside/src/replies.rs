//! Replies to forms, kept to be looked at: what a browser shows after a form was sent has an address of
//! its own, so that to reload it, or to come back to it, sends nothing again.

use std::collections::VecDeque;
use std::sync::{Mutex, MutexGuard, PoisonError};

use axum::body::{Bytes, to_bytes};
use axum::http::StatusCode;
use axum::http::header::CONTENT_TYPE;
use axum::response::{Html, IntoResponse as _, Redirect, Response};

use crate::lot;

/// How many are kept; whoever comes back to an older one finds its screen as it is now.
const MOST: usize = 32;

struct Reply {
    /// The address of the screen that it is of.
    of: String,
    word: String,
    status: StatusCode,
    page: Bytes,
}

/// The last replies to forms, of all windows.
#[derive(Default)]
pub(crate) struct Replies(Mutex<VecDeque<Reply>>);

impl Replies {
    fn kept(&self) -> MutexGuard<'_, VecDeque<Reply>> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Keeps a page that a form of a screen was answered with, and leads to it; what is no page, or
    /// leads elsewhere, stays as it is.
    pub(crate) async fn led_to(&self, of: String, response: Response) -> Response {
        let kind = response.headers().get(CONTENT_TYPE).and_then(|own| own.to_str().ok());
        let is_page = kind.is_some_and(|kind| kind.starts_with("text/html"));
        if !is_page || response.status().is_redirection() {
            return response;
        }
        let Some(word) = lot::word() else { return response };
        let (status, body) = (response.status(), response.into_body());
        // It is ours, and was made in memory.
        let Ok(page) = to_bytes(body, usize::MAX).await else {
            return StatusCode::INTERNAL_SERVER_ERROR.into_response();
        };
        let to = format!("{of}?answer={word}");
        let mut kept = self.kept();
        kept.push_back(Reply { of, word, status, page });
        if kept.len() > MOST {
            kept.pop_front();
        }
        Redirect::to(&to).into_response()
    }

    /// The reply of a word that a screen was answered with, where it is still kept.
    pub(crate) fn at(&self, of: &str, word: &str) -> Option<Response> {
        let kept = self.kept();
        let own = kept.iter().find(|own| own.of == of && own.word == word)?;
        Some((own.status, Html(own.page.clone())).into_response())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn led(replies: &Replies, response: Response) -> Response {
        let runtime = tokio::runtime::Builder::new_current_thread().build().unwrap();
        runtime.block_on(replies.led_to("/c/1/checks".to_owned(), response))
    }

    fn word_of(response: &Response) -> String {
        let to = response.headers()["location"].to_str().unwrap();
        to.strip_prefix("/c/1/checks?answer=").unwrap().to_owned()
    }

    #[test]
    fn a_page_is_led_to_and_can_be_looked_at_again() {
        let replies = Replies::default();
        let refused = (StatusCode::UNPROCESSABLE_ENTITY, Html("refused")).into_response();
        let response = led(&replies, refused);
        assert_eq!(response.status(), StatusCode::SEE_OTHER);
        let word = word_of(&response);
        for _ in 0..2 {
            let seen = replies.at("/c/1/checks", &word).unwrap();
            assert_eq!(seen.status(), StatusCode::UNPROCESSABLE_ENTITY);
        }
        // Of no other screen, and by no other word.
        assert!(replies.at("/c/2/checks", &word).is_none());
        assert!(replies.at("/c/1/checks", &lot::word().unwrap()).is_none());
    }

    #[test]
    fn what_leads_elsewhere_or_is_no_page_stays_and_old_pages_go() {
        let replies = Replies::default();
        let elsewhere = led(&replies, Redirect::to("/c/1/moves").into_response());
        assert_eq!(elsewhere.headers()["location"], "/c/1/moves");
        assert_eq!(led(&replies, StatusCode::NO_CONTENT.into_response()).status(), 204);
        let first = word_of(&led(&replies, Html("first").into_response()));
        for _ in 1..MOST {
            led(&replies, Html("more").into_response());
        }
        assert!(replies.at("/c/1/checks", &first).is_some());
        led(&replies, Html("one too many").into_response());
        assert!(replies.at("/c/1/checks", &first).is_none());
    }
}
