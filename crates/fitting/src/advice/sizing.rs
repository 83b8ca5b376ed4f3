//! Sizing: which made size suits the client's measures, chair and weight, and why.

use case::{Chair, HeightEffect, Measures, Propulsion, SizeMisfit, SizingRule};
use cushion::{Length, MadeSize, Mass, Side, Size};

/// Room beside the hips, in all: between the published rules of hip width itself (WHO basic
/// package, quoted on a web page) and 50 mm more (orthopaedics exam notes); 25 mm for clothing
/// (Pheasant-type tables).
pub const WIDTH_ROOM: Length = Length::from_mm(25.0);
/// The most room beside the hips: 50 mm (orthopaedics exam notes), and what a step between made
/// sizes adds.
const MOST_WIDTH_ROOM: Length = Length::from_mm(70.0);
/// Room behind the knee: 50 mm (orthopaedics exam notes); the WHO basic package has 30 to 60 mm
/// (from memory).
pub const DEPTH_ROOM: Length = Length::from_mm(50.0);
/// The least room behind the knee (WHO basic package, from memory).
const LEAST_DEPTH_ROOM: Length = Length::from_mm(30.0);
/// The most of the thigh that a cushion may leave without support, beyond the usual room: an
/// estimate, so that a made size is found for most; the planner sees what it does.
const SHORT: Length = Length::from_mm(70.0);

/// What sizing found.
#[derive(Clone, Debug, PartialEq)]
pub struct Sizing {
    /// The width that is wanted; none where the hips were not measured.
    pub width: Option<Length>,
    /// The depth that is wanted, by the shorter thigh; none where no thigh was measured.
    pub depth: Option<Length>,
    /// The made size that suits best; none where none does.
    pub chosen: Option<Size>,
    /// The rules.
    pub rules: Vec<SizingRule>,
    /// Why each other size is left, in the order of the sizes.
    pub why_not: Vec<(Size, Vec<SizeMisfit>)>,
}

/// Finds the made size that suits a client.
#[must_use]
pub fn sizing(
    measures: &Measures,
    weight: Option<Mass>,
    chair: &Chair,
    sizes: &[MadeSize],
) -> Sizing {
    let width = measures.hip_width.map(|hips| hips + WIDTH_ROOM);
    let thighs = [measures.thigh_depth.left, measures.thigh_depth.right];
    let thigh = thighs.into_iter().flatten().reduce(Length::min);
    let depth = thigh.map(|thigh| thigh - DEPTH_ROOM);
    let client = Wearer { measures, weight, chair, thigh };
    let mut best: Option<(f64, Size)> = None;
    let mut why_not = Vec::new();
    for made in sizes {
        let misfits = client.misfits(made);
        if !misfits.is_empty() {
            why_not.push((made.size, misfits));
            continue;
        }
        let off = |wanted: Option<Length>, has: Length| {
            wanted.map_or(0.0, |wanted| (has - wanted).to_mm().abs())
        };
        let off = off(width, made.size.width()) + off(depth, made.size.depth());
        if best.is_none_or(|(least, _)| off < least) {
            best = Some((off, made.size));
        }
    }
    Sizing { width, depth, chosen: best.map(|(_, size)| size), rules: rules(width, depth), why_not }
}

struct Wearer<'a> {
    measures: &'a Measures,
    weight: Option<Mass>,
    chair: &'a Chair,
    thigh: Option<Length>,
}

impl Wearer<'_> {
    /// Why a size does not suit.
    fn misfits(&self, made: &MadeSize) -> Vec<SizeMisfit> {
        let (width, depth) = (made.size.width(), made.size.depth());
        let of_width = |hips: Length| {
            if width < hips {
                Some(SizeMisfit::Narrow { hips })
            } else {
                let wide = width > hips + MOST_WIDTH_ROOM;
                wide.then_some(SizeMisfit::Wide { most: MOST_WIDTH_ROOM })
            }
        };
        let of_depth = |thigh: Length| {
            if depth > thigh - LEAST_DEPTH_ROOM {
                Some(SizeMisfit::Deep { least: LEAST_DEPTH_ROOM })
            } else {
                let shallow = depth < thigh - DEPTH_ROOM - SHORT;
                shallow.then_some(SizeMisfit::Shallow { short: thigh - depth })
            }
        };
        let rating = made.max_user_weight;
        let heavy = self.weight.is_some_and(|weight| weight > rating);
        let wider = self.chair.inside_width.is_some_and(|inside| width > inside);
        let deeper = self.chair.inside_depth.is_some_and(|inside| depth > inside);
        let found = [
            self.measures.hip_width.and_then(of_width),
            self.thigh.and_then(of_depth),
            heavy.then_some(SizeMisfit::Rating { rating }),
            wider.then_some(SizeMisfit::WiderThanChair),
            deeper.then_some(SizeMisfit::DeeperThanSeat),
        ];
        found.into_iter().flatten().collect()
    }
}

fn rules(width: Option<Length>, depth: Option<Length>) -> Vec<SizingRule> {
    let width = width.map(|wanted| SizingRule::Width { wanted, room: WIDTH_ROOM });
    let depth = depth.map(|wanted| SizingRule::Depth { wanted, room: DEPTH_ROOM });
    width.into_iter().chain(depth).collect()
}

/// How far below the lower leg length the loaded front edge is best for a foot that propels:
/// 1 to 2 inches (Heinrichs, Kirby et al., 2020).
const FRONT_EDGE_BELOW: [Length; 2] = [Length::from_mm(25.4), Length::from_mm(50.8)];
/// By how much a footrest may be off before it is said: a practice judgement.
const FOOTREST_FREE: Length = Length::from_mm(10.0);

/// Returns what a cushion of this loaded height under the thighs means for footrests and feet.
#[must_use]
pub fn height_effects(
    measures: &Measures,
    chair: &Chair,
    propulsion: Option<Propulsion>,
    loaded: Length,
) -> Vec<HeightEffect> {
    let mut effects = Vec::new();
    for side in [Side::Left, Side::Right] {
        let Some(leg) = measures.lower_leg_length[side] else { continue };
        let foot = propulsion.is_some_and(|propulsion| propulsion.uses_foot(side));
        if let Some(footrest) = chair.footrest_height.filter(|_| !foot) {
            // Footrest from the cushion's top is the lower leg with the shoe on, the cushion
            // compressed.
            let too_low_by = footrest + loaded - leg;
            let off = too_low_by.abs() > FOOTREST_FREE;
            effects.extend(off.then_some(HeightEffect::Footrest { side, too_low_by }));
        }
        if foot {
            let [near, far] = FRONT_EDGE_BELOW;
            effects.push(HeightEffect::FrontEdge { side, least: leg - far, most: leg - near });
        }
    }
    effects
}
