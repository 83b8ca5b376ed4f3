//! One key of a client's file is edited, and nothing else.

use files::{EditError, read_client, remove, reorder, set, starter};

/// The file after some edits, each of which must go.
#[track_caller]
fn after(text: &str, edits: &[(&str, &str)]) -> String {
    edits.iter().fold(text.to_owned(), |text, (key, value)| {
        set(&text, key, value).unwrap_or_else(|error| panic!("{key}: {error:?}")).text
    })
}

/// The lines that differ: out of the first, and into the second.
fn changed(before: &str, after: &str) -> (Vec<String>, Vec<String>) {
    let lines = |text: &str| text.lines().map(str::to_owned).collect::<Vec<_>>();
    let (old, new) = (lines(before), lines(after));
    let head = old.iter().zip(&new).take_while(|(a, b)| a == b).count();
    let most = old.len().min(new.len()) - head;
    let tail = old.iter().rev().zip(new.iter().rev()).take(most).take_while(|(a, b)| a == b);
    let tail = tail.count();
    (old[head..old.len() - tail].to_vec(), new[head..new.len() - tail].to_vec())
}

#[track_caller]
fn check(text: &str, key: &str, value: &str, out: &[&str], into: &[&str]) {
    let edited = after(text, &[(key, value)]);
    let (old, new) = changed(text, &edited);
    assert_eq!((old.as_slice(), new.as_slice()), (&strings(out)[..], &strings(into)[..]), "{key}");
}

fn strings(words: &[&str]) -> Vec<String> {
    words.iter().map(|word| (*word).to_owned()).collect()
}

#[test]
fn a_value_takes_the_place_of_another() {
    let text = starter::example(words::ENGLISH);
    check(
        &text,
        "measures.hip_width",
        "401.5",
        &["hip_width = 380                    # greatest width of hips or thighs"],
        &["hip_width = 401.5                    # greatest width of hips or thighs"],
    );
    check(
        &text,
        "measures.thigh_depth.left",
        "470",
        &[
            "thigh_depth = { left = 480, right = 480 }  # back of the buttock to the back of the knee",
        ],
        &[
            "thigh_depth = { left = 470, right = 480 }  # back of the buttock to the back of the knee",
        ],
    );
    let edited = after(&text, &[("weight.kg", "68"), ("client", "K-17")]);
    let client = read_client(&edited).value.unwrap();
    assert_eq!(client.code.as_str(), "K-17");
    assert!((client.weighing.unwrap().weight.to_kg() - 68.0).abs() < 1e-12);
}

#[test]
fn what_is_a_comment_in_the_starter_lands_in_its_table() {
    let text = starter::example(words::ENGLISH);
    check(
        &text,
        "function.sitting_hours",
        "7",
        &["# sitting_hours = 8                # hours a day"],
        &["sitting_hours = 7                  # hours a day"],
    );
    check(
        &text,
        "child",
        "true",
        &["# child = true                     # what is known of adults says nothing then"],
        &["child = true                       # what is known of adults says nothing then"],
    );
    check(
        &text,
        "posture.hip_flexion.right",
        "85",
        &[
            "# hip_flexion = { left = 95, right = 95 }  # degrees to which each hip bends: 90 is a right angle",
        ],
        &[
            "hip_flexion = { right = 85 }               # degrees to which each hip bends: 90 is a right angle",
        ],
    );
    let oblique = after(
        &text,
        &[
            ("posture.obliquity.lower", "right"),
            ("posture.obliquity.by", "14"),
            ("posture.obliquity.at", "seat bones"),
            ("posture.obliquity.is", "partly"),
            ("posture.obliquity.reducible", "6"),
        ],
    );
    assert_eq!(read_client(&oblique).remarks, []);
    let line = "obliquity = { lower = \"right\", by = 14, at = \"seat bones\", is = \"partly\", reducible = 6 }";
    assert!(oblique.contains(line), "{oblique}");
}

