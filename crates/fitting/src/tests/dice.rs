//! Numbers by lot, the same everywhere.

use mechanics::mixed;

/// Random numbers that are the same everywhere (SplitMix64).
pub(crate) struct Dice(pub(crate) u64);

impl Dice {
    pub(crate) fn roll(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        mixed(self.0)
    }

    pub(crate) fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * ((self.roll() >> 11) as f64 / (1u64 << 53) as f64)
    }

    pub(crate) fn one_of<T: Copy>(&mut self, all: &[T]) -> T {
        all[(self.roll() % all.len() as u64) as usize]
    }

    pub(crate) fn chance(&mut self, share: f64) -> bool {
        self.between(0.0, 1.0) < share
    }

    /// A normal number, by the central limit of twelve.
    pub(crate) fn normal(&mut self) -> f64 {
        (0..12).map(|_| self.between(0.0, 1.0)).sum::<f64>() - 6.0
    }
}
