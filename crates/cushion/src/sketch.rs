//! What can be drawn of a layout that is wrong: its seams, and where its faults are.

use kurbo::Point;

use crate::arrange::list_faults;
use crate::curve::Chain;
use crate::draw::parts;
use crate::{Fault, FaultKind, Layout, Name, PointRule, Size, Subject};

/// The seams of a layout at one size, as far as they can be drawn, and the places of its faults.
#[derive(Clone, Debug, PartialEq)]
pub struct Sketch {
    /// The size.
    pub size: Size,
    /// The seams, in millimetres.
    pub seams: Vec<Chain>,
    /// For each fault, where it is, in millimetres; none where it is nowhere in particular.
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
    let parts = parts(&known, size);
    let seam = |name: &Name| -> Option<Point> {
        let place = known.seams.iter().position(|rule| rule.name == *name)?;
        let chain = parts.seams[place].as_ref()?;
        Some(chain.point_at(chain.length() / 2.0))
    };
    let point = |name: &Name| -> Option<Point> {
        let place = known.points.iter().position(|(own, _)| own == name)?;
        parts.points[place].or(match &known.points[place].1 {
            PointRule::Spot { spot, .. } => Some(spot.at(size)),
            PointRule::On { .. } => None,
        })
    };
    let seed = |name: &Name| {
        let rule = layout.compartments.iter().find(|rule| rule.id == *name)?;
        Some(rule.seed.at(size))
    };
    let place = |fault: &Fault| match (&fault.kind, &fault.subject) {
        (
            FaultKind::Crossing { at, .. }
            | FaultKind::UnclaimedFace { at }
            | FaultKind::BeyondSize { at, .. }
            | FaultKind::NarrowArm { at, .. }
            | FaultKind::AcuteCorner { at, .. },
            _,
        ) => Some(*at),
        (FaultKind::EndsNowhere(name), _) | (_, Subject::Point(name)) => point(name),
        (_, Subject::Seam(name)) => seam(name),
        (_, Subject::Compartment(name)) => seed(name),
        _ => None,
    };
    let places = faults.iter().map(place).collect();
    let images = |chain: Chain| {
        let image = layout.mirror.then(|| chain.mirrored());
        std::iter::once(chain).chain(image)
    };
    let seams = parts.seams.iter().flatten().cloned().flat_map(images).collect();
    Sketch { size, seams, places }
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
