//! Sizing: which made size suits the client's measures, chair and weight, and why.

use case::{
    Chair, Client, HeightEffect, LossLevel, Measures, NoSizeToMake, Propulsion, SizeMargin,
    SizeMisfit, SizeToMake, SizingRule,
};
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

/// Lengths that differ by less are alike: sizes are written to a tenth of a millimetre, and what is
/// left of a difference of two lengths below that is rounding.
const ALIKE: Length = Length::from_mm(0.05);

/// The side whose thigh decides nothing about the depth: that of the one leg that is lost above the
/// knee or at the hip, where no knee needs room. None where neither or both are, and where the other
/// thigh was not measured.
#[must_use]
pub fn thigh_not_counted(client: &Client) -> Option<Side> {
    let all = &client.posture.limb_loss;
    let has_knee =
        |side| !all.iter().any(|own| own.side == side && own.level != LossLevel::BelowKnee);
    let decides = |side| has_knee(side) && client.measures.thigh_depth[side].is_some();
    [Side::Left, Side::Right].into_iter().find(|side| !has_knee(*side) && decides(side.other()))
}

/// The measures by which a cushion is chosen for a client: without the thigh that is not counted.
#[must_use]
pub fn sized_by(client: &Client) -> Measures {
    let mut measures = client.measures.clone();
    match thigh_not_counted(client) {
        Some(Side::Left) => measures.thigh_depth.left = None,
        Some(Side::Right) => measures.thigh_depth.right = None,
        None => {}
    }
    measures
}

/// What sizing found.
#[derive(Clone, Debug, PartialEq)]
pub struct Sizing {
    /// The width that is wanted; none where the hips were not measured.
    pub width: Option<Length>,
    /// The depth that is wanted, by the shorter thigh; none where no thigh was measured.
    pub depth: Option<Length>,
    /// The made size that suits best; none where none does.
    pub chosen: Option<Size>,
    /// What the chosen size leaves free; nothing of what was not measured.
    pub margins: Vec<SizeMargin>,
    /// The other sizes that suit, further from what is wanted, in the order of the sizes.
    pub suit_too: Vec<Size>,
    /// The rules.
    pub rules: Vec<SizingRule>,
    /// Why each other size is left, in the order of the sizes.
    pub why_not: Vec<(Size, Vec<SizeMisfit>)>,
}

impl Sizing {
    /// The size that comes nearest to suiting, and why it does not: the fewest reasons, then the
    /// least off what is wanted, then the first. None where every size suits.
    #[must_use]
    pub fn nearest_misfit(&self) -> Option<&(Size, Vec<SizeMisfit>)> {
        self.why_not.iter().min_by(|(one, whys), (other, others)| {
            let off = |size: Size| off(self.width, self.depth, size);
            whys.len().cmp(&others.len()).then(off(*one).total_cmp(&off(*other)))
        })
    }
}

/// How far a size is off what is wanted, in mm: width and depth together.
fn off(width: Option<Length>, depth: Option<Length>, size: Size) -> f64 {
    let off = |wanted: Option<Length>, has: Length| {
        wanted.map_or(0.0, |wanted| (has - wanted).to_mm().abs())
    };
    off(width, size.width()) + off(depth, size.depth())
}

/// Finds the made size that suits a client.
#[must_use]
pub fn sizing(
    measures: &Measures,
    weight: Option<Mass>,
    chair: &Chair,
    sizes: &[MadeSize],
) -> Sizing {
    let client = Wearer::new(measures, weight, chair);
    let (width, depth) = (client.width(), client.depth());
    let mut best: Option<(f64, MadeSize)> = None;
    let mut suit = Vec::new();
    let mut why_not = Vec::new();
    for &made in sizes {
        let misfits = client.misfits(made);
        if !misfits.is_empty() {
            why_not.push((made.size, misfits));
            continue;
        }
        suit.push(made.size);
        let off = off(width, depth, made.size);
        if best.is_none_or(|(least, _)| off < least) {
            best = Some((off, made));
        }
    }
    let chosen = best.map(|(_, made)| made.size);
    Sizing {
        width,
        depth,
        chosen,
        margins: best.map_or_else(Vec::new, |(_, made)| client.margins(made)),
        suit_too: suit.into_iter().filter(|size| chosen != Some(*size)).collect(),
        rules: client.rules(),
        why_not,
    }
}

