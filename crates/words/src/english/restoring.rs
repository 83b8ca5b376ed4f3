//! English: what was found again by the code on a card.

use case::{CardCode, NoCardCode, Restored};

/// Who signs for counts that a code has told.
pub(super) const BY: &str = "code on a card";

/// What was found again, and what it is worth.
pub(super) fn told(restored: &Restored) -> String {
    let Restored { file, code } = restored;
    let counts: Vec<String> = code.counts.iter().map(ToString::to_string).collect();
    let counts = counts.join(", ");
    format!(
        "Restored into `{file}`: the counts of {} for `{}` in {}, by the numbers of the compartments {counts}. They are an ESTIMATE until hands have checked them on the client: the code does not know what is in the cushion now. All else is blank.",
        plan(code),
        code.layout,
        code.size
    )
}

/// Why the counts are in the record.
pub(super) fn why(code: &CardCode) -> String {
    format!(
        "restored from the code of {}, on the day when it was read; an estimate until it is checked",
        plan(code)
    )
}

/// What a restored file is, and what it is not.
pub(super) fn head(code: &CardCode) -> String {
    format!(
        "RESTORED FROM A CODE, NOT CHECKED: the counts of {}.\n\
         An estimate until hands have checked it on the client. Count what is in the cushion.\n\
         All else is blank: measure again, and fill in.",
        plan(code)
    )
}

/// Why papers have no code.
pub(super) fn no_code(why: NoCardCode) -> String {
    format!(
        "the papers have no code by which the counts are found again: it would have {} signs, and has room for {}; keep a copy of the client's file",
        why.signs, why.most
    )
}

fn plan(code: &CardCode) -> String {
    format!("plan {}, check word {}", code.mark.number, code.mark.word)
}
