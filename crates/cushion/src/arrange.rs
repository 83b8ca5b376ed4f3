//! From a layout and a size to a pattern: draws the seams and finds the faces they cut out.

use std::collections::BTreeSet;

use kurbo::Point;

use crate::claim::{Claim, claims};
use crate::crossing::crossings;
use crate::draw::{Drawing, draw};
use crate::faces::{Faces, faces};
use crate::pattern::{CompartmentIx, Edge};
use crate::{
    Compartment, Fault, FaultKind, Layout, Length, Listed, Pattern, SeamRule, Size, Subject,
};

/// The most of each that a layout may list: more than any cushion needs, and few enough to be
/// checked at every size in seconds. Numbers of compartments end at 99.
const MOST: [(Listed, usize); 5] = [
    (Listed::Points, 500),
    (Listed::Seams, 250),
    (Listed::PointsOfSeams, 1000),
    (Listed::Compartments, 99),
    (Listed::Sizes, 100),
];
/// Straight ways stand for curves within this, in millimetres.
const FLAT: f64 = 0.02;
/// An outline may reach beyond the size by this, in millimetres: what cloth can be cut to.
const BEYOND: f64 = 0.5;

/// Draws `layout` at `size`.
///
/// # Errors
///
/// Returns the faults found, in the order in which the layout is written. A fault in drawing
/// hides those that only a finished drawing can show.
pub fn arrange(layout: &Layout, size: Size) -> Result<Pattern, Vec<Fault>> {
    let faults = list_faults(layout);
    if !faults.is_empty() {
        return Err(faults);
    }
    let drawing = draw(layout, size)?;
    let faults = seam_faults(layout, size, &drawing);
    if !faults.is_empty() {
        return Err(faults);
    }
    let faces = faces(&drawing);
    let outside = outside_faults(layout, size, &drawing, &faces);
    if !outside.is_empty() {
        return Err(outside);
    }
    let beyond = beyond_size(layout, size, &drawing);
    if !beyond.is_empty() {
        return Err(beyond);
    }
    let claims = claims(layout, size, &faces)?;
    Ok(pattern(layout, size, drawing, faces, claims))
}

/// Faults of a layout that lists too much to be drawn in a short time, or no outline.
pub(crate) fn list_faults(layout: &Layout) -> Vec<Fault> {
    let count = |of| match of {
        Listed::Points => layout.points.len(),
        Listed::Seams => layout.seams.len(),
        Listed::PointsOfSeams => layout.seams.iter().map(|seam| seam.through.len()).sum(),
        Listed::Compartments => layout.compartments.len(),
        Listed::Sizes => layout.sizes.len(),
    };
    let mut faults = Vec::new();
    let mut fault = |subject, kind| faults.push(Fault { subject, sizes: Vec::new(), kind });
    for (of, most) in MOST {
        if count(of) > most {
            let subject = if of == Listed::Sizes { Subject::Sizes } else { Subject::Layout };
            fault(subject, FaultKind::TooMuch { of, most });
        }
    }
    if !layout.seams.iter().any(|seam| seam.name.as_str() == SeamRule::OUTLINE) {
        fault(Subject::Layout, FaultKind::NoOutline);
    }
    faults
}

/// Faults of seams that end nowhere, cross, or leave the outline open.
fn seam_faults(layout: &Layout, size: Size, drawing: &Drawing) -> Vec<Fault> {
    let mut faults: Vec<Fault> = Vec::new();
    let mut known: BTreeSet<(usize, u8)> = BTreeSet::new();
    let mut fault = |seam: usize, of: u8, kind: FaultKind| {
        if known.insert((seam, of)) {
            let subject = Subject::Seam(layout.seams[seam].name.clone());
            faults.push(Fault { subject, sizes: vec![size], kind });
        }
    };
    let ends = ends(drawing);
    for stretch in &drawing.stretches {
        for node in [stretch.from, stretch.to] {
            if ends[node.index()] == 1 {
                if layout.seams[stretch.seam].name.as_str() == SeamRule::OUTLINE {
                    fault(stretch.seam, 0, FaultKind::OpenOutline);
                } else {
                    let point = &layout.points[drawing.points[node.index()]].0;
                    fault(stretch.seam, 1, FaultKind::EndsNowhere(point.clone()));
                }
            }
        }
    }
    for crossing in crossings(drawing) {
        let seam = |stretch: usize| drawing.stretches[stretch].seam;
        let other = layout.seams[seam(crossing.first)].name.clone();
        fault(seam(crossing.second), 2, FaultKind::Crossing { other, at: crossing.at });
    }
    faults
}

