//! Reads a cell.

use case::FileKind;
use case::question::{Group, Question};
use case::text::{DesignFinding, KeyFinding, ValueFinding};
use cushion::{Cell, Length, Mass, Packing, Volume, most_pillow_volume, square_pillow_volume};

use crate::Read;
use crate::cursor::{Table, read_text};

/// Densities of films that may be welded, g/mm³: polyethylene 0.92 to polyurethane 1.25, from
/// memory.
const FILM_DENSITY: f64 = 1.1e-3;
/// Thicknesses of film that may be had for a small cell, mm: common practice, no source.
const FILM: std::ops::RangeInclusive<f64> = 0.02..=0.6;

/// Reads a cell from the text of its file.
#[must_use]
pub fn read_cell(text: &str) -> Read<Cell> {
    read_text(text, FileKind::Cell, cell)
}

fn cell(table: &Table<'_>) -> Option<Cell> {
    let number = |question| table.required(question)?.number_in_range();
    let name = table.required(Question::CellName).and_then(|value| value.name());
    let title = table.required(Question::CellTitle).and_then(|value| value.sentence());
    let edge = number(Question::CellEdge).map(Length::from_mm);
    let inflated = inflated(table, edge);
    if let (Some(volume), Some(edge)) = (inflated, edge) {
        let most = most_pillow_volume(edge);
        if volume > most {
            let place = table.place(Question::CellVolume);
            table.remarks.error(place, DesignFinding::CellVolume { volume, most });
        }
    }
    let film = number(Question::FilmMass).map(Mass::from_g);
    if let (Some(weight), Some(edge)) = (film, edge) {
        // Two sheets.
        let thickness = weight.to_g() / FILM_DENSITY / (2.0 * edge.to_mm().powi(2));
        if !FILM.contains(&thickness) {
            let place = table.place(Question::FilmMass);
            table.remarks.remark(place, DesignFinding::Film { weight, edge });
        }
    }
    let packing = table.required_sub(Group::Packing).and_then(|table| packing(&table));
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
    let (given, rule) = (Question::CellVolume, Question::CellVolumeRule);
    match (table.has(given.row().key), table.has(rule.row().key)) {
        (true, false) => table.optional(given)?.number_in_range().map(Volume::from_ml),
        (false, true) => {
            let value = table.optional(rule)?;
            let written = value.text()?;
            if written == SQUARE_PILLOW {
                return edge.map(square_pillow_volume);
            }
            let (wanted, written) = (SQUARE_PILLOW, written.to_owned());
            value.remarks.error(value.span(), ValueFinding::Word { wanted, written });
            None
        }
        (true, true) => {
            table.remarks.error(table.place(rule), KeyFinding::Both(rule, given.row().key));
            None
        }
        (false, false) => {
            table.remarks.error(table.span(), KeyFinding::Neither(given, rule.row().key));
            None
        }
    }
}

/// The rule by which the volume follows from the edge.
const SQUARE_PILLOW: &str = "square pillow";

fn packing(table: &Table<'_>) -> Option<Packing> {
    let number = |question| table.required(question)?.number_in_range();
    let (bulk, wall) = (number(Question::PackingBulk), number(Question::PackingWall));
    let source = table.required(Question::PackingSource).and_then(|value| value.sentence());
    table.finish();
    Some(Packing { bulk: bulk?, wall: wall?, source: source? })
}
