//! Giving up a search from outside.

/// A question that a search asks now and then: whether it is to stop.
///
/// It may be asked from several threads: once before each search for where a body comes to rest, and
/// once before each step of one. A search that is told to stop ends there, without numbers.
#[derive(Clone, Copy, Default)]
pub struct Stop<'a> {
    question: Option<&'a (dyn Fn() -> bool + Sync)>,
}

impl<'a> Stop<'a> {
    /// Never stops.
    #[must_use]
    pub const fn never() -> Self {
        Self { question: None }
    }

    /// Stops as soon as the question is answered with `true`.
    #[must_use]
    pub const fn when(question: &'a (dyn Fn() -> bool + Sync)) -> Self {
        Self { question: Some(question) }
    }

    /// Asks.
    #[must_use]
    pub fn is_wanted(self) -> bool {
        self.question.is_some_and(|question| question())
    }
}

impl std::fmt::Debug for Stop<'_> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(if self.question.is_some() { "Stop::when(..)" } else { "Stop::never()" })
    }
}