/// Finds the size that would have to be made for a client: by the same rules as [`sizing`], in
/// whole millimetres and kilograms, nearest to what is wanted, and as wide and as deep as cushions
/// are drawn.
///
/// # Errors
///
/// Fails where hips, thighs or weight are not known, and where no size can suit.
pub fn size_to_make(
    measures: &Measures,
    weight: Option<Mass>,
    chair: &Chair,
) -> Result<SizeToMake, Vec<NoSizeToMake>> {
    let client = Wearer::new(measures, weight, chair);
    let weight = weight.ok_or(NoSizeToMake::NotWeighed);
    match (client.width_to_make(), client.depth_to_make(), weight) {
        (Ok((width, widths)), Ok((depth, depths)), Ok(weight)) => {
            let size = Size::new(width, depth).expect("sides are drawn so");
            let max_user_weight = Mass::from_kg(weight.to_kg().ceil());
            Ok(SizeToMake { made: MadeSize { size, max_user_weight }, widths, depths })
        }
        (width, depth, weight) => {
            let whys = [width.err(), depth.err(), weight.err()];
            Err(whys.into_iter().flatten().collect())
        }
    }
}

/// Who sits on the cushion, as far as its size is concerned.
struct Wearer<'a> {
    hips: Option<Length>,
    /// The shorter one.
    thigh: Option<Length>,
    weight: Option<Mass>,
    chair: &'a Chair,
}

/// A side of a size, with the least and the greatest that suit as well.
type SideToMake = (Length, [Length; 2]);

impl<'a> Wearer<'a> {
    fn new(measures: &Measures, weight: Option<Mass>, chair: &'a Chair) -> Self {
        let thighs = [measures.thigh_depth.left, measures.thigh_depth.right];
        let thigh = thighs.into_iter().flatten().reduce(Length::min);
        Self { hips: measures.hip_width, thigh, weight, chair }
    }

    /// The width that is wanted.
    fn width(&self) -> Option<Length> {
        self.hips.map(|hips| hips + WIDTH_ROOM)
    }

    /// The depth that is wanted.
    fn depth(&self) -> Option<Length> {
        self.thigh.map(|thigh| thigh - DEPTH_ROOM)
    }

    /// Why a size does not suit.
    fn misfits(&self, made: MadeSize) -> Vec<SizeMisfit> {
        let (width, depth) = (made.size.width(), made.size.depth());
        let rating = made.max_user_weight;
        let heavy = self.weight.is_some_and(|weight| weight > rating);
        let found = [
            self.misfit_of_hips(width),
            self.misfit_of_thigh(depth),
            heavy.then_some(SizeMisfit::Rating { rating }),
            self.wider_than_chair(width).then_some(SizeMisfit::WiderThanChair),
            self.deeper_than_seat(depth).then_some(SizeMisfit::DeeperThanSeat),
        ];
        found.into_iter().flatten().collect()
    }

    fn misfit_of_hips(&self, width: Length) -> Option<SizeMisfit> {
        let hips = self.hips?;
        if more(hips, width) {
            return Some(SizeMisfit::Narrow { hips });
        }
        let wide = more(width, hips + MOST_WIDTH_ROOM);
        wide.then_some(SizeMisfit::Wide { most: MOST_WIDTH_ROOM })
    }

    fn misfit_of_thigh(&self, depth: Length) -> Option<SizeMisfit> {
        let thigh = self.thigh?;
        if more(depth, thigh - LEAST_DEPTH_ROOM) {
            return Some(SizeMisfit::Deep { least: LEAST_DEPTH_ROOM });
        }
        let shallow = more(thigh - DEPTH_ROOM - SHORT, depth);
        shallow.then_some(SizeMisfit::Shallow { short: thigh - depth })
    }

    fn wider_than_chair(&self, width: Length) -> bool {
        self.chair.inside_width.is_some_and(|inside| more(width, inside))
    }

    fn deeper_than_seat(&self, depth: Length) -> bool {
        self.chair.inside_depth.is_some_and(|inside| more(depth, inside))
    }

