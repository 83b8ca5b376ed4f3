//! Reads the goals: `[[goal]]`, the most important first.

use case::{FrontSides, Goal, Posture, Want};
use cushion::{Length, Side};

use crate::client::entries;
use crate::cursor::Table;
use crate::limits::{GOAL_MM, OFF_LOAD_PERCENT};
use crate::skin::site;

/// The words for what can be wanted.
const WANTS: [(&str, Kind); 9] = [
    ("correct obliquity", Kind::Correct),
    ("accommodate obliquity", Kind::Accommodate),
    ("off-load", Kind::OffLoad),
    ("pre-ischial shelf", Kind::Shelf),
    ("lower front", Kind::LowerFront),
    ("medial support", Kind::Medial),
    ("lateral support", Kind::Lateral),
    ("equal firmness", Kind::Equal),
    ("near stock", Kind::NearStock),
];

#[derive(Clone, Copy)]
enum Kind {
    Correct,
    Accommodate,
    OffLoad,
    Shelf,
    LowerFront,
    Medial,
    Lateral,
    Equal,
    NearStock,
}

pub(crate) fn goals(table: &Table<'_>, posture: &Posture) -> Option<Vec<Goal>> {
    let goals = entries(table, "goal", goal)?;
    let place = || table.key_span("goal");
    let has = |want: fn(&Want) -> bool| goals.iter().any(|goal| want(&goal.want));
    let (correct, accommodate) = (
        has(|want| *want == Want::CorrectObliquity),
        has(|want| *want == Want::AccommodateObliquity),
    );
    if correct && accommodate {
        let message = "an obliquity is either corrected or accommodated";
        table.remarks.error(
            place(),
            message,
            "keep one goal; what is partly flexible is corrected as far as it goes",
        );
        return None;
    }
    if (correct || accommodate) && posture.obliquity.is_none() {
        let message = "a goal is about an obliquity, and none is written down";
        table.remarks.error(
            place(),
            message,
            "add `obliquity = { lower = ..., by = ..., at = ..., is = ... }` under [posture]",
        );
        return None;
    }
    for (at, goal) in goals.iter().enumerate() {
        if goals[..at].iter().any(|earlier| earlier.want.id() == goal.want.id()) {
            let message = format!("the goal \"{}\" is written twice", goal.want.words());
            table.remarks.error(place(), message, "keep one of the two");
            return None;
        }
    }
    Some(goals)
}

fn goal(table: &Table<'_>) -> Option<Goal> {
    let kind = table.required("want").and_then(|value| value.choice("goal", &WANTS));
    let mm = |key| {
        let value = table.required(key)?;
        value.number_in("height", GOAL_MM, "mm").map(Length::from_mm)
    };
    let want = kind.and_then(|kind| match kind {
        Kind::Correct => Some(Want::CorrectObliquity),
        Kind::Accommodate => Some(Want::AccommodateObliquity),
        Kind::OffLoad => off_load(table),
        Kind::Shelf => mm("height_mm").map(|height| Want::Shelf { height }),
        Kind::LowerFront => lower_front(table),
        Kind::Medial => mm("height_mm").map(|height| Want::MedialSupport { height }),
        Kind::Lateral => mm("height_mm").map(|height| Want::LateralSupport { height }),
        Kind::Equal => Some(Want::EqualFirmness),
        Kind::NearStock => Some(Want::NearStock),
    });
    let because = table.optional("because").and_then(|value| value.sentence());
    if kind.is_some() {
        table.finish();
    }
    Some(Goal { want: want?, because })
}

fn off_load(table: &Table<'_>) -> Option<Want> {
    let site = table.required("site").and_then(|value| site(&value));
    let percent = table
        .required("percent")
        .and_then(|value| value.number_in("part to take off", OFF_LOAD_PERCENT, "%"));
    Some(Want::OffLoad { site: site?, share: percent? / 100.0 })
}

fn lower_front(table: &Table<'_>) -> Option<Want> {
    let sides = table.required("side").and_then(|value| {
        let words = [
            ("left", FrontSides::One(Side::Left)),
            ("right", FrontSides::One(Side::Right)),
            ("both", FrontSides::Both),
        ];
        value.choice("side of the front", &words)
    });
    let by = table
        .required("by_mm")
        .and_then(|value| value.number_in("height", GOAL_MM, "mm"))
        .map(Length::from_mm);
    Some(Want::LowerFront { sides: sides?, by: by? })
}
