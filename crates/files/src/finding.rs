//! What can be found about a text: values with their numbers and words as written, no sentences.
//!
//! How a finding is said stands in [`crate::prose`].

use case::question::{Group, Question};
use case::{Date, SiteName, Want};
use cushion::{FaultKind, Length, Mass, Size, SizeError};

use crate::Kind;

/// Something that is to be said about a text.
#[derive(Clone, Debug, PartialEq)]
pub enum Finding {
    /// About the file as a whole.
    File(FileFinding),
    /// The text cannot be read here.
    Syntax(SyntaxFinding),
    /// About a key.
    Key(KeyFinding),
    /// About a value by itself.
    Value(ValueFinding),
    /// About a value that is a word.
    Word(WordFinding),
    /// About values of a client's file together.
    Client(ClientFinding),
    /// About what is wanted for a client.
    Wish(WishFinding),
    /// About the record of a client's file.
    Record(RecordFinding),
    /// About a layout or a cell.
    Design(DesignFinding),
    /// Found elsewhere, where it was put into words.
    Said {
        /// What is wrong.
        message: String,
        /// What to do.
        hint: Option<String>,
    },
}

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
        wanted: Kind,
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
}

/// The types of TOML.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Type {
    /// In quotes.
    Text,
    /// With or without a point.
    Number,
    /// Without a point.
    Whole,
    /// True or false.
    Truth,
    /// A day.
    Date,
    /// In square brackets.
    List,
    /// In braces or under a heading.
    Table,
}

/// What a length that cannot be right looks like.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Looks {
    /// Centimetres in a file of millimetres.
    Centimetres,
    /// Inches in a file of millimetres.
    Inches,
    /// Millimetres in a file of inches.
    Millimetres,
    /// Nothing known.
    Wrong,
}

/// The unit in which a file gives lengths.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LengthUnit {
    /// Millimetres.
    Millimetres,
    /// Inches.
    Inches,
}

/// About a value by itself.
#[derive(Clone, Debug, PartialEq)]
pub enum ValueFinding {
    /// It is of another type than is wanted.
    Type {
        /// What it is.
        found: Type,
        /// What is wanted.
        wanted: Type,
    },
    /// A number in words: with a unit, a comma or quotes; with what to write, where it is clear.
    NumberInWords {
        /// As written.
        written: String,
        /// What to write.
        write: Option<String>,
    },
    /// NaN or infinite.
    NotFinite,
    /// A length that cannot be right.
    Length {
        /// Of what.
        question: Question,
        /// As written.
        number: f64,
        /// In which unit.
        unit: LengthUnit,
        /// What it looks like.
        looks: Looks,
    },
    /// A number out of the range of its question.
    Range {
        /// Of what.
        question: Question,
        /// As written.
        number: f64,
    },
    /// A whole number out of range.
    Whole {
        /// As written.
        written: String,
        /// The least.
        least: i64,
        /// The most.
        most: i64,
    },
    /// Not a day.
    Date(String),
    /// A text of nothing.
    Empty,
    /// A line break or another control character.
    Control,
    /// A character that no font of the papers has.
    Unprintable(char),
    /// Not the word that must stand here.
    Word {
        /// The word.
        wanted: &'static str,
        /// As written.
        written: String,
    },
}

/// About a value that is a word.
#[derive(Clone, Debug, PartialEq)]
pub enum WordFinding {
    /// Not a name; with what is meant, perhaps.
    Name(String, Option<String>),
    /// None of the words of its question; with what is meant, perhaps.
    Choice {
        /// Of what.
        question: Question,
        /// As written.
        written: String,
        /// What is meant.
        near: Option<&'static str>,
    },
    /// Not a client's code.
    Code(String),
    /// A client's code that a name may be in.
    NameInCode(String),
    /// Not a telephone number.
    Phone(String),
    /// Not a size; with what is meant, perhaps.
    Size(SizeError, Option<String>),
}

/// About values of a client's file together.
#[derive(Clone, Debug, PartialEq)]
pub enum ClientFinding {
    /// Measures without a day and a person.
    NotSigned,
    /// Hip width and thigh depth may be swapped.
    HipsWiderThanThighs,
    /// The hips are the widest.
    TrochantersWiderThanHips,
    /// The thighs differ by more than 60 mm.
    ThighsDiffer,
    /// Longer than nearly anybody's.
    LongThigh,
    /// Longer than nearly anybody's.
    LongLeg,
    /// Hips that are unusual for the weight.
    HipsForWeight {
        /// Narrow, and not wide.
        narrow: bool,
        /// The weight.
        weight: Mass,
    },
    /// Parameters of a layout that is no plugin's.
    ParametersWithoutPlugin,
    /// A day that is still to come.
    Future {
        /// The day.
        date: Date,
        /// The day on which the file is checked.
        today: Date,
    },
}

/// About what is wanted for a client, and what it is about.
#[derive(Clone, Debug, PartialEq)]
pub enum WishFinding {
    /// The part of an obliquity that can be taken away is more than there is.
    MoreThanThereIs,
    /// An obliquity is to be corrected and accommodated.
    BothOfObliquity,
    /// A goal is about an obliquity and none is there.
    NoObliquity,
    /// A goal is written twice.
    GoalTwice(Want),
    /// Goals, and no weight to plan by.
    NoWeightForGoals,
    /// An obliquity less than hands can measure: centimetres, perhaps.
    SmallObliquity {
        /// As written.
        number: f64,
        /// In which unit.
        unit: LengthUnit,
    },
    /// An injury on one side and relief on the other.
    OtherSide {
        /// Where the injury is.
        injured: SiteName,
        /// What is to be relieved.
        relieved: SiteName,
    },
}

