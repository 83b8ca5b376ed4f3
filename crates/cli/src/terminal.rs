//! The terminal: whether to colour, and whether a person is looking on.

use std::io::{IsTerminal as _, Write as _};

use crate::failure::Failure;

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

/// Whether a person reads stdout: then it may say more than the bare answer.
pub(crate) fn someone_reads_stdout() -> bool {
    std::io::stdout().is_terminal()
}

/// Writes the answer to stdout.
///
/// # Errors
///
/// Fails where stdout cannot be written; see [`Failure::write`] for a reader that has gone.
pub(crate) fn answer(text: &str) -> Result<(), Failure> {
    let mut stdout = std::io::stdout().lock();
    let written = stdout.write_all(text.as_bytes()).and_then(|()| stdout.flush());
    written.map_err(|error| Failure::write("the answer", &error))
}
