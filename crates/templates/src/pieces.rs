//! The pieces of cloth, each drawn in a frame of its own.

use cushion::{Area, Chain, Length, Pattern, Piece as CurvePiece, Point, Side};
use kurbo::{Rect, Vec2};

use crate::chains::{enlarged, line, moved, rectangle};
use crate::cut::cut_line;
use crate::layers::{Drawn, Label, Layer, Says};
use crate::opening::Opening;
use crate::strips::Strip;

/// What a piece is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PieceKind {
    /// The top.
    Top,
    /// The base.
    Base,
    /// The wall strip of a number.
    Wall(usize),
}

impl PieceKind {
    /// The word by which files know it, such as `wall-4`.
    #[must_use]
    pub fn id(self) -> String {
        match self {
            Self::Top => "top".to_owned(),
            Self::Base => "base".to_owned(),
            Self::Wall(number) => format!("wall-{number}"),
        }
    }
}

/// One piece of cloth.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// What it is.
    pub kind: PieceKind,
    /// Its lines; the first is the whole cut line.
    pub lines: Vec<Drawn>,
    /// What is said on it.
    pub labels: Vec<Label>,
    /// The cloth that is cut, allowances included.
    pub area: Area,
}

/// Length of a notch on the allowance, as a share of the allowance.
const NOTCH: f64 = 0.7;
/// Half the length of a match mark across a seam inside a piece, in millimetres.
const TICK: f64 = 3.0;
/// Between the two ticks of a double notch, in millimetres.
const DOUBLE: f64 = 4.0;
/// On a shorter strip there is one notch, in millimetres.
const SHORT: f64 = 60.0;

impl Piece {
    fn new(kind: PieceKind, cut: Chain) -> Self {
        let area = Area::from_mm2(cut.pieces().iter().map(CurvePiece::swept_area).sum());
        let lines = vec![Drawn { layer: Layer::Cut, chain: cut }];
        Self { kind, lines, labels: Vec::new(), area }
    }

    /// Where it is cut, as a box.
    #[must_use]
    pub fn bounds(&self) -> Rect {
        let points = self.lines[0].chain.flatten(0.01);
        let first = Rect::from_points(points[0], points[0]);
        points.iter().fold(first, |around, point| around.union_pt(*point))
    }

    /// The same piece at another place.
    #[must_use]
    pub(crate) fn moved(self, by: Vec2) -> Self {
        let lines = self.lines.iter().map(|own| Drawn { chain: moved(&own.chain, by), ..*own });
        let lines = lines.collect();
        let labels = self.labels.into_iter().map(|own| Label { at: own.at + by, ..own }).collect();
        Self { lines, labels, ..self }
    }

    fn draw(&mut self, layer: Layer, chain: Chain) {
        self.lines.push(Drawn { layer, chain });
    }

    fn say(&mut self, at: Point, height: f64, angle: f64, says: Says) {
        self.labels.push(Label { at, height, angle, says });
    }

    fn arrow(&mut self, from: Point, to: Point) {
        let along = (to - from).normalize();
        let across = Vec2::new(-along.y, along.x) * 2.5;
        self.draw(Layer::Grain, line(from, to));
        for side in [across, -across] {
            self.draw(Layer::Grain, line(to - along * 6.0 + side, to));
        }
        for side in [across, -across] {
            self.draw(Layer::Grain, line(from + along * 6.0 + side, from));
        }
    }
}

/// The top, as seen from above, so many times as large as the seams.
pub(crate) fn top(pattern: &Pattern, strips: &[Strip], allowance: f64, times: f64) -> Piece {
    let shown = |chain: &Chain| enlarged(chain, times);
    let mut piece = panel(PieceKind::Top, pattern, strips, allowance, &shown);
    for ix in pattern.indices() {
        let (_, middle) = cushion::widest_place(pattern, ix);
        let at = (middle.to_vec2() * times).to_point();
        piece.say(at - Vec2::new(0.0, 6.0), 12.0, 0.0, Says::Compartment(pattern[ix].number));
    }
    sides(&mut piece, pattern, times, Side::Left);
    piece.say(named_at(pattern, times), 5.0, 0.0, Says::Top);
    piece
}

