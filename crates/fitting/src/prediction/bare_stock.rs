//! The sheet without a client over the stock fill: the same for all clients, and asked for by each.

use std::sync::{Arc, Mutex, PoisonError};

use mechanics::{BareSheet, Cells, Parameters, SheetModel, Stop, bare_sheet};

/// Sheets that are kept: the usual one and those at both ends of what is not known of cells, cover
/// and walls, a dozen, for the few ways in which outer walls may be held.
const MOST: usize = 64;

/// The sheets of one cushion's stock fill that were found.
#[derive(Clone, Debug, Default)]
pub(crate) struct BareStock {
    found: Arc<Mutex<Vec<Found>>>,
}

/// A sheet with what it is of.
#[derive(Clone, Debug)]
struct Found {
    cells: Vec<Cells>,
    parameters: Parameters,
    sheet: BareSheet,
}

impl BareStock {
    /// The sheet over these cells under these parameters. It is always found from the usual one, so
    /// that it does not depend on what was asked for before.
    pub(crate) fn of(
        &self,
        model: &SheetModel,
        usual: (&Parameters, &[Cells]),
        asked: (&Parameters, &[Cells]),
    ) -> Option<BareSheet> {
        let asked = (&without_a_body(asked.0), asked.1);
        let usual = (&without_a_body(usual.0), usual.1);
        if let Some(known) = self.known(asked) {
            return Some(known);
        }
        let first = match self.known(usual) {
            Some(known) => known,
            None => self.keep(usual, bare_sheet(model, usual.1, usual.0, None, Stop::never())?),
        };
        if asked == usual {
            return Some(first);
        }
        let found = bare_sheet(model, asked.1, asked.0, Some(&first), Stop::never())?;
        Some(self.keep(asked, found))
    }

    fn known(&self, (parameters, cells): (&Parameters, &[Cells])) -> Option<BareSheet> {
        let found = self.found.lock().unwrap_or_else(PoisonError::into_inner);
        let known = found.iter().find(|own| own.parameters == *parameters && own.cells == cells);
        known.map(|own| own.sheet.clone())
    }

    fn keep(&self, (parameters, cells): (&Parameters, &[Cells]), sheet: BareSheet) -> BareSheet {
        let mut found = self.found.lock().unwrap_or_else(PoisonError::into_inner);
        if found.len() < MOST {
            let (parameters, cells) = (parameters.clone(), cells.to_vec());
            found.push(Found { cells, parameters, sheet: sheet.clone() });
        }
        sheet
    }
}

/// Parameters with what is nothing to a sheet without a body as it usually is.
fn without_a_body(parameters: &Parameters) -> Parameters {
    let Parameters { migration, clearance_limit, least_clearance, .. } = Parameters::default();
    Parameters { migration, clearance_limit, least_clearance, ..parameters.clone() }
}
