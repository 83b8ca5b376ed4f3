//! Smooth joins of surfaces.

/// Width over which two surfaces blend, m; as in the reference cases.
pub(super) const BLEND: f64 = 0.004;

/// The smooth least of a left and a right surface of two kinds.
///
/// `-w ln sum exp(-z/w)`, below the least by at most `w ln 4`. Left and right are added first, so
/// that a mirror image has the same value to the last bit.
pub(super) fn least(pairs: [[f64; 2]; 2]) -> f64 {
    let lowest = pairs.iter().flatten().copied().fold(f64::INFINITY, f64::min);
    let share = |z: f64| libm::exp((lowest - z) / BLEND);
    let [first, second] = pairs.map(|[left, right]| share(left) + share(right));
    lowest - BLEND * libm::log(first + second)
}

/// A rounded rim: zero up to `start`, then a quarter of an ellipse of the given width and height,
/// and straight on where it has become steep.
pub(super) fn rim(along: f64, start: f64, width: f64, height: f64) -> f64 {
    // Where the ellipse's slope is about two of its own units, it goes straight on.
    const STEEP: f64 = 0.9;
    let share = ((along - start) / width).max(0.0);
    let ellipse = |share: f64| 1.0 - (1.0 - share * share).sqrt();
    if share <= STEEP {
        return height * ellipse(share);
    }
    let slope = STEEP / (1.0 - STEEP * STEEP).sqrt();
    height * (ellipse(STEEP) + slope * (share - STEEP))
}
