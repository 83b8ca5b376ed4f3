//! Where layouts come from: built in, or drawn by something that this crate does not know.

use std::collections::BTreeMap;
use std::fmt;
use std::ops::Range;

use crate::{Layout, Length, Name, Severity, Size};

/// What is asked of a source of layouts.
#[derive(Clone, Debug, PartialEq)]
pub struct LayoutRequest {
    /// The layout's name as a client's file or the command line writes it, such as `row-six`.
    /// By its form a source tells whether it is one of its own.
    pub name: String,
    /// The size that it is wanted for.
    pub size: Size,
    /// Values for parameters of the layout, by name.
    pub parameters: BTreeMap<Name, f64>,
}

/// A measure of the client by which a parameter of a layout may be set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BodyMeasure {
    /// Between the lowest points of the ischial tuberosities.
    SeatBoneSpacing,
    /// Back of the buttock to the back of the knee, on the client's left.
    ThighDepthLeft,
    /// The same on the client's right.
    ThighDepthRight,
    /// Greatest width of hips or thighs.
    HipWidth,
    /// Between the outsides of the trochanters.
    TrochanterWidth,
}

impl BodyMeasure {
    /// The measure in words.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::SeatBoneSpacing => "seat bone spacing",
            Self::ThighDepthLeft => "thigh depth on the client's left",
            Self::ThighDepthRight => "thigh depth on the client's right",
            Self::HipWidth => "hip width",
            Self::TrochanterWidth => "trochanter width",
        }
    }
}

/// Returns a measure of the client where it is known; `&|_| None` where there is no client.
pub type Measured<'a> = &'a dyn Fn(BodyMeasure) -> Option<Length>;

/// Something that knows layouts by name, asked from any thread.
///
/// All layouts but those in files come through this one door.
pub trait LayoutSource: Send + Sync {
    /// Returns the layout; where it is drawn for one size, it is made in that size only.
    ///
    /// A parameter has the value that the request gives, else the one that was `measured`.
    ///
    /// # Errors
    ///
    /// Fails where the source does not know the name, and where it does not answer rightly.
    fn layout(
        &self,
        request: &LayoutRequest,
        measured: Measured<'_>,
    ) -> Result<DrawnLayout, LayoutError>;
}

/// A layout with where it comes from.
#[derive(Clone, Debug, PartialEq)]
pub struct DrawnLayout {
    /// The layout.
    pub layout: Layout,
    /// Its text, by whose digest it is known again.
    pub text: String,
    /// What messages call the text, such as `built-in layout row-six`.
    pub origin: String,
    /// The name and version of the program that drew it, which records and papers name; none
    /// where the text is kept as it is.
    pub drawn_by: Option<String>,
}

/// Whose move it is where there is no layout.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LayoutErrorBy {
    /// That of the person who asked: another name, another value, a measure.
    Asker,
    /// That of the author of the source.
    Source,
    /// That of whoever looks after this computer.
    System,
}

/// Why a source has no layout to give.
#[derive(Clone, Debug, PartialEq)]
pub struct LayoutError {
    /// Why.
    pub why: NoLayout,
    /// The same in a sentence without a full stop, as the source says it.
    pub said: String,
    /// What to do, where the source knows.
    pub advice: Option<String>,
}

/// The reasons for which there is no layout.
#[derive(Clone, Debug, PartialEq)]
pub enum NoLayout {
    /// By its form, the name is one of another source.
    OtherSource,
    /// The source has no layout of this name.
    UnknownName {
        /// The names that are.
        known: Vec<String>,
    },
    /// The layout has no such parameter.
    UnknownParameter {
        /// The name that was given.
        given: String,
        /// The layout's parameters.
        known: Vec<String>,
    },
    /// A parameter must be measured or given, and was not.
    NotGiven {
        /// The parameter.
        parameter: String,
        /// The measure by which it may be set.
        measure: Option<BodyMeasure>,
    },
    /// A value is outside the range of its parameter, or is no number.
    OutOfRange {
        /// The parameter.
        parameter: String,
        /// The value.
        value: f64,
        /// The least that is taken.
        least: f64,
        /// The greatest that is taken.
        greatest: f64,
    },
    /// The source draws no such layout, for a reason of its own.
    Refused,
    /// What the source drew is no right layout.
    WrongDrawing {
        /// What messages call the text.
        origin: String,
        /// What it answered.
        text: String,
        /// What is wrong with it.
        remarks: Vec<Remark>,
    },
    /// The source did not answer as it should.
    SourceFault,
    /// The computer does not let the source answer.
    SystemFault,
}

