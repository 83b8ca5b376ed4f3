//! How high each compartment stands without a body.

use cushion::Length;

use crate::parameters::Parameters;
use crate::stop::Stop;

use super::model::SheetModel;
use super::nested::{FilledModel, Searches};
use super::newton::{End, Limits};
use super::rest::{Cells, ENOUGH_PRESSURE, MOST_STEPS, laws};

/// Returns the greatest height of the sheet over each compartment above the base, without a body, with
/// these cells, one entry for each compartment. None where the search does not end, or every
/// compartment is empty.
///
/// Where cells lie loose below their walls, that is the height of the walls around them.
///
/// # Panics
///
/// Panics unless there is one entry for each compartment.
#[must_use]
#[track_caller]
pub fn unloaded_heights(
    model: &SheetModel,
    cells: &[Cells],
    parameters: &Parameters,
) -> Option<Vec<Length>> {
    let laws = laws(model, cells, parameters);
    if cells.iter().all(|cells| cells.count <= 0.0) {
        return None;
    }
    let finest = model.finest();
    let area: f64 = finest.areas.iter().sum();
    let limits =
        Limits { residual: ENOUGH_PRESSURE * area, steps: MOST_STEPS, stop: Stop::never() };
    let fill = FilledModel::new(model, parameters, &laws);
    let unloaded = fill.unloaded(None, limits, Searches::All);
    let highest = |nodes: &[u32]| {
        let heights = nodes.iter().map(|node| unloaded.sheet[*node as usize]);
        Length::from_m(heights.fold(f64::NEG_INFINITY, f64::max))
    };
    (unloaded.end() == End::AtRest)
        .then(|| finest.patches.iter().map(|patch| highest(&patch.nodes)).collect())
}
