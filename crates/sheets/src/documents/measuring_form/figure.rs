//! Where the body is measured, from the side and from above.

use case::question::{Drawing, Question};
use kurbo::{BezPath, Point, Rect, Vec2};
use words::Language;

use crate::documents::look::{ACCENT, INK, PALE, text};
use crate::documents::views::BAR;
use crate::font::Weight;
use crate::page::{Align, Block, Fill, Pen};
use crate::text::{SetError, Style};

/// Height of the drawing, mm.
pub(super) const HEIGHT: f64 = 64.0;

const LINE: Pen = Pen::solid(0.6, INK);
const DIMENSION: Style = text(8.0, Weight::SemiBold, ACCENT);

/// A picture of the body.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Seen {
    FromTheSide,
    FromAbove,
}

/// A measure in a picture: from where to where, and its name, in mm from the picture's corner.
struct Dimension {
    seen: Seen,
    from: (f64, f64),
    to: (f64, f64),
    name: (f64, f64),
    align: Align,
}

/// Where a measure is drawn; none where these pictures do not show it.
fn dimension(drawing: Drawing) -> Option<Dimension> {
    let across = |half: f64, y: f64| Dimension {
        seen: Seen::FromAbove,
        from: (-half, y),
        to: (half, y),
        name: (21.0, y + 1.0),
        align: Align::Left,
    };
    match drawing {
        Drawing::HipWidth => Some(across(17.2, 36.0)),
        Drawing::TrochanterWidth => Some(across(16.4, 44.5)),
        Drawing::KneeWidth => Some(across(14.2, 5.0)),
        Drawing::SeatBoneSpacing => Some(across(5.5, 51.0)),
        Drawing::ThighDepth => Some(Dimension {
            seen: Seen::FromTheSide,
            from: (0.0, 40.0),
            to: (36.5, 40.0),
            name: (17.0, 44.0),
            align: Align::Centre,
        }),
        Drawing::LowerLegLength => Some(Dimension {
            seen: Seen::FromTheSide,
            from: (33.0, 36.0),
            to: (33.0, 54.0),
            name: (31.5, 50.5),
            align: Align::Right,
        }),
        Drawing::Obliquity
        | Drawing::Tilt
        | Drawing::Rotation
        | Drawing::Windswept
        | Drawing::HipFlexion
        | Drawing::PoplitealAngle
        | Drawing::LegDifference
        | Drawing::ChairWidth
        | Drawing::ChairDepth
        | Drawing::SlingSag
        | Drawing::Footrest
        | Drawing::ChairTilt
        | Drawing::SeatBonesForward
        | Drawing::Crown => None,
    }
}

/// Those of some questions whose measure is drawn.
pub(super) fn drawn(questions: &[Question]) -> impl Iterator<Item = Question> {
    let is_drawn = |own: &&Question| own.row().drawing.and_then(dimension).is_some();
    questions.iter().filter(is_drawn).copied()
}

/// Draws where the answers to these questions are measured.
pub(super) fn where_to_measure(
    block: &mut Block,
    language: &dyn Language,
    questions: &[Question],
    area: Rect,
) -> Result<(), SetError> {
    let style = text(9.5, Weight::Bold, INK);
    let texts = language.measuring_form();
    let (side, above) = (area.x0, area.x0 + area.width() * 0.5);
    let baseline = area.y0 + style.cap_height();
    block.text(Point::new(side, baseline), texts.from_the_side, &style, Align::Left)?;
    block.text(Point::new(above, baseline), texts.from_above, &style, Align::Left)?;
    let side = Point::new(side + 14.0, area.y0 + 8.0);
    let above = Point::new(above + 24.0, area.y0 + 5.0);
    person_from_the_side(block, side);
    person_from_above(block, above);
    let style = text(8.0, Weight::Regular, INK);
    let bar = [22.0, 40.0].map(|y| above + Vec2::new(-19.2, y));
    block.line(bar[0], bar[1], &Pen::solid(BAR, ACCENT));
    let left = above + Vec2::new(-21.0, 31.0);
    let clients_left = language.shared().clients_left_short;
    block.turned_text(left, -90.0, clients_left, &style, Align::Centre)?;
    for question in drawn(questions) {
        let Some(own) = question.row().drawing.and_then(dimension) else { continue };
        let corner = if own.seen == Seen::FromTheSide { side } else { above };
        own.draw(block, corner, language.label(question))?;
    }
    Ok(())
}