/// How many stretches end at each node.
fn ends(drawing: &Drawing) -> Vec<usize> {
    let mut ends = vec![0; drawing.nodes.len()];
    for node in drawing.stretches.iter().flat_map(|stretch| [stretch.from, stretch.to]) {
        ends[node.index()] += 1;
    }
    ends
}

/// Faults of seams outside the outline: whatever borders the outside must be the outline.
fn outside_faults(layout: &Layout, size: Size, drawing: &Drawing, faces: &Faces) -> Vec<Fault> {
    let mut faults: Vec<Fault> = Vec::new();
    for (edge, _) in faces.outside.iter().flat_map(|ring| &ring.steps) {
        let seam = &layout.seams[drawing.stretches[edge.index()].seam].name;
        let subject = Subject::Seam(seam.clone());
        if seam.as_str() != SeamRule::OUTLINE && !faults.iter().any(|f| f.subject == subject) {
            faults.push(Fault { subject, sizes: vec![size], kind: FaultKind::Outside });
        }
    }
    faults
}

/// The fault of an outline that reaches beyond the size, at the place where it does so most.
fn beyond_size(layout: &Layout, size: Size, drawing: &Drawing) -> Vec<Fault> {
    let (half, depth) = (size.width().to_mm() / 2.0, size.depth().to_mm());
    let beyond = |at: Point| (at.x.abs() - half).max(-at.y).max(at.y - depth);
    let places = drawing.stretches.iter().flat_map(|stretch| stretch.chain.flatten(FLAT));
    let farthest = places.reduce(|a, b| if beyond(b) > beyond(a) + 1e-6 { b } else { a });
    let Some(at) = farthest.filter(|at| beyond(*at) > BEYOND) else { return Vec::new() };
    let outline = layout.seams.iter().find(|seam| seam.name.as_str() == SeamRule::OUTLINE);
    let subject = outline.map_or(Subject::Layout, |seam| Subject::Seam(seam.name.clone()));
    let kind = FaultKind::BeyondSize { by: Length::from_mm(beyond(at)), at };
    vec![Fault { subject, sizes: vec![size], kind }]
}

fn pattern(
    layout: &Layout,
    size: Size,
    drawing: Drawing,
    mut faces: Faces,
    claims: Vec<Claim>,
) -> Pattern {
    let mut edges: Vec<Edge> = drawing
        .stretches
        .into_iter()
        .map(|stretch| Edge {
            seam: layout.seams[stretch.seam].name.clone(),
            from: stretch.from,
            to: stretch.to,
            chain: stretch.chain,
            left: None,
            right: None,
        })
        .collect();
    let mut compartments = Vec::new();
    for (place, claim) in claims.into_iter().enumerate() {
        let ix = CompartmentIx(place as u32);
        let face = &mut faces.inside[claim.face];
        let outer = std::mem::replace(&mut face.outer, crate::Ring { steps: Vec::new() });
        let holes = std::mem::take(&mut face.holes);
        for &(edge, forward) in std::iter::once(&outer).chain(&holes).flat_map(|ring| &ring.steps) {
            let edge = &mut edges[edge.index()];
            let side = if forward { &mut edge.left } else { &mut edge.right };
            *side = Some(ix);
        }
        compartments.push(Compartment {
            id: claim.id,
            number: claim.number,
            words: claim.words,
            has_partner: claim.has_partner,
            purpose: claim.purpose,
            side: claim.side,
            seed: claim.seed,
            outer,
            holes,
        });
    }
    let width = size.width().to_mm();
    Pattern {
        layout: layout.name.clone(),
        revision: layout.revision,
        title: layout.title.clone(),
        class: layout.class,
        size,
        wall_height: layout.wall_height,
        rim: layout.rim,
        stock_crown: Length::from_mm(layout.stock_crown.of(width)),
        max_user_weight: layout.made(size).map(|made| made.max_user_weight),
        mirrored: layout.mirror,
        nodes: drawing.nodes,
        edges,
        compartments,
    }
}
