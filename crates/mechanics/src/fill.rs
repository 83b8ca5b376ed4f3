//! The fill law: how much room so many cells take at a pressure.
//!
//! `V = N v min(1, p_seal/(p_air + p)) (1 + e0 exp(-p/pe))`, with `e0 = 1/phi - 1`: the air in the
//! cells follows Boyle's law up to what the film holds, the voids between them close
//! exponentially. The form for the voids is that of Heckel (1961) for powders, as reviewed in
//! Powder Technology 114, 255 (2001), to first order; unpressed cells fill the share phi of the
//! room.

use cushion::{Cell, Pressure, Volume};

use crate::Parameters;
use crate::numerics::root;

/// A step of Newton's method by this share of the air's pressure is the last: what it is off is by the
/// curvature of ln V, of which the radius is the void pressure at the least, some thousand Pa, so that
/// 1e-3 Pa leave 1e-9, which is rounding.
const SHORT: f64 = 1e-8;

/// The law of the cells of one compartment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FillLaw {
    /// Volume of all cells, free and taut, m3.
    cells: f64,
    /// Voids over cells, unpressed.
    voids: f64,
    void_pressure: f64,
    air_pressure: f64,
    sealing_pressure: f64,
}

/// A fill pressure and how fast it falls with the volume.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PressureAt {
    /// Pressure above the air's, Pa; not negative.
    pub pressure: f64,
    /// dp/dV, Pa/m3; not positive.
    pub slope: f64,
}

impl FillLaw {
    /// Returns the law of `count` cells, which need not be whole, that fill the share `packing`
    /// of the room when unpressed.
    ///
    /// # Panics
    ///
    /// Panics unless the count is finite and not negative, and the packing in `0..=1`, not 0.
    #[must_use]
    #[track_caller]
    pub fn new(count: f64, cell: &Cell, packing: f64, parameters: &Parameters) -> Self {
        Self::of_volume(count * cell.inflated.to_m3(), packing, parameters)
    }

    /// Returns the law of cells of which all together have the volume `cells`, taut, in m3.
    ///
    /// # Panics
    ///
    /// As [`Self::new`].
    #[must_use]
    #[track_caller]
    pub fn of_volume(cells: f64, packing: f64, parameters: &Parameters) -> Self {
        assert!(cells.is_finite() && cells >= 0.0, "cells have a volume");
        assert!(packing > 0.0 && packing <= 1.0, "a packing is a share");
        Self {
            cells,
            voids: 1.0 / packing - 1.0,
            void_pressure: parameters.void_pressure,
            air_pressure: parameters.air_pressure,
            sealing_pressure: parameters.sealing_pressure,
        }
    }

    /// Returns the volume up to which the cells lie unpressed.
    #[must_use]
    pub fn loose_volume(&self) -> Volume {
        Volume::from_m3(self.loose())
    }

    /// Returns the volume at a pressure that is not negative.
    #[must_use]
    pub fn volume(&self, pressure: Pressure) -> Volume {
        Volume::from_m3(self.volume_and_slope(pressure.to_pa()).0)
    }

    /// V unpressed, m3.
    fn loose(&self) -> f64 {
        let air = (self.sealing_pressure / self.air_pressure).min(1.0);
        self.cells * air * (1.0 + self.voids)
    }

    /// V in m3 and dV/dp in m3/Pa.
    fn volume_and_slope(&self, pressure: f64) -> (f64, f64) {
        let outside = self.air_pressure + pressure;
        let taut = outside <= self.sealing_pressure;
        let air = if taut { 1.0 } else { self.sealing_pressure / outside };
        let open = self.voids * libm::exp(-pressure / self.void_pressure);
        let volume = self.cells * air * (1.0 + open);
        let squeeze = if taut { 0.0 } else { volume / outside };
        (volume, -squeeze - self.cells * air * open / self.void_pressure)
    }