    /// What a size leaves free.
    fn margins(&self, made: MadeSize) -> Vec<SizeMargin> {
        let (width, depth) = (made.size.width(), made.size.depth());
        let of_weight = |weight| SizeMargin::BelowRating(made.max_user_weight - weight);
        let margins = [
            self.hips.map(|hips| SizeMargin::BesideHips(width - hips)),
            self.thigh.map(|thigh| SizeMargin::BehindKnee(thigh - depth)),
            self.weight.map(of_weight),
            self.chair.inside_width.map(|inside| SizeMargin::InChairWidth(inside - width)),
            self.chair.inside_depth.map(|inside| SizeMargin::InChairDepth(inside - depth)),
        ];
        margins.into_iter().flatten().collect()
    }

    fn rules(&self) -> Vec<SizingRule> {
        let width = |hips: Length| SizingRule::Width {
            wanted: hips + WIDTH_ROOM,
            room: WIDTH_ROOM,
            within: [hips, hips + MOST_WIDTH_ROOM],
        };
        let depth = |thigh: Length| SizingRule::Depth {
            wanted: thigh - DEPTH_ROOM,
            room: DEPTH_ROOM,
            within: [thigh - DEPTH_ROOM - SHORT, thigh - LEAST_DEPTH_ROOM],
        };
        let rules = [
            self.hips.map(width),
            self.thigh.map(depth),
            self.chair.inside_width.map(|inside| SizingRule::ChairWidth { inside }),
            self.chair.inside_depth.map(|inside| SizingRule::ChairDepth { inside }),
            self.weight.map(|weight| SizingRule::Rating { weight }),
        ];
        rules.into_iter().flatten().collect()
    }

    fn width_to_make(&self) -> Result<SideToMake, NoSizeToMake> {
        let wanted = self.width().ok_or(NoSizeToMake::HipsNotMeasured)?;
        let by_hips = |width: &Length| self.misfit_of_hips(*width).is_none();
        let [least, _] = ends(by_hips).ok_or(NoSizeToMake::WidthNotDrawn { wanted })?;
        nearest(wanted, |width| by_hips(width) && !self.wider_than_chair(*width)).ok_or_else(|| {
            let inside = self.chair.inside_width.unwrap_or(least);
            NoSizeToMake::ChairTooNarrow { least, inside }
        })
    }

    fn depth_to_make(&self) -> Result<SideToMake, NoSizeToMake> {
        let wanted = self.depth().ok_or(NoSizeToMake::ThighsNotMeasured)?;
        let by_thigh = |depth: &Length| self.misfit_of_thigh(*depth).is_none();
        let [least, _] = ends(by_thigh).ok_or(NoSizeToMake::DepthNotDrawn { wanted })?;
        nearest(wanted, |depth| by_thigh(depth) && !self.deeper_than_seat(*depth)).ok_or_else(
            || {
                let inside = self.chair.inside_depth.unwrap_or(least);
                NoSizeToMake::SeatTooShallow { least, inside }
            },
        )
    }
}

/// Whether a length is more than another by more than rounding.
fn more(one: Length, other: Length) -> bool {
    one - other > ALIKE
}

/// The sides that cushions are drawn with, in whole millimetres.
fn sides() -> impl Iterator<Item = Length> {
    let [least, greatest] = [Size::LEAST, Size::GREATEST].map(|end| end.to_mm().round() as u32);
    (least..=greatest).map(|mm| Length::from_mm(f64::from(mm)))
}

/// The least and the greatest side that suit.
fn ends(suits: impl Fn(&Length) -> bool) -> Option<[Length; 2]> {
    let mut all = sides().filter(suits);
    let least = all.next()?;
    Some([least, all.last().unwrap_or(least)])
}

/// The side that is nearest to what is wanted of those that suit, the smaller of two; with the
/// ends of these.
fn nearest(wanted: Length, suits: impl Fn(&Length) -> bool) -> Option<SideToMake> {
    let off = |side: &Length| (*side - wanted).to_mm().abs();
    let all = sides().filter(&suits);
    let side = all.min_by(|one, other| off(one).total_cmp(&off(other)))?;
    Some((side, ends(suits)?))
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
