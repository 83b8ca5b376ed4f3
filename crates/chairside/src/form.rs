//! What a form sent.

use axum::extract::{FromRequest, RawForm, Request};
use axum::http::StatusCode;

/// Names and values, in the order of the form.
#[derive(Clone, Debug, Default)]
pub(crate) struct Sent(Vec<(String, String)>);

impl<S: Send + Sync> FromRequest<S> for Sent {
    type Rejection = StatusCode;

    async fn from_request(request: Request, state: &S) -> Result<Self, Self::Rejection> {
        let raw = RawForm::from_request(request, state).await;
        let raw = raw.map_err(|_| StatusCode::PAYLOAD_TOO_LARGE)?;
        Ok(Self::read(&raw.0))
    }
}

impl Sent {
    /// Reads `application/x-www-form-urlencoded`, as the URL Standard says.
    pub(crate) fn read(bytes: &[u8]) -> Self {
        let pairs = bytes.split(|byte| *byte == b'&').filter(|pair| !pair.is_empty());
        let pair = |pair: &[u8]| {
            let at = pair.iter().position(|byte| *byte == b'=').unwrap_or(pair.len());
            (decoded(&pair[..at]), decoded(pair.get(at + 1..).unwrap_or_default()))
        };
        Self(pairs.map(pair).collect())
    }

    /// The last value of a name.
    pub(crate) fn get(&self, name: &str) -> Option<&str> {
        self.0.iter().rev().find(|own| own.0 == name).map(|own| own.1.as_str())
    }

    /// The value of a name; nothing where it was not sent.
    pub(crate) fn or_nothing(&self, name: &str) -> &str {
        self.get(name).unwrap_or_default()
    }

    /// A whole number.
    pub(crate) fn number<T: core::str::FromStr>(&self, name: &str) -> Option<T> {
        self.get(name)?.trim().parse().ok()
    }

    /// All that was sent.
    pub(crate) fn all(&self) -> impl Iterator<Item = (&str, &str)> {
        self.0.iter().map(|(name, value)| (name.as_str(), value.as_str()))
    }

    /// Values whose names begin so, each with the rest of its name.
    pub(crate) fn after<'a>(&'a self, prefix: &'a str) -> impl Iterator<Item = (&'a str, &'a str)> {
        self.all().filter_map(move |(name, value)| Some((name.strip_prefix(prefix)?, value)))
    }
}

fn decoded(bytes: &[u8]) -> String {
    let mut out = Vec::with_capacity(bytes.len());
    let mut at = 0;
    while at < bytes.len() {
        let hex = bytes.get(at + 1..at + 3).and_then(|two| core::str::from_utf8(two).ok());
        let byte =
            hex.filter(|_| bytes[at] == b'%').and_then(|two| u8::from_str_radix(two, 16).ok());
        match (bytes[at], byte) {
            (_, Some(byte)) => {
                out.push(byte);
                at += 3;
                continue;
            }
            (b'+', _) => out.push(b' '),
            (other, _) => out.push(other),
        }
        at += 1;
    }
    // A text area sends line ends as two characters.
    String::from_utf8_lossy(&out).replace("\r\n", "\n")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_and_values_are_decoded() {
        let sent = Sent::read(b"a=1+2&b=%C3%BC%0D%0Ax&a=%3c3&c&=d&%zz=%");
        assert_eq!(sent.get("a"), Some("<3"));
        assert_eq!(sent.get("b"), Some("\u{fc}\nx"));
        assert_eq!(sent.get("c"), Some(""));
        assert_eq!(sent.get("%zz"), Some("%"));
        assert_eq!(sent.get("e"), None);
    }
}
