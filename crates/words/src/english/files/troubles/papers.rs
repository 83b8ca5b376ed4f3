//! English: why something cannot be put on paper, or drawn.

use case::text::is_right_to_left;
use case::{Drawn, NoPicture, NotDrawn, Said};

use super::said;

/// Why something cannot be put on paper, and what to do.
pub(super) fn not_drawn(what: &Drawn, why: &NotDrawn) -> Said {
    let cannot = match what {
        Drawn::Paper { name, of } => format!("the paper {name} of `{of}` cannot be made"),
        Drawn::Words => "the papers could not show what is to be recorded".to_owned(),
        Drawn::Form => "no paper can be made of the form".to_owned(),
        Drawn::Pattern => "the pattern cannot be drawn".to_owned(),
        Drawn::Sections => "the sections cannot be drawn".to_owned(),
        Drawn::SurveyFigure => "the figure cannot be drawn".to_owned(),
    };
    let hint = match why {
        NotDrawn::OtherCompartments | NotDrawn::OtherSize => "record a new plan",
        NotDrawn::OtherFill => "compute it anew",
        NotDrawn::Missing { .. } | NotDrawn::Unplaced { .. } => {
            "keep to letters of European languages"
        }
        NotDrawn::TooWide { .. } | NotDrawn::Overflow { .. } => "shorten the longest texts",
    };
    said(format!("{cannot}: {}", reason(why)), hint)
}

fn reason(why: &NotDrawn) -> String {
    match why {
        NotDrawn::Missing { character, text } if is_right_to_left(*character) => format!(
            "the character `{character}` (U+{:04X}) in \"{text}\" is written from right to left, which papers do not set yet; write it in letters that run from left to right",
            u32::from(*character)
        ),
        NotDrawn::Missing { character, text } => format!(
            "the font has no character `{character}` (U+{:04X}), which stands in \"{text}\"; write it another way",
            u32::from(*character)
        ),
        NotDrawn::Unplaced { character, text } => format!(
            "the character U+{:04X} in \"{text}\" cannot be placed by itself; write the letter with its accent as one character",
            u32::from(*character)
        ),
        NotDrawn::TooWide { word, width_mm, room_mm } => format!(
            "\"{word}\" is {width_mm:.1} mm wide and has {room_mm:.1} mm; shorten it or break it up"
        ),
        NotDrawn::Overflow { what, by_mm } => format!(
            "the page is full: \"{what}\" is {by_mm:.1} mm too high for the room left; shorten the text"
        ),
        NotDrawn::OtherCompartments => {
            "the recorded plan has other compartments than the layout now has".to_owned()
        }
        NotDrawn::OtherSize => {
            "the recorded plan is for another size than the cushion now has".to_owned()
        }
        NotDrawn::OtherFill => {
            "the stock fill is for another pattern than the one drawn".to_owned()
        }
    }
}

/// Why a page is not drawn as a picture.
pub(super) fn no_picture(why: &NoPicture) -> String {
    match why {
        NoPicture::Size => "the picture has no size that can be drawn".to_owned(),
        NoPicture::NotUnderstood(what) => format!("the page cannot be drawn: {what}"),
    }
}