/// The base, as seen from below: mirrored, with the openings.
pub(crate) fn base(
    pattern: &Pattern,
    strips: &[Strip],
    allowance: f64,
    openings: &[Opening],
) -> Piece {
    let mut piece = panel(PieceKind::Base, pattern, strips, allowance, &Chain::mirrored);
    for own in openings {
        let [from, to] = own.ends();
        piece.draw(Layer::Opening, line(from, to).mirrored());
        let middle = Point::new(-own.middle.x, own.middle.y);
        // Beside the slit, on both sides of it.
        let off = if own.across { Vec2::new(0.0, 5.0) } else { Vec2::new(9.0, -4.0) };
        piece.say(middle + off, 9.0, 0.0, Says::Compartment(own.number));
        let off = if own.across { Vec2::new(0.0, -7.0) } else { Vec2::new(-3.0, 0.0) };
        let angle = if own.across { 0.0 } else { 90.0 };
        piece.say(middle + off, 2.8, angle, Says::Opening(own.number, own.length));
    }
    sides(&mut piece, pattern, 1.0, Side::Right);
    piece.say(named_at(pattern, 1.0), 5.0, 0.0, Says::Base);
    piece
}

/// Where a panel says what it is: inside, along its front edge.
fn named_at(pattern: &Pattern, times: f64) -> Point {
    Point::new(0.0, (pattern.size().depth().to_mm() - 30.0) * times)
}

/// What top and base share: cut line, stitch lines, notches, junctions, grain.
fn panel(
    kind: PieceKind,
    pattern: &Pattern,
    strips: &[Strip],
    allowance: f64,
    shown: &dyn Fn(&Chain) -> Chain,
) -> Piece {
    let outline = shown(&outline(pattern));
    // A mirrored way runs clockwise.
    let outline = if kind == PieceKind::Base { outline.reversed() } else { outline };
    let mut piece = Piece::new(kind, cut_line(&outline, allowance));
    piece.draw(Layer::Stitch, outline);
    for strip in strips {
        let chain = shown(&strip.chain);
        // On the outer seam, outside is to the right hand; mirrored, to the left hand.
        let side = if kind == PieceKind::Base { 1.0 } else { -1.0 };
        let reach = if strip.is_outer() { [0.0, allowance * NOTCH * side] } else { [-TICK, TICK] };
        notches(&mut piece, &chain, reach);
        let middle = chain.point_at(chain.length() / 2.0);
        let inwards = normal_at(&chain, 0.5) * (-side * 5.0);
        piece.say(middle + inwards - Vec2::new(0.0, 1.5), 3.0, 0.0, Says::WallNumber(strip.number));
        if !strip.is_outer() {
            piece.draw(Layer::Stitch, chain.clone());
        }
        if let Some([from, to]) = strip.ends {
            for (junction, at) in [(from, chain.start()), (to, chain.end())] {
                let says = Says::Junction(junction);
                if !piece.labels.iter().any(|own| own.says == says) {
                    piece.say(at + inside_of(pattern, at), 3.0, 0.0, says);
                }
            }
        }
    }
    grain(&mut piece, pattern, shown);
    piece
}

/// The arrow along which the cloth runs, from rear to front, beside the number of the widest
/// compartment; on the base clear of its opening.
fn grain(piece: &mut Piece, pattern: &Pattern, shown: &dyn Fn(&Chain) -> Chain) {
    let widest = pattern.indices().map(|ix| (cushion::widest_place(pattern, ix), ix));
    let widest = widest.max_by(|(a, _), (b, _)| a.0.to_mm().total_cmp(&b.0.to_mm()));
    let Some(((width, middle), ix)) = widest else { return };
    let radius = width.to_mm() / 2.0;
    let is_across = piece.kind == PieceKind::Base && Opening::of(pattern, ix).across;
    let (x, from, to) = if is_across { (-0.5, -0.75, -0.22) } else { (-0.6, -0.4, 0.4) };
    let at = |y: f64| middle + Vec2::new(x, y) * radius;
    let way = shown(&line(at(from), at(to)));
    piece.arrow(way.start(), way.end());
    let beside = way.point_at(way.length() / 2.0) - Vec2::new(2.0, 0.0);
    piece.say(beside, 3.0, 90.0, Says::Grain);
}

