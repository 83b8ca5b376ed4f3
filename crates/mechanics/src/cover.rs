//! The cover: how its tension grows as it takes up its slack.
//!
//! `T = T0 + (T1 - T0) (1 - exp(-a/(eps A)))` for a sheet of area A that is larger than its flat
//! outline by a. It is our assumption, not a measurement: a law of one tension makes a sheet too
//! soft or too stiff, one that stiffens without end pulls harder than a cover with slack can, and
//! this is the simplest between; its energy is convex.

use crate::parameters::Parameters;

/// The cover over one compartment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Cover {
    slack: f64,
    taut: f64,
    /// Extra area at which 63 % of the slack is taken up, m2.
    scale: f64,
}

impl Cover {
    /// The cover over so much area, m2.
    pub(crate) fn over(area: f64, parameters: &Parameters) -> Self {
        Self {
            slack: parameters.tension_slack,
            taut: parameters.tension_taut,
            scale: parameters.stretch * area,
        }
    }

    /// Tension, N/m, and its derivative by the extra area, N/m3.
    pub(crate) fn tension(&self, extra: f64) -> (f64, f64) {
        let left = (self.taut - self.slack) * libm::exp(-extra / self.scale);
        (self.taut - left, left / self.scale)
    }

    /// The energy, J, of which the tension is the derivative.
    pub(crate) fn energy(&self, extra: f64) -> f64 {
        self.taut * extra + (self.taut - self.slack) * self.scale * libm::expm1(-extra / self.scale)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_tension_goes_from_slack_to_taut_and_is_the_slope_of_the_energy() {
        let parameters = Parameters::default();
        let cover = Cover::over(0.04, &parameters);
        assert_eq!(cover.tension(0.0).0, parameters.tension_slack);
        // Forty times the scale leaves exp(-40).
        assert!((cover.tension(0.032).0 - parameters.tension_taut).abs() < 1e-12);
        for extra in [1e-5, 4e-4, 3e-3] {
            let (tension, slope) = cover.tension(extra);
            let step = 1e-4 * extra;
            let quotient =
                |of: &dyn Fn(f64) -> f64| (of(extra + step) - of(extra - step)) / (2.0 * step);
            // The quotient is off by a share of some 1e-8, its rounding by some 1e-9.
            assert!((quotient(&|a| cover.energy(a)) / tension - 1.0).abs() < 1e-6);
            assert!((quotient(&|a| cover.tension(a).0) / slope - 1.0).abs() < 1e-6);
        }
    }
}
