//! The cell: one small, sealed air bag, many of which fill a compartment.

use std::f64::consts::PI;

use crate::{Area, Length, Mass, Name, Volume};

/// One kind of cell, with what is known of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Cell {
    /// How files call it.
    pub name: Name,
    /// How pages call it.
    pub title: String,
    /// Edge of the flat square that it is sewn or welded from.
    pub edge: Length,
    /// Volume when taut and free, at the air pressure at which it was sealed.
    pub inflated: Volume,
    /// Mass of its film, without the air.
    pub film: Mass,
    /// How densely cells lie when poured.
    pub packing: Packing,
}

impl Cell {
    /// Returns the diameter of the ball of the same inflated volume.
    #[must_use]
    pub fn ball_diameter(&self) -> Length {
        Length::from_m(libm::cbrt(6.0 * self.inflated.to_m3() / PI))
    }

    /// Returns the share of a space that poured, unpressed cells fill: `0..1`.
    ///
    /// `bulk (1 - wall d S/V)`, with d the ball diameter, V the volume of the space and S the
    /// whole of its surface: walls hinder packing over a layer about as thick as a cell.
    /// Never below a tenth, where the small space would hold no whole cell anyway.
    /// The form follows Benyahia and O'Neill, Particulate Science and Technology 23, 169 (2005),
    /// for spheres; see [`Packing`] for the numbers.
    #[must_use]
    pub fn packing_share(&self, surface: Area, volume: Volume) -> f64 {
        let layer = self.ball_diameter().to_m() * surface.to_m2() / volume.to_m3();
        (self.packing.bulk * (1.0 - self.packing.wall * layer)).max(0.1)
    }
}

/// Returns the inflated volume of a flat square pillow of edge `edge`, sewn from two sheets
/// that bend but do not stretch: 0.190510 of the cube of the edge.
///
/// Source: A. Robin, Mathematics Today, June 2004, 104-107, for width = height.
#[must_use]
pub fn square_pillow_volume(edge: Length) -> Volume {
    // w^3 (h/(pi w) - 0.142 (1 - 10^(-h/w))), with h = w.
    let share = 1.0 / PI - 0.142 * (1.0 - 0.1);
    Volume::from_m3(share * edge.to_m().powi(3))
}

/// Returns the most that a flat square pillow of edge `edge` can hold, sewn from two sheets that
/// bend but do not stretch: 0.217 of the cube of the edge.
///
/// Source: the upper bound that is quoted with A. Kepert's square pillow, unverified in a primary
/// source; his own holds 0.2055.
#[must_use]
pub fn most_pillow_volume(edge: Length) -> Volume {
    Volume::from_m3(0.217 * edge.to_m().powi(3))
}

/// How densely poured cells lie.
#[derive(Clone, Debug, PartialEq)]
pub struct Packing {
    /// Share of the space far from any wall: above 0, at most 0.9.
    pub bulk: f64,
    /// Loss per cell diameter of surface over volume: `0..=0.5`.
    pub wall: f64,
    /// Where the two numbers come from.
    pub source: String,
}
