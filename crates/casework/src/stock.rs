//! The stock fill of a pattern, and the parameters that it was found with.

use case::{Digest, StockError, Trouble};
use cushion::{Cell, Fault, FaultKind, Layout, Pattern, StockFill, Subject, rule_of};
use mechanics::{Parameters, UnloadedCushion};

use crate::error::WorkError;
use crate::sourced::Sourced;

/// Finds the stock fill of a layout's pattern; compartments that rise beyond the model's end are
/// remarked on with the others on its file.
///
/// # Errors
///
/// Fails where the layout leaves no room for cells, or asks for no crown.
pub fn stock_fill(
    layout: &mut Sourced<Layout>,
    pattern: &Pattern,
    cell: &Cell,
) -> Result<StockFill, WorkError> {
    let unloaded = unloaded(layout, pattern, cell)?;
    let steep = unloaded.too_steep().into_iter().map(|ix| Fault {
        subject: Subject::Compartment(rule_of(&layout.value, pattern, ix)),
        sizes: vec![pattern.size()],
        kind: FaultKind::StockTooSteep {
            number: pattern[ix].number,
            crown: unloaded.stock()[ix].crown,
            most: unloaded.most_crown(ix),
        },
    });
    let steep: Vec<Fault> = steep.collect();
    layout.file.remarks.extend(files::layout_remarks(&layout.file.text, &steep));
    Ok(unloaded.into_stock())
}

/// Fills a layout's pattern.
pub(crate) fn unloaded(
    layout: &Sourced<Layout>,
    pattern: &Pattern,
    cell: &Cell,
) -> Result<UnloadedCushion, WorkError> {
    UnloadedCushion::new(pattern, cell, &Parameters::default())
        .map_err(|error| no_stock(layout, pattern, error))
}

/// Why a layout has no stock fill.
#[must_use]
pub fn no_stock(layout: &Sourced<Layout>, pattern: &Pattern, error: StockError) -> WorkError {
    let (file, size) = (layout.file.path.clone(), pattern.size());
    WorkError::file(Trouble::NoStock { file, size, error })
}

/// By which the model's parameters are known again.
pub(crate) fn parameters_digest() -> Digest {
    let all = Parameters::default().all();
    files::digest_of_parameters(all.iter().filter_map(|facts| Some((facts.name, facts.value?))))
}
