//! Writes a template as DXF, release 12: LINE, ARC and TEXT, a layer for each kind of line.
//!
//! After the DXF reference of release 12 (Autodesk, 1992): group codes and values on lines of their
//! own. Units are millimetres, which release 12 has no word for, so the sheet says so.

use std::fmt::Write as _;

use cushion::{Piece as CurvePiece, Point};

use crate::chains::straight_and_arcs;
use crate::layers::{Label, Layer, Says};
use crate::template::Template;

/// The layer of what is said.
const TEXT: &str = "TEXT";

/// Returns the sheet as DXF; `say` has the words, `notes` stand below the sheet, a line each.
///
/// Smooth curves are straight pieces within a hundredth of a millimetre; straight pieces and arcs
/// are themselves.
#[must_use]
pub fn dxf(template: &Template, say: &dyn Fn(&Says) -> String, notes: &[String]) -> String {
    let mut out = Writer(String::new());
    out.head(template);
    for piece in &template.pieces {
        for line in &piece.lines {
            for own in straight_and_arcs(&line.chain).pieces() {
                out.curve(&layer(line.layer), own);
            }
        }
        for label in &piece.labels {
            out.label(label, &say(&label.says));
        }
    }
    for (at, note) in notes.iter().enumerate() {
        let at = Point::new(0.0, -10.0 - 8.0 * at as f64);
        out.text(at, (4.0, 0.0), note, false);
    }
    out.pair(0, "ENDSEC").pair(0, "EOF");
    out.0
}

/// The name of a layer: upper case, as release 12 has it.
fn layer(layer: Layer) -> String {
    layer.id().to_ascii_uppercase().replace('-', "_")
}

/// The colour numbers of layers: of all seven colours each has one.
fn color(layer: Layer) -> i32 {
    match layer {
        Layer::Cut => 7,
        Layer::Stitch => 5,
        Layer::Notch => 1,
        Layer::Opening => 6,
        Layer::Grain => 3,
        Layer::Left => 4,
    }
}

struct Writer(String);

impl Writer {
    fn pair(&mut self, code: i32, value: &str) -> &mut Self {
        let _ = write!(self.0, "{code}\n{value}\n");
        self
    }

    fn number(&mut self, code: i32, value: f64) -> &mut Self {
        // Rounded as written, so that nothing is never negative.
        let rounded = (value * 1e6).round() / 1e6 + 0.0;
        let _ = write!(self.0, "{code}\n{rounded:.6}\n");
        self
    }

    fn point(&mut self, code: i32, at: Point) -> &mut Self {
        self.number(code, at.x).number(code + 10, at.y)
    }

    fn head(&mut self, template: &Template) {
        self.pair(0, "SECTION").pair(2, "HEADER");
        self.pair(9, "$ACADVER").pair(1, "AC1009");
        self.pair(9, "$EXTMIN").point(10, Point::ORIGIN).number(30, 0.0);
        let far = Point::new(template.sheet.x1, template.sheet.y1);
        self.pair(9, "$EXTMAX").point(10, far).number(30, 0.0);
        self.pair(0, "ENDSEC");
        self.pair(0, "SECTION").pair(2, "TABLES");
        self.pair(0, "TABLE").pair(2, "LTYPE").pair(70, "1");
        self.pair(0, "LTYPE").pair(2, "CONTINUOUS").pair(70, "0").pair(3, "Solid line");
        self.pair(72, "65").pair(73, "0").number(40, 0.0).pair(0, "ENDTAB");
        let layers = Layer::ALL.map(|own| (layer(own), color(own)));
        let layers = layers.into_iter().chain([(TEXT.to_owned(), 2)]);
        self.pair(0, "TABLE").pair(2, "LAYER").pair(70, "7");
        for (name, color) in layers {
            self.pair(0, "LAYER").pair(2, &name).pair(70, "0").pair(62, &color.to_string());
            self.pair(6, "CONTINUOUS");
        }
        self.pair(0, "ENDTAB").pair(0, "ENDSEC");
        self.pair(0, "SECTION").pair(2, "ENTITIES");
    }

    fn curve(&mut self, layer: &str, piece: &CurvePiece) {
        match *piece {
            CurvePiece::Arc { center, radius, start, sweep } => {
                // Arcs run counter-clockwise.
                let (from, to) =
                    if sweep > 0.0 { (start, start + sweep) } else { (start + sweep, start) };
                let degrees = |angle: f64| angle.to_degrees().rem_euclid(360.0);
                self.pair(0, "ARC").pair(8, layer).point(10, center).number(40, radius);
                self.number(50, degrees(from)).number(51, degrees(to));
            }
            CurvePiece::Line(from, to) => {
                self.pair(0, "LINE").pair(8, layer).point(10, from).point(11, to);
            }
            // There is none in what is of straight pieces and arcs alone.
            CurvePiece::Cubic(cubic) => {
                self.pair(0, "LINE").pair(8, layer).point(10, cubic.p0).point(11, cubic.p3);
            }
        }
    }

    fn label(&mut self, label: &Label, words: &str) {
        self.text(label.at, (label.height, label.angle), words, true);
    }

    /// Words from a point, or with their middle there.
    fn text(&mut self, at: Point, (height, angle): (f64, f64), words: &str, centred: bool) {
        self.pair(0, "TEXT").pair(8, TEXT).point(10, at).number(40, height);
        self.pair(1, &ascii(words)).number(50, angle.rem_euclid(360.0));
        if centred {
            self.pair(72, "1").point(11, at);
        }
    }
}

/// Words in the characters that every reader of release 12 has; others by their number in Unicode,
/// as later releases read them.
fn ascii(words: &str) -> String {
    let mut text = String::new();
    for character in words.chars() {
        match character {
            ' '..='~' => text.push(character),
            '\n' | '\r' | '\t' => text.push(' '),
            other => {
                let _ = write!(text, "\\U+{:04X}", u32::from(other));
            }
        }
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_are_in_one_line_of_plain_characters() {
        assert_eq!(ascii("Wall 4\n2 × 3"), "Wall 4 2 \\U+00D7 3");
    }
}
