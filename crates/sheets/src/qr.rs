//! QR codes, after ISO/IEC 18004: a text in its alphanumeric set as one shape.

use kurbo::{BezPath, Point, Rect, Shape as _};
use qrcode::{Color, EcLevel, QrCode};

/// White around the code that belongs to it, in modules (ISO/IEC 18004:2015, 5.3.8).
const QUIET: usize = 4;
/// The least width with the white around it, in millimetres.
const LEAST_WIDTH: f64 = 26.0;
/// The least width of a module, in millimetres: three dots of a picture of 150 dpi.
const LEAST_MODULE: f64 = 0.508;

/// A code that is ready to be drawn.
pub(crate) struct Qr {
    modules: Vec<Color>,
    /// Modules on each side, without the white around.
    side: usize,
}

impl Qr {
    /// The smallest code of a text at level Q of error correction, which bears a quarter of its area
    /// being spoilt; none where a text is too long for any.
    pub(crate) fn of(text: &str) -> Option<Self> {
        let code = QrCode::with_error_correction_level(text, EcLevel::Q).ok()?;
        let side = code.width();
        Some(Self { modules: code.into_colors(), side })
    }

    /// Its width and height with the white around it, in millimetres.
    pub(crate) fn width(&self) -> f64 {
        (self.all() as f64 * LEAST_MODULE).max(LEAST_WIDTH)
    }

    /// Its dark modules, with the corner of the white around it at a point.
    pub(crate) fn path(&self, at: Point) -> BezPath {
        let module = self.width() / self.all() as f64;
        let place = |index: usize| (index + QUIET) as f64 * module;
        let mut path = BezPath::new();
        for (row, modules) in self.modules.chunks(self.side).enumerate() {
            let mut from = 0;
            // Neighbours are one shape, between which nothing shines through.
            for run in modules.chunk_by(|one, next| one == next) {
                let to = from + run.len();
                if run[0] == Color::Dark {
                    let (x0, x1) = (at.x + place(from), at.x + place(to));
                    let (y0, y1) = (at.y + place(row), at.y + place(row + 1));
                    path.extend(Rect::new(x0, y0, x1, y1).path_elements(0.0));
                }
                from = to;
            }
        }
        path
    }

    fn all(&self) -> usize {
        self.side + 2 * QUIET
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_longest_text_is_a_code_of_version_8() {
        // ISO/IEC 18004:2015, table 7: 8-Q holds 157 alphanumeric signs; version 8 has 49 modules.
        let sides = |long: usize| Qr::of(&"A".repeat(long)).map(|own| own.side);
        assert_eq!(sides(150), Some(49));
        assert_eq!(sides(157), Some(49));
        assert_eq!(sides(158), Some(53));
        assert_eq!(sides(5000), None);
    }

    #[test]
    fn it_is_printed_as_wide_as_it_says_with_white_around() {
        for long in [1, 40, 90, 150] {
            let code = Qr::of(&"A".repeat(long)).unwrap();
            assert!(code.width() >= 25.0);
            let dark = code.path(Point::new(10.0, 20.0)).bounding_box();
            let white = QUIET as f64 * code.width() / code.all() as f64;
            let wanted = Rect::from_origin_size((10.0, 20.0), (code.width(), code.width()));
            let wanted = wanted.inset(-white);
            // The finder squares reach to three corners.
            for (is, wanted) in [
                (dark.x0, wanted.x0),
                (dark.y0, wanted.y0),
                (dark.x1, wanted.x1),
                (dark.y1, wanted.y1),
            ] {
                assert!((is - wanted).abs() < 1e-9, "{is} is not {wanted}");
            }
        }
    }
}
