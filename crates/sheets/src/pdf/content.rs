//! The content of a page as PDF operations.

use std::collections::BTreeMap;

use kurbo::{PathEl, Point};
use printpdf::{
    Codepoint, DictItem, Line, LineCapStyle, LineDashPattern, LineJoinStyle, LinePoint, Op,
    PaintMode, Polygon, PolygonRing, Pt, Rgb, TextItem, TextMatrix, WindingOrder,
};

use super::structure::{LABEL, tag};
use super::subset::{Subsets, handle};
use crate::color::Color;
use crate::page::{Block, FillRule, Mark, Page, Role, Shape, TextRun, turn};
use crate::text::MM_PER_PT;

/// Returns the operations of a page: each block between marks by which it is tagged.
pub(super) fn content(page: &Page, subsets: &Subsets) -> Vec<Op> {
    let mut ops = Vec::new();
    let mut next = 0;
    let height = page.paper.height();
    for block in page.in_order() {
        let (label, rest) = block.marks.split_at(usize::from(block.has_label()));
        if !label.is_empty() {
            ops.push(numbered(LABEL, &mut next));
            set(label, true, height, subsets, &mut ops);
            ops.push(Op::EndMarkedContent);
        }
        ops.push(begin(block, &mut next));
        let is_read = !matches!(block.role, Role::Figure { .. } | Role::Artifact);
        set(rest, is_read, height, subsets, &mut ops);
        ops.push(Op::EndMarkedContent);
    }
    ops
}

/// Sets marks; in words that are read, a space parts each line from the next.
fn set(marks: &[Mark], is_read: bool, height: f64, subsets: &Subsets, ops: &mut Vec<Op>) {
    for (at, mark) in marks.iter().enumerate() {
        match mark {
            Mark::Shape(shape) => draw(shape, height, ops),
            Mark::Text(run) => {
                let goes_on = marks[at + 1..].iter().any(|next| matches!(next, Mark::Text(_)));
                write(run, is_read && goes_on, height, subsets, ops);
            }
        }
    }
}

/// Opens a block: as an artifact, or with the number by which the structure finds it.
fn begin(block: &Block, next: &mut i64) -> Op {
    if block.role == Role::Artifact {
        return Op::BeginMarkedContent { tag: "Artifact".to_owned() };
    }
    numbered(tag(&block.role), next)
}

/// Opens marked content with the next number.
fn numbered(tag: &str, next: &mut i64) -> Op {
    let number = DictItem::Int(*next);
    *next += 1;
    Op::BeginMarkedContentWithProperties {
        tag: tag.to_owned(),
        properties: DictItem::Dict { map: BTreeMap::from([("MCID".to_owned(), number)]) },
    }
}

/// A point of the page in points from the lower left corner.
fn place(point: Point, height: f64) -> printpdf::Point {
    let pt = |mm: f64| Pt((mm / MM_PER_PT) as f32);
    printpdf::Point { x: pt(point.x), y: pt(height - point.y) }
}

fn ink(color: Color) -> printpdf::Color {
    let part = |channel: u8| f32::from(channel) / 255.0;
    let (r, g, b) = (part(color.red), part(color.green), part(color.blue));
    printpdf::Color::Rgb(Rgb { r, g, b, icc_profile: None })
}

fn draw(shape: &Shape, height: f64, ops: &mut Vec<Op>) {
    let rings = rings(shape, height);
    if let Some(fill) = shape.fill {
        ops.push(Op::SetFillColor { col: ink(fill.color) });
        let polygon = Polygon {
            rings: rings.iter().map(|(points, _)| PolygonRing { points: points.clone() }).collect(),
            mode: PaintMode::Fill,
            winding_order: match fill.rule {
                FillRule::NonZero => WindingOrder::NonZero,
                FillRule::EvenOdd => WindingOrder::EvenOdd,
            },
        };
        ops.push(Op::DrawPolygon { polygon });
    }
    let Some(pen) = &shape.pen else { return };
    let pt = |mm: f64| (mm / MM_PER_PT) as f32;
    ops.push(Op::SetOutlineColor { col: ink(pen.color) });
    ops.push(Op::SetOutlineThickness { pt: Pt(pt(pen.width)) });
    ops.push(Op::SetLineCapStyle { cap: LineCapStyle::Round });
    ops.push(Op::SetLineJoinStyle { join: LineJoinStyle::Round });
    let dash: Vec<f32> = pen.dash.iter().map(|length| pt(*length)).collect();
    ops.push(Op::SetLineDashPattern { dash: LineDashPattern::new(0.0, &dash) });
    // One line for each ring: a polygon of several rings is closed at its last only.
    for (points, is_closed) in rings {
        ops.push(Op::DrawLine { line: Line { points, is_closed } });
    }
}

/// The rings of a path, and whether each is closed.
fn rings(shape: &Shape, height: f64) -> Vec<(Vec<LinePoint>, bool)> {
    let mut rings: Vec<(Vec<LinePoint>, bool)> = Vec::new();
    let mut last = Point::ORIGIN;
    let on = |point: Point| LinePoint { p: place(point, height), bezier: false };
    let off = |point: Point| LinePoint { p: place(point, height), bezier: true };
    for element in shape.path.elements() {
        if let PathEl::MoveTo(to) = *element {
            rings.push((vec![on(to)], false));
            last = to;
            continue;
        }
        let Some((points, closed)) = rings.last_mut() else { continue };
        match *element {
            PathEl::LineTo(to) => points.push(on(to)),
            PathEl::QuadTo(by, to) => {
                // The same curve as a cubic.
                let (one, two) = (last.lerp(by, 2.0 / 3.0), to.lerp(by, 2.0 / 3.0));
                points.extend([off(one), off(two), on(to)]);
            }
            PathEl::CurveTo(one, two, to) => points.extend([off(one), off(two), on(to)]),
            PathEl::ClosePath => *closed = true,
            PathEl::MoveTo(_) => {}
        }
        last = element.end_point().unwrap_or(last);
    }
    rings
}

/// Writes a line of text, with a space after it where it goes on.
fn write(run: &TextRun, goes_on: bool, height: f64, subsets: &Subsets, ops: &mut Vec<Op>) {
    let cut = run.shaped.cut();
    let at = place(run.at, height);
    // Clockwise on the page, whose y runs up here.
    let (sin, cos) = turn(-run.angle);
    let (sin, cos) = (sin as f32, cos as f32);
    ops.push(Op::StartTextSection);
    ops.push(Op::SetFillColor { col: ink(run.color) });
    ops.push(Op::SetFont { font: handle(cut), size: Pt(run.size_pt as f32) });
    let matrix = TextMatrix::Raw([cos, sin, -sin, cos, at.x.0, at.y.0]);
    ops.push(Op::SetTextMatrix { matrix });
    let glyphs = run.shaped.glyphs().iter().map(|glyph| Codepoint {
        gid: subsets.glyph(cut, glyph.id),
        // What is subtracted after the glyph, in thousandths of an em; the faces have 1000 units.
        offset: -glyph.kern as f32,
        cid: Some(glyph.character.to_string()),
    });
    let space = subsets.space(cut).filter(|_| goes_on && !run.shaped.text().ends_with(' '));
    let space = space.map(|gid| Codepoint { gid, offset: 0.0, cid: Some(" ".to_owned()) });
    let items = vec![TextItem::GlyphIds(glyphs.chain(space).collect())];
    ops.push(Op::ShowText { items });
    ops.push(Op::EndTextSection);
}
