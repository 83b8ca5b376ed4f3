//! The extra cloth that a crown needs: an arc is longer than its chord.

use cushion::{Length, Pattern, StockFill, widest_place};

/// What the crown of one compartment asks of the top.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Crown {
    /// The number of the compartment.
    pub number: u8,
    /// How wide it is at its widest: the chord.
    pub width: Length,
    /// How far the stock fill rises above the walls there.
    pub rise: Length,
    /// Length of the arc over that chord.
    pub arc: Length,
}

impl Crown {
    /// How much longer the arc is than the chord, as a share of the chord: 0 where it is flat.
    #[must_use]
    pub fn extra(&self) -> f64 {
        self.arc / self.width - 1.0
    }
}

/// Returns what each crown of the stock fill asks, in the order of the numbers.
///
/// The section over the widest place is taken as an arc of a circle; over the longer way of a
/// compartment the same rise asks for less.
#[must_use]
pub fn crowns(pattern: &Pattern, fill: &StockFill) -> Vec<Crown> {
    let one = |ix| {
        let (width, _) = widest_place(pattern, ix);
        let rise = fill[ix].crown.max(Length::ZERO);
        let arc = Length::from_mm(arc_over(width.to_mm(), rise.to_mm()));
        Crown { number: pattern[ix].number, width, rise, arc }
    };
    pattern.indices().map(one).collect()
}

/// The length of the arc of a circle over a chord, whose middle stands off by `rise`; all in one
/// unit.
fn arc_over(chord: f64, rise: f64) -> f64 {
    if rise <= chord * 1e-9 {
        return chord;
    }
    let half = chord / 2.0;
    // The angle at the chord between it and the ray to the middle of the arc is a quarter of the
    // angle at the centre (inscribed angles).
    let angle = 4.0 * libm::atan(rise / half);
    let radius = (half * half + rise * rise) / (2.0 * rise);
    radius * angle
}

/// By how much the whole top is enlarged so that every crown has its cloth: the most that any asks.
///
/// One share for all, since neighbours share their seam.
#[must_use]
pub fn ease(crowns: &[Crown]) -> f64 {
    crowns.iter().map(Crown::extra).fold(0.0, f64::max)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_arc_is_that_of_a_circle() {
        // A half circle, and a third of one: the rise over a chord of sqrt 3 is half the radius.
        assert!((arc_over(2.0, 1.0) - std::f64::consts::PI).abs() < 1e-12);
        let third = std::f64::consts::TAU / 3.0;
        assert!((arc_over(3.0f64.sqrt(), 0.5) - third).abs() < 1e-12);
        assert_eq!(arc_over(150.0, 0.0), 150.0);
    }
}
