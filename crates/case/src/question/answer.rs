//! What an answer to a question changes.

/// What the program answers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Answer {
    /// How the file is read: units, kinds, what belongs together.
    Reading,
    /// Which made size suits, and what a size means for footrests and feet.
    Sizing,
    /// Counts for the goals.
    Plan,
    /// How the client is expected to sit.
    Prediction,
    /// What whoever reads a plan is told to mind.
    Cautions,
    /// What a check says about mistakes in the set-up.
    Mistakes,
    /// The pattern and the stock fill.
    Pattern,
    /// The papers.
    Papers,
    /// When to look again.
    ReCheck,
}

/// Why an answer changes nothing that the program says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unused {
    /// It is in words, for whoever reads the file.
    ForReaders,
    /// The model of the body does not have it.
    NotModelled,
    /// No rule with a source says what follows from it.
    NoRule,
}

/// What an answer is used for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Use {
    /// It changes these.
    Changes(&'static [Answer]),
    /// It stands on the setup card, and changes nothing that is computed.
    OnCard(Unused),
    /// It changes nothing.
    Nothing(Unused),
}
