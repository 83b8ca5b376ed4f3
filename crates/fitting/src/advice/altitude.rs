//! Altitude and temperature: what becomes of sealed cells, and of the count.
//!
//! A sealed cell holds its air, so its volume goes against the absolute pressure around it, until
//! its film is taut; the mechanics has the same law. Where nothing is known both are taken at sea
//! level.

use case::AltitudeNote;
use cushion::{Length, Pressure};

/// Heights for which the standard atmosphere's lowest layer is used, m.
const HEIGHTS: [f64; 2] = [-500.0, 11_000.0];

/// Returns the air pressure at a height above the sea; none outside -500 to 11,000 m.
///
/// ISO 2533, lowest layer: 101325 (1 - 2.25577e-5 h)^5.25588 Pa.
#[must_use]
pub fn air_pressure(height: Length) -> Option<Pressure> {
    let metres = height.to_m();
    let inside = (HEIGHTS[0]..=HEIGHTS[1]).contains(&metres);
    inside.then(|| Pressure::from_pa(101_325.0 * libm::pow(1.0 - 2.255_77e-5 * metres, 5.255_88)))
}

/// From which change of altitude between sealing and home a re-check is asked for, m: some 5 % of
/// a slack cell's volume. A practice judgement.
const MATTERS: f64 = 450.0;

/// Returns by which factor a slack cell's volume changes between two heights at one temperature
/// (Boyle); none where a height is outside the lowest layer of the standard atmosphere. A taut
/// cell does not swell any further: its film holds the difference.
#[must_use]
pub fn slack_volume_factor(sealed: Length, used: Length) -> Option<f64> {
    Some(air_pressure(sealed)?.to_pa() / air_pressure(used)?.to_pa())
}

/// Returns by which factor a slack cell's volume changes between two temperatures in degrees
/// Celsius at one pressure (Charles).
#[must_use]
pub fn warmth_volume_factor(from: f64, to: f64) -> f64 {
    (to + 273.15) / (from + 273.15)
}

/// Returns about how many cells do at home what so many did where they were sealed, for a
/// compartment under a fill pressure: to be changed only after a re-check by hand.
///
/// A cell sealed taut takes the share p_sealed / (p_use + p) of its volume under a fill pressure p,
/// and never more than all of it: then its film holds the air.
#[must_use]
pub fn cells_at_home(cells: u32, fill: Pressure, sealed: Length, home: Length) -> Option<u32> {
    let (sealed, home) = (air_pressure(sealed)?.to_pa(), air_pressure(home)?.to_pa());
    let share = |around: f64| (sealed / (around + fill.to_pa())).min(1.0);
    Some((f64::from(cells) * share(sealed) / share(home)).round() as u32)
}

/// Returns what is to be said about where the cells were sealed and where the client lives.
#[must_use]
pub fn notes(sealed: Option<Length>, home: Option<Length>) -> Vec<AltitudeNote> {
    let moved = sealed.zip(home).and_then(|(sealed, home)| {
        let far = (sealed - home).to_m().abs() > MATTERS;
        let factor = slack_volume_factor(sealed, home).filter(|_| far)?;
        Some(AltitudeNote::Moved { sealed, home, grows: factor - 1.0 })
    });
    moved.into_iter().chain([AltitudeNote::Travel]).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Outside source: ISO 2533 (ICAO Doc 7488), tabulated values.
    #[test]
    fn air_pressure_is_that_of_the_standard_atmosphere() {
        let table = [
            (0.0, 101.325),
            (500.0, 95.461),
            (1000.0, 89.875),
            (1500.0, 84.556),
            (2000.0, 79.495),
            (2438.4, 75.262),
            (3000.0, 70.109),
        ];
        for (metres, kpa) in table {
            let found = air_pressure(Length::from_m(metres)).expect("it is inside").to_kpa();
            // Half a unit of the last printed digit, and the rounding of the formula's constants.
            assert!((found - kpa).abs() < 0.002, "{metres}: {found}");
        }
        assert_eq!(air_pressure(Length::from_m(12_000.0)), None);
    }

    #[test]
    fn boyle_and_charles_have_their_worked_values() {
        let sea = Length::ZERO;
        // 1.346 at 8000 ft; cells sealed at 1600 m are at .82 of it.
        let cabin = slack_volume_factor(sea, Length::from_m(2438.4)).expect("inside");
        assert!((cabin - 1.346).abs() < 5e-4);
        let denver = slack_volume_factor(Length::from_m(1600.0), sea).expect("inside");
        assert!((denver - 0.82).abs() < 5e-3);
        for (celsius, factor) in [(-10.0, 0.898), (0.0, 0.932), (10.0, 0.966), (40.0, 1.068)] {
            assert!((warmth_volume_factor(20.0, celsius) - factor).abs() < 5e-4);
        }
    }

    #[test]
    fn fewer_cells_do_the_same_higher_up_and_none_change_at_the_same_height() {
        let fill = Pressure::from_kpa(3.0);
        let at = |home| cells_at_home(50, fill, Length::ZERO, Length::from_m(home));
        assert_eq!(at(0.0), Some(50));
        // 50 times 101.325 / (101.325 + 3): up there the film is taut.
        assert_eq!(at(1600.0), Some(49));
        // Sealed high, used low: the air of the valley presses them to (83.44 + 3) / (101.325 + 3).
        let down = cells_at_home(50, fill, Length::from_m(1600.0), Length::ZERO);
        // 50 times (83.44 / 86.44) / (83.44 / 104.325).
        assert_eq!(down, Some(60));
    }
}