/// A little off a junction, towards the middle of the piece.
fn inside_of(pattern: &Pattern, at: Point) -> Vec2 {
    let depth = pattern.size().depth().to_mm();
    let x = if at.x > 1.0 { -6.0 } else { 6.0 };
    Vec2::new(x, if at.y > depth / 2.0 { -5.0 } else { 3.0 })
}

/// The direction to the left hand at a share of a chain's length.
fn normal_at(chain: &Chain, share: f64) -> Vec2 {
    let length = chain.length();
    let at = |share: f64| chain.point_at(length * share);
    let along = (at((share + 1e-4).min(1.0)) - at((share - 1e-4).max(0.0))).normalize();
    Vec2::new(-along.y, along.x)
}

/// Where the notches of a strip are, as shares of its length: one, then two.
fn shares(length: f64) -> Vec<(f64, usize)> {
    if length < SHORT { vec![(1.0 / 3.0, 1)] } else { vec![(1.0 / 3.0, 1), (2.0 / 3.0, 2)] }
}

/// Marks along a seam line, from so far to so far off it to the left hand.
fn notches(piece: &mut Piece, chain: &Chain, [from, to]: [f64; 2]) {
    let length = chain.length();
    for (share, ticks) in shares(length) {
        for tick in 0..ticks {
            let off = DOUBLE * (tick as f64 - (ticks as f64 - 1.0) / 2.0);
            let share = share + off / length;
            let (at, left) = (chain.point_at(length * share), normal_at(chain, share));
            piece.draw(Layer::Notch, line(at + left * from, at + left * to));
        }
    }
}

/// The edges in words, and the bar at the client's left, which is on that side of the drawing.
fn sides(piece: &mut Piece, pattern: &Pattern, times: f64, left_is: Side) {
    let half = pattern.size().width().to_mm() / 2.0 * times;
    let depth = pattern.size().depth().to_mm() * times;
    let x = if left_is == Side::Left { -half + 5.0 } else { half - 5.0 };
    let middle = quiet(pattern) * times;
    let bar = [Point::new(x, middle - 45.0), Point::new(x, middle + 45.0)];
    piece.draw(Layer::Left, line(bar[0], bar[1]));
    let (inwards, angle) = if left_is == Side::Left { (7.0, 90.0) } else { (-7.0, -90.0) };
    let left = Point::new(x + inwards, middle);
    piece.say(left, 4.0, angle, Says::ClientsLeft);
    piece.say(Point::new(-x - inwards, middle), 4.0, -angle, Says::ClientsRight);
    piece.say(Point::new(0.0, depth - 14.0), 4.0, 0.0, Says::Front);
    piece.say(Point::new(0.0, 9.0), 4.0, 0.0, Says::Rear);
}

/// How far from the rear the sides are named: where the fewest seams end at them.
fn quiet(pattern: &Pattern) -> f64 {
    let size = pattern.size();
    let (half, depth) = (size.width().to_mm() / 2.0, size.depth().to_mm());
    let beside = pattern.nodes().iter().filter(|node| node.x.abs() > 0.8 * half);
    let ends: Vec<f64> = beside.map(|node| node.y).collect();
    let room = |y: f64| ends.iter().map(|end| (end - y).abs()).fold(depth, f64::min);
    let places = [0.5, 0.4, 0.6, 0.3, 0.7].map(|share| depth * share);
    let mut best = places[0];
    for place in places {
        if room(place) > room(best) {
            best = place;
        }
    }
    best
}

