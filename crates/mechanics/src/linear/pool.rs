//! Memory that is used again.

use std::ops::{Deref, DerefMut};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

/// How many are kept: more are hardly in use at once.
const MOST: usize = 8;

/// What was done with, kept for whoever needs the like next.
///
/// A factor has some hundred pages of memory. Given back to the system and asked for anew with each, they
/// are cleared anew as well.
#[derive(Debug)]
pub(crate) struct Pool<T>(Arc<Mutex<Vec<T>>>);

impl<T> Default for Pool<T> {
    fn default() -> Self {
        Self(Arc::default())
    }
}

impl<T> Clone for Pool<T> {
    /// The same pool.
    fn clone(&self) -> Self {
        Self(Arc::clone(&self.0))
    }
}

impl<T: Default> Pool<T> {
    /// One as whoever had it last left it; a new one where none is left.
    pub(super) fn take(&self) -> Pooled<T> {
        let one = self.kept().pop().unwrap_or_default();
        Pooled { one, pool: self.clone() }
    }

    fn kept(&self) -> MutexGuard<'_, Vec<T>> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// One of a pool, to which it goes back.
#[derive(Clone, Debug, Default)]
pub(crate) struct Pooled<T: Default> {
    one: T,
    pool: Pool<T>,
}

impl<T: Default> Deref for Pooled<T> {
    type Target = T;

    fn deref(&self) -> &T {
        &self.one
    }
}

impl<T: Default> DerefMut for Pooled<T> {
    fn deref_mut(&mut self) -> &mut T {
        &mut self.one
    }
}

impl<T: Default> Drop for Pooled<T> {
    fn drop(&mut self) {
        let mut kept = self.pool.kept();
        if kept.len() < MOST {
            kept.push(std::mem::take(&mut self.one));
        }
    }
}
