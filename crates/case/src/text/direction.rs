//! In which direction a character is written.

/// Ranges whose characters are written from right to left unless they say otherwise, and the marks
/// that turn the direction: Unicode Standard Annex #9 and the defaults of `DerivedBidiClass.txt`
/// (Unicode 16), which is Hebrew to Arabic, their presentation forms, and the planes' blocks of such
/// scripts.
const RIGHT_TO_LEFT: [(char, char); 9] = [
    ('\u{0590}', '\u{08FF}'),
    ('\u{200F}', '\u{200F}'),
    ('\u{202B}', '\u{202B}'),
    ('\u{202E}', '\u{202E}'),
    ('\u{2067}', '\u{2067}'),
    ('\u{FB1D}', '\u{FDFF}'),
    ('\u{FE70}', '\u{FEFE}'),
    ('\u{10800}', '\u{10FFF}'),
    ('\u{1E800}', '\u{1EFFF}'),
];

/// Whether a character is of a script that is written from right to left.
#[must_use]
pub fn is_right_to_left(character: char) -> bool {
    RIGHT_TO_LEFT.iter().any(|(first, last)| (*first..=*last).contains(&character))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hebrew_and_arabic_are_written_from_right_to_left_and_the_scripts_of_europe_are_not() {
        for text in ["שלום", "العربية", "فارسی", "ܣܘܪܝܝܐ", "ދިވެހި", "ߒߞߏ", "ﷲ"]
        {
            assert!(text.chars().all(is_right_to_left), "{text}");
        }
        for text in
            ["Español", "Ελληνικά", "Кириллица", "Tiếng Việt", "漢字", "हिन्दी", "25 mm", "\u{FEFF}"]
        {
            assert!(!text.chars().any(is_right_to_left), "{text}");
        }
    }
}
