//! Text: measured, broken, refused.

use sheets::{
    Align, Color, Page, Paper, Point, Role, SetError, Style, contrast_ratio, measure, with_unit,
    wrap,
};
use testkit::assert_near;

const BODY: Style = Style::regular(10.0);

#[test]
fn contrast_follows_published_pairs() {
    // WCAG 2.2: black on white is 21 to 1; #767676 is the lightest grey of 4.5 on white, 4.54.
    assert_near(contrast_ratio(Color::BLACK, Color::WHITE), 21.0, 1e-9);
    assert_near(contrast_ratio(Color::grey(0x76), Color::WHITE), 4.54, 0.005);
}

#[test]
fn lines_are_no_wider_than_the_room() {
    let text = "Pat every compartment level before each check, and then check both sides again.";
    let lines = wrap(text, &BODY, 40.0).unwrap();
    assert!(lines.len() > 1);
    for line in &lines {
        // A micrometre for the rounding of sums.
        assert!(measure(line, &BODY).unwrap() <= 40.0 + 1e-3, "{line}");
    }
    assert_eq!(lines.join(" "), text);
}

#[test]
fn spaces_at_a_forced_break_belong_to_no_line() {
    // No line may end before an exclamation mark, however many spaces stand before it (UAX 14).
    for text in ["pneumonoultramicroscopic         !   and", "ab       !", "wide words       ?"] {
        let lines = wrap(text, &BODY, 20.0).unwrap();
        for line in &lines {
            assert!(measure(line, &BODY).unwrap() <= 20.0 + 1e-3, "{line:?}");
            assert!(!line.starts_with(' ') && !line.ends_with(' '), "{line:?}");
        }
        let visible = |text: &str| text.replace(' ', "");
        assert_eq!(visible(&lines.concat()), visible(text));
    }
}

#[test]
fn a_number_stays_with_its_unit() {
    let text = format!("between hand and bone you need {} of cushion", with_unit(25, "mm"));
    for width in 20..60 {
        let lines = wrap(&text, &BODY, f64::from(width)).unwrap();
        assert!(lines.iter().any(|line| line.contains("25\u{a0}mm")), "{lines:?}");
    }
}

#[test]
fn letters_of_europe_and_vietnam_are_set_and_others_are_not() {
    for text in ["Ελληνικά", "Кириллица", "Tiếng Việt", "Łódź, Þórr, Ġgantija, Ĉapelo"]
    {
        assert!(text.chars().all(sheets::is_printable), "{text}");
        assert!(measure(text, &BODY).unwrap() > 5.0, "{text}");
        // Lines without such letters are set as they were broken: none is wider than the room.
        let long = format!("{text} and plain words after it, on and on, until the end of it");
        let mut page = Page::new(words::ENGLISH, Paper::A4, "A test");
        let block = page.block(Role::Paragraph);
        block.paragraph(Point::new(20.0, 20.0), 30.0, &long, &BODY, Align::Left).unwrap();
        assert!(page.texts().count() > 2);
        for run in page.texts() {
            // A micrometre for the rounding of sums.
            assert!(run.shaped.width(run.size_pt) <= 30.0 + 1e-3, "{}", run.shaped.text());
        }
    }
    for text in ["漢字", "العربية", "हिन्दी"] {
        assert!(!text.chars().all(sheets::is_printable), "{text}");
        assert!(measure(text, &BODY).is_err(), "{text}");
    }
}

#[test]
fn a_character_that_no_face_has_is_named() {
    let error = measure("left → right", &BODY).unwrap_err();
    assert!(matches!(error, SetError::Missing { character: '→', .. }), "{error}");
    assert!(error.to_string().contains("U+2192"), "{error}");
}

#[test]
fn a_word_wider_than_the_room_is_broken_where_it_must() {
    let lines = wrap("an unbreakable word", &BODY, 10.0).unwrap();
    assert_eq!(lines.concat().replace(' ', ""), "anunbreakableword");
    assert!(lines.len() > 3, "{lines:?}");
    for line in &lines {
        assert!(measure(line, &BODY).unwrap() <= 10.0 + 1e-3, "{line}");
    }
    // Nothing is broken that has room as a whole.
    assert_eq!(wrap("an unbreakable word", &BODY, 200.0).unwrap(), ["an unbreakable word"]);
    assert!(matches!(wrap("unbreakable", &BODY, 0.1), Err(SetError::TooWide { .. })));
}
