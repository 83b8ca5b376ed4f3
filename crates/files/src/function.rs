//! Reads `[function]`, `[layers]`, `[altitude]` and `[seat]`.

use case::question::Question;
use case::text::LengthUnit;
use case::{Altitudes, Function, Layers, Propulsion, SeatLoad};
use cushion::Length;

use crate::client::length;
use crate::cursor::Table;

pub(crate) fn function(table: &Table<'_>) -> Function {
    let sentence = |question| table.optional(question).and_then(|value| value.sentence());
    let function = Function {
        propulsion: table
            .optional(Question::Propulsion)
            .and_then(|value| value.choice(&Propulsion::WORDS)),
        transfers: sentence(Question::Transfers),
        continence: sentence(Question::Continence),
        sitting_hours: table
            .optional(Question::SittingHours)
            .and_then(|value| value.number_in_range()),
    };
    table.finish();
    function
}

pub(crate) fn layers(table: &Table<'_>) -> Layers {
    let is = |question| table.optional(question).and_then(|value| value.boolean());
    let layers = Layers {
        cover: table.optional(Question::Cover).and_then(|value| value.sentence()),
        pad: is(Question::Pad).unwrap_or(false),
        sling: is(Question::Sling).unwrap_or(false),
    };
    table.finish();
    layers
}

pub(crate) fn altitudes(table: &Table<'_>) -> Altitudes {
    let metres = |question| table.optional(question)?.number_in_range().map(Length::from_m);
    let altitudes = Altitudes { sealed: metres(Question::SealedM), home: metres(Question::HomeM) };
    table.finish();
    altitudes
}

pub(crate) fn seat(table: &Table<'_>, unit: LengthUnit) -> SeatLoad {
    let seat = SeatLoad {
        share: table.optional(Question::SeatShare).and_then(|value| value.number_in_range()),
        seat_bones_forward: length(table, Question::SeatBonesForward, unit),
        trunk_height: length(table, Question::TrunkHeight, unit),
    };
    table.finish();
    seat
}