/// About the record.
#[derive(Clone, Debug, PartialEq)]
pub enum RecordFinding {
    /// No entry is called so.
    NoSuchEntry(String),
    /// Days that go back.
    Order,
    /// A fitting check that does not say whether it passed.
    NotSaidToPass,
    /// A check that cannot be read, and why.
    Check(String),
    /// Counts that do not add up.
    Sum {
        /// Of the counts.
        sum: u32,
        /// As written.
        total: u32,
    },
    /// A compartment is counted twice.
    CountedTwice(u8),
    /// No counts.
    NoCounts,
    /// Not a digest.
    Digest,
}

/// About a layout or a cell.
#[derive(Clone, Debug, PartialEq)]
pub enum DesignFinding {
    /// Not a measure.
    Measure(String),
    /// A measure larger than any cushion.
    LargeMeasure,
    /// Not two measures.
    Point,
    /// Not a rounding.
    Rounding(String),
    /// A seed of other than two measures.
    Seed,
    /// A curve that has a bow.
    CurveWithBow,
    /// No sizes.
    NoSizes,
    /// A size is listed twice.
    SizeTwice(Size),
    /// A fault of a layout, at a size where it is found at one.
    Fault(FaultKind, Option<Size>),
    /// Film that is hardly to be had: a cell of this weight and edge.
    Film {
        /// Of one cell.
        weight: Mass,
        /// Of the flat square.
        edge: Length,
    },
}

macro_rules! wrapped {
    ($($inner:ident => $variant:ident),+) => {
        $(impl From<$inner> for Finding {
            fn from(inner: $inner) -> Self {
                Self::$variant(inner)
            }
        })+
    };
}

wrapped! {
    FileFinding => File,
    SyntaxFinding => Syntax,
    KeyFinding => Key,
    ValueFinding => Value,
    WordFinding => Word,
    ClientFinding => Client,
    WishFinding => Wish,
    RecordFinding => Record,
    DesignFinding => Design
}

impl LengthUnit {
    /// One of it in mm; exact by definition.
    #[must_use]
    pub fn in_mm(self) -> f64 {
        match self {
            Self::Millimetres => 1.0,
            Self::Inches => 25.4,
        }
    }
}

impl Finding {
    /// How reports call it: a word for programs, which no language changes.
    #[must_use]
    pub fn id(&self) -> &'static str {
        match self {
            Self::File(own) => own.id(),
            Self::Syntax(own) => own.id(),
            Self::Key(own) => own.id(),
            Self::Value(own) => own.id(),
            Self::Word(own) => own.id(),
            Self::Client(own) => own.id(),
            Self::Wish(own) => own.id(),
            Self::Record(own) => own.id(),
            Self::Design(own) => own.id(),
            Self::Said { .. } => "said",
        }
    }
}

macro_rules! ids {
    ($($name:ident { $($variant:ident => $id:literal),+ $(,)? })+) => {
        $(impl $name {
            fn id(&self) -> &'static str {
                match self {
                    $(Self::$variant { .. } => $id,)+
                }
            }
        })+
    };
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
    }
    ValueFinding {
        Type => "value-type",
        NumberInWords => "value-number-in-words",
        NotFinite => "value-not-finite",
        Length => "value-length",
        Range => "value-range",
        Whole => "value-whole",
        Date => "value-date",
        Empty => "value-empty",
        Control => "value-control",
        Unprintable => "value-unprintable",
        Word => "value-word",
    }
    WordFinding {
        Name => "word-name",
        Choice => "word-choice",
        Code => "word-code",
        NameInCode => "word-name-in-code",
        Phone => "word-phone",
        Size => "word-size",
    }
    ClientFinding {
        NotSigned => "client-not-signed",
        HipsWiderThanThighs => "client-hips-wider-than-thighs",
        TrochantersWiderThanHips => "client-trochanters-wider-than-hips",
        ThighsDiffer => "client-thighs-differ",
        LongThigh => "client-long-thigh",
        LongLeg => "client-long-leg",
        HipsForWeight => "client-hips-for-weight",
        ParametersWithoutPlugin => "client-parameters-without-plugin",
        Future => "client-future",
    }
    WishFinding {
        MoreThanThereIs => "wish-more-than-there-is",
        BothOfObliquity => "wish-both-of-obliquity",
        NoObliquity => "wish-no-obliquity",
        GoalTwice => "wish-goal-twice",
        NoWeightForGoals => "wish-no-weight-for-goals",
        SmallObliquity => "wish-small-obliquity",
        OtherSide => "wish-other-side",
    }
    RecordFinding {
        NoSuchEntry => "record-no-such-entry",
        Order => "record-order",
        NotSaidToPass => "record-not-said-to-pass",
        Check => "record-check",
        Sum => "record-sum",
        CountedTwice => "record-counted-twice",
        NoCounts => "record-no-counts",
        Digest => "record-digest",
    }
    DesignFinding {
        Measure => "design-measure",
        LargeMeasure => "design-large-measure",
        Point => "design-point",
        Rounding => "design-rounding",
        Seed => "design-seed",
        CurveWithBow => "design-curve-with-bow",
        NoSizes => "design-no-sizes",
        SizeTwice => "design-size-twice",
        Fault => "design-fault",
        Film => "design-film",
    }
}
