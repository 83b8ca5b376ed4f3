//! The root of a rising function, by Newton's method that cannot leave its bracket.

/// Steps after which the search has long ended: Newton's method needs about six, and where it
/// fails halving takes over, which needs 53 at most.
const MOST_STEPS: usize = 100;

/// Finds the root of a rising function between two bounds, from a start between them, to rounding. The
/// function gives its value and its slope; where a step of Newton's method would leave the bounds
/// that are known by then, they are halved. A step of it that is no longer than `short` is the last.
pub(crate) fn root(
    rising: impl Fn(f64) -> (f64, f64),
    [mut low, mut high]: [f64; 2],
    start: f64,
    short: f64,
) -> f64 {
    let mut at = start;
    for _ in 0..MOST_STEPS {
        let (value, slope) = rising(at);
        let next = at - value / slope;
        if (next - at).abs() <= short {
            return next.max(low).min(high);
        }
        if value > 0.0 {
            high = at;
        } else {
            low = at;
        }
        let inside = low < next && next < high;
        at = if inside { next } else { f64::midpoint(low, high) };
    }
    at
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn planted_roots_are_found_from_both_ends() {
        for planted in [-3.0, 1e-6, 2.5] {
            // Steep far away and flat near the root, where Newton's method alone flies off.
            let rising = |x: f64| ((x - planted).atan(), 1.0 / (1.0 + (x - planted).powi(2)));
            for start in [-1e3, 1e3] {
                // Rounding of numbers up to a thousand.
                assert!((root(rising, [-1e3, 1e3], start, 1e-14) - planted).abs() < 1e-12);
            }
        }
    }

    #[test]
    fn the_last_step_stays_within_the_bounds_too() {
        // Rounding can leave a root just outside of the bounds, as here by less than a short step.
        let beyond = |by: f64| move |x: f64| (x - by, 1.0);
        for (by, bound) in [(-1e-15, 0.0), (1.0 + 1e-15, 1.0)] {
            assert_eq!(root(beyond(by), [0.0, 1.0], bound, 1e-14), bound);
        }
    }
}
