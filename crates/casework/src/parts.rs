//! What one cushion is made of: cloth by piece, thread, openings, cells, and what it weighs.

use case::Spread;
use cushion::{Area, Cell, Length, Mass, Pattern, StockFill};
use templates::{Options, PieceKind, Template};

/// What is not known of cloth, thread and closures, each with its range.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Materials {
    /// Mass of the top's cloth, g/m².
    pub top: Spread<f64>,
    /// Mass of the base's cloth, g/m².
    pub base: Spread<f64>,
    /// Mass of the walls' cloth, g/m².
    pub walls: Spread<f64>,
    /// Thread that a seam takes, m for a metre of seam.
    pub thread: Spread<f64>,
    /// Mass of thread, g/m.
    pub thread_mass: Spread<f64>,
    /// Mass of the closure of an opening, g/m.
    pub closure: Spread<f64>,
}

impl Default for Materials {
    /// From memory, unverified: stretch cloth with a coating, a heavier one that does not slip, light
    /// woven cloth; lockstitch through two or three layers; a thread of some 70 tex; a zip or a
    /// hook-and-loop closure.
    fn default() -> Self {
        let of = |low, central, high| Spread { central, low, high };
        Self {
            top: of(150.0, 220.0, 300.0),
            base: of(250.0, 350.0, 450.0),
            walls: of(100.0, 160.0, 250.0),
            thread: of(2.5, 2.8, 3.5),
            thread_mass: of(0.05, 0.07, 0.1),
            closure: of(15.0, 35.0, 60.0),
        }
    }
}

/// How much the mass of cells may differ from what the cell's file says of their film, as a share:
/// from memory, unverified; a batch that was counted by hand and weighed tells it.
const FILM: f64 = 0.1;

/// One kind of cloth.
#[derive(Clone, Debug, PartialEq)]
pub struct ClothPart {
    /// By which the piece is known: `top`, `base`, `wall-4`.
    pub id: String,
    /// Cloth, allowances included.
    pub area: Area,
    /// Its mass.
    pub mass: Spread<Mass>,
}

/// What one cushion is made of.
#[derive(Clone, Debug, PartialEq)]
pub struct Parts {
    /// The pieces of cloth.
    pub cloth: Vec<ClothPart>,
    /// What is sewn: each wall along all its edges.
    pub seams: Length,
    /// Thread for them.
    pub thread: Spread<Length>,
    /// How many openings are closed.
    pub openings: usize,
    /// Length of all closures.
    pub closures: Length,
    /// Cells as supplied.
    pub cells: u32,
    /// What all cells weigh.
    pub cells_mass: Spread<Mass>,
    /// The cover without cells.
    pub cover_mass: Spread<Mass>,
    /// The finished cushion, without spare cells, labels and an outer cover.
    pub mass: Spread<Mass>,
}

/// Returns what a cushion is made of, with so many cells in it.
///
/// The ends of a sum put its parts together as if independent: the root of the sum of squares.
#[must_use]
pub fn parts(
    (pattern, fill): (&Pattern, &StockFill),
    cell: &Cell,
    cells: u32,
    options: Options,
    materials: &Materials,
) -> Parts {
    let template = Template::new(pattern, fill, options);
    let cloth: Vec<ClothPart> = (template.pieces.iter())
        .map(|piece| {
            let of = match piece.kind {
                PieceKind::Top => materials.top,
                PieceKind::Base => materials.base,
                PieceKind::Wall(_) => materials.walls,
            };
            let mass = grams(of, piece.area.to_m2());
            ClothPart { id: piece.kind.id(), area: piece.area, mass }
        })
        .collect();
    let seams = template.sewn();
    let thread = each(materials.thread, |per_metre| seams * per_metre);
    let closures: Length = template.openings.iter().map(|own| own.length).sum();
    let film = cell.film * f64::from(cells);
    let cells_mass = Spread { central: film, low: film * (1.0 - FILM), high: film * (1.0 + FILM) };
    // Cloth of one kind is from one roll: its pieces are off together.
    let of_kind = |is: &dyn Fn(&str) -> bool| {
        let some: Vec<Spread<Mass>> =
            cloth.iter().filter(|own| is(&own.id)).map(|own| own.mass).collect();
        Spread {
            central: some.iter().map(|own| own.central).sum(),
            low: some.iter().map(|own| own.low).sum(),
            high: some.iter().map(|own| own.high).sum(),
        }
    };
    let cover_mass = together(&[
        of_kind(&|id| id == "top"),
        of_kind(&|id| id == "base"),
        of_kind(&|id| id.starts_with("wall")),
        grams(materials.thread_mass, thread.central.to_m()),
        grams(materials.closure, closures.to_m()),
    ]);
    let mass = together(&[cover_mass, cells_mass]);
    let openings = template.openings.len();
    Parts { cloth, seams, thread, openings, closures, cells, cells_mass, cover_mass, mass }
}

/// Spare cells to each cushion where nobody says how many, as a share: common practice, no source.
const SPARES: f64 = 0.05;

/// Spare cells that usually go with a cushion of so many.
#[must_use]
pub fn usual_spares(cells: u32) -> u32 {
    (f64::from(cells) * SPARES).ceil() as u32
}

/// What the cover and so many cells weigh, of usual cloth.
pub(crate) fn usual_mass(
    pattern: &Pattern,
    fill: &StockFill,
    cell: &Cell,
    cells: u32,
) -> Spread<Mass> {
    let options = Options { allowance: Length::from_mm(10.0), eased: true };
    parts((pattern, fill), cell, cells, options, &Materials::default()).mass
}

fn each<T>(of: Spread<f64>, make: impl Fn(f64) -> T) -> Spread<T> {
    Spread { central: make(of.central), low: make(of.low), high: make(of.high) }
}

/// So many grams for each of something.
fn grams(of: Spread<f64>, how_much: f64) -> Spread<Mass> {
    each(of, |per| Mass::from_g(per * how_much))
}

/// The sum of what is off independently.
fn together(parts: &[Spread<Mass>]) -> Spread<Mass> {
    let central: Mass = parts.iter().map(|own| own.central).sum();
    let root = |off: &dyn Fn(&Spread<Mass>) -> Mass| {
        let squares: f64 = parts.iter().map(|own| off(own).to_g() * off(own).to_g()).sum();
        Mass::from_g(squares.sqrt())
    };
    let (below, above) = (root(&|own| own.central - own.low), root(&|own| own.high - own.central));
    Spread { central, low: central - below, high: central + above }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_off_independently_adds_by_squares() {
        let of = |central: f64, off: f64| Spread {
            central: Mass::from_g(central),
            low: Mass::from_g(central - off),
            high: Mass::from_g(central + 2.0 * off),
        };
        let sum = together(&[of(100.0, 3.0), of(50.0, 4.0)]);
        let found = [sum.central, sum.low, sum.high].map(|own| own.to_g());
        for (own, wanted) in found.into_iter().zip([150.0, 145.0, 160.0]) {
            assert!((own - wanted).abs() < 1e-9, "{own}, not {wanted}");
        }
    }
}
