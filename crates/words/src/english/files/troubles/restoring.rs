//! English: why no client's file is made of the code on a card.

use case::{CardCodeFault, CodePart, NotRestored, Said};

use super::said;

/// Why no client's file is made of the code on a card, and what to do.
pub(super) fn about(why: &NotRestored) -> Said {
    match why {
        NotRestored::Code(fault) => code(*fault),
        NotRestored::NoPdf { file } => said(
            format!("`{file}` cannot be read as a PDF"),
            "take the PDF of a setup card or a take-home sheet, or the text of the code",
        ),
        NotRestored::NothingAttached { file } => said(
            format!("no code is attached to `{file}`"),
            "take the PDF of a setup card or a take-home sheet as it was made, or read the code on the paper with a phone",
        ),
        NotRestored::Needed { part, name, head } => said(
            format!(
                "the code needs the {} `{name}` whose digest begins with {head}, and it is not here",
                what(*part)
            ),
            "ask whoever made the card for its file, and give it along",
        ),
        NotRestored::OtherText { part, name, head, there, digest } => said(
            format!(
                "the code needs the {} `{name}` whose digest begins with {head}, and {there} is another one: its digest is {digest}",
                what(*part)
            ),
            "ask whoever made the card for the file that it was made with: the same counts would be another fill",
        ),
        NotRestored::OtherCompartments { layout, size, counts, compartments } => said(
            format!(
                "the code has {counts} counts, and the layout `{layout}` has {compartments} compartments in {size}"
            ),
            "do not fill by it: this program did not make this code",
        ),
        NotRestored::OtherWord { word } => said(
            format!(
                "the check word {word} does not belong to the layout, size, cell and counts of the code"
            ),
            "do not fill by it: this program did not make this code",
        ),
        NotRestored::OtherSerial { given, coded } => said(
            format!("the code is of the cushion with the serial `{coded}`, not `{given}`"),
            "look at the tag again, and take the card of this cushion",
        ),
        NotRestored::NoSerial { given } => said(
            format!("the code has no serial, so `{given}` cannot be compared with it"),
            "compare size, layout and check word by hand, and leave the serial away",
        ),
    }
}

fn what(part: CodePart) -> &'static str {
    match part {
        CodePart::Layout => "layout",
        CodePart::Cell => "cell",
    }
}

/// Why a text is no code.
fn code(fault: CardCodeFault) -> Said {
    match fault {
        CardCodeFault::NotOne => said(
            "this is not the code of a card: it does not begin with SW1/",
            "read the code on a setup card or a take-home sheet with a phone, and give all of its text",
        ),
        CardCodeFault::OtherVersion => said(
            "the code is written in another version than SW1, which is read here",
            "look at its first four signs again; if they are as read, a newer program made the card",
        ),
        CardCodeFault::Sign { sign, at } => said(
            format!("sign {at} of the code is `{sign}`, which no code has"),
            "codes have capital letters, digits and % - . / : alone; read it again",
        ),
        CardCodeFault::TooLong { signs } => said(
            format!("the text has {signs} signs, more than any code"),
            "give the text of one code, and nothing else",
        ),
        CardCodeFault::Mistyped => said(
            "the code does not check: a sign is wrong, missing or too much",
            "read it again, with a phone rather than by hand; nothing was guessed",
        ),
        CardCodeFault::Unreadable => said(
            "the code checks, and says nothing that can be read: this program did not make it",
            "do not fill by it; take the paper itself",
        ),
    }
}
