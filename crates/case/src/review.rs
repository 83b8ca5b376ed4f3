//! A review of a layout: what its sizes do for the bodies that they suit, and what follows.

use cushion::{Jump, Length, Mass, Name, Purpose, Size};

use crate::{PredictedOutcome, Sides, Spread};

/// The bodies at which a size is looked at, of a hundred by their weight.
pub const REVIEWED: [u8; 3] = [5, 50, 95];

/// The place, from 0, of so many of a hundred among sorted values, by nearest rank.
#[must_use]
pub fn nearest_rank(values: usize, percent: u8) -> usize {
    (values * usize::from(percent)).div_ceil(100).max(1) - 1
}

/// What is said to lie on a seam: within so much of it, which is the radius of the disc over which
/// a surface pressure is a result.
pub const ON_A_SEAM: Length = Length::from_mm(15.0);

/// From such a share of people on, bones on a seam are told.
const SHARE_ON_A_SEAM: f64 = 0.25;

/// The least cushion under a seat bone, as in the limits of a plan.
const LEAST_LEFT: Length = Length::from_mm(25.0);

/// What hands tell of how high a side is.
const TOLD_BY_HANDS: Length = Length::from_mm(5.0);

/// From such a change for one cell on, a miscount is felt: two cells within the tolerance of a count
/// are then what hands tell.
const MUCH_FOR_ONE: Length = Length::from_mm(2.5);

/// The least opening through which a hand goes; from memory, unverified: some 78 mm across the
/// knuckles.
const HAND: Length = Length::from_mm(78.0);

/// One size of a layout, as the bodies find it that it suits.
#[derive(Clone, Debug, PartialEq)]
pub struct ReviewedSize {
    /// The size.
    pub size: Size,
    /// The heaviest body that it is rated for.
    pub rated: Mass,
    /// The code group of its class and width.
    pub code: &'static str,
    /// Bodies of the table that it suits.
    pub bodies: usize,
    /// Where seat bones fall.
    pub bones: BonesAndSeams,
    /// The compartments, in the order of their numbers.
    pub compartments: Vec<ReviewedCompartment>,
    /// How the lightest, the middle and the heaviest of those bodies sit on the stock fill; none
    /// where it suits nobody.
    pub seats: Vec<ReviewedSeat>,
}

/// Where seat bones fall against seams.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BonesAndSeams {
    /// Share of women among the bodies; half where the table does not say.
    pub women: f64,
    /// The distance between the bones that 5, 50 and 95 of a hundred people have at most.
    pub apart: [Length; 3],
    /// From such a bone to the nearest seam.
    pub to_seam: [Length; 3],
    /// Share of people whose bones lie on a seam, see [`ON_A_SEAM`].
    pub on_seam: f64,
}

/// One compartment.
#[derive(Clone, Debug, PartialEq)]
pub struct ReviewedCompartment {
    /// The compartment.
    pub id: Name,
    /// The number sewn at its opening.
    pub number: u8,
    /// What it is for.
    pub purpose: Purpose,
    /// Cells as supplied, with the ends of their range.
    pub cells: [u32; 3],
    /// The widest disc that goes in.
    pub width: Length,
    /// Its opening.
    pub opening: Length,
    /// What a cell does; none where nobody sits, or comes to no rest.
    pub effect: Option<CellsDo>,
}

/// What one cell more does, over as many as a hand moves, under the middle one of the bodies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CellsDo {
    /// Cells by which it was tried, once more and once less.
    pub tried: u32,
    /// What is left under each seat bone changes by so much for one cell.
    pub under: Sides<Length>,
    /// The front rises by so many degrees for one cell.
    pub pitch_deg: f64,
    /// With this compartment at its highest count and its mirror image at its lowest, the seat bone
    /// of its side stands so much higher beside the other; none where it is for no seat bone.
    pub lifts: Option<Length>,
}

impl CellsDo {
    /// The larger change of the two.
    #[must_use]
    pub fn most_under(&self) -> Length {
        let most = self.under.left.to_mm().abs().max(self.under.right.to_mm().abs());
        Length::from_mm(most)
    }
}

