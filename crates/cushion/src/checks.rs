//! Checks of a layout over all the sizes that it is made in.

use std::mem::{Discriminant, discriminant};

use crate::arrange::list_faults;
use crate::width::{contours, holds_disc};
use crate::{
    CompartmentIx, Fault, FaultKind, Layout, Length, Name, Numbers, Pattern, Point, PointRule,
    Severity, Side, Subject, acute_corners, arrange, greatest_width, narrow_places,
};

/// What is as wide as a hand: about the mean of women's hands across the knuckles.
///
/// From memory, unverified; common practice, no source.
const HAND: Length = Length::from_mm(78.0);

/// Returns every fault of `layout` at any of its sizes, each once with all sizes where it shows;
/// `cell` is the edge of the cells that are to go in. Returns nothing where all is well.
#[must_use]
pub fn check_layout(layout: &Layout, cell: Length) -> Vec<Fault> {
    let mut faults = list_faults(layout);
    if !faults.is_empty() {
        return faults;
    }
    let mut first: Option<Pattern> = None;
    for made in &layout.sizes {
        let found = match arrange(layout, made.size) {
            Err(faults) => faults,
            Ok(pattern) => {
                let found = check_pattern(layout, &pattern, first.as_ref(), cell);
                first.get_or_insert(pattern);
                found
            }
        };
        add(&mut faults, found);
    }
    faults.extend(rating_faults(layout));
    // Of a seam that cannot be drawn nothing is left over but what its fault says.
    if !faults.iter().any(|fault| fault.kind.severity() == Severity::Error) {
        faults.extend(leftovers(layout));
    }
    faults
}

/// Adds the faults of one size to those that are known; what is known gets the size added.
fn add(faults: &mut Vec<Fault>, found: Vec<Fault>) {
    let mut seen: Vec<(Subject, Discriminant<FaultKind>)> = Vec::new();
    for fault in found {
        // Of two alike at one size, such as two arms, the second is the second at other sizes too.
        let (subject, kind) = (fault.subject.clone(), discriminant(&fault.kind));
        let before = seen.iter().filter(|own| **own == (subject.clone(), kind)).count();
        let mut alike = faults
            .iter_mut()
            .filter(|known| known.subject == subject && discriminant(&known.kind) == kind);
        match alike.nth(before) {
            Some(known) => known.sizes.extend(fault.sizes),
            None => faults.push(fault),
        }
        seen.push((subject, kind));
    }
}

/// Returns the faults that only a drawn pattern shows.
fn check_pattern(
    layout: &Layout,
    pattern: &Pattern,
    first: Option<&Pattern>,
    cell: Length,
) -> Vec<Fault> {
    let size = pattern.size();
    let mut faults = Vec::new();
    let mut fault = |subject, kind| faults.push(Fault { subject, sizes: vec![size], kind });
    if first.is_some_and(|first| borders(first) != borders(pattern)) {
        fault(Subject::Layout, FaultKind::OtherFaces);
    }
    for ix in pattern.indices() {
        // Of mirror images the one that is written is enough.
        if pattern.is_mirrored() && pattern[ix].side == Some(Side::Left) {
            continue;
        }
        for kind in width_faults(pattern, ix, cell) {
            fault(Subject::Compartment(rule_of(layout, pattern, ix)), kind);
        }
    }
    if let Some(kind) = crown_fault(pattern) {
        fault(Subject::StockCrown, kind);
    }
    faults
}

/// Faults of a compartment that is too narrow: everywhere, or in parts.
fn width_faults(pattern: &Pattern, ix: CompartmentIx, cell: Length) -> Vec<FaultKind> {
    let number = pattern[ix].number;
    let shape = contours(pattern, ix);
    // A hundredth for compartments that are just as wide.
    let holds = |width: Length| holds_disc(&shape, width.to_mm() - 0.02);
    if !holds(HAND) || !holds(cell) {
        let width = greatest_width(pattern, ix);
        let narrow = FaultKind::NarrowerThanHand { number, width };
        let kind =
            if holds(cell) { narrow } else { FaultKind::NarrowerThanCell { number, width, cell } };
        return vec![kind];
    }
    let arms = narrow_places(pattern, ix, HAND).into_iter();
    let arms = arms.map(|arm| FaultKind::NarrowArm { number, width: arm.width, at: arm.at });
    let corners = acute_corners(pattern, ix).into_iter().map(|corner| FaultKind::AcuteCorner {
        number,
        degrees: corner.degrees,
        at: corner.at,
    });
    arms.chain(corners).collect()
}

