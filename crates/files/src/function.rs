//! Reads `[function]`, `[layers]`, `[altitude]` and `[seat]`.

use case::{Altitudes, Function, Layers, Propulsion, SeatLoad};
use cushion::{Length, Side};

use crate::client::{Unit, length};
use crate::cursor::Table;
use crate::limits::{ALTITUDE_M, SEAT_BONES_FORWARD, SEAT_SHARE, TRUNK_HEIGHT};

pub(crate) fn function(table: &Table<'_>) -> Function {
    let sentence = |key| table.optional(key).and_then(|value| value.sentence());
    let function = Function {
        propulsion: table.optional("propulsion").and_then(|value| {
            let words = [
                ("hands", Propulsion::Hands),
                ("left foot", Propulsion::Foot(Side::Left)),
                ("right foot", Propulsion::Foot(Side::Right)),
                ("both feet", Propulsion::BothFeet),
                ("power", Propulsion::Power),
                ("pushed", Propulsion::Pushed),
            ];
            value.choice("propulsion", &words)
        }),
        transfers: sentence("transfers"),
        continence: sentence("continence"),
        sitting_hours: table
            .optional("sitting_hours")
            .and_then(|value| value.number_in("time of sitting", 0.0..=24.0, "hours")),
    };
    table.finish();
    function
}

pub(crate) fn layers(table: &Table<'_>) -> Layers {
    let is = |key| table.optional(key).and_then(|value| value.boolean()).unwrap_or(false);
    let layers = Layers {
        cover: table.optional("cover").and_then(|value| value.sentence()),
        pad: is("pad"),
        sling: is("sling"),
    };
    table.finish();
    layers
}

pub(crate) fn altitudes(table: &Table<'_>) -> Altitudes {
    let metres = |key| {
        let value = table.optional(key)?;
        value.number_in("height above the sea", ALTITUDE_M, "m").map(Length::from_m)
    };
    let altitudes = Altitudes { sealed: metres("sealed_m"), home: metres("home_m") };
    table.finish();
    altitudes
}

pub(crate) fn seat(table: &Table<'_>, unit: Unit) -> SeatLoad {
    let one =
        |key, plausible| table.optional(key).and_then(|value| length(&value, unit, plausible));
    let seat = SeatLoad {
        share: table
            .optional("share")
            .and_then(|value| value.number_in("share of the weight on the seat", SEAT_SHARE, "")),
        seat_bones_forward: one("seat_bones_forward", &SEAT_BONES_FORWARD),
        trunk_height: one("trunk_height", &TRUNK_HEIGHT),
    };
    table.finish();
    seat
}