/// How one body sits on the stock fill.
#[derive(Clone, Debug, PartialEq)]
pub struct ReviewedSeat {
    /// Of a hundred bodies so many are as light.
    pub percent: u8,
    /// Its weight.
    pub weight: Mass,
    /// How the prediction ended.
    pub outcome: PredictedOutcome,
    /// What is left under the seat bone that has less; none where it comes to no rest.
    pub left: Option<Spread<Length>>,
    /// Compartments in which the cells lie loose.
    pub slack: Vec<u8>,
    /// Compartments in which the skin is nearly on the base.
    pub bottomed: Vec<u8>,
}

/// Something that a review finds at a size.
#[derive(Clone, Debug, PartialEq)]
pub enum ReviewKind {
    /// A body comes to no rest.
    NoRest(u8, Mass),
    /// A body is nearly on the base in these compartments.
    Bottoms(u8, Mass, Vec<u8>),
    /// Less than the limit is left under a seat bone.
    LittleLeft(u8, Mass, Length),
    /// No body of the table suits.
    NobodySuits,
    /// Seat bones lie on a seam, in such a share of people.
    BonesOnSeam(f64),
    /// No hand goes into a compartment, whose opening is so long.
    NoHand(u8, Length),
    /// A compartment for a seat bone that lifts its side by hardly anything over its whole range.
    LittleReach(u8, Length),
    /// One cell in a compartment changes so much that a miscount is felt.
    MuchForOne(u8, Length),
    /// The cells of these compartments lie loose under a body.
    Slack(u8, Mass, Vec<u8>),
    /// A count jumps from the next smaller size.
    Jumps(Jump, Size),
    /// The code group is another than at the next narrower size.
    OtherCode {
        /// At the narrower size.
        was: &'static str,
        /// That size.
        from: Size,
        /// At this one.
        is: &'static str,
    },
}

impl ReviewKind {
    /// How reports call it.
    #[must_use]
    pub fn id(&self) -> &'static str {
        match self {
            Self::NoRest(..) => "no-rest",
            Self::Bottoms(..) => "bottoms",
            Self::LittleLeft(..) => "little-left",
            Self::NobodySuits => "nobody-suits",
            Self::BonesOnSeam(_) => "bones-on-seam",
            Self::NoHand(..) => "no-hand",
            Self::LittleReach(..) => "little-reach",
            Self::MuchForOne(..) => "much-for-one",
            Self::Slack(..) => "slack",
            Self::Jumps(..) => "jumps",
            Self::OtherCode { .. } => "other-code",
        }
    }

    /// The order in which they are told: what can hurt first.
    fn rank(&self) -> u8 {
        match self {
            Self::NoRest(..) => 0,
            Self::Bottoms(..) => 1,
            Self::LittleLeft(..) => 2,
            Self::BonesOnSeam(_) => 3,
            Self::LittleReach(..) => 4,
            Self::NoHand(..) => 5,
            Self::MuchForOne(..) => 6,
            Self::Slack(..) => 7,
            Self::Jumps(..) => 8,
            Self::NobodySuits => 9,
            Self::OtherCode { .. } => 10,
        }
    }

    /// How bad it is beside others of its kind: more is worse.
    fn how_bad(&self) -> f64 {
        match self {
            Self::NoRest(_, weight) => -weight.to_kg(),
            Self::Bottoms(_, weight, numbers) => numbers.len() as f64 * 1e3 - weight.to_kg(),
            Self::LittleLeft(_, _, left) => -left.to_mm(),
            Self::BonesOnSeam(share) => *share,
            Self::NoHand(_, opening) => -opening.to_mm(),
            Self::LittleReach(_, reach) => -reach.to_mm(),
            Self::MuchForOne(_, change) => change.to_mm(),
            Self::Slack(_, _, numbers) => numbers.len() as f64,
            Self::Jumps(jump, _) => {
                (f64::from(jump.is) / f64::from(jump.expected.max(1))).ln().abs()
            }
            Self::NobodySuits | Self::OtherCode { .. } => 0.0,
        }
    }

    /// Whether each is told by itself, and not the worst alone.
    fn is_told_each(&self) -> bool {
        matches!(self, Self::Jumps(..) | Self::OtherCode { .. })
    }
}