#[test]
fn a_table_that_is_not_there_is_begun() {
    let text = starter::example(words::ENGLISH);
    let bare: Vec<&str> =
        text.lines().filter(|line| !line.starts_with('#') && !line.is_empty()).collect();
    let bare = bare.join("\n").replace("[skin]\n", "").replace("[posture]", "");
    let edited = after(&bare, &[("skin.sensation", "absent"), ("posture.tone", "low")]);
    let client = read_client(&edited).value.unwrap();
    assert_eq!(client.skin.sensation, Some(case::Sensation::Absent));
    assert_eq!(client.posture.tone.as_deref(), Some("low"));
    assert!(edited.find("[skin]") < edited.find("[function]"), "{edited}");
}

#[test]
fn a_side_of_sensation_goes_with_less_of_it_alone() {
    let text = starter::example(words::ENGLISH);
    let absent = after(&text, &[("skin.sensation", "absent")]);
    let one_side = after(&absent, &[("skin.sensation_side", "left")]);
    let client = read_client(&one_side).value.unwrap();
    assert_eq!(client.skin.sensation_side, Some(cushion::Side::Left));
    // Where it is as usual, it is not written.
    let usual = after(&text, &[("skin.sensation", "intact")]);
    let refused = set(&usual, "skin.sensation_side", "left");
    let Err(EditError::Wrong { text: wrong, remark }) = refused else { panic!("{refused:?}") };
    assert_eq!(&wrong[remark.span], "sensation_side");
    // Where nobody says how it is, that is still to be said.
    let alone = after(&text, &[("skin.sensation_side", "left")]);
    let read = read_client(&alone);
    let places: Vec<&str> = read.remarks.iter().map(|own| &alone[own.span.clone()]).collect();
    assert_eq!((read.value.is_none(), places), (true, vec!["sensation_side"]));
}

#[test]
fn entries_of_lists_are_added_changed_ordered_and_removed() {
    let text = after(
        &starter::example(words::ENGLISH),
        &[
            ("goal.1.want", "off-load"),
            ("goal.1.site", "coccyx"),
            ("goal.1.percent", "10"),
            ("goal.2.want", "near stock"),
            ("goal.3.want", "equal firmness"),
            ("goal.1.percent", "20"),
            ("skin.injury.1.site", "coccyx"),
            ("skin.injury.1.category", "2"),
            ("skin.injury.1.is", "open"),
            ("skin.injury.1.seen_on", "2026-01-03"),
            ("call.1.who", "Clinic"),
            ("call.1.phone", "01632 960123"),
            ("posture.limb_loss.1.side", "left"),
            ("posture.limb_loss.1.level", "hip"),
        ],
    );
    let wants = |text: &str| {
        let client = read_client(text).value.unwrap_or_else(|| panic!("{text}"));
        client.goals.iter().map(|goal| goal.want.id()).collect::<Vec<_>>()
    };
    assert_eq!(wants(&text), ["off-load-coccyx", "near-stock", "equal-firmness"]);
    let client = read_client(&text).value.unwrap();
    assert_eq!((client.skin.injuries.len(), client.posture.limb_loss.len()), (1, 1));
    let ordered = reorder(&text, "goal.3", 1).unwrap().text;
    assert_eq!(wants(&ordered), ["equal-firmness", "off-load-coccyx", "near-stock"]);
    assert_eq!(ordered.len(), text.len());
    let fewer = remove(&ordered, "goal.2").unwrap().text;
    assert_eq!(wants(&fewer), ["equal-firmness", "near-stock"]);
    // An entry that is not there is told, and one more begins one.
    let missing = set(&fewer, "goal.5.want", "near stock");
    assert!(matches!(missing, Err(EditError::NoSuchEntry { there: 2, .. })), "{missing:?}");
    assert!(remove(&fewer, "goal.3").is_err());
    assert!(reorder(&fewer, "goal.1", 3).is_err());
}

#[test]
fn keys_are_taken_away() {
    let text = starter::example(words::ENGLISH);
    let without = remove(&text, "measures.trochanter_width").unwrap().text;
    let (old, new) = changed(&text, &without);
    assert_eq!((old.len(), new.len()), (1, 0));
    let one = remove(&text, "measures.thigh_depth.left").unwrap().text;
    assert!(one.contains("thigh_depth = { right = 480 }"), "{one}");
    let other = remove(&text, "measures.thigh_depth.right").unwrap().text;
    assert!(other.contains("thigh_depth = { left = 480 }"), "{other}");
    assert!(remove(&text, "measures.seat_bone_spacing").is_err());
}

