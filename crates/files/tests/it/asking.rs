//! What is asked about and taken, what is told once, and how much is told.

use case::{Date, Said};
use files::{Checked, Known, Severity, check, place_of, starter};

use crate::said_of;

fn checked(text: &str) -> Checked {
    let known = Known {
        today: Some(Date::constant(2026, 3, 1)),
        printable: &|c| !('\u{4e00}'..).contains(&c),
    };
    check(text, &known)
}

/// What is asked of a text that is right, as `message; hint`.
#[track_caller]
fn asked(text: &str) -> Vec<String> {
    let remarks = checked(text).remarks;
    for remark in &remarks {
        assert_eq!(remark.severity, Severity::Remark, "{}", said_of(remark).message);
    }
    remarks
        .iter()
        .map(|own| {
            let Said { message, hint } = said_of(own);
            format!("{message}; {}", hint.unwrap_or_default())
        })
        .collect()
}

/// What is said of a wrong text: `line: message; hint`.
fn said(text: &str) -> Vec<String> {
    let line = |remark: &files::Remark| place_of(text, remark.span.start).line;
    let words = |own: &files::Remark| {
        let Said { message, hint } = said_of(own);
        format!("{}: {message}; {}", line(own), hint.unwrap_or_default())
    };
    checked(text).remarks.iter().map(words).collect()
}

/// The example with one thing put in the place of another, or after the table's heading.
#[track_caller]
fn with(from: &str, to: &str) -> String {
    let text = starter::example(words::ENGLISH);
    assert_eq!(text.matches(from).count(), 1, "{from}");
    text.replacen(from, to, 1)
}

const OBLIQUITY: &str =
    "obliquity = { lower = \"left\", by = BY, at = \"seat bones\", is = \"fixed\" }\n";

fn oblique(by: &str) -> String {
    with("\n# hip_flexion", &format!("\n{}# hip_flexion", OBLIQUITY.replace("BY", by)))
}

#[test]
fn what_may_be_meant_otherwise_is_asked_and_taken() {
    assert_eq!(asked(&starter::example(words::ENGLISH)), [""; 0]);
    assert_eq!(
        asked(&oblique("2.5")),
        [
            "an obliquity of 2.5 mm is less than hands can measure; is it 2.5 cm? write 25, or leave it away"
        ]
    );
    assert_eq!(asked(&oblique("12")), [""; 0]);
    assert_eq!(asked(&oblique("0")), [""; 0]);
    assert_eq!(
        asked(&with("weighed_on = 2026-01-15", "weighed_on = 2026-10-15")),
        [
            "2026-10-15 is still to come: today is 2026-03-01; is the year right? a day is written year-month-day"
        ]
    );
    // The day itself has come, and a review lies ahead.
    assert_eq!(asked(&with("weighed_on = 2026-01-15", "weighed_on = 2026-03-01")), [""; 0]);
    assert_eq!(asked(&with("# next_review", "next_review")), [""; 0]);
    for code in ["Maria1958", "JohnSmith1980"] {
        let found = asked(&with("\"X-001\"", &format!("\"{code}\"")));
        assert_eq!(found.len(), 1, "{code}: {found:?}");
        assert!(found[0].starts_with(&format!("`{code}` looks like a name")), "{found:?}");
    }
    assert_eq!(
        asked(&with("taken_by = \"OT\"", "taken_by = \"OT 漢\"")),
        ["the papers cannot print `漢`; write it in letters of European languages"]
    );
    let heavy = starter::cell().replace("film_mass_g = 0.8", "film_mass_g = 8");
    assert_eq!(
        asked(&heavy),
        [
            "a film mass of 8 g is unusual for a cell of 50 mm; weigh a batch that was counted by hand, and divide by its count"
        ]
    );
}

