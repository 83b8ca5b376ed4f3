//! What is said of wrong texts: line, message, hint.

use case::Said;
use files::{Known, check, place_of, starter};

use crate::said_of;

/// Each remark as `line: message; hint`.
fn said(text: &str) -> Vec<String> {
    let remarks = check(text, &Known::NOTHING).remarks;
    let line = |remark: &files::Remark| place_of(text, remark.span.start).line;
    remarks
        .iter()
        .map(|remark| {
            let Said { message, hint } = said_of(remark);
            format!("{}: {message}; {}", line(remark), hint.as_deref().unwrap_or("no hint"))
        })
        .collect()
}

/// Replaces one line of a text, found by how it begins; with its place, counted from 0.
#[track_caller]
pub(crate) fn with_line(text: &str, begins: &str, with: &str) -> (usize, String) {
    let place = text.lines().position(|line| line.trim_start().starts_with(begins));
    let place = place.unwrap_or_else(|| panic!("there is no line `{begins}`"));
    let lines: Vec<&str> =
        text.lines().enumerate().map(|(at, line)| if at == place { with } else { line }).collect();
    (place, lines.join("\n"))
}

/// Does the same and checks what is said.
#[track_caller]
fn check_line(text: &str, begins: &str, with: &str, expected: &[&str]) {
    let (place, text) = with_line(text, begins, with);
    let expected: Vec<String> =
        expected.iter().map(|words| words.replace("HERE", &(place + 1).to_string())).collect();
    assert_eq!(said(&text), expected);
}

/// What follows from one bracket that is missing is no further mistake.
#[test]
fn one_missing_bracket_is_said_once() {
    let (at, text) =
        with_line(starter::layout(), "front-corner", "front-corner = [\"50%\", \"100%\"");
    let told = said(&text);
    let [told] = told.as_slice() else { panic!("{told:?}") };
    // The line below it is where that shows.
    assert!(told.starts_with(&format!("{}: ", at + 2)), "{told}");
    // What cannot be read has no value that could be wrong.
    let (at, text) = with_line(&starter::example(words::ENGLISH), "hip_width", "hip_width = = 3");
    let told = said(&text);
    assert!(told.iter().all(|own| own.starts_with(&format!("{}: ", at + 1))), "{told:?}");
}

/// A wrong line of a file: how the line begins that it stands in place of, the line, what is said.
pub(crate) type WrongLine = (&'static str, &'static str, &'static [&'static str]);

/// Wrong lines of a client's file.
pub(crate) const CLIENT_LINES: &[WrongLine] = &[
    ("hip_width", "hip_widht = 380", &["HERE: unknown key `hip_widht`; did you mean `hip_width`?"]),
    (
        "hip_width",
        "hip_width = 38",
        &["HERE: 38 mm cannot be the hip width; this looks like centimetres; write millimetres"],
    ),
    (
        "hip_width",
        "hip_width = 4000",
        &["HERE: 4000 mm cannot be the hip width; it lies between 130 and 850 mm; measure again"],
    ),
    (
        "external_knee_width",
        "external_knee_width = 13.5",
        &[
            "HERE: 13.5 mm cannot be the external knee width; this looks like centimetres; write millimetres",
        ],
    ),
    ("hip_width", "hip_width = nan", &["HERE: this is not a finite number; write a number"]),
    ("hip_width", "hip_width = -inf", &["HERE: this is not a finite number; write a number"]),
    (
        "hip_width",
        "hip_width = \"380\"",
        &["HERE: `380` is a text, not a number; write 380, without unit, comma or quotes"],
    ),
    (
        "external_knee_width",
        "hip_width = 381",
        &["HERE: this key is written twice; keep one of the two"],
    ),
    (
        "kg",
        "kg = 900",
        &["HERE: a body weight of 900 kg cannot be right; it lies between 5 and 350 kg"],
    ),
    ("taken_by", "", &["15: `taken_on` is given and `taken_by` is not; add `taken_by = \"OT\"`"]),
    (
        "size",
        "size = \"440X400\"",
        &[
            "HERE: a size is width x depth, such as `440x400` in millimetres or `17x16in` in inches; write \"440x400\"",
        ],
    ),
    (
        "size",
        "size = \"4000x400\"",
        &[
            "HERE: 4000 x 400 mm is no cushion: width and depth lie between 150 and 800 mm; write millimetres, or add `in` for inches",
        ],
    ),
    (
        "size",
        "size = \"17x16\"",
        &[
            "HERE: 17 x 16 mm is no cushion: width and depth lie between 150 and 800 mm; write millimetres, or add `in` for inches",
        ],
    ),
    (
        "spare_cells",
        "spare_cells = -3",
        &["HERE: -3 cannot be right here; it lies between 0 and 5000"],
    ),
    (
        "client",
        "client = \"Mary\"",
        &[
            "HERE: `Mary` is not a code for a client; never a name: take 2 to 24 letters, digits and hyphens with at least one digit, no hyphen in front, no device such as COM1",
        ],
    ),
    (
        "weighed_on",
        "weighed_on = \"15.1.2026\"",
        &["HERE: `15.1.2026` is not a date; write year-month-day, as 2026-03-31"],
    ),
    ("format", "format = 2", &["HERE: format 2 is not known; this program reads `format = 1`"]),
];

