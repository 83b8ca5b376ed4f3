//! The stock fill of a pattern, and the parameters that it was found with.

use case::{Digest, StockError, Trouble};
use cushion::{Cell, Layout, Pattern, StockFill};
use mechanics::{Parameters, UnloadedCushion};

use crate::error::WorkError;
use crate::sourced::Sourced;

/// Finds the stock fill of a layout's pattern.
///
/// # Errors
///
/// Fails where the layout leaves no room for cells, or asks for no crown.
pub fn stock_fill(
    layout: &Sourced<Layout>,
    pattern: &Pattern,
    cell: &Cell,
) -> Result<StockFill, WorkError> {
    let unloaded = UnloadedCushion::new(pattern, cell, &Parameters::default());
    let unloaded = unloaded.map_err(|error| no_stock(layout, pattern, error))?;
    Ok(unloaded.stock().clone())
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
