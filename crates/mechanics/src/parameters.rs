//! All parameters of the model, with their ranges and where they come from.

/// Numbers of the model that do not follow from pattern, cell, fill or client.
///
/// All are plausible ranges rather than measurements: nothing here was calibrated on a cushion.
/// How densely cells lie and how large they are belongs to the cell.
#[derive(Clone, Debug, PartialEq)]
pub struct Parameters {
    /// Tension of the slack cover, N/m; above 0.
    pub tension_slack: f64,
    /// Tension of the cover where it is taut, N/m; at least the slack one.
    pub tension_taut: f64,
    /// Share of extra area at which the cover has taken up 63 % of its slack; above 0.
    pub stretch: f64,
    /// Stiffness with which cells resist migrating, Pa per metre of shape change.
    pub migration: f64,
    /// Pressure that presses the voids between cells to 1/e, Pa; above 0.
    pub void_pressure: f64,
    /// Air pressure around the cushion in use, Pa.
    pub air_pressure: f64,
    /// Air pressure at which the cells were sealed, Pa.
    pub sealing_pressure: f64,
    /// Weight of the cover and of what lies on it, Pa.
    pub cover_weight: f64,
    /// Stiffness of the base under the cushion, Pa/m.
    pub base_stiffness: f64,
    /// Clearance to be kept under a seat bone on the central estimate, m.
    pub clearance_limit: f64,
    /// Clearance to be kept at the low end of the spread, m.
    pub least_clearance: f64,
    /// Share of the give of walls between compartments that is used: 0 for walls that stay upright,
    /// 1 for cloth that bows as far as it can. Cells jam, and friction holds.
    pub inner_give: f64,
    /// The same for walls at the outside, against no pressure there.
    pub outer_give: f64,
    /// Whether the cover's extra area is half its squared slope, which holds for small slopes;
    /// where not, it is its true area.
    pub small_slopes: bool,
}

impl Default for Parameters {
    fn default() -> Self {
        Self {
            tension_slack: 20.0,
            tension_taut: 120.0,
            stretch: 0.02,
            migration: 50e3,
            void_pressure: 2e3,
            air_pressure: 101_325.0,
            sealing_pressure: 101_325.0,
            cover_weight: 40.0,
            base_stiffness: 2e6,
            clearance_limit: 0.025,
            least_clearance: 0.010,
            inner_give: 0.5,
            outer_give: 0.5,
            small_slopes: false,
        }
    }
}

/// One parameter, for digests, reports and documentation.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ParameterFacts {
    /// Its name.
    pub name: &'static str,
    /// Its value, in `unit`; none where what it stands for is left out.
    pub value: Option<f64>,
    /// The least and the greatest plausible value.
    pub range: [f64; 2],
    /// The unit.
    pub unit: &'static str,
    /// Where value and range come from.
    pub source: &'static str,
}

const PICKED: &str =
    "picked so that pressures and immersion come out as in the literature; not measured";

/// Of what is not known about walls.
const GIVE: &str = "0 is cloth that stays upright, 1 cloth that bows as far as it can; how far cells \
                    that jam, and friction, hold it is not known";

impl Parameters {
    /// The same with walls that stay upright under a cover of small slopes, as stock is counted.
    #[must_use]
    pub fn with_upright_walls(&self) -> Self {
        Self { inner_give: 0.0, outer_give: 0.0, small_slopes: true, ..self.clone() }
    }

    /// Whether any wall gives way.
    #[must_use]
    pub fn gives(&self) -> bool {
        self.inner_give > 0.0 || self.outer_give > 0.0
    }

    /// Returns every parameter with its range and source, in a fixed order.
    #[must_use]
    pub fn all(&self) -> Vec<ParameterFacts> {
        let facts = |name, value, range, unit, source| ParameterFacts {
            name,
            value: Some(value),
            range,
            unit,
            source,
        };
        let mut all = vec![
            facts("tension_slack", self.tension_slack, [5.0, 50.0], "N/m", PICKED),
            facts("tension_taut", self.tension_taut, [60.0, 250.0], "N/m", PICKED),
            facts("stretch", self.stretch, [0.01, 0.04], "1", PICKED),
            facts("migration", self.migration, [0.0, 100e3], "Pa/m", PICKED),
            facts("void_pressure", self.void_pressure, [1e3, 3e3], "Pa", PICKED),
            facts(
                "air_pressure",
                self.air_pressure,
                [75e3, 103e3],
                "Pa",
                "ISO 2533 at sea level; the low end is an aircraft cabin at 2438 m",
            ),
            facts(
                "sealing_pressure",
                self.sealing_pressure,
                [75e3, 103e3],
                "Pa",
                "ISO 2533 at sea level",
            ),
            facts("cover_weight", self.cover_weight, [20.0, 80.0], "Pa", PICKED),
            facts("base_stiffness", self.base_stiffness, [1e6, 5e6], "Pa/m", PICKED),
            facts(
                "clearance_limit",
                self.clearance_limit,
                [0.013, 0.025],
                "m",
                "common practice, no source; unverified",
            ),
            facts(
                "least_clearance",
                self.least_clearance,
                [0.005, 0.013],
                "m",
                "common practice, no source; unverified",
            ),
        ];
        all.extend(self.left_out());
        all
    }

    /// What may be left out.
    fn left_out(&self) -> [ParameterFacts; 3] {
        [
            ParameterFacts {
                name: "inner_give",
                value: (self.inner_give > 0.0).then_some(self.inner_give),
                range: [0.0, 1.0],
                unit: "1",
                source: GIVE,
            },
            ParameterFacts {
                name: "outer_give",
                value: (self.outer_give > 0.0).then_some(self.outer_give),
                range: [0.0, 1.0],
                unit: "1",
                source: GIVE,
            },
            ParameterFacts {
                name: "true_area",
                value: (!self.small_slopes).then_some(1.0),
                range: [0.0, 1.0],
                unit: "1",
                source: "geometry; left out, the extra area is that of small slopes",
            },
        ]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn defaults_lie_within_their_ranges_and_names_are_unique() {
        let all = Parameters::default().all();
        for facts in &all {
            let value = facts.value.unwrap_or(facts.range[0]);
            let [low, high] = facts.range;
            assert!(low <= value && value <= high, "{}", facts.name);
            assert!(all.iter().filter(|other| other.name == facts.name).count() == 1);
        }
    }
}
