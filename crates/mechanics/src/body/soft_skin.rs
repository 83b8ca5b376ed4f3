//! The skin without load, of a body whose shape is known under load.
//!
//! What is known of the skin under seat bones was seen in people who sat on flat foam: tissue was
//! pressed in already. Soft tissue under that shape would give way twice, so what gives way is the
//! shape before: foam that is pressed down by d at the lowest point presses with F (d - h) where
//! the skin is h higher, and that pressure had pushed the skin in by F (d - h) / k. Without it the
//! skin is lower by so much: above its own lowest point it is h + F/k h, and farther out than the
//! foam reached it is h + F/k d. On softer ground than the foam tissue is pressed in by less.

/// Pressure of flat foam for each metre that it is pressed down, F, Pa/m; an estimate: some 12 kPa
/// under a seat bone (60 to 130 mmHg on foam, from memory) where it is pressed down by d.
const FOAM_STIFFNESS: f64 = 0.3e6;
/// How far it is pressed down at the lowest point, d, m: as far as up to the trochanters' skin.
const FOAM_DEPTH: f64 = 0.040;

/// Height of the skin without load above its own lowest point, where under load it is `height`
/// above its lowest point, m; `tissue`: stiffness of the tissue, Pa/m.
pub(super) fn unloaded_height(height: f64, tissue: f64) -> f64 {
    height + FOAM_STIFFNESS / tissue * height.min(FOAM_DEPTH)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn foam_presses_the_skin_into_the_shape_that_was_seen() {
        for tissue in [0.2e6, 0.5e6, 1.0e6, 1e12] {
            for seen in [0.0, 0.003, 0.020, 0.039, 0.060] {
                let pressure = FOAM_STIFFNESS * (FOAM_DEPTH - seen).max(0.0);
                let lowest = FOAM_STIFFNESS * FOAM_DEPTH / tissue;
                let pressed = unloaded_height(seen, tissue) - lowest + pressure / tissue;
                assert!((pressed - seen).abs() < 1e-15, "{tissue} {seen}: {pressed}");
            }
        }
    }
}