/// Something that a review finds: where it is worst, and where else it is.
#[derive(Clone, Debug, PartialEq)]
pub struct ReviewFinding {
    /// What, at the size where it is worst.
    pub kind: ReviewKind,
    /// That size.
    pub size: Size,
    /// All sizes where it is, that one too, in the order of the layout.
    pub sizes: Vec<Size>,
}

/// Returns what is found over all sizes, the worst first: of each kind the worst, with how many
/// sizes have it.
#[must_use]
pub fn review_findings(sizes: &[ReviewedSize], jumps: &[(Jump, Size, Size)]) -> Vec<ReviewFinding> {
    let mut all: Vec<(Size, ReviewKind)> = Vec::new();
    for own in sizes {
        all.extend(at_size(own).into_iter().map(|kind| (own.size, kind)));
    }
    all.extend(jumps.iter().map(|(jump, from, to)| (*to, ReviewKind::Jumps(jump.clone(), *from))));
    all.extend(other_codes(sizes));
    let mut found: Vec<ReviewFinding> = Vec::new();
    for (size, kind) in all {
        let alike = |own: &&mut ReviewFinding| own.kind.id() == kind.id() && !kind.is_told_each();
        match found.iter_mut().find(alike) {
            Some(known) => {
                if !known.sizes.contains(&size) {
                    known.sizes.push(size);
                }
                if kind.how_bad() > known.kind.how_bad() {
                    (known.kind, known.size) = (kind, size);
                }
            }
            None => found.push(ReviewFinding { kind, size, sizes: vec![size] }),
        }
    }
    found.sort_by(|one, other| {
        let by_rank = one.kind.rank().cmp(&other.kind.rank());
        by_rank.then(other.kind.how_bad().total_cmp(&one.kind.how_bad()))
    });
    found
}

/// What is found at one size.
fn at_size(own: &ReviewedSize) -> Vec<ReviewKind> {
    let mut found = Vec::new();
    if own.bodies == 0 {
        found.push(ReviewKind::NobodySuits);
    }
    for ReviewedSeat { percent, weight, left, slack, bottomed, .. } in &own.seats {
        match left {
            None => found.push(ReviewKind::NoRest(*percent, *weight)),
            Some(left) if left.central < LEAST_LEFT => {
                found.push(ReviewKind::LittleLeft(*percent, *weight, left.central));
            }
            Some(_) => {}
        }
        if !bottomed.is_empty() {
            found.push(ReviewKind::Bottoms(*percent, *weight, bottomed.clone()));
        }
        if !slack.is_empty() {
            found.push(ReviewKind::Slack(*percent, *weight, slack.clone()));
        }
    }
    // Of whom a size suits nobody knows, nor where their bones are.
    if own.bodies > 0 && own.bones.on_seam >= SHARE_ON_A_SEAM {
        found.push(ReviewKind::BonesOnSeam(own.bones.on_seam));
    }
    for own in &own.compartments {
        if own.opening < HAND {
            found.push(ReviewKind::NoHand(own.number, own.opening));
        }
        let Some(effect) = own.effect else { continue };
        let one = effect.most_under();
        if let Some(lifts) = effect.lifts.filter(|lifts| *lifts < TOLD_BY_HANDS) {
            found.push(ReviewKind::LittleReach(own.number, lifts));
        }
        if one >= MUCH_FOR_ONE {
            found.push(ReviewKind::MuchForOne(own.number, one));
        }
    }
    found
}

