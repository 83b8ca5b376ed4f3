//! The sheet without a client over the stock fill: the same for all clients, and asked for by each.

use std::sync::{Arc, Mutex, PoisonError};

use mechanics::{BareSheet, Cells, Parameters, SheetModel, Stop, bare_sheet};

/// Sheets that are kept: the usual one and those at both ends of what is not known of cells, cover
/// and walls, a dozen, for the few ways in which outer walls may be held.
const MOST: usize = 64;

/// The sheets of one cushion's stock fill that were found.
#[derive(Clone, Debug, Default)]
pub(crate) struct BareStock {
    found: Arc<Mutex<Vec<BareSheet>>>,
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
        if let Some(known) = self.known(asked) {
            return Some(known);
        }
        let first = match self.known(usual) {
            Some(known) => known,
            None => self.keep(bare_sheet(model, usual.1, usual.0, None, Stop::never())?),
        };
        if first.is_of(asked.1, asked.0) {
            return Some(first);
        }
        let found = bare_sheet(model, asked.1, asked.0, Some(&first), Stop::never())?;
        Some(self.keep(found))
    }

    fn known(&self, (parameters, cells): (&Parameters, &[Cells])) -> Option<BareSheet> {
        let found = self.found.lock().unwrap_or_else(PoisonError::into_inner);
        found.iter().find(|own| own.is_of(cells, parameters)).cloned()
    }

    fn keep(&self, sheet: BareSheet) -> BareSheet {
        let mut found = self.found.lock().unwrap_or_else(PoisonError::into_inner);
        if found.len() < MOST {
            found.push(sheet.clone());
        }
        sheet
    }
}
