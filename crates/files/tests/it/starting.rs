//! The starter of a client's file: what is blank is refused by name, and what is uncommented
//! belongs where it stands.

use case::question::{Form, Group, Need, Question};
use files::{read_client, starter};

/// Findings as sentences.
fn said(text: &str) -> Vec<String> {
    read_client(text).remarks.iter().map(|own| crate::said_of(own).message).collect()
}

#[test]
fn every_blank_is_refused_by_its_name_and_nothing_else_is() {
    let blanks = starter::client(words::ENGLISH).matches(" = \"fill in\"").count();
    let found = said(&starter::client(words::ENGLISH));
    assert_eq!(found.len(), blanks, "{found:#?}");
    for name in ["client", "measures.hip_width", "measures.thigh_depth.right", "weight.kg"] {
        assert!(found.contains(&format!("`{name}` is not filled in yet")), "{name}: {found:#?}");
    }
    // Nobody is invented: no measure stands there that was not taken.
    assert!(!starter::client(words::ENGLISH).lines().any(|line| line.starts_with("hip_width = 3")));
}

#[test]
fn filling_in_the_blanks_makes_a_right_file() {
    let mut text = starter::client(words::ENGLISH);
    for (key, value) in [
        ("client = ", "\"X-001\""),
        ("taken_on = ", "2026-01-15"),
        ("taken_by = ", "\"OT\""),
        ("hip_width = ", "380"),
        ("left = ", "480"),
        ("right = ", "480"),
        ("kg = ", "60"),
        ("weighed_on = ", "2026-01-15"),
        ("layout = ", "\"row-six\""),
        ("size = ", "\"440x400\""),
        ("spare_cells = ", "20"),
    ] {
        let blank = format!("{key}\"fill in\"");
        assert_eq!(text.matches(&blank).count(), 1, "{key}");
        text = text.replace(&blank, &format!("{key}{value}"));
    }
    assert_eq!(said(&text), [""; 0]);
}

#[test]
fn each_line_that_is_uncommented_belongs_where_it_stands() {
    let text = starter::example(words::ENGLISH);
    let lines: Vec<&str> = text.lines().collect();
    let is_key = |line: &str| {
        line.strip_prefix("# ")
            .and_then(|rest| rest.split_once(" = "))
            .is_some_and(|(key, _)| key.chars().all(|c| c.is_ascii_lowercase() || c == '_'))
    };
    let mut tried = 0;
    let mut in_block = false;
    for (at, line) in lines.iter().enumerate() {
        in_block = line.starts_with("# [[") || in_block && is_key(line);
        if in_block || !is_key(line) {
            continue;
        }
        tried += 1;
        let with = |own| if own == at { &line[2..] } else { lines[own] };
        let changed: Vec<&str> = (0..lines.len()).map(with).collect();
        let found = said(&changed.join("\n"));
        // A layout that is built in has no parameters, and a side goes with what is not said here.
        let apart = line.contains("parameters") || line.contains("sensation_side");
        assert!(found.is_empty() || apart, "{line}: {found:?}");
    }
    assert!(tried > 30, "{tried}");
}

#[test]
fn each_block_that_is_uncommented_is_a_right_entry() {
    // A goal needs an obliquity, and there is just one change and one of each goal.
    let text = starter::example(words::ENGLISH).replacen("# obliquity = ", "obliquity = ", 1);
    let lines: Vec<&str> = text.lines().collect();
    let mut tried = 0;
    for at in (0..lines.len()).filter(|at| lines[*at].starts_with("# [[")) {
        let end =
            (at + 1..lines.len()).find(|own| !lines[*own].contains(" = ")).unwrap_or(lines.len());
        let inside = |own: usize| (at..end).contains(&own);
        let with = |own| if inside(own) { &lines[own][2..] } else { lines[own] };
        let changed: Vec<&str> = (0..lines.len()).map(with).collect();
        assert_eq!(said(&changed.join("\n")), [""; 0], "{}", lines[at + 1]);
        tried += 1;
    }
    // Limb loss, injury, four goals, change, call, and five entries of the record.
    assert_eq!(tried, 13);
}

#[test]
fn every_question_of_a_client_is_in_the_starter() {
    let text = starter::client(words::ENGLISH);
    for question in Question::ALL {
        let row = question.row();
        // An entry that no hand writes is not explained there, nor is the older form of a check.
        let entry =
            if row.group.parent().entry().is_some() { row.group.parent() } else { row.group };
        let is_unexplained = words::ENGLISH.group_comment(entry).is_empty();
        let written_by_program = entry.is_of_work() && (entry.entry().is_none() || is_unexplained);
        if row.group.root() != Group::Client || written_by_program {
            continue;
        }
        let key = format!("{} = ", row.key);
        let named = text.contains(&key)
            || row.group.form() == Form::Braces && matches!(row.need, Need::With(..) | Need::Never);
        assert!(named, "{}", question.path());
    }
}