#[test]
fn relief_on_the_other_side_of_an_injury_is_asked_about() {
    let client = |injured: &str, is: &str, relieved: &str| {
        starter::example(words::ENGLISH)
            + &format!(
                "\n[[skin.injury]]\nsite = \"{injured}\"\ncategory = \"2\"\nis = \"{is}\"\n\
                 seen_on = 2026-01-15\n[[goal]]\nwant = \"off-load\"\nsite = \"{relieved}\"\n\
                 percent = 10\n"
            )
    };
    assert_eq!(
        asked(&client("left-seat-bone", "healing", "right-seat-bone")),
        [
            "load is to be taken off the right seat bone, and the injury is at the left seat bone; are the sides right? left and right are the client's"
        ]
    );
    assert_eq!(asked(&client("left-seat-bone", "healing", "left-seat-bone")), [""; 0]);
    assert_eq!(asked(&client("left-seat-bone", "healed", "right-seat-bone")), [""; 0]);
    assert_eq!(asked(&client("coccyx", "healing", "right-seat-bone")), [""; 0]);
}

#[test]
fn a_lower_front_for_a_leg_that_is_lost_is_asked_about() {
    let asked = |lost: &str, front: &str| {
        asked(&format!(
            "{}\n[[posture.limb_loss]]\nside = \"{lost}\"\nlevel = \"above knee\"\n\
             [[goal]]\nwant = \"lower front\"\nside = \"{front}\"\nby_mm = 6\n",
            starter::example(words::ENGLISH)
        ))
    };
    assert_eq!(
        asked("left", "left"),
        [
            "the front is to be lower on the left, and the left leg is lost; a front is lowered for the leg that is there: is the other side meant?"
        ]
    );
    assert_eq!(asked("left", "right"), [""; 0]);
    assert_eq!(asked("right", "both"), [""; 0]);
}

#[test]
fn goals_without_a_weight_are_asked_about() {
    let text = starter::example(words::ENGLISH);
    let start = text.find("[weight]").unwrap();
    let end = text.find("[posture]").unwrap();
    let without = format!("{}{}", &text[..start], &text[end..]);
    assert_eq!(asked(&without), [""; 0]);
    let found = asked(&(without + "\n[[goal]]\nwant = \"near stock\"\n"));
    assert_eq!(found.len(), 1, "{found:?}");
    assert!(found[0].starts_with("nothing can be planned for the goals without"), "{found:?}");
}

#[test]
fn one_mistake_is_one_remark_that_says_what_to_write() {
    for (from, to, expected) in [
        (
            "hip_width = 380",
            "hip_width = 38,5",
            "`38,5` has a comma in it; write 38.5 with a point",
        ),
        (
            "hip_width = 380",
            "hip_width = \"38,5\"",
            "`38,5` is a text, not a number; write 38.5, without unit, comma or quotes",
        ),
        (
            "hip_width = 380",
            "hip_width = 38cm",
            "`38cm` is a text, not a number; write 380, without unit, comma or quotes",
        ),
        (
            "units = \"mm\"",
            "units = “mm”",
            "these are the quotes of a word processor; write \"mm\" with plain quotes, in a plain text editor",
        ),
        ("base = \"solid\"", "base = solid", "`solid` has no quotes; write \"solid\""),
        ("base = \"solid\"", "base = \"Solid\"", "no seat base is called `Solid`; write \"solid\""),
        (
            "kg = 60 ",
            "kg = 60 kg",
            "`60 kg` is a text, not a number; write 60, without unit, comma or quotes",
        ),
        ("size = \"440x400\" ", "size = 440x400 ", "`440x400` has no quotes; write \"440x400\""),
        (
            "{ left = 480, right = 480 }",
            "{ left = 480,5, right = 480 }",
            "`480,5` has a comma in it; write 480.5 with a point",
        ),
        (
            "weighed_on = 2026-01-15",
            "weighed_on = 15.1.2026",
            "`15.1.2026` is not a date; write year-month-day, as 2026-03-31",
        ),
        (
            "hip_width = 380",
            "hip_width = ",
            "nothing is written after the equals sign; write what is asked, or begin the line with #",
        ),
        (
            "units = \"mm\"",
            "units = \"cm\"",
            "`cm` is not a unit for measures; write \"mm\", \"in\"",
        ),
        ("[measures]", "[measure]", "unknown key `measure`; did you mean `measures`?"),
        (
            "spare_cells = 20",
            "sitting_hours = 8\nspare_cells = 20",
            "unknown key `sitting_hours`; it belongs under [function]",
        ),
        ("kind = \"client\"", "kind = \"layout\"", ""),
        (
            "\"X-001\"",
            "\"-X1\"",
            "`-X1` is not a code for a client; never a name: take 2 to 24 letters, digits and hyphens with at least one digit, no hyphen in front, no device such as COM1",
        ),
        (
            "\"X-001\"",
            "\"com1\"",
            "`com1` is not a code for a client; never a name: take 2 to 24 letters, digits and hyphens with at least one digit, no hyphen in front, no device such as COM1",
        ),
    ] {
        let found = said(&with(from, to));
        if expected.is_empty() {
            continue;
        }
        assert_eq!(found.len(), 1, "{to}: {found:#?}");
        let (_, words) = found[0].split_once(": ").unwrap();
        assert_eq!(words, expected, "{to}");
    }
    let change = "\n[[change]]\ncompartment = \"pelvis left\"\ncells = 3\nreason = \"x\"\n";
    let found = said(&(starter::example(words::ENGLISH) + change));
    assert_eq!(found.len(), 1, "{found:#?}");
    assert!(found[0].ends_with("`pelvis left` is not a name; write \"pelvis-left\""), "{found:?}");
}

