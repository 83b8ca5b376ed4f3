//! What can be drawn of a layout that is wrong: its seams, and where its faults are.

use kurbo::{Point, Vec2};

use crate::arrange::list_faults;
use crate::curve::Chain;
use crate::draw::{Parts, parts};
use crate::{
    Fault, FaultKind, Layout, Length, Name, PointRule, Size, Subject, arrange, greatest_width,
};

/// The seams of a layout at one size, as far as they can be drawn, and the places of its faults.
#[derive(Clone, Debug, PartialEq)]
pub struct Sketch {
    /// The size.
    pub size: Size,
    /// The seams, in millimetres.
    pub seams: Vec<Chain>,
    /// For each fault, where it is, in millimetres; none where it is nowhere in particular. What
    /// lies outside the size has the nearest place on its edge.
    pub places: Vec<Option<Point>>,
}

/// Draws what can be drawn of `layout` at `size`, and finds the places of `faults`.
///
/// What lists too much has no seams here; seams through points that are not there are left out.
#[must_use]
pub fn sketch(layout: &Layout, size: Size, faults: &[Fault]) -> Sketch {
    let too_much = list_faults(layout);
    if too_much.iter().any(|fault| matches!(fault.kind, FaultKind::TooMuch { .. })) {
        return Sketch { size, seams: Vec::new(), places: vec![None; faults.len()] };
    }
    let known = with_known_names(layout);
    let drawn = Drawn { layout, size, parts: parts(&known, size), known };
    let on_page = |at: Point| {
        let half = size.width().to_mm() / 2.0;
        Point::new(at.x.clamp(-half, half), at.y.clamp(0.0, size.depth().to_mm()))
    };
    let places = faults.iter().map(|fault| drawn.place(fault).map(on_page)).collect();
    let images = |chain: Chain| {
        let image = layout.mirror.then(|| chain.mirrored());
        std::iter::once(chain).chain(image)
    };
    let seams = drawn.parts.seams.iter().flatten().cloned().flat_map(images).collect();
    Sketch { size, seams, places }
}

/// A layout with what could be drawn of it.
struct Drawn<'a> {
    layout: &'a Layout,
    size: Size,
    /// The layout without what uses names that nothing has, of which the parts are.
    known: Layout,
    parts: Parts,
}

impl Drawn<'_> {
    /// Where a fault is. Only what is about the layout as a whole or about its list of sizes, such
    /// as an outline or a number that is not there, is nowhere.
    fn place(&self, fault: &Fault) -> Option<Point> {
        match (&fault.kind, &fault.subject) {
            (
                FaultKind::Crossing { at, .. }
                | FaultKind::UnclaimedFace { at }
                | FaultKind::BeyondSize { at, .. }
                | FaultKind::NarrowArm { at, .. }
                | FaultKind::AcuteCorner { at, .. },
                _,
            ) => Some(*at),
            (FaultKind::EndsNowhere(name), _) | (_, Subject::Point(name)) => self.point(name),
            (_, Subject::Seam(name)) => self.seam(name),
            (_, Subject::Compartment(name)) => {
                let rule = self.layout.compartments.iter().find(|rule| rule.id == *name)?;
                Some(rule.seed.at(self.size))
            }
            (_, Subject::StockCrown) => self.widest(),
            (_, Subject::Layout | Subject::Sizes | Subject::MadeSize(_)) => None,
        }
    }

    /// A point; one on a seam that has no place lies somewhere between those that it counts from.
    fn point(&self, name: &Name) -> Option<Point> {
        self.settled(name).or_else(|| {
            let (_, rule) = self.layout.points.iter().find(|(own, _)| own == name)?;
            let PointRule::On { from, to, .. } = rule else { return None };
            middle([from, to].into_iter().filter_map(|end| self.settled(end)))
        })
    }

    /// A point that is drawn or has a spot of its own.
    fn settled(&self, name: &Name) -> Option<Point> {
        let place = self.known.points.iter().position(|(own, _)| own == name)?;
        self.parts.points[place].or(match &self.known.points[place].1 {
            PointRule::Spot { spot, .. } => Some(spot.at(self.size)),
            PointRule::On { .. } => None,
        })
    }

    /// The middle of a seam; of one that cannot be drawn, that of its points.
    fn seam(&self, name: &Name) -> Option<Point> {
        let place = self.known.seams.iter().position(|rule| rule.name == *name);
        if let Some(chain) = place.and_then(|place| self.parts.seams[place].as_ref()) {
            return Some(chain.point_at(chain.length() / 2.0));
        }
        let rule = self.layout.seams.iter().find(|rule| rule.name == *name)?;
        middle(rule.through.iter().filter_map(|name| self.point(name)))
    }

    /// The seed of the widest compartment, which rises most.
    fn widest(&self) -> Option<Point> {
        let pattern = arrange(self.layout, self.size).ok()?;
        // Of several that are as wide, the one with the least number.
        let mut widest: Option<(Length, Point)> = None;
        for ix in pattern.indices() {
            let (width, seed) = (greatest_width(&pattern, ix), pattern[ix].seed);
            if widest.is_none_or(|(most, _)| width > most) {
                widest = Some((width, seed));
            }
        }
        widest.map(|(_, seed)| seed)
    }
}

/// The mean of places; none of none.
fn middle(places: impl Iterator<Item = Point>) -> Option<Point> {
    let (mut sum, mut count) = (Vec2::ZERO, 0);
    for place in places {
        sum += place.to_vec2();
        count += 1;
    }
    (count > 0).then(|| (sum / f64::from(count)).to_point())
}

/// The layout without what uses names that nothing has.
fn with_known_names(layout: &Layout) -> Layout {
    let mut known = layout.clone();
    loop {
        let (points, seams) = (known.points.len(), known.seams.len());
        let names: Vec<Name> = known.points.iter().map(|(name, _)| name.clone()).collect();
        known.seams.retain(|seam| {
            seam.through.len() > 1 && seam.through.iter().all(|name| names.contains(name))
        });
        let left: Vec<Name> = known.seams.iter().map(|seam| seam.name.clone()).collect();
        known.points.retain(|(_, rule)| match rule {
            PointRule::On { seam, from, to, .. } => {
                left.contains(seam) && names.contains(from) && names.contains(to)
            }
            PointRule::Spot { .. } => true,
        });
        if (points, seams) == (known.points.len(), known.seams.len()) {
            return known;
        }
    }
}