    /// Returns the pressure at which the cells take the volume, in m3: zero where they lie loose.
    ///
    /// # Panics
    ///
    /// Panics unless the volume is above zero: no pressure presses cells to nothing.
    #[must_use]
    #[track_caller]
    pub fn pressure(&self, volume: f64) -> PressureAt {
        assert!(volume > 0.0 && volume.is_finite(), "a compartment has a volume");
        if volume >= self.loose() {
            return PressureAt { pressure: 0.0, slope: 0.0 };
        }
        // Boyle's law without voids and with voids that never close.
        let boyle =
            |cells: f64| (self.sealing_pressure * cells / volume - self.air_pressure).max(0.0);
        let low = if self.cells > volume { boyle(self.cells) } else { 0.0 };
        // Where the film holds the air, it is the voids that close, and Boyle's law is too low.
        let high = boyle(self.cells * (1.0 + self.voids)).max(self.knee());
        // ln V is nearly straight where few voids are left; this is its first term, which is off by a
        // twelfth of the cube, and is sooner worked out.
        let rising = |pressure: f64| {
            let (reached, slope) = self.volume_and_slope(pressure);
            let both = volume + reached;
            (2.0 * (volume - reached) / both, -4.0 * volume * slope / (both * both))
        };
        // Where cells hardly give, it is the voids alone that close.
        let open = (volume / self.cells - 1.0) / self.voids;
        let closed = -self.void_pressure * libm::log(open);
        let start = if open > 0.0 { closed.clamp(low, high) } else { low };
        let pressure = root(rising, [low, high], start, SHORT * self.air_pressure);
        PressureAt { pressure, slope: self.volume_and_slope(pressure).1.recip() }
    }

    /// Returns the energy of the pressed cells at a volume in m3, J: zero where they lie loose;
    /// its derivative by the volume is minus the pressure.
    ///
    /// # Panics
    ///
    /// As [`Self::pressure`].
    #[must_use]
    #[track_caller]
    pub fn energy(&self, volume: f64) -> f64 {
        self.energy_at(volume, self.pressure(volume).pressure)
    }

    /// The same where the pressure at the volume is known, Pa.
    pub(crate) fn energy_at(&self, volume: f64, pressure: f64) -> f64 {
        // By parts: the integral of p dV from V to the loose volume is that of V dp, less p V.
        let taut = pressure.min(self.knee());
        let voids = self.void_pressure * -libm::expm1(-taut / self.void_pressure);
        let held = taut + self.voids * voids;
        let air = libm::log1p((pressure - taut) / (self.air_pressure + taut));
        let closing = self.closing_integral(taut, pressure);
        let squeezed = self.sealing_pressure * (air + self.voids * closing);
        self.cells * (held + squeezed) - pressure * volume
    }

    /// The pressure up to which the film, not the air around, holds the air in the cells.
    fn knee(&self) -> f64 {
        (self.sealing_pressure - self.air_pressure).max(0.0)
    }