#[test]
fn a_mistake_in_the_head_hides_no_table_below_it() {
    // Every table that a file may have stands below a code that is wrong and a unit that is none.
    let text = starter::example(words::ENGLISH)
        .replace("\"X-001\"", "\"Mary\"")
        .replace("\"mm\"", "\"cm\"");
    let found = said(&text);
    assert_eq!(found.len(), 2, "{found:#?}");
}

#[test]
fn a_layout_that_is_handed_in_as_a_client_is_one_remark() {
    let remarks = files::read_client(starter::layout()).remarks;
    assert_eq!(remarks.len(), 1, "{remarks:#?}");
    let Said { message, hint } = said_of(&remarks[0]);
    assert_eq!(message, "this is a file of kind `layout`, not `client`");
    assert_eq!(hint.unwrap(), "name the client's file here; it names the layout and the cell");
}

#[test]
fn at_most_fifty_remarks_are_made_and_the_rest_is_counted() {
    let calls = |count: usize| {
        starter::example(words::ENGLISH)
            + &"[[call]]\nwho = \"a\"\nphone = \"none\"\n".repeat(count)
    };
    assert_eq!(said(&calls(50)).len(), 50);
    let found = said(&calls(53));
    assert_eq!(found.len(), 51);
    assert!(found[50].contains("there are 3 more remarks"), "{}", found[50]);
    // What is left out counts as an error too.
    let mut text = starter::cell().to_owned();
    text += &(0..60).map(|at| format!("x{at} = 1\n")).collect::<String>();
    assert!(files::read_cell(&text).value.is_none());
}

#[test]
fn answers_that_change_nothing_are_named_with_why() {
    assert_eq!(checked(&starter::example(words::ENGLISH)).unused, []);
    let text = with("# tone", "tone").replacen("# popliteal_angle", "popliteal_angle", 1);
    let unused = checked(&text).unused;
    assert_eq!(
        words::ENGLISH.unused_answers(&unused),
        [
            "changes no answer, since it is for whoever reads the file: `posture.tone`",
            "changes no answer, since the model of the body does not have it: `posture.popliteal_angle`",
        ]
    );
    // Of a wrong file only what is wrong is said.
    assert_eq!(checked(&text.replace("kg = 60", "kg = nan")).unused, []);
}