#[test]
fn a_wrong_value_gets_the_remark_of_check_and_changes_nothing() {
    let text = starter::example(words::ENGLISH);
    for (key, value, by_hand) in [
        ("measures.hip_width", "38", "hip_width = 38"),
        ("measures.hip_width", "38cm", "hip_width = \"38cm\""),
        ("measures.hip_width", "380,5", "hip_width = \"380,5\""),
        ("measures.hip_width", "nan", "hip_width = nan"),
        ("chair.base", "wood", "base = \"wood\""),
        ("cushion.size", "440X400", "size = \"440X400\""),
        ("weight.weighed_on", "3.1.2026", "weighed_on = \"3.1.2026\""),
        ("weight.lb", "132", "weighed_on = 2026-01-15\nlb = 132"),
    ] {
        let written = by_hand.split(" = ").next().unwrap();
        let lines: Vec<String> = (text.lines())
            .map(
                |line| if line.starts_with(written) { by_hand.to_owned() } else { line.to_owned() },
            )
            .collect();
        let expected = read_client(&lines.join("\n")).remarks;
        assert_eq!(expected.len(), 1, "{key}: {expected:?}");
        match set(&text, key, value) {
            Err(EditError::Wrong { remark, .. }) => {
                assert_eq!(remark.finding, expected[0].finding, "{key}");
            }
            other => panic!("{key} = {value}: {other:?}"),
        }
    }
}

#[test]
fn wrong_keys_are_told_with_what_is_meant() {
    let text = starter::example(words::ENGLISH);
    let near = |key: &str| match set(&text, key, "1") {
        Err(EditError::NoSuchKey { near, .. }) => near,
        other => panic!("{key}: {other:?}"),
    };
    assert_eq!(near("measures.hip_widht").as_deref(), Some("measures.hip_width"));
    assert_eq!(near("hip_width").as_deref(), Some("measures.hip_width"));
    assert_eq!(near("colour"), None);
    assert_eq!(near("record.1.by"), None);
    assert!(matches!(set(&text, "measures.thigh_depth", "480"), Err(EditError::EachSide(_))));
    assert!(matches!(set(&text, "posture.obliquity", "4"), Err(EditError::Table(_))));
    assert!(matches!(set(&text, "goal", "4"), Err(EditError::Table(_))));
    assert!(matches!(set("kind = \n", "client", "K-1"), Err(EditError::Unreadable(_))));
}

#[test]
fn line_ends_and_byte_order_mark_stay() {
    let text = format!("\u{feff}{}", starter::example(words::ENGLISH).replace('\n', "\r\n"));
    let edited = after(
        &text,
        &[
            ("client", "K-17"),
            ("child", "true"),
            ("function.sitting_hours", "7"),
            ("chair.sling_sag", "3"),
            ("goal.1.want", "near stock"),
            ("goal.1.because", "it suits"),
            ("call.1.who", "Clinic"),
            ("call.1.phone", "112"),
        ],
    );
    assert!(edited.starts_with('\u{feff}'));
    assert!(!edited.replace("\r\n", "").contains('\n'));
    assert!(read_client(&edited).value.is_some());
    // Without a last line end.
    let short = starter::example(words::ENGLISH);
    let short = short.split("\n# The record.").next().unwrap().trim_end();
    let edited = after(short, &[("carer.meanwhile", "a chair"), ("carer.notes", "Call us.")]);
    let client = read_client(&edited).value.unwrap();
    assert_eq!((client.carer_notes.len(), client.meanwhile.is_some()), (1, true));
}

#[test]
fn a_blank_file_is_filled_in_key_by_key() {
    let filled = after(
        &starter::client(words::ENGLISH),
        &[
            ("client", "K-17"),
            ("measures.taken_on", "2026-01-15"),
            ("measures.taken_by", "OT"),
            ("measures.hip_width", "380"),
            ("measures.thigh_depth.left", "480"),
            ("measures.thigh_depth.right", "475"),
            ("weight.kg", "60"),
            ("weight.weighed_on", "2026-01-15"),
            ("cushion.layout", "row-six"),
            ("cushion.size", "440x400"),
            ("cushion.spare_cells", "20"),
        ],
    );
    assert_eq!(read_client(&filled).remarks, []);
}
