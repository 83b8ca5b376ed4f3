//! Checks of a layout over all the sizes that it is made in.

use crate::width::is_as_wide;
use crate::{
    CompartmentIx, Fault, FaultKind, Layout, Length, Name, Pattern, Size, Subject, arrange,
    greatest_width, least_width,
};

/// What is as wide as a cell: the edge of the built-in one, rounded down.
const CELL: Length = Length::from_mm(50.0);
/// What is as wide as a hand: about the mean of women's hands across the knuckles.
///
/// From memory, unverified; common practice, no source.
const HAND: Length = Length::from_mm(78.0);

/// Returns every fault of `layout` at any of its sizes, each once, at the first size where it
/// shows. Returns nothing where all is well.
#[must_use]
pub fn check_layout(layout: &Layout) -> Vec<Fault> {
    let mut faults: Vec<Fault> = Vec::new();
    let mut first: Option<Pattern> = None;
    for made in &layout.sizes {
        let found = match arrange(layout, made.size) {
            Err(faults) => faults,
            Ok(pattern) => {
                let found = check_pattern(layout, &pattern, first.as_ref());
                first.get_or_insert(pattern);
                found
            }
        };
        for fault in found {
            let known = faults.iter().any(|known| {
                known.subject == fault.subject
                    && std::mem::discriminant(&known.kind) == std::mem::discriminant(&fault.kind)
            });
            if !known {
                faults.push(fault);
            }
        }
    }
    faults
}

/// Returns the faults that only a drawn pattern shows.
fn check_pattern(layout: &Layout, pattern: &Pattern, first: Option<&Pattern>) -> Vec<Fault> {
    let size = pattern.size();
    let mut faults = Vec::new();
    let mut fault = |subject, kind| faults.push(Fault { subject, size: Some(size), kind });
    if first.is_some_and(|first| borders(first) != borders(pattern)) {
        fault(Subject::Layout, FaultKind::OtherFaces);
    }
    for ix in pattern.indices() {
        if !is_as_wide(pattern, ix, HAND) {
            let width = least_width(pattern, ix);
            let kind = if width < CELL {
                FaultKind::NarrowerThanCell(width)
            } else {
                FaultKind::NarrowerThanHand(width)
            };
            fault(Subject::Compartment(rule_of(layout, size, pattern, ix)), kind);
        }
    }
    let crown = pattern.stock_crown();
    let most = greatest_width(pattern, largest(pattern)) / 8.0;
    if crown > most {
        fault(Subject::StockCrown, FaultKind::CrownTooHigh { crown, most });
    }
    faults
}

/// The compartment with the greatest area.
fn largest(pattern: &Pattern) -> CompartmentIx {
    pattern
        .indices()
        .max_by(|&a, &b| pattern.area(a).to_mm2().total_cmp(&pattern.area(b).to_mm2()))
        .expect("a pattern has compartments")
}

/// The rule that claimed a compartment: the one whose seed, or its image, is the compartment's.
fn rule_of(layout: &Layout, size: Size, pattern: &Pattern, ix: CompartmentIx) -> Name {
    let seed = pattern[ix].seed;
    let near = |rule: &&crate::CompartmentRule| {
        let at = rule.seed.at(size);
        (at.x.abs() - seed.x.abs()).hypot(at.y - seed.y) < 1e-6
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
