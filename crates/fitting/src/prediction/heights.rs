//! How high each compartment stands without a client, patted level on a table.

use case::{Client, Spread};
use cushion::{Length, Mass};
use mechanics::{Parameters, SeatedClient};

use crate::goals::aims::real;
use crate::prediction::assumptions::without_a_chair;
use crate::prediction::client_on_cushion::MeshedCushion;
use crate::prediction::prepared::PreparedCushion;
use crate::prediction::unknowns::{Assumptions, Seat, Unknown};

/// What of that which is not known changes a height without a client.
const MATTER: [Unknown; 6] = [
    Unknown::InnerGive,
    Unknown::OuterGive,
    Unknown::TautTension,
    Unknown::Slack,
    Unknown::VoidPressure,
    Unknown::Packing,
];

impl PreparedCushion {
    /// Returns how high each compartment is expected to stand at its highest, above what the cushion
    /// lies on, without a client and without a chair at its sides: with what hands found on this
    /// cushion, as `client` has it, else as is usual. None of a compartment whose cells do not reach
    /// its walls, since there is no top to measure, and of all where the search does not end.
    ///
    /// The ends of the range come from runs over the ranges of what is not known of cover, walls and
    /// cells, each by itself, as for [`Spread`]; how evenly hands pat is not in them.
    ///
    /// # Panics
    ///
    /// Panics unless there is a count for each compartment.
    #[must_use]
    pub fn heights(&self, client: Option<&Client>, counts: &[u32]) -> Vec<Option<Spread<Length>>> {
        let counts = real(counts);
        let usual = match client {
            Some(client) => without_a_chair(client, self.pattern()),
            None => as_usual(self),
        };
        let Some(central) = self.coarse().heights(&usual, &counts) else {
            return vec![None; counts.len()];
        };
        let ends = self.ends(&usual, &counts);
        let one = |(at, ix): (usize, cushion::CompartmentIx)| {
            let has_a_top = self.unloaded().at_count(ix, counts[at]).crown > Length::ZERO;
            let [below, above] = ends.as_ref()?[at];
            let central = central[at];
            has_a_top.then(|| Spread { central, low: central - below, high: central + above })
        };
        self.pattern().indices().enumerate().map(one).collect()
    }

    /// By how much each height may be less and more; none where a search does not end.
    fn ends(&self, usual: &Assumptions, counts: &[f64]) -> Option<Vec<[Length; 2]>> {
        let rough = self.rough();
        let central = rough.heights(usual, counts)?;
        let mut squares = vec![[0.0; 2]; central.len()];
        for unknown in MATTER {
            let moved = [-1.0, 1.0].map(|place| unknown.moved(usual, place));
            let mut far = vec![[0.0f64; 2]; central.len()];
            for setting in moved.iter().filter(|setting| *setting != usual) {
                let heights = rough.heights(setting, counts)?;
                for ((far, height), central) in far.iter_mut().zip(heights).zip(&central) {
                    let change = (height - *central).to_m();
                    *far = [far[0].min(change), far[1].max(change)];
                }
            }
            for (sum, far) in squares.iter_mut().zip(far) {
                *sum = [sum[0] + far[0] * far[0], sum[1] + far[1] * far[1]];
            }
        }
        Some(squares.into_iter().map(|both| both.map(|sum| Length::from_m(sum.sqrt()))).collect())
    }
}

/// What is usual of a cushion of which nothing was found. There is no client: a weight is needed for
/// no height.
fn as_usual(cushion: &PreparedCushion) -> Assumptions {
    let Parameters { outer_give, .. } = cushion.coarse().usual_parameters();
    let width = cushion.pattern().size().width();
    Assumptions {
        parameters: Parameters { outer_give, ..Parameters::default() },
        sitter: SeatedClient::new(Mass::from_kg(70.0)),
        cells: 1.0,
        seat: Seat { sag: Length::ZERO, within: Length::ZERO, width },
    }
}

impl MeshedCushion {
    fn heights(&self, setting: &Assumptions, counts: &[f64]) -> Option<Vec<Length>> {
        let cells = self.cells(counts, setting.cells);
        mechanics::unloaded_heights(self.model(), &cells, &setting.parameters)
    }
}
