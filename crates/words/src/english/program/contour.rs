//! English: the virtual loaded-contour and overload test.

use super::super::parts::cells;
use crate::{ContourNumber, ContourSaid};

/// Said with every answer.
const CLAIMS: &str = "A computed comparison on the stock fill. It replaces no laboratory test and claims no code or class; code verification is the manufacturer's and the payer's.";

pub(super) fn said(said: &ContourSaid<'_>) -> String {
    match said {
        ContourSaid::Title { title, size } => {
            format!("{title}, {size}: loaded contour and overload, stock fill")
        }
        ContourSaid::Step { step, found } => {
            let found = match found {
                Some((touch, left, further)) => format!(
                    "the buttons {} under the first load, with {:.0} mm of cushion under the cylinders; the overload sinks {:.1} mm further.",
                    if *touch { "touch" } else { "do not touch" },
                    left.to_mm(),
                    further.to_mm()
                ),
                None => "the jig does not come to rest.".to_owned(),
            };
            format!("Step of {:.0} mm: {found}", step.to_mm())
        }
        ContourSaid::Board { board: [width, depth], forward, load, compartments: [from, to] } => {
            format!(
                "A stiff board of {:.0} x {:.0} mm, its middle {:.0} mm in front of the rear edge, {:.0} kg with what lies on its middle. Cells moved from compartment {from} to {to} make its right edge higher by (estimate):",
                width.to_mm(),
                depth.to_mm(),
                forward.to_mm(),
                load.to_kg()
            )
        }
        ContourSaid::Tilts { give, tilts } => {
            let walls = match give {
                0.0 => "upright walls".to_owned(),
                give => format!("walls that give {:.0} %", give * 100.0),
            };
            let tilts = tilts.iter().map(|(moved, higher)| match higher {
                Some(higher) => format!("{} {:.1} mm", cells(*moved), higher.to_mm()),
                None => format!("{}: it tips", cells(*moved)),
            });
            format!("{walls}: {}", tilts.collect::<Vec<_>>().join(", "))
        }
        ContourSaid::MadeWith => {
            "Made with (seen: a source was read; unverified: from memory):".to_owned()
        }
        ContourSaid::Mark { seen: true } => "seen".to_owned(),
        ContourSaid::Mark { seen: false } => "unverified".to_owned(),
        ContourSaid::Claims => CLAIMS.to_owned(),
    }
}

pub(super) fn number(number: ContourNumber) -> String {
    match number {
        ContourNumber::CylindersApart => "cylinders apart, on a cushion of 470 mm".to_owned(),
        ContourNumber::ButtonsApart => "buttons apart, on a cushion of 470 mm".to_owned(),
        ContourNumber::GrowingWithWidth(mm) => format!("{mm} mm, growing with the width"),
        ContourNumber::Steps => "steps from cylinders to buttons".to_owned(),
        ContourNumber::StepsAre([one, other]) => format!("{one} and {other} mm"),
        ContourNumber::LineOfParts => "line of the parts in front of the rear edge".to_owned(),
        ContourNumber::FirstLoad => "first load".to_owned(),
        ContourNumber::Overload => "overload".to_owned(),
        ContourNumber::Reserve => "reserve that the overload should leave".to_owned(),
        ContourNumber::FurtherSink(mm) => format!("{mm} mm of further sink"),
    }
}
