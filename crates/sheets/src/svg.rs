//! Writes a page or a picture as SVG, with real text.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;

use base64::Engine as _;
use base64::prelude::BASE64_STANDARD;
use kurbo::{Affine, BezPath, PathEl, Point};

use crate::color::Color;
use crate::font::{Cut, Family};
use crate::page::{Block, FillRule, Mark, Page, Role, Shape, TextRun};
use crate::picture::Picture;
use crate::text::MM_PER_PT;

/// How a page is written as SVG.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SvgOptions {
    /// Whether the faces are put into the file, so that it looks the same on any machine.
    pub embed_fonts: bool,
    /// Whether words are written as shapes, for programs that know no other face than their own;
    /// what is read aloud stays in labels.
    pub outlines: bool,
}

impl Default for SvgOptions {
    fn default() -> Self {
        Self { embed_fonts: true, outlines: false }
    }
}

/// Writes `page` as SVG in millimetres, on a white ground.
#[must_use]
pub fn svg(page: &Page, options: &SvgOptions) -> String {
    let mut out = Writer(String::new());
    let (width, height) = (page.paper.width(), page.paper.height());
    out.raw("<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\"");
    out.raw(" lang=\"")
        .raw(page.language)
        .raw("\" xml:lang=\"")
        .raw(page.language)
        .raw("\" role=\"document\"");
    out.number(" width=\"", width).raw("mm\"");
    out.number(" height=\"", height).raw("mm\"");
    out.number(" viewBox=\"0 0 ", width).number(" ", height).raw("\">\n");
    out.raw("<title>").text(&page.title).raw("</title>\n");
    out.raw("<style>\n");
    if options.embed_fonts && !options.outlines {
        for (cut, characters) in cuts(page) {
            out.face(cut, cut.bytes_for(&characters));
        }
    }
    // Programs that do not read embedded faces should take one that is not much wider; a page that
    // is shown small keeps its words apart where letters are not moved to whole dots.
    out.raw("text{font-family:\"").raw(Family::Usual.name());
    out.raw("\",\"Liberation Sans\",Arial,Helvetica,sans-serif;white-space:pre;text-rendering:geometricPrecision}\n</style>\n");
    out.number("<rect width=\"", width)
        .number("\" height=\"", height)
        .raw("\" fill=\"#ffffff\"/>\n");
    for block in page.in_order() {
        out.block(block, options.outlines);
    }
    out.raw("</svg>\n");
    out.0
}

/// Writes `picture` as an element to be put into an HTML page: nothing but attributes of marks, so
/// that a page that forbids styles within it shows it too, and no ground.
///
/// Words are in the face of the page, each line as long as it was measured in ours. A part of a
/// compartment has its number as `data-compartment`. Whoever hears the page hears the picture's
/// sentences and nothing of what is in it.
#[must_use]
pub fn fragment(picture: &Picture) -> String {
    let mut out = Writer(String::new());
    out.number("<svg viewBox=\"0 0 ", picture.width).number(" ", picture.height);
    out.raw("\" role=\"img\" aria-label=\"").text(&picture.alt).raw("\">\n");
    out.raw("<g aria-hidden=\"true\">\n");
    for part in &picture.parts {
        match part.compartment {
            Some(number) => {
                let _ = writeln!(out.0, "<g data-compartment=\"{number}\">");
            }
            None => {
                out.raw("<g>\n");
            }
        }
        for mark in &part.marks {
            match mark {
                Mark::Shape(shape) => out.shape(shape),
                Mark::Text(run) => out.bare_run(run),
            }
        }
        out.raw("</g>\n");
    }
    out.raw("</g>\n</svg>\n");
    out.0
}

/// The faces that the page's text is set in, each with the characters that it is needed for.
fn cuts(page: &Page) -> BTreeMap<Cut, BTreeSet<char>> {
    let mut cuts: BTreeMap<Cut, BTreeSet<char>> = BTreeMap::new();
    for run in page.texts() {
        cuts.entry(run.shaped.cut()).or_default().extend(run.shaped.text().chars());
    }
    cuts
}

struct Writer(String);

impl Writer {
    fn raw(&mut self, text: &str) -> &mut Self {
        self.0.push_str(text);
        self
    }

    /// Writes `before` and a number with at most three decimals: a micrometre.
    fn number(&mut self, before: &str, value: f64) -> &mut Self {
        let rounded = (value * 1e3).round() / 1e3;
        // `+ 0.0` turns -0 into 0.
        let _ = write!(self.0, "{before}{}", rounded + 0.0);
        self
    }

    /// Writes text with what XML reserves escaped; what it forbids is replaced.
    fn text(&mut self, text: &str) -> &mut Self {
        for character in text.chars() {
            match character {
                '&' => self.0.push_str("&amp;"),
                '<' => self.0.push_str("&lt;"),
                '>' => self.0.push_str("&gt;"),
                '"' => self.0.push_str("&quot;"),
                '\0'..='\u{8}'
                | '\u{b}'
                | '\u{c}'
                | '\u{e}'..='\u{1f}'
                | '\u{fffe}'
                | '\u{ffff}' => {
                    self.0.push(char::REPLACEMENT_CHARACTER);
                }
                other => self.0.push(other),
            }
        }
        self
    }

    fn color(&mut self, before: &str, color: Color) -> &mut Self {
        let _ = write!(self.0, "{before}#{:02x}{:02x}{:02x}\"", color.red, color.green, color.blue);
        self
    }

    fn face(&mut self, cut: Cut, bytes: &[u8]) {
        let _ = write!(
            self.0,
            "@font-face{{font-family:\"{}\";font-weight:{};src:url(data:font/ttf;base64,",
            cut.family.name(),
            cut.weight.number()
        );
        BASE64_STANDARD.encode_string(bytes, &mut self.0);
        self.raw(")}\n");
    }

