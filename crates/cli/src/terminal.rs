//! The terminal: whether to colour, and whether a person is looking on.

use std::io::{IsTerminal as _, Write as _};

use crate::failure::Failure;
use crate::remarks;

/// When to colour messages.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, clap::ValueEnum)]
pub(crate) enum Color {
    /// On a terminal, unless the environment has NO_COLOR
    #[default]
    Auto,
    /// Always
    Always,
    /// Never
    Never,
}

impl Color {
    /// Whether messages on stderr are coloured.
    pub(crate) fn on_stderr(self) -> bool {
        match self {
            Self::Always => true,
            Self::Never => false,
            Self::Auto => {
                let refused = std::env::var_os("NO_COLOR").is_some_and(|value| !value.is_empty());
                let dumb = std::env::var_os("TERM").is_some_and(|term| term == "dumb");
                !refused && !dumb && std::io::stderr().is_terminal()
            }
        }
    }

    /// The same choice in the argument parser's words, for its own messages.
    pub(crate) fn for_parser(self) -> clap::ColorChoice {
        match self {
            Self::Auto => clap::ColorChoice::Auto,
            Self::Always => clap::ColorChoice::Always,
            Self::Never => clap::ColorChoice::Never,
        }
    }
}

/// Where answers and messages go.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Terminal {
    color: bool,
    json: bool,
}

impl Terminal {
    /// Returns the terminal that the program was started in.
    pub(crate) fn new(color: Color, json: bool) -> Self {
        Self { color: color.on_stderr(), json }
    }

    /// Whether answers and failures are reports in JSON, one on stdout.
    pub(crate) fn is_json(self) -> bool {
        self.json
    }

    /// Writes the answer to stdout.
    ///
    /// # Errors
    ///
    /// Fails where stdout cannot be written; see [`Failure::write`] for a reader that has gone.
    pub(crate) fn answer(self, words: &str) -> Result<(), Failure> {
        let mut stdout = std::io::stdout().lock();
        let written = stdout.write_all(words.as_bytes()).and_then(|()| stdout.flush());
        written.map_err(|error| Failure::answer(&error))
    }

    /// Says something on stderr, where it does not mix with the answer.
    pub(crate) fn say(self, words: impl FnOnce(bool) -> String) {
        // There is nobody left to tell where stderr cannot be written.
        let _ = std::io::stderr().write_all(words(self.color).as_bytes());
    }

    /// Says each sentence on stderr as a warning; a report in JSON has its warnings in itself.
    pub(crate) fn warn(self, sentences: &[String]) {
        if self.json {
            return;
        }
        for sentence in sentences {
            self.say(|color| remarks::warning(sentence, color));
        }
    }

    /// Whether a person reads stdout: then it may say more than the bare answer.
    pub(crate) fn is_read_by_a_person(self) -> bool {
        std::io::stdout().is_terminal()
    }
}
