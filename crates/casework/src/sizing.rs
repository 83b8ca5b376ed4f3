//! Whether the chosen size suits the client, and what the cushion means around it.

use case::HeightEffect;
use fitting::Sizing;

use crate::open_case::OpenCase;

impl OpenCase {
    /// Finds which of the sizes that the layout is made in suits the client, and why the others do
    /// not.
    #[must_use]
    pub fn sizing(&self) -> Sizing {
        let client = &self.client.value;
        let weight = client.latest_weighing().map(|weighing| weighing.weight);
        fitting::sizing(&client.measures, weight, &client.chair, &self.layout.value.sizes)
    }

    /// Returns what the cushion's height means for footrests, feet and transfers.
    ///
    /// Nothing is predicted: the cushion under the thighs is taken as high as its walls.
    #[must_use]
    pub fn height_effects(&self) -> Vec<HeightEffect> {
        let client = &self.client.value;
        let high = self.pattern.wall_height();
        let propulsion = client.function.propulsion;
        let mut effects =
            fitting::height_effects(&client.measures, &client.chair, propulsion, high);
        effects.push(HeightEffect::Seated { height: high });
        effects
    }
}
