//! The sections through the seat bones, as a drawing.

use case::{Date, Prediction};
use fitting::CutThrough;

use crate::case_file::CaseFile;
use crate::failure::Failure;

/// Draws the cuts of a prediction on one page, as SVG.
///
/// # Errors
///
/// Fails where something finds no room on the page.
pub(crate) fn drawing(
    _case: &CaseFile,
    _prediction: &Prediction,
    _cuts: &[CutThrough],
    _on: Date,
) -> Result<Vec<u8>, Failure> {
    Err(Failure::call("not yet"))
}
