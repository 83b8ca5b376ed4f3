//! How findings are said to whoever reads the terminal or a report.

use std::sync::OnceLock;

use case::text::TextFinding;
use case::{Caution, Finding, Said};
use casework::OpenCase;
use clap::builder::PossibleValuesParser;
use cushion::Pattern;
use words::{ENGLISH, LANGUAGES, Language};

/// The language of this run.
static LANGUAGE: OnceLock<&'static dyn Language> = OnceLock::new();

/// The tags of all languages, as the argument parser wants them.
pub(crate) fn tags() -> PossibleValuesParser {
    PossibleValuesParser::new(LANGUAGES.map(Language::tag))
}

/// Takes the language of a tag for this run, before anything is said; English where there is none.
pub(crate) fn take(tag: Option<&str>) {
    // Whatever was taken first holds: one run speaks one language.
    let _ = LANGUAGE.set(tag.and_then(words::by_tag).unwrap_or(ENGLISH));
}

/// The language in which this run speaks.
pub(crate) fn language() -> &'static dyn Language {
    LANGUAGE.get().copied().unwrap_or(ENGLISH)
}

/// How everything about a case is said: with lengths as its file has them.
pub(crate) fn about(case: &OpenCase) -> &'static dyn Language {
    language().with_lengths_in(case.client.value.lengths)
}

/// Says a finding about a case.
pub(crate) fn finding(finding: &Finding) -> String {
    language().finding(finding)
}

/// What is to be known first of a pattern at a size that its layout is not made in: that it is not
/// rated.
pub(crate) fn not_rated(pattern: &Pattern) -> Vec<Finding> {
    let rated = pattern.max_user_weight().is_some();
    let unrated = Finding::Caution(Caution::NoRating { size: pattern.size() });
    (!rated).then_some(unrated).into_iter().collect()
}

/// Says a finding about a text.
pub(crate) fn text(finding: &TextFinding) -> Said {
    language().about_text(finding)
}
