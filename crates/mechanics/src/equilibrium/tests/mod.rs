//! Tests that need what the crate does not show: planted contact under a given pressure, and the
//! energy itself.

mod again;
mod beside;
mod differences;
mod hard_cases;
mod laws;
mod planted;
mod scenes;
mod stopping;
mod walls;

/// Numbers in -1..1 that look random, from a fixed seed.
struct Numbers(u64);

impl Numbers {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963);
        (self.0 >> 11) as f64 / (1u64 << 52) as f64 - 1.0
    }
}
