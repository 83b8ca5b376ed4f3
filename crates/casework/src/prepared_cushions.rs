//! Cushions that were meshed before: whoever goes from screen to screen opens one case again and
//! again, and several clients sit on the same cushion.

use std::sync::{Arc, Mutex, PoisonError};

use case::StockError;
use cushion::{Cell, Pattern};
use fitting::{PreparedCushion, Spacings};

/// Cushions that are kept: those of a morning. Each takes some tens of megabytes once its mechanics
/// was asked for.
const MOST: usize = 8;

/// The cushions that were asked for last.
#[derive(Debug, Default)]
pub struct PreparedCushions {
    /// The last one last, each with its cell.
    kept: Mutex<Vec<(Cell, Arc<PreparedCushion>)>>,
    spacings: Spacings,
}

impl PreparedCushions {
    /// None yet, to be meshed so and not as usual.
    #[must_use]
    pub fn meshed(spacings: Spacings) -> Self {
        Self { kept: Mutex::default(), spacings }
    }

    /// A cushion of this pattern and cell, as it was prepared before or now.
    ///
    /// # Errors
    ///
    /// As [`PreparedCushion::new`].
    pub(crate) fn prepared(
        &self,
        pattern: &Pattern,
        cell: &Cell,
    ) -> Result<Arc<PreparedCushion>, StockError> {
        if let Some(known) = self.known(pattern, cell) {
            return Ok(known);
        }
        // Nobody waits for another's cushion.
        let made = Arc::new(PreparedCushion::new(pattern, cell, self.spacings)?);
        let mut kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        kept.push((cell.clone(), Arc::clone(&made)));
        if kept.len() > MOST {
            kept.remove(0);
        }
        Ok(made)
    }

    fn known(&self, pattern: &Pattern, cell: &Cell) -> Option<Arc<PreparedCushion>> {
        let mut kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        let at = kept.iter().position(|own| own.0 == *cell && own.1.pattern() == pattern)?;
        let found = kept.remove(at);
        let cushion = Arc::clone(&found.1);
        kept.push(found);
        Some(cushion)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cushion_is_prepared_once_and_another_pattern_or_cell_is_another() {
        let cushions = PreparedCushions::default();
        let (six, cell) = (testkit::pattern("row-six", "400x400"), testkit::cell());
        let prepared = |pattern: &Pattern, cell: &Cell| cushions.prepared(pattern, cell).unwrap();
        let first = prepared(&six, &cell);
        assert!(Arc::ptr_eq(&first, &prepared(&six, &cell)));
        let wider = prepared(&testkit::pattern("row-six", "440x400"), &cell);
        assert!(!Arc::ptr_eq(&first, &wider));
        let larger = Cell { inflated: cell.inflated * 1.1, ..cell.clone() };
        assert!(!Arc::ptr_eq(&first, &prepared(&six, &larger)));
        assert!(Arc::ptr_eq(&first, &prepared(&six, &cell)));
    }

    #[test]
    fn what_was_asked_for_longest_ago_goes_first() {
        let cushions = PreparedCushions::default();
        let pattern = testkit::pattern("row-six", "400x400");
        let cell = |at: usize| {
            let usual = testkit::cell();
            Cell { inflated: usual.inflated * (1.0 + 0.01 * at as f64), ..usual }
        };
        let of = |at: usize| cushions.prepared(&pattern, &cell(at)).unwrap();
        let (first, second) = (of(0), of(1));
        (2..MOST).for_each(|at| drop(of(at)));
        assert!(Arc::ptr_eq(&first, &of(0)));
        drop(of(MOST));
        assert!(Arc::ptr_eq(&first, &of(0)));
        assert!(!Arc::ptr_eq(&second, &of(1)));
    }
}