    /// Integral of exp(-s/pe)/(pa + s) over s between two pressures.
    fn closing_integral(&self, from: f64, to: f64) -> f64 {
        // Gauss's rule with six points on steps of one void pressure is exact to rounding, and
        // over 40 steps exp falls below rounding.
        let end = to.min(from + 40.0 * self.void_pressure);
        let steps = ((end - from) / self.void_pressure).ceil().max(1.0);
        let width = (end - from) / steps;
        let open = |pressure: f64| libm::exp(-pressure / self.void_pressure);
        let mut nodes = [(0.0, 0.0); 6];
        for (own, (weight, node)) in nodes.iter_mut().zip(kurbo::common::GAUSS_LEGENDRE_COEFFS_6) {
            let within = (node + 1.0) / 2.0 * width;
            *own = (within, weight * width / 2.0 * open(within));
        }
        // An exponential of a sum is a product, and is dear.
        let (mut begin, mut open_there, closed) = (from, open(from), open(width));
        let mut sum = 0.0;
        for _ in 0..steps as usize {
            for (within, weight) in nodes {
                sum += weight * open_there / (self.air_pressure + begin + within);
            }
            begin += width;
            open_there *= closed;
        }
        sum
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn law(count: f64, packing: f64) -> FillLaw {
        FillLaw::of_volume(count * 25e-6, packing, &Parameters::default())
    }

    #[test]
    fn a_planted_pressure_is_found() {
        for packing in [0.1, 0.5, 0.6, 0.9, 1.0] {
            for planted in [1e-3, 1.0, 350.0, 3470.0, 2e4, 5e5, 1e7] {
                let law = law(83.6, packing);
                let volume = law.volume(Pressure::from_pa(planted)).to_m3();
                let found = law.pressure(volume);
                // Rounding of the volume times dp/dV is some 1e-11 Pa at the least pressure.
                let near = 1e-9 + 1e-11 * planted;
                assert!((found.pressure - planted).abs() < near, "{planted} {found:?}");
            }
        }
    }

    #[test]
    fn without_voids_it_is_boyles_law() {
        let law = law(100.0, 1.0);
        // Source: p V = constant, absolute pressures; half the volume, twice the pressure.
        assert!((law.pressure(1.25e-3).pressure - 101_325.0).abs() < 1e-6);
        assert!((law.loose_volume().to_m3() - 2.5e-3).abs() < 1e-18);
    }

    #[test]
    fn loose_cells_press_on_nothing() {
        let law = law(60.0, 0.6);
        assert!((law.loose_volume().to_m3() - 2.5e-3).abs() < 1e-15);
        assert_eq!(law.pressure(2.6e-3), PressureAt { pressure: 0.0, slope: 0.0 });
        assert!(law.energy(2.6e-3).abs() < 1e-15);
    }

    #[test]
    fn pressure_is_the_slope_of_energy() {
        check_slopes(&law(80.0, 0.55));
        let flight = Parameters { air_pressure: 75e3, ..Parameters::default() };
        check_slopes(&FillLaw::of_volume(2e-3, 0.55, &flight));
    }

    #[track_caller]
    fn check_slopes(law: &FillLaw) {
        for volume in [3.6e-3, 3.0e-3, 2.5e-3, 1.5e-3, 0.5e-3] {
            let step = 1e-5 * volume;
            let slope = (law.energy(volume + step) - law.energy(volume - step)) / (2.0 * step);
            let PressureAt { pressure, slope: stiffness } = law.pressure(volume);
            // The difference quotient is off by some 1e-10 of the pressure.
            assert!((slope + pressure).abs() < 1e-6 * pressure, "{volume}");
            let ahead = law.pressure(volume + step).pressure;
            let behind = law.pressure(volume - step).pressure;
            let quotient = (ahead - behind) / (2.0 * step);
            assert!((quotient / stiffness - 1.0).abs() < 1e-5, "{volume}");
        }
    }

    #[test]
    fn energy_is_convex_and_falls_with_the_volume() {
        let law = law(80.0, 0.55);
        let energy: Vec<f64> = (1..100).map(|part| law.energy(4e-5 * f64::from(part))).collect();
        for three in energy.windows(3) {
            assert!(three[0] >= three[1]);
            // Rounding where the cells lie loose.
            assert!(three[0] + three[2] - 2.0 * three[1] > -1e-12);
        }
    }

    #[test]
    fn cells_sealed_high_up_are_small_at_sea_level() {
        let low = Parameters { sealing_pressure: 83_000.0, ..Parameters::default() };
        let cell = Cell {
            name: cushion::Name::new("cell").expect("it is a name"),
            title: "Cell".into(),
            edge: cushion::Length::from_mm(50.0),
            inflated: Volume::from_ml(25.0),
            film: cushion::Mass::from_g(0.5),
            packing: cushion::Packing { bulk: 0.6, wall: 0.0, source: "test".into() },
        };
        let sea = FillLaw::new(10.0, &cell, 0.6, &Parameters::default());
        let high = FillLaw::new(10.0, &cell, 0.6, &low);
        let ratio = high.loose_volume() / sea.loose_volume();
        // Boyle's law: cells lose the share that the sealing pressure lacks.
        assert!((ratio - 83_000.0 / 101_325.0).abs() < 1e-12);
    }

    #[test]
    fn in_an_aircraft_the_film_holds_the_air() {
        let flight = Parameters { air_pressure: 75_262.0, ..Parameters::default() };
        let law = FillLaw::of_volume(2.5e-3, 1.0, &flight);
        // Sealed at 101325 Pa, a cell in a cabin of 75262 Pa gains 26.1 kPa over it before it
        // shrinks (Boyle's law; ISO 2533 for the cabin).
        for (pressure, volume) in [(0.0, 2.5e-3), (26e3, 2.5e-3), (127_388.0, 1.25e-3)] {
            let found = law.volume(Pressure::from_pa(pressure)).to_m3();
            assert!((found - volume).abs() < 1e-12, "{pressure}: {found}");
        }
    }
}