    fn block(&mut self, block: &Block, outlines: bool) {
        self.raw("<g");
        if let Some(id) = &block.id {
            self.raw(" id=\"").text(id).raw("\"");
        }
        match &block.role {
            Role::Figure { alt } => {
                self.raw(" role=\"img\" aria-label=\"").text(alt).raw("\">\n<desc>");
                self.text(alt).raw("</desc>\n");
            }
            Role::Heading(level) => {
                let _ = writeln!(self.0, " role=\"heading\" aria-level=\"{level}\">");
            }
            Role::Artifact => {
                self.raw(" aria-hidden=\"true\">\n");
            }
            Role::Paragraph | Role::ListItem | Role::Foot | Role::Cell { .. } => {
                self.raw(">\n");
            }
        }
        for mark in &block.marks {
            match mark {
                Mark::Shape(shape) => self.shape(shape),
                Mark::Text(run) if outlines => self.outlines(run),
                Mark::Text(run) => self.run(run),
            }
        }
        self.raw("</g>\n");
    }

    fn shape(&mut self, shape: &Shape) {
        self.raw("<path");
        match shape.fill {
            Some(fill) => {
                self.color(" fill=\"", fill.color);
                if fill.rule == FillRule::EvenOdd {
                    self.raw(" fill-rule=\"evenodd\"");
                }
            }
            None => {
                self.raw(" fill=\"none\"");
            }
        }
        if let Some(pen) = &shape.pen {
            self.color(" stroke=\"", pen.color);
            self.number(" stroke-width=\"", pen.width);
            self.raw("\" stroke-linecap=\"round\" stroke-linejoin=\"round\"");
            for (place, length) in pen.dash.iter().enumerate() {
                self.number(if place == 0 { " stroke-dasharray=\"" } else { " " }, *length);
            }
            if !pen.dash.is_empty() {
                self.raw("\"");
            }
        }
        self.raw(" d=\"").path(&shape.path).raw("\"/>\n");
    }

    fn path(&mut self, path: &BezPath) -> &mut Self {
        for element in path.elements() {
            match *element {
                PathEl::MoveTo(to) => self.points("M", &[to]),
                PathEl::LineTo(to) => self.points("L", &[to]),
                PathEl::QuadTo(by, to) => self.points("Q", &[by, to]),
                PathEl::CurveTo(one, two, to) => self.points("C", &[one, two, to]),
                PathEl::ClosePath => self.raw("Z"),
            };
        }
        self
    }

    fn points(&mut self, letter: &str, points: &[Point]) -> &mut Self {
        for (place, point) in points.iter().enumerate() {
            self.number(if place == 0 { letter } else { " " }, point.x);
            self.number(" ", point.y);
        }
        self
    }

    /// Writes a line of text as shapes, with its words as their label.
    fn outlines(&mut self, run: &TextRun) {
        let (sin, cos) = crate::page::turn(run.angle);
        let place = Affine::new([cos, sin, -sin, cos, run.at.x, run.at.y]);
        self.raw("<path role=\"img\" aria-label=\"").text(&run.shaped.text()).raw("\"");
        self.color(" fill=\"", run.color);
        let path = place * run.shaped.outlines(run.size_pt);
        self.raw(" d=\"").path(&path).raw("\"/>\n");
    }

    /// Where a line of text stands and how heavy it is, up to the closing quote of its weight;
    /// returns where it begins.
    fn begin_text(&mut self, run: &TextRun) -> f64 {
        let begin = if run.angle == 0.0 { run.at.x } else { 0.0 };
        if run.angle == 0.0 {
            self.number(" x=\"", run.at.x).number("\" y=\"", run.at.y).raw("\"");
        } else {
            self.number(" transform=\"translate(", run.at.x).number(" ", run.at.y);
            self.number(") rotate(", run.angle).raw(")\"");
        }
        self.number(" font-size=\"", run.size_pt * MM_PER_PT);
        let weight = run.shaped.cut().weight.number();
        let _ = write!(self.0, "\" font-weight=\"{weight}\"");
        begin
    }

    /// Writes a line of text in no face of its own, drawn as long as it is in ours.
    fn bare_run(&mut self, run: &TextRun) {
        self.raw("<text class=\"words\"");
        self.begin_text(run);
        self.color(" fill=\"", run.color);
        self.number(" textLength=\"", run.shaped.width(run.size_pt));
        self.raw("\" lengthAdjust=\"spacingAndGlyphs\">").text(&run.shaped.text());
        self.raw("</text>\n");
    }

    /// Writes a line of text, each word at a place of its own: where the face is not at hand, words
    /// stay where they belong.
    fn run(&mut self, run: &TextRun) {
        self.raw("<text");
        let begin = self.begin_text(run);
        let Cut { family, .. } = run.shaped.cut();
        if family == Family::Wide {
            self.raw(" style=\"font-family:'").raw(family.name()).raw("',sans-serif\"");
        }
        self.color(" fill=\"", run.color).raw(">");
        for (at, (place, word)) in run.shaped.words(run.size_pt).into_iter().enumerate() {
            if at == 0 {
                self.text(&word);
            } else {
                self.number("<tspan x=\"", begin + place).raw("\">").text(&word).raw("</tspan>");
            }
        }
        self.raw("</text>\n");
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_have_three_decimals_at_most_and_no_minus_zero() {
        let written = |value| {
            let mut out = Writer(String::new());
            out.number("", value);
            out.0
        };
        assert_eq!(written(1.0), "1");
        assert_eq!(written(0.123_49), "0.123");
        assert_eq!(written(-0.000_1), "0");
        assert_eq!(written(-2.5), "-2.5");
    }
}