impl NoLayout {
    /// Whose move it is next.
    #[must_use]
    pub fn by(&self) -> LayoutErrorBy {
        match self {
            Self::WrongDrawing { .. } | Self::SourceFault => LayoutErrorBy::Source,
            Self::SystemFault => LayoutErrorBy::System,
            _ => LayoutErrorBy::Asker,
        }
    }
}

impl fmt::Display for LayoutError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.said)
    }
}

impl std::error::Error for LayoutError {}

/// One thing to say about a text.
#[derive(Clone, Debug, PartialEq)]
pub struct Remark {
    /// Whether the text can be used in spite of it.
    pub severity: Severity,
    /// The bytes that it is about; within the text, on borders of characters.
    pub span: Range<usize>,
    /// What is wrong.
    pub message: String,
    /// What to do.
    pub hint: Option<String>,
}

/// Sources that are asked in turn, until one has the layout or fails to give it.
pub struct InTurn<'a>(pub Vec<&'a dyn LayoutSource>);

impl LayoutSource for InTurn<'_> {
    /// Where none knows the name, the first that might have known it speaks, with the names of
    /// all.
    fn layout(
        &self,
        request: &LayoutRequest,
        measured: Measured<'_>,
    ) -> Result<DrawnLayout, LayoutError> {
        let mut unknown: Option<LayoutError> = None;
        let mut all = Vec::new();
        for source in &self.0 {
            match source.layout(request, measured) {
                Err(LayoutError { why: NoLayout::OtherSource, .. }) => {}
                Err(LayoutError { why: NoLayout::UnknownName { known }, said, advice }) => {
                    all.extend(known);
                    let why = NoLayout::OtherSource;
                    unknown = unknown.or(Some(LayoutError { why, said, advice }));
                }
                answered => return answered,
            }
        }
        Err(match unknown {
            Some(error) => LayoutError { why: NoLayout::UnknownName { known: all }, ..error },
            None => LayoutError {
                why: NoLayout::OtherSource,
                said: format!("no layout is called `{}`", request.name),
                advice: None,
            },
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A source that answers every name with an error.
    struct Says(NoLayout, &'static str);

    impl LayoutSource for Says {
        fn layout(&self, _: &LayoutRequest, _: Measured<'_>) -> Result<DrawnLayout, LayoutError> {
            Err(LayoutError { why: self.0.clone(), said: self.1.to_owned(), advice: None })
        }
    }

    fn unknown(names: &[&str]) -> NoLayout {
        NoLayout::UnknownName { known: names.iter().map(|&name| name.to_owned()).collect() }
    }

    #[track_caller]
    fn check(sources: &[Says], why: NoLayout, said: &str) {
        let sources = sources.iter().map(|source| source as &dyn LayoutSource).collect();
        let size = Size::new(Length::from_mm(440.0), Length::from_mm(400.0)).unwrap();
        let request = LayoutRequest { name: "rows".to_owned(), size, parameters: BTreeMap::new() };
        let error = InTurn(sources).layout(&request, &|_| None).unwrap_err();
        assert_eq!((error.why, &*error.said), (why, said));
    }

    #[test]
    fn sources_are_asked_until_one_knows_the_name() {
        let not_mine = || Says(NoLayout::OtherSource, "not mine");
        check(&[], NoLayout::OtherSource, "no layout is called `rows`");
        check(&[not_mine()], NoLayout::OtherSource, "no layout is called `rows`");
        check(
            &[not_mine(), Says(unknown(&["a"]), "first"), Says(unknown(&["b"]), "second")],
            unknown(&["a", "b"]),
            "first",
        );
        // One that knows the name and has no answer is not passed over.
        check(
            &[Says(unknown(&["a"]), "first"), Says(NoLayout::SourceFault, "it broke"), not_mine()],
            NoLayout::SourceFault,
            "it broke",
        );
    }
}
