//! Reads a cell.

use cushion::{Cell, Length, Mass, Packing, Volume, square_pillow_volume};

use crate::cursor::{Table, read_text};
use crate::{Kind, Read};

/// Reads a cell from the text of its file.
#[must_use]
pub fn read_cell(text: &str) -> Read<Cell> {
    read_text(text, Kind::Cell, cell)
}

fn cell(table: &Table<'_>) -> Option<Cell> {
    let name = table.required("name").and_then(|value| value.name());
    let title = table.required("title").and_then(|value| value.sentence());
    let edge = table
        .required("edge_mm")
        .and_then(|value| value.number_in("cell edge", 10.0..=200.0, "mm"))
        .map(Length::from_mm);
    let inflated = inflated(table, edge);
    let film = table
        .required("film_mass_g")
        .and_then(|value| value.number_in("film mass", 0.01..=50.0, "g"))
        .map(Mass::from_g);
    let packing =
        table.required("packing").and_then(|value| value.table()).and_then(|table| packing(&table));
    Some(Cell {
        name: name?,
        title: title?,
        edge: edge?,
        inflated: inflated?,
        film: film?,
        packing: packing?,
    })
}

/// The inflated volume, given or from the edge.
fn inflated(table: &Table<'_>, edge: Option<Length>) -> Option<Volume> {
    let given = table.optional("inflated_volume_ml");
    let rule = table.optional("inflated_volume");
    match (given, rule) {
        (Some(given), None) => {
            given.number_in("inflated volume", 1.0..=500.0, "ml").map(Volume::from_ml)
        }
        (None, Some(rule)) => {
            if rule.text()? == "square pillow" {
                return edge.map(square_pillow_volume);
            }
            table.remarks.error(
                rule.span(),
                "no such rule for the volume is known",
                "write \"square pillow\", or give `inflated_volume_ml`",
            );
            None
        }
        (Some(_), Some(rule)) => {
            table.remarks.error(
                rule.span(),
                "the inflated volume is given twice",
                "keep `inflated_volume_ml` or `inflated_volume`",
            );
            None
        }
        (None, None) => {
            table.remarks.error(
                table.span(),
                "the inflated volume is missing",
                "add `inflated_volume_ml = ...`, or `inflated_volume = \"square pillow\"`",
            );
            None
        }
    }
}

fn packing(table: &Table<'_>) -> Option<Packing> {
    let bulk =
        table.required("bulk").and_then(|value| value.number_in("bulk packing", 0.3..=0.9, ""));
    let wall =
        table.required("wall").and_then(|value| value.number_in("wall effect", 0.0..=0.5, ""));
    let source = table.required("source").and_then(|value| value.sentence());
    table.finish();
    Some(Packing { bulk: bulk?, wall: wall?, source: source? })
}