/// Where the code group is another than at the next narrower size.
fn other_codes(sizes: &[ReviewedSize]) -> Vec<(Size, ReviewKind)> {
    let mut by_width: Vec<&ReviewedSize> = sizes.iter().collect();
    by_width.sort_by_key(|own| own.size);
    let pairs = by_width.windows(2).filter(|pair| pair[0].code != pair[1].code);
    let told = pairs.map(|pair| {
        let (was, from, is) = (pair[0].code, pair[0].size, pair[1].code);
        (pair[1].size, ReviewKind::OtherCode { was, from, is })
    });
    told.collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(own: f64) -> Length {
        Length::from_mm(own)
    }

    fn seat(percent: u8, kg: f64, left: Option<f64>) -> ReviewedSeat {
        let all = |own| Spread { central: mm(own), low: mm(own), high: mm(own) };
        ReviewedSeat {
            percent,
            weight: Mass::from_kg(kg),
            outcome: PredictedOutcome::AtRest,
            left: left.map(all),
            slack: Vec::new(),
            bottomed: Vec::new(),
        }
    }

    fn size(text: &str, seats: Vec<ReviewedSeat>) -> ReviewedSize {
        let effect = CellsDo {
            tried: 8,
            under: Sides { left: mm(0.5), right: mm(-0.1) },
            pitch_deg: 0.0,
            lifts: Some(mm(6.0)),
        };
        ReviewedSize {
            size: text.parse().expect("a size"),
            rated: Mass::from_kg(90.0),
            code: "E2622",
            bodies: seats.len(),
            bones: BonesAndSeams {
                women: 0.5,
                apart: [mm(100.0); 3],
                to_seam: [mm(40.0); 3],
                on_seam: 0.0,
            },
            compartments: vec![ReviewedCompartment {
                id: Name::new("pelvis").expect("a name"),
                number: 1,
                purpose: Purpose::SeatBone,
                cells: [40, 50, 60],
                width: mm(150.0),
                opening: mm(110.0),
                effect: Some(effect),
            }],
            seats,
        }
    }

    #[test]
    fn what_can_hurt_comes_first_and_of_each_kind_the_worst() {
        let mut small =
            size("400x400", vec![seat(5, 50.0, Some(40.0)), seat(95, 80.0, Some(21.0))]);
        small.compartments[0].opening = mm(60.0);
        let mut large = size("440x400", vec![seat(5, 50.0, Some(24.0)), seat(95, 90.0, None)]);
        large.code = "E2623";
        large.bones.on_seam = 0.3;
        let found = review_findings(&[small, large], &[]);
        let told: Vec<(&str, String, usize)> = (found.iter())
            .map(|own| (own.kind.id(), own.size.to_string(), own.sizes.len()))
            .collect();
        let wanted = [
            ("no-rest", "440x400", 1),
            ("little-left", "400x400", 2),
            ("bones-on-seam", "440x400", 1),
            ("no-hand", "400x400", 1),
            ("other-code", "440x400", 1),
        ];
        let wanted: Vec<_> = wanted.map(|(id, size, many)| (id, size.to_owned(), many)).to_vec();
        assert_eq!(told, wanted);
    }

    #[test]
    fn a_size_that_is_right_has_no_finding_and_one_that_suits_nobody_has() {
        let right = size("400x400", vec![seat(5, 50.0, Some(40.0)), seat(95, 80.0, Some(26.0))]);
        assert_eq!(review_findings(std::slice::from_ref(&right), &[]), []);
        let nobody = size("400x400", Vec::new());
        assert_eq!(review_findings(&[nobody], &[])[0].kind, ReviewKind::NobodySuits);
        let mut weak = right.clone();
        if let Some(own) = &mut weak.compartments[0].effect {
            own.lifts = Some(mm(4.9));
        }
        assert_eq!(review_findings(&[weak], &[])[0].kind.id(), "little-reach");
        let mut much = right;
        if let Some(own) = &mut much.compartments[0].effect {
            own.under.right = mm(-2.6);
        }
        assert_eq!(review_findings(&[much], &[])[0].kind, ReviewKind::MuchForOne(1, mm(2.6)));
    }
}
