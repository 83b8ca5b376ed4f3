//! Layouts and cells that can be read and are still wrong, or are worth a remark.

use cushion::Severity;
use files::{BUILT_IN_LAYOUTS, Known, check, place_of, starter};

use crate::said_of;

/// Each remark as its weight, its line and its message.
#[track_caller]
fn said(text: &str, expected: &[(Severity, &str, &str)]) {
    let remarks =
        check(text, &Known { printable: &|own| own != '\u{2603}', ..Known::NOTHING }).remarks;
    let found: Vec<(Severity, &str, String)> = remarks
        .iter()
        .map(|remark| {
            let line = place_of(text, remark.span.start).line;
            (remark.severity, text.lines().nth(line - 1).unwrap().trim(), said_of(remark).message)
        })
        .collect();
    let begins = |(own, wanted): (&(Severity, &str, String), &(Severity, &str, &str))| {
        own.0 == wanted.0 && own.1.starts_with(wanted.1) && own.2 == wanted.2
    };
    let alike = found.len() == expected.len() && found.iter().zip(expected).all(begins);
    assert!(alike, "{found:#?}");
}

#[test]
fn a_layout_of_ones_own_does_not_bear_a_built_in_name() {
    for layout in BUILT_IN_LAYOUTS {
        said(layout.text, &[]);
        let own = layout.text.replace("wall_height = 80", "wall_height = 81");
        let message =
            format!("`{}` is the name of a built-in layout, which this is not", layout.name);
        said(&own, &[(Severity::Remark, "name", &message)]);
    }
}

#[test]
fn words_that_no_font_has_are_shown_at_their_compartment() {
    let text = starter::layout().replace("under the seat bone", "under the \u{2603} bone");
    assert_ne!(text, starter::layout());
    let remarks = check(&text, &Known { printable: &|own| own != '\u{2603}', ..Known::NOTHING });
    let ids: Vec<&str> = remarks.remarks.iter().map(|remark| remark.finding.id()).collect();
    assert_eq!(ids, ["value-unprintable"]);
    assert!(text[remarks.remarks[0].span.clone()].contains('\u{2603}'));
}

/// The bound is the one quoted in `tests/reference/pillow_bounds.csv`: 0.217 of the cube of the
/// edge; of 50 mm that is 27.1 ml.
#[test]
fn a_cell_holds_no_more_than_two_sheets_can() {
    let with = |volume: &str| {
        let mut lines: Vec<String> = starter::cell().lines().map(str::to_owned).collect();
        for line in &mut lines {
            if line.starts_with("edge_mm") {
                *line = "edge_mm = 50".to_owned();
            } else if line.starts_with("inflated_volume") {
                *line = format!("inflated_volume_ml = {volume}");
            }
        }
        lines.join("\n")
    };
    said(&with("27.0"), &[]);
    said(
        &with("27.3"),
        &[(
            Severity::Error,
            "inflated_volume_ml",
            "two sheets of this edge cannot hold 27.3 ml; they hold 27.1 ml at most",
        )],
    );
}

#[test]
fn a_rating_that_falls_is_shown_at_its_size() {
    let layout = BUILT_IN_LAYOUTS[0]
        .text
        .replace("\"400x400\", max_user_weight_kg = 80", "\"400x400\", max_user_weight_kg = 92");
    let remarks = check(&layout, &Known::NOTHING).remarks;
    let own = remarks.iter().find(|own| said_of(own).message.contains("larger")).unwrap();
    assert!(layout[own.span.clone()].contains("400x400"));
    assert_eq!(
        said_of(own).message,
        "this size is rated for more weight than the larger 440x400 (at 400x400)"
    );
}

#[test]
fn all_sizes_that_fail_are_in_one_remark() {
    // The middle row of the built-in layout, moved: 38 mm at 250 mm of depth, 45 at 300, 53 at 360.
    let layout = BUILT_IN_LAYOUTS[0].text;
    let layout = layout.replace("68% - 83", "68% - 40").replace("68% - 91", "68% - 48");
    let layout = layout.replace("75% - 63", "75% - 35");
    let remarks = check(&layout, &Known::NOTHING).remarks;
    let errors: Vec<String> = remarks
        .iter()
        .filter(|own| own.severity == Severity::Error)
        .map(|own| said_of(own).message)
        .collect();
    assert_eq!(errors.len(), 1, "{errors:#?}");
    assert!(
        errors[0].ends_with("narrower than a cell of 51 mm (at 250x250, 300x300)"),
        "{errors:#?}"
    );
}