/// What is wrong with the stock crown beside the widest compartment, which rises most.
fn crown_fault(pattern: &Pattern) -> Option<FaultKind> {
    let crown = pattern.stock_crown();
    if crown <= Length::ZERO {
        return Some(FaultKind::NoCrown(crown));
    }
    // Only a compartment that is narrower than this is too narrow for the crown.
    let fits = |ix| holds_disc(&contours(pattern, ix), crown.to_mm() * 8.0);
    if pattern.indices().any(fits) {
        return None;
    }
    let widths = pattern.indices().map(|ix| greatest_width(pattern, ix));
    let most = widths.fold(Length::ZERO, Length::max) / 8.0;
    Some(if crown > most * 2.0 {
        FaultKind::CrownBeyondModel { crown, most }
    } else {
        FaultKind::CrownTooHigh { crown, most }
    })
}

/// Sizes that are rated for more weight than a larger one.
fn rating_faults(layout: &Layout) -> Vec<Fault> {
    let mut faults = Vec::new();
    for (place, made) in layout.sizes.iter().enumerate() {
        let larger = layout.sizes.iter().find(|other| {
            made.size.width() <= other.size.width()
                && made.size.depth() <= other.size.depth()
                && made.max_user_weight > other.max_user_weight
        });
        if let Some(larger) = larger {
            let kind = FaultKind::RatedAboveLarger(larger.size);
            let sizes = vec![made.size];
            faults.push(Fault { subject: Subject::MadeSize(place), sizes, kind });
        }
    }
    faults
}

/// Points that no seam uses, and the first number that is left out.
fn leftovers(layout: &Layout) -> Vec<Fault> {
    let mut faults = Vec::new();
    let mut fault = |subject, kind| faults.push(Fault { subject, sizes: Vec::new(), kind });
    let between = layout.points.iter().flat_map(|(_, rule)| match rule {
        PointRule::On { from, to, .. } => vec![from, to],
        PointRule::Spot { .. } => Vec::new(),
    });
    let through = layout.seams.iter().flat_map(|seam| &seam.through);
    let used: std::collections::BTreeSet<&Name> = through.chain(between).collect();
    for (name, _) in layout.points.iter().filter(|(name, _)| !used.contains(name)) {
        fault(Subject::Point(name.clone()), FaultKind::UnusedPoint);
    }
    let numbers = layout.compartments.iter().flat_map(|rule| match rule.numbers {
        Numbers::One(number) => vec![number],
        Numbers::Pair { left, right } => vec![left, right],
    });
    let numbers: Vec<u8> = numbers.collect();
    let last = numbers.iter().copied().max().unwrap_or(0);
    if let Some(missing) = (1..last).find(|number| !numbers.contains(number)) {
        fault(Subject::Layout, FaultKind::MissingNumber(missing));
    }
    faults
}

/// Returns the id of the rule that claimed a compartment: the one whose seed, or its image, is the
/// compartment's.
///
/// # Panics
///
/// Panics if the pattern is not of this layout.
#[must_use]
pub fn rule_of(layout: &Layout, pattern: &Pattern, ix: CompartmentIx) -> Name {
    let size = pattern.size();
    let seed = pattern[ix].seed;
    let near = |rule: &&crate::CompartmentRule| {
        let at = rule.seed.at(size);
        let own = Point::new(if layout.mirror { seed.x.abs() } else { seed.x }, seed.y);
        at.distance(own) < 1e-6
    };
    let rule = layout.compartments.iter().find(near);
    rule.expect("each compartment comes from a rule").id.clone()
}

/// What borders what: for each compartment, its edges by seam and nodes.
fn borders(pattern: &Pattern) -> Vec<Vec<(Name, usize, usize)>> {
    pattern
        .compartments()
        .iter()
        .map(|compartment| {
            let rings = std::iter::once(&compartment.outer).chain(&compartment.holes);
            let mut edges: Vec<_> = rings
                .flat_map(|ring| &ring.steps)
                .map(|&(edge, _)| {
                    let edge = &pattern[edge];
                    (edge.seam.clone(), edge.from.index(), edge.to.index())
                })
                .collect();
            edges.sort();
            edges
        })
        .collect()
}
