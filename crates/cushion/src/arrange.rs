//! From a layout and a size to a pattern: draws the seams and finds the faces they cut out.

use kurbo::Point;

use crate::claim::{Claim, claims};
use crate::crossing::crossings;
use crate::draw::{Drawing, draw};
use crate::faces::{Faces, faces};
use crate::pattern::{CompartmentIx, Edge, NodeIx};
use crate::{Compartment, Fault, FaultKind, Layout, Length, Pattern, SeamRule, Size, Subject};

/// More points than any cushion needs; beyond, looking for crossings would take minutes.
const MOST_POINTS: usize = 500;

/// Draws `layout` at `size`.
///
/// # Errors
///
/// Returns the faults found, in the order in which the layout is written. A fault in drawing
/// hides those that only a finished drawing can show.
pub fn arrange(layout: &Layout, size: Size) -> Result<Pattern, Vec<Fault>> {
    let anywhere = |kind| vec![Fault { subject: Subject::Layout, size: None, kind }];
    if layout.points.len() > MOST_POINTS || layout.seams.len() > MOST_POINTS {
        return Err(anywhere(FaultKind::TooMuch { most: MOST_POINTS }));
    }
    if !layout.seams.iter().any(|seam| seam.name.as_str() == SeamRule::OUTLINE) {
        return Err(anywhere(FaultKind::NoOutline));
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
    let claims = claims(layout, size, &faces)?;
    Ok(pattern(layout, size, drawing, faces, claims))
}

/// Faults of seams that end nowhere, cross, or leave the outline open.
fn seam_faults(layout: &Layout, size: Size, drawing: &Drawing) -> Vec<Fault> {
    let mut faults: Vec<Fault> = Vec::new();
    let mut fault = |seam: usize, kind: FaultKind| {
        let subject = Subject::Seam(layout.seams[seam].name.clone());
        let known = faults.iter().any(|fault| {
            fault.subject == subject
                && std::mem::discriminant(&fault.kind) == std::mem::discriminant(&kind)
        });
        if !known {
            faults.push(Fault { subject, size: Some(size), kind });
        }
    };
    for (place, stretch) in drawing.stretches.iter().enumerate() {
        for node in [stretch.from, stretch.to] {
            if ends_at(drawing, node) == 1 {
                let kind = if layout.seams[stretch.seam].name.as_str() == SeamRule::OUTLINE {
                    FaultKind::OpenOutline
                } else {
                    let end = drawing.nodes[node.index()];
                    FaultKind::EndsNowhere(point_name(layout, size, drawing, place, end))
                };
                fault(stretch.seam, kind);
            }
        }
    }
    for crossing in crossings(drawing) {
        let seam = |stretch: usize| drawing.stretches[stretch].seam;
        let other = layout.seams[seam(crossing.first)].name.clone();
        fault(seam(crossing.second), FaultKind::Crossing { other, at: crossing.at });
    }
    faults
}

/// How many stretches end at a node.
fn ends_at(drawing: &Drawing, node: NodeIx) -> usize {
    drawing
        .stretches
        .iter()
        .map(|stretch| usize::from(stretch.from == node) + usize::from(stretch.to == node))
        .sum()
}

/// The name of the seam's point nearest to a place, which is where the seam ends.
fn point_name(
    layout: &Layout,
    size: Size,
    drawing: &Drawing,
    stretch: usize,
    end: Point,
) -> crate::Name {
    let through = &layout.seams[drawing.stretches[stretch].seam].through;
    let distance = |name: &crate::Name| {
        layout
            .points
            .iter()
            .find(|(point, _)| point == name)
            .and_then(|(_, rule)| match rule {
                crate::PointRule::Spot { spot, .. } => Some(spot.at(size)),
                crate::PointRule::On { .. } => None,
            })
            .map_or(f64::INFINITY, |at| (at.x.abs() - end.x.abs()).hypot(at.y - end.y))
    };
    let nearest = through.iter().min_by(|a, b| distance(a).total_cmp(&distance(b)));
    nearest.expect("a seam has points").clone()
}

/// Faults of seams outside the outline: whatever borders the outside must be the outline.
fn outside_faults(layout: &Layout, size: Size, drawing: &Drawing, faces: &Faces) -> Vec<Fault> {
    let mut faults: Vec<Fault> = Vec::new();
    for (edge, _) in faces.outside.iter().flat_map(|ring| &ring.steps) {
        let seam = &layout.seams[drawing.stretches[edge.index()].seam].name;
        let subject = Subject::Seam(seam.clone());
        if seam.as_str() != SeamRule::OUTLINE && !faults.iter().any(|f| f.subject == subject) {
            faults.push(Fault { subject, size: Some(size), kind: FaultKind::Outside });
        }
    }
    faults
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
        title: layout.title.clone(),
        class: layout.class,
        size,
        wall_height: layout.wall_height,
        stock_crown: Length::from_mm(layout.stock_crown.of(width)),
        max_user_weight: layout.made(size).map(|made| made.max_user_weight),
        mirrored: layout.mirror,
        nodes: drawing.nodes,
        edges,
        compartments,
    }
}
