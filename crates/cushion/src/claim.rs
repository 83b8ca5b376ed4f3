//! Gives each face to the compartment whose seed lies in it.

use kurbo::Point;

use crate::faces::Faces;
use crate::{
    CompartmentRule, Fault, FaultKind, Layout, Name, Numbers, Purpose, Side, Size, Subject, Words,
};

/// A seed nearer to the centre line than this lies on it, in millimetres.
const ON_CENTRE: f64 = 1e-6;

/// A compartment before it knows its face.
#[derive(Clone, Debug)]
pub(crate) struct Claim {
    pub(crate) id: Name,
    pub(crate) number: u8,
    pub(crate) words: Words,
    pub(crate) has_partner: bool,
    pub(crate) purpose: Purpose,
    pub(crate) seed: Point,
    pub(crate) side: Option<Side>,
    pub(crate) face: usize,
}

/// Returns a claim for each face, in the order of the numbers.
pub(crate) fn claims(layout: &Layout, size: Size, faces: &Faces) -> Result<Vec<Claim>, Vec<Fault>> {
    let mut claims: Vec<Claim> = Vec::new();
    let mut faults = Vec::new();
    let mut fault = |rule: &Name, kind| {
        let subject = Subject::Compartment(rule.clone());
        faults.push(Fault { subject, sizes: vec![size], kind });
    };
    for rule in &layout.compartments {
        let Some(seeds) = seeds(layout, size, rule) else {
            fault(&rule.id, FaultKind::NumbersForSides);
            continue;
        };
        for (seed, number, side) in seeds {
            if layout.mirror && rule.seed.at(size).x < -ON_CENTRE {
                fault(&rule.id, FaultKind::WrongHalf);
                break;
            }
            let Some(face) = faces.at(seed) else {
                fault(&rule.id, FaultKind::SeedOutside);
                break;
            };
            if let Some(other) = claims.iter().find(|claim| claim.face == face) {
                fault(&rule.id, FaultKind::SharedFace(other.id.clone()));
                break;
            }
            if claims.iter().any(|claim| claim.number == number) {
                fault(&rule.id, FaultKind::SameNumber(number));
            }
            if (side.is_some() || !layout.mirror) && names_other_side(&rule.id, seed) {
                fault(&rule.id, FaultKind::SideInName);
            }
            claims.push(claim(layout, rule, seed, number, side, face));
        }
    }
    for (face, found) in faces.inside.iter().enumerate() {
        if faults.is_empty() && !claims.iter().any(|claim| claim.face == face) {
            let kind = FaultKind::UnclaimedFace { at: found.a_point() };
            faults.push(Fault { subject: Subject::Layout, sizes: vec![size], kind });
            break;
        }
    }
    claims.sort_by_key(|claim| claim.number);
    if faults.is_empty() { Ok(claims) } else { Err(faults) }
}

fn claim(
    layout: &Layout,
    rule: &CompartmentRule,
    seed: Point,
    number: u8,
    side: Option<Side>,
    face: usize,
) -> Claim {
    let (id, has_partner) = match side {
        Some(side) if layout.mirror => (Name::joined(&rule.id, side.words()), true),
        _ => (rule.id.clone(), false),
    };
    let words = rule.words.clone();
    Claim { id, number, words, has_partner, purpose: rule.purpose, seed, side, face }
}

/// The seeds that a rule stands for; none where its numbers do not fit.
fn seeds(
    layout: &Layout,
    size: Size,
    rule: &CompartmentRule,
) -> Option<Vec<(Point, u8, Option<Side>)>> {
    let seed = rule.seed.at(size);
    let middle = seed.x.abs() < ON_CENTRE;
    let own = if seed.x < 0.0 { Side::Left } else { Side::Right };
    match (layout.mirror && !middle, rule.numbers) {
        (false, Numbers::One(number)) => Some(vec![(seed, number, (!middle).then_some(own))]),
        (true, Numbers::Pair { left, right }) => {
            let image = Point::new(-seed.x, seed.y);
            Some(vec![(image, left, Some(Side::Left)), (seed, right, Some(Side::Right))])
        }
        _ => None,
    }
}

/// Whether an id says a side that the compartment is not on.
fn names_other_side(id: &Name, seed: Point) -> bool {
    id.as_str().split('-').any(|word| match word {
        "left" => seed.x > 0.0,
        "right" => seed.x < 0.0,
        _ => false,
    })
}