/// The wall of a strip, as seen from its right hand: from outside where it is an outer one.
pub(crate) fn wall(pattern: &Pattern, strip: &Strip, allowance: f64) -> Piece {
    let (length, height) = (strip.length().to_mm(), pattern.wall_height().to_mm());
    let around = Point::new(-allowance, -allowance);
    let cut = rectangle(around, length + 2.0 * allowance, height + 2.0 * allowance);
    let mut piece = Piece::new(PieceKind::Wall(strip.number), cut);
    let corners = [(0.0, 0.0), (length, 0.0), (length, height), (0.0, height)].map(Point::from);
    for at in 0..4 {
        piece.draw(Layer::Stitch, line(corners[at], corners[(at + 1) % 4]));
    }
    let reach = allowance * NOTCH;
    notches(&mut piece, &line(corners[0], corners[1]), [0.0, -reach]);
    notches(&mut piece, &line(corners[3], corners[2]), [0.0, reach]);
    let number = |ix: Option<cushion::CompartmentIx>| ix.map(|ix| pattern[ix].number);
    let says = Says::Wall {
        wall: strip.number,
        between: [number(strip.left), number(strip.right)],
        seam: strip.seam.clone(),
        ends: strip.ends,
        length: strip.length(),
    };
    let middle = Point::new(length / 2.0, height / 2.0);
    let is_long = length > 110.0;
    if is_long {
        piece.say(middle - Vec2::new(0.0, 1.0), 3.2, 0.0, says);
        piece.say(middle + Vec2::new(0.0, 9.0), 9.0, 0.0, Says::WallNumber(strip.number));
    } else {
        piece.say(middle + Vec2::new(6.0, 0.0), 2.6, 90.0, says);
        piece.say(middle - Vec2::new(4.0, 0.0), 7.0, 90.0, Says::WallNumber(strip.number));
    }
    // Beside words that run up.
    let x = if is_long { 0.5 } else { 0.28 } * length;
    piece.say(Point::new(x, height - 5.0), 2.6, 0.0, Says::UpperEdge);
    piece.say(Point::new(x, 3.0), 2.6, 0.0, Says::LowerEdge);
    if let Some([from, to]) = strip.ends {
        piece.say(Point::new(6.0, height * 0.25), 3.0, 0.0, Says::Junction(from));
        piece.say(Point::new(length - 6.0, height * 0.25), 3.0, 0.0, Says::Junction(to));
    }
    let y = height * 0.16;
    let reach = (length * 0.3).min(60.0);
    let [from, to] = if is_long {
        [middle.x - reach, middle.x + reach]
    } else {
        // Words that run up may be as long as the wall is high.
        [4.0, middle.x + 1.0]
    };
    piece.arrow(Point::new(from, y), Point::new(to, y));
    piece
}

/// The outer seam as one closed way, counter-clockwise.
pub(crate) fn outline(pattern: &Pattern) -> Chain {
    // Each outer edge with its inside to the left hand.
    let mut left: Vec<(usize, usize, Chain)> = pattern
        .edges()
        .iter()
        .filter(|edge| edge.is_outer())
        .map(|edge| match edge.right {
            None => (edge.from.index(), edge.to.index(), edge.chain.clone()),
            Some(_) => (edge.to.index(), edge.from.index(), edge.chain.reversed()),
        })
        .collect();
    let (_, mut at, mut chain) = left.remove(0);
    while let Some(next) = left.iter().position(|(from, ..)| *from == at) {
        let (_, to, own) = left.remove(next);
        (at, chain) = (to, chain.joined(own));
    }
    chain
}

/// Length of the cloth's stitches around a piece: what is sewn of it.
#[must_use]
pub(crate) fn stitched(piece: &Piece) -> Length {
    let stitches = piece.lines.iter().filter(|own| own.layer == Layer::Stitch);
    Length::from_mm(stitches.map(|own| own.chain.length()).sum())
}
