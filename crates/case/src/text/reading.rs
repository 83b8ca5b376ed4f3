//! What keeps a text from being read: the file, its syntax, a key.

use super::ids;
use crate::FileKind;
use crate::question::{Group, Question};

/// About a file as a whole.
#[derive(Clone, Debug, PartialEq)]
pub enum FileFinding {
    /// Larger than any of ours.
    TooLarge,
    /// It does not say of which kind it is.
    NoKind,
    /// It is of another kind than is wanted.
    OtherKind {
        /// What it says.
        written: String,
        /// What is wanted.
        wanted: FileKind,
    },
    /// A format that this program does not read.
    Format(i64),
    /// So many remarks more than are shown.
    More(usize),
}

/// What keeps a text from being read.
#[derive(Clone, Debug, PartialEq)]
pub enum SyntaxFinding {
    /// A key is written twice.
    Twice,
    /// A heading is written twice.
    HeadingTwice,
    /// Quotes of a word processor.
    TypographicQuotes(String),
    /// A text without quotes.
    NoQuotes(String),
    /// Nothing after the equals sign.
    NoValue,
    /// A number with a comma.
    DecimalComma(String),
    /// Yes or no in another word.
    Truth(String),
    /// A number that begins with a nought.
    LeadingZero(String),
    /// Anything else, as the parser of TOML says it.
    Other(String),
}

/// About a key.
#[derive(Clone, Debug, PartialEq)]
pub enum KeyFinding {
    /// It is not there, and must be.
    Missing(Question),
    /// A table is not there, and must be.
    MissingGroup(Group),
    /// The client's left or right is not there, and must be.
    MissingSide(&'static str),
    /// Nothing is called so here.
    Unknown {
        /// As written.
        key: String,
        /// What is meant, perhaps.
        near: Option<&'static str>,
        /// What is known here.
        known: Vec<&'static str>,
        /// The table in which it is known.
        belongs: Option<Group>,
    },
    /// It says nothing beside another key's word.
    NotBeside {
        /// The key.
        question: Question,
        /// The other key.
        other: &'static str,
        /// The words with which it goes.
        words: &'static [&'static str],
    },
    /// It and another are both given.
    Both(Question, &'static str),
    /// Neither it nor another is given.
    Neither(Question, &'static str),
    /// It is given, and the one that goes with it is not.
    Without {
        /// What is given.
        given: Question,
        /// What is not.
        missing: Question,
    },
    /// It was to be filled in; on one side of the client's, where there are two.
    Blank(Question, Option<&'static str>),
    /// A name of the author's own that breaks the rule of names.
    NotAName(String),
    /// Not the tag of a language.
    NotALanguage(String),
    /// There are words in other languages and none in English.
    NoEnglish(Question),
}

impl KeyFinding {
    /// Whether it says that something is not there which must be, and nothing of what is there.
    #[must_use]
    pub fn is_missing(&self) -> bool {
        matches!(
            self,
            Self::Missing(_)
                | Self::MissingGroup(_)
                | Self::MissingSide(_)
                | Self::Neither(..)
                | Self::Without { .. }
        )
    }
}

ids! {
    FileFinding {
        TooLarge => "file-too-large",
        NoKind => "file-no-kind",
        OtherKind => "file-other-kind",
        Format => "file-format",
        More => "file-more",
    }
    SyntaxFinding {
        Twice => "syntax-twice",
        HeadingTwice => "syntax-heading-twice",
        TypographicQuotes => "syntax-typographic-quotes",
        NoQuotes => "syntax-no-quotes",
        NoValue => "syntax-no-value",
        DecimalComma => "syntax-decimal-comma",
        Truth => "syntax-truth",
        LeadingZero => "syntax-leading-zero",
        Other => "syntax-other",
    }
    KeyFinding {
        Missing => "key-missing",
        MissingGroup => "key-missing-group",
        MissingSide => "key-missing-side",
        Unknown => "key-unknown",
        NotBeside => "key-not-beside",
        Both => "key-both",
        Neither => "key-neither",
        Without => "key-without",
        Blank => "key-blank",
        NotAName => "key-not-a-name",
        NotALanguage => "key-not-a-language",
        NoEnglish => "key-no-english",
    }
}
