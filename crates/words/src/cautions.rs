//! What is said of cautions, sizes and the next look.

use case::{
    Caution, HeightEffect, NoSizeToMake, SizeMargin, SizeMisfit, SizeToMake, SizingRule, Source,
    WhyReCheck,
};

/// What is said of cautions, sizes and the next look.
pub trait CautionWords {
    /// A caution: sentences.
    fn caution(&self, caution: &Caution) -> String;

    /// Where a rule comes from.
    fn source(&self, source: Source) -> &'static str;

    /// Why a size does not suit: a clause about "it".
    fn size_misfit(&self, misfit: &SizeMisfit) -> String;

    /// What a size leaves free around the client: a clause without a verb, or, where there is too
    /// little, what it lacks.
    fn size_margin(&self, margin: &SizeMargin) -> String;

    /// What a supplier is asked for: sentences.
    fn size_to_make(&self, size: &SizeToMake) -> String;

    /// Why nothing can be asked for: a sentence.
    fn no_size_to_make(&self, why: &NoSizeToMake) -> String;

    /// A rule of sizing: sentences.
    fn sizing_rule(&self, rule: &SizingRule) -> String;

    /// What the cushion's height means around it: sentences.
    fn height_effect(&self, effect: &HeightEffect) -> String;

    /// Why the set-up is looked at again: a clause.
    fn why_re_check(&self, why: &WhyReCheck) -> String;
}
