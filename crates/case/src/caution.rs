//! Cautions: what whoever sets up, carries or carries on should know.

/// How severe a caution is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum CautionSeverity {
    /// Good to know.
    Note,
    /// To be looked at before the client is seated.
    Warning,
    /// The client is not to be seated so.
    Stop,
}

impl CautionSeverity {
    /// How reports call it.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Note => "note",
            Self::Warning => "warning",
            Self::Stop => "stop",
        }
    }
}

/// A sentence with its reason.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Caution {
    /// How reports call it.
    pub id: &'static str,
    /// How severe it is.
    pub severity: CautionSeverity,
    /// What is said.
    pub text: String,
    /// Where the rule comes from.
    pub source: &'static str,
}