impl Dimension {
    /// A line with a head at both ends, and a name.
    fn draw(&self, block: &mut Block, corner: Point, name: &str) -> Result<(), SetError> {
        let at = |(x, y): (f64, f64)| corner + Vec2::new(x, y);
        let (from, to, name_at) = (at(self.from), at(self.to), at(self.name));
        let middle = from.midpoint(to);
        let pen = Pen::solid(0.35, ACCENT);
        block.arrow(middle, from, 2.0, &pen);
        block.arrow(middle, to, 2.0, &pen);
        if self.align == Align::Left && name_at.x - to.x > 8.0 {
            // Far from its line, the name is led to it.
            let (from, to) = (Point::new(to.x + 1.0, to.y), Point::new(name_at.x - 1.0, to.y));
            block.line(from, to, &Pen::dashed(0.25, ACCENT, 0.5, 1.0));
        }
        block.text(name_at, name, &DIMENSION, self.align)?;
        Ok(())
    }
}

fn person_from_the_side(block: &mut Block, origin: Point) {
    let p = |x: f64, y: f64| origin + Vec2::new(x, y);
    let mut body = BezPath::new();
    body.move_to(p(2.0, 8.0));
    body.curve_to(p(-2.0, 16.0), p(-1.0, 26.0), p(0.0, 31.0));
    body.curve_to(p(0.5, 35.0), p(3.0, 36.0), p(6.0, 36.0));
    body.line_to(p(37.0, 35.0));
    body.line_to(p(36.0, 50.0));
    body.line_to(p(36.0, 54.0));
    body.line_to(p(50.0, 54.0));
    body.line_to(p(49.0, 51.0));
    body.line_to(p(43.0, 49.0));
    body.line_to(p(45.0, 27.0));
    body.curve_to(p(44.0, 24.5), p(42.0, 24.0), p(39.0, 24.0));
    body.line_to(p(16.0, 25.0));
    body.curve_to(p(17.0, 19.0), p(15.0, 13.0), p(13.0, 8.0));
    block.path(body, Some(Fill::solid(PALE)), Some(LINE));
    block.circle(p(8.5, 2.6), 4.6, Some(Fill::solid(PALE)), Some(LINE));
}

/// Hips and thighs of a seated person, knees up the page.
pub(in crate::documents) fn person_from_above(block: &mut Block, top: Point) {
    let p = |x: f64, y: f64| top + Vec2::new(x, y);
    let half = |side: f64| {
        let q = |x: f64, y: f64| p(side * x, y);
        let mut half = BezPath::new();
        half.move_to(q(0.0, 54.0));
        half.curve_to(q(8.0, 55.5), q(15.0, 54.0), q(16.2, 47.0));
        half.curve_to(q(16.8, 43.0), q(17.4, 40.0), q(17.2, 36.0));
        half.curve_to(q(17.0, 28.0), q(15.0, 20.0), q(14.2, 13.0));
        half.curve_to(q(13.6, 7.5), q(5.4, 7.5), q(5.0, 13.0));
        half.curve_to(q(4.6, 20.0), q(2.4, 30.0), q(0.0, 33.0));
        half
    };
    // From the knees' side back along one leg, then out along the other.
    let mut body = half(-1.0).reverse_subpaths();
    body.extend(half(1.0).iter().skip(1));
    body.close_path();
    block.path(body, Some(Fill::solid(PALE)), Some(LINE));
    for side in [-1.0, 1.0] {
        block.circle(p(side * 5.5, 48.0), 1.0, Some(Fill::solid(INK)), None);
        block.circle(p(side * 15.0, 44.5), 1.0, Some(Fill::solid(INK)), None);
    }
}