/// Wrong lines of a layout.
pub(crate) const LAYOUT_LINES: &[WrongLine] = &[
    (
        "mid ",
        "mid = [\"0%\", \"half\"]",
        &[
            "HERE: `half` is not a measure; write millimetres (40), a share (\"25%\") or both (\"52% + 5\", \"52% - 5\")",
        ],
    ),
    (
        "across",
        "across = { through = [\"mid\", \"sidde\"] }",
        &["HERE: no point is called `sidde`; add it to [points], or correct the name"],
    ),
    (
        "legs",
        "legs = { through = [\"mid\", \"front\"], bows = 3 }",
        &["HERE: unknown key `bows`; did you mean `bow`?"],
    ),
    (
        "legs",
        "",
        &[
            "49: this seed lies in the compartment `front-left` (at 400x400, 440x400); move one seed, or part the two by a seam",
        ],
    ),
    (
        "rear  =",
        "rear = { seed = [\"0%\", \"25%\"], number = 2, words = \"w\", for = \"seat bone\" }",
        &[
            "49: the number 2 is given twice (at 400x400, 440x400); give each compartment a number of its own",
        ],
    ),
    (
        "class",
        "class = \"comfort\"",
        &[
            "HERE: no class is called `comfort`; write \"general use\", \"skin protection\", \"positioning\", \"skin protection and positioning\"",
        ],
    ),
    (
        "rear  =",
        "rear = { seed = [\"0%\", \"25%\"], number = 1, words = { en = \"w\", Spanish = \"p\" }, for = \"seat bone\" }",
        &[
            "HERE: `Spanish` is not the tag of a language; write it as in { en = \"...\", es = \"...\" }",
        ],
    ),
    (
        "rear  =",
        "rear = { seed = [\"0%\", \"25%\"], number = 1, words = { es = \"p\" }, for = \"seat bone\" }",
        &[
            "HERE: `words` is not there in English; add `en = \"...\"`: it stands where a language is not there",
        ],
    ),
    (
        "rear  =",
        "rear = { seed = [\"0%\", \"25%\"], number = 1, words = { en = \"w\", es = 3 }, for = \"seat bone\" }",
        &["HERE: this is a whole number, not a text; write it in quotes, as in \"...\""],
    ),
    (
        "rear  =",
        "rear = { seed = [\"0%\", \"25%\"], number = 1, words = [\"w\"], for = \"seat bone\" }",
        &["HERE: this is a list, not a text; write it in quotes, as in \"...\""],
    ),
    ("rim", "rim = \"bxed\"", &["HERE: no rim is called `bxed`; write \"boxed\""]),
    (
        "rim",
        "rim = true",
        &["HERE: this is true or false, not a text; write it in quotes, as in \"...\""],
    ),
    (
        "wall_height",
        "wall_height = 8",
        &["HERE: a wall height of 8 mm cannot be right; it lies between 20 and 200 mm"],
    ),
];

#[test]
fn client_files_with_one_wrong_line() {
    for (begins, with, expected) in CLIENT_LINES {
        check_line(&starter::example(words::ENGLISH), begins, with, expected);
    }
}

#[test]
fn layouts_with_one_wrong_line() {
    for (begins, with, expected) in LAYOUT_LINES {
        check_line(starter::layout(), begins, with, expected);
    }
}

#[test]
fn sides_of_the_cushion_are_held_or_open() {
    let text = starter::example(words::ENGLISH)
        .replace("base = \"solid\"", "cushion_sides = \"hold\"\nbase = \"solid\"");
    assert_eq!(said(&text), ["94: no state of the sides is called `hold`; write \"held\""]);
}

#[test]
fn three_mistakes_are_three_remarks() {
    let text = starter::example(words::ENGLISH)
        .replace("hip_width = 380", "hip_width = 38")
        .replace("base = \"solid\"", "base = \"wood\"")
        .replace("spare_cells = 20", "spares = 20");
    let found = said(&text);
    assert_eq!(found.len(), 3, "{found:#?}");
    assert!(found[0].contains("38 mm cannot be the hip width"));
    assert!(found[1].contains("no seat base is called `wood`"));
    // What is misspelt is not missing too.
    assert!(found[2].contains("unknown key `spares`; did you mean `spare_cells`?"));
}

#[test]
fn an_entry_whose_kind_is_misspelt_is_wrong_and_says_so() {
    let text = starter::example(words::ENGLISH)
        + "\n[[record]]\nwhat5 = \"weighing\"\non = 2026-02-20\nby = \"OT\"\nkg = 70\n";
    let found = said(&text);
    assert_eq!(found.len(), 1, "{found:?}");
    assert!(found[0].ends_with("the key `what` is missing; add `what = ...`"), "{found:?}");
}

#[test]
fn texts_that_are_none_of_ours() {
    assert_eq!(
        said("name = \"x\"\n"),
        [
            "1: this file does not say which kind of ours it is; begin it with `format = 1` and `kind = \"layout\"`, `\"cell\"` or `\"client\"`"
        ]
    );
    let found = said("kind = \n");
    assert_eq!(found.len(), 1, "{found:?}");
    assert!(found[0].starts_with("1: nothing is written after the equals sign"), "{found:?}");
    let large = format!("# {}", "x".repeat(files::MOST_BYTES));
    assert_eq!(
        said(&large),
        ["1: this file is larger than 1 MB; it cannot be one of ours; name another"]
    );
}

#[test]
fn a_record_whose_counts_do_not_add_up() {
    let text = crate::appending::recorded().replace("total = 150", "total = 151");
    let found = said(&text);
    assert_eq!(found.len(), 1, "{found:?}");
    assert!(found[0].ends_with("the counts add up to 150, and the total says 151; one of them was changed by hand; record the plan again"), "{found:?}");
}

#[test]
fn what_was_written_over_many_lines_is_quoted_in_one() {
    let page = "a line of it\n".repeat(200);
    let text =
        starter::example(words::ENGLISH).replace("\"X-001\"", &format!("\"\"\"{page}\"\"\""));
    assert!(text.contains(&page));
    let found = said(&text);
    assert!(!found.is_empty());
    assert!(found.iter().all(|said| !said.contains('\n') && said.len() < 1000), "{found:?}");
}
