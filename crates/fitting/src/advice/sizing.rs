//! Sizing: which made size suits the client's measures, chair and weight, and why.

use case::{Chair, Measures, Propulsion};
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

/// One rule of sizing, with what it asks of this client.
#[derive(Clone, Debug, PartialEq)]
pub struct SizingRule {
    /// What it is about and what it asks for, in words.
    pub words: String,
    /// Where it comes from.
    pub source: &'static str,
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
    /// The rules, in words.
    pub rules: Vec<SizingRule>,
    /// Why each other size is left, in the order of the sizes.
    pub why_not: Vec<(Size, Vec<String>)>,
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
        let reasons = client.reasons(made);
        if !reasons.is_empty() {
            why_not.push((made.size, reasons));
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
    fn reasons(&self, made: &MadeSize) -> Vec<String> {
        let (width, depth) = (made.size.width(), made.size.depth());
        let mm = |length: Length| format!("{:.0} mm", length.to_mm());
        let mut reasons = Vec::new();
        if let Some(hips) = self.measures.hip_width {
            if width < hips {
                reasons.push(format!("it is narrower than the hips, {}", mm(hips)));
            } else if width > hips + MOST_WIDTH_ROOM {
                reasons
                    .push(format!("it is more than {} wider than the hips", mm(MOST_WIDTH_ROOM)));
            }
        }
        if let Some(thigh) = self.thigh {
            if depth > thigh - LEAST_DEPTH_ROOM {
                reasons.push(format!(
                    "it leaves less than {} behind the shorter leg's knee",
                    mm(LEAST_DEPTH_ROOM)
                ));
            } else if depth < thigh - DEPTH_ROOM - SHORT {
                reasons.push(format!("it ends {} behind the knee", mm(thigh - depth)));
            }
        }
        if self.weight.is_some_and(|weight| weight > made.max_user_weight) {
            reasons.push(format!("it is rated for {:.0} kg", made.max_user_weight.to_kg()));
        }
        if self.chair.inside_width.is_some_and(|inside| width > inside) {
            reasons.push("it is wider than the chair inside".to_owned());
        }
        if self.chair.inside_depth.is_some_and(|inside| depth > inside) {
            reasons.push("it is deeper than the seat".to_owned());
        }
        reasons
    }
}

fn rules(width: Option<Length>, depth: Option<Length>) -> Vec<SizingRule> {
    let rule = |words: String, source| SizingRule { words, source };
    let mut rules = Vec::new();
    if let Some(width) = width {
        rules.push(rule(
            format!(
                "Width {:.0} mm: the hips as clothed and {:.0} mm; never narrower than the hips.",
                width.to_mm(),
                WIDTH_ROOM.to_mm()
            ),
            "between the hip width (WHO basic package, seen in part) and 50 mm more (orthopaedics \
             exam notes)",
        ));
    }
    if let Some(depth) = depth {
        rules.push(rule(
            format!(
                "Depth {:.0} mm: the shorter thigh depth less {:.0} mm, two to three fingers \
                 behind the knee. Measure both legs; depth goes by the shorter one.",
                depth.to_mm(),
                DEPTH_ROOM.to_mm()
            ),
            "orthopaedics exam notes; WHO basic package has 30 to 60 mm (from memory)",
        ));
    }
    rules
}

/// Returns what a cushion of this loaded height under the thighs means for footrests and feet, in
/// sentences.
#[must_use]
pub fn consequences(
    measures: &Measures,
    chair: &Chair,
    propulsion: Option<Propulsion>,
    loaded: Length,
) -> Vec<String> {
    let mut sentences = Vec::new();
    for side in [Side::Left, Side::Right] {
        let Some(leg) = measures.lower_leg_length[side] else { continue };
        let foot = propulsion.is_some_and(|propulsion| propulsion.uses_foot(side));
        let side = side.words();
        if let Some(footrest) = chair.footrest_height.filter(|_| !foot) {
            // Footrest from the cushion's top is the lower leg with the shoe on, the cushion
            // compressed.
            let off = footrest + loaded - leg;
            if off.abs() > Length::from_mm(10.0) {
                let (by, way) =
                    (off.abs().to_mm(), if off > Length::ZERO { "low" } else { "high" });
                sentences.push(format!(
                    "The {side} footrest is about {by:.0} mm too {way} for the lower leg on this \
                     cushion (subtract the compressed cushion). Set it again."
                ));
            }
        }
        if foot {
            sentences.push(format!(
                "The {side} foot propels: the loaded front edge is best 25 to 50 mm below the lower \
                 leg length with the shoe on, so at {:.0} to {:.0} mm above the floor (Heinrichs, \
                 Kirby et al., 2020).",
                (leg - Length::from_mm(50.8)).to_mm(),
                (leg - Length::from_mm(25.4)).to_mm()
            ));
        }
    }
    sentences
}
