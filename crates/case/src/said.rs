//! Something in words.

/// Something in words of one language.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Said {
    /// What is the matter, without a full stop.
    pub message: String,
    /// What to do, where there is something.
    pub hint: Option<String>,
}

impl Said {
    /// A message with what to do.
    pub fn new(message: impl Into<String>, hint: impl Into<String>) -> Self {
        Self { message: message.into(), hint: Some(hint.into()) }
    }
}
